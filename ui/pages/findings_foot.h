#pragma once
/// What speaks against it, at the foot of the page it belongs to.

#include <QScrollArea>
#include <vector>

#include "ui/pages/page_description.h"

class QLabel;

namespace strokewright::ui {

class Desk;
class FindingLine;
class LinkButton;

/// The findings of all engines that belong to the page, each with the engines it speaks of, and a
/// link that leads to those that speak of its entries and belong elsewhere. It is as high as they
/// are, up to a few lines; how many more there are is said below them, by a link that goes on to
/// the next.
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
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Line {
    QWidget* row;
    QLabel* engines;
    FindingLine* finding;
  };

  /// As much of the lines as there is room for.
  struct Seen {
    int height;  ///< [px]
    bool all;
  };

  void addLine();
  int nameWidth() const;
  std::vector<int> heights() const;
  Seen seen() const;
  int footHeight() const;
  void arrange();
  void sayMore();
  void goOn();
  void sayElsewhere(bool behindOthers);
  void refresh();
  QString enginesText(const std::vector<int>& engines) const;

  Desk& desk_;
  const PageDescription& page_;
  QLabel* nothing_;
  QWidget* beneath_;  ///< the lines: what leads on
  LinkButton* more_;
  LinkButton* elsewhere_;
  QWidget* body_;
  std::vector<Line> lines_;
  std::size_t shown_ = 0;  ///< how many lines are
};

}  // namespace strokewright::ui
