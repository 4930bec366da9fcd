#include "core/clearance/clearance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/bench_units.h"

namespace strokewright::clearance {
namespace {

using namespace bench;

TEST(BushWall, IsHalfOfWhatTheEyeIsWider) {
  EXPECT_NEAR(bushWall({.bore = 38 * mm, .pinDiameter = 35 * mm}) / mm, 1.5, 1e-12);
  EXPECT_LT(bushWall({.bore = 17 * mm, .pinDiameter = 18 * mm}), 0.0);
}

// A parallel twin without offset, worked by hand, no published source.
TEST(BottomEnd, IsThatOfAKnownTwin) {
  const BottomEnd piston{.bottomPinHeight = 89.5 * mm, .skirtLength = 24 * mm};
  EXPECT_NEAR(skirtToWeb(piston, 61 * mm) / mm, 4.5, 1e-12);
  EXPECT_NEAR(skirtOutOfLiner(piston, 80 * mm) / mm, 14.5, 1e-12);
  EXPECT_NEAR(pinAboveLinerBottom(piston, 80 * mm) / mm, 9.5, 1e-12);
  EXPECT_NEAR(linerBottomHeight(194.25 * mm, 114.25 * mm) / mm, 80.0, 1e-12);
}

// The gap drawn instead of derived: both edges of the shank, cut by the line of the liner's edge.
double drawnGap(const motion::SliderCrank& mechanism, const Liner& liner, double crankAngle) {
  const motion::Pose pose = motion::pose(mechanism, crankAngle);
  const double ux = (pose.crankpin.x - pose.gudgeonPin.x) / mechanism.rodLength;
  const double uy = (pose.crankpin.y - pose.gudgeonPin.y) / mechanism.rodLength;
  double least = 1.0;
  for (const double side : {1.0, -1.0}) {
    const double edgeX = pose.gudgeonPin.x - side * liner.rodHalfWidth * uy;
    const double edgeY = pose.gudgeonPin.y + side * liner.rodHalfWidth * ux;
    const double crossing = edgeX + (liner.bottomHeight - edgeY) / uy * ux;
    least = std::min(least, liner.bore / 2 - side * (crossing - liner.cylinderOffset));
  }
  return least;
}

TEST(RodToLiner, IsTheLeastOfAllThatADrawingShows) {
  for (const double pinOffset : {0.0, -0.0005, 0.002}) {
    for (const double cylinderOffset : {0.0, 0.004, -0.006}) {
      const motion::SliderCrank mechanism{
          .crankRadius = 37 * mm, .rodLength = 126.5 * mm, .offset = cylinderOffset + pinOffset};
      const Liner liner{.bore = 76 * mm,
                        .bottomHeight = 80 * mm,
                        .cylinderOffset = cylinderOffset,
                        .rodHalfWidth = 9 * mm};
      const Nearest nearest = rodToLiner(mechanism, liner);
      EXPECT_NEAR(drawnGap(mechanism, liner, nearest.crankAngle), nearest.gap, 1e-15);
      double least = 1.0;
      for (int i = 0; i < 36000; ++i) {
        least = std::min(least, drawnGap(mechanism, liner, i * std::numbers::pi / 18000));
      }
      EXPECT_LE(nearest.gap, least + 1e-16);
      EXPECT_NEAR(nearest.gap, least, 1e-9);
    }
  }
}

// A barrel moved over with its piston leaves rod and liner as they stand to each other but for the
// lean of the rod; a piston moved over in its barrel comes nearer one side by nearly all of it.
TEST(RodToLiner, IsMeasuredFromTheAxisOfTheLiner) {
  const motion::SliderCrank mechanism{
      .crankRadius = 1 * mm, .rodLength = 500 * mm, .offset = 4 * mm};
  Liner liner{.bore = 76 * mm, .bottomHeight = 490 * mm, .rodHalfWidth = 9 * mm};
  EXPECT_NEAR(rodToLiner(mechanism, liner).gap / mm, 38.0 - 9.0 - 4.0, 0.2);
  liner.cylinderOffset = 4 * mm;
  EXPECT_NEAR(rodToLiner(mechanism, liner).gap / mm, 38.0 - 9.0, 0.2);
}

TEST(RodToLiner, RefusesARodThatCannotTurn) {
  EXPECT_TRUE(refusalOf([] { return rodToLiner({0.04, 0.038, 0.0}, {}); }));
}

}  // namespace
}  // namespace strokewright::clearance
