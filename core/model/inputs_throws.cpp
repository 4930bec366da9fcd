/// Which way the throws and the cylinders point, and in which order they fire.

#include <numbers>

#include "core/describe/reader.h"
#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;

constexpr Choice kEnds[] = {{"output_end", "output end (clutch)"},
                            {"free_end", "free end (timing)"}};
constexpr Choice kRotations[] = {{"clockwise", "clockwise"}, {"anticlockwise", "anticlockwise"}};

double numberInOrder(describe::Reader& read) { return read.cylinder() + 1.0; }

}  // namespace

constinit const Input viewedFrom{
    .key = "viewed_from",
    .label = "End the crank is seen from",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kEnds,
    .typical = answer(CrankEnd::OutputEnd),
    .measure =
        "Said once for all drawings and angles; a crank drawn from one end and pressed from the "
        "other is its mirror image.",
    .synonyms = "viewing end",
};

constinit const Input rotation{
    .key = "rotation",
    .label = "Sense of rotation seen from there",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kRotations,
    .typical = answer(Rotation::Clockwise),
    .measure = "Turn the engine the way it starts and look from the end said above.",
    .synonyms = "turns, direction of rotation",
};

constinit const Input firstStandsAt{
    .key = "first_stands_at",
    .label = "First cylinder stands at",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kEnds,
    .typical = answer(CrankEnd::FreeEnd),
    .measure =
        "The cylinder that is entered first; positions are counted from there on. While nobody "
        "says "
        "it, the lowest workshop number is taken to stand at the free end.",
    .synonyms = "cylinder one, numbered from",
};

constinit const Input throwAhead{
    .key = "throw_ahead_rad",
    .label = "Throw angle ahead of the first",
    .symbol = "ψ",
    .kind = Kind::Angle,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = -2.0 * kTurn, .most = 2.0 * kTurn},
    .usual = {.least = -0.5 * kTurn, .most = kTurn},
    .plusMinus = 0.25 * kDegree,
    .instrument = "degree wheel",
    .measure =
        "How far the crankpin is ahead of the first one in the sense of rotation, one for each "
        "cylinder, 0 for the first. A throw that is ahead comes to its top earlier: this is no "
        "list of top dead centres.",
    .synonyms = "crank angle, crank phase",
};

constinit const Input cylinderAxis{
    .key = "cylinder_axis_rad",
    .label = "Cylinder axis angle",
    .symbol = "β",
    .kind = Kind::Angle,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = -kTurn, .most = kTurn},
    .usual = {.least = -0.5 * kTurn, .most = kTurn},
    .standing = {.value = 0.0, .origin = "in line"},
    .plusMinus = 0.1 * kDegree,
    .instrument = "maker’s book or protractor",
    .measure =
        "Direction of the cylinder in the sense of rotation, from that of the first: 0; 75 for a "
        "75° V.",
    .synonyms = "bank angle, V angle",
};

constinit const Input cylinderNumber{
    .key = "cylinder_number",
    .label = "Workshop number",
    .symbol = "",
    .kind = Kind::Count,
    .scope = Scope::Place,
    .list = true,
    .typical = 1.0,
    .possible = {.least = 1.0, .most = 99.0},
    .standing = {.value = std::nullopt,
                 .by = numberInOrder,
                 .origin = "in the order of the entries"},
    .measure =
        "The number each cylinder goes by, where it is not the order they are entered in: 4-3-2-1.",
    .synonyms = "cylinder numbering",
};

constinit const Input firingOrder{
    .key = "firing_order",
    .label = "Firing order",
    .symbol = "",
    .kind = Kind::Count,
    .scope = Scope::Place,
    .list = true,
    .typical = 1.0,
    .possible = {.least = 1.0, .most = 99.0},
    .measure = "The cylinders as they fire: 1-3-4-2.",
    .synonyms = "ignition sequence",
};

constinit const Input firesLater{
    .key = "fires_turn_later",
    .label = "Fires a turn later",
    .symbol = "",
    .kind = Kind::Count,
    .scope = Scope::Place,
    .list = true,
    .typical = 0.0,
    .possible = {.least = 0.0, .most = 1.0},
    .measure =
        "Only where the order alone can be fired in several ways, of a four-stroke. One for each "
        "cylinder as entered: 0 at its first top after that of the cylinder that fires first, 1 a "
        "turn after it, as 0-1-0. Left empty the most even way is taken.",
    .synonyms = "exhaust top, second top",
};

}  // namespace strokewright::model::in
