#pragma once
/// Paints the one-page spec sheet as a drawing sheet.

#include <QSizeF>

#include "core/assess/assess.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"

class QPainter;

namespace strokewright::ui {

/// Paints the whole page, frame and title block included, in black on white; everything finds room
/// on this one page. No text is smaller than 8 points, but what speaks against the engine and what
/// it rests on are set as small as 7 points before any of it is left out. Names that are too long
/// end in "…". A variant has a column where there is room for it. Where what speaks against the
/// engine does not fit even so, the sheet says how many of the least weighty are left out and where
/// to read them.
///
/// @param painter    its origin is the upper left corner of the paper.
/// @param paper      [mm] A4, Letter or larger, upright
/// @param millimetre [device units]
void paintSheet(QPainter& painter, const QSizeF& paper, double millimetre,
                const assess::Assessment& assessment, const units::Style& style,
                const sheet::SheetOptions& options);

}  // namespace strokewright::ui
