#include "core/sheet/words.h"

#include <algorithm>
#include <cstddef>

namespace strokewright::sheet {
namespace {

constexpr std::size_t kMostNames = 20;

/// In UTF-8 every letter begins with another byte than it goes on with.
bool beginsLetter(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

}  // namespace

std::string join(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += between;
    text += parts[i];
  }
  return text;
}

std::string namesOf(std::vector<std::string> names) {
  if (names.size() > kMostNames) {
    const std::size_t rest = names.size() - kMostNames + 1;
    names.resize(kMostNames - 1);
    names.push_back("and " + std::to_string(rest) + " more");
  }
  return join(names, "; ");
}

std::size_t length(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, beginsLetter));
}

std::string shortened(std::string_view name, std::size_t letters) {
  if (length(name) <= letters) return std::string(name);
  std::size_t end = 0;
  for (std::size_t seen = 0; end < name.size(); ++end) {
    if (beginsLetter(name[end]) && ++seen == letters) break;
  }
  return std::string(name.substr(0, end)) + "…";
}

}  // namespace strokewright::sheet
