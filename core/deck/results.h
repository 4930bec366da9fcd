#pragma once
/// The described results and rules of this room, in page order.

#include <span>

#include "core/deck/stack.h"
#include "core/describe/finding.h"
#include "core/describe/result.h"

namespace strokewright::out {

using describe::Result;

extern const Result headMoved, heightWithoutSpacer, crownHeight, protrusionWithoutSpacer,
    spacerToMake, spacerInStack, deckHeight, deckClearance, deckClearanceSpread, squishGap,
    squishWithSpacerToMake, bareGap;

}  // namespace strokewright::out

namespace strokewright::deck {

std::span<const describe::Result* const> results();
std::span<const describe::Rule* const> rules();

/// What lies between deck and squish face in this cylinder, as entered.
Head headOf(describe::Reader& read);

/// The plate in this cylinder was measured, so it is cut, and the sum asks for less than none, by
/// more than a plate is made to within.
bool cutInVain(describe::Reader& read);

/// No plate, and another part that makes up for it, to 0.01 mm.
/// @param pattern with the thickness of that part as {1}
/// @param value [m] of it
describe::Mend withoutSpacer(std::string_view pattern, const describe::Input& part, double value);

}  // namespace strokewright::deck
