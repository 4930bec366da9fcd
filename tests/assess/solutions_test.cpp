#include <gtest/gtest.h>

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

}  // namespace
}  // namespace strokewright::assess
