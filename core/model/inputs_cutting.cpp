/// Compression: what is wanted of it, what can be cut, and the cranking test.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kPlates[] = {{"one_for_all", "one for all"}, {"one_for_each", "one for each"}};
constexpr Choice kGaskets[] = {{"same_in_all", "the same in all"}, {"mixed", "may differ"}};
constexpr Choice kOrders[] = {{"squish", "squish gap"},
                              {"ratio", "compression ratio"},
                              {"squish_spread", "squish gaps alike"},
                              {"ratio_spread", "ratios alike"}};

}  // namespace

constinit const Input ambientPressure{
    .key = "ambient_pressure_pa",
    .label = "Pressure of the air",
    .symbol = "p_a",
    .kind = Kind::Pressure,
    .scope = Scope::Engine,
    .typical = 101325.0,
    .possible = {.least = 1e4, .most = 1e6},
    .usual = {.least = 0.7e5, .most = 1.1e5},
    .standing = {.value = 101325.0, .origin = "published: standard atmosphere, ISO 2533"},
    .measure = "Barometer at the bench, not reduced to sea level.",
    .synonyms = "barometer",
};

constinit const Input crankingExponent{
    .key = "cranking_exponent",
    .label = "Cranking, exponent of compression",
    .symbol = "n",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 1.25,
    .possible = {.least = 1.0, .most = 1.4},
    .usual = {.least = 1.15, .most = 1.35},
    .standing = {.value = 1.25, .origin = "common practice, 1.2 to 1.3"},
    .measure = "Decided; lower for a cold engine and worn rings.",
    .synonyms = "polytropic exponent",
};

constinit const Input crankingPressureRead{
    .key = "cranking_pressure_read_pa",
    .label = "Cranking pressure, read",
    .symbol = "p_read",
    .kind = Kind::Pressure,
    .scope = Scope::Part,
    .list = true,
    .typical = 12e5,
    .possible = {.least = 0.0, .most = 2e7},
    .usual = {.least = 4e5, .most = 40e5},
    .plusMinus = 0.3e5,
    .instrument = "compression tester",
    .measure =
        "Warm engine, throttle wide open, all plugs out, ignition and fuel off; over the pressure "
        "of the air, as the tester shows it.",
    .synonyms = "compression test",
};

constinit const Input chamberFaceArea{
    .key = "chamber_face_area_m2",
    .label = "Chamber area at the head face",
    .symbol = "A_face",
    .kind = Kind::Area,
    .scope = Scope::Place,
    .typical = 3800e-6,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 300e-6, .most = 0.02},
    .plusMinus = 40e-6,
    .instrument = "burette at two levels",
    .measure =
        "What the chamber loses for each millimetre off the head: difference of two fillings over "
        "the difference of their levels, or the outline drawn on squared paper.",
    .synonyms = "chamber outline",
};

constinit const Input headLand{
    .key = "head_land_m",
    .label = "Head face to valve seat edge",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .typical = 4e-3,
    .possible = {.least = 0.0, .most = 1.0},
    .usual = {.least = 1e-3, .most = 30e-3},
    .plusMinus = 0.05e-3,
    .instrument = "depth micrometer",
    .measure =
        "Least depth of metal from the gasket face of the head to the edge of the nearest valve "
        "seat.",
};

constinit const Input headLandLeast{
    .key = "head_land_least_m",
    .label = "Head face to valve seat edge, least left",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 2e-3,
    .possible = {.least = 0.0, .most = 1.0},
    .usual = {.least = 1e-3, .most = 5e-3},
    .standing = {.value = 2e-3, .origin = "common practice"},
    .measure = "Decided; what must be left after skimming the head.",
};

constinit const Input crownThickness{
    .key = "crown_thickness_m",
    .label = "Crown thickness where it is cut",
    .symbol = "t_cr",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .typical = 6.5e-3,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 3e-3, .most = 25e-3},
    .plusMinus = 0.05e-3,
    .instrument = "crown caliper",
    .measure =
        "Least thickness of the crown under the place that is to be machined; a piston cut in two "
        "shows it best.",
};

constinit const Input crownCutArea{
    .key = "crown_cut_area_m2",
    .label = "Crown area that is cut",
    .symbol = "A_cut",
    .kind = Kind::Area,
    .scope = Scope::Part,
    .typical = 3000e-6,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 100e-6, .most = 0.03},
    .plusMinus = 30e-6,
    .instrument = "caliper",
    .measure =
        "Area faced off the crown; the whole bore area where the crown is faced from edge to edge.",
};

constinit const Input crownLeftShare{
    .key = "crown_left_share",
    .label = "Crown left, least share of the bore",
    .symbol = "",
    .kind = Kind::Share,
    .scope = Scope::Engine,
    .typical = 0.065,
    .possible = {.least = 0.0, .most = 1.0},
    .usual = {.least = 0.04, .most = 0.12},
    .standing = {.value = 0.065, .origin = "common practice, cast pistons 6 to 7 %"},
    .measure = "Decided; what must be left of the crown after machining, as a share of the bore.",
};

constinit const Input ratioLeast{
    .key = "ratio_least",
    .label = "Compression ratio, least accepted",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 9.0,
    .possible = {.least = 1.0, .most = 200.0},
    .usual = {.least = 5.0, .most = 23.0},
    .measure = "Decided; the choice of gaskets keeps above it.",
};

constinit const Input ratioMost{
    .key = "ratio_most",
    .label = "Compression ratio, most accepted",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 11.5,
    .possible = {.least = 1.0, .most = 200.0},
    .usual = {.least = 6.0, .most = 24.0},
    .measure = "Decided by fuel and cooling; the choice of gaskets keeps below it.",
};

constinit const Input platesInStack{
    .key = "plates_in_stack",
    .label = "Plates",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kPlates,
    .typical = answer(PlatesInStack::OneForAll),
    .standing = {.value = answer(PlatesInStack::OneForAll), .origin = "one piece of metal"},
    .measure = "Whether one plate lies under all barrels or each barrel may have its own.",
};

constinit const Input gasketsInStack{
    .key = "gaskets_in_stack",
    .label = "Gaskets",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kGaskets,
    .typical = answer(GasketsInStack::SameInAll),
    .standing = {.value = answer(GasketsInStack::SameInAll), .origin = "common practice"},
    .measure = "Whether each cylinder may have gaskets of its own to even out the seats.",
};

constinit const Input baseGasketsLeast{
    .key = "base_gaskets_least",
    .label = "Base gaskets under a barrel, at least",
    .symbol = "",
    .kind = Kind::Count,
    .typical = 1.0,
    .possible = {.least = 0.0, .most = 2.0},
    .standing = {.value = 0.0, .origin = "a plate may be sealed with compound"},
    .measure = "Decided; 1 where every joint is to have its gasket.",
};

constinit const Input baseGasketsMost{
    .key = "base_gaskets_most",
    .label = "Base gaskets under a barrel, at most",
    .symbol = "",
    .kind = Kind::Count,
    .typical = 2.0,
    .possible = {.least = 0.0, .most = 2.0},
    .standing = {.value = 2.0, .origin = "common practice"},
    .measure = "Decided; each joint more can leak.",
};

constinit const Input squishLeastAtWorst{
    .key = "squish_least_at_worst_m",
    .label = "Squish gap at worst never under",
    .symbol = "",
    .kind = Kind::FineLength,
    .typical = 0.5e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 1.2e-3},
    .standing = {.value = 0.0, .origin = "it may not close"},
    .measure = "Decided; a stack whose gap less its whole ± comes under this is not chosen.",
};

constinit const Input stackOrder{
    .key = "stack_order",
    .label = "Best is nearest in",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kOrders,
    .typical = answer(StackOrder::Squish),
    .standing = {.value = answer(StackOrder::Squish), .origin = "common practice"},
    .measure = "What the choices are ranked by.",
};

constinit const Input plateBore{
    .key = "plate_bore_m",
    .label = "Bore of the spacer plate",
    .symbol = "D_pl",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .typical = 82e-3,
    .possible = {.least = 0.5e-3, .most = 10.0},
    .usual = {.least = 30e-3, .most = 200e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, inside",
    .measure = "Hole for the spigot of barrel or liner, with its clearance.",
};

constinit const Input plateLength{
    .key = "plate_length_m",
    .label = "Length of the spacer plate",
    .symbol = "",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .typical = 190e-3,
    .possible = {.least = 0.0, .most = 10.0, .leastExcluded = true},
    .usual = {.least = 60e-3, .most = 1.0},
    .plusMinus = 0.5e-3,
    .instrument = "steel rule",
    .measure = "Along the crankshaft, over the joint face.",
};

constinit const Input plateWidth{
    .key = "plate_width_m",
    .label = "Width of the spacer plate",
    .symbol = "",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .typical = 110e-3,
    .possible = {.least = 0.0, .most = 10.0, .leastExcluded = true},
    .usual = {.least = 60e-3, .most = 500e-3},
    .plusMinus = 0.5e-3,
    .instrument = "steel rule",
    .measure = "Across the crankshaft, over the joint face.",
};

constinit const Input plateTolerance{
    .key = "plate_tolerance_m",
    .label = "Spacer plate made to within",
    .symbol = "",
    .kind = Kind::FineLength,
    .typical = 0.01e-3,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 0.005e-3, .most = 0.05e-3},
    .standing = {.value = 0.01e-3, .origin = "common practice"},
    .measure = "Decided; the ± on the drawing, which the plate carries once it is in the stack.",
    .synonyms = "plate tolerance",
};

}  // namespace strokewright::model::in
