#include "ui/document/taste.h"

#include "core/describe/wording.h"

#include <QRegularExpression>
#include <QSettings>
#include <array>

namespace strokewright::ui {
namespace {

using units::Kind;
using units::UnitGroup;

constexpr int kMostRecentFiles = 10;

struct Pair {
  Pair(const QString& britishWord, const QString& americanWord)
      : british(britishWord),
        american(americanWord),
        wholeWord(QStringLiteral("\\b%1(?=s?\\b)").arg(QRegularExpression::escape(british)),
                  QRegularExpression::CaseInsensitiveOption) {}

  QString british;
  QString american;
  QRegularExpression wholeWord;
};

/// Longer words first, so that "bushes" is not taken for a "bush".
const std::vector<Pair>& pairs() {
  static const std::vector<Pair> all = {
      {QStringLiteral("gudgeon pin"), QStringLiteral("wrist pin")},
      {QStringLiteral("gudgeon-pin"), QStringLiteral("wrist-pin")},
      {QStringLiteral("con-rod"), QStringLiteral("rod")},
      {QStringLiteral("circlip"), QStringLiteral("retaining clip")},
      {QStringLiteral("bush"), QStringLiteral("bushing")},
      {QStringLiteral("inlet"), QStringLiteral("intake")},
      {QStringLiteral("liner"), QStringLiteral("sleeve")},
      {QStringLiteral("catalogue"), QStringLiteral("catalog")},
      {QStringLiteral("centres"), QStringLiteral("centers")},
      {QStringLiteral("centre"), QStringLiteral("center")},
      {QStringLiteral("aluminium"), QStringLiteral("aluminum")},
      {QStringLiteral("litres"), QStringLiteral("liters")},
      {QStringLiteral("litre"), QStringLiteral("liter")},
      {QStringLiteral("metres"), QStringLiteral("meters")},
      {QStringLiteral("metre"), QStringLiteral("meter")},
  };
  return all;
}

QString withFirstOf(const QString& word, const QString& like) {
  return like.front().isUpper() ? word.front().toUpper() + word.mid(1) : word;
}

QString replaced(QString text, const Pair& pair) {
  if (!text.contains(pair.british, Qt::CaseInsensitive)) return text;  // most texts, and quicker
  for (qsizetype at = 0;;) {
    const QRegularExpressionMatch match = pair.wholeWord.match(text, at);
    if (!match.hasMatch()) return text;
    const QString word = withFirstOf(pair.american, match.captured());
    text.replace(match.capturedStart(), match.capturedLength(), word);
    at = match.capturedStart() + word.size();
  }
}

bool customary(const QLocale& locale) {
  return locale.measurementSystem() == QLocale::ImperialUSSystem;
}

QString unitKey(Kind kind) { return QStringLiteral("units/") + fromCore(units::kindName(kind)); }

constexpr auto kTermsKey = "terms";
constexpr auto kRecentKey = "recent_files";

QString termsWord(Terms terms) {
  return terms == Terms::American ? QStringLiteral("american") : QStringLiteral("british");
}

}  // namespace

QString fromCore(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString inSentence(const QString& label) {
  return fromCore(describe::inSentence(label.toStdString()));
}

QString inTerms(const QString& british, Terms terms) {
  if (terms == Terms::British) return british;
  QString text = british;
  for (const Pair& pair : pairs()) {
    text = replaced(text, pair);
  }
  return text;
}

Taste::Taste(const QLocale& locale, QObject* parent) : QObject(parent), locale_(locale) {
  style_.group = customary(locale) ? UnitGroup::inchPound() : UnitGroup::metric();
  style_.decimalMark = locale.decimalPoint() == QStringLiteral(",") ? "," : ".";
  terms_ = customary(locale) ? Terms::American : Terms::British;
  readSettings();
}

void Taste::readSettings() {
  const QSettings settings;
  for (std::size_t i = 0; i < units::kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    const QString name = settings.value(unitKey(kind)).toString();
    if (!name.isEmpty()) style_.group.choose(kind, name.toStdString());
  }
  const QString terms = settings.value(QLatin1StringView(kTermsKey)).toString();
  if (!terms.isEmpty()) {
    terms_ = terms == termsWord(Terms::American) ? Terms::American : Terms::British;
  }
  recentFiles_ = settings.value(QLatin1StringView(kRecentKey)).toStringList();
}

void Taste::setGroup(const UnitGroup& group) {
  if (group == style_.group) return;
  style_.group = group;
  QSettings settings;
  for (std::size_t i = 0; i < units::kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    settings.setValue(unitKey(kind), unit(kind));
  }
  Q_EMIT changed();
}

void Taste::setUnit(Kind kind, const QString& unitName) {
  UnitGroup group = style_.group;
  if (group.choose(kind, unitName.toStdString())) setGroup(group);
}

void Taste::setTerms(Terms terms) {
  if (terms == terms_) return;
  terms_ = terms;
  QSettings().setValue(QLatin1StringView(kTermsKey), termsWord(terms));
  Q_EMIT changed();
}

QString Taste::shown(Kind kind, double si, int decimals) const {
  return fromCore(style_.text(kind, si, decimals));
}

QString Taste::number(Kind kind, double si, int decimals) const {
  return fromCore(style_.number(kind, si, decimals));
}

QString Taste::difference(Kind kind, double si, int decimals) const {
  return fromCore(style_.difference(kind, si, decimals));
}

QString Taste::inOtherSystem(Kind kind, double si) const {
  units::Style other = style_;
  for (const UnitGroup& group : {UnitGroup::metric(), UnitGroup::inchPound()}) {
    if (group[kind].name == style_.unit(kind)) continue;
    other.group = group;
    return fromCore(other.text(kind, si));
  }
  return {};
}

QString Taste::unit(Kind kind) const { return fromCore(style_.unit(kind)); }

QString Taste::label(const describe::Input& input) const { return inTerms(fromCore(input.label)); }

QString Taste::label(const describe::Result& result) const {
  return inTerms(fromCore(result.name));
}

QString Taste::value(const describe::Input& input, double si) const {
  return inTerms(fromCore(describe::wordValue(input, si, style_)));
}

QString Taste::value(const describe::Result& result, double si) const {
  return inTerms(fromCore(describe::wordValue(result, si, style_)));
}

QString Taste::sentence(const describe::Sentence& says) const {
  return inTerms(fromCore(describe::word(says, style_)));
}

QString Taste::sentence(const describe::RefusedBecause& because) const {
  return inTerms(fromCore(describe::word(because, style_)));
}

void Taste::noteFile(const QString& path) {
  recentFiles_.removeAll(path);
  recentFiles_.prepend(path);
  while (recentFiles_.size() > kMostRecentFiles) recentFiles_.removeLast();
  keepRecentFiles();
}

void Taste::forgetFile(const QString& path) {
  recentFiles_.removeAll(path);
  keepRecentFiles();
}

void Taste::keepRecentFiles() {
  QSettings().setValue(QLatin1StringView(kRecentKey), recentFiles_);
  Q_EMIT recentFilesChanged();
}

}  // namespace strokewright::ui
