#pragma once
/// The spacer plate at full size.

#include <QMarginsF>
#include <QPointF>
#include <QSizeF>

#include "core/plate/outline.h"
#include "core/units/style.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// How the plate lies on the paper.
enum class PlateLies {
  Level,    ///< the crankshaft from left to right, the thrust side below
  Upright,  ///< the crankshaft from below upwards, the thrust side on the right
};

/// What its dimensions and words take around the plate [mm].
QMarginsF plateMargins(PlateLies lies);

/// Room for the plate with these [mm].
QSizeF plateRoom(const plate::Outline& outline, PlateLies lies);

/// One to one: outline and circles with centre lines, each with its number in the table of holes;
/// overall dimensions, radius of the corners, and from two edges to the axis of the first cylinder,
/// which the places in that table and those of the partings are counted from; between them the
/// names of cylinders without a plate.
/// @param middle [device units] of the plate
void paintPlate(Drafting& draft, QPointF middle, const plate::Outline& outline, PlateLies lies,
                const units::Style& style);

}  // namespace strokewright::ui
