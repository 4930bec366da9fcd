// How likely is each gap and each compression ratio: found without sampling, and by sampling ten
// million engines; the processor time is that of all threads together. The counter "check" is what
// numpy_bench.py must find as well, within what sampling leaves open.

#include <benchmark/benchmark.h>

#include "core/spread/monte_carlo.h"

namespace strokewright::spread {
namespace {

using describe::Shape;

constexpr double kArea = 4536e-6;    // [m2] of the bore
constexpr double kWanted = 0.85e-3;  // [m]
constexpr int kBins = 60;
constexpr double kPercentiles[] = {0.001, 0.01, 0.025, 0.16, 0.5, 0.84, 0.975, 0.99, 0.999};

// Case, barrel, two gaskets, throw, rod, compression height; chamber, crown, bore.
Stack cylinder() {
  Stack stack{.gap = 0.9e-3, .swept = 336e-6, .clearance = 34e-6, .sources = {}};
  const auto add = [&](Shape shape, double limit) {
    stack.sources.push_back({shape, limit, 0.0, limit * kArea});
  };
  add(Shape::Rectangular, 0.02e-3);
  add(Shape::Normal, 0.02e-3);
  add(Shape::Triangular, 0.03e-3);
  add(Shape::Triangular, 0.02e-3);
  stack.sources.push_back({Shape::Normal, -0.02e-3, 0.04e-3 * kArea, -0.02e-3 * kArea});
  add(Shape::Normal, -0.03e-3);
  add(Shape::Rectangular, -0.02e-3);
  stack.sources.push_back({Shape::Normal, 0.0, 0.0, 0.3e-6});
  stack.sources.push_back({Shape::Rectangular, 0.0, 0.0, 0.2e-6});
  stack.sources.push_back({Shape::Normal, 0.0, 0.09e-6, 0.01e-6});
  return stack;
}

// What a page shows of one number.
void show(const Spread& spread, double wanted) {
  for (const double percentile : kPercentiles) {
    benchmark::DoNotOptimize(spread.quantile(percentile));
  }
  benchmark::DoNotOptimize(spread.chanceBelow(wanted));
  benchmark::DoNotOptimize(
      spread.histogram({spread.quantile(0.0005), spread.quantile(0.9995), kBins}));
}

// A single number for all of it: the gap in millimetres.
double check(const Spread& gap, const Spread& ratio) {
  return gap.quantile(0.01) * 1e3 + ratio.quantile(0.99) + gap.chanceBelow(kWanted);
}

void spreadExact(benchmark::State& state) {
  const Stack stack = cylinder();
  for (auto _ : state) {
    show(gapSpread(stack), kWanted);
    show(RatioSpread(stack), 10.8);
  }
  state.counters["check"] = check(gapSpread(stack), RatioSpread(stack));
}
BENCHMARK(spreadExact)->Unit(benchmark::kMicrosecond);

void spreadSampled(benchmark::State& state) {
  const Stack stack = cylinder();
  std::optional<StackSamples> samples;
  for (auto _ : state) {
    samples = sample(stack, {.count = 10'000'000, .threads = static_cast<int>(state.range(0))});
    show(samples->gap, kWanted);
    show(samples->ratio, 10.8);
  }
  state.counters["check"] = check(samples->gap, samples->ratio);
}
BENCHMARK(spreadSampled)
    ->ArgName("threads")
    ->Arg(1)
    ->Arg(2)
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace strokewright::spread
