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

/// ASCII letters in lower case, whatever the locale.
inline std::string lowered(std::string text) {
  for (char& letter : text) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return text;
}

}  // namespace strokewright::app
