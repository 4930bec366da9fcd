#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <utility>

#include "core/sheet/bench.h"
#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using nlohmann::json;
using testing::HasSubstr;

/// A writer that remembers what it was to write.
struct Asked : SheetCall {
  SheetWriter writer() {
    return [this](const assess::Assessment&, const SheetCall& call) {
      static_cast<SheetCall&>(*this) = call;
      return SheetOutcome{};
    };
  }
};

TEST(Sheet, IsWrittenOfTheTargetOnTheUsualPaper) {
  Asked asked;
  const Ran it = ran({"sheet", sample("burdock-719"), "-o", "out.pdf"}, asked.writer());
  EXPECT_EQ(it.status, 0);
  EXPECT_EQ(it.err, "");
  EXPECT_EQ(asked.engine, -1);
  EXPECT_EQ(asked.paper, "");
  EXPECT_EQ(asked.path, "out.pdf");
}

TEST(Sheet, IsWrittenOfTheNamedEngineOnTheNamedPaper) {
  Asked asked;
  ran({"sheet", sample("burdock-719"), "--engine", "short rod", "--paper", "letter", "-o", "o.pdf"},
      asked.writer());
  EXPECT_EQ(asked.engine, 2);
  EXPECT_EQ(asked.paper, "Letter");
}

TEST(Sheet, IsWrittenAllTheSameWhereSomethingForbids) {
  Asked asked;
  const Ran it = ran({"sheet", sample("burdock-719"), "-o", "out.pdf", "--set", "rod_length_m=3"},
                     asked.writer());
  EXPECT_EQ(it.status, 1);
  EXPECT_EQ(asked.path, "out.pdf");
  EXPECT_THAT(it.err, HasSubstr("“out.pdf” is written"));
}

TEST(Sheet, ThatMustNotLeaveNamesTheFirstThatForbidsAsCheckWordsIt) {
  Asked asked;
  const std::vector<std::string> touching{sample("burdock-719"), "--set", "spacer_m=-0.5"};
  std::vector<std::string> call{"sheet", "-o", "out.pdf"};
  call.insert(call.end(), touching.begin(), touching.end());
  const Ran it = ran(call, asked.writer());
  EXPECT_THAT(it.err, HasSubstr("must not leave for the bench. Burdock 719: "));
  EXPECT_THAT(it.err, HasSubstr(" more: see strokewright check."));
  std::vector<std::string> check{"check", "--engine", "Burdock 719"};
  check.insert(check.end(), touching.begin(), touching.end());
  const std::string told = ran(check).out;
  const std::size_t first = told.find_first_not_of(' ', told.find("forbids") + 7);
  EXPECT_THAT(it.err, HasSubstr("Burdock 719: " + told.substr(first, 60))) << told;
}

TEST(Sheet, IsNotWrittenOverAProjectOrItsBackup) {
  for (const std::string& path :
       {sample("burdock-719"), std::string("other.STROKEWRIGHT"), sample("burdock-719") + "~"}) {
    Asked asked;
    const Ran it = ran({"sheet", sample("burdock-719"), "-o", path}, asked.writer());
    EXPECT_EQ(it.status, 2);
    EXPECT_EQ(asked.path, "");
    EXPECT_THAT(it.err, HasSubstr("name of a project"));
    EXPECT_THAT(it.err, HasSubstr("Give another name"));
  }
}

TEST(Sheet, IsNotWrittenOverTheProjectWhateverItIsCalled) {
  const std::filesystem::path folder(testing::TempDir());
  const std::string job = (folder / "job ö.json").string();
  const std::string linked = (folder / "sheet.pdf").string();
  std::filesystem::copy_file(sample("burdock-719"), job,
                             std::filesystem::copy_options::overwrite_existing);
  std::filesystem::remove(linked);
  std::filesystem::create_symlink(job, linked);
  for (const std::string& path : {job, (folder / "." / "job ö.json").string(), linked}) {
    Asked asked;
    const Ran it = ran({"sheet", job, "-o", path}, asked.writer());
    EXPECT_EQ(it.status, 2);
    EXPECT_EQ(asked.path, "");
    EXPECT_THAT(it.err, HasSubstr("is the project itself"));
  }
  std::filesystem::remove(linked);
}

TEST(Sheet, ThatCannotBeWrittenSaysWhy) {
  const auto full = [](const assess::Assessment&, const SheetCall&) {
    return SheetOutcome{false, "The disk is full."};
  };
  const Ran it = ran({"sheet", sample("burdock-719"), "-o", "out.pdf"}, full);
  EXPECT_EQ(it.status, 2);
  EXPECT_EQ(it.err, "The disk is full.\n");
}

TEST(Sheet, OnOtherPaperThanWasAskedForSaysSo) {
  const auto larger = [](const assess::Assessment&, const SheetCall&) {
    return SheetOutcome{true, "It is on A3."};
  };
  const Ran it = ran({"sheet", sample("burdock-719"), "--kind", "plate", "-o", "o.pdf"}, larger);
  EXPECT_EQ(it.status, 0);
  EXPECT_EQ(it.err, "It is on A3.\n");
}

TEST(Sheet, IsTheSpecSheetUnlessAnotherIsNamed) {
  Asked asked;
  ran({"sheet", sample("burdock-719"), "-o", "out.pdf"}, asked.writer());
  EXPECT_EQ(asked.kind, sheet::SheetKind::Spec);
  for (const sheet::SheetName& name : sheet::sheetNames()) {
    ran({"sheet", sample("burdock-719"), "--kind", std::string(name.key), "-o", "out.pdf"},
        asked.writer());
    EXPECT_EQ(asked.kind, name.kind) << name.key;
  }
}

// What is printed of the throws is what other programs read.
TEST(Sheet, OfTheThrowsHasTheNumbersOfTheJson) {
  const std::string path = sample("tansy-270");
  const json results = json::parse(ran({"results", path, "--json"}).out);
  const json fires = json::parse(ran({"table", path, "firing_table", "--json"}).out);
  const model::Project project = projectOf(path);
  const assess::Assessment assessment(project);
  const sheet::BenchSheet sheet = sheet::benchSheetOf(assessment, {}, {}, sheet::SheetKind::Throws);
  const auto degrees = [](const json& radians) {
    return units::Style().number(units::Kind::Angle, radians.get<double>(), 1);
  };
  const json& tops = results["engines"][1]["results"]["top_after_first_rad"]["value"];
  ASSERT_EQ(tops.size(), 2u);
  for (std::size_t i = 0; i < tops.size(); ++i) {
    EXPECT_THAT(sheet.grids[0].rows[i][3], testing::StartsWith(degrees(tops[i])));
    for (const auto& [key, column] :
         {std::pair{"at_rad", 2u}, {"then_rad", 3u}, {"lobe_rad", 4u}}) {
      EXPECT_EQ(sheet.grids[1].rows[i][column], degrees(fires["columns"][key]["values"][i])) << key;
    }
  }
}

TEST(Sheet, ThatDoesNotExistIsRefusedWithTheNearestOne) {
  Asked asked;
  const Ran it =
      ran({"sheet", sample("burdock-719"), "--kind", "surwey", "-o", "out.pdf"}, asked.writer());
  EXPECT_EQ(it.status, 2);
  EXPECT_EQ(asked.path, "");
  EXPECT_THAT(it.err, HasSubstr("survey"));
}

TEST(Sheet, OfThePlateAloneIsDrawnForMachines) {
  Asked asked;
  const Ran it = ran({"sheet", sample("burdock-719"), "-o", "out.DXF"}, asked.writer());
  EXPECT_EQ(it.status, 2);
  EXPECT_EQ(asked.path, "");
  EXPECT_THAT(it.err, HasSubstr("--kind plate"));
  for (const char* path : {"out.dxf", "out.svg", "out.pdf"}) {
    ran({"sheet", sample("burdock-719"), "--kind", "plate", "-o", path}, asked.writer());
    EXPECT_EQ(asked.path, path);
  }
}

TEST(Sheet, OfAProjectWithoutEnginesIsRefused) {
  const std::string path = testing::TempDir() + "empty.strokewright";
  std::ofstream(path) << storage::write(model::Project{});
  const Ran it = ran({"sheet", path, "-o", "out.pdf"}, Asked{}.writer());
  EXPECT_EQ(it.status, 2);
  EXPECT_THAT(it.err, HasSubstr("no engine"));
}

}  // namespace
}  // namespace strokewright::app
