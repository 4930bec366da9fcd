#include <array>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/cutting/cutting.h"
#include "core/cutting/results.h"
#include "core/model/inputs.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::Input;
using describe::kAbsent;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kColumns[] = {
    {.key = "change_m3", .name = "Change of volume", .kind = Kind::Volume, .decimals = 2},
    {.key = "clearance_m3", .name = "Clearance volume", .kind = Kind::Volume, .decimals = 2},
    {.key = "ratio", .name = "Compression ratio", .symbol = "ε", .kind = Kind::Ratio},
    {.key = "ratio_change", .name = "Change of ratio", .symbol = "Δε", .kind = Kind::Ratio},
    {.key = "head_skim_m", .name = "Off the head face", .kind = Kind::FineLength, .decimals = 3},
    {.key = "crown_cut_m", .name = "Off the crown", .kind = Kind::FineLength, .decimals = 3},
    {.key = "head_gasket_m", .name = "Head gasket by", .kind = Kind::FineLength, .decimals = 3},
    {.key = "spacer_m", .name = "Spacer by", .kind = Kind::FineLength, .decimals = 3}};

/// The cut that makes a volume, for who has measured the area.
double cutOver(Reader& read, const Input& area, double volume) {
  if (!read.given(area)) return kAbsent;
  return cutting::cutDepth({.volume = volume, .area = read(area)});
}

/// A gasket that is not there is made no thicker; one whose hole was measured has no bore.
double gasketBy(Reader& read, double volume) {
  const bool measured = read.given(in::headGasketVolume) && !read.given(in::headGasketBore);
  if (measured || !chamber::headGasketThere(read)) return kAbsent;
  return volume / chamber::boreArea(read(in::headGasketBore));
}

void addStep(Reader& read, double change, Rows& rows) {
  const double clearance = read(clearanceVolume) + change;
  const double ratio =
      chamber::compressionRatio({.sweptVolume = read(sweptVolume), .clearanceVolume = clearance});
  rows.add({change, clearance, ratio, ratio - read(compressionRatio),
            cutOver(read, in::chamberFaceArea, -change), cutOver(read, in::crownCutArea, change),
            gasketBy(read, change), change / chamber::boreArea(read(in::bore))});
}

}  // namespace

const Table volumeAndRatio{
    .key = "volume_and_ratio",
    .name = "Millilitres, millimetres and ratio",
    .columns = kColumns,
    .formula =
        "ε = 1 + V_d / (V_c + ΔV); head −ΔV / A_face, crown ΔV / A_cut, gasket ΔV / (π/4 · D_g²), "
        "spacer ΔV / (π/4 · B²)",
    .source = "Heywood ch. 2; plane geometry",
    .valid = "each by itself; minus: thinner, or metal to be added",
    .fill = [](Reader& read, Rows& rows) {
      constexpr int kSteps = 10;  // either way
      const double step = cutting::volumeStep(read(clearanceVolume));
      for (int i = -kSteps; i <= kSteps; ++i) addStep(read, i * step, rows);
    }};

}  // namespace strokewright::out

namespace strokewright::cutting {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::volumeAndRatio};
  return kTables;
}

}  // namespace strokewright::cutting
