#pragma once
/// What a number is, and in which units a person may say it.
///
/// A kind is about meaning, not dimension: a gasket is a fine length, a bore a length; both are
/// metres inside. Everything in core is SI; a number that came from a person passes parse(), one
/// that goes to a person passes Style::text(). Nothing else multiplies by a unit factor.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace strokewright::units {

enum class Kind : std::uint8_t {
  Length,        ///< [m] bores, strokes, rods, heights
  FineLength,    ///< [m] gaskets, gaps, offsets, protrusions
  Volume,        ///< [m3]
  Mass,          ///< [kg]
  Area,          ///< [m2]
  Angle,         ///< [rad]
  Speed,         ///< [rad/s] of a shaft
  Velocity,      ///< [m/s]
  Acceleration,  ///< [m/s2]
  Force,         ///< [N]
  Stress,        ///< [Pa]
  Pressure,      ///< [Pa] of a gas
  Warming,       ///< [K] a difference of temperature
  Expansion,     ///< [1/K] of a length by heat
  StaticMoment,  ///< [kg m] mass times radius
  RingConstant,  ///< [m2/s2] acceleration times ring width
  SpeedFactor,   ///< [m rad/s] mean diameter times shaft speed
  Share,         ///< [1] shown in per cent; a bare number typed is per cent
  Ratio,         ///< [1]
  Count,         ///< [1] whole
  Choice,        ///< [1] index into the choices of its description
};
inline constexpr std::size_t kKindCount = static_cast<std::size_t>(Kind::Choice) + 1;

/// One unit of a kind: SI = number * multiply / divide. All factors are exact but those with π in
/// them.
struct Unit {
  std::string_view name;  ///< as shown: "mm", "cu in", "°"
  double multiply = 1.0;
  double divide = 1.0;
  int decimals = 2;                           ///< shown by default
  std::span<const std::string_view> aliases;  ///< further spellings accepted in typed text
};

/// The number in SI; infinite where a double cannot hold it.
///
/// Where the factor is a power of ten, as from mm, ml, g, MPa and %, the decimal point is moved
/// instead: of a number of up to 15 digits the double nearest to the decimal in SI. So 28.4 mm is
/// the double 0.0284, which 28.4 / 1000 is not.
double toSi(const Unit& unit, double number);
/// The SI value as a number of this unit; infinite where a double cannot hold it.
double fromSi(const Unit& unit, double si);

/// All units in which a kind can be typed or shown, the bench unit first; never empty.
std::span<const Unit> unitsOf(Kind kind);

/// The unit of this kind with this name or alias, or nullptr. Letter case, blanks, points and
/// multiplication dots do not count, and ², ³, µ and ″ may be typed 2, 3, u and ".
const Unit* findUnit(Kind kind, std::string_view name);

/// Name of the SI unit as machine-readable output writes it: "m", "m3", "rad/s", "1".
std::string_view siName(Kind kind);

/// Plain name of the kind as machine-readable output writes it: "length", "fine length".
std::string_view kindName(Kind kind);

}  // namespace strokewright::units
