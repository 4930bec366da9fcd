#include "core/masses/results.h"

#include <array>

#include "core/masses/masses.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::masses {

using describe::Reader;
using units::Kind;

namespace {
constexpr std::string_view kTwoMasses =
    "rod weighed end for end; exact for forces, not for the rod's own rocking couple";
}  // namespace

}  // namespace strokewright::masses

namespace strokewright::out {

namespace in = model::in;
using describe::Reader;
using units::Kind;

const Result reciprocatingMass{
    .key = "reciprocating_mass_kg",
    .name = "Reciprocating mass",
    .symbol = "m_rec",
    .kind = Kind::Mass,
    .formula = "m_rec = m_p + m_ri + m_gp + m_cl + m_sb + m_se",
    .source = "two-mass rod, Den Hartog ch. 5",
    .valid = masses::kTwoMasses,
    .value = [](Reader& read) {
      return masses::reciprocatingMass({.piston = read(in::pistonMass),
                                        .rings = read(in::ringSetMass),
                                        .gudgeonPin = read(in::gudgeonPinMass),
                                        .circlips = read(in::circlipMass),
                                        .smallEndBearing = read(in::smallEndBearingMass),
                                        .rodSmallEnd = read(in::rodSmallEndMass)});
    }};

const Result rotatingMass{.key = "rotating_mass_kg",
                          .name = "Rotating mass",
                          .symbol = "m_rot",
                          .kind = Kind::Mass,
                          .formula = "m_rot = m_be + m_cage",
                          .source = "two-mass rod, Den Hartog ch. 5",
                          .valid = masses::kTwoMasses,
                          .value = [](Reader& read) {
                            return masses::rotatingMass({.rodBigEnd = read(in::rodBigEndMass),
                                                         .bigEndCage = read(in::bigEndCageMass)});
                          }};

const Result bobWeight{.key = "bob_weight_kg",
                       .name = "Bob weight per crankpin",
                       .symbol = "M_bob",
                       .kind = Kind::Mass,
                       .formula = "M_bob = m_rot + BF · m_rec",
                       .source = "common practice, no published source",
                       .valid = "one rod on each crankpin",
                       .value = [](Reader& read) {
                         return masses::bobWeight({.rotatingMass = read(rotatingMass),
                                                   .reciprocatingMass = read(reciprocatingMass),
                                                   .balanceFactor = read(in::balanceFactor)});
                       }};

const Result staticMoment{.key = "static_moment_kg_m",
                          .name = "Static moment per throw",
                          .symbol = "U",
                          .kind = Kind::StaticMoment,
                          .formula = "U = r (M_bob + m_cp)",
                          .source = "static balance about the crank axis",
                          .valid = "what the counterweights of one throw must provide",
                          .value = [](Reader& read) {
                            return masses::staticMoment({.crankRadius = read(crankRadius),
                                                         .bobWeight = read(bobWeight),
                                                         .crankpinMass = read(in::crankpinMass)});
                          }};

}  // namespace strokewright::out

namespace strokewright::masses {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::reciprocatingMass, &out::rotatingMass,
                                          &out::bobWeight, &out::staticMoment};
  return kResults;
}

}  // namespace strokewright::masses
