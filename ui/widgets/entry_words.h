#pragma once
/// What a field says of an entry.

#include <QString>

#include "ui/document/document.h"
#include "ui/document/taste.h"

namespace strokewright::ui {

/// What stands on the line: the text as typed, with the reader's decimal mark, while a bare number
/// still means what it says there; else the values in the reader's unit, with as many digits as
/// they have, and their ±.
QString entryText(const describe::Input& input, const describe::Entry& entry, const Taste& taste);

/// The values as the reader's unit has them, "= 66.68 mm", where the text says it in another unit
/// or as a fraction; else empty.
QString entryEcho(const describe::Input& input, const describe::Entry& entry, const Taste& taste);

/// What stands while nothing is entered: "1.3 (default)", or empty.
QString entryDefault(const Document& document, int engine, const describe::Input& input);

/// "Bore, Burdock 719, mm", for those who cannot see the row.
QString entryName(const Document& document, int engine, const describe::Input& input);

/// Everything worth knowing, several lines of plain text: how to measure, the typical and the usual
/// range, the other system of units, where the number came from, what speaks against it.
QString entryTip(const Document& document, int engine, const describe::Input& input);

/// Where an entry comes from: "measured with bore gauge, 2024-05-01"; empty when nothing is said.
QString originText(const describe::Entry& entry);

/// The heaviest finding of this engine that belongs to this entry first of all, or nullptr.
const describe::Finding* findingAbout(const Document& document, int engine,
                                      const describe::Input& input);

}  // namespace strokewright::ui
