/// Limits behind the objections.

#include "core/describe/reader.h"
#include "core/model/inputs.h"

namespace strokewright::model::in {

using describe::Scope;
using units::Kind;

namespace {

// While the cycle or the use is not said, the usual engine's stands: a limit behind an objection
// keeps nobody waiting.

/// [m] cold; common practice, no published source.
double squishLeastByCycle(describe::Reader& read) {
  if (read.choice<Ignition>(ignition) == Ignition::Compression) return 0.7e-3;
  return read.given(cycle) && twoStroke(read) ? 0.6e-3 : 0.8e-3;
}

/// [m] common practice, no published source.
double deckSpreadByUse(describe::Reader& read) {
  if (!read.given(use)) return 0.10e-3;
  const Use purpose = read.choice<Use>(use);
  const bool sport = purpose == Use::Hill || purpose == Use::Race || purpose == Use::Record;
  return sport ? 0.05e-3 : 0.10e-3;
}

}  // namespace

constinit const Input rodRatioLow{
    .key = "rod_ratio_low",
    .label = "Rod ratio objected to below",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 1.5,
    .possible = {.least = 1.0, .most = 10.0},
    .usual = {.least = 1.4, .most = 1.8},
    .standing = {.value = 1.5, .origin = "common practice"},
    .measure = "Decided; a rod that is short for its stroke leans hard on the bore.",
};

constinit const Input rodRatioLimit{
    .key = "rod_ratio_limit",
    .label = "Rod ratio, limit",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 1.3,
    .possible = {.least = 1.0, .most = 10.0},
    .usual = {.least = 1.2, .most = 1.5},
    .standing = {.value = 1.3, .origin = "common practice"},
    .measure = "Decided; below it the rod is beyond what has been made to last.",
};

constinit const Input rodRatioHigh{
    .key = "rod_ratio_high",
    .label = "Rod ratio suspicious above",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 2.6,
    .possible = {.least = 1.0, .most = 10.0},
    .usual = {.least = 2.2, .most = 3.0},
    .standing = {.value = 2.6, .origin = "common practice"},
    .measure = "Decided; above it the length was often taken over the eyes.",
};

constinit const Input rodLoadRatioLimit{
    .key = "rod_load_ratio_limit",
    .label = "Rod load against the donor’s proven",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 1.0,
    .possible = {.least = 0.0, .most = 10.0, .leastExcluded = true},
    .usual = {.least = 0.8, .most = 1.15},
    .standing = {.value = 1.0, .origin = "common practice"},
    .measure = "Decided; counts where the rod is the donor’s own.",
};

constinit const Input squishLeast{
    .key = "squish_least_m",
    .label = "Squish gap least, cold",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.8e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.5e-3, .most = 1.2e-3},
    .standing = {.value = std::nullopt,
                 .by = squishLeastByCycle,
                 .origin = "common practice, by cycle and ignition"},
    .measure = "Decided, by how much rod and piston grow at speed.",
};

constinit const Input squishMost{
    .key = "squish_most_m",
    .label = "Squish gap most",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1.5e-3,
    .possible = {.least = 0.0, .most = 50e-3, .leastExcluded = true},
    .usual = {.least = 1e-3, .most = 3e-3},
    .standing = {.value = 1.5e-3, .origin = "common practice"},
    .measure = "Decided; a wider band no longer squeezes the charge inwards.",
};

constinit const Input spacerLeast{
    .key = "spacer_least_m",
    .label = "Least plate",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.8e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.4e-3, .most = 2e-3},
    .standing = {.value = 0.8e-3, .origin = "common practice"},
    .measure = "Decided; a thinner plate bends and does not seal.",
};

constinit const Input spacerMost{
    .key = "spacer_most_m",
    .label = "Most plate",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 12e-3,
    .possible = {.least = 0.0, .most = 100e-3, .leastExcluded = true},
    .usual = {.least = 5e-3, .most = 20e-3},
    .standing = {.value = 12e-3, .origin = "common practice"},
    .measure = "Decided; a thicker one asks for other studs, passages and drives.",
};

constinit const Input seatSpread{
    .key = "seat_spread_m",
    .label = "Difference between seats",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.15e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.03e-3, .most = 0.5e-3},
    .standing = {.value = 0.15e-3, .origin = "common practice"},
    .measure = "Decided; seats further apart than this are measured again first.",
};

constinit const Input deckSpread{
    .key = "deck_spread_m",
    .label = "Difference of deck clearance between cylinders",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 0.10e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.02e-3, .most = 0.3e-3},
    .standing = {.value = std::nullopt, .by = deckSpreadByUse, .origin = "common practice, by use"},
    .measure = "Decided, by use.",
};

constinit const Input ratioSpread{
    .key = "ratio_spread",
    .label = "Difference of compression ratio between cylinders",
    .symbol = "",
    .kind = Kind::Ratio,
    .scope = Scope::Engine,
    .typical = 0.2,
    .possible = {.least = 0.0, .most = 10.0},
    .usual = {.least = 0.05, .most = 0.5},
    .standing = {.value = 0.2, .origin = "common practice"},
    .measure = "Decided; unequal cylinders run unequally.",
};

constinit const Input bushWallLeast{
    .key = "bush_wall_least_m",
    .label = "Least bush wall",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1.0e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.8e-3, .most = 2.5e-3},
    .standing = {.value = 1.0e-3, .origin = "common practice"},
    .measure = "Decided; for a steel-backed bush, solid bronze wants 1.5 mm.",
};

constinit const Input skirtWebObjects{
    .key = "skirt_web_objects_m",
    .label = "Skirt to web, objected to below",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1.5e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 1e-3, .most = 3e-3},
    .standing = {.value = 1.5e-3, .origin = "common practice"},
    .measure = "Decided; what is left between skirt and web at bottom dead centre.",
};

constinit const Input skirtWebForbids{
    .key = "skirt_web_forbids_m",
    .label = "Skirt to web, floor",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1.0e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 0.8e-3, .most = 2e-3},
    .standing = {.value = 1.0e-3, .origin = "common practice"},
    .measure = "Decided; less than this touches when hot and at speed.",
};

constinit const Input skirtOutShare{
    .key = "skirt_out_share",
    .label = "Skirt out of the liner, share of the skirt below pin",
    .symbol = "",
    .kind = Kind::Share,
    .scope = Scope::Engine,
    .typical = 33.3e-2,
    .possible = {.least = 0.0, .most = 100e-2},
    .usual = {.least = 20e-2, .most = 50e-2},
    .standing = {.value = 33.3e-2, .origin = "common practice"},
    .measure =
        "Decided; a third of the part below the pin, a little stricter than a third of the whole "
        "skirt.",
};

constinit const Input rodLinerLeast{
    .key = "rod_liner_least_m",
    .label = "Rod to liner edge",
    .symbol = "",
    .kind = Kind::FineLength,
    .scope = Scope::Engine,
    .typical = 1.5e-3,
    .possible = {.least = 0.0, .most = 50e-3},
    .usual = {.least = 1e-3, .most = 3e-3},
    .standing = {.value = 1.5e-3, .origin = "common practice"},
    .measure = "Decided; what is left between shank and lower edge of the liner.",
};

constinit const Input rodEndsDifference{
    .key = "rod_ends_difference_kg",
    .label = "Rod ends against the whole",
    .symbol = "",
    .kind = Kind::Mass,
    .scope = Scope::Engine,
    .typical = 0.5e-3,
    .possible = {.least = 0.0, .most = 100e-3},
    .usual = {.least = 0.1e-3, .most = 2e-3},
    .standing = {.value = 0.5e-3, .origin = "common practice"},
    .measure = "Decided; or 0.2 % of the rod where that is more.",
};

}  // namespace strokewright::model::in
