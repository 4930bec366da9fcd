#include "core/choice/choice.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <ostream>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/chamber/chamber.h"
#include "core/deck/stack.h"
#include "tests/bench_units.h"

namespace strokewright::choice {
namespace {

using namespace bench;
using testing::DoubleEq;
using testing::DoubleNear;
using testing::ElementsAre;

constexpr double kPrinted = 0.005;  // of ratios printed with two decimals

Part baseGasket(double thickness, std::optional<int> quantity = std::nullopt) {
  return {.role = Role::BaseGasket, .thickness = thickness, .quantity = quantity};
}

Part plate(double thickness, std::optional<int> quantity = std::nullopt) {
  return {.role = Role::Plate, .thickness = thickness, .quantity = quantity};
}

Part headGasket(double thickness, double bore, std::optional<int> quantity = std::nullopt) {
  return {.role = Role::HeadGasket, .thickness = thickness, .bore = bore, .quantity = quantity};
}

std::vector<double> squishOf(const Stack& stack) {
  std::vector<double> gaps;
  for (const Fit& fit : stack.cylinders) gaps.push_back(fit.squish / mm);
  return gaps;
}

// The worked conversion of a slow compression-ignition single, 105 x 120: three head gaskets on the
// shelf, no plate, liner top 0.30 under the crown. Published: the sample "Culvert 1040".
Question culvert() {
  Question question;
  for (const double thickness : {1.20, 1.30, 1.40}) {
    question.shelf.push_back(headGasket(thickness * mm, 106.5 * mm));
    question.shelf.back().plusMinus = 0.03 * mm;
  }
  question.cylinders = {{.deckClearanceBare = -0.30 * mm,
                         .bore = 105 * mm,
                         .sweptVolume = 1039.08 * ml,
                         .volumesBesideStack = (3.2 + 50.0 + 1.5) * ml,
                         .worst = 0.10 * mm}};
  question.wants = {.squish = 0.95 * mm};
  return question;
}

// The worked conversion of a triple, 68 x 66, whose case seat is not parallel to the main line.
// Published: the sample "Burdock 719".
Question burdock() {
  Question question;
  question.shelf = {baseGasket(0.25 * mm), headGasket(0.75 * mm, 69.5 * mm)};
  for (const double seat : {98.12, 98.20, 98.29}) {
    question.cylinders.push_back({.deckClearanceBare = (seat + 79.25 - 178.5) * mm,
                                  .bore = 68 * mm,
                                  .sweptVolume = 239.69 * ml,
                                  .volumesBesideStack = (18.7 + 1.2 + 0.2) * ml});
  }
  question.wants = {.squish = 0.90 * mm, .baseGasketsLeast = 1, .baseGasketsMost = 1};
  return question;
}

TEST(Choice, GivesTheBumpingClearancesAndRatiosOfTheSlowSingle) {
  struct Row {
    int gasket;
    double squish;
    double ratio;
  };
  const Question question = culvert();
  for (const Row& row : {Row{0, 0.90, 17.55}, Row{1, 1.00, 17.32}, Row{2, 1.10, 17.09}}) {
    const Judged judged = judge(question, {{.headGasket = row.gasket}});
    const Fit& fit = judged.stack.cylinders.front();
    EXPECT_THAT(fit.squish, DoubleEq(row.squish * mm));
    EXPECT_THAT(fit.squishAtWorst, DoubleNear((row.squish - 0.13) * mm, 1e-12));
    EXPECT_THAT(fit.ratio, DoubleNear(row.ratio, kPrinted));
    EXPECT_FALSE(judged.loss);
  }
}

TEST(Choice, TakesTheThickerGasketWhereTheThinnerCouldCloseTooFar) {
  Question question = culvert();
  question.wants.leastAtWorst = 0.85 * mm;
  const Answer answer = choose(question);
  ASSERT_EQ(answer.best.size(), 2U);
  EXPECT_EQ(answer.best[0].cylinders[0].set.headGasket, 1);
  EXPECT_THAT(answer.best[0].rank, DoubleNear(0.05 * mm, 1e-12));
  EXPECT_EQ(answer.best[1].cylinders[0].set.headGasket, 2);
  EXPECT_EQ(answer.tally.considered, 3);
  EXPECT_EQ(answer.tally.lostTo(Reason::TooCloseAtWorst), 1);

  const auto loss = whyLost(question, answer, {{.headGasket = 0}});
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::TooCloseAtWorst);
  EXPECT_EQ(loss->cylinder, 0);
  EXPECT_THAT(loss->value, DoubleNear(0.77 * mm, 1e-12));
  EXPECT_EQ(loss->limit, 0.85 * mm);
  EXPECT_FALSE(whyLost(question, answer, {{.headGasket = 1}}));
}

TEST(Choice, LetsTheLargerGapAtWorstDecideATie) {
  Question question = culvert();  // 1.20 and 1.30 lie as far from 0.95
  {
    const Answer answer = choose(question);
    ASSERT_EQ(answer.best.size(), 3U);
    EXPECT_EQ(answer.best[0].rank, answer.best[1].rank);
    EXPECT_EQ(answer.best[0].cylinders[0].set.headGasket, 1);
    EXPECT_EQ(answer.best[1].cylinders[0].set.headGasket, 0);
  }
  question.shelf[1].plusMinus = 0.14 * mm;  // 1.00 less 0.24, and 0.90 less 0.13
  const Answer answer = choose(question);
  EXPECT_EQ(answer.best[0].cylinders[0].set.headGasket, 0);
}

TEST(Choice, LetsTheOrderOnTheShelfDecideWhereAllElseIsAlike) {
  Question question = culvert();
  question.shelf.push_back(question.shelf[1]);
  const Answer answer = choose(question);
  ASSERT_EQ(answer.best.size(), 4U);
  EXPECT_EQ(answer.best[0].cylinders[0].set.headGasket, 1);
  EXPECT_EQ(answer.best[1].cylinders[0].set.headGasket, 3);
}

TEST(Choice, ShowsThatOneFlatPlateSpreadsTheTripleTooFar) {
  Question question = burdock();
  question.shelf.push_back(plate(0.95 * mm));
  const Set set{.plate = 2, .baseGaskets = {0, kNone}, .headGasket = 1};
  const Judged free = judge(question, {set, set, set});
  EXPECT_THAT(squishOf(free.stack),
              ElementsAre(DoubleNear(0.82, 1e-9), DoubleNear(0.90, 1e-9), DoubleNear(0.99, 1e-9)));
  const std::vector<double> ratios{11.33, 11.20, 11.06};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_THAT(free.stack.cylinders[i].ratio, DoubleNear(ratios[i], kPrinted));
  }
  EXPECT_THAT(free.stack.ratioSpread, DoubleNear(0.27, kPrinted));
  EXPECT_THAT(free.stack.squishSpread, DoubleNear(0.17 * mm, 1e-12));
  EXPECT_FALSE(free.loss);

  question.wants.ratioSpread = 0.2;
  const auto loss = judge(question, {set, set, set}).loss;
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::RatioSpreadOver);
  EXPECT_EQ(loss->value, free.stack.ratioSpread);
  EXPECT_EQ(loss->limit, 0.2);
  EXPECT_EQ(loss->cylinder, kNone);
  EXPECT_EQ(choose(question).tally.lostTo(Reason::RatioSpreadOver), 2);  // with and without plate
}

TEST(Choice, GivesEveryCylinderOfTheTripleThePlateItNeeds) {
  Question question = burdock();
  for (int hundredths = 80; hundredths <= 110; ++hundredths) {
    question.shelf.push_back(plate(hundredths * 0.01 * mm));
  }
  question.wants.onePlateForAll = false;
  question.wants.ratioSpread = 0.2;
  const Answer answer = choose(question);
  ASSERT_FALSE(answer.best.empty());
  EXPECT_TRUE(answer.searchedAll);
  EXPECT_THAT(squishOf(answer.best[0]),
              ElementsAre(DoubleEq(0.90), DoubleEq(0.90), DoubleEq(0.90)));
  EXPECT_EQ(answer.best[0].rank, 0.0);
  EXPECT_EQ(answer.best[0].parts, 9);
  EXPECT_EQ(answer.best[0].differentParts, 5);
  std::vector<double> plates;
  for (const Fit& fit : answer.best[0].cylinders) {
    plates.push_back(question.shelf[static_cast<std::size_t>(fit.set.plate)].thickness / mm);
  }
  EXPECT_THAT(plates, ElementsAre(DoubleEq(1.03), DoubleEq(0.95), DoubleEq(0.86)));
}

TEST(Choice, AgreesWithTheFormulasOfDeckAndChamber) {
  const Question question = burdock();
  const Judged judged =
      judge(question, std::vector<Set>(3, {.baseGaskets = {0, kNone}, .headGasket = 1}));
  for (std::size_t i = 0; i < 3; ++i) {
    const Cylinder& cylinder = question.cylinders[i];
    const Fit& fit = judged.stack.cylinders[i];
    const double clearance = cylinder.deckClearanceBare + 0.25 * mm;
    EXPECT_TRUE(close(fit.deckClearance, clearance, 1e-12));
    EXPECT_TRUE(close(fit.squish, deck::squishGap(clearance, {.gasket = 0.75 * mm}), 1e-11));
    const double volume =
        chamber::clearanceVolume({.chamber = cylinder.volumesBesideStack,
                                  .gasket = chamber::gasketVolume({69.5 * mm, 0.75 * mm}),
                                  .deck = chamber::deckVolume({68 * mm, clearance})});
    EXPECT_TRUE(close(fit.ratio, chamber::compressionRatio({cylinder.sweptVolume, volume}), 1e-13));
  }
}

TEST(Choice, TakesNoMoreOfAPartThanThereAre) {
  Question question = burdock();
  question.shelf = {headGasket(0.75 * mm, 69.5 * mm, 2), headGasket(0.80 * mm, 69.5 * mm, 3)};
  question.cylinders.assign(3, question.cylinders[0]);
  question.wants = {.squish = -0.38 * mm};  // 0.75 thick hits it
  const Answer answer = choose(question);
  ASSERT_EQ(answer.best.size(), 1U);
  EXPECT_EQ(answer.best[0].cylinders[0].set.headGasket, 1);
  const auto loss = whyLost(question, answer, std::vector<Set>(3, {.headGasket = 0}));
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::TooFew);
  EXPECT_EQ(loss->part, 0);
  EXPECT_EQ(loss->value, 3);
  EXPECT_EQ(loss->limit, 2);

  question.wants.sameGasketsInAll = false;
  const Stack mixed = choose(question).best.front();
  EXPECT_EQ(mixed.cylinders[0].set.headGasket, 0);
  EXPECT_EQ(mixed.cylinders[1].set.headGasket, 0);
  EXPECT_EQ(mixed.cylinders[2].set.headGasket, 1);
}

TEST(Choice, LaysNoPartOfWhichNoneIsLeft) {
  Question question = burdock();
  question.shelf = {headGasket(0.75 * mm, 69.5 * mm, 0), headGasket(0.80 * mm, 69.5 * mm),
                    baseGasket(0.2 * mm, 0), plate(0.5 * mm, 0)};
  question.wants = {.squish = -0.38 * mm};  // 0.75 thick would hit it
  for (const bool alike : {true, false}) {
    question.wants.onePlateForAll = alike;
    question.wants.sameGasketsInAll = alike;
    const Answer answer = choose(question);
    ASSERT_EQ(answer.best.size(), 1U);
    for (const Fit& fit : answer.best[0].cylinders) {
      EXPECT_EQ(fit.set, (Set{.headGasket = 1})) << alike;
    }
  }
  const std::vector<Set> sets(question.cylinders.size(), {.headGasket = 0});
  const auto loss = judge(question, sets).loss;
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::TooFew);
  EXPECT_EQ(loss->limit, 0);
}

TEST(Choice, CountsTheSameBaseGasketTwiceWhereTwoLieInOneCylinder) {
  Question question = culvert();
  question.shelf = {baseGasket(0.2 * mm, 1), baseGasket(0.4 * mm), headGasket(1 * mm, 106.5 * mm)};
  question.wants.squish = 1.1 * mm;
  const Answer answer = choose(question);  // 0.4 or twice 0.2 give 1.1
  EXPECT_EQ(answer.best.front().cylinders[0].set.baseGaskets, (std::array{1, kNone}));
  EXPECT_EQ(answer.tally.considered, 6);
  EXPECT_EQ(answer.tally.lostTo(Reason::TooFew), 1);
  const auto loss = judge(question, {{.baseGaskets = {0, 0}, .headGasket = 2}}).loss;
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::TooFew);
  EXPECT_EQ(loss->value, 2);
}

TEST(Choice, PrefersFewerPartsAndThenFewerDifferentOnes) {
  Question question = culvert();
  question.shelf = {baseGasket(0.1 * mm), baseGasket(0.2 * mm), baseGasket(0.3 * mm),
                    baseGasket(0.4 * mm), headGasket(1 * mm, 106.5 * mm)};
  question.wants.squish = 1.1 * mm;  // 0.4, or 0.1 and 0.3, or twice 0.2
  const Answer answer = choose(question);
  EXPECT_EQ(answer.best[0].cylinders[0].set.baseGaskets, (std::array{3, kNone}));
  EXPECT_EQ(answer.best[1].cylinders[0].set.baseGaskets, (std::array{1, 1}));
  EXPECT_EQ(answer.best[2].cylinders[0].set.baseGaskets, (std::array{0, 2}));
  EXPECT_GT(answer.best[3].rank, 0.0);
}

TEST(Choice, HoldsToTheNumberOfBaseGasketsAskedFor) {
  Question question = culvert();
  question.shelf = {baseGasket(0.1 * mm), baseGasket(0.2 * mm), headGasket(1 * mm, 106.5 * mm)};
  const auto considered = [&](int least, int most) {
    question.wants.baseGasketsLeast = least;
    question.wants.baseGasketsMost = most;
    return choose(question).tally.considered;
  };
  EXPECT_EQ(considered(0, 0), 1);
  EXPECT_EQ(considered(0, 1), 3);
  EXPECT_EQ(considered(1, 1), 2);
  EXPECT_EQ(considered(2, 2), 3);
  EXPECT_EQ(considered(0, 2), 6);
}

TEST(Choice, CountsAPlateForAllOnce) {
  Question question = burdock();
  question.shelf.push_back(plate(0.95 * mm, 1));
  question.wants.plateNeeded = true;
  EXPECT_EQ(choose(question).best.front().parts, 7);
  question.wants.onePlateForAll = false;
  EXPECT_TRUE(choose(question).best.empty());  // would need three
}

TEST(Choice, CountsAPartThatServesAllAsOnePiece) {
  Question question = burdock();
  for (Part& part : question.shelf) part.quantity = 1;
  question.wants.squishSpread = Wants::kNoLimit;
  question.wants.ratioSpread = Wants::kNoLimit;
  EXPECT_TRUE(choose(question).best.empty()) << "one base gasket for three barrels";
  question.shelf[0].quantity = 3;
  EXPECT_TRUE(choose(question).best.empty()) << "and one head gasket";
  const auto loss = judge(question, {3, {.baseGaskets = {0, kNone}, .headGasket = 1}}).loss;
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::TooFew);
  EXPECT_EQ(loss->part, 1);
  EXPECT_EQ(loss->value, 3);
  question.shelf[1].servesAll = true;
  for (const bool same : {true, false}) {
    question.wants.sameGasketsInAll = same;
    EXPECT_EQ(choose(question).best.size(), 1U);
  }
  question.shelf[1].quantity = 0;
  const auto gone = judge(question, {3, {.baseGaskets = {0, kNone}, .headGasket = 1}}).loss;
  ASSERT_TRUE(gone);
  EXPECT_EQ(gone->value, 1) << "one piece";
  EXPECT_EQ(gone->limit, 0);
}

TEST(Choice, LaysAPartThatServesAllInAllOrNone) {
  Question question = burdock();
  question.shelf.push_back(headGasket(0.80 * mm, 69.5 * mm));
  question.shelf.back().servesAll = true;
  question.wants.sameGasketsInAll = false;
  question.wants.squishSpread = Wants::kNoLimit;
  question.wants.ratioSpread = Wants::kNoLimit;
  const Answer answer = choose(question);
  EXPECT_EQ(answer.best.size(), 2U) << "the one piece, or the single ones";
  for (const Stack& stack : answer.best) {
    for (const Fit& fit : stack.cylinders) {
      EXPECT_EQ(fit.set.headGasket, stack.cylinders.front().set.headGasket);
    }
  }
}

TEST(Choice, SaysWhichLimitOfWhichCylinderAStackBreaks) {
  struct Row {
    Wants wants;
    Reason reason;
    int cylinder;
    double value;
  };
  // The triple with a flat plate of 0.95: gaps 0.82, 0.90, 0.99, ratios 11.33, 11.20, 11.06.
  const std::vector<Row> rows{
      {{.squishLeast = 0.85 * mm}, Reason::TooClose, 0, 0.82 * mm},
      {{.squishMost = 0.95 * mm}, Reason::TooWide, 2, 0.99 * mm},
      {{.leastAtWorst = 0.75 * mm}, Reason::TooCloseAtWorst, 0, 0.72 * mm},
      {{.ratioMost = 11.25}, Reason::RatioOver, 0, 11.33},
      {{.ratioLeast = 11.10}, Reason::RatioUnder, 2, 11.06},
      {{.squishSpread = 0.1 * mm}, Reason::SquishSpreadOver, kNone, 0.17 * mm},
      {{.squishLeast = 0.85 * mm, .squishMost = 0.95 * mm}, Reason::TooClose, 0, 0.82 * mm},
      {{.squishLeast = 0.85 * mm, .squishSpread = 0.1 * mm},
       Reason::SquishSpreadOver,
       kNone,
       0.17 * mm},
      {{.squishMost = 0.95 * mm, .ratioMost = 11.25}, Reason::TooWide, 2, 0.99 * mm},
  };
  for (const Row& row : rows) {
    Question question = burdock();
    question.shelf.push_back(plate(0.95 * mm));
    for (Cylinder& cylinder : question.cylinders) cylinder.worst = 0.1 * mm;
    question.wants = row.wants;
    question.wants.sortBy = SortBy::RatioSpread;
    const Set set{.plate = 2, .baseGaskets = {0, kNone}, .headGasket = 1};
    const auto loss = judge(question, {set, set, set}).loss;
    ASSERT_TRUE(loss);
    EXPECT_EQ(loss->reason, row.reason);
    EXPECT_EQ(loss->cylinder, row.cylinder);
    EXPECT_THAT(loss->value, DoubleNear(row.value, row.value > 1 ? kPrinted : 1e-12));
  }
}

TEST(Choice, MeetsALimitThatIsMetExactly) {
  Question question = culvert();
  question.wants.squishLeast = 0.90 * mm;
  question.wants.squishMost = 1.00 * mm;
  question.wants.leastAtWorst = 0.77 * mm;
  EXPECT_EQ(choose(question).best.size(), 2U);
}

TEST(Choice, HoldsInchesExactly) {
  Question question = culvert();
  question.shelf = {baseGasket(inch / 64), headGasket(0.047 * inch, 106.5 * mm)};
  question.wants.squish = -0.30 * mm + 0.047 * inch + inch / 64;
  EXPECT_EQ(choose(question).best.front().rank, 0.0);
}

TEST(Choice, KeepsTheTwentyBestAndSaysWhatBeatTheRest) {
  Question question = culvert();
  question.shelf = {headGasket(1 * mm, 106.5 * mm)};
  for (int i = 0; i < 30; ++i) question.shelf.push_back(plate((0.5 + 0.01 * i) * mm));
  question.wants.squish = 1.2 * mm;
  question.wants.plateNeeded = true;
  const Answer answer = choose(question);
  ASSERT_EQ(answer.best.size(), kBestCount);
  EXPECT_EQ(answer.tally.lostTo(Reason::Beaten), 10);
  const auto loss = whyLost(question, answer, {{.plate = 30, .headGasket = 0}});
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::Beaten);
  EXPECT_THAT(loss->value, DoubleNear(0.29 * mm, 1e-12));
  EXPECT_THAT(loss->limit, DoubleNear(0.19 * mm, 1e-12));
}

TEST(Choice, RefusesAStackWithNoRoomAboveThePiston) {
  Question question = culvert();
  question.cylinders[0].volumesBesideStack = -20 * ml;
  const auto loss = judge(question, {{.headGasket = 0}}).loss;
  ASSERT_TRUE(loss);
  EXPECT_EQ(loss->reason, Reason::RatioOver);
  EXPECT_TRUE(std::isinf(loss->value));
  EXPECT_TRUE(choose(question).best.empty());
}

TEST(Choice, SortsByWhatIsAskedFor) {
  Question question = culvert();
  question.wants.sortBy = SortBy::RatioNearness;
  question.wants.ratio = 17.1;
  const Answer answer = choose(question);
  EXPECT_EQ(answer.best.front().cylinders[0].set.headGasket, 2);
  EXPECT_THAT(answer.best.front().rank, DoubleNear(0.01, kPrinted));

  Question triple = burdock();  // even gaps need 0.08 and 0.17 more under the first
  for (const double thickness : {0.0, 0.08, 0.09, 0.17}) {
    triple.shelf.push_back(plate(thickness * mm));
  }
  triple.wants.onePlateForAll = false;
  triple.wants.sortBy = SortBy::SquishSpread;
  EXPECT_EQ(choose(triple).best.front().rank, 0.0);
  triple.wants.sortBy = SortBy::RatioSpread;
  EXPECT_LT(choose(triple).best.front().rank, 1e-12);
}

struct RefusedRow {
  std::string what;
  std::function<void(Question&)> spoil;
  std::string sentence;
};

void PrintTo(const RefusedRow& row, std::ostream* out) { *out << row.what; }

class RefusedQuestion : public testing::TestWithParam<RefusedRow> {};

TEST_P(RefusedQuestion, SaysWhatIsWrongInEveryForm) {
  Question question = culvert();
  question.shelf.push_back(baseGasket(0.2 * mm));
  GetParam().spoil(question);
  const auto refusal = refusalOf([&] { choose(question); });
  ASSERT_TRUE(refusal);
  EXPECT_THAT(std::string(refusal->sentence()), testing::HasSubstr(GetParam().sentence));
  EXPECT_TRUE(refusalOf([&] { judge(question, {{.headGasket = 0}}); }));
}

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(
    Choice, RefusedQuestion,
    testing::Values(
        RefusedRow{"EmptyShelf", [](Question& q) { q.shelf.clear(); }, "head gaskets on the shelf"},
        RefusedRow{"NoHeadGasket", [](Question& q) { q.shelf = {baseGasket(0.2 * mm)}; },
                   "head gaskets on the shelf"},
        RefusedRow{"NoCylinder", [](Question& q) { q.cylinders.clear(); }, "cylinders leave"},
        RefusedRow{"NoPlateWhereOneIsNeeded", [](Question& q) { q.wants.plateNeeded = true; },
                   "A plate is needed"},
        RefusedRow{"NoBaseGasketWhereOneIsNeeded",
                   [](Question& q) {
                     q.shelf.pop_back();
                     q.wants.baseGasketsLeast = 1;
                   },
                   "Base gaskets are needed"},
        RefusedRow{"NegativeThickness", [](Question& q) { q.shelf[0].thickness = -0.1 * mm; },
                   "no thickness is under"},
        RefusedRow{"ThicknessThatIsNoNumber", [](Question& q) { q.shelf[0].thickness = kNaN; },
                   "no thickness is under"},
        RefusedRow{"PartFarTooThick", [](Question& q) { q.shelf[0].thickness = 1.3; },
                   "no gasket, shim or plate"},
        RefusedRow{"NegativeError", [](Question& q) { q.shelf[0].plusMinus = -0.1 * mm; },
                   "must not be under"},
        RefusedRow{"NegativeQuantity", [](Question& q) { q.shelf[0].quantity = -1; },
                   "There cannot be"},
        RefusedRow{"HeadGasketWithoutBore", [](Question& q) { q.shelf[0].bore = 0.0; },
                   "head gasket with a bore"},
        RefusedRow{"DeckThatIsNoNumber",
                   [](Question& q) { q.cylinders[0].deckClearanceBare = kNaN; }, "too far off"},
        RefusedRow{"NoBore", [](Question& q) { q.cylinders[0].bore = 0.0; }, "must exceed"},
        RefusedRow{"SweptVolumeThatIsNoNumber",
                   [](Question& q) { q.cylinders[0].sweptVolume = kNaN; }, "swept volume"},
        RefusedRow{"EndlessVolume",
                   [](Question& q) { q.cylinders[0].volumesBesideStack = Wants::kNoLimit; },
                   "no volume"},
        RefusedRow{"ErrorThatIsNoNumber", [](Question& q) { q.cylinders[0].worst = kNaN; },
                   "must not be under"},
        RefusedRow{"LimitThatIsNoNumber", [](Question& q) { q.wants.squishLeast = kNaN; },
                   "is no limit"},
        RefusedRow{"SpreadThatIsNoNumber", [](Question& q) { q.wants.ratioSpread = kNaN; },
                   "is no limit"},
        RefusedRow{"NoWantedGap", [](Question& q) { q.wants.squish.reset(); }, "wanted gap"},
        RefusedRow{"NoWantedRatio", [](Question& q) { q.wants.sortBy = SortBy::RatioNearness; },
                   "cannot be come near to"},
        RefusedRow{"ThreeBaseGaskets", [](Question& q) { q.wants.baseGasketsMost = 3; },
                   "are not searched"},
        RefusedRow{"LessThanNoBaseGasket", [](Question& q) { q.wants.baseGasketsLeast = -1; },
                   "cannot be asked for"},
        RefusedRow{"MoreAtLeastThanAtMost",
                   [](Question& q) {
                     q.wants.baseGasketsLeast = 2;
                     q.wants.baseGasketsMost = 1;
                   },
                   "but at least"}),
    [](const auto& row) { return row.param.what; });

TEST(Choice, ThrowsForSetsThatAreNotOfTheQuestion) {
  const Question question = culvert();
  EXPECT_THROW(judge(question, {}), std::invalid_argument);
  EXPECT_THROW(judge(question, {{.headGasket = kNone}}), std::invalid_argument);
  EXPECT_THROW(judge(question, {{.headGasket = 3}}), std::invalid_argument);
  EXPECT_THROW(judge(question, {{.plate = 1, .headGasket = 0}}), std::invalid_argument);
}

}  // namespace
}  // namespace strokewright::choice
