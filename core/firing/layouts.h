#pragma once
/// Cranks that are common, by description: where to begin from.

#include <span>
#include <string_view>

#include "core/describe/evaluation.h"
#include "core/describe/result.h"
#include "core/describe/table.h"

namespace strokewright::firing {

struct Layout {
  std::string_view key;   ///< "triple_120"
  std::string_view name;  ///< "triple, 120°"
  int cylinders = 1;
  std::string_view throws;  ///< ahead of the first [degrees], as typed: "0; 240; 120"
  std::string_view axes;    ///< of the cylinders [degrees], as typed; empty: in line
};

/// @source plane geometry, common practice; no order of firing is in them
std::span<const Layout> layouts();

/// That of an engine that was evaluated: "triple, 120°"; empty where it is none of them or not
/// known.
std::string_view layoutName(const describe::Evaluation& evaluation, int engine);

}  // namespace strokewright::firing

namespace strokewright::out {

/// Those of the engine's number of cylinders; all while it is not known.
extern const describe::Table commonCranks;

/// Which of them the engine's crank is, from either end; the last choice: none of them.
extern const describe::Result crankLayout;

}  // namespace strokewright::out
