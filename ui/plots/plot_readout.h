#pragma once
/// The strip of words and numbers below a plot: headings, and one row for each thing read.

#include <QStringList>
#include <QWidget>
#include <vector>

class QGridLayout;
class QLabel;

namespace strokewright::ui {

class PlotReadout final : public QWidget {
  Q_OBJECT

 public:
  explicit PlotReadout(QWidget* parent = nullptr);

  /// The first column holds names, the others numbers; all rows are as long as the headings.
  void show(const QStringList& headings, const std::vector<QStringList>& rows);
  /// Sentences below the rows; empty: none.
  void setRemark(const QString& remark);

  /// Of this room it takes what it needs, and leaves a plot above it so many lines of text.
  bool leaves(int lines, const QSize& room) const;

  QString text() const;  ///< everything, as plain text

 private:
  void put(int row, int column, const QString& text);

  QGridLayout* grid_;
  QLabel* remark_;
  std::vector<std::vector<QLabel*>> cells_;
};

}  // namespace strokewright::ui
