#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "core/describe/evaluation.h"
#include "core/firing/collectors.h"
#include "core/firing/layouts.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::kAbsent;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

constexpr Column kOrders[] = {
    {.key = "order", .name = "Firing order", .words = true},
    {.key = "in_use", .name = "In use", .words = true},
    {.key = "intervals", .name = "Intervals", .words = true},
    {.key = "largest_rad", .name = "Largest", .kind = Kind::Angle, .decimals = 1},
    {.key = "least_rad", .name = "Least", .kind = Kind::Angle, .decimals = 1},
    {.key = "neighbours", .name = "Neighbours in sequence", .kind = Kind::Count},
    {.key = "later", .name = "A turn later, where need be", .words = true}};

constexpr Column kTops[] = {
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "throw_rad", .name = "Throw ahead", .symbol = "ψ", .kind = Kind::Angle, .decimals = 1},
    {.key = "axis_rad", .name = "Axis", .symbol = "β", .kind = Kind::Angle, .decimals = 1},
    {.key = "top_rad",
     .name = "Top after first",
     .symbol = "α",
     .kind = Kind::Angle,
     .decimals = 1},
    {.key = "fires_rad", .name = "Fires", .symbol = "α_f", .kind = Kind::Angle, .decimals = 1},
    {.key = "lobe_rad", .name = "Lobe on the camshaft", .kind = Kind::Angle, .decimals = 1}};

constexpr Column kTable[] = {
    {.key = "place", .name = "Fires as", .kind = Kind::Count},
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "at_rad", .name = "At", .symbol = "α_f", .kind = Kind::Angle, .decimals = 1},
    {.key = "then_rad", .name = "Next after", .kind = Kind::Angle, .decimals = 1},
    {.key = "lobe_rad", .name = "Lobe on the camshaft", .kind = Kind::Angle, .decimals = 1}};

constexpr Column kTriggers[] = {
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "crank_rad", .name = "On the crank", .kind = Kind::Angle, .decimals = 1},
    {.key = "cam_rad", .name = "At half speed", .kind = Kind::Angle, .decimals = 1},
    {.key = "shares", .name = "May share a coil with", .words = true}};

constexpr Column kCollectors[] = {
    {.key = "collectors", .name = "Collectors", .kind = Kind::Count},
    {.key = "cylinders", .name = "Cylinders in each", .words = true},
    {.key = "intervals", .name = "Intervals in each", .words = true},
    {.key = "largest_rad", .name = "Largest", .kind = Kind::Angle, .decimals = 1},
    {.key = "least_rad", .name = "Least", .kind = Kind::Angle, .decimals = 1},
    {.key = "across", .name = "Across banks", .kind = Kind::Count}};

constexpr Column kRhythm[] = {
    {.key = "order", .name = "Order", .symbol = "q", .kind = Kind::Ratio, .decimals = 1},
    {.key = "content", .name = "Content", .symbol = "A_q", .kind = Kind::Ratio, .decimals = 3},
    {.key = "donors", .name = "Donor’s", .symbol = "A_q", .kind = Kind::Ratio, .decimals = 3},
    {.key = "pulses_a_minute", .name = "A minute at the speed wanted", .kind = Kind::Count}};

/// "1+4", sorted.
std::string numbersOf(const std::vector<int>& group, const firing::Crank& crank) {
  std::vector<int> numbers;
  numbers.reserve(group.size());
  for (const int cylinder : group) {
    numbers.push_back(crank.numbers[static_cast<std::size_t>(cylinder)]);
  }
  std::ranges::sort(numbers);
  std::string text;
  for (const int number : numbers) {
    if (!text.empty()) text += "+";
    text += std::to_string(number);
  }
  return text;
}

/// Those that fire with it, or a turn before or after: one coil sparks in both.
std::string partnersOf(std::size_t place, const firing::Order& order, const firing::Crank& crank) {
  std::string text;
  for (std::size_t i = 0; i < order.at.size(); ++i) {
    if (i == place || firing::within(order.at[i] - order.at[place], kTurn) != 0.0) continue;
    if (!text.empty()) text += ", ";
    text += std::to_string(crank.numbers[static_cast<std::size_t>(order.cylinders[i])]);
  }
  return text;
}

/// The same firings, from whichever cylinder they are counted.
bool same(const firing::Order& one, const firing::Order& other, firing::Strokes strokes) {
  const auto firesAt = [&](const firing::Order& order) {
    std::vector<double> at(order.at.size());
    for (std::size_t i = 0; i < at.size(); ++i) {
      at[static_cast<std::size_t>(order.cylinders[i])] = order.at[i];
    }
    const double first = at.front();
    for (double& each : at) each = firing::within(each - first, firing::cycleOf(strokes));
    return at;
  };
  return std::ranges::equal(firesAt(one), firesAt(other), [](double a, double b) {
    return firing::thousandths(a) == firing::thousandths(b);
  });
}

}  // namespace

const Table crankTops{
    .key = "crank_tops",
    .name = "Throws, tops",
    .per = Per::Engine,
    .columns = kTops,
    .formula = "α = β − ψ + θ_TDC, less that of the first; lobe −α_f / 2 or a turn more",
    .source = "plane geometry",
    .valid =
        "throws and tops counted from the cylinder entered first, firings and lobes from the one "
        "that fires first; lobes of a V for a camshaft of each bank, each seen from its own bank",
    .fill = [](Reader& read, Rows& rows) {
      read(in::cylinderCount);  // waited for: without it there is one cylinder
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        const double top = firing::asRead(here(topAfterFirst), kTurn);
        const bool four = !model::twoStroke(here);
        const bool fires = here.known(firesAfterFirst);
        rows.add(
            {here(in::cylinderNumber), firing::aheadOf(here), here(in::cylinderAxis), top,
             fires ? firing::asRead(here(firesAfterFirst), four ? 2.0 * kTurn : kTurn) : kAbsent,
             fires && four ? firing::asRead(here(lobeBehindFirst), kTurn) : kAbsent});
      }
    }};

const Table firingOrders{
    .key = "firing_orders",
    .name = "Firing orders",
    .per = Per::Engine,
    .columns = kOrders,
    .formula =
        "a four-stroke fires each cylinder at its top or a turn later: 2^(n−1) ways; the most even "
        "first, of equals those with the fewest neighbours in sequence",
    .source = "enumeration; neighbours: common practice, no published source",
    .valid =
        "one firing of each cylinder in a cycle; intervals are rounded so that they add up; of "
        "more than 128 orders the 128 most even",
    .fill = [](Reader& read, Rows& rows) {
      const firing::Crank crank = firing::crankOf(read);
      const std::optional<firing::Order> used = firing::soughtOrder(read, crank).order;
      if (!read.complete()) return;
      const auto orders = firing::ordersOf(crank);
      for (std::size_t i = 0; i < std::min(firing::kMostOrders, orders.size()); ++i) {
        const firing::Order& order = orders[i];
        const bool inUse = used && same(order, *used, crank.strokes);
        rows.add({firing::words(order, crank.numbers), std::string(inUse ? "in use" : ""),
                  firing::inDegrees(order.intervals(crank.strokes)),
                  order.largestGap(crank.strokes), order.leastGap(crank.strokes),
                  static_cast<double>(firing::neighboursInSequence(order, crank.standing())),
                  firing::turnsLaterOf(orders, i, crank)});
      }
    }};

const Table firingTable{
    .key = "firing_table",
    .name = "When each cylinder fires",
    .per = Per::Engine,
    .columns = kTable,
    .formula = "α_f as the order has it; lobe −α_f / 2 or a turn more",
    .source = "plane geometry",
    .valid =
        "all counted from the cylinder that fires first; lobes of a V for a camshaft of each bank, "
        "each seen from its own bank",
    .fill = [](Reader& read, Rows& rows) {
      const firing::Crank crank = firing::crankOf(read);
      const firing::Order order = firing::orderOf(read, crank);
      const auto intervals = order.intervals(crank.strokes);
      const bool cam = crank.strokes == firing::Strokes::Four;
      for (std::size_t i = 0; i < order.at.size(); ++i) {
        const auto cylinder = static_cast<std::size_t>(order.cylinders[i]);
        rows.add({static_cast<double>(i + 1), static_cast<double>(crank.numbers[cylinder]),
                  firing::asRead(order.at[i], firing::cycleOf(crank.strokes)), intervals[i],
                  cam ? firing::asRead(firing::lobeAngle(order.at[i]), kTurn) : kAbsent});
      }
    }};

const Table triggers{
    .key = "triggers",
    .name = "When to ignite or inject, from the top of the first throw",
    .per = Per::Engine,
    .columns = kTriggers,
    .formula =
        "crank: firing after the top of the cylinder entered first, less whole turns; half speed: "
        "half of it; with spark ignition two that fire together or a turn apart may share a coil",
    .source = "plane geometry; sharing a coil: common practice, no published source",
    .valid =
        "at top dead centre, no advance in it: turn each mark earlier by the advance, at half "
        "speed by half of it",
    .fill = [](Reader& read, Rows& rows) {
      const firing::Crank crank = firing::crankOf(read);
      const firing::Order order = firing::orderOf(read, crank);
      const bool four = crank.strokes == firing::Strokes::Four;
      const bool coils = read.choice<model::Ignition>(in::ignition) == model::Ignition::Spark;
      const auto first = std::ranges::find(order.cylinders, 0) - order.cylinders.begin();
      const double from = order.at[static_cast<std::size_t>(first)];
      for (std::size_t i = 0; i < order.at.size(); ++i) {
        const auto cylinder = static_cast<std::size_t>(order.cylinders[i]);
        const double at = firing::within(order.at[i] - from, firing::cycleOf(crank.strokes));
        rows.add({static_cast<double>(crank.numbers[cylinder]), firing::asRead(at, kTurn),
                  four ? firing::asRead(0.5 * at, kTurn) : kAbsent,
                  coils ? partnersOf(i, order, crank) : std::string()});
      }
    }};

const Table collectors{
    .key = "collectors",
    .name = "Collectors",
    .per = Per::Engine,
    .columns = kCollectors,
    .formula =
        "every way to part the cylinders into groups of equal number; of each number of "
        "groups the most even ones",
    .source = "enumeration; that even pulses are wanted is common practice, no published source",
    .valid = "exhaust collectors, and inlets that are shared; lengths of the pipes are not judged",
    .fill = [](Reader& read, Rows& rows) {
      const firing::Crank crank = firing::crankOf(read);
      const firing::Order order = firing::orderOf(read, crank);
      if (!read.complete()) return;
      for (const firing::Collectors& way : firing::collectorsOf(order, crank.strokes, crank.axes)) {
        std::string cylinders;
        std::string intervals;
        for (const auto& group : way.groups) {
          if (!cylinders.empty()) cylinders += " · ";
          cylinders += numbersOf(group, crank);
          const std::string each =
              firing::inDegrees(firing::intervalsIn(group, order, crank.strokes));
          if (intervals == each) continue;
          if (!intervals.empty()) intervals += " · ";
          intervals += each;
        }
        rows.add({static_cast<double>(way.groups.size()), cylinders, intervals, way.largest,
                  way.least, static_cast<double>(way.across)});
      }
    }};

const Table rhythm{
    .key = "rhythm",
    .name = "Orders in the rhythm of the firings",
    .per = Per::Engine,
    .columns = kRhythm,
    .formula = "A_q = |Σ exp(i q α_f)| / n, q pulses a turn of the crank",
    .source = "Fourier coefficients of equal impulses",
    .valid = "the same pulse from every cylinder; pipes and silencer colour it further",
    .fill = [](Reader& read, Rows& rows) {
      constexpr int kMost = 16;
      const firing::Crank crank = firing::crankOf(read);
      const firing::Order order = firing::orderOf(read, crank);
      const bool compares = !read.isDonor() && read.donorKnown(largestFiringGap);
      const double step = crank.strokes == firing::Strokes::Four ? 0.5 : 1.0;
      firing::Order donors;
      if (compares) {
        for (int i = 0; i < static_cast<int>(read.donor(in::cylinderCount)); ++i) {
          donors.at.push_back(read.at(i).donor(firesAfterFirst));
        }
      }
      const double speed =
          read.given(in::wantedSpeed) ? firing::aMinute(read(in::wantedSpeed)) : kAbsent;
      for (int i = 1; i <= kMost; ++i) {
        const double q = i * step;
        rows.add({q, firing::content(order, q), compares ? firing::content(donors, q) : kAbsent,
                  q * speed});
      }
    }};

}  // namespace strokewright::out

namespace strokewright::firing {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::crankTops,   &out::firingOrders, &out::firingTable,
                                         &out::triggers,    &out::collectors,   &out::rhythm,
                                         &out::commonCranks};
  return kTables;
}

}  // namespace strokewright::firing
