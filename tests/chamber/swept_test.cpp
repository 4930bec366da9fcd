/// What displacement waits for, and what a class limit that cannot be read does.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>
#include <string_view>
#include <vector>

#include "core/chamber/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::chamber {
namespace {

using namespace bench;
using assess::Assessment;
using assess::type;
using describe::State;
using testing::ElementsAre;

/// A twin of which bore and throw are known and no rod is.
class WithoutARod : public testing::Test {
 protected:
  WithoutARod() {
    project_.engines.emplace_back().part = model::Part::Target;
    type(engine(), "cylinder_count", "2");
    type(engine(), "bore_m", "76 ± 0.01");
    type(engine(), "throw_m", "37.5 ± 0.02");
  }

  model::Engine& engine() { return project_.engines.front(); }

  State stateOf(const describe::Result& result) const {
    const Assessment assessment(project_);
    return assessment(0, result).state;
  }

  /// Keys of the entries a result waits for.
  std::vector<std::string_view> waits(const describe::Result& result) const {
    const Assessment assessment(project_);
    std::vector<std::string_view> keys;
    for (const Assessment::Wait& wait : assessment.waitsFor(0, result)) {
      keys.push_back(wait.input->key);
    }
    return keys;
  }

  model::Project project_;
};

// π/4 · 76² · 75: plane geometry, Heywood ch. 2.
TEST_F(WithoutARod, DisplacementIsKnownWithoutAnOffset) {
  const Assessment assessment(project_);
  const describe::Cell& swept = assessment(0, out::sweptVolume);
  const double expected = std::numbers::pi / 4.0 * 76.0 * 76.0 * 75.0 * 1e-9;
  ASSERT_EQ(swept.state, State::Value);
  EXPECT_NEAR(swept.value, expected, 1e-12 * expected);
  EXPECT_NEAR(assessment(0, out::displacement).value, 2 * expected, 1e-12 * expected);
  EXPECT_THAT(waits(out::trueStroke), ElementsAre("rod_length_m"));
}

// Shares 2 ΔB/B and Δr/r of the volume.
TEST_F(WithoutARod, ItsLimitsAreThoseOfBoreAndThrow) {
  const Assessment assessment(project_);
  const describe::Cell& swept = assessment(0, out::sweptVolume);
  EXPECT_NEAR(swept.worst / swept.value, 2 * 0.01 / 76.0 + 0.02 / 37.5, 1e-7);
}

TEST_F(WithoutARod, ItsWorkingNamesThrowAndNoRod) {
  Assessment assessment(project_);
  const auto working = assessment.evaluation().working(0, out::sweptVolume);
  EXPECT_THAT(working.results, testing::Contains(&out::crankRadius));
  EXPECT_THAT(working.results, testing::Not(testing::Contains(&out::trueStroke)));
}

TEST_F(WithoutARod, DisplacementWaitsForItWithAnOffset) {
  for (const char* offset : {"pin_offset_m", "cylinder_offset_m"}) {
    type(engine(), offset, "0");
    EXPECT_EQ(stateOf(out::displacement), State::Value);
    type(engine(), offset, "0.8");
    EXPECT_THAT(waits(out::sweptVolume), testing::Contains("rod_length_m"));
    type(engine(), offset, "");
  }
}

/// A head lapped to its barrel: no gasket, no bore of one. The bore is asked for where a ± says
/// that there may be one after all.
TEST_F(WithoutARod, AGasketThatIsNotThereNeedsNoBore) {
  type(engine(), "head_gasket_m", "0");
  const Assessment assessment(project_);
  ASSERT_EQ(assessment(0, out::gasketVolume).state, State::Value);
  EXPECT_EQ(assessment(0, out::gasketVolume).value, 0.0);
  EXPECT_EQ(assessment(0, out::gasketVolume).worst, 0.0);
  for (const char* there : {"0.5", "0 ± 0.03"}) {
    type(engine(), "head_gasket_m", there);
    EXPECT_THAT(waits(out::gasketVolume), ElementsAre("head_gasket_bore_m")) << there;
  }
  type(engine(), "head_gasket_m", "");
  EXPECT_THAT(waits(out::gasketVolume), testing::Contains("head_gasket_m"));
}

TEST_F(WithoutARod, AnOffsetThatCannotBeReadIsWaitedFor) {
  type(engine(), "pin_offset_m", "about one");
  EXPECT_THAT(waits(out::sweptVolume), ElementsAre("pin_offset_m"));
}

TEST_F(WithoutARod, WithItTheTrueStrokeIsTheSameToTheLastDigit) {
  type(engine(), "rod_length_m", "140");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(0, out::trueStroke).value, 75 * mm, 1e-15);
}

TEST_F(WithoutARod, AClassLimitThatCannotBeReadIsWaitedFor) {
  EXPECT_EQ(stateOf(out::classMargin), State::None);
  type(engine(), "class_limit_m3", "1.234,5");
  EXPECT_EQ(stateOf(out::classMargin), State::Waits);
  EXPECT_THAT(waits(out::classMargin), ElementsAre("class_limit_m3"));
}

}  // namespace
}  // namespace strokewright::chamber
