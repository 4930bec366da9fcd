#include "core/cranking/cranking.h"

#include <gtest/gtest.h>

#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/ports/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::cranking {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using describe::State;

constexpr double kBar = 1e5;
constexpr int kTarget = 1;

// Common practice, no published source: ratio 9, exponent 1.25, 1 bar of air.
TEST(CrankingPressure, OfRatioNineIsJustUnderFifteenBarOnTheGauge) {
  EXPECT_NEAR(gaugePressure({.ambient = kBar, .ratio = 9.0, .exponent = 1.25}), 14.588 * kBar,
              0.0005 * kBar);
}

TEST(CrankingPressure, IsNoughtWhereNothingIsCompressed) {
  EXPECT_EQ(gaugePressure({.ambient = kBar, .ratio = 1.0, .exponent = 1.25}), 0.0);
}

TEST(CrankingPressure, OfAFourStrokeComesFromItsEffectiveRatio) {
  const model::Project project = sample("tansy-270");
  const Assessment assessment(project);
  const double ratio = assessment(kTarget, out::effectiveCompressionRatio).value;
  EXPECT_DOUBLE_EQ(assessment(kTarget, out::crankingPressure).value,
                   gaugePressure({.ambient = 101325.0, .ratio = ratio, .exponent = 1.25}));
}

// 1.01325 · (7.2435^1.25 − 1) by hand.
TEST(CrankingPressure, OfATwoStrokeComesFromItsTrappedRatio) {
  model::Project project = sample("teasel-125");
  EXPECT_NEAR(Assessment(project)(kTarget, out::crankingPressure).value, 11.027 * kBar,
              0.001 * kBar);
  type(project.engines[kTarget], "exhaust_port_top_m", "");
  EXPECT_EQ(Assessment(project)(kTarget, out::crankingPressure).state, State::Waits);
}

}  // namespace
}  // namespace strokewright::cranking
