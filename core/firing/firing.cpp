#include "core/firing/firing.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>
#include <stdexcept>
#include <tuple>
#include <utility>

namespace strokewright::firing {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kSame = 1e-6;  // [rad] what arithmetic leaves
constexpr std::size_t kMostCylinders = 16;

}  // namespace

Order sorted(std::span<const double> firesAt) {
  std::vector<int> cylinders(firesAt.size());
  std::iota(cylinders.begin(), cylinders.end(), 0);
  const auto at = [&](int cylinder) { return firesAt[static_cast<std::size_t>(cylinder)]; };
  std::ranges::sort(cylinders, [&](int one, int other) {
    if (std::abs(at(one) - at(other)) > kSame) return at(one) < at(other);
    return one < other;
  });
  Order order{.cylinders = std::move(cylinders), .at = {}};
  for (const int cylinder : order.cylinders) order.at.push_back(at(cylinder));
  return order;
}

namespace {

struct Ranked {
  Order order;
  long largest;  // [thousandths of a degree], so that equals are equal
  long least;
};

}  // namespace

long thousandths(double angle) { return std::lround(angle / kTurn * 360e3); }

double within(double angle, double whole) {
  const double rest = angle - whole * std::floor(angle / whole);
  return rest < kSame || whole - rest < kSame ? 0.0 : rest;
}

double asRead(double angle, double whole) {
  constexpr double kHalfATenth = kTurn / 7200.0;
  const double rest = within(angle, whole);
  return whole - rest < kHalfATenth + kSame ? 0.0 : rest;
}

double cycleOf(Strokes strokes) { return strokes == Strokes::Four ? 2.0 * kTurn : kTurn; }

double topOf(const Throw& which) {
  return within(which.axis - which.ahead + which.offsetTop, kTurn);
}

std::vector<double> Order::intervals(Strokes strokes) const {
  std::vector<double> intervals;
  for (std::size_t i = 1; i < at.size(); ++i) intervals.push_back(at[i] - at[i - 1]);
  intervals.push_back(cycleOf(strokes) - at.back() + at.front());
  return intervals;
}

double Order::largestGap(Strokes strokes) const { return std::ranges::max(intervals(strokes)); }

double Order::leastGap(Strokes strokes) const { return std::ranges::min(intervals(strokes)); }

bool isEven(const Order& order, Strokes strokes) {
  constexpr double kTenth = kTurn / 3600.0;
  return order.largestGap(strokes) - order.leastGap(strokes) <= kTenth;
}

int neighboursInSequence(const Order& order, std::span<const double> places,
                         std::span<const double> axes) {
  const auto index = [](int cylinder) { return static_cast<std::size_t>(cylinder); };
  const auto sameBank = [&](std::size_t one, std::size_t other) {
    return within(axes[one] - axes[other], kTurn) == 0.0;
  };
  const auto nextToEachOther = [&](std::size_t one, std::size_t other) {
    if (one == other || !sameBank(one, other)) return false;
    const auto [from, to] = std::minmax(places[one], places[other]);
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (i != one && i != other && sameBank(one, i) && places[i] > from && places[i] < to) {
        return false;
      }
    }
    return true;
  };
  const std::size_t n = order.cylinders.size();
  int count = 0;
  for (std::size_t i = 0; n > 1 && i < n; ++i) {
    if (nextToEachOther(index(order.cylinders[i]), index(order.cylinders[(i + 1) % n]))) ++count;
  }
  return count;
}

std::vector<Order> everyOrder(std::span<const double> tops, Strokes strokes) {
  if (tops.empty() || tops.size() > kMostCylinders) {
    throw std::invalid_argument("orders are of 1 to 16 cylinders");
  }
  const std::size_t choices = strokes == Strokes::Four ? std::size_t{1} << (tops.size() - 1) : 1;
  std::vector<Ranked> ranked;
  ranked.reserve(choices);
  std::vector<double> firesAt(tops.size());
  for (std::size_t choice = 0; choice < choices; ++choice) {
    for (std::size_t i = 1; i < tops.size(); ++i) {
      const bool later = (choice >> (i - 1) & 1U) != 0;
      firesAt[i] = within(tops[i] - tops[0], kTurn) + (later ? kTurn : 0.0);
    }
    Order order = sorted(firesAt);
    const long largest = thousandths(order.largestGap(strokes));
    const long least = thousandths(order.leastGap(strokes));
    ranked.push_back({std::move(order), largest, least});
  }
  std::ranges::sort(ranked, [](const Ranked& one, const Ranked& other) {
    return std::tie(one.largest, other.least, one.order.cylinders) <
           std::tie(other.largest, one.least, other.order.cylinders);
  });
  std::vector<Order> orders;
  orders.reserve(ranked.size());
  for (Ranked& one : ranked) orders.push_back(std::move(one.order));
  return orders;
}

std::optional<Order> orderAs(std::span<const int> cylinders, std::span<const double> tops,
                             Strokes strokes) {
  std::vector<int> named(cylinders.begin(), cylinders.end());
  std::ranges::sort(named);
  for (std::size_t i = 0; i < named.size(); ++i) {
    if (named[i] != static_cast<int>(i)) return std::nullopt;
  }
  if (named.empty() || named.size() != tops.size()) return std::nullopt;
  // Among all that can be, with the cylinders numbered as they are to fire, the one in that order.
  std::vector<double> asNamed;
  for (const int cylinder : cylinders) asNamed.push_back(tops[static_cast<std::size_t>(cylinder)]);
  for (Order& order : everyOrder(asNamed, strokes)) {
    if (!std::ranges::is_sorted(order.cylinders)) continue;
    order.cylinders.assign(cylinders.begin(), cylinders.end());
    return std::move(order);
  }
  return std::nullopt;
}

double lobeAngle(double firesAt) { return within(-0.5 * firesAt, kTurn); }

double content(const Order& order, double pulsesPerTurn) {
  std::complex<double> sum;
  for (const double at : order.at) sum += std::polar(1.0, pulsesPerTurn * at);
  return std::abs(sum) / static_cast<double>(order.at.size());
}

}  // namespace strokewright::firing
