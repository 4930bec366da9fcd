#pragma once
/// Described tables and lists as parts of a page.

#include "ui/pages/page_description.h"

namespace strokewright::ui {

/// The table under its name, of the subject and of the cylinder shown.
QWidget* makeTablePane(Desk& desk, const TableOnPage& shown, QWidget* parent);

/// The list under what belongs on it, of the project or of the subject.
QWidget* makeListPane(Desk& desk, const describe::List& list, QWidget* parent);

}  // namespace strokewright::ui
