#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/assess/assess.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "tests/bench_units.h"

namespace strokewright::motion {
namespace {

using namespace bench;
using describe::State;
using describe::Tabulated;
namespace in = model::in;

constexpr double kSpeed = 7000 * rpm;

/// A project of one engine with the numbers that its motion reads.
class PistonMotion : public testing::Test {
 protected:
  PistonMotion() {
    project_.engines.resize(1);
    project_.engines[0].part = model::Part::Target;
    enter(in::wantedSpeed, {kSpeed});
  }

  void enter(const describe::Input& input, std::vector<double> values) {
    describe::Entry entry;
    entry.values = std::move(values);
    project_.engines[0].set(input, entry);
  }

  void enter(const SliderCrank& mechanism) {
    enter(in::crankThrow, {mechanism.crankRadius});
    enter(in::rodLength, {mechanism.rodLength});
    enter(in::pinOffset, {std::abs(mechanism.offset)});
    const model::Side side =
        mechanism.offset < 0.0 ? model::Side::TowardsThrust : model::Side::AwayFromThrust;
    enter(in::pinOffsetSide, {model::answer(side)});
  }

  Tabulated tabulated(int cylinder = 0) {
    assess::Assessment assessment(project_);
    return assessment.evaluation().tabulated(0, out::pistonMotion, cylinder);
  }

  model::Project project_;
};

// Row 360: bottom dead centre without offset; row 540: three quarters of a turn.
TEST_F(PistonMotion, CoversOneTurnEveryHalfDegreeDownwardsPlus) {
  enter({.crankRadius = 0.045, .rodLength = 0.145});
  const Tabulated filled = tabulated();
  ASSERT_EQ(filled.state, State::Value);
  ASSERT_EQ(filled.rows.size(), 721u);
  EXPECT_NEAR(filled.rows["crank_angle_rad"].numbers[1], 0.5 * deg, 1e-16);
  EXPECT_NEAR(filled.rows["crank_angle_rad"].numbers[720], 2.0 * std::numbers::pi, 1e-15);
  EXPECT_NEAR(filled.rows["travel_m"].numbers[360], 0.090, 1e-15);
  EXPECT_GT(filled.rows["speed_m_s"].numbers[180], 0.0);
  EXPECT_LT(filled.rows["speed_m_s"].numbers[540], 0.0);
  EXPECT_GT(filled.rows["acceleration_m_s2"].numbers[0], 0.0);
}

/// Heights and derivatives of the pin to more digits than a double has.
struct Reference {
  double crankRadius, rodLength, offset, crankAngle, height, velocity, acceleration;
};
constexpr Reference kReferences[] = {
#include "tests/motion/motion_points.inc"
};

TEST_F(PistonMotion, MeetsTheReferencePointsThatFallOnItsRows) {
  int met = 0;
  for (const Reference& row : kReferences) {
    const double place = row.crankAngle / (0.5 * deg);
    const auto i = static_cast<Eigen::Index>(std::lround(place));
    if (i < 0 || i > 720 || std::abs(place - static_cast<double>(i)) > 1e-9) continue;
    const SliderCrank mechanism{row.crankRadius, row.rodLength, row.offset};
    enter(mechanism);
    const Tabulated filled = tabulated();
    if (filled.state != State::Value) continue;
    SCOPED_TRACE(row.crankAngle);
    ++met;
    EXPECT_NEAR(filled.rows["travel_m"].numbers[i], topPinHeight(mechanism) - row.height, 1e-14);
    EXPECT_NEAR(filled.rows["speed_m_s"].numbers[i], -kSpeed * row.velocity, 1e-11);
    EXPECT_NEAR(filled.rows["acceleration_m_s2"].numbers[i], -kSpeed * kSpeed * row.acceleration,
                1e-8);
  }
  EXPECT_GE(met, 40);
}

TEST_F(PistonMotion, IsThatOfEachCylinder) {
  enter({.crankRadius = 0.045, .rodLength = 0.145});
  enter(in::cylinderCount, {2.0});
  enter(in::rodLength, {0.145, 0.160});
  EXPECT_LT(tabulated(1).rows["acceleration_m_s2"].numbers[0],
            tabulated(0).rows["acceleration_m_s2"].numbers[0]);
}

TEST_F(PistonMotion, WaitsForRodAndSpeed) {
  enter({.crankRadius = 0.045, .rodLength = 0.145});
  enter(in::rodLength, {});
  enter(in::wantedSpeed, {});
  assess::Assessment assessment(project_);
  const Tabulated filled = assessment.evaluation().tabulated(0, out::pistonMotion);
  EXPECT_EQ(filled.state, State::Waits);
  const std::vector<assess::Assessment::Wait> waits = assessment.waitsFor(filled.notes);
  ASSERT_EQ(waits.size(), 2u);
  for (const describe::Input* input : {&in::rodLength, &in::wantedSpeed}) {
    EXPECT_EQ(std::ranges::count(waits, input, &assess::Assessment::Wait::input), 1)
        << input->label;
  }
}

TEST_F(PistonMotion, IsRefusedForARodThatCannotTurn) {
  enter({.crankRadius = 0.045, .rodLength = 0.040});
  assess::Assessment assessment(project_);
  const Tabulated filled = assessment.evaluation().tabulated(0, out::pistonMotion);
  ASSERT_EQ(filled.state, State::Refused);
  EXPECT_EQ(assessment.evaluation().refusal(filled.notes).value, 0.040);
}

}  // namespace
}  // namespace strokewright::motion
