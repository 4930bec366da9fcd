#pragma once
/// Directions round the crank axis.

#include <cmath>
#include <numbers>

namespace strokewright::model {

/// Two directions [rad] are one within a tenth of a degree, whole turns apart or not.
inline bool sameDirection(double one, double other) {
  constexpr double kAlike = 0.1 * std::numbers::pi / 180.0;
  const double apart = std::abs(one - other);
  if (apart < std::numbers::pi) return apart < kAlike;  // as nearly always: the quick way
  return std::abs(std::remainder(apart, 2.0 * std::numbers::pi)) < kAlike;
}

}  // namespace strokewright::model
