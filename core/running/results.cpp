#include "core/running/results.h"

#include <array>

#include "core/deck/results.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/running.h"

namespace strokewright::running {

namespace in = model::in;
using describe::Reader;

bool knownByMeasuring(Reader& read) {
  return read.choice<model::SquishKnownBy>(in::squishKnownBy) !=
         model::SquishKnownBy::FromDimensions;
}

bool startsFromMeasured(Reader& read) {
  return knownByMeasuring(read) && read.given(in::measuredSquish);
}

namespace {

constexpr std::string_view kEstimate =
    "a first estimate, to within what is entered as “running gap is estimated to within” (common "
    "practice 0.05 mm), which the rules take off; piston rock, flexing of the case and seizing "
    "heat are not in it";

/// [m s2/rad2]
double stretchPerSpeed2(Reader& read) {
  return rodStretch({.mass = read(out::reciprocatingMass),
                     .acceleration = read(out::peakAccelerationPerSpeed2),
                     .rodLength = read(in::rodLength),
                     .section = read(in::rodLeastSection),
                     .modulus = read(in::rodModulus)});
}

/// [m] cold: as it was measured, or from the dimensions.
double coldGap(Reader& read) {
  return startsFromMeasured(read) ? read(in::measuredSquish) : read(out::squishGap);
}

/// [m] hot, bearings taken up, the rod not yet pulled.
double gapAtRest(Reader& read) {
  return coldGap(read) - read(out::clearanceTakenUp) + read(out::thermalOpening);
}

double gapAt(Reader& read, double speed) {
  return gapAtRest(read) - stretchPerSpeed2(read) * speed * speed;
}

}  // namespace

}  // namespace strokewright::running

namespace strokewright::out {

namespace in = model::in;
using describe::Judged;
using describe::Reader;
using units::Kind;

const Result rodStretch{
    .key = "rod_stretch_m",
    .name = "Rod stretch at the working speed",
    .symbol = "ΔL",
    .kind = Kind::FineLength,
    .decimals = 3,
    .formula = "ΔL = m_rec · a_max · L / (E_rod · A_min)",
    .source = "Hooke’s law: Shigley, Mechanical Engineering Design, ch. 4",
    .valid = "elastic; with the least section over the whole length it is on the safe side",
    .value = [](Reader& read) {
      const double speed = read(workingSpeed);
      return running::stretchPerSpeed2(read) * speed * speed;
    }};

const Result clearanceTakenUp{
    .key = "clearance_taken_up_m",
    .name = "Bearing clearance that inertia takes up",
    .symbol = "Δc",
    .kind = Kind::FineLength,
    .decimals = 3,
    .formula =
        "Δc = c_m + c_be + c_gp where the gap was measured with the piston pushed down, half of it "
        "where it comes from the dimensions",
    .source = "plane geometry",
    .valid = "overlap top dead centre, where no gas pressure pushes back",
    .value = [](Reader& read) {
      return running::clearanceTakenUp({.main = read(in::mainClearance),
                                        .bigEnd = read(in::bigEndClearance),
                                        .gudgeonPin = read(in::gudgeonPinClearance)},
                                       running::knownByMeasuring(read));
    }};

const Result thermalOpening{
    .key = "thermal_opening_m",
    .name = "Gap opened by heat",
    .symbol = "Δ_th",
    .kind = Kind::FineLength,
    .decimals = 3,
    .formula =
        "Δ_th = α_case · H · ΔT_case − α_rod · L · ΔT_rod − α_crank · r · ΔT_crank − α_piston · CH "
        "· ΔT_piston; minus: closed",
    .source = "linear expansion: Shigley ch. 3; mean temperatures",
    .valid = running::kEstimate,
    .value = [](Reader& read) {
      using running::growth;
      return growth({read(deckHeight), read(in::caseExpansion), read(in::caseWarming)}) -
             growth({read(in::rodLength), read(in::rodExpansion), read(in::rodWarming)}) -
             growth({read(crankRadius), read(in::crankExpansion), read(in::crankWarming)}) -
             growth(
                 {read(in::compressionHeight), read(in::pistonExpansion), read(in::pistonWarming)});
    }};

const Result runningSquish{
    .key = "running_squish_m",
    .name = "Squish gap running, at the working speed",
    .symbol = "s_run",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula =
        "s_run = s − ΔL − Δc + Δ_th; s as measured where it is known by solder or dial gauge",
    .source = "sum of the parts above",
    .valid = running::kEstimate,
    .value = [](Reader& read) { return running::gapAtRest(read) - read(rodStretch); }};

const Result overRevSpeed{
    .key = "over_rev_speed_rad_s",
    .name = "Speed at over-rev",
    .symbol = "N_o",
    .kind = Kind::Speed,
    .per = describe::Per::Engine,
    .formula = "N_o = N · (1 + k_o)",
    .source = "definition",
    .valid = "overshoot of a limiter; a missed down-shift is more",
    .value = [](Reader& read) { return read(workingSpeed) * (1.0 + read(in::overRevShare)); }};

const Result overRevSquish{
    .key = "over_rev_squish_m",
    .name = "Squish gap at over-rev",
    .symbol = "s_o",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula = "as s_run, with ΔL at N_o",
    .source = "sum of the parts above",
    .valid = running::kEstimate,
    .value = [](Reader& read) { return running::gapAt(read, read(overRevSpeed)); }};

const Result closingSpeed{
    .key = "closing_speed_rad_s",
    .name = "Speed at which the crown meets the head",
    .symbol = "N_s",
    .kind = Kind::Speed,
    .formula = "s − Δc + Δ_th = ΔL(N_s), with s as for s_run; ΔL grows with N²",
    .source = "from the running gap",
    .valid = running::kEstimate,
    .value = [](Reader& read) {
      return running::closingSpeed({.gapAtRest = running::gapAtRest(read),
                                    .stretchPerSpeed2 = running::stretchPerSpeed2(read)});
    }};

}  // namespace strokewright::out

namespace strokewright::running {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::rodStretch,   &out::clearanceTakenUp, &out::thermalOpening, &out::runningSquish,
      &out::overRevSpeed, &out::overRevSquish,    &out::closingSpeed};
  return kResults;
}

}  // namespace strokewright::running
