// Cylinders may differ. What all share is chosen first; then one cylinder after the other tries the
// sets left to it from the most promising outwards, and gives up where no stack that begins like
// this one can come onto the list.

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <limits>
#include <span>
#include <tuple>
#include <utility>
#include <vector>

#include "core/choice/search.h"

namespace strokewright::choice {
namespace {

using Span = std::span<const Piece>;

constexpr std::int64_t kMostSteps = 1'000'000;  // under a frame
constexpr double kRounding = 1e-9;              // far more than a ratio is rounded by

// What one cylinder may get: within its own limits.
struct Option {
  double value = 0.0;  // what is sorted by, of this cylinder: gap [nm] or ratio
  Nm atWorst = 0;      // Pieces::atWorst() of its gap
  int parts = 0;
  Set set;
  Measure measure;
};

// The beginning of a stack: what the first cylinders get.
struct Beginning {
  Reach reach;
  double key = 0.0;
  int parts = 0;
  int differentParts = 0;
};

// Each piece for itself where all cylinders share it, otherwise all together.
std::vector<Span> groupsOf(Span pieces, bool shared) {
  if (!shared) return {pieces};
  std::vector<Span> groups;
  for (std::size_t i = 0; i < pieces.size(); ++i) groups.push_back(pieces.subspan(i, 1));
  return groups;
}

// Visits a sorted row from the middle outwards, the nearer end first. An end is left when the visit
// returns false.
template <typename Visit>
void outwardsFrom(double middle, std::span<const Option> row, Visit visit) {
  auto right = std::ranges::lower_bound(row, middle, {}, &Option::value);
  auto left = right;
  bool goLeft = left != row.begin();
  bool goRight = right != row.end();
  while (goLeft || goRight) {
    if (goRight && (!goLeft || right->value - middle <= middle - std::prev(left)->value)) {
      goRight = visit(*right) && ++right != row.end();
    } else {
      goLeft = visit(*--left) && left != row.begin();
    }
  }
}

class MixedSearch {
 public:
  MixedSearch(const Pieces& pieces, BestList& best, Tally& tally)
      : pieces_(pieces),
        best_(best),
        tally_(tally),
        options_(pieces.cylinders.size()),
        leastShares_(pieces.cylinders.size()),
        leastParts_(pieces.cylinders.size()),
        mostAtWorst_(pieces.cylinders.size()),
        used_(pieces.quantities.size()) {}

  bool search() {
    const Wants& wants = pieces_.wants;
    for (const Span plates : groupsOf(pieces_.plates, wants.onePlateForAll)) {
      for (const Span baseSets : groupsOf(pieces_.baseSets, wants.sameGasketsInAll)) {
        for (const Span headGaskets : groupsOf(pieces_.headGaskets, wants.sameGasketsInAll)) {
          if (gatherOptions(plates, baseSets, headGaskets)) goOn({});
        }
      }
    }
    tally_.undecided -= static_cast<double>(best_.candidates().size());
    return steps_ <= kMostSteps;
  }

 private:
  // Fills the options of every cylinder; false where one has none. A stack meets a limit when every
  // cylinder does, so that the tally is a product over the cylinders.
  bool gatherOptions(Span plates, Span baseSets, Span headGaskets) {
    std::array<double, kReasonCount> meeting;  // stacks that lose for this reason or a later one
    meeting.fill(1.0);
    for (std::size_t i = 0; i < options_.size(); ++i) {
      std::array<double, kReasonCount> lost{};
      options_[i].clear();
      for (const Piece& plate : plates) {
        for (const Piece& baseSet : baseSets) {
          for (const Piece& headGasket : headGaskets) {
            const Measure measure = measureOf(pieces_.cylinders[i], plate, baseSet, headGasket);
            const Reason reason = ownReason(pieces_, measure);
            ++lost[static_cast<std::size_t>(reason)];
            if (reason == Reason::Beaten) addOption(i, plate, baseSet, headGasket, measure);
          }
        }
      }
      double left = 0.0;
      for (std::size_t reason = kReasonCount; reason-- > 0;) {
        left += lost[reason];
        meeting[reason] *= left;
      }
    }
    tally_.considered += meeting.front();
    tally_.undecided += meeting.back();
    for (std::size_t reason = 0; reason + 1 < kReasonCount; ++reason) {
      tally_.lost[reason] += meeting[reason] - meeting[reason + 1];
    }
    for (std::size_t i = 0; i < options_.size(); ++i) sortOptions(i);
    return meeting.back() > 0.0;
  }

  void addOption(std::size_t cylinder, const Piece& plate, const Piece& baseSet,
                 const Piece& headGasket, const Measure& measure) {
    options_[cylinder].push_back(
        {.value = pieces_.sortsBySquish() ? static_cast<double>(measure.squish) : measure.ratio,
         .atWorst = pieces_.atWorst(measure.squishAtWorst),
         .parts = (countsPlate(cylinder) ? plate.count : 0) + baseSet.count + headGasket.count,
         .set = setOf(plate, baseSet, headGasket),
         .measure = measure});
  }

  // Sorts them by value, of equals the largest gap at worst and then the fewest parts first, and
  // notes the best that can be had.
  void sortOptions(std::size_t cylinder) {
    std::vector<Option>& options = options_[cylinder];
    std::ranges::sort(options, [](const Option& one, const Option& other) {
      return std::tie(one.value, other.atWorst, one.parts, one.set) <
             std::tie(other.value, one.atWorst, other.parts, other.set);
    });
    double leastShare = Wants::kNoLimit;
    int leastParts = std::numeric_limits<int>::max();
    Nm mostAtWorst = std::numeric_limits<Nm>::lowest();
    for (const Option& option : options) {
      leastShare = std::min(leastShare, share(option));
      leastParts = std::min(leastParts, option.parts);
      mostAtWorst = std::max(mostAtWorst, option.atWorst);
    }
    leastShares_[cylinder] = leastShare;
    leastParts_[cylinder] = leastParts;
    mostAtWorst_[cylinder] = mostAtWorst;
  }

  double share(const Option& option) const {
    return pieces_.sortsByNearness() ? pieces_.share(option.measure.squish, option.measure.ratio)
                                     : 0.0;
  }

  bool countsPlate(std::size_t cylinder) const {
    return cylinder == 0 || !pieces_.wants.onePlateForAll;
  }

  // The options of the next cylinder that do not spread too far by what is sorted by.
  std::span<const Option> window(const Beginning& beginning) const {
    const std::span<const Option> all = options_[sets_.size()];
    if (sets_.empty()) return all;
    const Reach& reach = beginning.reach;
    const bool bySquish = pieces_.sortsBySquish();
    const double limit =
        bySquish ? pieces_.squishSpread : pieces_.wants.ratioSpread * (1.0 + kRounding) + kRounding;
    const double least = bySquish ? reach.squishLeast : reach.ratioLeast;
    const double most = bySquish ? reach.squishMost : reach.ratioMost;
    const auto first = std::ranges::lower_bound(all, most - limit, {}, &Option::value);
    const auto last = std::ranges::upper_bound(all, least + limit, {}, &Option::value);
    return {first, std::max(first, last)};
  }

  // Where the most promising options of the next cylinder lie.
  double middle(const Beginning& beginning) const {
    const Wants& wants = pieces_.wants;
    const Reach& reach = beginning.reach;
    switch (wants.sortBy) {
      case SortBy::SquishNearness:
        return pieces_.squishWanted;
      case SortBy::RatioNearness:
        return pieces_.ratioWanted;
      case SortBy::SquishSpread:
        return sets_.empty() ? 0.0 : 0.5 * reach.squishLeast + 0.5 * reach.squishMost;
      case SortBy::RatioSpread:
        break;
    }
    return sets_.empty() ? 0.0 : 0.5 * (reach.ratioLeast + reach.ratioMost);
  }

  void goOn(const Beginning& beginning) {
    if (sets_.size() == options_.size()) {
      best_.offer({beginning.key, pieces_.atWorst(beginning.reach.atWorst), beginning.parts,
                   beginning.differentParts, sets_});
      return;
    }
    outwardsFrom(middle(beginning), window(beginning),
                 [&](const Option& option) { return tryOption(beginning, option); });
  }

  // False where all that lies further out is worse than the list.
  bool tryOption(const Beginning& beginning, const Option& option) {
    if (++steps_ > kMostSteps) return false;
    Beginning next = beginning;
    next.reach.take(option.measure);
    next.key = keyWith(beginning, option, next.reach);
    next.parts += option.parts;
    double leastKey = next.key;
    int leastParts = next.parts;
    Nm mostAtWorst = pieces_.atWorst(next.reach.atWorst);
    for (std::size_t i = sets_.size() + 1; i < options_.size(); ++i) {
      leastKey += leastShares_[i];
      leastParts += leastParts_[i];
      mostAtWorst = std::min(mostAtWorst, mostAtWorst_[i]);
    }
    if (leastKey > best_.worstKey()) return false;
    if (next.reach.squishSpread() <= pieces_.squishSpread &&
        next.reach.ratioSpread() <= pieces_.wants.ratioSpread &&
        best_.mayTake(leastKey, mostAtWorst, leastParts, next.differentParts)) {
      goOnWith(option.set, next);
    }
    return true;
  }

  double keyWith(const Beginning& beginning, const Option& option, const Reach& reach) const {
    if (pieces_.sortsByNearness()) return beginning.key + share(option);
    return pieces_.sortsBySquish() ? static_cast<double>(reach.squishSpread())
                                   : reach.ratioSpread();
  }

  // Takes the parts off the shelf, goes on if there were enough, and puts them back.
  void goOnWith(const Set& set, Beginning& next) {
    const std::array places{countsPlate(sets_.size()) ? set.plate : kNone, set.baseGaskets[0],
                            set.baseGaskets[1], set.headGasket};
    bool enough = true;
    for (const int place : places) {
      if (place == kNone) continue;
      const auto part = static_cast<std::size_t>(place);
      if (used_[part] == 0) ++next.differentParts;
      enough = ++used_[part] <= pieces_.quantities[part] && enough;
    }
    sets_.push_back(set);
    if (enough) goOn(next);
    sets_.pop_back();
    for (const int place : places) {
      if (place != kNone) --used_[static_cast<std::size_t>(place)];
    }
  }

  const Pieces& pieces_;
  BestList& best_;
  Tally& tally_;
  std::int64_t steps_ = 0;
  // Of each cylinder: its options, the least that it adds to key and parts, and its largest gap at
  // worst.
  std::vector<std::vector<Option>> options_;
  std::vector<double> leastShares_;
  std::vector<int> leastParts_;
  std::vector<Nm> mostAtWorst_;
  // The beginning of a stack that is being looked at, and how many of each part it takes.
  std::vector<Set> sets_;
  std::vector<int> used_;
};

}  // namespace

bool searchMixed(const Pieces& pieces, BestList& best, Tally& tally) {
  return MixedSearch(pieces, best, tally).search();
}

}  // namespace strokewright::choice
