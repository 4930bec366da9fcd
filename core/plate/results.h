#pragma once
/// One plate for all, a tapered one, or one for each cylinder: described results and tables.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result flatSpacer, squishWithFlat, ratioWithFlat, taperAtFirst, taperAlong,
    taperedSpacer, squishWithTaper, ratioWithTaper;
extern const Table platesCompared;

}  // namespace strokewright::out

namespace strokewright::plate {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// [m] What is left of the squish gap over a plate that is yet to be made, everything against it:
/// the ± of all that stays in the stack, worst case, and what the plate is made to within.
/// @param squish [m] over that plate, as it is meant
double squishAtWorst(describe::Reader& read, double squish);

}  // namespace strokewright::plate
