#include <ostream>

#include "app/commands.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "core/describe/wording.h"
#include "core/units/parse.h"

namespace strokewright::app {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Input;
using describe::Quantity;
using describe::Result;
using describe::Sentence;
using describe::State;

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
        solution_(assess::solve(assessment.evaluation(), question.engine, question.result,
                                cylinder_, question.wanted, question.by,
                                question.by.list ? cylinder : -1)) {}

  bool solved() const { return solution_.value.has_value(); }

  std::string sentence() const {
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
    return word(Sentence{"Nothing within the limits of the {1} makes the {2} {3}: the nearest is "
                         "{4}, where it is {5}.",
                         {&question_.by, &question_.result, result(question_.wanted),
                          input(solution_.nearest), result(solution_.reached)}},
                kBench);
  }

 private:
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
    if (stands && before().state == State::Value) {
      says.pattern = "With {2} instead of {5} for the {1}, the {3} is {4} instead of {6}.";
      says.arguments.emplace_back(
          input(evaluation.inputValue(question_.engine, question_.by, cylinder_)));
      says.arguments.emplace_back(result(before().value));
    }
    return word(says, kBench);
  }

  Assessment& assessment_;
  const Question& question_;
  int cylinder_;
  assess::Solution solution_;
};

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
  out << heading(assessment, question.engine) << '\n';
  if (sameInAll(assessment, question)) {
    const Answer answer(assessment, question, -1);
    out << "  " << answer.sentence() << '\n';
    return answer.solved() ? 0 : 1;
  }
  int status = 0;
  for (int i = 0; i < cellsOf(assessment, question.engine, result); ++i) {
    const Answer answer(assessment, question, i);
    out << "  Cylinder " << i + 1 << ": " << answer.sentence() << '\n';
    if (!answer.solved()) status = 1;
  }
  return status;
}

}  // namespace strokewright::app
