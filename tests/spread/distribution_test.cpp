#include "core/spread/distribution.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <ostream>

#include "tests/bench_units.h"

namespace strokewright::spread {
namespace {

using namespace bench;
using describe::Shape;
using std::numbers::sqrt3;

constexpr double kChance = 1e-7;  // what SumSpread promises

double normalBelow(double z) { return std::erfc(-z / std::numbers::sqrt2) / 2.0; }

std::vector<Share> alike(Shape shape, const std::vector<double>& limits) {
  std::vector<Share> shares;
  for (const double limit : limits) shares.push_back({shape, limit});
  return shares;
}

// A gap w = a − b − c − d of 0.005 in, whose parts err by 3, 1, 5 and 1 thousandths.
// Shigley 9th ed., Ex. 1-3, p. 20
const std::vector<double> kGapLimits{0.003 * inch, -0.001 * inch, -0.005 * inch, -0.001 * inch};

TEST(SumSpread, OfTheFourPartGapReachesItsWorstCase) {
  const SumSpread gap(0.005 * inch, alike(Shape::Rectangular, kGapLimits));
  EXPECT_NEAR(gap.low(), -0.005 * inch, 1e-15);
  EXPECT_NEAR(gap.high(), 0.015 * inch, 1e-15);
}

// Shigley 9th ed., §1-14, and the normal table
TEST(SumSpread, OfTheFourPartGapAddsNormalErrorsBySquares) {
  const SumSpread gap(0.005 * inch, alike(Shape::Normal, kGapLimits));
  EXPECT_NEAR(2.0 * gap.standardDeviation(), 0.006 * inch, 1e-15);

  std::vector<double> threeSigma;
  for (const double limit : kGapLimits) threeSigma.push_back(limit * 2.0 / 3.0);
  const SumSpread other(0.005 * inch, alike(Shape::Normal, threeSigma));
  EXPECT_NEAR(other.chanceBelow(0.003 * inch), 0.158655, 0.5e-6);
}

struct RootOfSquares {
  const char* source;
  double middle;
  std::vector<double> limits;  // sensitivity times limit
  double expected;             // ±, as printed
  double lastDigit;
};

void PrintTo(const RootOfSquares& row, std::ostream* stream) { *stream << row.source; }

class RootsOfSquares : public testing::TestWithParam<RootOfSquares> {};

TEST_P(RootsOfSquares, AreTwiceTheStandardDeviationOfNormalErrors) {
  const RootOfSquares& row = GetParam();
  const SumSpread sum(row.middle, alike(Shape::Normal, row.limits));
  EXPECT_EQ(sum.mean(), row.middle);
  EXPECT_NEAR(2.0 * sum.standardDeviation(), row.expected, row.lastDigit / 2.0);
}

INSTANTIATE_TEST_SUITE_P(
    Published, RootsOfSquares,
    testing::Values(
        RootOfSquares{"Sawhney, Ex. 3.39, p. 131: in series", 150.0, {0.1, 0.03}, 0.1044, 1e-4},
        RootOfSquares{
            "Sawhney, Ex. 3.39: in parallel", 33.333, {0.1 / 9, 0.03 * 4 / 9}, 0.01736, 1e-5},
        RootOfSquares{"Sawhney, Ex. 3.41, p. 135: E²/R [%]", 100.0, {2.0, -1.0}, 2.236, 1e-3},
        RootOfSquares{"Sawhney, Ex. 3.41: E·I [%]", 100.0, {1.0, 1.0}, 1.414, 1e-3},
        RootOfSquares{
            "Sawhney, Ex. 3.38, p. 129 [W]", 584.06, {0.2 * 5.3, 0.06 * 110.2}, 6.6964, 1e-4}));

// JCGM 101:2008 9.2.2 to 9.2.4, from memory, where they are 3.92, 3.88 and 17.0; the further digits
// were recomputed from the volumes that a plane cuts off a cuboid: the interval that holds 95 %.
TEST(SumSpread, CoversWhatFourEqualErrorsCover) {
  const SumSpread normal(0.0, alike(Shape::Normal, {2.0, 2.0, 2.0, 2.0}));
  EXPECT_NEAR(normal.standardDeviation(), 2.0, 1e-15);
  EXPECT_NEAR(normal.quantile(0.975), 3.91993, 0.5e-5);

  const SumSpread rectangular(0.0, alike(Shape::Rectangular, {sqrt3, sqrt3, sqrt3, sqrt3}));
  EXPECT_NEAR(rectangular.standardDeviation(), 2.0, 1e-15);
  EXPECT_NEAR(rectangular.quantile(0.975), 3.87941, 0.5e-5);
  EXPECT_NEAR(rectangular.quantile(0.025), -3.87941, 0.5e-5);

  const SumSpread oneLarger(0.0, alike(Shape::Rectangular, {sqrt3, sqrt3, sqrt3, 10.0 * sqrt3}));
  EXPECT_NEAR(oneLarger.standardDeviation(), std::sqrt(103.0), 1e-14);
  EXPECT_NEAR(oneLarger.quantile(0.975), 17.01581, 0.5e-5);
}

TEST(SumSpread, OfOneRectangularErrorIsAStraightLine) {
  const SumSpread sum(10.0, {{Shape::Rectangular, -2.0}});
  EXPECT_EQ(sum.chanceBelow(8.0), 0.0);
  EXPECT_DOUBLE_EQ(sum.chanceBelow(9.0), 0.25);
  EXPECT_DOUBLE_EQ(sum.chanceBelow(10.0), 0.5);
  EXPECT_EQ(sum.chanceBelow(12.0), 1.0);
  EXPECT_DOUBLE_EQ(sum.density(9.0), 0.25);
  EXPECT_EQ(sum.density(7.9), 0.0);
  EXPECT_NEAR(sum.quantile(0.001), 8.004, 1e-8);
}

// The Irwin–Hall law, its pieces written out.
TEST(SumSpread, OfTwoRectangularErrorsIsATriangle) {
  const SumSpread sum(0.0, alike(Shape::Rectangular, {1.0, 1.0}));
  for (const double x : {-2.0, -1.9, -1.0, -0.3, 0.0}) {
    EXPECT_NEAR(sum.chanceBelow(x), (x + 2) * (x + 2) / 8, kChance);
    EXPECT_NEAR(sum.chanceBelow(-x), 1 - (x + 2) * (x + 2) / 8, kChance);
    EXPECT_NEAR(sum.density(x), (x + 2) / 4, 1e-4);
  }
}

TEST(SumSpread, OfThreeRectangularErrorsIsThreeParabolas) {
  const SumSpread sum(0.0, alike(Shape::Rectangular, {1.0, 1.0, 1.0}));
  for (const double x : {-2.99, -2.0, -1.0}) {
    EXPECT_NEAR(sum.chanceBelow(x), std::pow(x + 3, 3) / 48, kChance);
    EXPECT_NEAR(sum.density(x), (x + 3) * (x + 3) / 16, 1e-4);
  }
  for (const double x : {-1.0, -0.4, 0.0, 0.7}) {
    EXPECT_NEAR(sum.chanceBelow(x), 0.5 + (3 * x - x * x * x / 3) / 8, kChance);
    EXPECT_NEAR(sum.density(x), (3 - x * x) / 8, 1e-4);
  }
}

TEST(SumSpread, TakesATriangularErrorForTwoRectangularOnes) {
  const SumSpread triangular(0.0, {{Shape::Triangular, 2.0}, {Shape::Normal, 0.4}});
  const SumSpread rectangular(
      0.0, {{Shape::Rectangular, 1.0}, {Shape::Rectangular, -1.0}, {Shape::Normal, 0.4}});
  EXPECT_DOUBLE_EQ(triangular.standardDeviation(), rectangular.standardDeviation());
  for (double x = -3.0; x < 3.0; x += 0.25) {
    EXPECT_EQ(triangular.chanceBelow(x), rectangular.chanceBelow(x));
  }
}

// A rectangular and a normal error: the integral of the normal law between two points.
TEST(SumSpread, OfARectangularAndANormalErrorHasItsClosedForm) {
  const auto integral = [](double x, double sigma) {
    const double z = x / sigma;
    return x * normalBelow(z) + sigma * std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
  };
  for (const double sigma : {1e-6, 1e-3, 0.1, 1.0, 10.0, 100.0, 1000.0, 1e5}) {
    const SumSpread sum(0.0, {{Shape::Rectangular, 1.0}, {Shape::Normal, 2.0 * sigma}});
    for (double x = -1.0 - 4.0 * sigma; x < 1.0 + 4.0 * sigma; x += 0.1 + 0.1 * sigma) {
      EXPECT_NEAR(sum.chanceBelow(x), (integral(x + 1, sigma) - integral(x - 1, sigma)) / 2,
                  kChance)
          << sigma << " at " << x;
    }
  }
}

TEST(SumSpread, OfNoErrorsIsAPoint) {
  for (const SumSpread& sum : {SumSpread(0.9, {}), SumSpread(0.9, {{Shape::Rectangular, 0.0}})}) {
    EXPECT_EQ(sum.low(), 0.9);
    EXPECT_EQ(sum.high(), 0.9);
    EXPECT_EQ(sum.chanceBelow(std::nextafter(0.9, 0.0)), 0.0);
    EXPECT_EQ(sum.chanceBelow(std::nextafter(0.9, 1.0)), 1.0);
    EXPECT_EQ(sum.quantile(0.01), 0.9);
    EXPECT_EQ(sum.density(0.8), 0.0);
    EXPECT_EQ(sum.density(0.9), std::numeric_limits<double>::infinity());
  }
}

struct Mix {
  const char* name;
  std::vector<Share> shares;
};

void PrintTo(const Mix& row, std::ostream* stream) { *stream << row.name; }

class Mixes : public testing::TestWithParam<Mix> {
 protected:
  SumSpread sum_{0.9, GetParam().shares};
};

TEST_P(Mixes, RiseFromNothingToCertaintyAndAreSymmetric) {
  double last = 0.0;
  for (int i = 0; i <= 400; ++i) {
    const double x = std::lerp(sum_.low(), sum_.high(), i / 400.0);
    const double chance = sum_.chanceBelow(x);
    EXPECT_GE(chance, last - kChance);
    EXPECT_NEAR(chance + sum_.chanceBelow(1.8 - x), 1.0, kChance);
    last = chance;
  }
  EXPECT_NEAR(sum_.chanceBelow(sum_.low()), 0.0, 1e-15);
  EXPECT_NEAR(sum_.chanceBelow(sum_.high()), 1.0, 1e-15);
}

TEST_P(Mixes, HaveTheMomentsOfTheirParts) {
  const Bins bins{sum_.low(), sum_.high(), 4000};
  const std::vector<double> chances = sum_.histogram(bins);
  double total = 0.0, mean = 0.0, squares = 0.0, fromDensity = 0.0;
  for (int bin = 0; bin < bins.count; ++bin) {
    const double x = (bins.edge(bin) + bins.edge(bin + 1)) / 2 - 0.9;
    const double chance = chances[static_cast<std::size_t>(bin)];
    total += chance;
    mean += chance * x;
    squares += chance * x * x;
    fromDensity += sum_.density(0.9 + x) * (bins.high - bins.low) / bins.count;
  }
  EXPECT_NEAR(total, 1.0, 1e-9);
  EXPECT_NEAR(fromDensity, 1.0, 1e-3);
  EXPECT_NEAR(mean, 0.0, 1e-6 * sum_.standardDeviation());
  EXPECT_TRUE(close(std::sqrt(squares), sum_.standardDeviation(), 1e-4));
}

TEST_P(Mixes, FindTheirQuantiles) {
  for (const double chance : {0.001, 0.01, 0.025, 0.16, 0.5, 0.84, 0.975, 0.99, 0.999}) {
    EXPECT_NEAR(sum_.chanceBelow(sum_.quantile(chance)), chance, 1e-6);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Shapes, Mixes,
    testing::Values(
        Mix{"normal", alike(Shape::Normal, {0.02, 0.01, 0.03})},
        Mix{"rectangular", alike(Shape::Rectangular, {0.02, 0.01, 0.03})},
        Mix{"triangular", alike(Shape::Triangular, {0.02, 0.01, 0.03})},
        Mix{"all three",
            {{Shape::Normal, 0.02}, {Shape::Rectangular, -0.02}, {Shape::Triangular, 0.03}}},
        Mix{"one large rectangular among tiny ones",
            {{Shape::Rectangular, 0.1}, {Shape::Normal, 2e-4}, {Shape::Rectangular, 1e-4}}},
        Mix{"two large rectangular, one tiny",
            {{Shape::Rectangular, 0.1}, {Shape::Rectangular, 0.09}, {Shape::Normal, 3e-4}}},
        Mix{"one large normal among tiny rectangular ones",
            {{Shape::Normal, 0.1}, {Shape::Rectangular, 1e-3}, {Shape::Rectangular, 1e-6}}},
        Mix{"forty rectangular", std::vector<Share>(40, {Shape::Rectangular, 0.01})}));

TEST(SumSpread, RefusesWhatIsNoNumber) {
  constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(refusalOf([&] { SumSpread(kNothing, {}); }));
  EXPECT_TRUE(refusalOf([&] { SumSpread(0.9, {{Shape::Normal, kNothing}}); }));
  const auto refusal = refusalOf([&] { SumSpread(0.9, {{Shape::Triangular, -kInfinite}}); });
  ASSERT_TRUE(refusal);
  EXPECT_EQ(refusal->value(), -kInfinite);
  EXPECT_EQ(refusal->sentence(),
            "A sum with {1} in it has no distribution: {2} is the most it can hold.");
}

TEST(SumSpread, RefusesACertaintyAsAQuantile) {
  const SumSpread sum(0.0, {{Shape::Normal, 1.0}});
  for (const double chance : {0.0, 1.0, -0.1, 1.1}) {
    const auto refusal = refusalOf([&] { sum.quantile(chance); });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->value(), chance);
  }
}

}  // namespace
}  // namespace strokewright::spread
