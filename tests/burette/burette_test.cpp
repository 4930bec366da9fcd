#include "core/burette/burette.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <ostream>

#include "core/burette/results.h"
#include "core/compression/results.h"
#include "core/describe/tabulated.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::burette {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using bench::ml;
using bench::mm;
using describe::State;
using testing::HasSubstr;

constexpr int kTarget = 1;

struct Filled {
  const char* name;
  double bore;    // [mm]
  double depth;   // [mm]
  double filled;  // [ml]
  double crown;   // [ml]
  friend void PrintTo(const Filled& row, std::ostream* out) { *out << row.name; }
};

class CrownFilled : public testing::TestWithParam<Filled> {};

// Worked out by hand: 54 mm of bore have 2290.22 mm², 76 mm have 4536.46 mm².
TEST_P(CrownFilled, TakesWhatTheBoreLacks) {
  const Filled& row = GetParam();
  EXPECT_NEAR(
      crownVolume({.bore = row.bore * mm, .depth = row.depth * mm, .filled = row.filled * ml}),
      row.crown * ml, 0.0005 * ml);
}

INSTANTIATE_TEST_SUITE_P(ByHand, CrownFilled,
                         testing::Values(Filled{"Flat", 54, 10, 22.9022, 0.0},
                                         Filled{"Dome", 54, 10, 21.0, 1.902},
                                         Filled{"Dish", 76, 10, 47.0, -1.635}),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(RatioPerVolume, IsTheSlopeOfTheRatio) {
  const chamber::Compression volumes{.sweptVolume = 124.8 * ml, .clearanceVolume = 9.8 * ml};
  const double step = 1e-3 * ml;
  const double rise =
      chamber::compressionRatio({volumes.sweptVolume, volumes.clearanceVolume - step}) -
      chamber::compressionRatio({volumes.sweptVolume, volumes.clearanceVolume + step});
  EXPECT_NEAR(ratioPerVolume(volumes), rise / (2.0 * step), 1e-5 * ratioPerVolume(volumes));
}

/// The two-stroke, as entered: a dome that takes 1.9 ml, a clearance volume of 9.776 ml.
class BuretteOfTheTwoStroke : public testing::Test {
 protected:
  BuretteOfTheTwoStroke() : project_(sample("teasel-125")) {}

  model::Engine& target() { return project_.engines[kTarget]; }

  void fillCrown(const char* filled) {
    type(target(), "crown_fill_depth_m", "10 ± 0.01");
    type(target(), "crown_fill_m3", filled);
  }
  void fillWhole(const char* filled) {
    type(target(), "whole_volume_m3", filled);
    type(target(), "plug_hole_volume_m3", "1.2 ± 0.1");
  }

  model::Project project_;
};

TEST_F(BuretteOfTheTwoStroke, WaitsForItsFillings) {
  const Assessment assessment(project_);
  EXPECT_EQ(assessment(kTarget, out::crownByBurette).state, State::Waits);
  EXPECT_EQ(assessment(kTarget, out::clearanceClosure).state, State::Waits);
  EXPECT_EQ(assessment(kTarget, out::ratioByBurette).state, State::Waits);
}

TEST_F(BuretteOfTheTwoStroke, AgreesWithADomeThatWasEnteredRight) {
  fillCrown("21.0 ± 0.2");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::crownByBurette).value, 1.902 * ml, 0.001 * ml);
  EXPECT_NEAR(assessment(kTarget, out::crownClosure).value, 0.002 * ml, 0.001 * ml);
  EXPECT_EQ(findingOf(assessment, kTarget, "crown_by_burette"), nullptr);
}

TEST_F(BuretteOfTheTwoStroke, AsksWhetherADishWasTakenForADome) {
  fillCrown("24.8 ± 0.2");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "crown_by_burette");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("the crown adds 1.898 ml; as entered it takes 1.900 ml"));
  EXPECT_THAT(told(*finding), HasSubstr("A dish taken for a dome"));
}

TEST_F(BuretteOfTheTwoStroke, OffersTheCrownItFilled) {
  fillCrown("24.8 ± 0.2");
  const describe::Mend mend =
      findingOf(Assessment(project_), kTarget, "crown_by_burette")->mends.front();
  EXPECT_TRUE(mend.computed);
  EXPECT_THAT(mend.entries.front().second, testing::StartsWith("1.90 ml ± 0.2"));
  for (const auto& [input, text] : mend.entries) type(target(), input->key, text);
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "crown_by_burette"), nullptr);
}

TEST_F(BuretteOfTheTwoStroke, OffersTheCrownWhereNoneIsEntered) {
  type(target(), "crown_volume_m3", "");
  type(target(), "crown_volume_sense", "");
  fillCrown("21.0 ± 0.2");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "crown_by_burette");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("takes 1.90 ml; it is counted as flat"));
  const describe::Mend mend = finding->mends.front();
  for (const auto& [input, text] : mend.entries) type(target(), input->key, text);
  EXPECT_NEAR(Assessment(project_)(kTarget, out::compressionRatio).value, 13.77, 0.02);
}

TEST_F(BuretteOfTheTwoStroke, GivesTheRatioOfTheWholeVolume) {
  fillWhole("10.976 ± 0.3");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::clearanceByBurette).value, 9.776 * ml, 1e-12);
  EXPECT_NEAR(assessment(kTarget, out::clearanceClosure).value, 0.0, 0.001 * ml);
  EXPECT_NEAR(assessment(kTarget, out::ratioByBurette).value, 13.768, 0.001);
  EXPECT_EQ(findingOf(assessment, kTarget, "clearance_closure"), nullptr);
}

TEST_F(BuretteOfTheTwoStroke, ObjectsBeyondTheLikelyAndForbidsBeyondTheWorst) {
  fillWhole("11.7 ± 0.3");
  {
    const Assessment assessment(project_);
    const describe::Cell& apart = assessment(kTarget, out::clearanceClosure);
    ASSERT_GT(apart.value, apart.likely);
    ASSERT_LT(apart.value, apart.worst);
    const describe::Finding* finding = findingOf(assessment, kTarget, "clearance_closure");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr("10.50 ml by the burette and 9.78 ml as computed"));
  }
  fillWhole("13.0 ± 0.3");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "clearance_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
}

// By hand: whole and chamber usually to 0.3 and 0.2 ml, crown and plug hole to 0.2 and 0.1, crevice
// to 0.05, seats, gaskets, barrel, spacer, throw, rod and compression height together to less than
// 0.5 ml: likely 0.4 to 0.7.
TEST_F(BuretteOfTheTwoStroke, TakesNoFillingWithoutAPlusMinusForExact) {
  for (const auto& [input, entry] : std::vector(target().entries.begin(), target().entries.end())) {
    describe::Entry bare = entry;
    bare.plusMinus.reset();
    target().set(*input, bare);
  }
  type(target(), "whole_volume_m3", "11.276");
  type(target(), "plug_hole_volume_m3", "1.2");
  {
    const Assessment assessment(project_);
    ASSERT_NEAR(assessment(kTarget, out::clearanceClosure).value, 0.3 * ml, 0.001 * ml);
    ASSERT_EQ(assessment(kTarget, out::clearanceClosure).worst, 0.0);
    EXPECT_EQ(findingOf(assessment, kTarget, "clearance_closure"), nullptr);
  }
  type(target(), "whole_volume_m3", "11.776");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "clearance_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects) << told(*finding);
}

TEST_F(BuretteOfTheTwoStroke, AsksForTheOtherSenseWhereThatWouldClose) {
  fillWhole("14.776 ± 0.3");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "clearance_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("crown's 1.90 ml the other way"));
  const describe::Mend mend = finding->mends.front();
  type(target(), mend.entries.front().first->key, mend.entries.front().second);
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "clearance_closure"), nullptr);
}

TEST_F(BuretteOfTheTwoStroke, RefusesAWholeVolumeNoLargerThanThePlugHole) {
  fillWhole("1.0 ± 0.3");
  EXPECT_EQ(Assessment(project_)(kTarget, out::ratioByBurette).state, State::Refused);
}

// By hand: three fillings of 9.3, 9.4 and 9.5 have a mean of 9.4 and t·s/√n = 4.303 · 0.1/√3; 0.1
// ml are worth 124.82/9.776² · 0.1 = 0.131 of ratio.
TEST_F(BuretteOfTheTwoStroke, ListsWhatEachFillingIsWorth) {
  type(target(), "chamber_volume_m3", "9.3 | 9.4 | 9.5 ± 0.05");
  Assessment assessment(project_);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::volumesFilled);
  ASSERT_EQ(table.state, State::Value);
  ASSERT_EQ(table.rows.size(), 2U) << "chamber and crankcase";
  EXPECT_EQ(table.rows["filled"].words[0], "Combustion chamber volume");
  EXPECT_EQ(table.rows["fillings"].numbers[0], 3.0);
  EXPECT_NEAR(table.rows["mean_m3"].numbers[0], 9.4 * ml, 1e-12);
  EXPECT_NEAR(table.rows["spread_m3"].numbers[0], 0.2 * ml, 1e-12);
  const double limit = std::hypot(0.05, 4.303 * 0.1 / std::sqrt(3.0));
  EXPECT_NEAR(table.rows["limit_m3"].numbers[0], limit * ml, 1e-3 * limit * ml);
  EXPECT_NEAR(table.rows["limit_in_ratio"].numbers[0], 13.06e-1 * limit, 2e-3);
  EXPECT_NEAR(table.rows["tenth_ml_in_ratio"].numbers[0], 0.1306, 1e-4);
  EXPECT_TRUE(std::isnan(table.rows["spread_m3"].numbers[1])) << "filled once";
  EXPECT_NEAR(table.rows["limit_in_ratio"].numbers[1], 124.82 / (392.0 * 392.0) * 2.0, 1e-6);
}

TEST(BuretteOfTheTriple, TakesEachCylinderWithItsOwnCrown) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[kTarget];
  type(target, "crown_volume_m3", "");
  type(target, "crown_volume_sense", "");
  type(target, "crown_fill_depth_m", "10 ± 0.01");
  type(target, "crown_fill_m3", "38.3; 38.4; 38.5 ± 0.2");
  const describe::Mend mend =
      findingOf(Assessment(project), kTarget, "crown_by_burette")->mends.front();
  for (const auto& [input, text] : mend.entries) type(target, input->key, text);
  const Assessment assessment(project);
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(assessment(kTarget, out::crownClosure, i).value, 0.0, 0.005 * ml + 1e-12);
  }
  EXPECT_EQ(findingOf(assessment, kTarget, "crown_by_burette"), nullptr);
}

}  // namespace
}  // namespace strokewright::burette
