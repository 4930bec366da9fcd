#include "core/describe/list.h"

namespace strokewright::describe {

std::optional<double> standingIn(const Entries& item, const Input& column) {
  const auto found = item.find(&column);
  if (found == item.end() || !found->second.known()) return column.standing.value;
  const double value = found->second.values.front();
  return column.accepts(value) ? std::optional(value) : std::nullopt;
}

}  // namespace strokewright::describe
