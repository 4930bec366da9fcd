#pragma once
/// What speaks against the engines of a sheet.

#include <span>
#include <vector>

#include "core/assess/assess.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// All findings, the heaviest first and of equals those on the stack, and the refusals that no
/// finding has said. Remarks on how a text was read are left out. What is said of several engines
/// stands once.
/// @param engines the one the sheet is about first; what is said of others bears their names.
std::vector<Objection> objectionsOf(const assess::Assessment& assessment, const units::Style& style,
                                    std::span<const int> engines);

}  // namespace strokewright::sheet
