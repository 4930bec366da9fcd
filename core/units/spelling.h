#pragma once
/// How texts are compared that people spell in different ways.

#include <cstddef>
#include <string>
#include <string_view>

namespace strokewright::units {

/// Bytes of the blank at the front of the text: space, tab, line end, or one of the no-break and
/// thin spaces; 0 when it starts with something else.
std::size_t blankLength(std::string_view text);

/// The text without blanks, points and multiplication dots, in lower case (ASCII letters only),
/// with ², ³, µ, ″ and º replaced by 2, 3, u, " and °. Equal for spellings that mean the same.
std::string folded(std::string_view text);

}  // namespace strokewright::units
