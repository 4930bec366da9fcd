#pragma once
/// What speaks against it, at the foot of the page it belongs to.

#include <QScrollArea>
#include <vector>

#include "ui/pages/page_description.h"

class QLabel;

namespace strokewright::ui {

class Desk;
class FindingLine;

/// The findings of all engines whose first entry is asked for on the page, each with the engines it
/// speaks of. A few are seen at once, the rest by scrolling; the height never jumps while one
/// types.
class FindingsFoot final : public QScrollArea {
  Q_OBJECT

 public:
  FindingsFoot(Desk& desk, const PageDescription& page, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 Q_SIGNALS:
  void relined();  ///< other lines: the order of Tab is to be set again

 protected:
  void changeEvent(QEvent* event) override;

 private:
  struct Line {
    QWidget* row;
    QLabel* engines;
    FindingLine* finding;
  };

  void addLine();
  int nameWidth() const;
  void refresh();
  QString enginesText(const std::vector<int>& engines) const;

  Desk& desk_;
  const PageDescription& page_;
  QLabel* nothing_;
  QWidget* body_;
  std::vector<Line> lines_;
  std::size_t shown_ = 0;  ///< how many lines are
};

}  // namespace strokewright::ui
