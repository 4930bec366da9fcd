#include "core/survey/results.h"

#include <array>
#include <string>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/survey/plane.h"
#include "core/survey/readings.h"

namespace strokewright::survey {

namespace in = model::in;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr std::string_view kFit = "linear least squares: Draper and Smith, ch. 1 and 4";
constexpr std::string_view kSeats =
    "seats read at each cylinder; two cylinders always fit, so only three show whether one is off";

/// The points of one seat: one in the middle, or one on either side where both were read.
void addPoints(Reader read, std::vector<SeatPoint>& points) {
  const double along = read(out::cylinderPosition);
  const double height = read(in::seatHeight);
  if (!read.given(in::seatAcross)) {
    points.push_back({.along = along, .height = height});
    return;
  }
  const double half = read(in::seatAcrossWidth) / 2.0;
  const double rise = read(in::seatAcross) / 2.0;
  points.push_back({.along = along, .across = half, .height = height + rise});
  points.push_back({.along = along, .across = -half, .height = height - rise});
}

/// The plane along the crankshaft. Both readings of a seat lie as far on either side of its middle:
/// what it rises across changes neither level nor slope along, so neither waits for the width.
SeatLine lineOf(Reader& read) {
  if (model::severalBanks(read)) read.none(model::kEachBankByItself);
  std::vector<SeatPoint> points;
  points.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    points.push_back({.along = here(out::cylinderPosition), .height = here(in::seatHeight)});
  }
  return fitLine(points);
}

SeatPlane planeOf(Reader& read) {
  if (model::severalBanks(read)) read.none(model::kEachBankByItself);
  std::vector<SeatPoint> points;
  for (int i = 0; i < read.cylinders(); ++i) addPoints(read.at(i), points);
  return fitPlane(points);
}

}  // namespace

}  // namespace strokewright::survey

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::Input;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

const Result heightByCrown{
    .key = "height_by_crown_m",
    .name = "Deck height by the crown",
    .symbol = "H_δ",
    .kind = Kind::Length,
    .formula = "H_δ = H_p + δ_m",
    .source = "plane geometry",
    .valid = "the engine as it was assembled when the deck clearance was measured",
    .value = [](Reader& read) { return read(crownHeight) + read(in::measuredDeckClearance); }};

const Result deckClosure{
    .key = "deck_closure_m",
    .name = "Deck height less the one by the crown",
    .symbol = "Δ_H",
    .kind = Kind::FineLength,
    .judged = describe::Judged::WorstCase,
    .formula = "Δ_H = H − H_δ",
    .source = "plane geometry: two ways round must close within their joint ±",
    .valid = "spacer and gaskets entered as they were fitted when the deck clearance was measured",
    .value = [](Reader& read) { return read(deckHeight) - read(heightByCrown); }};

const Result squishClosure{
    .key = "squish_closure_m",
    .name = "Squish gap measured less by dimensions",
    .symbol = "Δ_s",
    .kind = Kind::FineLength,
    .judged = describe::Judged::WorstCase,
    .formula = "Δ_s = s_m − s",
    .source = "plane geometry: two ways round must close within their joint ±",
    .valid =
        "spacer and gaskets entered as they were fitted when the gap was measured; parts pushed "
        "down by solder add up to half of the bearing clearance",
    .value = [](Reader& read) {
      if (!read.isDonor() && !read.given(in::spacer)) {
        return read.none("the spacer that was fitted is not entered");
      }
      return read(in::measuredSquish) - read(squishGap);
    }};

const Result cylinderPosition{.key = "cylinder_position_along_m",
                              .name = "Position along the crankshaft",
                              .symbol = "z",
                              .kind = Kind::Length,
                              .formula = "z = (i − 1) · a, or as entered",
                              .source = "definition",
                              .valid = "counted from the first cylinder",
                              .value = [](Reader& read) {
                                if (read(in::cylinderCount) == 1.0) return 0.0;
                                return read.either(in::cylinderPitch, in::cylinderPosition)
                                           ? read.cylinder() * read(in::cylinderPitch)
                                           : read(in::cylinderPosition);
                              }};

const Result seatLevel{.key = "seat_level_m",
                       .name = "Plane of the seats at the first cylinder",
                       .symbol = "h_0",
                       .kind = Kind::Length,
                       .per = Per::Engine,
                       .decimals = 3,
                       .formula = "least squares over all seats: h_0 + b z + c x",
                       .source = survey::kFit,
                       .valid = survey::kSeats,
                       .value = [](Reader& read) {
                         if (read(in::cylinderCount) == 1.0) return read.none("one cylinder");
                         return survey::lineOf(read).level;
                       }};

const Result seatOffPlane{.key = "seat_off_plane_m",
                          .name = "Seat above the plane of all seats",
                          .symbol = "Δ_s",
                          .kind = Kind::FineLength,
                          .decimals = 3,
                          .formula = "Δ_s = h − (h_0 + b z)",
                          .source = survey::kFit,
                          .valid = survey::kSeats,
                          .value = [](Reader& read) {
                            if (read(in::cylinderCount) == 1.0) return read.none("one cylinder");
                            return read(in::seatHeight) - read(seatLevel) -
                                   read(seatSlopeAlong) * read(cylinderPosition);
                          }};

const Result seatSlopeAlong{.key = "seat_slope_along",
                            .name = "Seats rise along the crankshaft",
                            .symbol = "b",
                            .kind = Kind::Share,
                            .per = Per::Engine,
                            .decimals = 3,
                            .formula = "least squares over all seats; 0.03 % is 0.03 mm in 100 mm",
                            .source = survey::kFit,
                            .valid = survey::kSeats,
                            .value = [](Reader& read) {
                              if (read(in::cylinderCount) == 1.0) return read.none("one cylinder");
                              return survey::lineOf(read).slope;
                            }};

const Result seatSlopeAcross{.key = "seat_slope_across",
                             .name = "Seats rise towards the thrust side",
                             .symbol = "c",
                             .kind = Kind::Share,
                             .per = Per::Engine,
                             .decimals = 3,
                             .formula = "least squares over all seats, both sides of each",
                             .source = survey::kFit,
                             .valid = "seats read on both sides",
                             .value = [](Reader& read) {
                               double across = 0.0;
                               for (int i = 0; i < read.cylinders(); ++i)
                                 across += read.at(i)(in::seatAcross);
                               if (read(in::cylinderCount) == 1.0)
                                 return across / read(in::seatAcrossWidth);
                               return survey::planeOf(read).slopeAcross;
                             }};

const Result seatRisePerPitch{.key = "seat_rise_per_pitch_m",
                              .name = "Seats rise per cylinder pitch",
                              .symbol = "b · a",
                              .kind = Kind::FineLength,
                              .per = Per::Engine,
                              .decimals = 3,
                              .formula = "b · (z_n − z_1)/(n − 1)",
                              .source = survey::kFit,
                              .valid = survey::kSeats,
                              .value = [](Reader& read) {
                                const double n = read(in::cylinderCount);
                                if (n == 1.0) return read.none("one cylinder");
                                const double length =
                                    read.at(read.cylinders() - 1)(cylinderPosition) -
                                    read.at(0)(cylinderPosition);
                                return read(seatSlopeAlong) * length / (n - 1.0);
                              }};

namespace {

constexpr Column kSeatColumns[] = {
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "position_m", .name = "Position along", .symbol = "z", .kind = Kind::Length},
    {.key = "seat_height_m", .name = "Seat height", .symbol = "H_case", .kind = Kind::Length},
    {.key = "plane_m", .name = "Plane", .kind = Kind::Length, .decimals = 3},
    {.key = "off_m", .name = "Above the plane", .kind = Kind::FineLength, .decimals = 3}};

constexpr Column kReadingColumns[] = {
    {.key = "place", .name = "What was measured", .words = true},
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "mean_m", .name = "Mean", .kind = Kind::Length, .decimals = 3},
    {.key = "spread_m", .name = "Spread", .kind = Kind::FineLength, .decimals = 3},
    {.key = "limit_m", .name = "± of the mean", .kind = Kind::FineLength, .decimals = 3},
    {.key = "readings", .name = "Readings", .kind = Kind::Count},
    {.key = "instrument_m",
     .name = "± of the instrument",
     .kind = Kind::FineLength,
     .decimals = 3}};

}  // namespace

const Table seats{.key = "seats",
                  .name = "Barrel seats and the plane through them",
                  .per = Per::Engine,
                  .columns = kSeatColumns,
                  .formula = "h = h_0 + b z + c x, squared distances at their least",
                  .source = survey::kFit,
                  .valid = survey::kSeats,
                  .fill = [](Reader& read, Rows& rows) {
                    const survey::SeatLine line = survey::lineOf(read);
                    for (int i = 0; i < read.cylinders(); ++i) {
                      Reader here = read.at(i);
                      const double along = here(cylinderPosition);
                      const double height = here(in::seatHeight);
                      const double level = line.at(along);
                      rows.add({static_cast<double>(model::numberOfCylinder(here)), along, height,
                                level, height - level});
                    }
                  }};

const Table readings{
    .key = "survey_readings",
    .name = "Readings of the survey",
    .per = Per::Engine,
    .columns = kReadingColumns,
    .formula =
        "± of the mean: root of the squares of the instrument’s ± and of t · s/√n; where the "
        "differences cancel, the instrument’s alone, the usual one while none is entered",
    .source = "JCGM 100:2008, 4.2.3, 5.1.2 and G.3",
    .valid = "readings taken afresh each time; the instrument errs in all of them alike",
    .fill = [](Reader& read, Rows& rows) {
      for (const Input* place :
           {&in::seatHeight, &in::barrelHeight, &in::deckHeight, &in::measuredDeckClearance,
            &in::measuredSquish, &in::seatAcross}) {
        const describe::Entry& entry = *read.entry(*place);
        for (std::size_t i = 0; i < entry.values.size(); ++i) {
          const int cylinder = static_cast<int>(i);
          Reader here = read.at(std::min(cylinder, read.cylinders() - 1));
          const int number =
              cylinder < read.cylinders() ? model::numberOfCylinder(here) : cylinder + 1;
          const bool several = i < entry.readings.size();
          const double limit = describe::limitOf(*place, entry, i);
          rows.add({std::string(place->label), entry.values.size() > 1 ? number : describe::kAbsent,
                    entry.values[i],
                    several ? survey::spreadOf(entry.readings[i]) : describe::kAbsent,
                    limit > 0.0 ? limit : describe::kAbsent,
                    several ? static_cast<double>(entry.readings[i].size()) : 1.0,
                    entry.plusMinus ? entry.instrumentLimit() : describe::kAbsent});
        }
      }
    }};

}  // namespace strokewright::out

namespace strokewright::survey {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::heightByCrown,    &out::deckClosure,     &out::squishClosure,
      &out::cylinderPosition, &out::seatLevel,       &out::seatOffPlane,
      &out::seatSlopeAlong,   &out::seatSlopeAcross, &out::seatRisePerPitch};
  return kResults;
}

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::seats, &out::readings};
  return kTables;
}

}  // namespace strokewright::survey
