#include "core/plate/results.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/plate/outline.h"
#include "core/plate/taper.h"
#include "core/survey/plane.h"
#include "core/survey/results.h"

namespace strokewright::plate {

namespace in = model::in;
using describe::Reader;

namespace {

constexpr std::string_view kOtherPlate =
    "everything else as entered, the plate made to 0.01 mm; it moves squish gap and deck one for "
    "one; its own ± is not in it";

/// The compression ratio of this cylinder with another spacer than the one counted with [m].
double ratioWith(Reader& read, double spacer) {
  const double more = chamber::deckVolume(
      {.bore = read(in::bore), .deckClearance = spacer - read(out::spacerInStack)});
  return chamber::compressionRatio({.sweptVolume = read(out::sweptVolume),
                                    .clearanceVolume = read(out::clearanceVolume) + more});
}

constexpr std::string_view kLine = "linear least squares: Draper and Smith, ch. 1";
constexpr std::string_view kTaper =
    "three or more cylinders show whether a taper fits; measure again before cutting one";

/// The straight line through the spacers that the cylinders need.
survey::SeatLine neededLine(Reader& read) {
  if (model::severalBanks(read)) read.none(model::kEachBankByItself);
  std::vector<survey::SeatPoint> needed;
  needed.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    needed.push_back({.along = here(out::cylinderPosition), .height = here(out::spacerToMake)});
  }
  return survey::fitLine(needed);
}

double squishWith(Reader& read, double spacer) {
  return read(out::squishGap) + spacer - read(out::spacerInStack);
}

/// [m] as it is made, held still for the ±
double made(Reader& read, const describe::Result& spacer) {
  return deck::spacerAsMade(read.held(spacer));
}

}  // namespace

double squishAtWorst(Reader& read, double squish) {
  return squish - read.worst(out::squishWithFlat) - read(in::plateTolerance);
}

}  // namespace strokewright::plate

namespace strokewright::out {

using describe::Column;
using describe::Judged;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

const Result flatSpacer{.key = "flat_spacer_m",
                        .name = "One flat plate for all cylinders",
                        .symbol = "t_flat",
                        .kind = Kind::FineLength,
                        .per = Per::Engine,
                        .judged = Judged::WorstCase,
                        .formula = "t_flat = (t_sp,most + t_sp,least)/2",
                        .source = "the middle of what the cylinders need leaves the least miss",
                        .valid = "the same plate under every barrel",
                        .value = [](Reader& read) {
                          if (model::severalBanks(read)) read.none(model::kEachBankByItself);
                          return (read.most(spacerToMake) + read.least(spacerToMake)) / 2.0;
                        }};

const Result squishWithFlat{
    .key = "squish_with_flat_m",
    .name = "Squish gap over the flat plate",
    .symbol = "s_flat",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula = "s_flat = s + t_flat − t_sp",
    .source = "plane geometry",
    .valid = plate::kOtherPlate,
    .value = [](Reader& read) { return plate::squishWith(read, plate::made(read, flatSpacer)); }};

const Result ratioWithFlat{
    .key = "ratio_with_flat",
    .name = "Compression ratio over the flat plate",
    .symbol = "ε_flat",
    .kind = Kind::Ratio,
    .formula = "ε = 1 + V_d / V_c, the deck raised by t_flat − t_sp",
    .source = "Heywood ch. 2",
    .valid = plate::kOtherPlate,
    .value = [](Reader& read) { return plate::ratioWith(read, plate::made(read, flatSpacer)); }};

const Result taperAtFirst{
    .key = "taper_at_first_m",
    .name = "Tapered plate at the first cylinder",
    .symbol = "t_0",
    .kind = Kind::FineLength,
    .per = Per::Engine,
    .judged = Judged::WorstCase,
    .decimals = 3,
    .formula = "t_0 + b z, squared distances to what the cylinders need at their least",
    .source = plate::kLine,
    .valid = plate::kTaper,
    .value = [](Reader& read) {
      if (read(model::in::cylinderCount) == 1.0) return read.none("one cylinder");
      return plate::neededLine(read).level;
    }};

const Result taperAlong{
    .key = "taper_along",
    .name = "Tapered plate grows along the crankshaft",
    .symbol = "b",
    .kind = Kind::Share,
    .per = Per::Engine,
    .decimals = 3,
    .formula = "least squares over what the cylinders need; 0.03 % is 0.03 mm in 100 mm",
    .source = plate::kLine,
    .valid = plate::kTaper,
    .value = [](Reader& read) {
      if (read(model::in::cylinderCount) == 1.0) return read.none("one cylinder");
      return plate::neededLine(read).slope;
    }};

const Result taperedSpacer{.key = "tapered_spacer_m",
                           .name = "Tapered plate at the cylinder",
                           .symbol = "t_tap",
                           .kind = Kind::FineLength,
                           .judged = Judged::WorstCase,
                           .formula = "t_tap = t_0 + b z",
                           .source = plate::kLine,
                           .valid = plate::kTaper,
                           .value = [](Reader& read) {
                             if (read(model::in::cylinderCount) == 1.0)
                               return read.none("one cylinder");
                             return read(taperAtFirst) + read(taperAlong) * read(cylinderPosition);
                           }};

const Result squishWithTaper{.key = "squish_with_taper_m",
                             .name = "Squish gap over the tapered plate",
                             .symbol = "s_tap",
                             .kind = Kind::FineLength,
                             .judged = Judged::WorstCase,
                             .formula = "s_tap = s + t_tap − t_sp",
                             .source = "plane geometry",
                             .valid = plate::kOtherPlate,
                             .value = [](Reader& read) {
                               return plate::squishWith(read, plate::made(read, taperedSpacer));
                             }};

const Result ratioWithTaper{
    .key = "ratio_with_taper",
    .name = "Compression ratio over the tapered plate",
    .symbol = "ε_tap",
    .kind = Kind::Ratio,
    .formula = "ε = 1 + V_d / V_c, the deck raised by t_tap − t_sp",
    .source = "Heywood ch. 2",
    .valid = plate::kOtherPlate,
    .value = [](Reader& read) { return plate::ratioWith(read, plate::made(read, taperedSpacer)); }};

namespace {

constexpr Column kColumns[] = {
    {.key = "plate", .name = "Plate", .words = true},
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "thickness_m", .name = "Thickness", .symbol = "t", .kind = Kind::FineLength},
    {.key = "squish_m", .name = "Squish gap", .symbol = "s", .kind = Kind::FineLength},
    {.key = "squish_at_worst_m",
     .name = "Squish gap at worst",
     .symbol = "s_min",
     .kind = Kind::FineLength},
    {.key = "ratio", .name = "Compression ratio", .symbol = "ε", .kind = Kind::Ratio}};

}  // namespace

const Table platesCompared{
    .key = "plates_compared",
    .name = "One flat plate, a tapered one, or one for each cylinder",
    .per = Per::Engine,
    .columns = kColumns,
    .formula =
        "s and ε with each plate in place of the spacer counted with; s_min = s − ± of everything "
        "else, worst case − what the plate is made to within",
    .source = "plane geometry; Heywood ch. 2",
    .valid =
        "everything else as entered; plates are made to 0.01 mm, and move squish gap and deck one "
        "for one; a kind that would be thinner than nothing at a cylinder is left out",
    .fill = [](Reader& read, Rows& rows) {
      const auto each = [&](std::string_view name, double (*thickness)(Reader&)) {
        std::vector<double> spacers;
        spacers.reserve(static_cast<std::size_t>(read.cylinders()));
        for (int i = 0; i < read.cylinders(); ++i) {
          Reader here = read.at(i);
          spacers.push_back(deck::spacerAsMade(thickness(here)));
        }
        const auto [least, most] = std::ranges::minmax(spacers);
        if (least < 0.0 || most <= 0.0) return;  // what is to come off is no plate
        for (int i = 0; i < read.cylinders(); ++i) {
          Reader here = read.at(i);
          const double spacer = spacers[static_cast<std::size_t>(i)];
          const double squish = plate::squishWith(here, spacer);
          rows.add({std::string(name), static_cast<double>(model::numberOfCylinder(here)), spacer,
                    squish, plate::squishAtWorst(here, squish), plate::ratioWith(here, spacer)});
        }
      };
      each("flat", [](Reader& here) { return here(flatSpacer); });
      if (read.cylinders() > 1) {
        if (read.at(0).known(taperedSpacer)) {
          each("tapered", [](Reader& here) { return here(taperedSpacer); });
        }
        each("one for each", [](Reader& here) { return here(spacerToMake); });
      }
      if (rows.size() == 0 && read.complete()) {
        read.none("No plate is to be made: what is needed is nothing, or less.");
      }
    }};

}  // namespace strokewright::out

namespace strokewright::plate {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::flatSpacer, &out::squishWithFlat, &out::ratioWithFlat,   &out::taperAtFirst,
      &out::taperAlong, &out::taperedSpacer,  &out::squishWithTaper, &out::ratioWithTaper};
  return kResults;
}

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::platesCompared, &out::plateOutline,
                                         &out::taperedPlateEnds};
  return kTables;
}

}  // namespace strokewright::plate
