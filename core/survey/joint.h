#pragma once
/// Two ways round that must close: how far apart they may lie, and where to look if they lie
/// farther.

#include <span>
#include <vector>

#include "core/describe/finding.h"

namespace strokewright::survey {

/// An entry that one of the two ways rests on.
struct Rests {
  const describe::Input* on = nullptr;
  double worth = 1.0;  ///< change of the closure for a change of the entry, either sign
};

/// The ± of a closure [SI].
struct Joint {
  double likely = 0.0;
  double worst = 0.0;
};

/// The ± of a closure in this cylinder, with what the usual instrument gives for each entry that
/// carries none: no number that was read is exact.
/// @source JCGM 100:2008, 5.1.2
Joint jointOf(describe::Reader& read, const describe::Result& closure, std::span<const Rests> ways);

/// What the deck height rests on, by what stands on the case and by the crown; entered, a part that
/// is left out not among them. For rules.
std::vector<Rests> deckRestsOn(describe::Reader& read);

/// Adds an entry if it is given and not nought, as that of a part that is left out is.
void addPart(describe::Reader& read, std::vector<Rests>& ways, const describe::Input& part,
             double worth = 1.0);

/// Where to look: what was read at each cylinder where only some of them are off, otherwise what is
/// the same for all; the least certain first, those without a ± before all. Last, whether spacer or
/// gaskets are still those of the measurement.
describe::Sentence suspicion(describe::Reader& read, std::span<const Rests> ways,
                             bool ofOneCylinder);

}  // namespace strokewright::survey
