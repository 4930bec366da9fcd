#pragma once
/// Lists and names inside sentences.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace strokewright::sheet {

/// The parts one after another with something between them.
std::string join(const std::vector<std::string>& parts, std::string_view between);

/// Names of a list, separated by semicolons; where there are very many the last ones are counted.
std::string namesOf(std::vector<std::string> names);

/// How many letters a text in UTF-8 has.
std::size_t length(std::string_view text);

/// A name inside a sentence: cut after so many letters, with "…".
std::string shortened(std::string_view name, std::size_t letters = 30);

}  // namespace strokewright::sheet
