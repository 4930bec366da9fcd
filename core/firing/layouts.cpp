#include "core/firing/layouts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "core/describe/reader.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "core/units/parse.h"

namespace strokewright::firing {

using units::Kind;

namespace {

constexpr std::array kLayouts = {
    Layout{"single", "single", 1, "0", ""},
    Layout{"twin_360", "twin, both pistons together (360°)", 2, "0; 0", ""},
    Layout{"twin_180", "twin, one up and one down (180°)", 2, "0; 180", ""},
    Layout{"twin_270", "twin, 270°", 2, "0; 270", ""},
    Layout{"v_twin_45", "V-twin 45°, one pin", 2, "0; 0", "0; 45"},
    Layout{"v_twin_60", "V-twin 60°, one pin", 2, "0; 0", "0; 60"},
    Layout{"v_twin_75", "V-twin 75°, one pin", 2, "0; 0", "0; 75"},
    Layout{"v_twin_75_pin_behind", "V-twin 75°, second pin 30° behind", 2, "0; −30", "0; 75"},
    Layout{"v_twin_75_pin_ahead", "V-twin 75°, second pin 30° ahead", 2, "0; 30", "0; 75"},
    Layout{"v_twin_90", "V-twin 90°, one pin", 2, "0; 0", "0; 90"},
    Layout{"flat_twin", "flat twin, throws opposed", 2, "0; 180", "0; 180"},
    Layout{"triple_120", "triple, 120°", 3, "0; 240; 120", ""},
    Layout{"triple_180", "triple, middle one opposed (180°)", 3, "0; 180; 0", ""},
    Layout{"radial_three", "radial three, one pin, equal rods", 3, "0; 0; 0", "0; 120; 240"},
    Layout{"four_flat_plane", "four, flat-plane", 4, "0; 180; 180; 0", ""},
    Layout{"four_cross_plane", "four, cross-plane", 4, "0; 270; 90; 180", ""},
    Layout{"v_four_90", "V4 90°, pins opposed", 4, "0; 0; 180; 180", "0; 90; 0; 90"},
    Layout{"flat_four", "flat four", 4, "0; 180; 180; 0", "0; 180; 0; 180"},
    Layout{"five_72", "five, 72° between throws", 5, "0; 216; 144; 72; 288", ""},
    Layout{"six", "six in line", 6, "0; 240; 120; 120; 240; 0", ""},
    Layout{"v_six_60", "V6 60°, pins of a pair 60° behind", 6, "0; −60; 240; 180; 120; 60",
           "0; 60; 0; 60; 0; 60"},
    Layout{"v_six_90", "V6 90°, one pin for a pair", 6, "0; 0; 240; 240; 120; 120",
           "0; 90; 0; 90; 0; 90"},
    Layout{"flat_six", "flat six", 6, "0; 180; 240; 60; 120; 300", "0; 180; 0; 180; 0; 180"},
    Layout{"eight", "eight in line, two fours at 90°", 8, "0; 180; 90; 270; 270; 90; 180; 0", ""},
    Layout{"v_eight_cross_plane", "V8 90°, cross-plane", 8, "0; 0; 90; 90; 270; 270; 180; 180",
           "0; 90; 0; 90; 0; 90; 0; 90"},
    Layout{"v_eight_flat_plane", "V8 90°, flat-plane", 8, "0; 0; 180; 180; 180; 180; 0; 0",
           "0; 90; 0; 90; 0; 90; 0; 90"},
    Layout{"v_twelve_60", "V12 60°", 12, "0; 0; 240; 240; 120; 120; 120; 120; 240; 240; 0; 0",
           "0; 60; 0; 60; 0; 60; 0; 60; 0; 60; 0; 60"}};

constexpr auto kChoices = [] {
  std::array<describe::Choice, kLayouts.size() + 1> choices{};
  for (std::size_t i = 0; i < kLayouts.size(); ++i) {
    choices[i] = {.key = kLayouts[i].key, .label = kLayouts[i].name};
  }
  choices.back() = {.key = "another", .label = "a crank of its own"};
  return choices;
}();

/// [rad] for each cylinder; 0 where nothing is said.
std::vector<double> angles(std::string_view typed, int cylinders) {
  std::vector<double> values =
      units::parse(Kind::Angle, typed, units::UnitGroup::metric()[Kind::Angle]).values;
  values.resize(static_cast<std::size_t>(cylinders));
  return values;
}

/// Where throws and axes of a layout point [rad].
struct Pointing {
  std::vector<double> throws;
  std::vector<double> axes;

  /// The first of each pair and the second are on one pin: which bank is the first is a matter of
  /// numbering.
  bool onSharedPins() const {
    if (throws.size() % 2 != 0) return false;
    for (std::size_t i = 1; i < throws.size(); i += 2) {
      if (throws[i] != throws[i - 1]) return false;
    }
    return true;
  }
};

const std::vector<Pointing>& pointings() {
  static const std::vector<Pointing> kPointings = [] {
    std::vector<Pointing> all;
    all.reserve(kLayouts.size());
    for (const Layout& layout : kLayouts) {
      all.push_back(
          {angles(layout.throws, layout.cylinders), angles(layout.axes, layout.cylinders)});
    }
    return all;
  }();
  return kPointings;
}

/// To half a degree, in one sense or the other.
bool same(const std::vector<double>& own, const std::vector<double>& common, double sense) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  constexpr double kWithin = kTurn / 720.0;
  return std::ranges::equal(own, common, [&](double a, double b) {
    return std::abs(std::remainder(a - sense * b, kTurn)) < kWithin;
  });
}

}  // namespace

std::span<const Layout> layouts() { return kLayouts; }

std::string_view layoutName(const describe::Evaluation& evaluation, int engine) {
  const describe::Cell& cell = evaluation.cell(engine, out::crankLayout);
  const auto place = static_cast<std::size_t>(cell.value);
  const bool common = cell.state == describe::State::Value && place < kLayouts.size();
  return common ? kLayouts[place].name : std::string_view();
}

}  // namespace strokewright::firing

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kColumns[] = {
    {.key = "crank", .name = "Crank", .words = true},
    {.key = "cylinders", .name = "Cylinders", .kind = Kind::Count},
    {.key = "throws", .name = "Throws ahead of the first, °", .words = true},
    {.key = "axes", .name = "Cylinder axes, °", .words = true}};

}  // namespace

const describe::Table commonCranks{
    .key = "common_cranks",
    .name = "Common cranks",
    .per = describe::Per::Engine,
    .columns = kColumns,
    .formula = "throws ahead of the first in the sense of rotation; no tops, no firing order",
    .source = "common practice, no published source",
    .valid = "each throw and axis may be entered otherwise; master and slave rods are not computed",
    .fill = [](Reader& read, Rows& rows) {
      const bool all = !read.given(in::cylinderCount);
      for (const firing::Layout& layout : firing::layouts()) {
        if (!all && layout.cylinders != static_cast<int>(read(in::cylinderCount))) continue;
        rows.add({std::string(layout.name), static_cast<double>(layout.cylinders),
                  std::string(layout.throws), std::string(layout.axes)});
      }
    }};

const describe::Result crankLayout{
    .key = "crank_layout",
    .name = "Crank layout",
    .kind = Kind::Choice,
    .per = describe::Per::Engine,
    .choices = firing::kChoices,
    .formula =
        "throws and cylinder axes agree within half a degree, seen from either end, and of pairs "
        "on one pin whichever bank is the first",
    .source = "common practice, no published source",
    .valid = "cylinders counted in the order of the layout; pitches and offsets are not looked at",
    .value = [](Reader& read) {
      read(in::cylinderCount);  // waited for: without it there is one cylinder
      firing::Pointing own;
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        own.throws.push_back(firing::aheadOf(here));
        own.axes.push_back(here(in::cylinderAxis));
      }
      const auto& common = firing::pointings();
      const auto found = std::ranges::find_if(common, [&own](const firing::Pointing& one) {
        return std::ranges::any_of(std::array{1.0, -1.0}, [&](double sense) {
          return firing::same(own.throws, one.throws, sense) &&
                 (firing::same(own.axes, one.axes, sense) ||
                  (one.onSharedPins() && firing::same(own.axes, one.axes, -sense)));
        });
      });
      return static_cast<double>(found - common.begin());
    }};

}  // namespace strokewright::out
