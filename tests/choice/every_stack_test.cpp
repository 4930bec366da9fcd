// The fast forms must give what trying every stack gives, ties and counts included.

#include "core/choice/every_stack.h"

#include <gtest/gtest.h>

#include <ostream>
#include <random>

#include "core/choice/search.h"
#include "tests/bench_units.h"

namespace strokewright::choice {
namespace {

using namespace bench;

// Whole numbers only: distributions of the standard library differ from one to the next.
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}

  int between(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<unsigned>(most - least + 1));
  }
  bool oneIn(int sides) { return between(1, sides) == 1; }

 private:
  std::mt19937 engine_;
};

struct Mode {
  bool onePlateForAll;
  bool sameGasketsInAll;
  SortBy sortBy;
};

void PrintTo(const Mode& mode, std::ostream* out) {
  *out << (mode.onePlateForAll ? "one plate, " : "own plates, ")
       << (mode.sameGasketsInAll ? "same gaskets, sort " : "own gaskets, sort ")
       << static_cast<int>(mode.sortBy);
}

Part randomPart(Dice& dice, Role role, int finest, int least, int most) {
  return {.role = role,
          .thickness = dice.between(least, most) * finest * 1e-6,
          .plusMinus = dice.between(0, 3) * 0.01 * mm,
          .bore = role == Role::HeadGasket ? dice.between(690, 700) * 0.1 * mm : 0.0,
          .quantity = dice.oneIn(2) ? std::nullopt : std::optional(dice.between(0, 4)),
          .servesAll = dice.oneIn(4)};
}

// Coarse steps make many ties, fine ones none.
Question randomQuestion(Dice& dice, const Mode& mode) {
  const bool alike = mode.onePlateForAll && mode.sameGasketsInAll;
  const int cylinders = dice.between(1, alike ? 4 : 3);
  const int many = alike ? 6 : cylinders == 3 ? 2 : 3;
  const int finest = dice.oneIn(2) ? 50 : 1;
  const int coarse = 50 / finest;
  Question question;
  for (int i = dice.between(0, many); i > 0; --i) {
    question.shelf.push_back(randomPart(dice, Role::BaseGasket, finest, 2 * coarse, 8 * coarse));
  }
  for (int i = dice.between(1, many); i > 0; --i) {
    question.shelf.push_back(randomPart(dice, Role::HeadGasket, finest, 12 * coarse, 24 * coarse));
  }
  for (int i = dice.between(0, many); i > 0; --i) {
    question.shelf.push_back(randomPart(dice, Role::Plate, finest, 10 * coarse, 30 * coarse));
  }
  const bool unlike = dice.oneIn(2);
  for (int i = 0; i < cylinders; ++i) {
    question.cylinders.push_back(
        {.deckClearanceBare = dice.between(-30 * coarse, -20 * coarse) * finest * 1e-6,
         .squishBare = dice.between(0, 1) * 0.05 * mm,
         .bore = (unlike ? 68.0 + dice.between(0, 2) : 68.0) * mm,
         .sweptVolume = (unlike ? 230.0 + dice.between(0, 20) : 239.69) * ml,
         .volumesBesideStack = dice.oneIn(20) ? -10 * ml : dice.between(190, 210) * 0.1 * ml,
         .worst = dice.between(5, 15) * 0.01 * mm});
  }
  Wants& wants = question.wants;
  wants = {.squish = dice.between(16, 20) * 0.05 * mm,
           .ratio = dice.between(100, 120) * 0.1,
           .onePlateForAll = mode.onePlateForAll,
           .sameGasketsInAll = mode.sameGasketsInAll,
           .sortBy = mode.sortBy};
  if (dice.oneIn(2)) wants.squishLeast = dice.between(10, 16) * 0.05 * mm;
  if (dice.oneIn(2)) wants.squishMost = dice.between(18, 30) * 0.05 * mm;
  if (dice.oneIn(3)) wants.leastAtWorst = dice.between(10, 16) * 0.05 * mm;
  if (dice.oneIn(3)) wants.ratioMost = dice.between(108, 120) * 0.1;
  if (dice.oneIn(3)) wants.ratioLeast = dice.between(95, 108) * 0.1;
  if (dice.oneIn(3)) wants.squishSpread = dice.between(0, 5) * 0.05 * mm;
  if (dice.oneIn(3)) wants.ratioSpread = dice.between(0, 10) * 0.1;
  if (dice.oneIn(4)) wants.baseGasketsMost = dice.between(0, 2);
  return question;
}

void expectSame(const Answer& fast, const Answer& plain) {
  ASSERT_TRUE(fast.searchedAll);
  ASSERT_EQ(fast.best.size(), plain.best.size());
  for (std::size_t i = 0; i < fast.best.size(); ++i) {
    const Stack& one = fast.best[i];
    const Stack& other = plain.best[i];
    EXPECT_EQ(one.rank, other.rank);
    for (std::size_t cylinder = 0; cylinder < one.cylinders.size(); ++cylinder) {
      EXPECT_EQ(one.cylinders[cylinder].set, other.cylinders[cylinder].set)
          << "stack " << i << ", cylinder " << cylinder;
    }
  }
  EXPECT_EQ(fast.tally.considered, plain.tally.considered);
  double together = 0.0;  // what the search of unlike cylinders does not tell apart
  for (std::size_t i = 0; i < kReasonCount; ++i) {
    const bool alone = static_cast<Reason>(i) < Reason::TooFew;
    if (alone || fast.tally.undecided == 0.0) {
      EXPECT_EQ(fast.tally.lost[i], plain.tally.lost[i]) << "reason " << i;
    } else {
      EXPECT_EQ(fast.tally.lost[i], 0.0);
      together += plain.tally.lost[i];
    }
  }
  EXPECT_EQ(fast.tally.undecided, together);
}

class EveryStackTried : public testing::TestWithParam<Mode> {};

TEST_P(EveryStackTried, GivesTheSameListAndCounts) {
  Dice dice(1);
  for (int i = 0; i < 150; ++i) {
    SCOPED_TRACE(i);
    const Question question = randomQuestion(dice, GetParam());
    expectSame(choose(question), chooseFromEveryStack(question));
    if (HasFailure()) return;
  }
}

std::vector<Mode> allModes(bool alikeToo) {
  std::vector<Mode> modes;
  for (const bool onePlate : {true, false}) {
    for (const bool sameGaskets : {true, false}) {
      if (onePlate && sameGaskets && !alikeToo) continue;
      for (const SortBy sortBy : {SortBy::SquishNearness, SortBy::RatioNearness,
                                  SortBy::SquishSpread, SortBy::RatioSpread}) {
        modes.push_back({onePlate, sameGaskets, sortBy});
      }
    }
  }
  return modes;
}

INSTANTIATE_TEST_SUITE_P(Choice, EveryStackTried, testing::ValuesIn(allModes(true)));

class UnlikeCylindersTried : public testing::TestWithParam<Mode> {};

// Hardly anything is kept, and hardly a step taken: what is then said to be all has to be all.
TEST_P(UnlikeCylindersTried, IsNotSaidToBeDoneWhereItIsNot) {
  Dice dice(2);
  int done = 0;
  int stopped = 0;
  int provenNearest = 0;
  int leftOpen = 0;
  for (int i = 0; i < 400; ++i) {
    SCOPED_TRACE(i);
    const Question question = randomQuestion(dice, GetParam());
    const Effort effort{.steps = dice.oneIn(2) ? 100'000 : dice.between(0, 2000),
                        .nearestSets = static_cast<std::size_t>(dice.between(1, 12)),
                        .setsToSpread = static_cast<std::size_t>(dice.between(1, 12))};
    const Pieces pieces(question);
    BestList best;
    Answer fast;
    const Searched searched = searchMixed(pieces, best, fast.tally, effort);
    fast.searchedAll = searched.all;
    fast.best = stacksOf(question, pieces, best);
    const Answer plain = chooseFromEveryStack(question);
    if (fast.searchedAll) {
      ++done;
      expectSame(fast, plain);
    } else {
      ++stopped;
      leftOpen += searched.noneNearer ? 0 : 1;
      ASSERT_LE(fast.best.size(), plain.best.size());
      for (std::size_t place = 0; place < fast.best.size(); ++place) {
        EXPECT_GE(fast.best[place].rank, plain.best[place].rank);
        if (searched.noneNearer) {
          ++provenNearest;
          EXPECT_NEAR(fast.best[place].rank, plain.best[place].rank, 1e-12);
        }
      }
    }
    if (HasFailure()) return;
  }
  EXPECT_GT(done, 40);
  EXPECT_GT(stopped, 10);
  EXPECT_GT(provenNearest, 10);
  EXPECT_GT(leftOpen, 0);
}

INSTANTIATE_TEST_SUITE_P(Choice, UnlikeCylindersTried, testing::ValuesIn(allModes(false)));

// 120 base sets, 100 plates and 16 head gaskets, as in the benchmark.
Question fullShelf() {
  Question question;
  for (int i = 0; i < 14; ++i) {
    question.shelf.push_back({.role = Role::BaseGasket,
                              .thickness = (0.10 + 0.05 * i) * mm,
                              .plusMinus = (i % 2 == 0 ? 0.01 : 0.03) * mm});
  }
  for (int i = 0; i < 100; ++i) {
    question.shelf.push_back(
        {.role = Role::Plate, .thickness = (0.5 + 0.02 * i) * mm, .plusMinus = 0.01 * mm});
  }
  for (int i = 0; i < 16; ++i) {
    question.shelf.push_back({.role = Role::HeadGasket,
                              .thickness = (0.5 + 0.05 * i) * mm,
                              .plusMinus = 0.03 * mm,
                              .bore = (69.5 + 0.5 * (i % 3)) * mm});
  }
  for (const double deck : {-2.13, -2.05, -1.96}) {
    question.cylinders.push_back({.deckClearanceBare = deck * mm,
                                  .bore = 68 * mm,
                                  .sweptVolume = 239.69 * ml,
                                  .volumesBesideStack = 20.1 * ml,
                                  .worst = 0.07 * mm});
  }
  question.wants = {.squish = 0.90 * mm,
                    .squishLeast = 0.80 * mm,
                    .squishMost = 1.20 * mm,
                    .leastAtWorst = 0.65 * mm,
                    .ratio = 11.0,
                    .ratioLeast = 10.3,
                    .ratioMost = 11.5,
                    .ratioSpread = 0.26,
                    .plateNeeded = true};
  return question;
}

TEST(Choice, OfAFullShelfIsThatOfEveryStack) {
  for (const SortBy sortBy :
       {SortBy::SquishNearness, SortBy::RatioNearness, SortBy::SquishSpread, SortBy::RatioSpread}) {
    Question question = fullShelf();
    question.wants.sortBy = sortBy;
    const Answer answer = choose(question);
    EXPECT_EQ(answer.tally.considered, 192000);
    EXPECT_EQ(answer.best.size(), kBestCount);
    EXPECT_GT(answer.tally.lostTo(Reason::RatioSpreadOver), 0);
    expectSame(answer, chooseFromEveryStack(question));
  }
}

TEST(Choice, OfAFullShelfForUnlikeCylindersComesToAnEnd) {
  Question question = fullShelf();
  question.wants.sameGasketsInAll = false;
  const Answer one = choose(question);
  EXPECT_TRUE(one.searchedAll);
  EXPECT_EQ(one.best.size(), kBestCount);
  EXPECT_EQ(one.tally.considered, 100 * 1920.0 * 1920.0 * 1920.0);
  question.wants.onePlateForAll = false;
  const Answer own = choose(question);
  EXPECT_TRUE(own.searchedAll);
  EXPECT_EQ(own.best.size(), kBestCount);
  EXPECT_EQ(own.best.front().rank, 0.0);
}

// 2.4 million sets for each of four cylinders, up to three of a part.
Question endlessShelf() {
  Question question = fullShelf();
  question.shelf.clear();
  for (int i = 0; i < 70; ++i) {
    question.shelf.push_back({.role = Role::BaseGasket,
                              .thickness = (0.100 + 0.013 * i) * mm,
                              .plusMinus = (i % 2 == 0 ? 0.01 : 0.03) * mm,
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
  }
  for (int i = 0; i < 30; ++i) {
    question.shelf.push_back({.role = Role::Plate,
                              .thickness = (0.50 + 0.05 * i) * mm,
                              .plusMinus = 0.01 * mm,
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
    question.shelf.push_back({.role = Role::HeadGasket,
                              .thickness = (0.500 + 0.037 * i) * mm,
                              .plusMinus = 0.03 * mm,
                              .bore = (69.5 + 0.5 * (i % 3)) * mm,
                              .quantity = i % 4 > 0 ? std::optional(i % 4) : std::nullopt});
  }
  question.cylinders.push_back(question.cylinders.front());
  question.cylinders.back().deckClearanceBare = -2.087 * mm;
  return question;
}

TEST_P(UnlikeCylindersTried, ComesToAnEndWithAnEndlessShelf) {
  Question question = endlessShelf();
  question.wants.onePlateForAll = GetParam().onePlateForAll;
  question.wants.sameGasketsInAll = GetParam().sameGasketsInAll;
  question.wants.sortBy = GetParam().sortBy;
  const Answer answer = choose(question);
  ASSERT_FALSE(answer.best.empty());
  for (const Stack& stack : answer.best) {
    std::vector<Set> sets;
    for (const Fit& fit : stack.cylinders) sets.push_back(fit.set);
    EXPECT_FALSE(judge(question, sets).loss);
  }
  if (!question.wants.sameGasketsInAll) {
    EXPECT_EQ(answer.best.size(), kBestCount);
    const bool byRatio = question.wants.sortBy == SortBy::RatioNearness ||
                         question.wants.sortBy == SortBy::RatioSpread;
    EXPECT_LT(answer.best.back().rank, byRatio ? 0.001 : 1e-6);
  }
}

TEST(Choice, SaysSoWhereThereAreTooManyNearlyAlikeToTryAll) {
  Question question = fullShelf();
  question.wants.sameGasketsInAll = false;
  question.wants.sortBy = SortBy::SquishSpread;
  const Answer answer = choose(question);
  EXPECT_FALSE(answer.searchedAll);
  EXPECT_EQ(answer.best.size(), kBestCount);
}

}  // namespace
}  // namespace strokewright::choice
