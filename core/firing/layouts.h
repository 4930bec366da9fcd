#pragma once
/// Cranks that are common, by description: where to begin from.

#include <span>
#include <string_view>

#include "core/describe/table.h"

namespace strokewright::firing {

struct Layout {
  std::string_view name;  ///< "triple, 120°"
  int cylinders = 1;
  std::string_view throws;  ///< ahead of the first [degrees], as typed: "0; 240; 120"
  std::string_view axes;    ///< of the cylinders [degrees], as typed; empty: in line
};

/// @source plane geometry, common practice; no order of firing is in them
std::span<const Layout> layouts();

}  // namespace strokewright::firing

namespace strokewright::out {

/// Those of the engine's number of cylinders; all while it is not known.
extern const describe::Table commonCranks;

}  // namespace strokewright::out
