#pragma once
/// What the ports of a two-stroke do: when the piston opens and shuts them, how high they would
/// have to stand for other angles, and how the crankcase compresses.

#include "core/motion/slider_crank.h"

namespace strokewright::ports {

/// Crank angles [rad] at which the crown passes a port top on the way down and on the way up, from
/// the throw on the cylinder axis.
struct Timing {
  double opens = 0.0;
  double shuts = 0.0;

  double duration() const { return shuts - opens; }
};

/// @param travel [m] of the piston from top dead centre to the port top, above 0 and below the true
///               stroke
/// @throws describe::Refusal (Length) for a travel outside the stroke; as motion::check()
/// @source plane geometry, exact. The crankpin stands at both angles at one distance from the
///         gudgeon pin, so they lie alike on either side of the line from the gudgeon pin through
///         the crank axis; without an offset that is bottom dead centre.
Timing timing(const motion::SliderCrank& mechanism, double travel);

/// Travel [m] from top dead centre to the port top that holds a port open for a duration [rad]: the
/// inverse of timing().
/// @param duration from 0 (bottom dead centre) to 2π (top dead centre)
/// @throws describe::Refusal as motion::check()
/// @source plane geometry: chord of the crank circle between opening and shutting
double travelForDuration(const motion::SliderCrank& mechanism, double duration);

struct Crankcase {
  double volume = 0.0;       ///< [m3] > 0 with the piston at bottom dead centre
  double sweptVolume = 0.0;  ///< [m3] of the cylinder above it
};

/// Primary compression ratio (V_cc + V_d)/V_cc, over the whole stroke.
/// @throws describe::Refusal (Volume) for a crankcase volume that is not positive
/// @source common practice, no published source
double primaryCompressionRatio(const Crankcase& crankcase);

}  // namespace strokewright::ports
