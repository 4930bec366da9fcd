#pragma once
/// The described results, rules and tables of this room, in page order.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/evaluation.h"
#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"
#include "core/firing/firing.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result topAfterFirst, turnsLater, firesAfterFirst, largestFiringGap, leastFiringGap,
    firingFrequency, lobeBehindFirst, lobeMoved;
extern const Table crankTops, firingOrders, firingTable, triggers, collectors, rhythm;

}  // namespace strokewright::out

namespace strokewright::firing {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// [rad] How far the throw of this cylinder is ahead of the first; a single needs none to be said.
double aheadOf(describe::Reader& read);

/// The place in the donor of the cylinder that goes by the same number; nothing where none does, or
/// where the donor has another number of cylinders.
std::optional<describe::Reader> besideOf(describe::Reader& read);

/// What each cylinder goes by.
/// @throws describe::Refusal where two go by one number
std::vector<int> numbersOf(describe::Reader& read);

/// What the throws and axes of an engine come to.
struct Crank {
  Strokes strokes = Strokes::Four;
  std::vector<double> tops;    ///< [rad] of each cylinder after the first, its ± held still
  std::vector<double> axes;    ///< [rad]
  std::vector<double> places;  ///< [m] along the crankshaft; their count where nobody said
  std::vector<int> numbers;    ///< what each cylinder goes by

  Standing standing() const { return {places, axes}; }
  bool operator==(const Crank&) const = default;
};

/// @throws describe::Refusal where two cylinders go by one number
Crank crankOf(describe::Reader& read);

/// Why there is no order, each said by a rule that forbids.
inline constexpr std::string_view kSameNumber = "Two cylinders go by the number {1}.";
inline constexpr std::string_view kNotEachOnce = "The firing order must name each cylinder once.";
inline constexpr std::string_view kThrowsCannot = "These throws cannot fire in the order entered.";
inline constexpr std::string_view kTurnsCannot = "It cannot fire a turn later as entered.";

/// An order, or why there is none.
struct Sought {
  std::optional<Order> order;
  std::string_view whyNot = {};
};

/// The order entered, by the numbers the cylinders go by and on the turns said, or, while none is
/// entered, the most even of all.
Sought soughtOrder(describe::Reader& read, const Crank& crank);

/// That order; one that cannot be is refused.
/// @throws describe::Refusal
Order orderOf(describe::Reader& read, const Crank& crank);

/// The places of the cylinders named in the order entered; −1 for a number that no cylinder has.
std::vector<int> placesNamed(describe::Reader& read, std::span<const int> numbers);

/// The order entered has as many numbers as there are cylinders, and each of them once.
bool namesEachOnce(describe::Reader& read, std::span<const int> numbers);

/// Of each cylinder named in the order entered, whether a + joins it to the one before it,
/// "1+4-3+2": the two fire together.
std::vector<bool> joinedInOrder(describe::Reader& read);

/// The first of all that the throws allow. Reckoned anew only where the crank is another.
Order mostEven(const Crank& crank);

/// All that the throws allow, the first to be preferred.
std::vector<Order> ordersOf(const Crank& crank);

/// Rows of out::firingOrders: all orders of eight cylinders, more than anyone looks through.
inline constexpr std::size_t kMostOrders = 128;

/// What in::firesLater needs beside the words of an order: "0; 1; 0; 1"; empty where they say it
/// all.
/// @param which of ordersOf()
std::string turnsLaterOf(const std::vector<Order>& orders, std::size_t which, const Crank& crank);

/// "output end"
/// @param end an answer to in::viewedFrom
std::string_view shortEnd(double end);

/// From where the crank is looked at, as somebody said it or not.
struct Seen {
  bool clockwise = true;      ///< as it turns, seen from there
  bool rotationSaid = false;  ///< else clockwise is taken
  std::string_view end;       ///< "output end"; empty: nobody said
  std::string_view otherEnd = "other end";

  /// "seen from the output end, turns clockwise"
  std::string words() const;
  /// From where one has walked round it to: "from the free end, where it turns anticlockwise".
  std::string wordsFromBehind() const;
};
Seen seenOf(const describe::Evaluation& evaluation, int engine);

/// Both say from which end they are seen and which way they turn, and it is not the same.
bool turnsAgainstDonor(describe::Reader& read);

/// Turns, or pulses, a minute.
/// @param speed [rad/s]
double aMinute(double speed);

/// "1-3-4-2"; "1+4-3+2" where two fire together.
/// @param numbers what each cylinder goes by
std::string words(const Order& order, std::span<const int> numbers);

/// "180-180-360", in whole degrees or tenths: rounded so that they add up as the angles do, by the
/// largest remainders; all alike, each is rounded as it is.
/// @param angles [rad] ≥ 0, at least one
std::string inDegrees(std::span<const double> angles);

}  // namespace strokewright::firing
