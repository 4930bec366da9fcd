#include <gtest/gtest.h>

#include <array>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/plate/results.h"
#include "core/survey/results.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::plate {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::type;
using bench::mm;

constexpr int kTarget = 1;

/// The triple with three unlike seats; no spacer entered, so that each cylinder is counted with its
/// own.
class PlatesOfTheTriple : public testing::Test {
 protected:
  PlatesOfTheTriple() : project_(sample("burdock-719")) {
    type(project_.engines[kTarget], "spacer_m", "");
    type(project_.engines[kTarget], "cylinder_pitch_m", "84");
  }
  model::Project project_;
};

// Worked out by hand: the cylinders need 1.03, 0.95 and 0.86 for 0.90.
TEST_F(PlatesOfTheTriple, OneFlatPlateLiesInTheMiddleOfWhatTheyNeed) {
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::flatSpacer).value, 0.945 * mm, 1e-9);
  constexpr std::array kGaps = {0.815, 0.895, 0.985};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(assessment(kTarget, out::squishWithFlat, i).value,
                kGaps[static_cast<std::size_t>(i)] * mm, 1e-9);
  }
}

// The conversion's own figures for a flat plate of 0.95: ratios 11.33, 11.20 and 11.06.
TEST_F(PlatesOfTheTriple, AFlatPlateLeavesRatiosApart) {
  type(project_.engines[kTarget], "spacer_m", "0.95");
  const Assessment assessment(project_);
  constexpr std::array kRatios = {11.33, 11.20, 11.06};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(assessment(kTarget, out::compressionRatio, i).value,
                kRatios[static_cast<std::size_t>(i)], 0.006);
    // Half a hundredth under 0.95 moves the ratio by 0.0078.
    EXPECT_NEAR(assessment(kTarget, out::ratioWithFlat, i).value,
                kRatios[static_cast<std::size_t>(i)] + 0.008, 0.007);
  }
}

TEST_F(PlatesOfTheTriple, ATaperedPlateFollowsTheTrend) {
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::taperedSpacer, 0).value, (0.94667 + 0.085) * mm, 1e-7);
  EXPECT_NEAR(assessment(kTarget, out::taperedSpacer, 2).value, (0.94667 - 0.085) * mm, 1e-7);
  EXPECT_NEAR(assessment(kTarget, out::taperAtFirst).value, (0.94667 + 0.085) * mm, 1e-7);
  const double pitch = assessment(kTarget, out::cylinderPosition, 1).value;
  EXPECT_NEAR(assessment(kTarget, out::taperAlong).value * pitch, -0.085 * mm, 1e-9);
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(assessment(kTarget, out::squishWithTaper, i).value, 0.9 * mm, 0.004 * mm);
  }
}

TEST_F(PlatesOfTheTriple, AreComparedCylinderByCylinder) {
  Assessment assessment(project_);
  const describe::Tabulated told = assessment.evaluation().tabulated(kTarget, out::platesCompared);
  ASSERT_EQ(told.state, describe::State::Value);
  ASSERT_EQ(told.rows.size(), 9U);
  EXPECT_EQ(told.rows["plate"].words.front(), "flat");
  EXPECT_NEAR(told.rows["squish_m"].numbers[8], 0.9 * mm, 1e-9) << "one for each";
}

TEST_F(PlatesOfTheTriple, AreNotServedByOneFlatPlateAtThisSpread) {
  const Assessment assessment(project_);
  EXPECT_EQ(findingOf(assessment, kTarget, "one_flat_plate_serves"), nullptr);
}

TEST_F(PlatesOfTheTriple, AreServedByOneWhereTheSeatsLieCloser) {
  type(project_.engines[kTarget], "seat_height_m", "98.18; 98.20; 98.23 ± 0.03");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "one_flat_plate_serves");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
}

TEST(Plate, OfASingleIsTheSpacerToMake) {
  const model::Project project = sample("teasel-125");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(kTarget, out::flatSpacer).value, 1.4 * mm, 1e-9);
  EXPECT_EQ(assessment(kTarget, out::taperedSpacer).state, describe::State::None);
}

}  // namespace
}  // namespace strokewright::plate
