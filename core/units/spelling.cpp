#include "core/units/spelling.h"

#include <array>

namespace strokewright::units {

namespace {

constexpr std::array<std::string_view, 8> kBlanks{
    " ",      "\t", "\n", "\r",
    "\u00A0",  // no-break space
    "\u2007",  // figure space
    "\u2009",  // thin space
    "\u202F",  // narrow no-break space
};

struct Replacement {
  std::string_view from;
  std::string_view to;
};

constexpr std::array<Replacement, 9> kReplacements{{
    {"·", ""},
    {"⋅", ""},
    {"²", "2"},
    {"³", "3"},
    {"\u00B5", "u"},  // micro sign
    {"\u03BC", "u"},  // Greek mu
    {"″", "\""},
    {"”", "\""},
    {"º", "°"},
}};

char lowerCase(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool isAscii(char letter) { return static_cast<unsigned char>(letter) < 0x80; }

const Replacement* replacementAt(std::string_view text) {
  for (const Replacement& replacement : kReplacements) {
    if (text.starts_with(replacement.from)) return &replacement;
  }
  return nullptr;
}

}  // namespace

std::size_t blankLength(std::string_view text) {
  for (const std::string_view blank : kBlanks) {
    if (text.starts_with(blank)) return blank.size();
  }
  return 0;
}

std::string folded(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    std::size_t length = blankLength(text);
    if (length == 0) {
      length = 1;
      const char letter = text.front();
      if (isAscii(letter)) {
        if (letter != '.' && letter != '*') result += lowerCase(letter);
      } else if (const Replacement* replacement = replacementAt(text)) {
        result += replacement->to;
        length = replacement->from.size();
      } else {
        result += letter;
      }
    }
    text.remove_prefix(length);
  }
  return result;
}

}  // namespace strokewright::units
