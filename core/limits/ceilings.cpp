#include "core/limits/ceilings.h"

#include <cmath>
#include <numbers>

namespace strokewright::limits {
namespace {

// Speed of sound times valve area over bore area: the piston speed that the inlet chokes.
double choking(const Breathing& b) {
  const double diameters = b.valveDiameter / b.bore;
  return b.valveCount * diameters * diameters * b.flowCoefficient * b.soundSpeed;
}

}  // namespace

double pistonSpeedCeiling(const PistonSpeedLimit& limit) {
  return std::numbers::pi * limit.meanPistonSpeed / limit.trueStroke;
}

double accelerationCeiling(const AccelerationLimit& limit) {
  return std::sqrt(limit.acceleration / limit.peakPerSpeed2);
}

double flutterAcceleration(double ringConstant, double ringWidth) {
  return ringConstant / ringWidth;
}

double rodTensionAcceleration(const RodStrength& rod) {
  return rod.stress * rod.leastSection / rod.reciprocatingMass;
}

double speedFactorCeiling(const BigEnd& bigEnd, double speedFactor) {
  return speedFactor / ((bigEnd.pinDiameter + bigEnd.eyeDiameter) / 2.0);
}

double breathingIndex(const Breathing& breathing, double meanPistonSpeed) {
  return meanPistonSpeed / choking(breathing);
}

double pistonSpeedAtBreathingIndex(const Breathing& breathing, double limit) {
  return limit * choking(breathing);
}

}  // namespace strokewright::limits
