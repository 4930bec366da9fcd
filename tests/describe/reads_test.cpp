/// What a result says it reads is what moves it, on the sample conversions.

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>

#include "core/model/inputs.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::assess {
namespace {

using describe::Cell;
using describe::Evaluation;
using describe::Input;
using describe::Result;
using describe::State;

struct Row {
  const char* name;
  const char* sample;
  int engine;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class WhatAResultReads : public testing::TestWithParam<Row> {
 protected:
  WhatAResultReads() : project_(sample(GetParam().sample)), assessment_(project_) {}

  static bool isNumber(const Input& input) {
    return input.kind != units::Kind::Choice && input.kind != units::Kind::Count;
  }

  /// The result with the input moved by a part of itself in the first cylinder, or everywhere.
  Cell moved(const Result& result, const Input& input, double part) {
    const Evaluation& original = assessment_.evaluation();
    Evaluation trial = original;
    const double now = original.inputValue(GetParam().engine, input);
    const double scale = std::max(std::abs(now), 0.01 * std::abs(input.typical));
    const double step = part * (scale > 0.0 ? scale : 1e-4);
    trial.put(GetParam().engine, input, -1, now + step);
    return trial.fresh(GetParam().engine, result);
  }

  model::Project project_;
  Assessment assessment_;
};

TEST_P(WhatAResultReads, IsAllThatMovesIt) {
  for (const Result* result : catalogue().results()) {
    if (result->kind == units::Kind::Choice) continue;
    const Cell& cell = assessment_(GetParam().engine, *result);
    if (cell.state != State::Value) continue;
    for (const Input* input : catalogue().inputs()) {
      if (!isNumber(*input) || cell.notes.read.own[static_cast<std::size_t>(input->number)])
        continue;
      if (!assessment_.evaluation().inputGiven(GetParam().engine, *input)) continue;
      if (assessment_.project()
              .engines[static_cast<std::size_t>(GetParam().engine)][*input]
              .values.size() > 1) {
        continue;  // putting one number evens out the list
      }
      const Cell after = moved(*result, *input, 1e-3);
      EXPECT_EQ(after.value, cell.value) << result->key << " is moved by " << input->key;
    }
  }
}

TEST_P(WhatAResultReads, IsMovedByEveryEntryWithAShareInItsTolerance) {
  Evaluation evaluation = assessment_.evaluation();
  for (const Result* result : catalogue().results()) {
    const Cell& cell = assessment_(GetParam().engine, *result);
    if (cell.state != State::Value) continue;
    for (const describe::Contributor& one : evaluation.contributors(GetParam().engine, *result)) {
      if (one.donors) continue;
      EXPECT_TRUE(cell.notes.read.own[static_cast<std::size_t>(one.input->number)])
          << result->key << " has a share of " << one.input->key;
    }
  }
}

/// Not so for all results: a factor may be zero, a rod matters to the stroke with an offset alone.
TEST_P(WhatAResultReads, MovesWhereEveryPartCounts) {
  for (const char* key : {"squish_gap_m", "bob_weight_kg", "rod_stress_pa"}) {
    const Result& result = *catalogue().findResult(key);
    const Cell& cell = assessment_(GetParam().engine, result);
    ASSERT_EQ(cell.state, State::Value) << key;
    for (const Input* input : catalogue().inputs()) {
      if (!isNumber(*input) || !cell.notes.read.own[static_cast<std::size_t>(input->number)])
        continue;
      const double now = assessment_.evaluation().inputValue(GetParam().engine, *input);
      if (!assessment_.evaluation().inputGiven(GetParam().engine, *input) || now == 0.0) continue;
      EXPECT_NE(moved(result, *input, 1e-3).value, cell.value) << key << " by " << input->key;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(
    Conversions, WhatAResultReads,
    testing::Values(Row{"Tansy617", "tansy-270", 0}, Row{"Tansy270", "tansy-270", 1},
                    Row{"Burdock636", "burdock-719", 0}, Row{"Burdock719", "burdock-719", 1},
                    Row{"BurdockShortRod", "burdock-719", 2}, Row{"Teasel116", "teasel-125", 0},
                    Row{"Teasel125", "teasel-125", 1}, Row{"Culvert864", "culvert-1040", 0},
                    Row{"Culvert1040", "culvert-1040", 1}),
    [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace strokewright::assess
