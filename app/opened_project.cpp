#include "app/opened_project.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "app/nearest.h"
#include "core/assess/assess.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/storage/project_text.h"
#include "core/units/parse.h"
#include "core/units/style.h"

namespace strokewright::app {
namespace {

using describe::Input;

std::string contentOf(const std::string& name) {
  const std::filesystem::path path(std::u8string(name.begin(), name.end()));
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) {
    throw Unusable("There is no file “" + name + "”.");
  }
  if (std::filesystem::is_directory(path, ignored)) {
    throw Unusable("“" + name + "” is a folder, not a project file.");
  }
  std::ifstream file(path, std::ios::binary);
  std::ostringstream content;
  content << file.rdbuf();
  if (!file.is_open() || file.bad()) throw Unusable("“" + name + "” cannot be read.");
  return content.str();
}

std::string wordRemarks(const std::string& name, const std::vector<storage::Remark>& remarks) {
  std::string text;
  for (const storage::Remark& remark : remarks) {
    if (!text.empty()) text += '\n';
    text += name + ": " + describe::word(remark.says, units::Style{});
  }
  return text;
}

int engineNamed(const model::Project& project, std::string_view name) {
  const auto found = std::ranges::find(project.engines, name, &model::Engine::name);
  if (found != project.engines.end()) return static_cast<int>(found - project.engines.begin());
  std::string names;
  for (const model::Engine& engine : project.engines) {
    names += (names.empty() ? "“" : ", “") + engine.name + "”";
  }
  throw Unusable("The project has no engine “" + std::string(name) + "”. " +
                 (names.empty() ? "It has none at all." : "It has " + names + "."));
}

/// Why a text is no entry.
std::string wordSenseless(const Input& input, const std::string& text) {
  std::string sentence = "“" + text + "” cannot be read for " + std::string(input.key) + ": it is ";
  if (input.kind == units::Kind::Choice) {
    sentence += "one of";
    for (const describe::Choice& choice : input.choices) {
      sentence += (&choice == &input.choices.front() ? " " : ", ") + std::string(choice.key);
    }
    return sentence + ".";
  }
  const std::string_view unit = units::Style{}.unit(input.kind);
  sentence += input.list ? "a number or a list" : "one number";
  if (!unit.empty()) sentence += ", " + std::string(unit) + " unless it says otherwise";
  return sentence + ".";
}

bool standsForUnknown(const Input& input, const std::string& text) {
  if (input.kind == units::Kind::Choice) return false;
  return units::parse(input.kind, text, units::unitsOf(input.kind)[0]).problem ==
         units::Problem::Placeholder;
}

void enter(model::Engine& engine, const Assignment& set) {
  const Input& input = inputOf(set.key);
  describe::Entry entry = model::entryFrom(input, set.text, units::UnitGroup::metric());
  if (!entry.known() && !entry.empty() && !standsForUnknown(input, set.text)) {
    throw Unusable(wordSenseless(input, set.text));
  }
  engine.set(input, std::move(entry));
}

/// All keys of a table.
template <typename Described>
std::vector<std::string_view> keysOf(std::span<const Described* const> table) {
  std::vector<std::string_view> keys;
  for (const Described* described : table) keys.push_back(described->key);
  return keys;
}

}  // namespace

int OpenedProject::engine() const {
  if (named) return *named;
  const int target = project.target();
  if (target < 0) throw Unusable("The project has no target: name an engine with --engine.");
  return target;
}

OpenedProject openProject(const Arguments& arguments, std::ostream& err) {
  storage::Read read = storage::read(contentOf(arguments.file()));
  const std::string remarks = wordRemarks(arguments.file(), read.remarks);
  if (!read.project) throw Unusable(remarks);
  if (!remarks.empty()) err << remarks << '\n';

  OpenedProject opened{std::move(*read.project), std::nullopt};
  if (const auto name = arguments.text("--engine")) {
    opened.named = engineNamed(opened.project, *name);
  }
  for (const Assignment& set : arguments.assignments("--set")) {
    enter(opened.project.engines[static_cast<std::size_t>(opened.engine())], set);
  }
  return opened;
}

const Input& inputOf(std::string_view key) {
  if (const Input* input = assess::catalogue().findInput(key)) return *input;
  throw Unusable("There is no entry “" + std::string(key) + "”." +
                 didYouMean(key, keysOf(assess::catalogue().inputs())) +
                 " All of them: strokewright inputs");
}

const describe::Result& resultOf(std::string_view key) {
  if (const describe::Result* result = assess::catalogue().findResult(key)) return *result;
  throw Unusable("There is no result “" + std::string(key) + "”." +
                 didYouMean(key, keysOf(assess::catalogue().results())) +
                 " All of them: strokewright quantities");
}

}  // namespace strokewright::app
