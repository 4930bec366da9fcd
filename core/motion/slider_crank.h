#pragma once
/// Where the piston is, how fast it goes and how hard it pulls: exact motion of one slider-crank,
/// with offset.
///
/// Look at the engine from the declared end. Rotation is positive from the cylinder axis (+y)
/// towards +x. The crank angle is zero with the throw along the cylinder axis. The gudgeon pin runs
/// on the line x = offset. In the power stroke the piston leans towards -x, so a positive offset is
/// one away from the thrust side.
///
/// Per rad and per rad² mean: times the shaft speed, times its square. Every function throws
/// describe::Refusal where the mechanism cannot turn (see check()).

namespace strokewright::motion {

/// The three lengths that fix how one piston moves.
struct SliderCrank {
  double crankRadius = 0.0;  ///< [m] throw; > 0
  double rodLength = 0.0;    ///< [m] between centres; > crankRadius + |offset|
  double offset = 0.0;       ///< [m] net offset of the gudgeon pin line from the crank axis

  bool operator==(const SliderCrank&) const = default;
};

/// A largest value and where in the turn it is met.
struct Peak {
  double crankAngle = 0.0;  ///< [rad]
  double magnitude = 0.0;   ///< [m] per rad, or per rad²; never negative
};

/// Whether the crank can turn right round: a throw above 0, and a rod longer than throw and offset
/// together.
bool canTurn(const SliderCrank& mechanism);

/// @throws describe::Refusal (Length) for a throw that is not positive, and for a rod not longer
///         than throw and offset together: such a crank has no bottom dead centre.
void check(const SliderCrank& mechanism);

/// Height of the gudgeon pin above the crank axis [m] at a crank angle [rad].
/// @source plane geometry; without offset as Heywood ch. 2
double pinHeight(const SliderCrank& mechanism, double crankAngle);

/// First derivative of pinHeight [m per rad]; negative on the way down.
/// @source derivative of the plane geometry
double pinVelocity(const SliderCrank& mechanism, double crankAngle);

/// Second derivative of pinHeight [m per rad²]; negative where the piston is pulled down.
/// @source derivative of the plane geometry
double pinAcceleration(const SliderCrank& mechanism, double crankAngle);

/// Crank angle of top dead centre [rad]: rod and throw in one line. asin(e/(L + r)).
double topDeadCentreAngle(const SliderCrank& mechanism);

/// Crank angle of bottom dead centre [rad]: rod folded over the throw. π + asin(e/(L - r)).
double bottomDeadCentreAngle(const SliderCrank& mechanism);

/// Greatest height of the gudgeon pin [m]: √((L + r)² - e²).
double topPinHeight(const SliderCrank& mechanism);

/// Least height of the gudgeon pin [m]: √((L - r)² - e²).
double bottomPinHeight(const SliderCrank& mechanism);

/// Travel between the dead centres [m]; never less than twice the throw. Computed without the
/// difference of two heights, so the last digits of a stroke nudged by its ± are sound.
/// @source plane geometry: S = 4 r L / (top + bottom height)
double trueStroke(const SliderCrank& mechanism);

/// Stroke that a rod can just no longer turn [m]: with throw and offset together as long as the rod
/// itself. 0 where the offset alone is that long.
/// @source plane geometry: 2 √(L (L - |e|))
double longestStroke(double rodLength, double offset);

/// The throw [m] that gives a true stroke with this rod and offset: the inverse of trueStroke().
/// @param trueStroke [m] > 0 and below longestStroke()
/// @throws describe::Refusal (Length) where no throw gives that stroke
/// @source plane geometry: r² = S²/4 · (4 (L² - e²) - S²) / (4 L² - S²)
double crankRadiusForStroke(double trueStroke, double rodLength, double offset);

/// Angle of the rod to the cylinder axis [rad], positive with the crankpin on the +x side of the
/// gudgeon pin: sin φ = (r sin θ - e)/L.
double rodAngle(const SliderCrank& mechanism, double crankAngle);

/// Largest angle of the rod to the cylinder axis, either side [rad]: asin((r + |e|)/L).
double largestRodAngle(const SliderCrank& mechanism);

/// Travel of the piston down from top dead centre [m] at a crank angle [rad].
double travel(const SliderCrank& mechanism, double crankAngle);

/// Crank angle on the way down [rad], top to bottom dead centre, at which the piston has come down
/// by a travel [m] between 0 and the true stroke. Precise at the dead centres too.
/// @throws describe::Refusal (Length) for a travel outside the stroke
/// @source plane geometry: half-angle form of the triangle crank axis, crankpin, gudgeon pin
double crankAngleOfTravel(const SliderCrank& mechanism, double travel);

/// Largest piston speed on the way down [m per rad], exact. Its crank angle is also where the
/// acceleration turns from pulling down to pushing up.
/// @source root of pinAcceleration between the dead centres (there is one), safeguarded Newton
Peak peakDownwardSpeed(const SliderCrank& mechanism);

/// Largest downward acceleration [m per rad²], exact: what stretches the rod and lifts the ring. It
/// lies at top dead centre without an offset, r (1 + r/L), and close to it with one. (The upward
/// peak near bottom dead centre is the smaller one for r/L up to 0.45 and an offset up to 0.7 of
/// L - r, which every usual engine keeps far within. The larger the throw, the less offset makes it
/// the larger one: 0.68 of L - r at r/L = 0.5, 0.58 at 0.66, 0.36 at 0.8, and from 0.881 none at
/// all; scanned over a whole turn in steps of 0.0125°.)
/// @source closed form without offset (Heywood ch. 2); root of the third derivative otherwise,
///         safeguarded Newton
Peak peakDownwardAcceleration(const SliderCrank& mechanism);

struct PistonRun {
  double trueStroke = 0.0;  ///< [m]
  double speed = 0.0;       ///< [rad/s]
};

/// Mean piston speed [m/s]: two strokes a turn, ω S/π.
/// @source Heywood ch. 2
double meanSpeed(const PistonRun& run);

struct Point {
  double x = 0.0;  ///< [m] away from the thrust side
  double y = 0.0;  ///< [m] along the cylinder axis

  bool operator==(const Point&) const = default;
};

/// The mechanism as it stands at one crank angle, crank axis at the origin: for drawings.
struct Pose {
  Point crankpin;
  Point gudgeonPin;
  double rodAngle = 0.0;  ///< [rad] as rodAngle()
};

Pose pose(const SliderCrank& mechanism, double crankAngle);

}  // namespace strokewright::motion
