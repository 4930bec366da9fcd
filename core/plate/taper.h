#pragma once
/// A plate in one piece that is thicker at one end than at the other.

#include <optional>

#include "core/describe/reader.h"
#include "core/describe/table.h"
#include "core/survey/plane.h"

namespace strokewright::plate {

/// [m] What is no difference on a plate: half of the step it is made to.
inline constexpr double kTrue = 0.005e-3;

/// The straight line that the thicknesses in the stack lie on, each at the axis of its cylinder;
/// none where each cylinder has its own plate, where they are all alike, or where they lie on no
/// straight line, so that one piece cannot have them.
/// @source linear least squares: Draper and Smith, ch. 1
std::optional<survey::SeatLine> taperInStack(describe::Reader& read);

}  // namespace strokewright::plate

namespace strokewright::out {

extern const describe::Table taperedPlateEnds;

}  // namespace strokewright::out
