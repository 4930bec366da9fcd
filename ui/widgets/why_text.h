#pragma once
/// The working of a result as rich text.

#include <QString>

#include "core/describe/result.h"
#include "ui/document/document.h"

class QPalette;

namespace strokewright::ui {

/// The formula with the numbers put in where its symbols stand: "π/4 · (76.00 mm)² · 72.00 mm".
/// @param symbols symbol and value as text, in any order.
QString formulaWithNumbers(const QString& formula,
                           const std::vector<std::pair<QString, QString>>& symbols);

/// Rich text; links are "input:KEY@ENGINE" and "result:KEY@ENGINE@CYLINDER".
/// @param cylinder -1 is shown as the first.
QString whyText(Document& document, int engine, const describe::Result& result, int cylinder,
                const QPalette& palette);

}  // namespace strokewright::ui
