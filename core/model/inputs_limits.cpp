/// Limits and speeds.

#include <numbers>

#include "core/describe/reader.h"
#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

namespace {

/// [rad/s]
constexpr double rpm(double speed) { return speed * 2.0 * std::numbers::pi / 60.0; }

/// [m rad/s]
constexpr double millimetreRpm(double factor) { return rpm(factor) / 1000.0; }

/// [m/s] what an engine of this use stands for its life; common practice, no published source.
double meanPistonSpeedLimitByUse(describe::Reader& read) {
  if (twoStroke(read)) return 20.0;
  switch (read.choice<Use>(use)) {
    case Use::Road:
    case Use::Trial:
      return 18.0;
    case Use::FastRoad:
      return 21.0;
    case Use::Hill:
    case Use::Race:
    case Use::Record:
      return 24.0;
    case Use::Stationary:
      break;
  }
  return 8.0;
}

}  // namespace

constinit const Input ringWidth{
    .key = "ring_width_m",
    .label = "Ring axial width, top ring",
    .symbol = "h_r",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 1.2e-3,
    .possible = {.least = 0.02e-3, .most = 100e-3},
    .usual = {.least = 0.6e-3, .most = 4e-3},
    .plusMinus = 0.003e-3,
    .instrument = "micrometer",
    .measure = "Measured along the bore; the radial depth is another figure.",
    .synonyms = "ring height, ring thickness",
};

constinit const Input rodLeastSection{
    .key = "rod_least_section_m2",
    .label = "Rod least section",
    .symbol = "A_min",
    .kind = Kind::Area,
    .scope = Scope::Part,
    .list = true,
    .typical = 120e-6,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 30e-6, .most = 1500e-6},
    .plusMinus = 3e-6,
    .instrument = "caliper",
    .measure = "Widths and thicknesses at the thinnest place of the shank, made into an area.",
    .synonyms = "shank section",
};

constinit const Input rodStressLimit{
    .key = "rod_stress_limit_pa",
    .label = "Rod stress allowed",
    .symbol = "σ_all",
    .kind = Kind::Stress,
    .scope = Scope::Engine,
    .typical = 160e6,
    .possible = {.least = 0.0, .most = 10e9, .leastExcluded = true},
    .usual = {.least = 100e6, .most = 200e6},
    .standing = {.value = 160e6, .origin = "common practice"},
    .measure = "Decided; for a crack-tested steel forging, an aluminium rod stands far less.",
    .synonyms = "allowable rod stress",
};

constinit const Input meanPistonSpeedLimit{
    .key = "mean_piston_speed_limit_m_s",
    .label = "Mean piston speed limit",
    .symbol = "v̄_lim",
    .kind = Kind::Velocity,
    .scope = Scope::Engine,
    .typical = 18.0,
    .possible = {.least = 0.0, .most = 200.0, .leastExcluded = true},
    .usual = {.least = 6.0, .most = 27.0},
    .standing = {.value = std::nullopt,
                 .by = meanPistonSpeedLimitByUse,
                 .origin = "common practice, by use and cycle"},
    .measure = "Decided, by what the engine has to last.",
    .synonyms = "mps",
};

constinit const Input ringFlutterConstant{
    .key = "ring_flutter_constant_m2_s2",
    .label = "Ring flutter constant",
    .symbol = "k_r",
    .kind = Kind::RingConstant,
    .scope = Scope::Engine,
    .typical = 38.7,
    .possible = {.least = 0.1, .most = 1000.0},
    .usual = {.least = 30.0, .most = 60.0},
    .standing = {.value = 38.7, .origin = "common practice"},
    .measure = "Decided; for plain rectangular rings, gas-ported and L-section rings stand more.",
    .synonyms = "ring acceleration limit",
};

constinit const Input inletValveCount{
    .key = "inlet_valve_count",
    .label = "Inlet valves per cylinder",
    .symbol = "n_i",
    .kind = Kind::Count,
    .scope = Scope::Place,
    .list = true,
    .typical = 2.0,
    .possible = {.least = 1.0, .most = 6.0},
    .usual = {.most = 3.0},
    .measure = "Count those of one cylinder, not of the engine; four-strokes only.",
    .synonyms = "intake valves",
};

constinit const Input inletValveDiameter{
    .key = "inlet_valve_diameter_m",
    .label = "Inlet valve head Ø",
    .symbol = "d_i",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 31e-3,
    .possible = {.least = 0.5e-3, .most = 1000e-3},
    .usual = {.least = 12e-3, .most = 75e-3},
    .plusMinus = 0.03e-3,
    .instrument = "caliper",
    .measure = "Across the outside of the head.",
    .synonyms = "intake valve size",
};

constinit const Input inletFlowCoefficient{
    .key = "inlet_flow_coefficient",
    .label = "Inlet flow coefficient",
    .symbol = "C_i",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 0.35,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 0.28, .most = 0.45},
    .standing = {.value = 0.35, .origin = "published: Taylor vol. 1 ch. 6, 0.30–0.40"},
    .measure =
        "The mean over the opening of the valve; keep the default unless the head was flowed.",
    .synonyms = "discharge coefficient",
};

constinit const Input soundSpeed{
    .key = "sound_speed_m_s",
    .label = "Speed of sound at the inlet",
    .symbol = "a_s",
    .kind = Kind::Velocity,
    .scope = Scope::Engine,
    .typical = 345.0,
    .possible = {.least = 200.0, .most = 700.0},
    .usual = {.least = 325.0, .most = 380.0},
    .standing = {.value = 345.0, .origin = "published: √(γRT), air at 23 °C"},
    .measure = "Keep the default unless the air is far from room temperature.",
    .synonyms = "sonic velocity",
};

constinit const Input breathingLimit{
    .key = "breathing_limit",
    .label = "Breathing index limit",
    .symbol = "Z_lim",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 0.6,
    .possible = {.least = 0.0, .most = 2.0, .leastExcluded = true},
    .usual = {.least = 0.4, .most = 0.7},
    .standing = {.value = 0.6, .origin = "published: Taylor vol. 1 ch. 6"},
    .measure = "Decided; beyond it power falls, nothing breaks.",
    .synonyms = "inlet Mach index",
};

constinit const Input speedFactorLimit{
    .key = "speed_factor_limit_m_rad_s",
    .label = "Speed factor limit, big end",
    .symbol = "(n·d_m)_lim",
    .kind = Kind::SpeedFactor,
    .scope = Scope::Engine,
    .typical = millimetreRpm(350000.0),
    .possible = {.least = millimetreRpm(1000.0), .most = millimetreRpm(1e7)},
    .usual = {.least = millimetreRpm(200000.0), .most = millimetreRpm(600000.0)},
    .standing = {.value = millimetreRpm(350000.0), .origin = "common practice, caged needles"},
    .measure = "Decided by cage and oil; the mean diameter is half of pin plus eye.",
    .synonyms = "DN value",
};

constinit const Input wantedSpeed{
    .key = "wanted_speed_rad_s",
    .label = "Speed wanted (limiter)",
    .symbol = "N",
    .kind = Kind::Speed,
    .scope = Scope::Engine,
    .typical = rpm(7500.0),
    .possible = {.least = rpm(50.0), .most = rpm(200000.0)},
    .usual = {.least = rpm(300.0), .most = rpm(20000.0)},
    .measure = "Decided: the speed at which the limiter is to cut, not the one for changing gear.",
    .synonyms = "red line, rev ceiling, limiter",
};

constinit const Input provenSpeed{
    .key = "proven_speed_rad_s",
    .label = "Speed proven",
    .symbol = "N_0",
    .kind = Kind::Speed,
    .scope = Scope::Engine,
    .typical = rpm(7500.0),
    .possible = {.least = rpm(50.0), .most = rpm(200000.0)},
    .usual = {.least = rpm(300.0), .most = rpm(20000.0)},
    .measure = "What the donor has held for its life, by its limiter, a log or the maker's book.",
    .synonyms = "red line, limiter",
};

constinit const Input overRevShare{
    .key = "over_rev_share",
    .label = "Over-rev allowance",
    .symbol = "k_o",
    .kind = Kind::Share,
    .scope = Scope::Engine,
    .typical = 10e-2,
    .possible = {.least = 0.0, .most = 100e-2},
    .usual = {.most = 40e-2},
    .standing = {.value = 10e-2,
                 .origin = "common practice, 5–10 % for the overshoot of a limiter; a missed "
                           "down-shift is 20–40 %"},
    .measure = "Decided; gives a second figure beside the rod tension and never moves a ceiling.",
    .synonyms = "overspeed",
};

}  // namespace strokewright::model::in
