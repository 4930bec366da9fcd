#pragma once
/// The described tables of this room: the best stacks from the shelf, what to type to have one of
/// them, and why the others lost.

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/choice/choice.h"
#include "core/describe/finding.h"
#include "core/describe/table.h"

namespace strokewright::out {

using describe::Table;

/// One row for each kind of stack in a cylinder: one for all cylinders where they get the same.
extern const Table stackChoices;
/// For each place in stackChoices the entries of the engine, by key, and their texts.
extern const Table stackEntries;
extern const Table stacksLost;
/// The nearest stacks that are not in stackChoices, in rows like those, each with its reason.
extern const Table stacksBeaten;
/// In a few words: what keeps every stack out where none fits, and whether the search stopped.
extern const Table choiceNotes;

}  // namespace strokewright::out

namespace strokewright::choice {

std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// The shelf, the cylinders and the wants of an engine.
/// @throws describe::Refusal as choose()
Question questionOf(describe::Reader& read);

/// One row of choiceNotes in a sentence.
describe::Sentence noteIn(const describe::Rows& notes, std::size_t row);

/// The texts that put a stack into the entries of an engine: spacer, base gaskets, head gasket and
/// its bore, without what was measured of another gasket; one number for all cylinders where they
/// are alike, with the largest ± that one of the parts carries: "0.95; 1.05 ± 0.01 mm". An empty
/// text clears the entry.
std::vector<std::pair<const describe::Input*, std::string>> entriesOf(const Question& question,
                                                                      const Stack& stack);

}  // namespace strokewright::choice
