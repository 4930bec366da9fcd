/// Fits of pin, rod and crankpin.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kSmallEnds[] = {
    {"pin_in_the_rod", "pin in the rod"}, {"bush", "bush"}, {"needle_cage", "needle cage"}};

}  // namespace

constinit const Input gudgeonPinDiameter{
    .key = "gudgeon_pin_diameter_m",
    .label = "Gudgeon pin Ø",
    .symbol = "d_gp",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 18e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 10e-3, .most = 50e-3},
    .plusMinus = 0.003e-3,
    .instrument = "micrometer",
    .measure = "Micrometer on the part of the pin where the rod runs.",
    .synonyms = "wrist pin, piston pin",
};

constinit const Input smallEndBore{
    .key = "small_end_bore_m",
    .label = "Small-end bore of the rod",
    .symbol = "d_se",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 18e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 10e-3, .most = 56e-3},
    .plusMinus = 0.005e-3,
    .instrument = "bore gauge",
    .measure = "The hole of the rod itself, with bush or cage taken out.",
    .synonyms = "little end, small-end eye",
};

constinit const Input smallEndKind{
    .key = "small_end_kind",
    .label = "Small-end bearing",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kSmallEnds,
    .scope = Scope::Part,
    .list = true,
    .typical = answer(SmallEnd::PinInRod),
    .measure = "Look into the small end; a wall is judged only where there is a bush.",
    .synonyms = "little-end bushing, needle cage",
};

constinit const Input bigEndPinDiameter{
    .key = "big_end_pin_diameter_m",
    .label = "Crankpin Ø",
    .symbol = "d_cp",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 28e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 15e-3, .most = 100e-3},
    .plusMinus = 0.004e-3,
    .instrument = "micrometer",
    .measure = "Micrometer in three planes and two directions.",
    .synonyms = "big-end journal, pin",
};

constinit const Input bigEndEyeDiameter{
    .key = "big_end_eye_diameter_m",
    .label = "Big-end eye Ø",
    .symbol = "D_eye",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 36e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 18e-3, .most = 130e-3},
    .plusMinus = 0.003e-3,
    .instrument = "bore gauge",
    .measure = "Gauge in two directions, on the running track of the eye.",
    .synonyms = "big-end race, track",
};

constinit const Input bigEndWidth{
    .key = "big_end_width_m",
    .label = "Big-end width",
    .symbol = "b_be",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 17e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 8e-3, .most = 80e-3},
    .plusMinus = 0.01e-3,
    .instrument = "micrometer",
    .measure = "Micrometer over the two cheeks of the big end.",
    .synonyms = "big-end cheeks",
};

}  // namespace strokewright::model::in
