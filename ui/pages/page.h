#pragma once
/// One page: the question, the answer, a picture, what it rests on, what follows, what objects.

#include <QWidget>
#include <vector>

#include "ui/pages/page_description.h"

class QLabel;
class QSplitter;

namespace strokewright::ui {

class AnswerLine;
class Comparison;
class Desk;
class PaneColumn;
class WhyPlace;

/// Puts the focus into the first of what is seen in it and takes the focus by Tab.
/// @returns false where there is none
bool focusInside(const QWidget& area);

/// The same anatomy for every question, so that after one page a reader knows all.
class Page final : public QWidget {
  Q_OBJECT

 public:
  Page(Desk& desk, const PageDescription& description, QWidget* parent = nullptr);

  const PageDescription& description() const { return description_; }
  const Answer& answer() const;
  bool idle() const;  ///< the answer stands alone: nothing else means anything for these engines

  /// Puts the focus into the field of this entry. @returns false when the page has none.
  bool focusEntry(int engine, const describe::Input& input);
  /// Puts the focus into the first field of this list. @returns false when the page has none.
  /// @param column of the item; nullptr: the first
  bool focusList(const describe::List& list, int item = 0, const describe::Input* column = nullptr);
  void focusFirst();
  /// What stands in it from the answer on: answer, entries, lists, results, pictures and tables,
  /// and what speaks against it.
  std::vector<QWidget*> areas() const;
  bool focusArea(const QWidget& area);  ///< as focusInside(), and where panes are folded it is seen

  /// Opens the working of the answer, where it has one.
  void explainAnswer();
  /// Opens the working of this result.
  void explain(int engine, const describe::Result& result, int cylinder);

  void resetLayout();
  void keepLayout() const;  ///< in the settings

  QSize minimumSizeHint() const override;

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void refresh();
  void refreshWhenSeen();
  QString whyNoDeed() const;
  void sizeQuestion();
  void setMargins();
  void namePanes();
  void restoreLayout();
  int tablesWidth(int (Comparison::*wide)() const) const;
  void roomForTables();
  void orderTabs();
  void bringUp(const QWidget& inside);
  bool besideEachOther() const;
  void addRight(QWidget* pane, int lines);
  void makeLeftSide();
  void makeRightSide();

  Desk& desk_;
  const PageDescription& description_;
  QLabel* question_;
  AnswerLine* answerLine_;
  QWidget* foot_;
  Comparison* entries_ = nullptr;
  Comparison* results_ = nullptr;
  WhyPlace* whyPlace_ = nullptr;
  QSplitter* across_;
  QWidget* rest_;                ///< empty paper, where the answer stands alone
  PaneColumn* left_ = nullptr;   ///< picture and tables
  PaneColumn* right_ = nullptr;  ///< entries, lists and results
  bool laidOut_ = false;
  bool parted_ = false;  ///< a person moved the handle between the sides
};

}  // namespace strokewright::ui
