#pragma once
/// The described results, rules and tables of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/result.h"
#include "core/describe/table.h"
#include "core/ports/ports.h"

namespace strokewright::out {

using describe::Result;
using describe::Table;

extern const Result exhaustPortTravel, transferPortTravel, exhaustDuration, transferDuration,
    blowdown, trappedCompressionRatio, primaryCompressionRatio, exhaustPortLowering,
    transferPortLowering;
extern const Table portTiming, portHeights;

}  // namespace strokewright::out

namespace strokewright::ports {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();
std::span<const describe::Table* const> tables();

/// One kind of port of a cylinder, by what is known of it.
struct Port {
  std::string_view name;           ///< "exhaust"
  const describe::Input* top;      ///< below the barrel face
  const describe::Result* travel;  ///< of the piston to it
  const describe::Result* duration;
  const describe::Result* lowering;
};

extern const Port kExhaust, kTransfer;

/// Whether the piston shuts and opens a port that lies a travel [m] below top dead centre.
bool opensAndShuts(describe::Reader& read, double travel);

/// When the piston opens and shuts that port of this cylinder; says that there is none where it
/// does not do both.
Timing timingOf(describe::Reader& read, const Port& port);

}  // namespace strokewright::ports
