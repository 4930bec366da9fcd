#include "core/storage/project_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <clocale>
#include <ostream>
#include <random>
#include <string>

#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"

namespace strokewright::storage {
namespace {

using describe::Entry;
using describe::Input;
using model::Engine;
using model::Part;
using model::Project;
using testing::HasSubstr;
using testing::IsEmpty;
namespace in = model::in;

/// The remarks as a person reads them, one a line.
std::string said(const Read& read) {
  std::string all;
  for (const Remark& remark : read.remarks) {
    if (!all.empty()) all += '\n';
    all += describe::word(remark.says, units::Style{});
  }
  return all;
}

/// Nothing of it is at its default.
Entry fullEntry(const Input& input) {
  const auto last = [&] { return input.choices[input.choices.size() - 1].key; };
  const std::string text = input.kind == units::Kind::Choice ? std::string(last())
                           : input.list                      ? "1.37; 2.5 ± 0.01"
                                                             : "1.37 ± 0.01";
  Entry entry = model::entryFrom(input, text, units::UnitGroup::inchPound());
  entry.plusMinus = entry.plusMinus.value_or(0.25);
  entry.oneSigma = true;
  entry.origin = describe::Origin::Catalogue;
  entry.instrument = "Meßuhr \"0.002\"";
  entry.date = "2026-02-28";
  entry.note = "zweimal,\nbeide Seiten \\ °";
  return entry;
}

Project fullProject() {
  Project project{.name = "Name",
                  .note = "Note",
                  .drawnFor = "Whom",
                  .revision = "C",
                  .engines = {},
                  .referenceDonor = 1};
  for (const Part part : {Part::Target, Part::Donor, Part::Variant}) {
    Engine engine{
        .name = std::string(model::partKey(part)), .part = part, .note = "Ö", .entries = {}};
    for (const Input* input : model::inputs()) engine.set(*input, fullEntry(*input));
    project.engines.push_back(engine);
  }
  return project;
}

Project withEntry(const Input& input, const Entry& entry) {
  Project project;
  project.engines.emplace_back().set(input, entry);
  return project;
}

TEST(AProject, ComesBackFromItsText) {
  const Project project = fullProject();
  const Read back = read(write(project));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.project, project);
}

TEST(AProject, ComesBackEmpty) { EXPECT_EQ(read(write({})).project, Project{}); }

TEST(AProject, HasTheSameTextAfterReading) {
  const std::string text = write(fullProject());
  EXPECT_EQ(write(*read(text).project), text);
}

class EveryInputInAFile : public testing::TestWithParam<const Input*> {};

TEST_P(EveryInputInAFile, ComesBackWithAllThatWasEntered) {
  const Project project = withEntry(*GetParam(), fullEntry(*GetParam()));
  ASSERT_TRUE(project.engines[0][*GetParam()].known());
  const Read back = read(write(project));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.project, project);
}

TEST_P(EveryInputInAFile, ComesBackAsTextThatMakesNoSense) {
  const Project project =
      withEntry(*GetParam(), model::entryFrom(*GetParam(), "tbc", units::UnitGroup::metric()));
  const Read back = read(write(project));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.project, project);
}

INSTANTIATE_TEST_SUITE_P(Table, EveryInputInAFile,
                         testing::ValuesIn(model::inputs().begin(), model::inputs().end()),
                         [](const auto& row) { return std::string(row.param->key); });

TEST(AProject, ComesBackToTheLastBit) {
  Entry entry;
  for (const double value : {0.1 + 0.2, 1.0 / 3.0, 4e-7, 1e300, 5e-324, -0.00135}) {
    entry.values.push_back(value);
  }
  const Project project = withEntry(in::bore, entry);
  EXPECT_EQ(read(write(project)).project, project);
}

TEST(AFile, HasOneLineForEachEntry) {
  Project project = fullProject();
  const std::string before = write(project);
  project.engines[0].set(in::bore, model::entryFrom(in::bore, "66", units::UnitGroup::metric()));
  const std::string after = write(project);
  const auto [left, right] =
      std::mismatch(before.begin(), before.end(), after.begin(), after.end());
  const auto lineOf = [](const std::string& text, std::string::const_iterator place) {
    return std::count(text.begin(), place, '\n');
  };
  EXPECT_EQ(std::count(before.begin(), before.end(), '\n'),
            std::count(after.begin(), after.end(), '\n'));
  const std::string rest(std::find(left, before.end(), '\n'), before.end());
  EXPECT_TRUE(after.ends_with(rest)) << "line " << lineOf(before, left);
}

TEST(AFile, EndsWithALineEnd) { EXPECT_EQ(write({}).back(), '\n'); }

TEST(AFile, LeavesOutADonorThatIsNotThere) {
  Project project;
  project.referenceDonor = 3;
  EXPECT_EQ(read(write(project)).project, Project{});
}

TEST(AFile, LeavesOutAReferenceThatIsNoDonor) {
  Project project = fullProject();
  project.referenceDonor = 0;
  EXPECT_THAT(write(project), testing::Not(HasSubstr("reference_donor")));
}

TEST(AFile, KeepsBytesThatAreNoTextOut) {
  Project project;
  project.name = "a\xffz";
  EXPECT_EQ(read(write(project)).project.value().name, "a\uFFFDz");
}

/// Sets a locale and puts the old one back.
class Locale {
 public:
  explicit Locale(const char* name) : set_(std::setlocale(LC_ALL, name) != nullptr) {}
  Locale(const Locale&) = delete;
  Locale& operator=(const Locale&) = delete;
  ~Locale() { std::setlocale(LC_ALL, before_.c_str()); }
  bool set() const { return set_; }

 private:
  std::string before_ = std::setlocale(LC_ALL, nullptr);
  bool set_;
};

TEST(AFile, IsTheSameInGermany) {
  const Project project = fullProject();
  const std::string text = write(project);
  const Locale german("de_DE.UTF-8");
  if (!german.set()) GTEST_SKIP() << "this machine has no German locale";
  EXPECT_EQ(write(project), text);
  EXPECT_EQ(read(text).project, project);
}

constexpr std::string_view kSmall = R"({
  "format": "strokewright project",
  "version": 2,
  "written_by": "0.1.0",
  "project": {"name": "Ö", "reference_donor": 0},
  "engines": [
    {
      "name": "old",
      "part": "donor",
      "entries": {
        "cycle": {"value": "four_stroke"},
        "bore_m": {"value": 0.066, "plus_minus": 5e-06, "origin": "measured", "text": "66.0", "unit": "mm"},
        "wanted_squish_m": {"value": 0.001}
      }
    }
  ]
}
)";

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  const auto place = text.find(what);
  EXPECT_NE(place, std::string::npos) << what;
  return text.replace(place, what.size(), by);
}

TEST(AFile, IsTakenAsAPersonWroteIt) {
  const Read small = read(kSmall);
  EXPECT_EQ(said(small), "");
  ASSERT_TRUE(small.project);
  EXPECT_EQ(small.project->engines[0][in::bore].values, std::vector{0.066});
  EXPECT_EQ(small.project->engines[0].part, Part::Donor);
}

TEST(ASingleDonor, IsTheReferenceWhereNoneIsNamed) {
  const std::string unnamed = replaced(std::string(kSmall), ", \"reference_donor\": 0", "");
  const Read one = read(unnamed);
  EXPECT_EQ(said(one), "");
  EXPECT_EQ(one.project.value().referenceDonor, 0);
  const Read none = read(replaced(unnamed, "\"donor\"", "\"target\""));
  EXPECT_EQ(none.project.value().referenceDonor, -1);
  const Read two =
      read(replaced(unnamed, "\"engines\": [", "\"engines\": [{\"part\": \"donor\"},"));
  EXPECT_EQ(two.project.value().referenceDonor, -1) << "which one is open";
}

/// A list where one value belongs.
struct ListRow {
  const char* name;
  const char* what;
  const char* by;
  const Input* input;
  const char* text;
  const char* unit;
  const char* says;
  friend void PrintTo(const ListRow& row, std::ostream* out) { *out << row.by; }
};

class ListInAFile : public testing::TestWithParam<ListRow> {};

TEST_P(ListInAFile, IsKeptAsTextWhereOneValueBelongs) {
  const ListRow& row = GetParam();
  const Read file = read(replaced(std::string(kSmall), row.what, row.by));
  EXPECT_THAT(said(file), HasSubstr(row.says));
  ASSERT_TRUE(file.project);
  const Entry& entry = file.project->engines[0][*row.input];
  EXPECT_FALSE(entry.known());
  EXPECT_EQ(entry.text, row.text);
  EXPECT_EQ(entry.unit, row.unit);
  const Read again = read(write(*file.project));
  EXPECT_EQ(again.project, file.project);
  EXPECT_EQ(said(again), "");
}

INSTANTIATE_TEST_SUITE_P(
    Spoilt, ListInAFile,
    testing::Values(
        ListRow{"Numbers", "0.001}", "[0.0009, 0.001]}", &in::wantedSquish, "0.90; 1.00", "mm",
                "Line 13, column 9, in “entries” of engine “old”: squish gap wanted takes one "
                "value, not a list. It counts as "
                "unknown; the list is kept as its text."},
        ListRow{"NumbersBesideAText", "0.001}", R"([0.0254, 0.0508], "text": "1", "unit": "in"})",
                &in::wantedSquish, "1.0000; 2.0000", "in", "takes one value, not a list"},
        ListRow{"Answers", R"("four_stroke")", R"(["four_stroke", "two_stroke"])", &in::cycle,
                "four_stroke; two_stroke", "", "cycle takes one value, not a list"}),
    [](const auto& row) { return std::string(row.param.name); });

struct Row {
  const char* name;
  const char* what;
  const char* by;
  const char* says;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.by; }
};

class RefusedFile : public testing::TestWithParam<Row> {};

TEST_P(RefusedFile, SaysWhereAndWhy) {
  const Read spoilt = read(replaced(std::string(kSmall), GetParam().what, GetParam().by));
  EXPECT_FALSE(spoilt.project);
  EXPECT_EQ(said(spoilt), GetParam().says);
}

INSTANTIATE_TEST_SUITE_P(
    Spoilt, RefusedFile,
    testing::Values(
        Row{"UnknownEntry", "\"bore_m\"", "\"borre_m\"",
            "Line 12, column 9, in “entries” of engine “old”: the key “borre_m” is not known. Mend "
            "its spelling or remove it."},
        Row{"EveryUnknownKey", "\"name\": \"Ö\", \"reference_donor\"", "\"Ö\": 1, \"donor\"",
            "Line 5, column 15, in “project”: the key “Ö” is not known. Mend its spelling or "
            "remove it.\n"
            "Line 5, column 23, in “project”: the key “donor” is not known. Mend its spelling or "
            "remove it."},
        Row{"UnknownAtTheTop", "\"written_by\"", "\"writer\"",
            "Line 4, column 3: the key “writer” is not known. Mend its spelling or remove it."},
        Row{"UnknownInAnEngine", "\"part\"", "\"role\"",
            "Line 9, column 7, in engine “old”: the key “role” is not known. Mend its spelling or "
            "remove it."},
        Row{"UnknownInAnEntry", "\"origin\"", "\"from\"",
            "Line 12, column 57, in “bore_m” of “entries” of engine “old”: the key “from” is not "
            "known. Mend its spelling or remove it."},
        Row{"EscapedKey", "\"bore_m\"", R"("a\\\"b")",
            "Line 12, column 9, in “entries” of engine “old”: the key “a\\\"b” is not known. Mend "
            "its spelling or remove it."},
        Row{"RepeatedEntry", "\"wanted_squish_m\"", "\"bore_m\"",
            "Line 13, column 9, in “entries” of engine “old”: the key “bore_m” stands here a "
            "second time. Keep one."},
        Row{"RepeatedKey", "\"origin\": \"measured\"", "\"value\": 0.067",
            "Line 12, column 57, in “bore_m” of “entries” of engine “old”: the key “value” stands "
            "here a second time. Keep one."},
        Row{"NewerVersion", "\"version\": 2,\n  \"written_by\": \"0.1.0\"",
            "\"version\": 5,\n  \"written_by\": \"2.0.1\"",
            "Line 3, column 3: this file is of version 5 of the format, written by Strokewright "
            "2.0.1; this one reads up to version 2. Open it with the newer one."},
        Row{"VersionNought", "\"version\": 2", "\"version\": 0",
            "Line 3, column 3: “version” must be a whole number from 1."},
        Row{"BrokenVersion", "\"version\": 2", "\"version\": 2.5",
            "Line 3, column 3: “version” must be a whole number from 1."},
        Row{"VersionAsText", "\"version\": 2", "\"version\": \"1\"",
            "Line 3, column 3: “version” must be a number, not a text in quotation marks. Mend it "
            "in a text editor or open the backup."},
        Row{"NoVersion", "\"version\": 2,", "",
            "Line 1, column 1: the file does not say its “version”."},
        Row{"OtherFormat", "strokewright project", "shopping list",
            "Line 2, column 3: this is no Strokewright project; its “format” does not say so."},
        Row{"NumberAsText", "0.066", "\"0.066\"",
            "Line 12, column 20, in “bore_m” of “entries” of engine “old”: “value” must be a "
            "number, not a text in quotation marks. Mend it in a text editor or open the backup."},
        Row{"NumberAsNull", "0.066", "null",
            "Line 12, column 20, in “bore_m” of “entries” of engine “old”: “value” must be a "
            "number, not true, false or null. Mend it in a text editor or open the backup."},
        Row{"TextAsNumber", "\"66.0\"", "66.0",
            "Line 12, column 79, in “bore_m” of “entries” of engine “old”: “text” must be a text "
            "in quotation marks, not a number. Mend it in a text editor or open the backup."},
        Row{"EntryAsNumber", "{\"value\": 0.001}", "0.001",
            "Line 13, column 9, in “entries” of engine “old”: “wanted_squish_m” must be an object "
            "in braces, not a number. Mend it in a text editor or open the backup."},
        Row{"EnginesAsObject", "\"engines\": [", "\"engines\": {}, \"more\": [",
            "Line 6, column 3: “engines” must be a list in brackets, not an object in braces. Mend "
            "it in a text editor or open the backup.\n"
            "Line 6, column 18: the key “more” is not known. Mend its spelling or remove it.\n"
            "Line 5, column 28: there is no engine 0; engines are counted from 0."},
        Row{"EmptyList", "0.066", "[]",
            "Line 12, column 20, in “bore_m” of “entries” of engine “old”: the list of bore is "
            "empty. Put a value in, or take “value” out."},
        Row{"TextInAList", "0.066", "[0.066, \"x\"]",
            "Line 12, column 20, in “bore_m” of “entries” of engine “old”: no. 2 of “value” must "
            "be a number, not a text in quotation marks. Mend it in a text editor or open the "
            "backup."},
        Row{"UnknownAnswer", "four_stroke", "six_stroke",
            "Line 11, column 19, in “cycle” of “entries” of engine “old”: “six_stroke” is no "
            "answer to cycle. Say one of: four_stroke, "
            "two_stroke."},
        Row{"AnswerAsNumber", "\"four_stroke\"", "0",
            "Line 11, column 19, in “cycle” of “entries” of engine “old”: “value” must be a text "
            "in quotation marks, not a number. Mend it in a text editor or open the backup."},
        Row{"UnknownOrigin", "\"measured\"", "\"guessed\"",
            "Line 12, column 57, in “bore_m” of “entries” of engine “old”: “guessed” is no origin. "
            "Say measured, makers_book, catalogue, "
            "assumed or computed."},
        Row{"UnknownUnit", "\"mm\"", "\"g\"",
            "Line 12, column 95, in “bore_m” of “entries” of engine “old”: “g” is no unit for "
            "bore."},
        Row{"UnknownPart", "\"donor\"", "\"giver\"",
            "Line 9, column 7, in engine “old”: “giver” is no part an engine plays. Say donor, "
            "target or variant."},
        Row{"DonorNotThere", "\"reference_donor\": 0", "\"reference_donor\": 1",
            "Line 5, column 28: there is no engine 1; engines are counted from 0."},
        Row{"DonorBelowNought", "\"reference_donor\": 0", "\"reference_donor\": -1",
            "Line 5, column 28, in “project”: “reference_donor” must be the place of an engine, "
            "counted from 0."},
        Row{"DonorThatIsNone", "\"part\": \"donor\"", "\"part\": \"variant\"",
            "Line 5, column 28: engine 0 is no donor but a variant. Name the place of a donor, "
            "counted from 0, or make that engine’s “part” donor."},
        Row{"DonorWithoutAPart", "\"part\": \"donor\",", "",
            "Line 5, column 28: engine 0 is no donor but a target. Name the place of a donor, "
            "counted from 0, or make that engine’s “part” donor."},
        Row{"NumberTooLarge", "0.066", "1e999",
            "Line 12, column 33, after “value” in “bore_m”: this number is too large. Mend it or "
            "open the backup."},
        Row{"NotANumber", "0.066", "nan",
            "Line 12, column 30, after “value” in “bore_m”: this cannot be read; look for a comma, "
            "bracket or quotation mark "
            "too many or too few. Mend the place or open the backup."},
        Row{"CommaMissing", "\"version\": 2,", "\"version\": 2",
            "Line 4, column 14, after “version”: this cannot be read; look for a comma, bracket or "
            "quotation mark "
            "too many or too few. Mend the place or open the backup."},
        Row{"CommaMissingBetweenEntries", "\"mm\"},", "\"mm\"}",
            "Line 13, column 25, after “bore_m” in “entries”: this cannot be read; look for a "
            "comma, "
            "bracket or quotation mark too many or too few. Mend the place or open the backup."},
        Row{"SavedInLatin1", "\"old\"", "\"M\xFChle\"",
            "Line 8, column 17, after “name” in “engines”: this letter is not in UTF-8; the file "
            "was "
            "saved in another encoding, such as Latin-1. Save it in UTF-8 in a text editor, or "
            "open "
            "the backup."},
        Row{"SavedInUtf16", "{\n  \"format\"", "\xFF\xFE{\n  \"format\"",
            "Line 1, column 1: this letter is not in UTF-8; the file was saved in another "
            "encoding, "
            "such as Latin-1. Save it in UTF-8 in a text editor, or open the backup."},
        Row{"TwoFilesInOne", "}\n  ]\n}\n", "}\n  ]\n}\n{}",
            "Line 18, column 1: this cannot be read; look for a comma, bracket or quotation mark "
            "too many or too few. Mend the place or open the backup."},
        Row{"TooDeep", "0.066", "[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]",
            "Line 12, column 40, after “value” in “bore_m”: nested deeper than any project. Open "
            "the backup."}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(AValueOfTheWrongType, IsNamedByTheWayToIt) {
  constexpr std::string_view kLists = R"({
  "format": "strokewright project",
  "version": 2,
  "engines": [
    {"entries": {"bore_m": {"value": [0.066, {}], "readings": [[0.066], [[]], 5]}}},
    {"name": "new", "entries": [], "lists": {"plate_holes": [{}, {"along_m": {"note": {}}}, null]}},
    7
  ]
}
)";
  constexpr const char* kMend = " Mend it in a text editor or open the backup.";
  const std::vector<std::string> expected = {
      "Line 5, column 29, in “bore_m” of “entries” of no. 1 of “engines”: no. 2 of “value” must be "
      "a number, not an object in braces.",
      "Line 5, column 51, in “bore_m” of “entries” of no. 1 of “engines”: no. 1 of no. 2 of "
      "“readings” must be a number, not a list in brackets.",
      "Line 5, column 51, in “bore_m” of “entries” of no. 1 of “engines”: no. 3 of “readings” must "
      "be a list in brackets, not a number.",
      "Line 6, column 21, in engine “new”: “entries” must be an object in braces, not a list in "
      "brackets.",
      "Line 6, column 79, in “along_m” of no. 2 of “plate_holes” of “lists” of engine “new”: "
      "“note” "
      "must "
      "be a text in quotation marks, not an object in braces."};
  const Read spoilt = read(kLists);
  EXPECT_FALSE(spoilt.project);
  const std::string all = said(spoilt);
  for (const std::string& one : expected) EXPECT_THAT(all, HasSubstr(one + kMend));
  EXPECT_THAT(all,
              HasSubstr(", in “lists” of engine “new”: no. 3 of “plate_holes” must be an object"));
  EXPECT_THAT(all, HasSubstr("no. 3 of “engines” must be an object in braces, not a number."));
}

TEST(AFile, IsRefusedWhenItBreaksOff) {
  EXPECT_EQ(said(read(kSmall.substr(0, kSmall.find("measured")))),
            "Line 12, column 68, after “origin” in “bore_m”: the file breaks off here. Open its "
            "backup or the autosave.");
  EXPECT_EQ(said(read("")),
            "Line 1, column 1: the file breaks off here. Open its backup or the autosave.");
}

TEST(AFile, BreaksOffInTheMiddleOfALetterAsAnywhereElse) {
  EXPECT_THAT(said(read(kSmall.substr(0, kSmall.find("Ö") + 1))), HasSubstr("breaks off here"));
}

TEST(AFile, IsRefusedWheneverItBreaksOff) {
  const std::string text = write(withEntry(in::bore, fullEntry(in::bore)));
  for (std::size_t length = 0; length + 1 < text.size(); ++length) {
    const Read broken = read(std::string_view(text).substr(0, length));
    ASSERT_FALSE(broken.project) << length;
    ASSERT_EQ(broken.remarks.size(), 1U) << length;
    ASSERT_GE(broken.remarks[0].line, 1) << length;
  }
}

TEST(AFile, OfAnotherKindIsNoProject) {
  for (const char* text : {"{}", "[]", "5", "null", "\"strokewright project\"", "[[1], {}]"}) {
    EXPECT_THAT(said(read(text)), HasSubstr("this is no Strokewright project")) << text;
  }
}

TEST(ANumber, WinsOverItsText) {
  const Read spoilt = read(replaced(std::string(kSmall), "0.066", "0.068"));
  EXPECT_EQ(said(spoilt),
            "Line 12, column 9, in “entries” of engine “old”: the text “66.0” of bore says "
            "something else than its number. The "
            "number stands; the text was dropped.");
  const Entry& bore = spoilt.project.value().engines[0][in::bore];
  EXPECT_EQ(bore.values, std::vector{0.068});
  EXPECT_EQ(bore.text, "");
  EXPECT_EQ(bore.unit, "mm");
}

TEST(ANumber, KeepsItsTextWhenTheyDifferByRoundingAlone) {
  for (const char* number : {"0.06600000000000002", "0.06599999999999998"}) {
    const Read small = read(replaced(std::string(kSmall), "0.066", number));
    EXPECT_EQ(said(small), "") << number;
    const Entry& bore = small.project.value().engines[0][in::bore];
    EXPECT_EQ(bore.text, "66.0");
    EXPECT_EQ(units::exact(bore.values.at(0)), number);
  }
}

TEST(ANumber, WinsOverATextThatDiffersByMoreThanRounding) {
  const Read spoilt = read(replaced(std::string(kSmall), "0.066", "0.0660000000000002"));
  EXPECT_EQ(spoilt.project.value().engines[0][in::bore].text, "");
}

TEST(ANumber, KeepsATextWhosePlusMinusDiffersByRoundingAlone) {
  const Read small = read(replaced(replaced(std::string(kSmall), "66.0", "66.0 ± 0.03"), "5e-06",
                                   "2.9999999999999997e-05"));
  EXPECT_EQ(said(small), "");
  const Entry& bore = small.project.value().engines[0][in::bore];
  EXPECT_EQ(bore.text, "66.0 ± 0.03");
  EXPECT_EQ(bore.plusMinus, 2.9999999999999997e-05);
}

TEST(AHandWrittenNumber, AgreesWithItsDecimalText) {
  Entry entry = model::entryFrom(in::compressionHeight, "28.4 ± 0.03", units::UnitGroup::metric());
  EXPECT_EQ(entry.values, std::vector{0.0284});
  EXPECT_EQ(entry.plusMinus, 0.00003);
  const std::string text = write(withEntry(in::compressionHeight, entry));
  EXPECT_THAT(text, HasSubstr("\"value\": 0.0284, \"plus_minus\": 3e-05,"));
}

TEST(ANumber, WinsOverATextWithAnotherPlusMinus) {
  const Read spoilt = read(replaced(std::string(kSmall), "66.0", "66.0 ± 0.01"));
  EXPECT_EQ(spoilt.project.value().engines[0][in::bore].text, "");
  EXPECT_EQ(spoilt.project.value().engines[0][in::bore].plusMinus, 5e-6);
}

TEST(ANumber, WinsOverATextThatMakesNoSense) {
  const Read spoilt = read(replaced(std::string(kSmall), "66.0", "tbc"));
  EXPECT_EQ(spoilt.project.value().engines[0][in::bore].text, "");
}

TEST(ANumber, AgreesWithItsTextInTheUnitOfTheEntry) {
  Entry entry = model::entryFrom(in::bore, "2 5/8", units::UnitGroup::inchPound());
  EXPECT_EQ(read(write(withEntry(in::bore, entry))).project.value().engines[0][in::bore], entry);
}

TEST(ANumber, IsTakenFromItsTextWhenItIsMissing) {
  const Read small = read(replaced(std::string(kSmall), "\"value\": 0.066, ", ""));
  EXPECT_EQ(
      said(small),
      "Line 12, column 9, in “entries” of engine “old”: bore is taken from its text, “66.0”.");
  EXPECT_EQ(small.project.value().engines[0][in::bore].values, std::vector{0.066});
  EXPECT_EQ(small.project.value().engines[0][in::bore].plusMinus, 5e-6);
}

TEST(AFile, NeverBreaksReadingHoweverItIsSpoilt) {
  constexpr int kTries = 20000;
  constexpr auto kLongest = std::chrono::seconds(3);
  constexpr std::array<std::string_view, 12> kPieces = {
      "\"", "{", "}", "[", "]", ",", ":", "null", "1e999", "-0", "\\u0000", "\"value\": [1, 2]"};
  const std::string sound(kSmall);
  std::mt19937 random(20260228);
  const auto below = [&](std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
  };
  const auto end = std::chrono::steady_clock::now() + kLongest;
  for (int attempt = 0; attempt < kTries && std::chrono::steady_clock::now() < end; ++attempt) {
    std::string text = sound;
    for (std::size_t change = 0; change <= below(3); ++change) {
      const std::size_t place = below(text.size());
      switch (below(4)) {
        case 0:
          text[place] = static_cast<char>(below(256));
          break;
        case 1:
          text.erase(place, below(8));
          break;
        case 2:
          text.insert(place, text.substr(below(text.size()), below(40)));
          break;
        default:
          text.insert(place, kPieces[below(kPieces.size())]);
      }
    }
    const Read spoilt = read(text);
    if (spoilt.project) {
      ASSERT_EQ(read(write(*spoilt.project)).project, spoilt.project) << text;
    } else {
      ASSERT_FALSE(spoilt.remarks.empty()) << text;
    }
  }
}

}  // namespace
}  // namespace strokewright::storage
