#pragma once
/// The described tables of this room: the best stacks from the shelf, and why the others lost.

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/choice/choice.h"
#include "core/describe/table.h"

namespace strokewright::out {

using describe::Table;

extern const Table stackChoices, stacksLost;

}  // namespace strokewright::out

namespace strokewright::choice {

std::span<const describe::Table* const> tables();

/// The shelf, the cylinders and the wants of an engine.
/// @throws describe::Refusal as choose()
Question questionOf(describe::Reader& read);

/// The texts that put a stack into the entries of an engine: spacer, base gaskets, head gasket and
/// its bore, one number for all cylinders where they are alike.
std::vector<std::pair<const describe::Input*, std::string>> entriesOf(const Question& question,
                                                                      const Stack& stack);

}  // namespace strokewright::choice
