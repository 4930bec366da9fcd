#pragma once
/// What the numbers of a sheet rest on and what they wait for.

#include <string>

#include "core/assess/assess.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// What is assumed, from books, computed, of no said origin and by default, among the entries that
/// the results of an engine read; what was measured is left out. Empty where all of it is.
std::string restsOn(const assess::Assessment& assessment, const units::Style& style, int engine);

/// The missing entries, with how many results wait for each; empty where nothing is missing.
std::string waitsFor(const assess::Assessment& assessment, int engine);

}  // namespace strokewright::sheet
