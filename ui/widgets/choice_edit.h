#pragma once
/// The field for a choice.

#include <QComboBox>
#include <QElapsedTimer>
#include <QStringList>

#include "ui/document/document.h"

namespace strokewright::ui {

/// Shows one entry that is a choice; "–" stands for not entered, with the default beside it where
/// there is one. The wheel is ignored while it has no focus, and up and down go to the next field
/// as they do from a number: Space or Alt+Down opens the list, letters choose, and blanks belong to
/// the answer while it is being typed. A text that is none of the choices is shown as it is,
/// marked.
class ChoiceEdit final : public QComboBox {
  Q_OBJECT

 public:
  ChoiceEdit(Document& document, const EntryPlace& place, QWidget* parent = nullptr);
  ChoiceEdit(Document& document, int engine, const describe::Input& input,
             QWidget* parent = nullptr)
      : ChoiceEdit(document, EntryPlace(engine, input), parent) {}

  const EntryPlace& place() const { return place_; }
  int engine() const { return place_.engine; }
  const describe::Input& input() const { return *place_.input; }
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
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QStringList wantedItems() const;
  int roomFor(int width) const;
  const describe::Finding* wrong() const;
  QString shownText() const;
  void refresh();
  void choose(int item);
  bool beingTyped() const;
  void search(const QString& typed);

  Document& document_;
  EntryPlace place_;
  QStringList shownItems_;
  QString shown_;
  QElapsedTimer typed_;  ///< since the last letter
};

}  // namespace strokewright::ui
