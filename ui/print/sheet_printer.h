#pragma once
/// The one-page spec sheet on paper and in files.

#include <QPageSize>
#include <QString>

#include "core/assess/assess.h"
#include "core/units/style.h"

class QPrinter;

namespace strokewright::ui {

/// A4, or Letter where people measure in inches.
QPageSize::PageSizeId defaultPaper();

/// "A4" or "Letter", letter case ignored.
std::optional<QPageSize::PageSizeId> paperOf(QStringView name);

/// Writes the sheet of one engine as a PDF of exactly one page. The file appears whole or not at
/// all; one that was there before stays when writing fails.
///
/// @param engine index into the project; -1: the target, or the first engine where there is none.
/// @param error  says why, in a sentence, when false is returned.
bool writeSheetPdf(const assess::Assessment& assessment, const units::Style& style, int engine,
                   QPageSize::PageSizeId paper, const QString& path, QString* error);

/// Paints the sheet on a printer that has been set up: paper, margins none, portrait.
bool printSheet(const assess::Assessment& assessment, const units::Style& style, int engine,
                QPrinter& printer, QString* error);

}  // namespace strokewright::ui
