#include "core/masses/masses.h"

#include <gtest/gtest.h>

#include "core/masses/results.h"
#include "tests/assess/rules_fixture.h"
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

/// The twin of 489 g a pin with its cylinders as a V.
double bobWeightOfV(const char* throws_, const char* axes, int cylinder) {
  model::Project project = assess::sample("tansy-270");
  model::Engine& target = project.engines[1];
  for (const char* key : {"firing_order", "fires_turn_later"}) assess::type(target, key, "");
  assess::type(target, "throw_ahead_rad", throws_);
  assess::type(target, "cylinder_axis_rad", axes);
  return assess::Assessment(project)(1, out::bobWeight, cylinder).value;
}

// Common practice, no published source: half of the sum of both reciprocating masses, and both
// rods' big ends, where two rods turn on one pin.
TEST(Masses, OfAVAreThoseOfBothRodsOnThePin) {
  EXPECT_NEAR(bobWeightOfV("0; 0", "0; 90", 0), 978 * g, 1e-9);
  EXPECT_NEAR(bobWeightOfV("0; 0", "0; 90", 1), 978 * g, 1e-9);
  EXPECT_NEAR(bobWeightOfV("0; -30", "0; 75", 0), 489 * g, 1e-9) << "a pin for each";
  EXPECT_NEAR(bobWeightOfV("0; 180", "0; 180", 0), 489 * g, 1e-9) << "opposed";
  EXPECT_NEAR(bobWeightOfV("0; 270", "0; 0", 0), 489 * g, 1e-9) << "in line";
  EXPECT_NEAR(bobWeightOfV("", "0; 0", 0), 489 * g, 1e-9) << "in line, whatever the throws";
}

TEST(Masses, OfAFlatPlaneEightCountTwoRodsOnEachPin) {
  model::Project project = assess::sample("tansy-270");
  model::Engine& target = project.engines[1];
  for (const char* key : {"firing_order", "fires_turn_later"}) assess::type(target, key, "");
  assess::type(target, "cylinder_count", "8");
  assess::type(target, "throw_ahead_rad", "0; 180; 180; 0; 0; 180; 180; 0");
  assess::type(target, "cylinder_axis_rad", "0; 0; 0; 0; 90; 90; 90; 90");
  assess::type(target, "rod_big_end_mass_kg", "260; 270; 280; 290; 300; 310; 320; 330");
  const assess::Assessment assessment(project);
  for (int pin = 0; pin < 4; ++pin) {
    const double both = (978 - 520 + 260 + 10 * pin + 300 + 10 * pin) * g;
    EXPECT_NEAR(assessment(1, out::bobWeight, pin).value, both, 1e-9);
    EXPECT_NEAR(assessment(1, out::bobWeight, pin + 4).value, both, 1e-9);
  }
}

TEST(Masses, CountASmallEndBearingThatWasWeighedByItself) {
  EXPECT_DOUBLE_EQ(reciprocatingMass({.piston = 100 * g, .smallEndBearing = 7 * g}), 107 * g);
}

}  // namespace
}  // namespace strokewright::masses
