#include "core/describe/evaluation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/describe/finding.h"
#include "core/describe/said_once.h"

namespace strokewright::describe {
namespace {

bool carriesTolerance(units::Kind kind) {
  return kind != units::Kind::Choice && kind != units::Kind::Count;
}

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
  state.cells.resize(catalogue_->results().size() * n);
  state.held.resize(state.cells.size());
  for (const Input* input : catalogue_->inputs()) {
    const std::size_t first = at(state, input->number, 0);
    const Slot slot = input->standing.value ? Slot::Standing
                      : input->standing.by  ? Slot::StandingBy
                                            : Slot::Missing;
    std::fill_n(&state.values[first], n, input->standing.value.value_or(input->typical));
    std::fill_n(&state.slots[first], n, slot);
  }
  for (const auto& [input, entry] : *state.entries) {
    const std::size_t first = at(state, input->number, 0);
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

void Evaluation::run() {
  ++run_;
  refusals_.clear();
  for (int engine = 0; engine < engines(); ++engine) {
    EngineState& state = engines_[index(engine)];
    state.reads.assign(catalogue_->results().size(), {});
    state.varies.assign(catalogue_->results().size(), 0);
    state.touched.assign(catalogue_->results().size(), 0);
    for (const Result* result : catalogue_->results()) {
      const Cell& first = evaluated(engine, *result, 0);
      Reads& reads = state.reads[index(result->number)];
      if (first.state == State::Value) reads = first.notes.read;
      const bool varies = variesByCylinder(engine, *result, first.notes);
      state.varies[index(result->number)] = varies;
      if (result->per == Per::Engine) continue;
      for (int i = 1; i < state.cylinders; ++i) {
        const std::size_t place = at(state, result->number, i);
        Cell& cell = state.cells[place];
        if (!varies) {
          cell = first;
          state.held[place] = first.value;
        } else if (evaluated(engine, *result, i).state == State::Value) {
          reads |= cell.notes.read;
        }
      }
    }
  }
}

Cell& Evaluation::evaluated(int engine, const Result& result, int cylinder) {
  EngineState& state = engines_[index(engine)];
  const int place = result.per == Per::Engine ? 0 : cylinder;
  Cell& cell = state.cells[at(state, result.number, place)];
  if (cell.run != run_) evaluate(cell, engine, result, place);
  return cell;
}

void Evaluation::evaluate(Cell& cell, int engine, const Result& result, int cylinder) {
  cell = Cell{};
  cell.run = run_;
  Frame& notes = cell.notes;
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
  EngineState& state = engines_[index(engine)];
  state.held[at(state, result.number, cylinder)] = cell.value;
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
  return state.cells[at(state, result.number, result.per == Per::Engine ? 0 : cylinder)];
}

double Evaluation::inputValue(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const std::size_t place = at(state, input.number, cylinder);
  if (state.slots[place] != Slot::StandingBy) return state.values[place];
  // A default by other inputs needs a reader, and a reader an evaluation it may note things in.
  Frame notes;
  Reader read(const_cast<Evaluation&>(*this), engine, cylinder, &notes);
  return input.standing.by(read);
}

bool Evaluation::inputStands(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const Slot slot = state.slots[at(state, input.number, cylinder)];
  return slot != Slot::Missing && slot != Slot::Impossible;
}

bool Evaluation::inputGiven(int engine, const Input& input, int cylinder) const {
  const EngineState& state = engines_[index(engine)];
  const Slot slot = state.slots[at(state, input.number, cylinder)];
  return slot == Slot::Entered || slot == Slot::Impossible;
}

std::vector<Evaluation::Source> Evaluation::sourcesOf(int engine) const {
  std::vector<Source> sources;
  const EngineState& state = engines_[index(engine)];
  for (const auto& [input, entry] : *state.entries) {
    if (!entry.known() || !entry.carriesLimit() || !carriesTolerance(input->kind)) continue;
    const auto good = [&, entered = input](int cylinder) {
      return state.slots[at(state, entered->number, cylinder)] == Slot::Entered;
    };
    const bool list = entry.values.size() > 1;
    if (input->scope != Scope::Part && !list) {
      if (good(0)) sources.push_back({engine, input, -1, limitOf(*input, entry)});
      continue;
    }
    for (int i = 0; i < state.cylinders; ++i) {
      if (!good(i)) continue;
      const double limit = limitOf(*input, entry, list ? index(i) : 0);
      sources.push_back({engine, input, i, limit, !list});
    }
  }
  return sources;
}

void Evaluation::nudge(const Source& source, int side) {
  source_ = source;
  side_ = side;
  ++nudgeRun_;
  EngineState& state = engines_[index(source.engine)];
  unnudged_.clear();
  for (int i = 0; i < state.cylinders; ++i) {
    double& value = state.values[at(state, source.input->number, i)];
    unnudged_.push_back(value);
    if (source.cylinder < 0 || source.cylinder == i) {
      value += side == 0 ? source.limit : -source.limit;
    }
  }
}

void Evaluation::release() {
  EngineState& state = engines_[index(source_.engine)];
  std::copy(unnudged_.begin(), unnudged_.end(), &state.values[at(state, source_.input->number, 0)]);
}

double Evaluation::nudgedAnew(int engine, const Result& result, int cylinder, std::size_t place) {
  Nudged& nudged = engines_[index(engine)].nudged[side_][place];
  if (nudged.run != nudgeRun_) {
    nudged.run = nudgeRun_;
    moved(nudged, engine, result, result.per == Per::Engine ? 0 : cylinder);
  }
  if (nudged.bad) throw Refusal("{1}", result.kind, 0.0, 0.0);
  return nudged.value;
}

void Evaluation::moved(Nudged& nudged, int engine, const Result& result, int cylinder) {
  try {
    Reader read(*this, engine, cylinder, nullptr);
    nudged.value = result.value(read);
    nudged.bad = !std::isfinite(nudged.value);
  } catch (const Refusal&) {
    nudged.bad = true;
  }
}

double Evaluation::move(const Result& result, double from, const Nudged& up, const Nudged& down) {
  const double rise = up.bad ? 0.0 : result.step(from, up.value);
  const double fall = down.bad ? 0.0 : result.step(from, down.value);
  if (up.bad || down.bad) return rise - fall;
  if (rise * fall > 0.0) return std::abs(rise) > std::abs(fall) ? rise : fall;  // at an extreme
  return 0.5 * (rise - fall);
}

/// Finds all results that read an entry of these sources, which are the engine's.
void Evaluation::findReaders(int engine, const std::vector<Source>& sources) {
  for (const Looked& look : looked())
    engines_[index(look.engine)].touched[index(look.result->number)] = 0;
  InputSet nudged;
  for (const Source& source : sources) nudged.set(index(source.input->number));
  const auto eachReader = [&](auto take) {
    for (int reader = 0; reader < engines(); ++reader) {
      const bool own = reader == engine;
      if (!own && engine != referenceDonor_) continue;
      const EngineState& state = engines_[index(reader)];
      for (const Result* result : catalogue_->results()) {
        const Reads& reads = state.reads[index(result->number)];
        ((own ? reads.own : reads.donor) & nudged).each([&](std::size_t input) {
          take(input, reader, result);
        });
      }
    }
  };
  readersFrom_.fill(0);
  eachReader([&](std::size_t input, int, const Result*) { ++readersFrom_[input + 1]; });
  std::partial_sum(readersFrom_.begin(), readersFrom_.end(), readersFrom_.begin());
  readers_.resize(readersFrom_.back());
  auto next = readersFrom_;
  eachReader([&](std::size_t input, int reader, const Result* result) {
    EngineState& state = engines_[index(reader)];
    const std::size_t place = at(state, result->number, 0);
    readers_[next[input]++] = {.engine = reader,
                               .result = result,
                               .held = &state.held[place],
                               .sums = &state.sums[place],
                               .sides = {&state.nudged[0][place], &state.nudged[1][place]},
                               .shares = carriesTolerance(result->kind),
                               .varies = state.varies[index(result->number)] != 0,
                               .everywhere = reader != engine || state.cells[place].notes.across};
  });
}

/// @pre findReaders() of this source among others
void Evaluation::lookAt(const Source& source) {
  const auto touch = [this](std::uint8_t touched) {
    for (const Looked& look : looked()) {
      engines_[index(look.engine)].touched[index(look.result->number)] = touched;
    }
  };
  touch(0);
  lookedAt_ = index(source.input->number);
  touch(1);
}

/// A source that stands for one cylinder of several alike need not be moved in each of them where
/// the result is the same in all: the first one counts for every cylinder.
void Evaluation::addShares(const Source& source, Among among) {
  for (Looked& look : looked()) {
    look.first = 0;
    look.last = 1;
    if (!look.shares || (among != Among::All && look.result->picks != (among == Among::Picking))) {
      look.last = 0;
    } else if (!look.varies) {
      if (source.single && source.cylinder > 0) look.last = 0;
    } else if (look.result->per == Per::Cylinder) {
      const bool one = source.cylinder >= 0 && !look.everywhere;
      look.first = one ? source.cylinder : 0;
      look.last = one ? source.cylinder + 1 : cylinders(look.engine);
    }
  }
  for (const int side : {0, 1}) {
    nudge(source, side);
    for (const Looked& look : looked()) {
      for (int i = look.first; i < look.last; ++i) {
        Nudged& nudged = look.sides[side][i];
        if (nudged.run == nudgeRun_) continue;
        nudged.run = nudgeRun_;
        moved(nudged, look.engine, *look.result, i);
      }
    }
    release();
  }
  for (Looked& look : looked()) {
    const bool forAll = source.single && look.result->per == Per::Engine && !look.varies;
    const int n = cylinders(source.engine);
    const int times = !forAll ? 1 : look.result->apart ? std::min(n, 2) : n;
    for (int i = look.first; i < look.last; ++i) {
      const double one =
          std::abs(move(*look.result, look.held[i], look.sides[0][i], look.sides[1][i]));
      if (look.result->apart && one > 0.0 && ++look.counted > 2) continue;
      look.sums[i].worst += times * one;
      look.sums[i].squares += times * one * one;
    }
  }
}

void Evaluation::findTolerances() {
  for (EngineState& state : engines_) {
    for (std::vector<Nudged>& side : state.nudged) side.assign(state.cells.size(), {});
    state.sums.assign(state.cells.size(), {});
  }
  nudgeRun_ = 0;
  for (int engine = 0; engine < engines(); ++engine) {
    const Input* looked = nullptr;
    const std::vector<Source> sources = sourcesOf(engine);
    findReaders(engine, sources);
    for (const Source& source : sources) {
      const bool everyCylinder = source.cylinder < 0;
      if (source.input != looked) {
        lookAt(source);
        if (!everyCylinder) addShares({engine, source.input, -1, source.limit}, Among::Picking);
      }
      looked = source.input;
      addShares(source, everyCylinder ? Among::All : Among::Others);
    }
  }
  source_ = {};
  for (EngineState& state : engines_) {
    for (const Result* result : catalogue_->results()) {
      const std::size_t first = at(state, result->number, 0);
      const bool varies = state.varies[index(result->number)] != 0;
      for (std::size_t i = 0; i < index(state.cylinders); ++i) {
        Cell& cell = state.cells[first + i];
        if (i == 0 || varies) {
          const Sums& sums = state.sums[first + i];
          const bool known = cell.state == State::Value;
          cell.worst = known ? sums.worst : 0.0;
          cell.likely = known ? std::sqrt(sums.squares) : 0.0;
          if (!std::isfinite(cell.worst + cell.likely)) {
            cell.state = State::Refused;
            cell.notes.refusedBy =
                keepRefusal({.sentence = "These numbers give no finite ±.", .kind = result->kind});
            cell.worst = cell.likely = 0.0;
          }
        } else if (state.cells[first].state == State::Refused) {
          cell = state.cells[first];
        } else {
          cell.worst = state.cells[first].worst;
          cell.likely = state.cells[first].likely;
        }
      }
    }
  }
}

std::vector<Contributor> Evaluation::contributors(int engine, const Result& result, int cylinder) {
  std::vector<Contributor> found;
  const std::array asked = {&result};
  for (const Move& move : moves(engine, asked, cylinder)) {
    const double share = std::abs(move.by.front());
    if (share > 0.0) found.push_back({move.input, move.donors, move.cylinder, share});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Contributor& a, const Contributor& b) { return a.share > b.share; });
  return found;
}

std::vector<Move> Evaluation::moves(int engine, std::span<const Result* const> results,
                                    int cylinder) {
  std::vector<Move> found;
  std::vector<Cell> bases;
  for (const Result* result : results) {
    bases.push_back(cell(engine, *result, cylinder));
    if (bases.back().state != State::Value) return found;
  }
  const auto place = [&](const Result& result) { return result.per == Per::Engine ? 0 : cylinder; };
  const bool picks =
      std::any_of(results.begin(), results.end(), [](const Result* it) { return it->picks; });
  for (EngineState& state : engines_) {
    for (std::vector<Nudged>& side : state.nudged) side.resize(state.cells.size());
    state.sums.resize(state.cells.size());
  }
  std::vector<int> owners = {engine};
  if (referenceDonor_ >= 0 && referenceDonor_ != engine) owners.push_back(referenceDonor_);
  for (const int from : owners) {
    std::vector<Source> sources = sourcesOf(from);
    findReaders(from, sources);
    for (Source& source : sources) {
      if (picks) {
        if (source.cylinder > 0) continue;
        source.cylinder = -1;
      }
      if (std::none_of(results.begin(), results.end(),
                       [&](const Result* it) { return reads(engine, *it, source); })) {
        continue;
      }
      lookAt(source);
      std::array<std::vector<Nudged>, 2> sides;
      for (const int side : {0, 1}) {
        nudge(source, side);
        for (const Result* result : results) {
          moved(sides[index(side)].emplace_back(), engine, *result, place(*result));
        }
        release();
      }
      Move& one = found.emplace_back();
      one = {.input = source.input,
             .donors = source.engine != engine,
             .cylinder = source.cylinder,
             .shape = engines_[index(source.engine)].entries->at(source.input).shape,
             .limit = source.limit,
             .by = {}};
      for (std::size_t i = 0; i < results.size(); ++i) {
        one.by.push_back(move(*results[i], bases[i].value, sides[0][i], sides[1][i]));
      }
    }
  }
  source_ = {};
  return found;
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

Evaluation::Working Evaluation::working(int engine, const Result& result, int cylinder) {
  Working working;
  Frame notes;
  notes.directInputs = &working.inputs;
  notes.directResults = &working.results;
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
  for (int i = 0; i < state.cylinders; ++i) {
    if (inputCylinder >= 0 && inputCylinder != i) continue;
    const std::size_t place = at(state, input.number, i);
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
