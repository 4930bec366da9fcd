#pragma once
/// What speaks against a number, as one line.

#include <QWidget>

#include "core/describe/finding.h"
#include "core/describe/list.h"
#include "ui/document/document.h"

class QBoxLayout;
class QGridLayout;
class QLabel;
class QToolButton;

namespace strokewright::ui {

/// The weight as a word, the sentence, and what can be done: go to the entry or the list, take a
/// mend. What can be done stands behind the sentence; where that is narrow, below it.
class FindingLine final : public QWidget {
  Q_OBJECT

 public:
  explicit FindingLine(Document& document, QWidget* parent = nullptr);

  /// Shows this one from now on; costs nothing when it is the same.
  void setFinding(const describe::Finding& finding);
  const describe::Finding& finding() const { return finding_; }

 Q_SIGNALS:
  /// Go to the field of this entry.
  void entryAsked(int engine, const describe::Input* input);
  /// Go to what is kept in this list.
  /// @param column of the item; nullptr: any
  void listAsked(const describe::List* list, int item, const describe::Input* column);

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void refresh();
  void remakeButtons();
  void placeButtons();
  void addEntryButton(const describe::Input& about);
  const describe::List* listMeant() const;
  QToolButton* addButton(const QString& text);

  Document& document_;
  describe::Finding finding_;
  QLabel* mark_;
  QLabel* sentence_;
  QGridLayout* grid_;
  QBoxLayout* buttons_;
};

}  // namespace strokewright::ui
