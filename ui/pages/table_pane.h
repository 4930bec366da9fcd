#pragma once
/// Described tables and lists as parts of a page.

#include <functional>

#include "ui/pages/page_description.h"

namespace strokewright::ui {

/// The table under its name, of the subject; one for each cylinder names the one it is of.
/// @param cylinder counted from 0; none: the one shown, of all the first
QWidget* makeTablePane(Desk& desk, const TableOnPage& shown, QWidget* parent,
                       const std::function<int()>& cylinder = {});

/// The list under what belongs on it, of the project or of the subject.
QWidget* makeListPane(Desk& desk, const describe::List& list, QWidget* parent);

}  // namespace strokewright::ui
