#pragma once
/// What closes the squish gap when the engine runs: the rod stretches, the bearings give up their
/// clearance, and everything grows.

namespace strokewright::running {

/// A rod pulled by the masses above it.
struct Pull {
  double mass = 0.0;          ///< [kg] reciprocating
  double acceleration = 0.0;  ///< [m/s2] peak, downwards
  double rodLength = 0.0;     ///< [m] between centres
  double section = 0.0;       ///< [m2] > 0
  double modulus = 0.0;       ///< [Pa] > 0
};

/// How much longer the rod becomes [m]: m a L/(E A).
/// @throws describe::Refusal for a section or modulus that is not positive
/// @source Hooke's law: Shigley, Mechanical Engineering Design, ch. 4. Taken over the whole length
///         with the least section, it is on the safe side.
double rodStretch(const Pull& pull);

/// Diametral clearances between crankcase and piston [m].
struct Clearances {
  double main = 0.0;
  double bigEnd = 0.0;
  double gudgeonPin = 0.0;
};

/// How much of them inertia still takes up at overlap top dead centre [m]: all of it where the gap
/// was measured with the parts pushed down, half of it where they stand in the middle of their
/// play, as they do in a sum of centre distances.
/// @source plane geometry
double clearanceTakenUp(const Clearances& clearances, bool pushedDown);

/// A length that warms.
struct Warmed {
  double length = 0.0;     ///< [m]
  double expansion = 0.0;  ///< [1/K]
  double warming = 0.0;    ///< [K]
};

/// How much longer it becomes [m].
/// @source linear expansion: Shigley ch. 3; a mean coefficient and a mean temperature
double growth(const Warmed& part);

/// What a gap loses as the square of speed, and the gap at rest.
struct Closing {
  double gapAtRest = 0.0;         ///< [m] hot, bearings taken up
  double stretchPerSpeed2 = 0.0;  ///< [m s2/rad2] > 0
};

/// Speed [rad/s] at which the gap is gone; 0 where it is gone at rest.
double closingSpeed(const Closing& closing);

}  // namespace strokewright::running
