#pragma once
/// An entry as the line a builder writes.

#include <QString>

#include "core/describe/entry.h"
#include "core/units/style.h"

namespace strokewright::ui {

/// The text as typed, with the reader's decimal mark, while a bare number still means what it says
/// there; else the values in the reader's units, with all the digits they have, and their ±.
QString entryText(const describe::Input& input, const describe::Entry& entry,
                  const units::Style& style);

}  // namespace strokewright::ui
