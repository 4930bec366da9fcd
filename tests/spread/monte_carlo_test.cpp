#include "core/spread/monte_carlo.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>
#include <numbers>
#include <thread>

#include "core/spread/deviates.h"
#include "tests/bench_units.h"

namespace strokewright::spread {
namespace {

using namespace bench;
using describe::Shape;

// A gap and its volumes with errors of all shapes; the throw moves everything.
Stack cylinder() {
  const double area = 4536 * mm2;
  return {.gap = 0.9 * mm,
          .swept = 336 * ml,
          .clearance = 34 * ml,
          .sources = {{Shape::Rectangular, 0.02 * mm, 0.0, 0.02 * mm * area},
                      {Shape::Normal, -0.02 * mm, 0.04 * mm * area, -0.02 * mm * area},
                      {Shape::Triangular, 0.03 * mm, 0.0, 0.03 * mm * area},
                      {Shape::Normal, -0.01 * mm, 0.0, -0.01 * mm * area},
                      {Shape::Normal, 0.0, 0.0, 0.3 * ml},
                      {Shape::Rectangular, 0.0, 0.1 * ml, 0.2 * ml}}};
}

TEST(Logarithm, AgreesWithTheLibrary) {
  for (int i = 1; i <= 100'000; ++i) {
    const float u = static_cast<float>(i) / 100'000.0F;
    const double expected = std::log(static_cast<double>(u));
    EXPECT_NEAR(static_cast<double>(logarithm(u)), expected, 4e-7 * std::abs(expected));
  }
  EXPECT_NEAR(static_cast<double>(logarithm(0x1p-31F)), std::log(0x1p-31), 1e-5);
}

TEST(Direction, AgreesWithTheLibrary) {
  for (int i = -50'000; i <= 50'000; ++i) {
    const float turns = static_cast<float>(i) / 100'000.0F;
    const double angle = 2.0 * std::numbers::pi * static_cast<double>(turns);
    EXPECT_NEAR(static_cast<double>(direction(turns).sine), std::sin(angle), 1e-6);
    EXPECT_NEAR(static_cast<double>(direction(turns).cosine), std::cos(angle), 1e-6);
  }
}

TEST(Stream, IsAnotherOneForEachBlockAndSeed) {
  Block first, again, block, seed;
  Stream(1, 0).fill(Shape::Rectangular, first);
  Stream(1, 0).fill(Shape::Rectangular, again);
  Stream(1, 1).fill(Shape::Rectangular, block);
  Stream(2, 0).fill(Shape::Rectangular, seed);
  EXPECT_EQ(first, again);
  EXPECT_NE(first, block);
  EXPECT_NE(first, seed);
}

class Deviates : public testing::TestWithParam<Shape> {};

// The distance between the sampled and the true chance at any value stays below 1.95/√n in 999 of
// 1000 runs (Kolmogorov); the seed is fixed, so a run that passes passes always.
TEST_P(Deviates, FollowTheirShape) {
  constexpr int kBlocks = 200;
  std::vector<float> all;
  Block block;
  for (std::uint64_t i = 0; i < kBlocks; ++i) {
    Stream(7, i).fill(GetParam(), block);
    all.insert(all.end(), block.begin(), block.end());
  }
  std::sort(all.begin(), all.end());
  const SumSpread expected(0.0, {{GetParam(), 1.0}});
  EXPECT_GE(static_cast<double>(all.front()), expected.low());
  EXPECT_LE(static_cast<double>(all.back()), expected.high());
  const double count = static_cast<double>(all.size());
  for (std::size_t i = 0; i < all.size(); i += 64) {
    EXPECT_NEAR(static_cast<double>(i) / count, expected.chanceBelow(static_cast<double>(all[i])),
                1.95 / std::sqrt(count));
  }
}

TEST_P(Deviates, OfSuccessiveSourcesAreIndependent) {
  constexpr int kBlocks = 200;
  Block first, second;
  double products = 0.0, halves = 0.0;
  for (std::uint64_t i = 0; i < kBlocks; ++i) {
    Stream stream(7, i);
    stream.fill(GetParam(), first);
    stream.fill(GetParam(), second);
    for (std::size_t s = 0; s < kBlockSize; ++s) {
      products += static_cast<double>(first[s] * second[s]);
      if (s < kBlockSize / 2) halves += static_cast<double>(first[s] * first[s + kBlockSize / 2]);
    }
  }
  // Standard deviation of a sum of n products: √n · variance, at most a third.
  const double count = kBlocks * kBlockSize;
  EXPECT_NEAR(products, 0.0, 4.0 * std::sqrt(count) / 3.0);
  EXPECT_NEAR(halves, 0.0, 4.0 * std::sqrt(count / 2.0) / 3.0);
}

INSTANTIATE_TEST_SUITE_P(Shapes, Deviates,
                         testing::Values(Shape::Normal, Shape::Rectangular, Shape::Triangular));

// Four standard deviations of a sampled quantile, √(p(1 − p)/n) over the density.
template <typename Exact>
void expectAlike(const SampledSpread& sampled, const Exact& exact, double count) {
  for (const double p : {0.001, 0.01, 0.025, 0.16, 0.5, 0.84, 0.975, 0.99, 0.999}) {
    const double x = exact.quantile(p);
    const double sigma = std::sqrt(p * (1.0 - p) / count);
    EXPECT_NEAR(sampled.chanceBelow(x), p, 4.0 * sigma) << p;
    const double step = 0.02 * (exact.quantile(0.84) - exact.quantile(0.16));
    const double density = (exact.chanceBelow(x + step) - exact.chanceBelow(x - step)) / (2 * step);
    EXPECT_NEAR(sampled.quantile(p), x, 4.0 * sigma / density) << p;
  }
}

TEST(Sample, FindsWhatIsFoundWithoutSampling) {
  constexpr int kCount = 1'000'000;
  const Stack stack = cylinder();
  const auto samples = sample(stack, {.count = kCount});
  ASSERT_TRUE(samples);
  const SumSpread gap = gapSpread(stack);
  expectAlike(samples->gap, gap, kCount);
  expectAlike(samples->ratio, RatioSpread(stack), kCount);
  EXPECT_NEAR(samples->gap.mean(), gap.mean(), 4.0 * gap.standardDeviation() / 1000.0);
  EXPECT_TRUE(close(samples->gap.standardDeviation(), gap.standardDeviation(), 4.0 / 1400.0));
}

// What the page shows must hold to a micrometre.
TEST(Sample, OfTenMillionHasThePercentilesOfTheExactGapToAMicrometre) {
  const Stack stack = cylinder();
  const auto samples = sample(stack, {.count = 10'000'000});
  ASSERT_TRUE(samples);
  const SumSpread gap = gapSpread(stack);
  for (const double p : {0.001, 0.01, 0.025, 0.16, 0.5, 0.84, 0.975, 0.99, 0.999}) {
    EXPECT_NEAR(samples->gap.quantile(p), gap.quantile(p), 1e-6) << p;
  }
}

TEST(Sample, IsTheSameHoweverManyThreadsShareIt) {
  const auto alone = sample(cylinder(), {.count = 100'000, .threads = 1});
  ASSERT_TRUE(alone);
  for (const int threads : {2, 3, 0}) {
    const auto shared = sample(cylinder(), {.count = 100'000, .threads = threads});
    ASSERT_TRUE(shared);
    EXPECT_EQ(shared->gap.mean(), alone->gap.mean());
    EXPECT_EQ(shared->ratio.standardDeviation(), alone->ratio.standardDeviation());
    for (const double p : {0.01, 0.5, 0.99}) {
      EXPECT_EQ(shared->gap.quantile(p), alone->gap.quantile(p));
      EXPECT_EQ(shared->ratio.quantile(p), alone->ratio.quantile(p));
    }
  }
}

TEST(Sample, IsAnotherOneWithAnotherSeed) {
  const auto one = sample(cylinder(), {.count = 10'000, .seed = 1});
  const auto other = sample(cylinder(), {.count = 10'000, .seed = 2});
  ASSERT_TRUE(one && other);
  EXPECT_NE(one->gap.mean(), other->gap.mean());
}

TEST(Sample, StopsSoonAfterItIsTold) {
  using Clock = std::chrono::steady_clock;
  Clock::time_point told;
  const auto stop = [&](double) {
    told = Clock::now();
    return false;
  };
  EXPECT_FALSE(sample(cylinder(), {.count = 2'000'000'000, .proceed = stop}));
  EXPECT_LT(Clock::now() - told, std::chrono::milliseconds(200));
}

TEST(Sample, TellsHowFarItIsInTheThreadThatAsked) {
  double last = -1.0;
  const auto listen = [&, asked = std::this_thread::get_id()](double done) {
    EXPECT_EQ(std::this_thread::get_id(), asked);
    EXPECT_GE(done, last);
    EXPECT_LE(done, 1.0);
    last = done;
    return true;
  };
  EXPECT_TRUE(sample(cylinder(), {.count = 1'000'000, .threads = 2, .proceed = listen}));
  EXPECT_GE(last, 0.0);
}

TEST(Sample, OfAStackWithoutErrorsIsAPoint) {
  Stack stack = cylinder();
  stack.sources.clear();
  const auto samples = sample(stack, {.count = 1});
  ASSERT_TRUE(samples);
  EXPECT_EQ(samples->gap.quantile(0.5), stack.gap);
  EXPECT_NEAR(samples->gap.standardDeviation(), 0.0, 1e-10);
  EXPECT_DOUBLE_EQ(samples->ratio.quantile(0.5), 1.0 + 336.0 / 34.0);
}

TEST(Sample, RefusesWhatHasNoDistribution) {
  EXPECT_TRUE(refusalOf([] { sample(cylinder(), {.count = 0}); }));
  Stack stack = cylinder();
  stack.sources[0].gap = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(refusalOf([&] { sample(stack, {}); }));
  stack = cylinder();
  stack.sources[0].clearance = stack.clearance;
  EXPECT_TRUE(refusalOf([&] { sample(stack, {}); }));
}

TEST(SampleOfAFunction, AgreesWithTheSumWhereTheFunctionIsLinear) {
  constexpr int kCount = 300'000;
  const auto sampled = sample({Shape::Normal, Shape::Rectangular, Shape::Triangular},
                              [](std::span<const double> errors) {
                                return 0.9 + 0.02 * errors[0] + 0.03 * errors[1] - 0.02 * errors[2];
                              },
                              {.count = kCount});
  ASSERT_TRUE(sampled);
  const SumSpread exact(
      0.9, {{Shape::Normal, 0.02}, {Shape::Rectangular, 0.03}, {Shape::Triangular, 0.02}});
  expectAlike(*sampled, exact, kCount);
}

// The larger of two rectangular errors: chance ((1 + x)/2)².
TEST(SampleOfAFunction, TakesOneThatIsNotLinear) {
  constexpr int kCount = 300'000;
  const auto sampled =
      sample({Shape::Rectangular, Shape::Rectangular},
             [](std::span<const double> errors) { return std::max(errors[0], errors[1]); },
             {.count = kCount});
  ASSERT_TRUE(sampled);
  EXPECT_NEAR(sampled->mean(), 1.0 / 3.0, 4.0 * std::sqrt(2.0 / 9.0 / kCount));
  EXPECT_NEAR(sampled->chanceBelow(0.0), 0.25, 4.0 * std::sqrt(0.1875 / kCount));
}

TEST(SampleOfAFunction, ThrowsWhatTheFunctionThrows) {
  for (const int threads : {1, 3}) {
    const auto refusal = refusalOf([&] {
      sample({Shape::Normal},
             [](std::span<const double>) -> double {
               throw describe::Refusal("A rod of {1} cannot turn: it needs more than {2}.",
                                       units::Kind::Length, 38 * mm, 40 * mm);
             },
             {.count = 10'000, .threads = threads});
    });
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->value(), 38 * mm);
  }
}

TEST(SampleOfAFunction, RefusesAValueThatIsNotFinite) {
  EXPECT_TRUE(refusalOf([] {
    sample({Shape::Normal}, [](std::span<const double>) { return std::nan(""); }, {.count = 1});
  }));
}

TEST(SampleOfAFunction, OfOneValueIsAPoint) {
  const auto sampled =
      sample({}, [](std::span<const double>) { return 0.9; }, {.count = 1, .threads = 1});
  ASSERT_TRUE(sampled);
  EXPECT_EQ(sampled->quantile(0.5), 0.9);
  EXPECT_EQ(sampled->mean(), 0.9);
  EXPECT_EQ(sampled->standardDeviation(), 0.0);
}

}  // namespace
}  // namespace strokewright::spread
