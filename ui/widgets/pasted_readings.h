#pragma once
/// A block of cells as the text of one entry.

#include <QString>

namespace strokewright::ui {

/// "98.12 | 98.13; 98.20 | 98.21" from a block copied out of a table: a row for each cylinder, a
/// column for each reading. A single row has one cell for each cylinder where there are as many.
/// Empty cells are left out.
/// @param cylinders of the engine.
/// @param list      the entry may hold a number for each cylinder; else all cells are readings.
QString readingsText(const QString& block, int cylinders, bool list);

}  // namespace strokewright::ui
