#pragma once
/// Results for machines.

#include <optional>
#include <string>

#include "core/assess/assess.h"
#include "core/storage/json_tree.h"

namespace strokewright::app {

/// One finding, as the results have it.
storage::Node findingNode(const describe::Finding& finding);

/// Results and findings as JSON in SI with the unit named, the same text whatever the locale.
///
/// A result per cylinder of an engine with more than one is an array in value, worst, likely and
/// refused. A value that does not exist is null; waits_for (keys, the donor's as "donor:KEY") or
/// refused says why, and with neither the result means nothing for this engine. A choice is its
/// key, without a ±. Cylinders are counted from 1.
std::string resultsJson(const assess::Assessment& assessment, std::optional<int> named);

}  // namespace strokewright::app
