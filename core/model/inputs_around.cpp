/// What goes round and what it passes.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

constinit const Input skirtLength{
    .key = "skirt_length_m",
    .label = "Skirt below pin",
    .symbol = "h_sk",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 24e-3,
    .possible = {.least = 0.0, .most = 1000e-3},
    .usual = {.least = 8e-3, .most = 120e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, depth",
    .measure = "From the pin axis to the lowest edge of the skirt where the web passes.",
    .synonyms = "skirt length",
};

constinit const Input counterweightRadius{
    .key = "counterweight_radius_m",
    .label = "Counterweight radius",
    .symbol = "R_cw",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 60e-3,
    .possible = {.least = 0.5e-3, .most = 5000e-3},
    .usual = {.least = 20e-3, .most = 200e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper",
    .measure = "From the crank axis to the outermost edge of web or weight.",
    .synonyms = "web radius, flywheel radius, bob",
};

constinit const Input linerBottomHeight{
    .key = "liner_bottom_height_m",
    .label = "Crank axis to bottom of liner",
    .symbol = "y_lb",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 80e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 20e-3, .most = 400e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, depth",
    .measure =
        "In place with the spacer that is entered; take it anew whenever the spacer changes.",
    .synonyms = "sleeve bottom, spigot bottom",
    .instead = &linerLength,
};

constinit const Input linerLength{
    .key = "liner_length_m",
    .label = "Liner length, deck to lower edge",
    .symbol = "l_lin",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 117.2e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 40e-3, .most = 500e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, depth",
    .measure =
        "From the top face to the lower edge of the bore; this one stays true when the spacer "
        "changes.",
    .synonyms = "sleeve length",
};

constinit const Input rodHalfWidth{
    .key = "rod_half_width_m",
    .label = "Half width of rod shank",
    .symbol = "b_sh",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 9e-3,
    .possible = {.least = 0.1e-3, .most = 1000e-3},
    .usual = {.least = 3e-3, .most = 45e-3},
    .plusMinus = 0.03e-3,
    .instrument = "caliper",
    .measure = "Half the width of the shank at the place that passes the lower edge of the liner.",
    .synonyms = "shank width",
};

}  // namespace strokewright::model::in
