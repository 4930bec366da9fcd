#pragma once
/// Every limit on the revs as a line of its own, and what would buy more revs.

#include <QTimer>
#include <QWidget>
#include <vector>

#include "core/describe/input.h"
#include "core/describe/result.h"

class QGridLayout;
class QLabel;

namespace strokewright::ui {

class Desk;
class LinkButton;
class QuietLabel;

/// Limit, the number used, where it comes from, and the speed it gives for donor and subject, and
/// for as many variants as there is room. The number leads to its field; another engine's limit is
/// named where it differs.
class LimitLines final : public QWidget {
  Q_OBJECT

 public:
  explicit LimitLines(Desk& desk, QWidget* parent = nullptr);

  /// Donor, subject, and the variants shown; -1: there is none.
  const std::vector<int>& engines() const { return engines_; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  struct Line {
    QString name;  ///< "ring flutter"
    const describe::Input* limit;
    bool donors;  ///< the limit is the donor's entry
    const describe::Result* ceiling;
    LinkButton* number = nullptr;
    QLabel* origin = nullptr;
  };

  std::vector<int> enginesWithRoom() const;
  void rebuild();
  void addLine(QGridLayout& grid, Line line);
  void addSpeed(QGridLayout& grid, int column, int engine, const describe::Result& ceiling);
  void refresh();
  QStringList otherLimits(const Line& line, const QString& number) const;

  Desk& desk_;
  std::vector<int> engines_;        ///< the lines were made for
  std::vector<QuietLabel*> heads_;  ///< of the variants, whose names may change
  std::vector<Line> lines_;
};

/// For each entry the number that alone would raise the rev ceiling by 500 rpm.
class NextRevs final : public QWidget {
  Q_OBJECT

 public:
  explicit NextRevs(Desk& desk, QWidget* parent = nullptr);

  QString shownText() const;

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void refresh();

  Desk& desk_;
  QLabel* heading_;
  QLabel* text_;
  QTimer later_;  ///< solving waits until the edit is on the screen
};

}  // namespace strokewright::ui
