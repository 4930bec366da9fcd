#pragma once
/// A result as it stands in a row: the number, its ±, and the way to its working.

#include <QAbstractButton>

#include "core/describe/result.h"
#include "ui/document/document.h"

class QPainter;

namespace strokewright::ui {

/// "± 0.06" in the unit of the result, with its decimals; empty where that rounds to nothing: the
/// number beside it shows no more.
/// @param si [SI]
QString plusMinusText(const Taste& taste, const describe::Result& result, double si);
/// The same of a share in it, with up to two more decimals where it would show as nothing.
QString shareText(const Taste& taste, const describe::Result& result, double si);

/// What stands in a column ends at its right edge, under its head; what is too long for the column
/// wraps. A result that waits says what for; one that is refused or means nothing says so and tells
/// the reason in its tip. Pressing it (mouse, Space, Enter) asks for its working, or for the first
/// entry it waits for.
class ResultLabel final : public QAbstractButton {
  Q_OBJECT

 public:
  /// @param cylinder counted from 0; -1: all, one number when equal, else the range.
  ResultLabel(Document& document, int engine, const describe::Result& result, int cylinder = -1,
              QWidget* parent = nullptr);

  int engine() const { return engine_; }
  const describe::Result& result() const { return result_; }
  void setEngine(int engine);
  /// Shows by how much it differs from the same result of another engine; -1: the result itself.
  void setComparedWith(int engine);

  /// All it says, as plain text: "1.00 mm ± 0.06", "waits for bore, throw".
  QString shownText() const;

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;
  int heightForWidth(int width) const override;

 Q_SIGNALS:
  void whyAsked(int engine, const describe::Result* result, int cylinder);
  void entryAsked(int engine, const describe::Input* input);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Told {
    QString number;  ///< "1.00", empty: there is none
    QString whole;   ///< "1.00 mm"
    QString after;   ///< "± 0.06", or the words that stand instead of a number
    QString reason;  ///< of those words, for tip and voice
    bool operator==(const Told&) const = default;
  };

  void refresh();
  Told tellResult() const;
  Told tellDifference() const;
  int toldCylinder(int engine) const;
  const describe::Cell& cellOf(int engine) const;
  QString rangeText() const;
  QString tip() const;
  bool pointedAt() const;
  void paintWords(QPainter& painter);
  void paintNumber(QPainter& painter);
  void ask();

  Document& document_;
  int engine_;
  const describe::Result& result_;
  int cylinder_;
  int comparedWith_ = -1;
  Told told_;
};

}  // namespace strokewright::ui
