#include "core/motion/results.h"

#include <array>

#include "core/model/inputs.h"

namespace strokewright::motion {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

namespace {

constexpr std::string_view kGeometry = "plane geometry; without offset Heywood ch. 2";
constexpr std::string_view kTurns =
    "any rod longer than throw and offset together; plain rods, not master and slave";
constexpr std::string_view kPull =
    "the pull down next to top dead centre; the push up at the bottom is the smaller one for r/L "
    "up to 0.45 with e up to 0.7 (L − r); plain rods longer than throw and offset together";

/// An offset with its side as its sign: away from the thrust side is positive.
double signedOffset(Reader& read, const describe::Input& offset, const describe::Input& side) {
  const double value = read(offset);
  if (value == 0.0) return 0.0;
  return read.choice<model::Side>(side) == model::Side::TowardsThrust ? -value : value;
}

}  // namespace

SliderCrank mechanism(Reader& read) {
  return {.crankRadius = read(out::crankRadius),
          .rodLength = read(in::rodLength),
          .offset = read(out::netOffset)};
}

}  // namespace strokewright::motion

namespace strokewright::out {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

const Result crankRadius{
    .key = "crank_radius_m",
    .name = "Throw",
    .symbol = "r",
    .kind = Kind::Length,
    .decimals = 3,
    .formula = "r as entered, or r = S / 2",
    .source = "definition; the offset of the boring fixture (common practice, no published source)",
    .valid = "any crank",
    .value = [](Reader& read) {
      return read.either(in::crankThrow, in::stroke) ? read(in::crankThrow) : read(in::stroke) / 2;
    }};

const Result netOffset{.key = "net_offset_m",
                       .name = "Net offset of the gudgeon pin",
                       .symbol = "e",
                       .kind = Kind::FineLength,
                       .formula = "e = ± e_cyl ± e_pin; towards the thrust side −, away from it +",
                       .source = "plane geometry",
                       .valid = "both sides taken from the declared end",
                       .value = [](Reader& read) {
                         return motion::signedOffset(read, in::cylinderOffset,
                                                     in::cylinderOffsetSide) +
                                motion::signedOffset(read, in::pinOffset, in::pinOffsetSide);
                       }};

const Result trueStroke{
    .key = "true_stroke_m",
    .name = "True stroke",
    .symbol = "S_t",
    .kind = Kind::Length,
    .decimals = 3,
    .formula = "S_t = √((L + r)² − e²) − √((L − r)² − e²)",
    .source = motion::kGeometry,
    .valid = motion::kTurns,
    .value = [](Reader& read) { return motion::trueStroke(motion::mechanism(read)); }};

const Result rodRatio{
    .key = "rod_ratio",
    .name = "Rod ratio",
    .symbol = "L/S",
    .kind = Kind::Ratio,
    .formula = "L / S = L / (2 r)",
    .source = "trade form of the rod ratio",
    .valid = "any crank",
    .value = [](Reader& read) { return read(in::rodLength) / (2 * read(crankRadius)); }};

const Result obliquity{
    .key = "obliquity_ratio",
    .name = "Obliquity ratio",
    .symbol = "λ",
    .kind = Kind::Ratio,
    .decimals = 4,
    .formula = "λ = r / L",
    .source = "Heywood ch. 2 (as its inverse R = L / r)",
    .valid = "any crank",
    .value = [](Reader& read) { return read(crankRadius) / read(in::rodLength); }};

const Result largestRodAngle{
    .key = "largest_rod_angle_rad",
    .name = "Largest rod angle",
    .symbol = "φ_max",
    .kind = Kind::Angle,
    .decimals = 2,
    .formula = "φ_max = asin((r + |e|) / L)",
    .source = motion::kGeometry,
    .valid = motion::kTurns,
    .value = [](Reader& read) { return motion::largestRodAngle(motion::mechanism(read)); }};

const Result topDeadCentreAngle{
    .key = "top_dead_centre_rad",
    .name = "Crank angle of top dead centre",
    .symbol = "θ_TDC",
    .kind = Kind::Angle,
    .decimals = 3,
    .formula = "θ_TDC = asin(e / (L + r)), from the throw on the cylinder axis",
    .source = motion::kGeometry,
    .valid = motion::kTurns,
    .value = [](Reader& read) { return motion::topDeadCentreAngle(motion::mechanism(read)); }};

const Result bottomDeadCentreAngle{
    .key = "bottom_dead_centre_rad",
    .name = "Crank angle of bottom dead centre",
    .symbol = "θ_BDC",
    .kind = Kind::Angle,
    .decimals = 3,
    .formula = "θ_BDC = 180° + asin(e / (L − r)), from the throw on the cylinder axis",
    .source = motion::kGeometry,
    .valid = motion::kTurns,
    .value = [](Reader& read) { return motion::bottomDeadCentreAngle(motion::mechanism(read)); }};

const Result workingSpeed{.key = "working_speed_rad_s",
                          .name = "Working speed",
                          .symbol = "N",
                          .kind = Kind::Speed,
                          .per = Per::Engine,
                          .formula = "N = speed wanted; a donor without one: its speed proven",
                          .source = "decided, or the maker's book",
                          .valid = "where the limiter cuts, not the shift speed",
                          .value = [](Reader& read) {
                            return read.given(in::wantedSpeed) || !read.isDonor()
                                       ? read(in::wantedSpeed)
                                       : read(in::provenSpeed);
                          }};

const Result meanPistonSpeed{
    .key = "mean_piston_speed_m_s",
    .name = "Mean piston speed",
    .symbol = "v̄_p",
    .kind = Kind::Velocity,
    .formula = "v̄_p = 2 S_t N; with N in rpm S_t N / 30",
    .source = "Heywood ch. 2",
    .valid = "any crank",
    .value = [](Reader& read) {
      return motion::meanSpeed({.trueStroke = read(trueStroke), .speed = read(workingSpeed)});
    }};

const Result peakPistonSpeed{
    .key = "peak_piston_speed_m_s",
    .name = "Peak piston speed, downwards",
    .symbol = "v_max",
    .kind = Kind::Velocity,
    .formula = "v_max = ω · max |dy/dθ| on the way down, found exactly where d²y/dθ² = 0",
    .source = motion::kGeometry,
    .valid =
        "any rod longer than throw and offset together; plain rods, not master and slave; with an "
        "offset one way takes fewer degrees and is the faster, be it down or up",
    .value = [](Reader& read) {
      return motion::peakDownwardSpeed(motion::mechanism(read)).magnitude * read(workingSpeed);
    }};

const Result peakPistonSpeedAngle{
    .key = "peak_piston_speed_at_rad",
    .name = "Crank angle of the peak piston speed",
    .symbol = "θ(v_max)",
    .kind = Kind::Angle,
    .formula = "d²y/dθ² = 0, from the throw on the cylinder axis",
    .source = motion::kGeometry,
    .valid = motion::kTurns,
    .value = [](Reader& read) {
      return motion::peakDownwardSpeed(motion::mechanism(read)).crankAngle;
    }};

const Result peakAcceleration{
    .key = "peak_acceleration_m_s2",
    .name = "Peak acceleration",
    .symbol = "a_max",
    .kind = Kind::Acceleration,
    .formula = "a_max = ω² · max (−d²y/dθ²); without offset r ω² (1 + r/L) at top dead centre",
    .source = motion::kGeometry,
    .valid = motion::kPull,
    .value = [](Reader& read) {
      const double speed = read(workingSpeed);
      return read(peakAccelerationPerSpeed2) * speed * speed;
    }};

const Result peakAccelerationAngle{
    .key = "peak_acceleration_at_rad",
    .name = "Crank angle of the peak acceleration",
    .symbol = "θ(a_max)",
    .kind = Kind::Angle,
    .decimals = 3,
    .formula = "d³y/dθ³ = 0 next to top dead centre, from the throw on the cylinder axis",
    .source = motion::kGeometry,
    .valid = motion::kPull,
    .value = [](Reader& read) {
      return motion::peakDownwardAcceleration(motion::mechanism(read)).crankAngle;
    }};

const Result peakAccelerationPerSpeed2{
    .key = "peak_acceleration_per_speed2_m",
    .name = "Peak acceleration per ω²",
    .symbol = "a_max/ω²",
    .kind = Kind::Length,
    .decimals = 3,
    .formula = "max (−d²y/dθ²); without offset r (1 + r/L)",
    .source = motion::kGeometry,
    .valid = motion::kPull,
    .value = [](Reader& read) {
      return motion::peakDownwardAcceleration(motion::mechanism(read)).magnitude;
    }};

}  // namespace strokewright::out

namespace strokewright::motion {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::crankRadius,
                                          &out::netOffset,
                                          &out::trueStroke,
                                          &out::rodRatio,
                                          &out::obliquity,
                                          &out::largestRodAngle,
                                          &out::topDeadCentreAngle,
                                          &out::bottomDeadCentreAngle,
                                          &out::workingSpeed,
                                          &out::meanPistonSpeed,
                                          &out::peakPistonSpeed,
                                          &out::peakPistonSpeedAngle,
                                          &out::peakAcceleration,
                                          &out::peakAccelerationAngle,
                                          &out::peakAccelerationPerSpeed2};
  return kResults;
}

}  // namespace strokewright::motion
