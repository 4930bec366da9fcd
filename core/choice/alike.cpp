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

#include "core/choice/rows.h"
#include "core/choice/search.h"

namespace strokewright::choice {
namespace {

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
        rows_(baseSets_),
        measures_(pieces.cylinders.size()) {
    for (int i = 0; i < baseSets_.size(); ++i) {
      enough_.push_back(enoughOf(pieces, baseSets_.at(i), cylinders_) ? 1 : 0);
    }
  }

  void search() {
    if (squishSpreads()) {
      tally_.considered = static_cast<double>(plates_.size()) * baseSets_.size() *
                          static_cast<double>(pieces_.headGaskets.size());
      tally_.lostTo(Reason::SquishSpreadOver) = tally_.considered;
      return;
    }
    const Nm thickest = plates_.thickest() + baseSets_.thickest();
    for (const Piece& headGasket : pieces_.headGaskets) {
      const Bounds bounds(pieces_.limits, pieces_.cylinders, headGasket, thickest);
      const Slices slices(pieces_, headGasket, bounds);
      for (int i = 0; i < plates_.size(); ++i) {
        const Row row = rows_.find(plates_.at(i), bounds, tally_);
        takeRow(row, plates_.at(i), headGasket, bounds, slices);
      }
    }
    tally_.lostTo(Reason::Beaten) -= static_cast<double>(best_.candidates().size());
  }

 private:
  /// What is the same in all cylinders moves all gaps alike.
  bool squishSpreads() const {
    Reach squish;
    for (const Bare& cylinder : pieces_.cylinders) squish.take({.squish = cylinder.squish});
    return squish.squishSpread() > pieces_.squishSpread;
  }

  void takeRow(const Row& row, const Piece& plate, const Piece& headGasket, const Bounds& bounds,
               const Slices& slices) {
    if (!enoughOf(pieces_, plate, platesNeeded_) || !enoughOf(pieces_, headGasket, cylinders_)) {
      tally_.lostTo(Reason::TooFew) += row.within;
      return;
    }
    int tooFew = 0;
    int spread = 0;
    double worstKey = best_.worstKey();
    for (int i = row.first; i < row.last; ++i) {
      if (i < row.sure && !bounds.safeAtWorst(plate, baseSets_.at(i))) continue;
      const auto place = static_cast<std::size_t>(i);
      if (enough_[place] == 0) {
        ++tooFew;
        continue;
      }
      const Slice& slice = slices.at(plate.thickness + baseSets_.thickness(i));
      bool spreads = slice.spreads;
      if (slice.leastKey <= worstKey) {
        spreads = !take(plate, baseSets_.at(i), headGasket);
        worstKey = best_.worstKey();
      }
      spread += spreads ? 1 : 0;
    }
    const int enoughOfAll = row.within - tooFew;
    tally_.lostTo(Reason::TooFew) += tooFew;
    tally_.lostTo(Reason::RatioSpreadOver) += spread;
    tally_.lostTo(Reason::Beaten) += enoughOfAll - spread;
  }

  // Offers the stack to the list, unless it spreads too far.
  bool take(const Piece& plate, const Piece& baseSet, const Piece& headGasket) {
    Reach reach;
    for (std::size_t i = 0; i < measures_.size(); ++i) {
      measures_[i] = measureOf(pieces_.cylinders[i], plate, baseSet, headGasket);
      reach.take(measures_[i]);
    }
    if (reach.ratioSpread() > pieces_.wants.ratioSpread) return false;
    const bool twice = baseSet.count == 2 && baseSet.parts[0] == baseSet.parts[1];
    const Rank rank{
        .key = pieces_.key(measures_),
        .atWorst = pieces_.atWorst(reach.atWorst),
        .parts = platesNeeded_ * plate.count + cylinders_ * (baseSet.count + headGasket.count),
        .differentParts = plate.count + baseSet.count - (twice ? 1 : 0) + headGasket.count};
    if (best_.mayTake(rank)) {
      const Set set = setOf(plate, baseSet, headGasket);
      best_.offer({rank, std::vector<Set>(measures_.size(), set)});
    }
    return true;
  }

  const Pieces& pieces_;
  BestList& best_;
  Tally& tally_;
  int cylinders_;
  int platesNeeded_;
  SortedPieces plates_;
  SortedPieces baseSets_;
  RowFinder rows_;
  std::vector<std::uint8_t> enough_;  // of each base set, for all cylinders
  std::vector<Measure> measures_;     // of the stack being looked at
};

}  // namespace

void searchAlike(const Pieces& pieces, BestList& best, Tally& tally) {
  AlikeSearch(pieces, best, tally).search();
}

}  // namespace strokewright::choice
