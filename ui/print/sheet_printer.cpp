#include "ui/print/sheet_printer.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QSvgGenerator>
#include <algorithm>
#include <cmath>
#include <vector>

#include "core/plate/dxf.h"
#include "core/sheet/bench.h"
#include "core/sheet/sheet.h"
#include "ui/document/whole_file.h"
#include "ui/print/bench_painter.h"
#include "ui/print/sheet_painter.h"

namespace strokewright::ui {
namespace {

constexpr int kResolution = 1200;     // [dots per inch]
constexpr int kSvgResolution = 2540;  // a hundred to the millimetre
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

/// A sheet that knows what it says and on which paper.
class ReadySheet {
 public:
  ReadySheet(const assess::Assessment& assessment, const units::Style& style,
             const SheetOrder& order, QPageSize::PageSizeId wanted)
      : assessment_(assessment),
        style_(style),
        options_(optionsFor(order)),
        page_(wholePage(QPageSize(wanted), QPageLayout::Portrait)) {
    if (order.kind != sheet::SheetKind::Spec) {
      bench_ = benchSheetOf(assessment, style, options_, order.kind);
      page_ = takePaper(*bench_, wanted);
      crank_ = takeCrank(*bench_, assessment, style, options_);
    }
  }

  /// Why there is nothing to be written: of a plate that cannot be drawn no file is made.
  QString whyNot() const {
    if (!bench_ || bench_->kind != sheet::SheetKind::Plate || bench_->plate) return {};
    return tr("There is no plate to draw. %1").arg(fromCore(bench_->whyNoDrawing));
  }

  const QPageLayout& page() const { return page_; }
  QSizeF paper() const { return page_.fullRect(QPageLayout::Millimeter).size(); }  ///< [mm]

  /// @param millimetre [device units]
  void paint(QPainter& painter, double millimetre) const {
    if (bench_) {
      paintBenchSheet(painter, paper(), millimetre, *bench_, style_, crank_);
    } else {
      paintSheet(painter, paper(), millimetre, assessment_, style_, options_);
    }
  }

 private:
  const assess::Assessment& assessment_;
  const units::Style& style_;
  sheet::SheetOptions options_;
  std::optional<sheet::BenchSheet> bench_;
  CrankFigure crank_;
  QPageLayout page_;
};

bool fail(QString* error, const QString& sentence) {
  if (error != nullptr) *error = sentence;
  return false;
}

bool save(const QString& path, const QByteArray& content, QString* error) {
  const QString why = writeWhole(path, content);
  return why.isEmpty() || fail(error, tr("%1 cannot be written: %2.").arg(path, why));
}

/// What a machine reads is in millimetres, whatever its reader likes.
units::Style inMillimetres(units::Style style) {
  style.group = units::UnitGroup::metric();
  return style;
}

bool isDxf(const QString& path) {
  return path.endsWith(QLatin1String(".dxf"), Qt::CaseInsensitive);
}

QString titleOf(const assess::Assessment& assessment, const SheetOrder& order) {
  const std::string& name = assessment.project().name;
  return name.empty() ? order.projectName : fromCore(name);
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
  const ReadySheet sheet(assessment, style, order, paper);
  if (!sheet.whyNot().isEmpty()) return fail(error, sheet.whyNot());
  QByteArray content;
  QBuffer buffer(&content);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setPageLayout(sheet.page());
  writer.setResolution(kResolution);
  writer.setTitle(titleOf(assessment, order));
  writer.setCreator(QCoreApplication::applicationName() + QLatin1Char(' ') +
                    QCoreApplication::applicationVersion());
  QPainter painter;
  if (!painter.begin(&writer)) return fail(error, tr("The page could not be begun."));
  sheet.paint(painter, kResolution / kMillimetresPerInch);
  painter.end();
  return save(path, content, error);
}

bool writeSheetSvg(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                   QString* error) {
  const units::Style metric = inMillimetres(style);
  const ReadySheet sheet(assessment, metric, order, paper);
  if (!sheet.whyNot().isEmpty()) return fail(error, sheet.whyNot());
  const double millimetre = kSvgResolution / kMillimetresPerInch;
  QByteArray content;
  QBuffer buffer(&content);
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setResolution(kSvgResolution);
  generator.setSize((sheet.paper() * millimetre).toSize());
  generator.setViewBox(QRect(QPoint(), generator.size()));
  generator.setTitle(titleOf(assessment, order));
  QPainter painter;
  if (!painter.begin(&generator)) return fail(error, tr("The drawing could not be begun."));
  sheet.paint(painter, millimetre);
  painter.end();
  return save(path, content, error);
}

bool writePlateDxf(const assess::Assessment& assessment, const SheetOrder& order,
                   const QString& path, QString* error) {
  const sheet::BenchSheet sheet =
      benchSheetOf(assessment, {}, optionsFor(order), sheet::SheetKind::Plate);
  if (!sheet.plate) {
    return fail(error, tr("There is no plate to draw. %1").arg(fromCore(sheet.whyNoDrawing)));
  }
  std::vector<std::string> remarks{sheet.title, "Spacer plate 1 : 1 in millimetres"};
  remarks.insert(remarks.end(), sheet.notes.begin(), sheet.notes.end());
  return save(path, QByteArray::fromStdString(plate::dxf(*sheet.plate, remarks)), error);
}

bool writeSheetFile(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                    QString* error) {
  if (isDxf(path)) {
    return writePlateDxf(assessment, order, path, error);
  }
  const bool svg = path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
  return (svg ? writeSheetSvg : writeSheetPdf)(assessment, style, order, paper, path, error);
}

QString whatForbids(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order) {
  const std::vector<sheet::Objection> objections =
      sheetOf(assessment, style, optionsFor(order)).objections;
  const auto found = std::ranges::find_if(objections, [](const sheet::Objection& it) {
    return it.word == "forbids" || it.word == "refused";
  });
  return found == objections.end() ? QString() : fromCore(found->sentence);
}

bool printSheet(const assess::Assessment& assessment, const units::Style& style,
                const SheetOrder& order, QPrinter& printer, QString* error) {
  printer.setFullPage(true);
  const ReadySheet sheet(assessment, style, order, printer.pageLayout().pageSize().id());
  if (!sheet.whyNot().isEmpty()) return fail(error, sheet.whyNot());
  printer.setPageOrientation(sheet.page().orientation());
  const QSizeF page = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  if (sheet.paper().width() > page.width() + 1.0) {
    return fail(error, tr("The plate needs paper of %1: save it as PDF, or take that paper.")
                           .arg(sheet.page().pageSize().name()));
  }
  QPainter painter;
  if (!painter.begin(&printer)) return fail(error, tr("The printer did not take the page."));
  sheet.paint(painter, printer.resolution() / kMillimetresPerInch);
  painter.end();
  return true;
}

QPageLayout sheetPaper(const assess::Assessment& assessment, const units::Style& style,
                       const SheetOrder& order, QPageSize::PageSizeId paper) {
  if (order.kind != sheet::SheetKind::Plate) {
    return wholePage(QPageSize(paper), QPageLayout::Portrait);
  }
  return ReadySheet(assessment, style, order, paper).page();
}

QString otherPaper(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path) {
  if (isDxf(path)) return {};
  const QPageLayout taken = sheetPaper(assessment, style, order, paper);
  if (taken == wholePage(QPageSize(paper), QPageLayout::Portrait)) return {};
  return tr("%1 is on paper of %2: at full size the plate finds no room on %3 upright.")
      .arg(path, nameOf(taken), nameOf(wholePage(QPageSize(paper), QPageLayout::Portrait)));
}

QImage sheetPicture(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order, QPageSize::PageSizeId paper, int width) {
  const ReadySheet sheet(assessment, style, order, paper);
  const double zoom = width / sheet.paper().width();  // [px] to the millimetre
  constexpr double kMillimetre = kResolution / kMillimetresPerInch;
  QImage image(width, static_cast<int>(std::lround(sheet.paper().height() * zoom)),
               QImage::Format_RGB32);
  image.fill(Qt::white);
  // To the painter it is the printer's page, so that every letter takes the room it takes there;
  // what is painted is then made as small as the picture.
  image.setDotsPerMeterX(static_cast<int>(std::lround(kMillimetre * 1000.0)));
  image.setDotsPerMeterY(static_cast<int>(std::lround(kMillimetre * 1000.0)));
  QPainter painter(&image);
  painter.scale(zoom / kMillimetre, zoom / kMillimetre);
  sheet.paint(painter, kMillimetre);
  return image;
}

}  // namespace strokewright::ui
