#include "ui/print/sheet_printer.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <cmath>

#include "core/sheet/sheet.h"
#include "ui/document/whole_file.h"
#include "ui/print/sheet_painter.h"

namespace strokewright::ui {
namespace {

constexpr int kResolution = 1200;  // [dots per inch]
constexpr double kMillimetresPerInch = 25.4;

QString tr(const char* text) { return QCoreApplication::translate("SheetPrinter", text); }

sheet::SheetOptions optionsFor(const SheetOrder& order) {
  sheet::SheetOptions options{
      .engine = order.engine,
      .date = QDate::currentDate().toString(Qt::ISODate).toStdString(),
      .programVersion = QCoreApplication::applicationVersion().toStdString(),
      .projectName = order.projectName.toStdString()};
  if (order.terms != Terms::British) {
    options.words = [terms = order.terms](const std::string& text) {
      return inTerms(fromCore(text), terms).toStdString();
    };
  }
  return options;
}

bool fail(QString* error, const QString& sentence) {
  if (error != nullptr) *error = sentence;
  return false;
}

QPageLayout wholePage(QPageSize::PageSizeId paper) {
  QPageLayout layout(QPageSize(paper), QPageLayout::Portrait, QMarginsF());
  layout.setMode(QPageLayout::FullPageMode);
  return layout;
}

}  // namespace

QPageSize::PageSizeId defaultPaper() {
  return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? QPageSize::Letter
                                                                    : QPageSize::A4;
}

std::optional<QPageSize::PageSizeId> paperOf(QStringView name) {
  if (name.compare(u"A4", Qt::CaseInsensitive) == 0) return QPageSize::A4;
  if (name.compare(u"Letter", Qt::CaseInsensitive) == 0) return QPageSize::Letter;
  return std::nullopt;
}

bool writeSheetPdf(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                   QString* error) {
  QByteArray content;
  QBuffer buffer(&content);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setPageLayout(wholePage(paper));
  writer.setResolution(kResolution);
  const std::string& name = assessment.project().name;
  writer.setTitle(name.empty() ? order.projectName : fromCore(name));
  writer.setCreator(QCoreApplication::applicationName() + QLatin1Char(' ') +
                    QCoreApplication::applicationVersion());
  QPainter painter;
  if (!painter.begin(&writer)) return fail(error, tr("The page could not be begun."));
  paintSheet(painter, QPageSize(paper).size(QPageSize::Millimeter),
             kResolution / kMillimetresPerInch, assessment, style, optionsFor(order));
  painter.end();
  const QString why = writeWhole(path, content);
  if (!why.isEmpty()) return fail(error, tr("%1 cannot be written: %2.").arg(path, why));
  return true;
}

bool printSheet(const assess::Assessment& assessment, const units::Style& style,
                const SheetOrder& order, QPrinter& printer, QString* error) {
  printer.setFullPage(true);
  printer.setPageOrientation(QPageLayout::Portrait);
  QPainter painter;
  if (!painter.begin(&printer)) return fail(error, tr("The printer did not take the page."));
  paintSheet(painter, printer.pageLayout().fullRect(QPageLayout::Millimeter).size(),
             printer.resolution() / kMillimetresPerInch, assessment, style, optionsFor(order));
  painter.end();
  return true;
}

QImage sheetPicture(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order, QPageSize::PageSizeId paper, int width) {
  const QSizeF page = QPageSize(paper).size(QPageSize::Millimeter);
  const double millimetre = width / page.width();
  QImage image(width, static_cast<int>(std::lround(page.height() * millimetre)),
               QImage::Format_RGB32);
  image.fill(Qt::white);
  // The device says how large it is on paper, so that points come out as points.
  image.setDotsPerMeterX(static_cast<int>(std::lround(millimetre * 1000.0)));
  image.setDotsPerMeterY(static_cast<int>(std::lround(millimetre * 1000.0)));
  QPainter painter(&image);
  paintSheet(painter, page, millimetre, assessment, style, optionsFor(order));
  return image;
}

}  // namespace strokewright::ui
