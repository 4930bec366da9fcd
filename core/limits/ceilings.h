#pragma once
/// How fast the engine may turn, limit by limit. Each ceiling is the shaft speed at which one limit
/// is just met; the lowest governs.

#include <string_view>

namespace strokewright::limits {

/// What is refused here and forbidden by a rule too, so that results which wait do not hide it:
/// {1} and {2} are the diameters.
inline constexpr std::string_view kPinNotInEye =
    "A crankpin of {1} is not smaller than its eye of {2}: swapped?";
inline constexpr std::string_view kValveNotInBore =
    "An inlet valve of {1} does not open into a bore of {2}.";

struct PistonSpeedLimit {
  double trueStroke = 0.0;       ///< [m] > 0
  double meanPistonSpeed = 0.0;  ///< [m/s] allowed
};

/// Shaft speed at which the mean piston speed meets its limit [rad/s].
/// @source Heywood ch. 2; the limit itself is common practice
double pistonSpeedCeiling(const PistonSpeedLimit& limit);

struct AccelerationLimit {
  double acceleration = 0.0;   ///< [m/s2] allowed
  double peakPerSpeed2 = 0.0;  ///< [m per rad²] > 0; motion::peakDownwardAcceleration()
};

/// Shaft speed at which the peak downward acceleration of the piston meets a limit [rad/s]: ring
/// flutter, rod tension and what the donor has stood are three such limits.
double accelerationCeiling(const AccelerationLimit& limit);

/// Acceleration at which a ring lifts off its groove [m/s2].
/// @param ringConstant [m2/s2] acceleration times width a plain rectangular ring stands
/// @param ringWidth    [m] along the bore, > 0
/// @source common practice, no published source
double flutterAcceleration(double ringConstant, double ringWidth);

struct RodStrength {
  double stress = 0.0;             ///< [Pa] allowed
  double leastSection = 0.0;       ///< [m2] of the shank
  double reciprocatingMass = 0.0;  ///< [kg] > 0
};

/// Acceleration at which the least section of the rod meets its stress [m/s2]: σ A/m.
/// @source Newton's second law; the stress limit is common practice
double rodTensionAcceleration(const RodStrength& rod);

struct BigEnd {
  double pinDiameter = 0.0;  ///< [m]
  double eyeDiameter = 0.0;  ///< [m]
};

/// Shaft speed at which the big-end bearing meets its speed factor [rad/s]: the factor over the
/// mean of pin and eye diameter.
/// @param speedFactor [m rad/s] allowed
/// @throws describe::Refusal (Length) for a pin that is not smaller than its eye
/// @source common practice, no published source
double speedFactorCeiling(const BigEnd& bigEnd, double speedFactor);

/// What the breathing of one cylinder hangs on.
struct Breathing {
  double bore = 0.0;             ///< [m]
  double valveCount = 0.0;       ///< inlet valves of one cylinder, > 0
  double valveDiameter = 0.0;    ///< [m] inlet valve head, > 0
  double flowCoefficient = 0.0;  ///< mean over the opening, > 0
  double soundSpeed = 0.0;       ///< [m/s] at the inlet, > 0
};

/// Inlet Mach index Z at a mean piston speed [m/s]: bore area times piston speed over valve area
/// times flow coefficient times speed of sound. A ceiling of power, not of safety.
/// @throws describe::Refusal (Length) for a valve that is not smaller than the bore
/// @source Taylor vol. 1 ch. 6
double breathingIndex(const Breathing& breathing, double meanPistonSpeed);

/// Mean piston speed [m/s] at which the breathing index reaches a limit: its ceiling is
/// pistonSpeedCeiling() of that speed.
/// @throws describe::Refusal (Length) as breathingIndex()
/// @source Taylor vol. 1 ch. 6
double pistonSpeedAtBreathingIndex(const Breathing& breathing, double limit);

}  // namespace strokewright::limits
