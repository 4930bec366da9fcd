#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/describe/common_practice.h"
#include "core/describe/evaluation.h"
#include "core/describe/names.h"
#include "core/firing/results.h"
#include "core/model/direction.h"
#include "core/model/inputs.h"

namespace strokewright::firing {

namespace in = model::in;
using describe::Finding;
using describe::Input;
using describe::kPractice;
using describe::Mend;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

constexpr std::string_view kEnumerated = "enumeration";
constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;
constexpr double kTouch = 0.1e-3;  // [m] closer than this two places are one

Quantity angle(double radians) { return {Kind::Angle, radians, 1}; }

/// The numbers as typed for one cylinder after the other, their unit once behind them: "0; -90 °".
std::string typed(const Input& input, std::span<const double> values) {
  std::string text;
  std::string unit;
  for (const double value : values) {
    const std::string one = describe::typedText(input, value);
    const std::size_t end = std::min(one.find(' '), one.size());
    std::string_view bare = std::string_view(one).substr(0, end);
    if (bare.find('.') != std::string_view::npos) {
      bare = bare.substr(0, bare.find_last_not_of('0') + 1);
      if (bare.ends_with('.')) bare.remove_suffix(1);
    }
    if (!text.empty()) text += "; ";
    text += bare;
    unit = one.substr(end);
  }
  return text + unit;
}

Quantity number(int count) { return {Kind::Count, static_cast<double>(count)}; }

/// "1; 2; 3"
std::string typedNumbers(std::span<const int> numbers) {
  std::string text;
  for (const int one : numbers) {
    if (!text.empty()) text += "; ";
    text += std::to_string(one);
  }
  return text;
}

/// The first few of the orders that can be, the most even first.
void offerOrders(Finding& finding, const Crank& crank) {
  constexpr std::size_t kOffered = 4;
  const auto orders = ordersOf(crank);
  for (std::size_t i = 0; i < std::min(kOffered, orders.size()); ++i) {
    std::string order = words(orders[i], crank.numbers);
    std::string later = turnsLaterOf(orders, i, crank);
    describe::Sentence says{"Fire {1}", {order}};
    if (!later.empty()) {
      says.pattern = "Fire {1}, intervals {2}";
      says.arguments.emplace_back(inDegrees(orders[i].intervals(crank.strokes)));
    }
    finding.mends.push_back(
        {.says = std::move(says),
         .entries = {{&in::firingOrder, std::move(order)}, {&in::firesLater, std::move(later)}}});
  }
}

std::vector<int> numbersNamed(Reader& read) {
  std::vector<int> named;
  named.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) {
    named.push_back(static_cast<int>(read.at(i)(in::firingOrder)));
  }
  return named;
}

const Rule numbersDiffer{
    .key = "cylinder_numbers_differ",
    .source = "definition",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::cylinderNumber)) return;
      read(in::cylinderCount);  // waited for
      std::vector<int> numbers;
      std::vector<int> byPlace;
      int twice = 0;
      for (int i = 0; i < read.cylinders(); ++i) {
        const int one = static_cast<int>(read.at(i)(in::cylinderNumber));
        if (twice == 0 && std::ranges::find(numbers, one) != numbers.end()) twice = one;
        numbers.push_back(one);
        byPlace.push_back(i + 1);
      }
      if (twice == 0) return;
      Finding& finding =
          speak.say(Weight::Forbids, {kSameNumber, {number(twice)}}, {&in::cylinderNumber});
      finding.hint = {"Each wants a number of its own, one for each cylinder as entered.", {}};
      const std::string text = typedNumbers(byPlace);
      finding.mends.push_back(
          {.says = {"Number them {1}", {text}}, .entries = {{&in::cylinderNumber, text}}});
    }};

/// What is wrong with the numbers in an order.
struct Slips {
  std::vector<int> leftOut;
  std::vector<int> twice;    ///< or more often
  std::vector<int> unknown;  ///< no cylinder goes by them
};

Slips slipsOf(const std::vector<int>& named, const std::vector<int>& numbers) {
  Slips slips;
  for (const int one : numbers) {
    const auto times = std::ranges::count(named, one);
    if (times == 0) slips.leftOut.push_back(one);
    if (times > 1) slips.twice.push_back(one);
  }
  for (const int one : named) {
    if (std::ranges::find(numbers, one) != numbers.end()) continue;
    if (std::ranges::find(slips.unknown, one) == slips.unknown.end()) slips.unknown.push_back(one);
  }
  return slips;
}

/// {1} what is left out, {2} what is named twice, {3} what no cylinder goes by
std::string_view saidOf(const Slips& slips) {
  if (slips.unknown.empty()) return "It leaves out {1} and names {2} more than once.";
  if (slips.twice.empty()) return "It leaves out {1}, and no cylinder goes by {3}.";
  return "It leaves out {1}, names {2} more than once, and no cylinder goes by {3}.";
}

/// "1-3-4-2" for an order typed as 1342 that names each cylinder once; else empty.
std::string digitsApart(Reader& read, std::span<const int> numbers) {
  const std::string_view text = read.entry(in::firingOrder)->text;
  std::vector<int> digits;
  std::string apart;
  for (const char one : text) {
    if (one < '0' || one > '9') return {};
    digits.push_back(one - '0');
    if (!apart.empty()) apart += '-';
    apart += one;
  }
  const bool eachOnce = std::ranges::is_permutation(digits, numbers);
  return eachOnce && digits.size() > 1 ? apart : std::string();
}

const Rule everyCylinderOnce{
    .key = "firing_order_names_each_once",
    .source = "definition",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firingOrder)) return;
      const std::vector<int> numbers = numbersOf(read);
      const std::string apart = digitsApart(read, numbers);
      if (!apart.empty()) {
        Finding& finding = speak.say(Weight::Forbids, {kNotEachOnce, {}}, {&in::firingOrder});
        finding.hint = {"Write {1}.", {apart}};
        finding.mends.push_back(
            {.says = {"Fire {1}", {apart}}, .entries = {{&in::firingOrder, apart}}});
        return;
      }
      if (namesEachOnce(read, numbers)) return;
      Finding& finding = speak.say(Weight::Forbids, {kNotEachOnce, {}}, {&in::firingOrder});
      const auto typed = static_cast<int>(read.entry(in::firingOrder)->values.size());
      if (typed > read.cylinders()) {
        finding.hint = {"It has {1} numbers for {2} cylinders.",
                        {number(typed), number(read.cylinders())}};
      } else {
        const Slips slips = slipsOf(numbersNamed(read), numbers);
        finding.hint = {
            saidOf(slips),
            {typedNumbers(slips.leftOut), typedNumbers(slips.twice), typedNumbers(slips.unknown)}};
      }
      if (read.knownInAll(out::topAfterFirst)) offerOrders(finding, crankOf(read));
    }};

/// The throws and axes counted otherwise, and what would be typed for that.
struct Counted {
  std::string_view says;
  std::vector<double> tops;  ///< [rad]
  std::vector<std::pair<const Input*, std::string>> entries;
};

/// With the axes turned the other way, and with the sense of rotation reversed.
std::vector<Counted> countedOtherwise(Reader& read, const Crank& crank) {
  std::vector<double> throws;
  std::vector<double> axes;
  Counted axesOnly{.says = "Turn the cylinder axes the other way", .tops = {}, .entries = {}};
  Counted all{
      .says = "Count throws and axes in the other sense of rotation", .tops = {}, .entries = {}};
  for (int i = 0; i < read.cylinders(); ++i) {
    const double top = crank.tops[static_cast<std::size_t>(i)];
    const double axis = crank.axes[static_cast<std::size_t>(i)];
    const double ahead = read.at(i)(in::throwAhead);
    axesOnly.tops.push_back(within(top - 2.0 * (axis - crank.axes.front()), kTurn));
    all.tops.push_back(within(top - 2.0 * (axis - ahead), kTurn));
    axes.push_back(0.0 - axis);
    throws.push_back(0.0 - ahead);
  }
  axesOnly.entries = {{&in::cylinderAxis, typed(in::cylinderAxis, axes)}};
  all.entries = {{&in::throwAhead, typed(in::throwAhead, throws)}};
  const bool inLine = std::ranges::all_of(axes, [](double axis) { return axis == 0.0; });
  if (inLine) {
    all.says = "Count the throws in the other sense of rotation";
    return {std::move(all)};
  }
  all.entries.push_back(axesOnly.entries.front());
  return {std::move(axesOnly), std::move(all)};
}

/// Of the cylinders as they are to fire the first that cannot, as a sentence.
describe::Sentence whoCannot(const std::vector<int>& cylinders, const Crank& crank) {
  const bool four = crank.strokes == Strokes::Four;
  const auto at = [](int cylinder) { return static_cast<std::size_t>(cylinder); };
  double last = 0.0;
  for (const int cylinder : cylinders) {
    const double top = within(crank.tops[at(cylinder)] - crank.tops[at(cylinders.front())], kTurn);
    const double next = top < last - kSame ? top + kTurn : top;
    if (next < last - kSame || (!four && next >= kTurn)) {
      return {four ? "Cylinder {1} is at its top {2} and {3} after the first to fire; it cannot "
                     "fire after {4}."
                   : "Cylinder {1} is at its top {2} after the first to fire; it cannot fire after "
                     "{4}.",
              {number(crank.numbers[at(cylinder)]), angle(top), angle(top + kTurn), angle(last)}};
    }
    last = next;
  }
  return {};
}

/// Of two that a + joins and that have their tops apart the first, as a sentence.
describe::Sentence whoIsApart(const std::vector<int>& cylinders, const std::vector<bool>& together,
                              const Crank& crank) {
  const auto at = [&](std::size_t place) { return static_cast<std::size_t>(cylinders[place]); };
  for (std::size_t i = 1; i < std::min(cylinders.size(), together.size()); ++i) {
    const double apart = std::abs(std::remainder(crank.tops[at(i)] - crank.tops[at(i - 1)], kTurn));
    if (!together[i] || apart < kSame) continue;
    return {"A + says that two fire together: cylinders {1} and {2} are at their tops {3} apart.",
            {number(crank.numbers[at(i - 1)]), number(crank.numbers[at(i)]), angle(apart)}};
  }
  return {"A + says that two fire together: these cannot all do so in this order.", {}};
}

const Rule orderCanBe{
    .key = "firing_order_fits_the_throws",
    .source = kEnumerated,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firingOrder)) return;
      const Crank crank = crankOf(read);
      const Sought sought = soughtOrder(read, crank);
      if (sought.order || sought.whyNot != kThrowsCannot) return;
      const std::vector<int> cylinders = placesNamed(read, crank.numbers);
      const std::vector<bool> together = joinedInOrder(read);
      Finding& finding =
          speak.say(Weight::Forbids, {kThrowsCannot, {}}, {&in::firingOrder, &in::throwAhead});
      const bool oneByOne = orderAs(cylinders, crank.tops, crank.strokes).has_value();
      finding.hint =
          oneByOne ? whoIsApart(cylinders, together, crank) : whoCannot(cylinders, crank);
      for (Counted& counted : countedOtherwise(read, crank)) {
        const auto order = orderAs(cylinders, counted.tops, crank.strokes, together);
        if (!order) continue;
        describe::Mend mend{.says = {counted.says, {}}, .entries = std::move(counted.entries)};
        if (order->leastGap(crank.strokes) == 0.0) {  // two together: worth saying
          mend.says = {"{1}: fires {2}", {std::string(counted.says), words(*order, crank.numbers)}};
        }
        finding.mends.push_back(std::move(mend));
      }
      if (!finding.mends.empty()) {
        finding.hint = {
            "They can where axes, or throws and axes, are counted the other way round: from which "
            "end, and in which sense, were they taken?",
            {}};
      }
      if (oneByOne) {
        std::string order = typedNumbers(numbersNamed(read));
        finding.mends.push_back({.says = {"Let each fire by itself, {1}", {order}},
                                 .entries = {{&in::firingOrder, order}}});
      }
      offerOrders(finding, crank);
    }};

const Rule turnsCanBe{
    .key = "turns_later_fit", .source = kEnumerated, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firesLater)) return;
      const Crank crank = crankOf(read);
      const Sought sought = soughtOrder(read, crank);
      if (sought.order || sought.whyNot != kTurnsCannot) return;
      Finding& finding =
          speak.say(Weight::Forbids, {kTurnsCannot, {}}, {&in::firesLater, &in::firingOrder});
      finding.hint = {crank.strokes == Strokes::Two
                          ? "A two-stroke fires at every top."
                          : "The cylinder that fires first has 0, and the others must then fire in "
                            "the order entered.",
                      {}};
      finding.mends.push_back(
          {.says = {"Leave it empty", {}}, .entries = {{&in::firesLater, std::string()}}});
      if (crank.strokes == Strokes::Four) offerOrders(finding, crank);
    }};

const Rule firesTogether{
    .key = "fires_together",
    .source = "definition: pistons at their tops in the same stroke fire together",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firingOrder)) return;
      const Crank crank = crankOf(read);
      const Sought sought = soughtOrder(read, crank);
      if (!sought.order || sought.order->leastGap(crank.strokes) >= kSame) return;
      const std::string order = words(*sought.order, crank.numbers);
      if (std::ranges::count(read.entry(in::firingOrder)->text, '+') ==
          std::ranges::count(order, '+')) {
        return;
      }
      Finding& finding = speak.say(
          Weight::Remarks, {"Two or more fire together here: {1}.", {order}}, {&in::firingOrder});
      finding.mends.push_back(
          {.says = {"Write it so, {1}", {order}}, .entries = {{&in::firingOrder, order}}});
    }};

const Rule moreEven{
    .key = "far_more_even_order", .source = kEnumerated, .judge = [](Reader& read, Speaker& speak) {
      constexpr double kFar = 1.2;
      if (!read.given(in::firingOrder) && !read.given(in::firesLater)) return;
      const Crank crank = crankOf(read);
      const Sought sought = soughtOrder(read, crank);
      if (!sought.order) return;
      const Order best = mostEven(crank);
      const double most = sought.order->largestGap(crank.strokes);
      if (most <= kFar * best.largestGap(crank.strokes)) return;
      const std::string order = words(best, crank.numbers);
      const std::string intervals = inDegrees(best.intervals(crank.strokes));
      Finding& finding =
          speak.say(Weight::Remarks,
                    {"Firing {1} leaves {2} between two; these throws can fire more evenly, {3}: "
                     "intervals {4}.",
                     {words(*sought.order, crank.numbers), angle(most), order, intervals}},
                    {&in::firingOrder, &in::firesLater});
      finding.mends.push_back(
          {.says = {"Fire {1}, intervals {2}", {order, intervals}},
           .entries = {{&in::firingOrder, order}, {&in::firesLater, std::string()}}});
    }};

/// One angle that stands for all cylinders turns the whole engine, which nobody means.
void askOneForAll(Reader& read, Speaker& speak, const Input& input,
                  const std::vector<std::vector<double>>& meant) {
  const describe::Entry& entry = *read.entry(input);
  if (entry.values.size() != 1 || entry.values.front() == 0.0) return;
  if (read(in::cylinderCount) < 2.0) return;
  Finding& finding = speak.say(Weight::Objects,
                               {"{1}: {2} alone stands for all {3} cylinders and turns them alike.",
                                {&input, angle(entry.values.front()), number(read.cylinders())}},
                               {&input});
  for (const std::vector<double>& angles : meant) {
    std::vector<Quantity> told;
    told.reserve(angles.size());
    for (const double each : angles) told.push_back(angle(each));
    if (finding.mends.empty()) finding.hint = {"Are {1} meant?", {told}};
    finding.mends.push_back(
        {.says = {"Take {1}", {std::move(told)}}, .entries = {{&input, typed(input, angles)}}});
  }
}

/// As many angles as there are cylinders, each by what is said of its place.
template <typename Angle>
std::vector<double> eachOf(Reader& read, const Angle& angleAt) {
  std::vector<double> angles;
  angles.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) angles.push_back(angleAt(i));
  return angles;
}

const Rule oneThrowForAll{
    .key = "one_throw_for_all", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead)) return;
      const double step = read(in::throwAhead);
      std::vector<std::vector<double>> meant;
      // Evenly round the crank, or a twin.
      const bool round = std::abs(std::remainder(read.cylinders() * step, kTurn)) < 0.1 * kDegree;
      if (round || read.cylinders() == 2) {
        meant.push_back(eachOf(read, [&](int i) { return within(i * step, kTurn); }));
      }
      askOneForAll(read, speak, in::throwAhead, meant);
    }};

const Rule firstThrowTurned{
    .key = "first_throw_not_zero",
    .source = "definition: throws are counted from the first",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead) || read.entry(in::throwAhead)->values.size() < 2) return;
      const double first = read.at(0)(in::throwAhead);
      if (first == 0.0) return;
      const std::vector<double> counted =
          eachOf(read, [&](int i) { return read.at(i)(in::throwAhead) - first; });
      std::vector<Quantity> told;
      told.reserve(counted.size());
      for (const double each : counted) told.push_back(angle(each));
      Finding& finding = speak.say(Weight::Remarks,
                                   {"The first throw is entered at {1}: throws are counted from "
                                    "it, and the star then stands "
                                    "turned against the tops.",
                                    {angle(first)}},
                                   {&in::throwAhead});
      finding.mends.push_back({.says = {"Count from the first, {1}", {std::move(told)}},
                               .entries = {{&in::throwAhead, typed(in::throwAhead, counted)}}});
    }};

const Rule oneAxisForAll{
    .key = "one_axis_for_all", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::cylinderAxis)) return;
      const double bank = read(in::cylinderAxis);
      const int n = read.cylinders();
      std::vector<std::vector<double>> meant;
      if (n % 2 == 0) meant.push_back(eachOf(read, [&](int i) { return i % 2 * bank; }));
      if (n % 2 == 0 && n > 2) {
        meant.push_back(eachOf(read, [&](int i) { return i < n / 2 ? 0.0 : bank; }));
      }
      askOneForAll(read, speak, in::cylinderAxis, meant);
    }};

const Rule allTogether{
    .key = "all_pistons_together", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead)) return;
      if (read.entry(in::throwAhead)->values.size() == 1 && read(in::throwAhead) != 0.0) return;
      const Crank crank = crankOf(read);
      if (crank.tops.size() < 3) return;
      const bool together = std::ranges::all_of(
          crank.tops, [&](double top) { return model::sameDirection(top, crank.tops.front()); });
      if (!together) return;
      speak.say(Weight::Objects,
                {"All {1} pistons are at their tops together: are the throws entered?",
                 {number(static_cast<int>(crank.tops.size()))}},
                {&in::throwAhead});
    }};

const Rule axisOfAV{.key = "cylinder_axis_small",
                    .source = kPractice,
                    .per = describe::Per::Cylinder,
                    .judge = [](Reader& read, Speaker& speak) {
                      if (!read.given(in::cylinderAxis)) return;
                      const double axis = std::abs(read(in::cylinderAxis));
                      if (axis == 0.0 || axis > 2.0 * kDegree) return;
                      speak.say(Weight::Objects,
                                {"A cylinder axis at {1}: is it meant as a share of something?",
                                 {Quantity{Kind::Angle, axis, 2}}},
                                {&in::cylinderAxis});
                    }};

/// Cylinders of one place along the crank, one in each of two banks.
struct Pair {
  int one;
  int other;
};

/// As they are entered one beside the other, or bank after bank; none where there are not two
/// banks.
std::vector<Pair> pairsOf(const Crank& crank) {
  const int n = static_cast<int>(crank.axes.size());
  const auto axis = [&](int cylinder) { return crank.axes[static_cast<std::size_t>(cylinder)]; };
  const auto same = [&](int one, int other) {
    return model::sameDirection(axis(one), axis(other));
  };
  const auto pairedBy = [&](int step, int first, int next) {
    std::vector<Pair> pairs;
    for (int i = 0; i < n / 2; ++i) {
      const Pair pair{first + i * next, first + i * next + step};
      if (!same(pair.one, 0) || !same(pair.other, step)) return std::vector<Pair>{};
      pairs.push_back(pair);
    }
    return pairs;
  };
  if (n < 2 || n % 2 != 0) return {};
  if (!same(0, 1)) return pairedBy(1, 0, 2);
  return n > 2 && !same(0, n / 2) ? pairedBy(n / 2, 0, 1) : std::vector<Pair>{};
}

/// Backward-turning primary part of two cylinders, of m r ω²: ½|Σ exp(−j(ψ − 2β))|.
/// @source Den Hartog, Mechanical Vibrations, ch. 5, from memory
double backwardOf(double bank, double pinAhead) {
  return std::abs(std::cos(0.5 * pinAhead - bank));
}

/// The same offsets the other way; an order of firing that is not possible then goes.
Mend turnedRound(Reader& read, Crank crank, const std::vector<Pair>& pairs,
                 std::vector<double> throws) {
  for (const Pair& pair : pairs) {
    const auto other = static_cast<std::size_t>(pair.other);
    const double turned = 2.0 * throws[static_cast<std::size_t>(pair.one)] - throws[other];
    crank.tops[other] -= turned - throws[other];
    throws[other] = turned;
  }
  Mend mend{.says = {"Turn the offset round", {}},
            .entries = {{&in::throwAhead, typed(in::throwAhead, throws)}}};
  const Sought sought = soughtOrder(read, crank);
  if (!sought.order) {
    mend.entries.emplace_back(&in::firingOrder, std::string());
    mend.entries.emplace_back(&in::firesLater, std::string());
  }
  return mend;
}

const Rule pinOffsetSense{
    .key = "pin_offset_wrong_sense",
    .source = "Den Hartog, Mechanical Vibrations, ch. 5, from memory",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead) || !read.given(in::cylinderAxis)) return;
      const Crank crank = crankOf(read);
      const std::vector<Pair> pairs = pairsOf(crank);
      std::vector<double> throws;
      throws.reserve(crank.tops.size());
      for (int i = 0; i < read.cylinders(); ++i) throws.push_back(read.at(i)(in::throwAhead));
      const auto at = [](int cylinder) { return static_cast<std::size_t>(cylinder); };
      constexpr double kHundredth = 0.005;
      for (const Pair& pair : pairs) {
        const double ahead = std::remainder(throws[at(pair.other)] - throws[at(pair.one)], kTurn);
        const double bank = crank.axes[at(pair.other)] - crank.axes[at(pair.one)];
        const double plain = backwardOf(bank, 0.0);
        const double here = backwardOf(bank, ahead);
        const double flipped = backwardOf(bank, -ahead);
        if (here < plain + kHundredth || flipped > here - kHundredth) continue;
        Finding& finding = speak.say(
            Weight::Objects,
            {ahead > 0.0
                 ? "The pin of cylinder {1} is {2} ahead of that of cylinder {3}: what turns "
                   "backwards of the primary force of the two grows from {4}, on one pin, to {5} "
                   "of "
                   "m·r·ω²; as much behind it would be {6}."
                 : "The pin of cylinder {1} is {2} behind that of cylinder {3}: what turns "
                   "backwards of the primary force of the two grows from {4}, on one pin, to {5} "
                   "of "
                   "m·r·ω²; as much ahead it would be {6}.",
             {number(crank.numbers[at(pair.other)]), angle(std::abs(ahead)),
              number(crank.numbers[at(pair.one)]), Quantity{Kind::Ratio, plain, 2},
              Quantity{Kind::Ratio, here, 2}, Quantity{Kind::Ratio, flipped, 2}}},
            {&in::throwAhead, &in::cylinderAxis});
        finding.mends.push_back(turnedRound(read, crank, pairs, std::move(throws)));
        return;
      }
    }};

const Rule onePlace{
    .key = "cylinders_at_one_place",
    .source = "plane geometry: cylinders of one bank stand no closer than their bore",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.either(in::cylinderPitch, in::cylinderPosition)) return;
      const Crank crank = crankOf(read);
      const auto boreAt = [&](int i) {
        return read.at(i).given(in::bore) ? read.at(i)(in::bore) : kTouch;
      };
      for (std::size_t i = 1; i < crank.places.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
          const double apart = std::abs(crank.places[i] - crank.places[k]);
          const double least = 0.5 * (boreAt(static_cast<int>(i)) + boreAt(static_cast<int>(k)));
          if (apart >= least) continue;
          if (std::abs(std::remainder(crank.axes[i] - crank.axes[k], kTurn)) > kDegree) continue;
          Finding& finding = speak.say(
              Weight::Forbids,
              {apart < kTouch ? "Cylinders {1} and {2} stand at one place along the crank with "
                                "their axes alike."
                              : "Cylinders {1} and {2} stand {3} apart along the crank with their "
                                "axes alike, closer than their bore.",
               {number(crank.numbers[k]), number(crank.numbers[i]), Quantity{Kind::Length, apart}}},
              {&in::cylinderPosition, &in::cylinderAxis});
          finding.hint = {"Is one of them of another bank, or a position mistyped?", {}};
          return;
        }
      }
    }};

const Rule firstAtTheFarEnd{
    .key = "positions_run_backwards",
    .source = "definition: positions are counted from the first cylinder on",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.either(in::cylinderPitch, in::cylinderPosition)) return;
      const std::vector<double> places =
          eachOf(read, [&](int i) { return read.at(i)(in::cylinderPosition); });
      const auto [least, most] = std::ranges::minmax(places);
      if (places.front() <= 0.5 * (least + most) + kTouch) return;
      std::vector<double> counted;
      counted.reserve(places.size());
      for (const double place : places) counted.push_back(places.front() - place);
      const std::string text = typed(in::cylinderPosition, counted);
      Finding& finding = speak.say(Weight::Objects,
                                   {"By these positions cylinder {1} stands at the far end of the "
                                    "row: they are counted from "
                                    "the first cylinder on, away from the end at which it stands.",
                                    {number(static_cast<int>(read.at(0)(in::cylinderNumber)))}},
                                   {&in::cylinderPosition, &in::firstStandsAt});
      finding.mends.push_back(
          {.says = {"Count them from cylinder {1} on, {2}",
                    {number(static_cast<int>(read.at(0)(in::cylinderNumber))), text}},
           .entries = {{&in::cylinderPosition, text}}});
    }};

const Rule masterAndSlaves{
    .key = "rods_share_a_pin", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead) || !read.given(in::cylinderAxis)) return;
      const Crank crank = crankOf(read);
      for (std::size_t i = 0; i < crank.axes.size(); ++i) {
        // As many axes as there are on this throw, each counted once.
        std::vector<double> axes;
        const double ahead = read.at(static_cast<int>(i))(in::throwAhead);
        for (std::size_t k = 0; k < crank.axes.size(); ++k) {
          if (!model::sameDirection(read.at(static_cast<int>(k))(in::throwAhead), ahead)) continue;
          const bool counted = std::ranges::any_of(
              axes, [&](double axis) { return model::sameDirection(axis, crank.axes[k]); });
          if (!counted) axes.push_back(crank.axes[k]);
        }
        if (axes.size() < 3) continue;
        speak.say(
            Weight::Remarks,
            {"{1} rods stand on one throw: they are computed as rods that all turn on the pin "
             "itself. Slave rods on a master rod are not computed: their strokes and tops lie "
             "elsewhere.",
             {number(static_cast<int>(axes.size()))}},
            {&in::throwAhead, &in::cylinderAxis});
        return;
      }
    }};

/// [rad] Throws and axes, each from that of the first; those that cannot be read are left out.
std::vector<double> anglesFromFirst(Reader& read) {
  std::vector<double> angles;
  for (const Input* input : {&in::throwAhead, &in::cylinderAxis}) {
    Reader first = read.at(0);
    for (int i = 0; first.stands(*input) && i < read.cylinders(); ++i) {
      Reader here = read.at(i);
      if (here.stands(*input)) angles.push_back(here(*input) - first(*input));
    }
  }
  return angles;
}

/// The throws are known, and another crank in the mirror: some angle is neither 0 nor 180°.
bool mirrorsToAnother(Reader& read) {
  if (read(in::cylinderCount) < 2.0 || !read.given(in::throwAhead)) return false;
  return std::ranges::any_of(anglesFromFirst(read), [](double angle) {
    return std::abs(std::remainder(angle, kTurn / 2.0)) > 0.1 * kDegree;
  });
}

/// ", as seen from the output end"
std::string asSeen(Reader& read) {
  if (!read.given(in::viewedFrom)) return ", seen from an end that nobody named";
  return ", as seen from the " + std::string(shortEnd(read(in::viewedFrom)));
}

/// One mend for each answer to a choice.
void offerAnswers(Finding& finding, const Input& input, std::string_view says) {
  for (const describe::Choice& choice : input.choices) {
    finding.mends.push_back({.says = {says, {std::string(choice.label)}},
                             .entries = {{&input, std::string(choice.label)}}});
  }
}

const Rule rotationUnsaid{.key = "rotation_not_said",
                          .source = "plane geometry: turning the other way it is the mirror image",
                          .judge = [](Reader& read, Speaker& speak) {
                            if (read.given(in::rotation) || !mirrorsToAnother(read)) return;
                            Finding& finding =
                                speak.say(Weight::Objects,
                                          {"Nobody said which way the crank turns: it is drawn "
                                           "clockwise{1}, and is another crank if "
                                           "it turns the other way.",
                                           {asSeen(read)}},
                                          {&in::rotation, &in::throwAhead});
                            offerAnswers(finding, in::rotation, "It turns {1}");
                          }};

const Rule endUnsaid{
    .key = "viewed_end_not_said",
    .source = "plane geometry: from the other end it is the mirror image",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.given(in::viewedFrom) || !mirrorsToAnother(read)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"Nobody said from which end the crank is seen: from the other end it would be "
                     "the mirror image of what is drawn.",
                     {}},
                    {&in::viewedFrom, &in::throwAhead});
      offerAnswers(finding, in::viewedFrom, "Seen from the {1}");
    }};

const Rule rotationTurned{
    .key = "rotation_against_donor",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (!turnsAgainstDonor(read)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"It turns the other way round than the donor: throws copied from there are a "
                     "mirror image, and starter, oil pump and cams want the donor’s sense.",
                     {}},
                    {&in::rotation, &in::viewedFrom});
      if (model::severalBanks(read)) {
        finding.hint = {
            "So are the cylinder axes: at the angles of the donor each bank stands on the other "
            "side of the case.",
            {}};
      }
    }};

/// [rad] Throws ahead of that of the cylinder which the engine has first, of each cylinder its own
/// and that of the donor's cylinder of the same number; none where the numbers are not the same.
struct Beside {
  std::vector<double> own;
  std::vector<double> donors;
};

Beside throwsBeside(Reader& read) {
  Beside throws;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    std::optional<Reader> there = besideOf(here);
    if (!there) return {};
    throws.own.push_back(here(in::throwAhead));
    throws.donors.push_back(there->donor(in::throwAhead));
  }
  for (auto* angles : {&throws.own, &throws.donors}) {
    const double first = angles->front();
    for (double& angle : *angles) angle -= first;
  }
  return throws;
}

const Rule mirrored{
    .key = "crank_is_mirrored",
    .source = "plane geometry: the throws of a mirrored crank are ahead by the negative angles",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.donorGiven(in::throwAhead) || !read.given(in::throwAhead)) return;
      const Beside throws = throwsBeside(read);
      bool same = true;
      bool mirror = !throws.own.empty();
      for (std::size_t i = 0; i < throws.own.size(); ++i) {
        const double own = throws.own[i];
        const double donors = throws.donors[i];
        same = same && std::abs(std::remainder(own - donors, kTurn)) < 0.5 * kDegree;
        mirror = mirror && std::abs(std::remainder(own + donors, kTurn)) < 0.5 * kDegree;
      }
      if (same || !mirror) return;
      Finding& finding = speak.say(
          Weight::Objects,
          {"The throws are those of the donor in mirror image: were they taken from the other end "
           "of the crank? Cams and ignition of the donor do not fit such a crank.",
           {}},
          {&in::throwAhead, &in::viewedFrom, &in::rotation});
      finding.mends.push_back(
          {.says = {"Take the donor’s throws", {}},
           .entries = {{&in::throwAhead, typed(in::throwAhead, throws.donors)}}});
    }};

/// Followers at β in the sense of the crank, a camshaft at half its speed: by plane geometry its
/// lobes come at β − α_f / 2 where it turns with the crank, at −β − α_f / 2 where against it.
constexpr std::string_view kOneCamshaft =
    "Where followers stand turned about one camshaft as their banks are, the lobes of a bank "
    "turned by {1} come as much further ahead on a camshaft that turns with the crank, and as much "
    "further back on one that turns against it; measure how the followers stand.";
constexpr std::string_view kOneCamshaftBack =
    "Where followers stand turned about one camshaft as their banks are, the lobes of a bank "
    "turned back by {1} come as much further back on a camshaft that turns with the crank, and as "
    "much further ahead on one that turns against it; measure how the followers stand.";

const Rule lobesOfBanks{
    .key = "lobes_are_of_each_bank",
    .source = "plane geometry: a follower turned by β meets its lobe as much later or earlier",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::cylinderAxis) || model::twoStroke(read)) return;
      const Crank crank = crankOf(read);
      double most = 0.0;
      for (const double axis : crank.axes) {
        const double turned = std::remainder(axis - crank.axes.front(), kTurn);
        if (std::abs(turned) > std::abs(most) + kSame) most = turned;
      }
      if (std::abs(most) < 0.1 * kDegree || !read.at(0).known(out::lobeBehindFirst)) return;
      Finding& finding = speak.say(
          Weight::Remarks,
          {"The lobe angles hold for a camshaft of each bank’s own, seen from its bank. On one "
           "camshaft in the case they do not: nothing is to be ground to them there.",
           {}},
          {&in::cylinderAxis});
      finding.hint = {most > 0.0 ? kOneCamshaft : kOneCamshaftBack, {angle(std::abs(most))}};
    }};

/// The banks stand to each other as the donor’s do.
bool axesAreTheDonors(Reader& read) {
  Reader first = read.at(0);
  std::optional<Reader> firstOfDonor = besideOf(first);
  for (int i = 0; firstOfDonor && i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    std::optional<Reader> there = besideOf(here);
    if (!there) return false;
    const double own = here(in::cylinderAxis) - first(in::cylinderAxis);
    const double donors = there->donor(in::cylinderAxis) - firstOfDonor->donor(in::cylinderAxis);
    if (!model::sameDirection(own, donors)) return false;
  }
  return true;
}

const Rule camshaftToMake{
    .key = "lobes_move",
    .source = "the camshaft turns at half the speed of the crank",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      double most = 0.0;
      int furthest = -1;
      bool alike = true;
      std::vector<int> moving;
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        if (!here.known(out::lobeMoved)) return;
        const double moved = here(out::lobeMoved);
        if (std::abs(moved) < 0.5 * kDegree) continue;
        alike = alike && (moving.empty() || std::abs(moved - most) < 0.05 * kDegree);
        moving.push_back(static_cast<int>(here(in::cylinderNumber)));
        if (std::abs(moved) <= std::abs(most) + kSame) continue;
        most = moved;
        furthest = moving.back();
      }
      if (moving.empty()) return;
      std::string_view says =
          "The donor’s camshaft does not fit this crank: the lobes of {1} must "
          "come {2} later on it, and ignition and trigger with them.";
      if (alike && most > 0.0) {
        says =
            "The donor’s camshaft does not fit this crank: the lobes of {1} must come {2} "
            "earlier on it, and ignition and trigger with them.";
      } else if (!alike) {
        says = most > 0.0 ? "The donor’s camshaft does not fit this crank: the lobes of {1} must "
                            "move on it, most of all those of cylinder {3} by {2} earlier, and "
                            "ignition and trigger with them."
                          : "The donor’s camshaft does not fit this crank: the lobes of {1} must "
                            "move on it, most of all those of cylinder {3} by {2} later, and "
                            "ignition and trigger with them.";
      }
      Finding& finding = speak.say(
          Weight::Objects,
          {says, {describe::cylindersInOne(moving), angle(std::abs(most)), number(furthest)}},
          {&in::throwAhead, &in::firingOrder, &in::firesLater});
      if (axesAreTheDonors(read)) return;
      finding.hint = {
          "That holds for a camshaft of each bank’s own. The axes are not the donor’s: one "
          "camshaft in the case moves by another angle.",
          {}};
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {
      &numbersDiffer,  &everyCylinderOnce, &orderCanBe,       &turnsCanBe,       &firesTogether,
      &moreEven,       &allTogether,       &oneThrowForAll,   &firstThrowTurned, &oneAxisForAll,
      &axisOfAV,       &onePlace,          &firstAtTheFarEnd, &pinOffsetSense,   &masterAndSlaves,
      &rotationUnsaid, &endUnsaid,         &rotationTurned,   &mirrored,         &lobesOfBanks,
      &camshaftToMake};
  return kRules;
}

}  // namespace strokewright::firing
