#include "core/deck/stack.h"

#include <gtest/gtest.h>

#include "core/motion/slider_crank.h"
#include "core/units/style.h"
#include "tests/bench_units.h"

namespace strokewright::deck {
namespace {

using namespace bench;

// Common practice, no published source.
TEST(Stack, MakesASpacerOfThreeAndAHalfForACrownFourProudOnTwoGaskets) {
  const double clearance = deckClearance(
      {.deckHeight = deckHeight({.heightWithoutSpacer = 2 * 0.25 * mm}), .crownHeight = 4.0 * mm});
  EXPECT_DOUBLE_EQ(
      spacerToMake({.wantedDeckClearance = 0.0, .deckClearanceWithoutSpacer = clearance}),
      3.5 * mm);
}

// A parallel twin with a longer throw; worked by hand, no published source.
TEST(Stack, AsksForASkimWhereTheWantedSquishNeedsALowerBlock) {
  const double stack = stackHeight(
      {.seatHeight = 120.20 * mm, .baseGaskets = 0.25 * mm, .barrelHeight = 75.15 * mm});
  const double crown = crownHeight(
      {.topPinHeight = motion::topPinHeight({.crankRadius = 37 * mm, .rodLength = 126.5 * mm}),
       .compressionHeight = 30.5 * mm});
  EXPECT_NEAR(crown / mm, 194.0, 1e-12);
  const double bare = deckClearance(
      {.deckHeight = deckHeight({.heightWithoutSpacer = stack}), .crownHeight = crown});
  const Head head{.gasket = 0.65 * mm};
  const double spacer = spacerToMake({.wantedDeckClearance = deckClearanceForSquish(0.9 * mm, head),
                                      .deckClearanceWithoutSpacer = bare});
  EXPECT_NEAR(spacer / mm, -1.35, 1e-12);
  const double fitted =
      deckClearance({.deckHeight = deckHeight({.heightWithoutSpacer = stack, .spacer = spacer}),
                     .crownHeight = crown});
  EXPECT_NEAR(squishGap(fitted, head) / mm, 0.9, 1e-12);
}

// A single whose heights were taken to the block face; worked by hand, no published source.
TEST(Stack, AddsTheLinerProtrusionToABlockFace) {
  const DeckAndCrown heights{
      .deckHeight = deckHeight({.heightWithoutSpacer = 344.62 * mm, .linerProtrusion = 0.08 * mm}),
      .crownHeight = crownHeight({.topPinHeight = 280 * mm, .compressionHeight = 65 * mm})};
  EXPECT_NEAR(protrusion(heights) / mm, 0.3, 1e-12);
  EXPECT_EQ(deckClearance(heights), -protrusion(heights));
  EXPECT_NEAR(squishGap(deckClearance(heights), {.gasket = 1.3 * mm}) / mm, 1.0, 1e-12);
}

TEST(Stack, CountsARecessForTheGapAndACrownRiseAgainstIt) {
  const Head head{.gasket = 0.8 * mm, .recess = 0.3 * mm, .crownRise = 0.1 * mm};
  EXPECT_NEAR(squishGap(0.2 * mm, head) / mm, 1.2, 1e-12);
  EXPECT_NEAR(deckClearanceForSquish(1.2 * mm, head) / mm, 0.2, 1e-12);
}

}  // namespace
// Common practice, no published source: plates are made to a hundredth of a millimetre.
TEST(ASpacer, IsMadeToTheNearestHundredth) {
  EXPECT_NEAR(spacerAsMade(1.802 * mm), 1.80 * mm, 1e-12);
  EXPECT_NEAR(spacerAsMade(0.9499 * mm), 0.95 * mm, 1e-12);
  EXPECT_NEAR(spacerAsMade(-1.358 * mm), -1.36 * mm, 1e-12);
  EXPECT_NEAR(spacerAsMade(0.0), 0.0, 1e-12);
}

TEST(ASpacer, IsMadeAsItIsShown) {
  const units::Style bench;
  for (int microns = -2000; microns <= 2000; ++microns) {
    const double thickness = microns * 1e-3 * mm;
    EXPECT_EQ(bench.number(units::Kind::FineLength, spacerAsMade(thickness)),
              bench.number(units::Kind::FineLength, thickness))
        << microns;
    EXPECT_NEAR(spacerAsMade(spacerAsMade(thickness)), spacerAsMade(thickness), 1e-12) << microns;
  }
}

}  // namespace strokewright::deck
