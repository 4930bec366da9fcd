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

/// [m] of a part of the shelf; nothing lies there for kNone.
double thicknessOf(const Question& question, int part) {
  return part == kNone ? 0.0 : question.shelf[static_cast<std::size_t>(part)].thickness;
}

double boreOf(const Question& question, int part) {
  return question.shelf[static_cast<std::size_t>(part)].bore;
}

/// One text for all cylinders where they are alike, else one for each.
template <typename Length>
std::string textOf(const Input& input, const Stack& stack, const Length& length) {
  std::string text;
  bool alike = true;
  for (std::size_t i = 0; i < stack.cylinders.size(); ++i) {
    const double here = length(stack.cylinders[i].set);
    alike = alike && here == length(stack.cylinders[0].set);
    if (i > 0) text += "; ";
    text += describe::typedText(input, here);
  }
  return alike ? describe::typedText(input, length(stack.cylinders[0].set)) : text;
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
  const auto thickness = [&](auto part) {
    return [&question, part](const Set& set) { return thicknessOf(question, part(set)); };
  };
  const auto entry = [&](const Input& input, const auto& length) {
    return std::pair<const Input*, std::string>{&input, textOf(input, stack, length)};
  };
  return {
      entry(in::spacer, thickness([](const Set& set) { return set.plate; })),
      entry(in::baseGasket, thickness([](const Set& set) { return set.baseGaskets[0]; })),
      entry(in::secondBaseGasket, thickness([](const Set& set) { return set.baseGaskets[1]; })),
      {&in::thirdBaseGasket, ""},
      entry(in::headGasket, thickness([](const Set& set) { return set.headGasket; })),
      entry(in::headGasketBore, [&](const Set& set) { return boreOf(question, set.headGasket); })};
}

}  // namespace strokewright::choice

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kChoices[] = {
    {.key = "place", .name = "Place", .kind = Kind::Count},
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "plate_m", .name = "Plate", .kind = Kind::FineLength},
    {.key = "base_gasket_m", .name = "Base gasket", .kind = Kind::FineLength},
    {.key = "second_base_gasket_m", .name = "Second", .kind = Kind::FineLength},
    {.key = "head_gasket_m", .name = "Head gasket", .kind = Kind::FineLength},
    {.key = "squish_m", .name = "Squish gap", .symbol = "s", .kind = Kind::FineLength},
    {.key = "squish_at_worst_m", .name = "at worst", .kind = Kind::FineLength},
    {.key = "ratio", .name = "Compression ratio", .symbol = "ε", .kind = Kind::Ratio},
    {.key = "squish_spread_m", .name = "Gaps apart", .kind = Kind::FineLength},
    {.key = "ratio_spread", .name = "Ratios apart", .kind = Kind::Ratio}};

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

}  // namespace

const Table stackChoices{
    .key = "stack_choices",
    .name = "The best stacks from the shelf",
    .per = Per::Engine,
    .columns = kChoices,
    .formula = kHow,
    .source = kFrom,
    .valid = kFor,
    .fill = [](Reader& read, Rows& rows) {
      const choice::Question question = choice::questionOf(read);
      if (!read.complete()) return;
      const choice::Answer answer = choice::choose(question);
      double place = 0.0;
      for (const choice::Stack& stack : answer.best) {
        ++place;
        double cylinder = 0.0;
        for (const choice::Fit& fit : stack.cylinders) {
          rows.add({place, ++cylinder, thicknessOrNone(question, fit.set.plate),
                    thicknessOrNone(question, fit.set.baseGaskets[0]),
                    thicknessOrNone(question, fit.set.baseGaskets[1]),
                    thicknessOrNone(question, fit.set.headGasket), fit.squish, fit.squishAtWorst,
                    fit.ratio, stack.squishSpread, stack.ratioSpread});
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
  static constexpr std::array kTables = {&out::stackChoices, &out::stacksLost};
  return kTables;
}

}  // namespace strokewright::choice
