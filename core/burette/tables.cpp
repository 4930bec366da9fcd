#include <array>
#include <string>

#include "core/burette/burette.h"
#include "core/burette/results.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"
#include "core/survey/readings.h"

namespace strokewright::burette {

namespace in = model::in;
using describe::Reader;

namespace {

/// [1/m3]
double perVolume(Reader& read, double clearanceVolume) {
  return ratioPerVolume(
      {.sweptVolume = read(out::sweptVolume), .clearanceVolume = clearanceVolume});
}

/// Ratio for each volume that was filled wrong [1/m3], or kAbsent while that is not known.
using Worth = double (*)(Reader& read);

double ofClearance(Reader& read) {
  return read.known(out::compressionRatio) ? perVolume(read, read(out::clearanceVolume))
                                           : describe::kAbsent;
}

double ofWhole(Reader& read) {
  return read.known(out::ratioByBurette) ? perVolume(read, read(out::clearanceByBurette))
                                         : describe::kAbsent;
}

double ofCrankcase(Reader& read) {
  return read.known(out::sweptVolume) ? perVolume(read, read(in::crankcaseVolume))
                                      : describe::kAbsent;
}

struct Filling {
  const describe::Input* what;
  Worth worth;
};

constexpr std::array kFillings = {
    Filling{&in::chamberVolume, ofClearance}, Filling{&in::crownFill, ofClearance},
    Filling{&in::wholeVolume, ofWhole}, Filling{&in::plugHoleVolume, ofWhole},
    Filling{&in::crankcaseVolume, ofCrankcase}};

constexpr double kTenth = 1e-7;  // [m3] of a millilitre

void addRows(Reader& read, const Filling& filling, describe::Rows& rows) {
  const describe::Entry& entry = *read.entry(*filling.what);
  for (std::size_t i = 0; i < entry.values.size(); ++i) {
    const int cylinder = static_cast<int>(i);
    if (cylinder >= read.cylinders()) return;
    Reader here = read.at(cylinder);
    const bool several = i < entry.readings.size();
    const double limit = entry.limit(i) > 0.0 ? entry.limit(i) : describe::kAbsent;
    const double worth = filling.worth(here);
    rows.add({std::string(filling.what->label),
              entry.values.size() > 1 ? model::numberOfCylinder(here) : describe::kAbsent,
              several ? static_cast<double>(entry.readings[i].size()) : 1.0, entry.values[i],
              several ? survey::spreadOf(entry.readings[i]) : describe::kAbsent, limit,
              limit * worth, kTenth * worth});
  }
}

}  // namespace

}  // namespace strokewright::burette

namespace strokewright::out {

using describe::Column;
using describe::Per;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kColumns[] = {
    {.key = "filled", .name = "What was filled", .words = true},
    {.key = "cylinder", .name = "Cylinder", .kind = Kind::Count},
    {.key = "fillings", .name = "Fillings", .kind = Kind::Count},
    {.key = "mean_m3", .name = "Mean", .kind = Kind::Volume, .decimals = 2},
    {.key = "spread_m3", .name = "Spread", .kind = Kind::Volume, .decimals = 2},
    {.key = "limit_m3", .name = "± of the mean", .kind = Kind::Volume, .decimals = 2},
    {.key = "limit_in_ratio", .name = "That ± in ratio", .symbol = "Δε", .kind = Kind::Ratio},
    {.key = "tenth_ml_in_ratio",
     .name = "A tenth of a ml in ratio",
     .kind = Kind::Ratio,
     .decimals = 3}};

}  // namespace

const Table volumesFilled{
    .key = "volumes_filled",
    .name = "Volumes filled from the burette",
    .per = Per::Engine,
    .columns = kColumns,
    .formula =
        "Δε = V_d / V² · ±, with V the clearance volume the filling went into; the crankcase: its "
        "own volume, and primary compression",
    .source = "JCGM 100:2008, 4.2.3 and 5.1.2; derivative of ε = 1 + V_d / V_c",
    .valid = "filled afresh each time; the burette errs in all fillings alike",
    .fill = [](Reader& read, Rows& rows) {
      for (const burette::Filling& filling : burette::kFillings) {
        burette::addRows(read, filling, rows);
      }
    }};

}  // namespace strokewright::out

namespace strokewright::burette {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::volumesFilled};
  return kTables;
}

}  // namespace strokewright::burette
