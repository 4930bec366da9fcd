#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result rodTension, rodStress, provenAcceleration, provenRodTension, rodLoadRatio,
    ceilingPistonSpeed, ceilingRingFlutter, ceilingRodTension, ceilingBigEnd, ceilingDonor,
    revCeiling, governs, nextCeiling, governsNext, overRevCeiling, breathingIndex, breathingSpeed;

}  // namespace strokewright::out

namespace strokewright::limits {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::limits
