#include "core/chamber/chamber.h"

#include <numbers>

#include "core/describe/refusal.h"

namespace strokewright::chamber {

using describe::Refusal;
using units::Kind;

double boreArea(double bore) { return std::numbers::pi / 4.0 * bore * bore; }

double sweptVolume(const SweptVolume& cylinder) {
  return boreArea(cylinder.bore) * cylinder.trueStroke;
}

double gasketVolume(const GasketVolume& gasket) {
  return boreArea(gasket.gasketBore) * gasket.thickness;
}

double deckVolume(const DeckVolume& deck) { return boreArea(deck.bore) * deck.deckClearance; }

double clearanceVolume(const Clearance& parts) {
  return parts.chamber + parts.crown + parts.gasket + parts.deck + parts.crevice;
}

double compressionRatio(const Compression& volumes) {
  if (!(volumes.clearanceVolume > 0.0)) {
    throw Refusal("A clearance volume of {1} leaves no room above the piston: it must exceed {2}.",
                  Kind::Volume, volumes.clearanceVolume, 0.0);
  }
  return 1.0 + volumes.sweptVolume / volumes.clearanceVolume;
}

double travelAtClosing(const motion::SliderCrank& mechanism, double afterBottom) {
  return motion::travel(mechanism,
                        motion::topDeadCentreAngle(mechanism) + std::numbers::pi + afterBottom);
}

double effectiveCompressionRatio(const Trapped& cylinder) {
  return compressionRatio({.sweptVolume = boreArea(cylinder.bore) * cylinder.travel,
                           .clearanceVolume = cylinder.clearanceVolume});
}

double clearanceForRatio(const WantedRatio& wanted) {
  if (!(wanted.compressionRatio > 1.0)) {
    throw Refusal("A compression ratio of {1} cannot be reached: it must exceed {2}.", Kind::Ratio,
                  wanted.compressionRatio, 1.0);
  }
  return wanted.sweptVolume / (wanted.compressionRatio - 1.0);
}

double deckClearanceForVolume(const WantedClearance& wanted) {
  return (wanted.clearanceVolume - wanted.otherVolumes) / boreArea(wanted.bore);
}

}  // namespace strokewright::chamber
