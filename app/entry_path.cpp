#include "app/entry_path.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/joined.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "core/assess/entry_rules.h"
#include "core/describe/wording.h"
#include "core/model/entry_text.h"
#include "core/model/lists.h"
#include "core/units/parse.h"

namespace strokewright::app {
namespace {

using describe::Entries;
using describe::Entry;
using describe::Input;
using describe::List;

/// "readings[1][0]"
struct Step {
  std::string_view name;
  std::vector<std::size_t> places;
};

[[noreturn]] void throwNoPath(std::string_view key) {
  throw Unusable({"“", key,
                  "” leads nowhere: a key is KEY, LIST[N].KEY, KEY.value[N] or KEY.readings[N][M], "
                  "as in the file and counted from 0."});
}

/// "1" of "1][0]", which is eaten with its bracket.
std::optional<std::size_t> placeIn(std::string_view& text) {
  std::size_t place = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), place);
  const auto length = static_cast<std::size_t>(end - text.data());
  if (error != std::errc() || length >= text.size() || text[length] != ']') return std::nullopt;
  text.remove_prefix(length + 1);
  return place;
}

std::vector<Step> stepsOf(std::string_view key) {
  std::vector<Step> steps;
  for (std::size_t start = 0; start <= key.size();) {
    const std::size_t end = std::min(key.find('.', start), key.size());
    std::string_view rest = key.substr(start, end - start);
    Step& step = steps.emplace_back(Step{rest.substr(0, rest.find('[')), {}});
    rest.remove_prefix(step.name.size());
    while (!rest.empty()) {
      if (rest.front() != '[') throwNoPath(key);
      rest.remove_prefix(1);
      const auto place = placeIn(rest);
      if (!place) throwNoPath(key);
      step.places.push_back(*place);
    }
    start = end + 1;
  }
  return steps;
}

/// What could have been read.
std::string wordExpected(const Input& input) {
  if (input.kind != units::Kind::Choice) {
    const std::string_view unit = kBench.unit(input.kind);
    return joined({input.list ? "a number or a list of them" : "one number",
                   unit.empty() ? "" : ", in ", unit, unit.empty() ? "" : " unless it says so"});
  }
  std::string text = "one of";
  for (const describe::Choice& choice : input.choices) {
    text.append(&choice == &input.choices.front() ? " " : ", ").append(choice.key);
  }
  return text;
}

bool standsForUnknown(const Input& input, const std::string& text) {
  if (input.kind == units::Kind::Choice) return false;
  return units::parse(input.kind, text, units::unitsOf(input.kind)[0]).problem ==
         units::Problem::Placeholder;
}

Entry entryOf(const Input& input, const Assignment& set) {
  Entry entry = model::entryFrom(input, set.text, units::UnitGroup::metric());
  if (!entry.known() && !entry.empty() && !standsForUnknown(input, set.text)) {
    throw Unusable({"“", set.text, "” cannot be read for ", set.key, ": it is ",
                    wordExpected(input), ". ", word(assess::whyUnknown(input, entry), kBench)});
  }
  return entry;
}

/// One number of an entry, with its readings where it is the mean of several.
Entry numberOf(const Input& input, const Assignment& set) {
  Entry entry = entryOf(input, set);
  if (entry.values.size() == 1 && !entry.plusMinus) return entry;
  throw Unusable({"“", set.text, "” is no single number for ", set.key,
                  ": a ± and a list belong to the whole entry."});
}

/// @param things  of which there are so many
std::size_t checked(const Assignment& set, std::size_t place, std::size_t count,
                    std::string_view things) {
  if (place < count) return place;
  throw Unusable({set.key, " leads nowhere: of ", things, " there ", count == 1 ? "is " : "are ",
                  count == 0 ? "none" : std::to_string(count),
                  count == 0 ? "." : ", counted from 0."});
}

void setValue(Entry& entry, const Input& input, std::size_t at, const Assignment& set) {
  const std::size_t place = checked(set, at, entry.values.size(), "numbers");
  const Entry number = numberOf(input, set);
  entry.values[place] = number.values.front();
  if (entry.readings.empty() && number.readings.empty()) return;
  for (std::size_t once = entry.readings.size(); once < entry.values.size(); ++once) {
    entry.readings.push_back({entry.values[once]});
  }
  entry.readings[place] = number.readings.empty() ? number.values : number.readings.front();
  const auto readOnce = [](const std::vector<double>& readings) { return readings.size() == 1; };
  if (std::ranges::all_of(entry.readings, readOnce)) entry.readings.clear();
}

void setReading(Entry& entry, const Input& input, std::span<const std::size_t> at,
                const Assignment& set) {
  std::vector<double>& readings =
      entry.readings[checked(set, at[0], entry.readings.size(), "numbers with readings")];
  readings[checked(set, at[1], readings.size(), "readings")] = numberOf(input, set).values.front();
  entry.values[at[0]] = units::meanOf(readings);
}

/// The entry with the text in it where the steps lead that are left.
Entry entered(Entry entry, const Input& input, std::span<const Step> steps, const Assignment& set) {
  if (steps.empty()) return entryOf(input, set);
  const auto& [name, places] = steps.front();
  if (steps.size() == 1 && name == "value" && places.size() == 1) {
    setValue(entry, input, places.front(), set);
  } else if (steps.size() == 1 && name == "readings" && places.size() == 2) {
    setReading(entry, input, places, set);
  } else {
    throwNoPath(set.key);
  }
  entry.text.clear();  // it says another number
  entry.unit.clear();
  return entry;
}

const Input& columnOf(const List& list, std::string_view key) {
  const auto column = std::ranges::find(list.columns, key, &Input::key);
  if (column != list.columns.end()) return **column;
  std::string keys;
  for (const Input* each : list.columns) keys += joined({keys.empty() ? "" : ", ", each->key});
  throw Unusable({"A ", list.item, " of ", list.key, " has no “", key, "”; it has ", keys, "."});
}

void enterInList(describe::Lists& lists, const List& list, std::span<const Step> steps,
                 const Assignment& set) {
  if (steps.size() < 2 || steps[0].places.size() != 1 || !steps[1].places.empty()) {
    throwNoPath(set.key);
  }
  const Input& column = columnOf(list, steps[1].name);
  const auto kept = lists.find(&list);
  const std::size_t count = kept == lists.end() ? 0 : kept->second.size();
  const std::size_t place = checked(set, steps[0].places[0], count, joined({list.item, "s"}));
  Entries& item = kept->second[place];
  Entry entry = entered(item[&column], column, steps.subspan(2), set);
  item[&column] = std::move(entry);
  if (item[&column].empty()) item.erase(&column);
}

}  // namespace

void enter(model::Project& project, int engine, const Assignment& set) {
  const std::vector<Step> steps = stepsOf(set.key);
  model::Engine& changed = project.engines[static_cast<std::size_t>(engine)];
  const std::string_view first = steps.front().name;
  if (const List* list = model::listOf(model::projectLists(), first)) {
    enterInList(project.lists, *list, steps, set);
  } else if (const List* its = model::listOf(model::engineLists(), first)) {
    enterInList(changed.lists, *its, steps, set);
  } else {
    const Input& input = inputOf(first);
    if (!steps.front().places.empty()) throwNoPath(set.key);
    changed.set(input, entered(changed[input], input, std::span(steps).subspan(1), set));
  }
}

}  // namespace strokewright::app
