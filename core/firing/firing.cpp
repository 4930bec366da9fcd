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
constexpr std::size_t kMostCylinders = 16;

}  // namespace

Order sorted(std::span<const double> firesAt) {
  std::vector<int> cylinders(firesAt.size());
  std::iota(cylinders.begin(), cylinders.end(), 0);
  const auto at = [&](int cylinder) { return firesAt[static_cast<std::size_t>(cylinder)]; };
  std::ranges::stable_sort(cylinders, {}, at);
  Order order{.cylinders = std::move(cylinders), .at = {}};
  for (auto first = order.cylinders.begin(); first != order.cylinders.end();) {
    const double earliest = at(*first);
    const auto next = std::find_if(first, order.cylinders.end(),
                                   [&](int cylinder) { return at(cylinder) - earliest >= kSame; });
    std::sort(first, next);
    order.at.insert(order.at.end(), static_cast<std::size_t>(next - first), earliest);
    first = next;
  }
  return order;
}

namespace {

struct Ranked {
  Order order;
  long largest;  // [thousandths of a degree], so that equals are equal
  long least;
  int neighbours;
};

/// Who stands next to whom.
class Neighbours {
 public:
  explicit Neighbours(const Standing& standing)
      : count_(standing.places.size()), next_(count_ * count_) {
    for (std::size_t one = 0; one < count_; ++one) {
      for (std::size_t other = 0; other < count_; ++other) {
        next_[one * count_ + other] = nextToEachOther(standing, one, other);
      }
    }
  }

  int inSequence(const Order& order) const {
    const std::size_t n = order.cylinders.size();
    if (n < 2 || count_ < n) return 0;
    int count = 0;
    for (std::size_t i = 0; i < n; ++i) {
      const auto one = static_cast<std::size_t>(order.cylinders[i]);
      const auto other = static_cast<std::size_t>(order.cylinders[(i + 1) % n]);
      if (next_[one * count_ + other]) ++count;
    }
    return count;
  }

 private:
  static bool nextToEachOther(const Standing& standing, std::size_t one, std::size_t other) {
    const std::span<const double> places = standing.places;
    const auto sameBank = [&](std::size_t here, std::size_t there) {
      return within(standing.axes[here] - standing.axes[there], kTurn) == 0.0;
    };
    if (one == other || !sameBank(one, other)) return false;
    const auto [from, to] = std::minmax(places[one], places[other]);
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (i != one && i != other && sameBank(one, i) && places[i] > from && places[i] < to) {
        return false;
      }
    }
    return true;
  }

  std::size_t count_;
  std::vector<bool> next_;
};

}  // namespace

long thousandths(double angle) { return std::lround(angle / kTurn * 360e3); }

double within(double angle, double whole) {
  const double rest = angle - whole * std::floor(angle / whole);
  return rest < kSame || whole - rest < kSame ? 0.0 : rest;
}

double asRead(double angle, double whole) {
  constexpr double kHalfATenth = kTurn / 7200.0 * (1.0 + 1e-9);
  const double rest = within(angle, whole);
  return whole - rest < kHalfATenth ? 0.0 : rest;
}

double cycleOf(Strokes strokes) { return strokes == Strokes::Four ? 2.0 * kTurn : kTurn; }

double topOf(const Throw& which) {
  return within(which.axis - which.ahead + which.offsetTop, kTurn);
}

std::vector<double> Order::intervals(Strokes strokes) const {
  std::vector<double> intervals;
  for (std::size_t i = 1; i < at.size(); ++i) intervals.push_back(at[i] - at[i - 1]);
  intervals.push_back(cycleOf(strokes) - at.back() + at.front());
  std::ranges::replace_if(
      intervals, [](double interval) { return interval < kSame; }, 0.0);
  return intervals;
}

double Order::largestGap(Strokes strokes) const { return std::ranges::max(intervals(strokes)); }

double Order::leastGap(Strokes strokes) const { return std::ranges::min(intervals(strokes)); }

bool isEven(const Order& order, Strokes strokes) {
  constexpr double kTenth = kTurn / 3600.0;
  return order.largestGap(strokes) - order.leastGap(strokes) <= kTenth;
}

int neighboursInSequence(const Order& order, const Standing& standing) {
  return Neighbours(standing).inSequence(order);
}

std::vector<Order> everyOrder(std::span<const double> tops, Strokes strokes,
                              const Standing& standing) {
  if (tops.empty() || tops.size() > kMostCylinders) {
    throw std::invalid_argument("orders are of 1 to 16 cylinders");
  }
  const std::size_t choices = strokes == Strokes::Four ? std::size_t{1} << (tops.size() - 1) : 1;
  const Neighbours neighbours(standing);
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
    const int inSequence = neighbours.inSequence(order);
    ranked.push_back({std::move(order), largest, least, inSequence});
  }
  std::ranges::sort(ranked, [](const Ranked& one, const Ranked& other) {
    return std::tie(one.largest, other.least, one.neighbours, other.order.cylinders, one.order.at) <
           std::tie(other.largest, one.least, other.neighbours, one.order.cylinders,
                    other.order.at);
  });
  std::vector<Order> orders;
  orders.reserve(ranked.size());
  for (Ranked& one : ranked) orders.push_back(std::move(one.order));
  return orders;
}

std::optional<Order> orderAs(std::span<const int> cylinders, std::span<const double> tops,
                             Strokes strokes, const std::vector<bool>& together) {
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
    if (!std::ranges::is_sorted(order.cylinders) || !fireTogether(order, together)) continue;
    order.cylinders.assign(cylinders.begin(), cylinders.end());
    return std::move(order);
  }
  return std::nullopt;
}

bool fireTogether(const Order& order, const std::vector<bool>& together) {
  for (std::size_t i = 1; i < std::min(together.size(), order.at.size()); ++i) {
    if (together[i] && order.at[i] != order.at[i - 1]) return false;
  }
  return true;
}

std::optional<Order> orderAt(std::span<const int> cylinders, std::span<const double> firesAt) {
  Order order = sorted(firesAt);
  order.cylinders.assign(cylinders.begin(), cylinders.end());
  for (std::size_t i = 0; i < cylinders.size(); ++i) {
    const double at = firesAt[static_cast<std::size_t>(cylinders[i])];
    if (std::abs(at - order.at[i]) >= kSame) return std::nullopt;
  }
  return order;
}

double lobeAngle(double firesAt) { return within(-0.5 * firesAt, kTurn); }

double content(const Order& order, double pulsesPerTurn) {
  std::complex<double> sum;
  for (const double at : order.at) sum += std::polar(1.0, pulsesPerTurn * at);
  return std::abs(sum) / static_cast<double>(order.at.size());
}

}  // namespace strokewright::firing
