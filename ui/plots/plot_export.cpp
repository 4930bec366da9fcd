#include "ui/plots/plot_export.h"

#include <QBuffer>
#include <QFontInfo>
#include <QGuiApplication>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <cmath>
#include <iterator>

#include "ui/document/whole_file.h"
#include "ui/plots/plot_canvas.h"

namespace strokewright::ui {
namespace {

constexpr int kPixelsPerInch = 96;

/// A concrete family of a size in 96ths of an inch, so that every program shows the same.
QFont exportFont() {
  QFont font = QGuiApplication::font();
  font.setFamily(QFontInfo(font).family());
  font.setPixelSize(12);
  return font;
}

void paintWhole(const PlotScene& scene, QPaintDevice& device, QSize size, double pixel) {
  QPainter painter(&device);
  painter.setRenderHint(QPainter::Antialiasing);
  paintPlot(scene, paperTheme(exportFont()), painter,
            QRectF(0.0, 0.0, size.width() * pixel, size.height() * pixel), pixel);
}

QByteArray svgOf(const PlotScene& scene, QSize size) {
  QBuffer buffer;
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setSize(size);
  generator.setViewBox(QRect(QPoint(0, 0), size));
  generator.setResolution(kPixelsPerInch);
  paintWhole(scene, generator, size, 1.0);
  return buffer.data();
}

QByteArray pdfOf(const PlotScene& scene, QSize size) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setResolution(kPixelsPerInch);
  writer.setPageSize(
      QPageSize(QSizeF(size) / kPixelsPerInch, QPageSize::Inch, {}, QPageSize::ExactMatch));
  writer.setPageMargins({0.0, 0.0, 0.0, 0.0});
  paintWhole(scene, writer, size, 1.0);
  return buffer.data();
}

QByteArray pngOf(const PlotScene& scene, QSize size) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  plotImage(scene, size).save(&buffer, "PNG");
  return buffer.data();
}

std::vector<describe::HeadedColumn> columnsOf(const PlotScene& scene) {
  return scene.table ? scene.table(scene) : std::vector<describe::HeadedColumn>();
}

QByteArray csvOf(const PlotScene& scene) {
  return "\xEF\xBB\xBF" + QByteArray::fromStdString(describe::csv(columnsOf(scene), scene.style));
}

}  // namespace

PlotTable::operator std::vector<describe::HeadedColumn>() const {
  std::vector<describe::HeadedColumn> headed;
  for (const Column& column : columns) {
    describe::HeadedColumn& it = headed.emplace_back();
    it.name = column.heading.toStdString();
    it.decimals = column.decimals;
    it.cells.numbers =
        Eigen::Map<const Eigen::ArrayXd>(column.numbers.data(), std::ssize(column.numbers));
    for (const QString& words : column.words) it.cells.words.push_back(words.toStdString());
  }
  return headed;
}

QImage plotImage(const PlotScene& scene, QSize size) {
  constexpr int kTwice = 2;
  QImage image(size * kTwice, QImage::Format_RGB32);
  image.setDotsPerMeterX(static_cast<int>(std::lround(kTwice * kPixelsPerInch / 0.0254)));
  image.setDotsPerMeterY(image.dotsPerMeterX());
  image.fill(Qt::white);
  paintWhole(scene, image, size, kTwice);
  return image;
}

std::unique_ptr<QMimeData> plotMimeData(const PlotScene& scene, QSize size) {
  auto data = std::make_unique<QMimeData>();
  data->setImageData(plotImage(scene, size));
  data->setData(QStringLiteral("image/svg+xml"), svgOf(scene, size));
  data->setText(QString::fromStdString(describe::tabbed(columnsOf(scene), scene.style)));
  return data;
}

QString savePlot(const PlotScene& scene, QSize size, const QString& path) {
  const auto ends = [&](const char* suffix) {
    return path.endsWith(QLatin1String(suffix), Qt::CaseInsensitive);
  };
  QByteArray content;
  if (ends(".png")) {
    content = pngOf(scene, size);
  } else if (ends(".svg")) {
    content = svgOf(scene, size);
  } else if (ends(".pdf")) {
    content = pdfOf(scene, size);
  } else if (ends(".csv")) {
    content = csvOf(scene);
  } else {
    return QObject::tr("Nothing was saved: the name has to end in .png, .svg, .pdf or .csv.");
  }
  const QString why = writeWhole(path, content);
  return why.isEmpty() ? QString() : QObject::tr("Nothing was saved: %1.").arg(why);
}

}  // namespace strokewright::ui
