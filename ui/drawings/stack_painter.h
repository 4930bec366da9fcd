#pragma once
/// The deck enlarged: the stack layer by layer, thin layers all to one scale.

#include <QRectF>
#include <vector>

#include "ui/drawings/cylinder.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

struct StackOptions {
  const describe::Input* highlighted = nullptr;  ///< its dimension is drawn in the accent
};

/// Where the dimension of an entry was drawn.
struct StackMark {
  const describe::Input* input = nullptr;
  QRectF area;
};

struct StackDrawn {
  double enlargement = 0.0;  ///< across the stack
  std::vector<StackMark> marks;
};

/// Draws one side of the bore at top dead centre: crankcase, spacer, base gaskets, barrel, head
/// gasket and head on the left, the piston beside them. Layers, squish gap and deck clearance are
/// to one scale; what is long is broken. Sideways nothing is to scale.
StackDrawn paintStack(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                      const units::Style& style, const StackOptions& options);

/// Where the piston as it would be drawn has room for where its crown stands; if not, it is left to
/// the caption.
bool hasRoomForCrown(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                     const units::Style& style);

/// "0.02 below deck", "flush"; empty where it is not known.
QString crownInWords(const Cylinder& cylinder, const units::Style& style);

/// "Stack of cylinder 2 at top dead centre, 12 : 1", and where the crown stands unless the drawing
/// says it.
/// @param crown    as crownInWords() has it; empty: the drawing says it, or it is not known
QString stackCaption(double enlargement, const Cylinder& cylinder, const units::Style& style,
                     const QString& crown);

/// The stack read aloud, from the head down.
QString stackInWords(const Cylinder& cylinder, const units::Style& style);

}  // namespace strokewright::ui
