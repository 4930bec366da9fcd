#pragma once
/// Refreshes a view when the project or the reader's taste changes, but only while it can be seen.

#include <QObject>
#include <functional>

class QWidget;

namespace strokewright::ui {

class Document;
class Taste;

class Refresher final : public QObject {
  Q_OBJECT

 public:
  /// @param view what shows the project; the refresher belongs to it.
  Refresher(Document& document, Taste& taste, QWidget& view, std::function<void()> refresh);

  /// What is shown has changed: refreshes now, or when the view is next seen.
  void changed();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget& view_;
  std::function<void()> refresh_;
  bool stale_ = true;
};

}  // namespace strokewright::ui
