// Texts made up by chance, the same ones in every run, against the promises of parse().
#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>

#include "core/units/parse.h"
#include "tests/units/parse_invariants.h"

namespace strokewright::units {
namespace {

constexpr int kTexts = 200'000;

constexpr std::array<std::string_view, 48> kPieces{
    " to ",   "|",      "0",   "1",  "9",  "12.7", "98,20", "1e308", "e",   "E-",  "400",  ".",
    ",",      "/",      "5/8", "/0", "-",  "+",    "−",     "±",     "+-",  "+/-", ";",    " ",
    "\u00A0", "\u202F", "mm",  "in", "\"", "″",    "cm³",   "µm",    "kN",  "MPa", "rpm",  "1/min",
    "%",      ":1",     "g",   "cu", "?",  "nan",  "inf",   "tbc",   "n/a", "x",   "\xC2", "\xFF"};

class TextMaker {
 public:
  std::string next() {
    std::string text;
    for (std::size_t left = below(9); left > 0; --left) text += kPieces[below(kPieces.size())];
    if (!text.empty() && below(4) == 0) text[below(text.size())] = static_cast<char>(below(256));
    return text;
  }
  std::size_t below(std::size_t limit) { return random_() % limit; }

 private:
  std::mt19937 random_{1977};
};

TEST(Parse, KeepsItsPromisesForTextsMadeUpByChance) {
  TextMaker maker;
  int read = 0;
  for (int n = 0; n < kTexts; ++n) {
    const auto kind = static_cast<Kind>(maker.below(kKindCount));
    const auto units = unitsOf(kind);
    const std::string text = maker.next();
    const Parsed parsed = parse(kind, text, units[maker.below(units.size())]);
    ASSERT_EQ(brokenPromise(parsed), "") << '\'' << text << '\'';
    read += parsed.problem == Problem::None ? 1 : 0;
  }
  EXPECT_GT(read, kTexts / 100) << "the made-up texts hardly ever mean anything";
}

}  // namespace
}  // namespace strokewright::units
