#include "core/sheet/objections.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "core/describe/wording.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {
namespace {

using describe::Cell;
using describe::Finding;
using describe::Result;
using describe::Weight;

/// A sentence and all the engines it is said of.
struct Said {
  std::string_view word;
  std::string sentence;
  std::vector<int> engines;
};

class Listener {
 public:
  Listener(const assess::Assessment& assessment, const units::Style& style,
           std::span<const int> engines)
      : assessment_(assessment), style_(style), engines_(engines) {}

  std::vector<Objection> all() {
    for (const Weight weight : {Weight::Forbids, Weight::Objects, Weight::Remarks}) {
      for (const int engine : engines_) hearFindings(engine, weight);
      if (weight != Weight::Forbids) continue;
      for (const int engine : engines_) hearRefusals(engine);
    }
    std::vector<Objection> objections;
    for (const Said& said : said_) objections.push_back({std::string(said.word), named(said)});
    return objections;
  }

 private:
  void hear(std::string_view word, std::string sentence, int engine) {
    const auto before = std::ranges::find(said_, sentence, &Said::sentence);
    if (before == said_.end()) {
      said_.push_back({word, std::move(sentence), {engine}});
    } else if (std::ranges::find(before->engines, engine) == before->engines.end()) {
      before->engines.push_back(engine);
    }
  }

  void hearFindings(int engine, Weight weight) {
    const bool several = assessment_.evaluation().cylinders(engine) > 1;
    for (const Finding& finding : assessment_.findings(engine)) {
      if (finding.weight != weight) continue;
      hear(weightWord(weight), sentenceOf(finding, several), engine);
    }
  }

  std::string sentenceOf(const Finding& finding, bool severalCylinders) const {
    std::string sentence;
    if (severalCylinders && finding.cylinder >= 0) {
      sentence.append("Cylinder ").append(std::to_string(finding.cylinder + 1)).append(": ");
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
          hear("refused", word(because, style_), engine);
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

}  // namespace

std::vector<Objection> objectionsOf(const assess::Assessment& assessment, const units::Style& style,
                                    std::span<const int> engines) {
  return Listener(assessment, style, engines).all();
}

}  // namespace strokewright::sheet
