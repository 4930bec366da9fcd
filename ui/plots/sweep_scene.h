#pragma once
/// A result against one entry, with all limits that are known of either.

#include <optional>

#include "ui/plots/scene_view.h"

namespace strokewright::ui {

struct Swept {
  int engine = -1;
  int cylinder = 0;
  const describe::Result* result = nullptr;
  const describe::Input* input = nullptr;
  int inputCylinder = -1;             ///< -1: the same in every cylinder
  double now = 0.0;                   ///< [SI] what stands for the entry
  std::optional<double> wanted = {};  ///< [SI] of the result
  std::optional<double> found = {};   ///< [SI] of the entry
};

/// From well below where the entry stands to well above, and to what was found: the curve, the
/// present point, what is wanted and what was found; where the entry would be unusual or
/// impossible, and the limits of the result.
PlotScene sweepScene(Document& document, const Swept& swept);

}  // namespace strokewright::ui
