#include "core/running/running.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "core/deck/results.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::running {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using bench::mm;
using bench::mm2;
using bench::refusalOf;
using bench::rpm;
using testing::HasSubstr;

constexpr int kTarget = 1;

// Hooke's law by hand: 10 kN on 100 mm² of steel (200 GPa) is 0.5 ‰ of its length.
TEST(RodStretch, IsForceTimesLengthOverStiffness) {
  EXPECT_NEAR(rodStretch({.mass = 0.25,
                          .acceleration = 40000.0,
                          .rodLength = 120 * mm,
                          .section = 100 * mm2,
                          .modulus = 200e9}),
              0.06 * mm, 1e-12);
}

TEST(RodStretch, RefusesARodWithoutSectionOrStiffness) {
  EXPECT_TRUE(refusalOf([] { rodStretch({1.0, 1.0, 0.1, 0.0, 200e9}); }));
  EXPECT_TRUE(refusalOf([] { rodStretch({1.0, 1.0, 0.1, 1e-4, -1.0}); }));
}

// 2 K: 30 mm of steel grow by 0.7 µm, 80 mm of aluminium by 3.7 µm (common practice, no published
// source).
TEST(Growth, IsThatOfABenchOnAWarmDay) {
  EXPECT_NEAR(growth({30 * mm, 11.5e-6, 2.0}), 0.7e-6, 0.05e-6);
  EXPECT_NEAR(growth({80 * mm, 23e-6, 2.0}), 3.7e-6, 0.05e-6);
}

TEST(ClearanceTakenUp, IsAllOfItAfterSolderAndHalfOfItFromDimensions) {
  const Clearances clearances{.main = 0.02 * mm, .bigEnd = 0.03 * mm, .gudgeonPin = 0.01 * mm};
  EXPECT_DOUBLE_EQ(clearanceTakenUp(clearances, true), 0.06 * mm);
  EXPECT_DOUBLE_EQ(clearanceTakenUp(clearances, false), 0.03 * mm);
}

TEST(ClosingSpeed, IsWhereTheStretchHasEatenTheGap) {
  const double speed = closingSpeed({.gapAtRest = 0.8 * mm, .stretchPerSpeed2 = 1e-10});
  EXPECT_NEAR(1e-10 * speed * speed, 0.8 * mm, 1e-12);
  EXPECT_EQ(closingSpeed({.gapAtRest = -0.1 * mm, .stretchPerSpeed2 = 1e-10}), 0.0);
}

/// By hand from the conversion's printed figures: m_rec 398 g, 37 890 m/s² at 8 500, rod 126.5 long
/// with 120 mm², deck height 194.25, steel rod, aluminium case, the default temperatures.
TEST(RunningGapOfTheTwin, IsThatWorkedOutByHand) {
  const model::Project project = sample("tansy-270");
  const Assessment assessment(project);
  const double stretch = 0.398 * 37890.0 * 126.5 * mm / (206e9 * 120 * mm2);
  EXPECT_NEAR(assessment(kTarget, out::rodStretch).value, stretch, 0.001 * mm);
  const double heat = 23e-6 * 194.25 * mm * 70 - 11.5e-6 * 126.5 * mm * 100 -
                      11.5e-6 * 37 * mm * 80 - 21e-6 * 30.5 * mm * 180;
  EXPECT_NEAR(assessment(kTarget, out::thermalOpening).value, heat, 1e-7);
  const double taken = (0.02 + 0.02 + 0.015) / 2 * mm;
  EXPECT_NEAR(assessment(kTarget, out::runningSquish).value, 0.9 * mm - stretch - taken + heat,
              0.001 * mm);
}

TEST(RunningGap, ShrinksWithTheSquareOfSpeedAtOverRev) {
  const model::Project project = sample("tansy-270");
  const Assessment assessment(project);
  const double atSpeed = assessment(kTarget, out::runningSquish).value;
  const double beyond = assessment(kTarget, out::overRevSquish).value;
  EXPECT_NEAR(atSpeed - beyond, 0.21 * assessment(kTarget, out::rodStretch).value, 1e-9);
  EXPECT_NEAR(assessment(kTarget, out::overRevSpeed).value, 8500 * 1.1 * rpm, 1e-6);
}

TEST(RunningGap, IsGoneAtTheClosingSpeed) {
  model::Project project = sample("tansy-270");
  const double speed = Assessment(project)(kTarget, out::closingSpeed).value;
  type(project.engines[kTarget], "wanted_speed_rad_s", std::to_string(speed / rpm));
  EXPECT_NEAR(Assessment(project)(kTarget, out::runningSquish).value, 0.0, 1e-7);
}

TEST(RunningGap, ObjectsWhenItClosesUnderItsLeast) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "spacer_m", "-1.80");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, kTarget, "running_squish");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("at 8500 rpm"));
  EXPECT_THAT(told(*finding), HasSubstr("estimated to within 0.05 mm: under 0.25 mm"));
}

// By hand: 0.8133 at the working speed and 0.0162 less at over-rev; 0.66 less of spacer than −1.35,
// whose ± goes with it: 0.14 of the stack at worst, and 0.0013 of what it grows by, leave 0.0120
// and −0.0042.
TEST(RunningGap, ForbidsContactAtOverRevWhereTheWorkingSpeedOnlyObjects) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "spacer_m", "-2.01");
  type(project.engines[kTarget], "running_squish_estimate_m", "0");
  const Assessment assessment(project);
  const describe::Cell& working = assessment(kTarget, out::runningSquish);
  const describe::Cell& overRev = assessment(kTarget, out::overRevSquish);
  ASSERT_NEAR(working.value - working.worst, 0.0120 * mm, 0.0001 * mm);
  ASSERT_NEAR(overRev.value - overRev.worst, -0.0042 * mm, 0.0001 * mm);
  const describe::Finding* finding = findingOf(assessment, kTarget, "running_squish");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("at 9350 rpm"));
}

// As before, 0.05 more of spacer: what the estimate leaves open takes it away again.
TEST(RunningGap, IsJudgedLessWhatTheEstimateLeavesOpen) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "spacer_m", "-1.96");
  EXPECT_EQ(findingOf(Assessment(project), kTarget, "running_squish")->weight,
            describe::Weight::Forbids);
  type(project.engines[kTarget], "running_squish_estimate_m", "0.03");
  EXPECT_EQ(findingOf(Assessment(project), kTarget, "running_squish")->weight,
            describe::Weight::Objects);
}

TEST(RunningGap, ForbidsWhenThePistonCanTouch) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "spacer_m", "-2.10");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, kTarget, "running_squish");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("can touch the head"));
}

TEST(RunningGap, StartsFromTheMeasuredGapWhereItIsKnownByMeasuring) {
  model::Project project = sample("tansy-270");
  model::Engine& target = project.engines[kTarget];
  const double fromSum = Assessment(project)(kTarget, out::runningSquish).value;
  type(target, "measured_squish_m", "1.00 ± 0.02");
  {
    const Assessment assessment(project);
    EXPECT_DOUBLE_EQ(assessment(kTarget, out::runningSquish).value, fromSum);
    const describe::Finding* finding = findingOf(assessment, kTarget, "measured_squish_unused");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Remarks);
    ASSERT_EQ(finding->mends.size(), 2U);
    const auto [input, text] = finding->mends.front().entries.front();
    type(target, input->key, text);
  }
  const Assessment assessment(project);
  // 0.10 more than the sum, and the other half of 0.055 of bearing clearance.
  EXPECT_NEAR(assessment(kTarget, out::runningSquish).value, fromSum + (0.10 - 0.0275) * mm, 1e-9);
  EXPECT_NEAR(assessment(kTarget, out::overRevSquish).value,
              assessment(kTarget, out::runningSquish).value -
                  0.21 * assessment(kTarget, out::rodStretch).value,
              1e-9);
  EXPECT_LT(assessment(kTarget, out::runningSquish).worst, 0.05 * mm) << "not that of the sum";
  EXPECT_EQ(findingOf(assessment, kTarget, "measured_squish_unused"), nullptr);
}

// By hand: 0.055 of clearance taken up, 0.0179 opened by heat, 0.0772 of stretch and 0.05 for the
// estimate take 0.164: 0.43 leave 0.266, which the usual 0.02 of solder brings under 0.25.
TEST(RunningGap, TakesNoMeasuredGapForExact) {
  model::Project project = sample("tansy-270");
  model::Engine& target = project.engines[kTarget];
  type(target, "squish_known_by", "solder");
  type(target, "over_rev_share", "0");
  type(target, "measured_squish_m", "0.43");
  EXPECT_NE(findingOf(Assessment(project), kTarget, "running_squish"), nullptr);
  type(target, "measured_squish_m", "0.43 ± 0.005");
  EXPECT_EQ(findingOf(Assessment(project), kTarget, "running_squish"), nullptr);
}

TEST(RunningGap, StartsFromTheSumWhereNothingWasMeasured) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "squish_known_by", "dial_gauge");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(kTarget, out::runningSquish).state, describe::State::Value);
  const describe::Finding* finding = findingOf(assessment, kTarget, "measured_squish_unused");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("the 0.90 mm of the dimensions"));
}

// By hand: 344.70 mm warmed by 70 K, 23 less 11 millionths per kelvin: 0.2895 mm less.
TEST(TheCase, IsTakenForAluminiumAndThatIsSaid) {
  model::Project project = sample("culvert-1040");
  model::Engine& target = project.engines[kTarget];
  double ofIron = 0.0;
  {
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, kTarget, "case_material_assumed");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Remarks);
    ofIron = assessment(kTarget, out::runningSquish).value - 0.28955 * mm;
    EXPECT_THAT(told(*finding), HasSubstr("Were they cast iron, 0.66 mm would be left"));
  }
  type(target, "case_material", "cast iron");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(kTarget, out::runningSquish).value, ofIron, 1e-8);
  EXPECT_EQ(findingOf(assessment, kTarget, "case_material_assumed"), nullptr);
  EXPECT_EQ(findingOf(assessment, kTarget, "case_material_against_expansion"), nullptr);
}

TEST(TheCase, IsNotOfOneMetalWithTheExpansionOfAnother) {
  model::Project project = sample("culvert-1040");
  model::Engine& target = project.engines[kTarget];
  struct Row {
    const char* material;
    const char* wrong;
    const char* right;
    double own;
  };
  for (const Row& row :
       {Row{"aluminium alloy", "11", "21", 23e-6}, Row{"cast iron", "23", "12", 11e-6},
        Row{"magnesium alloy", "12", "25", 26e-6}}) {
    SCOPED_TRACE(row.material);
    type(target, "case_material", row.material);
    type(target, "case_expansion_per_k", row.wrong);
    {
      const Assessment assessment(project);
      const describe::Finding* finding =
          findingOf(assessment, kTarget, "case_material_against_expansion");
      ASSERT_NE(finding, nullptr);
      EXPECT_EQ(finding->weight, describe::Weight::Objects);
      EXPECT_THAT(told(*finding), HasSubstr(row.material));
      const auto [input, text] = finding->mends.front().entries.front();
      type(target, input->key, text);
    }
    EXPECT_NEAR(target[model::in::caseExpansion].values.front(), row.own, 1e-12);
    EXPECT_EQ(findingOf(Assessment(project), kTarget, "case_material_against_expansion"), nullptr);
    type(target, "case_expansion_per_k", row.right);
    EXPECT_EQ(findingOf(Assessment(project), kTarget, "case_material_against_expansion"), nullptr);
  }
}

}  // namespace
}  // namespace strokewright::running
