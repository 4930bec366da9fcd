#pragma once
/// What a painter puts on paper, as an image.

#include <QImage>
#include <QPainter>

#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// White paper of so many pixels, four to the millimetre, with what is painted into all of it.
template <typename Paint>
QImage painted(int size, Paint paint) {
  QImage image(size, size, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  Medium medium;
  medium.millimetre = 4.0;
  medium.ink = DrawingInk::onPaper();
  Drafting draft(painter, medium);
  paint(draft, QRectF(image.rect()));
  return image;
}

}  // namespace strokewright::ui
