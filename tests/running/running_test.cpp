#include "core/running/running.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "core/deck/results.h"
#include "core/masses/results.h"
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
  EXPECT_THAT(told(*finding), HasSubstr("under 0.25 mm"));
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

}  // namespace
}  // namespace strokewright::running
