// All cylinders get the same parts: a stack is a plate, a base set and a head gasket, and under one
// head gasket what counts is how much lies under the barrels. The limits become limits on that
// thickness, and what falls outside is only counted. The rest is taken in slices: a slice that as a
// whole spreads too far, or is worse than the list, is only counted too.

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "core/choice/search.h"

namespace strokewright::choice {
namespace {

// The least thickness for which it does not hold, where it holds for all under that.
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

// What has to lie under the barrels, given a head gasket.
struct Bounds {
  Nm close = -std::numeric_limits<Nm>::max();    // less is too close
  Nm atWorst = -std::numeric_limits<Nm>::max();  // less is too close, its own ± taken off
  Nm wide = std::numeric_limits<Nm>::max();      // more is too wide
  Nm over = 0;                                   // less gives too high a ratio
  Nm under = 0;                                  // more gives too low a ratio

  Bounds(const Pieces& pieces, const Piece& headGasket, Nm thickest) : under(thickest) {
    for (const Bare& cylinder : pieces.cylinders) {
      const Nm squish = cylinder.squish + headGasket.thickness;
      close = std::max(close, pieces.squishLeast - squish);
      atWorst =
          std::max(atWorst, pieces.leastAtWorst - squish + cylinder.worst + headGasket.plusMinus);
      wide = std::min(wide, pieces.squishMost - squish);
      const auto ratio = [&](Nm x) { return cylinder.ratio(x, headGasket.volume); };
      const auto tooHigh = [&](Nm x) { return ratio(x) > pieces.wants.ratioMost; };
      const auto highEnough = [&](Nm x) { return ratio(x) >= pieces.wants.ratioLeast; };
      over = std::max(over, firstNot(tooHigh, thickest));
      under = std::min(under, firstNot(highEnough, thickest) - 1);
    }
  }

  Nm least() const { return std::max(close, over); }
  Nm most() const { return std::min(wide, under); }
};

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kRounding = 1e-9;  // of a ratio, and far more than rounding does

// What all thicknesses in a slice share.
struct Slice {
  double leastKey = 0.0;  // -∞ where each has to be asked whether its ratios spread too far
  bool spreads = false;   // all do
};

// All that is within bounds, cut into a hundred or less.
class Slices {
 public:
  Slices(const Pieces& pieces, const Piece& headGasket, const Bounds& bounds)
      : least_(bounds.least()) {
    const auto all = static_cast<unsigned>(std::max(bounds.most() - least_, 0));
    shift_ = static_cast<int>(std::bit_width(all / 64));
    for (Nm first = least_; first <= bounds.most(); first += Nm{1} << shift_) {
      const Nm last = std::min(first + (Nm{1} << shift_) - 1, bounds.most());
      slices_.push_back(slice(pieces, headGasket, first, last));
    }
  }

  const Slice& at(Nm underBarrel) const {
    return slices_[static_cast<std::size_t>((underBarrel - least_) >> shift_)];
  }

 private:
  // Bounds for all that lies between the first and the last thickness. Each ratio falls all the
  // way, and the slower the lower it is; so the spread of the first changes by no more than the
  // difference between the fastest and the slowest fall.
  static Slice slice(const Pieces& pieces, const Piece& headGasket, Nm first, Nm last) {
    Reach reach;  // at the first
    double nearest = 0.0;
    double fastest = 0.0;
    double slowest = kInfinite;
    for (const Bare& cylinder : pieces.cylinders) {
      const Nm squish = cylinder.squish + headGasket.thickness;
      const double ratioMost = cylinder.ratio(first, headGasket.volume);
      const double ratioLeast = cylinder.ratio(last, headGasket.volume);
      reach.take({.squish = squish + first, .ratio = ratioMost});
      fastest = std::max(fastest, cylinder.ratioFall(ratioMost));
      slowest = std::min(slowest, cylinder.ratioFall(ratioLeast));
      if (!pieces.sortsByNearness()) continue;
      nearest += pieces.share(std::clamp(pieces.squishWanted, squish + first, squish + last),
                              std::max(std::min(pieces.ratioWanted, ratioMost), ratioLeast));
    }
    const double change = (fastest - slowest) * (last - first) + kRounding * reach.ratioMost;
    const double spread = reach.ratioSpread();
    if (spread - change > pieces.wants.ratioSpread) return {.leastKey = kInfinite, .spreads = true};
    if (spread + change > pieces.wants.ratioSpread) return {.leastKey = -kInfinite};
    switch (pieces.wants.sortBy) {
      case SortBy::SquishSpread:
        return {.leastKey = static_cast<double>(reach.squishSpread())};
      case SortBy::RatioSpread:
        return {.leastKey = spread - change};
      default:
        return {.leastKey = nearest};
    }
  }

  Nm least_;
  int shift_ = 0;
  std::vector<Slice> slices_;
};

// The first of sorted thicknesses that is not under a limit. It is found by stepping from where the
// last limit was: those asked for one after the other lie close together.
class Finger {
 public:
  int moveTo(Nm limit, const std::vector<Nm>& thicknesses) {
    const auto at = [&](int place) { return thicknesses[static_cast<std::size_t>(place)]; };
    while (place_ > 0 && at(place_ - 1) >= limit) --place_;
    while (place_ < static_cast<int>(thicknesses.size()) && at(place_) < limit) ++place_;
    return place_;
  }

 private:
  int place_ = 0;
};

class AlikeSearch {
 public:
  AlikeSearch(const Pieces& pieces, BestList& best, Tally& tally)
      : pieces_(pieces),
        best_(best),
        tally_(tally),
        cylinders_(static_cast<int>(pieces.cylinders.size())),
        platesNeeded_(pieces.wants.onePlateForAll ? 1 : cylinders_),
        plates_(pieces.plates),
        baseSets_(pieces.baseSets),
        measures_(pieces.cylinders.size()) {
    std::ranges::sort(plates_, {}, &Piece::thickness);
    std::ranges::sort(baseSets_, {}, &Piece::thickness);
    for (const Piece& baseSet : baseSets_) {
      thicknesses_.push_back(baseSet.thickness);
      enough_.push_back(enough(baseSet, cylinders_) ? 1 : 0);
    }
    greatestPlusMinus_ = std::ranges::max(baseSets_, {}, &Piece::plusMinus).plusMinus;
    Reach squish;
    for (const Bare& cylinder : pieces.cylinders) squish.take({.squish = cylinder.squish});
    squishSpreads_ = squish.squishSpread() > pieces.squishSpread;
  }

  void search() {
    const Nm thickest = plates_.back().thickness + thicknesses_.back();
    for (const Piece& headGasket : pieces_.headGaskets) {
      const Bounds bounds(pieces_, headGasket, thickest);
      const Slices slices(pieces_, headGasket, bounds);
      for (const Piece& plate : plates_) {
        const Row row = countRow(plate, bounds);
        takeRow(row, plate, headGasket, bounds, slices);
      }
    }
    tally_.lostTo(Reason::Beaten) -= static_cast<double>(best_.candidates().size());
  }

 private:
  // Base sets from first to before last are within all limits but, below "sure", that at worst.
  struct Row {
    int first = 0;
    int last = 0;
    int sure = 0;
    int within = 0;  // how many of them are
  };

  // Whether there are enough parts for one such piece in each of so many cylinders.
  bool enough(const Piece& piece, int cylinders) const {
    return std::ranges::all_of(piece.parts, [&](int place) {
      const auto inOne = std::ranges::count(piece.parts, place);
      return place == kNone ||
             inOne * cylinders <= pieces_.quantities[static_cast<std::size_t>(place)];
    });
  }

  const Piece& baseSet(int place) const { return baseSets_[static_cast<std::size_t>(place)]; }

  bool safeAtWorst(const Piece& plate, const Piece& baseSet, const Bounds& bounds) const {
    return plate.thickness + baseSet.thickness - plate.plusMinus - baseSet.plusMinus >=
           bounds.atWorst;
  }

  // Puts into the tally what loses in a cylinder by itself.
  Row countRow(const Piece& plate, const Bounds& bounds) {
    const auto firstNotUnder = [&](Nm limit, Finger& finger) {
      return finger.moveTo(limit - plate.thickness, thicknesses_);
    };
    const int all = static_cast<int>(thicknesses_.size());
    const int close = firstNotUnder(bounds.close, close_);
    const int sure = firstNotUnder(bounds.atWorst + plate.plusMinus + greatestPlusMinus_, sure_);
    const int wide = firstNotUnder(bounds.wide + 1, wide_);
    const int first = std::max(close, firstNotUnder(bounds.over, over_));
    const int last = std::min(wide, firstNotUnder(bounds.under + 1, under_));

    const auto safe = [&](int from, int to) {
      int count = std::max(0, to - std::max(from, sure));
      for (int i = from; i < std::min(to, sure); ++i) {
        if (safeAtWorst(plate, baseSet(i), bounds)) ++count;
      }
      return count;
    };
    const int notAtWorst = safe(close, all);
    const int notWide = safe(close, wide);
    const int notOver = safe(first, wide);
    const int within = safe(first, last);
    tally_.considered += all;
    tally_.lostTo(Reason::TooClose) += close;
    tally_.lostTo(Reason::TooCloseAtWorst) += all - close - notAtWorst;
    tally_.lostTo(Reason::TooWide) += notAtWorst - notWide;
    tally_.lostTo(Reason::RatioOver) += notWide - notOver;
    tally_.lostTo(Reason::RatioUnder) += notOver - within;
    return {.first = first, .last = last, .sure = sure, .within = within};
  }

  void takeRow(const Row& row, const Piece& plate, const Piece& headGasket, const Bounds& bounds,
               const Slices& slices) {
    if (!enough(plate, platesNeeded_) || !enough(headGasket, cylinders_)) {
      tally_.lostTo(Reason::TooFew) += row.within;
      return;
    }
    int tooFew = 0;
    int spread = 0;
    double worstKey = best_.worstKey();
    for (int i = row.first; i < row.last; ++i) {
      if (i < row.sure && !safeAtWorst(plate, baseSet(i), bounds)) continue;
      const auto place = static_cast<std::size_t>(i);
      if (enough_[place] == 0) {
        ++tooFew;
        continue;
      }
      if (squishSpreads_) continue;
      const Slice& slice = slices.at(plate.thickness + thicknesses_[place]);
      bool spreads = slice.spreads;
      if (slice.leastKey <= worstKey) {
        spreads = !take(plate, baseSet(i), headGasket);
        worstKey = best_.worstKey();
      }
      spread += spreads ? 1 : 0;
    }
    const int enoughOfAll = row.within - tooFew;
    tally_.lostTo(Reason::TooFew) += tooFew;
    tally_.lostTo(Reason::SquishSpreadOver) += squishSpreads_ ? enoughOfAll : 0;
    tally_.lostTo(Reason::RatioSpreadOver) += spread;
    tally_.lostTo(Reason::Beaten) += squishSpreads_ ? 0 : enoughOfAll - spread;
  }

  // Offers the stack to the list, unless it spreads too far.
  bool take(const Piece& plate, const Piece& baseSet, const Piece& headGasket) {
    Reach reach;
    for (std::size_t i = 0; i < measures_.size(); ++i) {
      measures_[i] = measureOf(pieces_.cylinders[i], plate, baseSet, headGasket);
      reach.take(measures_[i]);
    }
    if (reach.ratioSpread() > pieces_.wants.ratioSpread) return false;
    const double key = pieces_.key(measures_);
    const int parts = platesNeeded_ * plate.count + cylinders_ * (baseSet.count + headGasket.count);
    const bool twice = baseSet.count == 2 && baseSet.parts[0] == baseSet.parts[1];
    const int different = plate.count + baseSet.count - (twice ? 1 : 0) + headGasket.count;
    const Nm atWorst = pieces_.atWorst(reach.atWorst);
    if (best_.mayTake(key, atWorst, parts, different)) {
      const Set set = setOf(plate, baseSet, headGasket);
      best_.offer({key, atWorst, parts, different, std::vector<Set>(measures_.size(), set)});
    }
    return true;
  }

  const Pieces& pieces_;
  BestList& best_;
  Tally& tally_;
  int cylinders_;
  int platesNeeded_;
  bool squishSpreads_ = false;
  // From thin to thick.
  std::vector<Piece> plates_;
  std::vector<Piece> baseSets_;
  // Of the base sets, what the loops read.
  std::vector<Nm> thicknesses_;
  std::vector<std::uint8_t> enough_;
  Nm greatestPlusMinus_ = 0;
  Finger close_;
  Finger sure_;
  Finger wide_;
  Finger over_;
  Finger under_;
  std::vector<Measure> measures_;  // of the stack being looked at
};

}  // namespace

void searchAlike(const Pieces& pieces, BestList& best, Tally& tally) {
  AlikeSearch(pieces, best, tally).search();
}

}  // namespace strokewright::choice
