#pragma once
/// The working of a result as rich text.

#include <QString>
#include <utility>
#include <vector>

#include "core/describe/result.h"
#include "ui/document/document.h"

namespace strokewright::ui {

/// The formula with the numbers put in where its symbols stand behind the first equals sign:
/// "V_d = π/4 · (76.00 mm)² · (72.00 mm)". Symbols that are not listed stay.
/// @param symbols symbol and value as text, in any order.
QString formulaWithNumbers(const QString& formula,
                           const std::vector<std::pair<QString, QString>>& symbols);

/// Rich text whose links are "input:KEY@ENGINE" and "result:KEY@ENGINE@CYLINDER".
/// @param cylinder counted from 0; -1 is shown as the first.
QString whyText(Document& document, int engine, const describe::Result& result, int cylinder);

}  // namespace strokewright::ui
