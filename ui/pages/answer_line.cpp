#include "ui/pages/answer_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "ui/pages/link_button.h"

namespace strokewright::ui {

namespace {

constexpr double kAnswerSize = 2.2;     ///< times the body
constexpr double kAnswerSizeLow = 1.5;  ///< in a low window

}  // namespace

AnswerLine::AnswerLine(const QString& deed, QWidget* parent)
    : QWidget(parent),
      number_(new QLabel(this)),
      plusMinus_(new QuietLabel({}, this)),
      sentence_(new QLabel(this)),
      further_(new QuietLabel({}, this)),
      go_(new LinkButton(tr("enter it"), this)),
      why_(new LinkButton(tr("why"), this)),
      deed_(new LinkButton(deed, this)) {
  sentence_->setWordWrap(true);
  further_->setWordWrap(true);
  why_->setAccessibleName(tr("Why this answer"));
  why_->setToolTip(tr("Formula, numbers put in, source and validity"));
  deed_->setVisible(!deed.isEmpty());

  auto* words = new QVBoxLayout;
  words->setSpacing(0);
  words->addWidget(sentence_);
  auto* second = new QHBoxLayout;
  second->setSpacing(8);
  second->addWidget(go_, 0, Qt::AlignTop);
  second->addWidget(further_, 1);
  words->addLayout(second);
  words->addStretch(1);

  auto* keys = new QVBoxLayout;
  keys->setSpacing(0);
  keys->addWidget(why_, 0, Qt::AlignRight);
  keys->addWidget(deed_, 0, Qt::AlignRight);
  keys->addStretch(1);

  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(16);
  line->addWidget(number_, 0, Qt::AlignTop);
  line->addWidget(plusMinus_, 0, Qt::AlignTop);
  line->addLayout(words, 1);
  line->addLayout(keys);

  connect(go_, &LinkButton::clicked, this, &AnswerLine::entryAsked);
  connect(why_, &LinkButton::clicked, this, &AnswerLine::whyAsked);
  connect(deed_, &LinkButton::clicked, this, &AnswerLine::deedAsked);
  size();
  setAnswer({});
}

void AnswerLine::setAnswer(const Answer& answer) {
  answer_ = answer;
  say(*number_, answer.number.isEmpty() ? QStringLiteral("–") : answer.number);
  say(*plusMinus_, answer.plusMinus);
  say(*sentence_, answer.sentence);
  say(*further_, answer.further);
  plusMinus_->setVisible(!answer.plusMinus.isEmpty());
  go_->setVisible(answer.unlocks != nullptr);
  why_->setVisible(answer.result != nullptr);
}

void AnswerLine::setDeed(const QString& says, const QString& whyNot) {
  if (deed_->text() != says) {
    deed_->setText(says);
    deed_->updateGeometry();
  }
  deed_->setAccessibleName(whyNot.isEmpty() ? says : says + QStringLiteral(": ") + whyNot);
  deed_->setToolTip(whyNot);
  deed_->setEnabled(whyNot.isEmpty());
}

void AnswerLine::size() {
  QFont large = font();
  large.setPointSizeF(font().pointSizeF() * (isLow(*this) ? kAnswerSizeLow : kAnswerSize));
  large.setWeight(QFont::DemiBold);
  if (number_->font() != large) {
    number_->setFont(large);
  }
}

void AnswerLine::resizeEvent(QResizeEvent* event) {
  size();
  QWidget::resizeEvent(event);
}

void AnswerLine::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) {
    size();
  }
  QWidget::changeEvent(event);
}

}  // namespace strokewright::ui
