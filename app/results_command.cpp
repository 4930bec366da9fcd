#include <algorithm>
#include <ostream>

#include "app/commands.h"
#include "app/joined.h"
#include "app/opened_project.h"
#include "app/results_json.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Result;
using describe::State;

/// The values of all cylinders, once where they read alike: "1.03 · 0.95 · 0.86 mm".
std::string valuesOf(const Assessment& assessment, int engine, const Result& result) {
  std::vector<std::string> texts;
  std::vector<describe::Quantity> quantities;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    const double value = assessment(engine, result, i).value;
    texts.push_back(wordValue(result, value, kBench));
    quantities.push_back({result.kind, value, result.decimals});
  }
  if (std::ranges::count(texts, texts.front()) == std::ssize(texts)) return texts.front();
  if (result.kind != units::Kind::Choice) {
    return word(describe::Sentence{"{1}", {std::move(quantities)}}, kBench);
  }
  std::string text;
  for (const std::string& each : texts) text.append(text.empty() ? "" : " · ").append(each);
  return text;
}

/// The largest ± of all cylinders, with up to two more decimals than the value where it takes them
/// to be seen; a dash where there is none.
std::string plusMinus(const Assessment& assessment, int engine, const Result& result,
                      double Cell::*which) {
  double most = 0.0;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    most = std::max(most, assessment(engine, result, i).*which);
  }
  const int decimals = result.decimals < 0 ? kBench.group[result.kind].decimals : result.decimals;
  for (int more = 0; more <= 2; ++more) {
    std::string text = kBench.number(result.kind, most, decimals + more);
    if (text.find_first_of("123456789") != std::string::npos) return text;
  }
  return "–";
}

/// What stands instead of values where a cylinder has none.
std::string insteadOfValues(const Assessment& assessment, int engine, const Result& result) {
  std::vector<std::string> texts;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    const Cell& cell = assessment(engine, result, i);
    texts.push_back(cell.state == State::Value ? wordValue(result, cell.value, kBench)
                                               : whyNone(assessment, cell.state, cell.notes));
  }
  if (std::ranges::count(texts, texts.front()) == std::ssize(texts)) return texts.front();
  std::string text;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const int number =
        model::numberOfCylinder(assessment.evaluation(), engine, static_cast<int>(i));
    text += joined({i > 0 ? "; cylinder " : "cylinder ", std::to_string(number), " ", texts[i]});
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
  TextTable findings;
  addFindings(findings, assessment, engine);
  if (!findings.empty()) out << '\n';
  findings.print(out);
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
