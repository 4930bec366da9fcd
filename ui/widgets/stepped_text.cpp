#include "ui/widgets/stepped_text.h"

#include <QRegularExpression>

namespace strokewright::ui {
namespace {

/// So many digits are exact in a 64-bit number.
constexpr qsizetype kMostDigits = 17;

/// A plain number that stands alone: no fraction, no exponent.
const QRegularExpression& plainNumber() {
  static const QRegularExpression pattern(
      QStringLiteral("(?<![\\d./,eE-])([-+−]?)(\\d*)([.,]?)(\\d*)(?![\\d./,]|[- ]\\d+/|[eE]\\d)"));
  return pattern;
}

/// The number under the cursor, else the first one.
QRegularExpressionMatch numberAt(const QString& text, int cursor) {
  QRegularExpressionMatch first;
  QRegularExpressionMatchIterator all = plainNumber().globalMatch(text);
  while (all.hasNext()) {
    const QRegularExpressionMatch match = all.next();
    if (match.capturedLength(2) + match.capturedLength(4) == 0) continue;
    if (!first.hasMatch()) first = match;
    if (match.capturedStart() <= cursor && cursor <= match.capturedEnd()) return match;
  }
  return first;
}

QString written(qlonglong units, qsizetype decimals, const QString& mark, const QString& minus) {
  QString digits = QString::number(units < 0 ? -units : units).rightJustified(decimals + 1, u'0');
  digits.insert(digits.size() - decimals, mark);
  return units < 0 ? minus + digits : digits;
}

}  // namespace

QString steppedText(const QString& text, int cursor, int by) {
  const QRegularExpressionMatch match = numberAt(text, cursor);
  if (!match.hasMatch()) return text;
  const QString digits = match.captured(2) + match.captured(4);
  if (digits.size() > kMostDigits) return text;

  const QString sign = match.captured(1);
  const bool negative = !sign.isEmpty() && sign != QStringLiteral("+");
  const qlonglong units = negative ? -digits.toLongLong() : digits.toLongLong();
  const QString minus = negative ? sign : QStringLiteral("-");
  QString stepped = text;
  return stepped.replace(match.capturedStart(), match.capturedLength(),
                         written(units + by, match.capturedLength(4), match.captured(3), minus));
}

}  // namespace strokewright::ui
