// Results that pick one of several, or differ between the extremes of several: their ± and what
// they do when one of the several is refused.

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>

#include "core/assess/assess.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/limits/results.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/plate/results.h"
#include "core/storage/project_text.h"
#include "core/survey/results.h"

namespace strokewright::assess {
namespace {

namespace in = model::in;
using describe::State;

constexpr int kTarget = 1;

model::Project triple() {
  std::ifstream file(STROKEWRIGHT_SOURCE_DIR "/samples/burdock-719.strokewright");
  const std::string text(std::istreambuf_iterator<char>(file), {});
  return storage::read(text).project.value();
}

void type(model::Project& project, const describe::Input& input, std::string_view text) {
  project.engines[kTarget].set(input, model::entryFrom(input, text, units::UnitGroup::metric()));
}

TEST(RevCeiling, HasTheToleranceOfTheLineThatGoverns) {
  const model::Project project = triple();
  const Assessment assessment(project);
  const describe::Cell& line = assessment(kTarget, out::ceilingRingFlutter);
  const describe::Cell& ceiling = assessment(kTarget, out::revCeiling);
  EXPECT_NEAR(ceiling.worst, line.worst, 1e-9 * line.worst);
  EXPECT_NEAR(ceiling.likely, line.likely, 1e-9 * line.likely);
}

TEST(RevCeiling, ContributorsMakeUpItsWorstCase) {
  const model::Project project = triple();
  Assessment assessment(project);
  double sum = 0.0;
  for (const auto& one : assessment.evaluation().contributors(kTarget, out::revCeiling)) {
    sum += one.share;
  }
  EXPECT_NEAR(sum, assessment(kTarget, out::revCeiling).worst, 1e-9 * sum);
}

TEST(RevCeiling, IsRefusedWhereOneOfItsLinesIs) {
  model::Project project = triple();
  type(project, in::ringWidth, "0.001");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(kTarget, out::ceilingRingFlutter).state, State::Refused);
  EXPECT_EQ(assessment(kTarget, out::revCeiling).state, State::Refused);
  EXPECT_EQ(assessment(kTarget, out::governs).state, State::Refused);
  EXPECT_EQ(assessment(kTarget, out::ceilingPistonSpeed).state, State::Value);
}

TEST(RevCeiling, GoesOnWithoutALineThatWaits) {
  model::Project project = triple();
  type(project, in::ringWidth, "?");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(kTarget, out::ceilingRingFlutter).state, State::Waits);
  ASSERT_EQ(assessment(kTarget, out::revCeiling).state, State::Value);
  EXPECT_EQ(assessment(kTarget, out::revCeiling).value,
            assessment(kTarget, out::ceilingDonor).value);
}

TEST(Spread, OfCylindersMadeAlikeStillHasATolerance) {
  const model::Project project = triple();
  const Assessment assessment(project);
  const describe::Cell& spread = assessment(kTarget, out::deckClearanceSpread);
  ASSERT_NEAR(spread.value, 0.0, 1e-12);  // three spacers for three seats
  EXPECT_GT(spread.likely, 0.00003);      // each seat alone may be 0.03 mm off
}

/// What compares cylinders, by how many are said to be there.
void expectComparisons(std::string_view count, State state) {
  model::Project project = triple();
  for (auto& [input, entry] : std::map(project.engines[kTarget].entries)) {
    if (entry.values.size() < 2) continue;
    describe::Entry one = entry;
    one.values.resize(1);
    project.engines[kTarget].set(*input, one);
  }
  type(project, in::cylinderCount, count);
  type(project, in::seatAcross, "0.02");
  type(project, in::seatAcrossWidth, "60");
  const Assessment assessment(project);
  for (const describe::Result* result :
       {&out::ratioSpread, &out::deckClearanceSpread, &out::seatOffPlane, &out::seatSlopeAlong,
        &out::seatRisePerPitch, &out::taperedSpacer}) {
    EXPECT_EQ(assessment(kTarget, *result).state, state) << result->key << ' ' << count;
    if (state != State::Waits) continue;
    const auto waits = assessment.waitsFor(kTarget, *result);
    EXPECT_EQ(std::ranges::count(waits, &in::cylinderCount, &Assessment::Wait::input), 1);
  }
  EXPECT_EQ(assessment(kTarget, out::seatSlopeAcross).state,
            state == State::None ? State::Value : state);
}

TEST(Comparison, OfOneCylinderMeansNothing) { expectComparisons("1", State::None); }
TEST(Comparison, OfACountNotKnownWaitsForIt) { expectComparisons("", State::Waits); }
TEST(Comparison, OfACountNotReadWaitsForIt) { expectComparisons("tbc", State::Waits); }
TEST(Comparison, OfAnImpossibleCountIsRefused) {
  expectComparisons("0", State::Refused);
  expectComparisons("2.5", State::Refused);
}

}  // namespace
}  // namespace strokewright::assess
