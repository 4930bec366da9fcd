// Motion of one piston: the curves of two turns, and the single numbers an edit asks for. The
// counter "check" is what numpy_bench.py must find as well.

#include <benchmark/benchmark.h>

#include "core/clearance/clearance.h"
#include "core/motion/curve.h"
#include "core/motion/slider_crank.h"

namespace strokewright::motion {
namespace {

constexpr SliderCrank kTwin{.crankRadius = 0.037, .rodLength = 0.1265, .offset = 0.0005};
constexpr double kSpeed = 890.0;  // [rad/s]

void motionCurves(benchmark::State& state) {
  const CrankAngles angles(2, 720);
  MotionCurves curves;
  for (auto _ : state) {
    fillCurves(kTwin, kSpeed, angles, curves);
    benchmark::DoNotOptimize(curves.acceleration.data());
    benchmark::ClobberMemory();
  }
  state.counters["check"] =
      curves.travel.sum() + curves.velocity.abs().sum() + curves.acceleration.abs().sum();
}
BENCHMARK(motionCurves);

// The plain functions that the curves are tested against, point by point.
void motionCurvesPlain(benchmark::State& state) {
  const CrankAngles angles(2, 720);
  for (auto _ : state) {
    for (const double angle : angles.radians()) {
      benchmark::DoNotOptimize(travel(kTwin, angle));
      benchmark::DoNotOptimize(pinVelocity(kTwin, angle));
      benchmark::DoNotOptimize(pinAcceleration(kTwin, angle));
    }
  }
}
BENCHMARK(motionCurvesPlain);

void peakSpeed(benchmark::State& state) {
  SliderCrank mechanism = kTwin;
  for (auto _ : state) {
    benchmark::DoNotOptimize(mechanism);
    benchmark::DoNotOptimize(peakDownwardSpeed(mechanism));
  }
}
BENCHMARK(peakSpeed);

void peakAcceleration(benchmark::State& state) {
  SliderCrank mechanism = kTwin;
  for (auto _ : state) {
    benchmark::DoNotOptimize(mechanism);
    benchmark::DoNotOptimize(peakDownwardAcceleration(mechanism));
  }
}
BENCHMARK(peakAcceleration);

void rodToLiner(benchmark::State& state) {
  SliderCrank mechanism = kTwin;
  for (auto _ : state) {
    benchmark::DoNotOptimize(mechanism);
    benchmark::DoNotOptimize(clearance::rodToLiner(
        mechanism, {.bore = 0.076, .bottomHeight = 0.080, .rodHalfWidth = 0.009}));
  }
}
BENCHMARK(rodToLiner);

}  // namespace
}  // namespace strokewright::motion
