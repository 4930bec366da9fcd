#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using testing::HasSubstr;

struct Row {
  const char* name;
  std::vector<std::string> args;
  const char* says;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class Unusable : public testing::TestWithParam<Row> {};

TEST_P(Unusable, IsSaidInASentenceWithStatusTwo) {
  const Ran it = ran(GetParam().args);
  EXPECT_EQ(it.status, 2);
  EXPECT_EQ(it.out, "");
  EXPECT_THAT(it.err, HasSubstr(GetParam().says));
}

INSTANTIATE_TEST_SUITE_P(
    Calls, Unusable,
    testing::Values(
        Row{"UnknownCommand", {"result", "x"}, "Did you mean “results”?"},
        Row{"UnknownOption", {"results", "x", "--jsn"}, "“--jsn” here. Did you mean “--json”?"},
        Row{"UnknownOptionWithoutCommand", {"--verson"}, "Did you mean “--version”?"},
        Row{"OptionOfAnotherCommand", {"check", "x", "--json"}, "There is no option “--json” here"},
        Row{"NoFile", {"results"}, "A project file is needed.\nstrokewright results FILE"},
        Row{"TwoFiles", {"results", "a", "b"}, "“b” is one too many here"},
        Row{"AFileTooMany", {"inputs", "a"}, "“a” is one too many here"},
        Row{"NoTable",
            {"table", sample("teasel-125")},
            "key of a table is needed. All of them: strokewright quantities"},
        Row{"UnknownTable",
            {"table", sample("teasel-125"), "motion"},
            "There is no table “motion”. Did you mean “piston_motion”?"},
        Row{"CylinderTooMany",
            {"table", sample("teasel-125"), "piston_motion", "--cylinder", "2"},
            "There is no cylinder “2”: the engine has 1, counted from 1"},
        Row{"NoCylinder",
            {"table", sample("burdock-719"), "piston_motion", "--cylinder", "0"},
            "There is no cylinder “0”"},
        Row{"CylinderInWords",
            {"table", sample("burdock-719"), "piston_motion", "--cylinder", "1st"},
            "There is no cylinder “1st”"},
        Row{"NothingBehindAnOption", {"results", "x", "--set"}, "--set needs KEY=TEXT"},
        Row{"SomethingBehindJson", {"results", "x", "--json=1"}, "takes nothing behind it"},
        Row{"NoWant", {"solve", "x", "--by", "bore_m"}, "This needs --want KEY=TEXT."},
        Row{"NoOutput", {"sheet", "x"}, "This needs -o OUT.pdf."},
        Row{"NoSuchFile", {"results", "nowhere.strokewright"}, "There is no file"},
        Row{"AFolder", {"results", STROKEWRIGHT_SOURCE_DIR}, "is a folder"},
        Row{"NoEqualsSign",
            {"results", sample("teasel-125"), "--set", "bore_m"},
            "takes KEY=TEXT, and “bore_m” is none"},
        Row{"UnknownKey",
            {"results", sample("teasel-125"), "--set", "rod_length=1"},
            "There is no entry “rod_length”. Did you mean “rod_length_m”?"},
        Row{"PartOfAKey", {"results", sample("teasel-125"), "--set", "bore=1"}, "“bore_m”"},
        Row{"UnreadableNumber",
            {"results", sample("teasel-125"), "--set", "bore_m=1.2.3"},
            "“1.2.3” cannot be read for bore_m"},
        Row{"Range",
            {"results", sample("teasel-125"), "--set", "head_gasket_m=0.6 to 1.2"},
            "in mm unless it says so. Head gasket, compressed: “0.6 to 1.2” is a range"},
        Row{"UnknownChoice",
            {"results", sample("teasel-125"), "--set", "cycle=wankel"},
            "it is one of four_stroke, two_stroke"},
        Row{"UnknownEngine",
            {"results", sample("teasel-125"), "--engine", "Teasel"},
            "it has “Teasel 116”, “Teasel 125”"},
        Row{"UnknownResult",
            {"solve", sample("teasel-125"), "--want", "squish=1", "--by", "spacer_m"},
            "Did you mean “squish_gap_m”"},
        Row{"ChoiceWanted",
            {"solve", sample("teasel-125"), "--want", "governs=x", "--by", "bore_m"},
            "no number to be aimed at"},
        Row{"ByAChoice",
            {"solve", sample("teasel-125"), "--want", "squish_gap_m=1", "--by", "cycle"},
            "only what is measured can be solved for"},
        Row{"UnreadableWant",
            {"solve", sample("teasel-125"), "--want", "squish_gap_m=x", "--by", "spacer_m"},
            "“x” cannot be read for squish_gap_m"},
        Row{"UnknownPaper",
            {"sheet", sample("teasel-125"), "-o", "x.pdf", "--paper", "A5"},
            "A4 or Letter, not “A5”"}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(File, ThatIsWrongIsRefusedWithLineColumnAndKey) {
  std::string text = textOf(sample("teasel-125"));
  text.replace(text.find("\"bore_m\""), 8, "\"boar_m\"");
  const std::string path = testing::TempDir() + "wrong.strokewright";
  std::ofstream(path) << text;
  const Ran it = ran({"results", path});
  EXPECT_EQ(it.status, 2);
  EXPECT_THAT(it.err, HasSubstr(path + ": Line "));
  EXPECT_THAT(it.err, HasSubstr("boar_m"));
}

TEST(File, MayHaveANameInAnyScript) {
  const std::string path = testing::TempDir() + "Zylinder für 3 Öfen ζ.strokewright";
  std::filesystem::copy_file(sample("teasel-125"), path,
                             std::filesystem::copy_options::overwrite_existing);
  EXPECT_EQ(ran({"check", path}).status, 0);
}

TEST(Output, ThatCannotBeWrittenIsNoSuccess) {
  std::ostream full(nullptr);
  std::ostringstream err;
  EXPECT_EQ(run(std::vector<std::string>{"inputs"}, full, err, {}), 2);
  EXPECT_THAT(err.str(), HasSubstr("could not be written"));
}

TEST(Help, IsThereForTheProgramAndEveryCommand) {
  EXPECT_EQ(ran({"--help"}).status, 0);
  EXPECT_THAT(ran({"--version"}).out, testing::StartsWith("strokewright "));
  const Ran solve = ran({"solve", "--help"});
  EXPECT_EQ(solve.status, 0);
  EXPECT_THAT(solve.out, HasSubstr("--want KEY=TEXT"));
  EXPECT_THAT(solve.out, testing::Not(HasSubstr("--paper")));
}

TEST(Window, OpensWithoutArgumentsOrOnAFileAlone) {
  using Args = std::vector<std::string>;
  EXPECT_TRUE(asksForWindow(Args{}));
  EXPECT_TRUE(asksForWindow(Args{"new.strokewright"}));
  EXPECT_TRUE(asksForWindow(Args{sample("teasel-125")}));
  EXPECT_FALSE(asksForWindow(Args{"--version"}));
  EXPECT_FALSE(asksForWindow(Args{"inputs"}));
  EXPECT_FALSE(asksForWindow(Args{"reslts"}));
  EXPECT_FALSE(asksForWindow(Args{"results", "new.strokewright"}));
}

}  // namespace
}  // namespace strokewright::app
