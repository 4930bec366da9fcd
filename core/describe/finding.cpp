#include "core/describe/finding.h"

#include <cmath>

namespace strokewright::describe {

std::string_view weightWord(Weight weight) {
  switch (weight) {
    case Weight::Remarks:
      return "remarks";
    case Weight::Objects:
      return "objects";
    case Weight::Forbids:
      return "forbids";
  }
  return {};
}

namespace {

/// Ten digits are more than any bench knows: what arithmetic leaves behind them is not typed.
double tidied(const units::Unit& unit, double si) {
  const double number = units::fromSi(unit, si);
  const double scale = std::pow(10.0, 9.0 - std::floor(std::log10(std::abs(number))));
  if (number == 0.0 || !std::isfinite(number * scale)) return si;
  return units::toSi(unit, std::round(number * scale) / scale);
}

}  // namespace

std::string typedText(const Input& input, double value, const units::Style& style) {
  if (input.kind == units::Kind::Choice) {
    return std::string(input.choices[static_cast<std::size_t>(value)].key);
  }
  const std::string unit(style.unit(input.kind));
  return style.editable(input.kind, tidied(style.group[input.kind], value)) +
         (unit.empty() ? "" : " ") + unit;
}

Mend takeAs(const Input& input, double value) {
  Sentence says =
      input.kind == units::Kind::Choice
          ? Sentence{"{1}: take {2}",
                     {&input, std::string(input.choices[static_cast<std::size_t>(value)].label)}}
          : Sentence{"{1}: take {2}", {&input, Quantity{input.kind, value}}};
  return {std::move(says), {{&input, typedText(input, value)}}};
}

Mend takeComputed(const Input& input, double value) {
  Mend mend = takeAs(input, value);
  mend.computed = true;
  return mend;
}

Finding& Speaker::say(Weight weight, Sentence sentence, std::vector<const Input*> about) {
  Finding finding;
  finding.weight = weight;
  finding.says = std::move(sentence);
  finding.about = std::move(about);
  return findings_.emplace_back(std::move(finding));
}

}  // namespace strokewright::describe
