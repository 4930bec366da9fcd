#pragma once
/// How likely each squish gap and each compression ratio is.

#include <optional>

#include "core/spread/monte_carlo.h"
#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

class Document;

/// Whose numbers are shown.
struct CylinderShown {
  int engine = -1;   ///< -1: there is none
  int cylinder = 0;  ///< counted from 0

  bool operator==(const CylinderShown&) const = default;
};

/// The cylinder of an engine whose squish gap is the likeliest to be under the least of practice;
/// of several the one whose gap is the least.
int cylinderLikeliestTooClose(Document& document, int engine);

/// The chance of less than the least of practice.
/// @returns nothing while the gap of that cylinder is not known.
std::optional<double> chanceUnderLeast(Document& document, CylinderShown which);

/// What was sampled, and whether the project has changed since.
struct SampledShown {
  const spread::StackSamples* samples = nullptr;  ///< nullptr: nothing was
  bool old = false;
};

/// Bars of the chance of each squish gap of a cylinder, those under the least of practice hatched;
/// the gap wanted, the limits and the percentiles as lines; what was sampled as an outline.
PlotScene gapScene(Document& document, CylinderShown which, const SampledShown& sampled);

/// The same of the compression ratio, with the ratio wanted and the limits of the compression.
PlotScene ratioScene(Document& document, CylinderShown which, const SampledShown& sampled);

}  // namespace strokewright::ui
