#include "core/describe/evaluation.h"

#include <gtest/gtest.h>

#include <ostream>

#include "tests/describe/toys.h"

namespace strokewright::describe {
namespace {

using toys::Engines;

constexpr double kExact = 1e-12;

std::vector<std::string_view> keysOf(const std::vector<const Input*>& inputs) {
  std::vector<std::string_view> keys;
  for (const Input* input : inputs) keys.push_back(input->key);
  return keys;
}

bool missing(const Cell& cell, const Input& input) {
  return cell.notes.missing.own[static_cast<std::size_t>(input.number)];
}

bool reads(const Cell& cell, const Input& input) {
  return cell.notes.read.own[static_cast<std::size_t>(input.number)];
}

TEST(AResult, HasAValueWhenAllIsEntered) {
  const Engines engines = Engines().enter(toys::place, {2.0}).enter(toys::part, {3.0});
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(0, toys::sum);
  EXPECT_EQ(cell.state, State::Value);
  EXPECT_EQ(cell.value, 5.0);
  EXPECT_TRUE(reads(cell, toys::place));
  EXPECT_TRUE(reads(cell, toys::part));
  EXPECT_FALSE(reads(cell, toys::first));
}

TEST(AResult, WaitsForEveryEntryThatIsMissingNotForTheFirstAlone) {
  const Engines engines;
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(0, toys::sum);
  EXPECT_EQ(cell.state, State::Waits);
  EXPECT_TRUE(missing(cell, toys::place));
  EXPECT_TRUE(missing(cell, toys::part));
  EXPECT_TRUE(missing(evaluation.cell(0, toys::total), toys::part)) << "through results as well";
}

TEST(AResult, WaitsForTheFirstOfTwoAlternatives) {
  const Engines none;
  const Evaluation without = none.evaluated();
  EXPECT_TRUE(missing(without.cell(0, toys::eitherOr), toys::first));
  EXPECT_FALSE(missing(without.cell(0, toys::eitherOr), toys::other));
}

TEST(AResult, TakesTheAlternativeThatIsEnteredAndTheFirstOfBoth) {
  const Engines second = Engines().enter(toys::other, {7.0});
  EXPECT_EQ(second.evaluated().cell(0, toys::twice).value, 14.0);
  const Engines both = Engines().enter(toys::other, {7.0}).enter(toys::first, {4.0});
  EXPECT_EQ(both.evaluated().cell(0, toys::twice).value, 8.0);
}

TEST(AResult, StandsOnDefaultsAndOnDefaultsByOthers) {
  const Engines engines;
  EXPECT_EQ(engines.evaluated().cell(0, toys::presets).value, 2.0 + 6.0);
  const Engines changed = Engines().enter(toys::preset, {5.0});
  EXPECT_EQ(changed.evaluated().cell(0, toys::presets).value, 5.0 + 15.0);
  EXPECT_TRUE(reads(changed.evaluated().cell(0, toys::presets), toys::preset));
}

TEST(ATextThatIsNoNumber, TakesTheDefaultAway) {
  Engines engines;
  engines.entries[0][&toys::preset].text = "tbc";
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::presets).state, State::Waits);
}

TEST(AnImpossibleEntry, RefusesWhatReadsItAndNothingElse) {
  const Engines engines =
      Engines().enter(toys::place, {2.0}).enter(toys::part, {2000.0}).enter(toys::first, {1.0});
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(0, toys::total);
  ASSERT_EQ(cell.state, State::Refused);
  EXPECT_EQ(evaluation.refusal(cell).input, &toys::part);
  EXPECT_EQ(evaluation.cell(0, toys::twice).state, State::Value);
}

TEST(ALeafThatRefuses, RefusesWhatRestsOnItWithItsNumbers) {
  const Engines engines = Engines().enter(toys::x1, {-3.0});
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(0, toys::onRest);
  ASSERT_EQ(cell.state, State::Refused);
  EXPECT_EQ(evaluation.refusal(cell).input, nullptr);
  EXPECT_EQ(evaluation.refusal(cell).value, -4.0);
  EXPECT_EQ(evaluation.refusal(cell), evaluation.refusal(evaluation.cell(0, toys::rest)));
}

TEST(WhatDoesNotApply, IsNoneWhateverIsMissingOrDividedBy) {
  const Engines plain;
  const Evaluation evaluation = plain.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::odd).state, State::None);
  EXPECT_EQ(evaluation.cell(0, toys::odd).notes.none, "plain ones have none");
  EXPECT_EQ(evaluation.cell(0, toys::onOdd).state, State::None);
  const Engines odd = Engines().enter(toys::sort, {1.0}).enter(toys::x1, {4.0});
  EXPECT_EQ(odd.evaluated().cell(0, toys::onOdd).value, 0.25);
}

TEST(AskingWhetherItIsKnown, MakesNothingWait) {
  const Engines engines;
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::ifKnown).state, State::Value);
  EXPECT_EQ(evaluation.cell(0, toys::ifKnown).value, -1.0);
}

TEST(Cylinders, AreCountedByTheirEntryElseByTheLongestList) {
  const Engines counted = Engines().enter(toys::cylinders, {4.0}).enter(toys::part, {1.0, 2.0});
  EXPECT_EQ(counted.evaluated().cylinders(0), 4);
  const Engines listed = Engines().enter(toys::part, {1.0, 2.0, 3.0});
  EXPECT_EQ(listed.evaluated().cylinders(0), 3);
  const Engines impossible = Engines().enter(toys::cylinders, {2.5});
  EXPECT_EQ(impossible.evaluated().cylinders(0), 1);
}

TEST(Folds, GoOverAllCylinders) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {5.0, 2.0, 4.0});
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::total).value, 14.0);
  EXPECT_EQ(evaluation.cell(0, toys::least).value, 3.0);
  EXPECT_EQ(evaluation.cell(0, toys::most).value, 6.0);
  EXPECT_EQ(evaluation.cell(0, toys::overLeast, 0).value, 3.0);
  EXPECT_EQ(evaluation.cell(0, toys::overLeast, 1).value, 0.0);
  EXPECT_EQ(evaluation.cell(0, toys::overLeast, 2).value, 2.0);
}

TEST(AListTooShort, LeavesTheOtherCylindersWaiting) {
  const Engines engines = Engines()
                              .enter(toys::cylinders, {3.0})
                              .enter(toys::place, {1.0})
                              .enter(toys::part, {5.0, 2.0});
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::sum, 1).state, State::Value);
  EXPECT_EQ(evaluation.cell(0, toys::sum, 2).state, State::Waits);
  EXPECT_EQ(evaluation.cell(0, toys::total).state, State::Waits);
}

/// Engine 0 is the donor, engine 1 the one that is built.
Engines pair() {
  Engines engines(2);
  engines.donor = 0;
  engines.enter(toys::place, {2.0}, 0.1, 0).enter(toys::part, {3.0}, 0.0, 0);
  engines.enter(toys::place, {4.0}, 0.2, 1).enter(toys::part, {6.0}, 0.0, 1);
  return engines;
}

TEST(TheDonor, IsReadAndItsToleranceCounts) {
  const Engines engines = pair();
  Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(1, toys::ahead);
  EXPECT_EQ(cell.value, 5.0);
  EXPECT_NEAR(cell.worst, 0.3, kExact);
  EXPECT_NEAR(cell.likely, std::hypot(0.1, 0.2), kExact);
  const auto contributors = evaluation.contributors(1, toys::ahead);
  ASSERT_EQ(contributors.size(), 2U);
  EXPECT_FALSE(contributors[0].donors);
  EXPECT_TRUE(contributors[1].donors);
  EXPECT_NEAR(evaluation.cell(0, toys::ahead).worst, 0.0, kExact) << "the donor against itself";
}

TEST(TheDonor, IsWaitedForByName) {
  Engines engines = pair();
  engines.entries[0].erase(&toys::part);
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(1, toys::ahead);
  EXPECT_EQ(cell.state, State::Waits);
  EXPECT_TRUE(cell.notes.missing.donor[static_cast<std::size_t>(toys::part.number)]);
  EXPECT_FALSE(cell.notes.missing.own.any());
}

TEST(TheDonor, RefusesByName) {
  Engines engines = pair();
  engines.enter(toys::part, {2000.0}, 0.0, 0);
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(1, toys::ahead);
  ASSERT_EQ(cell.state, State::Refused);
  EXPECT_TRUE(evaluation.refusal(cell).donors);
}

TEST(TheDonor, StandsBesideCylinderByCylinder) {
  Engines engines = pair();
  engines.enter(toys::part, {3.0, 5.0}, 0.0, 0).enter(toys::part, {6.0, 6.0, 6.0}, 0.0, 1);
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(1, toys::ahead, 0).value, 5.0);
  EXPECT_EQ(evaluation.cell(1, toys::ahead, 1).value, 3.0);
  EXPECT_EQ(evaluation.cell(1, toys::ahead, 2).value, 3.0) << "its last one stands for the rest";
}

TEST(TheDonor, MayBeMissing) {
  Engines engines = pair();
  engines.donor = -1;
  EXPECT_EQ(engines.evaluated().cell(1, toys::ahead).state, State::None);
  EXPECT_EQ(engines.evaluated().cell(1, toys::donorsX).value, 0.0);
}

// ---- ±

struct PublishedRow {
  const char* name;
  const char* source;
  const Result* result;
  std::vector<std::pair<double, double>> entries;  // of x1, x2, …: value and limit
  double value;
  double worst;   // 0: not published
  double likely;  // 0: not published
  double digit;   // of the last one printed
  friend void PrintTo(const PublishedRow& row, std::ostream* out) {
    *out << row.name << ", " << row.source;
  }
};

class PublishedTolerance : public testing::TestWithParam<PublishedRow> {};

TEST_P(PublishedTolerance, IsMetToItsLastDigit) {
  const PublishedRow& row = GetParam();
  const Input* const inputs[] = {&toys::x1, &toys::x2, &toys::x3, &toys::x4};
  Engines engines;
  for (std::size_t i = 0; i < row.entries.size(); ++i) {
    engines.enter(*inputs[i], {row.entries[i].first}, row.entries[i].second);
  }
  const Evaluation evaluation = engines.evaluated();
  const Cell& cell = evaluation.cell(0, *row.result);
  EXPECT_NEAR(cell.value, row.value, 0.5 * row.digit);
  if (row.worst > 0.0) {
    EXPECT_NEAR(cell.worst, row.worst, 0.5 * row.digit);
  }
  if (row.likely > 0.0) {
    EXPECT_NEAR(cell.likely, row.likely, 0.5 * row.digit);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Textbooks, PublishedTolerance,
    testing::Values(PublishedRow{"GapWorstCaseAndSquares",
                                 "Shigley 9th ed., example 1-3; squares by section 1-14",
                                 &toys::difference,
                                 {{1.750, 0.003}, {0.750, 0.001}, {0.120, 0.005}, {0.875, 0.001}},
                                 0.005,
                                 0.010,
                                 0.006,
                                 1e-12},
                    PublishedRow{"GapWithAThinnerMember",
                                 "Shigley 9th ed., example 1-3",
                                 &toys::difference,
                                 {{1.750, 0.003}, {0.750, 0.001}, {0.120, 0.005}, {0.867, 0.001}},
                                 0.013,
                                 0.010,
                                 0.0,
                                 1e-12},
                    PublishedRow{"HoleAndShaft",
                                 "Sharma, Production Engineering, example 9.1",
                                 &toys::clearance,
                                 {{37.51, 0.01}, {37.46, 0.01}},
                                 0.05,
                                 0.02,
                                 0.0,
                                 1e-9},
                    PublishedRow{"ResistancesInSeries",
                                 "Sawhney, example 3.39",
                                 &toys::series,
                                 {{100.0, 0.1}, {50.0, 0.03}},
                                 150.0,
                                 0.0,
                                 0.1044,
                                 1e-4},
                    PublishedRow{"ResistancesInParallel",
                                 "Sawhney, example 3.39",
                                 &toys::parallel,
                                 {{100.0, 0.1}, {50.0, 0.03}},
                                 33.3333,
                                 0.0,
                                 0.01736,
                                 1e-4},
                    PublishedRow{"PowerByVoltsSquared",
                                 "Sawhney, example 3.41: one per cent each",
                                 &toys::squareOver,
                                 {{1.0, 0.01}, {1.0, 0.01}},
                                 1.0,
                                 0.0,
                                 0.02236,
                                 1e-5},
                    PublishedRow{"PowerByVoltsAndAmperes",
                                 "Sawhney, example 3.41: one per cent each",
                                 &toys::product,
                                 {{1.0, 0.01}, {1.0, 0.01}},
                                 1.0,
                                 0.0,
                                 0.01414,
                                 1e-5},
                    PublishedRow{"PowerMeasured",
                                 "Sawhney, example 3.38",
                                 &toys::product,
                                 {{110.2, 0.2}, {5.3, 0.06}},
                                 584.06,
                                 0.0,
                                 6.6964,
                                 1e-4}),
    [](const auto& row) { return std::string(row.param.name); });

/// What the ± of a sum over three cylinders is made of.
struct ScopeRow {
  const char* name;
  std::vector<double> place;
  std::vector<double> part;
  double worstOfOne;
  double likelyOfOne;
  double worstOfAll;
  double likelyOfAll;
  friend void PrintTo(const ScopeRow& row, std::ostream* out) { *out << row.name; }
};

class WhoseError : public testing::TestWithParam<ScopeRow> {};

TEST_P(WhoseError, IsCommonForAPlaceAndIndependentForPartsAndLists) {
  const ScopeRow& row = GetParam();
  const Engines engines = Engines()
                              .enter(toys::cylinders, {3.0})
                              .enter(toys::place, row.place, 0.3)
                              .enter(toys::part, row.part, 0.4);
  const Evaluation evaluation = engines.evaluated();
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(evaluation.cell(0, toys::sum, i).worst, row.worstOfOne, kExact);
    EXPECT_NEAR(evaluation.cell(0, toys::sum, i).likely, row.likelyOfOne, kExact);
  }
  EXPECT_NEAR(evaluation.cell(0, toys::total).worst, row.worstOfAll, kExact);
  EXPECT_NEAR(evaluation.cell(0, toys::total).likely, row.likelyOfAll, kExact);
}

INSTANTIATE_TEST_SUITE_P(
    Scopes, WhoseError,
    testing::Values(
        ScopeRow{"OneNumberEach", {2.0}, {3.0}, 0.7, 0.5, 2.1, std::sqrt(0.81 + 0.48)},
        ScopeRow{"PlacesListed", {2.0, 2.5, 3.0}, {3.0}, 0.7, 0.5, 2.1, std::sqrt(0.27 + 0.48)},
        ScopeRow{"PartsListed", {2.0}, {3.0, 3.1, 3.2}, 0.7, 0.5, 2.1, std::sqrt(0.81 + 0.48)}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(AnErrorOfOneCylinder, ReachesTheOthersWhereTheyLookAtIt) {
  const Engines engines =
      Engines().enter(toys::place, {1.0}, 0.3).enter(toys::part, {5.0, 2.0}, 0.4);
  const Evaluation evaluation = engines.evaluated();
  EXPECT_NEAR(evaluation.cell(0, toys::overLeast, 0).worst, 0.8, kExact) << "both parts, no place";
  EXPECT_NEAR(evaluation.cell(0, toys::overLeast, 1).worst, 0.0, kExact) << "the least of itself";
}

TEST(AHeldResult, IsNotMoved) {
  const Engines engines = Engines().enter(toys::place, {1.0}, 0.3).enter(toys::part, {5.0}, 0.4);
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::still).value, 11.0);
  EXPECT_NEAR(evaluation.cell(0, toys::still).worst, 0.4, kExact);
}

TEST(ANudgeThatIsRefusedOnOneSide, CountsByTheOther) {
  const Engines engines = Engines().enter(toys::x1, {1.0}, 0.25);
  const Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(evaluation.cell(0, toys::onRest).value, 1.0);
  EXPECT_NEAR(evaluation.cell(0, toys::onRest).worst, 0.5, kExact);
}

// By hand: up to 1.25, and down not at all.
TEST(ANudgeThatMovesOneWayOnly, CountsInFullAtWorst) {
  const Engines engines = Engines().enter(toys::x1, {1.0}, 0.25);
  Evaluation evaluation = engines.evaluated();
  EXPECT_NEAR(evaluation.cell(0, toys::ramp).worst, 0.25, kExact);
  EXPECT_NEAR(evaluation.cell(0, toys::ramp).likely, 0.125, kExact);
  EXPECT_NEAR(evaluation.contributors(0, toys::ramp).front().share, 0.25, kExact);
}

TEST(OneSigma, IsHalfALimit) {
  Engines engines = Engines().enter(toys::x1, {1.0}, 0.1).enter(toys::x2, {1.0});
  engines.entries[0][&toys::x1].oneSigma = true;
  EXPECT_NEAR(engines.evaluated().cell(0, toys::series).worst, 0.2, kExact);
}

TEST(AnEntryWithoutPlusMinus, AddsNothing) {
  const Engines engines = Engines().enter(toys::x1, {1.0}).enter(toys::x2, {1.0}, 0.2);
  EXPECT_NEAR(engines.evaluated().cell(0, toys::series).worst, 0.2, kExact);
}

TEST(Contributors, ComeLargestFirstAndAddUp) {
  const Engines engines = Engines()
                              .enter(toys::x1, {1.0}, 0.1)
                              .enter(toys::x2, {1.0}, 0.4)
                              .enter(toys::x3, {1.0}, 0.2)
                              .enter(toys::x4, {1.0});
  Evaluation evaluation = engines.evaluated();
  const auto found = evaluation.contributors(0, toys::difference);
  ASSERT_EQ(found.size(), 3U) << "an entry without share is left out";
  EXPECT_EQ(found[0].input, &toys::x2);
  EXPECT_EQ(found[1].input, &toys::x3);
  EXPECT_EQ(found[2].input, &toys::x1);
  double sum = 0.0;
  double squares = 0.0;
  for (const Contributor& one : found) {
    sum += one.share;
    squares += one.share * one.share;
  }
  EXPECT_NEAR(sum, evaluation.cell(0, toys::difference).worst, kExact);
  EXPECT_NEAR(std::sqrt(squares), evaluation.cell(0, toys::difference).likely, kExact);
}

TEST(Contributors, NameTheCylinderOfAPart) {
  const Engines engines =
      Engines().enter(toys::place, {1.0}, 0.3).enter(toys::part, {5.0, 2.0}, 0.4);
  Evaluation evaluation = engines.evaluated();
  const auto ofTotal = evaluation.contributors(0, toys::total);
  ASSERT_EQ(ofTotal.size(), 3U);
  EXPECT_EQ(ofTotal[0].input, &toys::place);
  EXPECT_EQ(ofTotal[0].cylinder, -1);
  EXPECT_EQ(ofTotal[1].cylinder, 0);
  EXPECT_EQ(ofTotal[2].cylinder, 1);
  const auto ofSecond = evaluation.contributors(0, toys::sum, 1);
  ASSERT_EQ(ofSecond.size(), 2U);
  EXPECT_EQ(ofSecond[0].cylinder, 1);
}

// ---- Working, what if

TEST(TheWorking, NamesWhatIsReadDirectlyInItsOrder) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {5.0});
  Evaluation evaluation = engines.evaluated();
  const Working sum = evaluation.working(0, toys::sum);
  EXPECT_EQ(keysOf(sum.inputs), (std::vector<std::string_view>{"place", "part"}));
  EXPECT_TRUE(sum.results.empty());
  const Working over = evaluation.working(0, toys::overLeast);
  EXPECT_TRUE(over.inputs.empty());
  ASSERT_EQ(over.results.size(), 1U) << "once, though read twice";
  EXPECT_EQ(over.results.front(), &toys::sum);
}

TEST(TheWorking, IsThereForARefusedResultAsFarAsItWent) {
  const Engines engines = Engines().enter(toys::x1, {-3.0});
  Evaluation evaluation = engines.evaluated();
  EXPECT_EQ(keysOf(evaluation.working(0, toys::rest).inputs),
            (std::vector<std::string_view>{"x1"}));
}

TEST(WhatIf, AnswersInACopyAndLeavesTheOriginal) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {5.0, 2.0});
  const Evaluation original = engines.evaluated();
  Evaluation copy = original;
  copy.put(0, toys::part, 1, 7.0);
  EXPECT_EQ(copy.fresh(0, toys::total).value, 1.0 + 5.0 + 1.0 + 7.0);
  copy.put(0, toys::part, -1, 3.0);
  EXPECT_EQ(copy.fresh(0, toys::total).value, 8.0);
  EXPECT_EQ(original.cell(0, toys::total).value, 9.0);
}

TEST(WhatIf, AnImpossibleNumberIsRefusedAndAPossibleOneStandsAgain) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {5.0});
  Evaluation copy = engines.evaluated();
  copy.put(0, toys::part, -1, 2000.0);
  EXPECT_EQ(copy.fresh(0, toys::sum).state, State::Refused);
  copy.put(0, toys::part, -1, 2.0);
  EXPECT_EQ(copy.fresh(0, toys::sum).value, 3.0);
}

TEST(WhatIf, ANumberIsPutWhereNoneWasEntered) {
  const Engines engines = Engines().enter(toys::place, {1.0});
  Evaluation copy = engines.evaluated();
  copy.put(0, toys::part, -1, 2.0);
  EXPECT_EQ(copy.fresh(0, toys::sum).state, State::Value);
}

}  // namespace
}  // namespace strokewright::describe
