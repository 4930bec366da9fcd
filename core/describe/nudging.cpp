// The ± of the results: entries are nudged, and what reads them follows.
//
// While all results are evaluated, each is noted to read what it reads itself. A nudge starts from
// the readers of the entry and goes on, result by result in the order of evaluation, only from
// numbers that really move: a spacer that another cylinder decides stops it.

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <limits>
#include <utility>

#include "core/describe/evaluation.h"
#include "core/describe/reader.h"

namespace strokewright::describe {
namespace {

constexpr double kRefused = std::numeric_limits<double>::quiet_NaN();

/// Both refused, or the same number.
bool same(double one, double other) {
  return one == other || (std::isnan(one) && std::isnan(other));
}

}  // namespace

std::vector<Evaluation::Source> Evaluation::sourcesOf(int engine) const {
  std::vector<Source> sources;
  const EngineState& state = engines_[index(engine)];
  for (const auto& [input, entry] : *state.entries) {
    if (!entry.known() || !entry.carriesLimit() || !carriesTolerance(input->kind)) continue;
    const auto good = [&, entered = input](int cylinder) {
      return state.slots[at(state, *entered, cylinder)] == Slot::Entered;
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

void Evaluation::nudge(const Source& source) {
  source_ = source;
  ++nudgeRun_;
  const EngineState& state = engines_[index(source.engine)];
  const auto slots =
      state.values.begin() + static_cast<std::ptrdiff_t>(at(state, *source.input, 0));
  unnudged_.assign(slots, slots + state.cylinders);
  for (std::vector<double>& side : sides_) side = unnudged_;
  for (int i = 0; i < state.cylinders; ++i) {
    if (source.cylinder >= 0 && source.cylinder != i) continue;
    sides_[0][index(i)] += source.limit;
    sides_[1][index(i)] -= source.limit;
  }
}

void Evaluation::goTo(int side) {
  side_ = side;
  EngineState& state = engines_[index(source_.engine)];
  std::copy(sides_[side].begin(), sides_[side].end(), &state.values[at(state, *source_.input, 0)]);
}

void Evaluation::release() {
  EngineState& state = engines_[index(source_.engine)];
  std::copy(unnudged_.begin(), unnudged_.end(), &state.values[at(state, *source_.input, 0)]);
}

void Evaluation::refuse(const Result& result) { throw Refusal("{1}", result.kind, 0.0, 0.0); }

/// For what is read only under the nudge, as another limit governs, or where nothing was planned.
double Evaluation::nudgedAnew(int engine, const Result& result, int cylinder, std::size_t place) {
  EngineState& state = engines_[index(engine)];
  if (!reads(engine, result, source_)) return state.held[place];
  Pulled& pulled = state.pulled[side_][place];
  if (pulled.run != nudgeRun_) {
    const Direct* asking = std::exchange(asking_, nullptr);
    pulled.value = underNudge(engine, result, result.per == Per::Engine ? 0 : cylinder);
    pulled.run = nudgeRun_;
    asking_ = asking;
  }
  if (std::isnan(pulled.value)) refuse(result);
  return pulled.value;
}

double Evaluation::underNudge(int engine, const Result& result, int cylinder) {
  try {
    Reader read(*this, engine, cylinder, nullptr);
    const double value = result.value(read);
    return std::isfinite(value) ? value : kRefused;
  } catch (const Refusal&) {
    return kRefused;
  }
}

Evaluation::Moved Evaluation::moved(const Result& result, double from, double up, double down) {
  constexpr double kBent = 0.8;  // a curve of the size of a ± leaves the two ways more alike
  const double rise = std::isnan(up) ? 0.0 : result.step(from, up);
  const double fall = std::isnan(down) ? 0.0 : result.step(from, down);
  const auto [least, most] = std::minmax({std::abs(rise), std::abs(fall)});
  if (std::isnan(up) || std::isnan(down)) return {.mean = rise - fall, .worst = most};
  if (rise * fall > 0.0) {  // at an extreme
    return {.mean = std::abs(rise) > std::abs(fall) ? rise : fall, .worst = most};
  }
  const double mean = 0.5 * (rise - fall);
  return {.mean = mean, .worst = least < kBent * most ? most : std::abs(mean)};
}

/// Lists who reads each input and each result itself, in the order of evaluation.
void Evaluation::findUsers(EngineState& state) {
  const std::size_t inputs = catalogue_->inputs().size();
  const std::size_t results = state.followed.size();
  std::array<std::uint16_t, kMostResults> rankOf{};
  for (std::size_t rank = 0; rank < results; ++rank) {
    rankOf[index(state.followed[rank].result->number)] = static_cast<std::uint16_t>(rank);
  }
  const auto eachUse = [&](auto take) {
    for (std::size_t rank = 0; rank < results; ++rank) {
      const Direct& direct = state.direct[index(state.followed[rank].result->number)];
      const auto user = static_cast<std::uint16_t>(rank);
      direct.inputs.each([&](std::size_t number) {
        take(state.inputUsers[number], User{user, direct.inputsAcross});
      });
      direct.results.each([&](std::size_t number) {
        take(state.resultUsers[rankOf[number]], User{user, false});
      });
      direct.across.each([&](std::size_t number) {
        take(state.resultUsers[rankOf[number]], User{user, true});
      });
    }
  };
  state.inputUsers.assign(inputs + 1, 0);
  state.resultUsers.assign(results + 1, 0);
  eachUse([](std::uint32_t& first, User) { ++first; });
  // From counts to where each one's readers end; taking them from there leads back to the first.
  std::uint32_t end = 0;
  for (std::vector<std::uint32_t>* firsts : {&state.inputUsers, &state.resultUsers}) {
    for (std::uint32_t& first : *firsts) first = end += first;
  }
  state.users.resize(end);
  eachUse([&](std::uint32_t& first, User user) { state.users[--first] = user; });
}

std::uint8_t Evaluation::sharesOf(const EngineState& state, const Result& result) const {
  if (!carriesTolerance(result.kind)) return 0;
  if (result.picks) return kPicking;
  const std::size_t number = index(result.number);
  const bool alike = state.varies[number] == 0 && !state.cells[number].notes.across &&
                     !state.reads[number].donor.any();
  return alike ? kAlike : kApart;
}

/// Finds what of an engine has to follow nudges, and in which cylinders.
void Evaluation::planNudges(int engine) {
  EngineState& state = engines_[index(engine)];
  for (std::vector<double>& side : state.moved) side = state.held;
  for (std::vector<Pulled>& side : state.pulled) side.assign(state.held.size(), {});
  state.sums.assign(state.held.size(), {});
  state.staleIn.assign(state.order.size(), 0);
  state.stale = {};
  state.followed.clear();
  for (const Result* result : state.order) {
    state.followed.push_back({.result = result,
                              .place = at(state, *result, 0),
                              .users = {},
                              .shares = sharesOf(state, *result),
                              .varies = state.varies[index(result->number)] != 0});
  }
  findUsers(state);
  for (std::size_t rank = state.followed.size(); rank-- > 0;) {
    Followed& followed = state.followed[rank];
    const bool outside = state.readByOthers[index(followed.result->number)];
    bool everyCylinder = followed.varies || outside;
    followed.leads = followed.shares;
    if (followed.varies) followed.leads |= kVarying;
    if (outside) followed.leads = kAnything;
    for (auto i = state.resultUsers[rank]; i < state.resultUsers[rank + 1]; ++i) {
      const Followed& user = state.followed[state.users[i].rank];
      followed.users.set(state.users[i].rank);
      followed.leads |= user.leads;
      everyCylinder = everyCylinder || state.users[i].across ||
                      (user.everyCylinder && user.result->per == Per::Cylinder);
    }
    followed.everyCylinder = everyCylinder && followed.result->per == Per::Cylinder;
    for (int i = 0; i < (followed.everyCylinder ? state.cylinders : 1); ++i) {
      const Cell& cell = cellOf(state, *followed.result, i);
      if (cell.state == State::Value) followed.valued |= Cylinders{1} << i;
    }
  }
}

bool Evaluation::leadsTo(const Source& source, std::uint8_t towards) const {
  if (source.engine == referenceDonor_ && engines() > 1) return true;
  const EngineState& state = engines_[index(source.engine)];
  const bool onlyVarying = source.single && source.cylinder > 0;
  const std::size_t input = index(source.input->number);
  std::uint8_t leads = 0;
  for (auto i = state.inputUsers[input]; i < state.inputUsers[input + 1]; ++i) {
    leads |= state.followed[state.users[i].rank].leads;
  }
  return (leads & towards) != 0 && (!onlyVarying || (leads & kVarying) != 0);
}

/// Marks the results that read the entry themselves.
void Evaluation::startFrom(const Source& source) {
  EngineState& state = engines_[index(source.engine)];
  const std::size_t input = index(source.input->number);
  const auto mark = [](EngineState& marked, std::size_t rank, Cylinders cylinders) {
    marked.staleIn[rank] |= cylinders;
    marked.stale.set(rank);
  };
  const Cylinders own = source.cylinder < 0 ? kAll : Cylinders{1} << source.cylinder;
  for (auto i = state.inputUsers[input]; i < state.inputUsers[input + 1]; ++i) {
    mark(state, state.users[i].rank, state.users[i].across ? kAll : own);
  }
  if (source.engine != referenceDonor_) return;
  for (EngineState& reader : engines_) {
    if (&reader == &state) continue;
    for (std::size_t rank = 0; rank < reader.followed.size(); ++rank) {
      const std::size_t number = index(reader.followed[rank].result->number);
      if (reader.direct[number].donor && reader.reads[number].donor[input]) {
        mark(reader, rank, kAll);
      }
    }
  }
}

/// Evaluates what is marked on both sides of the nudge, and marks on from what moved.
void Evaluation::settle(int engine, std::uint8_t towards) {
  EngineState& state = engines_[index(engine)];
  const bool onlyVarying = source_.single && source_.cylinder > 0;
  askingEngine_ = engine;
  for (std::size_t rank; (rank = state.stale.takeFirst()) < state.followed.size();) {
    const Followed& followed = state.followed[rank];
    const Cylinders stale = std::exchange(state.staleIn[rank], 0) & followed.valued;
    if ((followed.leads & towards) == 0 || (onlyVarying && (followed.leads & kVarying) == 0))
      continue;
    asking_ = &state.direct[index(followed.result->number)];
    Cylinders moved = 0;
    for (const int side : {0, 1}) {
      goTo(side);
      moved |= settleSide(state, engine, rank, stale);
    }
    if (moved == 0) continue;
    if (followed.result->per == Per::Engine) moved = kAll;
    state.stale |= followed.users;
    for (auto i = state.resultUsers[rank]; i < state.resultUsers[rank + 1]; ++i) {
      const User user = state.users[i];
      state.staleIn[user.rank] |= user.across ? kAll : moved;
    }
  }
  asking_ = nullptr;
}

/// @return the cylinders in which the result moved
Evaluation::Cylinders Evaluation::settleSide(EngineState& state, int engine, std::size_t rank,
                                             Cylinders stale) {
  const Followed& followed = state.followed[rank];
  const bool alike = source_.cylinder < 0 && !followed.varies;  // then one stands for all
  Cylinders moved = 0;
  double now = 0.0;
  for (Cylinders left = stale; left != 0; left &= left - 1) {
    home_ = std::countr_zero(left);
    const std::size_t place = followed.place + index(home_);
    if (!alike || left == stale) now = underNudge(engine, *followed.result, home_);
    double& value = state.moved[side_][place];
    if (same(now, value)) continue;
    const double held = state.held[place];
    if (same(state.moved[0][place], held) && same(state.moved[1][place], held)) {
      followers_.push_back({static_cast<std::uint8_t>(engine), static_cast<std::uint8_t>(home_),
                            static_cast<std::uint16_t>(rank)});
    }
    value = now;
    moved |= Cylinders{1} << home_;
  }
  return moved;
}

/// A source that stands for one cylinder of several alike need not be moved in each of them where
/// the result is the same in all: the first one counts for every cylinder.
void Evaluation::share(const Follower& follower, std::uint8_t towards) {
  EngineState& state = engines_[follower.engine];
  Followed& followed = state.followed[follower.rank];
  const Result& result = *followed.result;
  if ((followed.shares & towards) == 0) return;
  if (!followed.varies && (follower.cylinder > 0 || (source_.single && source_.cylinder > 0))) {
    return;
  }

  const std::size_t place = followed.place + follower.cylinder;
  const Moved one = moved(result, state.held[place], state.moved[0][place], state.moved[1][place]);
  const bool forAll =
      source_.single && result.per == Per::Engine && !followed.varies && !result.picks;
  const int n = cylinders(source_.engine);
  const int times = !forAll ? 1 : result.apart ? std::min(n, 2) : n;
  if (result.apart) {
    if (followed.countedFor != source_.input) followed.counted = 0;
    followed.countedFor = source_.input;
    if (one.worst > 0.0 && ++followed.counted > 2) return;
  }
  state.sums[place].worst += times * one.worst;
  state.sums[place].squares += times * one.mean * one.mean;
}

void Evaluation::addShares(const Source& source, std::uint8_t towards) {
  if (!leadsTo(source, towards)) return;
  nudge(source);
  startFrom(source);
  settle(source.engine, towards);
  for (int reader = 0; source.engine == referenceDonor_ && reader < engines(); ++reader) {
    if (reader != source.engine) settle(reader, towards);
  }
  release();
  for (const Follower& follower : followers_) {
    share(follower, towards);
    EngineState& state = engines_[follower.engine];
    const std::size_t place = state.followed[follower.rank].place + follower.cylinder;
    for (std::vector<double>& side : state.moved) side[place] = state.held[place];
  }
  followers_.clear();
}

void Evaluation::runWithTolerances() {
  runAll(true);
  nudgeRun_ = 0;
  for (int engine = 0; engine < engines(); ++engine) planNudges(engine);
  for (int engine = 0; engine < engines(); ++engine) {
    for (EngineState& state : engines_) {
      for (Followed& followed : state.followed) followed.countedFor = nullptr;
    }
    const Input* before = nullptr;
    for (const Source& source : sourcesOf(engine)) {
      if (source.cylinder < 0) {
        addShares(source, kShares);
        continue;
      }
      // What picks one of several cylinders is moved in all of them at once. So may be what is the
      // same in all of them, where the entry is.
      const std::uint8_t together = source.single ? kPicking | kAlike : kPicking;
      if (source.input != before) {
        addShares({engine, source.input, -1, source.limit, source.single}, together);
      }
      before = source.input;
      addShares(source, kShares & ~together);
    }
  }
  source_ = {};
  for (EngineState& state : engines_) keepTolerances(state);
}

void Evaluation::keepTolerances(EngineState& state) {
  for (const Result* result : state.order) {
    for (int i = 0; i < (isApart(state, *result) ? state.cylinders : 1); ++i) {
      const Sums& sums = state.sums[at(state, *result, i)];
      Cell& cell = cellOf(state, *result, i);
      if (cell.state != State::Value) continue;
      cell.worst = sums.worst;
      cell.likely = std::sqrt(sums.squares);
      if (std::isfinite(cell.worst + cell.likely)) continue;
      cell.state = State::Refused;
      cell.notes.refusedBy =
          keepRefusal({.sentence = "These numbers give no finite ±.", .kind = result->kind});
      cell.worst = cell.likely = 0.0;
    }
  }
}

std::vector<Contributor> Evaluation::contributors(int engine, const Result& result, int cylinder) {
  std::vector<Contributor> found;
  const std::array asked = {&result};
  for (const Move& move : moves(engine, asked, cylinder)) {
    if (move.worst > 0.0) found.push_back({move.input, move.donors, move.cylinder, move.worst});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Contributor& a, const Contributor& b) { return a.share > b.share; });
  return found;
}

std::vector<Move> Evaluation::moves(int engine, std::span<const Result* const> results,
                                    int cylinder) {
  std::vector<Move> found;
  std::vector<double> bases;
  for (const Result* result : results) {
    const Cell& base = cell(engine, *result, cylinder);
    if (base.state != State::Value) return found;
    bases.push_back(base.value);
  }
  const auto place = [&](const Result& result) { return result.per == Per::Engine ? 0 : cylinder; };
  const bool picks =
      std::any_of(results.begin(), results.end(), [](const Result* it) { return it->picks; });
  for (EngineState& state : engines_) {
    for (std::vector<Pulled>& side : state.pulled) side.resize(state.held.size());
  }
  std::vector<int> owners = {engine};
  if (referenceDonor_ >= 0 && referenceDonor_ != engine) owners.push_back(referenceDonor_);
  for (const int from : owners) {
    for (Source source : sourcesOf(from)) {
      if (picks) {
        if (source.cylinder > 0) continue;
        source.cylinder = -1;
      }
      if (std::none_of(results.begin(), results.end(),
                       [&](const Result* it) { return reads(engine, *it, source); })) {
        continue;
      }
      std::array<std::vector<double>, 2> sides;
      nudge(source);
      for (const int side : {0, 1}) {
        goTo(side);
        for (const Result* result : results) {
          sides[index(side)].push_back(underNudge(engine, *result, place(*result)));
        }
      }
      release();
      Move& one = found.emplace_back();
      one = {.input = source.input,
             .donors = source.engine != engine,
             .cylinder = source.cylinder,
             .shape = engines_[index(source.engine)].entries->at(source.input).shape,
             .limit = source.limit,
             .by = {}};
      for (std::size_t i = 0; i < results.size(); ++i) {
        const Moved by = moved(*results[i], bases[i], sides[0][i], sides[1][i]);
        if (i == 0) one.worst = by.worst;
        one.by.push_back(by.mean);
      }
    }
  }
  source_ = {};
  return found;
}

}  // namespace strokewright::describe
