#pragma once
/// How boxes of words lie to points.

#include <QLineF>
#include <QPointF>
#include <QRectF>
#include <algorithm>

namespace strokewright::ui {

inline QPointF nearestIn(const QRectF& box, QPointF to) {
  return {std::clamp(to.x(), box.left(), box.right()), std::clamp(to.y(), box.top(), box.bottom())};
}

/// 0 within the box.
inline double distance(const QRectF& box, QPointF to) {
  return QLineF(to, nearestIn(box, to)).length();
}

}  // namespace strokewright::ui
