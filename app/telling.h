#pragma once
/// What the commands say of an engine in the same words.

#include <optional>
#include <string>
#include <vector>

#include "app/text_table.h"
#include "core/assess/assess.h"
#include "core/units/style.h"

namespace strokewright::app {

/// Everything a terminal shows is in bench units, with a point.
inline const units::Style kBench{};

/// The engines that are shown: the named one, else all.
std::vector<int> enginesShown(const assess::Assessment& assessment, std::optional<int> named);

/// "Burdock 719 · target · 3 cylinders".
std::string heading(const assess::Assessment& assessment, int engine);

/// How many cells a result has: one for each cylinder, or one for the engine.
int cellsOf(const assess::Assessment& assessment, int engine, const describe::Result& result);

/// Keys that what was noted waits for, in page order; the donor's as "donor:KEY".
std::vector<std::string> keysWaitedFor(const assess::Assessment& assessment,
                                       const describe::Frame& notes);
/// Of a result in any cylinder, each once.
std::vector<std::string> keysWaitedFor(const assess::Assessment& assessment, int engine,
                                       const describe::Result& result);

/// Why there is no value: "waits for: …", "refused: …", "does not apply: …".
/// @pre the state is not State::Value.
std::string whyNone(const assess::Assessment& assessment, describe::State state,
                    const describe::Frame& notes);

/// The sentence of a finding with its suspicion behind it.
std::string sentenceOf(const describe::Finding& finding);

/// The same, of which cylinder it is where several stand beside each other.
std::string withItsCylinder(const assess::Assessment& assessment, int engine,
                            const describe::Finding& finding);

/// Weight, sentence, and what would put it right as it is given to --set.
void addFindings(TextTable& table, const assess::Assessment& assessment, int engine);

/// What must not leave for the bench: the findings that forbid as addFindings() words them, and
/// results of the sheet that are refused.
/// @param named  the engine it is asked of, with its sheet; none: all, with the sheet of the
/// target.
std::vector<std::string> whatForbids(const assess::Assessment& assessment,
                                     std::optional<int> named);

/// The exit status: 1 where something forbids or a result of the sheet is refused, else 0.
int verdict(const assess::Assessment& assessment, std::optional<int> named);

}  // namespace strokewright::app
