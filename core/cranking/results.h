#pragma once
/// The described results and rules of this room.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result crankingPressure;

}  // namespace strokewright::out

namespace strokewright::cranking {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::cranking
