#pragma once
/// Columns of text for a terminal.

#include <iosfwd>
#include <string>
#include <vector>

namespace strokewright::app {

class TextTable {
 public:
  /// One line; the last cell of a line takes the room that is left and widens no column.
  void add(std::vector<std::string> cells) { lines_.push_back(std::move(cells)); }
  bool empty() const { return lines_.empty(); }
  /// Indented by two blanks, columns two blanks apart, nothing behind the last cell.
  void print(std::ostream& out) const;

 private:
  std::vector<std::vector<std::string>> lines_;
};

}  // namespace strokewright::app
