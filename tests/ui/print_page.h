#pragma once
/// A printed page, read back from its PDF by tools that know nothing of this program.

#include <gtest/gtest.h>

#include <QImage>
#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <QString>
#include <QStringList>
#include <vector>

namespace strokewright::ui {

inline QString ran(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  if (!process.waitForFinished() || process.exitCode() != 0) {
    ADD_FAILURE() << program.toStdString() << " (Debian: poppler-utils) did not work: "
                  << process.readAllStandardError().toStdString();
  }
  return QString::fromUtf8(process.readAllStandardOutput());
}

struct PrintedWord {
  QRectF box;  ///< [pt] from the upper left corner
  QString text;
};

inline std::vector<PrintedWord> printedWords(const QString& pdf) {
  static const QRegularExpression word(QStringLiteral(
      R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)</word>)re"));
  const QString page =
      ran(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), pdf, QStringLiteral("-")});
  std::vector<PrintedWord> words;
  for (auto it = word.globalMatch(page); it.hasNext();) {
    const QRegularExpressionMatch match = it.next();
    words.push_back({QRectF(QPointF(match.captured(1).toDouble(), match.captured(2).toDouble()),
                            QPointF(match.captured(3).toDouble(), match.captured(4).toDouble())),
                     match.captured(5)});
  }
  return words;
}

inline QString printedText(const QString& pdf) {
  return ran(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
}

/// The page as a picture of ten pixels to the millimetre.
inline QImage printedPicture(const QString& pdf) {
  const QString name = pdf + QStringLiteral("-picture");
  ran(QStringLiteral("pdftoppm"),
      {QStringLiteral("-r"), QStringLiteral("254"), QStringLiteral("-png"),
       QStringLiteral("-singlefile"), pdf, name});
  return QImage(name + QStringLiteral(".png"));
}

}  // namespace strokewright::ui
