#include "ui/widgets/finding_line.h"

#include <QBoxLayout>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QToolButton>
#include <algorithm>

#include "core/model/lists.h"
#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/field_steps.h"
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

/// Pressed by Space or Enter.
class Key final : public QToolButton {
 public:
  using QToolButton::QToolButton;

 protected:
  void keyPressEvent(QKeyEvent* event) override {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
      click();
    } else if (isArrow(*event)) {
      event->ignore();
    } else {
      QToolButton::keyPressEvent(event);
    }
  }
};

constexpr int kLeastSentence = 40;  ///< letters that a sentence keeps beside the buttons

}  // namespace

FindingLine::FindingLine(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      mark_(new QLabel(this)),
      sentence_(new QLabel(this)),
      grid_(new QGridLayout(this)),
      buttons_(new QBoxLayout(QBoxLayout::LeftToRight)) {
  sentence_->setWordWrap(true);
  sentence_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  sentence_->setTextFormat(Qt::PlainText);
  mark_->setTextFormat(Qt::PlainText);
  QFont bold = mark_->font();
  bold.setBold(true);
  mark_->setFont(bold);
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setVerticalSpacing(0);
  grid_->setColumnStretch(1, 1);
  grid_->addWidget(mark_, 0, 0, Qt::AlignTop);
  grid_->addWidget(sentence_, 0, 1, Qt::AlignTop);
  grid_->addLayout(buttons_, 0, 2);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  connect(&document.taste(), &Taste::changed, this, &FindingLine::refresh);
}

void FindingLine::setFinding(const Finding& finding) {
  if (finding == finding_) return;
  const bool otherButtons = finding.mends != finding_.mends || finding.about != finding_.about ||
                            finding.list != finding_.list || finding.cylinder != finding_.cylinder;
  finding_ = finding;
  refresh();
  if (otherButtons) remakeButtons();
}

void FindingLine::refresh() {
  if (finding_.says.pattern.empty()) return;
  const QString word = fromCore(describe::weightWord(finding_.weight));
  const QString said = findingText(document_, finding_);
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
  auto* button = new Key(this);
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
    const QString offer = ofItsCylinder(document_, finding_, taste.sentence(mend.says));
    connect(addButton(offer), &QToolButton::clicked, this,
            [this, mend] { document_.take(finding_.engine, mend); });
  }
  if (const describe::List* list = listMeant()) {
    const QString name = inSentence(taste.inTerms(fromCore(list->name)));
    connect(addButton(tr("Go to %1").arg(name)), &QToolButton::clicked, this, [this, list] {
      const bool ofItem = finding_.list == list;
      Q_EMIT listAsked(list, ofItem ? finding_.item : 0, ofItem ? finding_.about.front() : nullptr);
    });
  } else if (!finding_.about.empty()) {
    addEntryButton(*finding_.about.front());
  }
  placeButtons();
}

/// What is wrong with a hole is put right in the list of holes, once there is one.
const describe::List* FindingLine::listMeant() const {
  if (finding_.list != nullptr) return finding_.list;
  const bool ofHoles = finding_.key == "plate_holes_fit";
  const describe::List& holes = model::list::plateHoles;
  return ofHoles && !document_.items({&holes, finding_.engine}).empty() ? &holes : nullptr;
}

/// Behind the sentence, below it, or below each other, as there is room.
void FindingLine::placeButtons() {
  const int spacing = buttons_->spacing();
  int together = 0;
  for (int i = 0; i < buttons_->count(); ++i) {
    together += buttons_->itemAt(i)->sizeHint().width() + spacing;
  }
  const int beyondMark = width() - mark_->minimumWidth() - grid_->horizontalSpacing();
  const bool beside =
      together + kLeastSentence * fontMetrics().averageCharWidth() <= beyondMark || together == 0;
  const QBoxLayout::Direction direction =
      beside || together <= beyondMark ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
  int row = 0;
  int column = 0;
  int rows = 0;
  int columns = 0;
  grid_->getItemPosition(grid_->indexOf(buttons_), &row, &column, &rows, &columns);
  if (direction == buttons_->direction() && beside == (column == 2)) return;
  buttons_->setDirection(direction);
  grid_->removeItem(buttons_);
  grid_->addLayout(buttons_, beside ? 0 : 1, beside ? 2 : 1,
                   beside ? Qt::Alignment() : Qt::AlignLeft);
  updateGeometry();
}

void FindingLine::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  placeButtons();
}

void FindingLine::addEntryButton(const describe::Input& about) {
  const describe::Input* entry = &about;
  connect(addButton(tr("Go to %1").arg(inSentence(document_.taste().label(about)))),
          &QToolButton::clicked, this,
          [this, entry] { Q_EMIT entryAsked(finding_.engine, entry); });
}

void FindingLine::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange) return;
  refresh();
  remakeButtons();
}

}  // namespace strokewright::ui
