#include "core/cutting/cutting.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/compression/results.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::cutting {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using bench::ml;
using bench::mm;
using bench::mm2;
using bench::refusalOf;
using describe::State;
using testing::HasSubstr;

constexpr int kTarget = 1;

// By hand: 1.9 ml over 3800 mm² are half a millimetre.
TEST(Cut, IsVolumeOverArea) {
  EXPECT_NEAR(cutDepth({.volume = 1.9 * ml, .area = 3800 * mm2}), 0.5 * mm, 1e-15);
  EXPECT_NEAR(cutDepth({.volume = -1.9 * ml, .area = 3800 * mm2}), -0.5 * mm, 1e-15);
  EXPECT_TRUE(refusalOf([] { cutDepth({.volume = 1.0, .area = 0.0}); }));
}

TEST(Cut, LeavesTheRest) {
  EXPECT_NEAR(leftAfter(4 * mm, 0.5 * mm), 3.5 * mm, 1e-15);
  EXPECT_EQ(leftAfter(4 * mm, -0.5 * mm), 4 * mm) << "nothing comes off";
}

// Plane geometry: the face can bring a recessed band down by no more than its recess.
TEST(Cut, OfTheFaceBringsARecessedBandDown) {
  EXPECT_EQ(squishAfterSkim(1.0 * mm, 0.0, 0.5 * mm), 1.0 * mm) << "the band is the face";
  EXPECT_NEAR(squishAfterSkim(1.0 * mm, 0.4 * mm, 0.3 * mm), 0.7 * mm, 1e-15);
  EXPECT_NEAR(squishAfterSkim(1.0 * mm, 0.4 * mm, 0.5 * mm), 0.6 * mm, 1e-15);
  EXPECT_EQ(squishAfterSkim(1.0 * mm, 0.4 * mm, -0.5 * mm), 1.0 * mm) << "nothing comes off";
}

TEST(VolumeStep, IsFineForASmallEngine) {
  EXPECT_EQ(volumeStep(34 * ml), 0.1 * ml);
  EXPECT_EQ(volumeStep(9.8 * ml), 0.05 * ml);
  EXPECT_EQ(volumeStep(2.5 * ml), 0.02 * ml);
  EXPECT_EQ(volumeStep(0.3 * ml), 0.01 * ml);
}

/// The twin of 10.787 with a clearance volume of 34.3004 ml and 335.698 ml swept.
class CuttingTheTwin : public testing::Test {
 protected:
  CuttingTheTwin() : project_(sample("tansy-270")) {
    type(target(), "chamber_face_area_m2", "3800");
    type(target(), "head_land_m", "4");
    type(target(), "crown_thickness_m", "6.5");
    type(target(), "crown_cut_area_m2", "3000");
  }
  model::Engine& target() { return project_.engines[kTarget]; }
  void want(const char* ratio) { type(target(), "wanted_compression_ratio", ratio); }
  model::Project project_;
};

// By hand: 335.698/10.5 = 31.9712 ml; 2.3292 ml less; over 3800 mm² 0.6129 mm.
TEST_F(CuttingTheTwin, SkimsTheHeadWhereTheRatioMustRise) {
  want("11.5");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::wantedClearanceVolume).value, 31.9712 * ml, 0.0001 * ml);
  EXPECT_NEAR(assessment(kTarget, out::headSkim).value, 0.6129 * mm, 0.0001 * mm);
  EXPECT_NEAR(assessment(kTarget, out::headLandLeft).value, 3.3871 * mm, 0.0001 * mm);
  EXPECT_LT(assessment(kTarget, out::crownCut).value, 0.0);
  EXPECT_NEAR(assessment(kTarget, out::crownLeft).value, 6.5 * mm, 1e-12) << "nothing comes off";
  EXPECT_EQ(findingOf(assessment, kTarget, "head_land"), nullptr);
  EXPECT_EQ(findingOf(assessment, kTarget, "nothing_off_the_head"), nullptr);
}

// By hand: as above 0.6129 mm come off; a band 0.40 mm deep comes down by all of that.
TEST_F(CuttingTheTwin, WarnsWhereTheSquishGapGoesWithTheFace) {
  want("11.5");
  type(target(), "head_recess_m", "0.40");
  const Assessment assessment(project_);
  const double gap = assessment(kTarget, out::squishGap).value;
  EXPECT_NEAR(assessment(kTarget, out::squishAfterSkim).value, gap - 0.40 * mm, 1e-9);
  const std::string least = std::to_string((gap - 0.39 * mm) / mm);
  type(target(), "squish_least_m", least);
  const Assessment warned(project_);
  const describe::Finding* finding = findingOf(warned, kTarget, "squish_after_skim");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("recessed band"));
  EXPECT_THAT(told(*finding), HasSubstr("gives the gap back"));
}

TEST_F(CuttingTheTwin, ForbidsASkimThatMayCloseTheSquishGap) {
  for (const auto& [key, text] :
       {std::pair{"head_recess_m", "2"}, std::pair{"spacer_m", "-3.30"},
        std::pair{"chamber_face_area_m2", "4400"}, std::pair{"whole_volume_m3", ""},
        std::pair{"squish_least_m", "0.1"}}) {
    type(target(), key, text);
  }
  want("16.4");
  const Assessment assessment(project_);
  const describe::Cell& left = assessment(kTarget, out::squishAfterSkim);
  ASSERT_GT(left.value, 0.1 * mm) << "more than is asked for";
  ASSERT_LT(left.value, left.worst);
  const describe::Finding* finding = findingOf(assessment, kTarget, "squish_after_skim");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("the piston can touch the head"));
}

// By hand: 335.698/9 = 37.2998 ml; 2.9994 ml more; over 3000 mm² 0.9998 mm.
TEST_F(CuttingTheTwin, FacesTheCrownWhereTheRatioMustFall) {
  want("10");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(kTarget, out::crownCut).value, 0.9998 * mm, 0.0001 * mm);
  EXPECT_NEAR(assessment(kTarget, out::crownLeft).value, 5.5002 * mm, 0.0001 * mm);
  EXPECT_NEAR(assessment(kTarget, out::crownLeftShare).value, 5.5002 / 76.0, 1e-5);
  EXPECT_EQ(findingOf(assessment, kTarget, "crown_left"), nullptr);
  const describe::Finding* finding = findingOf(assessment, kTarget, "nothing_off_the_head");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("3.00 ml must be added"));
  EXPECT_THAT(told(*finding), HasSubstr("0.66 mm more of spacer"));
}

TEST_F(CuttingTheTwin, MakesTheRatioItWasAskedFor) {
  want("11.5");
  const double volume = Assessment(project_)(kTarget, out::volumeToTakeAway).value;
  const double chamber = target()[*assess::catalogue().findInput("chamber_volume_m3")].values[0];
  type(target(), "chamber_volume_m3", std::to_string((chamber - volume) / ml));
  EXPECT_NEAR(Assessment(project_)(kTarget, out::compressionRatio).value, 11.5, 1e-6);
}

TEST_F(CuttingTheTwin, ObjectsToAThinLandAndForbidsCuttingIntoTheSeat) {
  want("11.5");
  type(target(), "head_land_m", "2.5");
  {
    const Assessment assessment(project_);
    const describe::Finding* finding = findingOf(assessment, kTarget, "head_land");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr("0.61 mm off the head leave 1.89 mm"));
  }
  type(target(), "head_land_m", "0.5");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "head_land");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
}

// By hand: for 10 the head would have to come up by 2.9994 ml over 3800 mm².
TEST_F(CuttingTheTwin, SaysThatALandThinAsItIsShouldKeepAllItHas) {
  want("10");
  type(target(), "head_land_m", "1.8");
  const Assessment assessment(project_);
  ASSERT_NEAR(assessment(kTarget, out::headSkim).value, -0.7893 * mm, 0.0001 * mm);
  const describe::Finding* finding = findingOf(assessment, kTarget, "head_land");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  EXPECT_THAT(told(*finding), HasSubstr("has 1.80 mm from its face to the valve seat, under 2.00"));
  EXPECT_THAT(told(*finding), HasSubstr("nothing should come off it"));
  EXPECT_THAT(told(*finding), testing::Not(HasSubstr("−0.79")));
}

TEST_F(CuttingTheTwin, ObjectsToAThinCrownAndForbidsCuttingThroughIt) {
  want("10");
  type(target(), "crown_thickness_m", "5.5");
  {
    const Assessment assessment(project_);
    const describe::Finding* finding = findingOf(assessment, kTarget, "crown_left");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr("1.00 mm off the crown leave 4.50 mm, 5.9 %"));
    EXPECT_THAT(told(*finding), HasSubstr("under 6.5 %"));
  }
  type(target(), "crown_thickness_m", "0.8");
  {
    const Assessment assessment(project_);
    const describe::Finding* finding = findingOf(assessment, kTarget, "crown_left");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Forbids);
    EXPECT_THAT(told(*finding), HasSubstr("cut through it"));
  }
  want("11.5");
  type(target(), "crown_thickness_m", "4.5");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kTarget, "crown_left");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("nothing should come off it"));
}

TEST_F(CuttingTheTwin, WaitsForTheRatioThatIsWanted) {
  EXPECT_EQ(Assessment(project_)(kTarget, out::headSkim).state, State::Waits);
  want("1.0");
  EXPECT_EQ(Assessment(project_)(kTarget, out::headSkim).state, State::Refused);
}

TEST_F(CuttingTheTwin, MakesNothingForADonor) {
  EXPECT_EQ(Assessment(project_)(0, out::headSkim).state, State::None);
}

// By hand: 0.1 ml are 0.0263 mm off the head, 0.0333 mm off the crown and 0.0220 mm of spacer, and
// 335.698/34.4004 + 1 = 10.7586.
TEST_F(CuttingTheTwin, IsListedInMillilitresMillimetresAndRatio) {
  Assessment assessment(project_);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::volumeAndRatio);
  ASSERT_EQ(table.state, State::Value);
  ASSERT_EQ(table.rows.size(), 21U);
  EXPECT_NEAR(table.rows["change_m3"].numbers[0], -1.0 * ml, 1e-12);
  EXPECT_NEAR(table.rows["ratio"].numbers[10], 10.787, 0.0005);
  EXPECT_NEAR(table.rows["ratio"].numbers[11], 10.7586, 0.0001);
  EXPECT_NEAR(table.rows["ratio_change"].numbers[11], -0.0284, 0.0001);
  EXPECT_NEAR(table.rows["head_skim_m"].numbers[11], -0.0263 * mm, 0.0001 * mm);
  EXPECT_NEAR(table.rows["crown_cut_m"].numbers[11], 0.0333 * mm, 0.0001 * mm);
  EXPECT_NEAR(table.rows["spacer_m"].numbers[11], 0.0220 * mm, 0.0001 * mm);
}

TEST(VolumeAndRatio, LeavesOutTheCutsWhoseAreaIsNotKnown) {
  const model::Project project = sample("teasel-125");
  Assessment assessment(project);
  const describe::Tabulated table = assessment.evaluation().tabulated(kTarget, out::volumeAndRatio);
  ASSERT_EQ(table.state, State::Value);
  EXPECT_NEAR(table.rows["change_m3"].numbers[20], 0.5 * ml, 1e-12);
  EXPECT_TRUE(std::isnan(table.rows["head_skim_m"].numbers[20]));
  EXPECT_TRUE(std::isfinite(table.rows["head_gasket_m"].numbers[20]));
}

}  // namespace
}  // namespace strokewright::cutting
