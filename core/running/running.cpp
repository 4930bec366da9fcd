#include "core/running/running.h"

#include <cmath>

#include "core/describe/refusal.h"

namespace strokewright::running {

double rodStretch(const Pull& pull) {
  if (!(pull.section > 0.0)) {
    throw describe::Refusal("The rod has a section of {1}: it must be above {2}.",
                            units::Kind::Area, pull.section, 0.0);
  }
  if (!(pull.modulus > 0.0)) {
    throw describe::Refusal("The rod has a modulus of elasticity of {1}: it must be above {2}.",
                            units::Kind::Stress, pull.modulus, 0.0);
  }
  return pull.mass * pull.acceleration * pull.rodLength / (pull.modulus * pull.section);
}

double clearanceTakenUp(const Clearances& clearances, bool pushedDown) {
  const double all = clearances.main + clearances.bigEnd + clearances.gudgeonPin;
  return pushedDown ? all : all / 2.0;
}

double growth(const Warmed& part) { return part.expansion * part.length * part.warming; }

double closingSpeed(const Closing& closing) {
  if (closing.gapAtRest <= 0.0) return 0.0;
  return std::sqrt(closing.gapAtRest / closing.stretchPerSpeed2);
}

}  // namespace strokewright::running
