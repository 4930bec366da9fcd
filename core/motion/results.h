#pragma once
/// The described results, rules and tables of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"
#include "core/motion/slider_crank.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result crankRadius, netOffset, trueStroke, rodRatio, obliquity, largestRodAngle,
    topDeadCentreAngle, bottomDeadCentreAngle, workingSpeed, meanPistonSpeed, peakPistonSpeed,
    peakPistonSpeedAngle, peakAcceleration, peakAccelerationAngle, peakAccelerationPerSpeed2;

extern const Table pistonMotion;

}  // namespace strokewright::out

namespace strokewright::motion {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// The slider-crank of this cylinder, as entered.
SliderCrank mechanism(describe::Reader& read);

}  // namespace strokewright::motion
