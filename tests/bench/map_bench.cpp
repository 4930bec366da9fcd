// Bore against stroke: four maps of 1000 by 1000. The counter "check" is what numpy_bench.py must
// find as well.

#include <benchmark/benchmark.h>

#include "core/tradeoff/map.h"

namespace strokewright::tradeoff {
namespace {

void tradeoffMaps(benchmark::State& state) {
  constexpr int kSide = 1000;
  const Eigen::ArrayXd bores = Eigen::ArrayXd::LinSpaced(kSide, 0.060, 0.090);
  const Eigen::ArrayXd strokes = Eigen::ArrayXd::LinSpaced(kSide, 0.050, 0.090);
  const Held held{.cylinderCount = 2,
                  .rodLength = 0.1265,
                  .offset = 0.0005,
                  .evenVolume = 30.1e-6,
                  .gasketThickness = 0.65e-3,
                  .gasketOverBore = 1.5e-3,
                  .deckClearance = 0.25e-3,
                  .speed = 890.0};
  const Limits limits{.meanPistonSpeed = 22.0, .acceleration = 32250.0, .shaftSpeed = 1100.0};
  Maps maps;
  for (auto _ : state) {
    fillMaps(bores, strokes, held, limits, maps);
    benchmark::DoNotOptimize(maps.ceiling.data());
    benchmark::ClobberMemory();
  }
  state.counters["check"] =
      maps.displacement.cast<double>().mean() * 1e6 + maps.compressionRatio.cast<double>().mean() +
      maps.meanPistonSpeed.cast<double>().mean() + maps.ceiling.cast<double>().mean();
}
BENCHMARK(tradeoffMaps)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace strokewright::tradeoff
