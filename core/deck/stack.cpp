#include "core/deck/stack.h"

#include <cmath>

namespace strokewright::deck {

double stackHeight(const Stack& stack) {
  return stack.seatHeight + stack.baseGaskets + stack.barrelHeight;
}

double deckHeight(const Deck& deck) {
  return deck.heightWithoutSpacer + deck.linerProtrusion + deck.spacer;
}

double crownHeight(const Crown& crown) { return crown.topPinHeight + crown.compressionHeight; }

double deckClearance(const DeckAndCrown& heights) {
  return heights.deckHeight - heights.crownHeight;
}

double protrusion(const DeckAndCrown& heights) { return heights.crownHeight - heights.deckHeight; }

double squishGap(double deckClearance, const Head& head) {
  return deckClearance + head.gasket + head.recess - head.crownRise;
}

double deckClearanceForSquish(double wantedGap, const Head& head) {
  return wantedGap - head.gasket - head.recess + head.crownRise;
}

double spacerToMake(const SpacerQuestion& question) {
  return question.wantedDeckClearance - question.deckClearanceWithoutSpacer;
}

double spacerAsMade(double thickness) {
  constexpr double kHalf = 1.0 + 4e-12;  // goes up whichever way it was computed, as it is shown
  return std::round(thickness / kPlateStep * kHalf) * kPlateStep;
}

}  // namespace strokewright::deck
