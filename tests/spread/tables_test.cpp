#include "core/spread/tables.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::spread {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using bench::mm;
using describe::State;
using describe::Tabulated;

constexpr int kTarget = 1;

/// Every error of the twin's stack is normal with its limit at two sigma, so the gap is normal with
/// half the likely ± as sigma, and 95 in 100 lie within 1.96 of it.
TEST(Likelihood, OfNormalErrorsIsThatOfTheLikelyPlusMinus) {
  const model::Project project = sample("tansy-270");
  Assessment assessment(project);
  const double likely = assessment(kTarget, out::squishGap).likely;
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::likelihood);
  ASSERT_EQ(told.state, State::Value);
  ASSERT_EQ(told.rows.size(), 11U);
  const auto& gaps = told.rows["gap_m"].numbers;
  EXPECT_NEAR(gaps[5], 0.9 * mm, 1e-7) << "the middle one";
  EXPECT_NEAR(gaps[8] - gaps[2], 2.0 * 1.959964 * likely / 2.0, 1e-7) << "from 2.5 to 97.5 %";
}

TEST(Likelihood, OfTheRatioAgreesWithItsLikelyPlusMinus) {
  const model::Project project = sample("tansy-270");
  Assessment assessment(project);
  const describe::Cell& ratio = assessment(kTarget, out::compressionRatio);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::likelihood);
  const auto& ratios = told.rows["ratio"].numbers;
  EXPECT_NEAR(ratios[5], ratio.value, 0.002);
  EXPECT_NEAR((ratios[8] - ratios[2]) / 2.0, 0.98 * ratio.likely, 0.002);
}

TEST(Likelihood, ChangesWithTheShapeOfAPlusMinus) {
  model::Project project = sample("tansy-270");
  for (auto& [input, entry] : project.engines[kTarget].entries) {
    entry.shape = describe::Shape::Rectangular;
  }
  Assessment assessment(project);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::likelihood);
  const auto& gaps = told.rows["gap_m"].numbers;
  // σ of a rectangular error is its limit over √3, not over 2.
  const double sigma = assessment(kTarget, out::squishGap).likely / std::sqrt(3.0);
  EXPECT_NEAR(gaps[8] - gaps[2], 2.0 * 1.96 * sigma, 0.004 * mm);
}

TEST(GapChances, OfAHealthyTripleAreHalfAtTheWantedGapAndNoneAtTheHead) {
  const model::Project project = sample("burdock-719");
  Assessment assessment(project);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::gapChances, 1);
  ASSERT_EQ(told.state, State::Value);
  const auto& chances = told.rows["chance"].numbers;
  EXPECT_LT(chances[0], 1e-9) << "touching";
  EXPECT_NEAR(chances[2], 0.5, 1e-6) << "the second cylinder stands at the gap wanted";
}

TEST(GapHistogram, HoldsAllThatCanBe) {
  const model::Project project = sample("burdock-719");
  Assessment assessment(project);
  for (int i = 0; i < 3; ++i) {
    const Tabulated told = assessment.evaluation().tabulated(kTarget, out::gapHistogram, i);
    ASSERT_EQ(told.rows.size(), 60U);
    EXPECT_NEAR(told.rows["chance"].numbers.sum(), 1.0, 1e-6);
  }
}

TEST(GapHistogram, IsEmptyWhereNothingCarriesAPlusMinus) {
  model::Project project = sample("tansy-270");
  for (auto& [input, entry] : project.engines[kTarget].entries) entry.plusMinus.reset();
  Assessment assessment(project);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::gapHistogram).rows.size(), 0U);
}

TEST(Likelihood, WaitsForWhatTheGapWaitsFor) {
  model::Project project = sample("tansy-270");
  type(project.engines[kTarget], "rod_length_m", "");
  Assessment assessment(project);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::likelihood).state, State::Waits);
}

}  // namespace
}  // namespace strokewright::spread
