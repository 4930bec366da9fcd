#include "core/motion/curve.h"

#include <gtest/gtest.h>

#include <numbers>

#include "tests/bench_units.h"

namespace strokewright::motion {
namespace {

using namespace bench;

TEST(CrankAngles, CoverTheirTurnsWithBothEnds) {
  const CrankAngles angles(2, 720);
  ASSERT_EQ(angles.size(), 1441);
  EXPECT_EQ(angles.radians()[0], 0.0);
  EXPECT_DOUBLE_EQ(angles.radians()[180], std::numbers::pi / 2);
  EXPECT_DOUBLE_EQ(angles.radians()[1440], 4 * std::numbers::pi);
  EXPECT_DOUBLE_EQ(angles.sines()[180], 1.0);
  EXPECT_DOUBLE_EQ(angles.cosines()[720], 1.0);
}

TEST(MotionCurves, AgreeWithThePlainFunctionsPointForPoint) {
  const double speed = 8500 * rpm;
  const CrankAngles angles(2, 720);
  MotionCurves curves;
  for (const SliderCrank& mechanism :
       {SliderCrank{0.037, 0.1265, 0.0}, SliderCrank{0.034, 0.133, -0.0005},
        SliderCrank{0.04, 0.14, 0.06}, SliderCrank{0.05, 0.065, 0.0}}) {
    fillCurves(mechanism, speed, angles, curves);
    const double top = speed * mechanism.crankRadius;
    for (Eigen::Index i = 0; i < angles.size(); ++i) {
      const double angle = angles.radians()[i];
      ASSERT_NEAR(curves.travel[i], travel(mechanism, angle), 1e-15 * mechanism.rodLength);
      ASSERT_NEAR(curves.velocity[i], speed * pinVelocity(mechanism, angle), 1e-14 * top);
      ASSERT_NEAR(curves.acceleration[i], speed * speed * pinAcceleration(mechanism, angle),
                  1e-13 * top * speed);
    }
  }
}

TEST(MotionCurves, AreWrittenInPlaceTheSecondTime) {
  const CrankAngles angles(1, 360);
  MotionCurves curves;
  fillCurves({0.04, 0.14, 0.0}, 100.0, angles, curves);
  const double* before = curves.travel.data();
  fillCurves({0.04, 0.15, 0.0}, 100.0, angles, curves);
  EXPECT_EQ(curves.travel.data(), before);
}

TEST(MotionCurves, RefuseARodThatCannotTurn) {
  MotionCurves curves;
  const auto refusal = refusalOf([&] {
    fillCurves({0.04, 0.038, 0.0}, 100.0, CrankAngles(1, 8), curves);
  });
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->value(), 0.038);
}

}  // namespace
}  // namespace strokewright::motion
