#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/survey/results.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::survey {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using testing::HasSubstr;

constexpr int kDonor = 0;

class Closure : public testing::Test {
 protected:
  Closure() : project_(sample("burdock-719")) {}

  model::Engine& donor() { return project_.engines[kDonor]; }

  /// Clearances that close exactly, with this much added in each cylinder [mm].
  void measure(const std::vector<double>& added) {
    const Assessment before(project_);
    std::string text;
    for (int i = 0; i < 3; ++i) {
      if (i > 0) text += "; ";
      const double exact = before(kDonor, out::deckClearance, i).value * 1e3;
      text += std::to_string(exact + added[static_cast<std::size_t>(i)]);
    }
    type(donor(), "measured_deck_clearance_m", text + " ± 0.01");
  }

  model::Project project_;
};

TEST_F(Closure, IsNoughtWhereBothWaysAgree) {
  measure({0.0, 0.0, 0.0});
  const Assessment assessment(project_);
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(assessment(kDonor, out::deckClosure, i).value, 0.0, 1e-9);
    EXPECT_GT(assessment(kDonor, out::deckClosure, i).worst, 0.05e-3);
  }
  EXPECT_EQ(findingOf(assessment, kDonor, "deck_closure"), nullptr);
}

TEST_F(Closure, ForbidsBeyondTheWorstCaseAndNamesWhatAllShare) {
  measure({0.4, 0.4, 0.4});
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "deck_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("differ by 0.40 mm"));
  EXPECT_THAT(told(*finding), HasSubstr("The same in every cylinder"));
}

TEST_F(Closure, BlamesOneCylinderWhereOnlyThatOneIsOff) {
  measure({0.0, 0.0, 0.4});
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "deck_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("in cylinder 3"));
  EXPECT_THAT(told(*finding), HasSubstr("Not in every cylinder"));
  EXPECT_THAT(told(*finding), HasSubstr("deck clearance, measured"));
}

TEST_F(Closure, ObjectsBetweenLikelyAndWorst) {
  const Assessment before(project_);
  measure({0.12, 0.12, 0.12});
  const Assessment assessment(project_);
  const describe::Cell& cell = assessment(kDonor, out::deckClosure, 0);
  ASSERT_GT(0.12e-3, cell.likely);
  ASSERT_LT(0.12e-3, cell.worst);
  EXPECT_EQ(findingOf(assessment, kDonor, "deck_closure")->weight, describe::Weight::Objects);
}

TEST_F(Closure, OfReadingsThatRockAsksForThePinAxis) {
  measure({0.0, 0.0, 0.0});
  type(donor(), "measured_deck_clearance_m", "0.35 | 0.75 | 0.36 | 0.74 ± 0.01");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "readings_scatter");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("differ by 0.400 mm"));
  EXPECT_THAT(told(*finding), HasSubstr("over the pin axis"));
}

TEST_F(Closure, NamesTheReadingThatStandsOut) {
  type(donor(), "chamber_volume_m3", "18.7 | 0.2 to 18.9 | 18.8 | 21.4 ± 0.2");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "reading_stands_out");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("reading 4 of 4, 21.400 ml"));
}

TEST(Seats, OfTheTripleRiseByTheTrendOfItsReadings) {
  model::Project project = sample("burdock-719");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::seatRisePerPitch).value, 0.085e-3, 1e-9);
  EXPECT_NEAR(assessment(1, out::seatSlopeAlong).value, 0.085 / 84.0, 1e-9);
  EXPECT_EQ(findingOf(assessment, 1, "seats_out_of_parallel"), nullptr)
      << "said already: they lie too far apart";
}

TEST(Seats, ThatLieCloserAreObjectedToForTheirSlope) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "seat_height_m", "98.14; 98.20; 98.28");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 1, "seats_out_of_parallel");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("0.07 mm per cylinder"));
}

TEST(Seats, TellTheTiltAcrossWhereBothSidesWereRead) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[1];
  type(target, "cylinder_pitch_m", "84");
  type(target, "seat_across_m", "0.03; 0.04; 0.05");
  type(target, "seat_across_width_m", "100");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::seatSlopeAcross).value, 0.04 / 100.0, 1e-9);
  EXPECT_NEAR(assessment(1, out::seatRisePerPitch).value, 0.085e-3, 1e-9);
}

TEST(Seats, StandAtTheirOwnPlacesWherePitchesAreUnequal) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "cylinder_pitch_m", "");
  type(project.engines[1], "cylinder_position_m", "0; 84; 200");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::cylinderPosition, 2).value, 0.2, 1e-12);
}

}  // namespace
}  // namespace strokewright::survey
