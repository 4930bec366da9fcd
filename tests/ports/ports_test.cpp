#include "core/ports/ports.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>
#include <ostream>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/motion/results.h"
#include "core/ports/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::ports {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using bench::deg;
using bench::ml;
using bench::mm;
using bench::refusalOf;
using describe::State;
using testing::HasSubstr;

constexpr int kDonor = 0;
constexpr int kTarget = 1;

struct Row {
  const char* name;
  double offset;  // [mm]
  double travel;  // [mm]
  double opens;   // [deg]
  double shuts;   // [deg]
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class PortOfA545Stroke : public testing::TestWithParam<Row> {
 protected:
  static motion::SliderCrank mechanism() {
    return {.crankRadius = 27.25 * mm, .rodLength = 110 * mm, .offset = GetParam().offset * mm};
  }
};

// Computed independently: both angles found by halving intervals of the piston's height.
TEST_P(PortOfA545Stroke, OpensAndShutsAtItsAngles) {
  const Row& row = GetParam();
  const Timing times = timing(mechanism(), row.travel * mm);
  EXPECT_NEAR(times.opens, row.opens * deg, 0.51e-6 * deg);
  EXPECT_NEAR(times.shuts, row.shuts * deg, 0.51e-6 * deg);
}

TEST_P(PortOfA545Stroke, IsPutBackWhereItWasByItsDuration) {
  const Row& row = GetParam();
  const double duration = timing(mechanism(), row.travel * mm).duration();
  EXPECT_NEAR(travelForDuration(mechanism(), duration), row.travel * mm, 1e-12);
}

INSTANTIATE_TEST_SUITE_P(ComputedByOtherMeans, PortOfA545Stroke,
                         testing::Values(Row{"OffsetHigh", 2.0, 20.0, 69.007577, 292.947129},
                                         Row{"Offset", 2.0, 26.65, 82.682935, 279.389292},
                                         Row{"OffsetLow", 2.0, 50.0, 143.234554, 219.392166},
                                         Row{"OtherSideHigh", -2.0, 20.0, 67.052871, 290.992423},
                                         Row{"OtherSide", -2.0, 26.65, 80.610708, 277.317065},
                                         Row{"OtherSideLow", -2.0, 50.0, 140.607834, 216.765446},
                                         Row{"LargeOffset", 10.0, 26.65, 86.657410, 283.709402}),
                         [](const auto& row) { return std::string(row.param.name); });

// A 3-4-5 linkage: throw 3, rod 5, the crank square to the bore at a travel of 3 + 5 − 4.
TEST(Port, AtTheSquareCrankOfAThreeFourFiveLinkageIsOpenForHalfATurn) {
  const motion::SliderCrank linkage{.crankRadius = 30 * mm, .rodLength = 50 * mm};
  const Timing times = timing(linkage, 40 * mm);
  EXPECT_NEAR(times.opens, 90 * deg, 1e-12);
  EXPECT_NEAR(times.duration(), 180 * deg, 1e-12);
  EXPECT_NEAR(travelForDuration(linkage, std::numbers::pi), 40 * mm, 1e-15);
}

TEST(Port, AtADeadCentreIsOpenAllTheTurnOrNotAtAll) {
  const motion::SliderCrank mechanism{
      .crankRadius = 27.25 * mm, .rodLength = 110 * mm, .offset = 3 * mm};
  EXPECT_NEAR(travelForDuration(mechanism, 0.0), motion::trueStroke(mechanism), 1e-15);
  EXPECT_NEAR(travelForDuration(mechanism, 2 * std::numbers::pi), 0.0, 1e-15);
}

TEST(Port, OutsideTheStrokeIsRefused) {
  const motion::SliderCrank mechanism{.crankRadius = 27.25 * mm, .rodLength = 110 * mm};
  EXPECT_TRUE(refusalOf([&] { timing(mechanism, -1.2 * mm); }));
  EXPECT_TRUE(refusalOf([&] { timing(mechanism, 57.0 * mm); }));
  EXPECT_TRUE(
      refusalOf([] { travelForDuration({.crankRadius = 30 * mm, .rodLength = 20 * mm}, 1.0); }));
}

TEST(PrimaryCompression, IsThatOfTheFilledCrankcase) {
  EXPECT_NEAR(primaryCompressionRatio({.volume = 392 * ml, .sweptVolume = 124.8 * ml}), 1.318,
              0.0005);
  EXPECT_TRUE(refusalOf([] { primaryCompressionRatio({.volume = 0.0, .sweptVolume = 1.0}); }));
}

class PortsOfTheTwoStroke : public testing::Test {
 protected:
  PortsOfTheTwoStroke() : project_(sample("teasel-125")) {}
  model::Engine& target() { return project_.engines[kTarget]; }
  model::Project project_;
};

TEST_F(PortsOfTheTwoStroke, AreToldAgainstTheDonors) {
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "port_timing_against_donor");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("196.7°"));
  EXPECT_THAT(told(*finding), HasSubstr("143.1°"));
  EXPECT_THAT(told(*finding), HasSubstr("1.71 mm and 2.62 mm lower"));
  EXPECT_THAT(told(*finding), HasSubstr("A spacer lifts the ports"));
  EXPECT_EQ(findingOf(assessment, kDonor, "port_timing_against_donor"), nullptr);
}

TEST_F(PortsOfTheTwoStroke, MovedByWhatIsSaidKeepTheDonorsDegrees) {
  type(target(), "exhaust_port_top_m", "29.3121880");
  type(target(), "transfer_port_top_m", "42.5154228");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::exhaustDuration).value,
              assessment(kDonor, out::exhaustDuration).value, 1e-6);
  EXPECT_NEAR(assessment(kTarget, out::transferPortLowering).value, 0.0, 1e-9);
  EXPECT_EQ(findingOf(assessment, kTarget, "port_timing_against_donor"), nullptr);
}

// Computed independently from the piston's height: the edge of the band opens the port.
TEST_F(PortsOfTheTwoStroke, AreOpenedByTheCrownAtTheBand) {
  type(target(), "crown_rise_m", "0.5");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::exhaustPortTravel).value, 27.15 * mm, 1e-9);
  EXPECT_NEAR(assessment(kTarget, out::exhaustDuration).value, 194.64 * deg, 0.005 * deg);
}

TEST_F(PortsOfTheTwoStroke, AboveTheCrownAtTopAreForbidden) {
  type(target(), "exhaust_port_top_m", "0.5");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "port_open_at_top");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_EQ(finding->about.front()->key, "exhaust_port_top_m");
  EXPECT_THAT(told(*finding), HasSubstr("0.45 mm above the crown"));
  EXPECT_NE(assessment(kTarget, out::exhaustDuration).state, State::Value);
  EXPECT_NE(assessment(kTarget, out::trappedCompressionRatio).state, State::Value);
  EXPECT_EQ(assessment(kTarget, out::transferDuration).state, State::Value);
  EXPECT_EQ(findingOf(assessment, kTarget, "refused"), nullptr) << "said once";
}

TEST_F(PortsOfTheTwoStroke, BelowTheStrokeNeverOpen) {
  type(target(), "transfer_port_top_m", "57.95");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "port_never_opens");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("57.00 mm below the crown"));
  EXPECT_THAT(told(*finding), HasSubstr("54.50 mm"));
  EXPECT_EQ(findingOf(assessment, kTarget, "refused"), nullptr) << "said once";
}

TEST_F(PortsOfTheTwoStroke, ThatOpenInTheWrongOrderAreExchanged) {
  type(target(), "exhaust_port_top_m", "39.9");
  type(target(), "transfer_port_top_m", "27.6");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "transfer_opens_first");
  ASSERT_NE(finding, nullptr);
  const describe::Mend mend = finding->mends.front();
  for (const auto& [input, text] : mend.entries) type(target(), input->key, text);
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "transfer_opens_first"), nullptr);
}

TEST_F(PortsOfTheTwoStroke, AskHowTheCrankcaseWasFilled) {
  type(target(), "crankcase_volume_m3", "39.2");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "primary_compression_range");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("4.18"));
}

// Common practice, no published source: 1.30 to 1.45. 124.82 ml swept.
TEST_F(PortsOfTheTwoStroke, AreAskedForTheirPrimaryCompressionOutsidePractice) {
  const auto said = [&](const char* crankcase) {
    type(target(), "crankcase_volume_m3", crankcase);
    return findingOf(Assessment(project_), kTarget, "primary_compression_range") != nullptr;
  };
  EXPECT_TRUE(said("450")) << "1.277";
  EXPECT_FALSE(said("410")) << "1.304";
  EXPECT_FALSE(said("280")) << "1.446";
  EXPECT_TRUE(said("270")) << "1.462";
}

// Common practice, no published source: 26° to 34°; as it is 26.8°.
TEST_F(PortsOfTheTwoStroke, AreAskedForABlowdownOutsidePractice) {
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "blowdown_range"), nullptr);
  type(target(), "transfer_port_top_m", "36");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "blowdown_range");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("26° to 34°: is that so?"));
}

// Common practice, no published source: 7 to 8; as it is 7.24.
TEST_F(PortsOfTheTwoStroke, AreAskedForATrappedRatioOutsidePractice) {
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "trapped_compression_range"), nullptr);
  type(target(), "exhaust_port_top_m", "33");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "trapped_compression_range");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("8.51 is outside 7 to 8: is that so?"));
}

TEST_F(PortsOfTheTwoStroke, AreListedWithBothTheirAngles) {
  Assessment assessment(project_);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::portTiming);
  ASSERT_EQ(table.state, State::Value);
  ASSERT_EQ(table.rows.size(), 2U);
  EXPECT_NEAR(table.rows["opens_after_top_rad"].numbers[0], 81.654 * deg, 0.001 * deg);
  EXPECT_NEAR(table.rows["shuts_before_top_rad"].numbers[0], 81.654 * deg, 0.001 * deg);
  EXPECT_NEAR(table.rows["top_for_donors_m"].numbers[1], 42.515 * mm, 0.001 * mm);
}

TEST_F(PortsOfTheTwoStroke, OfAnOffsetCylinderOpenAndShutAtUnlikeAngles) {
  type(target(), "cylinder_offset_m", "2");
  type(target(), "cylinder_offset_side", "away_from_thrust_side");
  type(target(), "exhaust_port_top_m", "27.6");
  Assessment assessment(project_);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::portTiming);
  ASSERT_EQ(table.state, State::Value);
  EXPECT_GT(table.rows["opens_after_top_rad"].numbers[0],
            table.rows["shuts_before_top_rad"].numbers[0] + 0.3 * deg);
}

TEST_F(PortsOfTheTwoStroke, AreListedByHeight) {
  Assessment assessment(project_);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::portHeights);
  ASSERT_EQ(table.state, State::Value);
  ASSERT_EQ(table.rows.size(), 21U);
  EXPECT_NEAR(table.rows["exhaust_rad"].numbers[10],
              assessment(kTarget, out::exhaustDuration).value, 1e-12);
  EXPECT_GT(table.rows["exhaust_rad"].numbers[11], table.rows["exhaust_rad"].numbers[10]);
  EXPECT_LT(table.rows["trapped_ratio"].numbers[11], table.rows["trapped_ratio"].numbers[10]);
}

/// The donor is as it is: it runs.
TEST_F(PortsOfTheTwoStroke, OfADonorAreNotMeasuredByPractice) {
  model::Engine& donor = project_.engines[kDonor];
  type(donor, "exhaust_port_top_m", "33");
  type(donor, "transfer_port_top_m", "33.5");
  type(donor, "crankcase_volume_m3", "900");
  const Assessment assessment(project_);
  ASSERT_EQ(assessment(kDonor, out::primaryCompressionRatio).state, State::Value);
  for (const char* rule :
       {"primary_compression_range", "blowdown_range", "trapped_compression_range"}) {
    EXPECT_EQ(findingOf(assessment, kDonor, rule), nullptr) << rule;
  }
}

TEST_F(PortsOfTheTwoStroke, WaitForTheCycleWhereItIsNotSaid) {
  type(target(), "cycle", "");
  type(target(), "crankcase_volume_m3", "420");
  const Assessment assessment(project_);
  for (const describe::Result* result :
       {&out::exhaustDuration, &out::blowdown, &out::primaryCompressionRatio}) {
    EXPECT_EQ(assessment(kTarget, *result).state, State::Waits) << result->key;
    const auto waits = assessment.waitsFor(kTarget, *result);
    ASSERT_EQ(waits.size(), 1U) << result->key;
    EXPECT_EQ(waits.front().input->key, "cycle");
  }
}

TEST(PortsOfAFourStroke, MeanNothing) {
  const model::Project project = sample("tansy-270");
  const Assessment assessment(project);
  for (const describe::Result* result : results()) {
    EXPECT_EQ(assessment(kTarget, *result).state, State::None) << result->key;
  }
}

}  // namespace
}  // namespace strokewright::ports
