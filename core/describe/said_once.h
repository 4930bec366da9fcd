#pragma once
/// What a rule says of several cylinders, put together for a reader.

#include <vector>

#include "core/describe/finding.h"

namespace strokewright::describe {

/// Findings that all cylinders share become one: numbers that are not alike are listed, and so are
/// the texts a mend types. Otherwise each finding names its cylinder.
/// @param said what was said of each cylinder, in their order; not empty.
std::vector<Finding> saidOnce(const std::vector<std::vector<Finding>>& said);

}  // namespace strokewright::describe
