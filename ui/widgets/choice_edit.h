#pragma once
/// The field for a choice.

#include <QComboBox>
#include <QStringList>

#include "ui/document/document.h"

namespace strokewright::ui {

/// Shows one entry that is a choice; "–" stands for not entered, with the default beside it where
/// there is one. The wheel is ignored while it has no focus. A text in the file that is none of the
/// choices is shown as it is.
class ChoiceEdit final : public QComboBox {
  Q_OBJECT

 public:
  ChoiceEdit(Document& document, int engine, const describe::Input& input,
             QWidget* parent = nullptr);

  int engine() const { return engine_; }
  const describe::Input& input() const { return input_; }
  void setEngine(int engine);

  QSize sizeHint() const override;
  int heightForWidth(int width) const override;

 Q_SIGNALS:
  /// The focus came to it, or left: nullptr.
  void attention(const describe::Input* input);

 protected:
  bool event(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QStringList wantedItems() const;
  int roomFor(int width) const;
  void refresh();
  void choose(int item);

  Document& document_;
  int engine_;
  const describe::Input& input_;
  QStringList shownItems_;
};

}  // namespace strokewright::ui
