#include <ostream>

#include "app/commands.h"
#include "app/opened_project.h"
#include "app/telling.h"

namespace strokewright::app {
namespace {

/// "A4" or "Letter", letter case ignored.
std::string paperOf(const std::string& text) {
  std::string lower = text;
  for (char& letter : lower) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  if (lower == "a4") return "A4";
  if (lower == "letter") return "Letter";
  throw Unusable({"The paper is A4 or Letter, not “", text, "”."});
}

}  // namespace

int sheet(const Arguments& arguments, std::ostream& err, const SheetWriter& writeSheet) {
  const std::string path = *arguments.text("-o");
  const auto paper = arguments.text("--paper");
  constexpr std::string_view kProject = ".strokewright";
  if (path.ends_with(kProject)) {
    throw Unusable({"“", path, "” is the name of a project: a sheet is not written over it."});
  }
  const OpenedProject opened = openProject(arguments, err);
  if (opened.project.engines.empty())
    throw Unusable({"The project has no engine to draw a sheet of."});
  const assess::Assessment assessment(opened.project);
  const auto error =
      writeSheet(assessment, opened.named.value_or(-1), paper ? paperOf(*paper) : "", path);
  if (error) throw Unusable({*error});
  const int status = verdict(assessment, opened.named);
  if (status != 0) {
    err << "“" << path << "” is written, but something forbids it to leave for the bench.\n";
  }
  return status;
}

}  // namespace strokewright::app
