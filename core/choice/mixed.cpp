// Cylinders may differ. What all share makes groups of stacks, which are counted, and looked at
// from the most promising one on. In a group every cylinder gathers the sets nearest to what is
// wanted, as many as can come onto the list and no more than are kept. Then one cylinder after the
// other tries its sets, and gives up where no stack that begins like this one can come onto the
// list.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <limits>
#include <numeric>
#include <optional>
#include <span>
#include <tuple>
#include <vector>

#include "core/choice/rows.h"
#include "core/choice/search.h"

namespace strokewright::choice {
namespace {

constexpr std::int64_t kStepsOfCell = 25;  // what it takes to gather what is in one
constexpr double kRounding = 1e-9;         // far more than a ratio is rounded by
constexpr double kSumRounding = 1e-12;     // far more than a sum of shares is rounded by

// What one cylinder may get: within its own limits. The better come first.
struct Option {
  double far = 0.0;    // its share of the key; where spread sorts, the distance from the middle
  double value = 0.0;  // what is sorted by, of this cylinder: gap [nm] or ratio
  Nm atWorst = 0;      // Pieces::atWorst() of its gap
  int parts = 0;
  Set set = {};
  Measure measure = {};

  bool operator<(const Option& other) const {
    return std::tie(far, other.atWorst, parts, set) <
           std::tie(other.far, atWorst, other.parts, other.set);
  }
};

// What may lie under the barrel of one cylinder with one head gasket.
struct Cell {
  Bounds bounds;
  const Piece* headGasket = nullptr;
  Nm middle = 0;  // what would hit it
};

// Sorted pieces that may lie beside another one under a head gasket, from the middle to one side:
// run by run of equally thick ones, each from its first.
struct Lane {
  const Piece* beside = nullptr;
  const Cell* cell = nullptr;
  int first = 0;  // start of the run that it ends with
  int start = 0;  // of the run that it is in
  int end = 0;
  int at = 0;
  Option option = {};
};

// Stacks that share what lies between these places. Equally thick pieces make twins of it, of which
// only the first is kept: the next ones lie one place further.
struct Group {
  int firstBeside = 0;
  int lastBeside = 0;
  int firstHeadGasket = 0;
  int lastHeadGasket = 0;
  int twins = 1;
  Rank rank = {};  // no stack of theirs is ranked better
};

// What a group has for a cylinder. Of what may close too far at worst nothing is known yet, so that
// it may be less.
struct Outlook {
  Option nearest = {.far = std::numeric_limits<double>::infinity()};
  Reach reach;
  int fewestParts = std::numeric_limits<int>::max();
};

// The beginning of a stack: what the first cylinders get.
struct Beginning {
  Reach reach;
  double key = 0.0;
  int parts = 0;
  int differentParts = 0;
};

// The best of what a cylinder has gathered. Where stacks are equally near, those options count that
// add least to the key.
struct Best {
  double far = 0.0;
  Nm atWorst = std::numeric_limits<Nm>::lowest();
  int parts = std::numeric_limits<int>::max();
};

// Visits options sorted by value from the middle outwards, the nearer end first. An end is left
// when the visit returns false.
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
  MixedSearch(const Pieces& pieces, const Effort& effort, BestList& best, Tally& tally)
      : pieces_(pieces),
        effort_(effort),
        best_(best),
        tally_(tally),
        sought_(pieces.wants.sameGasketsInAll ? pieces.plates : pieces.baseSets),
        beside_(pieces.wants.sameGasketsInAll ? pieces.baseSets : pieces.plates),
        middle_(pieces.sortsBySquish() ? pieces.squishWanted : pieces.ratioWanted),
        finders_(pieces.cylinders.size(), RowFinder(sought_)),
        outlooks_(pieces.cylinders.size()),
        options_(pieces.cylinders.size()),
        firstDropped_(pieces.cylinders.size()),
        bests_(pieces.cylinders.size()),
        used_(pieces.quantities.size()) {}

  Searched search() {
    countGroups();
    const auto after = [](const Group& one, const Group& other) { return other.rank < one.rank; };
    std::ranges::make_heap(groups_, after);
    while (!groups_.empty() && best_.mayTake(groups_.front().rank) && !tooLong()) {
      std::ranges::pop_heap(groups_, after);
      Group group = groups_.back();
      groups_.pop_back();
      for (int i = 0; i < group.twins && !tooLong(); ++i) {
        searchIn(group);
        ++group.firstBeside;
        ++group.lastBeside;
      }
      if (tooLong()) leastLeft_ = std::min(leastLeft_, group.rank.key);
    }
    if (tooLong() && !groups_.empty()) {
      leastLeft_ = std::min(leastLeft_, groups_.front().rank.key);
    }
    tally_.undecided -= static_cast<double>(best_.candidates().size());
    return {.all = !tooLong() && !(dropped_ && best_.mayTake(*dropped_)),
            .noneNearer = noneNearer()};
  }

 private:
  bool tooLong() const { return steps_ > effort_.steps; }

  // By the keys that what was left out cannot go under. Sums of whole nanometres are exact.
  bool noneNearer() const {
    if (best_.candidates().empty()) return false;
    const double least = dropped_ ? std::min(leastLeft_, dropped_->key) : leastLeft_;
    const double rounding = pieces_.sortsBySquish() ? 0.0 : kRounding;
    return best_.candidates().back().rank.key <= least * (1.0 - rounding);
  }

  std::size_t cylinders() const { return pieces_.cylinders.size(); }

  bool countsPlate(std::size_t cylinder) const {
    return cylinder == 0 || !pieces_.wants.onePlateForAll;
  }

  void countGroups() {
    const bool sameGaskets = pieces_.wants.sameGasketsInAll;
    const int headGaskets = static_cast<int>(pieces_.headGaskets.size());
    const int besideEach = sameGaskets || pieces_.wants.onePlateForAll ? 1 : beside_.size();
    const int headGasketsEach = sameGaskets ? 1 : headGaskets;
    for (int headGasket = 0; headGasket < headGaskets; headGasket += headGasketsEach) {
      Group group{.firstHeadGasket = headGasket, .lastHeadGasket = headGasket + headGasketsEach};
      const std::vector<Cell>& cells = cells_.emplace_back(cellsOf(group, pieces_.limits));
      for (int beside = 0; beside < beside_.size(); beside += besideEach * group.twins) {
        group.firstBeside = beside;
        group.lastBeside = beside + besideEach;
        group.twins = besideEach == 1 ? twinsOf(beside) : 1;
        const Tally counted = count(group, cells);
        add(counted, group.twins);
        if (counted.undecided == 0.0) continue;
        group.rank = rankSeen();
        groups_.push_back(group);
      }
    }
  }

  // How many pieces from this one on no limit and no nearness tells apart. It has the fewest parts.
  int twinsOf(int beside) const {
    const Piece& first = beside_.at(beside);
    int end = beside;
    while (end < beside_.size() && beside_.at(end).thickness == first.thickness &&
           beside_.at(end).plusMinus == first.plusMinus) {
      ++end;
    }
    return end - beside;
  }

  void add(const Tally& counted, int times) {
    tally_.considered += times * counted.considered;
    tally_.undecided += times * counted.undecided;
    for (std::size_t i = 0; i < kReasonCount; ++i) tally_.lost[i] += times * counted.lost[i];
  }

  // Those of the first cylinder for each head gasket of the group, then those of the next.
  std::vector<Cell> cellsOf(const Group& group, const Limits& limits) const {
    const Nm thickest = sought_.thickest() + beside_.thickest();
    std::vector<Cell> cells;
    for (const Bare& cylinder : pieces_.cylinders) {
      for (int i = group.firstHeadGasket; i < group.lastHeadGasket; ++i) {
        const Piece& headGasket = pieces_.headGaskets[static_cast<std::size_t>(i)];
        const auto over = [&](Nm x) { return cylinder.ratio(x, headGasket.volume) > middle_; };
        cells.push_back(
            {.bounds = Bounds(limits, std::span(&cylinder, 1), headGasket, thickest),
             .headGasket = &headGasket,
             .middle = pieces_.sortsBySquish()
                           ? static_cast<Nm>(middle_) - cylinder.squish - headGasket.thickness
                           : firstNot(over, thickest)});
      }
    }
    return cells;
  }

  // Visits what a cylinder of the group may have: for each cell and piece beside the row of those
  // sought that may lie with them. What may not is put into the tally.
  template <typename Visit>
  void forRows(const Group& group, std::span<const Cell> cells, std::size_t cylinder, Tally& tally,
               Visit visit) {
    const std::size_t each = cells.size() / cylinders();
    for (const Cell& cell : cells.subspan(cylinder * each, each)) {
      for (int i = group.firstBeside; i < group.lastBeside; ++i) {
        const Piece& beside = beside_.at(i);
        const Row row = finders_[cylinder].find(beside, cell.bounds, tally);
        tally.lostTo(Reason::Beaten) += row.within;
        if (row.within == 0) continue;
        const int middle = sought_.firstNotUnder(cell.middle - beside.thickness);
        visit(cell, beside, row, std::clamp(middle, row.first, row.last));
      }
    }
  }

  int partsBeside(std::size_t cylinder, const Piece& beside) const {
    const bool counts = pieces_.wants.sameGasketsInAll || countsPlate(cylinder);
    return counts ? beside.count : 0;
  }

  Option optionOf(std::size_t cylinder, const Cell& cell, const Piece& beside, int place) const {
    const bool sameGaskets = pieces_.wants.sameGasketsInAll;
    const Piece& sought = sought_.at(place);
    const Piece& plate = sameGaskets ? sought : beside;
    const Piece& baseSet = sameGaskets ? beside : sought;
    const Measure measure =
        measureOf(pieces_.cylinders[cylinder], plate, baseSet, *cell.headGasket);
    const double value = pieces_.sortsBySquish() ? measure.squish : measure.ratio;
    return {.far = pieces_.sortsByNearness() ? pieces_.share(measure.squish, measure.ratio)
                                             : std::abs(value - middle_),
            .value = value,
            .atWorst = pieces_.atWorst(measure.squishAtWorst),
            .parts = partsBeside(cylinder, beside) + sought.count + cell.headGasket->count,
            .set = setOf(plate, baseSet, *cell.headGasket),
            .measure = measure};
  }

  Outlook outlook(const Group& group, std::span<const Cell> cells, std::size_t cylinder,
                  Tally& tally) {
    Outlook seen;
    const auto see = [&](const Cell& cell, const Piece& beside, const Row& row, int middle) {
      const auto at = [&](int place) { return optionOf(cylinder, cell, beside, place); };
      seen.reach.take(at(row.first).measure);
      seen.reach.take(at(row.last - 1).measure);
      const int parts =
          partsBeside(cylinder, beside) + sought_.fewestParts() + cell.headGasket->count;
      seen.fewestParts = std::min(seen.fewestParts, parts);
      if (!pieces_.sortsByNearness()) return;
      if (middle < row.last) seen.nearest = std::min(seen.nearest, at(middle));
      if (middle > row.first) {
        seen.nearest = std::min(seen.nearest, at(sought_.runStart(middle - 1)));
      }
    };
    forRows(group, cells, cylinder, tally, see);
    return seen;
  }

  // Fills the outlooks. A stack meets a limit when every cylinder does, so that the tally is a
  // product over the cylinders.
  Tally count(const Group& group, std::span<const Cell> cells) {
    std::array<double, kReasonCount> meeting;  // stacks that lose for this reason or a later one
    meeting.fill(1.0);
    for (std::size_t i = 0; i < cylinders(); ++i) {
      Tally ofCylinder;
      outlooks_[i] = outlook(group, cells, i, ofCylinder);
      double left = 0.0;
      for (std::size_t reason = kReasonCount; reason-- > 0;) {
        left += ofCylinder.lost[reason];
        meeting[reason] *= left;
      }
    }
    Tally counted{.considered = meeting.front(), .undecided = meeting.back()};
    for (std::size_t reason = 0; reason + 1 < kReasonCount; ++reason) {
      counted.lost[reason] = meeting[reason] - meeting[reason + 1];
    }
    return counted;
  }

  // No stack is ranked better, by the outlooks. Whole nanometres are equal or not; a ratio may be
  // rounded, so that it decides nothing between the nearly equal.
  Rank rankSeen() const {
    Rank rank{.atWorst = pieces_.atWorst(std::numeric_limits<Nm>::max())};
    for (const Outlook& seen : outlooks_) {
      rank.parts += seen.fewestParts;
      if (!pieces_.sortsByNearness()) continue;
      rank.key += seen.nearest.far;
      if (pieces_.sortsBySquish()) rank.atWorst = std::min(rank.atWorst, seen.nearest.atWorst);
    }
    if (!pieces_.sortsByNearness()) rank.key = leastSpread(commonReach());
    return rank;
  }

  // From the greatest of what the cylinders have at least to the least of what they have at most.
  Reach commonReach() const {
    Reach common{.squishLeast = std::numeric_limits<Nm>::lowest(),
                 .squishMost = std::numeric_limits<Nm>::max(),
                 .ratioLeast = -std::numeric_limits<double>::infinity(),
                 .ratioMost = std::numeric_limits<double>::infinity()};
    for (const auto& [nearest, reach, fewestParts] : outlooks_) {
      common.squishLeast = std::max(common.squishLeast, reach.squishLeast);
      common.squishMost = std::min(common.squishMost, reach.squishMost);
      common.ratioLeast = std::max(common.ratioLeast, reach.ratioLeast);
      common.ratioMost = std::min(common.ratioMost, reach.ratioMost);
    }
    return common;
  }

  double leastSpread(const Reach& common) const {
    const double apart = pieces_.sortsBySquish() ? common.squishLeast - common.squishMost
                                                 : common.ratioLeast - common.ratioMost;
    return std::max(apart, 0.0);
  }

  // Within their limits, and no further from what the others can have than they may be apart.
  Limits limitsWithin(const Reach& common) const {
    const SortBy sortBy = pieces_.wants.sortBy;
    const double worst = best_.worstKey();
    const Nm squishSpread = sortBy == SortBy::SquishSpread && worst < pieces_.squishSpread
                                ? static_cast<Nm>(worst)
                                : pieces_.squishSpread;
    double ratioSpread = pieces_.wants.ratioSpread;
    if (sortBy == SortBy::RatioSpread) ratioSpread = std::min(ratioSpread, worst);
    ratioSpread += kRounding * (common.ratioMost + ratioSpread);
    Limits limits = pieces_.limits;
    limits.squishLeast = std::max(limits.squishLeast, common.squishLeast - squishSpread);
    limits.squishMost = std::min(limits.squishMost, common.squishMost + squishSpread);
    limits.ratioLeast = std::max(limits.ratioLeast, common.ratioLeast - ratioSpread);
    limits.ratioMost = std::min(limits.ratioMost, common.ratioMost + ratioSpread);
    return limits;
  }

  void searchIn(const Group& group) {
    Tally counted;  // before
    const int headGaskets = group.lastHeadGasket - group.firstHeadGasket;
    const std::span<const Cell> all =
        cells_[static_cast<std::size_t>(group.firstHeadGasket / headGaskets)];
    steps_ += kStepsOfCell * static_cast<std::int64_t>(all.size());
    for (std::size_t i = 0; i < cylinders(); ++i) outlooks_[i] = outlook(group, all, i, counted);
    if (!best_.mayTake(rankSeen())) return;
    const Reach common = commonReach();
    if (pieces_.wants.sortBy == SortBy::SquishSpread) {
      middle_ = std::midpoint(common.squishLeast, common.squishMost);
    }
    if (pieces_.wants.sortBy == SortBy::RatioSpread) {
      middle_ = std::midpoint(common.ratioLeast, common.ratioMost);
    }
    const std::vector<Cell> near = cellsOf(group, limitsWithin(common));
    for (std::size_t i = 0; i < cylinders(); ++i) {
      gather(group, near, i);
      if (options_[i].empty()) return;
    }
    noteBest();
    noteDropped();
    if (!pieces_.sortsByNearness()) {
      for (std::vector<Option>& options : options_) {
        std::ranges::sort(options, [](const Option& one, const Option& other) {
          return std::tie(one.value, one.parts, one.set) <
                 std::tie(other.value, other.parts, other.set);
        });
      }
    }
    goOn({});
  }

  // What a cylinder may add to the key of a stack that comes onto the list.
  double mostFar(std::size_t cylinder) const {
    if (!pieces_.sortsByNearness()) return std::numeric_limits<double>::infinity();
    double others = 0.0;
    for (std::size_t i = 0; i < cylinders(); ++i) {
      if (i != cylinder) others += outlooks_[i].nearest.far;
    }
    return best_.worstKey() * (1.0 + kSumRounding) - others * (1.0 - kSumRounding);
  }

  // Takes the best that a cylinder may have, as far as they can come onto the list.
  void gather(const Group& group, std::span<const Cell> cells, std::size_t cylinder) {
    options_[cylinder].clear();
    firstDropped_[cylinder].reset();
    Tally counted;  // before
    std::vector<Lane> lanes = lanesOf(group, cells, cylinder, counted);
    if (!pieces_.sortsByNearness() &&
        counted.lostTo(Reason::Beaten) <= static_cast<double>(effort_.setsToSpread)) {
      takeAll(lanes, cylinder);
    } else {
      takeBest(lanes, cylinder);
    }
  }

  void takeAll(std::vector<Lane>& lanes, std::size_t cylinder) {
    for (Lane& lane : lanes) {
      do {
        options_[cylinder].push_back(lane.option);
        ++lane.at;
      } while (settle(lane, cylinder));
    }
  }

  void takeBest(std::vector<Lane>& lanes, std::size_t cylinder) {
    const auto after = [](const Lane* one, const Lane* other) {
      return other->option < one->option;
    };
    const std::size_t most = pieces_.sortsByNearness() ? effort_.nearestSets : effort_.setsToSpread;
    const double mostFar = this->mostFar(cylinder);
    std::vector<Option>& options = options_[cylinder];
    std::vector<Lane*> heap;
    for (Lane& lane : lanes) {
      if (lane.option.far <= mostFar) heap.push_back(&lane);
    }
    std::ranges::make_heap(heap, after);
    while (!heap.empty() && heap.front()->option.far <= mostFar) {
      if (options.size() == most) {
        firstDropped_[cylinder] = heap.front()->option;
        return;
      }
      ++steps_;
      std::ranges::pop_heap(heap, after);
      Lane& nearest = *heap.back();
      options.push_back(nearest.option);
      ++nearest.at;
      if (settle(nearest, cylinder)) {
        std::ranges::push_heap(heap, after);
      } else {
        heap.pop_back();
      }
    }
  }

  std::vector<Lane> lanesOf(const Group& group, std::span<const Cell> cells, std::size_t cylinder,
                            Tally& tally) {
    std::vector<Lane> lanes;
    const auto add = [&](Lane lane) {
      if (settle(lane, cylinder)) lanes.push_back(lane);
    };
    forRows(group, cells, cylinder, tally,
            [&](const Cell& cell, const Piece& beside, const Row& row, int middle) {
              add({.beside = &beside,
                   .cell = &cell,
                   .first = middle,
                   .start = middle,
                   .end = row.last,
                   .at = middle});
              add({.beside = &beside,
                   .cell = &cell,
                   .first = row.first,
                   .start = middle,
                   .end = middle,
                   .at = middle});
            });
    return lanes;
  }

  // Goes on to the next piece that may be chosen, unless it is at one; false where there is none.
  bool settle(Lane& lane, std::size_t cylinder) const {
    for (;; ++lane.at) {
      if (lane.at == lane.end) {
        if (lane.start == lane.first) return false;
        lane.end = lane.start;
        lane.start = sought_.runStart(lane.end - 1);
        lane.at = lane.start;
      }
      const Piece& piece = sought_.at(lane.at);
      if (lane.cell->bounds.safeAtWorst(*lane.beside, piece) && enoughOf(pieces_, piece, 1)) break;
    }
    lane.option = optionOf(cylinder, *lane.cell, *lane.beside, lane.at);
    return true;
  }

  // Where nearness sorts, what is equally near to the last digit of the key has to be reckoned
  // with.
  void noteBest() {
    double most = 0.0;  // of any key
    for (const std::vector<Option>& options : options_) most += options.back().far;
    for (std::size_t i = 0; i < cylinders(); ++i) {
      const bool nearness = pieces_.sortsByNearness();
      bests_[i] = {.far = nearness ? options_[i].front().far : 0.0};
      for (const Option& option : options_[i]) {
        if (nearness && option.far > bests_[i].far + kSumRounding * most) break;
        bests_[i].atWorst = std::max(bests_[i].atWorst, option.atWorst);
        bests_[i].parts = std::min(bests_[i].parts, option.parts);
      }
    }
  }

  void noteDropped() {
    for (std::size_t i = 0; i < cylinders(); ++i) {
      if (!firstDropped_[i]) continue;
      const Rank rank = rankDropped(i);
      if (!dropped_ || rank < *dropped_) dropped_ = rank;
    }
  }

  // No stack with an option that the cylinder did not keep is ranked better. None of those options
  // comes before the first of them.
  Rank rankDropped(std::size_t cylinder) const {
    const Option& first = *firstDropped_[cylinder];
    Rank rank{.atWorst = pieces_.atWorst(std::numeric_limits<Nm>::max())};
    if (!pieces_.sortsByNearness()) {
      rank.key = leastSpread(commonReach());
      for (const Outlook& seen : outlooks_) rank.parts += seen.fewestParts;
      return rank;
    }
    for (std::size_t i = 0; i < cylinders(); ++i) {
      rank.key += i == cylinder ? first.far : bests_[i].far;
      if (i != cylinder) rank.atWorst = std::min(rank.atWorst, bests_[i].atWorst);
    }
    // As in rankSeen().
    if (!pieces_.sortsBySquish()) {
      return {.key = rank.key * (1.0 - kRounding), .atWorst = std::numeric_limits<Nm>::max()};
    }
    // If this gap at worst decides, what was not kept and is as near and as safe has as many parts.
    const bool decides = first.atWorst <= rank.atWorst;
    if (decides) rank.atWorst = first.atWorst;
    for (std::size_t i = 0; i < cylinders(); ++i) {
      if (i != cylinder) rank.parts += fewestParts(i, rank.atWorst);
    }
    rank.parts += decides ? first.parts : outlooks_[cylinder].fewestParts;
    return rank;
  }

  // Of options that add least to the key and have at least this gap at worst, kept or not.
  int fewestParts(std::size_t cylinder, Nm atWorst) const {
    const Best& kept = bests_[cylinder];
    const std::optional<Option>& first = firstDropped_[cylinder];
    if (!first || first->far > kept.far) return kept.parts;
    return std::min(kept.parts,
                    first->atWorst <= atWorst ? first->parts : outlooks_[cylinder].fewestParts);
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

  // Where the next cylinder spreads least.
  double middleOf(const Beginning& beginning) const {
    const Reach& reach = beginning.reach;
    if (sets_.empty()) return middle_;
    return pieces_.sortsBySquish() ? 0.5 * reach.squishLeast + 0.5 * reach.squishMost
                                   : 0.5 * (reach.ratioLeast + reach.ratioMost);
  }

  void goOn(const Beginning& beginning) {
    if (sets_.size() == cylinders()) {
      best_.offer({rankOf(beginning, sets_.size()), sets_});
      return;
    }
    const auto visit = [&](const Option& option) { return tryOption(beginning, option); };
    if (pieces_.sortsByNearness()) {
      std::ranges::all_of(options_[sets_.size()], visit);
    } else {
      outwardsFrom(middleOf(beginning), window(beginning), visit);
    }
  }

  // That of the beginning of so many cylinders with the best that is left for the others.
  Rank rankOf(const Beginning& beginning, std::size_t many) const {
    Rank rank{.key = beginning.key,
              .atWorst = pieces_.atWorst(beginning.reach.atWorst),
              .parts = beginning.parts,
              .differentParts = beginning.differentParts};
    for (std::size_t i = many; i < cylinders(); ++i) {
      rank.key += bests_[i].far;
      rank.atWorst = std::min(rank.atWorst, bests_[i].atWorst);
      rank.parts += bests_[i].parts;
    }
    return rank;
  }

  // False where all that come after it are worse than the list.
  bool tryOption(const Beginning& beginning, const Option& option) {
    ++steps_;
    if (tooLong()) return false;
    Beginning next = beginning;
    next.reach.take(option.measure);
    next.key = keyWith(beginning, option, next.reach);
    next.parts += option.parts;
    const Rank rank = rankOf(next, sets_.size() + 1);
    if (rank.key > best_.worstKey()) return false;
    if (best_.mayTake(rank) && next.reach.squishSpread() <= pieces_.squishSpread &&
        next.reach.ratioSpread() <= pieces_.wants.ratioSpread) {
      goOnWith(option.set, next, rank);
    }
    return true;
  }

  double keyWith(const Beginning& beginning, const Option& option, const Reach& reach) const {
    if (pieces_.sortsByNearness()) return beginning.key + option.far;
    return pieces_.sortsBySquish() ? static_cast<double>(reach.squishSpread())
                                   : reach.ratioSpread();
  }

  // Takes the parts off the shelf, goes on if there were enough and it can come onto the list, and
  // puts them back.
  void goOnWith(const Set& set, Beginning& next, Rank rank) {
    const std::array places{countsPlate(sets_.size()) ? set.plate : kNone, set.baseGaskets[0],
                            set.baseGaskets[1], set.headGasket};
    bool enough = sets_.empty() || unlikeForAll(pieces_, sets_.front(), set) == kNone;
    for (const int place : places) {
      if (place == kNone) continue;
      const auto part = static_cast<std::size_t>(place);
      if (used_[part] == 0) ++next.differentParts;
      enough = ++used_[part] <= pieces_.quantities[part] && enough;
    }
    sets_.push_back(set);
    rank.differentParts = next.differentParts;
    if (enough && best_.mayTake(rank, sets_)) goOn(next);
    sets_.pop_back();
    for (const int place : places) {
      if (place != kNone) --used_[static_cast<std::size_t>(place)];
    }
  }

  const Pieces& pieces_;
  Effort effort_;
  BestList& best_;
  Tally& tally_;
  std::int64_t steps_ = 0;
  // Base sets are sought, and lie beside a plate; where all cylinders share the gaskets, plates
  // are.
  SortedPieces sought_;
  SortedPieces beside_;
  std::vector<Group> groups_;
  std::vector<std::vector<Cell>> cells_;  // of the head gaskets of each group
  double middle_;                         // what is wanted; where spread sorts, what all can have
  double leastLeft_ =
      std::numeric_limits<double>::infinity();  // key of groups not searched through
  std::optional<Rank> dropped_;  // none of the stacks that were passed over unseen is ranked better
  // Of each cylinder.
  std::vector<RowFinder> finders_;
  std::vector<Outlook> outlooks_;
  std::vector<std::vector<Option>> options_;
  std::vector<std::optional<Option>> firstDropped_;
  std::vector<Best> bests_;
  // The beginning of a stack that is being looked at, and how many of each part it takes.
  std::vector<Set> sets_;
  std::vector<int> used_;
};

}  // namespace

Searched searchMixed(const Pieces& pieces, BestList& best, Tally& tally, const Effort& effort) {
  return MixedSearch(pieces, effort, best, tally).search();
}

}  // namespace strokewright::choice
