#include "core/compression/results.h"

#include <array>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::compression {

using describe::Per;
using describe::Reader;
using units::Kind;

namespace {

double ratioWith(Reader& read, double clearanceVolume) {
  return chamber::compressionRatio(
      {.sweptVolume = read(out::sweptVolume), .clearanceVolume = clearanceVolume});
}

}  // namespace

}  // namespace strokewright::compression

namespace strokewright::out {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

const Result deckVolume{
    .key = "deck_volume_m3",
    .name = "Deck volume",
    .symbol = "V_deck",
    .kind = Kind::Volume,
    .formula = "V_deck = π/4 · B² · δ",
    .source = "plane geometry",
    .valid = "minus for a crown that stands proud of the deck",
    .value = [](Reader& read) {
      return chamber::deckVolume({.bore = read(in::bore), .deckClearance = read(deckClearance)});
    }};

const Result clearanceVolume{
    .key = "clearance_volume_m3",
    .name = "Clearance volume",
    .symbol = "V_c",
    .kind = Kind::Volume,
    .formula = "V_c = V_b + V_deck; V_b = V_ch ∓ V_cr + V_gasket + V_crev",
    .source = "sum of measured volumes",
    .valid = "everything above the piston at top dead centre",
    .value = [](Reader& read) { return read(volumesBesideDeck) + read(deckVolume); }};

const Result compressionRatio{
    .key = "compression_ratio",
    .name = "Compression ratio",
    .symbol = "ε",
    .kind = Kind::Ratio,
    .formula = "ε = 1 + V_d / V_c",
    .source = "Heywood ch. 2",
    .valid = "geometric; the crevice volume is counted as entered",
    .value = [](Reader& read) { return compression::ratioWith(read, read(clearanceVolume)); }};

const Result compressionRatioWithoutCrevice{
    .key = "compression_ratio_without_crevice",
    .name = "Compression ratio without crevice",
    .symbol = "ε_0",
    .kind = Kind::Ratio,
    .formula = "ε_0 = 1 + V_d / (V_c − V_crev)",
    .source = "Heywood ch. 2",
    .valid = "geometric",
    .value = [](Reader& read) {
      return compression::ratioWith(read, read(clearanceVolume) - read(in::creviceVolume));
    }};

const Result ratioSpread{.key = "compression_ratio_spread",
                         .name = "Difference of compression ratio between cylinders",
                         .symbol = "Δε",
                         .kind = Kind::Ratio,
                         .per = Per::Engine,
                         .apart = true,
                         .formula = "Δε = ε_most − ε_least",
                         .source = "definition",
                         .valid = "geometric",
                         .value = [](Reader& read) {
                           if (read(in::cylinderCount) == 1.0) return read.none("one cylinder");
                           return read.most(compressionRatio) - read.least(compressionRatio);
                         }};

const Result ratioPerTenth{
    .key = "ratio_per_tenth",
    .name = "Ratio per tenth of a millimetre of spacer",
    .symbol = "Δε_t",
    .kind = Kind::Ratio,
    .formula = "Δε = V_d / V_c − V_d / (V_c + π/4 · B² · t)",
    .source = "from ε = 1 + V_d / V_c",
    .valid = "a spacer thicker than the one counted with by t, a tenth of a millimetre",
    .value = [](Reader& read) {
      constexpr double kTenth = 1e-4;  // [m]
      const double more = chamber::deckVolume({.bore = read(in::bore), .deckClearance = kTenth});
      return read(compressionRatio) - compression::ratioWith(read, read(clearanceVolume) + more);
    }};

const Result inletClosingTravel{
    .key = "inlet_closing_travel_m",
    .name = "Travel from top dead centre at inlet closing",
    .symbol = "x_IVC",
    .kind = Kind::Length,
    .formula = "x = y(θ_TDC) − y(θ_TDC + 180° + IVC)",
    .source = "plane geometry",
    .valid = "closing as read, at the lift entered with it",
    .value = [](Reader& read) {
      if (model::twoStroke(read)) {
        return read.none("a two-stroke has no inlet valve; it is closed by its port");
      }
      return chamber::travelAtClosing(motion::mechanism(read), read(in::inletClosing));
    }};

const Result effectiveCompressionRatio{
    .key = "effective_compression_ratio",
    .name = "Effective compression ratio",
    .symbol = "ε_eff",
    .kind = Kind::Ratio,
    .formula = "ε_eff = 1 + π/4 · B² · x_IVC / V_c",
    .source = "common practice, no published source; geometry as the compression ratio",
    .valid = "from inlet closing at the lift stated",
    .value = [](Reader& read) {
      const double travel = read(inletClosingTravel);
      return chamber::effectiveCompressionRatio(
          {.bore = read(in::bore), .travel = travel, .clearanceVolume = read(clearanceVolume)});
    }};

}  // namespace strokewright::out

namespace strokewright::compression {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::deckVolume,         &out::clearanceVolume,
      &out::compressionRatio,   &out::compressionRatioWithoutCrevice,
      &out::ratioSpread,        &out::ratioPerTenth,
      &out::inletClosingTravel, &out::effectiveCompressionRatio};
  return kResults;
}

}  // namespace strokewright::compression
