#include "core/model/entry_text.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <vector>

#include "core/model/inputs.h"
#include "core/model/lists.h"

namespace strokewright::model {
namespace {

using describe::Entry;
using describe::Input;
using units::Kind;
using units::UnitGroup;

Entry typed(const Input& input, std::string_view text) {
  return entryFrom(input, text, UnitGroup::metric());
}

TEST(TypedText, BecomesANumberInTheUnitOfTheGroup) {
  const Entry entry = typed(in::bore, "66.0");
  EXPECT_EQ(entry.values, std::vector{0.066});
  EXPECT_EQ(entry.text, "66.0");
  EXPECT_EQ(entry.unit, "mm");
  EXPECT_EQ(entry.plusMinus, std::nullopt);
  EXPECT_EQ(entry.origin, describe::Origin::NotSaid);
}

TEST(TypedText, IsInInchesWhereTheBuilderThinksInInches) {
  const Entry entry = entryFrom(in::bore, "2 5/8", UnitGroup::inchPound());
  ASSERT_EQ(entry.values.size(), 1U);
  EXPECT_DOUBLE_EQ(entry.values[0], 2.625 * 0.0254);
  EXPECT_EQ(entry.unit, "in");
}

TEST(TypedText, HasAUnitThatWinsOverTheGroup) {
  const Entry entry = typed(in::bore, "2.992 in");
  ASSERT_EQ(entry.values.size(), 1U);
  EXPECT_DOUBLE_EQ(entry.values[0], 2.992 * 0.0254);
  EXPECT_EQ(entry.text, "2.992 in");
  EXPECT_EQ(entry.unit, "mm") << "the unit of bare numbers";
}

TEST(TypedText, CarriesItsPlusMinusWithoutASign) {
  EXPECT_DOUBLE_EQ(typed(in::seatHeight, "98.20 ± 0.03").plusMinus.value(), 0.03e-3);
  const Entry minus = typed(in::seatHeight, "98.20 ± -0.03");
  EXPECT_DOUBLE_EQ(minus.plusMinus.value(), 0.03e-3);
  EXPECT_EQ(minus.text, "98.20 ± -0.03") << "the sign is still there to be objected to";
}

TEST(TypedText, IsNotKnownAsARangeOrWithTheUnitOfItsPlusMinusAlone) {
  for (const char* text : {"0.6 to 1.2", "0.65 ± 20 µm"}) {
    const Entry entry = typed(in::headGasket, text);
    EXPECT_FALSE(entry.known()) << text;
    EXPECT_EQ(entry.plusMinus, std::nullopt) << text;
    EXPECT_EQ(entry.text, text);
  }
}

TEST(TypedText, IsAListWhereTheInputTakesOne) {
  const Entry entry = typed(in::seatHeight, "98.12; 98.20; 98.29 ± 0.03");
  EXPECT_EQ(entry.values, (std::vector{0.09812, 0.0982, 0.09829}));
}

TEST(TypedText, IsNotKnownAsAListWhereTheInputTakesNone) {
  const Entry entry = typed(in::wantedSquish, "0.9; 1.0 ± 0.1");
  EXPECT_FALSE(entry.known());
  EXPECT_EQ(entry.plusMinus, std::nullopt);
  EXPECT_EQ(entry.text, "0.9; 1.0 ± 0.1");
}

TEST(TypedText, IsKeptWhenItMakesNoSense) {
  for (const char* text : {"?", "tbc", "sixty-six", "66 g", "1.2.3"}) {
    const Entry entry = typed(in::bore, text);
    EXPECT_FALSE(entry.known()) << text;
    EXPECT_EQ(entry.text, text);
  }
}

TEST(TypedText, IsTakenEvenWhenTheNumberIsImpossible) {
  EXPECT_EQ(typed(in::bore, "-5").values, std::vector{-0.005});
  EXPECT_EQ(typed(in::cylinderCount, "2.5").values, std::vector{2.5});
}

TEST(TypedText, IsNothingWhenBlank) {
  EXPECT_TRUE(typed(in::bore, "").empty());
  EXPECT_TRUE(typed(in::bore, " \t").empty());
  EXPECT_TRUE(typed(in::cycle, "  ").empty());
}

TEST(TypedText, IsPerCentForAShare) {
  EXPECT_EQ(typed(in::balanceFactor, "52").values, std::vector{0.52});
}

struct Row {
  const char* name;
  const Input* input;
  const char* text;
  std::vector<double> values;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.text; }
};

class TypedChoice : public testing::TestWithParam<Row> {};

TEST_P(TypedChoice, IsFoundByKeyOrLabel) {
  const Row& row = GetParam();
  const Entry entry = typed(*row.input, row.text);
  EXPECT_EQ(entry.values, row.values);
  EXPECT_EQ(entry.text, row.values.empty() ? row.text : "");
}

INSTANTIATE_TEST_SUITE_P(
    Spellings, TypedChoice,
    testing::Values(
        Row{"Key", &in::cycle, "two_stroke", {answer(Cycle::TwoStroke)}},
        Row{"Label", &in::cycle, "two-stroke", {answer(Cycle::TwoStroke)}},
        Row{"Blanks", &in::cycle, " Two Stroke ", {answer(Cycle::TwoStroke)}},
        Row{"Case", &in::use, "HILL", {answer(Use::Hill)}},
        Row{"LongLabel",
            &in::crownVolumeSense,
            "adds (dish, bowl, pockets)",
            {answer(CrownSense::Adds)}},
        Row{"List",
            &in::crownVolumeSense,
            "takes; adds",
            {answer(CrownSense::Takes), answer(CrownSense::Adds)}},
        Row{"FirstWord", &in::cycle, "Four", {answer(Cycle::FourStroke)}},
        Row{"FirstWordOfAnItem", &list::holeFor, "chain", {answer(HoleFor::ChainTunnel)}},
        Row{"PartOfAWord", &list::holeFor, "cha", {}},
        Row{"FirstWordOfTwo", &in::platesInStack, "one for", {}},
        Row{"ListWhereNone", &in::use, "hill; race", {}},
        Row{"BadPiece", &in::crownVolumeSense, "takes; gives", {}},
        Row{"EmptyPiece", &in::crownVolumeSense, "takes;", {}},
        Row{"Unknown", &in::cycle, "six-stroke", {}}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(TypedText, ReadsEveryChoiceByItsKeyAndItsLabel) {
  for (const Input* input : inputs()) {
    for (std::size_t place = 0; place < input->choices.size(); ++place) {
      const std::vector wanted{static_cast<double>(place)};
      EXPECT_EQ(typed(*input, input->choices[place].key).values, wanted);
      EXPECT_EQ(typed(*input, input->choices[place].label).values, wanted);
    }
  }
}

TEST(TypedText, IsTheMeanOfItsReadings) {
  const Entry entry = typed(in::seatHeight, "98.12 | 98.13 | 98.14; 98.20 ± 0.005");
  ASSERT_EQ(entry.values.size(), 2U);
  EXPECT_NEAR(entry.values[0], 98.13e-3, 1e-15);
  EXPECT_EQ(entry.values[1], 98.20e-3);
  EXPECT_EQ(entry.readings,
            (std::vector<std::vector<double>>{{98.12e-3, 98.13e-3, 98.14e-3}, {98.20e-3}}));
  EXPECT_GT(entry.limit(0), 0.005e-3) << "the scatter is in it";
  EXPECT_DOUBLE_EQ(entry.limit(1), 0.005e-3);
}

TEST(TypedText, IsADifferenceOnAScale) {
  const Entry one = typed(in::chamberVolume, "0.2 to 18.9");
  ASSERT_EQ(one.values.size(), 1U);
  EXPECT_NEAR(one.values[0], 18.7e-6, 1e-18);
  EXPECT_TRUE(one.readings.empty()) << "read once";
  const Entry several = typed(in::chamberVolume, "0.2 to 18.9 | 18.9 to 37.7 ml ± 0.1");
  ASSERT_EQ(several.readings.size(), 1U);
  EXPECT_NEAR(several.values[0], 18.75e-6, 1e-18);
}

TEST(TypedText, WithAReadingMissingIsNotKnown) {
  EXPECT_FALSE(typed(in::seatHeight, "98.12 | | 98.14").known());
  EXPECT_FALSE(typed(in::seatHeight, "98.12 |").known());
  EXPECT_FALSE(typed(in::chamberVolume, "0.2 to").known());
}

TEST(TypedText, HasReadingsInOneUnit) {
  const Entry entry = typed(in::chamberVolume, "1.14 | 1.15 cu in");
  ASSERT_EQ(entry.readings.size(), 1U);
  EXPECT_NEAR(entry.readings[0][0], 1.14 * 16.387064e-6, 1e-15);
}

}  // namespace
}  // namespace strokewright::model
