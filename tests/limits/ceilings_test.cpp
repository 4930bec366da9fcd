#include "core/limits/ceilings.h"
#include "core/motion/slider_crank.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "tests/bench_units.h"

namespace strokewright::limits {
namespace {

using namespace bench;

struct Published {
  const char* name;
  double stroke;     // [m]
  double speed;      // [rad/s]
  double meanSpeed;  // [m/s]
  const char* source;
  friend void PrintTo(const Published& row, std::ostream* out) {
    *out << row.name << " (" << row.source << ")";
  }
};

class PublishedPistonSpeed : public testing::TestWithParam<Published> {};

TEST_P(PublishedPistonSpeed, IsMetAndTurnedRound) {
  const Published& row = GetParam();
  EXPECT_TRUE(close(motion::meanSpeed({.trueStroke = row.stroke, .speed = row.speed}),
                    row.meanSpeed, 1e-14));
  EXPECT_TRUE(
      close(pistonSpeedCeiling({.trueStroke = row.stroke, .meanPistonSpeed = row.meanSpeed}),
            row.speed, 1e-14));
}

constexpr const char* kRajput = "R. K. Rajput, Internal Combustion Engines, Ex. 7.12";
constexpr const char* kKates = "E. J. Kates, Diesel and High Compression Gas Engines, p. 63";

// The second book counts strokes a minute: 1600 of them are 800 turns.
INSTANTIATE_TEST_SUITE_P(
    Books, PublishedPistonSpeed,
    testing::Values(Published{"Stroke140At2400", 140 * mm, 2400 * rpm, 11.2, kRajput},
                    Published{"Stroke140At2800", 140 * mm, 2800 * rpm, 196.0 / 15.0, kRajput},
                    Published{"Stroke9InchesAt1600Strokes", 9 * inch, 800 * rpm, 6.0960, kKates}),
    [](const auto& row) { return std::string(row.param.name); });

// A parallel twin without offset, worked by hand. The limits are common practice, no published
// source; the printed ceilings carry six digits.
constexpr double kPeak = 37 * mm * (1 + 37.0 / 126.5);

TEST(Ceilings, AreThoseOfAKnownTwin) {
  EXPECT_NEAR(pistonSpeedCeiling({.trueStroke = 74 * mm, .meanPistonSpeed = 22.0}) / rpm, 8918.92,
              0.005);
  EXPECT_NEAR(accelerationCeiling(
                  {.acceleration = flutterAcceleration(38.7, 1.2 * mm), .peakPerSpeed2 = kPeak}) /
                  rpm,
              7841.91, 0.005);
  EXPECT_NEAR(accelerationCeiling(
                  {.acceleration = rodTensionAcceleration(
                       {.stress = 160e6, .leastSection = 120 * mm2, .reciprocatingMass = 398 * g}),
                   .peakPerSpeed2 = kPeak}) /
                  rpm,
              9591.05, 0.005);
  EXPECT_NEAR(
      speedFactorCeiling({.pinDiameter = 28 * mm, .eyeDiameter = 36 * mm}, 350000 * mm * rpm) / rpm,
      10937.5, 1e-9);
}

struct PublishedValve {
  const char* name;
  double speed;          // [rad/s]
  double valveDiameter;  // [m] unrounded, for an index of 0.55
  const char* source;
  friend void PrintTo(const PublishedValve& row, std::ostream* out) {
    *out << row.name << " (" << row.source << ")";
  }
};

class PublishedBreathing : public testing::TestWithParam<PublishedValve> {};

TEST_P(PublishedBreathing, IsMetByTheValveOfTheBook) {
  const PublishedValve& row = GetParam();
  const Breathing inlet{.bore = 110 * mm,
                        .valveCount = 1,
                        .valveDiameter = row.valveDiameter,
                        .flowCoefficient = 0.33,
                        .soundSpeed = std::sqrt(1.4 * 287 * 340)};
  const double pistonSpeed = motion::meanSpeed({.trueStroke = 140 * mm, .speed = row.speed});
  EXPECT_TRUE(close(breathingIndex(inlet, pistonSpeed), 0.55, 5e-5));
}

constexpr const char* kAfterTaylor =
    "R. K. Rajput, Internal Combustion Engines, Ex. 7.12, after Taylor";

INSTANTIATE_TEST_SUITE_P(
    Books, PublishedBreathing,
    testing::Values(PublishedValve{"ValveFor2400", 2400 * rpm, 44.946 * mm, kAfterTaylor},
                    PublishedValve{"ValveFor2800", 2800 * rpm, 48.547 * mm, kAfterTaylor}),
    [](const auto& row) { return std::string(row.param.name); });

// Taylor vol. 1 ch. 6, from memory: least valve area 1.3 times bore squared times piston speed over
// speed of sound, for an index of 0.6; unrounded (π/4)/0.6.
TEST(Breathing, AsksForTheLeastValveAreaOfTheRuleOfThumb) {
  const Breathing inlet{.bore = 80 * mm,
                        .valveCount = 1,
                        .valveDiameter = 40 * mm,
                        .flowCoefficient = 1.0,
                        .soundSpeed = 345.0};
  const double area = std::numbers::pi / 4 * 40 * mm * 40 * mm;
  const double pistonSpeed = pistonSpeedAtBreathingIndex(inlet, 0.6);
  EXPECT_NEAR(area * 345.0 / (80 * mm * 80 * mm * pistonSpeed), 1.309, 5e-5);
}

// The index is that of Taylor vol. 1 ch. 6; the valves are invented.
TEST(Breathing, IsThatOfAKnownTwinAndTurnsRound) {
  const Breathing inlet{.bore = 76 * mm,
                        .valveCount = 2,
                        .valveDiameter = 31 * mm,
                        .flowCoefficient = 0.35,
                        .soundSpeed = 345.0};
  EXPECT_NEAR(breathingIndex(inlet, 74 * mm * 8500 / 30), 0.521814, 5e-7);
  const double pistonSpeed = pistonSpeedAtBreathingIndex(inlet, 0.6);
  EXPECT_DOUBLE_EQ(breathingIndex(inlet, pistonSpeed), 0.6);
  EXPECT_NEAR(pistonSpeedCeiling({.trueStroke = 74 * mm, .meanPistonSpeed = pistonSpeed}) / rpm,
              9773.59, 0.005);
}

// Plane geometry: a pin runs inside its eye, a valve opens into its bore.
TEST(Ceilings, RefuseACrankpinThatIsNotSmallerThanItsEye) {
  for (const double pin : {36 * mm, 40 * mm}) {
    const auto refusal = refusalOf([&] {
      return speedFactorCeiling({.pinDiameter = pin, .eyeDiameter = 36 * mm}, 350000 * mm * rpm);
    });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->sentence(), kPinNotInEye);
    EXPECT_EQ(refusal->kind(), units::Kind::Length);
    EXPECT_EQ(refusal->value(), pin);
    EXPECT_EQ(refusal->limit(), 36 * mm);
  }
}

TEST(Breathing, RefusesAValveThatIsNotSmallerThanTheBore) {
  for (const double valve : {76 * mm, 310 * mm}) {
    const Breathing inlet{.bore = 76 * mm,
                          .valveCount = 1,
                          .valveDiameter = valve,
                          .flowCoefficient = 0.35,
                          .soundSpeed = 345.0};
    const auto index = refusalOf([&] { return breathingIndex(inlet, 20.0); });
    const auto speed = refusalOf([&] { return pistonSpeedAtBreathingIndex(inlet, 0.6); });
    ASSERT_TRUE(index);
    ASSERT_TRUE(speed);
    EXPECT_EQ(index->sentence(), kValveNotInBore);
    EXPECT_EQ(index->value(), valve);
    EXPECT_EQ(index->limit(), 76 * mm);
    EXPECT_EQ(speed->sentence(), kValveNotInBore);
  }
}

TEST(Ceilings, GrowWithTheRootOfTheAccelerationAllowed) {
  const double once = accelerationCeiling({.acceleration = 10000.0, .peakPerSpeed2 = 0.05});
  EXPECT_DOUBLE_EQ(accelerationCeiling({.acceleration = 40000.0, .peakPerSpeed2 = 0.05}), 2 * once);
}

}  // namespace
}  // namespace strokewright::limits
