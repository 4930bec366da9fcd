#include "core/clearance/clearance.h"

#include <boost/math/tools/minima.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace strokewright::clearance {
namespace {

using motion::SliderCrank;

// Gap on one side; side is +1 for +x, -1 for -x.
double gapAt(const SliderCrank& m, const Liner& liner, double side, double crankAngle) {
  const double across = m.crankRadius * std::sin(crankAngle) - m.offset;
  const double along = std::sqrt(m.rodLength * m.rodLength - across * across);
  const double pinAboveEdge = m.crankRadius * std::cos(crankAngle) + along - liner.bottomHeight;
  const double fromLinerAxis = m.offset - liner.cylinderOffset + pinAboveEdge * across / along;
  const double halfWidth = liner.rodHalfWidth * m.rodLength / along;  // as the edge cuts the shank
  return liner.bore / 2.0 - side * fromLinerAxis - halfWidth;
}

Nearest nearestOnSide(const SliderCrank& m, const Liner& liner, double side) {
  constexpr int kSteps = 36;
  constexpr double kStep = 2.0 * std::numbers::pi / kSteps;
  int best = 0;
  double least = std::numeric_limits<double>::max();
  for (int step = 0; step < kSteps; ++step) {
    const double gap = gapAt(m, liner, side, step * kStep);
    if (gap < least) {
      least = gap;
      best = step;
    }
  }
  constexpr int kBits = std::numeric_limits<double>::digits / 2;  // all a minimum can show
  const auto [angle, gap] = boost::math::tools::brent_find_minima(
      [&](double crankAngle) { return gapAt(m, liner, side, crankAngle); }, (best - 1) * kStep,
      (best + 1) * kStep, kBits);
  return {.crankAngle = angle < 0.0 ? angle + 2.0 * std::numbers::pi : angle, .gap = gap};
}

}  // namespace

double bushWall(const SmallEnd& smallEnd) { return (smallEnd.bore - smallEnd.pinDiameter) / 2.0; }

double skirtToWeb(const BottomEnd& piston, double counterweightRadius) {
  return piston.bottomPinHeight - piston.skirtLength - counterweightRadius;
}

double skirtOutOfLiner(const BottomEnd& piston, double linerBottomHeight) {
  return linerBottomHeight - (piston.bottomPinHeight - piston.skirtLength);
}

double pinAboveLinerBottom(const BottomEnd& piston, double linerBottomHeight) {
  return piston.bottomPinHeight - linerBottomHeight;
}

double linerBottomHeight(double deckHeight, double linerLength) { return deckHeight - linerLength; }

Nearest rodToLiner(const motion::SliderCrank& mechanism, const Liner& liner) {
  motion::check(mechanism);
  return std::min(nearestOnSide(mechanism, liner, +1.0), nearestOnSide(mechanism, liner, -1.0),
                  [](const Nearest& a, const Nearest& b) { return a.gap < b.gap; });
}

}  // namespace strokewright::clearance
