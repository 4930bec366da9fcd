#include "core/choice/tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::choice {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using bench::mm;
using describe::State;
using describe::Tabulated;
namespace list = model::list;

constexpr int kTarget = 1;

void put(describe::Entries& item, const describe::Input& column, std::string_view text) {
  item[&column] = model::entryFrom(column, text, units::UnitGroup::metric());
}

void addPart(model::Project& project, std::string_view role, std::string_view thickness,
             std::string_view bore = "") {
  describe::Entries item;
  put(item, list::partRole, role);
  put(item, list::partThickness, thickness);
  if (!bore.empty()) put(item, list::partBore, bore);
  project.lists[&list::shelf].push_back(item);
}

/// The stationary single with its three head gaskets on the shelf and nothing else.
class ShelfOfTheSingle : public testing::Test {
 protected:
  ShelfOfTheSingle() : project_(sample("culvert-1040")) {
    project_.lists.clear();
    for (const char* thickness : {"1.20 ± 0.03", "1.30 ± 0.03", "1.40 ± 0.03"}) {
      addPart(project_, "head gasket", thickness, "106.5");
    }
    type(project_.engines[kTarget], "wanted_squish_m", "0.95");
    type(project_.engines[kTarget], "squish_least_m", "0.85");
  }
  /// What the table of lost stacks says of lines that are not laid.
  static std::string leftOut(Assessment& assessment) {
    const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stacksLost);
    for (const std::string& why : told.rows["why"].words) {
      if (why.starts_with("not laid")) return why;
    }
    return "";
  }
  model::Project project_;
};

// The conversion's own figures: 0.90, 1.00 and 1.10 with ratios 17.55, 17.32 and 17.09.
TEST_F(ShelfOfTheSingle, RanksItsGasketsByNearness) {
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.state, State::Value);
  ASSERT_EQ(told.rows.size(), 3U);
  const auto& gaps = told.rows["squish_m"].numbers;
  const auto& ratios = told.rows["ratio"].numbers;
  const auto& atWorst = told.rows["squish_at_worst_m"].numbers;
  // 1.00 and 0.90 are as near to 0.95: the larger gap comes first.
  constexpr double kExpected[][3] = {{1.00, 0.87, 17.32}, {0.90, 0.77, 17.55}, {1.10, 0.97, 17.09}};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(gaps[i], kExpected[i][0] * mm, 1e-9);
    EXPECT_NEAR(atWorst[i], kExpected[i][1] * mm, 1e-9);
    EXPECT_NEAR(ratios[i], kExpected[i][2], 0.005);
  }
}

// The conversion's own figures: 0.90 ± 0.13 comes down to 0.77.
TEST_F(ShelfOfTheSingle, KeepsTheGapAtWorstThatWasDecided) {
  type(project_.engines[kTarget], "squish_least_at_worst_m", "0.85");
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.rows.size(), 2U);
  EXPECT_NEAR(told.rows["head_gasket_m"].numbers[0], 1.30 * mm, 1e-12);
  const Tabulated lost = assessment.evaluation().tabulated(kTarget, out::stacksLost);
  ASSERT_EQ(lost.rows.size(), 1U);
  EXPECT_EQ(lost.rows["why"].words[0], "gap at worst under the least");

  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_EQ(beaten.state, State::Value);
  ASSERT_EQ(beaten.rows.size(), 1U);
  EXPECT_EQ(beaten.rows["place"].numbers[0], 1.0);
  EXPECT_EQ(beaten.rows["cylinders"].words[0], "all");
  EXPECT_EQ(beaten.rows["why"].words[0], "gap at worst under the least");
  EXPECT_NEAR(beaten.rows["head_gasket_m"].numbers[0], 1.20 * mm, 1e-12);
  EXPECT_NEAR(beaten.rows["squish_m"].numbers[0], 0.90 * mm, 1e-9);
  EXPECT_NEAR(beaten.rows["gap_is_m"].numbers[0], 0.77 * mm, 1e-9);
  EXPECT_NEAR(beaten.rows["gap_limit_m"].numbers[0], 0.85 * mm, 1e-9);
  EXPECT_TRUE(std::isnan(beaten.rows["ratio_is"].numbers[0]));
  EXPECT_TRUE(std::isnan(beaten.rows["parts_needed"].numbers[0]));
}

TEST_F(ShelfOfTheSingle, TellsTheNearestThatLostByTheirRatio) {
  type(project_.engines[kTarget], "ratio_least", "17.2");
  type(project_.engines[kTarget], "ratio_most", "17.4");
  Assessment assessment(project_);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_EQ(beaten.rows.size(), 2U);
  EXPECT_EQ(beaten.rows["why"].words[0], "ratio over the most");
  EXPECT_NEAR(beaten.rows["ratio_is"].numbers[0], 17.55, 0.005);
  EXPECT_EQ(beaten.rows["ratio_limit"].numbers[0], 17.4);
  EXPECT_EQ(beaten.rows["why"].words[1], "ratio under the least");
  EXPECT_NEAR(beaten.rows["ratio_is"].numbers[1], 17.09, 0.005);
  EXPECT_EQ(beaten.rows["ratio_limit"].numbers[1], 17.2);
}

TEST_F(ShelfOfTheSingle, OffersNoneThatHasRunOut) {
  std::vector<describe::Entries>& shelf = project_.lists[&list::shelf];
  put(shelf[1], list::partQuantity, "0");
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.rows.size(), 2U);
  EXPECT_NEAR(told.rows["head_gasket_m"].numbers[0], 1.20 * mm, 1e-12);
  EXPECT_NEAR(told.rows["head_gasket_m"].numbers[1], 1.40 * mm, 1e-12);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_EQ(beaten.rows.size(), 1U);
  EXPECT_EQ(beaten.rows["parts_needed"].numbers[0], 1.0);
  EXPECT_EQ(beaten.rows["parts_there"].numbers[0], 0.0);
}

TEST_F(ShelfOfTheSingle, FindsTheNearestHoweverFarTheyLie) {
  addPart(project_, "head gasket", "6.00 ± 0.03", "106.5");
  addPart(project_, "head gasket", "9.00 ± 0.03", "106.5");
  Assessment assessment(project_);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_EQ(beaten.rows.size(), 2U);
  EXPECT_NEAR(beaten.rows["squish_m"].numbers[0], 5.70 * mm, 1e-9);
  EXPECT_NEAR(beaten.rows["squish_m"].numbers[1], 8.70 * mm, 1e-9);
  EXPECT_EQ(beaten.rows["why"].words[1], "gap over the most");
  EXPECT_NEAR(beaten.rows["gap_is_m"].numbers[1], 8.70 * mm, 1e-9);
}

TEST_F(ShelfOfTheSingle, HasNoLoserWhereAllAreOnTheList) {
  Assessment assessment(project_);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::stacksBeaten).rows.size(), 0U);
}

TEST_F(ShelfOfTheSingle, HoldsToTheFewestBaseGaskets) {
  addPart(project_, "base gasket", "0.10 ± 0.01");
  type(project_.engines[kTarget], "base_gaskets_least", "1");
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_GT(told.rows.size(), 0U);
  EXPECT_FALSE(told.rows["base_gasket_m"].numbers.isNaN().any());
}

/// Cylinders that differ: the triple on the shelf of its sample, which has one of each plate.
class ShelfOfTheTriple : public testing::Test {
 protected:
  ShelfOfTheTriple() : project_(sample("burdock-719")) {
    type(project_.engines[kTarget], "plates_in_stack", "one_for_each");
    type(project_.engines[kTarget], "gaskets_in_stack", "mixed");
  }
  model::Project project_;
};

TEST_F(ShelfOfTheTriple, WhatIsADifferenceIsNotCalledAGap) {
  type(project_.engines[kTarget], "gaskets_in_stack", "same_in_all");
  Assessment assessment(project_);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  int apart = 0;
  for (std::size_t i = 0; i < beaten.rows.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    if (!beaten.rows["why"].words[i].starts_with("gaps too far apart")) continue;
    ++apart;
    EXPECT_TRUE(std::isnan(beaten.rows["gap_is_m"].numbers[row]));
    EXPECT_GT(beaten.rows["gap_apart_m"].numbers[row],
              beaten.rows["gap_apart_limit_m"].numbers[row]);
  }
  EXPECT_GT(apart, 0);
}

/// The least gap gives the most ratio: one is not to be read beside the other.
TEST_F(ShelfOfTheTriple, TellsOfALoserFromWhatToWhatCylindersWithTheSamePartsGo) {
  model::Engine& engine = project_.engines[kTarget];
  type(engine, "plates_in_stack", "one_for_all");
  type(engine, "gaskets_in_stack", "same_in_all");
  type(engine, "deck_spread_m", "0.01");
  Assessment assessment(project_);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_GT(beaten.rows.size(), 0U);
  EXPECT_EQ(beaten.rows["cylinders"].words[0], "all");
  const double apart = beaten.rows["squish_most_m"].numbers[0] - beaten.rows["squish_m"].numbers[0];
  EXPECT_NEAR(apart, beaten.rows["gap_apart_m"].numbers[0], 1e-9);
  EXPECT_GT(beaten.rows["ratio_most"].numbers[0], beaten.rows["ratio"].numbers[0]);
}

TEST_F(ShelfOfTheTriple, ObjectsToLimitsThatExcludeEachOther) {
  model::Engine& engine = project_.engines[kTarget];
  type(engine, "squish_least_m", "1.4");
  type(engine, "squish_most_m", "1.0");
  const Assessment gaps(project_);
  const describe::Finding* finding = findingOf(gaps, kTarget, "choice_limits_exclude");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(assess::told(*finding), testing::HasSubstr("1.40 mm, is over"));
  type(engine, "squish_most_m", "1.4");
  EXPECT_EQ(findingOf(Assessment(project_), kTarget, "choice_limits_exclude"), nullptr);
  type(engine, "ratio_least", "10");
  type(engine, "ratio_most", "9");
  EXPECT_NE(findingOf(Assessment(project_), kTarget, "choice_limits_exclude"), nullptr);
}

TEST_F(ShelfOfTheTriple, TellsOfALoserWhatEachCylinderWouldGet) {
  std::vector<describe::Entries>& shelf = project_.lists[&list::shelf];
  for (describe::Entries& item : shelf) put(item, list::partQuantity, "1");
  Assessment assessment(project_);
  const Tabulated beaten = assessment.evaluation().tabulated(kTarget, out::stacksBeaten);
  ASSERT_EQ(beaten.state, State::Value);
  ASSERT_GE(beaten.rows.size(), 12U);
  EXPECT_EQ(beaten.rows["place"].numbers.maxCoeff(), 12.0);
  EXPECT_THAT(beaten.rows["why"].words[0],
              testing::MatchesRegex(
                  "too few of a part: (plate|base gasket or shim|head gasket), shelf line [0-9]+"));
  EXPECT_GT(beaten.rows["parts_needed"].numbers[0], beaten.rows["parts_there"].numbers[0]);
  EXPECT_EQ(beaten.rows["parts_there"].numbers[0], 1.0);
}

// 2.4 million sets for each cylinder, very many as near as can be.
TEST_F(ShelfOfTheTriple, SaysWhichSearchStopped) {
  const auto stopped = [&] {
    Assessment assessment(project_);
    const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stacksLost);
    EXPECT_EQ(told.state, State::Value);
    std::vector<std::string> words = told.rows["why"].words;
    std::erase_if(words,
                  [](const std::string& why) { return why.find("stopped") == std::string::npos; });
    return words;
  };
  EXPECT_THAT(stopped(), testing::IsEmpty());

  const auto hundredths = [](int from, int steps) {
    return std::to_string(0.01 * (from + steps)).substr(0, 4);
  };
  project_.lists[&list::shelf].clear();
  for (int i = 0; i < 70; ++i) addPart(project_, "base gasket", hundredths(10, i));
  for (int i = 0; i < 30; ++i) addPart(project_, "plate", hundredths(50, i));
  for (int i = 0; i < 30; ++i) addPart(project_, "head gasket", hundredths(40, i), "69.5");
  EXPECT_THAT(stopped(),
              testing::ElementsAre("the search stopped; others as near may exist, none nearer",
                                   "the search of the nearest that lost stopped; others as near "
                                   "may exist, none nearer"));
}

TEST_F(ShelfOfTheSingle, SaysWhyTheOthersLost) {
  type(project_.engines[kTarget], "squish_least_m", "0.95");
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stacksLost);
  ASSERT_EQ(told.rows.size(), 1U);
  EXPECT_EQ(told.rows["why"].words[0], "gap under the least");
  EXPECT_EQ(told.rows["stacks"].numbers[0], 1.0);
}

/// What the page says below its answer, and the mark behind it.
std::vector<std::string> notesOn(Assessment& assessment) {
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::choiceNotes);
  EXPECT_EQ(told.state, State::Value);
  std::vector<std::string> notes;
  for (std::size_t row = 0; row < told.rows.size(); ++row) {
    describe::Finding note;
    note.says = noteIn(told.rows, row);
    notes.push_back(assess::told(note));
  }
  return notes;
}

TEST_F(ShelfOfTheSingle, HasNothingToNoteWhereStacksFit) {
  Assessment assessment(project_);
  EXPECT_THAT(notesOn(assessment), testing::IsEmpty());
}

// The conversion's own figures: 0.90, 1.00 and 1.10; 1.10 comes nearest to 1.20.
TEST_F(ShelfOfTheSingle, NamesTheLimitThatKeepsTheNearestOut) {
  type(project_.engines[kTarget], "squish_least_m", "1.20");
  type(project_.engines[kTarget], "wanted_squish_m", "1.25");
  Assessment assessment(project_);
  EXPECT_THAT(
      notesOn(assessment),
      testing::ElementsAre("Gap under the least: 1.10 mm, limit 1.20 mm (place 1 of those that "
                           "lost). | "));
}

TEST_F(ShelfOfTheSingle, NamesThePartThatHasRunOut) {
  for (describe::Entries& item : project_.lists[&list::shelf]) put(item, list::partQuantity, "0");
  Assessment assessment(project_);
  EXPECT_THAT(notesOn(assessment),
              testing::ElementsAre(testing::AllOf(
                  testing::StartsWith("Too few of a part: head gasket, shelf line "),
                  testing::EndsWith(": 1, limit 0 (place 1 of those that lost). | "))));
}

TEST_F(ShelfOfTheTriple, CountsAPartThatServesAllOnce) {
  std::vector<describe::Entries>& shelf = project_.lists[&list::shelf];
  const auto fits = [&] {
    Assessment assessment(project_);
    return assessment.evaluation().tabulated(kTarget, out::stackChoices).rows.size() > 0;
  };
  const auto putIntoHeadGaskets = [&](const describe::Input& column, const char* text) {
    for (describe::Entries& item : shelf) {
      const double role = item.at(&list::partRole).values.front();
      if (role == model::answer(model::PartRole::HeadGasket)) put(item, column, text);
    }
  };
  putIntoHeadGaskets(list::partQuantity, "1");
  EXPECT_FALSE(fits()) << "one for each cylinder";
  putIntoHeadGaskets(list::partServes, "one for all");
  EXPECT_TRUE(fits());
}

// Where parts may differ from cylinder to cylinder, and where they may not.
TEST_F(ShelfOfTheTriple, TheReasonItNamesStandsInBothTables) {
  model::Engine& engine = project_.engines[kTarget];
  type(engine, "squish_least_m", "1.2");
  type(engine, "squish_most_m", "1.25");
  type(engine, "deck_spread_m", "0.01");
  int unfit = 0;
  for (const char* plates : {"one_for_all", "one_for_each"}) {
    for (const char* gaskets : {"same_in_all", "mixed"}) {
      for (const char* count : {"1", ""}) {
        SCOPED_TRACE(testing::Message() << plates << ' ' << gaskets << ' ' << count);
        type(engine, "plates_in_stack", plates);
        type(engine, "gaskets_in_stack", gaskets);
        for (describe::Entries& item : project_.lists[&list::shelf]) {
          put(item, list::partQuantity, count);
        }
        Assessment assessment(project_);
        const auto table = [&](const describe::Table& of) {
          return assessment.evaluation().tabulated(kTarget, of);
        };
        if (table(out::stackChoices).rows.size() > 0) continue;
        ++unfit;
        const Tabulated notes = table(out::choiceNotes);
        ASSERT_GE(notes.rows.size(), 1U);
        const std::string& says = notes.rows["says"].words[0];
        const std::size_t flat = says.find("gaps too far apart");
        const std::string reason = flat != std::string::npos
                                       ? says.substr(flat)
                                       : says.substr(0, says.find_first_of(",:"));
        EXPECT_THAT(table(out::stacksLost).rows["why"].words,
                    testing::Contains(testing::HasSubstr(reason)));
        const Tabulated beaten = table(out::stacksBeaten);
        const double place = notes.rows["place"].numbers[0];
        for (std::size_t row = 0; row < beaten.rows.size(); ++row) {
          const double at = beaten.rows["place"].numbers[static_cast<Eigen::Index>(row)];
          if (!std::isnan(place) && at != place) continue;
          EXPECT_EQ(beaten.rows["why"].words[row], std::isnan(place) ? reason : says);
        }
      }
    }
  }
  EXPECT_GE(unfit, 4);
}

// Seats 0.135 apart, measured; one flat plate can take none of it up. Many stacks lack parts as
// well.
TEST_F(ShelfOfTheTriple, NamesTheFlatPlateWhereTheSeatsLieApart) {
  model::Engine& engine = project_.engines[kTarget];
  type(engine, "plates_in_stack", "one_for_all");
  type(engine, "gaskets_in_stack", "same_in_all");
  type(engine, "seat_height_m", "98.12; 98.18; 98.255");
  for (describe::Entries& item : project_.lists[&list::shelf]) put(item, list::partQuantity, "1");
  Assessment assessment(project_);
  const std::vector<std::string> notes = notesOn(assessment);
  ASSERT_EQ(notes.size(), 1U);
  EXPECT_THAT(notes.front(),
              testing::StartsWith(
                  "One flat plate leaves the gaps too far apart: 0.135 mm, limit 0.05 mm."));
  EXPECT_THAT(notes.front(), testing::HasSubstr("May help: plates: one for each."));
  const Tabulated lost = assessment.evaluation().tabulated(kTarget, out::stacksLost);
  EXPECT_THAT(lost.rows["why"].words, testing::ElementsAre("gaps too far apart"));
}

TEST_F(ShelfOfTheSingle, PutsAStackIntoTheEntriesAsText) {
  Assessment assessment(project_);
  describe::Evaluation& evaluation = assessment.evaluation();
  const Tabulated told = evaluation.tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.state, State::Value);
  Question question{.shelf = {{.role = Role::HeadGasket, .thickness = 1.3 * mm, .bore = 106.5 * mm},
                              {.role = Role::Plate, .thickness = 0.95 * mm},
                              {.role = Role::Plate, .thickness = 1.05 * mm}},
                    .cylinders = {},
                    .wants = {}};
  Stack stack;
  for (const int plate : {1, 2}) {
    stack.cylinders.push_back({.set = {.plate = plate, .headGasket = 0}});
  }
  bool spacerSaid = false;
  for (const auto& [input, text] : entriesOf(question, stack)) {
    if (input == &model::in::spacer) {
      spacerSaid = true;
      EXPECT_EQ(model::entryFrom(*input, text, units::UnitGroup::metric()).values,
                (std::vector{0.95e-3, 1.05e-3}))
          << text;
    }
    if (input == &model::in::headGasket) {
      EXPECT_EQ(model::entryFrom(*input, text, units::UnitGroup::metric()).values,
                std::vector{1.3e-3});
    }
  }
  EXPECT_TRUE(spacerSaid);
}

TEST_F(ShelfOfTheSingle, PassesOverWhatIsNotAPartYet) {
  addPart(project_, "head gasket", "tbc", "106.5");
  addPart(project_, "head gasket", "1.35");
  Assessment assessment(project_);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::stackChoices).rows.size(), 3U);
  std::vector<std::string> said;
  for (const describe::Finding& finding : assessment.findings(kTarget)) {
    if (finding.key == "incomplete_parts") said.push_back(assess::told(finding));
  }
  EXPECT_THAT(said, testing::ElementsAre(testing::HasSubstr("Line 5 of the shelf")));
  EXPECT_EQ(leftOut(assessment), "not laid for what is entered in it: line 4, 5");
}

/// What is typed wrongly in the second line of three.
struct WrongRow {
  const describe::Input* column;
  std::string_view text;
  std::string_view rule;
  describe::Weight weight;
  std::string_view says;
};

class AWrongLineOfTheShelf : public ShelfOfTheSingle,
                             public testing::WithParamInterface<WrongRow> {};

TEST_P(AWrongLineOfTheShelf, IsToldInFullAndNotLaid) {
  const auto& [column, text, rule, weight, says] = GetParam();
  put(project_.lists[&list::shelf][1], *column, text);
  Assessment assessment(project_);
  const describe::Finding* finding = assess::findingOf(assessment, kTarget, rule, column->key);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, weight);
  EXPECT_EQ(finding->list, &list::shelf);
  EXPECT_EQ(finding->item, 1);
  EXPECT_THAT(assess::told(*finding), testing::StartsWith(std::string(says)));
  EXPECT_TRUE(finding->mends.empty()) << "a mend would be typed into the engine";
  for (const describe::Finding& of : assessment.findings(0)) {
    EXPECT_EQ(of.list, nullptr) << "said once, of what is built";
  }
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.rows.size(), 2U);
  EXPECT_NEAR(told.rows["head_gasket_m"].numbers[0], 1.20 * mm, 1e-12);
  EXPECT_EQ(leftOut(assessment), "not laid for what is entered in it: line 2");
}

constexpr auto kForbids = describe::Weight::Forbids;
constexpr auto kObjects = describe::Weight::Objects;
INSTANTIATE_TEST_SUITE_P(
    Lines, AWrongLineOfTheShelf,
    testing::Values(
        WrongRow{&list::partQuantity, "1.5", "impossible", kForbids,
                 "How many, line 2 of the shelf: 1.5 cannot be, it is a whole number from 0 to "
                 "1000. | The part is left out of the choice."},
        WrongRow{&list::partQuantity, "-2", "impossible", kForbids,
                 "How many, line 2 of the shelf: −2 cannot be"},
        WrongRow{&list::partQuantity, "two", "not_a_number_yet", kObjects,
                 "How many, line 2 of the shelf: “two” cannot be read as a number."},
        WrongRow{&list::partThickness, "-1", "impossible", kForbids,
                 "Thickness, compressed, line 2 of the shelf: −1.00 mm cannot be, it is at least "
                 "0.00 mm. | The part is left out of the choice."},
        WrongRow{&list::partRole, "washer", "not_a_number_yet", kObjects,
                 "Part, line 2 of the shelf: “washer” is no answer. It takes one of “base gasket "
                 "or shim”, “plate”, “head gasket”. | The part is left out of the choice."},
        WrongRow{&list::partBore, "95", "head_gaskets_on_the_shelf", kObjects,
                 "Bore of the head gasket, line 2 of the shelf: 95.00 mm overhangs a bore of "},
        WrongRow{&list::partBore, "53.25", "head_gaskets_on_the_shelf", kObjects,
                 "Bore of the head gasket, line 2 of the shelf: 53.25 mm overhangs a bore of "}),
    [](const auto& row) { return "Row" + std::to_string(row.index); });

TEST_F(ShelfOfTheSingle, OffersADiameterWhereARadiusWasEntered) {
  put(project_.lists[&list::shelf][1], list::partBore, "53.25");
  Assessment assessment(project_);
  const auto* finding = assess::findingOf(assessment, kTarget, "head_gaskets_on_the_shelf");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(assess::told(*finding), testing::EndsWith("A radius? Twice it is 106.50 mm."));
}

// Below some 0.8 mm a plate is a shim, above some 10 to 12 mm a longer barrel does better: common
// practice, no published source.
TEST_F(ShelfOfTheSingle, AsksOfAPlateWhatIsAskedOfTheSpacer) {
  for (const char* thickness : {"0.5", "0.8", "10", "11", "14"}) {
    addPart(project_, "plate", thickness);
  }
  type(project_.engines[kTarget], "spacer_least_m", "0.8");
  type(project_.engines[kTarget], "spacer_most_m", "12");
  Assessment assessment(project_);
  std::vector<std::string> said;
  for (const describe::Finding& finding : assessment.findings(kTarget)) {
    if (finding.key == "plates_on_the_shelf") said.push_back(assess::told(finding));
  }
  EXPECT_THAT(
      said,
      testing::ElementsAre(
          testing::StartsWith("Thickness, line 4 of the shelf: 0.50 mm is a shim or a gasket"),
          testing::StartsWith("Thickness, line 8 of the shelf: a plate of 14.00 mm, over 12"),
          testing::StartsWith("Thickness, line 7 of the shelf: a plate of 11.00 mm, over 10")));
}

TEST_F(ShelfOfTheSingle, CarriesTheErrorOfAGasketsBore) {
  const Question question{.shelf = {{.role = Role::HeadGasket,
                                     .thickness = 1.3 * mm,
                                     .bore = 106.5 * mm,
                                     .borePlusMinus = 0.2 * mm}},
                          .cylinders = {},
                          .wants = {}};
  Stack stack;
  stack.cylinders.push_back({.set = {.headGasket = 0}});
  const auto entries = entriesOf(question, stack);
  const auto bore = std::ranges::find(entries, &model::in::headGasketBore,
                                      [](const auto& entry) { return entry.first; });
  ASSERT_NE(bore, entries.end());
  const describe::Entry entry =
      model::entryFrom(*bore->first, bore->second, units::UnitGroup::metric());
  EXPECT_NEAR(entry.limit(), 0.2 * mm, 1e-12) << bore->second;
}

TEST(AnEmptyShelf, IsRefusedInWords) {
  model::Project project = sample("culvert-1040");
  project.lists.clear();
  Assessment assessment(project);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::stackChoices).state, State::Refused);
}

}  // namespace
}  // namespace strokewright::choice
