#pragma once
/// The sheets on paper and in files.

#include <QImage>
#include <QPageLayout>
#include <QPageSize>
#include <QString>
#include <optional>

#include "core/assess/assess.h"
#include "core/sheet/kind.h"
#include "core/units/style.h"
#include "ui/document/taste.h"

class QPrinter;

namespace strokewright::ui {

/// What is asked of the sheet beside its numbers.
struct SheetOrder {
  int engine = -1;           ///< index into the project; -1: the target, or the first engine
  QString projectName = {};  ///< stands where the project has no name: that of its file
  Terms terms = Terms::British;
  sheet::SheetKind kind = sheet::SheetKind::Spec;
};

/// A4, or Letter where people measure in inches.
QPageSize::PageSizeId defaultPaper();

/// "A4" or "Letter", letter case ignored.
std::optional<QPageSize::PageSizeId> paperOf(QStringView name);

/// Writes the sheet of one engine as a PDF of exactly one page. The file appears whole or not at
/// all; one that was there before stays when writing fails. A plate that is larger than the paper
/// is drawn on a larger one, at full size all the same. Of a plate that cannot be drawn there is no
/// file, and none is printed.
///
/// @param error says why, in a sentence, when false is returned; may be nullptr.
bool writeSheetPdf(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                   QString* error);

/// The same page as a drawing, its size and all it says in millimetres.
bool writeSheetSvg(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                   QString* error);

/// The spacer plate alone, for machines: in millimetres and with a point, whatever the reader
/// likes. Fails where there is no plate to draw.
bool writePlateDxf(const assess::Assessment& assessment, const SheetOrder& order,
                   const QString& path, QString* error);

/// One of the above, by the ending of the path: .svg, .dxf, or else a PDF.
bool writeSheetFile(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path,
                    QString* error);

/// The first sentence for which the sheet must not leave for the bench; empty: nothing forbids it.
QString whatForbids(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order);

/// Prints the sheet on the whole of the printer's paper, a plate lying where it needs to. Fails
/// where a plate is larger than that.
/// @param error as above
bool printSheet(const assess::Assessment& assessment, const units::Style& style,
                const SheetOrder& order, QPrinter& printer, QString* error);

/// The paper the sheet takes: the one that is wanted, or for a plate that needs it one that lies
/// or is larger.
QPageLayout sheetPaper(const assess::Assessment& assessment, const units::Style& style,
                       const SheetOrder& order, QPageSize::PageSizeId paper);

/// Says in a sentence which paper a written sheet took instead of the one that was wanted, and why;
/// empty where it is the one wanted, and of a drawing without paper.
QString otherPaper(const assess::Assessment& assessment, const units::Style& style,
                   const SheetOrder& order, QPageSize::PageSizeId paper, const QString& path);

/// The page as a picture, laid out as it will be printed whatever the width.
/// @param width [px] of the whole page
QImage sheetPicture(const assess::Assessment& assessment, const units::Style& style,
                    const SheetOrder& order, QPageSize::PageSizeId paper, int width);

}  // namespace strokewright::ui
