#include "ui/pages/what_if.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "core/deck/results.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

using describe::Evaluation;
using describe::Input;
using describe::Result;
using describe::State;
using units::Kind;

namespace {

/// [SI] of the result with the entry so; nothing where it has none.
std::optional<double> with(Evaluation& trial, const WhatIfPlace& place, const Result& result,
                           const Input& input, double value) {
  trial.put(place.engine, input, place.inputCylinder, value);
  const describe::Cell& cell = trial.fresh(place.engine, result, place.cylinder);
  return cell.state == State::Value ? std::optional(cell.value) : std::nullopt;
}

/// A small step either way changes the result.
/// @param trial may have the number now in the entry afterwards
bool moves(Evaluation& trial, const WhatIfPlace& place, const Result& result, const Input& input,
           double now) {
  constexpr double kStep = 1e-3;
  constexpr double kSame = 1e-12;
  const std::optional<double> stands = with(trial, place, result, input, now);
  const double step = kStep * std::max(std::abs(now), std::abs(input.typical));
  bool moved = false;
  for (const double value : {now + step, now - step}) {
    const std::optional<double> there = with(trial, place, result, input, value);
    moved = moved || (stands && there && std::abs(*there - *stands) > kSame * std::abs(*stands));
  }
  trial.put(place.engine, input, place.inputCylinder, now);
  return moved;
}

/// The entry's cylinder, where it holds a number for each.
int inputCylinderOf(const Desk& desk, const WhatIfPlace& place, const Input& input) {
  return desk.document.entry(place.engine, input).values.size() > 1 ? place.cylinder : -1;
}

bool measured(const Input& input) {
  return input.kind != Kind::Choice && input.kind != Kind::Count;
}

/// The result reads the entry, and the entry stands.
bool reachedFrom(const Desk& desk, const WhatIfPlace& place, const Input& input) {
  const describe::Cell& cell =
      desk.document.assessment()(place.engine, *desk.whatIf().result, place.cylinder);
  return measured(input) && cell.notes.read.own[static_cast<std::size_t>(input.number)] &&
         standsAt(desk, place, input).has_value();
}

/// Two decimals more than are shown: what it was solved for comes out as it was wanted.
QString takenNumber(const Taste& taste, const Input& input, double value) {
  constexpr int kMore = 2;
  return taste.number(input.kind, value, taste.style().group[input.kind].decimals + kMore);
}

QString takenText(const Desk& desk, const WhatIfPlace& place, double value) {
  const Input& input = *desk.whatIf().input;
  const int changed = inputCylinderOf(desk, place, input);
  QStringList numbers;
  if (changed < 0) {
    numbers += takenNumber(desk.taste, input, value);
  } else {
    const std::vector<double>& values = desk.document.entry(place.engine, input).values;
    for (std::size_t i = 0; i < values.size(); ++i) {
      numbers += static_cast<int>(i) == changed
                     ? takenNumber(desk.taste, input, value)
                     : fromCore(desk.taste.style().editable(input.kind, values[i]));
    }
  }
  const QString unit = desk.taste.unit(input.kind);
  QString text = numbers.join(QStringLiteral("; "));
  if (const auto& within = desk.document.entry(place.engine, input).plusMinus) {
    text += QStringLiteral(" ± ") + fromCore(desk.taste.style().editable(input.kind, *within));
  }
  return unit.isEmpty() ? text : text + QChar(u' ') + unit;
}

}  // namespace

WhatIfPlace placeOf(const Desk& desk) {
  WhatIfPlace place{.engine = desk.subject()};
  if (place.engine < 0) return place;
  const int cylinders = desk.document.assessment().evaluation().cylinders(place.engine);
  place.cylinder = desk.cylinder() < cylinders ? std::max(desk.cylinder(), 0) : 0;
  place.inputCylinder = inputCylinderOf(desk, place, *desk.whatIf().input);
  return place;
}

std::vector<const Result*> askable(const Desk& desk) {
  const WhatIfPlace place = placeOf(desk);
  std::vector<const Result*> found;
  if (place.engine < 0) return found;
  const assess::Assessment& assessment = desk.document.assessment();
  for (const Result* result : assess::catalogue().results()) {
    if (result->kind == Kind::Choice) continue;
    const int cylinder = result->per == describe::Per::Engine ? 0 : place.cylinder;
    if (assessment(place.engine, *result, cylinder).state == State::Value) found.push_back(result);
  }
  return found;
}

std::optional<double> standsAt(const Desk& desk, const WhatIfPlace& place, const Input& input) {
  const assess::Assessment& assessment = desk.document.assessment();
  const Evaluation& evaluation = assessment.evaluation();
  const int cylinder = std::max(place.inputCylinder, 0);
  if (evaluation.inputStands(place.engine, input, cylinder)) {
    return evaluation.inputValue(place.engine, input, cylinder);
  }
  if (&input != &model::in::spacer) return std::nullopt;
  const describe::Cell& counted = assessment(place.engine, out::spacerInStack, place.cylinder);
  return counted.state == State::Value ? std::optional(counted.value) : std::nullopt;
}

bool reaches(const Desk& desk) {
  const WhatIfPlace place = placeOf(desk);
  return place.engine >= 0 && reachedFrom(desk, place, *desk.whatIf().input);
}

std::vector<const Input*> movers(const Desk& desk) {
  WhatIfPlace place = placeOf(desk);
  std::vector<const Input*> found;
  if (place.engine < 0) return found;
  const Result& result = *desk.whatIf().result;
  Evaluation shared = desk.document.evaluation();
  for (const Input* input : assess::catalogue().inputs()) {
    place.inputCylinder = inputCylinderOf(desk, place, *input);
    if (!reachedFrom(desk, place, *input)) continue;
    // A trial leaves its entry entered: one that was not must not lead the next ones astray.
    const bool entered = desk.document.entry(place.engine, *input).known();
    std::optional<Evaluation> own;
    if (!entered) own.emplace(desk.document.evaluation());
    const double now = *standsAt(desk, place, *input);
    if (moves(entered ? shared : *own, place, result, *input, now)) found.push_back(input);
  }
  return found;
}

std::optional<assess::Solution> solved(const Desk& desk) {
  const WhatIf& asked = desk.whatIf();
  const WhatIfPlace place = placeOf(desk);
  const bool named = asked.resultTyped.isEmpty() && asked.inputTyped.isEmpty();
  if (!named || !asked.wanted || !reaches(desk)) return std::nullopt;
  const describe::Cell& cell =
      desk.document.assessment()(place.engine, *asked.result, place.cylinder);
  if (cell.state != State::Value) return std::nullopt;
  return assess::solve(desk.document.evaluation(), place.engine, *asked.result, place.cylinder,
                       *asked.wanted, *asked.input, place.inputCylinder);
}

std::vector<describe::Finding> saidThen(const Desk& desk) {
  const std::optional<assess::Solution> found = solved(desk);
  if (!found || !found->value) return {};
  const WhatIfPlace place = placeOf(desk);
  const Input& input = *desk.whatIf().input;
  model::Project project = desk.document.project();
  project.engines[static_cast<std::size_t>(place.engine)].set(
      input, model::entryFrom(input, takenText(desk, place, *found->value).toStdString(),
                              desk.taste.style().group));
  const assess::Assessment then(project);
  std::vector<describe::Finding> said = assess::newlySaid(
      desk.document.assessment().findings(place.engine), then.findings(place.engine));
  std::erase_if(said, [](const describe::Finding& finding) {
    return finding.weight == describe::Weight::Remarks;
  });
  return said;
}

bool canTakeWhatIf(const Desk& desk) {
  const std::optional<assess::Solution> found = solved(desk);
  if (!found || !found->value) return false;
  const WhatIfPlace place = placeOf(desk);
  const Input& input = *desk.whatIf().input;
  const double now = *standsAt(desk, place, input);
  return !desk.document.entry(place.engine, input).known() ||
         takenNumber(desk.taste, input, now) != takenNumber(desk.taste, input, *found->value);
}

void takeWhatIf(Desk& desk) {
  if (!canTakeWhatIf(desk)) return;
  const WhatIfPlace place = placeOf(desk);
  desk.document.putComputed(place.engine, *desk.whatIf().input,
                            takenText(desk, place, *solved(desk)->value));
}

}  // namespace strokewright::ui
