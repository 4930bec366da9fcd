#include "core/describe/table.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace strokewright::describe {

std::size_t Rows::place(std::string_view key) const {
  const auto found = std::ranges::find(columns_, key, &Column::key);
  if (found == columns_.end()) throw std::out_of_range("no column " + std::string(key));
  return static_cast<std::size_t>(found - columns_.begin());
}

std::size_t Rows::sizeOf(std::size_t column) const {
  const Cells& cells = cells_[column];
  return columns_[column].words ? cells.words.size()
                                : static_cast<std::size_t>(cells.numbers.size());
}

void Rows::add(std::initializer_list<std::variant<double, std::string>> row) {
  if (row.size() != columns_.size()) throw std::length_error("a row has one cell for each column");
  std::size_t column = 0;
  for (const auto& cell : row) {
    Cells& cells = cells_[column];
    if (columns_[column++].words) {
      cells.words.push_back(std::get<std::string>(cell));
    } else {
      cells.numbers.conservativeResize(cells.numbers.size() + 1);
      cells.numbers.tail<1>() = std::get<double>(cell);
    }
  }
}

void Rows::checkEven() const {
  for (std::size_t i = 1; i < cells_.size(); ++i) {
    if (sizeOf(i) != size()) throw std::length_error("columns of unlike length");
  }
}

bool Rows::finite() const {
  return std::ranges::none_of(cells_,
                              [](const Cells& cells) { return cells.numbers.isInf().any(); });
}

}  // namespace strokewright::describe
