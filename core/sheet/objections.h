#pragma once
/// What speaks against the engines of a sheet.

#include <span>
#include <string_view>
#include <vector>

#include "core/assess/assess.h"
#include "core/sheet/kind.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// All findings, the heaviest first and of equals those on the stack, and the refusals that no
/// finding has said. Remarks on how a text was read are left out. What is said of several engines
/// stands once.
/// @param engines the one the sheet is about first; what is said of others bears their names.
std::vector<Objection> objectionsOf(const assess::Assessment& assessment, const units::Style& style,
                                    std::span<const int> engines);

/// What is said of one engine and of none of the others.
std::vector<Objection> objectionsOnlyOf(int engine, const assess::Assessment& assessment,
                                        const units::Style& style, std::vector<int> others);

/// Whether it stands in full on this bench sheet: what forbids or is refused on every one, what
/// objects on those whose entries it is about; remarks on that of the throws alone.
bool standsOn(SheetKind kind, const Objection& objection);

}  // namespace strokewright::sheet
