#include "core/sheet/engine_terms.h"

#include <cstdint>
#include <string_view>

#include "core/model/inputs.h"

namespace strokewright::sheet {

namespace in = model::in;

namespace {

enum class Of : std::uint8_t { TwoStroke, Spark, Compression };

struct Term {
  Of of;
  std::string_view words;
  std::string_view instead;
};

/// What a term puts in is not to be found by any of them: a text may come by twice.
constexpr Term kTerms[] = {
    {Of::TwoStroke, "Plug and valves in", "Plug in"},
    {Of::TwoStroke, "; valve recesses in the head count here", ""},
    {Of::TwoStroke, "valves shut", "ports covered by the piston"},
    {Of::TwoStroke, "sodium-filled exhaust valves are never cut, ground or heated; ", ""},
    {Of::Spark, "When to ignite or inject", "When to ignite"},
    {Of::Compression, "When to ignite or inject", "When injection starts"},
    {Of::Compression, "Marks to ignite", "Marks for the start of injection"},
    {Of::Compression, "ignition and trigger with them", "injection with them"},
    {Of::Compression, "What the plug takes up of the filling when it is screwed in",
     "What the injector takes up of the filling when it is in"},
    {Of::Compression, "what stands in the open end of the plug",
     "what stays open under its nozzle"},
    {Of::Compression, "filled to the top thread", "filled to the top of the hole"},
    {Of::Compression, "Plug hole filled with it", "Injector hole filled with it"},
    {Of::Compression, "plug hole", "injector hole"},
    {Of::Compression, "Plug and valves in", "Injector and valves in"},
    {Of::Compression, "plugs out", "glow plugs or injectors out"},
    {Of::Compression, "Plugs out", "Glow plugs or injectors out"},
    {Of::Compression, "Squish gap", "Bumping clearance"},
    {Of::Compression, "squish gap", "bumping clearance"},
};

void replace(std::string& text, const Term& term) {
  for (std::size_t at = text.find(term.words); at != std::string::npos;
       at = text.find(term.words, at + term.instead.size())) {
    text.replace(at, term.words.size(), term.instead);
  }
}

bool answers(const describe::Evaluation& evaluation, int engine, const describe::Input& input,
             double answer) {
  return evaluation.inputStands(engine, input) && evaluation.inputValue(engine, input) == answer;
}

}  // namespace

EngineTerms::EngineTerms(const describe::Evaluation& evaluation, int engine,
                         const SheetOptions& options)
    : options_(options),
      twoStroke_(answers(evaluation, engine, in::cycle, model::answer(model::Cycle::TwoStroke))),
      compression_(
          answers(evaluation, engine, in::ignition, model::answer(model::Ignition::Compression))) {}

void EngineTerms::say(std::string& text) const {
  for (const Term& term : kTerms) {
    const bool holds =
        term.of == Of::TwoStroke ? twoStroke_ : compression_ == (term.of == Of::Compression);
    if (holds) replace(text, term);
  }
  if (options_.words) text = options_.words(text);
}

}  // namespace strokewright::sheet
