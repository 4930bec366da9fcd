#pragma once
/// What a field says of an entry.

#include <QString>

#include "core/describe/finding.h"
#include "ui/document/document.h"

namespace strokewright::ui {

/// The values in the reader's unit, "= 66.68 mm", where the text says them in another unit, as a
/// fraction, as several readings or as a step on a scale; else empty.
QString entryEcho(const Document& document, const EntryPlace& place);

/// What stands while nothing is entered: "1.3 (default)", the unit left to the row; or empty.
QString entryDefault(const Document& document, const EntryPlace& place);

/// "Bore, Burdock 719, mm", for those who cannot see the row.
QString entryName(const Document& document, const EntryPlace& place);

/// Everything worth knowing, several lines of plain text: how to measure, the typical and the usual
/// range, the other system of units, where the number came from, what speaks against it.
QString entryTip(const Document& document, const EntryPlace& place);

/// Where an entry comes from: "measured, bore gauge, 2024-05-01"; empty when nothing is said.
QString originText(const describe::Entry& entry);

/// How errors lie within a ±, in plain words: "anywhere within it alike (rectangular)".
QString shapeText(describe::Shape shape);

/// Where an entry comes from, in one letter, as fields show it: m measured, b maker's book, c
/// catalogue, a assumed, = computed; empty when nothing is said.
QString originMark(describe::Origin origin);
/// What these letters mean: "m measured · b maker's book …".
QString originKey();

/// "Cylinder 2: …" of what concerns one of several; else as it was.
QString ofItsCylinder(const Document& document, const describe::Finding& finding,
                      const QString& said);

/// What a finding says, of which cylinder, with its hint.
QString findingText(const Document& document, const describe::Finding& finding);

/// The heaviest finding that belongs to this entry, or entry of an item, first of all, or nullptr.
const describe::Finding* findingAbout(const Document& document, const EntryPlace& place);

/// Plain lines as a tip that wraps.
QString tipFrom(const QString& plainLines);

}  // namespace strokewright::ui
