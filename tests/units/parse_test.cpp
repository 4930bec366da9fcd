#include "core/units/parse.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <vector>

#include "core/units/unit_group.h"
#include "tests/units/parse_invariants.h"

namespace strokewright::units {
namespace {

constexpr double mm = 1e-3;
constexpr double inch = 0.0254;
constexpr double rpm = 0.10471975511965977;

Parsed parseBare(Kind kind, std::string_view text) {
  return parse(kind, text, unitsOf(kind).front());
}

// Conversions to SI round once or twice; the oracle rounds once more.
void expectValues(const std::vector<double>& actual, const std::vector<double>& expected) {
  ASSERT_EQ(actual.size(), expected.size());
  for (std::size_t i = 0; i < actual.size(); ++i) EXPECT_DOUBLE_EQ(actual[i], expected[i]);
}

struct Accepted {
  const char* name;
  Kind kind;
  const char* text;
  std::vector<double> values;  // [SI]
  std::vector<Heed> heeds = {};
  std::optional<double> plusMinus = std::nullopt;  // [SI]
  friend void PrintTo(const Accepted& row, std::ostream* out) { *out << '\'' << row.text << '\''; }
};
class AcceptedText : public testing::TestWithParam<Accepted> {};

TEST_P(AcceptedText, IsReadAsMeant) {
  const Accepted& row = GetParam();
  const Parsed parsed = parseBare(row.kind, row.text);
  EXPECT_EQ(brokenPromise(parsed), "");
  EXPECT_EQ(parsed.problem, Problem::None);
  expectValues(parsed.values, row.values);
  EXPECT_EQ(parsed.heeds, row.heeds);
  ASSERT_EQ(parsed.plusMinus.has_value(), row.plusMinus.has_value());
  EXPECT_DOUBLE_EQ(parsed.plusMinus.value_or(0.0), row.plusMinus.value_or(0.0));
}

INSTANTIATE_TEST_SUITE_P(
    Numbers, AcceptedText,
    testing::Values(
        Accepted{"Point", Kind::Length, "12.7", {12.7 * mm}},
        Accepted{"Comma", Kind::Length, "12,7", {12.7 * mm}, {Heed::Comma}},
        Accepted{"LeadingPoint", Kind::Length, ".5", {0.5 * mm}},
        Accepted{"LeadingComma", Kind::Length, ",5", {0.5 * mm}, {Heed::Comma}},
        Accepted{"TrailingPoint", Kind::Length, "12.", {12 * mm}},
        Accepted{"Gasket", Kind::FineLength, "0.040", {0.04 * mm}},
        Accepted{"GasketComma", Kind::FineLength, "0,040", {0.04 * mm}, {Heed::Comma}},
        Accepted{"ThreeDecimals", Kind::Length, "1.234", {1.234 * mm}},
        Accepted{"RodLength", Kind::Length, "126.500", {126.5 * mm}},
        Accepted{"ThousandPoint", Kind::FineLength, "1.200", {1.2 * mm}},
        Accepted{"ThousandComma",
                 Kind::FineLength,
                 "1,200",
                 {1.2 * mm},
                 {Heed::Comma, Heed::ThreeDigits}},
        Accepted{"ThreeBeforeComma",
                 Kind::Length,
                 "126,500",
                 {126.5 * mm},
                 {Heed::Comma, Heed::ThreeDigits}},
        Accepted{"FourBeforeComma", Kind::Length, "1234,500", {1234.5 * mm}, {Heed::Comma}},
        Accepted{"FourBehindComma", Kind::Length, "1,2345", {1.2345 * mm}, {Heed::Comma}},
        Accepted{"Blanks", Kind::Length, " \t12.7 \n", {12.7 * mm}},
        Accepted{"NoBreakBlanks", Kind::Length, "\u00A012.7\u202F", {12.7 * mm}},
        Accepted{"Exponent", Kind::Length, "12.7e0", {12.7 * mm}},
        Accepted{"ExponentSigned", Kind::Length, "1,27E+1mm", {12.7 * mm}, {Heed::Comma}},
        Accepted{"ExponentNegative", Kind::Length, "127e-1", {12.7 * mm}},
        Accepted{"Plus", Kind::Length, "+3", {3 * mm}},
        Accepted{"Minus", Kind::Length, "-1.35", {-1.35 * mm}},
        Accepted{"TrueMinus", Kind::Length, "−1.35", {-1.35 * mm}},
        Accepted{"Zero", Kind::Length, "0", {0.0}},
        Accepted{"MinusZero", Kind::Length, "-0", {0.0}},
        Accepted{"ShareBare", Kind::Share, "50", {0.5}},
        Accepted{"SpeedFactorBare", Kind::SpeedFactor, "350000", {350 * rpm}},
        Accepted{"Count", Kind::Count, "2.5", {2.5}}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Fractions, AcceptedText,
    testing::Values(
        Accepted{
            "Mixed", Kind::Length, "2 5/8 in", {66.675 * mm}, {Heed::Fraction, Heed::OtherUnit}},
        Accepted{
            "MixedMark", Kind::Length, "1 5/8\"", {41.275 * mm}, {Heed::Fraction, Heed::OtherUnit}},
        Accepted{
            "MixedDash", Kind::Length, "2-5/8\"", {66.675 * mm}, {Heed::Fraction, Heed::OtherUnit}},
        Accepted{"MixedNoBreak",
                 Kind::Length,
                 "2\u00A05/8″",
                 {66.675 * mm},
                 {Heed::Fraction, Heed::OtherUnit}},
        Accepted{"MixedNegative",
                 Kind::Length,
                 "-2-5/8 in",
                 {-66.675 * mm},
                 {Heed::Fraction, Heed::OtherUnit}},
        Accepted{"Sixteenths",
                 Kind::Length,
                 "13/16in",
                 {20.6375 * mm},
                 {Heed::Fraction, Heed::OtherUnit}},
        Accepted{"Improper", Kind::Length, "13/8", {1.625 * mm}, {Heed::Fraction}},
        Accepted{"PerMinute", Kind::Speed, "12 1/min", {12 * rpm}},
        Accepted{"FractionPerMinute", Kind::Speed, "2 1/4 1/min", {2.25 * rpm}, {Heed::Fraction}}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Units, AcceptedText,
    testing::Values(
        Accepted{"SameUnit", Kind::Length, "12,7 mm", {12.7 * mm}, {Heed::Comma}},
        Accepted{"Inch", Kind::Length, "0.5in", {0.5 * inch}, {Heed::OtherUnit}},
        Accepted{"InchMark", Kind::Length, "0,5\"", {0.5 * inch}, {Heed::Comma, Heed::OtherUnit}},
        Accepted{"Centimetre", Kind::Length, "7.6 cm", {0.076}, {Heed::OtherUnit}},
        Accepted{"Metre", Kind::Length, "0.076 m", {0.076}, {Heed::OtherUnit}},
        Accepted{"Thou", Kind::FineLength, "40 thou", {1.016 * mm}, {Heed::OtherUnit}},
        Accepted{"Mil", Kind::FineLength, "40 mil", {1.016 * mm}, {Heed::OtherUnit}},
        Accepted{"Micrometre", Kind::FineLength, "25 µm", {0.025 * mm}, {Heed::OtherUnit}},
        Accepted{"CubicCentimetre", Kind::Volume, "80 cc", {80e-6}},
        Accepted{"Millilitre", Kind::Volume, "12.5 ml", {12.5e-6}},
        Accepted{"Litre", Kind::Volume, "0.7 l", {7e-4}, {Heed::OtherUnit}},
        Accepted{"Kilogram", Kind::Mass, "0.40kg", {0.4}, {Heed::OtherUnit}},
        Accepted{"Ounce", Kind::Mass, "7.58 oz", {0.2148893852875}, {Heed::OtherUnit}},
        Accepted{"PerCent", Kind::Share, "50 %", {0.5}},
        Accepted{"Degree", Kind::Angle, "180°", {3.141592653589793}},
        Accepted{"RatioToOne", Kind::Ratio, "10.5:1", {10.5}},
        Accepted{"NoBreakBlank", Kind::Length, "66\u00A0mm", {66 * mm}},
        Accepted{"SpeedFactor", Kind::SpeedFactor, "350000 mm·rpm", {350 * rpm}}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Lists, AcceptedText,
    testing::Values(
        Accepted{"Bare", Kind::Length, "98.12; 98.20;98.29", {98.12 * mm, 98.20 * mm, 98.29 * mm}},
        Accepted{"UnitAtTheEnd",
                 Kind::Length,
                 "1; 2; 3 in",
                 {inch, 2 * inch, 3 * inch},
                 {Heed::OtherUnit}},
        Accepted{"UnitAtTheFront", Kind::Length, "1 in; 2", {inch, 2 * inch}, {Heed::OtherUnit}},
        Accepted{
            "UnitsOfTheirOwn", Kind::Length, "1 in; 20 mm", {inch, 20 * mm}, {Heed::OtherUnit}},
        Accepted{"PlusMinus", Kind::Length, "98.20 ± 0.03", {98.20 * mm}, {}, 0.03 * mm},
        Accepted{"PlusMinusTyped", Kind::Length, "98.20 +- 0.03 mm", {98.20 * mm}, {}, 0.03 * mm},
        Accepted{"PlusMinusSlash", Kind::Length, "98.20+/-0.03", {98.20 * mm}, {}, 0.03 * mm},
        Accepted{"PlusMinusForAll",
                 Kind::Length,
                 "98.12; 98.20; 98.29 ± 0.03 mm",
                 {98.12 * mm, 98.20 * mm, 98.29 * mm},
                 {},
                 0.03 * mm},
        Accepted{"UnitBeforePlusMinus",
                 Kind::Length,
                 "2 in ± 0.001",
                 {2 * inch},
                 {Heed::OtherUnit},
                 0.001 * inch},
        Accepted{"PlusMinusOfItsOwn",
                 Kind::Length,
                 "98.20 mm ± 20 µm",
                 {98.20 * mm},
                 {Heed::OtherUnit},
                 0.02 * mm},
        Accepted{"CommaInPlusMinus",
                 Kind::Length,
                 "98.20 ± 0,03",
                 {98.20 * mm},
                 {Heed::Comma},
                 0.03 * mm}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Readings, AcceptedText,
    testing::Values(
        Accepted{"Step", Kind::Volume, "0.2 to 18.9", {18.7e-6}, {Heed::Step}},
        Accepted{"StepDownTheScale", Kind::Volume, "18.9 to 0.2 ml", {-18.7e-6}, {Heed::Step}},
        Accepted{"StepsInAList",
                 Kind::Volume,
                 "0 to 18.5; 18.5 to 37.5 ± 0.1",
                 {18.5e-6, 19e-6},
                 {Heed::Step},
                 0.1e-6},
        Accepted{"Mean", Kind::Length, "98 | 99", {98.5 * mm}, {Heed::Mean}},
        Accepted{
            "MeanInInches", Kind::Length, "2 | 3 in", {2.5 * inch}, {Heed::OtherUnit, Heed::Mean}},
        Accepted{"MeanOfOneOfTwo",
                 Kind::Length,
                 "98 | 99; 98,5",
                 {98.5 * mm, 98.5 * mm},
                 {Heed::Comma, Heed::Mean}},
        Accepted{"MeanOfSteps",
                 Kind::Volume,
                 "0 to 18.5 | 18.5 to 37.5",
                 {18.75e-6},
                 {Heed::Step, Heed::Mean}}),
    [](const auto& row) { return std::string(row.param.name); });

struct Refused {
  const char* name;
  Kind kind;
  const char* text;
  Problem problem;
  const char* culprit;
  friend void PrintTo(const Refused& row, std::ostream* out) { *out << '\'' << row.text << '\''; }
};
class RefusedText : public testing::TestWithParam<Refused> {};

TEST_P(RefusedText, IsNamedWithItsCulprit) {
  const Refused& row = GetParam();
  const Parsed parsed = parseBare(row.kind, row.text);
  EXPECT_EQ(brokenPromise(parsed), "");
  EXPECT_EQ(parsed.problem, row.problem);
  EXPECT_EQ(parsed.culprit, row.culprit);
}

INSTANTIATE_TEST_SUITE_P(
    NotKnownYet, RefusedText,
    testing::Values(Refused{"Empty", Kind::Length, "", Problem::Empty, ""},
                    Refused{"Blank", Kind::Length, " \u00A0", Problem::Empty, ""},
                    Refused{"Question", Kind::Length, "?", Problem::Placeholder, "?"},
                    Refused{"Tbc", Kind::Length, "TBC", Problem::Placeholder, "TBC"},
                    Refused{"Tba", Kind::Length, " tba ", Problem::Placeholder, "tba"},
                    Refused{"Dash", Kind::Length, "-", Problem::Placeholder, "-"},
                    Refused{"EnDash", Kind::Length, "–", Problem::Placeholder, "–"},
                    Refused{"EmDash", Kind::Length, "—", Problem::Placeholder, "—"},
                    Refused{"NotAvailable", Kind::Mass, "n/a", Problem::Placeholder, "n/a"},
                    Refused{"NaN", Kind::Length, "NaN", Problem::Placeholder, "NaN"},
                    Refused{"Infinite", Kind::Length, "-inf", Problem::Placeholder, "-inf"},
                    Refused{"InAList", Kind::Length, "98.12; ?", Problem::Placeholder, "?"}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Unreadable, RefusedText,
    testing::Values(
        Refused{"Word", Kind::Length, "abc", Problem::NotANumber, "abc"},
        Refused{"PointAlone", Kind::Length, ".", Problem::NotANumber, "."},
        Refused{"UnitAlone", Kind::Length, "mm", Problem::NotANumber, "mm"},
        Refused{"TwoSigns", Kind::Length, "--5", Problem::NotANumber, "--5"},
        Refused{"GroupByBlank", Kind::Speed, "41 794", Problem::Grouped, "41 794"},
        Refused{"GroupByThinBlank", Kind::Speed, "41\u202F794", Problem::Grouped, "41\u202F794"},
        Refused{"GroupByApostrophe", Kind::Speed, "10'000", Problem::Grouped, "10'000"},
        Refused{"Sum", Kind::Length, "86-0.04", Problem::NotANumber, "86-0.04"},
        Refused{"Product", Kind::Length, "25.4*3", Problem::NotANumber, "25.4*3"},
        Refused{"SecondNumber", Kind::Length, "12 5 mm", Problem::NotANumber, "12 5 mm"},
        Refused{"TrueMinusInside", Kind::Length, "12 −5", Problem::NotANumber, "12 −5"},
        Refused{"MixedImproper", Kind::Length, "2 13/8", Problem::ImproperFraction, "2 13/8"},
        Refused{"MixedWhole", Kind::Length, "2-8/8", Problem::ImproperFraction, "2-8/8"},
        Refused{"BrokenDivisor", Kind::Length, "1/2.5", Problem::NotANumber, "1/2.5"},
        Refused{"DecimalFraction", Kind::Length, "1.5/8", Problem::NotANumber, "1.5/8"},
        Refused{"GapInList", Kind::Length, "1;;2", Problem::Gap, "1;;2"},
        Refused{"OpenList", Kind::Length, "1; 2;", Problem::Gap, "1; 2;"},
        Refused{"ListByComma", Kind::Length, "98, 99", Problem::NotANumber, "98, 99"},
        Refused{"PlusMinusAlone", Kind::Length, "± 0.03", Problem::Gap, "± 0.03"},
        Refused{"PlusMinusOpen", Kind::Length, "98 ±", Problem::Gap, "98 ±"},
        Refused{"PlusMinusTwice", Kind::Length, "98 ± 1 ± 2", Problem::PlusMinusInside, "1 ± 2"},
        Refused{"PlusMinusTwiceTyped", Kind::Length, "98 +- 1 ± 2", Problem::PlusMinusInside,
                "1 ± 2"},
        Refused{"PlusMinusForEachReading", Kind::Length, "98 ± 1 | 99", Problem::PlusMinusInside,
                "1 | 99"},
        Refused{"ReadingMissing", Kind::Length, "98.12 | | 98.14", Problem::Gap, "98.12 | | 98.14"},
        Refused{"GroupWithUnit", Kind::Speed, "1 234 567 rpm", Problem::Grouped, "1 234 567 rpm"},
        Refused{"GroupByTypographicApostrophe", Kind::Speed, "10’000", Problem::Grouped, "10’000"},
        Refused{"NoGroupOfFour", Kind::Speed, "1234 567", Problem::NotANumber, "1234 567"},
        Refused{"Range", Kind::FineLength, "0.6 to 1.2", Problem::Range, "0.6 to 1.2"},
        Refused{"RangeWithUnitAndPlusMinus", Kind::Length, "66 to 68 mm ± 0.1", Problem::Range,
                "66 to 68 mm"},
        Refused{"RangeInAList", Kind::Mass, "200; 210 to 220", Problem::Range, "210 to 220"},
        Refused{"RangeOfARatio", Kind::Ratio, "9 to 10.5", Problem::Range, "9 to 10.5"},
        Refused{"RangeNotKnownYet", Kind::Length, "? to 68", Problem::Placeholder, "?"},
        Refused{"PlusMinusInside", Kind::Length, "1 ± 2; 3", Problem::PlusMinusInside, "2; 3"},
        Refused{"MarksSwappedGerman", Kind::Length, "1.000,5", Problem::TwoDecimalMarks, "1.000,5"},
        Refused{"MarksSwappedEnglish", Kind::Length, "1,000.5 mm", Problem::TwoDecimalMarks,
                "1,000.5"},
        Refused{"Date", Kind::Length, "1.2.3", Problem::TwoDecimalMarks, "1.2.3"},
        Refused{"MarksInAList", Kind::Length, "1; 2..5; 3", Problem::TwoDecimalMarks, "2..5"},
        Refused{"ZeroDivisor", Kind::Length, "3/0", Problem::ZeroDivisor, "3/0"},
        Refused{"MixedZeroDivisor", Kind::Length, "2 3/0 in", Problem::ZeroDivisor, "2 3/0 in"},
        Refused{"Exponent", Kind::Length, "1e400", Problem::TooLarge, "1e400"},
        Refused{"ExponentEndless", Kind::Length, "1e99999999999999999999", Problem::TooLarge,
                "1e99999999999999999999"},
        Refused{"TooNearZero", Kind::Length, "1e-400", Problem::TooLarge, "1e-400"},
        Refused{"OnlyInSi", Kind::Force, "1e308", Problem::TooLarge, "1e308"},
        Refused{"PlusMinusOnlyInSi", Kind::Force, "1 ± 1e308", Problem::TooLarge, "1e308"},
        Refused{"Digits", Kind::Ratio, "11111111112222222222333333333344444444445",
                Problem::TooLarge, "11111111112222222222333333333344444444445"}),
    [](const auto& row) { return std::string(row.param.name); });

INSTANTIATE_TEST_SUITE_P(
    WrongUnit, RefusedText,
    testing::Values(
        Refused{"MassForLength", Kind::Length, "12 g", Problem::WrongKind, "g"},
        Refused{"PerCentForLength", Kind::Length, "12%", Problem::WrongKind, "%"},
        Refused{"LengthForCount", Kind::Count, "4 mm", Problem::WrongKind, "mm"},
        Refused{"GramForAcceleration", Kind::Acceleration, "900 g", Problem::WrongKind, "g"},
        Refused{"Unknown", Kind::Length, "12 cubits", Problem::UnknownUnit, "cubits"},
        Refused{"UnknownMicro", Kind::Mass, "12 µF", Problem::UnknownUnit, "µF"},
        Refused{"Feet", Kind::Length, "3 ft", Problem::UnknownUnit, "ft"},
        Refused{"HalfExponent", Kind::Length, "5e", Problem::UnknownUnit, "e"},
        Refused{"Hexadecimal", Kind::Length, "0x10", Problem::UnknownUnit, "x10"},
        Refused{"LeftOpenByPlusMinus", Kind::FineLength, "0.65 ± 20 µm", Problem::OpenUnit, "0.65"},
        Refused{"LeftOpenInInches", Kind::Length, "2 ± 0.001 in", Problem::OpenUnit, "2"},
        Refused{"LeftOpenInAListByPlusMinus", Kind::Length, "98.12; 98.20 ± 30 µm",
                Problem::OpenUnit, "98.12"},
        Refused{"LeftOpenInAList", Kind::Length, "1 in; 2; 30 mm", Problem::OpenUnit, "2"}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(Parse, ABareNumberIsInTheUnitOfTheField) {
  const Unit& thou = *findUnit(Kind::FineLength, "thou");
  const Parsed bare = parse(Kind::FineLength, "40", thou);
  expectValues(bare.values, {1.016 * mm});
  EXPECT_TRUE(bare.heeds.empty());
  const Parsed other = parse(Kind::FineLength, "1 mm", thou);
  expectValues(other.values, {1 * mm});
  EXPECT_EQ(other.heeds, std::vector{Heed::OtherUnit});
}

TEST(Parse, AUnitBehindThePlusMinusIsTheNumbersTooWhereItIsTheFieldsOwn) {
  const Parsed parsed = parse(Kind::Length, "2 ± 0.001 in", *findUnit(Kind::Length, "in"));
  expectValues(parsed.values, {2 * inch});
  EXPECT_DOUBLE_EQ(parsed.plusMinus.value_or(0.0), 0.001 * inch);
  EXPECT_TRUE(parsed.heeds.empty());
}

TEST(Parse, TheFieldsOwnUnitIsNotWorthSayingEvenAsACopy) {
  const Unit copy = unitsOf(Kind::Length).front();
  EXPECT_TRUE(parse(Kind::Length, "66 mm", copy).heeds.empty());
}

TEST(Parse, DecimalTextInMillimetresIsTheSameDoubleAsTheTextInMetres) {
  EXPECT_EQ(parseBare(Kind::Length, "66.0").values, std::vector{0.066});
  EXPECT_EQ(parseBare(Kind::Length, "126.500").values, std::vector{0.1265});
  EXPECT_EQ(parseBare(Kind::FineLength, "0,040").values, std::vector{0.00004});
  EXPECT_EQ(parseBare(Kind::Length, "28.4").values, std::vector{0.0284});
  EXPECT_EQ(parseBare(Kind::Length, "98.20 ± 0.03").plusMinus, 0.00003);
  EXPECT_EQ(parseBare(Kind::Length, "2.84e1").values, std::vector{0.0284});
}

TEST(Parse, EveryNameAndAliasOfEveryUnitIsReadBehindANumber) {
  for (std::size_t i = 0; i < kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    for (const Unit& unit : unitsOf(kind)) {
      std::vector<std::string_view> spellings(unit.aliases.begin(), unit.aliases.end());
      spellings.push_back(unit.name);
      for (const std::string_view spelling : spellings) {
        const Parsed parsed = parseBare(kind, "12.5 " + std::string(spelling));
        EXPECT_EQ(parsed.values, std::vector{toSi(unit, 12.5)}) << spelling;
      }
    }
  }
}

}  // namespace
}  // namespace strokewright::units
