#pragma once
/// What speaks against the engines of a sheet.

#include <span>
#include <string_view>
#include <vector>

#include "core/assess/assess.h"
#include "core/sheet/sheet.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// Subject of what speaks against throws, firing order and rotation.
inline constexpr std::string_view kOfTheThrows = "firing order";

/// All findings, the heaviest first and of equals those on the stack, and the refusals that no
/// finding has said. Remarks on how a text was read are left out. What is said of several engines
/// stands once.
/// @param engines the one the sheet is about first; what is said of others bears their names.
std::vector<Objection> objectionsOf(const assess::Assessment& assessment, const units::Style& style,
                                    std::span<const int> engines);

}  // namespace strokewright::sheet
