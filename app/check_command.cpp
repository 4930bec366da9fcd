#include <ostream>

#include "app/commands.h"
#include "app/joined.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/wording.h"

namespace strokewright::app {
namespace {

/// Every entry that results wait for, with how many of them do.
void printWaits(const assess::Assessment& assessment, int engine, std::ostream& out) {
  TextTable table;
  for (const describe::Input* input : assess::catalogue().inputs()) {
    const int waiting = assessment.waiting(engine, *input);
    if (waiting == 0) continue;
    table.add({"waits", word(describe::Sentence{"{1} ({2}): {3} wait for it.",
                                                {input, std::string(input->key),
                                                 std::to_string(waiting) +
                                                     (waiting == 1 ? " result" : " results")}},
                             kBench)});
  }
  table.print(out);
}

void printRefusals(const assess::Assessment& assessment, int engine, std::ostream& out) {
  TextTable table;
  for (const describe::Result* result : assess::catalogue().results()) {
    for (int i = 0; i < cellsOf(assessment, engine, *result); ++i) {
      if (assessment(engine, *result, i).state != describe::State::Refused) continue;
      table.add({"", joined({result->name, ": ", whyNone(assessment, engine, *result, i)})});
      break;
    }
  }
  table.print(out);
}

}  // namespace

int check(const Arguments& arguments, std::ostream& out, std::ostream& err) {
  const OpenedProject opened = openProject(arguments, err);
  const assess::Assessment assessment(opened.project);
  for (const int engine : enginesShown(assessment, opened.named)) {
    out << heading(assessment, engine) << '\n';
    printFindings(assessment, engine, out);
    printRefusals(assessment, engine, out);
    printWaits(assessment, engine, out);
  }
  return verdict(assessment, opened.named);
}

}  // namespace strokewright::app
