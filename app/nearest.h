#pragma once
/// What somebody may have meant.

#include <span>
#include <string>
#include <string_view>

namespace strokewright::app {

/// " Did you mean “rod_length_m” or “rod_mass_kg”?": up to three of the names that hold what was
/// typed or differ from it by few letters, the nearest first; empty where none is near.
std::string didYouMean(std::string_view typed, std::span<const std::string_view> names);

}  // namespace strokewright::app
