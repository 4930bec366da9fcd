#include "core/model/inputs.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <ostream>
#include <set>
#include <string>

#include "tests/bench_units.h"

namespace strokewright::model {
namespace {

using bench::deg;
using bench::g;
using bench::ml;
using bench::mm;
using bench::rpm;
using describe::Input;
using describe::Limits;
using describe::Scope;
using units::Kind;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Ending of the key of a kind that has a unit.
std::string_view suffixOf(Kind kind) {
  switch (kind) {
    case Kind::Length:
    case Kind::FineLength:
      return "_m";
    case Kind::Volume:
      return "_m3";
    case Kind::Mass:
      return "_kg";
    case Kind::Area:
      return "_m2";
    case Kind::Angle:
      return "_rad";
    case Kind::Speed:
      return "_rad_s";
    case Kind::Velocity:
      return "_m_s";
    case Kind::Stress:
    case Kind::Pressure:
      return "_pa";
    case Kind::Warming:
      return "_k";
    case Kind::Expansion:
      return "_per_k";
    case Kind::RingConstant:
      return "_m2_s2";
    case Kind::SpeedFactor:
      return "_m_rad_s";
    default:
      return "";
  }
}

TEST(Inputs, AreAllInTheTable) { EXPECT_EQ(inputs().size(), 152U); }

TEST(Inputs, AreNumberedInPageOrder) {
  int number = 0;
  for (const Input* input : inputs()) EXPECT_EQ(input->number, number++) << input->key;
  EXPECT_EQ(inputs().front(), &in::cylinderCount);
  EXPECT_EQ(inputs().back(), &in::rodEndsDifference);
}

TEST(Inputs, HaveAKeyEach) {
  std::set<std::string_view> keys;
  for (const Input* input : inputs()) {
    EXPECT_TRUE(keys.insert(input->key).second) << input->key << " is there twice";
  }
}

class EveryDescribedInput : public testing::TestWithParam<const Input*> {};

TEST_P(EveryDescribedInput, EndsItsKeyInTheUnitOfItsKind) {
  EXPECT_TRUE(GetParam()->key.ends_with(suffixOf(GetParam()->kind)));
}

TEST_P(EveryDescribedInput, SaysWhatItIsAndHowToMeasureIt) {
  EXPECT_FALSE(GetParam()->label.empty());
  ASSERT_FALSE(GetParam()->measure.empty());
  EXPECT_TRUE(GetParam()->measure.ends_with('.')) << "a sentence";
}

TEST_P(EveryDescribedInput, IsTypicallyPossibleAndUsual) {
  const Input& input = *GetParam();
  EXPECT_TRUE(std::isfinite(input.typical));
  EXPECT_TRUE(input.possible.holds(input.typical));
  EXPECT_TRUE(input.usual.holds(input.typical));
}

TEST_P(EveryDescribedInput, HasAUsualRangeWithinThePossible) {
  const Input& input = *GetParam();
  for (const double bound : {input.usual.least, input.usual.most}) {
    EXPECT_TRUE(!std::isfinite(bound) || input.possible.holds(bound)) << bound;
  }
}

TEST_P(EveryDescribedInput, StandsInsideItsLimitsWithAnOrigin) {
  const Input& input = *GetParam();
  EXPECT_EQ(input.standing.exists(), !input.standing.origin.empty());
  EXPECT_TRUE(input.possible.holds(input.standing.value.value_or(input.typical)));
}

TEST_P(EveryDescribedInput, HasChoicesWhenItIsOne) {
  const Input& input = *GetParam();
  EXPECT_EQ(input.choices.empty(), input.kind != Kind::Choice);
  if (input.choices.empty()) return;
  EXPECT_EQ(input.typical, std::floor(input.typical));
  EXPECT_GE(input.typical, 0.0);
  EXPECT_LT(input.typical, static_cast<double>(input.choices.size()));
}

TEST_P(EveryDescribedInput, NamesTheInstrumentOfItsPlusMinus) {
  EXPECT_EQ(GetParam()->plusMinus > 0.0, !GetParam()->instrument.empty());
}

INSTANTIATE_TEST_SUITE_P(Table, EveryDescribedInput,
                         testing::ValuesIn(inputs().begin(), inputs().end()),
                         [](const auto& row) { return std::string(row.param->key); });

struct Row {
  const Input* input;
  const char* key;
  Kind kind;
  Scope scope;
  bool list;
  double typical;
  Limits possible;
  Limits usual;
  double plusMinus;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.key; }
};

class Description : public testing::TestWithParam<Row> {};

TEST_P(Description, IsAsAgreed) {
  const Row& row = GetParam();
  const Input& input = *row.input;
  EXPECT_EQ(input.key, row.key);
  EXPECT_EQ(input.kind, row.kind);
  EXPECT_EQ(input.scope, row.scope);
  EXPECT_EQ(input.list, row.list);
  EXPECT_DOUBLE_EQ(input.typical, row.typical);
  EXPECT_DOUBLE_EQ(input.possible.least, row.possible.least);
  EXPECT_DOUBLE_EQ(input.possible.most, row.possible.most);
  EXPECT_EQ(input.possible.leastExcluded, row.possible.leastExcluded);
  EXPECT_DOUBLE_EQ(input.usual.least, row.usual.least);
  EXPECT_DOUBLE_EQ(input.usual.most, row.usual.most);
  EXPECT_DOUBLE_EQ(input.plusMinus, row.plusMinus);
}

// Common practice, no published source, but for the flow coefficient (Taylor vol. 1 ch. 6).
INSTANTIATE_TEST_SUITE_P(SpotChecks, Description,
                         testing::Values(Row{&in::cylinderCount,
                                             "cylinder_count",
                                             Kind::Count,
                                             Scope::Engine,
                                             false,
                                             2,
                                             {1, 12},
                                             {},
                                             0},
                                         Row{&in::classLimit,
                                             "class_limit_m3",
                                             Kind::Volume,
                                             Scope::Engine,
                                             false,
                                             700 * ml,
                                             {0, 1, true},
                                             {40 * ml, 10000 * ml},
                                             0},
                                         Row{&in::bore,
                                             "bore_m",
                                             Kind::Length,
                                             Scope::Part,
                                             true,
                                             76 * mm,
                                             {0.5 * mm, 10},
                                             {30 * mm, 160 * mm},
                                             0.005 * mm},
                                         Row{&in::crankThrow,
                                             "throw_m",
                                             Kind::Length,
                                             Scope::Place,
                                             true,
                                             36 * mm,
                                             {0.25 * mm, 5},
                                             {12.5 * mm, 100 * mm},
                                             0.01 * mm},
                                         Row{&in::rodLength,
                                             "rod_length_m",
                                             Kind::Length,
                                             Scope::Part,
                                             true,
                                             130 * mm,
                                             {1 * mm, 20},
                                             {60 * mm, 400 * mm},
                                             0.02 * mm},
                                         Row{&in::compressionHeight,
                                             "compression_height_m",
                                             Kind::Length,
                                             Scope::Part,
                                             true,
                                             31 * mm,
                                             {0.5 * mm, 5},
                                             {15 * mm, 110 * mm},
                                             0.02 * mm},
                                         Row{&in::cylinderOffset,
                                             "cylinder_offset_m",
                                             Kind::FineLength,
                                             Scope::Place,
                                             true,
                                             0,
                                             {0, kInfinity},
                                             {-kInfinity, 15 * mm},
                                             0.02 * mm},
                                         Row{&in::seatHeight,
                                             "seat_height_m",
                                             Kind::Length,
                                             Scope::Place,
                                             true,
                                             120 * mm,
                                             {0.5 * mm, 10},
                                             {40 * mm, 400 * mm},
                                             0.03 * mm},
                                         Row{&in::linerProud,
                                             "liner_proud_m",
                                             Kind::FineLength,
                                             Scope::Part,
                                             true,
                                             0,
                                             {-1 * mm, 5 * mm},
                                             {0, 0.12 * mm},
                                             0.01 * mm},
                                         Row{&in::spacer,
                                             "spacer_m",
                                             Kind::FineLength,
                                             Scope::Place,
                                             true,
                                             0.8 * mm,
                                             {-50 * mm, 100 * mm},
                                             {-3 * mm, 12 * mm},
                                             0.003 * mm},
                                         Row{&in::headGasketBore,
                                             "head_gasket_bore_m",
                                             Kind::Length,
                                             Scope::Part,
                                             true,
                                             77.5 * mm,
                                             {0.5 * mm, 10},
                                             {30 * mm, 170 * mm},
                                             0.05 * mm},
                                         Row{&in::wantedSquish,
                                             "wanted_squish_m",
                                             Kind::FineLength,
                                             Scope::Engine,
                                             false,
                                             1 * mm,
                                             {0, 50 * mm, true},
                                             {0.6 * mm, 1.5 * mm},
                                             0},
                                         Row{&in::chamberVolume,
                                             "chamber_volume_m3",
                                             Kind::Volume,
                                             Scope::Place,
                                             true,
                                             32 * ml,
                                             {0, 10000 * ml},
                                             {2 * ml, 300 * ml},
                                             0.2 * ml},
                                         Row{&in::inletClosing,
                                             "inlet_closing_rad",
                                             Kind::Angle,
                                             Scope::Place,
                                             true,
                                             58 * deg,
                                             {-std::numbers::pi, 2 * std::numbers::pi},
                                             {20 * deg, 90 * deg},
                                             0.5 * deg},
                                         Row{&in::bigEndEyeDiameter,
                                             "big_end_eye_diameter_m",
                                             Kind::Length,
                                             Scope::Part,
                                             true,
                                             36 * mm,
                                             {0.5 * mm, 1},
                                             {18 * mm, 130 * mm},
                                             0.003 * mm},
                                         Row{&in::pistonMass,
                                             "piston_mass_kg",
                                             Kind::Mass,
                                             Scope::Part,
                                             true,
                                             220 * g,
                                             {0, 10000, true},
                                             {40 * g, 3000 * g},
                                             0.1 * g},
                                         Row{&in::rodSmallEndMass,
                                             "rod_small_end_mass_kg",
                                             Kind::Mass,
                                             Scope::Part,
                                             true,
                                             105 * g,
                                             {0, 10000, true},
                                             {20 * g, 2000 * g},
                                             0.3 * g},
                                         Row{&in::balanceFactor,
                                             "balance_factor",
                                             Kind::Share,
                                             Scope::Engine,
                                             false,
                                             0.5,
                                             {-10, 10},
                                             {0.3, 0.8},
                                             0},
                                         Row{&in::ringWidth,
                                             "ring_width_m",
                                             Kind::FineLength,
                                             Scope::Part,
                                             true,
                                             1.2 * mm,
                                             {0.02 * mm, 100 * mm},
                                             {0.6 * mm, 4 * mm},
                                             0.003 * mm},
                                         Row{&in::rodLeastSection,
                                             "rod_least_section_m2",
                                             Kind::Area,
                                             Scope::Part,
                                             true,
                                             120e-6,
                                             {0, 1, true},
                                             {30e-6, 1500e-6},
                                             3e-6},
                                         Row{&in::rodStressLimit,
                                             "rod_stress_limit_pa",
                                             Kind::Stress,
                                             Scope::Engine,
                                             false,
                                             160e6,
                                             {0, 1e10, true},
                                             {100e6, 200e6},
                                             0},
                                         Row{&in::inletFlowCoefficient,
                                             "inlet_flow_coefficient",
                                             Kind::Ratio,
                                             Scope::Engine,
                                             false,
                                             0.35,
                                             {0, 1, true},
                                             {0.28, 0.45},
                                             0},
                                         Row{&in::speedFactorLimit,
                                             "speed_factor_limit_m_rad_s",
                                             Kind::SpeedFactor,
                                             Scope::Engine,
                                             false,
                                             350 * rpm,
                                             {1 * rpm, 1e4 * rpm},
                                             {200 * rpm, 600 * rpm},
                                             0},
                                         Row{&in::wantedSpeed,
                                             "wanted_speed_rad_s",
                                             Kind::Speed,
                                             Scope::Engine,
                                             false,
                                             7500 * rpm,
                                             {50 * rpm, 200000 * rpm},
                                             {300 * rpm, 20000 * rpm},
                                             0},
                                         Row{&in::overRevShare,
                                             "over_rev_share",
                                             Kind::Share,
                                             Scope::Engine,
                                             false,
                                             0.1,
                                             {0, 1},
                                             {-kInfinity, 0.4},
                                             0},
                                         Row{&in::linerLength,
                                             "liner_length_m",
                                             Kind::Length,
                                             Scope::Place,
                                             true,
                                             117.2 * mm,
                                             {0.5 * mm, 10},
                                             {40 * mm, 500 * mm},
                                             0.05 * mm},
                                         Row{&in::squishLeast,
                                             "squish_least_m",
                                             Kind::FineLength,
                                             Scope::Engine,
                                             false,
                                             0.8 * mm,
                                             {0, 50 * mm},
                                             {0.5 * mm, 1.2 * mm},
                                             0},
                                         Row{&in::skirtOutShare,
                                             "skirt_out_share",
                                             Kind::Share,
                                             Scope::Engine,
                                             false,
                                             0.333,
                                             {0, 1},
                                             {0.2, 0.5},
                                             0},
                                         Row{&in::rodEndsDifference,
                                             "rod_ends_difference_kg",
                                             Kind::Mass,
                                             Scope::Engine,
                                             false,
                                             0.5 * g,
                                             {0, 0.1},
                                             {0.1 * g, 2 * g},
                                             0}),
                         [](const auto& row) { return std::string(row.param.key); });

TEST(Inputs, NameTheOtherWayToSayTheSame) {
  EXPECT_EQ(in::crankThrow.instead, &in::stroke);
  EXPECT_EQ(in::seatHeight.instead, &in::deckHeight);
  EXPECT_EQ(in::linerBottomHeight.instead, &in::linerLength);
}

TEST(Inputs, LeaveASideUnsaidUntilItIsEntered) {
  EXPECT_FALSE(in::cylinderOffsetSide.standing.exists());
  EXPECT_FALSE(in::pinOffsetSide.standing.exists());
}

TEST(Inputs, HaveAnAnswerForEachMemberOfTheirEnumeration) {
  EXPECT_EQ(in::cycle.choices[static_cast<std::size_t>(Cycle::TwoStroke)].key, "two_stroke");
  EXPECT_EQ(in::ignition.choices[static_cast<std::size_t>(Ignition::Compression)].key,
            "compression");
  constexpr std::array uses = {"road", "fast_road", "trial",     "hill",
                               "race", "record",    "stationary"};
  ASSERT_EQ(in::use.choices.size(), uses.size());
  for (std::size_t place = 0; place < uses.size(); ++place) {
    EXPECT_EQ(in::use.choices[place].key, uses[place]);
  }
  for (const Input* side : {&in::cylinderOffsetSide, &in::pinOffsetSide}) {
    EXPECT_EQ(side->choices[static_cast<std::size_t>(Side::TowardsThrust)].key,
              "towards_thrust_side");
    EXPECT_EQ(side->choices[static_cast<std::size_t>(Side::AwayFromThrust)].key,
              "away_from_thrust_side");
  }
  EXPECT_EQ(in::heightTakenTo.choices[static_cast<std::size_t>(HeightTakenTo::BlockFace)].key,
            "block_face");
  EXPECT_EQ(in::stackDriver.choices[static_cast<std::size_t>(StackDriver::CompressionRatio)].key,
            "compression_ratio");
  EXPECT_EQ(in::crownVolumeSense.choices[static_cast<std::size_t>(CrownSense::Adds)].key, "adds");
  EXPECT_EQ(in::smallEndKind.choices[static_cast<std::size_t>(SmallEnd::NeedleCage)].key,
            "needle_cage");
}

TEST(Inputs, DescribeATypicalEngineThatIsWhole) {
  const double deck = in::seatHeight.typical + in::baseGasket.typical + in::barrelHeight.typical;
  EXPECT_NEAR(deck, in::deckHeight.typical, 1e-12);
  EXPECT_NEAR(deck + in::spacer.typical - in::linerLength.typical, in::linerBottomHeight.typical,
              1e-12);
  const double squish =
      deck + in::spacer.typical + in::headGasket.typical -
      (in::crankThrow.typical + in::rodLength.typical + in::compressionHeight.typical);
  EXPECT_NEAR(squish, in::wantedSquish.typical, 1e-12);
  EXPECT_NEAR(2.0 * in::crankThrow.typical, in::stroke.typical, 1e-15);
  EXPECT_NEAR(in::stroke.typical * in::wantedSpeed.typical / std::numbers::pi,
              in::meanPistonSpeedLimit.typical, 1e-12);
}

/// Speed of sound in dry air [m/s], √(γRT).
double soundIn(double kelvin) { return std::sqrt(1.4 * 287.05287 * kelvin); }

// Oracle: ISO 2533, standard atmosphere at 288.15 K: 340.294 m/s (from memory). The default of the
// speed of sound is the same formula at 23 °C, in whole metres a second.
TEST(DefaultSpeedOfSound, IsThatOfAirAtAWarmBench) {
  EXPECT_NEAR(soundIn(288.15), 340.294, 0.0005);
  ASSERT_TRUE(in::soundSpeed.standing.value);
  EXPECT_NEAR(*in::soundSpeed.standing.value, soundIn(273.15 + 23.0), 0.5);
}

}  // namespace
}  // namespace strokewright::model
