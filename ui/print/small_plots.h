#pragma once
/// The two small plots of the sheet.

#include <QRectF>

#include "core/assess/assess.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// Acceleration over one turn of the crank, each engine at its own working speed; the engine of the
/// sheet solid, its donor dashed, a variant dotted. Upwards is what pulls the piston down.
void paintAccelerationPlot(Drafting& draft, const QRectF& area,
                           const assess::Assessment& assessment, const units::Style& style,
                           const sheet::Sheet& sheet);

/// Bore against stroke with curves of equal displacement, the class limit wide, the limit of mean
/// piston speed dash-dotted, and a point for each engine of the sheet.
void paintBoreStrokePlot(Drafting& draft, const QRectF& area, const assess::Assessment& assessment,
                         const units::Style& style, const sheet::Sheet& sheet);

}  // namespace strokewright::ui
