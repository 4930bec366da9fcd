// What an edit asks of the core: all results of a project, and all of them with every ±.

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <numbers>
#include <vector>

#include "core/assess/assess.h"
#include "core/firing/collectors.h"
#include "core/model/inputs.h"
#include "core/storage/project_text.h"

namespace strokewright::assess {
namespace {

namespace in = model::in;

model::Project sample(const std::string& name) {
  std::ifstream file(STROKEWRIGHT_SOURCE_DIR "/samples/" + name);
  const std::string text(std::istreambuf_iterator<char>(file), {});
  return storage::read(text).project.value();
}

/// Donor, target and variant of the three-cylinder sample.
model::Project triple() { return sample("burdock-719.strokewright"); }

/// Its target alone: what a single engine costs.
model::Project tripleTarget() {
  model::Project project = triple();
  project.engines = {project.engines[1]};
  project.referenceDonor = -1;
  return project;
}

describe::Entry inDegrees(const std::vector<double>& degrees) {
  describe::Entry entry;
  for (const double one : degrees) entry.values.push_back(one * std::numbers::pi / 180.0);
  entry.plusMinus = 0.25 * std::numbers::pi / 180.0;
  return entry;
}

/// The target alone with twelve cylinders of which no two are alike.
model::Project twelve() {
  model::Project project = tripleTarget();
  model::Engine& engine = project.engines.front();
  describe::Entry count;
  count.values = {12.0};
  engine.set(in::cylinderCount, count);
  for (const describe::Input* input :
       {&in::bore, &in::crankThrow, &in::rodLength, &in::compressionHeight, &in::seatHeight,
        &in::barrelHeight, &in::spacer, &in::baseGasket, &in::headGasket, &in::chamberVolume,
        &in::crownVolume, &in::pistonMass, &in::linerBottomHeight}) {
    describe::Entry entry = engine[*input];
    const double value = entry.values.front();
    entry.values.clear();
    for (int i = 0; i < 12; ++i) entry.values.push_back(value * (1.0 + 1e-4 * i));
    engine.set(*input, entry);
  }
  // A V of 60°, two rods to a throw; the order is for the program to find.
  engine.set(in::throwAhead, inDegrees({0, 0, 240, 240, 120, 120, 120, 120, 240, 240, 0, 0}));
  engine.set(in::cylinderAxis, inDegrees({0, 60, 0, 60, 0, 60, 0, 60, 0, 60, 0, 60}));
  engine.set(in::firingOrder, {});
  return project;
}

template <model::Project (*make)(), bool withTolerances>
void results(benchmark::State& state) {
  const model::Project project = make();
  std::vector<describe::Subject> subjects;
  for (const model::Engine& engine : project.engines) {
    subjects.push_back({&engine.entries, engine.part == model::Part::Donor});
  }
  for (auto _ : state) {
    describe::Evaluation evaluation(catalogue(), subjects, project.referenceDonor);
    withTolerances ? evaluation.runWithTolerances() : evaluation.run();
    benchmark::DoNotOptimize(evaluation);
  }
}
BENCHMARK(results<triple, false>)->Name("tripleWithDonorAndVariant/results");
BENCHMARK(results<triple, true>)->Name("tripleWithDonorAndVariant/tolerances");
BENCHMARK(results<tripleTarget, false>)->Name("triple/results");
BENCHMARK(results<tripleTarget, true>)->Name("triple/tolerances");
BENCHMARK(results<twelve, false>)->Name("twelveUnlikeCylinders/results");
BENCHMARK(results<twelve, true>)->Name("twelveUnlikeCylinders/tolerances");

/// Everything, findings included.
void assessment(benchmark::State& state) {
  const model::Project project = triple();
  for (auto _ : state) {
    Assessment assessment(project);
    benchmark::DoNotOptimize(assessment);
  }
}
BENCHMARK(assessment)->Name("tripleWithDonorAndVariant/assessment");

/// One more edit of the twelve: a throw is typed, and the order found and all computed anew.
void editOfATwelve(benchmark::State& state) {
  model::Project project = twelve();
  double ahead = 0.0;
  for (auto _ : state) {
    describe::Entry entry = project.engines.front()[in::throwAhead];
    ahead = ahead > 0.01 ? 0.0 : ahead + 1e-4;
    entry.values.back() = ahead;
    project.engines.front().set(in::throwAhead, entry);
    Assessment assessment(project);
    benchmark::DoNotOptimize(assessment);
  }
}
BENCHMARK(editOfATwelve)->Name("twelveUnlikeCylinders/edit of a throw");

std::vector<double> topsOfATwelve() {
  std::vector<double> tops;
  for (const double degrees : {0, 60, 120, 180, 240, 300, 240, 300, 120, 180, 0, 60}) {
    tops.push_back(degrees * std::numbers::pi / 180.0);
  }
  return tops;
}

void ordersOfATwelve(benchmark::State& state) {
  const std::vector<double> tops = topsOfATwelve();
  for (auto _ : state) {
    benchmark::DoNotOptimize(firing::everyOrder(tops, firing::Strokes::Four));
  }
}
BENCHMARK(ordersOfATwelve)->Name("firing/orders of twelve cylinders");

void collectorsOfATwelve(benchmark::State& state) {
  const std::vector<double> tops = topsOfATwelve();
  const firing::Order order = firing::everyOrder(tops, firing::Strokes::Four).front();
  const double bank = std::numbers::pi / 3.0;
  const std::vector<double> axes = {0, bank, 0, bank, 0, bank, 0, bank, 0, bank, 0, bank};
  for (auto _ : state) {
    benchmark::DoNotOptimize(firing::collectorsOf(order, firing::Strokes::Four, axes));
  }
}
BENCHMARK(collectorsOfATwelve)->Name("firing/collectors of twelve cylinders");

}  // namespace
}  // namespace strokewright::assess
