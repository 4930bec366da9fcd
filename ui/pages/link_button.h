#pragma once
/// A word that can be acted on.

#include <QLabel>
#include <QToolButton>

namespace strokewright::ui {

/// Flat, in the accent, reached by Tab; pressed by mouse, Space or Enter.
class LinkButton final : public QToolButton {
  Q_OBJECT

 public:
  explicit LinkButton(const QString& text, QWidget* parent = nullptr);

  QSize sizeHint() const override;

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
};

/// Said, but not first: caption of a group, unit, hint. Follows the palette.
class QuietLabel final : public QLabel {
  Q_OBJECT

 public:
  explicit QuietLabel(const QString& text, QWidget* parent = nullptr);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void takeInk();
  bool taking_ = false;
};

/// A thin line across. Decorative.
class Rule final : public QWidget {
  Q_OBJECT

 public:
  explicit Rule(QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;
};

/// Whether the window has few lines of text from top to foot, as half a screen or large text
/// leaves it: what stands around the work is then said shorter.
bool isLow(const QWidget& inside);

/// Changes the text, its accessible name included, only where it differs: no needless layout.
void say(QLabel& label, const QString& text);

}  // namespace strokewright::ui
