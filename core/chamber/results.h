#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/describe/finding.h"
#include "core/describe/reader.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result sweptVolume, displacement, classMargin, boreStrokeRatio, gasketVolume,
    volumesBesideStack, volumesBesideDeck;

}  // namespace strokewright::out

namespace strokewright::chamber {

/// There is a head gasket: its thickness is not 0, as that of a lapped joint is. A 0 with a ± may
/// still be one.
bool headGasketThere(describe::Reader& read);

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

}  // namespace strokewright::chamber
