/// What closes the squish gap when the engine runs.

#include "core/describe/reader.h"
#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kMaterials[] = {
    {"aluminium", "aluminium alloy"}, {"iron", "cast iron"}, {"magnesium", "magnesium alloy"}};

/// [1/K]
/// @source mean values near 100 °C as in Machinery's Handbook, from memory
double expansionOfCase(describe::Reader& read) {
  if (!read.given(caseMaterial)) return 23e-6;
  switch (read.choice<CaseMaterial>(caseMaterial)) {
    case CaseMaterial::Iron:
      return 11e-6;
    case CaseMaterial::Magnesium:
      return 26e-6;
    case CaseMaterial::Aluminium:
      break;
  }
  return 23e-6;
}

constexpr Choice kMethods[] = {{"from_dimensions", "from the dimensions"},
                               {"solder", "solder, pressed at top dead centre"},
                               {"dial_gauge", "dial gauge on a mock-up"}};

}  // namespace

constinit const Input squishKnownBy{
    .key = "squish_known_by",
    .label = "Squish gap is known",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kMethods,
    .scope = Scope::Engine,
    .typical = answer(SquishKnownBy::FromDimensions),
    .standing = {.value = answer(SquishKnownBy::FromDimensions),
                 .origin = "from the dimensions entered"},
    .measure =
        "Solder pushes the piston down while it is measured, so all of the bearing clearance still "
        "closes the gap; from the dimensions it is half of it.",
    .synonyms = "wire check, lead wire",
};

constinit const Input measuredSquish{
    .key = "measured_squish_m",
    .label = "Squish gap, measured",
    .symbol = "s_m",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .differencesCancel = true,
    .typical = 0.95e-3,
    .possible = {.least = 0.0, .most = 20e-3, .leastExcluded = true},
    .usual = {.least = 0.3e-3, .most = 3e-3},
    .plusMinus = 0.02e-3,
    .instrument = "solder and micrometer",
    .measure =
        "Solder or lead-free wire at four places over the pin axis, head at full torque, turned "
        "once over top dead centre; or a dial gauge on the mock-up.",
    .synonyms = "wire check, solder check",
};

constinit const Input mainClearance{
    .key = "main_bearing_clearance_m",
    .label = "Main bearing clearance",
    .symbol = "c_m",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.02e-3,
    .possible = {.least = 0.0, .most = 2e-3},
    .usual = {.most = 0.15e-3},
    .standing = {.value = 0.02e-3, .origin = "common practice"},
    .plusMinus = 0.005e-3,
    .instrument = "micrometer and bore gauge",
    .measure =
        "On the diameter, as it runs: bearing class less what the press fits take away, or shell "
        "bore less journal.",
    .synonyms = "radial clearance of the mains",
};

constinit const Input bigEndClearance{
    .key = "big_end_clearance_m",
    .label = "Big-end clearance",
    .symbol = "c_be",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.02e-3,
    .possible = {.least = 0.0, .most = 2e-3},
    .usual = {.most = 0.15e-3},
    .standing = {.value = 0.02e-3, .origin = "common practice"},
    .plusMinus = 0.005e-3,
    .instrument = "micrometer and bore gauge",
    .measure =
        "On the diameter: eye less crankpin less twice the needle or roller, or shell bore less "
        "crankpin.",
    .synonyms = "radial clearance of the big end",
};

constinit const Input gudgeonPinClearance{
    .key = "gudgeon_pin_clearance_m",
    .label = "Gudgeon-pin clearance",
    .symbol = "c_gp",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.015e-3,
    .possible = {.least = 0.0, .most = 2e-3},
    .usual = {.most = 0.15e-3},
    .standing = {.value = 0.015e-3, .origin = "common practice"},
    .plusMinus = 0.005e-3,
    .instrument = "micrometer and bore gauge",
    .measure = "On the diameter, between the pin and its bush or cage in the rod.",
    .synonyms = "small-end clearance, pin play",
};

constinit const Input rodModulus{
    .key = "rod_modulus_pa",
    .label = "Rod, modulus of elasticity",
    .symbol = "E_rod",
    .kind = Kind::Stress,
    .scope = Scope::Engine,
    .typical = 206e9,
    .possible = {.least = 1e9, .most = 1e12},
    .usual = {.least = 60e9, .most = 220e9},
    .standing = {.value = 206e9,
                 .origin = "common practice, steel; titanium 110, aluminium 71 GPa"},
    .measure = "From the data sheet of the material; steel 206 GPa.",
    .synonyms = "Young’s modulus",
};

constinit const Input caseMaterial{
    .key = "case_material",
    .label = "Case and barrel are of",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kMaterials,
    .scope = Scope::Engine,
    .typical = answer(CaseMaterial::Aluminium),
    .measure = "What stands between crank axis and deck; a magnet tells iron.",
};

constinit const Input caseExpansion{
    .key = "case_expansion_per_k",
    .label = "Case and barrel, expansion",
    .symbol = "α_case",
    .kind = Kind::Expansion,
    .scope = Scope::Engine,
    .typical = 23e-6,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 5e-6, .most = 30e-6},
    .standing = {.value = std::nullopt,
                 .by = expansionOfCase,
                 .origin = "common practice: aluminium 23, magnesium 26, iron 11; aluminium while "
                           "nothing is said"},
    .measure = "Expansion of what stands between crank axis and deck: aluminium 23, iron 11.",
    .synonyms = "coefficient of thermal expansion",
};

constinit const Input rodExpansion{
    .key = "rod_expansion_per_k",
    .label = "Rod, expansion",
    .symbol = "α_rod",
    .kind = Kind::Expansion,
    .scope = Scope::Engine,
    .typical = 11.5e-6,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 5e-6, .most = 30e-6},
    .standing = {.value = 11.5e-6, .origin = "common practice, steel"},
    .measure = "Expansion of the rod: steel 11.5, aluminium 23, titanium 9.",
    .synonyms = "coefficient of thermal expansion",
};

constinit const Input crankExpansion{
    .key = "crank_expansion_per_k",
    .label = "Crank, expansion",
    .symbol = "α_crank",
    .kind = Kind::Expansion,
    .scope = Scope::Engine,
    .typical = 11.5e-6,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 5e-6, .most = 30e-6},
    .standing = {.value = 11.5e-6, .origin = "common practice, steel"},
    .measure = "Expansion of the webs between main journal and crankpin: steel 11.5.",
    .synonyms = "coefficient of thermal expansion",
};

constinit const Input pistonExpansion{
    .key = "piston_expansion_per_k",
    .label = "Piston, expansion",
    .symbol = "α_piston",
    .kind = Kind::Expansion,
    .scope = Scope::Engine,
    .typical = 21e-6,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 5e-6, .most = 30e-6},
    .standing = {.value = 21e-6, .origin = "common practice, piston alloy"},
    .measure =
        "Expansion of the piston between pin and crown: cast alloy 19 to 21, forged 22 to 23.",
    .synonyms = "coefficient of thermal expansion",
};

constinit const Input caseWarming{
    .key = "case_warming_k",
    .label = "Case and barrel, warmer by",
    .symbol = "ΔT_case",
    .kind = Kind::Warming,
    .scope = Scope::Engine,
    .typical = 70.0,
    .possible = {.least = -100.0, .most = 1000.0},
    .usual = {.least = 20.0, .most = 350.0},
    .standing = {.value = 70.0, .origin = "common practice, an estimate"},
    .measure =
        "Mean temperature, running, of case and barrel above that at which they were measured; "
        "air-cooled barrels run hotter.",
    .synonyms = "temperature rise",
};

constinit const Input rodWarming{
    .key = "rod_warming_k",
    .label = "Rod, warmer by",
    .symbol = "ΔT_rod",
    .kind = Kind::Warming,
    .scope = Scope::Engine,
    .typical = 100.0,
    .possible = {.least = -100.0, .most = 1000.0},
    .usual = {.least = 20.0, .most = 350.0},
    .standing = {.value = 100.0, .origin = "common practice, an estimate"},
    .measure = "Mean temperature of the rod, running, above that at which it was measured.",
    .synonyms = "temperature rise",
};

constinit const Input crankWarming{
    .key = "crank_warming_k",
    .label = "Crank, warmer by",
    .symbol = "ΔT_crank",
    .kind = Kind::Warming,
    .scope = Scope::Engine,
    .typical = 80.0,
    .possible = {.least = -100.0, .most = 1000.0},
    .usual = {.least = 20.0, .most = 350.0},
    .standing = {.value = 80.0, .origin = "common practice, an estimate"},
    .measure = "Mean temperature of the webs, running, above that at which they were measured.",
    .synonyms = "temperature rise",
};

constinit const Input pistonWarming{
    .key = "piston_warming_k",
    .label = "Piston, warmer by",
    .symbol = "ΔT_piston",
    .kind = Kind::Warming,
    .scope = Scope::Engine,
    .typical = 180.0,
    .possible = {.least = -100.0, .most = 1000.0},
    .usual = {.least = 20.0, .most = 350.0},
    .standing = {.value = 180.0, .origin = "common practice, an estimate"},
    .measure =
        "Mean temperature between pin and crown, running, above that at which the piston was "
        "measured.",
    .synonyms = "temperature rise",
};

constinit const Input runningSquishEstimate{
    .key = "running_squish_estimate_m",
    .label = "Running gap is estimated to within",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.05e-3,
    .possible = {.least = 0.0, .most = 5e-3},
    .usual = {.least = 0.02e-3, .most = 0.2e-3},
    .standing = {.value = 0.05e-3, .origin = "common practice"},
    .measure = "Decided; what temperatures and clearances that nobody measured leave open.",
};

constinit const Input runningSquishLeast{
    .key = "running_squish_least_m",
    .label = "Running squish gap objected to below",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.25e-3,
    .possible = {.least = 0.0, .most = 10e-3},
    .usual = {.least = 0.1e-3, .most = 0.6e-3},
    .standing = {.value = 0.25e-3, .origin = "common practice"},
    .measure = "Decided; what must be left between crown and head at speed, on worst case.",
};

}  // namespace strokewright::model::in
