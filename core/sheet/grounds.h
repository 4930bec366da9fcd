#pragma once
/// What the numbers of a sheet rest on and what they wait for.

#include <span>
#include <string>

#include "core/assess/assess.h"
#include "core/units/style.h"

namespace strokewright::sheet {

/// The results that a sheet shows.
using Shown = std::span<const describe::Result* const>;

/// What is assumed, from a catalogue, of no said origin and by default, among the entries that
/// these results of an engine read: what may be otherwise on the bench. May be empty.
std::string restsOn(const assess::Assessment& assessment, const units::Style& style, int engine,
                    Shown shown);

/// Of the same entries those from the maker's book, those computed, and what is taken as none; what
/// was measured is left out. May be empty.
std::string restsFurtherOn(const assess::Assessment& assessment, const units::Style& style,
                           int engine, Shown shown);

/// The missing entries, with how many of these results wait for each; empty where nothing is
/// missing.
std::string waitsFor(const assess::Assessment& assessment, int engine, Shown shown);

}  // namespace strokewright::sheet
