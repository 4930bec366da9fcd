#include "app/telling.h"

#include <algorithm>
#include <numeric>

#include "app/joined.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/sheet/sheet.h"

namespace strokewright::app {

using assess::Assessment;
using describe::Finding;
using describe::Result;
using describe::State;

std::vector<int> enginesShown(const Assessment& assessment, std::optional<int> named) {
  if (named) return {*named};
  std::vector<int> all(assessment.project().engines.size());
  std::iota(all.begin(), all.end(), 0);
  return all;
}

std::string heading(const Assessment& assessment, int engine) {
  const model::Engine& it = assessment.project().engines[static_cast<std::size_t>(engine)];
  const int cylinders = assessment.evaluation().cylinders(engine);
  return joined({it.name, " · ", model::partKey(it.part), " · ", std::to_string(cylinders),
                 cylinders == 1 ? " cylinder" : " cylinders"});
}

int cellsOf(const Assessment& assessment, int engine, const Result& result) {
  return result.per == describe::Per::Engine ? 1 : assessment.evaluation().cylinders(engine);
}

std::vector<std::string> keysWaitedFor(const Assessment& assessment, const describe::Frame& notes) {
  std::vector<std::string> keys;
  for (const auto& [input, donors] : assessment.waitsFor(notes)) {
    keys.push_back(joined({donors ? "donor:" : "", input->key}));
  }
  return keys;
}

std::vector<std::string> keysWaitedFor(const Assessment& assessment, int engine,
                                       const Result& result) {
  std::vector<std::string> keys;
  for (int i = 0; i < cellsOf(assessment, engine, result); ++i) {
    for (std::string& key : keysWaitedFor(assessment, assessment(engine, result, i).notes)) {
      if (std::ranges::find(keys, key) == keys.end()) keys.push_back(std::move(key));
    }
  }
  return keys;
}

std::string whyNone(const Assessment& assessment, State state, const describe::Frame& notes) {
  if (state == State::Refused) {
    return joined({"refused: ", word(assessment.evaluation().refusal(notes), kBench)});
  }
  if (state == State::None) return joined({"does not apply: ", notes.none});
  std::string text = "waits for:";
  for (const std::string& key : keysWaitedFor(assessment, notes)) text.append(" ").append(key);
  return text;
}

std::string sentenceOf(const Finding& finding) {
  std::string sentence = word(finding.says, kBench);
  if (!finding.hint.pattern.empty()) sentence.append(" ").append(word(finding.hint, kBench));
  return sentence;
}

std::string withItsCylinder(const Assessment& assessment, int engine, const Finding& finding) {
  std::string sentence = sentenceOf(finding);
  if (finding.cylinder < 0 || assessment.evaluation().cylinders(engine) == 1) return sentence;
  const int number = model::numberOfCylinder(assessment.evaluation(), engine, finding.cylinder);
  return joined({"Cylinder ", std::to_string(number), ": ", sentence});
}

void addFindings(TextTable& table, const Assessment& assessment, int engine) {
  for (const Finding& finding : assessment.findings(engine)) {
    table.add(
        {std::string(weightWord(finding.weight)), withItsCylinder(assessment, engine, finding)});
    for (const describe::Mend& mend : finding.mends) {
      std::string offer = joined({word(mend.says, kBench), ":"});
      for (const auto& [input, text] : mend.entries) {
        offer += joined({" --set ", input->key, "=\"", text, "\""});
      }
      table.add({"", std::move(offer)});
    }
  }
}

std::vector<std::string> whatForbids(const Assessment& assessment, std::optional<int> named) {
  std::vector<std::string> sentences;
  const std::vector<int> engines = enginesShown(assessment, named);
  for (const int engine : engines) {
    const auto& name = assessment.project().engines[static_cast<std::size_t>(engine)].name;
    for (const Finding& finding : assessment.findings(engine)) {
      if (finding.weight != describe::Weight::Forbids) continue;
      const std::string sentence = withItsCylinder(assessment, engine, finding);
      sentences.push_back(engines.size() > 1 ? joined({name, ": ", sentence}) : sentence);
    }
  }
  const bool ofOthers = sentences.empty();  // the sheet speaks of the donor too
  const sheet::Sheet page = sheet::sheetOf(
      assessment, kBench, {.engine = named.value_or(-1), .date = {}, .programVersion = {}});
  for (const sheet::Objection& it : page.objections) {
    if (it.word == "refused" || (ofOthers && it.word == weightWord(describe::Weight::Forbids)))
      sentences.push_back(it.sentence);
  }
  return sentences;
}

int verdict(const Assessment& assessment, std::optional<int> named) {
  return whatForbids(assessment, named).empty() ? 0 : 1;
}

}  // namespace strokewright::app
