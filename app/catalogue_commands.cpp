#include <cmath>
#include <ostream>

#include "app/commands.h"
#include "app/joined.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/table.h"
#include "core/describe/wording.h"
#include "core/storage/json_tree.h"

namespace strokewright::app {
namespace {

using describe::Choice;
using describe::Column;
using describe::Input;
using describe::Limits;
using describe::Result;
using describe::Table;
using storage::Node;

std::string_view scopeKey(describe::Scope scope) {
  switch (scope) {
    case describe::Scope::Engine:
      return "engine";
    case describe::Scope::Place:
      return "place";
    case describe::Scope::Part:
      break;
  }
  return "part";
}

std::string_view kindWord(const Column& column) {
  return column.words ? "text" : units::kindName(column.kind);
}

std::string_view wordPer(bool cylinder) { return cylinder ? "cylinder" : "engine"; }

// For machines

void addText(Node& node, std::string_view key, std::string_view text) {
  if (!text.empty()) node.children.push_back(Node::of(text, key));
}

void addLimits(Node& node, std::string_view key, const Limits& limits) {
  Node object = Node::object(key);
  if (std::isfinite(limits.least)) {
    object.children.push_back(Node::of(limits.least, limits.leastExcluded ? "over" : "least"));
  }
  if (std::isfinite(limits.most)) object.children.push_back(Node::of(limits.most, "most"));
  if (!object.children.empty()) node.children.push_back(std::move(object));
}

void addChoices(Node& node, std::span<const Choice> choices) {
  if (choices.empty()) return;
  Node& list = node.children.emplace_back(Node::list("choices"));
  for (const Choice& choice : choices) {
    Node& object = list.children.emplace_back(Node::object());
    object.children = {Node::of(choice.key, "key"), Node::of(choice.label, "label")};
  }
}

Node valueNode(const Input& input, double value, std::string_view key) {
  if (input.kind != units::Kind::Choice) return Node::of(value, key);
  return Node::of(input.choices[static_cast<std::size_t>(value)].key, key);
}

void addDefault(Node& node, const Input& input) {
  if (!input.standing.exists()) return;
  Node& object = node.children.emplace_back(Node::object("default"));
  if (input.standing.value) {
    object.children.push_back(valueNode(input, *input.standing.value, "value"));
  }
  addText(object, "origin", input.standing.origin);
}

Node nodeOf(const Input& input) {
  Node node = Node::object();
  addText(node, "key", input.key);
  addText(node, "name", input.label);
  addText(node, "symbol", input.symbol);
  addText(node, "kind", units::kindName(input.kind));
  addText(node, "unit", units::siName(input.kind));
  addChoices(node, input.choices);
  addText(node, "per", wordPer(input.list));
  addText(node, "scope", scopeKey(input.scope));
  node.children.push_back(valueNode(input, input.typical, "typical"));
  addLimits(node, "possible", input.possible);
  addLimits(node, "usual", input.usual);
  addDefault(node, input);
  if (input.plusMinus > 0.0) node.children.push_back(Node::of(input.plusMinus, "plus_minus"));
  addText(node, "instrument", input.instrument);
  addText(node, "measure", input.measure);
  addText(node, "synonyms", input.synonyms);
  if (input.instead != nullptr) addText(node, "instead", input.instead->key);
  return node;
}

Node nodeOf(const Result& result) {
  Node node = Node::object();
  addText(node, "key", result.key);
  addText(node, "name", result.name);
  addText(node, "symbol", result.symbol);
  addText(node, "kind", units::kindName(result.kind));
  addText(node, "unit", units::siName(result.kind));
  addChoices(node, result.choices);
  addText(node, "per", wordPer(result.per == describe::Per::Cylinder));
  addText(node, "judged_on", result.judged == describe::Judged::WorstCase ? "worst" : "likely");
  addText(node, "formula", result.formula);
  addText(node, "source", result.source);
  addText(node, "valid", result.valid);
  return node;
}

Node nodeOf(const Column& column) {
  Node node = Node::object();
  addText(node, "key", column.key);
  addText(node, "name", column.name);
  addText(node, "symbol", column.symbol);
  addText(node, "kind", kindWord(column));
  if (!column.words) addText(node, "unit", units::siName(column.kind));
  return node;
}

Node nodeOf(const Table& table) {
  Node node = Node::object();
  addText(node, "key", table.key);
  addText(node, "name", table.name);
  addText(node, "per", wordPer(table.per == describe::Per::Cylinder));
  Node& columns = node.children.emplace_back(Node::list("columns"));
  for (const Column& column : table.columns) columns.children.push_back(nodeOf(column));
  addText(node, "formula", table.formula);
  addText(node, "source", table.source);
  addText(node, "valid", table.valid);
  return node;
}

template <typename Described>
Node listOf(std::string_view name, std::span<const Described* const> all) {
  Node list = Node::list(name);
  for (const Described* described : all) list.children.push_back(nodeOf(*described));
  return list;
}

void printJson(std::vector<Node> lists, std::ostream& out) {
  Node root = Node::object();
  root.children = std::move(lists);
  constexpr int kOneLineForEachMember = 3;
  out << storage::jsonText(root, kOneLineForEachMember);
}

// For people

std::string wordLimits(units::Kind kind, const Limits& limits) {
  std::string text;
  if (std::isfinite(limits.least)) {
    text.append(limits.leastExcluded ? "over " : "from ").append(kBench.text(kind, limits.least));
  }
  if (std::isfinite(limits.most)) {
    text.append(text.empty() ? "to " : " to ").append(kBench.text(kind, limits.most));
  }
  return text;
}

std::string wordChoices(std::span<const Choice> choices) {
  std::string text;
  for (const Choice& choice : choices) text.append(text.empty() ? "" : ", ").append(choice.key);
  return text;
}

std::string wordDefault(const Input& input) {
  if (!input.standing.exists()) return {};
  const std::string value =
      input.standing.value ? wordValue(input, *input.standing.value, kBench) : "by other entries";
  return joined({value, ", ", input.standing.origin});
}

std::string wordUnit(units::Kind kind) {
  std::string text(units::kindName(kind));
  const std::string_view unit = kBench.unit(kind);
  if (!unit.empty()) text.append(" in ").append(unit);
  const bool same = unit.empty() || unit == units::siName(kind);
  return same ? text : joined({text, ", in files ", units::siName(kind)});
}

/// Lines with a word before them; lines that say nothing are left out.
class Lines {
 public:
  void add(std::string_view word, std::string text) {
    if (!text.empty()) table_.add({joined({"  ", word}), std::move(text)});
  }
  void print(std::ostream& out) const { table_.print(out); }

 private:
  TextTable table_;
};

std::string title(std::string_view key, std::string_view name, std::string_view symbol) {
  return joined({key, "  ", name, symbol.empty() ? "" : ", ", symbol});
}

void print(const Input& input, std::ostream& out) {
  out << title(input.key, input.label, input.symbol) << '\n';
  Lines lines;
  lines.add("kind", joined({wordUnit(input.kind), input.list ? ", may differ by cylinder" : ""}));
  lines.add("one of", wordChoices(input.choices));
  lines.add("possible", wordLimits(input.kind, input.possible));
  lines.add("usual", wordLimits(input.kind, input.usual));
  lines.add("default", wordDefault(input));
  lines.add("scope", std::string(scopeKey(input.scope)));
  if (input.plusMinus > 0.0) {
    lines.add("±", joined({kBench.text(input.kind, input.plusMinus, 3), " by ", input.instrument}));
  }
  lines.add("measure", std::string(input.measure));
  lines.add("also", std::string(input.synonyms));
  if (input.instead != nullptr) lines.add("or instead", std::string(input.instead->key));
  lines.print(out);
}

void print(const Result& result, std::ostream& out) {
  out << title(result.key, result.name, result.symbol) << '\n';
  Lines lines;
  lines.add("kind", joined({wordUnit(result.kind), ", one per ",
                            wordPer(result.per == describe::Per::Cylinder)}));
  lines.add("one of", wordChoices(result.choices));
  lines.add("formula", std::string(result.formula));
  lines.add("source", std::string(result.source));
  lines.add("valid", std::string(result.valid));
  lines.print(out);
}

void print(const Table& table, std::ostream& out) {
  out << title(table.key, table.name, {}) << '\n';
  Lines lines;
  lines.add("kind", joined({"table, one per ", wordPer(table.per == describe::Per::Cylinder)}));
  for (const Column& column : table.columns) {
    lines.add("column",
              joined({title(column.key, column.name, column.symbol), ", ", kindWord(column)}));
  }
  lines.add("formula", std::string(table.formula));
  lines.add("source", std::string(table.source));
  lines.add("valid", std::string(table.valid));
  lines.print(out);
}

template <typename Described>
void printAll(std::span<const Described* const> all, std::ostream& out) {
  for (const Described* described : all) print(*described, out);
}

}  // namespace

int inputs(const Arguments& arguments, std::ostream& out) {
  const auto all = assess::catalogue().inputs();
  if (arguments.has("--json")) {
    printJson({listOf("inputs", all)}, out);
  } else {
    printAll(all, out);
  }
  return 0;
}

int quantities(const Arguments& arguments, std::ostream& out) {
  const auto results = assess::catalogue().results();
  const auto tables = assess::catalogue().tables();
  if (arguments.has("--json")) {
    printJson({listOf("quantities", results), listOf("tables", tables)}, out);
  } else {
    printAll(results, out);
    printAll(tables, out);
  }
  return 0;
}

}  // namespace strokewright::app
