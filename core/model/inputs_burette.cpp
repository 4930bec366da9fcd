/// Volumes filled from the burette, and what follows from them.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

constinit const Input crownFillDepth{
    .key = "crown_fill_depth_m",
    .label = "Piston set down for filling by",
    .symbol = "x_f",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 10e-3,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 2e-3, .most = 60e-3},
    .plusMinus = 0.01e-3,
    .instrument = "dial gauge on a bridge",
    .measure =
        "Depth of the crown at the squish band below the deck while the bore was filled; grease "
        "seals the rings.",
    .synonyms = "piston down for cc-ing",
};

constinit const Input crownFill{
    .key = "crown_fill_m3",
    .label = "Filled above the piston",
    .symbol = "V_f",
    .kind = Kind::Volume,
    .scope = Scope::Part,
    .list = true,
    .typical = 44.4e-6,
    .possible = {.least = 0.0, .most = 0.1, .leastExcluded = true},
    .usual = {.least = 2e-6, .most = 500e-6},
    .plusMinus = 0.2e-6,
    .instrument = "burette",
    .measure =
        "Flat plate with a hole on the deck, bore filled from the burette with the piston set "
        "down; several fills parted by |, each as it reads: 0.2 to 44.6.",
    .synonyms = "cc-ing the crown",
};

constinit const Input wholeVolume{
    .key = "whole_volume_m3",
    .label = "Whole volume through the plug hole",
    .symbol = "V_w",
    .kind = Kind::Volume,
    .scope = Scope::Part,
    .list = true,
    .typical = 37.2e-6,
    .possible = {.least = 0.0, .most = 0.1, .leastExcluded = true},
    .usual = {.least = 2e-6, .most = 500e-6},
    .plusMinus = 0.3e-6,
    .instrument = "burette",
    .measure =
        "Assembled, piston at top dead centre, plug hole uppermost, valves shut: filled to the top "
        "thread; several fills parted by |.",
    .synonyms = "cc-ing the assembled engine",
};

constinit const Input plugHoleVolume{
    .key = "plug_hole_volume_m3",
    .label = "Plug hole filled with it",
    .symbol = "V_plug",
    .kind = Kind::Volume,
    .scope = Scope::Place,
    .typical = 1.2e-6,
    .possible = {.least = 0.0, .most = 0.001},
    .usual = {.least = 0.3e-6, .most = 6e-6},
    .plusMinus = 0.1e-6,
    .instrument = "burette",
    .measure =
        "What the plug takes up of the filling when it is screwed in: hole filled alone, less what "
        "stands in the open end of the plug.",
    .synonyms = "plug thread volume",
};

constinit const Input crankcaseVolume{
    .key = "crankcase_volume_m3",
    .label = "Crankcase volume at bottom dead centre",
    .symbol = "V_cc",
    .kind = Kind::Volume,
    .scope = Scope::Place,
    .list = true,
    .typical = 400e-6,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 20e-6, .most = 5e-3},
    .plusMinus = 2e-6,
    .instrument = "burette",
    .measure =
        "Two-stroke: piston at bottom dead centre, crankcase and transfers filled with thin oil "
        "from a measure.",
    .synonyms = "primary volume",
};

constinit const Input exhaustPortTop{
    .key = "exhaust_port_top_m",
    .label = "Exhaust port top below the barrel face",
    .symbol = "h_ex",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 28e-3,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 8e-3, .most = 80e-3},
    .plusMinus = 0.1e-3,
    .instrument = "caliper, depth",
    .measure = "From the top face of the barrel down to the upper edge of the exhaust port.",
    .synonyms = "exhaust timing height",
};

constinit const Input transferPortTop{
    .key = "transfer_port_top_m",
    .label = "Transfer port top below the barrel face",
    .symbol = "h_tr",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 40e-3,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 10e-3, .most = 100e-3},
    .plusMinus = 0.1e-3,
    .instrument = "caliper, depth",
    .measure = "From the top face of the barrel down to the upper edge of the transfer ports.",
    .synonyms = "transfer timing height",
};

}  // namespace strokewright::model::in
