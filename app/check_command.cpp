#include <map>
#include <ostream>
#include <set>

#include "app/commands.h"
#include "app/joined.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/wording.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Result;

std::string count(std::size_t number, std::string_view one, std::string_view many) {
  return joined({std::to_string(number), " ", number == 1 ? one : many});
}

/// Every reason for which results are refused, with how many of them are.
void addRefusals(TextTable& table, const Assessment& assessment, int engine) {
  std::map<std::string, std::set<const Result*>> refused;
  for (const Result* result : assess::catalogue().results()) {
    for (int i = 0; i < cellsOf(assessment, engine, *result); ++i) {
      const describe::Cell& cell = assessment(engine, *result, i);
      if (cell.state != describe::State::Refused) continue;
      refused[word(assessment.evaluation().refusal(cell), kBench)].insert(result);
    }
  }
  for (const auto& [why, results] : refused) {
    table.add({"refused", joined({count(results.size(), "result", "results"), ": ", why})});
  }
}

/// Every entry that results wait for, with how many of them do.
void addWaits(TextTable& table, const Assessment& assessment, int engine) {
  for (const describe::Input* input : assess::catalogue().inputs()) {
    const int waiting = assessment.waiting(engine, *input);
    if (waiting == 0) continue;
    table.add(
        {"waits", joined({count(static_cast<std::size_t>(waiting), "result waits", "results wait"),
                          " for ", input->key, ": ", input->label})});
  }
}

}  // namespace

int check(const Arguments& arguments, std::ostream& out, std::ostream& err) {
  const OpenedProject opened = openProject(arguments, err);
  const Assessment assessment(opened.project);
  for (const int engine : enginesShown(assessment, opened.named)) {
    out << heading(assessment, engine) << '\n';
    TextTable table;
    addFindings(table, assessment, engine);
    addRefusals(table, assessment, engine);
    addWaits(table, assessment, engine);
    table.print(out);
  }
  return verdict(assessment, opened.named);
}

}  // namespace strokewright::app
