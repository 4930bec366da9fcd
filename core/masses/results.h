#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result reciprocatingMass, rotatingMass, bobWeight, staticMoment;

}  // namespace strokewright::out

namespace strokewright::masses {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::masses
