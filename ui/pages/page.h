#pragma once
/// One page: the question, the answer, a picture, what it rests on, what follows, what objects.

#include <QWidget>

#include "ui/pages/page_description.h"

class QLabel;
class QSplitter;

namespace strokewright::ui {

class AnswerLine;
class Comparison;
class Desk;
class WhyPlace;

/// The same anatomy for every question, so that after one page a reader knows all.
class Page final : public QWidget {
  Q_OBJECT

 public:
  Page(Desk& desk, const PageDescription& description, QWidget* parent = nullptr);

  const PageDescription& description() const { return description_; }
  const Answer& answer() const;

  /// Puts the focus into the field of this entry. @returns false when the page has none.
  bool focusEntry(int engine, const describe::Input& input);
  /// Puts the focus into the first field of this list. @returns false when the page has none.
  bool focusList(const describe::List& list);
  void focusFirst();

  /// Opens the working of this result.
  void explain(int engine, const describe::Result& result, int cylinder);

  void resetLayout();
  void keepLayout() const;  ///< in the settings

  QSize minimumSizeHint() const override;

 protected:
  void changeEvent(QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void refresh();
  void refreshWhenSeen();
  void sizeQuestion();
  void restoreLayout();
  void roomForTables();
  void orderTabs();
  bool besideEachOther() const;
  QWidget* makeLeftSide();
  QWidget* makeRightSide();
  QWidget* withLists(QWidget* entries);

  Desk& desk_;
  const PageDescription& description_;
  QLabel* question_;
  AnswerLine* answerLine_;
  Comparison* entries_ = nullptr;
  Comparison* results_ = nullptr;
  WhyPlace* whyPlace_ = nullptr;
  QSplitter* across_;
  QSplitter* down_ = nullptr;
  QSplitter* entered_ = nullptr;   ///< entries and lists, where there are lists
  QSplitter* pictured_ = nullptr;  ///< picture and the tables below it, or nullptr
  bool laidOut_ = false;
};

}  // namespace strokewright::ui
