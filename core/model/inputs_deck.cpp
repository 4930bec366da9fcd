/// Deck and stack.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kFaces[] = {{"barrel_or_liner_top", "barrel or liner top"},
                             {"block_face", "block face"}};
constexpr Choice kDrivers[] = {{"squish_gap", "squish gap"},
                               {"deck_clearance", "deck clearance"},
                               {"compression_ratio", "compression ratio"}};

}  // namespace

constinit const Input seatHeight{
    .key = "seat_height_m",
    .label = "Crank axis to barrel seat",
    .symbol = "H_case",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 120e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 40e-3, .most = 400e-3},
    .plusMinus = 0.03e-3,
    .instrument = "height gauge on mandrel",
    .measure =
        "Ground mandrel in the mains, at each cylinder: height gauge, or depth micrometer down to "
        "the mandrel plus half its diameter.",
    .synonyms = "case height, case mouth height",
    .instead = &deckHeight,
};

constinit const Input barrelHeight{
    .key = "barrel_height_m",
    .label = "Barrel seat to deck",
    .symbol = "H_barrel",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 76e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 30e-3, .most = 300e-3},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge",
    .measure =
        "Barrel on the plate, foot face to top face at four places; separate barrels one by one.",
    .synonyms = "cylinder height, jug height",
};

constinit const Input deckHeight{
    .key = "deck_height_m",
    .label = "Deck height, direct",
    .symbol = "H_0",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 196.4e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 80e-3, .most = 700e-3},
    .plusMinus = 0.03e-3,
    .instrument = "depth micrometer on mandrel",
    .measure =
        "From the crank axis to the deck as it stands, with the base gaskets in and the spacer "
        "out.",
    .synonyms = "crank-axis-to-deck",
};

constinit const Input heightTakenTo{
    .key = "height_taken_to",
    .label = "Height taken to",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kFaces,
    .scope = Scope::Place,
    .typical = answer(HeightTakenTo::LinerTop),
    .standing = {.value = answer(HeightTakenTo::LinerTop), .origin = "common practice"},
    .measure =
        "The face to which barrel or deck height was measured; only a height to the block face has "
        "the liner protrusion added.",
    .synonyms = "deck reference",
};

constinit const Input linerProud{
    .key = "liner_proud_m",
    .label = "Liner protrusion",
    .symbol = "h_l",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = -1e-3, .most = 5e-3},
    .usual = {.least = 0.0, .most = 0.12e-3},
    .standing = {.value = 0.0, .origin = "no wet liner"},
    .plusMinus = 0.01e-3,
    .instrument = "dial gauge",
    .measure = "Dial gauge on a bridge across the bore, with the liner clamped as it will run.",
    .synonyms = "liner proud, liner stand-out",
};

constinit const Input spacer{
    .key = "spacer_m",
    .label = "Spacer, fitted or planned",
    .symbol = "t_sp",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.8e-3,
    .possible = {.least = -50e-3, .most = 100e-3},
    .usual = {.least = -3e-3, .most = 12e-3},
    .plusMinus = 0.003e-3,
    .instrument = "micrometer",
    .measure =
        "Micrometer at four places, or the size to be made; minus for a skim of barrel foot or "
        "deck; no plate is 0 without ±.",
    .synonyms = "compression plate, base plate, barrel spacer, skim",
};

constinit const Input baseGasket{
    .key = "base_gasket_m",
    .label = "Base gasket, compressed",
    .symbol = "t_bg",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.4e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 1.5e-3},
    .plusMinus = 0.03e-3,
    .instrument = "solder and micrometer",
    .measure =
        "Crush solder at full torque or measure a used gasket; the packet gives a thicker one; 0 "
        "where none is fitted.",
    .synonyms = "foot gasket, barrel gasket",
};

constinit const Input secondBaseGasket{
    .key = "second_base_gasket_m",
    .label = "Second base gasket, compressed",
    .symbol = "t_bg2",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 1.5e-3},
    .standing = {.value = 0.0, .origin = "none fitted"},
    .plusMinus = 0.03e-3,
    .instrument = "solder and micrometer",
    .measure = "As the first one; every gasket has a ± of its own.",
    .synonyms = "foot gasket, barrel gasket",
};

constinit const Input thirdBaseGasket{
    .key = "third_base_gasket_m",
    .label = "Third base gasket, compressed",
    .symbol = "t_bg3",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 1.5e-3},
    .standing = {.value = 0.0, .origin = "none fitted"},
    .plusMinus = 0.03e-3,
    .instrument = "solder and micrometer",
    .measure = "As the first one.",
    .synonyms = "foot gasket, barrel gasket",
};

constinit const Input headGasket{
    .key = "head_gasket_m",
    .label = "Head gasket, compressed",
    .symbol = "t_g",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.8e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 2e-3},
    .plusMinus = 0.03e-3,
    .instrument = "solder and micrometer",
    .measure = "Crush solder at full torque or measure a used gasket; 0 for a lapped joint.",
    .synonyms = "gasket thickness",
};

constinit const Input headGasketBore{
    .key = "head_gasket_bore_m",
    .label = "Bore of head gasket",
    .symbol = "D_g",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 77.5e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 30e-3, .most = 170e-3},
    .plusMinus = 0.05e-3,
    .instrument = "caliper, inside",
    .measure =
        "Across the fire ring in two directions; where it is not round, the circle of the same "
        "area.",
    .synonyms = "fire ring diameter",
};

constinit const Input headGasketVolume{
    .key = "head_gasket_volume_m3",
    .label = "Hole of the head gasket, measured",
    .symbol = "V_g",
    .kind = Kind::Volume,
    .scope = Scope::Part,
    .list = true,
    .typical = 3.5e-6,
    .possible = {.least = 0.0, .most = 1e-3},
    .usual = {.least = 0.5e-6, .most = 30e-6},
    .plusMinus = 0.1e-6,
    .instrument = "burette",
    .measure =
        "For a stepped gasket, a fire ring or a hole that follows the chamber: between two plates "
        "at clamped thickness; it stands for the bore of the gasket.",
    .synonyms = "stepped gasket, fire ring, ring template",
};

constinit const Input headGasketTaper{
    .key = "head_gasket_taper_m",
    .label = "Head gasket thicker on one side by",
    .symbol = "Δt_g",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 20e-3},
    .usual = {.most = 0.2e-3},
    .standing = {.value = 0.0, .origin = "even thickness"},
    .plusMinus = 0.02e-3,
    .instrument = "solder and micrometer",
    .measure =
        "Solder crushed on both sides of the bore; the thickness entered is the mean, and the thin "
        "side closes the gap by half of this.",
    .synonyms = "tapered gasket, uneven gasket",
};

constinit const Input headRecess{
    .key = "head_recess_m",
    .label = "Head recess at the band",
    .symbol = "h_rec",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 3e-3},
    .standing = {.value = 0.0, .origin = "flat head"},
    .plusMinus = 0.01e-3,
    .instrument = "depth micrometer",
    .measure = "Depth micrometer on the joint face of the head, up to the squish face.",
    .synonyms = "squish recess",
};

constinit const Input crownRise{
    .key = "crown_rise_m",
    .label = "Crown rise at the band",
    .symbol = "h_rise",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.most = 3e-3},
    .standing = {.value = 0.0, .origin = "compression height taken to the band"},
    .plusMinus = 0.01e-3,
    .instrument = "depth micrometer",
    .measure =
        "How far the crown stands, at the band, above the plane to which the compression height "
        "was taken.",
    .synonyms = "crown step",
};

constinit const Input stackDriver{
    .key = "stack_driver",
    .label = "What the spacer is made for",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kDrivers,
    .scope = Scope::Engine,
    .typical = answer(StackDriver::SquishGap),
    .standing = {.value = answer(StackDriver::SquishGap), .origin = "common practice"},
    .measure = "The one wanted figure that sets the spacer; the other two become results.",
    .synonyms = "driver",
};

constinit const Input wantedSquish{
    .key = "wanted_squish_m",
    .label = "Squish gap wanted",
    .symbol = "s_w",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1e-3,
    .possible = {.least = 0.0, .most = 50e-3, .leastExcluded = true},
    .usual = {.least = 0.6e-3, .most = 1.5e-3},
    .measure = "Decided; 0.8 to 1.2 mm cold is common practice.",
    .synonyms = "quench, squish clearance, piston-to-head, bumping clearance",
};

constinit const Input wantedDeckClearance{
    .key = "wanted_deck_clearance_m",
    .label = "Deck clearance wanted",
    .symbol = "δ_w",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.2e-3,
    .possible = {.least = -50e-3, .most = 50e-3},
    .usual = {.least = -2e-3, .most = 2.5e-3},
    .measure = "Decided; minus for a crown that stands proud of the deck.",
    .synonyms = "piston-down, piston to deck",
};

constinit const Input wantedCompressionRatio{
    .key = "wanted_compression_ratio",
    .label = "Compression ratio wanted",
    .symbol = "ε_w",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 10.0,
    .possible = {.least = 1.0, .most = 200.0, .leastExcluded = true},
    .usual = {.least = 6.0, .most = 23.0},
    .measure = "Decided, with fuel and ignition in mind.",
    .synonyms = "CR, static compression, geometric compression",
};

}  // namespace strokewright::model::in
