#include "core/chamber/results.h"

#include <array>

#include "core/chamber/chamber.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using units::Kind;

namespace {

/// [m] Without an offset the true stroke is twice the throw, whatever the rod.
double strokeSwept(Reader& read) {
  return read(netOffset) != 0.0 ? read(trueStroke) : 2 * read(crankRadius);
}

}  // namespace

const Result sweptVolume{
    .key = "swept_volume_m3",
    .name = "Swept volume of one cylinder",
    .symbol = "V_d",
    .kind = Kind::Volume,
    .formula = "V_d = π/4 · B² · 2 r; or π/4 · B² · S_t; the true stroke where there is an offset",
    .source = "Heywood ch. 2",
    .valid = "any bore and stroke",
    .value = [](Reader& read) {
      return chamber::sweptVolume({.bore = read(in::bore), .trueStroke = strokeSwept(read)});
    }};

const Result displacement{
    .key = "displacement_m3",
    .name = "Displacement",
    .symbol = "V",
    .kind = Kind::Volume,
    .per = Per::Engine,
    .formula = "V = Σ V_d over all cylinders",
    .source = "Heywood ch. 2",
    .valid = "plain π/4 · B² · S_t · n; a class may count otherwise: its rule text decides",
    .value = [](Reader& read) {
      read(in::cylinderCount);
      return read.sum(sweptVolume);
    }};

const Result classMargin{
    .key = "class_margin_m3",
    .name = "Class margin",
    .symbol = "V_lim − V",
    .kind = Kind::Volume,
    .per = Per::Engine,
    .formula = "V_lim − V",
    .source = "definition; the class rule decides",
    .valid = "rules that count plain π/4 · B² · S_t · n",
    .value = [](Reader& read) {
      // What is typed and cannot be read yet is waited for.
      if (!read.given(in::classLimit) && read.entry(in::classLimit)->text.empty()) {
        return read.none("no class limit entered");
      }
      return read(in::classLimit) - read(displacement);
    }};

const Result boreStrokeRatio{
    .key = "bore_stroke_ratio",
    .name = "Bore to stroke",
    .symbol = "B/S",
    .kind = Kind::Ratio,
    .formula = "B / S = B / (2 r)",
    .source = "definition",
    .valid = "any bore and stroke",
    .value = [](Reader& read) { return read(in::bore) / (2 * read(crankRadius)); }};

const Result gasketVolume{
    .key = "gasket_volume_m3",
    .name = "Volume inside the head gasket",
    .symbol = "V_gasket",
    .kind = Kind::Volume,
    .formula = "V_gasket = π/4 · D_g² · t_g; or V_g; the hole as measured where it was",
    .source = "plane geometry",
    .valid = "a round hole; one that is not round: the circle of equal area",
    .value = [](Reader& read) {
      if (read.given(in::headGasketVolume)) return read(in::headGasketVolume);
      if (!chamber::headGasketThere(read)) return 0.0;
      const double thickness = read(in::headGasket);
      return chamber::gasketVolume(
          {.gasketBore = read(in::headGasketBore), .thickness = thickness});
    }};

const Result volumesBesideStack{
    .key = "volumes_beside_stack_m3",
    .name = "Clearance volume less gasket and deck volume",
    .symbol = "V_0",
    .kind = Kind::Volume,
    .formula = "V_0 = V_ch ∓ V_cr + V_crev; − for a crown that takes volume",
    .source = "sum of measured volumes",
    .valid = "crown volume taken from the plane of the compression height",
    .value = [](Reader& read) {
      double crown = read(in::crownVolume);
      if (crown != 0.0 &&
          read.choice<model::CrownSense>(in::crownVolumeSense) == model::CrownSense::Takes) {
        crown = -crown;
      }
      return chamber::clearanceVolume({.chamber = read(in::chamberVolume),
                                       .crown = crown,
                                       .gasket = 0.0,
                                       .deck = 0.0,
                                       .crevice = read(in::creviceVolume)});
    }};

const Result volumesBesideDeck{
    .key = "volumes_beside_deck_m3",
    .name = "Clearance volume less the deck volume",
    .symbol = "V_b",
    .kind = Kind::Volume,
    .formula = "V_b = V_0 + V_gasket",
    .source = "sum of measured volumes",
    .valid = "crown volume taken from the plane of the compression height",
    .value = [](Reader& read) { return read(volumesBesideStack) + read(gasketVolume); }};

}  // namespace strokewright::out

namespace strokewright::chamber {

namespace in = model::in;
using describe::Reader;

bool headGasketThere(Reader& read) {
  return read(in::headGasket) != 0.0 || read.entry(in::headGasket)->carriesLimit();
}

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::sweptVolume,  &out::displacement,       &out::classMargin,      &out::boreStrokeRatio,
      &out::gasketVolume, &out::volumesBesideStack, &out::volumesBesideDeck};
  return kResults;
}

}  // namespace strokewright::chamber
