#pragma once
/// The described results, rules and tables of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result heightByCrown, deckClosure, squishClosure, cylinderPosition, seatLevel,
    seatOffPlane, seatSlopeAlong, seatSlopeAcross, seatRisePerPitch;
extern const Table seats, readings;

}  // namespace strokewright::out

namespace strokewright::survey {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

}  // namespace strokewright::survey
