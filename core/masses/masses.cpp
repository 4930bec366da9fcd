#include "core/masses/masses.h"

namespace strokewright::masses {

double reciprocatingMass(const Reciprocating& parts) {
  return parts.piston + parts.rings + parts.gudgeonPin + parts.circlips + parts.smallEndBearing +
         parts.rodSmallEnd;
}

double rotatingMass(const Rotating& parts) { return parts.rodBigEnd + parts.bigEndCage; }

double bobWeight(const BobWeight& question) {
  return question.rotatingMass + question.balanceFactor * question.reciprocatingMass;
}

double staticMoment(const StaticMoment& crankThrow) {
  return crankThrow.crankRadius * (crankThrow.bobWeight + crankThrow.crankpinMass);
}

double rodTension(const RodLoad& load) { return load.reciprocatingMass * load.acceleration; }

}  // namespace strokewright::masses
