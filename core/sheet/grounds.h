#pragma once
/// What the numbers of a sheet rest on and what they wait for.

#include <span>
#include <string>

#include "core/assess/assess.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// The results that a sheet shows.
using Shown = std::span<const describe::Result* const>;

/// What is assumed, from a catalogue, of no said origin and by default, and so may be otherwise on
/// the bench, among the entries that plate, gap, ratio, class and rev ceiling of an engine read.
/// May be empty.
std::string restsOn(const assess::Assessment& assessment, const units::Style& style, int engine);

/// The same of what only others of these results read; of all of them what is from the maker's
/// book, computed or taken as none. What was measured is left out. May be empty.
std::string restsFurtherOn(const assess::Assessment& assessment, const units::Style& style,
                           int engine, Shown shown);

/// The missing entries, with how many of these results wait for each; empty where nothing is
/// missing.
std::string waitsFor(const assess::Assessment& assessment, int engine, Shown shown);

}  // namespace strokewright::sheet
