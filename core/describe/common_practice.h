#pragma once
/// The source of what the trade does and no book holds.

#include <string_view>

namespace strokewright::describe {

inline constexpr std::string_view kPractice = "common practice, no published source";

}  // namespace strokewright::describe
