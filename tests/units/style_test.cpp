#include "core/units/style.h"

#include <gtest/gtest.h>

#include <limits>
#include <numbers>
#include <random>
#include <string>

#include "core/units/parse.h"

namespace strokewright::units {
namespace {

constexpr double mm = 1e-3;
constexpr double rpm = std::numbers::pi / 30.0;

Style inchStyle() { return Style{.group = UnitGroup::inchPound()}; }

Style commaStyle() { return Style{.decimalMark = ","}; }

TEST(Style, TheUnitOfTheKindSaysHowManyDecimals) {
  const Style style;
  EXPECT_EQ(style.number(Kind::Length, 0.066), "66.00");
  EXPECT_EQ(style.number(Kind::Mass, 0.215), "215.0");
  EXPECT_EQ(style.number(Kind::Speed, 8500 * rpm), "8500");
  EXPECT_EQ(style.number(Kind::Share, 0.52), "52.0");
  EXPECT_EQ(style.number(Kind::Count, 3), "3");
  EXPECT_EQ(inchStyle().number(Kind::Length, 0.0254), "1.0000");
  EXPECT_EQ(inchStyle().number(Kind::FineLength, 0.00095), "37.4");
}

TEST(Style, TheCallerMayAskForOtherDecimals) {
  const Style style;
  EXPECT_EQ(style.number(Kind::Length, 0.0660375, 4), "66.0375");
  EXPECT_EQ(style.number(Kind::Length, 0.0660375, 0), "66");
  EXPECT_EQ(style.number(Kind::Length, 0.5, 99), "500.000000000000000");
}

TEST(Style, FiveDigitsAreGroupedAndFourAreNot) {
  const Style style;
  EXPECT_EQ(style.number(Kind::Speed, 9142 * rpm), "9142");
  EXPECT_EQ(style.number(Kind::Acceleration, 41794), "41\u202F794");
  EXPECT_EQ(style.number(Kind::Acceleration, -41794), "−41\u202F794");
  EXPECT_EQ(style.number(Kind::RingConstant, 1234567.25), "1\u202F234\u202F567.3");
  EXPECT_EQ(style.number(Kind::RingConstant, 9999.96), "10\u202F000.0");
}

TEST(Style, TheMarksOfTheReaderAreUsedThroughout) {
  const Style style = commaStyle();
  EXPECT_EQ(style.number(Kind::Length, -0.0665), "−66,50");
  EXPECT_EQ(style.text(Kind::Length, 0.0665), "66,50\u00A0mm");
  EXPECT_EQ(style.editable(Kind::Length, 0.0665025), "66,5025");
  EXPECT_EQ(style.difference(Kind::Length, 0.00005), "+0,05");
  const Style machine{.minus = "-"};
  EXPECT_EQ(machine.difference(Kind::Length, -0.00005), "-0.05");
}

TEST(Style, WhatRoundsToZeroHasNoSign) {
  const Style style;
  EXPECT_EQ(style.number(Kind::Length, -0.000001), "0.00");
  EXPECT_EQ(style.number(Kind::Length, -0.0), "0.00");
  EXPECT_EQ(style.number(Kind::Speed, -0.01), "0");
  EXPECT_EQ(style.editable(Kind::Length, -0.0), "0.00");
}

TEST(Style, AUnitFollowsANoBreakSpace) {
  const Style style;
  EXPECT_EQ(style.text(Kind::Length, 0.066), "66.00\u00A0mm");
  EXPECT_EQ(style.text(Kind::Angle, std::numbers::pi), "180.0°");
  EXPECT_EQ(style.text(Kind::Ratio, 10.0777), "10.08");
  EXPECT_EQ(style.text(Kind::Count, 2), "2");
  EXPECT_EQ(style.unit(Kind::Ratio), "");
  EXPECT_EQ(style.unit(Kind::Volume), "ml");
}

TEST(Style, ADifferenceSaysItsSignUnlessItIsNone) {
  const Style style;
  EXPECT_EQ(style.difference(Kind::Length, 1.2 * mm), "+1.20");
  EXPECT_EQ(style.difference(Kind::Length, -0.05 * mm), "−0.05");
  EXPECT_EQ(style.difference(Kind::Length, 0.004 * mm), "0");
  EXPECT_EQ(style.difference(Kind::Length, -0.004 * mm), "0");
  EXPECT_EQ(style.difference(Kind::Length, 0.004 * mm, 3), "+0.004");
}

TEST(Style, AnEditorGetsEveryDigitThatWasTypedAndNoMore) {
  const Style style;
  EXPECT_EQ(style.editable(Kind::Length, 0.066), "66.00");
  EXPECT_EQ(style.editable(Kind::Length, 0.1265), "126.50");
  EXPECT_EQ(style.editable(Kind::Length, 0.0660375), "66.0375");
  EXPECT_EQ(style.editable(Kind::Speed, 10000 * rpm), "10000");
  EXPECT_EQ(style.editable(Kind::Length, -0.00135), "−1.35");
  EXPECT_EQ(inchStyle().editable(Kind::Length, 0.066675), "2.6250");
}

TEST(Style, WhatNeedsMoreThanFifteenDigitsIsCutThere) {
  EXPECT_EQ(Style().editable(Kind::Length, 0.0254 / 3), "8.46666666666667");
}

TEST(Style, LargeAndTinyNumbersStayReadable) {
  const Style style;
  for (const double si : {1e300, -2.5e200, 1e-30, 123456789012345678.0, 5e-324}) {
    const Parsed back =
        parse(Kind::Ratio, style.editable(Kind::Ratio, si), unitsOf(Kind::Ratio).front());
    ASSERT_EQ(back.problem, Problem::None) << style.editable(Kind::Ratio, si);
    EXPECT_NEAR(back.values.at(0) / si, 1.0, 2e-2) << si;  // 5e-324 has a single bit
  }
}

/// "512.0375": as people type sizes, up to three digits before the mark and four behind it.
std::string typedText(int tenThousandths, char mark) {
  std::string text = std::to_string(tenThousandths + 10'000'000);  // the 1 keeps leading zeros
  text.insert(4, 1, mark);
  return text.substr(1);
}

TEST(Style, TypedNumbersComeBackAsTheSameDouble) {
  std::mt19937 random(20250101);
  std::uniform_int_distribution<int> tenThousandths(0, 9'999'999);
  for (std::size_t i = 0; i < kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    for (const Unit& unit : unitsOf(kind)) {
      Style style = commaStyle();
      ASSERT_TRUE(style.group.choose(kind, unit.name));
      for (int n = 0; n < 1000; ++n) {
        const std::string text = typedText(tenThousandths(random), n % 2 == 0 ? '.' : ',');
        const Parsed typed = parse(kind, text, unit);
        ASSERT_EQ(typed.problem, Problem::None) << text;
        const std::string shown = style.editable(kind, typed.values.at(0));
        const Parsed again = parse(kind, shown, unit);
        ASSERT_EQ(again.problem, Problem::None) << shown;
        EXPECT_EQ(again.values.at(0), typed.values.at(0))
            << text << " became " << shown << ' ' << unit.name;
      }
    }
  }
}

TEST(Exact, IsTheShortestTextOfTheSameDouble) {
  EXPECT_EQ(exact(0.066), "0.066");
  EXPECT_EQ(exact(-1.5), "-1.5");
  EXPECT_EQ(exact(0.0), "0");
  EXPECT_EQ(exact(1.0 / 3.0), "0.3333333333333333");
  EXPECT_EQ(exact(std::numeric_limits<double>::max()), "1.7976931348623157e+308");
}

}  // namespace
}  // namespace strokewright::units
