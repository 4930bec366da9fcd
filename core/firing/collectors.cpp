#include "core/firing/collectors.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <tuple>
#include <utility>

namespace strokewright::firing {
namespace {

constexpr std::size_t kShown = 3;  ///< of each number of collectors

std::size_t index(int cylinder) { return static_cast<std::size_t>(cylinder); }

auto rank(const Collectors& way) {
  return std::tuple(thousandths(way.largest), -thousandths(way.least), way.across);
}

class Parting {
 public:
  Parting(const Order& order, Strokes strokes, std::span<const double> axes)
      : order_(order), strokes_(strokes), axes_(axes) {}

  /// The best ways to part all cylinders into so many groups.
  std::vector<Collectors> into(std::size_t count) {
    best_.clear();
    inBanks_.groups.clear();
    groups_.assign(count, {});
    size_ = order_.cylinders.size() / count;
    part(0);
    const bool noneInBanks =
        std::ranges::none_of(best_, [](const Collectors& way) { return way.across == 0; });
    if (noneInBanks && !inBanks_.groups.empty()) best_.back() = std::move(inBanks_);
    return std::move(best_);
  }

 private:
  /// Each cylinder as it fires goes into every group that has room; of the empty groups into the
  /// first alone, so that no way comes twice. Groups hold the places in the order of firing.
  void part(std::size_t place) {
    if (place == order_.at.size()) return keep();
    for (auto& group : groups_) {
      const bool empty = group.empty();
      const bool room =
          group.size() < size_ && (empty || !isTooLong(order_.at[place] - at(group.back())));
      if (room) {
        group.push_back(static_cast<int>(place));
        part(place + 1);
        group.pop_back();
      }
      if (empty) break;
    }
  }

  double at(int place) const { return order_.at[index(place)]; }

  /// No way with such an interval can be among those kept.
  bool isTooLong(double interval) const {
    if (best_.size() < kShown || inBanks_.groups.empty()) return false;
    return thousandths(interval) > thousandths(std::max(best_.back().largest, inBanks_.largest));
  }

  void keep() {
    Collectors way{.groups = {}, .largest = 0.0, .least = cycleOf(strokes_), .across = 0};
    for (const auto& group : groups_) {
      double last = at(group.back()) - cycleOf(strokes_);
      for (const int place : group) {
        way.largest = std::max(way.largest, at(place) - last);
        way.least = std::min(way.least, at(place) - last);
        last = at(place);
      }
      if (goesAcross(group)) ++way.across;
    }
    const auto before = [](const Collectors& one, const Collectors& other) {
      return rank(one) < rank(other);
    };
    if (way.across == 0 && (inBanks_.groups.empty() || before(way, inBanks_))) {
      inBanks_ = way;
      inBanks_.groups = cylinders();
    }
    if (best_.size() == kShown && !before(way, best_.back())) return;
    way.groups = cylinders();
    best_.insert(std::ranges::upper_bound(best_, way, before), std::move(way));
    if (best_.size() > kShown) best_.pop_back();
  }

  std::vector<std::vector<int>> cylinders() const {
    std::vector<std::vector<int>> all = groups_;
    for (auto& group : all) {
      for (int& place : group) place = order_.cylinders[index(place)];
    }
    return all;
  }

  bool goesAcross(const std::vector<int>& group) const {
    constexpr double kTurn = 2.0 * std::numbers::pi;
    const auto axis = [&](int place) { return axes_[index(order_.cylinders[index(place)])]; };
    return std::ranges::any_of(
        group, [&](int place) { return within(axis(place) - axis(group.front()), kTurn) != 0.0; });
  }

  const Order& order_;
  Strokes strokes_;
  std::span<const double> axes_;
  std::size_t size_ = 0;  ///< of a group
  std::vector<std::vector<int>> groups_;
  std::vector<Collectors> best_;
  Collectors inBanks_;  ///< the best that stays within the banks
};

}  // namespace

std::vector<double> intervalsIn(std::span<const int> group, const Order& order, Strokes strokes) {
  const auto at = [&](int cylinder) {
    const auto found = std::ranges::find(order.cylinders, cylinder);
    return order.at[static_cast<std::size_t>(found - order.cylinders.begin())];
  };
  std::vector<double> intervals;
  for (std::size_t i = 1; i < group.size(); ++i) {
    intervals.push_back(at(group[i]) - at(group[i - 1]));
  }
  intervals.push_back(cycleOf(strokes) - at(group.back()) + at(group.front()));
  return intervals;
}

std::vector<Collectors> collectorsOf(const Order& order, Strokes strokes,
                                     std::span<const double> axes) {
  std::vector<Collectors> all;
  const std::size_t n = order.cylinders.size();
  for (std::size_t count = 1; 2 * count <= n; ++count) {
    if (n % count != 0) continue;
    for (Collectors& way : Parting(order, strokes, axes).into(count)) all.push_back(std::move(way));
  }
  return all;
}

}  // namespace strokewright::firing
