#pragma once
/// Distributions by sampling: the check of the others, and the answer for what is not linear.

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "core/spread/spread.h"
#include "core/spread/stack.h"

namespace strokewright::spread {

/// A distribution found by sampling. Samples are counted in fine bins as they come; between the
/// edges of a bin its samples count as evenly spread.
class SampledSpread final : public Spread {
 public:
  /// @param bins   low <= high; equal where all samples are
  /// @param counts samples in each bin
  SampledSpread(const Bins& bins, const std::vector<std::uint32_t>& counts, double mean,
                double standardDeviation);

  double mean() const { return mean_; }
  double standardDeviation() const { return standardDeviation_; }
  double low() const override { return bins_.low; }
  double high() const override { return bins_.high; }
  double chanceBelow(double x) const override;

 private:
  Bins bins_;
  std::vector<double> below_;  // chance below each edge
  double mean_;
  double standardDeviation_;
};

/// How to sample. The result depends on seed and count alone.
struct Run {
  int count = 1'000'000;  ///< > 0; rounded up to whole blocks of kBlockSize
  std::uint64_t seed = 1;
  int threads = 0;  ///< 0: one for each processor

  /// Hears the share done, from 0 to 1, about fifty times a second and in the thread that called;
  /// sampling stops where it answers false. None: never stops.
  std::function<bool(double)> proceed = {};
};

struct StackSamples {
  SampledSpread gap;    ///< [m]
  SampledSpread ratio;  ///< compression ratio
};

/// Samples gap and compression ratio of a stack together; nothing where it was stopped.
/// @throws describe::Refusal as gapSpread() and RatioSpread, and for a count below 1
std::optional<StackSamples> sample(const Stack& stack, const Run& run);

/// Samples any function of independent errors; nothing where it was stopped. Keeps all samples
/// until they are counted, eight bytes each.
/// @param function of one error for each shape, 1 being its limit; called from several threads
/// @throws what the function throws; describe::Refusal for a value that is not finite, and for a
///         count below 1
std::optional<SampledSpread> sample(const std::vector<describe::Shape>& shapes,
                                    const std::function<double(std::span<const double>)>& function,
                                    const Run& run);

}  // namespace strokewright::spread
