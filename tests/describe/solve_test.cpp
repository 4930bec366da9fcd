#include <gtest/gtest.h>

#include <array>

#include "core/assess/assess.h"
#include "tests/describe/toys.h"

namespace strokewright::describe {
namespace {

using assess::Solution;
using assess::solve;
using assess::sweep;
using toys::Engines;

TEST(Solving, FindsTheThinnerMemberOfAChain) {
  // Shigley 9th ed., example 1-3: for a gap of at least 0.003 at worst case, 0.013 ± 0.010.
  const Engines engines = Engines()
                              .enter(toys::x1, {1.750})
                              .enter(toys::x2, {0.750})
                              .enter(toys::x3, {0.120})
                              .enter(toys::x4, {0.875});
  Evaluation evaluation = engines.evaluated();
  const Solution solution = solve(evaluation, 0, toys::difference, 0, 0.013, toys::x4, -1);
  ASSERT_TRUE(solution.value);
  EXPECT_NEAR(*solution.value, 0.867, 1e-12);
  EXPECT_EQ(evaluation.cell(0, toys::difference).value, 1.750 - 0.750 - 0.120 - 0.875)
      << "the evaluation is left alone";
}

TEST(Solving, TakesTheRootNextToWhereItStands) {
  const Engines low = Engines().enter(toys::x1, {-1.5}).enter(toys::x2, {1.0});
  const Engines high = Engines().enter(toys::x1, {1.5}).enter(toys::x2, {1.0});
  for (const auto& [engines, root] : {std::pair{&low, -2.0}, std::pair{&high, 2.0}}) {
    Evaluation evaluation = engines->evaluated();
    const Solution solution = solve(evaluation, 0, toys::squareOver, 0, 4.0, toys::x1, -1);
    ASSERT_TRUE(solution.value);
    EXPECT_NEAR(*solution.value, root, 1e-9);
  }
}

TEST(Solving, StaysWhereTheResultIsMet) {
  const Engines engines = Engines().enter(toys::x1, {3.0}).enter(toys::x2, {1.0});
  Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(solve(evaluation, 0, toys::series, 0, 4.0, toys::x1, -1).value, 3.0);
}

TEST(Solving, SaysWhereItComesNearestWhenNothingDoes) {
  const Engines engines = Engines().enter(toys::x1, {2.0}).enter(toys::x2, {1.0});
  Evaluation evaluation = engines.evaluated();
  const Solution solution = solve(evaluation, 0, toys::squareOver, 0, -1.0, toys::x1, -1);
  EXPECT_FALSE(solution.value);
  EXPECT_LT(std::abs(solution.nearest), 0.5);
  EXPECT_LT(solution.reached, 0.25);
}

TEST(Solving, StaysInsideWhatIsPossible) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {900.0});
  Evaluation evaluation = engines.evaluated();
  const Solution solution = solve(evaluation, 0, toys::sum, 0, 1500.0, toys::part, -1);
  EXPECT_FALSE(solution.value);
  EXPECT_LE(solution.nearest, 1000.0);
  EXPECT_NEAR(solution.reached, 1001.0, 1e-6);
}

TEST(Solving, WorksAcrossRefusals) {
  const Engines engines = Engines().enter(toys::x1, {2.0});
  Evaluation evaluation = engines.evaluated();
  const Solution solution = solve(evaluation, 0, toys::onRest, 0, 4.0, toys::x1, -1);
  ASSERT_TRUE(solution.value);
  EXPECT_NEAR(*solution.value, 10.0, 1e-9);
}

TEST(Solving, MovesOneCylinderAlone) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {5.0, 2.0});
  Evaluation evaluation = engines.evaluated();
  const Solution one = solve(evaluation, 0, toys::total, 0, 20.0, toys::part, 1);
  ASSERT_TRUE(one.value);
  EXPECT_NEAR(*one.value, 13.0, 1e-9);
  const Solution both = solve(evaluation, 0, toys::total, 0, 20.0, toys::part, -1);
  ASSERT_TRUE(both.value);
  EXPECT_NEAR(*both.value, 9.0, 1e-9);
}

TEST(ASweep, LeavesOutWhatIsRefused) {
  const Engines engines = Engines().enter(toys::x1, {2.0});
  Evaluation evaluation = engines.evaluated();
  const std::array at = {0.0, 1.0, 2.0, 5.0};
  const auto points = sweep(evaluation, 0, toys::onRest, 0, toys::x1, -1, at);
  ASSERT_EQ(points.size(), 3U);
  EXPECT_EQ(points[0].input, 1.0);
  EXPECT_EQ(points[0].result, 1.0);
  EXPECT_EQ(points[2].input, 5.0);
  EXPECT_EQ(points[2].result, 3.0);
}

TEST(ASweep, OfWhatWaitsHasNoPoints) {
  const Engines engines = Engines().enter(toys::x1, {2.0});
  Evaluation evaluation = engines.evaluated();
  const std::array at = {1.0, 2.0};
  EXPECT_TRUE(sweep(evaluation, 0, toys::series, 0, toys::x1, -1, at).empty());
}

}  // namespace
}  // namespace strokewright::describe
