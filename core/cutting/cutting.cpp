#include "core/cutting/cutting.h"

#include <algorithm>

#include "core/describe/refusal.h"

namespace strokewright::cutting {

double cutDepth(const Cut& cut) {
  if (!(cut.area > 0.0)) {
    throw describe::Refusal("An area of {1} cannot be faced: it must be more than {2}.",
                            units::Kind::Area, cut.area, 0.0);
  }
  return cut.volume / cut.area;
}

double leftAfter(double thickness, double cut) { return thickness - std::max(cut, 0.0); }

double squishAfterSkim(double squish, double recess, double cut) {
  return squish - std::clamp(cut, 0.0, recess);
}

double volumeStep(double clearanceVolume) {
  for (const double step : {0.1e-6, 0.05e-6, 0.02e-6}) {
    if (step <= clearanceVolume / 100.0) return step;
  }
  return 0.01e-6;
}

}  // namespace strokewright::cutting
