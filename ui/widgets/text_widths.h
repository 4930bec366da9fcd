#pragma once
/// Widths of texts, measured once.

#include <QFont>
#include <QString>

class QPaintDevice;

namespace strokewright::ui {

/// Width of a text in a font on a device [device units]. To fit a table it is asked for again and
/// again, and most of a table is as it was before an edit: what was measured is remembered by text,
/// font and resolution.
double textWidthOf(const QString& text, const QFont& font, const QPaintDevice& device);

}  // namespace strokewright::ui
