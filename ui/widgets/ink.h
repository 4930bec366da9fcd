#pragma once
/// The few colours the widgets need beyond the palette, right on light and dark paper.

#include <QColor>
#include <QPalette>

namespace strokewright::ui::ink {

bool dark(const QPalette& palette);      ///< light writing on a dark ground
QColor text(const QPalette& palette);    ///< ink
QColor muted(const QPalette& palette);   ///< said, but not first: units, hints, ±
QColor rule(const QPalette& palette);    ///< thin rules and the line to write on
QColor accent(const QPalette& palette);  ///< what can be acted on
QColor objects(const QPalette& palette);
QColor forbids(const QPalette& palette);

/// Contrast of two colours.
/// @returns 1 (none) to 21.
/// @source WCAG 2.1, relative luminance and contrast ratio.
double contrast(const QColor& a, const QColor& b);

}  // namespace strokewright::ui::ink
