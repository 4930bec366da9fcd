#pragma once
/// How one builder likes to read: units kind by kind, number marks, British or American terms, and
/// the files he opened last. It lives in the settings, outside project and undo.

#include <QLocale>
#include <QObject>
#include <QString>
#include <QStringList>
#include <string_view>

#include "core/describe/wording.h"
#include "core/units/style.h"

namespace strokewright::ui {

/// Text of the core as Qt has it.
QString fromCore(std::string_view text);

/// Which of two words of the trade is shown: gudgeon pin or wrist pin.
enum class Terms { British, American };

/// British text in these terms.
QString inTerms(const QString& british, Terms terms);

class Taste final : public QObject {
  Q_OBJECT

 public:
  /// Reads the settings. What was never chosen follows the locale: inch-pound units and American
  /// terms where people measure in US customary units, the decimal mark always.
  explicit Taste(const QLocale& locale = QLocale(), QObject* parent = nullptr);

  const units::Style& style() const { return style_; }
  const QLocale& locale() const { return locale_; }
  Terms terms() const { return terms_; }

  /// Takes a whole group at once (metric, inch-pound).
  void setGroup(const units::UnitGroup& group);
  /// One kind alone. A name that the kind does not have changes nothing.
  void setUnit(units::Kind kind, const QString& unitName);
  void setTerms(Terms terms);

  /// The number with its unit, "98.20 mm".
  /// @param si       [SI] finite
  /// @param decimals negative: as many as the unit has by default
  QString shown(units::Kind kind, double si, int decimals = -1) const;
  QString number(units::Kind kind, double si, int decimals = -1) const;      ///< without the unit
  QString difference(units::Kind kind, double si, int decimals = -1) const;  ///< with its sign
  /// The number with its unit in the other system of measurement; empty where both use one unit.
  QString inOtherSystem(units::Kind kind, double si) const;
  QString unit(units::Kind kind) const;  ///< empty for counts, ratios and choices

  QString label(const describe::Input& input) const;  ///< "Gudgeon pin diameter"
  QString label(const describe::Result& result) const;
  /// A value as text: a choice by its label, everything else with its unit.
  QString value(const describe::Input& input, double si) const;
  QString value(const describe::Result& result, double si) const;
  QString sentence(const describe::Sentence& says) const;
  QString sentence(const describe::RefusedBecause& because) const;
  /// British text in the chosen terms.
  QString inTerms(const QString& british) const { return ui::inTerms(british, terms_); }

  /// Up to ten paths, the latest first; a file that is gone stays until it is forgotten.
  QStringList recentFiles() const { return recentFiles_; }
  void noteFile(const QString& path);
  void forgetFile(const QString& path);

 Q_SIGNALS:
  void changed();  ///< units or terms: whatever shows numbers shows them anew
  void recentFilesChanged();

 private:
  void readSettings();
  void keepRecentFiles();

  QLocale locale_;
  units::Style style_;
  Terms terms_ = Terms::British;
  QStringList recentFiles_;
};

/// "Bore" in the middle of a sentence: "bore"; "TDC" stays.
QString inSentence(const QString& label);

}  // namespace strokewright::ui
