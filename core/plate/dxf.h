#pragma once
/// The spacer plate as a drawing file that machines read.

#include <span>
#include <string>
#include <string_view>

#include "core/plate/outline.h"

namespace strokewright::plate {

/// The plate at full size in millimetres, the crankshaft along x, the thrust side below and named:
/// outline of lines and arcs, circles for bores and holes, centre lines, each on a layer of its
/// own, a check bar of 100 mm. As text the number of each hole beside it, and under the plate the
/// remarks and where each hole lies. Figures have a point and as many digits as they need, whatever
/// the locale.
/// @param remarks UTF-8, one line each; what lies beyond ASCII is written as \U+XXXX
/// @source AutoCAD drawing exchange format, release 12, as published; $INSUNITS 4 and $MEASUREMENT
/// 1
///         say millimetres to newer readers
std::string dxf(const Outline& outline, std::span<const std::string> remarks);

}  // namespace strokewright::plate
