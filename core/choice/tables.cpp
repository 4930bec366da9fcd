#include "core/choice/tables.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <tuple>

#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "core/deck/stack.h"
#include "core/describe/common_practice.h"
#include "core/describe/finding.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"

namespace strokewright::choice {

namespace in = model::in;
namespace list = model::list;
using describe::Entries;
using describe::Finding;
using describe::fine;
using describe::Input;
using describe::kPractice;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

Part partOf(const Entries& item) {
  const auto number = [&](const Input& column) {
    return describe::standingIn(item, column).value_or(0.0);
  };
  const auto role = static_cast<model::PartRole>(static_cast<int>(number(list::partRole)));
  const auto limit = [&](const Input& column) {
    const auto entry = item.find(&column);
    return entry == item.end() ? 0.0 : entry->second.limit();
  };
  const std::optional<double> quantity = describe::standingIn(item, list::partQuantity);
  const double serves = number(list::partServes);
  return {.role = role == model::PartRole::HeadGasket ? Role::HeadGasket
                  : role == model::PartRole::Plate    ? Role::Plate
                                                      : Role::BaseGasket,
          .thickness = number(list::partThickness),
          .plusMinus = limit(list::partThickness),
          .bore = number(list::partBore),
          .borePlusMinus = limit(list::partBore),
          .quantity = quantity ? std::optional(static_cast<int>(*quantity)) : std::nullopt,
          .servesAll = serves == model::answer(model::PartServes::AllCylinders)};
}

bool isEntered(const Entries& item, const Input& column) {
  const auto entry = item.find(&column);
  return entry != item.end() && (entry->second.known() || !entry->second.text.empty());
}

/// The entry that leaves it out of the choice: it is missing, not read, or impossible. Nullptr: it
/// is a part.
const Input* lackingIn(const Entries& item) {
  for (const Input* column : list::shelf.columns) {
    const bool needed = column == &list::partRole || column == &list::partThickness ||
                        (column == &list::partBore && partOf(item).role == Role::HeadGasket);
    if (!needed && !isEntered(item, *column)) continue;
    if (!describe::standingIn(item, *column)) return column;
  }
  return nullptr;
}

/// [m] of the cylinders.
struct Bores {
  double least;
  double greatest;
};

Bores boresOf(Reader& read) {
  Bores bores{read(in::bore), read(in::bore)};
  for (int i = 0; i < read.cylinders(); ++i) {
    bores.least = std::min(bores.least, read.at(i)(in::bore));
    bores.greatest = std::max(bores.greatest, read.at(i)(in::bore));
  }
  return bores;
}

/// A head gasket that stands over the edge of a bore.
bool overhangs(const Part& part, const Bores& bores) {
  return part.role == Role::HeadGasket && part.bore < bores.greatest;
}

bool isLaid(const Entries& item, const Bores& bores) {
  return lackingIn(item) == nullptr && !overhangs(partOf(item), bores);
}

Cylinder cylinderOf(Reader read) {
  const double beyondDeck = read(in::headRecess) - read(in::crownRise);
  return {.deckClearanceBare = read(out::bareGap) - beyondDeck,
          .squishBare = beyondDeck,
          .bore = read(in::bore),
          .sweptVolume = read(out::sweptVolume),
          .volumesBesideStack = read(out::volumesBesideStack),
          .worst = read.worst(out::bareGap),
          .number = model::numberOfCylinder(read)};
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
  wants.leastAtWorst = read(in::squishLeastAtWorst);
  wants.squishLeast = read(in::squishLeast);
  if (read.given(in::ratioLeast)) wants.ratioLeast = read(in::ratioLeast);
  if (read.given(in::ratioMost)) wants.ratioMost = read(in::ratioMost);
  wants.squishSpread = read(in::deckSpread);
  wants.ratioSpread = read(in::ratioSpread);
  wants.baseGasketsLeast = static_cast<int>(read(in::baseGasketsLeast));
  wants.baseGasketsMost = static_cast<int>(read(in::baseGasketsMost));
  wants.onePlateForAll =
      read.choice<model::PlatesInStack>(in::platesInStack) == model::PlatesInStack::OneForAll;
  wants.sameGasketsInAll =
      read.choice<model::GasketsInStack>(in::gasketsInStack) == model::GasketsInStack::SameInAll;
  return wants;
}

/// Says something of one line of the shelf.
Finding& sayOf(Speaker& speak, Weight weight, describe::Sentence says, int item,
               const Input& column, std::vector<const Input*> others = {}) {
  others.insert(others.begin(), &column);
  Finding& finding = speak.say(weight, std::move(says), std::move(others));
  finding.list = &list::shelf;
  finding.item = item;
  return finding;
}

Quantity lineOf(int item) { return {Kind::Count, item + 1.0}; }

/// A part of which too little is known is left out, and that is said; of what was entered and
/// cannot be, the rules of entries speak.
const Rule incompleteParts{
    .key = "incomplete_parts", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      int place = -1;
      for (const Entries& item : read.items(list::shelf)) {
        ++place;
        const Input* lacking = lackingIn(item);
        if (lacking == nullptr || item.empty() || isEntered(item, *lacking)) continue;
        sayOf(speak, Weight::Remarks,
              {"Line {1} of the shelf is left out of the choice: {2} is missing.",
               {lineOf(place), std::string(lacking->label)}},
              place, *lacking);
      }
    }};

/// A plate as thin as a gasket, or so thick that other parts would do better.
const Rule platesOnTheShelf{
    .key = "plates_on_the_shelf", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      constexpr double kRounding = 1e-9;  // [m]
      constexpr double kThick = 10e-3;    // [m] a slip of the pen is likelier than a thicker one
      const double least = read(in::spacerLeast);
      const double most = read(in::spacerMost);
      int place = -1;
      for (const Entries& item : read.items(list::shelf)) {
        ++place;
        if (lackingIn(item) != nullptr || partOf(item).role != Role::Plate) continue;
        const double thickness = partOf(item).thickness;
        if (thickness < least - kRounding) {
          sayOf(speak, Weight::Objects,
                {"Thickness, line {1} of the shelf: {2} is a shim or a gasket, not a plate: plates "
                 "begin at {3}. Enter it as a base gasket or shim.",
                 {lineOf(place), fine(thickness), fine(least)}},
                place, list::partThickness, {&in::spacerLeast});
        } else if (thickness > most + kRounding) {
          sayOf(speak, Weight::Objects,
                {"Thickness, line {1} of the shelf: a plate of {2}, over {3}: think of a longer "
                 "barrel or rod; spigot, studs and cam drive change with it.",
                 {lineOf(place), fine(thickness), fine(most)}},
                place, list::partThickness, {&in::spacerMost});
        } else if (thickness > kThick) {
          sayOf(speak, Weight::Remarks,
                {"Thickness, line {1} of the shelf: a plate of {2}, over {3}: is that so?",
                 {lineOf(place), fine(thickness), fine(kThick)}},
                place, list::partThickness, {&in::spacerMost});
        }
      }
    }};

/// As of the one that is fitted. One of another engine may lie on the shelf, and is left out.
const Rule headGasketsOnTheShelf{
    .key = "head_gaskets_on_the_shelf",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      const Bores bores = boresOf(read);
      int place = -1;
      for (const Entries& item : read.items(list::shelf)) {
        ++place;
        if (lackingIn(item) != nullptr || !overhangs(partOf(item), bores)) continue;
        const double gasket = partOf(item).bore;
        Finding& finding =
            sayOf(speak, Weight::Objects,
                  {"Bore of the head gasket, line {1} of the shelf: {2} overhangs a bore of {3} by "
                   "{4} all round. The part is left out of the choice.",
                   {lineOf(place), Quantity{Kind::Length, gasket},
                    Quantity{Kind::Length, bores.greatest}, fine((bores.greatest - gasket) / 2)}},
                  place, list::partBore, {&in::bore});
        if (2 * gasket >= bores.greatest && 2 * gasket <= 1.06 * bores.least) {
          finding.hint = {"A radius? Twice it is {1}.", {Quantity{Kind::Length, 2 * gasket}}};
        }
      }
    }};

/// Two limits with nothing between them.
const Rule limitsExclude{
    .key = "choice_limits_exclude",
    .source = "definition",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      for (const auto& [least, most] :
           {std::pair{&in::squishLeast, &in::squishMost}, {&in::ratioLeast, &in::ratioMost}}) {
        if (!read.stands(*least) || !read.stands(*most) || read(*least) <= read(*most)) continue;
        speak.say(
            Weight::Objects,
            {"{1}, {2}, is over {3}, {4}: no stack can keep both.",
             {least, Quantity{least->kind, read(*least)}, most, Quantity{most->kind, read(*most)}}},
            {least, most});
      }
    }};

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
  const Part& chosen = question.shelf[static_cast<std::size_t>(part)];
  return {chosen.bore, chosen.borePlusMinus};
}

/// The tables of one page ask the same.
using Remembered = std::optional<std::pair<Question, Answer>>;

const Answer& answerTo(const Question& question, Remembered& last) {
  if (!last || !(last->first == question)) last.emplace(question, choose(question));
  return last->second;
}

const Answer& chosen(const Question& question) {
  thread_local Remembered last;
  return answerTo(question, last);
}

/// A stack that is not on the list, and why.
struct Loser {
  Stack stack;
  Loss loss;
};

/// The stacks nearest to what is wanted, whatever else they give and however many of each part are
/// needed.
const Answer& nearestOfAll(const Question& question) {
  thread_local Remembered last;
  Question free = question;
  for (Part& part : free.shelf) part.quantity.reset();
  const Wants& wants = question.wants;
  const bool byRatio = wants.sortBy == SortBy::RatioNearness;
  free.wants = {.squish = wants.squish,
                .ratio = wants.ratio,
                .baseGasketsLeast = wants.baseGasketsLeast,
                .baseGasketsMost = wants.baseGasketsMost,
                .onePlateForAll = wants.onePlateForAll,
                .sameGasketsInAll = wants.sameGasketsInAll,
                .sortBy = byRatio ? SortBy::RatioNearness : SortBy::SquishNearness};
  return answerTo(free, last);
}

/// The nearest of those that are not on the list.
std::vector<Loser> nearestLosers(const Question& question) {
  constexpr std::size_t kMost = 12;
  const Answer& answer = chosen(question);
  std::vector<Loser> losers;
  for (const Stack& stack : nearestOfAll(question).best) {
    if (losers.size() == kMost) break;
    std::vector<Set> sets;
    for (const Fit& fit : stack.cylinders) sets.push_back(fit.set);
    const std::optional<Loss> loss = whyLost(question, answer, sets);
    if (loss) losers.push_back({stack, *loss});
  }
  return losers;
}

/// Takes the limit away that a stack was lost by.
void lift(Question& question, Reason reason) {
  Wants& wants = question.wants;
  switch (reason) {
    case Reason::TooClose:
      wants.squishLeast = -Wants::kNoLimit;
      break;
    case Reason::TooCloseAtWorst:
      wants.leastAtWorst = -Wants::kNoLimit;
      break;
    case Reason::TooWide:
      wants.squishMost = Wants::kNoLimit;
      break;
    case Reason::RatioOver:
      wants.ratioMost = Wants::kNoLimit;
      break;
    case Reason::RatioUnder:
      wants.ratioLeast = -Wants::kNoLimit;
      break;
    case Reason::TooFew:
      for (Part& part : question.shelf) part.quantity.reset();
      break;
    case Reason::SquishSpreadOver:
      wants.squishSpread = Wants::kNoLimit;
      break;
    case Reason::RatioSpreadOver:
      wants.ratioSpread = Wants::kNoLimit;
      break;
    case Reason::Beaten:
      break;
  }
}

/// Every limit that a stack breaks, in the order of the reasons.
std::vector<Loss> limitsBroken(Question question, const Stack& stack) {
  std::vector<Set> sets;
  for (const Fit& fit : stack.cylinders) sets.push_back(fit.set);
  std::vector<Loss> broken;
  for (std::size_t i = 0; i < kReasonCount; ++i) {
    const std::optional<Loss> loss = judge(question, sets).loss;
    // No room above the piston is no limit that could be lifted.
    if (!loss || (!broken.empty() && broken.back().reason == loss->reason)) break;
    broken.push_back(*loss);
    lift(question, loss->reason);
  }
  return broken;
}

/// What keeps a stack out, the reason it is counted under first.
struct Hindrance {
  std::vector<Loss> broken;
  int place = 0;  ///< of the stack among the nearest losers, from 1
};

/// Where no stack fits: what keeps out the one that comes nearest to fitting, which is the nearest
/// to what is wanted of those that break the fewest limits.
Hindrance hindrance(const Question& question) {
  Hindrance fewest;
  int place = 0;
  for (const Loser& loser : nearestLosers(question)) {
    ++place;
    std::vector<Loss> broken = limitsBroken(question, loser.stack);
    if (fewest.broken.empty() || broken.size() < fewest.broken.size()) {
      fewest = {std::move(broken), place};
    }
  }
  return fewest;
}

/// Empty where every stack was looked at.
std::string stopped(const Answer& answer) {
  if (answer.searchedAll) return {};
  return answer.noneNearer ? "the search stopped; others as near may exist, none nearer"
                           : "the search stopped; a better one may exist";
}

/// Why there are fewer parts than lines on the shelf; empty where there are not.
std::string partsLeftOut(Reader& read) {
  const Bores bores = boresOf(read);
  std::string lines;
  int line = 0;
  for (const Entries& item : read.items(list::shelf)) {
    ++line;
    if (item.empty() || isLaid(item, bores)) continue;
    lines += (lines.empty() ? "" : ", ") + std::to_string(line);
  }
  return lines.empty() ? lines : "not laid for what is entered in it: line " + lines;
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
  const Bores bores = boresOf(read);
  int line = 0;
  for (const Entries& item : read.items(list::shelf)) {
    ++line;
    if (!isLaid(item, bores)) continue;
    question.shelf.push_back(partOf(item));
    question.shelf.back().line = line;
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
      {&in::headGasketVolume, ""},
      {&in::headGasketTaper, ""},
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
    "gap under the least",
    "gap at worst under the least",
    "gap over the most",
    "ratio over the most",
    "ratio under the least",
    "too few of a part",
    "gaps too far apart",
    "ratios too far apart",
    "within the limits, but others are nearer"};

constexpr Column kBeaten[] = {
    {.key = "place", .name = "Place", .kind = Kind::Count},
    {.key = "cylinders", .name = "Cylinders", .words = true},
    {.key = "why", .name = "Why it lost", .words = true},
    {.key = "plate_m", .name = "Plate", .kind = Kind::FineLength},
    {.key = "base_gasket_m", .name = "Base gasket", .kind = Kind::FineLength},
    {.key = "second_base_gasket_m", .name = "Second base gasket", .kind = Kind::FineLength},
    {.key = "head_gasket_m", .name = "Head gasket", .kind = Kind::FineLength},
    {.key = "squish_m", .name = "Squish gap", .symbol = "s", .kind = Kind::FineLength},
    {.key = "squish_most_m", .name = "Squish gap up to", .symbol = "s", .kind = Kind::FineLength},
    {.key = "ratio", .name = "Ratio", .symbol = "ε", .kind = Kind::Ratio},
    {.key = "ratio_most", .name = "Ratio up to", .symbol = "ε", .kind = Kind::Ratio},
    {.key = "gap_is_m", .name = "Gap is", .kind = Kind::FineLength},
    {.key = "gap_limit_m", .name = "Gap limit", .kind = Kind::FineLength},
    {.key = "gap_apart_m", .name = "Gap apart", .kind = Kind::FineLength},
    {.key = "gap_apart_limit_m", .name = "Gap apart at most", .kind = Kind::FineLength},
    {.key = "ratio_is", .name = "Ratio is", .kind = Kind::Ratio},
    {.key = "ratio_limit", .name = "Ratio limit", .kind = Kind::Ratio},
    {.key = "ratio_apart", .name = "Ratio apart", .kind = Kind::Ratio},
    {.key = "ratio_apart_limit", .name = "Ratio apart at most", .kind = Kind::Ratio},
    {.key = "parts_needed", .name = "Needed", .kind = Kind::Count},
    {.key = "parts_there", .name = "There", .kind = Kind::Count}};

constexpr Column kNotes[] = {{.key = "says", .name = "What is to be known", .words = true},
                             {.key = "place", .name = "Place", .kind = Kind::Count},
                             {.key = "is_m", .name = "Is", .kind = Kind::FineLength},
                             {.key = "limit_m", .name = "Limit", .kind = Kind::FineLength},
                             {.key = "ratio_is", .name = "Ratio is", .kind = Kind::Ratio},
                             {.key = "ratio_limit", .name = "Ratio limit", .kind = Kind::Ratio},
                             {.key = "parts_needed", .name = "Needed", .kind = Kind::Count},
                             {.key = "parts_there", .name = "There", .kind = Kind::Count},
                             {.key = "others", .name = "Also", .words = true},
                             {.key = "do", .name = "What may help", .words = true}};

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

std::vector<Alike> alikeIn(const choice::Question& question, const choice::Stack& stack) {
  std::vector<Alike> groups;
  for (std::size_t i = 0; i < stack.cylinders.size(); ++i) {
    const choice::Fit& fit = stack.cylinders[i];
    const std::string number = std::to_string(question.cylinders[i].number);
    const auto group =
        std::ranges::find(groups, fit.set, [](const Alike& alike) { return alike.least.set; });
    if (group == groups.end()) {
      groups.push_back({fit, fit, number});
      continue;
    }
    group->cylinders += ", " + number;
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

double finiteOrNone(double number) { return std::isfinite(number) ? number : describe::kAbsent; }

void addRows(const choice::Question& question, double place, const choice::Stack& stack,
             Rows& rows) {
  for (const Alike& alike : alikeIn(question, stack)) {
    const choice::Set& set = alike.least.set;
    rows.add({place, alike.cylinders, thicknessOrNone(question, set.plate),
              thicknessOrNone(question, set.baseGaskets[0]),
              thicknessOrNone(question, set.baseGaskets[1]),
              thicknessOrNone(question, set.headGasket), alike.least.squish,
              mostOrNone(alike.least.squish, alike.most.squish), alike.least.squishAtWorst,
              alike.least.ratio, mostOrNone(alike.least.ratio, alike.most.ratio)});
  }
}

/// What the number is that a stack lost by. Apart: how far from what is wanted, or from cylinder to
/// cylinder.
enum class LostBy { Gap, GapApart, Ratio, RatioApart, Parts };

LostBy lostBy(const choice::Question& question, choice::Reason reason) {
  using choice::Reason;
  using choice::SortBy;
  switch (reason) {
    case Reason::TooClose:
    case Reason::TooCloseAtWorst:
    case Reason::TooWide:
      return LostBy::Gap;
    case Reason::SquishSpreadOver:
      return LostBy::GapApart;
    case Reason::RatioOver:
    case Reason::RatioUnder:
      return LostBy::Ratio;
    case Reason::RatioSpreadOver:
      return LostBy::RatioApart;
    case Reason::TooFew:
      return LostBy::Parts;
    case Reason::Beaten:
      break;
  }
  const SortBy sortBy = question.wants.sortBy;
  return sortBy == SortBy::RatioNearness || sortBy == SortBy::RatioSpread ? LostBy::RatioApart
                                                                          : LostBy::GapApart;
}

/// "head gasket, shelf line 3"; roles are in the order of their choices.
std::string wordsOf(const choice::Part& part) {
  return std::string(model::list::partRole.choices[static_cast<std::size_t>(part.role)].label) +
         ", shelf line " + std::to_string(part.line);
}

/// "gap under the least, cylinder 2"
std::string wordsOf(const choice::Question& question, const choice::Loss& loss) {
  std::string why(kReasons[static_cast<std::size_t>(loss.reason)]);
  if (loss.part != choice::kNone) {
    why += ": " + wordsOf(question.shelf[static_cast<std::size_t>(loss.part)]);
  }
  if (loss.cylinder != choice::kNone && question.cylinders.size() > 1) {
    const auto place = static_cast<std::size_t>(loss.cylinder);
    why += ", cylinder " + std::to_string(question.cylinders[place].number);
  }
  return why;
}

/// What may help where cylinders lie apart; empty: other parts.
std::string_view whatToDo(const choice::Wants& wants, choice::Reason reason) {
  const bool apart =
      reason == choice::Reason::SquishSpreadOver || reason == choice::Reason::RatioSpreadOver;
  if (!apart) return {};
  if (wants.onePlateForAll) return "plates: one for each";
  return wants.sameGasketsInAll ? "gaskets: may differ" : "";
}

/// What keeps every stack out, and where it stands among those that lost; of what is so in each of
/// them there is no place.
void addHindrance(const choice::Question& question, Rows& rows) {
  const auto [broken, place] = choice::hindrance(question);
  if (broken.empty()) return;
  const choice::Loss& first = broken.front();
  const bool flat = first.reason == choice::Reason::SquishSpreadOver &&
                    question.wants.onePlateForAll && question.wants.sameGasketsInAll;
  std::string says =
      flat ? "one flat plate leaves the gaps too far apart" : wordsOf(question, first);
  std::string others;
  for (std::size_t i = 1; i < broken.size(); ++i) {
    others += (others.empty() ? "" : ", ") + wordsOf(question, broken[i]);
  }
  const LostBy by = lostBy(question, first.reason);
  const bool length = by == LostBy::Gap || by == LostBy::GapApart;
  const bool parts = by == LostBy::Parts;
  const auto where = [](bool kind, double value) {
    return kind ? finiteOrNone(value) : describe::kAbsent;
  };
  rows.add({std::move(says), flat ? describe::kAbsent : place, where(length, first.value),
            where(length, first.limit), where(!length && !parts, first.value),
            where(!length && !parts, first.limit), where(parts, first.value),
            where(parts, first.limit), std::move(others),
            std::string(whatToDo(question.wants, first.reason))});
}

void addRows(const choice::Question& question, double place, const choice::Loser& loser,
             Rows& rows) {
  const choice::Loss& loss = loser.loss;
  const LostBy by = lostBy(question, loss.reason);
  const auto number = [&](LostBy kind, double value) {
    return kind == by ? finiteOrNone(value) : describe::kAbsent;
  };
  const std::string why = wordsOf(question, loss);
  for (const Alike& alike : alikeIn(question, loser.stack)) {
    const choice::Set& set = alike.least.set;
    rows.add({place,
              alike.cylinders,
              why,
              thicknessOrNone(question, set.plate),
              thicknessOrNone(question, set.baseGaskets[0]),
              thicknessOrNone(question, set.baseGaskets[1]),
              thicknessOrNone(question, set.headGasket),
              alike.least.squish,
              mostOrNone(alike.least.squish, alike.most.squish),
              finiteOrNone(alike.least.ratio),
              finiteOrNone(mostOrNone(alike.least.ratio, alike.most.ratio)),
              number(LostBy::Gap, loss.value),
              number(LostBy::Gap, loss.limit),
              number(LostBy::GapApart, loss.value),
              number(LostBy::GapApart, loss.limit),
              number(LostBy::Ratio, loss.value),
              number(LostBy::Ratio, loss.limit),
              number(LostBy::RatioApart, loss.value),
              number(LostBy::RatioApart, loss.limit),
              number(LostBy::Parts, loss.value),
              number(LostBy::Parts, loss.limit)});
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
                           for (const choice::Stack& stack : choice::chosen(question).best) {
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
                           for (const choice::Stack& stack : choice::chosen(question).best) {
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
    .formula =
        "every stack that can be laid from the shelf; of several reasons it counts under the first "
        "in this order, gaps too far apart before all where no part can mend them",
    .source = kFrom,
    .valid = kFor,
    .fill = [](Reader& read, Rows& rows) {
      const choice::Question question = choice::questionOf(read);
      if (!read.complete()) return;
      const choice::Answer& answer = choice::chosen(question);
      for (std::size_t i = 0; i < kReasons.size(); ++i) {
        if (answer.tally.lost[i] > 0.0) rows.add({std::string(kReasons[i]), answer.tally.lost[i]});
      }
      if (answer.tally.undecided > 0.0) {
        std::string why = "too few of a part, gaps too far apart or ratios too far apart";
        if (!answer.best.empty()) why += ", or beaten";
        rows.add({std::move(why), answer.tally.undecided});
      }
      const std::string leftOut = choice::partsLeftOut(read);
      if (!leftOut.empty()) rows.add({leftOut, describe::kAbsent});
      const std::string stopped = choice::stopped(answer);
      if (!stopped.empty()) rows.add({stopped, describe::kAbsent});
      const choice::Answer& nearest = choice::nearestOfAll(question);
      if (!nearest.searchedAll) {
        rows.add({nearest.noneNearer
                      ? "the search of the nearest that lost stopped; others as near "
                        "may exist, none nearer"
                      : "the search of the nearest that lost stopped; a nearer one "
                        "may exist",
                  describe::kAbsent});
      }
    }};

const Table stacksBeaten{
    .key = "stacks_beaten",
    .name = "The nearest stacks that lost, and why",
    .per = Per::Engine,
    .columns = kBeaten,
    .formula =
        "the nearest to what is wanted, were there no limits and enough of each part; of several "
        "reasons the first one, with the number where the limit stands",
    .source = kFrom,
    .valid = kFor,
    .fill = [](Reader& read, Rows& rows) {
      const choice::Question question = choice::questionOf(read);
      if (!read.complete()) return;
      double place = 0.0;
      for (const choice::Loser& loser : choice::nearestLosers(question)) {
        addRows(question, ++place, loser, rows);
      }
    }};

const Table choiceNotes{
    .key = "choice_notes",
    .name = "What is to be known of the choice",
    .per = Per::Engine,
    .columns = kNotes,
    .formula =
        "what keeps out the stack that breaks the fewest limits, of several the nearest; "
        "whether every stack was looked at",
    .source = kFrom,
    .valid = kFor,
    .fill = [](Reader& read, Rows& rows) {
      const choice::Question question = choice::questionOf(read);
      if (!read.complete()) return;
      const choice::Answer& answer = choice::chosen(question);
      if (answer.best.empty()) addHindrance(question, rows);
      const std::string stopped = choice::stopped(answer);
      if (stopped.empty()) return;
      constexpr double kNone = describe::kAbsent;
      rows.add({stopped, kNone, kNone, kNone, kNone, kNone, kNone, kNone, "", ""});
    }};

}  // namespace strokewright::out

namespace strokewright::choice {

describe::Sentence noteIn(const describe::Rows& notes, std::size_t row) {
  const auto number = [&](std::string_view key, Kind kind) {
    return Quantity{kind, notes[key].numbers[static_cast<Eigen::Index>(row)]};
  };
  const auto words = [&](std::string_view key) { return notes[key].words[row]; };
  const bool helps = !words("do").empty();
  const bool others = !words("others").empty();
  const std::string also = helps ? words("do") : words("others");
  for (const auto& [is, limit, kind] : {std::tuple{"is_m", "limit_m", Kind::FineLength},
                                        std::tuple{"ratio_is", "ratio_limit", Kind::Ratio},
                                        std::tuple{"parts_needed", "parts_there", Kind::Count}}) {
    const Quantity value = number(is, kind);
    if (std::isnan(value.value)) continue;
    const Quantity place = number("place", Kind::Count);
    if (std::isnan(place.value)) {
      return {"{1}: {2}, limit {3}. May help: {4}.",
              {words("says"), value, number(limit, kind), also}};
    }
    return {helps    ? "{1}: {2}, limit {3} (place {5} of those that lost). May help: {4}."
            : others ? "{1}: {2}, limit {3} (place {5} of those that lost). Also: {4}."
                     : "{1}: {2}, limit {3} (place {5} of those that lost).",
            {words("says"), value, number(limit, kind), also, place}};
  }
  return {"{1}.", {words("says")}};
}

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&incompleteParts, &platesOnTheShelf, &headGasketsOnTheShelf,
                                        &limitsExclude};
  return kRules;
}

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::stackChoices, &out::stackEntries, &out::stacksLost,
                                         &out::stacksBeaten, &out::choiceNotes};
  return kTables;
}

}  // namespace strokewright::choice
