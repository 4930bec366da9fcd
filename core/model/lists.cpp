#include "core/model/lists.h"

#include <algorithm>
#include <array>

namespace strokewright::model {
namespace {

using describe::List;

std::span<const List* const> numbered(std::span<const List* const> lists) {
  for (const List* list : lists) {
    int number = 0;
    for (const describe::Input* column : list->columns) column->number = number++;
  }
  return lists;
}

constexpr std::array<const List*, 1> kOfProject = {&list::shelf};
constexpr std::array<const List*, 1> kOfEngine = {&list::plateHoles};

// Before main(): who holds a list has its columns numbered.
const std::span<const List* const> kProjectLists = numbered(kOfProject);
const std::span<const List* const> kEngineLists = numbered(kOfEngine);

}  // namespace

std::span<const List* const> projectLists() { return kProjectLists; }

std::span<const List* const> engineLists() { return kEngineLists; }

const List* listOf(std::span<const List* const> lists, std::string_view key) {
  const auto found =
      std::find_if(lists.begin(), lists.end(), [&](const List* list) { return list->key == key; });
  return found == lists.end() ? nullptr : *found;
}

}  // namespace strokewright::model

namespace strokewright::model::list {

using describe::Choice;
using describe::Input;
using describe::List;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kRoles[] = {
    {"base_gasket", "base gasket or shim"}, {"plate", "plate"}, {"head_gasket", "head gasket"}};

constexpr Choice kServes[] = {{"each_cylinder", "each cylinder"}, {"all_cylinders", "one for all"}};

constexpr Choice kHoles[] = {{"stud", "stud"},
                             {"dowel", "dowel"},
                             {"water", "water"},
                             {"oil", "oil"},
                             {"chain_tunnel", "chain tunnel"},
                             {"other", "other"}};

}  // namespace

constinit const Input partRole{
    .key = "role",
    .label = "Part",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kRoles,
    .typical = 0.0,
    .measure = "What it is; a shim under one barrel counts as a base gasket.",
};

constinit const Input partThickness{
    .key = "thickness_m",
    .label = "Thickness, compressed",
    .symbol = "t",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .typical = 0.5e-3,
    .possible = {.least = 0.0, .most = 100e-3},
    .usual = {.most = 15e-3},
    .plusMinus = 0.03e-3,
    .instrument = "solder and micrometer",
    .measure = "Gaskets as clamped, by solder or a used one; plates by micrometer.",
};

constinit const Input partBore{
    .key = "bore_m",
    .label = "Bore of the head gasket",
    .symbol = "D_g",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .typical = 77.5e-3,
    .possible = {.least = 0.5e-3, .most = 10.0},
    .usual = {.least = 30e-3, .most = 170e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, inside",
    .measure = "Across the fire ring, two directions; of head gaskets only.",
};

constinit const Input partQuantity{
    .key = "quantity",
    .label = "How many",
    .symbol = "",
    .kind = Kind::Count,
    .typical = 1.0,
    .possible = {.least = 0.0, .most = 1000.0},
    .measure =
        "What lies on the shelf: 0 where none is left; empty where any number can be bought "
        "or made.",
};

constinit const Input partServes{
    .key = "serves",
    .label = "Serves",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kServes,
    .typical = 0.0,
    .standing = {.value = 0.0, .origin = "a part for each cylinder"},
    .measure =
        "Whether each cylinder needs one, or one piece lies under or over the whole bank; how many "
        "there are counts pieces.",
};

namespace {

constexpr std::array<const Input*, 5> kShelfColumns = {&partRole, &partThickness, &partBore,
                                                       &partQuantity, &partServes};

}  // namespace

const List shelf{.key = "shelf",
                 .name = "Shelf",
                 .item = "part",
                 .columns = kShelfColumns,
                 .about =
                     "Gaskets, shims and plates at hand or to be bought: thickness as clamped, "
                     "its ±, bore of head gaskets, how many (0: none left, empty: any number), "
                     "and whether one serves all."};

constinit const Input holeFor{
    .key = "hole_for",
    .label = "Hole for",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kHoles,
    .typical = 0.0,
    .measure = "What passes through it.",
};

constinit const Input holeAlong{
    .key = "along_m",
    .label = "Along the crankshaft",
    .symbol = "z",
    .kind = Kind::Length,
    .typical = 0.0,
    .possible = {.least = -10.0, .most = 10.0},
    .plusMinus = 0.05e-3,
    .instrument = "caliper",
    .measure = "From the axis of the first cylinder, along the crankshaft.",
};

constinit const Input holeAcross{
    .key = "across_m",
    .label = "Across it",
    .symbol = "x",
    .kind = Kind::Length,
    .typical = 0.0,
    .possible = {.least = -10.0, .most = 10.0},
    .plusMinus = 0.05e-3,
    .instrument = "caliper",
    .measure = "From the line of the cylinder axes; minus on the thrust side.",
};

constinit const Input holeDiameter{
    .key = "diameter_m",
    .label = "Diameter",
    .symbol = "d",
    .kind = Kind::Length,
    .typical = 9e-3,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 2e-3, .most = 60e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper",
    .measure = "Stud holes with their clearance, dowel holes as they are to be reamed.",
};

namespace {

constexpr std::array<const Input*, 4> kHoleColumns = {&holeFor, &holeAlong, &holeAcross,
                                                      &holeDiameter};

}  // namespace

const List plateHoles{.key = "plate_holes",
                      .name = "Holes of the spacer plate",
                      .item = "hole",
                      .columns = kHoleColumns,
                      .about =
                          "Studs, dowels, water, oil and chain, as they lie on the case; the "
                          "bores follow from the cylinders."};

}  // namespace strokewright::model::list
