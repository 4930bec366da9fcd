#pragma once
/// Inside the room: the fast forms of chooseFromEveryStack().

#include "core/choice/pieces.h"

namespace strokewright::choice {

/// All cylinders get the same parts.
void searchAlike(const Pieces& pieces, BestList& best, Tally& tally);

/// Plates, gaskets or both may differ from cylinder to cylinder.
/// @return false where it had to stop before the end
bool searchMixed(const Pieces& pieces, BestList& best, Tally& tally);

}  // namespace strokewright::choice
