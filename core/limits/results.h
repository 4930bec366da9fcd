#pragma once
/// The described results and rules of this room, in page order.

#include <cstdint>
#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result rodTension, rodStress, provenAcceleration, provenRodTension, rods, rodLoadRatio,
    ceilingPistonSpeed, ceilingRingFlutter, ceilingRodTension, ceilingBigEnd, ceilingDonor,
    revCeiling, governs, nextCeiling, governsNext, overRevCeiling, breathingIndex, breathingSpeed;

/// The choices of out::rods, in their order.
enum class Rods : std::uint8_t { Donors, Others };

}  // namespace strokewright::out

namespace strokewright::limits {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::limits
