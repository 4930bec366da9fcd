#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/deck/stack.h"
#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result headMoved, heightWithoutSpacer, crownHeight, protrusionWithoutSpacer,
    spacerToMake, spacerInStack, deckHeight, deckClearance, deckClearanceSpread, squishGap, bareGap;

}  // namespace strokewright::out

namespace strokewright::deck {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

/// What lies between deck and squish face in this cylinder, as entered.
Head headOf(describe::Reader& read);

}  // namespace strokewright::deck
