#include "core/describe/wording.h"

#include <algorithm>
#include <cmath>
#include <span>
#include <type_traits>

namespace strokewright::describe {
namespace {

int decimalsOf(const Quantity& quantity) {
  return quantity.decimals < 0 ? units::unitsOf(quantity.kind).front().decimals : quantity.decimals;
}

/// As many as the number has, in the bench unit, where it has few; negative: the default will do.
/// @param most more than the default
int decimalsOf(units::Kind kind, double si, const units::Style& style, int most) {
  constexpr double kBehind = 1e-6;  // of a digit: what arithmetic leaves
  const units::Unit& unit = style.group[kind];
  double digits = units::fromSi(unit, si) * std::pow(10.0, unit.decimals);
  for (int more = 0; more <= most; ++more, digits *= 10.0) {
    if (std::abs(digits - std::round(digits)) < kBehind) {
      return units::unitsOf(kind).front().decimals + more;
    }
  }
  return -1;
}

/// Numbers are told apart beyond what arithmetic leaves behind.
bool differ(double one, double other) {
  return std::abs(one - other) > 1e-6 * std::max(std::abs(one), std::abs(other));
}

/// The numbers of an argument; several stand in a list.
std::span<Quantity> quantitiesIn(Argument& argument) {
  if (auto* one = std::get_if<Quantity>(&argument)) return {one, 1};
  if (auto* list = std::get_if<std::vector<Quantity>>(&argument)) return *list;
  return {};
}

/// The sentence with one decimal more for the numbers of a kind where two that are not alike would
/// read alike: "0.796 is less than 0.800". And for a number, with its list, that ends with it, as
/// one that was typed so: 0.385, not 0.39.
std::vector<Argument> toldApart(const Sentence& sentence, const units::Style& style) {
  std::vector<Argument> arguments = sentence.arguments;
  std::vector<Quantity*> quantities;
  for (Argument& argument : arguments) {
    for (Quantity& one : quantitiesIn(argument)) quantities.push_back(&one);
  }
  const auto readAlike = [&](const Quantity& one, const Quantity& other) {
    return one.kind == other.kind && differ(one.value, other.value) &&
           style.number(one.kind, one.value, one.decimals) ==
               style.number(other.kind, other.value, other.decimals);
  };
  std::vector<units::Kind> finer;
  for (std::size_t i = 0; i < quantities.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (readAlike(*quantities[i], *quantities[j])) finer.push_back(quantities[i]->kind);
    }
  }
  for (Quantity* one : quantities) {
    if (std::ranges::find(finer, one->kind) != finer.end()) one->decimals = decimalsOf(*one) + 1;
  }
  for (Argument& argument : arguments) {
    const std::span<Quantity> together = quantitiesIn(argument);
    int most = -1;
    for (const Quantity& one : together) {
      most = std::max(most, decimalsOf(one.kind, one.value, style, 1));
    }
    for (Quantity& one : together) {
      if (one.decimals < 0) one.decimals = most;
    }
  }
  return arguments;
}

std::string wordList(const std::vector<Quantity>& list, const units::Style& style) {
  std::string text;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (i > 0) text += " · ";
    text += i + 1 < list.size() ? style.number(list[i].kind, list[i].value, list[i].decimals)
                                : style.text(list[i].kind, list[i].value, list[i].decimals);
  }
  return text;
}

std::string wordArgument(const Argument& argument, const units::Style& style) {
  return std::visit(
      [&style](const auto& it) -> std::string {
        using It = std::decay_t<decltype(it)>;
        if constexpr (std::is_same_v<It, Quantity>) {
          return style.text(it.kind, it.value, it.decimals);
        } else if constexpr (std::is_same_v<It, std::vector<Quantity>>) {
          return wordList(it, style);
        } else if constexpr (std::is_same_v<It, const Input*>) {
          return inSentence(it->label);
        } else if constexpr (std::is_same_v<It, const Result*>) {
          return inSentence(it->name);
        } else {
          return it;
        }
      },
      argument);
}

std::string wordChoice(std::span<const Choice> choices, double value) {
  const auto i = static_cast<std::size_t>(value);
  return i < choices.size() ? std::string(choices[i].label) : std::string();
}

}  // namespace

std::string inSentence(std::string_view label) {
  std::string text(label);
  const bool upperFirst = !text.empty() && text[0] >= 'A' && text[0] <= 'Z';
  const bool lowerSecond = text.size() > 1 && text[1] >= 'a' && text[1] <= 'z';
  if (upperFirst && lowerSecond) text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string word(const Sentence& sentence, const units::Style& style) {
  std::string text;
  const std::string_view pattern = sentence.pattern;
  const std::vector<Argument> arguments = toldApart(sentence, style);
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const bool placeholder = pattern[i] == '{' && i + 2 < pattern.size() && pattern[i + 2] == '}';
    const auto number = placeholder ? static_cast<std::size_t>(pattern[i + 1] - '1') : 0;
    if (placeholder && number < arguments.size()) {
      text += wordArgument(arguments[number], style);
      i += 2;
    } else {
      text += pattern[i];
    }
  }
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

std::string word(const RefusedBecause& because, const units::Style& style) {
  if (because.input != nullptr) {
    return word(Sentence{because.donors ? "The donor's entry for {1} cannot be as it is."
                                        : "The entry for {1} cannot be as it is.",
                         {because.input}},
                style);
  }
  return word(
      Sentence{because.sentence,
               {Quantity{because.kind, because.value}, Quantity{because.kind, because.limit}}},
      style);
}

std::string wordValue(const Input& input, double value, const units::Style& style) {
  if (input.kind == units::Kind::Choice) return wordChoice(input.choices, value);
  constexpr int kMostMore = 3;
  return style.text(input.kind, value, decimalsOf(input.kind, value, style, kMostMore));
}

std::string wordValue(const Result& result, double value, const units::Style& style) {
  if (result.kind == units::Kind::Choice) return wordChoice(result.choices, value);
  return style.text(result.kind, value, result.decimals);
}

}  // namespace strokewright::describe
