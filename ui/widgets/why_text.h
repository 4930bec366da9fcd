#pragma once
/// The working of a result as rich text.

#include <QString>
#include <utility>
#include <vector>

#include "core/describe/result.h"
#include "ui/document/document.h"

namespace strokewright::ui {

/// The formula with the numbers put in where its symbols stand behind the first equals sign:
/// "V_d = π/4 · (76.00 mm)² · (72.00 mm)". Symbols that are not listed stay, and those in words
/// that explain the formula: "V_lim / V, V of the donor".
/// @param symbols symbol and value as text, in any order.
QString formulaWithNumbers(const QString& formula,
                           const std::vector<std::pair<QString, QString>>& symbols);

/// The formula as it was used, and the same with the numbers put in.
struct FormulaUsed {
  QString plain;
  QString filled;      ///< without what the formula remarks behind its semicolons
  bool whole = false;  ///< a number stands for every symbol
};

/// A formula may name several ways: "t = a + b; or c + b; minus: the other way round". The way that
/// was used is the longest for all of whose symbols there is a number; where there is none, all
/// stay.
FormulaUsed formulaUsed(const QString& formula,
                        const std::vector<std::pair<QString, QString>>& symbols);

/// Rich text whose links are "input:KEY@ENGINE" and "result:KEY@ENGINE@CYLINDER".
/// @param cylinder counted from 0; -1 is shown as the first.
QString whyText(Document& document, int engine, const describe::Result& result, int cylinder);

}  // namespace strokewright::ui
