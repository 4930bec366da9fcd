#include "ui/widgets/quantity_edit.h"

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QDate>
#include <QHelpEvent>
#include <QMenu>
#include <QPainter>
#include <QRegularExpression>
#include <QTextLayout>
#include <QToolTip>
#include <algorithm>
#include <utility>

#include "core/model/lists.h"
#include "ui/document/entry_text.h"
#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/field_steps.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/origin_dialog.h"
#include "ui/widgets/pasted_readings.h"
#include "ui/widgets/plain_field.h"
#include "ui/widgets/stepped_text.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Finding;
using describe::Origin;
using describe::Weight;

constexpr int kLineMargins = 5;  // [px] that a line edit keeps clear at both ends, at most

/// The digits before the decimal mark, sign included.
QString beforeMark(const QString& text) {
  static const QRegularExpression whole(QStringLiteral("^\\s*[-+−]?\\d*"));
  return whole.match(text).captured();
}

/// A blank parts it from what stands before it.
int originWidth(const QFontMetrics& metrics, const QString& text) {
  return metrics.horizontalAdvance(QChar(u' ') + text);
}

/// Where the number comes from, at the right edge of its field. It takes no focus: the field keeps
/// it, and Alt+Enter does the same.
class OriginKey final : public QAbstractButton {
 public:
  explicit OriginKey(QWidget* field) : QAbstractButton(field) {
    setFocusPolicy(Qt::NoFocus);
    setCursor(Qt::PointingHandCursor);
    setToolTip(QuantityEdit::tr("Where it comes from, and its ± (Alt+Enter)"));
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setPen(ink::accent(palette()));
    painter.drawText(rect(), Qt::AlignRight | Qt::AlignVCenter, text());
  }
};

}  // namespace

QuantityEdit::QuantityEdit(Document& document, const EntryPlace& place, QWidget* parent)
    : QLineEdit(parent), document_(document), place_(place) {
  setFrame(false);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(ink::cellPolicy());
  takeColours();
  connect(this, &QLineEdit::textEdited, this, &QuantityEdit::typeText);
  connect(this, &QLineEdit::textChanged, this, &QuantityEdit::align);
  connect(this, &QLineEdit::selectionChanged, this, [this] { update(); });
  connect(this, &QLineEdit::cursorPositionChanged, this, [this] { update(); });
  connect(&document, &Document::projectChanged, this, &QuantityEdit::refresh);
  connect(&document.taste(), &Taste::changed, this, &QuantityEdit::refresh);
  refresh();
}

void QuantityEdit::setEngine(int engine) {
  place_.engine = engine;
  refresh();
}

QSize QuantityEdit::sizeHint() const {
  const int width = fontMetrics().horizontalAdvance(QStringLiteral("00\u202F000.000 ± 0.000"));
  return {width, ink::rowHeight(fontMetrics())};
}

QSize QuantityEdit::minimumSizeHint() const {
  const int width = fontMetrics().horizontalAdvance(QStringLiteral("00\u202F000.000"));
  return {width, ink::rowHeight(fontMetrics())};
}

/// While one types it grows with the text and does not shrink.
int QuantityEdit::heightForWidth(int width) const {
  return ink::rowHeight(fontMetrics(), hasFocus() ? lines_ : linesIn(width));
}

/// No ground of its own, and hints that can be read; everything else is the window's.
void QuantityEdit::takeColours() {
  const QColor hint = ink::muted(palette());
  if (palette().color(QPalette::PlaceholderText) == hint) return;
  QPalette own;
  own.setColor(QPalette::Base, Qt::transparent);
  own.setColor(QPalette::PlaceholderText, hint);
  setPalette(own);
}

// What stands in it ------------------------------------------------------------------------------

void QuantityEdit::typeText(const QString& text) { document_.type(place_, text); }

void QuantityEdit::show(const QString& shown) {
  if (shown == text()) return;
  setText(shown);
  if (hasFocus()) {
    selectFromTheEnd();
  } else {
    home(false);  // the beginning of a long list is seen
  }
}

void QuantityEdit::refresh() {
  if (place_.engine >= static_cast<int>(document_.project().engines.size())) return;
  const Entry& entry = document_.entry(place_);
  const units::Style& style = document_.taste().style();
  const bool asTyped = text().trimmed() == fromCore(entry.text).trimmed();
  const bool beingTyped = isModified() && asTyped && entry.unit == style.unit(place_.input->kind);
  const Digits digits = hasFocus() ? Digits::All : Digits::Seen;
  if (!beingTyped) show(entryText(input(), entry, style, digits));
  const bool anyNumber = place_.input == &model::list::partQuantity;  // can be bought
  setPlaceholderText(anyNumber ? tr("any") : entryDefault(document_, place_));
  const QString name = entryName(document_, place_);
  if (name != accessibleName()) setAccessibleName(name);
  if (hasFocus()) setAccessibleDescription(entryTip(document_, place_));
  refreshBeside();
}

QuantityEdit::Beside QuantityEdit::findBeside() const {
  Beside beside;
  const Entry& entry = document_.entry(place_);
  beside.known = entry.known();
  beside.origin = entry.origin;
  beside.echo = entryEcho(document_, place_);
  if (beside.echo.isEmpty()) beside.echo = inMillimetres();
  const Finding* finding = findingAbout(document_, place_);
  if (finding == nullptr || finding->weight == Weight::Remarks) return beside;
  const bool read = entry.known() || entry.text.empty();
  beside.heavy = finding->weight == Weight::Forbids;
  beside.mark = beside.heavy ? QStringLiteral("✕") : QStringLiteral("!");
  beside.word = read ? fromCore(describe::weightWord(finding->weight)) : tr("not read");
  return beside;
}

/// "= 66.68 mm" of an entry that is shown in inches, or in thousandths of one; nought is nought in
/// every unit.
QString QuantityEdit::inMillimetres() const {
  const Entry& entry = document_.entry(place_);
  const units::Kind kind = place_.input->kind;
  const bool length = kind == units::Kind::Length || kind == units::Kind::FineLength;
  const Taste& taste = document_.taste();
  if (!length || !entry.known() || taste.unit(kind) == QStringLiteral("mm")) return {};
  if (entry.values == std::vector<double>{0.0}) return {};
  units::Style millimetres = taste.style();
  millimetres.group = units::UnitGroup::metric();
  QStringList numbers;
  for (const double value : entry.values) {
    numbers += fromCore(millimetres.number(kind, value));
  }
  return QStringLiteral("= %1\u00A0mm").arg(numbers.join(QStringLiteral("; ")));
}

void QuantityEdit::refreshBeside() {
  Beside beside = findBeside();
  if (beside == beside_) return;
  beside_ = std::move(beside);
  align();
  update();
}

QString QuantityEdit::besideText() const {
  const QFontMetrics metrics = fontMetrics();
  const int left =
      width() - originRoom() - metrics.horizontalAdvance(text() + QStringLiteral("00"));
  if (beside_.mark.isEmpty()) {
    // It never lies over what is being typed.
    return !hasFocus() || metrics.horizontalAdvance(beside_.echo) <= left ? beside_.echo
                                                                          : QString();
  }
  const QString whole = beside_.mark + QChar(u' ') + beside_.word;
  return metrics.horizontalAdvance(whole) <= left ? whole : beside_.mark;
}

/// What is read without the focus; no line ends with a ± or an equals sign. A list may be broken
/// after what parts its items, however it was typed.
QString QuantityEdit::wholeText() const {
  static const QRegularExpression parted(QStringLiteral(";(?=\\S)"));
  static const QRegularExpression dashed(QStringLiteral("(?<=\\d)([-+,])(?=\\d)"));
  QString whole = text().isEmpty() ? placeholderText() : text();
  if (input().list) whole.replace(parted, QStringLiteral("; "));
  if (input().list && input().kind == units::Kind::Count) {
    whole.replace(dashed, QStringLiteral("\\1\u200B"));
  }
  if (beside_.mark.isEmpty() && !beside_.echo.isEmpty()) whole += QChar(u' ') + beside_.echo;
  whole.replace(QStringLiteral("= "), QStringLiteral("=\u00A0"));
  return whole.replace(QStringLiteral("± "), QStringLiteral("±\u00A0"));
}

int QuantityEdit::originRoom() const {
  if (originKey_ != nullptr && originKey_->isVisibleTo(this)) return originKey_->width();
  const bool marked = beside_.known || !originMark(beside_.origin).isEmpty();
  return marked ? originWidth(fontMetrics(), QStringLiteral("m")) : 0;
}

/// What mark and origin leave.
int QuantityEdit::roomIn(int width) const {
  const QString mark = beside_.mark.isEmpty() ? QString() : beside_.mark + u' ';
  return width - originRoom() - fontMetrics().horizontalAdvance(mark) - kLineMargins;
}

int QuantityEdit::linesIn(int width) const {
  return ink::linesOf(fontMetrics(), wholeText(), roomIn(width));
}

bool QuantityEdit::wraps() const { return (hasFocus() ? written()->lineCount() : lines_) > 1; }

void QuantityEdit::align() {
  showOriginKey();
  const int lines = hasFocus() ? std::max(lines_, written()->lineCount()) : linesIn(width());
  if (lines != lines_) {
    lines_ = lines;
    updateGeometry();
  }
  const QFontMetrics metrics = fontMetrics();
  const QString shown = text().isEmpty() ? placeholderText() : text();
  const int beside =
      originRoom() +
      (besideText().isEmpty() ? 0 : metrics.horizontalAdvance(besideText() + QChar(u' ')));
  const int spare = width() - beside - metrics.horizontalAdvance(shown + u'0');
  const int wanted = ink::figuresBeforeMark(metrics) - metrics.horizontalAdvance(beforeMark(shown));
  const QMargins margins(std::max(0, std::min(wanted, spare)), 0, beside, 0);
  if (margins != textMargins()) setTextMargins(margins);
}

// Several lines with the focus -------------------------------------------------------------------

/// The text in as many lines as it takes, every letter in its place of the text.
std::unique_ptr<QTextLayout> QuantityEdit::written() const {
  QString whole = text();
  whole.replace(QStringLiteral("± "), QStringLiteral("±\u00A0"));
  auto layout = std::make_unique<QTextLayout>(whole, font());
  QTextOption wrapped;
  wrapped.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout->setTextOption(wrapped);
  layout->beginLayout();
  double height = 0.0;
  for (QTextLine line = layout->createLine(); line.isValid(); line = layout->createLine()) {
    line.setLineWidth(roomIn(width()));
    line.setPosition({0.0, height});
    height += line.height();
  }
  layout->endLayout();
  return layout;
}

QPointF QuantityEdit::writtenAt(const QTextLayout& written) const {
  return {2.0, 0.5 * (height() - written.boundingRect().height())};
}

void QuantityEdit::paintWritten(QPainter& painter) const {
  const std::unique_ptr<QTextLayout> layout = written();
  QList<QTextLayout::FormatRange> selected;
  if (hasSelectedText()) {
    QTextLayout::FormatRange range{selectionStart(), selectionLength(), {}};
    range.format.setBackground(palette().highlight());
    range.format.setForeground(palette().highlightedText());
    selected += range;
  }
  painter.setPen(ink::text(palette()));
  layout->draw(&painter, writtenAt(*layout), selected);
  layout->drawCursor(&painter, writtenAt(*layout), cursorPosition());
}

/// The place in the text that is written there.
int QuantityEdit::placeAt(const QPointF& at) const {
  const std::unique_ptr<QTextLayout> layout = written();
  const QPointF inside = at - writtenAt(*layout);
  QTextLine line = layout->lineAt(0);
  for (int i = 1; i < layout->lineCount() && layout->lineAt(i).y() <= inside.y(); ++i) {
    line = layout->lineAt(i);
  }
  return line.xToCursor(inside.x());
}

/// The end of the selection that stays when it is drawn along.
int QuantityEdit::selectedFrom() const {
  if (!hasSelectedText()) return cursorPosition();
  return cursorPosition() == selectionStart() ? selectionEnd() : selectionStart();
}

// Keys, wheel, mouse -----------------------------------------------------------------------------

/// Everything, the first digits in sight.
void QuantityEdit::selectFromTheEnd() {
  setCursorPosition(static_cast<int>(text().size()));
  cursorBackward(true, static_cast<int>(text().size()));
}

bool QuantityEdit::event(QEvent* event) {
  switch (event->type()) {
    case QEvent::ShortcutOverride:
      if (undoes(*event)) {
        event->ignore();
        return false;
      }
      break;
    case QEvent::ToolTip:
      QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(),
                         tipFrom(entryTip(document_, place_)), this);
      return true;
    case QEvent::PaletteChange:
      takeColours();
      break;
    case QEvent::Resize:
    case QEvent::FontChange:
      align();
      break;
    default:
      break;
  }
  return QLineEdit::event(event);
}

void QuantityEdit::focusInEvent(QFocusEvent* event) {
  QLineEdit::focusInEvent(event);
  setAccessibleDescription(entryTip(document_, place_));
  if (!isModified()) refresh();
  align();
  if (event->reason() == Qt::MouseFocusReason) {
    selectOnRelease_ = true;
  } else if (event->reason() != Qt::PopupFocusReason &&
             event->reason() != Qt::ActiveWindowFocusReason) {
    selectFromTheEnd();
  }
  Q_EMIT attention(place_.input);
}

void QuantityEdit::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (event->reason() == Qt::PopupFocusReason) return;
  document_.closeStep();
  setModified(false);
  refresh();
  align();
  Q_EMIT attention(nullptr);
}

void QuantityEdit::enterEvent(QEnterEvent* event) {
  QLineEdit::enterEvent(event);
  align();
  Q_EMIT attention(place_.input);
}

void QuantityEdit::leaveEvent(QEvent* event) {
  QLineEdit::leaveEvent(event);
  align();
  Q_EMIT attention(nullptr);
}

/// A third click has chosen everything, in one line or in several.
void QuantityEdit::mousePressEvent(QMouseEvent* event) {
  const int from = selectedFrom();
  QLineEdit::mousePressEvent(event);
  if (!wraps() || event->button() != Qt::LeftButton || selectedText() == text()) return;
  const int place = placeAt(event->position());
  const bool along = event->modifiers().testFlag(Qt::ShiftModifier);
  setSelection(along ? from : place, along ? place - from : 0);
}

void QuantityEdit::mouseMoveEvent(QMouseEvent* event) {
  if (!wraps() || !event->buttons().testFlag(Qt::LeftButton)) {
    QLineEdit::mouseMoveEvent(event);
    return;
  }
  const int from = selectedFrom();
  setSelection(from, placeAt(event->position()) - from);
}

void QuantityEdit::mouseDoubleClickEvent(QMouseEvent* event) {
  QLineEdit::mouseDoubleClickEvent(event);
  if (!wraps() || event->button() != Qt::LeftButton) return;
  setCursorPosition(placeAt(event->position()));
  cursorWordBackward(false);
  cursorWordForward(true);
}

void QuantityEdit::mouseReleaseEvent(QMouseEvent* event) {
  QLineEdit::mouseReleaseEvent(event);
  if (selectOnRelease_ && !hasSelectedText()) selectFromTheEnd();
  selectOnRelease_ = false;
}

void QuantityEdit::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  const bool upOrDown = event->key() == Qt::Key_Up || event->key() == Qt::Key_Down;
  if (undoes(*event)) {
    event->ignore();
  } else if (event->matches(QKeySequence::Paste)) {
    pasteReadings();
  } else if (enter && event->modifiers().testFlag(Qt::AltModifier)) {
    openOrigins();
  } else if (upOrDown && event->modifiers().testFlag(Qt::AltModifier)) {
    step(event->key() == Qt::Key_Up ? 1 : -1);
  } else if (upOrDown) {
    goToField(fieldBeside(*this, event->key() == Qt::Key_Up));
  } else if (event->key() == Qt::Key_Escape) {
    event->setAccepted(restore());
  } else {
    QLineEdit::keyPressEvent(event);
    if (enter && !goToField(fieldBeside(*this, false))) {
      document_.closeStep();
      selectFromTheEnd();
    }
  }
}

void QuantityEdit::wheelEvent(QWheelEvent* event) { event->ignore(); }

void QuantityEdit::step(int by) {
  const int cursor = cursorPosition();
  const QString stepped = steppedText(text(), cursor, by);
  if (stepped == text()) return;
  setText(stepped);
  setCursorPosition(cursor);
  typeText(stepped);
}

bool QuantityEdit::restore() {
  const int steps = document_.undoStack().index();
  document_.undoOpenStep(Document::mergeKey(place_));
  selectFromTheEnd();
  return document_.undoStack().index() != steps;
}

/// In a list a block fills its cells; elsewhere several cells are readings.
void QuantityEdit::pasteReadings() {
  const QString block = QApplication::clipboard()->text();
  if (place_.list != nullptr && (block.contains(u'\t') || block.trimmed().contains(u'\n'))) {
    setModified(false);
    document_.paste(place_, block);
    return;
  }
  if (place_.list != nullptr) {
    insert(block.trimmed());
  } else {
    const int cylinders = document_.assessment().evaluation().cylinders(place_.engine);
    insert(readingsText(block, cylinders, place_.input->list));
  }
  typeText(text());
}

// Menu -------------------------------------------------------------------------------------------

void QuantityEdit::contextMenuEvent(QContextMenuEvent* event) {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  menu->addAction(tr("Cu&t"), this, &QLineEdit::cut)->setEnabled(hasSelectedText());
  menu->addAction(tr("&Copy"), this, &QLineEdit::copy)->setEnabled(hasSelectedText());
  menu->addAction(tr("&Paste"), this, &QuantityEdit::pasteReadings);
  menu->addAction(tr("Select &all"), this, &QLineEdit::selectAll);
  addUnits(*menu);
  addOrigins(*menu);
  menu->popup(event->globalPos());
}

void QuantityEdit::addUnits(QMenu& menu) {
  const auto all = units::unitsOf(place_.input->kind);
  if (all.size() < 2) return;
  QMenu* choice = menu.addMenu(tr("Type in"));
  for (const units::Unit& unit : all) {
    choice->addAction(fromCore(unit.name), this, [this, &unit] { typeIn(unit); });
  }
}

void QuantityEdit::typeIn(const units::Unit& unit) {
  Entry entry = document_.entry(place_);
  const QString name = QChar(u' ') + fromCore(unit.name);
  if (!entry.known()) {
    setText(name);
    setModified(true);
    setCursorPosition(0);
    return;
  }
  units::Style style = document_.taste().style();
  style.group.choose(place_.input->kind, unit.name);
  entry.text.clear();
  setText(entryText(input(), entry, style) + name);
  typeText(text());
  document_.closeStep();
}

/// The key says the origin in a word where there is room for it.
void QuantityEdit::showOriginKey() {
  if (!beside_.known || !(hasFocus() || underMouse())) {
    if (originKey_ != nullptr) originKey_->hide();
    return;
  }
  if (originKey_ == nullptr) {
    originKey_ = new OriginKey(this);
    connect(originKey_, &QAbstractButton::clicked, this, &QuantityEdit::openOrigins);
  }
  const bool said = beside_.origin != Origin::NotSaid;
  const QFontMetrics metrics = fontMetrics();
  const QString word = said ? fromCore(describe::originLabel(beside_.origin)) : tr("origin…");
  const int taken =
      metrics.horizontalAdvance(text() + beside_.echo + beside_.mark + QStringLiteral("000"));
  const bool fits = hasFocus() && taken + metrics.horizontalAdvance(word) <= width();
  originKey_->setText(fits ? word : said ? originMark(beside_.origin) : QStringLiteral("…"));
  originKey_->setAccessibleName(
      tr("Where it comes from: %1").arg(fromCore(describe::originLabel(beside_.origin))));
  const int room =
      std::max(originWidth(metrics, QStringLiteral("m")), originWidth(metrics, originKey_->text()));
  originKey_->setGeometry(width() - room, 0, room, height());
  originKey_->show();
}

void QuantityEdit::openOrigins() {
  if (!beside_.known) return;
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  addOriginChoices(*menu);
  addOriginDialog(*menu);
  menu->popup(mapToGlobal(rect().bottomLeft()));
}

void QuantityEdit::addOrigins(QMenu& menu) {
  QMenu* from = menu.addMenu(tr("&Where from"));
  from->setEnabled(document_.entry(place_).known());
  addOriginChoices(*from);
  addOriginDialog(menu);
}

void QuantityEdit::addOriginDialog(QMenu& menu) {
  menu.addAction(tr("Origin, date and &note…"), this, &QuantityEdit::askOrigin);
}

void QuantityEdit::addOriginChoices(QMenu& menu) {
  if (!place_.input->instrument.empty()) {
    const Taste& taste = document_.taste();
    menu.addAction(
        tr("Measured with %1, ± %2")
            .arg(taste.inTerms(fromCore(place_.input->instrument)),
                 fromCore(taste.style().editable(place_.input->kind, place_.input->plusMinus)) +
                     QChar(u' ') + taste.unit(place_.input->kind)),
        this, [this] { sayMeasured(); });
  }
  for (const Origin origin : {Origin::MakersBook, Origin::Catalogue, Origin::Assumed}) {
    menu.addAction(fromCore(describe::originLabel(origin)), this, [this, origin] {
      Entry entry = document_.entry(place_);
      entry.origin = origin;
      entry.instrument.clear();
      document_.say(place_, entry);
    });
  }
}

void QuantityEdit::sayMeasured() {
  Entry entry = document_.entry(place_);
  entry.origin = Origin::Measured;
  entry.instrument = place_.input->instrument;
  entry.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  if (!entry.plusMinus && place_.input->plusMinus > 0.0) entry.plusMinus = place_.input->plusMinus;
  document_.say(place_, entry);
}

void QuantityEdit::askOrigin() {
  auto* dialog = new OriginDialog(document_, place_, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this,
          [this, dialog] { document_.say(place_, dialog->answer()); });
  dialog->open();
}

// Paint ------------------------------------------------------------------------------------------

void QuantityEdit::paintEvent(QPaintEvent* event) {
  if (!wraps()) QLineEdit::paintEvent(event);
  QPainter painter(this);
  ink::paintBaseline(painter, *this);
  QRect room = rect();
  if (originKey_ == nullptr || !originKey_->isVisible()) {
    painter.setPen(ink::muted(palette()));
    painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, originMark(beside_.origin));
  }
  room.setRight(room.right() - originRoom());
  const QString beside = wraps() ? beside_.mark : besideText();
  const QColor spoken = beside_.heavy ? ink::forbids(palette()) : ink::objects(palette());
  painter.setPen(beside_.mark.isEmpty() ? ink::muted(palette()) : spoken);
  painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, beside);
  if (wraps() && hasFocus()) {
    paintWritten(painter);
  } else if (wraps()) {
    painter.setPen(text().isEmpty() ? ink::muted(palette()) : ink::text(palette()));
    // As it breaks with the focus: a press is to find what it points at.
    painter.drawText(QRect(2, 0, roomIn(width()), height()),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, wholeText());
  }
}

}  // namespace strokewright::ui
