#pragma once
/// Rules that hold for every entry alike: impossible, unusual, not a number yet, read as.

#include <span>

#include "core/describe/entry.h"
#include "core/describe/finding.h"
#include "core/describe/input.h"
#include "core/units/style.h"

namespace strokewright::assess {

std::span<const describe::Rule* const> entryRules();

/// Why a text is no number, or no answer, for its input, and what to type instead.
/// @pre the entry has a text and is not known.
describe::Sentence whyUnknown(const describe::Input& input, const describe::Entry& entry);

/// Says no more than that a comma is taken for the decimal mark, to a reader whose own mark it is.
bool goesWithoutSaying(const describe::Finding& finding, const units::Style& style);

/// Remarks that the comma of an entry is its decimal mark, as 1000 times as much cannot be meant.
bool tellsTheMark(const describe::Finding& finding);

/// One remark for several entries of an engine whose mark is told: it names them all.
/// @pre there is one, and each tells the mark.
describe::Finding marksTold(std::span<const describe::Finding* const> findings);

/// Says no more than that an entry is outside what is usual.
bool isGeneral(const describe::Finding& finding);

}  // namespace strokewright::assess
