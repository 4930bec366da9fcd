#include "ui/pages/what_if.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

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
bool moves(Evaluation& trial, const WhatIfPlace& place, const Result& result, const Input& input) {
  constexpr double kStep = 1e-3;
  constexpr double kSame = 1e-12;
  const double now = trial.inputValue(place.engine, input, std::max(place.inputCylinder, 0));
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
  const QString list = numbers.join(QStringLiteral("; "));
  return unit.isEmpty() ? list : list + QChar(u' ') + unit;
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

std::vector<const Input*> movers(const Desk& desk) {
  WhatIfPlace place = placeOf(desk);
  std::vector<const Input*> found;
  if (place.engine < 0) return found;
  const Result& result = *desk.whatIf().result;
  Evaluation trial = desk.document.evaluation();
  const describe::Cell& cell = desk.document.assessment()(place.engine, result, place.cylinder);
  for (const Input* input : assess::catalogue().inputs()) {
    if (input->kind == Kind::Choice || input->kind == Kind::Count) continue;
    if (!cell.notes.read.own[static_cast<std::size_t>(input->number)]) continue;
    place.inputCylinder = inputCylinderOf(desk, place, *input);
    if (moves(trial, place, result, *input)) found.push_back(input);
  }
  return found;
}

std::optional<assess::Solution> solved(const Desk& desk) {
  const WhatIf& asked = desk.whatIf();
  const WhatIfPlace place = placeOf(desk);
  if (place.engine < 0 || !asked.wanted) return std::nullopt;
  const describe::Cell& cell =
      desk.document.assessment()(place.engine, *asked.result, place.cylinder);
  if (cell.state != State::Value) return std::nullopt;
  return assess::solve(desk.document.evaluation(), place.engine, *asked.result, place.cylinder,
                       *asked.wanted, *asked.input, place.inputCylinder);
}

bool canTakeWhatIf(const Desk& desk) {
  const std::optional<assess::Solution> found = solved(desk);
  if (!found || !found->value) return false;
  const WhatIfPlace place = placeOf(desk);
  const Input& input = *desk.whatIf().input;
  const double now = desk.document.assessment().evaluation().inputValue(
      place.engine, input, std::max(place.inputCylinder, 0));
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
