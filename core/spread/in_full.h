#pragma once
/// The check of what is taken to be in proportion: everything computed anew for every sample.

#include <optional>

#include "core/describe/evaluation.h"
#include "core/spread/monte_carlo.h"

namespace strokewright::spread {

/// Squish gap and compression ratio of one cylinder with every entry that carries a ± thrown anew
/// in each sample, and all that follows computed as for a new entry; nothing where it was stopped.
/// Slow: some thousand samples a second for each thread.
/// @param evaluation of which a copy is worked on; what it points to must outlive the call
/// @pre evaluation.run() has been called and both results have values
/// @throws describe::Refusal where a sample breaks a limit of an entry or of a formula
/// @source JCGM 101:2008, 7.2 to 7.6
std::optional<StackSamples> sampleInFull(const describe::Evaluation& evaluation, int engine,
                                         int cylinder, const Run& run);

}  // namespace strokewright::spread
