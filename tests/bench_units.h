#pragma once
/// The units of the bench as factors to SI, and two helpers the rooms of the core share in tests.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <optional>

#include "core/describe/refusal.h"

namespace strokewright::bench {

inline constexpr double mm = 1e-3;
inline constexpr double mm2 = 1e-6;
inline constexpr double ml = 1e-6;
inline constexpr double g = 1e-3;
inline constexpr double inch = 25.4e-3;
inline constexpr double deg = std::numbers::pi / 180.0;
inline constexpr double rpm = std::numbers::pi / 30.0;

/// A relative tolerance, for numbers that differ only by rounding or by their last printed digit.
inline testing::AssertionResult close(double actual, double expected, double relative) {
  if (std::abs(actual - expected) <= relative * std::abs(expected)) {
    return testing::AssertionSuccess();
  }
  return testing::AssertionFailure()
         << actual << " is " << (actual - expected) / expected << " away from " << expected;
}

/// What the function refuses, or nothing.
template <typename Function>
std::optional<describe::Refusal> refusalOf(Function function) {
  try {
    function();
  } catch (const describe::Refusal& refusal) {
    return refusal;
  }
  return std::nullopt;
}

}  // namespace strokewright::bench
