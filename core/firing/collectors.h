#pragma once
/// Which cylinders may share a collector, so that their pulses come evenly into it.

#include <span>
#include <vector>

#include "core/firing/firing.h"

namespace strokewright::firing {

/// One way to part the cylinders into groups of equal number.
struct Collectors {
  std::vector<std::vector<int>> groups;  ///< places of the cylinders, in each as they fire
  double largest = 0.0;                  ///< [rad] the longest interval in any of them
  double least = 0.0;                    ///< [rad] the shortest
  int across = 0;                        ///< groups with cylinders of more than one bank
};

/// [rad] from each cylinder of a group to the next, from the last on to the first again.
/// @param group cylinders of the order, as they fire; at least one
std::vector<double> intervalsIn(std::span<const int> group, const Order& order, Strokes strokes);

/// For each number of collectors, one and up to one for every two cylinders, the most even ways:
/// the shortest of the longest intervals first, then the longest of the shortest, then fewer groups
/// across banks. Where the best goes across banks the best that does not is among them.
/// @param axes [rad] of the cylinders, as Throw::axis: one bank has one axis
/// @source enumeration; that pipes whose pulses lie far apart are joined is common practice, no
///         published source
std::vector<Collectors> collectorsOf(const Order& order, Strokes strokes,
                                     std::span<const double> axes);

}  // namespace strokewright::firing
