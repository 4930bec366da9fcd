#include "ui/widgets/ink.h"

#include <QFontMetrics>
#include <QPainter>
#include <QWidget>
#include <algorithm>

namespace strokewright::ui::ink {
namespace {

constexpr int kHalfLight = 128;

QColor mixed(const QColor& a, const QColor& b, double shareOfA) {
  const auto mix = [shareOfA](int x, int y) {
    return static_cast<int>(shareOfA * x + (1.0 - shareOfA) * y);
  };
  return {mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())};
}

QColor either(const QPalette& palette, const char* onLight, const char* onDark) {
  return QColor(QLatin1StringView(dark(palette) ? onDark : onLight));
}

}  // namespace

bool dark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightness() < kHalfLight;
}

QColor text(const QPalette& palette) { return palette.color(QPalette::WindowText); }

/// Of what is not to be had just now, too: its own writing is muted already.
QColor muted(const QPalette& palette) {
  return mixed(palette.color(QPalette::Active, QPalette::WindowText),
               palette.color(QPalette::Window), 0.68);
}

QColor rule(const QPalette& palette) {
  return mixed(text(palette), palette.color(QPalette::Window), 0.5);
}

QColor accent(const QPalette& palette) { return either(palette, "#00659e", "#6cc1f0"); }

QColor objects(const QPalette& palette) { return either(palette, "#8f4a00", "#f0b040"); }

QColor forbids(const QPalette& palette) { return either(palette, "#a01818", "#ff9a8a"); }

QString link(const QPalette& palette, const QString& target, const QString& says) {
  return QStringLiteral("<a href=\"%1\" style=\"color:%2;text-decoration:none\">%3</a>")
      .arg(target, accent(palette).name(), says.toHtmlEscaped());
}

int figuresBeforeMark(const QFontMetrics& metrics) {
  return metrics.horizontalAdvance(QStringLiteral("00\u202F000"));
}

int rowHeight(const QFontMetrics& metrics, int lines) { return lines * metrics.height() + 4; }

int linesOf(const QFontMetrics& metrics, const QString& text, int width) {
  const int room = width - 1;  // an advance is rounded, the writing is not
  if (metrics.horizontalAdvance(text) <= room) return 1;
  const QRect wrapped = metrics.boundingRect(QRect(0, 0, room, 0), Qt::TextWordWrap, text);
  return std::max(1, wrapped.height() / metrics.height());
}

QSizePolicy cellPolicy() {
  QSizePolicy policy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  return policy;
}

void paintBaseline(QPainter& painter, const QWidget& entry) {
  const int line = std::max(1, entry.fontMetrics().lineWidth());
  const int thickness = entry.hasFocus() ? 2 * line : line;
  painter.fillRect(0, entry.height() - thickness, entry.width(), thickness,
                   entry.hasFocus() ? accent(entry.palette()) : rule(entry.palette()));
}

}  // namespace strokewright::ui::ink
