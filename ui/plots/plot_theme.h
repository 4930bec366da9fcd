#pragma once
/// Colours of plots on light and dark paper.

#include <QColor>
#include <QFont>
#include <QPalette>

#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

struct PlotTheme {
  QColor paper, text, faint, grid, hatch, accent, blue, green, vermilion;
  QFont font;

  const QColor& operator[](Ink ink) const;
};

/// Contrast of two colours, 1 to 21.
/// @source W3C Web Content Accessibility Guidelines 2.1, "contrast ratio"
double contrast(const QColor& a, const QColor& b);

/// From the palette of a widget that lies on QPalette::Window. The hues are those of Okabe and Ito,
/// "Color Universal Design": on dark paper blue and vermilion give way to sky blue and orange.
PlotTheme plotTheme(const QPalette& palette, const QFont& font);

/// Black on white, for paper.
PlotTheme paperTheme(const QFont& font);

}  // namespace strokewright::ui
