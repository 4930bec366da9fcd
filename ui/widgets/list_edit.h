#pragma once
/// A described list on the screen, to write on.

#include <QWidget>
#include <vector>

#include "ui/document/document.h"

class QGridLayout;
class QLabel;
class QScrollArea;
class QToolButton;

namespace strokewright::ui {

/// One line for each item, a field for each column as everywhere else, and an empty last line that
/// begins a new item when it is written on.
///
/// Enter goes down the column. A block pasted from a spreadsheet fills the fields from the one that
/// has the focus. Ctrl+Delete removes the line, as Delete does where the field is a choice, and as
/// the key at the end of the line; Alt+Shift with Up or Down moves it.
class ListEdit final : public QWidget {
  Q_OBJECT

 public:
  ListEdit(Document& document, const ListPlace& place, QWidget* parent = nullptr);

  const ListPlace& place() const { return place_; }
  /// Of a list that engines have: shows that of another one.
  void setEngine(int engine);
  /// The field of a column; nothing where there is no such line.
  QWidget* field(int line, const describe::Input& column) const;
  int lines() const { return static_cast<int>(lines_.size()); }  ///< the empty last one included

  void focusField(int line, const describe::Input& column);

  QSize sizeHint() const override;  ///< all lines without scrolling, up to some
  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  void relined();  ///< other fields: the order of Tab is to be set again

 protected:
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Line {
    std::vector<QWidget*> fields;  ///< one for each column
    QToolButton* remove = nullptr;
  };

  void refresh();
  void rebuild();
  void addLine();
  void removeLine();
  void reword();
  void setColumns();
  int rowHeight(int row) const;
  int heightOf(int lines) const;
  int wholeWidth() const;
  bool act(const QKeyEvent& key, int line, int column);
  void focusField(int line, int column);
  void remove(int line);
  void move(int line, int column, int by);

  Document& document_;
  ListPlace place_;
  QScrollArea* scroll_;
  QWidget* body_ = nullptr;
  QGridLayout* grid_ = nullptr;
  std::vector<QLabel*> heads_;
  std::vector<Line> lines_;
};

}  // namespace strokewright::ui
