#pragma once
/// What goes up and down, what goes round, and what the webs must hold against it.

namespace strokewright::masses {

/// All of one cylinder that moves with the piston.
struct Reciprocating {
  double piston = 0.0;           ///< [kg] bare
  double rings = 0.0;            ///< [kg] all of one piston
  double gudgeonPin = 0.0;       ///< [kg]
  double circlips = 0.0;         ///< [kg] both
  double smallEndBearing = 0.0;  ///< [kg] 0 where it was weighed with the rod
  double rodSmallEnd = 0.0;      ///< [kg] small end on the scale, rod hung level
};

/// Reciprocating mass of one cylinder [kg].
/// @source two-mass rod as Den Hartog ch. 5
double reciprocatingMass(const Reciprocating& parts);

/// All of one rod that goes round with the crankpin.
struct Rotating {
  double rodBigEnd = 0.0;   ///< [kg] big end on the scale, rod hung level
  double bigEndCage = 0.0;  ///< [kg] cage with its needles
};

/// Rotating mass of one rod on its crankpin [kg].
/// @source two-mass rod as Den Hartog ch. 5
double rotatingMass(const Rotating& parts);

struct BobWeight {
  double rotatingMass = 0.0;       ///< [kg] of one rod
  double reciprocatingMass = 0.0;  ///< [kg] of one cylinder
  double balanceFactor = 0.0;      ///< [1] share of the reciprocating mass to balance
};

/// What one rod adds to the bob weight of its crankpin [kg]: m_rot + BF · m_rec.
/// @source common practice, no published source
double bobWeight(const BobWeight& question);

struct StaticMoment {
  double crankRadius = 0.0;   ///< [m] throw
  double bobWeight = 0.0;     ///< [kg]
  double crankpinMass = 0.0;  ///< [kg]
};

/// Static moment the counterweights of one throw must provide [kg m]: r (M_bob + m_pin). The webs'
/// own moment is not in it.
/// @source static balance about the crank axis
double staticMoment(const StaticMoment& crankThrow);

struct RodLoad {
  double reciprocatingMass = 0.0;  ///< [kg]
  double acceleration = 0.0;       ///< [m/s2] of the piston, peak downward
};

/// Pull on the rod by the reciprocating mass, without gas pressure [N].
/// @source Newton's second law
double rodTension(const RodLoad& load);

}  // namespace strokewright::masses
