#include "core/chamber/chamber.h"

#include <gtest/gtest.h>

#include <numbers>
#include <string>

#include "tests/bench_units.h"

namespace strokewright::chamber {
namespace {

using namespace bench;

struct Published {
  const char* name;
  double actual;
  double expected;
  double tolerance;  // relative
  const char* source;
  friend void PrintTo(const Published& row, std::ostream* out) {
    *out << row.name << " (" << row.source << ")";
  }
};

class PublishedVolumes : public testing::TestWithParam<Published> {};

TEST_P(PublishedVolumes, AreMetUnrounded) {
  const Published& row = GetParam();
  EXPECT_TRUE(close(row.actual, row.expected, row.tolerance));
}

double swept(double bore, double stroke) {
  return sweptVolume({.bore = bore, .trueStroke = stroke});
}

double ratioWithSpacer(double spacer) {
  const double volume = swept(68 * mm, 75 * mm);
  const double clearance = clearanceForRatio({.sweptVolume = volume, .compressionRatio = 8.0}) +
                           deckVolume({.bore = 68 * mm, .deckClearance = spacer});
  return compressionRatio({.sweptVolume = volume, .clearanceVolume = clearance});
}

constexpr const char* kMathur = "Mathur & Sharma, Internal Combustion Engine, Ex. 1.1";
constexpr const char* kRajput = "R. K. Rajput, Internal Combustion Engines, Ex. 3.8";
constexpr const char* kNag = "P. K. Nag, Basic and Applied Thermodynamics, Ex. 20.1";
constexpr const char* kKates = "E. J. Kates, Diesel and High Compression Gas Engines, p. 62";
constexpr const char* kDefinition = "definition";

INSTANTIATE_TEST_SUITE_P(
    Books, PublishedVolumes,
    testing::Values(
        Published{"DisplacementOfFour", 4 * swept(68 * mm, 75 * mm) / ml, 1089.504, 1e-6, kMathur},
        Published{
            "ClearanceForEight",
            clearanceForRatio({.sweptVolume = swept(68 * mm, 75 * mm), .compressionRatio = 8.0}) /
                ml,
            38.911, 2e-5, kMathur},
        Published{"RatioOfAGasEngine",
                  compressionRatio({.sweptVolume = swept(250 * mm, 375 * mm),
                                    .clearanceVolume = 0.00263}),
                  7.9992, 1e-5, kRajput},
        Published{"SweptVolume", swept(65 * mm, 95 * mm) / ml, 315.239, 2e-6, kNag},
        Published{
            "RatioOfTheSame",
            compressionRatio({.sweptVolume = swept(65 * mm, 95 * mm), .clearanceVolume = 63 * ml}),
            6.00380, 1e-6, kNag},
        Published{"AreaInSquareInches", boreArea(3 * inch) / (inch * inch), 7.06858, 1e-6, kKates},
        Published{"VolumeInCubicInches", swept(3 * inch, 4 * inch) / (inch * inch * inch), 28.27433,
                  1e-6, kKates},
        Published{"VolumeInMillilitres", swept(3 * inch, 4 * inch) / ml, 463.333, 2e-6, kKates},
        Published{"VolumeOfASpacer", deckVolume({.bore = 68 * mm, .deckClearance = 0.5 * mm}) / ml,
                  1.81584, 3e-6, kMathur},
        Published{"RatioWithASpacer", ratioWithSpacer(0.5 * mm), 7.68790, 1e-6, kMathur},
        Published{"DisplacementOfFourLarger", 4 * swept(84 * mm, 95 * mm) / ml, 2105.872, 1e-6,
                  kDefinition},
        Published{
            "ClearanceForTenAndAHalf",
            clearanceForRatio({.sweptVolume = swept(84 * mm, 95 * mm), .compressionRatio = 10.5}) /
                ml,
            55.4177, 1e-6, kDefinition},
        Published{"SixOf50By32", 6 * swept(50 * mm, 32 * mm) / ml, 376.991, 1e-6, kDefinition}),
    [](const auto& row) { return std::string(row.param.name); });

// A slow compression-ignition single; worked by hand, no published source.
TEST(Chamber, AddsUpTheClearanceVolumeOfASingleWithItsCrownProud) {
  const double volume =
      clearanceVolume({.chamber = 3.2 * ml,
                       .crown = 50.0 * ml,
                       .gasket = gasketVolume({.gasketBore = 106.5 * mm, .thickness = 1.3 * mm}),
                       .deck = deckVolume({.bore = 105 * mm, .deckClearance = -0.3 * mm}),
                       .crevice = 1.5 * ml});
  EXPECT_NEAR(volume / ml, 63.6829, 5e-5);
  EXPECT_NEAR(
      compressionRatio({.sweptVolume = swept(105 * mm, 120 * mm), .clearanceVolume = volume}),
      17.3165, 5e-5);
  const motion::SliderCrank mechanism{.crankRadius = 60 * mm, .rodLength = 220 * mm};
  const double travel = travelAtClosing(mechanism, 38 * deg);
  EXPECT_NEAR(travel / mm, 110.404, 5e-4);
  EXPECT_NEAR(
      effectiveCompressionRatio({.bore = 105 * mm, .travel = travel, .clearanceVolume = volume}),
      16.0117, 5e-5);
}

// A twin with pin offset: the degree wheel counts from true top dead centre. No published source.
TEST(Chamber, CountsTheClosingFromTrueTopDeadCentre) {
  const motion::SliderCrank mechanism{
      .crankRadius = 34 * mm, .rodLength = 133 * mm, .offset = -0.5 * mm};
  EXPECT_NEAR(travelAtClosing(mechanism, 58 * deg) / mm, 55.1440, 5e-5);
}

TEST(Chamber, FindsTheDeckClearanceOfAWantedVolume) {
  const double bore = 76 * mm;
  const double wanted = 34 * ml;
  const double deckClearance =
      deckClearanceForVolume({.bore = bore, .clearanceVolume = wanted, .otherVolumes = 33 * ml});
  EXPECT_DOUBLE_EQ(33 * ml + deckVolume({.bore = bore, .deckClearance = deckClearance}), wanted);
}

TEST(Chamber, ComesBackToTheWantedRatio) {
  for (const double ratio : {1.5, 8.0, 23.0}) {
    const double clearance =
        clearanceForRatio({.sweptVolume = 300 * ml, .compressionRatio = ratio});
    EXPECT_DOUBLE_EQ(compressionRatio({.sweptVolume = 300 * ml, .clearanceVolume = clearance}),
                     ratio);
  }
}

TEST(Chamber, RefusesAPistonWithNoRoomAboveIt) {
  for (const double clearance : {0.0, -1 * ml}) {
    const auto refusal = refusalOf(
        [&] { return compressionRatio({.sweptVolume = 300 * ml, .clearanceVolume = clearance}); });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->sentence(),
              "A clearance volume of {1} leaves no room above the piston: it must exceed {2}.");
    EXPECT_EQ(refusal->kind(), units::Kind::Volume);
    EXPECT_EQ(refusal->value(), clearance);
    EXPECT_EQ(refusal->limit(), 0.0);
  }
}

TEST(Chamber, RefusesARatioThatCompressesNothing) {
  const auto refusal = refusalOf(
      [] { return clearanceForRatio({.sweptVolume = 300 * ml, .compressionRatio = 1.0}); });
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->sentence(),
            "A compression ratio of {1} cannot be reached: it must exceed {2}.");
  EXPECT_EQ(refusal->kind(), units::Kind::Ratio);
  EXPECT_EQ(refusal->limit(), 1.0);
}

}  // namespace
}  // namespace strokewright::chamber
