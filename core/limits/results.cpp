#include "core/limits/results.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/limits/ceilings.h"
#include "core/limits/rev_lines.h"
#include "core/masses/masses.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::limits {

namespace in = model::in;
using describe::Choice;
using describe::Input;
using describe::Per;
using describe::Reader;
using units::Kind;

namespace {

constexpr std::string_view kTension =
    "inertia alone, at top dead centre, closed throttle; gas load bends the pin instead";
constexpr std::string_view kNoDonor = "no reference donor to compare with";

/// In the order of out::Rods.
constexpr std::array kRodChoices = {Choice{"donors", "the donor's own"},
                                    Choice{"others", "not the donor's"}};

bool donorsRods(Reader& read) {
  constexpr double kAlike = 0.005;
  for (const Input* part : {&in::rodLength, &in::rodSmallEndMass, &in::rodLeastSection}) {
    if (!read.given(*part) || !read.donorGiven(*part)) continue;
    if (std::abs(read(*part) - read.donor(*part)) > kAlike * read.donor(*part)) return false;
  }
  return true;
}

/// The lines that may govern, as the choices of a result.
constexpr auto kLineNames = [] {
  std::array<Choice, kRevLines.size()> names;
  std::ranges::transform(kRevLines, names.begin(), &RevLine::name);
  return names;
}();

struct Lowest {
  std::size_t line = kRevLines.size();
  double speed = 0.0;  ///< [rad/s]
  bool found() const { return line < kRevLines.size(); }
};

/// Lowest of the lines that are known, over all cylinders, one line left out on request. With none
/// known, all that apply are read, so that the result waits for what they wait for. A line that is
/// refused refuses the result: without it the ceiling would only look higher.
Lowest lowestLine(Reader& read, std::size_t leftOut = kRevLines.size()) {
  Lowest lowest;
  for (std::size_t line = 0; line < kRevLines.size(); ++line) {
    if (line == leftOut) continue;
    const describe::Result& ceiling = *kRevLines[line].ceiling;
    if (read.refused(ceiling)) read.least(ceiling);
    if (!read.knownInAll(ceiling)) continue;
    const double speed = read.least(ceiling);
    if (!lowest.found() || speed < lowest.speed) lowest = {line, speed};
  }
  if (lowest.found()) return lowest;
  for (std::size_t line = 0; line < kRevLines.size(); ++line) {
    const describe::Result& ceiling = *kRevLines[line].ceiling;
    if (line != leftOut && read.applies(ceiling)) lowest = {line, read(ceiling)};
  }
  return lowest;
}

Lowest nextLine(Reader& read) {
  return lowestLine(read, static_cast<std::size_t>(read(out::governs)));
}

Breathing breathingOf(Reader& read) {
  return {.bore = read(in::bore),
          .valveCount = read(in::inletValveCount),
          .valveDiameter = read(in::inletValveDiameter),
          .flowCoefficient = read(in::inletFlowCoefficient),
          .soundSpeed = read(in::soundSpeed)};
}

}  // namespace

}  // namespace strokewright::limits

namespace strokewright::out {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

const Result rodTension{.key = "rod_tension_n",
                        .name = "Rod tension",
                        .symbol = "F",
                        .kind = Kind::Force,
                        .decimals = 1,
                        .formula = "F = m_rec · a_max",
                        .source = "Newton's second law",
                        .valid = limits::kTension,
                        .value = [](Reader& read) {
                          return masses::rodTension({.reciprocatingMass = read(reciprocatingMass),
                                                     .acceleration = read(peakAcceleration)});
                        }};

const Result rodStress{
    .key = "rod_stress_pa",
    .name = "Rod stress in the least section",
    .symbol = "σ",
    .kind = Kind::Stress,
    .formula = "σ = F / A_min",
    .source = "mean stress; Shigley ch. 3",
    .valid = "nominal tension, no notch, no bending",
    .value = [](Reader& read) { return read(rodTension) / read(in::rodLeastSection); }};

const Result provenAcceleration{
    .key = "proven_acceleration_m_s2",
    .name = "Proven acceleration",
    .symbol = "a_0",
    .kind = Kind::Acceleration,
    .formula = "a_0 = ω_0² · max (−d²y/dθ²) at the speed proven",
    .source = "plane geometry; that it was stood is the builder's evidence",
    .valid = "a donor; its pistons and rods at its own masses",
    .value = [](Reader& read) {
      if (!read.isDonor()) return read.none("only a donor has proven itself");
      const double speed = read(in::provenSpeed);
      return read(peakAccelerationPerSpeed2) * speed * speed;
    }};

const Result provenRodTension{
    .key = "proven_rod_tension_n",
    .name = "Proven rod tension",
    .symbol = "F_0",
    .kind = Kind::Force,
    .decimals = 1,
    .formula = "F_0 = m_rec · a_0",
    .source = "Newton's second law",
    .valid = limits::kTension,
    .value = [](Reader& read) {
      return masses::rodTension(
          {.reciprocatingMass = read(reciprocatingMass), .acceleration = read(provenAcceleration)});
    }};

const Result rods{
    .key = "rods",
    .name = "Rods",
    .kind = Kind::Choice,
    .choices = limits::kRodChoices,
    .formula =
        "length, small-end mass and least section, where both are entered, "
        "agree within half a per cent",
    .source = "common practice, no published source",
    .valid = "as far as the entries tell; another rod has not stood what the donor's did",
    .value = [](Reader& read) {
      if (!read.hasDonor()) return read.none(limits::kNoDonor);
      return static_cast<double>(limits::donorsRods(read) ? Rods::Donors : Rods::Others);
    }};

const Result rodLoadRatio{.key = "rod_load_ratio",
                          .name = "Rod load against the donor's proven",
                          .symbol = "F/F_0",
                          .kind = Kind::Ratio,
                          .formula = "F / F_0, F_0 of the reference donor at its speed proven",
                          .source = "common practice, no published source",
                          .valid = "counts where the rod is the donor's: a used rod has spent life",
                          .value = [](Reader& read) {
                            if (!read.hasDonor()) return read.none(limits::kNoDonor);
                            return read(rodTension) / read.donor(provenRodTension);
                          }};

const Result ceilingPistonSpeed{
    .key = "ceiling_piston_speed_rad_s",
    .name = "Ceiling by mean piston speed",
    .symbol = "N_v",
    .kind = Kind::Speed,
    .formula = "N = 30 v̄_lim / S_t, in rpm",
    .source = "Heywood ch. 2; the limit is common practice",
    .valid = "any crank; the limit is by use and material",
    .value = [](Reader& read) {
      return limits::pistonSpeedCeiling(
          {.trueStroke = read(trueStroke), .meanPistonSpeed = read(in::meanPistonSpeedLimit)});
    }};

const Result ceilingRingFlutter{
    .key = "ceiling_ring_flutter_rad_s",
    .name = "Ceiling by ring flutter",
    .symbol = "N_ring",
    .kind = Kind::Speed,
    .formula = "ω = √((k_r / h_r) / (a_max/ω²))",
    .source = "common practice, no published source",
    .valid = "plain rectangular rings; gas-ported and L-section rings stand more",
    .value = [](Reader& read) {
      return limits::accelerationCeiling({.acceleration = limits::flutterAcceleration(
                                              read(in::ringFlutterConstant), read(in::ringWidth)),
                                          .peakPerSpeed2 = read(peakAccelerationPerSpeed2)});
    }};

const Result ceilingRodTension{
    .key = "ceiling_rod_tension_rad_s",
    .name = "Ceiling by rod tension",
    .symbol = "N_rod",
    .kind = Kind::Speed,
    .formula = "ω = √((σ_all · A_min / m_rec) / (a_max/ω²))",
    .source = "Newton's second law; the stress is common practice",
    .valid = limits::kTension,
    .value = [](Reader& read) {
      return limits::accelerationCeiling({.acceleration = limits::rodTensionAcceleration(
                                              {.stress = read(in::rodStressLimit),
                                               .leastSection = read(in::rodLeastSection),
                                               .reciprocatingMass = read(reciprocatingMass)}),
                                          .peakPerSpeed2 = read(peakAccelerationPerSpeed2)});
    }};

const Result ceilingBigEnd{
    .key = "ceiling_big_end_rad_s",
    .name = "Ceiling by the big-end speed factor",
    .symbol = "N_be",
    .kind = Kind::Speed,
    .formula = "N = (n·d_m)_lim / ((d_cp + D_eye) / 2)",
    .source = "common practice, no published source",
    .valid = "a caged needle big end, lubricated",
    .value = [](Reader& read) {
      return limits::speedFactorCeiling(
          {.pinDiameter = read(in::bigEndPinDiameter), .eyeDiameter = read(in::bigEndEyeDiameter)},
          read(in::speedFactorLimit));
    }};

const Result ceilingDonor{
    .key = "ceiling_donor_rad_s",
    .name = "Ceiling by the donor's proven acceleration",
    .symbol = "N_donor",
    .kind = Kind::Speed,
    .formula = "ω = √(a_0 / (a_max/ω²)), a_0 of the reference donor",
    .source = "common practice, no published source",
    .valid = "pistons and rods like the donor's",
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("a donor proves, it is not measured by itself");
      if (!read.hasDonor()) return read.none(limits::kNoDonor);
      return limits::accelerationCeiling({.acceleration = read.donor(provenAcceleration),
                                          .peakPerSpeed2 = read(peakAccelerationPerSpeed2)});
    }};

const Result revCeiling{
    .key = "rev_ceiling_rad_s",
    .name = "Rev ceiling",
    .symbol = "N_max",
    .kind = Kind::Speed,
    .per = Per::Engine,
    .picks = true,
    .formula = "the lowest of the lines that are known, over all cylinders",
    .source = "each line names its own",
    .valid = "valve gear, torsion, joints and main bearings are not counted here",
    .value = [](Reader& read) { return limits::lowestLine(read).speed; }};

const Result governs{
    .key = "governs",
    .name = "What governs",
    .symbol = {},
    .kind = Kind::Choice,
    .per = Per::Engine,
    .choices = limits::kLineNames,
    .formula = "the line with the lowest speed",
    .source = "each line names its own",
    .valid = "as the rev ceiling",
    .value = [](Reader& read) { return static_cast<double>(limits::lowestLine(read).line); }};

const Result nextCeiling{.key = "next_ceiling_rad_s",
                         .name = "Next ceiling",
                         .symbol = "N_next",
                         .kind = Kind::Speed,
                         .per = Per::Engine,
                         .picks = true,
                         .formula = "the lowest line but the one that governs",
                         .source = "each line names its own",
                         .valid = "as the rev ceiling",
                         .value = [](Reader& read) { return limits::nextLine(read).speed; }};

const Result governsNext{
    .key = "governs_next",
    .name = "What governs next",
    .symbol = {},
    .kind = Kind::Choice,
    .per = Per::Engine,
    .choices = limits::kLineNames,
    .formula = "the lowest line but the one that governs",
    .source = "each line names its own",
    .valid = "as the rev ceiling",
    .value = [](Reader& read) { return static_cast<double>(limits::nextLine(read).line); }};

const Result overRevCeiling{
    .key = "over_rev_ceiling_rad_s",
    .name = "Limiter that leaves the over-rev allowance below rod tension",
    .symbol = "N_rod/(1 + k_o)",
    .kind = Kind::Speed,
    .formula = "N_rod / (1 + k_o)",
    .source = "common practice, no published source",
    .valid = "beside the ceiling, never part of it; a missed down-shift needs more",
    .value = [](Reader& read) { return read(ceilingRodTension) / (1.0 + read(in::overRevShare)); }};

const Result breathingIndex{.key = "breathing_index",
                            .name = "Breathing index at the working speed",
                            .symbol = "Z",
                            .kind = Kind::Ratio,
                            .formula = "Z = B² v̄_p / (n_i d_i² C_i a_s)",
                            .source = "Taylor vol. 1 ch. 6",
                            .valid = "four-stroke; a power ceiling, not a safety one",
                            .value = [](Reader& read) {
                              if (model::twoStroke(read))
                                return read.none("a two-stroke breathes through ports");
                              return limits::breathingIndex(limits::breathingOf(read),
                                                            read(meanPistonSpeed));
                            }};

const Result breathingSpeed{
    .key = "breathing_speed_rad_s",
    .name = "Speed at the breathing limit",
    .symbol = "N_Z",
    .kind = Kind::Speed,
    .formula = "Z = Z_lim, solved for N",
    .source = "Taylor vol. 1 ch. 6",
    .valid = "four-stroke; a power ceiling, not a safety one",
    .value = [](Reader& read) {
      if (model::twoStroke(read)) return read.none("a two-stroke breathes through ports");
      return limits::pistonSpeedCeiling({.trueStroke = read(trueStroke),
                                         .meanPistonSpeed = limits::pistonSpeedAtBreathingIndex(
                                             limits::breathingOf(read), read(in::breathingLimit))});
    }};

}  // namespace strokewright::out

namespace strokewright::limits {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::rodTension,
                                          &out::rodStress,
                                          &out::provenAcceleration,
                                          &out::provenRodTension,
                                          &out::rods,
                                          &out::rodLoadRatio,
                                          &out::ceilingPistonSpeed,
                                          &out::ceilingRingFlutter,
                                          &out::ceilingRodTension,
                                          &out::ceilingBigEnd,
                                          &out::ceilingDonor,
                                          &out::revCeiling,
                                          &out::governs,
                                          &out::nextCeiling,
                                          &out::governsNext,
                                          &out::overRevCeiling,
                                          &out::breathingIndex,
                                          &out::breathingSpeed};
  return kResults;
}

}  // namespace strokewright::limits
