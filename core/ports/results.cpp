#include "core/ports/results.h"

#include <array>
#include <optional>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::ports {

namespace in = model::in;
using describe::Reader;
using describe::Result;

const Port kExhaust{.name = "exhaust",
                    .top = &in::exhaustPortTop,
                    .travel = &out::exhaustPortTravel,
                    .duration = &out::exhaustDuration,
                    .lowering = &out::exhaustPortLowering};
const Port kTransfer{.name = "transfer",
                     .top = &in::transferPortTop,
                     .travel = &out::transferPortTravel,
                     .duration = &out::transferDuration,
                     .lowering = &out::transferPortLowering};

bool opensAndShuts(Reader& read, double travel) {
  return travel > 0.0 && travel < read(out::trueStroke);
}

namespace {

constexpr std::string_view kMotion = "plane geometry; without offset Heywood ch. 2";
constexpr std::string_view kPistonPorts = "two-stroke, ports that the crown opens and shuts";
constexpr std::string_view kValves = "a four-stroke has valves instead of ports";

/// It is said to be a four-stroke; what is not said is waited for.
bool fourStroke(Reader& read) { return !model::twoStroke(read) && read.given(in::cycle); }

double travelTo(Reader& read, const Port& port) {
  if (fourStroke(read)) return read.none(kValves);
  return read(*port.top) - read(out::deckClearance) + read(in::crownRise);
}

/// The travel to the port top; one that stays open or shut means nothing for timing.
std::optional<double> workingTravel(Reader& read, const Port& port) {
  const double travel = read(*port.travel);
  if (opensAndShuts(read, travel)) return travel;
  read.none("the port is not opened and shut in turn");
  return std::nullopt;
}

double lowering(Reader& read, const Port& port) {
  if (read.isDonor()) return read.none("it is the donor's own timing");
  if (!read.hasDonor()) return read.none("no donor to compare with");
  const double wanted = travelForDuration(motion::mechanism(read), read.donor(*port.duration));
  return wanted - read(*port.travel);
}

}  // namespace

Timing timingOf(Reader& read, const Port& port) {
  const std::optional<double> travel = workingTravel(read, port);
  return travel ? timing(motion::mechanism(read), *travel) : Timing{};
}

}  // namespace strokewright::ports

namespace strokewright::out {

namespace in = model::in;
using describe::Reader;
using units::Kind;

const Result exhaustPortTravel{
    .key = "exhaust_port_travel_m",
    .name = "Travel to the exhaust port",
    .symbol = "x_ex",
    .kind = Kind::Length,
    .formula = "x_ex = h_ex − δ + h_rise",
    .source = "plane geometry",
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::travelTo(read, ports::kExhaust); }};

const Result transferPortTravel{
    .key = "transfer_port_travel_m",
    .name = "Travel to the transfer ports",
    .symbol = "x_tr",
    .kind = Kind::Length,
    .formula = "x_tr = h_tr − δ + h_rise",
    .source = "plane geometry",
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::travelTo(read, ports::kTransfer); }};

const Result exhaustDuration{
    .key = "exhaust_duration_rad",
    .name = "Exhaust duration",
    .symbol = "θ_ex",
    .kind = Kind::Angle,
    .decimals = 1,
    .formula = "x(θ) = x_ex solved on the way down and up; without offset 2 (180° − θ_open)",
    .source = ports::kMotion,
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::timingOf(read, ports::kExhaust).duration(); }};

const Result transferDuration{
    .key = "transfer_duration_rad",
    .name = "Transfer duration",
    .symbol = "θ_tr",
    .kind = Kind::Angle,
    .decimals = 1,
    .formula = "x(θ) = x_tr solved on the way down and up; without offset 2 (180° − θ_open)",
    .source = ports::kMotion,
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::timingOf(read, ports::kTransfer).duration(); }};

const Result blowdown{.key = "blowdown_rad",
                      .name = "Blowdown",
                      .symbol = "θ_bd",
                      .kind = Kind::Angle,
                      .decimals = 1,
                      .formula = "θ_bd = θ_open of the transfer ports − θ_open of the exhaust",
                      .source = "definition",
                      .valid = "on the way down; minus: the transfers open first",
                      .value = [](Reader& read) {
                        return ports::timingOf(read, ports::kTransfer).opens -
                               ports::timingOf(read, ports::kExhaust).opens;
                      }};

const Result trappedCompressionRatio{
    .key = "trapped_compression_ratio",
    .name = "Trapped compression ratio",
    .symbol = "ε_trap",
    .kind = Kind::Ratio,
    .formula = "ε_trap = 1 + π/4 · B² · x_ex / V_c",
    .source = "common practice, no published source; geometry as the compression ratio",
    .valid = "from where the exhaust port is shut; a pipe that pushes charge back gives more",
    .value = [](Reader& read) {
      const std::optional<double> travel = ports::workingTravel(read, ports::kExhaust);
      return chamber::effectiveCompressionRatio({.bore = read(in::bore),
                                                 .travel = travel.value_or(0.0),
                                                 .clearanceVolume = read(clearanceVolume)});
    }};

const Result primaryCompressionRatio{
    .key = "primary_compression_ratio",
    .name = "Primary compression ratio",
    .symbol = "ε_prim",
    .kind = Kind::Ratio,
    .decimals = 3,
    .formula = "ε_prim = (V_cc + V_d) / V_cc",
    .source = "common practice, no published source",
    .valid = "over the whole stroke; crankcase filled with the piston at bottom dead centre",
    .value = [](Reader& read) {
      if (ports::fourStroke(read)) {
        return read.none("the crankcase of a four-stroke does not pump");
      }
      return ports::primaryCompressionRatio(
          {.volume = read(in::crankcaseVolume), .sweptVolume = read(sweptVolume)});
    }};

const Result exhaustPortLowering{
    .key = "exhaust_port_lowering_m",
    .name = "Exhaust port top, lower for the donor's duration by",
    .symbol = "Δh_ex",
    .kind = Kind::FineLength,
    .formula = "Δh_ex = x(θ_ex,donor) − x_ex; minus: higher",
    .source = ports::kMotion,
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::lowering(read, ports::kExhaust); }};

const Result transferPortLowering{
    .key = "transfer_port_lowering_m",
    .name = "Transfer port top, lower for the donor's duration by",
    .symbol = "Δh_tr",
    .kind = Kind::FineLength,
    .formula = "Δh_tr = x(θ_tr,donor) − x_tr; minus: higher",
    .source = ports::kMotion,
    .valid = ports::kPistonPorts,
    .value = [](Reader& read) { return ports::lowering(read, ports::kTransfer); }};

}  // namespace strokewright::out

namespace strokewright::ports {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::exhaustPortTravel,
                                          &out::transferPortTravel,
                                          &out::exhaustDuration,
                                          &out::transferDuration,
                                          &out::blowdown,
                                          &out::trappedCompressionRatio,
                                          &out::primaryCompressionRatio,
                                          &out::exhaustPortLowering,
                                          &out::transferPortLowering};
  return kResults;
}

}  // namespace strokewright::ports
