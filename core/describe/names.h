#pragma once
/// Several names in one sentence.

#include <span>
#include <string>

namespace strokewright::describe {

/// "stud 1, stud 2 and stud 3"
std::string inOne(std::span<const std::string> names);

/// "cylinder 2"; "cylinders 2, 3 and 4"
std::string cylindersInOne(std::span<const int> numbers);

}  // namespace strokewright::describe
