#pragma once
/// Which gaskets, shims and plate of those at hand, for which cylinder?
///
/// A stack is what lies in all cylinders together; a set is what lies in one of them. Lengths are
/// compared as whole nanometres: every thickness in hundredths, in thousandths of an inch or in
/// sixty-fourths is one, so that sums are exact and ties are ties.

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

namespace strokewright::choice {

enum class Role : std::uint8_t {
  BaseGasket,  ///< also a shim under one barrel
  Plate,       ///< spacer under the barrels
  HeadGasket,
};

/// One kind of part on the shelf.
struct Part {
  Role role = Role::BaseGasket;
  double thickness = 0.0;      ///< [m] compressed; 0 to 100 mm
  double plusMinus = 0.0;      ///< [m] limit of error of the thickness; 0 to 100 mm
  double bore = 0.0;           ///< [m] > 0, head gaskets only: diameter of the hole
  double borePlusMinus = 0.0;  ///< [m] limit of error of the bore; only what is typed carries it
  /// How many there are, 0 or more; nothing: can be bought, any number.
  std::optional<int> quantity = std::nullopt;
  bool servesAll = false;  ///< one piece for all cylinders: it lies in all of them or in none
  int line = 0;            ///< of the shelf it is on, from 1; 0: not said
  bool operator==(const Part&) const = default;
};

/// One cylinder without what is to be chosen.
struct Cylinder {
  double deckClearanceBare = 0.0;   ///< [m] crown below the deck with no base gasket and no plate
  double squishBare = 0.0;          ///< [m] recess of the head less crown rise, added to the gap
  double bore = 0.0;                ///< [m] > 0
  double sweptVolume = 0.0;         ///< [m3] > 0
  double volumesBesideStack = 0.0;  ///< [m3] above the piston, without head gasket and deck volume
  double worst = 0.0;               ///< [m] worst-case ± of the gap from all that is not chosen
  int number = 0;                   ///< it goes by
  bool operator==(const Cylinder&) const = default;
};

enum class SortBy : std::uint8_t {
  SquishNearness,  ///< root mean square of the distances from the wanted gap
  RatioNearness,   ///< root mean square of the distances from the wanted ratio
  SquishSpread,    ///< the same in all stacks where all cylinders get the same parts
  RatioSpread,
};

/// What a stack has to meet; a limit met exactly is met. Limits not given are infinite.
struct Wants {
  static constexpr double kNoLimit = std::numeric_limits<double>::infinity();

  std::optional<double> squish = std::nullopt;  ///< [m] wanted
  double squishLeast = -kNoLimit;               ///< [m]
  double squishMost = kNoLimit;                 ///< [m]
  double leastAtWorst = -kNoLimit;  ///< [m] the gap less its worst-case ± may not be under it
  std::optional<double> ratio = std::nullopt;  ///< wanted
  double ratioLeast = -kNoLimit;
  double ratioMost = kNoLimit;
  double squishSpread = kNoLimit;  ///< [m] greatest gap less least gap of the cylinders
  double ratioSpread = kNoLimit;
  int baseGasketsLeast = 0;      ///< in each cylinder, 0 to 2
  int baseGasketsMost = 2;       ///< in each cylinder, 0 to 2
  bool plateNeeded = false;      ///< otherwise a stack may also do without
  bool onePlateForAll = true;    ///< one piece of metal under all barrels; else each its own
  bool sameGasketsInAll = true;  ///< else base gaskets and head gasket may differ
  SortBy sortBy = SortBy::SquishNearness;
  bool operator==(const Wants&) const = default;
};

struct Question {
  std::vector<Part> shelf;
  std::vector<Cylinder> cylinders;
  Wants wants;
  bool operator==(const Question&) const = default;
};

inline constexpr int kNone = -1;

/// What one cylinder gets, as places on the shelf.
struct Set {
  int plate = kNone;
  std::array<int, 2> baseGaskets{kNone, kNone};  ///< the lower place first, kNone last
  int headGasket = kNone;

  bool operator==(const Set&) const = default;
};

/// A set with what it gives in its cylinder.
struct Fit {
  Set set;
  double deckClearance = 0.0;  ///< [m]
  double squish = 0.0;         ///< [m] as deck::squishGap()
  double squishAtWorst = 0.0;  ///< [m] less the worst-case ±, that of the chosen parts included
  double ratio = 0.0;  ///< as chamber::compressionRatio(); infinite: no room above the crown
};

/// One set for each cylinder, and how good they are together.
struct Stack {
  std::vector<Fit> cylinders;
  double squishSpread = 0.0;  ///< [m]
  double ratioSpread = 0.0;
  double rank = 0.0;  ///< what SortBy says, [m] or ratio; the less the better
  int parts = 0;      ///< a plate for all counts once
  int differentParts = 0;
};

/// Why a stack lost. Of several reasons the first in this order stands, and for that the first
/// cylinder. But where all cylinders get the same parts, gaps too far apart come first: they are so
/// in every stack, and no part mends it.
enum class Reason : std::uint8_t {
  TooClose,         ///< gap under the least
  TooCloseAtWorst,  ///< gap less its worst-case ± under what it may be
  TooWide,          ///< gap over the most
  RatioOver,
  RatioUnder,
  /// It needs more of a part than there are, or a part that serves all cylinders in some alone.
  TooFew,
  SquishSpreadOver,
  RatioSpreadOver,
  Beaten,  ///< within all limits, but others are better
};
inline constexpr std::size_t kReasonCount = static_cast<std::size_t>(Reason::Beaten) + 1;

/// The reason with its numbers: "value" where "limit" stands.
struct Loss {
  Reason reason = Reason::Beaten;
  int cylinder = kNone;  ///< first one concerned, from 0; kNone where it concerns them together
  int part = kNone;      ///< place on the shelf, of TooFew
  double value = 0.0;    ///< [m], ratio, or number needed; of Beaten its rank
  double limit = 0.0;  ///< [m], ratio, or number there; of Beaten the rank of the last on the list
};

/// How many stacks lost for which reason. Whole numbers, exact up to 2^53.
struct Tally {
  double considered = 0.0;
  std::array<double, kReasonCount> lost{};
  /// Where cylinders may differ: stacks that meet the limits of every cylinder by itself and are
  /// not on the list. They are passed over in bulk, so that TooFew, both spreads and Beaten are not
  /// told apart.
  double undecided = 0.0;

  double& lostTo(Reason reason) { return lost.at(static_cast<std::size_t>(reason)); }
  double lostTo(Reason reason) const { return lost.at(static_cast<std::size_t>(reason)); }
};

inline constexpr std::size_t kBestCount = 20;

struct Answer {
  /// At most kBestCount: the least rank first; of equally near ones the larger gap at worst (the
  /// least of the cylinders'); then fewer parts, then fewer different parts, then the order of the
  /// shelf, cylinder by cylinder.
  std::vector<Stack> best;
  Tally tally;
  /// False where cylinders may differ and the search had to stop, or to pass over sets that cannot
  /// be proven worse: there are too many stacks that nearly meet the limits, and better ones than
  /// those on the list may exist.
  bool searchedAll = true;
  /// Where it had to stop: none that was left out is nearer, or spreads less, than the last on the
  /// list, though one as near may have a larger gap at worst or fewer parts.
  bool noneNearer = true;
};

/// The best stacks.
/// @throws describe::Refusal where a number is not one or outside its limits, where there is no
///         head gasket or no cylinder, and where base gaskets or a plate are needed and there are
///         none
/// @source gap and volumes as deck/stack.h and chamber/chamber.h: rigid parts, gaskets as clamped
Answer choose(const Question& question);

struct Judged {
  Stack stack;
  std::optional<Loss> loss;
};

/// What one stack gives, and the limit it breaks, if any.
/// @param sets one for each cylinder; each with a head gasket, places on the shelf of the right
/// role
/// @throws describe::Refusal as choose()
/// @throws std::invalid_argument for sets that are not of the question
Judged judge(const Question& question, const std::vector<Set>& sets);

/// Why a stack is not on the list; nothing for one that is.
/// @param answer that of choose() to the same question
/// @throws as judge()
std::optional<Loss> whyLost(const Question& question, const Answer& answer,
                            const std::vector<Set>& sets);

}  // namespace strokewright::choice
