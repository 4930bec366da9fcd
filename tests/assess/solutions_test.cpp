#include <gtest/gtest.h>

#include <numbers>
#include <utility>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::assess {
namespace {

using bench::mm;
using describe::Input;
using describe::Result;
using describe::Sentence;
namespace in = model::in;

constexpr int kTarget = 1;

/// Burdock, its spacer as typed; blank: to make.
class ASolution : public testing::Test {
 protected:
  ASolution() : project_(sample("burdock-719")) {}

  void solveFor(const Result& result, double wanted, const Input& input, std::string_view spacer) {
    type(project_.engines[kTarget], "spacer_m", spacer);
    Assessment assessment(project_);
    describe::Evaluation& evaluation = assessment.evaluation();
    solution_ = solve(evaluation, kTarget, result, 0, wanted, input, -1);
    const std::optional<Sentence> follows =
        whatFollows(evaluation, kTarget, result, 0, solution_, input, -1);
    follows_ = follows ? describe::word(*follows, {}) : "";
  }

  model::Project project_;
  Solution solution_;
  std::string follows_;
};

TEST_F(ASolution, SaysThatTheSpacerToMakeFollows) {
  solveFor(out::deckClearance, 0.25 * mm, in::wantedSquish, "");
  ASSERT_TRUE(solution_.value);
  EXPECT_NEAR(*solution_.value, 1.0 * mm, 1e-9);
  EXPECT_EQ(
      follows_,
      "No spacer is entered: the one to make follows, to 1.13\u00a0mm there. Enter it to hold "
      "it still.");
}

TEST_F(ASolution, StandsStillWhereTheSpacerTakesItUp) {
  solveFor(out::squishGap, 0.8 * mm, in::rodLength, "");
  EXPECT_FALSE(solution_.value);
  EXPECT_TRUE(solution_.still);
  EXPECT_NEAR(solution_.reached, 0.9 * mm, 1e-12);
  EXPECT_EQ(follows_,
            "No spacer is entered: the one to make follows the rod length (centres) and takes up "
            "what it changes. Enter it to hold it still.");
}

TEST_F(ASolution, IsWhereItStandsIfThatIsWanted) {
  solveFor(out::squishGap, 0.9 * mm, in::rodLength, "");
  EXPECT_EQ(solution_.value, project_.engines[kTarget][in::rodLength].values.front());
}

TEST_F(ASolution, IsNoneByWhatTheResultDoesNotRead) {
  solveFor(out::squishGap, 0.9 * mm, in::pistonMass, "");
  EXPECT_FALSE(solution_.value);
  EXPECT_TRUE(solution_.still);
  EXPECT_NEAR(solution_.reached, 0.9 * mm, 1e-12);
  EXPECT_EQ(follows_, "");
}

TEST_F(ASolution, HasNothingThatFollowsUnderASpacerEntered) {
  solveFor(out::squishGap, 0.8 * mm, in::rodLength, "0.95");
  EXPECT_TRUE(solution_.value);
  EXPECT_FALSE(solution_.still);
  EXPECT_EQ(follows_, "");
}

TEST_F(ASolution, BySpacerHasNoneThatFollows) {
  solveFor(out::squishGap, 0.8 * mm, in::spacer, "");
  EXPECT_TRUE(solution_.value);
  EXPECT_EQ(follows_, "");
}

TEST_F(ASolution, OfWhatHasNoSpacerInItHasNothingThatFollows) {
  solveFor(out::rodRatio, 1.9, in::rodLength, "");
  EXPECT_TRUE(solution_.value);
  EXPECT_EQ(follows_, "");
}

TEST_F(ASolution, IsLookedForInAllThatIsPossible) {
  solveFor(out::squishGap, 40 * mm, in::crownRise, "0.95");
  EXPECT_FALSE(solution_.value);
  EXPECT_FALSE(solution_.still);
  EXPECT_TRUE(solution_.everywhere);
  EXPECT_EQ(solution_.from, in::crownRise.possible.least);
  EXPECT_EQ(solution_.to, in::crownRise.possible.most);
}

TEST_F(ASolution, SaysHowFarItLookedWhereTheEntryHasNoLimit) {
  type(project_.engines[kTarget], "cylinder_offset_side", "towards_thrust_side");
  solveFor(out::trueStroke, 60 * mm, in::cylinderOffset, "");
  EXPECT_FALSE(solution_.value);
  EXPECT_FALSE(solution_.everywhere);
  EXPECT_FALSE(solution_.waits);
  EXPECT_EQ(solution_.from, 0.0);
  EXPECT_NEAR(solution_.to, 20 * in::cylinderOffset.usual.most, 1e-12);
}

TEST_F(ASolution, WaitsWhereEveryOtherValueDoes) {
  solveFor(out::trueStroke, 67 * mm, in::cylinderOffset, "");
  EXPECT_FALSE(solution_.value);
  EXPECT_FALSE(solution_.still);
  ASSERT_TRUE(solution_.waits);
  EXPECT_TRUE(
      solution_.waits->missing.own[static_cast<std::size_t>(in::cylinderOffsetSide.number)]);
}

/// By hand: the gap grows one for one with the recess. A target that stands on a flat head has
/// nothing of its own that tells a scale.
TEST(ASolutionByARecess, IsFoundFromAFlatHead) {
  for (const auto& [wanted, recess] :
       {std::pair{1.20, 0.30}, std::pair{4.9, 4.0}, std::pair{45.9, 45.0}}) {
    const model::Project project = sample("tansy-270");
    Assessment assessment(project);
    const Solution solution =
        solve(assessment.evaluation(), kTarget, out::squishGap, 0, wanted * mm, in::headRecess, -1);
    ASSERT_TRUE(solution.value) << wanted;
    EXPECT_NEAR(*solution.value, recess * mm, 1e-9);
    EXPECT_NEAR(solution.reached, wanted * mm, 1e-9);
  }
}

/// By hand: V_c = V_d/(ε − 1). The less is left, the steeper the ratio, up to where nothing is
/// left.
TEST_F(ASolution, IsFoundCloseToWhereTheResultEnds) {
  for (const double ratio : {100.0, 1e4, 1e6}) {
    solveFor(out::compressionRatio, ratio, in::spacer, "0.95");
    ASSERT_TRUE(solution_.value) << ratio;
    EXPECT_NEAR(solution_.reached, ratio, 1e-6 * ratio);
    type(project_.engines[kTarget], "spacer_m", "0.95");
    const Assessment assessment(project_);
    const double swept = assessment(kTarget, out::clearanceVolume).value *
                         (assessment(kTarget, out::compressionRatio).value - 1.0);
    const double bore = 68 * mm;
    const double left = swept / (ratio - 1.0);
    const double less = assessment(kTarget, out::clearanceVolume).value - left;
    EXPECT_NEAR(*solution_.value, 0.95 * mm - less / (std::numbers::pi / 4 * bore * bore), 1e-9);
  }
}

}  // namespace
}  // namespace strokewright::assess
