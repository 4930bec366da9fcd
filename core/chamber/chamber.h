#pragma once
/// How much the piston sweeps, how much stays above it, and what ratio that makes.

#include "core/motion/slider_crank.h"

namespace strokewright::chamber {

/// Area of a round bore [m2] of a diameter [m].
double boreArea(double bore);

struct SweptVolume {
  double bore = 0.0;        ///< [m]
  double trueStroke = 0.0;  ///< [m] between the dead centres, offset counted
};

/// Volume one piston sweeps [m3]: π/4 · B² · S.
/// @source Heywood ch. 2
double sweptVolume(const SweptVolume& cylinder);

struct GasketVolume {
  double gasketBore = 0.0;  ///< [m] of the hole in the gasket
  double thickness = 0.0;   ///< [m] compressed
};

/// Volume inside the head gasket [m3].
double gasketVolume(const GasketVolume& gasket);

struct DeckVolume {
  double bore = 0.0;           ///< [m]
  double deckClearance = 0.0;  ///< [m] crown below the deck; negative where it stands proud
};

/// Volume between crown plane and deck at top dead centre [m3]; negative for a crown that stands
/// proud.
double deckVolume(const DeckVolume& deck);

/// What the clearance volume is made of.
struct Clearance {
  double chamber = 0.0;  ///< [m3] in the head
  double crown = 0.0;    ///< [m3] what the crown adds; negative for a dome, which takes
  double gasket = 0.0;   ///< [m3] inside the head gasket
  double deck = 0.0;     ///< [m3] as deckVolume()
  double crevice = 0.0;  ///< [m3] round the top land
};

/// Everything above the piston at top dead centre [m3]; may come out negative.
double clearanceVolume(const Clearance& parts);

struct Compression {
  double sweptVolume = 0.0;      ///< [m3]
  double clearanceVolume = 0.0;  ///< [m3] > 0
};

/// Compression ratio 1 + V_d/V_c.
/// @throws describe::Refusal (Volume) where the clearance volume is not positive
/// @source Heywood ch. 2
double compressionRatio(const Compression& volumes);

/// Travel of the piston from top dead centre [m] where the inlet (two-stroke: the exhaust port)
/// closes.
/// @param afterBottom [rad] as read off a degree wheel zeroed at true top dead centre, less π: with
///        an offset bottom dead centre itself is not quite at 0
/// @throws describe::Refusal as motion::check()
double travelAtClosing(const motion::SliderCrank& mechanism, double afterBottom);

struct Trapped {
  double bore = 0.0;             ///< [m]
  double travel = 0.0;           ///< [m] from top dead centre at closing
  double clearanceVolume = 0.0;  ///< [m3] > 0
};

/// Effective compression ratio: compression counted from where the cylinder is closed.
/// @throws describe::Refusal as compressionRatio()
/// @source common practice, no published source; geometry as compressionRatio()
double effectiveCompressionRatio(const Trapped& cylinder);

struct WantedRatio {
  double sweptVolume = 0.0;       ///< [m3]
  double compressionRatio = 0.0;  ///< > 1
};

/// Clearance volume that gives a wanted compression ratio [m3]: V_d/(ε - 1).
/// @throws describe::Refusal (Ratio) for a ratio not above 1
double clearanceForRatio(const WantedRatio& wanted);

struct WantedClearance {
  double bore = 0.0;             ///< [m]
  double clearanceVolume = 0.0;  ///< [m3] wanted
  double otherVolumes = 0.0;     ///< [m3] all of it but the deck volume
};

/// Deck clearance [m] that gives a wanted clearance volume; negative: the crown must stand proud.
double deckClearanceForVolume(const WantedClearance& wanted);

}  // namespace strokewright::chamber
