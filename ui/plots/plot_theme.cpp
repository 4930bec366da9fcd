#include "ui/plots/plot_theme.h"

#include <algorithm>
#include <cmath>

namespace strokewright::ui {
namespace {

QColor blend(const QColor& a, const QColor& b, double shareOfB) {
  const auto mix = [shareOfB](int x, int y) {
    return static_cast<int>(std::lround((1.0 - shareOfB) * x + shareOfB * y));
  };
  return {mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())};
}

double luminance(const QColor& colour) {
  const auto linear = [](double part) {
    return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

/// The hue, moved towards the text's colour until a line of it can be told from the paper.
QColor standingOut(const QColor& hue, const QColor& paper, const QColor& text) {
  QColor colour = hue;
  for (double share = 0.0; share < 1.0 && contrast(colour, paper) < 3.2; share += 0.05) {
    colour = blend(hue, text, share);
  }
  return colour;
}

PlotTheme themed(const QColor& paper, const QColor& text, const QColor& accent, const QFont& font) {
  const bool dark = paper.lightness() < text.lightness();
  const auto hue = [&](const QColor& colour) { return standingOut(colour, paper, text); };
  return {.paper = paper,
          .text = text,
          .faint = blend(paper, text, 0.62),
          .grid = blend(paper, text, 0.14),
          .hatch = blend(paper, text, 0.26),
          .accent = accent,
          .blue = hue(dark ? QColor(0x56, 0xB4, 0xE9) : QColor(0x00, 0x72, 0xB2)),
          .green = hue(QColor(0x00, 0x9E, 0x73)),
          .vermilion = hue(dark ? QColor(0xE6, 0x9F, 0x00) : QColor(0xD5, 0x5E, 0x00)),
          .font = font};
}

}  // namespace

double contrast(const QColor& a, const QColor& b) {
  const double one = luminance(a);
  const double other = luminance(b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

const QColor& PlotTheme::operator[](Ink ink) const {
  switch (ink) {
    case Ink::Text:
      return text;
    case Ink::Faint:
      return faint;
    case Ink::Accent:
      return accent;
    case Ink::Blue:
      return blue;
    case Ink::Green:
      return green;
    case Ink::Vermilion:
      return vermilion;
  }
  return text;
}

PlotTheme plotTheme(const QPalette& palette, const QFont& font) {
  const QColor paper = palette.color(QPalette::Window);
  const QColor text = palette.color(QPalette::WindowText);
  return themed(paper, text, palette.color(QPalette::Link), font);
}

PlotTheme paperTheme(const QFont& font) {
  return themed(Qt::white, Qt::black, QColor(0x00, 0x4F, 0x8F), font);
}

}  // namespace strokewright::ui
