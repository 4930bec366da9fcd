#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <ostream>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/storage/project_text.h"

namespace strokewright::storage {
namespace {

namespace in = model::in;
using model::Engine;
using model::Part;
using model::Project;
using nlohmann::json;

const std::filesystem::path kRoot = STROKEWRIGHT_SOURCE_DIR;

std::string contentOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << path;
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Without the version of the program that wrote it.
std::string anyWriter(std::string text) {
  const auto start = text.find("  \"written_by\"");
  return text.erase(start, text.find('\n', start) - start);
}

struct Row {
  const char* name;
  std::vector<Part> parts;
  double cylinders;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class Sample : public testing::TestWithParam<Row> {
 protected:
  std::string text() const {
    return contentOf(kRoot / "samples" / (std::string(GetParam().name) + ".strokewright"));
  }
};

TEST_P(Sample, IsWrittenAsItStands) {
  const std::string before = text();
  const Read sample = read(before);
  ASSERT_TRUE(sample.project);
  EXPECT_TRUE(sample.remarks.empty());
  EXPECT_EQ(anyWriter(write(*sample.project)), anyWriter(before));
}

TEST_P(Sample, HoldsExactlyWhatItsTextsSay) {
  const Project project = read(text()).project.value();
  for (const Engine& engine : project.engines) {
    for (const auto& [input, entry] : engine.entries) {
      if (input->kind == units::Kind::Choice) continue;
      units::UnitGroup group = units::UnitGroup::metric();
      if (!entry.unit.empty()) group.choose(input->kind, entry.unit);
      const describe::Entry typed = model::entryFrom(*input, entry.text, group);
      EXPECT_EQ(entry.values, typed.values) << engine.name << ' ' << input->key;
      EXPECT_EQ(entry.plusMinus, typed.plusMinus) << engine.name << ' ' << input->key;
    }
  }
}

TEST_P(Sample, HasItsEnginesInOrder) {
  const Project project = read(text()).project.value();
  std::vector<Part> parts;
  for (const Engine& engine : project.engines) {
    parts.push_back(engine.part);
    EXPECT_EQ(engine[in::cylinderCount].values, std::vector{GetParam().cylinders});
    EXPECT_TRUE(engine[in::crankThrow].known() != engine[in::stroke].known());
  }
  EXPECT_EQ(parts, GetParam().parts);
  EXPECT_EQ(project.referenceDonor, 0);
}

INSTANTIATE_TEST_SUITE_P(
    Conversions, Sample,
    testing::Values(Row{"tansy-270", {Part::Donor, Part::Target}, 2.0},
                    Row{"burdock-719", {Part::Donor, Part::Target, Part::Variant}, 3.0},
                    Row{"teasel-125", {Part::Donor, Part::Target}, 1.0},
                    Row{"culvert-1040", {Part::Donor, Part::Target}, 1.0}),
    [](const auto& row) {
      std::string name = row.param.name;
      std::replace(name.begin(), name.end(), '-', '_');
      return name;
    });

TEST(TheFormatPage, ShowsAFileThatCanBeRead) {
  constexpr std::string_view kStart = "```json\n";
  const std::string page = contentOf(kRoot / "resources/format/project-format.md");
  const auto start = page.find(kStart) + kStart.size();
  const Read example = read(page.substr(start, page.find("```", start) - start));
  EXPECT_TRUE(example.project);
  EXPECT_TRUE(example.remarks.empty());
}

/// The end of a key for a unit: "_m_rad_s" for "m rad/s", "_per_k" for "1/K".
std::string endingOf(units::Kind kind) {
  const std::string unit(units::siName(kind));
  std::string ending = unit.starts_with("1/") ? "_per_" + unit.substr(2) : "_" + unit;
  for (char& c : ending) {
    c = c == ' ' || c == '/' ? '_' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return ending;
}

TEST(TheFormatPage, ListsTheEndingOfEveryKeyThatHasOne) {
  std::vector<const describe::Input*> all(model::inputs().begin(), model::inputs().end());
  for (const auto lists : {model::projectLists(), model::engineLists()}) {
    for (const describe::List* list : lists) {
      all.insert(all.end(), list->columns.begin(), list->columns.end());
    }
  }
  std::set<std::string> used;
  for (const describe::Input* input : all) {
    if (units::siName(input->kind) == "1") continue;
    const std::string ending = endingOf(input->kind);
    EXPECT_TRUE(input->key.ends_with(ending)) << input->key;
    used.insert(ending);
  }
  const std::string page = contentOf(kRoot / "resources/format/project-format.md");
  const auto from = page.find("Keys end in their unit");
  const std::string listed = page.substr(from, page.find("Ratios", from) - from);
  static const std::regex kEnding("`(_[a-z0-9_]+)`");
  std::set<std::string> named;
  for (std::sregex_iterator it(listed.begin(), listed.end(), kEnding); it != std::sregex_iterator();
       ++it) {
    named.insert((*it)[1]);
  }
  EXPECT_EQ(named, used);
}

json entriesOfSchema() {
  const json schema = json::parse(contentOf(kRoot / "resources/format/project.schema.json"));
  return schema.at("/$defs/entries/properties"_json_pointer);
}

TEST(TheSchema, HasExactlyTheInputs) {
  const json entries = entriesOfSchema();
  std::set<std::string> inSchema;
  for (const auto& [key, description] : entries.items()) inSchema.insert(key);
  std::set<std::string> inTable;
  for (const describe::Input* input : model::inputs()) inTable.emplace(input->key);
  EXPECT_EQ(inSchema, inTable);
}

TEST(TheSchema, NamesEachInputAndItsAnswers) {
  const json entries = entriesOfSchema();
  for (const describe::Input* input : model::inputs()) {
    const json& entry = entries.at(std::string(input->key));
    EXPECT_EQ(entry.at("title"), std::string(input->label));
    if (input->choices.empty()) {
      EXPECT_EQ(entry.at("$ref"), input->list ? "#/$defs/numbers" : "#/$defs/number") << input->key;
      continue;
    }
    json answers = json::array();
    for (const describe::Choice& choice : input->choices) answers.push_back(choice.key);
    const json& value = entry.at("properties").at("value");
    EXPECT_EQ(input->list ? value.at("anyOf").at(0).at("enum") : value.at("enum"), answers)
        << input->key;
  }
}

}  // namespace
}  // namespace strokewright::storage
