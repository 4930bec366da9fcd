#include "core/describe/table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

#include "core/describe/table_text.h"
#include "core/describe/tabulated.h"
#include "tests/describe/toys.h"

namespace strokewright::describe {
namespace {

using namespace toys;
using testing::ElementsAre;
using testing::StartsWith;

TEST(Catalogue, FindsATableByItsKey) {
  EXPECT_EQ(toys::catalogue().findTable("roots"), &roots);
  EXPECT_EQ(toys::catalogue().findTable("rots"), nullptr);
}

TEST(Tabulated, IsFilledColumnByColumn) {
  Evaluation evaluation =
      Engines().enter(x1, {5.0}).enter(place, {10.0}).enter(part, {0.5}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, roots);
  ASSERT_EQ(filled.state, State::Value);
  ASSERT_EQ(filled.rows.size(), 3u);
  EXPECT_THAT(filled.rows["n"].numbers, ElementsAre(1.0, 2.0, 3.0));
  EXPECT_THAT(filled.rows["root"].numbers, ElementsAre(2.0, 4.0, 6.0));
  EXPECT_THAT(filled.rows["sum"].numbers, ElementsAre(11.5, 12.5, 13.5));
}

TEST(Tabulated, IsThatOfTheCylinderAskedFor) {
  Evaluation evaluation = Engines()
                              .enter(cylinders, {2.0})
                              .enter(x1, {2.0})
                              .enter(place, {1.0, 7.0})
                              .enter(part, {0.0})
                              .evaluated();
  EXPECT_EQ(evaluation.tabulated(0, roots, 0).rows["sum"].numbers[0], 2.0);
  EXPECT_EQ(evaluation.tabulated(0, roots, 1).rows["sum"].numbers[0], 8.0);
}

TEST(Tabulated, MayHoldWordsAndRowsWithoutANumber) {
  Evaluation evaluation = Engines().enter(cylinders, {2.0}).enter(place, {4.0, -1.0}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, doubles);
  ASSERT_EQ(filled.state, State::Value);
  EXPECT_THAT(filled.rows["name"].words, ElementsAre("first; of all", "next"));
  EXPECT_EQ(filled.rows["per_cent"].numbers[0], 0.5);
  EXPECT_TRUE(std::isnan(filled.rows["per_cent"].numbers[1]));
}

TEST(Tabulated, WaitsForAllThatIsMissingAndHoldsNoRows) {
  Evaluation evaluation = Engines().enter(place, {1.0}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, roots);
  EXPECT_EQ(filled.state, State::Waits);
  EXPECT_EQ(filled.rows.size(), 0u);
  EXPECT_TRUE(filled.notes.missing.own[static_cast<std::size_t>(x1.number)]);
  EXPECT_TRUE(filled.notes.missing.own[static_cast<std::size_t>(part.number)]);
  int missing = 0;
  filled.notes.missing.own.each([&](std::size_t) { ++missing; });
  EXPECT_EQ(missing, 2);
}

TEST(Tabulated, IsRefusedWithWhatItReads) {
  Evaluation evaluation =
      Engines().enter(x1, {-3.0}).enter(place, {1.0}).enter(part, {1.0}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, roots);
  ASSERT_EQ(filled.state, State::Refused);
  EXPECT_EQ(evaluation.refusal(filled.notes).value, -4.0);
  EXPECT_EQ(filled.rows.size(), 0u);
}

TEST(Tabulated, IsRefusedForAnImpossibleEntry) {
  Evaluation evaluation =
      Engines().enter(x1, {2.0}).enter(place, {1.0}).enter(part, {2000.0}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, roots);
  ASSERT_EQ(filled.state, State::Refused);
  EXPECT_EQ(evaluation.refusal(filled.notes).input, &part);
}

TEST(Tabulated, IsRefusedWhereANumberIsInfinite) {
  Evaluation evaluation =
      Engines().enter(x1, {2.0}).enter(x2, {1e-300}).enter(x3, {1e300}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, quotients);
  ASSERT_EQ(filled.state, State::Refused);
  EXPECT_EQ(evaluation.refusal(filled.notes).sentence, kNotFinite);
}

TEST(Tabulated, MeansNothingWhereWhatItReadsMeansNothing) {
  Evaluation evaluation = Engines().enter(x1, {1.0}).evaluated();
  const Tabulated filled = evaluation.tabulated(0, odds);
  EXPECT_EQ(filled.state, State::None);
  EXPECT_EQ(filled.notes.none, "plain ones have none");
  EXPECT_EQ(filled.rows.size(), 0u);
}

TEST(Tabulated, LeavesTheResultsAsTheyWere) {
  Evaluation evaluation = Engines().enter(x1, {-3.0}).evaluated();
  const State before = evaluation.cell(0, rest).state;
  evaluation.tabulated(0, roots);
  EXPECT_EQ(evaluation.cell(0, rest).state, before);
}

TEST(Rows, OfUnlikeColumnsAreAMistakeOfTheTable) {
  Evaluation evaluation = Engines().evaluated();
  EXPECT_THROW(evaluation.tabulated(0, uneven), std::length_error);
}

TEST(Rows, KnowTheirColumnsOnly) {
  Rows rows(kRootsColumns);
  EXPECT_THROW(rows["rot"], std::out_of_range);
  EXPECT_THROW(rows.add({1.0}), std::length_error);
  EXPECT_THROW(rows.add({1.0, "two", 3.0}), std::bad_variant_access);
}

Rows someRows() {
  Rows rows(kDoublesColumns);
  rows.add({"plain", -0.0125, 0.5});
  rows.add({"with, comma; and \"marks\"", 12345.6785, kAbsent});
  rows.add({"two\nlines", 0.1 + 0.2, 0.0});
  return rows;
}

TEST(Csv, IsInSiWithAllDigitsAndQuotesWhatNeedsIt) {
  EXPECT_EQ(csv(headed(someRows())),
            "Name,\"Place, \"\"so to say\"\" (m)\",Share\r\n"
            "plain,-0.0125,0.5\r\n"
            "\"with, comma; and \"\"marks\"\"\",12345.6785,\r\n"
            "\"two\nlines\",0.30000000000000004,0\r\n");
}

TEST(Csv, IsInTheUnitsOfTheReader) {
  EXPECT_EQ(csv(headed(someRows()), {.group = units::UnitGroup::metric()}),
            "Name,\"Place, \"\"so to say\"\" (mm)\",Share (%)\r\n"
            "plain,-12.50,50.0\r\n"
            "\"with, comma; and \"\"marks\"\"\",12345678.50,\r\n"
            "\"two\nlines\",300.00,0.0\r\n");
}

TEST(Csv, IsReadByAGermanSpreadsheet) {
  EXPECT_EQ(csv(headed(someRows()), {.decimalMark = ","}),
            "Name;\"Place, \"\"so to say\"\" (mm)\";Share (%)\r\n"
            "plain;-12,50;50,0\r\n"
            "\"with, comma; and \"\"marks\"\"\";12345678,50;\r\n"
            "\"two\nlines\";300,00;0,0\r\n");
}

TEST(Csv, OfATableWithoutRowsHasItsNames) {
  EXPECT_EQ(csv(headed(Rows(kRootsColumns))), "Number,Root,Sum\r\n");
}

TEST(Tabbed, IsForTheClipboard) {
  EXPECT_THAT(
      tabbed(headed(someRows()), {.decimalMark = ","}),
      StartsWith("Name\t\"Place, \"\"so to say\"\" (mm)\"\tShare (%)\nplain\t-12,50\t50,0\n"));
}

TEST(SideBySide, HasTheFirstColumnOnceAndTheDifferenceAtTheEnd) {
  Rows was(kRootsColumns);
  was.add({1.0, 2.0, 3.0});
  was.add({2.0, kAbsent, 6.0});
  Rows is(kRootsColumns);
  is.add({1.0, 2.5, 4.0});
  is.add({2.0, 5.0, 8.0});
  const std::vector<NamedRows> named = {{"Old", &was}, {"New", &is}};
  EXPECT_EQ(csv(sideBySide(named, std::pair{1, 0})),
            "Number,Old: Root,Old: Sum,New: Root,New: Sum,Difference: Root,Difference: Sum\r\n"
            "1,2,3,2.5,4,0.5,1\r\n"
            "2,,6,5,8,,2\r\n");
  EXPECT_EQ(csv(sideBySide(std::span(named).first(1), std::nullopt)),
            "Number,Old: Root,Old: Sum\r\n1,2,3\r\n2,,6\r\n");
}

}  // namespace
}  // namespace strokewright::describe
