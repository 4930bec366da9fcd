#include "core/burette/results.h"

#include <array>

#include "core/burette/burette.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"

namespace strokewright::burette {

namespace in = model::in;
using describe::Reader;

double crownAsEntered(Reader& read) {
  const double crown = read(in::crownVolume);
  if (crown == 0.0) return 0.0;
  const auto sense = read.choice<model::CrownSense>(in::crownVolumeSense);
  return sense == model::CrownSense::Takes ? crown : -crown;
}

namespace {

constexpr std::string_view kFilled =
    "the crown clean, ring gap and top land sealed with grease, no bubble under the plate";
constexpr std::string_view kAssembled =
    "assembled as entered, true top dead centre, valves shut, no bubble, filled to the top thread";

}  // namespace

}  // namespace strokewright::burette

namespace strokewright::out {

namespace in = model::in;
using describe::Reader;
using units::Kind;

const Result crownByBurette{.key = "crown_by_burette_m3",
                            .name = "Crown volume by burette",
                            .symbol = "V_cr,b",
                            .kind = Kind::Volume,
                            .decimals = 2,
                            .formula =
                                "V_cr,b = π/4 · B² · x_f − V_f; plus: takes (dome), minus: "
                                "adds (dish)",
                            .source = "plane geometry",
                            .valid = burette::kFilled,
                            .value = [](Reader& read) {
                              return burette::crownVolume({.bore = read(in::bore),
                                                           .depth = read(in::crownFillDepth),
                                                           .filled = read(in::crownFill)});
                            }};

const Result crownClosure{
    .key = "crown_closure_m3",
    .name = "Crown volume by burette less as entered",
    .symbol = "Δ_cr",
    .kind = Kind::Volume,
    .decimals = 2,
    .formula = "Δ_cr = V_cr,b ∓ V_cr; + for an entered crown that adds",
    .source = "two ways round must close within their joint ±: JCGM 100:2008, 5.1.2",
    .valid = burette::kFilled,
    .value = [](Reader& read) { return read(crownByBurette) - burette::crownAsEntered(read); }};

const Result clearanceByBurette{
    .key = "clearance_by_burette_m3",
    .name = "Clearance volume by burette",
    .symbol = "V_c,b",
    .kind = Kind::Volume,
    .decimals = 2,
    .formula = "V_c,b = V_w − V_plug",
    .source = "difference of measured volumes",
    .valid = burette::kAssembled,
    .value = [](Reader& read) { return read(in::wholeVolume) - read(in::plugHoleVolume); }};

const Result clearanceClosure{
    .key = "clearance_closure_m3",
    .name = "Clearance volume by burette less as computed",
    .symbol = "Δ_c",
    .kind = Kind::Volume,
    .decimals = 2,
    .formula = "Δ_c = V_c,b − V_c",
    .source = "two ways round must close within their joint ±: JCGM 100:2008, 5.1.2",
    .valid = burette::kAssembled,
    .value = [](Reader& read) { return read(clearanceByBurette) - read(clearanceVolume); }};

const Result ratioByBurette{
    .key = "ratio_by_burette",
    .name = "Compression ratio by burette",
    .symbol = "ε_b",
    .kind = Kind::Ratio,
    .formula = "ε_b = 1 + V_d / V_c,b",
    .source = "Heywood ch. 2",
    .valid = burette::kAssembled,
    .value = [](Reader& read) {
      return chamber::compressionRatio(
          {.sweptVolume = read(sweptVolume), .clearanceVolume = read(clearanceByBurette)});
    }};

}  // namespace strokewright::out

namespace strokewright::burette {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::crownByBurette, &out::crownClosure,
                                          &out::clearanceByBurette, &out::clearanceClosure,
                                          &out::ratioByBurette};
  return kResults;
}

}  // namespace strokewright::burette
