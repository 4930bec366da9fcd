#include "ui/widgets/choice_edit.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QFocusEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QStyleOption>
#include <QStylePainter>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>

#include "ui/document/entry_text.h"
#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/field_steps.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

/// A narrow field may part the word where it is put together: "anti-" above "clockwise".
QString parted(const QString& text) {
  static const QRegularExpression sense(QStringLiteral("(?<=anti|counter)(?=clockwise)"));
  return QString(text).replace(sense, QString(QChar(QChar::SoftHyphen)));
}

}  // namespace

ChoiceEdit::ChoiceEdit(Document& document, const EntryPlace& place, QWidget* parent)
    : QComboBox(parent), document_(document), place_(place) {
  setFocusPolicy(Qt::StrongFocus);
  setSizeAdjustPolicy(QComboBox::AdjustToContents);
  setSizePolicy(ink::cellPolicy());
  connect(this, &QComboBox::activated, this, &ChoiceEdit::choose);
  connect(&document, &Document::projectChanged, this, &ChoiceEdit::refresh);
  connect(&document.taste(), &Taste::changed, this, &ChoiceEdit::refresh);
  refresh();
}

void ChoiceEdit::setEngine(int engine) {
  place_.engine = engine;
  refresh();
}

QSize ChoiceEdit::sizeHint() const {
  return {QComboBox::sizeHint().width(), ink::rowHeight(fontMetrics())};
}

/// What the arrow leaves, clear of it.
int ChoiceEdit::roomFor(int width) const {
  return width - 9 * fontMetrics().averageCharWidth() / 4;
}

int ChoiceEdit::heightForWidth(int width) const {
  const QFontMetrics metrics = fontMetrics();
  return ink::rowHeight(metrics, ink::linesOf(metrics, shownText(), roomFor(width)));
}

/// What objects to the answer or forbids it; nullptr: nothing does.
const describe::Finding* ChoiceEdit::wrong() const {
  const describe::Finding* finding = findingAbout(document_, place_);
  const bool weighs = finding != nullptr && finding->weight != describe::Weight::Remarks;
  return weighs ? finding : nullptr;
}

/// The answer, marked where something speaks against it, as numbers are.
QString ChoiceEdit::shownText() const {
  const describe::Finding* finding = wrong();
  const QString text = parted(currentText());
  if (finding == nullptr) return text;
  const bool heavy = finding->weight == describe::Weight::Forbids;
  return (heavy ? QStringLiteral("✕ ") : QStringLiteral("! ")) + text;
}

/// Nothing entered first, then the choices, then what is none of them.
QStringList ChoiceEdit::wantedItems() const {
  const Taste& taste = document_.taste();
  const describe::Entry& entry = document_.entry(place_);
  const QString standing = entryDefault(document_, place_);
  QStringList items{standing.isEmpty() ? QStringLiteral("–") : QStringLiteral("– ") + standing};
  for (const describe::Choice& choice : place_.input->choices) {
    items += taste.inTerms(fromCore(choice.label));
  }
  const bool ofThem = entry.values.size() == 1 || (!entry.known() && entry.text.empty());
  if (!ofThem) items += entryText(input(), entry, taste.style());
  return items;
}

void ChoiceEdit::refresh() {
  if (place_.engine >= static_cast<int>(document_.project().engines.size())) return;
  const QStringList items = wantedItems();
  if (items != shownItems_) {
    shownItems_ = items;
    clear();
    addItems(items);
  }
  const describe::Entry& entry = document_.entry(place_);
  const bool other = items.size() > static_cast<qsizetype>(place_.input->choices.size()) + 1;
  const int chosen = entry.known() ? static_cast<int>(entry.values.front()) + 1 : 0;
  setCurrentIndex(other ? count() - 1 : chosen);
  const QString name = entryName(document_, place_);
  if (name != accessibleName()) setAccessibleName(name);
  const QString shown = shownText();  // it may be marked by what else is entered
  if (shown == shown_) return;
  shown_ = shown;
  if (heightForWidth(width()) != height()) updateGeometry();
  update();
}

void ChoiceEdit::choose(int item) {
  const auto choice = static_cast<std::size_t>(std::max(0, item - 1));
  if (choice >= place_.input->choices.size()) return;
  document_.type(place_, item == 0 ? QString() : fromCore(place_.input->choices[choice].key));
}

bool ChoiceEdit::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QComboBox::event(event);
  QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(),
                     tipFrom(entryTip(document_, place_)), this);
  return true;
}

void ChoiceEdit::focusInEvent(QFocusEvent* event) {
  QComboBox::focusInEvent(event);
  typed_.invalidate();
  setAccessibleDescription(entryTip(document_, place_));
  Q_EMIT attention(place_.input);
}

void ChoiceEdit::focusOutEvent(QFocusEvent* event) {
  QComboBox::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason) document_.closeStep();
  Q_EMIT attention(nullptr);
}

void ChoiceEdit::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (goesUpOrDown(*event) || enter) {
    goToField(fieldBeside(*this, event->key() == Qt::Key_Up));
  } else if (event->key() == Qt::Key_Space && beingTyped()) {
    search(event->text());
    typed_.start();
  } else {
    QComboBox::keyPressEvent(event);
    const bool letter = !event->text().isEmpty() && event->text().front().isPrint();
    if (letter && event->key() != Qt::Key_Space) typed_.start();
  }
}

/// The last letter was typed so lately that a list adds to it.
bool ChoiceEdit::beingTyped() const {
  return typed_.isValid() && !typed_.hasExpired(QApplication::keyboardInputInterval());
}

/// Goes on with what is being typed, as the field does by itself with letters.
void ChoiceEdit::search(const QString& typed) {
  const int before = currentIndex();
  view()->setCurrentIndex(model()->index(before, modelColumn(), rootModelIndex()));
  view()->keyboardSearch(typed);
  const int found = view()->currentIndex().row();
  if (found == before) return;
  setCurrentIndex(found);
  Q_EMIT activated(found);
}

void ChoiceEdit::wheelEvent(QWheelEvent* event) {
  if (hasFocus()) {
    QComboBox::wheelEvent(event);
  } else {
    event->ignore();
  }
}

void ChoiceEdit::paintEvent(QPaintEvent*) {
  QStylePainter painter(this);
  ink::paintBaseline(painter, *this);
  const int gap = fontMetrics().averageCharWidth();
  QStyleOption arrow;
  arrow.initFrom(this);
  arrow.rect = QRect(width() - 2 * gap, 0, 2 * gap, height());
  painter.drawPrimitive(QStyle::PE_IndicatorArrowDown, arrow);

  const QRect room(gap / 2, 0, roomFor(width()), height());
  QColor colour = currentIndex() == 0 ? ink::muted(palette()) : ink::text(palette());
  if (const describe::Finding* finding = wrong()) {
    const bool heavy = finding->weight == describe::Weight::Forbids;
    colour = heavy ? ink::forbids(palette()) : ink::objects(palette());
  }
  painter.setPen(colour);
  painter.drawText(room, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, shownText());
}

}  // namespace strokewright::ui
