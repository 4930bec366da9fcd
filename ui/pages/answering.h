#pragma once
/// The words that answers of all pages are made of.

#include "core/describe/table.h"
#include "ui/pages/page_description.h"

namespace strokewright::ui {

/// A number in every cylinder of the engine, or once where it is one for the engine.
bool known(const Desk& desk, int engine, const describe::Result& result);

/// "0.95 mm"; where the cylinders differ "1.03 · 0.95 · 0.86 mm", from five on "0.86 … 1.03 mm".
/// Only the cylinder shown, where one is chosen.
/// @pre known().
QString figures(const Desk& desk, int engine, const describe::Result& result);

/// "± 0.06 likely" and "± 0.16 worst case" on two lines, the largest of all cylinders; without what
/// rounds to nothing, and empty where no entry carries a ±.
QString plusMinus(const Desk& desk, int engine, const describe::Result& result);

/// "donor 9.99, difference +1.21"; empty where either is not known or the subject is the donor.
QString besideDonor(const Desk& desk, const describe::Result& result);

/// The answer while the result has no number: what it waits for, or why there is none.
Answer unanswered(const Desk& desk, int engine, const describe::Result& result);
/// The same of a table of the engine that has no rows to speak of.
Answer unanswered(const Desk& desk, int engine, const describe::Table& table);

/// The answer of a page that speaks of one result of the subject; sentence is left to the page.
Answer answerBy(const Desk& desk, const describe::Result& result);

/// Parts of a sentence in a row, separated; empty ones are left out.
QString joined(const QStringList& parts);

}  // namespace strokewright::ui
