#include "core/firing/layouts.h"

#include <array>
#include <string>

#include "core/describe/reader.h"
#include "core/model/inputs.h"

namespace strokewright::firing {

std::span<const Layout> layouts() {
  static constexpr std::array kLayouts = {
      Layout{"single", 1, "0", ""},
      Layout{"twin, both pistons together (360°)", 2, "0; 0", ""},
      Layout{"twin, one up and one down (180°)", 2, "0; 180", ""},
      Layout{"twin, 270°", 2, "0; 270", ""},
      Layout{"V-twin 45°, one pin", 2, "0; 0", "0; 45"},
      Layout{"V-twin 60°, one pin", 2, "0; 0", "0; 60"},
      Layout{"V-twin 75°, one pin", 2, "0; 0", "0; 75"},
      Layout{"V-twin 75°, second pin 30° behind", 2, "0; −30", "0; 75"},
      Layout{"V-twin 75°, second pin 30° ahead", 2, "0; 30", "0; 75"},
      Layout{"V-twin 90°, one pin", 2, "0; 0", "0; 90"},
      Layout{"flat twin, throws opposed", 2, "0; 180", "0; 180"},
      Layout{"triple, 120°", 3, "0; 240; 120", ""},
      Layout{"triple, middle one opposed (180°)", 3, "0; 180; 0", ""},
      Layout{"radial three, one pin, equal rods", 3, "0; 0; 0", "0; 120; 240"},
      Layout{"four, flat-plane", 4, "0; 180; 180; 0", ""},
      Layout{"four, cross-plane", 4, "0; 270; 90; 180", ""},
      Layout{"V4 90°, pins opposed", 4, "0; 0; 180; 180", "0; 90; 0; 90"},
      Layout{"flat four", 4, "0; 180; 180; 0", "0; 180; 0; 180"},
      Layout{"five, 72° between throws", 5, "0; 216; 144; 72; 288", ""},
      Layout{"six in line", 6, "0; 240; 120; 120; 240; 0", ""},
      Layout{"V6 60°, pins of a pair 60° behind", 6, "0; −60; 240; 180; 120; 60",
             "0; 60; 0; 60; 0; 60"},
      Layout{"V6 90°, one pin for a pair", 6, "0; 0; 240; 240; 120; 120", "0; 90; 0; 90; 0; 90"},
      Layout{"flat six", 6, "0; 180; 240; 60; 120; 300", "0; 180; 0; 180; 0; 180"},
      Layout{"eight in line, two fours at 90°", 8, "0; 180; 90; 270; 270; 90; 180; 0", ""},
      Layout{"V8 90°, cross-plane", 8, "0; 0; 90; 90; 270; 270; 180; 180",
             "0; 90; 0; 90; 0; 90; 0; 90"},
      Layout{"V8 90°, flat-plane", 8, "0; 0; 180; 180; 180; 180; 0; 0",
             "0; 90; 0; 90; 0; 90; 0; 90"},
      Layout{"V12 60°", 12, "0; 0; 240; 240; 120; 120; 120; 120; 240; 240; 0; 0",
             "0; 60; 0; 60; 0; 60; 0; 60; 0; 60; 0; 60"}};
  return kLayouts;
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
    .name = "Common cranks to begin from",
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

}  // namespace strokewright::out
