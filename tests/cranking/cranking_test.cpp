#include "core/cranking/cranking.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

#include "core/cranking/results.h"
#include "core/model/inputs.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::cranking {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using describe::State;
using testing::HasSubstr;

constexpr double kBar = 1e5;
constexpr int kTarget = 1;

// Common practice, no published source: ratio 9, exponent 1.25, 1 bar of air.
TEST(CrankingPressure, OfRatioNineIsJustUnderFifteenBarOnTheGauge) {
  EXPECT_NEAR(gaugePressure({.ambient = kBar, .ratio = 9.0, .exponent = 1.25}), 14.588 * kBar,
              0.0005 * kBar);
}

TEST(CrankingPressure, IsNoughtWhereNothingIsCompressed) {
  EXPECT_EQ(gaugePressure({.ambient = kBar, .ratio = 1.0, .exponent = 1.25}), 0.0);
}

// By hand: 1.01325 · (9.00953^1.25 − 1).
TEST(CrankingPressure, OfAFourStrokeComesFromItsEffectiveRatio) {
  const model::Project project = sample("tansy-270");
  EXPECT_NEAR(Assessment(project)(kTarget, out::crankingPressure).value, 14.803 * kBar,
              0.001 * kBar);
}

// 1.01325 · (7.2435^1.25 − 1) by hand.
TEST(CrankingPressure, OfATwoStrokeComesFromItsTrappedRatio) {
  model::Project project = sample("teasel-125");
  EXPECT_NEAR(Assessment(project)(kTarget, out::crankingPressure).value, 11.027 * kBar,
              0.001 * kBar);
  type(project.engines[kTarget], "exhaust_port_top_m", "");
  EXPECT_EQ(Assessment(project)(kTarget, out::crankingPressure).state, State::Waits);
}

/// The twin, which should show 14.8 bar on the gauge.
class CrankingTheTwin : public testing::Test {
 protected:
  CrankingTheTwin() : project_(sample("tansy-270")) {}
  model::Engine& target() { return project_.engines[kTarget]; }
  void readPressure(const char* text) { type(target(), "cranking_pressure_read_pa", text); }
  model::Project project_;
};

TEST_F(CrankingTheTwin, IsLetBeWhereItReadsAsItShould) {
  readPressure("14.0; 13.2");
  const Assessment assessment(project_);
  for (const describe::Rule* rule : rules()) {
    EXPECT_EQ(findingOf(assessment, kTarget, rule->key), nullptr) << rule->key;
  }
}

TEST_F(CrankingTheTwin, IsAskedWhetherAbsoluteWasRead) {
  readPressure("15.5; 15.4 ± 0.3");
  {
    const Assessment assessment(project_);
    const describe::Finding* finding = findingOf(assessment, kTarget, "cranking_pressure_high");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr("absolute or gauge? The gauge would show 14.8 bar"));
    const auto [input, text] = finding->mends.front().entries.front();
    type(target(), input->key, text);
  }
  const std::vector<double>& values = target()[model::in::crankingPressureRead].values;
  ASSERT_EQ(values.size(), 2U);
  EXPECT_NEAR(values[0], (15.5 - 1.01325) * kBar, 1.0);
  EXPECT_NEAR(values[1], (15.4 - 1.01325) * kBar, 1.0);
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "cranking_pressure_high"), nullptr);
}

TEST_F(CrankingTheTwin, IsNotTakenForAbsoluteWhereThatDoesNotFit) {
  readPressure("18");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "cranking_pressure_high");
  ASSERT_NE(finding, nullptr);
  EXPECT_TRUE(finding->mends.empty());
  EXPECT_THAT(told(*finding), HasSubstr("Oil or carbon"));
}

// Common practice, no published source: three quarters of 14.8 are 11.1 bar.
TEST_F(CrankingTheTwin, IsSentToALeakDownTestWhereItReadsLow) {
  readPressure("11.2");
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "cranking_pressure_low"), nullptr);
  readPressure("11.0");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "cranking_pressure_low");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("11.0 bar is under 75 % of the 14.8 bar"));
  EXPECT_THAT(told(*finding), HasSubstr("leak-down"));
}

// Common practice, no published source: ten in a hundred apart.
TEST_F(CrankingTheTwin, IsObjectedToWhereItsCylindersReadApart) {
  readPressure("14.0; 12.7");
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "cranking_pressure_uneven"), nullptr);
  readPressure("14.0; 12.5");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "cranking_pressure_uneven");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("from 12.5 bar to 14.0 bar"));
}

TEST_F(CrankingTheTwin, WarnsOfKickBackOverTheRatioAccepted) {
  type(target(), "ratio_most", "11");
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "kick_back"), nullptr);
  type(target(), "ratio_most", "10.5");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "kick_back");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("10.79 is over the 10.50 accepted"));
  EXPECT_THAT(told(*finding), HasSubstr("break the starter or a leg"));
  EXPECT_THAT(told(*finding), HasSubstr("decompressor"));
}

// By hand: the donor makes 13.17 bar, of which 1.2 times are 15.81; with a chamber of 28 ml this
// one makes 1.01325 · (9.777^1.25 − 1) = 16.50, with 30 ml 15.3.
TEST_F(CrankingTheTwin, WarnsOfKickBackFarOverTheDonor) {
  type(target(), "chamber_volume_m3", "30.0");
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "kick_back"), nullptr);
  type(target(), "chamber_volume_m3", "28.0");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "kick_back");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("makes 16.5 bar, the donor 13.2 bar"));
}

}  // namespace
}  // namespace strokewright::cranking
