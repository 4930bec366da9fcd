#include "core/masses/masses.h"

#include <gtest/gtest.h>

#include "tests/bench_units.h"

namespace strokewright::masses {
namespace {

using namespace bench;

// A parallel twin with one rod on each pin, worked by hand; the 50 per cent are common practice.
TEST(Masses, AreThoseOfAKnownTwin) {
  const double reciprocating = reciprocatingMass({.piston = 215 * g,
                                                  .rings = 14 * g,
                                                  .gudgeonPin = 62 * g,
                                                  .circlips = 2 * g,
                                                  .smallEndBearing = 0.0,
                                                  .rodSmallEnd = 105 * g});
  const double rotating = rotatingMass({.rodBigEnd = 260 * g, .bigEndCage = 30 * g});
  const double bob = bobWeight(
      {.rotatingMass = rotating, .reciprocatingMass = reciprocating, .balanceFactor = 0.5});
  EXPECT_DOUBLE_EQ(reciprocating, 398 * g);
  EXPECT_DOUBLE_EQ(rotating, 290 * g);
  EXPECT_DOUBLE_EQ(bob, 489 * g);
  EXPECT_DOUBLE_EQ(
      staticMoment({.crankRadius = 37 * mm, .bobWeight = bob, .crankpinMass = 240 * g}),
      26973 * g * mm);
  EXPECT_NEAR(rodTension({.reciprocatingMass = reciprocating, .acceleration = 37890.0}), 15080.2,
              0.05);
}

TEST(Masses, CountASmallEndBearingThatWasWeighedByItself) {
  EXPECT_DOUBLE_EQ(reciprocatingMass({.piston = 100 * g, .smallEndBearing = 7 * g}), 107 * g);
}

}  // namespace
}  // namespace strokewright::masses
