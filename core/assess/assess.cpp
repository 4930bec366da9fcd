#include "core/assess/assess.h"

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <iterator>
#include <limits>
#include <tuple>

#include "core/assess/entry_rules.h"
#include "core/burette/results.h"
#include "core/chamber/results.h"
#include "core/choice/tables.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/describe/said_once.h"
#include "core/firing/results.h"
#include "core/limits/results.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/plate/results.h"
#include "core/ports/results.h"
#include "core/running/results.h"
#include "core/spread/tables.h"
#include "core/survey/results.h"

namespace strokewright::assess {
namespace {

using describe::Catalogue;
using describe::Cell;
using describe::Evaluation;
using describe::Finding;
using describe::Input;
using describe::Result;
using describe::Rule;
using describe::State;
using describe::Table;

/// Alike but for what arithmetic leaves over.
bool alike(double a, double b) {
  return std::abs(a - b) <= 1e-12 * std::max(std::abs(a), std::abs(b));
}

struct Subject {
  std::span<const Result* const> results;
  std::span<const Rule* const> rules;
  std::span<const Table* const> tables = {};
};

Catalogue makeCatalogue() {
  const std::array subjects = {
      Subject{{}, entryRules()},
      Subject{chamber::results(), chamber::rules()},
      Subject{motion::results(), motion::rules(), motion::tables()},
      Subject{deck::results(), deck::rules()},
      Subject{compression::results(), compression::rules()},
      Subject{masses::results(), masses::rules()},
      Subject{limits::results(), limits::rules()},
      Subject{clearance::results(), clearance::rules()},
      Subject{running::results(), running::rules()},
      Subject{survey::results(), survey::rules(), survey::tables()},
      Subject{plate::results(), plate::rules(), plate::tables()},
      Subject{{}, {}, spread::tables()},
      Subject{{}, choice::rules(), choice::tables()},
      Subject{burette::results(), burette::rules(), burette::tables()},
      Subject{ports::results(), ports::rules(), ports::tables()},
      Subject{cranking::results(), cranking::rules()},
      Subject{cutting::results(), cutting::rules(), cutting::tables()},
      Subject{firing::results(), firing::rules(), firing::tables()},
  };
  const auto inputs = model::inputs();
  std::vector<const Result*> results;
  std::vector<const Rule*> rules;
  std::vector<const Table*> tables;
  for (const Subject& subject : subjects) {
    results.insert(results.end(), subject.results.begin(), subject.results.end());
    rules.insert(rules.end(), subject.rules.begin(), subject.rules.end());
    tables.insert(tables.end(), subject.tables.begin(), subject.tables.end());
  }
  return {{inputs.begin(), inputs.end()}, results, rules, tables, model::in::cylinderCount};
}

std::vector<describe::Subject> subjectsOf(const model::Project& project) {
  std::vector<describe::Subject> subjects;
  for (const model::Engine& engine : project.engines) {
    subjects.push_back({.entries = &engine.entries,
                        .isDonor = engine.part == model::Part::Donor,
                        .own = &engine.lists,
                        .shared = &project.lists});
  }
  return subjects;
}

/// That an entry is unusual need not be said where a rule of its subject objects to it as well: the
/// telling one stays, and takes over what the number may have meant where it offers nothing itself.
void giveWay(std::vector<describe::Finding>& findings) {
  const auto tells = [&](const describe::Finding& general, bool offering) {
    return std::find_if(findings.begin(), findings.end(), [&](const describe::Finding& it) {
      return it.key != general.key && it.weight >= general.weight &&
             it.about.front() == general.about.front() && it.list == general.list &&
             it.item == general.item && it.mends.empty() != offering;
    });
  };
  for (auto general = findings.begin(); general != findings.end();) {
    auto telling = findings.end();
    if (isGeneral(*general)) telling = tells(*general, true);
    if (isGeneral(*general) && telling == findings.end()) telling = tells(*general, false);
    if (telling == findings.end()) {
      ++general;
      continue;
    }
    if (telling->mends.empty() && !general->mends.empty()) {
      telling->hint = std::move(general->hint);
      telling->mends = std::move(general->mends);
    }
    general = findings.erase(general);
  }
}

/// While an entry looks like a slip, what is objected to in its relations to others would vanish
/// with it and is not said.
void leaveOutWhatFollows(std::vector<describe::Finding>& findings) {
  std::vector<const Input*> slips;
  for (const describe::Finding& finding : findings) {
    if (isGeneral(finding) && !finding.mends.empty()) slips.push_back(finding.about.front());
  }
  std::erase_if(findings, [&](const describe::Finding& finding) {
    return finding.weight != describe::Weight::Forbids &&
           std::find_first_of(std::next(finding.about.begin()), finding.about.end(), slips.begin(),
                              slips.end()) != finding.about.end();
  });
}

}  // namespace

const Catalogue& catalogue() {
  static const Catalogue kCatalogue = makeCatalogue();
  return kCatalogue;
}

Assessment::Assessment(const model::Project& project)
    : project_(&project),
      evaluation_(catalogue(), subjectsOf(project), project.referenceDonor),
      findings_(project.engines.size()) {
  evaluation_.runWithTolerances();
  for (int engine = 0; engine < evaluation_.engines(); ++engine) {
    std::vector<describe::Finding>& findings = findings_[static_cast<std::size_t>(engine)];
    for (const Rule* rule : catalogue().rules()) evaluation_.judge(engine, *rule, findings);
    giveWay(findings);
    leaveOutWhatFollows(findings);
    addRefusals(engine, findings);
    std::stable_sort(
        findings.begin(), findings.end(),
        [](const describe::Finding& a, const describe::Finding& b) { return a.weight > b.weight; });
  }
}

/// A limit that a leaf function met forbids: said once, though many results rest on it, and of the
/// entries of the result that reads the fewest. What the donor met is said of the donor, and what a
/// rule has said, for results that wait too, is not said again.
void Assessment::addRefusals(int engine, std::vector<describe::Finding>& findings) {
  std::vector<describe::Finding> refusals;
  for (const Result* result : catalogue().results()) {
    const int n = result->per == describe::Per::Engine ? 1 : evaluation_.cylinders(engine);
    std::vector<std::vector<describe::Finding>> said(static_cast<std::size_t>(n));
    for (int i = 0; i < n; ++i) {
      const Cell& cell = evaluation_.cell(engine, *result, i);
      if (cell.state != State::Refused || cell.notes.read.donor.any()) continue;
      const describe::RefusedBecause& because = evaluation_.refusal(cell);
      if (because.input != nullptr) continue;  // its rule says so
      describe::Finding finding;
      finding.weight = describe::Weight::Forbids;
      finding.key = "refused";
      finding.source = result->source;
      finding.engine = engine;
      finding.says = {because.sentence,
                      {describe::Quantity{because.kind, because.value},
                       describe::Quantity{because.kind, because.limit}}};
      for (const Input* input : catalogue().inputs()) {
        if (cell.notes.read.own[static_cast<std::size_t>(input->number)] &&
            evaluation_.inputGiven(engine, *input, i)) {
          finding.about.push_back(input);
        }
      }
      said[static_cast<std::size_t>(i)].push_back(std::move(finding));
    }
    std::vector<describe::Finding> once = describe::saidOnce(said);
    if (once.empty()) continue;
    const bool byRule = std::any_of(findings.begin(), findings.end(), [&](const auto& finding) {
      return finding.says.pattern == once.front().says.pattern;
    });
    if (byRule) continue;
    bool before = false;
    for (describe::Finding& refusal : refusals) {
      if (refusal.says.pattern != once.front().says.pattern) continue;
      before = true;
      if (once.front().about.size() < refusal.about.size()) refusal.about = once.front().about;
    }
    if (!before) std::move(once.begin(), once.end(), std::back_inserter(refusals));
  }
  std::move(refusals.begin(), refusals.end(), std::back_inserter(findings));
}

std::vector<Assessment::Wait> Assessment::waitsFor(int engine, const Result& result,
                                                   int cylinder) const {
  return waitsFor(evaluation_.cell(engine, result, cylinder).notes);
}

std::vector<Assessment::Wait> Assessment::waitsFor(const describe::Frame& notes) const {
  std::vector<Wait> waits;
  for (const bool donors : {false, true}) {
    const auto& bits = donors ? notes.missing.donor : notes.missing.own;
    for (const Input* input : catalogue().inputs()) {
      if (bits[static_cast<std::size_t>(input->number)]) waits.push_back({input, donors});
    }
  }
  return waits;
}

int Assessment::waiting(int engine, const Input& input) const {
  const auto bit = static_cast<std::size_t>(input.number);
  const auto& results = catalogue().results();
  return static_cast<int>(std::count_if(results.begin(), results.end(), [&](const Result* result) {
    const Cell& cell = evaluation_.cell(engine, *result);
    return cell.state == State::Waits && cell.notes.missing.own[bit];
  }));
}

bool Assessment::forbidden() const {
  return std::any_of(findings_.begin(), findings_.end(), [](const auto& findings) {
    return !findings.empty() && findings.front().weight == describe::Weight::Forbids;
  });
}

bool Assessment::sameInAll(int engine, const Result& result) const {
  const Cell& first = evaluation_.cell(engine, result, 0);
  for (int i = 1; i < evaluation_.cylinders(engine); ++i) {
    const Cell& other = evaluation_.cell(engine, result, i);
    if (other.state != first.state) return false;
    if (!alike(other.value, first.value)) return false;
  }
  return true;
}

namespace {

/// Where to look for a value of an input: first what it could sanely be, then the rest of what it
/// can be. A side without a limit ends where sanity does.
struct Ground {
  describe::Limits sane;
  describe::Limits all;
  bool everywhere = false;  ///< nothing that is possible lies outside
};

Ground groundOf(const Input& input, double now) {
  double scale = std::max({std::abs(now), std::abs(input.typical), input.plusMinus});
  for (const double usual : {input.usual.least, input.usual.most}) {
    if (std::isfinite(usual)) scale = std::max(scale, std::abs(usual));
  }
  double least = input.possible.least;
  const double most = input.possible.most;
  if (input.possible.leastExcluded) least = std::nextafter(least, most);
  Ground ground;
  ground.sane = {.least = std::max(least, -20.0 * scale), .most = std::min(most, 20.0 * scale)};
  ground.all = {.least = std::isfinite(least) ? least : ground.sane.least,
                .most = std::isfinite(most) ? most : ground.sane.most};
  ground.everywhere = std::isfinite(least) && std::isfinite(most);
  return ground;
}

/// How far a search has come one way.
struct Front {
  double at;
  std::optional<double> miss;  ///< there; nothing where the result has no value
};

/// The steps on the way to an end, closest near the start.
std::vector<double> stepsTo(double end, double start, int count) {
  std::vector<double> steps;
  for (int i = 1; i < count && start != end; ++i) {
    steps.push_back(start + std::pow(static_cast<double>(i) / count, 3.0) * (end - start));
  }
  if (start != end) steps.push_back(end);
  return steps;
}

}  // namespace

Solution solve(Evaluation& evaluation, int engine, const Result& result, int cylinder,
               double wanted, const Input& input, int inputCylinder) {
  Evaluation trial = evaluation;
  const double now = evaluation.inputValue(engine, input, std::max(inputCylinder, 0));
  Solution solution{.value = {}, .nearest = now, .reached = 0.0};
  const Cell& stands = evaluation.cell(engine, result, cylinder);
  if (stands.state == State::Value &&
      !stands.notes.read.own[static_cast<std::size_t>(input.number)]) {
    return {.value = {}, .nearest = now, .reached = stands.value, .still = true};
  }
  double nearestMiss = std::numeric_limits<double>::infinity();
  std::optional<double> before;
  bool elsewhere = false;  // it has a value at more than one value of the input
  bool moved = false;

  /// Difference to what is wanted; nothing where the result has no value.
  const auto miss = [&](double value) -> std::optional<double> {
    trial.put(engine, input, inputCylinder, value);
    const Cell& cell = trial.fresh(engine, result, cylinder);
    if (cell.state == State::Waits && !solution.waits) solution.waits = cell.notes;
    if (cell.state != State::Value) return std::nullopt;
    elsewhere = elsewhere || before;
    moved = moved || !alike(before.value_or(cell.value), cell.value);
    before = cell.value;
    const double difference = cell.value - wanted;
    if (std::abs(difference) < nearestMiss) {
      nearestMiss = std::abs(difference);
      solution.nearest = value;
      solution.reached = cell.value;
    }
    return difference;
  };

  const Ground ground = groundOf(input, now);
  solution.from = ground.all.least;
  solution.to = ground.all.most;
  solution.everywhere = ground.everywhere;
  const double start = std::clamp(now, ground.all.least, ground.all.most);
  const std::optional<double> first = miss(start);
  const double scale = std::max(std::abs(wanted), std::abs(solution.reached));
  if (first && alike(wanted, wanted + *first)) {
    solution.value = start;
    return solution;
  }

  /// Between a value at which the result has one and a value at which it has none, the last at
  /// which it has one.
  const auto edge = [&](double has, double hasNot, double missThere) {
    constexpr int kHalvings = 52;
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (has + hasNot);
      const std::optional<double> missed = miss(middle);
      (missed ? has : hasNot) = middle;
      missThere = missed.value_or(missThere);
    }
    return std::pair(has, missThere);
  };
  // Walk outwards from where it stands, both ways, until the sign changes: the root next to the
  // present value is the one the builder means. It may lie just before the result ends.
  std::optional<std::pair<double, double>> bracket;
  const auto step = [&](Front& front, double next) {
    const std::optional<double> there = miss(next);
    double near = front.at;
    double far = next;
    std::optional<double> nearMiss = front.miss;
    std::optional<double> farMiss = there;
    if (nearMiss && !farMiss) {
      std::tie(far, farMiss) = edge(near, far, *nearMiss);
    } else if (farMiss && !nearMiss) {
      std::tie(near, nearMiss) = edge(far, near, *farMiss);
    }
    if (near != far && nearMiss && farMiss && *nearMiss * *farMiss <= 0.0) {
      bracket = std::minmax(near, far);
    }
    front.at = next;
    front.miss = there;
  };
  Front up{start, first};
  Front down{start, first};
  for (const auto& [end, count] : {std::pair{ground.sane, 64}, std::pair{ground.all, 32}}) {
    const std::vector<double> ups = stepsTo(std::max(up.at, end.most), up.at, count);
    const std::vector<double> downs = stepsTo(std::min(down.at, end.least), down.at, count);
    for (std::size_t i = 0; i < std::max(ups.size(), downs.size()) && !bracket; ++i) {
      if (i < ups.size()) step(up, ups[i]);
      if (!bracket && i < downs.size()) step(down, downs[i]);
    }
    // Far out a result that stands still moves by what arithmetic leaves over.
    if (bracket || (elsewhere && !moved)) break;
  }
  solution.still = elsewhere && !moved;
  if (elsewhere) solution.waits.reset();
  if (bracket) {
    std::uintmax_t iterations = 100;
    const auto function = [&](double value) { return miss(value).value_or(0.0); };
    const auto [from, to] = boost::math::tools::toms748_solve(
        function, bracket->first, bracket->second, boost::math::tools::eps_tolerance<double>(50),
        iterations);
    miss(0.5 * (from + to));
  }
  // A leap of the result changes the sign too, and is no root.
  if (nearestMiss <= 1e-6 * scale) solution.value = solution.nearest;
  return solution;
}

std::vector<Finding> newlySaid(std::span<const Finding> before, std::span<const Finding> now) {
  std::vector<Finding> said;
  std::ranges::copy_if(now, std::back_inserter(said), [&](const Finding& finding) {
    return std::ranges::none_of(before, [&](const Finding& earlier) {
      return earlier.key == finding.key && earlier.cylinder == finding.cylinder &&
             earlier.about == finding.about && earlier.weight >= finding.weight;
    });
  });
  return said;
}

std::optional<describe::Sentence> whatFollows(const Evaluation& evaluation, int engine,
                                              const Result& result, int cylinder,
                                              const Solution& solution, const Input& input,
                                              int inputCylinder) {
  const auto reads = [&](const Result& which, const Input& entry) {
    return evaluation.cell(engine, which, cylinder)
        .notes.read.own[static_cast<std::size_t>(entry.number)];
  };
  namespace in = model::in;
  if (&input == &in::spacer || evaluation.inputGiven(engine, in::spacer, cylinder)) return {};
  if (!reads(result, in::spacer) || !reads(out::spacerToMake, input)) return {};
  if (solution.still) {
    return describe::Sentence{
        "No spacer is entered: the one to make follows the {1} and takes up what it changes. Enter "
        "it to hold it still.",
        {&input}};
  }
  Evaluation trial = evaluation;
  trial.put(engine, input, inputCylinder, solution.nearest);
  const Cell& follows = trial.fresh(engine, out::spacerToMake, cylinder);
  if (follows.state != State::Value) return {};
  return describe::Sentence{
      "No spacer is entered: the one to make follows, to {1} there. Enter it to hold it still.",
      {describe::fine(follows.value)}};
}

std::vector<SweepPoint> sweep(Evaluation& evaluation, int engine, const Result& result,
                              int cylinder, const Input& input, int inputCylinder,
                              std::span<const double> at) {
  Evaluation trial = evaluation;
  std::vector<SweepPoint> points;
  points.reserve(at.size());
  for (const double value : at) {
    trial.put(engine, input, inputCylinder, value);
    const Cell& cell = trial.fresh(engine, result, cylinder);
    if (cell.state == State::Value) points.push_back({value, cell.value});
  }
  return points;
}

}  // namespace strokewright::assess
