#pragma once
/// Inside the room: the question in whole nanometres, and how a stack is measured and ranked.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "core/choice/choice.h"

namespace strokewright::choice {

/// [nm]; limits on the inputs keep every sum far from overflow.
using Nm = std::int32_t;

constexpr double metres(double length) { return length / 1e9; }

/// What can take one place in a set: no plate or one, none to two base gaskets, one head gasket.
struct Piece {
  std::array<int, 2> parts{kNone, kNone};  ///< places on the shelf
  int count = 0;                           ///< of parts
  Nm thickness = 0;
  Nm plusMinus = 0;
  double volume = 0.0;  ///< [m3] inside a head gasket
};

/// One cylinder and its limits.
struct Bare {
  Nm deckClearance = 0;
  Nm squish = 0;  ///< gap with nothing chosen
  Nm worst = 0;
  double area = 0.0;          ///< [m3/nm]
  double sweptVolume = 0.0;   ///< [m3]
  double otherVolumes = 0.0;  ///< [m3]

  /// How fast the ratio falls with what lies under the barrel [1/nm].
  double ratioFall(double ratio) const {
    return (ratio - 1.0) * (ratio - 1.0) * area / sweptVolume;
  }

  /// Never rises with what lies under the barrel, not by a last digit either; infinite where no
  /// room is left.
  double ratio(Nm underBarrel, double gasketVolume) const {
    const double clearance = otherVolumes + gasketVolume + area * (deckClearance + underBarrel);
    if (!(clearance > 0.0)) return std::numeric_limits<double>::infinity();
    return 1.0 + sweptVolume / clearance;
  }
};

/// What a set gives in its cylinder.
struct Measure {
  Nm squish = 0;
  Nm squishAtWorst = 0;
  double ratio = 0.0;
};

/// From least to greatest of what cylinders give.
struct Reach {
  Nm squishLeast = std::numeric_limits<Nm>::max();
  Nm squishMost = std::numeric_limits<Nm>::lowest();
  double ratioLeast = std::numeric_limits<double>::infinity();
  double ratioMost = -std::numeric_limits<double>::infinity();
  Nm atWorst = std::numeric_limits<Nm>::max();  // least of the gaps at worst

  void take(const Measure& measure) {
    const auto [squish, squishAtWorst, ratio] = measure;
    atWorst = std::min(atWorst, squishAtWorst);
    squishLeast = std::min(squishLeast, squish);
    squishMost = std::max(squishMost, squish);
    ratioLeast = std::min(ratioLeast, ratio);
    ratioMost = std::max(ratioMost, ratio);
  }
  Nm squishSpread() const { return squishMost - squishLeast; }
  double ratioSpread() const { return ratioMost > ratioLeast ? ratioMost - ratioLeast : 0.0; }
};

Reach reachOf(std::span<const Measure> measures);

/// What one cylinder has to keep by itself; a limit met exactly is met.
struct Limits {
  Nm squishLeast = 0;
  Nm squishMost = 0;
  Nm leastAtWorst = 0;
  double ratioLeast = 0.0;
  double ratioMost = 0.0;
};

/// The question, checked and in whole numbers.
struct Pieces {
  /// @throws describe::Refusal as choose()
  explicit Pieces(const Question& question);

  Wants wants;
  Nm squishWanted = 0;
  double ratioWanted = 0.0;
  Limits limits;
  Nm squishSpread = 0;
  std::vector<Piece> plates;  ///< "none" among them where that is allowed
  std::vector<Piece> baseSets;
  std::vector<Piece> headGaskets;
  std::vector<Bare> cylinders;
  std::vector<int> quantities;  ///< of each part on the shelf, in how many cylinders it may lie
  std::vector<bool> servesAll;  ///< of each: it lies in all cylinders or in none

  bool sortsByNearness() const {
    return wants.sortBy == SortBy::SquishNearness || wants.sortBy == SortBy::RatioNearness;
  }
  bool sortsBySquish() const {
    return wants.sortBy == SortBy::SquishNearness || wants.sortBy == SortBy::SquishSpread;
  }
  /// What decides between stacks that are equally near, the larger the better: a gap at worst. All
  /// are alike in that where spread sorts.
  Nm atWorst(Nm gap) const { return sortsByNearness() ? gap : 0; }
  /// What one cylinder adds to the key where nearness sorts.
  double share(Nm squish, double ratio) const;
  /// What the stacks are sorted by.
  double key(std::span<const Measure> measures) const;
  /// The key as Stack::rank.
  double rank(double key) const;
};

Piece plateOf(const std::vector<Part>& shelf, int plate);
Piece baseSetOf(const std::vector<Part>& shelf, const std::array<int, 2>& gaskets);
Piece headGasketOf(const std::vector<Part>& shelf, int gasket);

/// By the order of the shelf, none first.
bool operator<(const Set& one, const Set& other);

Set setOf(const Piece& plate, const Piece& baseSet, const Piece& headGasket);
Measure measureOf(const Bare& cylinder, const Piece& plate, const Piece& baseSet,
                  const Piece& headGasket);

/// Whether there are enough parts for one such piece in each of so many cylinders.
bool enoughOf(const Pieces& pieces, const Piece& piece, int cylinders);

/// All cylinders get the same parts.
bool allAlike(const Pieces& pieces);

/// First of the reasons that a cylinder has by itself; Reason::Beaten for none.
Reason ownReason(const Pieces& pieces, const Measure& measure);

/// A part that serves all cylinders and does not lie in both of these alike; kNone: there is none.
int unlikeForAll(const Pieces& pieces, const Set& one, const Set& other);

/// How many of each part on the shelf a stack needs.
std::vector<int> needs(const Pieces& pieces, std::span<const Set> sets);

/// Loss without its numbers; Reason::Beaten where all limits are met.
struct Verdict {
  Reason reason = Reason::Beaten;
  int cylinder = kNone;
  int part = kNone;
};
Verdict verdictOn(const Pieces& pieces, std::span<const Set> sets,
                  std::span<const Measure> measures);

/// What a stack is ranked by, but for the order of the shelf; the less the better.
struct Rank {
  double key = 0.0;
  Nm atWorst = 0;  ///< Pieces::atWorst() of the least of its gaps
  int parts = 0;
  int differentParts = 0;

  bool operator<(const Rank& other) const;
};

/// A stack within all limits, in the order of the list.
struct Candidate {
  Rank rank;
  std::vector<Set> sets;

  bool operator<(const Candidate& other) const;
};

/// Ranks a stack and counts its parts.
Candidate candidateOf(const Pieces& pieces, std::span<const Measure> measures,
                      std::vector<Set> sets);

/// The best so far.
class BestList {
 public:
  /// No stack with a greater key comes onto the list.
  double worstKey() const {
    return full() ? candidates_.back().rank.key : std::numeric_limits<double>::infinity();
  }
  /// Whether a stack that is ranked no better than this could come onto the list.
  /// @param beginning the sets of its first cylinders
  bool mayTake(const Rank& rank, std::span<const Set> beginning = {}) const;
  void offer(Candidate candidate);
  const std::vector<Candidate>& candidates() const { return candidates_; }

 private:
  bool full() const { return candidates_.size() == kBestCount; }

  std::vector<Candidate> candidates_;
};

/// A stack in SI; what its sets measure is added to the measures.
Stack stackOf(const Question& question, const Pieces& pieces, const std::vector<Set>& sets,
              std::vector<Measure>& measures);

/// The list in SI.
std::vector<Stack> stacksOf(const Question& question, const Pieces& pieces, const BestList& best);

}  // namespace strokewright::choice
