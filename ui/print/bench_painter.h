#pragma once
/// Paints the sheets for the bench: survey, burette, stack, plate and throws.

#include <QPageLayout>
#include <QPageSize>
#include <QSizeF>

#include "core/sheet/bench.h"
#include "core/units/style.h"
#include "ui/drawings/crank_figure.h"

class QPainter;

namespace strokewright::ui {

/// Paints the whole page in black on white, frame and title block included. Everything finds room
/// on this one page: boxes are repeated as often as there is room for; what speaks against the
/// engine and does not fit is counted.
/// @param painter    its origin is the upper left corner of the paper.
/// @param paper      [mm] A4, Letter or larger, upright
/// @param millimetre [device units]
/// @param crank      of the sheet of the throws; without a cylinder there is no figure
void paintBenchSheet(QPainter& painter, const QSizeF& paper, double millimetre,
                     const sheet::BenchSheet& sheet, const units::Style& style,
                     const CrankFigure& crank);

/// The figure of the sheet of the throws; its notes say how it is seen and what of it nobody
/// entered, or why there is none. No other sheet has one.
CrankFigure takeCrank(sheet::BenchSheet& sheet, const assess::Assessment& assessment,
                      const units::Style& style, const sheet::SheetOptions& options);

/// The whole of a paper, without margins.
QPageLayout wholePage(const QPageSize& paper, QPageLayout::Orientation orientation);

/// "A3, landscape"
QString nameOf(const QPageLayout& page);

/// The paper itself, upright or lying, or the next larger one of its kind on which the plate of
/// this sheet lies at full size; where none is large enough, one cut to size. A sheet that takes
/// another paper than was wanted says so in its notes.
QPageLayout takePaper(sheet::BenchSheet& sheet, QPageSize::PageSizeId wanted);

}  // namespace strokewright::ui
