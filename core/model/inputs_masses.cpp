/// Masses and balance.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

constinit const Input pistonMass{
    .key = "piston_mass_kg",
    .label = "Piston mass",
    .symbol = "m_p",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 220e-3,
    .possible = {.least = 0.0, .most = 10e3, .leastExcluded = true},
    .usual = {.least = 40e-3, .most = 3000e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "The bare piston, without rings, pin or clips.",
    .synonyms = "piston weight",
};

constinit const Input ringSetMass{
    .key = "ring_set_mass_kg",
    .label = "Ring mass, one piston",
    .symbol = "m_ri",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 14e-3,
    .possible = {.least = 0.0, .most = 10e3},
    .usual = {.least = 2e-3, .most = 200e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "All the rings of one piston on the scale together.",
    .synonyms = "ring weight",
};

constinit const Input gudgeonPinMass{
    .key = "gudgeon_pin_mass_kg",
    .label = "Gudgeon pin mass",
    .symbol = "m_gp",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 62e-3,
    .possible = {.least = 0.0, .most = 10e3, .leastExcluded = true},
    .usual = {.least = 12e-3, .most = 1500e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "The pin with its end plugs, if it has any.",
    .synonyms = "wrist pin, piston pin",
};

constinit const Input circlipMass{
    .key = "circlip_mass_kg",
    .label = "Circlip mass, both",
    .symbol = "m_cl",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 2e-3,
    .possible = {.least = 0.0, .most = 10e3},
    .usual = {.most = 20e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "Both clips of one piston together; 0 for a pressed pin.",
    .synonyms = "retaining clip, wire lock",
};

constinit const Input smallEndBearingMass{
    .key = "small_end_bearing_mass_kg",
    .label = "Small-end bearing mass",
    .symbol = "m_sb",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 10e3},
    .usual = {.most = 150e-3},
    .standing = {.value = 0.0, .origin = "weighed with the rod"},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "Needle cage or loose bush; a bush that stays in the rod is weighed with the rod.",
    .synonyms = "little-end bushing, needle cage",
};

constinit const Input rodSmallEndMass{
    .key = "rod_small_end_mass_kg",
    .label = "Rod mass, small end",
    .symbol = "m_se",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 105e-3,
    .possible = {.least = 0.0, .most = 10e3, .leastExcluded = true},
    .usual = {.least = 20e-3, .most = 2000e-3},
    .plusMinus = 0.3e-3,
    .instrument = "scale, rod hung level",
    .measure =
        "Small end on the scale, the other eye hung so that the rod is level, the string through "
        "the centre of the eye.",
    .synonyms = "little end",
};

constinit const Input rodBigEndMass{
    .key = "rod_big_end_mass_kg",
    .label = "Rod mass, big end",
    .symbol = "m_be",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 260e-3,
    .possible = {.least = 0.0, .most = 10e3, .leastExcluded = true},
    .usual = {.least = 40e-3, .most = 5000e-3},
    .plusMinus = 0.3e-3,
    .instrument = "scale, rod hung level",
    .measure = "The same with the ends swapped; a split rod complete with cap and bolts.",
};

constinit const Input rodMass{
    .key = "rod_mass_kg",
    .label = "Rod mass, whole",
    .symbol = "m_rod",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 365e-3,
    .possible = {.least = 0.0, .most = 10e3, .leastExcluded = true},
    .usual = {.least = 60e-3, .most = 7000e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "The whole rod lying on the scale; it checks the sum of the two ends.",
    .synonyms = "con-rod weight, connecting rod",
};

constinit const Input bigEndCageMass{
    .key = "big_end_cage_mass_kg",
    .label = "Big-end cage mass",
    .symbol = "m_cage",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 30e-3,
    .possible = {.least = 0.0, .most = 10e3},
    .usual = {.most = 400e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "The cage with its needles; 0 where plain shells were weighed with the rod.",
    .synonyms = "needle cage, retainer",
};

constinit const Input crankpinMass{
    .key = "crankpin_mass_kg",
    .label = "Crankpin mass",
    .symbol = "m_cp",
    .kind = Kind::Mass,
    .scope = Scope::Part,
    .list = true,
    .typical = 240e-3,
    .possible = {.least = 0.0, .most = 10e3},
    .usual = {.least = 40e-3, .most = 5000e-3},
    .plusMinus = 0.1e-3,
    .instrument = "scale",
    .measure = "The pin alone, the part between the webs and the parts in them.",
    .synonyms = "big-end journal, pin",
};

constinit const Input balanceFactor{
    .key = "balance_factor",
    .label = "Balance factor",
    .symbol = "BF",
    .kind = Kind::Share,
    .scope = Scope::Engine,
    .typical = 50e-2,
    .possible = {.least = -1000e-2, .most = 1000e-2},
    .usual = {.least = 30e-2, .most = 80e-2},
    .measure = "Decided; the donor's own follows from the static moment of its counterweight.",
    .synonyms = "% reciprocating",
};

}  // namespace strokewright::model::in
