#include "core/masses/results.h"

#include <array>
#include <vector>

#include "core/masses/masses.h"
#include "core/model/direction.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::masses {

namespace in = model::in;
using describe::Reader;

namespace {

constexpr std::string_view kTwoMasses =
    "rod weighed end for end; exact for forces, not for the rod's own rocking couple";

/// As many of the same throw and axis are entered before this cylinder.
int placeInBank(Reader& read, int cylinder) {
  const double ahead = read.at(cylinder)(in::throwAhead);
  const double axis = read.at(cylinder)(in::cylinderAxis);
  int before = 0;
  for (int i = 0; i < cylinder; ++i) {
    Reader there = read.at(i);
    if (model::sameDirection(there(in::throwAhead), ahead) &&
        model::sameDirection(there(in::cylinderAxis), axis))
      ++before;
  }
  return before;
}

/// The cylinders whose rods turn on the crankpin of this one, itself among them: of each bank one,
/// the first with the first and so on where several pins point the same way.
std::vector<int> rodsOnPin(Reader& read) {
  if (!model::severalBanks(read)) return {read.cylinder()};  // a pin for each rod
  const int own = read.cylinder();
  const double ahead = read(in::throwAhead);
  const double axis = read(in::cylinderAxis);
  const int place = placeInBank(read, own);
  std::vector<int> rods;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader there = read.at(i);
    const bool otherBank = !model::sameDirection(there(in::cylinderAxis), axis) &&
                           model::sameDirection(there(in::throwAhead), ahead) &&
                           placeInBank(read, i) == place;
    if (i == own || otherBank) rods.push_back(i);
  }
  return rods;
}

/// Of all rods on the crankpin.
double bobWeightOnPin(Reader& read) {
  double sum = 0.0;
  for (const int rod : rodsOnPin(read)) {
    Reader there = read.at(rod);
    sum += bobWeight({.rotatingMass = there(out::rotatingMass),
                      .reciprocatingMass = there(out::reciprocatingMass),
                      .balanceFactor = read(in::balanceFactor)});
  }
  return sum;
}

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
                       .formula = "M_bob = Σ (m_rot + BF · m_rec) over the rods on the pin",
                       .source = "common practice, no published source",
                       .valid = "rods that all turn on the pin itself, one of each bank",
                       .value = [](Reader& read) { return masses::bobWeightOnPin(read); }};

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
