#include "core/spread/in_full.h"

#include <gtest/gtest.h>

#include "core/compression/results.h"
#include "core/spread/tables.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::spread {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using bench::mm;

constexpr int kTarget = 1;

// The sum of independent errors by its characteristic function is another way to the same chances.
TEST(InFull, AgreesWithWhatIsFoundInProportion) {
  const model::Project project = sample("tansy-270");
  Assessment assessment(project);
  describe::Evaluation& evaluation = assessment.evaluation();
  const auto full = sampleInFull(evaluation, kTarget, 0, {.count = 16'384});
  ASSERT_TRUE(full);
  const Stack stack = stackOf(evaluation, kTarget, 0);
  const SumSpread gap = gapSpread(stack);
  const RatioSpread ratio(stack);
  for (const double chance : {0.025, 0.5, 0.975}) {
    EXPECT_NEAR(full->gap.quantile(chance), gap.quantile(chance), 0.003 * mm) << chance;
    EXPECT_NEAR(full->ratio.quantile(chance), ratio.quantile(chance), 0.01) << chance;
  }
}

// A square is on average larger than the square of the mean by its variance: with a bore good to
// ±4 mm, two standard deviations, the swept volume gains 4/76² of itself, which nothing that goes
// in proportion shows.
TEST(InFull, SeesWhatIsNotInProportion) {
  model::Project project = sample("tansy-270");
  model::Engine& target = project.engines[kTarget];
  for (auto& [input, entry] : target.entries) entry.plusMinus.reset();
  type(target, "bore_m", "76 ± 4");
  type(target, "spacer_m", "-1.5");  // flush, so that the bore moves nothing but the swept volume
  type(target, "head_gasket_m", "0.80");
  Assessment assessment(project);
  const double straight = assessment(kTarget, out::compressionRatio).value;
  const auto full = sampleInFull(assessment.evaluation(), kTarget, 0, {.count = 65'536});
  ASSERT_TRUE(full);
  const double gained = (full->ratio.mean() - 1.0) / (straight - 1.0) - 1.0;
  EXPECT_NEAR(gained, 4.0 / (76.0 * 76.0), 0.4 * 4.0 / (76.0 * 76.0));
}

TEST(InFull, StopsWhenAsked) {
  const model::Project project = sample("tansy-270");
  Assessment assessment(project);
  EXPECT_FALSE(sampleInFull(assessment.evaluation(), kTarget, 0,
                            {.count = 1'000'000, .proceed = [](double) { return false; }}));
}

}  // namespace
}  // namespace strokewright::spread
