#include <algorithm>
#include <ostream>

#include "app/commands.h"
#include "app/joined.h"
#include "app/opened_project.h"
#include "app/results_json.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/wording.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Result;
using describe::State;

/// The values of all cylinders, once where they are equal: "1.03 · 0.95 · 0.86 mm".
std::string valuesOf(const Assessment& assessment, int engine, const Result& result) {
  const bool same = assessment.sameInAll(engine, result);
  const int count = same ? 1 : cellsOf(assessment, engine, result);
  if (result.kind == units::Kind::Choice) {
    std::string text;
    for (int i = 0; i < count; ++i) {
      if (i > 0) text += " · ";
      text += wordValue(result, assessment(engine, result, i).value, kBench);
    }
    return text;
  }
  std::vector<describe::Quantity> quantities;
  for (int i = 0; i < count; ++i) {
    quantities.push_back({result.kind, assessment(engine, result, i).value, result.decimals});
  }
  return word(describe::Sentence{"{1}", {std::move(quantities)}}, kBench);
}

/// The largest ± of all cylinders; a dash where no entry that was read has one.
std::string plusMinus(const Assessment& assessment, int engine, const Result& result,
                      double Cell::*which) {
  double most = 0.0;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    most = std::max(most, assessment(engine, result, i).*which);
  }
  return most > 0.0 ? kBench.number(result.kind, most, result.decimals) : "–";
}

/// What stands instead of values where a cylinder has none.
std::string insteadOfValues(const Assessment& assessment, int engine, const Result& result) {
  std::vector<std::string> texts;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    const Cell& cell = assessment(engine, result, i);
    texts.push_back(cell.state == State::Value ? wordValue(result, cell.value, kBench)
                                               : whyNone(assessment, engine, result, i));
  }
  if (std::ranges::count(texts, texts.front()) == std::ssize(texts)) return texts.front();
  std::string text;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    text += joined({i > 0 ? "; cylinder " : "cylinder ", std::to_string(i + 1), " ", texts[i]});
  }
  return text;
}

void addRow(TextTable& table, const Assessment& assessment, int engine, const Result& result) {
  bool allValues = true;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    allValues = allValues && assessment(engine, result, i).state == State::Value;
  }
  std::vector<std::string> row{std::string(result.name), std::string(result.symbol)};
  if (!allValues) {
    row.push_back(insteadOfValues(assessment, engine, result));
  } else {
    row.push_back(valuesOf(assessment, engine, result));
    if (result.kind != units::Kind::Choice) {
      row.push_back(plusMinus(assessment, engine, result, &Cell::likely));
      row.push_back(plusMinus(assessment, engine, result, &Cell::worst));
    }
  }
  table.add(std::move(row));
}

void printEngine(const Assessment& assessment, int engine, std::ostream& out) {
  out << heading(assessment, engine) << "\n\n";
  TextTable table;
  table.add({"", "", "", "± likely", "± worst case"});
  for (const Result* result : assess::catalogue().results()) {
    addRow(table, assessment, engine, *result);
  }
  table.print(out);
  if (assessment.findings(engine).empty()) return;
  out << '\n';
  printFindings(assessment, engine, out);
}

}  // namespace

int results(const Arguments& arguments, std::ostream& out, std::ostream& err) {
  const OpenedProject opened = openProject(arguments, err);
  const Assessment assessment(opened.project);
  if (arguments.has("--json")) {
    out << resultsJson(assessment, opened.named);
  } else {
    for (const int engine : enginesShown(assessment, opened.named)) {
      if (engine > 0 && !opened.named) out << '\n';
      printEngine(assessment, engine, out);
    }
  }
  return verdict(assessment, opened.named);
}

}  // namespace strokewright::app
