#include "core/motion/slider_crank.h"

#include <gtest/gtest.h>
#include <boost/math/differentiation/autodiff.hpp>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "tests/bench_units.h"

namespace strokewright::motion {
namespace {

using namespace bench;
using std::numbers::pi;

// What a book asks of one crank and what exact geometry answers; the books print the two-term
// series or read a drawing, so the value expected is the unrounded exact one.
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

class PublishedMotion : public testing::TestWithParam<Published> {};

TEST_P(PublishedMotion, IsMetByExactGeometry) {
  const Published& row = GetParam();
  EXPECT_TRUE(close(row.actual, row.expected, row.tolerance));
}

constexpr SliderCrank kKhurmi3{.crankRadius = 0.300, .rodLength = 1.000};
constexpr SliderCrank kKhurmi4{.crankRadius = 0.300, .rodLength = 1.500};
constexpr SliderCrank kKhurmi9{.crankRadius = 0.050, .rodLength = 0.200};
constexpr SliderCrank kKhurmi14{.crankRadius = 0.180, .rodLength = 0.600};
constexpr SliderCrank kBevan{.crankRadius = 9 * inch, .rodLength = 36 * inch};
constexpr SliderCrank kOffset{.crankRadius = 0.040, .rodLength = 0.140, .offset = 0.010};
constexpr SliderCrank kDeadCentres{.crankRadius = 0.045, .rodLength = 0.145};

double perSecond2(double perRad2, double speed) { return perRad2 * speed * speed; }

double rodAngularAcceleration(const SliderCrank& mechanism, double angle, double speed) {
  constexpr double h = 1e-3;
  return perSecond2((rodAngle(mechanism, angle + h) - 2 * rodAngle(mechanism, angle) +
                     rodAngle(mechanism, angle - h)) /
                        (h * h),
                    speed);
}

// Harmonic of the acceleration over the throw, positive towards the crank.
double harmonic(const SliderCrank& mechanism, int order) {
  constexpr int kPoints = 64;
  double sum = 0.0;
  for (int i = 0; i < kPoints; ++i) {
    const double angle = 2 * pi * i / kPoints;
    sum -= pinAcceleration(mechanism, angle) * std::cos(order * angle);
  }
  return 2 * sum / kPoints / mechanism.crankRadius;
}

constexpr const char* kKhurmi = "Khurmi & Gupta, Theory of Machines, ch. 15";
constexpr const char* kHarmonics = "series as Den Hartog ch. 5 and Taylor vol. 2, from memory";
constexpr const char* kNorton = "offset geometry as Norton, Design of Machinery, ch. 3";
constexpr const char* kIdentity = "closed form, any theory of machines";

INSTANTIATE_TEST_SUITE_P(
    Books, PublishedMotion,
    testing::Values(
        Published{"AngleOfPeakSpeed", peakDownwardSpeed(kKhurmi3).crankAngle / deg, 74.529, 1e-5,
                  kKhurmi},
        Published{"PeakSpeed", peakDownwardSpeed(kKhurmi3).magnitude * 200 * rpm, 6.56173, 1e-6,
                  kKhurmi},
        Published{"SpeedAt40", -pinVelocity(kKhurmi4, 40 * deg) * 180 * rpm, 4.19643, 1e-6,
                  kKhurmi},
        Published{"AccelerationAt40", -perSecond2(pinAcceleration(kKhurmi4, 40 * deg), 180 * rpm),
                  85.5989, 1e-6, kKhurmi},
        Published{"AngleOfNoAcceleration", peakDownwardSpeed(kKhurmi4).crankAngle / deg, 79.100,
                  1e-5, kKhurmi},
        Published{"AngularAccelerationOfTheRod",
                  -rodAngularAcceleration(kBevan, 40 * deg, 240 * rpm), 98.970, 1e-5,
                  "T. Bevan, The Theory of Machines, ch. 3 Ex. 4"},
        Published{"AngleOfATravel", crankAngleOfTravel(kKhurmi9, 10 * mm) / deg, 33.1229, 2e-6,
                  kKhurmi},
        Published{"FirstHarmonic", harmonic({0.25, 1.0}, 1), 1.0, 1e-12, kHarmonics},
        Published{"SecondHarmonic", harmonic({0.25, 1.0}, 2), 0.254025, 4e-6, kHarmonics},
        Published{"FourthHarmonic", harmonic({0.25, 1.0}, 4), -0.004098, 2e-4, kHarmonics},
        Published{"SixthHarmonic", harmonic({0.25, 1.0}, 6), 0.0000744, 1e-3, kHarmonics},
        Published{"StrokeWithOffset", trueStroke(kOffset) / mm, 80.22326, 1e-7, kNorton},
        Published{"TopDeadCentreWithOffset", topDeadCentreAngle(kOffset) / deg, 3.18474, 2e-6,
                  kNorton},
        Published{"BottomDeadCentreWithOffset", bottomDeadCentreAngle(kOffset) / deg, 185.73917,
                  5e-8, kNorton},
        Published{"CrankTravelDownWithOffset",
                  (bottomDeadCentreAngle(kOffset) - topDeadCentreAngle(kOffset)) / deg, 182.55443,
                  5e-8, kNorton},
        Published{"AccelerationAtTop", -perSecond2(pinAcceleration(kDeadCentres, 0), 6000 * rpm),
                  23278.65, 1e-6, kIdentity},
        Published{"AccelerationAtBottom", perSecond2(pinAcceleration(kDeadCentres, pi), 6000 * rpm),
                  12251.92, 1e-6, kIdentity},
        Published{"SpeedAt90", -pinVelocity(kDeadCentres, 90 * deg) * 6000 * rpm, 28.27433, 1e-6,
                  kIdentity},
        Published{"TravelAt75", travel(kKhurmi14, 75 * deg) / mm, 159.156, 5e-6, kKhurmi}),
    [](const auto& row) { return std::string(row.param.name); });

// The donor of a parallel twin with its pin offset 0.5 mm towards the thrust side, at 8500 rpm.
// Worked by hand and with SciPy; no published source.
TEST(SliderCrank, PutsTheDeadCentreAndTheHardestPullOfATwinWithPinOffset) {
  const SliderCrank tansy{.crankRadius = 34 * mm, .rodLength = 133 * mm, .offset = -0.5 * mm};
  const double speed = 8500 * rpm;
  EXPECT_NEAR(topDeadCentreAngle(tansy) / deg, -0.171545, 5e-7);
  EXPECT_NEAR(trueStroke(tansy) / mm, 68.0005, 5e-5);
  EXPECT_NEAR(largestRodAngle(tansy) / deg, 15.0344, 5e-5);
  EXPECT_NEAR(topPinHeight(tansy) / mm + 28.4, 195.399, 5e-4);
  EXPECT_NEAR(peakDownwardAcceleration(tansy).crankAngle / deg, -0.087793, 5e-7);
  EXPECT_NEAR(perSecond2(peakDownwardAcceleration(tansy).magnitude, speed), 33825.3, 0.05);
  EXPECT_NEAR(peakDownwardSpeed(tansy).magnitude * speed, 31.2705, 5e-5);
  EXPECT_NEAR(peakDownwardSpeed(tansy).crankAngle / deg, 76.2782, 5e-5);
}

// Hostile and workshop cranks against 40 digits, see make_motion_reference.py.
struct PeaksRow {
  double r, l, e, top, bottom, stroke, fastAngle, fast, hardAngle, hard;
};
constexpr PeaksRow kPeaks[] = {
#include "tests/motion/motion_peaks.inc"
};
struct PointsRow {
  double r, l, e, angle, height, velocity, acceleration;
};
constexpr PointsRow kPoints[] = {
#include "tests/motion/motion_points.inc"
};

TEST(SliderCrank, AgreesWithFortyDigitsAtItsDeadCentresAndPeaks) {
  for (const PeaksRow& row : kPeaks) {
    const SliderCrank mechanism{row.r, row.l, row.e};
    SCOPED_TRACE(testing::Message() << row.r << ' ' << row.l << ' ' << row.e);
    EXPECT_NEAR(topDeadCentreAngle(mechanism), row.top, 1e-15);
    EXPECT_NEAR(bottomDeadCentreAngle(mechanism), row.bottom, 1e-15);
    EXPECT_TRUE(close(trueStroke(mechanism), row.stroke, 5e-16));
    const Peak fast = peakDownwardSpeed(mechanism);
    EXPECT_TRUE(close(fast.magnitude, row.fast, 1e-15));
    EXPECT_NEAR(fast.crankAngle, row.fastAngle, 2e-15);
    const Peak hard = peakDownwardAcceleration(mechanism);
    EXPECT_TRUE(close(hard.magnitude, row.hard, 1e-15));
    EXPECT_NEAR(hard.crankAngle, row.hardAngle, 2e-15);
  }
}

TEST(SliderCrank, AgreesWithFortyDigitsAtManyAngles) {
  for (const PointsRow& row : kPoints) {
    const SliderCrank mechanism{row.r, row.l, row.e};
    SCOPED_TRACE(testing::Message()
                 << row.r << ' ' << row.l << ' ' << row.e << " at " << row.angle);
    EXPECT_NEAR(pinHeight(mechanism, row.angle), row.height, 1e-15 * row.l);
    EXPECT_NEAR(pinVelocity(mechanism, row.angle), row.velocity, 1e-14 * row.r);
    EXPECT_NEAR(pinAcceleration(mechanism, row.angle), row.acceleration, 1e-13 * row.r);
  }
}

TEST(SliderCrank, DifferentiatesAsAutomaticDifferentiationDoes) {
  const auto angle = boost::math::differentiation::make_fvar<double, 2>(1.1);
  const auto across = 0.037 * sin(angle) - 0.004;
  const auto height = 0.037 * cos(angle) + sqrt(0.1265 * 0.1265 - across * across);
  const SliderCrank mechanism{.crankRadius = 0.037, .rodLength = 0.1265, .offset = 0.004};
  EXPECT_TRUE(close(pinHeight(mechanism, 1.1), height.derivative(0), 1e-15));
  EXPECT_TRUE(close(pinVelocity(mechanism, 1.1), height.derivative(1), 1e-14));
  EXPECT_TRUE(close(pinAcceleration(mechanism, 1.1), height.derivative(2), 1e-13));
}

TEST(SliderCrank, MakesTheRightAngledTriangleOfThreeFourFive) {
  const SliderCrank mechanism{.crankRadius = 3.0, .rodLength = 5.0};
  EXPECT_DOUBLE_EQ(pinHeight(mechanism, pi / 2), 4.0);
  EXPECT_DOUBLE_EQ(pinVelocity(mechanism, pi / 2), -3.0);
  EXPECT_DOUBLE_EQ(pinAcceleration(mechanism, pi / 2), 9.0 / 4.0);
  EXPECT_DOUBLE_EQ(std::sin(rodAngle(mechanism, pi / 2)), 3.0 / 5.0);
  EXPECT_DOUBLE_EQ(crankAngleOfTravel(mechanism, 4.0), pi / 2);
}

TEST(SliderCrank, RunsBackwardsWithTheOffsetOnTheOtherSide) {
  const SliderCrank away{.crankRadius = 0.04, .rodLength = 0.14, .offset = 0.01};
  const SliderCrank towards{.crankRadius = 0.04, .rodLength = 0.14, .offset = -0.01};
  for (double angle = -3.0; angle < 3.0; angle += 0.37) {
    EXPECT_DOUBLE_EQ(pinHeight(away, angle), pinHeight(towards, -angle));
    EXPECT_DOUBLE_EQ(pinVelocity(away, angle), -pinVelocity(towards, -angle));
    EXPECT_DOUBLE_EQ(pinAcceleration(away, angle), pinAcceleration(towards, -angle));
    EXPECT_DOUBLE_EQ(rodAngle(away, angle), -rodAngle(towards, -angle));
  }
  EXPECT_EQ(trueStroke(away), trueStroke(towards));
  EXPECT_EQ(topDeadCentreAngle(away), -topDeadCentreAngle(towards));
  EXPECT_DOUBLE_EQ(peakDownwardAcceleration(away).magnitude,
                   peakDownwardAcceleration(towards).magnitude);
}

TEST(SliderCrank, StrokesNeverLessThanTwiceTheThrow) {
  for (double offset = -0.09; offset < 0.095; offset += 0.01) {
    const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14, .offset = offset};
    EXPECT_GE(trueStroke(mechanism), 0.08 * (1 - 1e-15));
    EXPECT_TRUE(
        close(trueStroke(mechanism), topPinHeight(mechanism) - bottomPinHeight(mechanism), 1e-14));
    EXPECT_TRUE(close(crankRadiusForStroke(trueStroke(mechanism), 0.14, offset), 0.04, 1e-14));
  }
  EXPECT_EQ(trueStroke({.crankRadius = 0.037, .rodLength = 0.1265}), 0.074);
}

TEST(SliderCrank, StandsStillAtItsDeadCentres) {
  for (const double offset : {-0.09, -0.01, 0.0, 0.03}) {
    const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14, .offset = offset};
    for (const double angle : {topDeadCentreAngle(mechanism), bottomDeadCentreAngle(mechanism)}) {
      EXPECT_NEAR(pinVelocity(mechanism, angle), 0.0, 1e-16);
    }
    EXPECT_DOUBLE_EQ(pinHeight(mechanism, topDeadCentreAngle(mechanism)), topPinHeight(mechanism));
    EXPECT_DOUBLE_EQ(pinHeight(mechanism, bottomDeadCentreAngle(mechanism)),
                     bottomPinHeight(mechanism));
  }
}

TEST(SliderCrank, FindsTheCrankAngleOfEveryTravel) {
  for (const double offset : {-0.06, 0.0, 0.01}) {
    const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14, .offset = offset};
    const double stroke = trueStroke(mechanism);
    EXPECT_NEAR(crankAngleOfTravel(mechanism, 0.0), topDeadCentreAngle(mechanism), 1e-15);
    EXPECT_NEAR(crankAngleOfTravel(mechanism, stroke), bottomDeadCentreAngle(mechanism), 1e-15);
    for (double share = 0.05; share < 1.0; share += 0.05) {
      const double angle = crankAngleOfTravel(mechanism, share * stroke);
      EXPECT_TRUE(close(travel(mechanism, angle), share * stroke, 1e-13));
    }
  }
}

// A thousandth of a micrometre below top dead centre: x = a θ²/2, with a = r (1 + r/L).
TEST(SliderCrank, FindsTheCrankAngleOfATravelTooSmallForADifferenceOfHeights) {
  const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14};
  const double angle = std::sqrt(2 * 1e-15 / (0.04 * (1 + 0.04 / 0.14)));
  EXPECT_TRUE(close(crankAngleOfTravel(mechanism, 1e-15), angle, 1e-12));
}

TEST(SliderCrank, HasNoFasterPistonAndNoHarderPullThanItsPeaks) {
  for (double ratio = 0.05; ratio < 0.96; ratio += 0.1) {
    for (double share = -0.95; share < 1.0; share += 0.19) {
      const SliderCrank mechanism{ratio, 1.0, share * (1.0 - ratio)};
      SCOPED_TRACE(testing::Message() << ratio << ' ' << mechanism.offset);
      double fastest = 0.0;
      double hardest = 0.0;
      const double top = topDeadCentreAngle(mechanism);
      for (int i = 0; i < 7200; ++i) {
        const double angle = i * pi / 3600;
        hardest = std::max(hardest, -pinAcceleration(mechanism, angle));
        fastest = std::max(fastest, -pinVelocity(mechanism, top + angle));
      }
      EXPECT_TRUE(close(peakDownwardAcceleration(mechanism).magnitude, hardest, 1e-6));
      EXPECT_GE(peakDownwardAcceleration(mechanism).magnitude, hardest * (1 - 1e-15));
      EXPECT_TRUE(close(peakDownwardSpeed(mechanism).magnitude, fastest, 1e-4));
      EXPECT_GE(peakDownwardSpeed(mechanism).magnitude, fastest * (1 - 1e-15));
    }
  }
}

/// Where the description of the peak says so. With 0.66 of the rod for a throw and 0.6 of what is
/// left for an offset, the push up is 1.024 of the pull (scanned in NumPy).
TEST(SliderCrank, PushesUpLessThanItPullsDownInEveryUsualEngine) {
  const auto push = [](const SliderCrank& mechanism) {
    double most = 0.0;
    for (int i = 0; i < 3600; ++i) {
      most = std::max(most, pinAcceleration(mechanism, i * pi / 1800));
    }
    return most / peakDownwardAcceleration(mechanism).magnitude;
  };
  for (double ratio = 0.05; ratio < 0.4501; ratio += 0.05) {
    for (double share = -0.7; share < 0.701; share += 0.1) {
      EXPECT_LT(push({ratio, 1.0, share * (1.0 - ratio)}), 1.0) << ratio << ' ' << share;
    }
  }
  EXPECT_NEAR(push({0.66, 1.0, 0.6 * 0.34}), 1.0237, 5e-5);
  EXPECT_LT(push({0.88, 1.0, 0.0}), 1.0);
  EXPECT_GT(push({0.882, 1.0, 0.0}), 1.0);
}

TEST(SliderCrank, PosesForADrawingWithTheRodAsLongAsItIs) {
  const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14, .offset = 0.01};
  const Pose at90 = pose(mechanism, pi / 2);
  EXPECT_DOUBLE_EQ(at90.crankpin.x, 0.04);
  EXPECT_NEAR(at90.crankpin.y, 0.0, 1e-17);
  EXPECT_EQ(at90.gudgeonPin.x, 0.01);
  EXPECT_DOUBLE_EQ(
      std::hypot(at90.gudgeonPin.x - at90.crankpin.x, at90.gudgeonPin.y - at90.crankpin.y), 0.14);
  EXPECT_DOUBLE_EQ(at90.gudgeonPin.x + 0.14 * std::sin(at90.rodAngle), at90.crankpin.x);
}

TEST(SliderCrank, RefusesARodThatCannotTurn) {
  const auto refusal = refusalOf([] { return trueStroke({0.040, 0.038, 0.0}); });
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->sentence(),
            "A rod of {1} cannot turn: it needs more than {2}, throw and offset together.");
  EXPECT_EQ(refusal->kind(), units::Kind::Length);
  EXPECT_EQ(refusal->value(), 0.038);
  EXPECT_EQ(refusal->limit(), 0.040);
}

TEST(SliderCrank, CountsTheOffsetOfEitherSideAgainstTheRod) {
  for (const double offset : {0.02, -0.02}) {
    const auto refusal = refusalOf([&] { return pinHeight({0.5, 0.52, offset}, 0.0); });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->limit(), 0.52);
  }
  EXPECT_FALSE(refusalOf([] { check({0.5, 0.52, 0.019}); }));
}

TEST(SliderCrank, RefusesAThrowThatIsNone) {
  for (const double crankRadius : {0.0, -0.04, std::nan("")}) {
    const auto refusal = refusalOf([&] { check({crankRadius, 0.14, 0.0}); });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->sentence(), "A throw of {1} cannot be: it must be more than {2}.");
    EXPECT_EQ(refusal->limit(), 0.0);
  }
}

TEST(SliderCrank, RefusesATravelOutsideTheStroke) {
  const SliderCrank mechanism{.crankRadius = 0.04, .rodLength = 0.14};
  EXPECT_EQ(refusalOf([&] { return crankAngleOfTravel(mechanism, -0.001); })->limit(), 0.0);
  const auto beyond = refusalOf([&] { return crankAngleOfTravel(mechanism, 0.081); });
  ASSERT_TRUE(beyond);
  EXPECT_EQ(beyond->sentence(),
            "A travel of {1} from top dead centre cannot be: the stroke is {2}.");
  EXPECT_EQ(beyond->limit(), 0.08);
}

TEST(SliderCrank, RefusesAStrokeThatNoThrowGives) {
  EXPECT_EQ(refusalOf([] { return crankRadiusForStroke(0.0, 0.14, 0.0); })->limit(), 0.0);
  const auto beyond = refusalOf([] { return crankRadiusForStroke(0.3, 0.14, 0.0); });
  ASSERT_TRUE(beyond);
  EXPECT_EQ(beyond->sentence(), "A stroke of {1} cannot be: with this rod it stays below {2}.");
  EXPECT_DOUBLE_EQ(beyond->limit(), 0.28);
  EXPECT_EQ(longestStroke(0.14, -0.2), 0.0);
}

}  // namespace
}  // namespace strokewright::motion
