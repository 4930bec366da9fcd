#pragma once
/// A plot as a picture, a file, or rows of numbers.

#include <QImage>
#include <QMimeData>
#include <QSize>
#include <QString>
#include <memory>

#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

/// The picture on white paper, twice the size asked for.
QImage plotImage(const PlotScene& scene, QSize size);

/// Picture and tab-separated data for the clipboard.
std::unique_ptr<QMimeData> plotMimeData(const PlotScene& scene, QSize size);

/// Writes what the suffix says: png, svg, pdf (fonts embedded, no images) or csv (as
/// describe::csv() has it in the reader's units, with the mark that tells UTF-8 before it).
/// @param size in 96ths of an inch.
/// @returns a sentence saying what went wrong, or an empty text.
QString savePlot(const PlotScene& scene, QSize size, const QString& path);

}  // namespace strokewright::ui
