#pragma once
/// What speaks against a number, as one line.

#include <QWidget>

#include "core/describe/finding.h"
#include "ui/document/document.h"

class QHBoxLayout;
class QLabel;
class QToolButton;

namespace strokewright::ui {

/// The weight as a word, the sentence, and what can be done: go to the entry, take a mend.
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

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void refresh();
  void remakeButtons();
  QToolButton* addButton(const QString& text);

  Document& document_;
  describe::Finding finding_;
  QLabel* mark_;
  QLabel* sentence_;
  QHBoxLayout* buttons_;
};

}  // namespace strokewright::ui
