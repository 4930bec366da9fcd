#pragma once
/// One sentence above the page with what can be done about it; never a modal box.

#include <QWidget>
#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace strokewright::ui {

class NoticeBar final : public QWidget {
  Q_OBJECT

 public:
  struct Key {
    QString says;
    std::function<void()> act;  ///< empty: only closes the bar
  };

  explicit NoticeBar(QWidget* parent = nullptr);

  /// Shows the sentence; each key closes the bar, then acts. Without keys there is "understood".
  void tell(const QString& sentence, std::vector<Key> keys = {});
  QString shownText() const;

  /// Lies over the foot of its parent, so that nothing below the pointer moves.
  void lieAtTheFoot();

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QLabel* sentence_;
  QHBoxLayout* keys_;
};

}  // namespace strokewright::ui
