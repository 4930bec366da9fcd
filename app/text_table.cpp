#include "app/text_table.h"

#include <algorithm>
#include <ostream>

namespace strokewright::app {
namespace {

/// Characters of UTF-8 text; none of ours is wider or narrower than one place.
std::size_t width(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

}  // namespace

void TextTable::print(std::ostream& out) const {
  std::vector<std::size_t> widths;
  for (const auto& cells : lines_) {
    if (cells.size() > widths.size()) widths.resize(cells.size());
    for (std::size_t i = 0; i + 1 < cells.size(); ++i) {
      widths[i] = std::max(widths[i], width(cells[i]));
    }
  }
  for (const auto& cells : lines_) {
    std::string line;
    std::size_t owed = 2;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (cells[i].empty()) {
        owed += widths[i] + 2;
        continue;
      }
      line.append(owed, ' ') += cells[i];
      owed = widths[i] + 2 - std::min(widths[i], width(cells[i]));
    }
    out << line << '\n';
  }
}

}  // namespace strokewright::app
