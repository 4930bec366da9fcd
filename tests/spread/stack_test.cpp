#include "core/spread/stack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "tests/bench_units.h"

namespace strokewright::spread {
namespace {

using namespace bench;
using describe::Shape;

constexpr double kChance = 1e-7;  // what SumSpread promises

double normalBelow(double z) { return std::erfc(-z / std::numbers::sqrt2) / 2.0; }

Stack cylinder(const std::vector<Source>& sources) {
  return {.gap = 0.9 * mm, .swept = 336 * ml, .clearance = 34 * ml, .sources = sources};
}

TEST(GapSpread, LooksAtTheGapAlone) {
  const Stack stack = cylinder({{Shape::Rectangular, 0.02 * mm, 0.0, 0.1 * ml},
                                {Shape::Normal, 0.0, 0.0, 0.3 * ml},
                                {Shape::Rectangular, -0.03 * mm, 0.2 * ml, 0.0}});
  const SumSpread gap = gapSpread(stack);
  EXPECT_NEAR(gap.low(), 0.85 * mm, 1e-15);
  EXPECT_NEAR(gap.high(), 0.95 * mm, 1e-15);
  EXPECT_NEAR(gap.chanceBelow(0.86 * mm), 0.01 * 0.01 / (2 * 0.04 * 0.06), kChance);
}

TEST(RatioSpread, FollowsTheSweptVolumeWhereTheClearanceIsSure) {
  const RatioSpread ratio(cylinder({{Shape::Normal, 0.0, 2.0 * ml, 0.0}}));
  for (const double z : {-3.0, -1.0, 0.0, 0.5, 2.0}) {
    EXPECT_NEAR(ratio.chanceBelow(1.0 + (336.0 + z) / 34.0), normalBelow(z), kChance);
  }
  EXPECT_NEAR(ratio.quantile(0.5), 1.0 + 336.0 / 34.0, 1e-8);
}

TEST(RatioSpread, FollowsTheClearanceWhereTheSweptVolumeIsSure) {
  const RatioSpread ratio(cylinder({{Shape::Rectangular, 0.0, 0.0, 0.5 * ml}}));
  for (const double chance : {0.0, 0.1, 0.25, 0.9, 1.0}) {
    const double clearance = 34.5 - chance;
    EXPECT_NEAR(ratio.chanceBelow(1.0 + 336.0 / clearance), chance, kChance);
  }
  EXPECT_NEAR(ratio.low(), 1.0 + 336.0 / 34.5, 1e-12);
  EXPECT_NEAR(ratio.high(), 1.0 + 336.0 / 33.5, 1e-12);
}

// The bore, in the plane of the volumes: both grow alike, and the ratio stays.
TEST(RatioSpread, DoesNotMoveWithAnErrorThatLeavesItAsItIs) {
  const RatioSpread ratio(cylinder({{Shape::Normal, 0.0, 3.36 * ml, 0.34 * ml}}));
  EXPECT_LT(ratio.chanceBelow(1.0 + 335.999 / 34.0), kChance);
  EXPECT_GT(ratio.chanceBelow(1.0 + 336.001 / 34.0), 1.0 - kChance);
  EXPECT_NEAR(ratio.quantile(0.001), 1.0 + 336.0 / 34.0, 1e-7);
}

TEST(RatioSpread, OfTwoNormalVolumesHasItsClosedForm) {
  const RatioSpread ratio(cylinder({{Shape::Normal, 0.0, 2.0 * ml, 0.0},
                                    {Shape::Normal, 0.0, 0.0, 0.6 * ml},
                                    {Shape::Normal, 0.0, 0.5 * ml, -0.2 * ml}}));
  for (const double x : {10.5, 10.8, 10.9, 11.1}) {
    const double sigma = std::hypot(1.0, (x - 1) * 0.3, 0.25 + (x - 1) * 0.1);
    EXPECT_NEAR(ratio.chanceBelow(x), normalBelow(((x - 1) * 34 - 336) / sigma), kChance);
  }
}

TEST(RatioSpread, FillsAHistogramThatHoldsEverything) {
  const RatioSpread ratio(cylinder({{Shape::Triangular, 0.02 * mm, 0.0, 0.1 * ml},
                                    {Shape::Rectangular, 0.0, 0.3 * ml, 0.2 * ml}}));
  double total = 0.0;
  for (const double chance : ratio.histogram({ratio.low(), ratio.high(), 60})) {
    EXPECT_GE(chance, -kChance);
    total += chance;
  }
  EXPECT_NEAR(total, 1.0, 1e-12);
}

TEST(RatioSpread, OfNoErrorsIsAPoint) {
  const RatioSpread ratio(cylinder({}));
  EXPECT_DOUBLE_EQ(ratio.quantile(0.3), 1.0 + 336.0 / 34.0);
  EXPECT_EQ(ratio.chanceBelow(10.8), 0.0);
  EXPECT_EQ(ratio.chanceBelow(10.9), 1.0);
}

TEST(RatioSpread, RefusesAVolumeThatMayReachZero) {
  const auto refusal = refusalOf([] {
    RatioSpread(cylinder({{Shape::Rectangular, 0.0, 0.0, -35 * ml}}));
  });
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->kind(), units::Kind::Volume);
  EXPECT_NEAR(refusal->value(), -1 * ml, 1e-15);
  EXPECT_EQ(refusal->sentence(),
            "A volume that may come down to {1} leaves the compression ratio open: it must exceed "
            "{2}.");
  EXPECT_TRUE(refusalOf([] { RatioSpread(cylinder({{Shape::Normal, 0.0, 100 * ml, 0.0}})); }));
}

TEST(RatioSpread, RefusesWhatIsNoNumber) {
  Stack stack = cylinder({});
  stack.clearance = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(refusalOf([&] { RatioSpread{stack}; }));
}

}  // namespace
}  // namespace strokewright::spread
