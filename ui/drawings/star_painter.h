#pragma once
/// The throws of a crank as a star, seen from the end that was declared, and the firings of a cycle
/// on a bar.

#include <QRectF>
#include <QString>
#include <vector>

#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// One throw of the star. Angles [rad] in the sense of rotation.
struct StarThrow {
  double ahead = 0.0;  ///< of the first throw, which points up
  double axis = 0.0;   ///< of its cylinder, from that of the first
  QString name;        ///< number of its cylinder
};

struct Star {
  std::vector<StarThrow> throws;
  bool clockwise = true;               ///< as seen
  bool senseSaid = true;               ///< else the arrow is drawn as what is assumed
  QString seenFrom = {};               ///< said below it: "seen from the output end, turns …"
  bool angles = true;                  ///< written on the throws; without them all is drawn closer
  QString mark = QStringLiteral(".");  ///< of decimals
};

/// Firings of one cycle.
struct FiringBar {
  struct Firing {
    double at = 0.0;  ///< [rad] of crank
    QString name;
  };
  std::vector<Firing> firings;         ///< as they come
  double cycle = 0.0;                  ///< [rad]
  QString name;                        ///< of the engine
  Qt::PenStyle line = Qt::SolidLine;   ///< the engine's own, as in every picture
  QString mark = QStringLiteral(".");  ///< of decimals
};

/// Throws, cylinder axes as centre lines, the sense of rotation as an arrow where no throw points.
/// Throws that point the same way share a line.
void paintStar(Drafting& draft, const QRectF& room, const Star& star);

/// One bar under the other, all to one scale; intervals are written between the firings.
void paintFirings(Drafting& draft, const QRectF& room, const std::vector<FiringBar>& bars);

}  // namespace strokewright::ui
