#pragma once
/// The described results, rules and tables of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result crownByBurette, crownClosure, clearanceByBurette, clearanceClosure,
    ratioByBurette;
extern const Table volumesFilled;

}  // namespace strokewright::out

namespace strokewright::burette {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// What the crown takes as entered [m3]: plus for a dome, minus for a dish.
double crownAsEntered(describe::Reader& read);

}  // namespace strokewright::burette
