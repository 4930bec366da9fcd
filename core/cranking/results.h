#pragma once
/// The described results of this room.

#include <span>

#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result crankingPressure;

}  // namespace strokewright::out

namespace strokewright::cranking {

std::span<const describe::Result* const> results();

}  // namespace strokewright::cranking
