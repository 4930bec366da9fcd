#pragma once
/// The number field: a line to write on.

#include <QLineEdit>
#include <memory>

#include "ui/document/document.h"

class QAbstractButton;
class QMenu;
class QPainter;
class QTextLayout;

namespace strokewright::ui {

/// Shows one entry and hands each keystroke to the document.
///
/// A point and a comma are both the decimal mark in every locale, nothing is dropped while typing,
/// and what was typed is what is kept. The wheel never changes it. A field that was only visited
/// writes nothing. Up and down go to the number above and below in the same column, Enter to the
/// one below; Alt+Up and Alt+Down step the last digit. Escape takes back what was typed since the
/// field was entered; undo and redo are the document's. Several readings pasted from a table
/// become a list. What speaks against the entry stands beside it as mark and word.
///
/// A text that is too long for one line wraps, with the focus too. At the right edge one
/// letter says where the number comes from; with the focus or the pointer it is a key that opens
/// the choice of origin and ±, as Alt+Enter does. What a typed text means in the reader's unit, or
/// an entry in inches in millimetres, stands behind it where there is room.
class QuantityEdit final : public QLineEdit {
  Q_OBJECT

 public:
  QuantityEdit(Document& document, const EntryPlace& place, QWidget* parent = nullptr);
  QuantityEdit(Document& document, int engine, const describe::Input& input,
               QWidget* parent = nullptr)
      : QuantityEdit(document, EntryPlace(engine, input), parent) {}

  const EntryPlace& place() const { return place_; }
  int engine() const { return place_.engine; }
  const describe::Input& input() const { return *place_.input; }
  /// The same row of another engine.
  void setEngine(int engine);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;
  int heightForWidth(int width) const override;

 Q_SIGNALS:
  /// The pointer or the focus came to it (a drawing shows the dimension), or left: nullptr.
  void attention(const describe::Input* input);

 protected:
  bool event(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  /// What stands beside the text.
  struct Beside {
    QString echo;        ///< "= 66.68 mm"
    QString mark;        ///< "!" or "✕"; empty: nothing speaks against it
    QString word;        ///< "objects", "forbids", "not read"
    bool heavy = false;  ///< forbids
    bool known = false;  ///< there is a number, which comes from somewhere
    describe::Origin origin = describe::Origin::NotSaid;
    bool operator==(const Beside&) const = default;
  };

  void typeText(const QString& text);
  void show(const QString& text);
  void refresh();
  Beside findBeside() const;
  QString inMillimetres() const;
  void refreshBeside();
  void takeColours();
  QString besideText() const;
  QString wholeText() const;
  int originRoom() const;
  int roomIn(int width) const;
  int linesIn(int width) const;
  std::unique_ptr<QTextLayout> written() const;
  QPointF writtenAt(const QTextLayout& written) const;
  void paintWritten(QPainter& painter) const;
  int placeAt(const QPointF& at) const;
  int selectedFrom() const;
  bool wraps() const;
  void align();
  void selectFromTheEnd();
  void showOriginKey();
  void openOrigins();
  void step(int by);
  bool restore();
  void pasteReadings();
  void addUnits(QMenu& menu);
  void addOrigins(QMenu& menu);
  void addOriginChoices(QMenu& menu);
  void addOriginDialog(QMenu& menu);
  void typeIn(const units::Unit& unit);
  void sayMeasured();
  void askOrigin();

  Document& document_;
  EntryPlace place_;
  bool selectOnRelease_ = false;
  int lines_ = 1;                         ///< of text that it has room for
  QAbstractButton* originKey_ = nullptr;  ///< made when the field is first pointed at
  Beside beside_;
};

}  // namespace strokewright::ui
