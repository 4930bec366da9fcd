#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result rodStretch, clearanceTakenUp, thermalOpening, runningSquish, overRevSpeed,
    overRevSquish, closingSpeed;

}  // namespace strokewright::out

namespace strokewright::running {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

/// The squish gap is said to be known by solder or dial gauge, not from the dimensions.
bool knownByMeasuring(describe::Reader& read);
/// And it was entered, so that the running gap starts from it.
bool startsFromMeasured(describe::Reader& read);

}  // namespace strokewright::running
