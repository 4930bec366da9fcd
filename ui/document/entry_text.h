#pragma once
/// An entry as the line a builder writes.

#include <QString>

#include "core/describe/entry.h"
#include "core/units/style.h"

namespace strokewright::ui {

/// How many digits a number gets that is shown in another unit than it was typed in.
enum class Digits {
  All,   ///< those it takes to read back the same value: what an editor is given
  Seen,  ///< at most one decimal more than the unit has by default: what a page shows
};

/// The text as typed, with the reader's decimal mark, while a bare number still means what it says
/// there; else the values in the reader's units and their ±.
QString entryText(const describe::Input& input, const describe::Entry& entry,
                  const units::Style& style, Digits digits = Digits::All);

/// The values alone, "98.12; 98.20", in the reader's units.
QString valuesText(const describe::Input& input, const describe::Entry& entry,
                   const units::Style& style, Digits digits);

}  // namespace strokewright::ui
