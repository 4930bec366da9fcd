#include "core/choice/tables.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "core/deck/stack.h"
#include "core/describe/finding.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"

namespace strokewright::choice {

namespace in = model::in;
namespace list = model::list;
using describe::Entries;
using describe::Input;
using describe::Reader;

namespace {

Part partOf(const Entries& item) {
  const auto number = [&](const Input& column) {
    return describe::standingIn(item, column).value_or(0.0);
  };
  const auto role = static_cast<model::PartRole>(static_cast<int>(number(list::partRole)));
  const auto entry = item.find(&list::partThickness);
  return {.role = role == model::PartRole::HeadGasket ? Role::HeadGasket
                  : role == model::PartRole::Plate    ? Role::Plate
                                                      : Role::BaseGasket,
          .thickness = number(list::partThickness),
          .plusMinus = entry == item.end() ? 0.0 : entry->second.limit(),
          .bore = number(list::partBore),
          .quantity = static_cast<int>(number(list::partQuantity))};
}

/// Enough was entered for it to be a part; the others are passed over.
bool isPart(const Entries& item) {
  const auto has = [&](const Input& column) {
    return describe::standingIn(item, column).has_value();
  };
  if (!has(list::partRole) || !has(list::partThickness)) return false;
  return partOf(item).role != Role::HeadGasket || has(list::partBore);
}

Cylinder cylinderOf(Reader read) {
  const double beyondDeck = read(in::headRecess) - read(in::crownRise);
  return {.deckClearanceBare = read(out::bareGap) - beyondDeck,
          .squishBare = beyondDeck,
          .bore = read(in::bore),
          .sweptVolume = read(out::sweptVolume),
          .volumesBesideStack = read(out::volumesBesideStack),
          .worst = read.worst(out::bareGap)};
}

SortBy orderOf(model::StackOrder order) {
  switch (order) {
    case model::StackOrder::Ratio:
      return SortBy::RatioNearness;
    case model::StackOrder::SquishSpread:
      return SortBy::SquishSpread;
    case model::StackOrder::RatioSpread:
      return SortBy::RatioSpread;
    case model::StackOrder::Squish:
      break;
  }
  return SortBy::SquishNearness;
}

Wants wantsOf(Reader& read) {
  Wants wants;
  wants.sortBy = orderOf(read.choice<model::StackOrder>(in::stackOrder));
  const bool byRatio = wants.sortBy == SortBy::RatioNearness;
  if (read.given(in::wantedSquish) || !byRatio) wants.squish = read(in::wantedSquish);
  if (read.given(in::wantedCompressionRatio) || byRatio) {
    wants.ratio = read(in::wantedCompressionRatio);
  }
  wants.squishMost = read(in::squishMost);
  wants.leastAtWorst = 0.0;
  wants.squishLeast = read(in::squishLeast);
  if (read.given(in::ratioLeast)) wants.ratioLeast = read(in::ratioLeast);
  if (read.given(in::ratioMost)) wants.ratioMost = read(in::ratioMost);
  wants.squishSpread = read(in::deckSpread);
  wants.ratioSpread = read(in::ratioSpread);
  wants.baseGasketsMost = static_cast<int>(read(in::baseGasketsMost));
  wants.onePlateForAll =
      read.choice<model::PlatesInStack>(in::platesInStack) == model::PlatesInStack::OneForAll;
  wants.sameGasketsInAll =
      read.choice<model::GasketsInStack>(in::gasketsInStack) == model::GasketsInStack::SameInAll;
  return wants;
}

/// What lies in one place of a cylinder, as it is typed.
struct Typed {
  double length = 0.0;     ///< [m]
  double plusMinus = 0.0;  ///< [m]
};

Typed thicknessOf(const Question& question, int part) {
  if (part == kNone) return {};
  const Part& chosen = question.shelf[static_cast<std::size_t>(part)];
  return {chosen.thickness, chosen.plusMinus};
}

Typed boreOf(const Question& question, int part) {
  return {question.shelf[static_cast<std::size_t>(part)].bore, 0.0};
}

/// "0.95; 1.05 ± 0.01 mm"
std::string textOf(const Input& input, const std::vector<Typed>& cylinders) {
  const auto bare = [&](double length) {
    const std::string text = describe::typedText(input, length);
    return text.substr(0, text.find(' '));
  };
  std::string text = bare(cylinders.front().length);
  const bool alike = std::ranges::all_of(
      cylinders, [&](const Typed& typed) { return typed.length == cylinders.front().length; });
  for (std::size_t i = 1; !alike && i < cylinders.size(); ++i) {
    text += "; " + bare(cylinders[i].length);
  }
  const double limit = std::ranges::max(cylinders, {}, &Typed::plusMinus).plusMinus;
  if (limit > 0.0) text += " ± " + bare(limit);
  return text + ' ' + std::string(units::Style{}.unit(input.kind));
}

}  // namespace

Question questionOf(Reader& read) {
  Question question;
  for (const Entries& item : read.items(list::shelf)) {
    if (isPart(item)) question.shelf.push_back(partOf(item));
  }
  for (int i = 0; i < read.cylinders(); ++i) question.cylinders.push_back(cylinderOf(read.at(i)));
  question.wants = wantsOf(read);
  return question;
}

std::vector<std::pair<const Input*, std::string>> entriesOf(const Question& question,
                                                            const Stack& stack) {
  const auto entry = [&](const Input& input, Typed (*typed)(const Question&, int), auto part) {
    std::vector<Typed> cylinders;
    for (const Fit& fit : stack.cylinders) cylinders.push_back(typed(question, part(fit.set)));
    return std::pair<const Input*, std::string>{&input, textOf(input, cylinders)};
  };
  const auto lower = [](const Set& set) { return set.baseGaskets[0]; };
  const auto upper = [](const Set& set) { return set.baseGaskets[1]; };
  const auto head = [](const Set& set) { return set.headGasket; };
  std::vector<std::pair<const Input*, std::string>> entries = {
      entry(in::spacer, thicknessOf, [](const Set& set) { return set.plate; }),
      entry(in::baseGasket, thicknessOf, lower),
      entry(in::secondBaseGasket, thicknessOf, upper),
      {&in::thirdBaseGasket, ""},
      entry(in::headGasket, thicknessOf, head),
      entry(in::headGasketBore, boreOf, head)};
  const bool single = std::ranges::all_of(
      stack.cylinders, [](const Fit& fit) { return fit.set.baseGaskets[1] == kNone; });
  if (single) entries[2].second.clear();
  return entries;
}

}  // namespace strokewright::choice

namespace strokewright::out {

using describe::Column;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kChoices[] = {
    {.key = "place", .name = "Place", .kind = Kind::Count},
    {.key = "cylinders", .name = "Cylinders", .words = true},
    {.key = "plate_m", .name = "Plate", .kind = Kind::FineLength},
    {.key = "base_gasket_m", .name = "Base gasket", .kind = Kind::FineLength},
    {.key = "second_base_gasket_m", .name = "Second base gasket", .kind = Kind::FineLength},
    {.key = "head_gasket_m", .name = "Head gasket", .kind = Kind::FineLength},
    {.key = "squish_m", .name = "Squish gap", .symbol = "s", .kind = Kind::FineLength},
    {.key = "squish_most_m", .name = "Squish gap up to", .symbol = "s", .kind = Kind::FineLength},
    {.key = "squish_at_worst_m", .name = "Squish gap at worst", .kind = Kind::FineLength},
    {.key = "ratio", .name = "Ratio", .symbol = "ε", .kind = Kind::Ratio},
    {.key = "ratio_most", .name = "Ratio up to", .symbol = "ε", .kind = Kind::Ratio}};

constexpr Column kEntries[] = {{.key = "place", .name = "Place", .kind = Kind::Count},
                               {.key = "entry", .name = "Entry", .words = true},
                               {.key = "text", .name = "To be typed", .words = true}};

constexpr Column kLost[] = {{.key = "why", .name = "Why", .words = true},
                            {.key = "stacks", .name = "Stacks", .kind = Kind::Count}};

constexpr std::array<std::string_view, choice::kReasonCount> kReasons = {
    "gap under the least", "gap at worst closed",   "gap over the most",
    "ratio over the most", "ratio under the least", "more of a part than there are",
    "gaps too far apart",  "ratios too far apart",  "within the limits, but others are nearer"};

constexpr std::string_view kHow = "every stack that can be laid from the shelf, ranked";
constexpr std::string_view kFrom = "plane geometry; Heywood ch. 2";
constexpr std::string_view kFor =
    "parts compressed as entered; a plate made to any size is not one of them";

/// Nothing stands for no part.
double thicknessOrNone(const choice::Question& question, int part) {
  return part == choice::kNone ? describe::kAbsent
                               : question.shelf[static_cast<std::size_t>(part)].thickness;
}

/// The cylinders of a stack that get the same parts, with what these give in them.
struct Alike {
  choice::Fit least;  ///< of each number
  choice::Fit most;
  std::string cylinders;  ///< "1, 3"
};

std::vector<Alike> alikeIn(const choice::Stack& stack) {
  std::vector<Alike> groups;
  for (std::size_t i = 0; i < stack.cylinders.size(); ++i) {
    const choice::Fit& fit = stack.cylinders[i];
    const auto group =
        std::ranges::find(groups, fit.set, [](const Alike& alike) { return alike.least.set; });
    if (group == groups.end()) {
      groups.push_back({fit, fit, std::to_string(i + 1)});
      continue;
    }
    group->cylinders += ", " + std::to_string(i + 1);
    group->least.squish = std::min(group->least.squish, fit.squish);
    group->least.squishAtWorst = std::min(group->least.squishAtWorst, fit.squishAtWorst);
    group->least.ratio = std::min(group->least.ratio, fit.ratio);
    group->most.squish = std::max(group->most.squish, fit.squish);
    group->most.ratio = std::max(group->most.ratio, fit.ratio);
  }
  if (groups.size() == 1) groups.front().cylinders = "all";
  return groups;
}

/// Nothing where it is no more than the least.
double mostOrNone(double least, double most) { return most > least ? most : describe::kAbsent; }

void addRows(const choice::Question& question, double place, const choice::Stack& stack,
             Rows& rows) {
  for (const Alike& alike : alikeIn(stack)) {
    const choice::Set& set = alike.least.set;
    rows.add({place, alike.cylinders, thicknessOrNone(question, set.plate),
              thicknessOrNone(question, set.baseGaskets[0]),
              thicknessOrNone(question, set.baseGaskets[1]),
              thicknessOrNone(question, set.headGasket), alike.least.squish,
              mostOrNone(alike.least.squish, alike.most.squish), alike.least.squishAtWorst,
              alike.least.ratio, mostOrNone(alike.least.ratio, alike.most.ratio)});
  }
}

}  // namespace

const Table stackChoices{.key = "stack_choices",
                         .name = "The best stacks from the shelf",
                         .per = Per::Engine,
                         .columns = kChoices,
                         .formula = kHow,
                         .source = kFrom,
                         .valid = kFor,
                         .fill = [](Reader& read, Rows& rows) {
                           const choice::Question question = choice::questionOf(read);
                           if (!read.complete()) return;
                           double place = 0.0;
                           for (const choice::Stack& stack : choice::choose(question).best) {
                             addRows(question, ++place, stack, rows);
                           }
                         }};

const Table stackEntries{.key = "stack_entries",
                         .name = "What to enter for each of the best stacks",
                         .per = Per::Engine,
                         .columns = kEntries,
                         .formula = kHow,
                         .source = kFrom,
                         .valid = kFor,
                         .fill = [](Reader& read, Rows& rows) {
                           const choice::Question question = choice::questionOf(read);
                           if (!read.complete()) return;
                           double place = 0.0;
                           for (const choice::Stack& stack : choice::choose(question).best) {
                             ++place;
                             for (const auto& [input, text] : choice::entriesOf(question, stack)) {
                               rows.add({place, std::string(input->key), text});
                             }
                           }
                         }};

const Table stacksLost{
    .key = "stacks_lost",
    .name = "Why the other stacks lost",
    .per = Per::Engine,
    .columns = kLost,
    .formula = kHow,
    .source = kFrom,
    .valid = kFor,
    .fill = [](Reader& read, Rows& rows) {
      const choice::Question question = choice::questionOf(read);
      if (!read.complete()) return;
      const choice::Answer answer = choice::choose(question);
      for (std::size_t i = 0; i < kReasons.size(); ++i) {
        if (answer.tally.lost[i] > 0.0) rows.add({std::string(kReasons[i]), answer.tally.lost[i]});
      }
      if (answer.tally.undecided > 0.0) {
        rows.add({"spread, quantity or nearness, not told apart", answer.tally.undecided});
      }
      if (!answer.searchedAll)
        rows.add({"the search stopped; a better one may exist", describe::kAbsent});
    }};

}  // namespace strokewright::out

namespace strokewright::choice {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::stackChoices, &out::stackEntries, &out::stacksLost};
  return kTables;
}

}  // namespace strokewright::choice
