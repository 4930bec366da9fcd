#pragma once
/// What a filling from the burette tells of the piston crown, and what its error is worth.

#include "core/chamber/chamber.h"

namespace strokewright::burette {

struct CrownFilling {
  double bore = 0.0;    ///< [m]
  double depth = 0.0;   ///< [m] crown at the squish band below the deck while it was filled
  double filled = 0.0;  ///< [m3] between crown and a flat plate on the deck
};

/// What the crown takes of the space above its plane [m3]: π/4 · B² · depth less the filling. Plus
/// for a dome, minus for a dish.
/// @source plane geometry; the top land is sealed and not filled
double crownVolume(const CrownFilling& filling);

/// How much the compression ratio falls for each volume more above the piston [1/m3]: V_d/V_c².
/// @param volumes clearance volume > 0
/// @source derivative of ε = 1 + V_d/V_c
double ratioPerVolume(const chamber::Compression& volumes);

}  // namespace strokewright::burette
