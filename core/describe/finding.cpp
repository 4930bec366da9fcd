#include "core/describe/finding.h"

#include "core/units/style.h"

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

std::string typedText(const Input& input, double value) {
  if (input.kind == units::Kind::Choice) {
    return std::string(input.choices[static_cast<std::size_t>(value)].key);
  }
  const units::Style style;
  const std::string unit(style.unit(input.kind));
  return style.editable(input.kind, value) + (unit.empty() ? "" : " ") + unit;
}

Mend takeAs(const Input& input, double value) {
  Sentence says =
      input.kind == units::Kind::Choice
          ? Sentence{"Take the {1} as {2}",
                     {&input, std::string(input.choices[static_cast<std::size_t>(value)].label)}}
          : Sentence{"Take the {1} as {2}", {&input, Quantity{input.kind, value}}};
  return {std::move(says), {{&input, typedText(input, value)}}};
}

Finding& Speaker::say(Weight weight, Sentence sentence, std::vector<const Input*> about) {
  Finding finding;
  finding.weight = weight;
  finding.says = std::move(sentence);
  finding.about = std::move(about);
  return findings_.emplace_back(std::move(finding));
}

}  // namespace strokewright::describe
