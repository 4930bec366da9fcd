#pragma once
/// Inside the room: what may lie under a barrel, found as windows of sorted pieces.

#include <algorithm>
#include <limits>
#include <span>
#include <vector>

#include "core/choice/pieces.h"

namespace strokewright::choice {

/// The least thickness for which it does not hold, where it holds for all under that.
template <typename Holds>
Nm firstNot(Holds holds, Nm thickest) {
  Nm first = 0;
  for (Nm last = thickest + 1; first < last;) {
    const Nm middle = first + (last - first) / 2;
    if (holds(middle)) {
      first = middle + 1;
    } else {
      last = middle;
    }
  }
  return first;
}

/// What has to lie under the barrels of some cylinders, the same under all, given a head gasket.
struct Bounds {
  Nm close = -std::numeric_limits<Nm>::max();    ///< less is too close
  Nm atWorst = -std::numeric_limits<Nm>::max();  ///< less is too close, its own ± taken off
  Nm wide = std::numeric_limits<Nm>::max();      ///< more is too wide
  Nm over = 0;                                   ///< less gives too high a ratio
  Nm under = 0;                                  ///< more gives too low a ratio

  Bounds(const Limits& limits, std::span<const Bare> cylinders, const Piece& headGasket,
         Nm thickest);

  Nm least() const { return std::max(close, over); }
  Nm most() const { return std::min(wide, under); }
  bool safeAtWorst(const Piece& one, const Piece& other) const {
    return one.thickness + other.thickness - one.plusMinus - other.plusMinus >= atWorst;
  }
};

/// From thin to thick; of equally thick ones those with the least ±, then the fewest parts, come
/// first.
class SortedPieces {
 public:
  explicit SortedPieces(std::vector<Piece> pieces);

  int size() const { return static_cast<int>(thicknesses_.size()); }
  const Piece& at(int place) const { return pieces_[static_cast<std::size_t>(place)]; }
  Nm thickness(int place) const { return thicknesses_[static_cast<std::size_t>(place)]; }
  Nm thickest() const { return thicknesses_.back(); }
  Nm greatestPlusMinus() const { return greatestPlusMinus_; }
  int fewestParts() const { return fewestParts_; }
  /// First of those that are as thick as this one.
  int runStart(int place) const { return runStarts_[static_cast<std::size_t>(place)]; }
  /// First that is not under it.
  int firstNotUnder(Nm limit) const {
    return static_cast<int>(std::ranges::lower_bound(thicknesses_, limit) - thicknesses_.begin());
  }

 private:
  std::vector<Piece> pieces_;
  std::vector<Nm> thicknesses_;
  std::vector<int> runStarts_;
  Nm greatestPlusMinus_ = 0;
  int fewestParts_ = 0;
};

/// Pieces from first to before last are within all limits but, below "sure", that at worst.
struct Row {
  int first = 0;
  int last = 0;
  int sure = 0;
  int within = 0;  ///< how many of them are
};

/// Windows asked for one after the other, which lie close together.
class RowFinder {
 public:
  explicit RowFinder(const SortedPieces& pieces) : pieces_(&pieces) {}

  /// The pieces that may lie under the barrel together with another one.
  /// @param tally where all of them are considered, and counted if they lose in a cylinder by
  ///        themselves
  Row find(const Piece& beside, const Bounds& bounds, Tally& tally);

 private:
  // The first of sorted thicknesses that is not under a limit. It is looked for near the last one,
  // and then everywhere.
  class Finger {
   public:
    int moveTo(Nm limit, const SortedPieces& pieces) {
      for (int steps = 0; steps < kNear; ++steps) {
        if (place_ > 0 && pieces.thickness(place_ - 1) >= limit) {
          --place_;
        } else if (place_ < pieces.size() && pieces.thickness(place_) < limit) {
          ++place_;
        } else {
          return place_;
        }
      }
      place_ = pieces.firstNotUnder(limit);
      return place_;
    }

   private:
    static constexpr int kNear = 12;

    int place_ = 0;
  };

  const SortedPieces* pieces_;
  Finger close_;
  Finger sure_;
  Finger wide_;
  Finger over_;
  Finger under_;
};

}  // namespace strokewright::choice
