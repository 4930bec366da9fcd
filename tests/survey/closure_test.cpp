#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/tabulated.h"
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
  EXPECT_THAT(told(*finding), HasSubstr("The same in every cylinder, so look at what they share:"));
  EXPECT_TRUE(
      told(*finding).ends_with("Was it measured with another spacer or gasket than entered now?"))
      << told(*finding);
}

TEST_F(Closure, SaysWhereTheJointPlusMinusHasThatOfAnInstrumentInIt) {
  measure({0.4, 0.4, 0.4});
  const std::string usual = "with the usual one of the instrument where none is entered";
  const auto finding = [&](const Assessment& assessment) {
    return told(*findingOf(assessment, kDonor, "deck_closure"));
  };
  EXPECT_THAT(finding(Assessment(project_)), testing::Not(HasSubstr(usual)));
  type(donor(), "rod_length_m", "118");
  EXPECT_THAT(finding(Assessment(project_)), HasSubstr(usual));
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

/// t is 12.706 for one degree of freedom and 4.303 for two (JCGM 100:2008, table G.2): the mean of
/// two 0.010 apart scatters by 12.706 · 0.005 = 0.0635, with one midway by 4.303 · 0.005 / √3 =
/// 0.0124; with the ± 0.01 of the instrument 0.0643 and 0.0159, as the root of squares.
TEST_F(Closure, AsksForAThirdReading) {
  type(donor(), "bore_m", "66.00 | 66.01 ± 0.01");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "two_readings");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("± 0.064 mm"));
  EXPECT_THAT(told(*finding), HasSubstr("± 0.016 mm"));
  type(donor(), "bore_m", "66.00 | 66.005 | 66.01 ± 0.01");
  EXPECT_NEAR(donor().entries.at(&model::in::bore).limit(), 0.0159e-3, 0.0001e-3);
  for (const char* fine : {"66.00 | 66.00 ± 0.01", "66.00 | 66.005 | 66.01 ± 0.01", "66.00"}) {
    type(donor(), "bore_m", fine);
    EXPECT_EQ(findingOf(Assessment(project_), kDonor, "two_readings"), nullptr) << fine;
  }
}

TEST_F(Closure, NamesTheReadingThatStandsOut) {
  type(donor(), "chamber_volume_m3", "18.7 | 0.2 to 18.9 | 18.8 | 21.4 ± 0.2");
  const Assessment assessment(project_);
  const describe::Finding* finding = findingOf(assessment, kDonor, "reading_stands_out");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("reading 4 of 4, 21.400 ml"));
  EXPECT_EQ(finding->cylinder, -1) << "one series stands for all";
  type(donor(), "chamber_volume_m3", "18.7; 18.7 | 0.2 to 18.9 | 18.8 | 21.4; 18.8 ± 0.2");
  const Assessment apart(project_);
  EXPECT_EQ(findingOf(apart, kDonor, "reading_stands_out")->cylinder, 1);
}

TEST_F(Closure, LetsOneDivisionOfTheScaleBe) {
  type(donor(), "seat_height_m", "98.12 | 98.12 | 98.13");
  EXPECT_EQ(findingOf(Assessment(project_), kDonor, "reading_stands_out"), nullptr);
  type(donor(), "seat_height_m", "98.12 | 98.12 | 98.21");
  EXPECT_NE(findingOf(Assessment(project_), kDonor, "reading_stands_out"), nullptr);
}

/// The piston rocks: three points alike and the fourth up to four times the dial gauge's 0.01 off
/// still have their mean.
TEST_F(Closure, LetsReadingsDifferThatAreMeantToCancel) {
  type(donor(), "measured_deck_clearance_m", "0.30 | 0.30 | 0.30 | 0.33 ± 0.01");
  {
    const Assessment assessment(project_);
    EXPECT_EQ(findingOf(assessment, kDonor, "reading_stands_out"), nullptr);
    EXPECT_EQ(findingOf(assessment, kDonor, "readings_scatter"), nullptr);
  }
  type(donor(), "measured_deck_clearance_m", "0.30 | 0.30 | 0.30 | 0.36 ± 0.01");
  const Assessment assessment(project_);
  EXPECT_NE(findingOf(assessment, kDonor, "reading_stands_out"), nullptr);
  EXPECT_NE(findingOf(assessment, kDonor, "readings_scatter"), nullptr);
}

/// Without any ± the usual ones count: seat 0.03, barrel 0.02, base gasket 0.03, rod and
/// compression height 0.02 each, half of 0.02 of stroke, dial gauge 0.01: 0.14 in all, 0.055
/// likely.
class ClosureWithoutPlusMinus : public Closure {
 protected:
  ClosureWithoutPlusMinus() {
    for (const auto& [input, entry] : std::vector(donor().entries.begin(), donor().entries.end())) {
      describe::Entry bare = entry;
      bare.plusMinus.reset();
      donor().set(*input, bare);
    }
  }

  const describe::Finding* closureOff(Assessment& assessment) const {
    EXPECT_EQ(assessment(kDonor, out::deckClosure).worst, 0.0);
    return findingOf(assessment, kDonor, "deck_closure");
  }

  void measureBare(const char* added) {
    const Assessment before(project_);
    std::string text;
    for (int i = 0; i < before.evaluation().cylinders(kDonor); ++i) {
      if (i > 0) text += "; ";
      text += std::to_string(before(kDonor, out::deckClearance, i).value * 1e3 + std::stod(added));
    }
    type(donor(), "measured_deck_clearance_m", text);
  }
};

TEST_F(ClosureWithoutPlusMinus, IsNotForbiddenForAHundredth) {
  measureBare("0.01");
  Assessment assessment(project_);
  EXPECT_EQ(closureOff(assessment), nullptr);
}

TEST_F(ClosureWithoutPlusMinus, IsJudgedByWhatTheInstrumentsUsuallyGive) {
  measureBare("0.10");
  {
    Assessment assessment(project_);
    const describe::Finding* finding = closureOff(assessment);
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects) << told(*finding);
  }
  measureBare("0.40");
  Assessment assessment(project_);
  const describe::Finding* finding = closureOff(assessment);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("at worst"));
  EXPECT_THAT(told(*finding), testing::Not(HasSubstr("0.00 mm")));
}

TEST(ClosureOfASingle, SpeaksOfNoOtherCylinder) {
  model::Project project = sample("culvert-1040");
  type(project.engines[kDonor], "measured_deck_clearance_m", "0.40 ± 0.01");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, kDonor, "deck_closure");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), testing::Not(HasSubstr("ylinder")));
  EXPECT_THAT(told(*finding), HasSubstr("Look at the least certain first"));
}

class MeasuredSquish : public testing::Test {
 protected:
  MeasuredSquish() : project_(sample("tansy-270")) {}
  model::Engine& target() { return project_.engines[1]; }
  model::Project project_;
};

// By hand: the sum gives 0.90, at worst 0.15; solder ± 0.02 and half of 0.055 of bearing play make
// 0.1975 at worst, and the root of 0.0557² and 0.02² with that play 0.0867 likely.
TEST_F(MeasuredSquish, ClosesWithTheOneByDimensions) {
  type(target(), "measured_squish_m", "0.93 ± 0.02");
  const Assessment assessment(project_);
  EXPECT_NEAR(assessment(1, out::squishClosure).value, 0.03e-3, 1e-9);
  EXPECT_NEAR(assessment(1, out::squishClosure).worst, 0.17e-3, 1e-9);
  EXPECT_EQ(findingOf(assessment, 1, "squish_closure"), nullptr);
}

TEST_F(MeasuredSquish, ObjectsBeyondTheLikelyAndForbidsBeyondTheWorst) {
  struct Row {
    const char* text;
    std::optional<describe::Weight> weight;
  };
  for (const Row& row :
       {Row{"0.98 ± 0.02", std::nullopt}, Row{"0.99 ± 0.02", describe::Weight::Objects},
        Row{"0.71 ± 0.02", describe::Weight::Objects},
        Row{"0.70 ± 0.02", describe::Weight::Forbids},
        Row{"1.10 ± 0.02", describe::Weight::Forbids}}) {
    SCOPED_TRACE(row.text);
    type(target(), "measured_squish_m", row.text);
    const Assessment assessment(project_);
    const describe::Finding* finding = findingOf(assessment, 1, "squish_closure");
    ASSERT_EQ(finding != nullptr, row.weight.has_value());
    if (finding == nullptr) continue;
    EXPECT_EQ(finding->weight, *row.weight);
    EXPECT_THAT(told(*finding), HasSubstr(" mm by the dimensions"));
    EXPECT_THAT(told(*finding), HasSubstr("look at what they share: crank axis to barrel seat"));
  }
}

TEST_F(MeasuredSquish, ClosesWithNothingBeforeTheSpacerIsEntered) {
  type(target(), "measured_squish_m", "1.10");
  type(target(), "spacer_m", "");
  const Assessment assessment(project_);
  EXPECT_EQ(assessment(1, out::squishClosure).state, describe::State::None);
  EXPECT_EQ(findingOf(assessment, 1, "squish_closure"), nullptr);
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

TEST(Seats, LieAlongTheCrankshaftAsTheyDoWhateverTheyRiseAcross) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[1];
  type(target, "cylinder_pitch_m", "84");
  const Assessment middle(project);
  for (const char* across : {"0", "0.03; 0.04; 0.05"}) {
    type(target, "seat_across_m", across);
    const Assessment assessment(project);
    for (const describe::Result* result :
         {&out::seatLevel, &out::seatSlopeAlong, &out::seatRisePerPitch}) {
      EXPECT_EQ(assessment(1, *result).value, middle(1, *result).value) << result->key;
      EXPECT_EQ(assessment(1, *result).state, describe::State::Value) << "no width is needed";
    }
    describe::Evaluation evaluation = assessment.evaluation();
    EXPECT_EQ(evaluation.tabulated(1, out::seats).state, describe::State::Value);
    EXPECT_EQ(assessment(1, out::seatSlopeAcross).state, describe::State::Waits);
  }
}

TEST(Seats, ThatTiltAcrossAreObjectedTo) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[1];
  type(target, "seat_across_m", "-0.08; -0.09; -0.10");
  type(target, "seat_across_width_m", "100");
  {
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, 1, "seats_tilted_across");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr("seats fall by 0.09 mm in 100 mm towards the thrust"));
    EXPECT_THAT(told(*finding), HasSubstr("over 0.05 mm"));
  }
  type(target, "seat_across_m", "0.03; 0.04; 0.05");
  EXPECT_EQ(findingOf(Assessment(project), 1, "seats_tilted_across"), nullptr);
}

TEST(Seats, OfASingleAreJudgedForTheirTiltToo) {
  model::Project project = sample("tansy-270");
  model::Engine& target = project.engines[1];
  type(target, "cylinder_count", "1");
  type(target, "seat_across_m", "0.07");
  type(target, "seat_across_width_m", "100");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 1, "seats_tilted_across");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("The seat rises by 0.07 mm"));
}

TEST(Seats, StandAtTheirOwnPlacesWherePitchesAreUnequal) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "cylinder_pitch_m", "");
  type(project.engines[1], "cylinder_position_m", "0; 84; 200");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::cylinderPosition, 2).value, 0.2, 1e-12);
}

TEST(Seats, OfASingleNeedNoPitch) {
  const model::Project project = sample("teasel-125");
  Assessment assessment(project);
  const describe::Tabulated told = assessment.evaluation().tabulated(1, out::seats);
  ASSERT_EQ(told.state, describe::State::Value);
  EXPECT_EQ(told.rows["position_m"].numbers[0], 0.0);
  EXPECT_NEAR(told.rows["plane_m"].numbers[0], 84e-3, 1e-12);
}

}  // namespace
}  // namespace strokewright::survey
