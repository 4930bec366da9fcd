#pragma once
/// A sample conversion with entries typed over, judged anew after each.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/assess/assess.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/storage/project_text.h"

namespace strokewright::assess {

inline model::Project sample(std::string_view name) {
  const std::filesystem::path samples = std::filesystem::path(STROKEWRIGHT_SOURCE_DIR) / "samples";
  std::ifstream file(samples / (std::string(name) + ".strokewright"), std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  return storage::read(text).project.value();
}

/// As typed into a field that shows metric units; blank text clears.
inline void type(model::Engine& engine, std::string_view key, std::string_view text,
                 describe::Origin origin = describe::Origin::NotSaid) {
  const describe::Input& input = *catalogue().findInput(key);
  describe::Entry entry = model::entryFrom(input, text, units::UnitGroup::metric());
  if (!entry.empty()) entry.origin = origin;
  engine.set(input, std::move(entry));
}

/// Everything a reader sees of a finding, with plain blanks between numbers and units.
inline std::string told(const describe::Finding& finding) {
  const units::Style style;
  std::string text =
      describe::word(finding.says, style) + " | " + describe::word(finding.hint, style);
  for (const std::string_view blank : {"\u00A0", "\u202F"}) {
    for (std::size_t at = text.find(blank); at != std::string::npos; at = text.find(blank)) {
      text.replace(at, blank.size(), " ");
    }
  }
  return text;
}

/// The finding of that rule about that entry first, or nullptr; an empty key means any entry.
inline const describe::Finding* findingOf(const Assessment& assessment, int engine,
                                          std::string_view rule, std::string_view about = {}) {
  const auto findings = assessment.findings(engine);
  const auto found = std::find_if(findings.begin(), findings.end(), [&](const auto& finding) {
    return finding.key == rule && (about.empty() || finding.about.front()->key == about);
  });
  return found == findings.end() ? nullptr : &*found;
}

inline std::vector<std::string> rulesThatSpeak(const Assessment& assessment, int engine) {
  std::vector<std::string> keys;
  for (const describe::Finding& finding : assessment.findings(engine)) {
    keys.emplace_back(finding.key);
  }
  return keys;
}

}  // namespace strokewright::assess
