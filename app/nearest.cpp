#include "app/nearest.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

#include "app/joined.h"

namespace strokewright::app {
namespace {

/// How many letters must be put in, left out or exchanged (Levenshtein).
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t exchanged = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({exchanged, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row[b.size()];
}

}  // namespace

std::string didYouMean(std::string_view typed, std::span<const std::string_view> names) {
  struct Candidate {
    std::size_t distance;
    std::string_view name;
  };
  std::vector<Candidate> near;
  for (const std::string_view name : names) {
    const std::size_t apart = distance(typed, name);
    const bool holds = typed.size() > 2 && name.find(typed) != std::string_view::npos;
    if (holds || apart <= 1 + typed.size() / 4) near.push_back({apart, name});
  }
  std::ranges::stable_sort(near, {}, &Candidate::distance);
  if (near.size() > 3) near.resize(3);

  std::string text;
  for (const Candidate& candidate : near) {
    text += joined({text.empty() ? " Did you mean “" : " or “", candidate.name, "”"});
  }
  if (!text.empty()) text += "?";
  return text;
}

}  // namespace strokewright::app
