#pragma once
/// Inside the room: the fast forms of chooseFromEveryStack().

#include <cstddef>
#include <cstdint>

#include "core/choice/pieces.h"

namespace strokewright::choice {

/// All cylinders get the same parts.
void searchAlike(const Pieces& pieces, BestList& best, Tally& tally);

/// How far the search of unlike cylinders goes; as it stands, for less than a frame.
struct Effort {
  std::int64_t steps = 450'000;
  std::size_t nearestSets = 1000;  ///< kept for a cylinder, where nearness sorts
  /// Kept where spread sorts: as any may be the best, the nearest to the middle of what the
  /// cylinders have in common.
  std::size_t setsToSpread = 2000;
};

/// What is known of the stacks outside the list: Answer::searchedAll and noneNearer.
struct Searched {
  bool all = true;  ///< none belongs on it; false where it had to stop, or dropped what may be best
  bool noneNearer = true;
};

/// Plates, gaskets or both may differ from cylinder to cylinder.
Searched searchMixed(const Pieces& pieces, BestList& best, Tally& tally, const Effort& effort = {});

}  // namespace strokewright::choice
