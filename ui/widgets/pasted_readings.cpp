#include "ui/widgets/pasted_readings.h"

#include <QRegularExpression>
#include <QStringList>

namespace strokewright::ui {
namespace {

QStringList parts(const QString& text, const QRegularExpression& between) {
  QStringList found;
  for (const QString& part : text.split(between)) {
    if (!part.trimmed().isEmpty()) found += part.trimmed();
  }
  return found;
}

}  // namespace

QString readingsText(const QString& block, int cylinders, bool list) {
  static const QRegularExpression betweenRows(QStringLiteral("[\\r\\n]+"));
  static const QRegularExpression betweenCells(QStringLiteral("\\t"));
  const QString betweenReadings = QStringLiteral(" | ");
  const QString betweenCylinders = QStringLiteral("; ");
  QStringList rows;
  for (const QString& row : parts(block, betweenRows)) {
    rows += parts(row, betweenCells).join(betweenReadings);
  }
  if (!list) return rows.join(betweenReadings);
  const bool oneEach =
      rows.size() == 1 && cylinders > 1 && rows.front().count(betweenReadings) + 1 == cylinders;
  return oneEach ? rows.front().replace(betweenReadings, betweenCylinders)
                 : rows.join(betweenCylinders);
}

}  // namespace strokewright::ui
