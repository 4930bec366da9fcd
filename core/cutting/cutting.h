#pragma once
/// What comes off head or crown for a change of clearance volume, and what is left then.

namespace strokewright::cutting {

/// Metal faced off an area changes a volume.
struct Cut {
  double volume = 0.0;  ///< [m3] to be gained or lost
  double area = 0.0;    ///< [m2] > 0 that is faced
};

/// Depth of the cut [m]; negative for a negative volume.
/// @throws describe::Refusal (Area) for an area that is not positive
/// @source plane geometry: a flat cut over an area that stays the same
double cutDepth(const Cut& cut);

/// What is left of a thickness [m] after a cut [m]; a negative cut takes nothing.
double leftAfter(double thickness, double cut);

/// What a squish gap [m] becomes when the joint face of the head is cut back [m]: a band that lies
/// recessed in the head comes nearer until the face has reached it, one level with the face does
/// not. A negative cut takes nothing.
/// @param recess depth of the band below the face [m] ≥ 0
/// @source plane geometry
double squishAfterSkim(double squish, double recess, double cut);

/// The step in which a clearance volume [m3] is best told [m3]: 0.01, 0.02, 0.05 or 0.1 ml, the
/// largest that is no more than a hundredth of it.
/// @source common practice, no published source
double volumeStep(double clearanceVolume);

}  // namespace strokewright::cutting
