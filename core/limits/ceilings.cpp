#include "core/limits/ceilings.h"

#include <cmath>
#include <numbers>

#include "core/describe/refusal.h"

namespace strokewright::limits {
namespace {

using describe::Refusal;
using units::Kind;

// Speed of sound times valve area over bore area: the piston speed that the inlet chokes.
double choking(const Breathing& b) {
  if (!(b.valveDiameter < b.bore)) {
    throw Refusal(kValveNotInBore, Kind::Length, b.valveDiameter, b.bore);
  }
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
  if (!(bigEnd.pinDiameter < bigEnd.eyeDiameter)) {
    throw Refusal(kPinNotInEye, Kind::Length, bigEnd.pinDiameter, bigEnd.eyeDiameter);
  }
  return speedFactor / ((bigEnd.pinDiameter + bigEnd.eyeDiameter) / 2.0);
}

double breathingIndex(const Breathing& breathing, double meanPistonSpeed) {
  return meanPistonSpeed / choking(breathing);
}

double pistonSpeedAtBreathingIndex(const Breathing& breathing, double limit) {
  return limit * choking(breathing);
}

}  // namespace strokewright::limits
