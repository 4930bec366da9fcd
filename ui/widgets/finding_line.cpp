#include "ui/widgets/finding_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <algorithm>

#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

using describe::Finding;
using describe::Weight;

QString signOf(Weight weight) {
  switch (weight) {
    case Weight::Forbids:
      return QStringLiteral("✕");
    case Weight::Objects:
      return QStringLiteral("!");
    case Weight::Remarks:
      return QStringLiteral("·");
  }
  return {};
}

QColor colourOf(Weight weight, const QPalette& palette) {
  switch (weight) {
    case Weight::Forbids:
      return ink::forbids(palette);
    case Weight::Objects:
      return ink::objects(palette);
    case Weight::Remarks:
      return ink::muted(palette);
  }
  return {};
}

QString markOf(Weight weight) {
  return signOf(weight) + QChar(u' ') + fromCore(describe::weightWord(weight));
}

/// So that the sentences of all lines begin under each other.
int widestMark(const QFontMetrics& metrics) {
  int widest = 0;
  for (const Weight weight : {Weight::Forbids, Weight::Objects, Weight::Remarks}) {
    widest = std::max(widest, metrics.horizontalAdvance(markOf(weight)));
  }
  return widest;
}

}  // namespace

FindingLine::FindingLine(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      mark_(new QLabel(this)),
      sentence_(new QLabel(this)),
      buttons_(new QHBoxLayout) {
  sentence_->setWordWrap(true);
  sentence_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  sentence_->setTextFormat(Qt::PlainText);
  mark_->setTextFormat(Qt::PlainText);
  QFont bold = mark_->font();
  bold.setBold(true);
  mark_->setFont(bold);
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(mark_, 0, Qt::AlignTop);
  line->addWidget(sentence_, 1, Qt::AlignTop);
  line->addLayout(buttons_);
  connect(&document.taste(), &Taste::changed, this, &FindingLine::refresh);
}

void FindingLine::setFinding(const Finding& finding) {
  if (finding == finding_) return;
  const bool otherButtons = finding.mends != finding_.mends || finding.about != finding_.about;
  finding_ = finding;
  refresh();
  if (otherButtons) remakeButtons();
}

void FindingLine::refresh() {
  if (finding_.says.pattern.empty()) return;
  const QString word = fromCore(describe::weightWord(finding_.weight));
  const QString said = findingText(document_.taste(), finding_);
  QPalette coloured;
  coloured.setColor(QPalette::WindowText, colourOf(finding_.weight, palette()));
  mark_->setPalette(coloured);
  mark_->setMinimumWidth(widestMark(mark_->fontMetrics()));
  mark_->setText(markOf(finding_.weight));
  sentence_->setText(said);
  sentence_->setToolTip(tr("Limit: %1").arg(fromCore(finding_.source)));
  setAccessibleName(word + QStringLiteral(": ") + said);
}

QToolButton* FindingLine::addButton(const QString& text) {
  auto* button = new QToolButton(this);
  button->setAutoRaise(true);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setText(text);
  button->setAccessibleName(text);
  QPalette coloured;
  coloured.setColor(QPalette::ButtonText, ink::accent(palette()));
  button->setPalette(coloured);
  buttons_->addWidget(button, 0, Qt::AlignTop);
  return button;
}

void FindingLine::remakeButtons() {
  while (QLayoutItem* item = buttons_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();
    delete item;
  }
  const Taste& taste = document_.taste();
  for (const describe::Mend& mend : finding_.mends) {
    connect(addButton(taste.sentence(mend.says)), &QToolButton::clicked, this,
            [this, mend] { document_.take(finding_.engine, mend); });
  }
  if (finding_.about.empty()) return;
  const describe::Input* entry = finding_.about.front();
  connect(addButton(tr("Go to %1").arg(inSentence(taste.label(*entry)))), &QToolButton::clicked,
          this, [this, entry] { Q_EMIT entryAsked(finding_.engine, entry); });
}

void FindingLine::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange) return;
  refresh();
  remakeButtons();
}

}  // namespace strokewright::ui
