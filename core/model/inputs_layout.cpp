/// Layout and purpose.

#include "core/describe/reader.h"
#include "core/model/direction.h"
#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Choice;
using describe::Scope;
using units::Kind;

namespace {

constexpr Choice kCycles[] = {{"four_stroke", "four-stroke"}, {"two_stroke", "two-stroke"}};
constexpr Choice kIgnitions[] = {{"spark", "spark"}, {"compression", "compression"}};
constexpr Choice kUses[] = {
    {"road", "road"}, {"fast_road", "fast road"}, {"trial", "trial"},          {"hill", "hill"},
    {"race", "race"}, {"record", "record"},       {"stationary", "stationary"}};

}  // namespace

constinit const Input cylinderCount{
    .key = "cylinder_count",
    .label = "Number of cylinders",
    .symbol = "n",
    .kind = Kind::Count,
    .scope = Scope::Engine,
    .typical = 2.0,
    .possible = {.least = 1.0, .most = 12.0},
    .measure = "Count the barrels, or the bores of the block.",
    .synonyms = "cylinders",
};

constinit const Input cycle{
    .key = "cycle",
    .label = "Cycle",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kCycles,
    .scope = Scope::Engine,
    .typical = answer(Cycle::FourStroke),
    .measure = "How many strokes make one cycle in the engine as it is going to run.",
    .synonyms = "four-stroke, two-stroke",
};

constinit const Input ignition{
    .key = "ignition",
    .label = "Ignition",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kIgnitions,
    .scope = Scope::Engine,
    .typical = answer(Ignition::Spark),
    .standing = {.value = answer(Ignition::Spark), .origin = "common practice"},
    .measure =
        "Compression ignition reads the squish gap as bumping clearance and shifts the usual "
        "ranges.",
    .synonyms = "spark ignition, compression ignition, diesel",
};

constinit const Input use{
    .key = "use",
    .label = "Use",
    .symbol = "",
    .kind = Kind::Choice,
    .choices = kUses,
    .scope = Scope::Engine,
    .typical = answer(Use::Road),
    .measure =
        "What the customer wants it for; decides the defaults of a few limits and nothing else.",
    .synonyms = "purpose, service",
};

constinit const Input classLimit{
    .key = "class_limit_m3",
    .label = "Class limit",
    .symbol = "V_lim",
    .kind = Kind::Volume,
    .scope = Scope::Engine,
    .typical = 700e-6,
    .possible = {.least = 0.0, .most = 1.0, .leastExcluded = true},
    .usual = {.least = 40e-6, .most = 10000e-6},
    .measure = "Copy it from the text of the class rules and note the date of that text.",
    .synonyms = "displacement class, capacity class",
};

}  // namespace strokewright::model::in

namespace strokewright::model {

using describe::Reader;

bool twoStroke(Reader& read) { return read.choice<Cycle>(in::cycle) == Cycle::TwoStroke; }

bool ofOneBank(Reader& one, Reader& other) {
  return !one.given(in::cylinderAxis) ||
         sameDirection(one(in::cylinderAxis), other(in::cylinderAxis));
}

bool severalBanks(Reader& read) {
  const int cylinders = read.cylinders();
  if (cylinders == 1 || !read.given(in::cylinderAxis)) return false;
  const double first = read.at(0)(in::cylinderAxis);
  for (int i = 1; i < cylinders; ++i) {
    if (!sameDirection(first, read.at(i)(in::cylinderAxis))) return true;
  }
  return false;
}

int numberOfCylinder(Reader& read) {
  return read.stands(in::cylinderNumber) ? static_cast<int>(read(in::cylinderNumber))
                                         : read.cylinder() + 1;
}

int numberOfCylinder(const describe::Evaluation& evaluation, int engine, int cylinder) {
  return evaluation.inputStands(engine, in::cylinderNumber, cylinder)
             ? static_cast<int>(evaluation.inputValue(engine, in::cylinderNumber, cylinder))
             : cylinder + 1;
}

}  // namespace strokewright::model
