#pragma once
/// Where the case and its barrels are measured, as a sketch.

#include <QRectF>

#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// The numbers by which the sheet calls what is measured; 0: not measured.
struct SurveyNumbers {
  int seat = 0;       ///< crank axis to barrel seat
  int across = 0;     ///< one side of the seat against the other
  int barrel = 0;     ///< seat to deck
  int direct = 0;     ///< crank axis to deck
  int deck = 0;       ///< crown to deck at four points
  int liner = 0;      ///< liner over the block face
  int width = 0;      ///< between the two readings of a seat
  int pitch = 0;      ///< from cylinder to cylinder
  int mainBores = 0;  ///< housing bores
};

/// Three views, none of them to scale: along the crankshaft with all cylinders, across it with both
/// sides of a seat where they are measured, and the deck from above.
void paintSurveySketch(Drafting& draft, const QRectF& area, int cylinders,
                       const SurveyNumbers& numbers);

}  // namespace strokewright::ui
