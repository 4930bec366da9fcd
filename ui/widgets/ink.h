#pragma once
/// The few colours and measures that the widgets need beyond palette and font, right on light and
/// dark paper and at every size of writing.

#include <QColor>
#include <QPalette>
#include <QSizePolicy>

class QFontMetrics;
class QPainter;
class QWidget;

namespace strokewright::ui::ink {

bool dark(const QPalette& palette);      ///< light writing on a dark ground
QColor text(const QPalette& palette);    ///< ink
QColor muted(const QPalette& palette);   ///< said, but not first: units, hints, ±
QColor rule(const QPalette& palette);    ///< thin rules and the line to write on
QColor accent(const QPalette& palette);  ///< what can be acted on
QColor objects(const QPalette& palette);
QColor forbids(const QPalette& palette);

/// A link in rich text, in the accent: rich text knows the desktop's colours alone.
QString link(const QPalette& palette, const QString& target, const QString& says);

/// Where the decimal mark of a column stands, from its left edge: room for five figures.
/// @returns [px] logical
int figuresBeforeMark(const QFontMetrics& metrics);

/// Height of a row with so many lines of writing. @returns [px] logical
int rowHeight(const QFontMetrics& metrics, int lines = 1);
/// How many lines the text takes in so much width, wrapped at its spaces.
int linesOf(const QFontMetrics& metrics, const QString& text, int width);

/// As wide as its column, as high as its lines need.
QSizePolicy cellPolicy();

/// The line that an entry is written on: thin, in the accent and twice as thick with the focus.
void paintBaseline(QPainter& painter, const QWidget& entry);

}  // namespace strokewright::ui::ink
