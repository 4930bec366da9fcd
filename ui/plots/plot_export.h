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

/// The data behind the scene as text, a heading with name and unit over each column.
/// @param separator between fields; a field that holds it is quoted (RFC 4180).
/// @param decimalMark '.' or ','; the minus sign is a hyphen, so that other programs read it.
QString plotText(const PlotScene& scene, QChar separator, QChar decimalMark);

/// Picture and tab-separated data for the clipboard.
std::unique_ptr<QMimeData> plotMimeData(const PlotScene& scene, QSize size);

/// Writes what the suffix says: png, svg, pdf (fonts embedded, no images) or csv (UTF-8 with a
/// mark; with a decimal comma fields are separated by semicolons).
/// @param size in 96ths of an inch.
/// @returns a sentence saying what went wrong, or an empty text.
QString savePlot(const PlotScene& scene, QSize size, const QString& path);

}  // namespace strokewright::ui
