#pragma once
/// Rules that hold for every entry alike: impossible, unusual, not a number yet, read as.

#include <span>

#include "core/describe/finding.h"

namespace strokewright::assess {

std::span<const describe::Rule* const> entryRules();

/// Says no more than that an entry is outside what is usual.
bool isGeneral(const describe::Finding& finding);

}  // namespace strokewright::assess
