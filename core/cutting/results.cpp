#include "core/cutting/results.h"

#include <array>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/cutting/cutting.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Reader;
using units::Kind;

namespace {

constexpr std::string_view kFlatCut = "a flat cut; the area as it is where the metal comes off";

}  // namespace

const Result wantedClearanceVolume{
    .key = "wanted_clearance_volume_m3",
    .name = "Clearance volume for the ratio wanted",
    .symbol = "V_c,w",
    .kind = Kind::Volume,
    .decimals = 2,
    .formula = "V_c,w = V_d / (ε_w − 1)",
    .source = "from ε = 1 + V_d / V_c",
    .valid = "geometric; the crevice volume is counted as entered",
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("nothing is made for a donor");
      return chamber::clearanceForRatio(
          {.sweptVolume = read(sweptVolume), .compressionRatio = read(in::wantedCompressionRatio)});
    }};

const Result volumeToTakeAway{
    .key = "volume_to_take_away_m3",
    .name = "Clearance volume to take away",
    .symbol = "ΔV",
    .kind = Kind::Volume,
    .decimals = 2,
    .formula = "ΔV = V_c − V_c,w",
    .source = "difference of volumes",
    .valid = "minus: the ratio is over the one wanted, so much must be added",
    .value = [](Reader& read) { return read(clearanceVolume) - read(wantedClearanceVolume); }};

const Result headSkim{.key = "head_skim_m",
                      .name = "Off the head face for the ratio wanted (minus: to be added)",
                      .symbol = "x_head",
                      .kind = Kind::FineLength,
                      .formula = "x_head = ΔV / A_face; minus: nothing comes off, volume is wanted",
                      .source = "plane geometry",
                      .valid = kFlatCut,
                      .value = [](Reader& read) {
                        return cutting::cutDepth(
                            {.volume = read(volumeToTakeAway), .area = read(in::chamberFaceArea)});
                      }};

const Result headLandLeft{
    .key = "head_land_left_m",
    .name = "Left between head face and valve seat",
    .symbol = "",
    .kind = Kind::FineLength,
    .formula = "land as measured − x_head",
    .source = "plane geometry",
    .valid = kFlatCut,
    .value = [](Reader& read) { return cutting::leftAfter(read(in::headLand), read(headSkim)); }};

const Result squishAfterSkim{
    .key = "squish_after_skim_m",
    .name = "Squish gap once the head is faced",
    .symbol = "s_x",
    .kind = Kind::FineLength,
    .judged = describe::Judged::WorstCase,
    .formula = "s_x = s − x_head, of which no more than h_rec counts",
    .source = "plane geometry",
    .valid = "a flat cut; the band itself is not touched before the face has reached it",
    .value = [](Reader& read) {
      return cutting::squishAfterSkim(read(squishGap), read(in::headRecess), read(headSkim));
    }};

const Result crownCut{
    .key = "crown_cut_m",
    .name = "Off the crown for the ratio wanted (minus: to be added)",
    .symbol = "x_cr",
    .kind = Kind::FineLength,
    .formula = "x_cr = −ΔV / A_cut; minus: nothing comes off, the ratio must rise",
    .source = "plane geometry",
    .valid = kFlatCut,
    .value = [](Reader& read) {
      return cutting::cutDepth({.volume = -read(volumeToTakeAway), .area = read(in::crownCutArea)});
    }};

const Result crownLeft{.key = "crown_left_m",
                       .name = "Crown left where it is cut",
                       .symbol = "t_left",
                       .kind = Kind::FineLength,
                       .formula = "t_left = t_cr − x_cr",
                       .source = "plane geometry",
                       .valid = kFlatCut,
                       .value = [](Reader& read) {
                         return cutting::leftAfter(read(in::crownThickness), read(crownCut));
                       }};

const Result crownLeftShare{.key = "crown_left_of_bore",
                            .name = "Crown left, as a share of the bore",
                            .symbol = "t_left/B",
                            .kind = Kind::Share,
                            .decimals = 1,
                            .formula = "t_left / B",
                            .source = "definition",
                            .valid = "cast pistons; a forged one stands less",
                            .value = [](Reader& read) { return read(crownLeft) / read(in::bore); }};

}  // namespace strokewright::out

namespace strokewright::cutting {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::wantedClearanceVolume, &out::volumeToTakeAway, &out::headSkim,  &out::headLandLeft,
      &out::squishAfterSkim,       &out::crownCut,         &out::crownLeft, &out::crownLeftShare};
  return kResults;
}

}  // namespace strokewright::cutting
