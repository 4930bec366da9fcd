/// Survey of the case: what closes the deck height and shows how the seats lie.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

constinit const Input measuredDeckClearance{
    .key = "measured_deck_clearance_m",
    .label = "Deck clearance, measured",
    .symbol = "δ_m",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .differencesCancel = true,
    .typical = 0.2e-3,
    .possible = {.least = -50e-3, .most = 50e-3},
    .usual = {.least = -2e-3, .most = 3e-3},
    .plusMinus = 0.01e-3,
    .instrument = "dial gauge on a bridge",
    .measure =
        "Bridge across the deck, piston at top dead centre, plunger over the pin axis; the mean of "
        "four points takes out the rock. Minus: the crown stands proud.",
    .synonyms = "piston down, piston to deck",
};

constinit const Input cylinderPitch{
    .key = "cylinder_pitch_m",
    .label = "Cylinder pitch",
    .symbol = "a",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .typical = 90e-3,
    .possible = {.least = 1e-3, .most = 10.0},
    .usual = {.least = 15e-3, .most = 250e-3},
    .plusMinus = 0.1e-3,
    .instrument = "caliper",
    .measure = "Centre of one cylinder to the centre of the next, along the crankshaft.",
    .synonyms = "bore spacing, cylinder spacing",
    .instead = &cylinderPosition,
};

constinit const Input cylinderPosition{
    .key = "cylinder_position_m",
    .label = "Cylinder position",
    .symbol = "z",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = -10.0, .most = 10.0},
    .plusMinus = 0.1e-3,
    .instrument = "caliper",
    .measure =
        "Distance of each cylinder along the crankshaft from the first one, away from the end at "
        "which that stands; only where the pitches are unequal, else the pitch says it.",
    .synonyms = "unequal pitch",
};

constinit const Input seatAcross{
    .key = "seat_across_m",
    .label = "Seat higher on the thrust side by",
    .symbol = "Δ_x",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = -20e-3, .most = 20e-3},
    .usual = {.least = -0.2e-3, .most = 0.2e-3},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge on a mandrel",
    .measure =
        "Height of the seat above the mandrel on the thrust side less that on the other side.",
    .synonyms = "seat tilt, squareness of the seat",
};

constinit const Input seatAcrossWidth{
    .key = "seat_across_width_m",
    .label = "Seat sides read apart by",
    .symbol = "w_x",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .typical = 100e-3,
    .possible = {.least = 1e-3, .most = 10.0},
    .usual = {.least = 30e-3, .most = 300e-3},
    .plusMinus = 0.5e-3,
    .instrument = "steel rule",
    .measure = "Distance, across the crankshaft, between the two places where the seat was read.",
};

constinit const Input seatSlopeMost{
    .key = "seat_slope_most",
    .label = "Rise of the seats objected to above",
    .symbol = "",
    .kind = Kind::Share,
    .scope = Scope::Engine,
    .typical = 0.05e-2,
    .possible = {.least = 0.0, .most = 10e-2},
    .usual = {.least = 0.02e-2, .most = 0.2e-2},
    .standing = {.value = 0.05e-2, .origin = "common practice, 0.05 mm in 100 mm"},
    .measure = "Decided; 0.03 mm in 100 mm is good, 0.05 should be put right.",
};

constinit const Input caseMeasuredWarmer{
    .key = "case_measured_warmer_k",
    .label = "Case measured, warmer than 20 °C by",
    .symbol = "ΔT_m",
    .kind = Kind::Warming,
    .scope = Scope::Place,
    .typical = 0.0,
    .possible = {.least = -80.0, .most = 200.0},
    .usual = {.least = -25.0, .most = 25.0},
    .standing = {.value = 0.0, .origin = "ISO 1, reference temperature"},
    .plusMinus = 1.0,
    .instrument = "contact thermometer",
    .measure =
        "Temperature of the case, not of the air, less 20 °C; minus where it was colder. Leave "
        "case and instrument side by side overnight and it is nought.",
    .synonyms = "measuring temperature, reference temperature, hot from the oven, cold workshop",
};

}  // namespace strokewright::model::in
