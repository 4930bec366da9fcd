#include <filesystem>
#include <ostream>
#include <vector>

#include "app/commands.h"
#include "app/joined.h"
#include "app/nearest.h"
#include "app/opened_project.h"
#include "app/telling.h"

namespace strokewright::app {
namespace {

/// "A4" or "Letter", letter case ignored.
std::string paperOf(const std::string& text) {
  const std::string lower = lowered(text);
  if (lower == "a4") return "A4";
  if (lower == "letter") return "Letter";
  throw Unusable({"The paper is A4 or Letter, not “", text, "”."});
}

sheet::SheetKind kindOf(const std::string& text) {
  if (const auto kind = sheet::sheetKindOf(text)) return *kind;
  std::vector<std::string_view> keys;
  for (const sheet::SheetName& name : sheet::sheetNames()) keys.push_back(name.key);
  throw Unusable({"There is no sheet “", text, "”.", didYouMean(text, keys),
                  " All of them: strokewright sheet --help"});
}

/// Only the plate is a drawing for machines.
void checkPath(const std::string& path, sheet::SheetKind kind) {
  const std::string lower = lowered(path);
  const bool drawing = lower.ends_with(".svg") || lower.ends_with(".dxf");
  if (drawing && kind != sheet::SheetKind::Plate) {
    throw Unusable({"“", path, "”: only the plate is drawn as SVG or DXF. It takes --kind plate."});
  }
}

}  // namespace

int sheet(const Arguments& arguments, std::ostream& err, const SheetWriter& writeSheet) {
  const std::string path = *arguments.text("-o");
  const auto paper = arguments.text("--paper");
  const auto kind = arguments.text("--kind");
  const sheet::SheetKind asked = kind ? kindOf(*kind) : sheet::SheetKind::Spec;
  spareProject(arguments, path);
  checkPath(path, asked);
  OpenedProject opened = openProject(arguments, err);
  if (opened.project.name.empty()) {
    const std::u8string stem = pathOf(arguments.operand("FILE")).stem().u8string();
    opened.project.name.assign(stem.begin(), stem.end());
  }
  if (opened.project.engines.empty())
    throw Unusable({"The project has no engine to draw a sheet of."});
  const assess::Assessment assessment(opened.project);
  const SheetOutcome outcome = writeSheet(assessment, {.kind = asked,
                                                       .engine = opened.named.value_or(-1),
                                                       .paper = paper ? paperOf(*paper) : "",
                                                       .path = path});
  if (!outcome.written) throw Unusable({outcome.says});
  if (!outcome.says.empty()) err << outcome.says << '\n';
  const std::vector<std::string> forbids = whatForbids(assessment, opened.named);
  if (forbids.empty()) return 0;
  err << "“" << path << "” is written, but must not leave for the bench. " << forbids.front();
  if (forbids.size() > 1) err << " And " << forbids.size() - 1 << " more: see strokewright check.";
  err << '\n';
  return 1;
}

}  // namespace strokewright::app
