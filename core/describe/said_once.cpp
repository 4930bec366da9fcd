#include "core/describe/said_once.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace strokewright::describe {
namespace {

/// The findings that stand at the same place in the answers for each cylinder.
using Row = std::vector<const Finding*>;

bool alike(const Argument& a, const Argument& b) {
  const auto* one = std::get_if<Quantity>(&a);
  const auto* other = std::get_if<Quantity>(&b);
  if (one == nullptr || other == nullptr) return a == b;
  constexpr double kRounding = 1e-9;  // relative: left over from arithmetic
  constexpr double kNothing = 1e-12;  // [SI] of any kind here
  return one->kind == other->kind && one->decimals == other->decimals &&
         std::abs(one->value - other->value) <= kRounding * std::abs(one->value) + kNothing;
}

/// One argument for all: the same thing, or the list of the cylinders' numbers.
std::optional<Argument> merged(const std::vector<const Argument*>& arguments) {
  const Argument& first = *arguments.front();
  if (std::all_of(arguments.begin(), arguments.end(),
                  [&](const Argument* argument) { return alike(*argument, first); })) {
    return first;
  }
  std::vector<Quantity> numbers;
  numbers.reserve(arguments.size());
  for (const Argument* argument : arguments) {
    const auto* number = std::get_if<Quantity>(argument);
    if (number == nullptr) return std::nullopt;
    if (number->kind != std::get<Quantity>(first).kind) return std::nullopt;
    numbers.push_back(*number);
  }
  return numbers;
}

std::optional<Sentence> merged(const std::vector<const Sentence*>& sentences) {
  const Sentence& first = *sentences.front();
  for (const Sentence* sentence : sentences) {
    if (sentence->pattern != first.pattern) return std::nullopt;
    if (sentence->arguments.size() != first.arguments.size()) return std::nullopt;
  }
  Sentence together{first.pattern, {}};
  for (std::size_t i = 0; i < first.arguments.size(); ++i) {
    std::vector<const Argument*> arguments;
    arguments.reserve(sentences.size());
    for (const Sentence* sentence : sentences) arguments.push_back(&sentence->arguments[i]);
    std::optional<Argument> argument = merged(arguments);
    if (!argument) return std::nullopt;
    together.arguments.push_back(*std::move(argument));
  }
  return together;
}

std::string listed(const std::vector<std::string_view>& texts) {
  if (std::all_of(texts.begin(), texts.end(), [&](auto text) { return text == texts.front(); })) {
    return std::string(texts.front());
  }
  std::string list;
  for (const std::string_view text : texts) {
    if (!list.empty()) list += "; ";
    list += text;
  }
  return list;
}

std::optional<Mend> merged(const Row& row, std::size_t place) {
  const Mend& first = row.front()->mends[place];
  std::vector<const Sentence*> says;
  for (const Finding* finding : row) {
    const Mend& mend = finding->mends[place];
    says.push_back(&mend.says);
    if (mend.computed != first.computed) return std::nullopt;
    if (!std::equal(mend.entries.begin(), mend.entries.end(), first.entries.begin(),
                    first.entries.end(),
                    [](const auto& a, const auto& b) { return a.first == b.first; })) {
      return std::nullopt;
    }
  }
  std::optional<Sentence> sentence = merged(says);
  if (!sentence) return std::nullopt;
  Mend together{*std::move(sentence), {}, first.computed};
  for (std::size_t i = 0; i < first.entries.size(); ++i) {
    std::vector<std::string_view> texts;
    texts.reserve(row.size());
    for (const Finding* finding : row) texts.push_back(finding->mends[place].entries[i].second);
    std::string text = listed(texts);
    const Input* input = first.entries[i].first;
    if (text != texts.front() && !input->list) return std::nullopt;
    together.entries.emplace_back(input, std::move(text));
  }
  return together;
}

std::optional<Finding> merged(const Row& row) {
  const Finding& first = *row.front();
  std::vector<const Sentence*> says;
  std::vector<const Sentence*> hints;
  for (const Finding* finding : row) {
    if (finding->weight != first.weight || finding->about != first.about) return std::nullopt;
    if (finding->mends.size() != first.mends.size()) return std::nullopt;
    says.push_back(&finding->says);
    hints.push_back(&finding->hint);
  }
  std::optional<Sentence> sentence = merged(says);
  std::optional<Sentence> hint = merged(hints);
  if (!sentence || !hint) return std::nullopt;
  Finding together = first;
  together.says = *std::move(sentence);
  together.hint = *std::move(hint);
  for (std::size_t i = 0; i < first.mends.size(); ++i) {
    std::optional<Mend> mend = merged(row, i);
    if (!mend) return std::nullopt;
    together.mends[i] = *std::move(mend);
  }
  return together;
}

/// One finding for each place, or nothing where the cylinders do not say the same.
std::optional<std::vector<Finding>> together(const std::vector<std::vector<Finding>>& said) {
  std::vector<Finding> findings;
  for (const auto& one : said) {
    if (one.size() != said.front().size()) return std::nullopt;
  }
  for (std::size_t place = 0; place < said.front().size(); ++place) {
    Row row;
    row.reserve(said.size());
    for (const auto& one : said) row.push_back(&one[place]);
    std::optional<Finding> finding = merged(row);
    if (!finding) return std::nullopt;
    findings.push_back(*std::move(finding));
  }
  return findings;
}

}  // namespace

std::vector<Finding> saidOnce(const std::vector<std::vector<Finding>>& said) {
  if (std::optional<std::vector<Finding>> findings = together(said)) return *std::move(findings);
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < said.size(); ++i) {
    for (Finding finding : said[i]) {
      finding.cylinder = static_cast<int>(i);
      findings.push_back(std::move(finding));
    }
  }
  return findings;
}

}  // namespace strokewright::describe
