#include "core/sheet/grounds.h"

#include <cstddef>
#include <map>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/limits/results.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {
namespace {

using describe::Input;
using describe::Origin;
using describe::Reads;
using describe::Result;
using units::Kind;

using Names = std::vector<std::string>;

int cellsOf(const assess::Assessment& assessment, int engine, const Result& result) {
  return result.per == describe::Per::Engine ? 1 : assessment.evaluation().cylinders(engine);
}

/// Every entry that these results of the engine read, its own and the donor's.
Reads readsOf(const assess::Assessment& assessment, int engine, Shown shown) {
  Reads all;
  for (const Result* result : shown) {
    for (int i = 0; i < cellsOf(assessment, engine, *result); ++i) {
      all |= assessment(engine, *result, i).notes.read;
    }
  }
  return all;
}

/// How many of these results wait for each entry of the engine's own, in page order.
std::map<const Input*, int, describe::ByNumber> waitingFor(const assess::Assessment& assessment,
                                                           int engine, Shown shown) {
  std::map<const Input*, int, describe::ByNumber> counts;
  for (const Result* result : shown) {
    std::set<const Input*> missing;
    for (int i = 0; i < cellsOf(assessment, engine, *result); ++i) {
      for (const auto& wait : assessment.waitsFor(engine, *result, i)) {
        if (!wait.donors) missing.insert(wait.input);
      }
    }
    for (const Input* input : missing) ++counts[input];
  }
  return counts;
}

/// Choices and counts are not measured, so their origin says nothing.
bool hasOrigin(const Input& input) {
  return input.kind != Kind::Choice && input.kind != Kind::Count;
}

template <typename Read>
void addEntries(Names& names, const model::Engine& engine, Origin origin, const Read& read,
                std::string_view whose) {
  for (const auto& [input, entry] : engine.entries) {
    const bool counts = entry.known() && entry.origin == origin && hasOrigin(*input) &&
                        read[static_cast<std::size_t>(input->number)];
    if (counts) names.push_back(std::string(whose) + describe::inSentence(input->label));
  }
}

Names entriesFrom(const assess::Assessment& assessment, int engine, Origin origin,
                  const Reads& reads) {
  const auto& engines = assessment.project().engines;
  const int donor = assessment.evaluation().referenceDonor();
  Names names;
  addEntries(names, engines[static_cast<std::size_t>(engine)], origin, reads.own, "");
  if (donor >= 0 && donor != engine) {
    addEntries(names, engines[static_cast<std::size_t>(donor)], origin, reads.donor, "donor's ");
  }
  return names;
}

/// Numbers that stand by default: those that are zero, by name, or the others with their values.
Names defaults(const assess::Assessment& assessment, const units::Style& style, int engine,
               const Reads& reads, bool zero) {
  const describe::Evaluation& evaluation = assessment.evaluation();
  Names names;
  for (const Input* input : evaluation.catalogue().inputs()) {
    if (!reads.own[static_cast<std::size_t>(input->number)] || !hasOrigin(*input)) continue;
    if (evaluation.inputGiven(engine, *input) || !evaluation.inputStands(engine, *input)) continue;
    const double value = evaluation.inputValue(engine, *input);
    if ((value == 0.0) != zero) continue;
    std::string name = describe::inSentence(input->label);
    if (!zero) name += " " + wordValue(*input, value, style);
    names.push_back(std::move(name));
  }
  return names;
}

/// What decides whether it holds, fits its class and fires: on their grounds the sheet is looked
/// at first.
constexpr const Result* kDecisive[] = {&out::classMargin, &out::spacerInStack, &out::squishGap,
                                       &out::compressionRatio, &out::revCeiling};

Reads readByDecisive(const assess::Assessment& assessment, int engine) {
  return readsOf(assessment, engine, kDecisive);
}

describe::InputSet without(const describe::InputSet& all, const describe::InputSet& these) {
  describe::InputSet left;
  all.each([&](std::size_t number) {
    if (!these[number]) left.set(number);
  });
  return left;
}

/// What only the others read.
Reads readByOthers(const assess::Assessment& assessment, int engine, Shown shown) {
  const Reads reads = readsOf(assessment, engine, shown);
  const Reads decisive = readByDecisive(assessment, engine);
  return {without(reads.own, decisive.own), without(reads.donor, decisive.donor)};
}

/// "Assumed: this; that. By default: a third."
class Sentences {
 public:
  void say(std::string_view what, Names names) {
    if (!names.empty()) said_.push_back(std::string(what) + ": " + namesOf(std::move(names)) + ".");
  }
  std::string text() const { return join(said_, " "); }

 private:
  Names said_;
};

/// What may be otherwise on the bench.
void sayUncertain(Sentences& sentences, const assess::Assessment& assessment,
                  const units::Style& style, int engine, const Reads& reads) {
  sentences.say("Assumed or decided", entriesFrom(assessment, engine, Origin::Assumed, reads));
  sentences.say("From a catalogue", entriesFrom(assessment, engine, Origin::Catalogue, reads));
  sentences.say("No origin said", entriesFrom(assessment, engine, Origin::NotSaid, reads));
  sentences.say("By default", defaults(assessment, style, engine, reads, false));
}

}  // namespace

std::string restsOn(const assess::Assessment& assessment, const units::Style& style, int engine) {
  Sentences sentences;
  sayUncertain(sentences, assessment, style, engine, readByDecisive(assessment, engine));
  return sentences.text();
}

std::string restsFurtherOn(const assess::Assessment& assessment, const units::Style& style,
                           int engine, Shown shown) {
  Sentences sentences;
  sayUncertain(sentences, assessment, style, engine, readByOthers(assessment, engine, shown));
  const Reads reads = readsOf(assessment, engine, shown);
  sentences.say("From the maker's book",
                entriesFrom(assessment, engine, Origin::MakersBook, reads));
  sentences.say("Computed", entriesFrom(assessment, engine, Origin::Computed, reads));
  sentences.say("Taken as none", defaults(assessment, style, engine, reads, true));
  return sentences.text();
}

std::string waitsFor(const assess::Assessment& assessment, int engine, Shown shown) {
  Names names;
  for (const auto& [input, count] : waitingFor(assessment, engine, shown)) {
    names.push_back(describe::inSentence(input->label) + " (" + std::to_string(count) + ")");
  }
  if (names.empty()) return {};
  return "Not entered yet, and how many results wait for it: " + namesOf(std::move(names)) + ".";
}

}  // namespace strokewright::sheet
