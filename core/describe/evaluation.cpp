#include "core/describe/evaluation.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/describe/finding.h"
#include "core/describe/said_once.h"

namespace strokewright::describe {
namespace {

/// A part that is left out has no ±: "0.00 mm".
bool nothingFitted(std::string_view text) {
  const std::size_t digits = text.find_first_of("123456789");
  return digits == std::string_view::npos && text.find('0') != std::string_view::npos;
}

/// How many cylinders the entries speak of.
int countCylinders(const Entries& entries, const Input& cylinderCount) {
  const auto found = entries.find(&cylinderCount);
  if (found != entries.end() && found->second.known() &&
      cylinderCount.accepts(found->second.values.front())) {
    return static_cast<int>(found->second.values.front());
  }
  std::size_t longest = 1;
  for (const auto& [input, entry] : entries) {
    if (input->list) longest = std::max(longest, entry.values.size());
  }
  return static_cast<int>(std::min(longest, static_cast<std::size_t>(cylinderCount.possible.most)));
}

}  // namespace

Evaluation::Evaluation(const Catalogue& catalogue, std::span<const Subject> subjects,
                       int referenceDonor)
    : catalogue_(&catalogue), referenceDonor_(referenceDonor), engines_(subjects.size()) {
  for (std::size_t i = 0; i < subjects.size(); ++i) {
    engines_[i].entries = subjects[i].entries;
    engines_[i].isDonor = subjects[i].isDonor;
    engines_[i].own = subjects[i].own;
    engines_[i].shared = subjects[i].shared;
    fill(engines_[i]);
  }
}

void Evaluation::fill(EngineState& state) {
  state.cylinders = countCylinders(*state.entries, catalogue_->cylinderCount());
  const std::size_t n = index(state.cylinders);
  state.values.resize(catalogue_->inputs().size() * n);
  state.slots.resize(state.values.size());
  state.first.reserve(catalogue_->results().size());
  std::size_t places = 0;
  for (const Result* result : catalogue_->results()) {
    state.first.push_back(static_cast<std::uint32_t>(places));
    places += result->per == Per::Engine ? 1 : n;
  }
  state.cells.resize(catalogue_->results().size());
  state.held.resize(places);
  state.varies.assign(catalogue_->results().size(), 1);
  for (const Input* input : catalogue_->inputs()) {
    const std::size_t first = at(state, *input, 0);
    const Slot slot = input->standing.value ? Slot::Standing
                      : input->standing.by  ? Slot::StandingBy
                                            : Slot::Missing;
    std::fill_n(&state.values[first], n, input->standing.value.value_or(input->typical));
    std::fill_n(&state.slots[first], n, slot);
  }
  for (const auto& [input, entry] : *state.entries) {
    const std::size_t first = at(state, *input, 0);
    if (entry.values.size() > 1) state.listed.set(index(input->number));
    for (std::size_t i = 0; i < n; ++i) {
      double& value = state.values[first + i];
      Slot& slot = state.slots[first + i];
      const bool known = entry.values.size() == 1 || i < entry.values.size();
      if (!known) {
        if (!entry.text.empty()) slot = Slot::Missing;  // typed, but not a number yet
        if (slot == Slot::Missing) value = input->typical;
        continue;
      }
      const double entered = entry.values.size() == 1 ? entry.values.front() : entry.values[i];
      const bool good = input->accepts(entered) && (input->list || entry.values.size() == 1);
      slot = good ? Slot::Entered : Slot::Impossible;
      value = good ? entered : input->typical;
    }
  }
}

/// Whether the cylinders differ, by what was read: an entry is a list, or a result of one cylinder
/// looked at the others or asked which one it is.
bool Evaluation::variesByCylinder(int engine, const Result& result, const Frame& notes) const {
  if (engines_[index(engine)].cylinders == 1) return false;
  return (notes.across && result.per == Per::Cylinder) ||
         (notes.read.own & engines_[index(engine)].listed).any() ||
         (referenceDonor_ >= 0 &&
          (notes.read.donor & engines_[index(referenceDonor_)].listed).any());
}

void Evaluation::runAll(bool noting) {
  ++run_;
  refusals_.clear();
  noting_ = noting;
  const std::size_t results = catalogue_->results().size();
  for (EngineState& state : engines_) {
    state.varies.assign(results, 1);
    state.reads.assign(results, {});
    if (!noting) continue;
    state.direct.assign(results, {});
    state.order.clear();
    state.ordered = {};
    state.readByOthers = {};
  }
  for (int engine = 0; engine < engines(); ++engine) {
    EngineState& state = engines_[index(engine)];
    for (const Result* result : catalogue_->results()) {
      const Cell& first = evaluated(engine, *result, 0);
      Reads& reads = state.reads[index(result->number)];
      if (first.state == State::Value) reads = first.notes.read;
      std::fill_n(&state.held[at(state, *result, 0)],
                  result->per == Per::Engine ? 1 : state.cylinders, first.value);
      if (!isApart(state, *result)) continue;
      for (int i = 1; i < state.cylinders; ++i) {
        const Cell& cell = evaluated(engine, *result, i);
        if (cell.state == State::Value) reads |= cell.notes.read;
        state.held[at(state, *result, i)] = cell.value;
      }
    }
  }
  noting_ = false;
}

Cell& Evaluation::evaluated(int engine, const Result& result, int cylinder) {
  EngineState& state = engines_[index(engine)];
  Cell& first = state.cells[index(result.number)];
  if (first.run != run_) evaluate(first, engine, result, 0);
  if (cylinder == 0 || !isApart(state, result)) return first;
  if (state.others.empty()) state.others.resize(state.held.size() - state.cells.size());
  Cell& cell = state.others[otherAt(state, result, cylinder)];
  if (cell.run != run_) evaluate(cell, engine, result, cylinder);
  return cell;
}

void Evaluation::evaluate(Cell& cell, int engine, const Result& result, int cylinder) {
  EngineState& state = engines_[index(engine)];
  const std::size_t number = index(result.number);
  if (cell.run != 0) cell = Cell{};
  cell.run = run_;
  Frame& notes = cell.notes;
  notes.home = cylinder;
  if (noting_) notes.direct = &state.direct[number];
  Reader read(*this, engine, cylinder, &notes);
  int leaf = -1;
  try {
    cell.value = result.value(read);
    cell.computed = std::isfinite(cell.value);
    if (!cell.computed) leaf = keepRefusal({.sentence = kNotFinite, .kind = result.kind});
  } catch (const Refusal& refusal) {
    leaf = keepRefusal(refusal);
  }
  cell.state = settled(notes, leaf);
  if (!cell.computed) cell.value = 0.0;
  if (cylinder == 0) state.varies[number] = variesByCylinder(engine, result, notes);
  if (noting_ && !state.ordered[number]) {
    state.ordered.set(number);
    state.order.push_back(&result);
  }
}

State Evaluation::settled(Frame& notes, int leaf) {
  if (!notes.none.empty()) return State::None;
  if (notes.refusedBy >= 0) return State::Refused;
  if (notes.missing.any()) return State::Waits;
  if (leaf < 0) return State::Value;
  notes.refusedBy = leaf;
  return State::Refused;
}

int Evaluation::keepRefusal(const Refusal& refusal) {
  return keepRefusal({.sentence = refusal.sentence(),
                      .kind = refusal.kind(),
                      .value = refusal.value(),
                      .limit = refusal.limit()});
}

int Evaluation::keepRefusal(const RefusedBecause& because) {
  const auto found = std::find(refusals_.begin(), refusals_.end(), because);
  if (found != refusals_.end()) return static_cast<int>(found - refusals_.begin());
  refusals_.push_back(because);
  return static_cast<int>(refusals_.size()) - 1;
}

const Cell& Evaluation::cell(int engine, const Result& result, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  return cellOf(state, result, cylinder);
}

double Evaluation::inputValue(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const std::size_t place = at(state, input, cylinder);
  if (state.slots[place] != Slot::StandingBy) return state.values[place];
  // A default by other inputs needs a reader, and a reader an evaluation it may note things in.
  Frame notes;
  Reader read(const_cast<Evaluation&>(*this), engine, cylinder, &notes);
  return input.standing.by(read);
}

bool Evaluation::inputStands(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const Slot slot = state.slots[at(state, input, cylinder)];
  return slot != Slot::Missing && slot != Slot::Impossible;
}

bool Evaluation::inputGiven(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const Slot slot = state.slots[at(state, input, cylinder)];
  return slot == Slot::Entered || slot == Slot::Impossible;
}

std::span<const Entries> Evaluation::items(int engine, const List& list) const {
  const EngineState& state = engines_[index(engine)];
  for (const Lists* lists : {state.own, state.shared}) {
    if (lists == nullptr) continue;
    const auto found = lists->find(&list);
    if (found != lists->end()) return found->second;
  }
  return {};
}

Working Evaluation::working(int engine, const Result& result, int cylinder) {
  Working working;
  Frame notes;
  notes.working = &working;
  Reader read(*this, engine, result.per == Per::Engine ? 0 : cylinder, &notes);
  try {
    result.value(read);
  } catch (const Refusal&) {
    // The working shows what was read up to there; the cell says why it is refused.
  }
  const auto once = [](auto& list) {
    auto kept = list.begin();
    for (auto i = list.begin(); i != list.end(); ++i) {
      if (std::find(list.begin(), kept, *i) == kept) *kept++ = *i;
    }
    list.erase(kept, list.end());
  };
  once(working.inputs);
  once(working.results);
  return working;
}

void Evaluation::put(int engine, const Input& input, int inputCylinder, double value) {
  ++run_;
  refusals_.clear();
  EngineState& state = engines_[index(engine)];
  if (inputCylinder >= 0 && state.cylinders > 1) state.listed.set(index(input.number));
  for (EngineState& each : engines_) std::fill(each.varies.begin(), each.varies.end(), 1);
  for (int i = 0; i < state.cylinders; ++i) {
    if (inputCylinder >= 0 && inputCylinder != i) continue;
    const std::size_t place = at(state, input, i);
    const bool good = input.accepts(value);
    state.values[place] = good ? value : input.typical;
    state.slots[place] = good ? Slot::Entered : Slot::Impossible;
  }
}

const Cell& Evaluation::fresh(int engine, const Result& result, int cylinder) {
  return evaluated(engine, result, cylinder);
}

void Evaluation::judge(int engine, const Rule& rule, std::vector<Finding>& findings) {
  const int n = rule.per == Per::Engine ? 1 : cylinders(engine);
  std::vector<std::vector<Finding>> said(index(n));
  for (int i = 0; i < n; ++i) {
    Frame notes;
    Reader read(*this, engine, i, &notes);
    Speaker speak(said[index(i)]);
    try {
      rule.judge(read, speak);
    } catch (const Refusal&) {
      said[index(i)].clear();
    }
    if (notes.missing.any() || notes.refusedBy >= 0 || !notes.none.empty()) said[index(i)].clear();
    for (Finding& finding : said[index(i)]) {
      finding.key = rule.key;
      finding.source = rule.source;
      finding.engine = engine;
    }
  }
  for (Finding& finding : saidOnce(said)) {
    for (Mend& mend : finding.mends) {
      for (auto& [input, text] : mend.entries) {
        if (!text.empty()) text = completed(engine, *input, finding.cylinder, std::move(text));
      }
    }
    findings.push_back(std::move(finding));
  }
}

/// What is typed for one cylinder leaves the numbers of the others alone, and a ± stays.
std::string Evaluation::completed(int engine, const Input& input, int cylinder,
                                  std::string text) const {
  const int n = cylinders(engine);
  bool lists = cylinder >= 0 && input.list && n > 1;
  for (int i = 0; i < n; ++i) lists = lists && inputGiven(engine, input, i);
  if (lists) {
    std::string list;
    for (int i = 0; i < n; ++i) {
      if (i > 0) list += "; ";
      list += i == cylinder ? text : typedText(input, inputValue(engine, input, i));
    }
    text = std::move(list);
  }
  const Entries& entries = *engines_[index(engine)].entries;
  const auto found = entries.find(&input);
  const bool keeps = found != entries.end() && found->second.plusMinus &&
                     carriesTolerance(input.kind) && text.find("±") == std::string::npos &&
                     !nothingFitted(text);
  return keeps ? text + " ± " + typedText(input, *found->second.plusMinus) : text;
}

}  // namespace strokewright::describe
