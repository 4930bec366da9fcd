#include "core/units/style.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace strokewright::units {

namespace {

constexpr std::string_view kDegree = "°";  // stands close to its number (ISO 80000-1, 7.1.4)
constexpr std::string_view kNoBreakSpace = "\u00A0";
constexpr std::string_view kGroupSpace = "\u202F";
constexpr int kMostDigits = 15;        // what a double holds of any decimal number
constexpr std::size_t kUngrouped = 4;  // 9142, but 41 794

/// Room for the largest double in full with kMostDigits decimals.
using Buffer = std::array<char, 384>;

template <typename... Format>
std::string written(double number, Format... format) {
  Buffer buffer;
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number, format...);
  return std::string(buffer.data(), end.ptr);
}

std::string fixed(double number, int decimals) {
  return written(number, std::chars_format::fixed, std::min(decimals, kMostDigits));
}

bool isDigit(char letter) { return letter >= '0' && letter <= '9'; }

bool isZero(std::string_view text) {
  return std::ranges::none_of(text, [](char letter) { return letter >= '1' && letter <= '9'; });
}

double readBack(std::string_view text) {
  double number = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), number);
  return number;
}

std::string grouped(std::string_view digits) {
  if (digits.size() <= kUngrouped) return std::string(digits);
  std::string result;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && (digits.size() - i) % 3 == 0) result += kGroupSpace;
    result += digits[i];
  }
  return result;
}

/// A plain text such as "-1234.50" with the marks of a style; zero loses its minus.
std::string marked(std::string_view plain, const Style& style, bool inGroups) {
  const bool negative = plain.starts_with('-');
  if (negative) plain.remove_prefix(1);
  const std::size_t point = std::min(plain.find('.'), plain.size());
  const std::string_view whole = plain.substr(0, point);
  std::string result;
  if (negative && !isZero(plain)) result += style.minus;
  result += inGroups ? grouped(whole) : std::string(whole);
  if (point < plain.size()) result.append(style.decimalMark).append(plain.substr(point + 1));
  return result;
}

}  // namespace

std::string Style::number(Kind kind, double si, int decimals) const {
  // A half goes up whichever way it was computed: 1.025 is told alike as a sum and as a difference.
  constexpr double kHalf = 1.0 + 4e-12;
  constexpr double kDigitsThatCount = 1e10;
  const Unit& unit = group[kind];
  const int finer = unit.decimals - unitsOf(kind).front().decimals;
  const int shown = decimals < 0 ? unit.decimals : std::max(decimals + finer, 0);
  const double number = fromSi(unit, si);
  const bool told = std::abs(number) * std::pow(10.0, shown) < kDigitsThatCount;
  return marked(fixed(told ? number * kHalf : number, shown), *this, true);
}

std::string Style::text(Kind kind, double si, int decimals) const {
  std::string result = number(kind, si, decimals);
  if (unit(kind).empty()) return result;
  if (unit(kind) != kDegree) result.append(kNoBreakSpace);
  return result.append(unit(kind));
}

std::string Style::editable(Kind kind, double si) const {
  const Unit& unit = group[kind];
  const double number = fromSi(unit, si);
  for (int decimals = unit.decimals; decimals <= kMostDigits; ++decimals) {
    const std::string plain = fixed(number, decimals);
    if (std::ranges::count_if(plain, isDigit) > kMostDigits) break;
    if (toSi(unit, readBack(plain)) == si) return marked(plain, *this, false);
  }
  return marked(written(number, std::chars_format::general, kMostDigits), *this, false);
}

std::string Style::difference(Kind kind, double si, int decimals) const {
  const std::string plain = number(kind, si, decimals);
  if (isZero(plain)) return "0";
  return si > 0.0 ? "+" + plain : plain;
}

std::string_view Style::unit(Kind kind) const { return group[kind].name; }

std::string exact(double value) { return written(value); }

}  // namespace strokewright::units
