#pragma once
/// The answer of a page, readable at arm's length.

#include <QWidget>

#include "ui/pages/page_description.h"

class QLabel;

namespace strokewright::ui {

class LinkButton;

class AnswerLine final : public QWidget {
  Q_OBJECT

 public:
  /// @param deed what can be done with the answer; empty: nothing.
  explicit AnswerLine(const QString& deed, QWidget* parent = nullptr);

  const Answer& answer() const { return answer_; }
  void setAnswer(const Answer& answer);
  /// @param whyNot empty: it is possible
  void setDeed(const QString& says, const QString& whyNot);

 Q_SIGNALS:
  void whyAsked();
  void entryAsked();  ///< the one that would unlock the answer
  void deedAsked();

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void size();

  Answer answer_;
  QLabel* number_;
  QLabel* plusMinus_;
  QLabel* sentence_;
  QLabel* further_;
  LinkButton* go_;
  LinkButton* why_;
  LinkButton* deed_;
};

}  // namespace strokewright::ui
