#include "core/describe/wording.h"

#include <type_traits>

namespace strokewright::describe {
namespace {

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
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const bool placeholder = pattern[i] == '{' && i + 2 < pattern.size() && pattern[i + 2] == '}';
    const auto number = placeholder ? static_cast<std::size_t>(pattern[i + 1] - '1') : 0;
    if (placeholder && number < sentence.arguments.size()) {
      text += wordArgument(sentence.arguments[number], style);
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
    return word(Sentence{because.donors ? "The donor's {1} cannot be as entered."
                                        : "The {1} cannot be as entered.",
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
  return style.text(input.kind, value);
}

std::string wordValue(const Result& result, double value, const units::Style& style) {
  if (result.kind == units::Kind::Choice) return wordChoice(result.choices, value);
  return style.text(result.kind, value, result.decimals);
}

}  // namespace strokewright::describe
