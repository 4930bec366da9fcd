#pragma once
/// The lines of the rev ceiling. The lowest of them governs.

#include <array>

#include "core/limits/results.h"
#include "core/model/inputs.h"

namespace strokewright::limits {

struct RevLine {
  const describe::Result* ceiling;  ///< the speed at which it stops the engine
  describe::Choice name;            ///< "ring flutter"
  const describe::Input* entry;     ///< what raises or lowers it first of all
  bool donors = false;              ///< that entry is the reference donor's
};

/// In the order in which "what governs" counts them.
inline constexpr std::array kRevLines = {
    RevLine{&out::ceilingPistonSpeed,
            {"mean_piston_speed", "mean piston speed"},
            &model::in::meanPistonSpeedLimit},
    RevLine{&out::ceilingRingFlutter, {"ring_flutter", "ring flutter"}, &model::in::ringWidth},
    RevLine{&out::ceilingRodTension, {"rod_tension", "rod tension"}, &model::in::rodLeastSection},
    RevLine{&out::ceilingBigEnd,
            {"big_end_speed_factor", "big-end speed factor"},
            &model::in::bigEndPinDiameter},
    RevLine{&out::ceilingDonor,
            {"donors_proven_acceleration", "the donor's proven acceleration"},
            &model::in::provenSpeed,
            true}};

}  // namespace strokewright::limits
