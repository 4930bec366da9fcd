#pragma once
/// The cylinder in section, to scale, at any crank angle.

#include <QString>

#include "ui/drawings/cylinder.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

struct SectionOptions {
  double crankAngle = 0.0;     ///< [rad]
  bool standardScale = false;  ///< 1 : 2, 1 : 2.5, …, as on a drawing; otherwise fit the area
  bool clearances = false;     ///< what the skirt keeps at bottom dead centre is the answer
};

/// What came of it, to be said beside the drawing.
struct SectionDrawn {
  double reduction = 0.0;  ///< length in the engine for one of the same length on the medium
  bool atTop = false;      ///< drawn at top dead centre
};

/// Looks from the declared end: the crank turns clockwise, the thrust side is on the left.
///
/// Outlines from the builder's numbers are wide, assumed ones narrow with two dots between dashes.
/// At top dead centre throw, rod and compression height are dimensioned; elsewhere how far the
/// crown stands below the deck, and at the bottom the clearances, where they are the answer.
SectionDrawn paintSection(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                          const units::Style& style, const SectionOptions& options);

/// The reduction at which paintSection() would draw to a standard scale in this area.
double standardReduction(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                         const units::Style& style);

/// "Thin dash-dotted: not from your numbers", with the names of missing entries.
QString notFromNumbers(const Cylinder& cylinder);

}  // namespace strokewright::ui
