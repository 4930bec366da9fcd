#pragma once
/// Text from pieces.

#include <initializer_list>
#include <string>
#include <string_view>

namespace strokewright::app {

/// The pieces, one behind the other.
inline std::string joined(std::initializer_list<std::string_view> pieces) {
  std::string text;
  for (const std::string_view piece : pieces) text += piece;
  return text;
}

}  // namespace strokewright::app
