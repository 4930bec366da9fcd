#include "core/describe/names.h"

#include <vector>

namespace strokewright::describe {

std::string inOne(std::span<const std::string> names) {
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) all += i + 1 < names.size() ? ", " : " and ";
    all += names[i];
  }
  return all;
}

std::string cylindersInOne(std::span<const int> numbers) {
  std::vector<std::string> names;
  names.reserve(numbers.size());
  for (const int number : numbers) names.push_back(std::to_string(number));
  return (numbers.size() > 1 ? "cylinders " : "cylinder ") + inOne(names);
}

}  // namespace strokewright::describe
