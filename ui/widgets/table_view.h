#pragma once
/// A described table on the screen: to read, to sort, to copy.

#include <QPersistentModelIndex>
#include <QTableView>

#include "core/describe/tabulated.h"
#include "ui/document/document.h"

class QLabel;

namespace strokewright::ui {

class TableModel;

/// The rows of one engine in the reader's units. Each column has its name and unit once, its
/// numbers stand under each other at the decimal mark, and what a row does not have stays empty; a
/// column that no row has is not shown, nor any head over no row, nor a row or a column in part.
/// While the table waits it says what for, with a link to the first entry; one that is refused or
/// means nothing says why. It is filled only while it is seen.
///
/// Ctrl+C copies the selected rows, or all of them, for a spreadsheet. Enter or a double click
/// takes a row. Where sorting is allowed a press on a head or the menu sorts; a third time brings
/// the table's own order back.
class TableView final : public QTableView {
  Q_OBJECT

 public:
  /// @param cylinder counted from 0; of a table for each cylinder.
  TableView(Document& document, int engine, const describe::Table& table, QWidget* parent = nullptr,
            int cylinder = 0);

  const describe::Table& table() const { return table_; }
  int engine() const { return engine_; }
  void setEngine(int engine);
  void setCylinder(int cylinder);
  void setSortable(bool sortable);
  /// What stands where there is no row: "no stack fits".
  void setWhenEmpty(const QString& text);

  /// As it was last filled.
  const describe::Tabulated& filled() const;
  /// The row the cursor is in, counted as the table fills them whatever the order shown; -1: none.
  int currentRow() const;
  /// The selected rows with their heads, or all, separated by tabs.
  QString copiedText() const;
  /// What stands instead of rows: "waits for bore"; empty where there are rows.
  QString message() const;

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  /// Enter or double click, counted as currentRow().
  void rowTaken(int row);
  /// The cursor came to another row, counted as currentRow(); -1: there is none, or the row it was
  /// in holds something else now.
  void rowChosen(int row);
  /// Go to the field of this entry.
  void entryAsked(int engine, const describe::Input* input);

 protected:
  int sizeHintForColumn(int column) const override;
  int sizeHintForRow(int row) const override;
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;

 private:
  void refreshWhenSeen();
  void refresh();
  void reword();
  void layOut();
  double widthOf(const QString& text) const;
  int textMargins() const;
  QString textAt(int row, int column) const;
  QStringList textsOf(const QModelIndex& row) const;
  int widestWord(int column) const;
  void fitColumns();
  void fitRows();
  void sayMessage();
  QString waitText() const;
  void placeMessage();
  void copy() const;
  void tellRow();
  void sortBy(int column);

  Document& document_;
  int engine_;
  const describe::Table& table_;
  int cylinder_;
  bool stale_ = true;
  int toldRow_ = -1;
  QSize wanted_;  ///< last asked for
  QPersistentModelIndex pressed_;
  bool sortable_ = false;
  QString whenEmpty_;
  TableModel* model_;
  QLabel* message_;
  QAction* sortHere_;
};

}  // namespace strokewright::ui
