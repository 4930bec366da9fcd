#include <algorithm>
#include <optional>
#include <ostream>
#include <vector>

#include "app/commands.h"
#include "app/joined.h"
#include "app/opened_project.h"
#include "app/results_json.h"
#include "app/telling.h"
#include "app/text_table.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/storage/json_tree.h"
#include "core/units/parse.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Finding;
using describe::Input;
using describe::Quantity;
using describe::Result;
using describe::Sentence;
using describe::State;
using storage::Node;

struct Question {
  int engine = 0;
  const Result& result;
  double wanted = 0.0;  ///< [SI]
  const Input& by;
};

const Result& measurable(const Result& result) {
  if (result.kind == units::Kind::Choice) {
    throw Unusable({"The result ", result.key, " is no number to be aimed at."});
  }
  return result;
}

const Input& measurable(const Input& input) {
  if (input.kind == units::Kind::Choice || input.kind == units::Kind::Count) {
    throw Unusable({"The entry ", input.key,
                    " is chosen or counted: only what is measured can be solved for."});
  }
  return input;
}

double wantedOf(const Result& result, const std::string& text) {
  const units::Parsed parsed =
      units::parse(result.kind, text, units::UnitGroup::metric()[result.kind]);
  if (parsed.values.size() == 1) return parsed.values.front();
  const std::string_view unit = kBench.unit(result.kind);
  throw Unusable({"“", text, "” cannot be read for ", result.key, ": it is one number",
                  unit.empty() ? "" : ", in ", unit, unit.empty() ? "." : " unless it says so."});
}

/// Answers for one cylinder; -1 stands for all alike.
class Answer {
 public:
  Answer(Assessment& assessment, const Question& question, int cylinder)
      : assessment_(assessment),
        question_(question),
        cylinder_(std::max(cylinder, 0)),
        byCylinder_(question.by.list ? cylinder : -1),
        solution_(assess::solve(assessment.evaluation(), question.engine, question.result,
                                cylinder_, question.wanted, question.by, byCylinder_)) {}

  bool solved() const { return solution_.value.has_value(); }

  /// [SI] of the entry.
  std::optional<double> value() const { return solution_.value; }

  std::string sentence() const {
    const std::optional<std::string> more = follows();
    return more ? joined({found(), " ", *more}) : found();
  }

  /// What is said, once the entry is so, that is not said now.
  void setThen(std::vector<Finding> findings) { then_ = std::move(findings); }
  const std::vector<Finding>& then() const { return then_; }

  /// @param number of the cylinder, where several differ
  Node node(std::optional<int> number) const {
    Node node = Node::object();
    if (number) node.children.push_back(Node::of(*number, "cylinder"));
    node.children.push_back(solved() ? Node::of(*solution_.value, "value") : nothing("value"));
    const bool tried = solved() || before().state == State::Value;
    node.children.push_back(tried ? Node::of(solution_.nearest, "nearest") : nothing("nearest"));
    node.children.push_back(tried ? Node::of(solution_.reached, "reached") : nothing("reached"));
    node.children.push_back(Node::of(found(), "says"));
    if (const auto more = follows()) node.children.push_back(Node::of(*more, "follows"));
    Node& then = node.children.emplace_back(Node::list("then"));
    for (const Finding& finding : then_) then.children.push_back(findingNode(finding));
    return node;
  }

 private:
  static Node nothing(std::string_view key) {
    Node node;
    node.key = key;
    return node;
  }

  std::optional<std::string> follows() const {
    const std::optional<Sentence> more =
        assess::whatFollows(assessment_.evaluation(), question_.engine, question_.result, cylinder_,
                            solution_, question_.by, byCylinder_);
    if (!more) return std::nullopt;
    return word(*more, kBench);
  }

  std::string found() const {
    if (solved()) return wordSolved();
    if (before().state != State::Value) {
      return word(
          Sentence{"The {1} has no value to start from: {2}",
                   {&question_.result, whyNone(assessment_, before().state, before().notes)}},
          kBench);
    }
    if (!before().notes.read.own[static_cast<std::size_t>(question_.by.number)]) {
      return word(Sentence{"The {1} does not depend on the {2} of this engine as it is entered.",
                           {&question_.result, &question_.by}},
                  kBench);
    }
    if (solution_.still) {
      return word(Sentence{"The {2} stays at {3}, whatever the {1}.",
                           {&question_.by, &question_.result, result(solution_.reached)}},
                  kBench);
    }
    if (solution_.waits) {
      return word(Sentence{"With any other {1} the {2} has no value: {3}",
                           {&question_.by, &question_.result,
                            whyNone(assessment_, State::Waits, *solution_.waits)}},
                  kBench);
    }
    return word(Sentence{solution_.everywhere
                             ? "Nothing within the limits of the {1} makes the {2} {3}: the "
                               "nearest is {4}, where it is {5}."
                             : "Nothing from {6} to {7} for the {1} makes the {2} {3}: the nearest "
                               "is {4}, where it is {5}.",
                         {&question_.by, &question_.result, result(question_.wanted),
                          input(solution_.nearest), result(solution_.reached),
                          input(solution_.from), input(solution_.to)}},
                kBench);
  }

  const Cell& before() const { return assessment_(question_.engine, question_.result, cylinder_); }
  Quantity input(double value) const { return {question_.by.kind, value}; }
  Quantity result(double value) const {
    return {question_.result.kind, value, question_.result.decimals};
  }

  std::string wordSolved() const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    Sentence says{
        "With {2} for the {1}, the {3} is {4}.",
        {&question_.by, input(*solution_.value), &question_.result, result(solution_.reached)}};
    const bool stands = evaluation.inputStands(question_.engine, question_.by, cylinder_);
    const double now = evaluation.inputValue(question_.engine, question_.by, cylinder_);
    if (stands && *solution_.value == now) {
      says.pattern = "The {3} is {4} already, with {2} for the {1}.";
    } else if (stands && before().state == State::Value) {
      says.pattern = "With {2} instead of {5} for the {1}, the {3} is {4} instead of {6}.";
      says.arguments.emplace_back(input(now));
      says.arguments.emplace_back(result(before().value));
    }
    return word(says, kBench);
  }

  Assessment& assessment_;
  const Question& question_;
  int cylinder_;    ///< of the result
  int byCylinder_;  ///< of the entry, -1: in all of them
  assess::Solution solution_;
  std::vector<Finding> then_;
};

/// The project with these numbers in the entry that was solved for: one for all cylinders, or one
/// for each.
model::Project withEntry(const model::Project& project, const Question& question,
                         std::vector<double> values) {
  model::Project then = project;
  model::Engine& engine = then.engines[static_cast<std::size_t>(question.engine)];
  describe::Entry entry = engine[question.by];
  entry.values = std::move(values);
  entry.readings.clear();
  entry.text.clear();
  engine.set(question.by, std::move(entry));
  return then;
}

std::vector<Finding> saidWith(const Assessment& now, const Question& question,
                              std::vector<double> values) {
  const model::Project project = withEntry(now.project(), question, std::move(values));
  const Assessment then(project);
  return assess::newlySaid(now.findings(question.engine), then.findings(question.engine));
}

/// Findings go with the answer they belong to. Of an entry that holds a number for each cylinder
/// all answers are entered together; what is then said of no cylinder in particular goes with each.
void addThen(const Assessment& now, const Question& question, std::vector<Answer>& answers) {
  if (answers.size() == 1 || !question.by.list) {
    for (Answer& answer : answers) {
      if (answer.solved()) answer.setThen(saidWith(now, question, {*answer.value()}));
    }
    return;
  }
  if (!std::ranges::all_of(answers, &Answer::solved)) return;  // there is no such entry
  std::vector<double> values;
  for (const Answer& answer : answers) values.push_back(*answer.value());
  const std::vector<Finding> said = saidWith(now, question, std::move(values));
  for (std::size_t i = 0; i < answers.size(); ++i) {
    std::vector<Finding> his = said;
    std::erase_if(his, [&](const Finding& finding) {
      return finding.cylinder >= 0 && finding.cylinder != static_cast<int>(i);
    });
    answers[i].setThen(std::move(his));
  }
}

/// What would be said with each answer, every sentence once.
void printThen(const Assessment& assessment, const Question& question,
               const std::vector<Answer>& answers, std::ostream& out) {
  std::vector<std::vector<std::string>> lines;
  for (const Answer& answer : answers) {
    for (const Finding& finding : answer.then()) {
      std::vector<std::string> line = {joined({weightWord(finding.weight), " then"}),
                                       withItsCylinder(assessment, question.engine, finding)};
      if (std::ranges::find(lines, line) == lines.end()) lines.push_back(std::move(line));
    }
  }
  TextTable table;
  for (std::vector<std::string>& line : lines) table.add(std::move(line));
  table.print(out);
}

std::string json(const Question& question, const std::vector<Answer>& answers) {
  Node root = Node::object();
  root.children = {Node::of(question.result.key, "result"),
                   Node::of(units::siName(question.result.kind), "result_unit"),
                   Node::of(question.wanted, "wanted"), Node::of(question.by.key, "by"),
                   Node::of(units::siName(question.by.kind), "by_unit")};
  Node& list = root.children.emplace_back(Node::list("answers"));
  for (const Answer& answer : answers) {
    const bool several = answers.size() > 1;
    const int number = static_cast<int>(list.children.size()) + 1;
    list.children.push_back(answer.node(several ? std::optional(number) : std::nullopt));
  }
  constexpr int kOneLineForEachAnswer = 2;
  return storage::jsonText(root, kOneLineForEachAnswer);
}

bool sameInAll(const Assessment& assessment, const Question& question) {
  if (cellsOf(assessment, question.engine, question.result) == 1) return true;
  const auto& entry =
      assessment.project().engines[static_cast<std::size_t>(question.engine)][question.by];
  return entry.values.size() <= 1 && assessment.sameInAll(question.engine, question.result);
}

}  // namespace

int solve(const Arguments& arguments, std::ostream& out, std::ostream& err) {
  const Assignment want = arguments.assignments("--want").back();
  const Result& result = measurable(resultOf(want.key));
  const OpenedProject opened = openProject(arguments, err);
  const Question question{.engine = opened.engine(),
                          .result = result,
                          .wanted = wantedOf(result, want.text),
                          .by = measurable(inputOf(*arguments.text("--by")))};
  Assessment assessment(opened.project);
  const bool alike = sameInAll(assessment, question);
  std::vector<Answer> answers;
  for (int i = 0; i < (alike ? 1 : cellsOf(assessment, question.engine, result)); ++i) {
    answers.emplace_back(assessment, question, alike ? -1 : i);
  }
  addThen(assessment, question, answers);
  if (arguments.has("--json")) {
    out << json(question, answers);
  } else {
    out << heading(assessment, question.engine) << '\n';
    for (std::size_t i = 0; i < answers.size(); ++i) {
      out << "  ";
      if (answers.size() > 1) {
        out << "Cylinder "
            << model::numberOfCylinder(assessment.evaluation(), question.engine,
                                       static_cast<int>(i))
            << ": ";
      }
      out << answers[i].sentence() << '\n';
    }
    printThen(assessment, question, answers, out);
  }
  return std::ranges::all_of(answers, &Answer::solved) ? 0 : 1;
}

}  // namespace strokewright::app
