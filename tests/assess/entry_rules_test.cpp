/// What is said of a text itself: why it is no number, and how it was read.

#include "core/assess/entry_rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <ostream>
#include <tuple>

#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::assess {
namespace {

using describe::Finding;
using describe::Weight;
using testing::HasSubstr;

constexpr int kTarget = 1;

/// The finding of that rule about what was typed into the target, or an empty text.
std::string said(std::string_view rule, std::string_view key, std::string_view text) {
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], key, text);
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, rule, key);
  return finding == nullptr ? std::string() : told(*finding);
}

struct Row {
  const char* name;
  const char* key;
  const char* text;
  std::vector<const char*> says;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.text; }
};

std::string nameOf(const testing::TestParamInfo<Row>& row) { return row.param.name; }

class UnreadText : public testing::TestWithParam<Row> {};

TEST_P(UnreadText, SaysWhyAndWhatToType) {
  const Row& row = GetParam();
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], row.key, row.text);
  const describe::Entry& entry = project.engines[kTarget][*catalogue().findInput(row.key)];
  EXPECT_FALSE(entry.known());
  EXPECT_EQ(entry.text, row.text);
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, "not_a_number_yet", row.key);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, Weight::Objects);
  for (const char* part : row.says) EXPECT_THAT(told(*finding), HasSubstr(part));
  EXPECT_THAT(told(*finding), HasSubstr("taken as unknown"));
  EXPECT_EQ(told(*finding).find_first_of("{}"), std::string::npos) << told(*finding);
}

INSTANTIATE_TEST_SUITE_P(
    Problems, UnreadText,
    testing::Values(
        Row{"Words", "bore_m", "sixty", {"Bore: “sixty” cannot be read as a number", "digits"}},
        Row{"TwoMarks", "bore_m", "1.2.3", {"two decimal marks", "Leave one"}},
        Row{"Grouped", "wanted_speed_rad_s", "41 794", {"digits in groups", "without gaps"}},
        Row{"Gap", "seat_height_m", "98.1;; 98.2", {"number is missing", "“98.1;; 98.2”"}},
        Row{"Range", "head_gasket_m", "0.6 to 1.2", {"“0.6 to 1.2” is a range", "not one number"}},
        Row{"TwoPlusMinus", "bore_m", "66 ± 1 ± 2", {"One ± stands behind all numbers"}},
        Row{"UnknownUnit", "bore_m", "66 cubits", {"unit “cubits”", "It takes mm, in, cm"}},
        Row{"NoUnit", "inlet_valve_count", "2 pcs", {"“pcs”", "It takes no unit"}},
        Row{"WrongKind", "bore_m", "66 g", {"“g”, a unit of something else", "It takes mm"}},
        Row{"WrongKindWithoutUnit", "inlet_valve_count", "2 mm", {"“mm”", "It takes no unit"}},
        Row{"OpenUnitOfAList", "seat_height_m", "1 in; 2; 30 mm", {"which unit 2 is in", "Give 2"}},
        Row{"OpenUnitByPlusMinus",
            "head_gasket_m",
            "0.65 ± 20 µm",
            {"which unit 0.65 is in", "Give 0.65 its unit too"}},
        Row{"ZeroDivisor", "bore_m", "2 3/0 in", {"“2 3/0 in” divides by nought"}},
        Row{"Improper", "bore_m", "2 13/8 in", {"fraction of one or more behind a whole number"}},
        Row{"TooLarge", "bore_m", "1e400", {"“1e400”", "too large", "40 digits"}},
        Row{"ListOfNumbers", "wanted_squish_m", "0.9; 1.0", {"one number, not a list"}},
        Row{"NoAnswer",
            "cycle",
            "wankel",
            {"Cycle: “wankel” is no answer", "“four-stroke”, “two-stroke”"}},
        Row{"ListOfAnswers", "use", "hill; race", {"one answer, not a list", "“road”"}},
        Row{"OneOfTheAnswersIsNone", "crown_volume_sense", "takes; gives", {"is no answer"}}),
    nameOf);

class ReadText : public testing::TestWithParam<Row> {};

TEST_P(ReadText, SaysHowItWasRead) {
  const std::string told = said("read_as", GetParam().key, GetParam().text);
  for (const char* part : GetParam().says) EXPECT_THAT(told, HasSubstr(part));
}

INSTANTIATE_TEST_SUITE_P(
    Otherwise, ReadText,
    testing::Values(
        Row{"Step",
            "chamber_volume_m3",
            "0.2 to 18.9",
            {"“0.2 to 18.9” is read as 18.70 ml, the step between two marks"}},
        Row{"MeanInAnotherUnit",
            "seat_height_m",
            "3.861 | 3.865 in",
            {"read as 98.12 mm, the mean of its readings"}},
        Row{"MeanWithoutEnd",
            "chamber_volume_m3",
            "0 to 44.1 | 0 to 44.2 | 0 to 44.2",
            {"read as 44.17 ml, the mean"}},
        Row{"MeanWithCommas",
            "seat_height_m",
            "98,12 | 98,16",
            {"read as 98.14 mm; a comma is a decimal mark"}},
        Row{"MeanOfSteps",
            "chamber_volume_m3",
            "0 to 18.5 | 18.5 to 37.5",
            {"read as 18.75 ml, the mean", "each the step between two marks"}},
        Row{"List", "seat_height_m", "4 in; 98 mm; 98 mm", {"read as 101.60 · 98.00 · 98.00 mm."}},
        Row{"ListOfFractions", "seat_height_m", "3 7/8; 4; 4 in", {"98.425"}},
        Row{"ListOfMeans",
            "chamber_volume_m3",
            "0 to 44 | 0 to 45; 44; 44",
            {"44.50 · 44.00 · 44.00 ml"}},
        Row{"ListWithCommas", "seat_height_m", "98,1; 98,2; 98,3", {"a comma is a decimal mark"}}),
    nameOf);

TEST(AText, ThatStandsForItselfIsNotSpokenOf) {
  for (const char* text : {"98.1", "98.1; 98.2; 98.3", "98.1 mm ± 0.03", "98.12 | 98.16",
                           "98.12 | 98.13 | 98.11; 98.2; 98.3 ± 0.02"}) {
    EXPECT_EQ(said("read_as", "seat_height_m", text), "") << text;
  }
}

TEST(AComma, GoesWithoutSayingWhereItIsTheReadersOwnMark) {
  units::Style comma;
  comma.decimalMark = ",";
  for (const auto& [rule, key, text] :
       {std::tuple("read_as", "bore_m", "68,5"),
        std::tuple("thousand_or_decimal", "head_gasket_m", "1,234"),
        std::tuple("thousand_or_decimal", "class_limit_m3", "1,200")}) {
    model::Project project = sample("burdock-719");
    type(project.engines[kTarget], key, text);
    const Assessment assessment(project);
    const Finding* finding = findingOf(assessment, kTarget, rule, key);
    ASSERT_NE(finding, nullptr) << text;
    EXPECT_TRUE(goesWithoutSaying(*finding, comma)) << text;
    EXPECT_FALSE(goesWithoutSaying(*finding, {})) << text;
  }
}

TEST(AMark, OfSeveralNumbersIsSaidOnceWithTheirNames) {
  model::Project project = sample("burdock-719");
  const std::vector<std::string_view> keys{"head_gasket_m", "wanted_squish_m"};
  for (const std::string_view key : keys) type(project.engines[kTarget], key, "1,125");
  const Assessment assessment(project);
  std::vector<const Finding*> findings;
  for (const std::string_view key : keys) {
    findings.push_back(findingOf(assessment, kTarget, "thousand_or_decimal", key));
    ASSERT_NE(findings.back(), nullptr) << key;
    EXPECT_TRUE(tellsTheMark(*findings.back())) << told(*findings.back());
  }
  const Finding together = marksTold(findings);
  EXPECT_EQ(together.about.front()->key, keys.front());
  EXPECT_THAT(told(together), HasSubstr("Head gasket, compressed; squish gap wanted: each comma is "
                                        "read as the decimal mark"));
}

TEST(AMark, ThatMayHaveMeantThousandsKeepsItsOwnLine) {
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], "class_limit_m3", "1,200");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, "thousand_or_decimal", "class_limit_m3");
  ASSERT_NE(finding, nullptr);
  EXPECT_FALSE(tellsTheMark(*finding));
}

TEST(AComma, InAnotherUnitIsStillSaidHowItWasRead) {
  units::Style comma;
  comma.decimalMark = ",";
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], "bore_m", "2,68 in");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, "read_as", "bore_m");
  ASSERT_NE(finding, nullptr);
  EXPECT_FALSE(goesWithoutSaying(*finding, comma));
  EXPECT_THAT(told(*finding), HasSubstr("its comma as the decimal mark"));
}

/// What was typed in a unit cannot have been meant in it.
TEST(ANumberFarOff, IsAskedForTheUnitThatIsMeant) {
  const std::string inches = said("unusual", "wanted_squish_m", "0.9 in");
  EXPECT_THAT(inches, HasSubstr("22.86 mm cannot be meant, seldom is it more than 1.50 mm"));
  EXPECT_THAT(inches, HasSubstr("Type it anew, or in the unit that is meant"));
  EXPECT_THAT(inches, HasSubstr("Millimetres? That makes 0.90 mm"));
  EXPECT_THAT(said("unusual", "wanted_squish_m", ".035 thou"),
              HasSubstr("Inches? That makes 0.889 mm"));
  EXPECT_THAT(said("unusual", "wanted_squish_m", "0.036"), HasSubstr("Inches? That makes 0.91"));
  EXPECT_THAT(said("unusual", "wanted_squish_m", "30"),
              HasSubstr("Thousandths of an inch? That makes 0.76"));
}

TEST(ANumberFarOff, InAFieldOfThousandthsIsTakenForInches) {
  model::Project project = sample("burdock-719");
  const describe::Input& wanted = *catalogue().findInput("wanted_squish_m");
  project.engines[kTarget].set(wanted,
                               model::entryFrom(wanted, ".035", units::UnitGroup::inchPound()));
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, "unusual", wanted.key);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("Inches? That makes 0.889 mm"));
  ASSERT_EQ(finding->mends.size(), 1U);
  EXPECT_EQ(finding->mends.front().entries.front().second, "0.0350 in");
}

TEST(APlusMinus, WithATypedMinusIsForbidden) {
  EXPECT_THAT(said("negative_tolerance", "head_gasket_m", "0.65 ± -0.02"), HasSubstr("−0.020 mm"));
  EXPECT_EQ(said("negative_tolerance", "head_gasket_m", "0.65 ± 0.02"), "");
}

TEST(AnUnknownWord, InALineOfAListIsToldWithTheWordsThereAre) {
  model::Project project = sample("burdock-719");
  std::vector<describe::Entries>& holes = project.engines[kTarget].lists[&model::list::plateHoles];
  holes.resize(2);
  holes[1][&model::list::holeFor] =
      model::entryFrom(model::list::holeFor, "gallery", units::UnitGroup::metric());
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, kTarget, "not_a_number_yet", "hole_for");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, Weight::Objects);
  EXPECT_EQ(finding->list, &model::list::plateHoles);
  EXPECT_EQ(finding->item, 1);
  EXPECT_EQ(told(*finding),
            "Hole for, line 2 of the holes of the spacer plate: “gallery” is no answer. It takes "
            "one of “stud”, “dowel”, “water”, “oil”, “chain tunnel”, “other”. | It counts as "
            "“other”.");
}

TEST(WhyUnknown, KnowsEveryInput) {
  for (const describe::Input* input : model::inputs()) {
    const std::string text = "1.2.3";
    const describe::Entry entry = model::entryFrom(*input, text, units::UnitGroup::metric());
    const std::string why = describe::word(whyUnknown(*input, entry), {});
    EXPECT_THAT(why, HasSubstr("“1.2.3”")) << input->key;
    EXPECT_EQ(why.back(), '.') << why;
  }
}

}  // namespace
}  // namespace strokewright::assess
