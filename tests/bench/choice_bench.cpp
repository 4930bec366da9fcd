// Two of 14 base gaskets, a plate of 100 and one head gasket of 16 under three cylinders: 192 000
// stacks. The counter "check" is what numpy_bench.py must find as well.

#include <benchmark/benchmark.h>

#include "core/choice/choice.h"
#include "core/choice/every_stack.h"

namespace strokewright::choice {
namespace {

Question fullShelf() {
  Question question;
  for (int i = 0; i < 14; ++i) {
    question.shelf.push_back({.role = Role::BaseGasket,
                              .thickness = (100 + 50 * i) * 1e-6,
                              .plusMinus = (i % 2 == 0 ? 10 : 30) * 1e-6});
  }
  for (int i = 0; i < 100; ++i) {
    question.shelf.push_back(
        {.role = Role::Plate, .thickness = (500 + 20 * i) * 1e-6, .plusMinus = 10e-6});
  }
  for (int i = 0; i < 16; ++i) {
    question.shelf.push_back({.role = Role::HeadGasket,
                              .thickness = (500 + 50 * i) * 1e-6,
                              .plusMinus = 30e-6,
                              .bore = 69.5e-3 + 0.5e-3 * (i % 3)});
  }
  for (const double deckClearance : {-2130e-6, -2050e-6, -1960e-6}) {
    question.cylinders.push_back({.deckClearanceBare = deckClearance,
                                  .bore = 68e-3,
                                  .sweptVolume = 239.69e-6,
                                  .volumesBesideStack = 20.1e-6,
                                  .worst = 70e-6});
  }
  question.wants = {.squish = 900e-6,
                    .squishLeast = 800e-6,
                    .squishMost = 1200e-6,
                    .leastAtWorst = 650e-6,
                    .ratioLeast = 10.3,
                    .ratioMost = 11.5,
                    .ratioSpread = 0.26,
                    .plateNeeded = true};
  return question;
}

// Ranks in micrometres, and every count.
double check(const Answer& answer) {
  double sum = 0.0;
  for (const Stack& stack : answer.best) sum += stack.rank * 1e6;
  for (std::size_t i = 0; i < kReasonCount; ++i) {
    sum += static_cast<double>(i + 1) * answer.tally.lost[i];
  }
  return sum;
}

void chooseBy(benchmark::State& state, Answer (*form)(const Question&), const Question& question) {
  Answer answer;
  for (auto _ : state) {
    answer = form(question);
    benchmark::DoNotOptimize(answer.best.data());
  }
  state.counters["check"] = check(answer);
}

void stackChoice(benchmark::State& state) { chooseBy(state, choose, fullShelf()); }
BENCHMARK(stackChoice)->Unit(benchmark::kMicrosecond);

void everyStack(benchmark::State& state) { chooseBy(state, chooseFromEveryStack, fullShelf()); }
BENCHMARK(everyStack)->Unit(benchmark::kMicrosecond);

void unlikeCylinders(benchmark::State& state) {
  Question question = fullShelf();
  question.wants.onePlateForAll = state.range(0) == 0;
  question.wants.sameGasketsInAll = state.range(1) == 0;
  question.wants.ratio = 11.0;
  question.wants.sortBy = static_cast<SortBy>(state.range(2));
  chooseBy(state, choose, question);
  state.counters["all"] = choose(question).searchedAll ? 1.0 : 0.0;
}
BENCHMARK(unlikeCylinders)
    ->ArgNames({"ownPlates", "ownGaskets", "sortBy"})
    ->ArgsProduct({{0, 1}, {0, 1}, {0, 1, 2, 3}})
    ->Unit(benchmark::kMicrosecond);

// More than anybody has: 2.4 million sets for each of four cylinders, up to three of a part.
Question endlessShelf() {
  Question question = fullShelf();
  question.shelf.clear();
  for (int i = 0; i < 70; ++i) {
    question.shelf.push_back({.role = Role::BaseGasket,
                              .thickness = (100 + 13 * i) * 1e-6,
                              .plusMinus = (i % 2 == 0 ? 10 : 30) * 1e-6,
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
  }
  for (int i = 0; i < 30; ++i) {
    question.shelf.push_back({.role = Role::Plate,
                              .thickness = (500 + 50 * i) * 1e-6,
                              .plusMinus = 10e-6,
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
    question.shelf.push_back({.role = Role::HeadGasket,
                              .thickness = (500 + 37 * i) * 1e-6,
                              .plusMinus = 30e-6,
                              .bore = 69.5e-3 + 0.5e-3 * (i % 3),
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
  }
  question.cylinders.push_back(question.cylinders.front());
  question.cylinders.back().deckClearanceBare = -2087e-6;
  return question;
}

void endlessLists(benchmark::State& state) {
  Question question = endlessShelf();
  question.wants.onePlateForAll = state.range(0) == 0;
  question.wants.sameGasketsInAll = state.range(1) == 0;
  question.wants.ratio = 11.0;
  question.wants.sortBy = static_cast<SortBy>(state.range(2));
  chooseBy(state, choose, question);
  state.counters["all"] = choose(question).searchedAll ? 1.0 : 0.0;
}
BENCHMARK(endlessLists)
    ->ArgNames({"ownPlates", "ownGaskets", "sortBy"})
    ->ArgsProduct({{0, 1}, {0, 1}, {0, 1, 2, 3}})
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace strokewright::choice
