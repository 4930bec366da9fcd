#include "core/sheet/objections.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include "core/assess/entry_rules.h"
#include "core/burette/results.h"
#include "core/chamber/results.h"
#include "core/choice/tables.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/firing/results.h"
#include "core/limits/results.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/plate/results.h"
#include "core/ports/results.h"
#include "core/running/results.h"
#include "core/sheet/words.h"
#include "core/survey/results.h"

namespace strokewright::sheet {
namespace {

using describe::Cell;
using describe::Finding;
using describe::Result;
using describe::Weight;

namespace in = model::in;

constexpr std::string_view kRefused = "refused";
constexpr std::string_view kStack = "stack and gap";
constexpr std::string_view kEntries = "entries";
constexpr std::string_view kFillings = "fillings";
constexpr std::string_view kCompression = "compression";
constexpr std::string_view kOfTheThrows = "firing order";

/// What a rule is about, by the room it stands in.
struct Subject {
  std::string_view name;
  std::span<const describe::Rule* const> (*rules)();
};
constexpr Subject kSubjects[] = {
    {kStack, &deck::rules},
    {kStack, &running::rules},
    {kStack, &survey::rules},
    {kStack, &plate::rules},
    {kStack, &choice::rules},
    {"motion", &motion::rules},
    {"displacement", &chamber::rules},
    {kCompression, &compression::rules},
    {kCompression, &cutting::rules},
    {kFillings, &burette::rules},
    {"masses", &masses::rules},
    {"revs", &limits::rules},
    {"clearances", &clearance::rules},
    {"ports", &ports::rules},
    {"cranking", &cranking::rules},
    {kOfTheThrows, &firing::rules},
};

/// What stands on top of one another, and what is wanted of the gap.
bool isOfStack(const describe::Input* input) {
  constexpr const describe::Input* kOfStack[] = {
      &in::seatHeight,    &in::barrelHeight,        &in::deckHeight,
      &in::heightTakenTo, &in::linerProud,          &in::spacer,
      &in::baseGasket,    &in::secondBaseGasket,    &in::thirdBaseGasket,
      &in::headGasket,    &in::headRecess,          &in::crownRise,
      &in::wantedSquish,  &in::wantedDeckClearance, &in::measuredDeckClearance,
      &in::measuredSquish};
  return std::ranges::find(kOfStack, input) != std::end(kOfStack);
}

bool isOfTheThrows(const describe::Input* input) {
  constexpr const describe::Input* kOfThem[] = {
      &in::viewedFrom,   &in::rotation,       &in::firstStandsAt, &in::throwAhead,
      &in::cylinderAxis, &in::cylinderNumber, &in::firingOrder};
  return std::ranges::find(kOfThem, input) != std::end(kOfThem);
}

std::string_view subjectOf(const describe::Input* input) {
  if (isOfStack(input)) return kStack;
  return isOfTheThrows(input) ? kOfTheThrows : kEntries;
}

std::string_view subjectOf(const Finding& finding) {
  for (const Subject& subject : kSubjects) {
    const auto rules = subject.rules();
    if (std::ranges::find(rules, finding.key, &describe::Rule::key) != rules.end()) {
      return subject.name;
    }
  }
  return finding.about.empty() ? kEntries : subjectOf(finding.about.front());
}

/// It only says how a text was taken; who typed it has read it in the window.
bool isOfTheText(const Finding& finding) {
  return finding.weight == Weight::Remarks &&
         (finding.key == "read_as" || finding.key == "thousand_or_decimal");
}

/// A sentence and all the engines it is said of.
struct Said {
  std::string_view word;
  std::string sentence;
  std::vector<int> engines;
  std::string_view subject;
};

class Listener {
 public:
  Listener(const assess::Assessment& assessment, const units::Style& style,
           std::span<const int> engines)
      : assessment_(assessment), style_(style), engines_(engines) {
    listen();
  }

  std::vector<Objection> all() const {
    std::vector<Objection> objections;
    for (const Said& said : said_) objections.push_back(objectionOf(said));
    return objections;
  }

  std::vector<Objection> onlyOf(int engine) const {
    std::vector<Objection> objections;
    for (const Said& said : said_) {
      if (said.engines == std::vector{engine}) objections.push_back(objectionOf(said));
    }
    return objections;
  }

 private:
  void listen() {
    for (const Weight weight : {Weight::Forbids, Weight::Objects, Weight::Remarks}) {
      for (const int engine : engines_) hearFindings(engine, weight);
      if (weight != Weight::Forbids) continue;
      for (const int engine : engines_) hearRefusals(engine);
    }
    putStackFirst();
  }

  Objection objectionOf(const Said& said) const {
    return {std::string(said.word), named(said), std::string(said.subject)};
  }

  /// Among those of one weight.
  void putStackFirst() {
    for (auto first = said_.begin(); first != said_.end();) {
      const auto last = std::find_if(
          first, said_.end(), [word = first->word](const Said& it) { return it.word != word; });
      std::stable_partition(first, last, [](const Said& it) { return it.subject == kStack; });
      first = last;
    }
  }

  void hear(std::string_view word, std::string sentence, int engine, std::string_view subject) {
    const auto before = std::ranges::find(said_, sentence, &Said::sentence);
    if (before == said_.end()) {
      said_.push_back({word, std::move(sentence), {engine}, subject});
    } else if (std::ranges::find(before->engines, engine) == before->engines.end()) {
      before->engines.push_back(engine);
    }
  }

  void hearFindings(int engine, Weight weight) {
    for (const Finding& finding : assessment_.findings(engine)) {
      if (finding.weight != weight || isOfTheText(finding) ||
          assess::goesWithoutSaying(finding, style_)) {
        continue;
      }
      hear(weightWord(weight), sentenceOf(finding), engine, subjectOf(finding));
    }
  }

  std::string sentenceOf(const Finding& finding) const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    std::string sentence;
    if (finding.cylinder >= 0 && evaluation.cylinders(finding.engine) > 1) {
      const int number = model::numberOfCylinder(evaluation, finding.engine, finding.cylinder);
      sentence.append("Cylinder ").append(std::to_string(number)).append(": ");
    }
    sentence += word(finding.says, style_);
    const std::string hint = word(finding.hint, style_);
    if (!hint.empty()) sentence.append(" ").append(hint);
    return sentence;
  }

  void hearRefusals(int engine) {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    for (const Result* result : evaluation.catalogue().results()) {
      const int count = result->per == describe::Per::Engine ? 1 : evaluation.cylinders(engine);
      for (int i = 0; i < count; ++i) {
        const Cell& cell = assessment_(engine, *result, i);
        if (cell.state != describe::State::Refused) continue;
        const describe::RefusedBecause& because = evaluation.refusal(cell);
        if (!forbidden(because.donors ? evaluation.referenceDonor() : engine, because)) {
          hear(kRefused, word(because, style_), engine, subjectOf(because.input));
        }
      }
    }
  }

  /// A finding forbids the entry that the refusal comes from, and says it better.
  bool forbidden(int engine, const describe::RefusedBecause& because) const {
    return because.input != nullptr &&
           std::ranges::any_of(assessment_.findings(engine), [&](const Finding& finding) {
             return finding.weight == Weight::Forbids &&
                    std::ranges::find(finding.about, because.input) != finding.about.end();
           });
  }

  std::string named(const Said& said) const {
    std::vector<std::string> others;
    for (const int engine : said.engines) {
      if (engine == engines_.front()) continue;
      others.push_back(
          shortened(assessment_.project().engines[static_cast<std::size_t>(engine)].name));
    }
    if (others.empty()) return said.sentence;
    if (said.engines.size() == others.size()) return join(others, ", ") + ": " + said.sentence;
    return said.sentence + " (Also " + join(others, ", ") + ".)";
  }

  const assess::Assessment& assessment_;
  const units::Style& style_;
  std::span<const int> engines_;
  std::vector<Said> said_;
};

/// "2 remarks on masses and motion"
std::string counted(std::string_view noun, std::size_t count, std::vector<std::string> subjects) {
  std::string text = std::to_string(count).append(" ").append(noun);
  if (count > 1) text += "s";
  const std::string last = subjects.back();
  subjects.pop_back();
  text += " on " + join(subjects, ", ");
  return text + (subjects.empty() ? "" : " and ") + last;
}

}  // namespace

std::string countOf(std::span<const Objection> leftOut) {
  constexpr std::pair<std::string_view, std::string_view> kNouns[] = {{"forbids", "prohibition"},
                                                                      {kRefused, "refusal"},
                                                                      {"objects", "objection"},
                                                                      {"remarks", "remark"}};
  std::vector<std::string> parts;
  for (const auto& [word, noun] : kNouns) {
    std::size_t count = 0;
    std::vector<std::string> subjects;
    for (const Objection& it : leftOut) {
      if (it.word != word) continue;
      ++count;
      if (std::ranges::find(subjects, it.subject) == subjects.end()) subjects.push_back(it.subject);
    }
    if (count > 0) parts.push_back(counted(noun, count, std::move(subjects)));
  }
  return join(parts, "; ");
}

std::vector<Objection> objectionsOf(const assess::Assessment& assessment, const units::Style& style,
                                    std::span<const int> engines) {
  return Listener(assessment, style, engines).all();
}

std::vector<Objection> objectionsOnlyOf(int engine, const assess::Assessment& assessment,
                                        const units::Style& style, std::vector<int> others) {
  others.push_back(engine);
  return Listener(assessment, style, others).onlyOf(engine);
}

bool standsOn(SheetKind kind, const Objection& objection) {
  if (objection.word == weightWord(Weight::Forbids) || objection.word == kRefused) return true;
  if (kind == SheetKind::Throws) return objection.subject == kOfTheThrows;
  if (objection.word == weightWord(Weight::Remarks)) return false;
  if (objection.subject == kEntries) return kind != SheetKind::Plate;
  if (kind != SheetKind::Burette) return objection.subject == kStack;
  return objection.subject == kFillings || objection.subject == kCompression;
}

}  // namespace strokewright::sheet
