#include <gtest/gtest.h>

#include "core/describe/said_once.h"
#include "core/describe/wording.h"
#include "tests/describe/toys.h"

namespace strokewright::describe {
namespace {

using toys::Engines;

std::vector<Finding> judged(const Engines& engines, const Rule& rule) {
  Evaluation evaluation = engines.evaluated();
  std::vector<Finding> findings;
  evaluation.judge(0, rule, findings);
  return findings;
}

std::string said(const Finding& finding) { return word(finding.says, {}); }

TEST(ARule, SaysOnceWhatIsTheSameInEveryCylinder) {
  const Engines engines =
      Engines().enter(toys::cylinders, {3.0}).enter(toys::place, {1.0}).enter(toys::part, {2.0});
  const auto findings = judged(engines, toys::saysSum);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].cylinder, -1);
  EXPECT_EQ(said(findings[0]), "The sum is 3.00 of part.");
  EXPECT_EQ(findings[0].key, "says_sum");
  EXPECT_EQ(findings[0].source, "toy");
  EXPECT_EQ(findings[0].mends[0].entries[0].second, "4.00");
}

TEST(ARule, ListsTheNumbersThatAreNotAlike) {
  const Engines engines = Engines().enter(toys::place, {1.0}).enter(toys::part, {2.0, 3.0, 4.0});
  const auto findings = judged(engines, toys::saysSum);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].cylinder, -1);
  EXPECT_EQ(said(findings[0]), "The sum is 3.00 · 4.00 · 5.00 of part.");
  EXPECT_EQ(findings[0].mends[0].entries[0].second, "4.00; 6.00; 8.00");
}

TEST(ARule, NamesTheCylinderWhereNotAllAreMeant) {
  const Engines engines =
      Engines().enter(toys::place, {1.0}).enter(toys::part, {2.0, 30.0, 4.0}, 0.1);
  const auto findings = judged(engines, toys::saysLarge);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].cylinder, 1);
  EXPECT_EQ(said(findings[0]), "31.00 is large.");
  EXPECT_EQ(findings[0].mends[0].entries[0].second, "2.00; 1.00; 4.00 ± 0.10")
      << "the others keep their numbers, the entry its ±";
}

TEST(ARule, IsSilentWhereItMetAMissingEntryOrARefusal) {
  EXPECT_TRUE(judged(Engines(), toys::saysRest).empty());
  EXPECT_TRUE(judged(Engines().enter(toys::x1, {-3.0}), toys::saysRest).empty());
  EXPECT_EQ(judged(Engines().enter(toys::x1, {3.0}), toys::saysRest).size(), 1U);
}

TEST(ARule, ReadsBothTolerances) {
  const Engines engines = Engines().enter(toys::x1, {1.0}, 0.3).enter(toys::x2, {1.0}, 0.4);
  const auto findings = judged(engines, toys::saysWorst);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(said(findings[0]), "2.00 ± 0.70, likely 0.50");
}

Finding finding(Weight weight, std::string_view pattern, Argument argument) {
  Finding finding;
  finding.weight = weight;
  finding.says = {pattern, {std::move(argument)}};
  finding.about = {&toys::x1};
  return finding;
}

const Quantity kOne{toys::Kind::Ratio, 1.0};
const Quantity kTwo{toys::Kind::Ratio, 2.0};

TEST(SaidOnce, KeepsApartWhatDiffersInMoreThanNumbers) {
  const Finding first = finding(Weight::Objects, "It is {1}.", kOne);
  for (const Finding& second :
       {finding(Weight::Forbids, "It is {1}.", kOne), finding(Weight::Objects, "It was {1}.", kOne),
        finding(Weight::Objects, "It is {1}.", std::string("one")),
        finding(Weight::Objects, "It is {1}.", &toys::x1)}) {
    const auto findings = saidOnce({{first}, {second}});
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].cylinder, 0);
    EXPECT_EQ(findings[1].cylinder, 1);
  }
}

TEST(SaidOnce, TakesNumbersThatDifferByRoundingForTheSame) {
  const Quantity almost{toys::Kind::Ratio, 1.0 + 1e-15};
  const auto findings = saidOnce({{finding(Weight::Objects, "It is {1}.", kOne)},
                                  {finding(Weight::Objects, "It is {1}.", almost)}});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(said(findings[0]), "It is 1.00.");
}

TEST(SaidOnce, MergesTheHintAsWell) {
  Finding first = finding(Weight::Objects, "It is {1}.", kOne);
  Finding second = first;
  first.hint = {"Meant as {1}?", {kOne}};
  second.hint = {"Meant as {1}?", {kTwo}};
  const auto findings = saidOnce({{first}, {second}});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(word(findings[0].hint, {}), "Meant as 1.00 · 2.00?");
}

TEST(SaidOnce, SaysNothingOfNothing) { EXPECT_TRUE(saidOnce({{}, {}}).empty()); }

}  // namespace
}  // namespace strokewright::describe
