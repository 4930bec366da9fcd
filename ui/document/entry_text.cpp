#include "ui/document/entry_text.h"

#include <QRegularExpression>
#include <QStringList>
#include <algorithm>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Input;
using units::Kind;

bool digitAt(const QString& text, qsizetype at) {
  return at >= 0 && at < text.size() && text[at].isDigit();
}

/// Points and commas that touch a digit are decimal marks: numbers are read without groups.
QString withMark(QString text, const QString& mark) {
  for (qsizetype i = 0; i < text.size(); ++i) {
    const bool either = text[i] == QLatin1Char('.') || text[i] == QLatin1Char(',');
    if (either && (digitAt(text, i - 1) || digitAt(text, i + 1))) text.replace(i, 1, mark);
  }
  return text;
}

QString choiceText(const Input& input, const Entry& entry) {
  QStringList labels;
  for (const double value : entry.values) {
    labels += fromCore(input.choices[static_cast<std::size_t>(value)].label);
  }
  return labels.join(QStringLiteral("; "));
}

QString numberText(Kind kind, double si, const units::Style& style, Digits digits) {
  const QString all = fromCore(style.editable(kind, si));
  if (digits == Digits::All) return all;
  const int most = style.group[kind].decimals + 1;
  const QString decimals = all.section(fromCore(style.decimalMark), 1);
  return decimals.size() <= most
             ? all
             : fromCore(style.number(kind, si, units::unitsOf(kind).front().decimals + 1));
}

/// Without the unit at its end: the row says it already, and a narrow field would cut it. Not where
/// another unit stands before it: in "11 cm ± 0.5 mm" both are needed.
QString withoutUnit(const QString& text, const QString& unit) {
  const qsizetype rest = text.size() - unit.size();
  if (unit.isEmpty() || rest < 1 || !text.endsWith(unit)) return text;
  const QString number = text.left(rest);
  const bool otherUnit = std::ranges::any_of(
      number, [](QChar letter) { return letter.isLetter() || letter == u'"' || letter == u'″'; });
  const bool ends = number.back().isSpace() || number.back().isDigit();
  return ends && !otherUnit ? number.trimmed() : text;
}

/// A hyphen before a number that begins is a minus.
QString withMinus(QString text, const QString& minus) {
  static const QRegularExpression sign(QStringLiteral("(?<![^\\s;|±])-(?=[\\d.,])"));
  return text.replace(sign, minus);
}

bool saysPlusMinus(const QString& text) {
  return text.contains(QChar(u'±')) || text.contains(QStringLiteral("+-")) ||
         text.contains(QStringLiteral("+/-"));
}

}  // namespace

QString valuesText(const Input& input, const Entry& entry, const units::Style& style,
                   Digits digits) {
  const auto joined = [&](const std::vector<double>& numbers, const QString& mark) {
    QStringList texts;
    for (const double each : numbers) texts += numberText(input.kind, each, style, digits);
    return texts.join(mark);
  };
  if (entry.readings.empty()) return joined(entry.values, QStringLiteral("; "));
  QStringList ofValues;
  for (const std::vector<double>& readings : entry.readings) {
    ofValues += joined(readings, QStringLiteral(" | "));
  }
  return ofValues.join(QStringLiteral("; "));
}

QString entryText(const Input& input, const Entry& entry, const units::Style& style,
                  Digits digits) {
  const QString typed = fromCore(entry.text);
  if (!entry.known()) return typed;
  if (input.kind == Kind::Choice) return choiceText(input, entry);

  const bool stillMeant = !typed.isEmpty() && entry.unit == style.unit(input.kind);
  // Between whole numbers a comma parts: "1,3,4,2".
  const QString asRead =
      input.kind == Kind::Count ? typed : withMark(typed, fromCore(style.decimalMark));
  QString text = stillMeant ? asRead : valuesText(input, entry, style, digits);
  if (stillMeant && digits != Digits::All) {
    text = withoutUnit(withMinus(text, fromCore(style.minus)), fromCore(style.unit(input.kind)));
  }
  if (entry.plusMinus && !saysPlusMinus(text)) {
    const bool bare = text.trimmed().back().isDigit();  // a ± is in the unit that stands before it
    text += QStringLiteral(" ± ") + numberText(input.kind, *entry.plusMinus, style, digits);
    if (!bare) text += QChar(u' ') + fromCore(style.unit(input.kind));
  }
  return text;
}

}  // namespace strokewright::ui
