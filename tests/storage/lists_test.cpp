// Lists, readings and shapes of a ± in files, and files from before there were any.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/storage/project_text.h"

namespace strokewright::storage {
namespace {

namespace in = model::in;
namespace list = model::list;
using describe::Entries;
using describe::Input;
using model::Project;

describe::Entry typed(const Input& input, std::string_view text) {
  return model::entryFrom(input, text, units::UnitGroup::metric());
}

std::string contentOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::string said(const Read& read) {
  std::string all;
  for (const Remark& remark : read.remarks) all += describe::word(remark.says, {}) + "\n";
  return all;
}

Project withLists() {
  Project project;
  model::Engine& engine = project.engines.emplace_back();
  Entries gasket;
  gasket[&list::partRole] = typed(list::partRole, "base gasket or shim");
  gasket[&list::partThickness] = typed(list::partThickness, "0.25 ± 0.03");
  gasket[&list::partQuantity] = typed(list::partQuantity, "4");
  project.lists[&list::shelf] = {gasket, {}};
  Entries stud;
  stud[&list::holeFor] = typed(list::holeFor, "stud");
  stud[&list::holeAlong] = typed(list::holeAlong, "41.5");
  stud[&list::holeDiameter] = typed(list::holeDiameter, "3/8 in");
  engine.lists[&list::plateHoles] = {stud};
  return project;
}

TEST(Lists, ComeBackFromTheirText) {
  const Project project = withLists();
  const Read back = read(write(project));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.project, project);
  EXPECT_EQ(write(*back.project), write(project));
}

TEST(Lists, AreRefusedWithAKeyThatIsNotKnown) {
  std::string text = write(withLists());
  const auto at = text.find("\"thickness_m\"");
  ASSERT_NE(at, std::string::npos);
  text.replace(at, 13, "\"thicknes_m\"");
  const Read back = read(text);
  EXPECT_FALSE(back.project);
  EXPECT_NE(said(back).find("“thicknes_m” is not known"), std::string::npos) << said(back);
}

TEST(Readings, ComeBackWithTheirMeanAndText) {
  Project project;
  model::Engine& engine = project.engines.emplace_back();
  engine.set(in::seatHeight, typed(in::seatHeight, "98.12 | 98.13 | 98.14; 98.20 ± 0.03"));
  engine.set(in::chamberVolume, typed(in::chamberVolume, "0.2 to 18.9 | 18.9 to 37.7"));
  const Read back = read(write(project));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.project, project);
}

constexpr std::string_view kHead = R"({"format": "strokewright project", "version": 2, "engines": [
{"entries": {"bore_m": )";

Read entryInFile(std::string_view entry) {
  return read(std::string(kHead) + std::string(entry) + "}}]}");
}

TEST(Readings, GiveTheValueWhereAScriptLeftItOut) {
  const Read back = entryInFile(R"({"readings": [[0.066, 0.068]]})");
  EXPECT_EQ(said(back), "");
  ASSERT_TRUE(back.project);
  EXPECT_DOUBLE_EQ(back.project->engines[0][in::bore].values.at(0), 0.067);
}

TEST(Readings, YieldToAValueThatIsNotTheirMean) {
  const Read back = entryInFile(R"({"value": 0.07, "readings": [[0.066, 0.068]]})");
  ASSERT_TRUE(back.project);
  EXPECT_EQ(back.project->engines[0][in::bore].values, std::vector{0.07});
  EXPECT_TRUE(back.project->engines[0][in::bore].readings.empty());
  EXPECT_NE(said(back).find("is not the mean of its readings"), std::string::npos);
}

TEST(Readings, AreRefusedWhereTheyAreNoLists) {
  EXPECT_FALSE(entryInFile(R"({"readings": [0.066, 0.068]})").project);
  EXPECT_FALSE(entryInFile(R"({"readings": [[]]})").project);
  EXPECT_FALSE(entryInFile(R"({"readings": [["a"]]})").project);
}

TEST(AShape, ComesBackAndIsRefusedWhereItIsNone) {
  const Read back = entryInFile(R"({"value": 0.066, "plus_minus_shape": "triangular"})");
  ASSERT_TRUE(back.project);
  EXPECT_EQ(back.project->engines[0][in::bore].shape, describe::Shape::Triangular);
  EXPECT_EQ(read(write(*back.project)).project, back.project);
  EXPECT_FALSE(entryInFile(R"({"value": 0.066, "plus_minus_shape": "round"})").project);
}

/// The sample as version 1 wrote it says what the engines of today's file said before lists came.
TEST(AFileOfVersion1, IsReadWithoutARemark) {
  const std::filesystem::path root = STROKEWRIGHT_SOURCE_DIR;
  const Read old = read(contentOf(root / "tests/storage/version_1/burdock-719.strokewright"));
  EXPECT_EQ(said(old), "");
  ASSERT_TRUE(old.project);
  Project today = read(contentOf(root / "samples/burdock-719.strokewright")).project.value();
  today.lists.clear();
  for (model::Engine& engine : today.engines) engine.lists.clear();
  ASSERT_EQ(old.project->engines.size(), today.engines.size());
  for (std::size_t i = 0; i < today.engines.size(); ++i) {
    for (const auto& [input, entry] : old.project->engines[i].entries) {
      EXPECT_EQ(today.engines[i][*input], entry) << input->key;
    }
  }
}

}  // namespace
}  // namespace strokewright::storage
