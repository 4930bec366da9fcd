#pragma once
/// The chain of dimensions of a stack: case on the left, crank on the right, what is left on top.

#include <QRectF>

#include "core/sheet/bench.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// Height that lets every link be read [mm].
double leastChainHeight(const sheet::Chain& chain);

/// Not to scale: each link is as high as its text needs, long ones higher. What takes away has no
/// height of its own: the one above it comes lower by it, and it is named where it was taken off.
void paintChain(Drafting& draft, const QRectF& area, const sheet::Chain& chain);

}  // namespace strokewright::ui
