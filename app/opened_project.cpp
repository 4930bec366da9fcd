#include "app/opened_project.h"

#include <algorithm>
#include <fstream>
#include <sstream>

#include "app/entry_path.h"
#include "app/nearest.h"
#include "app/telling.h"
#include "core/assess/assess.h"
#include "core/describe/table.h"
#include "core/describe/wording.h"
#include "core/storage/project_text.h"

namespace strokewright::app {
namespace {

using describe::Input;

std::string contentOf(const std::string& name) {
  const std::filesystem::path path = pathOf(name);
  std::error_code ignored;
  if (!std::filesystem::exists(path, ignored)) {
    throw Unusable({"There is no file “", name, "”."});
  }
  if (std::filesystem::is_directory(path, ignored)) {
    throw Unusable({"“", name, "” is a folder, not a project file."});
  }
  std::ifstream file(path, std::ios::binary);
  std::ostringstream content;
  content << file.rdbuf();
  if (!file.is_open() || file.bad()) throw Unusable({"“", name, "” cannot be read."});
  return content.str();
}

std::string wordRemarks(const std::string& name, const std::vector<storage::Remark>& remarks) {
  std::string text;
  for (const storage::Remark& remark : remarks) {
    if (!text.empty()) text += '\n';
    text += joined({name, ": ", word(remark.says, kBench)});
  }
  return text;
}

int engineNamed(const model::Project& project, std::string_view name) {
  const auto found = std::ranges::find(project.engines, name, &model::Engine::name);
  if (found != project.engines.end()) return static_cast<int>(found - project.engines.begin());
  std::string names;
  for (const model::Engine& engine : project.engines) {
    names += joined({names.empty() ? "“" : ", “", engine.name, "”"});
  }
  throw Unusable({"The project has no engine “", name, "”; it has ",
                  names.empty() ? "none at all" : names, "."});
}

/// All keys of a table.
template <typename Described>
std::vector<std::string_view> keysOf(std::span<const Described* const> table) {
  std::vector<std::string_view> keys;
  for (const Described* described : table) keys.push_back(described->key);
  return keys;
}

}  // namespace

std::filesystem::path pathOf(const std::string& name) {
  return std::u8string(name.begin(), name.end());
}

void spareProject(const Arguments& arguments, const std::string& path) {
  constexpr std::string_view kOtherName = ", which is not written over. Give another name.";
  const std::string lower = lowered(path);
  if (lower.ends_with(".strokewright")) {
    throw Unusable({"“", path, "” is the name of a project", kOtherName});
  }
  if (lower.ends_with(".strokewright~")) {
    throw Unusable({"“", path, "” is the name of a project's backup", kOtherName});
  }
  std::error_code ignored;  // of a file that is not there
  if (std::filesystem::equivalent(pathOf(path), pathOf(arguments.operand("FILE")), ignored)) {
    throw Unusable({"“", path, "” is the project itself", kOtherName});
  }
}

int OpenedProject::engine() const {
  if (named) return *named;
  const int target = project.target();
  if (target < 0) throw Unusable({"The project has no target: name an engine with --engine."});
  return target;
}

OpenedProject openProject(const Arguments& arguments, std::ostream& err) {
  const std::string& file = arguments.operand("FILE");
  storage::Read read = storage::read(contentOf(file));
  const std::string remarks = wordRemarks(file, read.remarks);
  if (!read.project) throw Unusable({remarks});
  if (!remarks.empty()) err << remarks << '\n';

  OpenedProject opened{std::move(*read.project), std::nullopt};
  if (const auto name = arguments.text("--engine")) {
    opened.named = engineNamed(opened.project, *name);
  }
  for (const Assignment& set : arguments.assignments("--set")) {
    enter(opened.project, opened.engine(), set);
  }
  return opened;
}

const Input& inputOf(std::string_view key) {
  if (const Input* input = assess::catalogue().findInput(key)) return *input;
  throw Unusable({"There is no entry “", key, "”.",
                  didYouMean(key, keysOf(assess::catalogue().inputs())),
                  " All of them: strokewright inputs"});
}

const describe::Result& resultOf(std::string_view key) {
  if (const describe::Result* result = assess::catalogue().findResult(key)) return *result;
  throw Unusable({"There is no result “", key, "”.",
                  didYouMean(key, keysOf(assess::catalogue().results())),
                  " All of them: strokewright quantities"});
}

const describe::Table& tableOf(std::string_view key) {
  if (const describe::Table* table = assess::catalogue().findTable(key)) return *table;
  throw Unusable({"There is no table “", key, "”.",
                  didYouMean(key, keysOf(assess::catalogue().tables())),
                  " All of them: strokewright quantities"});
}

}  // namespace strokewright::app
