#include "app/text_table.h"

#include <algorithm>
#include <ostream>

namespace strokewright::app {
namespace {

/// Places that UTF-8 text takes: one for each character, none for the marks above letters (U+0300
/// to U+036F, whose first byte is CC or CD).
std::size_t width(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, [](char letter) {
    const auto byte = static_cast<unsigned char>(letter);
    return (byte & 0xC0U) != 0x80U && byte != 0xCCU && byte != 0xCDU;
  }));
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
