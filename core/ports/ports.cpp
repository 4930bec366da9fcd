#include "core/ports/ports.h"

#include <cmath>
#include <numbers>

#include "core/chamber/chamber.h"

namespace strokewright::ports {

Timing timing(const motion::SliderCrank& mechanism, double travel) {
  const double opens = motion::crankAngleOfTravel(mechanism, travel);
  const double height = motion::topPinHeight(mechanism) - travel;
  const double middle = std::numbers::pi + std::atan2(mechanism.offset, height);
  return {.opens = opens, .shuts = 2.0 * middle - opens};
}

double travelForDuration(const motion::SliderCrank& mechanism, double duration) {
  motion::check(mechanism);
  const auto& [r, l, e] = mechanism;
  const double halfChord = r * std::sin(duration / 2.0);
  const double fromAxis = std::sqrt(l * l - halfChord * halfChord) - r * std::cos(duration / 2.0);
  return motion::topPinHeight(mechanism) - std::sqrt(fromAxis * fromAxis - e * e);
}

double primaryCompressionRatio(const Crankcase& crankcase) {
  return chamber::compressionRatio(
      {.sweptVolume = crankcase.sweptVolume, .clearanceVolume = crankcase.volume});
}

}  // namespace strokewright::ports
