#include "core/model/entry_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/units/parse.h"

namespace strokewright::model {
namespace {

using describe::Choice;
using describe::Entry;
using describe::Input;

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r\n";
  const auto first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

/// Letters in lower case (no locale), words parted by underscores.
std::string folded(std::string_view text) {
  std::string result(trimmed(text));
  for (char& letter : result) {
    if (letter == ' ' || letter == '-') letter = '_';
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return result;
}

std::optional<double> answerIn(std::span<const Choice> choices, std::string_view text) {
  const std::string wanted = folded(text);
  const auto find = [&](auto from, const auto& holds) {
    return std::find_if(from, choices.end(), [&](const Choice& choice) {
      return holds(std::string(choice.key)) || holds(folded(choice.label));
    });
  };
  const auto begins = [&](const std::string& name) { return name.starts_with(wanted + '_'); };
  auto found = find(choices.begin(), [&](const std::string& name) { return name == wanted; });
  if (found == choices.end() && !wanted.empty()) {
    found = find(choices.begin(), begins);
    const bool several = found != choices.end() && find(std::next(found), begins) != choices.end();
    if (several) return std::nullopt;
  }
  if (found == choices.end()) return std::nullopt;
  return static_cast<double>(found - choices.begin());
}

/// The answers, one or parted by semicolons; empty when one of them is not among the choices.
std::vector<double> answersIn(std::span<const Choice> choices, std::string_view text) {
  std::vector<double> answers;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = std::min(text.find(';', start), text.size());
    const auto answer = answerIn(choices, text.substr(start, end - start));
    if (!answer) return {};
    answers.push_back(*answer);
    start = end + 1;
  }
  return answers;
}

/// Takes what parts two numbers off the front: blanks, and one mark at most.
bool takeParting(std::string_view& text) {
  constexpr std::string_view kBlanks = " \t";
  constexpr std::array<std::string_view, 8> kMarks = {";", "-", "+", ",", "–", "—", "−", "‐"};
  const auto takeBlanks = [&] {
    const std::size_t before = text.size();
    while (!text.empty() && kBlanks.find(text.front()) != std::string_view::npos) {
      text.remove_prefix(1);
    }
    return text.size() < before;
  };
  const bool blanks = takeBlanks();
  const auto mark =
      std::ranges::find_if(kMarks, [&](std::string_view each) { return text.starts_with(each); });
  if (mark == kMarks.end()) return blanks;
  text.remove_prefix(mark->size());
  takeBlanks();
  return true;
}

std::string_view takeDigits(std::string_view& text) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789"), text.size());
  const std::string_view digits = text.substr(0, end);
  text.remove_prefix(end);
  return digits;
}

}  // namespace

std::string withSemicolons(const Input& input, std::string_view text) {
  if (!input.list || input.kind != units::Kind::Count) return std::string(text);
  std::string_view rest = trimmed(text);
  std::string parted;
  while (true) {
    const std::string_view digits = takeDigits(rest);
    if (digits.empty()) return std::string(text);
    parted += digits;
    if (rest.empty()) return parted;
    if (!takeParting(rest)) return std::string(text);
    parted += ';';
  }
}

Entry entryFrom(const Input& input, std::string_view text, const units::UnitGroup& units) {
  Entry entry;
  if (trimmed(text).empty()) return entry;
  entry.text = text;
  if (input.kind == units::Kind::Choice) {
    entry.values = answersIn(input.choices, text);
  } else {
    const units::Unit& bare = units[input.kind];
    entry.unit = bare.name;
    units::Parsed parsed = units::parse(input.kind, withSemicolons(input, text), bare);
    entry.values = std::move(parsed.values);
    entry.readings = std::move(parsed.readings);
    if (parsed.plusMinus) entry.plusMinus = std::abs(*parsed.plusMinus);
  }
  if (entry.values.size() > 1 && !input.list) {
    entry.values.clear();
    entry.readings.clear();
    entry.plusMinus.reset();
  }
  if (input.kind == units::Kind::Choice && entry.known()) entry.text.clear();
  return entry;
}

}  // namespace strokewright::model
