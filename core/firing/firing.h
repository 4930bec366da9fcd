#pragma once
/// When do the cylinders fire: orders, intervals, lobes, and what the ear makes of it.
///
/// Angles are crank angles [rad], counted in the sense of rotation from the top dead centre of the
/// first cylinder where nothing else is said. Cylinders are counted from 0.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace strokewright::firing {

enum class Strokes { Two, Four };

/// [rad] one cycle: two turns of a four-stroke, one of a two-stroke.
double cycleOf(Strokes strokes);

/// [rad] Firings no further apart than this are one: a hundredth of a degree, far above what
/// arithmetic and rods of unlike length leave and below what can be measured.
inline constexpr double kSame = 1.75e-4;

/// [rad] from 0 to under the whole; what arithmetic leaves below it counts as 0.
double within(double angle, double whole);

/// [rad] as it is read to a tenth of a degree: from 0 to under the whole, and 0 for what would read
/// as the whole.
double asRead(double angle, double whole);

/// An angle in thousandths of a degree, so that equals are equal.
long thousandths(double angle);

/// Which way a throw and a cylinder axis point, and where the offset puts the top.
struct Throw {
  double ahead = 0.0;      ///< ψ: ahead of the first throw in the sense of rotation
  double axis = 0.0;       ///< β: direction of the cylinder axis in the sense of rotation
  double offsetTop = 0.0;  ///< θ_TDC: top dead centre after throw and axis are in line
};

/// [rad] at which the piston is at its top, from 0 to under 2π: α = β − ψ + θ_TDC. A throw that is
/// ahead arrives earlier.
/// @source plane geometry
double topOf(const Throw& which);

/// One way to fire every cylinder once in a cycle.
struct Order {
  std::vector<int> cylinders;  ///< as they fire, cylinder 0 first
  std::vector<double> at;      ///< [rad] of each, the first at 0, ascending; equal where together

  /// [rad] from each of them to the next, from the last on to the first of the next cycle; 0 where
  /// they are no further apart than kSame.
  std::vector<double> intervals(Strokes strokes) const;
  double largestGap(Strokes strokes) const;  ///< [rad]
  double leastGap(Strokes strokes) const;    ///< [rad] 0 where two fire together
};

/// Cylinders by when they fire, the earliest first; of those that fire together, as kSame has it,
/// the lower number first, and all at the moment of the earliest.
/// @param firesAt [rad] of each cylinder
Order sorted(std::span<const double> firesAt);

/// Intervals that are alike to a tenth of a degree.
bool isEven(const Order& order, Strokes strokes);

/// Where the cylinders stand: neighbours stand in one bank, with none between them.
struct Standing {
  std::span<const double> places = {};  ///< [m] along the crankshaft; none: nobody has a neighbour
  std::span<const double> axes = {};    ///< [rad] as Throw::axis
};

/// How many cylinders fire right after one that stands next to them.
int neighboursInSequence(const Order& order, const Standing& standing);

/// Every order that these tops allow: in a four-stroke each cylinder may fire at its top or a turn
/// later, in a two-stroke at its top alone. The least largest gap first; of equals the one with the
/// greater least gap, then the fewest neighbours in sequence, then, as is customary, the one that
/// goes furthest along the engine first: 1-3-4-2 before 1-2-4-3. Orders that differ only in which
/// of two cylinders that fire together is named first are one.
/// @param tops [rad] of 1 to 16 cylinders, as topOf()
/// @throws std::invalid_argument for none or for more
/// @source enumeration; which of equals comes first: common practice, no published source
std::vector<Order> everyOrder(std::span<const double> tops, Strokes strokes,
                              const Standing& standing = {});

/// When the cylinders fire in this order: of all ways to do it the first of everyOrder(), the most
/// even. Nothing where the order cannot be: a cylinder that has no top left in the cycle, one that
/// is named twice or not at all, two that are to fire together and do not.
/// @param together of each cylinder named, whether it fires with the one before it; none need to
std::optional<Order> orderAs(std::span<const int> cylinders, std::span<const double> tops,
                             Strokes strokes, const std::vector<bool>& together = {});

/// @param together as for orderAs(); of those beyond it nothing is wanted
bool fireTogether(const Order& order, const std::vector<bool>& together);

/// The order of these cylinders when each fires where it is said to; nothing where they do not then
/// fire in that order. Those that fire together may be named either way round.
/// @param firesAt [rad] of each cylinder
std::optional<Order> orderAt(std::span<const int> cylinders, std::span<const double> firesAt);

/// [rad] of cam, from the lobe of the cylinder that fires first, in the sense in which the camshaft
/// turns, from 0 to under 2π: a cylinder that fires later has its lobe further back.
/// @param firesAt [rad] of crank after the first, four-stroke
/// @source cam at half the speed of the crank
double lobeAngle(double firesAt);

/// How strong an order of the rhythm is: |Σ exp(i q α)| / n, 1 where all pulses fall in step.
/// @param order q, pulses a turn of the crank: halves for a four-stroke, whole for a two-stroke
/// @source Fourier coefficient of equal impulses
double content(const Order& order, double pulsesPerTurn);

}  // namespace strokewright::firing
