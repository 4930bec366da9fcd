#include <array>
#include <numbers>
#include <string>

#include "core/chamber/chamber.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/ports/results.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Column;
using describe::kAbsent;
using describe::Reader;
using describe::Rows;
using units::Kind;

namespace {

constexpr Column kTimingColumns[] = {
    {.key = "port", .name = "Port", .words = true},
    {.key = "top_m", .name = "Top below the barrel face", .symbol = "h", .kind = Kind::Length},
    {.key = "travel_m", .name = "Travel", .symbol = "x", .kind = Kind::Length},
    {.key = "opens_after_top_rad", .name = "Opens after top", .kind = Kind::Angle, .decimals = 1},
    {.key = "shuts_before_top_rad", .name = "Shuts before top", .kind = Kind::Angle, .decimals = 1},
    {.key = "duration_rad", .name = "Duration", .kind = Kind::Angle, .decimals = 1},
    {.key = "donors_duration_rad", .name = "Donor's", .kind = Kind::Angle, .decimals = 1},
    {.key = "top_for_donors_m", .name = "Top for the donor's", .kind = Kind::Length}};

void addPort(Reader& read, const ports::Port& port, Rows& rows) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  const double topDeadCentre = read(topDeadCentreAngle);
  const double top = read(*port.top);
  const ports::Timing timing = ports::timingOf(read, port);
  const bool compares = read.known(*port.lowering);
  rows.add({std::string(port.name), top, read(*port.travel), timing.opens - topDeadCentre,
            kTurn + topDeadCentre - timing.shuts, timing.duration(),
            compares ? read.donor(*port.duration) : kAbsent,
            compares ? top + read(*port.lowering) : kAbsent});
}

constexpr Column kHeightColumns[] = {
    {.key = "higher_m", .name = "Port tops higher by", .kind = Kind::FineLength},
    {.key = "exhaust_rad", .name = "Exhaust duration", .kind = Kind::Angle, .decimals = 1},
    {.key = "transfer_rad", .name = "Transfer duration", .kind = Kind::Angle, .decimals = 1},
    {.key = "trapped_ratio", .name = "Trapped compression ratio", .kind = Kind::Ratio}};

double durationHigher(Reader& read, const ports::Port& port, double higher) {
  const double travel = read(*port.travel) - higher;
  return ports::opensAndShuts(read, travel)
             ? ports::timing(motion::mechanism(read), travel).duration()
             : kAbsent;
}

double trappedHigher(Reader& read, double higher) {
  const double travel = read(exhaustPortTravel) - higher;
  if (!ports::opensAndShuts(read, travel)) return kAbsent;
  return chamber::effectiveCompressionRatio(
      {.bore = read(in::bore), .travel = travel, .clearanceVolume = read(clearanceVolume)});
}

}  // namespace

const Table portTiming{
    .key = "port_timing",
    .name = "When the ports open and shut",
    .columns = kTimingColumns,
    .formula = "x(θ) = h − δ solved on the way down and up; angles from top dead centre",
    .source = "plane geometry; without offset Heywood ch. 2",
    .valid = "two-stroke, ports that the crown opens and shuts",
    .fill = [](Reader& read, Rows& rows) {
      addPort(read, ports::kExhaust, rows);
      addPort(read, ports::kTransfer, rows);
    }};

const Table portHeights{
    .key = "port_heights",
    .name = "Millimetres of port height in degrees",
    .columns = kHeightColumns,
    .formula =
        "x(θ) = h − δ − step, ε_trap = 1 + π/4 · B² · x_ex / V_c; a thicker spacer raises "
        "the ports as well, but adds to V_c",
    .source = "plane geometry; without offset Heywood ch. 2",
    .valid = "ports filed higher or lower, deck and clearance volume as they are",
    .fill = [](Reader& read, Rows& rows) {
      constexpr int kSteps = 10;      // either way
      constexpr double kStep = 2e-4;  // [m]
      for (int i = -kSteps; i <= kSteps; ++i) {
        const double higher = i * kStep;
        rows.add({higher, durationHigher(read, ports::kExhaust, higher),
                  durationHigher(read, ports::kTransfer, higher), trappedHigher(read, higher)});
      }
    }};

}  // namespace strokewright::out

namespace strokewright::ports {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::portTiming, &out::portHeights};
  return kTables;
}

}  // namespace strokewright::ports
