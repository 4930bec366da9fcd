#pragma once
/// No row of a list is seen cut: half a comma is read as a point.

#include <QObject>
#include <QSize>
#include <utility>
#include <vector>

class QScrollArea;

namespace strokewright::ui {

/// From so many to so many [px], both belonging to it.
using Rows = std::vector<std::pair<int, int>>;

/// The rows in what a layout has put beside each other, from the top down.
Rows rowsIn(const QWidget& laidOut);

/// A scroll area whose content is laid out in rows scrolls from row to row and shows no part of a
/// row, unless it is too low for one. What has the focus stays in sight when the area is resized.
/// The content may be exchanged.
class WholeRows final : public QObject {
  Q_OBJECT

 public:
  explicit WholeRows(QScrollArea& area);

  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void scrolled(int to);
  void keepFocusSeen();
  void fit();

  QScrollArea& area_;
  int top_ = 0;
};

}  // namespace strokewright::ui
