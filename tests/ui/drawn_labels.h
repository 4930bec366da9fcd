#pragma once
/// Where the words of a scene stand once it is drawn.

#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <vector>

#include "ui/plots/plot_canvas.h"
#include "ui/plots/plot_theme.h"

namespace strokewright::ui {

/// As drawn on paper of this size.
inline std::vector<PlotLabel> labelsOf(PlotCanvas& canvas, const PlotScene& scene, QSize size) {
  canvas.setScene(scene);
  canvas.setTheme(paperTheme(QGuiApplication::font()));
  canvas.fit();
  QImage image(size, QImage::Format_RGB32);
  QPainter painter(&image);
  canvas.paint(painter, QRectF(image.rect()), 1.0);
  return canvas.labels();
}

}  // namespace strokewright::ui
