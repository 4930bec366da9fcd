#include <charconv>
#include <cmath>
#include <ostream>

#include "app/commands.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "core/describe/table_text.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/firing/results.h"
#include "core/storage/json_tree.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::State;
using describe::Table;
using describe::Tabulated;
using storage::Node;

/// What is shown, and of what.
struct Shown {
  const Table& table;
  int engine = 0;
  int cylinder = 0;  ///< counted from 0
};

/// The cylinder of --cylinder, counted from 0; the first without it.
int cylinderOf(const Arguments& arguments, int cylinders) {
  const auto text = arguments.text("--cylinder");
  if (!text) return 0;
  int number = 0;
  const char* const end = text->data() + text->size();
  const auto read = std::from_chars(text->data(), end, number);
  if (read.ec == std::errc() && read.ptr == end && number >= 1 && number <= cylinders) {
    return number - 1;
  }
  throw Unusable({"There is no cylinder “", *text, "”: the engine has ", std::to_string(cylinders),
                  ", counted from 1."});
}

Node valuesNode(const describe::Cells& cells) {
  Node list = Node::list("values");
  for (const double number : cells.numbers) {
    list.children.push_back(std::isnan(number) ? Node{} : Node::of(number));
  }
  for (const std::string& words : cells.words) list.children.push_back(Node::of(words));
  return list;
}

Node columnsNode(const Tabulated& filled) {
  Node columns = Node::object("columns");
  for (std::size_t i = 0; i < filled.rows.columns().size(); ++i) {
    const describe::Column& column = filled.rows.columns()[i];
    Node& node = columns.children.emplace_back(Node::object(column.key));
    if (!column.words) node.children.push_back(Node::of(units::siName(column.kind), "unit"));
    Node values;
    values.key = "values";
    node.children.push_back(filled.state == State::Value ? valuesNode(filled.rows.cells()[i])
                                                         : std::move(values));
  }
  return columns;
}

std::string tableJson(const Assessment& assessment, const Shown& shown, const Tabulated& filled) {
  const auto& engine = assessment.project().engines[static_cast<std::size_t>(shown.engine)];
  Node root = Node::object();
  root.children = {Node::of(shown.table.key, "table"), Node::of(engine.name, "engine")};
  if (shown.table.per == describe::Per::Cylinder) {
    root.children.push_back(Node::of(shown.cylinder + 1, "cylinder"));
  }
  root.children.push_back(columnsNode(filled));
  if (filled.state == State::Waits) {
    Node& list = root.children.emplace_back(Node::list("waits_for"));
    for (const std::string& key : keysWaitedFor(assessment, filled.notes)) {
      list.children.push_back(Node::of(key));
    }
  }
  if (filled.state == State::Refused) {
    root.children.push_back(
        Node::of(word(assessment.evaluation().refusal(filled.notes), kBench), "refused"));
  }
  if (filled.state == State::None) {
    root.children.push_back(Node::of(filled.notes.none, "does_not_apply"));
  }
  constexpr int kOneLineForEachColumn = 2;
  return storage::jsonText(root, kOneLineForEachColumn);
}

}  // namespace

int table(const Arguments& arguments, std::ostream& out, std::ostream& err) {
  const Table& asked = tableOf(arguments.operand("KEY"));
  const OpenedProject opened = openProject(arguments, err);
  Assessment assessment(opened.project);
  const int engine = opened.engine();
  const Shown shown{asked, engine,
                    cylinderOf(arguments, assessment.evaluation().cylinders(engine))};
  const Tabulated filled = assessment.evaluation().tabulated(engine, asked, shown.cylinder);
  out << (arguments.has("--json") ? tableJson(assessment, shown, filled)
                                  : csv(headed(filled.rows)));
  if (&asked == &out::firingOrders && filled.rows.size() == firing::kMostOrders) {
    err << asked.key << ": " << asked.valid << '\n';
  }
  if (filled.state == State::Value) return verdict(assessment, engine);
  err << asked.key << ": " << whyNone(assessment, filled.state, filled.notes) << '\n';
  return 1;
}

}  // namespace strokewright::app
