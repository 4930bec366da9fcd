#include "core/units/kind.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <numbers>
#include <optional>
#include <string>
#include <system_error>
#include <vector>

#include "core/units/spelling.h"

namespace strokewright::units {

namespace {

using std::numbers::pi;

constexpr std::array<std::string_view, 3> kInchAliases{"\"", "inch", "inches"};
constexpr std::array<std::string_view, 1> kThouAliases{"mil"};
constexpr std::array<std::string_view, 2> kMicrometreAliases{"micron", "microns"};
constexpr std::array<std::string_view, 2> kMillilitreAliases{"cc", "cm³"};
constexpr std::array<std::string_view, 1> kCubicInchAliases{"in³"};
constexpr std::array<std::string_view, 2> kLitreAliases{"litre", "litres"};
constexpr std::array<std::string_view, 1> kPoundAliases{"lbs"};
constexpr std::array<std::string_view, 1> kSquareInchAliases{"in²"};
constexpr std::array<std::string_view, 3> kDegreeAliases{"deg", "degree", "degrees"};
constexpr std::array<std::string_view, 3> kRpmAliases{"1/min", "r/min", "rev/min"};
constexpr std::array<std::string_view, 1> kMegapascalAliases{"N/mm²"};
constexpr std::array<std::string_view, 1> kFahrenheitAliases{"deg F"};
constexpr std::array<std::string_view, 1> kExpansionAliases{"1e-6/K"};
constexpr std::array<std::string_view, 1> kInchExpansionAliases{"1e-6/°F"};
constexpr std::array<std::string_view, 2> kPerCentAliases{"per cent", "pct"};
constexpr std::array<std::string_view, 1> kRatioAliases{":1"};

// Factors: NIST SP 811 appendix B, from memory; written as quotients of whole numbers because those
// are exact. The pound-force is 4.4482216152605 N, the pound 0.45359237 kg, the inch 25.4 mm.
constexpr Unit kMillimetre{"mm", 1, 1e3, 2, {}};
constexpr Unit kCentimetre{"cm", 1, 1e2, 3, {}};
constexpr Unit kMetre{"m", 1, 1, 5, {}};
constexpr Unit kMicrometre{"µm", 1, 1e6, 0, kMicrometreAliases};
constexpr Unit kInch{"in", 254, 1e4, 4, kInchAliases};
constexpr Unit kThou{"thou", 254, 1e7, 1, kThouAliases};

constexpr std::array kLength{kMillimetre, kInch, kCentimetre, kMetre, kThou, kMicrometre};
constexpr std::array kFineLength{kMillimetre, kThou, kInch, kMicrometre, kCentimetre, kMetre};
constexpr std::array kVolume{
    Unit{"ml", 1, 1e6, 2, kMillilitreAliases},
    Unit{"cu in", 16387064, 1e12, 3, kCubicInchAliases},
    Unit{"l", 1, 1e3, 4, kLitreAliases},
};
constexpr std::array kMass{
    Unit{"g", 1, 1e3, 1, {}},
    Unit{"kg", 1, 1, 4, {}},
    Unit{"oz", 28349523125, 1e12, 2, {}},
    Unit{"lb", 45359237, 1e8, 4, kPoundAliases},
    Unit{"mg", 1, 1e6, 0, {}},
};
constexpr std::array kArea{
    Unit{"mm²", 1, 1e6, 1, {}},
    Unit{"cm²", 1, 1e4, 3, {}},
    Unit{"sq in", 64516, 1e8, 4, kSquareInchAliases},
};
constexpr std::array kAngle{
    Unit{"°", pi, 180, 1, kDegreeAliases},
    Unit{"rad", 1, 1, 4, {}},
};
constexpr std::array kSpeed{
    Unit{"rpm", pi, 30, 0, kRpmAliases},
    Unit{"rad/s", 1, 1, 2, {}},
};
constexpr std::array kVelocity{
    Unit{"m/s", 1, 1, 2, {}},
    Unit{"ft/min", 3048, 6e5, 0, {}},
    Unit{"ft/s", 3048, 1e4, 2, {}},
};
constexpr std::array kAcceleration{
    Unit{"m/s²", 1, 1, 0, {}},
    Unit{"km/s²", 1e3, 1, 2, {}},
    Unit{"ft/s²", 3048, 1e4, 0, {}},
};
constexpr std::array kForce{
    Unit{"kN", 1e3, 1, 2, {}},
    Unit{"N", 1, 1, 0, {}},
    Unit{"lbf", 44482216152605, 1e13, 0, {}},
};
constexpr std::array kStress{
    Unit{"MPa", 1e6, 1, 0, kMegapascalAliases},
    Unit{"ksi", 44482216152605, 6451600, 1, {}},
    Unit{"Pa", 1, 1, 0, {}},
    Unit{"bar", 1e5, 1, 1, {}},
    Unit{"psi", 44482216152605, 6451600e3, 0, {}},
};
constexpr std::array kPressure{
    Unit{"bar", 1e5, 1, 2, {}},
    Unit{"psi", 44482216152605, 6451600e3, 1, {}},
    Unit{"kPa", 1e3, 1, 0, {}},
    Unit{"Pa", 1, 1, 0, {}},
};
constexpr std::array kWarming{
    Unit{"K", 1, 1, 0, {}},
    Unit{"°F", 5, 9, 0, kFahrenheitAliases},
};
constexpr std::array kExpansion{
    Unit{"µm/m·K", 1, 1e6, 1, kExpansionAliases},
    Unit{"µin/in·°F", 9, 5e6, 1, kInchExpansionAliases},
};
constexpr std::array kStaticMoment{
    Unit{"g·mm", 1, 1e6, 0, {}},
    Unit{"kg·mm", 1, 1e3, 3, {}},
    Unit{"oz·in", 7200778873750, 1e16, 2, {}},
};
constexpr std::array kRingConstant{Unit{"m²/s²", 1, 1, 1, {}}};
constexpr std::array kSpeedFactor{
    Unit{"mm·rpm", pi, 3e4, 0, {}},
    Unit{"m·rad/s", 1, 1, 2, {}},
};
constexpr std::array kShare{Unit{"%", 1, 1e2, 1, kPerCentAliases}};
constexpr std::array kRatio{Unit{"", 1, 1, 2, kRatioAliases}};
constexpr std::array kCount{Unit{"", 1, 1, 0, {}}};

struct Row {
  Kind kind;
  std::string_view name;
  std::string_view siName;
  std::span<const Unit> units;
};

constexpr std::array<Row, kKindCount> kKinds{{
    {Kind::Length, "length", "m", kLength},
    {Kind::FineLength, "fine length", "m", kFineLength},
    {Kind::Volume, "volume", "m3", kVolume},
    {Kind::Mass, "mass", "kg", kMass},
    {Kind::Area, "area", "m2", kArea},
    {Kind::Angle, "angle", "rad", kAngle},
    {Kind::Speed, "speed", "rad/s", kSpeed},
    {Kind::Velocity, "velocity", "m/s", kVelocity},
    {Kind::Acceleration, "acceleration", "m/s2", kAcceleration},
    {Kind::Force, "force", "N", kForce},
    {Kind::Stress, "stress", "Pa", kStress},
    {Kind::Pressure, "pressure", "Pa", kPressure},
    {Kind::Warming, "warming", "K", kWarming},
    {Kind::Expansion, "expansion", "1/K", kExpansion},
    {Kind::StaticMoment, "static moment", "kg m", kStaticMoment},
    {Kind::RingConstant, "ring constant", "m2/s2", kRingConstant},
    {Kind::SpeedFactor, "speed factor", "m rad/s", kSpeedFactor},
    {Kind::Share, "share", "1", kShare},
    {Kind::Ratio, "ratio", "1", kRatio},
    {Kind::Count, "count", "1", kCount},
    {Kind::Choice, "choice", "1", kCount},
}};

constexpr bool rowsStandInTheOrderOfTheEnum() {
  for (std::size_t i = 0; i < kKinds.size(); ++i) {
    if (static_cast<std::size_t>(kKinds[i].kind) != i) return false;
  }
  return true;
}
static_assert(rowsStandInTheOrderOfTheEnum());

struct Spelling {
  std::string folded;
  const Unit* unit;
};

std::array<std::vector<Spelling>, kKindCount> spellingsOfAllKinds() {
  std::array<std::vector<Spelling>, kKindCount> result;
  for (std::size_t i = 0; i < kKindCount; ++i) {
    for (const Unit& unit : kKinds[i].units) {
      result[i].push_back({folded(unit.name), &unit});
      for (const std::string_view alias : unit.aliases) result[i].push_back({folded(alias), &unit});
    }
  }
  return result;
}

/// -3 for mm, 6 for MPa; nothing where the factor of the unit is no power of ten.
std::optional<int> powerOfTen(const Unit& unit) {
  const auto [small, large] = std::minmax(unit.multiply, unit.divide);
  if (small != 1.0) return std::nullopt;
  int power = 0;
  double rest = large;
  for (; rest >= 10.0; rest /= 10.0) ++power;
  if (rest != 1.0) return std::nullopt;
  return unit.multiply > unit.divide ? power : -power;
}

/// The number with its decimal point moved: the double nearest to its shortest text times
/// 10^power; nothing where no double is.
std::optional<double> withPointMoved(double number, int power) {
  std::array<char, 384> text;  // room for the smallest double in full and the power
  char* const last = text.data() + text.size();
  char* end = std::to_chars(text.data(), last, number, std::chars_format::fixed).ptr;
  *end++ = 'e';
  end = std::to_chars(end, last, power).ptr;
  double moved = 0.0;
  if (std::from_chars(text.data(), end, moved).ec != std::errc{}) return std::nullopt;
  return moved;
}

const Row& rowOf(Kind kind) { return kKinds[static_cast<std::size_t>(kind)]; }

}  // namespace

double toSi(const Unit& unit, double number) {
  if (const auto power = powerOfTen(unit)) {
    if (const auto moved = withPointMoved(number, *power)) return *moved;
  }
  return number * unit.multiply / unit.divide;
}

double fromSi(const Unit& unit, double si) { return si * unit.divide / unit.multiply; }

std::span<const Unit> unitsOf(Kind kind) { return rowOf(kind).units; }

const Unit* findUnit(Kind kind, std::string_view name) {
  static const auto spellings = spellingsOfAllKinds();
  const std::string wanted = folded(name);
  if (wanted.empty() && !name.empty()) return nullptr;
  for (const auto& [spelling, unit] : spellings[static_cast<std::size_t>(kind)]) {
    if (spelling == wanted) return unit;
  }
  return nullptr;
}

std::string_view siName(Kind kind) { return rowOf(kind).siName; }

std::string_view kindName(Kind kind) { return rowOf(kind).name; }

}  // namespace strokewright::units
