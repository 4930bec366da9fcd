/// Volumes and inlet closing.

#include <numbers>

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

/// [rad]
constexpr double degrees(double angle) { return angle * std::numbers::pi / 180.0; }

constexpr Choice kSenses[] = {{"takes", "takes (dome)"}, {"adds", "adds (dish, bowl, pockets)"}};

}  // namespace

constinit const Input chamberVolume{
    .key = "chamber_volume_m3",
    .label = "Combustion chamber volume",
    .symbol = "V_ch",
    .kind = Kind::Volume,
    .scope = Scope::Place,
    .list = true,
    .typical = 32e-6,
    .possible = {.least = 0.0, .most = 10e-3},
    .usual = {.least = 2e-6, .most = 300e-6},
    .plusMinus = 0.2e-6,
    .instrument = "burette",
    .measure =
        "Plug and valves in, greased plate with a hole over the chamber, mean of three fills; "
        "valve recesses in the head count here.",
    .synonyms = "cc-ing, head volume",
};

constinit const Input crownVolume{
    .key = "crown_volume_m3",
    .label = "Crown volume",
    .symbol = "V_cr",
    .kind = Kind::Volume,
    .scope = Scope::Part,
    .list = true,
    .typical = 1e-6,
    .possible = {.least = 0.0},
    .usual = {.most = 120e-6},
    .standing = {.value = 0.0, .origin = "flat crown"},
    .plusMinus = 0.2e-6,
    .instrument = "burette",
    .measure =
        "Fill from the burette with the piston a known distance down, then subtract the bore area "
        "times that distance.",
    .synonyms = "dome volume, dish volume, piston top",
};

constinit const Input crownVolumeSense{
    .key = "crown_volume_sense",
    .label = "Crown takes or adds volume",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kSenses,
    .scope = Scope::Part,
    .list = true,
    .typical = answer(CrownSense::Takes),
    .measure = "Whether the crown stands up into the chamber or is hollow.",
    .synonyms = "dome, dish, bowl, valve pockets",
};

constinit const Input creviceVolume{
    .key = "crevice_volume_m3",
    .label = "Crevice volume",
    .symbol = "V_crev",
    .kind = Kind::Volume,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.3e-6,
    .possible = {.least = 0.0, .most = 1000e-6},
    .usual = {.most = 3e-6},
    .standing = {.value = 0.0, .origin = "not counted"},
    .plusMinus = 0.05e-6,
    .instrument = "micrometer and caliper",
    .measure =
        "π/4 of bore² less top-land diameter², times the height of the land above the top ring.",
    .synonyms = "top-land volume",
};

constinit const Input inletClosing{
    .key = "inlet_closing_rad",
    .label = "Inlet closes after bottom dead centre",
    .symbol = "IVC",
    .kind = Kind::Angle,
    .scope = Scope::Place,
    .list = true,
    .typical = degrees(58.0),
    .possible = {.least = degrees(-180.0), .most = degrees(360.0)},
    .usual = {.least = degrees(20.0), .most = degrees(90.0)},
    .plusMinus = degrees(0.5),
    .instrument = "degree wheel",
    .measure =
        "Zero the wheel at top dead centre by a positive stop from both sides; its 180° counts as "
        "bottom dead centre.",
    .synonyms = "inlet valve closing, ABDC",
};

constinit const Input inletClosingLift{
    .key = "inlet_closing_lift_m",
    .label = "Inlet closing read at a lift of",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 30e-3},
    .usual = {.most = 1.3e-3},
    .plusMinus = 0.01e-3,
    .instrument = "dial gauge",
    .measure =
        "The valve lift at which the closing was read; 0 when read at the seat, as most books give "
        "it.",
    .synonyms = "lift basis, checking height",
};

}  // namespace strokewright::model::in
