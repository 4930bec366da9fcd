/// Bore, throw, rod, piston.

#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kSides[] = {{"towards_thrust_side", "towards thrust side"},
                             {"away_from_thrust_side", "away from thrust side"}};

}  // namespace

constinit const Input bore{
    .key = "bore_m",
    .label = "Bore",
    .symbol = "B",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 76e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 30e-3, .most = 160e-3},
    .plusMinus = 0.005e-3,
    .instrument = "bore gauge",
    .measure =
        "Gauge the finished hone, not the piston: three depths, two directions, gauge set to a "
        "micrometer.",
    .synonyms = "cylinder diameter",
};

constinit const Input crankThrow{
    .key = "throw_m",
    .label = "Throw",
    .symbol = "r",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 36e-3,
    .possible = {.least = 0.25e-3, .most = 5000e-3},
    .usual = {.least = 12.5e-3, .most = 100e-3},
    .plusMinus = 0.01e-3,
    .instrument = "dial gauge",
    .measure =
        "Half the difference of the heights over the crankpin at top and at bottom; for a new "
        "crank the offset of the fixture.",
    .synonyms = "crank radius, fixture offset",
    .instead = &stroke,
};

constinit const Input stroke{
    .key = "stroke_m",
    .label = "Stroke",
    .symbol = "S",
    .kind = Kind::Length,
    .scope = Scope::Place,
    .list = true,
    .typical = 72e-3,
    .possible = {.least = 0.5e-3, .most = 10000e-3},
    .usual = {.least = 25e-3, .most = 200e-3},
    .plusMinus = 0.02e-3,
    .instrument = "dial gauge",
    .measure =
        "From the maker's book, or twice the throw; the travel of the piston is the same only "
        "without an offset.",
    .synonyms = "nominal stroke",
};

constinit const Input rodLength{
    .key = "rod_length_m",
    .label = "Rod length (centres)",
    .symbol = "L",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 130e-3,
    .possible = {.least = 1e-3, .most = 20000e-3},
    .usual = {.least = 60e-3, .most = 400e-3},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge",
    .measure =
        "Mandrels in both eyes on the plate: take the height over both, then subtract half of each "
        "mandrel.",
    .synonyms = "centre-to-centre, c–c, between centres",
};

constinit const Input compressionHeight{
    .key = "compression_height_m",
    .label = "Compression height",
    .symbol = "CH",
    .kind = Kind::Length,
    .scope = Scope::Part,
    .list = true,
    .typical = 31e-3,
    .possible = {.least = 0.5e-3, .most = 5000e-3},
    .usual = {.least = 15e-3, .most = 110e-3},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge",
    .measure =
        "Pin in its bore on the plate: height up to the squish-band plane of the crown, less half "
        "the pin.",
    .synonyms = "pin height, crown height, compression distance",
};

constinit const Input cylinderOffset{
    .key = "cylinder_offset_m",
    .label = "Cylinder offset",
    .symbol = "e_cyl",
    .kind = Kind::FineLength,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0},
    .usual = {.most = 15e-3},
    .standing = {.value = 0.0, .origin = "common practice: no offset"},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge",
    .measure =
        "Mandrel in the mains: half the difference between the heights to the two walls of the "
        "bore; 0 where the bore aims at the crank axis.",
    .synonyms = "desaxe, desaxé",
};

constinit const Input cylinderOffsetSide{
    .key = "cylinder_offset_side",
    .label = "Side of the cylinder offset",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kSides,
    .scope = Scope::Place,
    .list = true,
    .typical = answer(Side::AwayFromThrust),
    .measure =
        "Seen from the declared end; the thrust side is the wall the piston leans on during the "
        "power stroke.",
    .synonyms = "thrust side, major-thrust side",
};

constinit const Input pinOffset{
    .key = "pin_offset_m",
    .label = "Pin offset",
    .symbol = "e_pin",
    .kind = Kind::FineLength,
    .scope = Scope::Part,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0},
    .usual = {.most = 2e-3},
    .standing = {.value = 0.0, .origin = "common practice: no offset"},
    .plusMinus = 0.02e-3,
    .instrument = "height gauge",
    .measure =
        "Piston lying on its side: pin axis to skirt, both ways round, and half the difference.",
    .synonyms = "piston offset, gudgeon offset",
};

constinit const Input pinOffsetSide{
    .key = "pin_offset_side",
    .label = "Side of the pin offset",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kSides,
    .scope = Scope::Part,
    .list = true,
    .typical = answer(Side::TowardsThrust),
    .measure =
        "With the piston as fitted, its mark forward; an offset for quiet running is usually "
        "towards the thrust side, and turning the piston round swaps it.",
    .synonyms = "thrust side, major-thrust side",
};

}  // namespace strokewright::model::in
