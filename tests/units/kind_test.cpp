#include "core/units/kind.h"

#include <gtest/gtest.h>

#include <charconv>
#include <limits>
#include <ostream>
#include <random>
#include <set>
#include <string>

#include "core/units/spelling.h"

namespace strokewright::units {
namespace {

constexpr double kFewEpsilon = 4e-16;  // relative: two roundings in a conversion, one in the oracle

// Oracle: NIST SP 811 appendix B and the definitions it rests on, written from memory and checked
// against exact decimal arithmetic.
struct Conversion {
  const char* name;
  Kind kind;
  const char* unit;
  double number;
  double si;
  const char* source;
  friend void PrintTo(const Conversion& row, std::ostream* out) {
    *out << row.name << ", " << row.source;
  }
};
class UnitConversion : public testing::TestWithParam<Conversion> {};

TEST_P(UnitConversion, GivesThePublishedSiValue) {
  const Conversion& row = GetParam();
  const Unit* unit = findUnit(row.kind, row.unit);
  ASSERT_NE(unit, nullptr);
  EXPECT_NEAR(toSi(*unit, row.number), row.si, kFewEpsilon * row.si);
  EXPECT_NEAR(fromSi(*unit, row.si), row.number, kFewEpsilon * row.number);
}

constexpr const char* kSp811 = "NIST SP 811 appendix B (from memory)";
constexpr const char* kSi = "SI prefixes and definitions";
constexpr const char* kDerived = "derived from NIST SP 811 appendix B, exact decimal arithmetic";

INSTANTIATE_TEST_SUITE_P(
    Published, UnitConversion,
    testing::Values(
        Conversion{"Millimetre", Kind::Length, "mm", 66.0, 0.066, kSi},
        Conversion{"Centimetre", Kind::Length, "cm", 7.6, 0.076, kSi},
        Conversion{"Metre", Kind::Length, "m", 0.126, 0.126, kSi},
        Conversion{"Micrometre", Kind::FineLength, "µm", 650.0, 0.00065, kSi},
        Conversion{"Inch", Kind::Length, "in", 1.0, 0.0254, kSp811},
        Conversion{"FineInch", Kind::FineLength, "in", 0.035, 0.000889, kSp811},
        Conversion{"Mil", Kind::FineLength, "thou", 1.0, 2.54e-5, kSp811},
        Conversion{"CubicInch", Kind::Volume, "cu in", 1.0, 1.6387064e-5, kSp811},
        Conversion{"Millilitre", Kind::Volume, "ml", 31.0, 3.1e-5, kSi},
        Conversion{"Litre", Kind::Volume, "l", 0.7, 7e-4, kSi},
        Conversion{"Gram", Kind::Mass, "g", 215.0, 0.215, kSi},
        Conversion{"Kilogram", Kind::Mass, "kg", 0.4, 0.4, kSi},
        Conversion{"Milligram", Kind::Mass, "mg", 250.0, 2.5e-4, kSi},
        Conversion{"Pound", Kind::Mass, "lb", 1.0, 0.45359237, kSp811},
        Conversion{"Ounce", Kind::Mass, "oz", 1.0, 0.028349523125, kSp811},
        Conversion{"SquareMillimetre", Kind::Area, "mm²", 120.0, 1.2e-4, kSi},
        Conversion{"SquareCentimetre", Kind::Area, "cm²", 1.2, 1.2e-4, kSi},
        Conversion{"SquareInch", Kind::Area, "sq in", 1.0, 6.4516e-4, kSp811},
        Conversion{"Degree", Kind::Angle, "°", 1.0, 0.017453292519943295, kSp811},
        Conversion{"Radian", Kind::Angle, "rad", 1.5, 1.5, kSi},
        Conversion{"RevolutionPerMinute", Kind::Speed, "rpm", 1.0, 0.10471975511965977, kSp811},
        Conversion{"RadianPerSecond", Kind::Speed, "rad/s", 890.0, 890.0, kSi},
        Conversion{"MetrePerSecond", Kind::Velocity, "m/s", 18.0, 18.0, kSi},
        Conversion{"FootPerMinute", Kind::Velocity, "ft/min", 1.0, 0.00508, kSp811},
        Conversion{"FootPerSecond", Kind::Velocity, "ft/s", 1.0, 0.3048, kSp811},
        Conversion{"MetrePerSecondSquared", Kind::Acceleration, "m/s²", 9.0, 9.0, kSi},
        Conversion{"KilometrePerSecondSquared", Kind::Acceleration, "km/s²", 26.0, 26000.0, kSi},
        Conversion{"FootPerSecondSquared", Kind::Acceleration, "ft/s²", 1.0, 0.3048, kSp811},
        Conversion{"Newton", Kind::Force, "N", 12.5, 12.5, kSi},
        Conversion{"Kilonewton", Kind::Force, "kN", 12.5, 12500.0, kSi},
        Conversion{"PoundForce", Kind::Force, "lbf", 1.0, 4.4482216152605, kSp811},
        Conversion{"Pascal", Kind::Stress, "Pa", 101325.0, 101325.0, kSi},
        Conversion{"Megapascal", Kind::Stress, "MPa", 85.0, 8.5e7, kSi},
        Conversion{"Bar", Kind::Stress, "bar", 1.0, 1e5, kSp811},
        Conversion{"Psi", Kind::Stress, "psi", 1.0, 6894.757293168362, kDerived},
        Conversion{"Ksi", Kind::Stress, "ksi", 1.0, 6894757.293168362, kDerived},
        Conversion{"GramMillimetre", Kind::StaticMoment, "g·mm", 7000.0, 0.007, kSi},
        Conversion{"KilogramMillimetre", Kind::StaticMoment, "kg·mm", 7.0, 0.007, kSi},
        Conversion{"OunceInch", Kind::StaticMoment, "oz·in", 1.0, 7.20077887375e-4, kDerived},
        Conversion{"RingConstant", Kind::RingConstant, "m²/s²", 24.0, 24.0, kSi},
        Conversion{"SpeedFactor", Kind::SpeedFactor, "mm·rpm", 350000.0, 36.65191429188092,
                   kDerived},
        Conversion{"SpeedFactorSi", Kind::SpeedFactor, "m·rad/s", 36.0, 36.0, kSi},
        Conversion{"PerCent", Kind::Share, "%", 50.0, 0.5, kSi}),
    [](const auto& row) { return std::string(row.param.name); });

// Oracle: the decimal text with its exponent, read once.
struct Decimal {
  const char* name;
  Kind kind;
  const char* unit;
  const char* exponent;
  friend void PrintTo(const Decimal& row, std::ostream* out) { *out << row.name; }
};
class DecimalUnit : public testing::TestWithParam<Decimal> {};

TEST_P(DecimalUnit, GivesTheDoubleNearestToTheDecimalInSi) {
  const Unit& unit = *findUnit(GetParam().kind, GetParam().unit);
  std::mt19937 random(19770301);
  std::uniform_int_distribution<int> tenThousandths(-9'999'999, 9'999'999);
  for (int n = 0; n < 5000; ++n) {
    const int number = tenThousandths(random);
    const std::string text = std::to_string(number) + "e-4";
    double typed = 0.0;
    std::from_chars(text.data(), text.data() + text.size(), typed);
    const std::string inSi = std::to_string(number) + GetParam().exponent;
    double si = 0.0;
    std::from_chars(inSi.data(), inSi.data() + inSi.size(), si);
    ASSERT_EQ(toSi(unit, typed), si) << text << ' ' << unit.name;
  }
}

INSTANTIATE_TEST_SUITE_P(FourDecimals, DecimalUnit,
                         testing::Values(Decimal{"Millimetre", Kind::Length, "mm", "e-7"},
                                         Decimal{"FineMillimetre", Kind::FineLength, "mm", "e-7"},
                                         Decimal{"Micrometre", Kind::FineLength, "µm", "e-10"},
                                         Decimal{"Millilitre", Kind::Volume, "ml", "e-10"},
                                         Decimal{"Gram", Kind::Mass, "g", "e-7"},
                                         Decimal{"SquareMillimetre", Kind::Area, "mm²", "e-10"},
                                         Decimal{"Kilonewton", Kind::Force, "kN", "e-1"},
                                         Decimal{"Megapascal", Kind::Stress, "MPa", "e2"},
                                         Decimal{"PerCent", Kind::Share, "%", "e-6"},
                                         Decimal{"MetrePerSecond", Kind::Velocity, "m/s", "e-4"}),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Kind, ADecimalUnitHoldsWhatADoubleHolds) {
  const Unit& millimetre = unitsOf(Kind::Length).front();
  EXPECT_EQ(toSi(millimetre, 28.4), 0.0284);
  EXPECT_EQ(toSi(millimetre, std::numeric_limits<double>::max()), 1.7976931348623157e305);
  EXPECT_EQ(toSi(millimetre, std::numeric_limits<double>::denorm_min()), 0.0);
  const Unit& megapascal = unitsOf(Kind::Stress).front();
  EXPECT_EQ(toSi(megapascal, -1e308), -std::numeric_limits<double>::infinity());
}

TEST(Kind, EveryKindHasAUnitAndNames) {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    EXPECT_FALSE(unitsOf(kind).empty()) << i;
    EXPECT_FALSE(siName(kind).empty()) << i;
    EXPECT_TRUE(names.insert(kindName(kind)).second) << kindName(kind);
  }
}

TEST(Kind, EachKindHasItsBenchUnitFirst) {
  const auto bench = [](Kind kind) { return unitsOf(kind).front().name; };
  EXPECT_EQ(bench(Kind::Length), "mm");
  EXPECT_EQ(bench(Kind::FineLength), "mm");
  EXPECT_EQ(bench(Kind::Volume), "ml");
  EXPECT_EQ(bench(Kind::Mass), "g");
  EXPECT_EQ(bench(Kind::Area), "mm²");
  EXPECT_EQ(bench(Kind::Angle), "°");
  EXPECT_EQ(bench(Kind::Speed), "rpm");
  EXPECT_EQ(bench(Kind::Velocity), "m/s");
  EXPECT_EQ(bench(Kind::Acceleration), "m/s²");
  EXPECT_EQ(bench(Kind::Force), "kN");
  EXPECT_EQ(bench(Kind::Stress), "MPa");
  EXPECT_EQ(bench(Kind::StaticMoment), "g·mm");
  EXPECT_EQ(bench(Kind::RingConstant), "m²/s²");
  EXPECT_EQ(bench(Kind::SpeedFactor), "mm·rpm");
  EXPECT_EQ(bench(Kind::Share), "%");
}

TEST(Kind, NoSpellingMeansTwoUnitsOfOneKind) {
  for (std::size_t i = 0; i < kKindCount; ++i) {
    std::set<std::string> spellings;
    for (const Unit& unit : unitsOf(static_cast<Kind>(i))) {
      EXPECT_TRUE(spellings.insert(folded(unit.name)).second) << unit.name;
      for (const std::string_view alias : unit.aliases) {
        EXPECT_TRUE(spellings.insert(folded(alias)).second) << alias;
      }
    }
  }
}

TEST(Kind, AUnitIsFoundUnderEverySpellingPeopleUse) {
  const auto found = [](Kind kind, std::string_view spelling) -> std::string_view {
    const Unit* unit = findUnit(kind, spelling);
    return unit == nullptr ? "none" : unit->name;
  };
  EXPECT_EQ(found(Kind::Length, "MM"), "mm");
  for (const char* inch : {"in", "in.", "IN", "inch", "Inches", "\"", "″", "”"}) {
    EXPECT_EQ(found(Kind::Length, inch), "in") << inch;
  }
  for (const char* thou : {"thou", "mil", "Thou"}) {
    EXPECT_EQ(found(Kind::FineLength, thou), "thou") << thou;
  }
  for (const char* micrometre : {"\u00B5m", "\u03BCm", "um", "micron"}) {
    EXPECT_EQ(found(Kind::FineLength, micrometre), "µm") << micrometre;
  }
  for (const char* millilitre : {"ml", "mL", "cc", "CC", "cm3", "cm³"}) {
    EXPECT_EQ(found(Kind::Volume, millilitre), "ml") << millilitre;
  }
  for (const char* cubicInch : {"cu in", "cu. in.", "cuin", "in3", "in³"}) {
    EXPECT_EQ(found(Kind::Volume, cubicInch), "cu in") << cubicInch;
  }
  for (const char* degree : {"°", "º", "deg", "degrees"}) {
    EXPECT_EQ(found(Kind::Angle, degree), "°") << degree;
  }
  for (const char* rpm : {"rpm", "RPM", "1/min", "r/min"}) {
    EXPECT_EQ(found(Kind::Speed, rpm), "rpm") << rpm;
  }
  for (const char* moment : {"g·mm", "g mm", "g*mm", "gmm"}) {
    EXPECT_EQ(found(Kind::StaticMoment, moment), "g·mm") << moment;
  }
  EXPECT_EQ(found(Kind::Stress, "n/mm2"), "MPa");
  EXPECT_EQ(found(Kind::Share, "per cent"), "%");
  EXPECT_EQ(found(Kind::Ratio, ":1"), "");
}

TEST(Kind, AnAccelerationIsNeverInGBecauseThatIsAGram) {
  EXPECT_EQ(findUnit(Kind::Acceleration, "g"), nullptr);
}

TEST(Kind, NothingIsFoundUnderMarksAlone) {
  EXPECT_EQ(findUnit(Kind::Count, "."), nullptr);
  EXPECT_EQ(findUnit(Kind::Ratio, " "), nullptr);
  EXPECT_EQ(findUnit(Kind::Length, ""), nullptr);
}

}  // namespace
}  // namespace strokewright::units
