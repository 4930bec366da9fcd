#include "app/results_json.h"

#include <algorithm>
#include <functional>

#include "app/joined.h"
#include "app/telling.h"
#include "core/describe/list.h"
#include "core/describe/wording.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Finding;
using describe::Result;
using describe::State;
using storage::Node;

class ResultNode {
 public:
  ResultNode(const Assessment& assessment, int engine, const Result& result)
      : assessment_(assessment),
        engine_(engine),
        result_(result),
        cells_(cellsOf(assessment, engine, result)) {}

  Node node() const {
    Node node = Node::object(result_.key);
    const auto add = [&node](Node member) { node.children.push_back(std::move(member)); };
    const auto isValue = [](const Cell& cell) { return cell.state == State::Value; };
    const bool hasValue = any(isValue);
    add(each("value", isValue, [this](const Cell& cell) { return valueOf(cell); }));
    add(Node::of(units::siName(result_.kind), "unit"));
    if (hasValue && result_.kind != units::Kind::Choice) {
      add(each("worst", isValue, [](const Cell& cell) { return Node::of(cell.worst); }));
      add(each("likely", isValue, [](const Cell& cell) { return Node::of(cell.likely); }));
    }
    const auto keys = keysWaitedFor(assessment_, engine_, result_);
    const auto waits = [](const Cell& cell) { return cell.state == State::Waits; };
    if (any(waits)) {
      Node list = Node::list("waits_for");
      for (const std::string& key : keys) list.children.push_back(Node::of(key));
      add(std::move(list));
    }
    const auto isRefused = [](const Cell& cell) { return cell.state == State::Refused; };
    if (any(isRefused)) {
      add(each("refused", isRefused, [this](const Cell& cell) {
        return Node::of(word(assessment_.evaluation().refusal(cell), kBench));
      }));
    }
    const auto isNone = [](const Cell& cell) { return cell.state == State::None; };
    if (any(isNone)) {
      add(each("does_not_apply", isNone,
               [](const Cell& cell) { return Node::of(cell.notes.none); }));
    }
    return node;
  }

 private:
  const Cell& cell(int i) const { return assessment_(engine_, result_, i); }

  bool any(const std::function<bool(const Cell&)>& has) const {
    for (int i = 0; i < cells_; ++i) {
      if (has(cell(i))) return true;
    }
    return false;
  }

  /// One member: of every cylinder, or of the one there is; null where the cell has none.
  Node each(std::string_view key, const std::function<bool(const Cell&)>& has,
            const std::function<Node(const Cell&)>& of) const {
    Node list = Node::list(key);
    for (int i = 0; i < cells_; ++i) {
      list.children.push_back(has(cell(i)) ? of(cell(i)) : Node{});
    }
    if (cells_ > 1) return list;
    Node only = std::move(list.children.front());
    only.key = key;
    return only;
  }

  Node valueOf(const Cell& cell) const {
    if (result_.kind != units::Kind::Choice) return Node::of(cell.value);
    return Node::of(result_.choices[static_cast<std::size_t>(cell.value)].key);
  }

  const Assessment& assessment_;
  int engine_;
  const Result& result_;
  int cells_;
};

Node mendNode(const describe::Mend& mend) {
  Node node = Node::object();
  node.children.push_back(Node::of(word(mend.says, kBench), "says"));
  Node& set = node.children.emplace_back(Node::object("set"));
  for (const auto& [input, text] : mend.entries) {
    set.children.push_back(Node::of(text, input->key));
  }
  return node;
}

}  // namespace

Node findingNode(const Finding& finding) {
  Node node = Node::object();
  node.children = {Node::of(weightWord(finding.weight), "weight"), Node::of(finding.key, "key"),
                   Node::of(sentenceOf(finding), "says")};
  Node about = Node::list("about");
  for (const describe::Input* input : finding.about) about.children.push_back(Node::of(input->key));
  if (finding.list != nullptr) {  // as --set has it
    about.children.front() = Node::of(joined(
        {finding.list->key, "[", std::to_string(finding.item), "].", finding.about.front()->key}));
  }
  node.children.push_back(std::move(about));
  if (finding.cylinder >= 0) node.children.push_back(Node::of(finding.cylinder + 1, "cylinder"));
  node.children.push_back(Node::of(finding.source, "source"));
  Node mends = Node::list("mends");
  for (const describe::Mend& mend : finding.mends) mends.children.push_back(mendNode(mend));
  node.children.push_back(std::move(mends));
  return node;
}

namespace {

Node engineNode(const Assessment& assessment, int engine) {
  const model::Engine& it = assessment.project().engines[static_cast<std::size_t>(engine)];
  Node node = Node::object();
  node.children = {Node::of(it.name, "name"), Node::of(model::partKey(it.part), "part")};
  Node results = Node::object("results");
  for (const Result* result : assess::catalogue().results()) {
    results.children.push_back(ResultNode(assessment, engine, *result).node());
  }
  Node findings = Node::list("findings");
  for (const Finding& finding : assessment.findings(engine)) {
    findings.children.push_back(findingNode(finding));
  }
  node.children.push_back(std::move(results));
  node.children.push_back(std::move(findings));
  return node;
}

}  // namespace

std::string resultsJson(const Assessment& assessment, std::optional<int> named) {
  Node root = Node::object();
  Node& engines = root.children.emplace_back(Node::list("engines"));
  for (const int engine : enginesShown(assessment, named)) {
    engines.children.push_back(engineNode(assessment, engine));
  }
  constexpr int kOneLineForEachResult = 4;
  return storage::jsonText(root, kOneLineForEachResult);
}

}  // namespace strokewright::app
