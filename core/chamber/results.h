#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result sweptVolume, displacement, classMargin, boreStrokeRatio, gasketVolume,
    volumesBesideStack, volumesBesideDeck;

}  // namespace strokewright::out

namespace strokewright::chamber {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::chamber
