#pragma once
/// What holds for whatever text parse() is given, in one place for all tests that make up texts.

#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/units/parse.h"

namespace strokewright::units {

/// The first broken promise of parse() in words, or an empty text.
inline std::string_view brokenPromise(const Parsed& parsed) {
  const auto finite = [](double value) { return std::isfinite(value); };
  const bool read = parsed.problem == Problem::None;
  if (read == parsed.values.empty()) return "values must be empty exactly with a problem";
  if (!std::ranges::all_of(parsed.values, finite)) return "a value is not finite";
  if (parsed.plusMinus && !finite(*parsed.plusMinus)) return "the ± is not finite";
  if (!read && (parsed.plusMinus || !parsed.heeds.empty())) return "a problem must come alone";
  if (read && !parsed.culprit.empty()) return "a culprit without a problem";
  if (!std::ranges::is_sorted(parsed.heeds)) return "heeds are out of order";
  if (std::ranges::adjacent_find(parsed.heeds) != parsed.heeds.end()) return "a heed comes twice";
  return {};
}

}  // namespace strokewright::units
