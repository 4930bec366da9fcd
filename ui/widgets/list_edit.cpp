#include "ui/widgets/list_edit.h"

#include <QApplication>
#include <QClipboard>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/document/taste.h"
#include "ui/widgets/choice_edit.h"
#include "ui/widgets/entry_edit.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/whole_rows.h"

namespace strokewright::ui {
namespace {

constexpr int kMostLines = 7;      ///< that a list asks room for
constexpr int kLeastLines = 2;     ///< that are always seen, where there are so many
constexpr int kHeadLine = 0;       ///< of the grid
constexpr int kChoiceDigits = 16;  ///< room for an answer
constexpr int kNumberDigits = 12;  ///< room for a number and its ±
constexpr int kCountDigits = 7;

int digitsOf(units::Kind kind) {
  if (kind == units::Kind::Choice) return kChoiceDigits;
  return kind == units::Kind::Count ? kCountDigits : kNumberDigits;
}

}  // namespace

ListEdit::ListEdit(Document& document, const ListPlace& place, QWidget* parent)
    : QWidget(parent), document_(document), place_(place), scroll_(new QScrollArea(this)) {
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setFocusPolicy(Qt::NoFocus);
  new WholeRows(*scroll_);
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->addWidget(scroll_);
  connect(&document, &Document::projectChanged, this, &ListEdit::refresh);
  connect(&document.taste(), &Taste::changed, this, &ListEdit::reword);
  rebuild();
}

void ListEdit::setEngine(int engine) {
  if (engine == place_.engine) return;
  place_.engine = engine;
  rebuild();
}

QWidget* ListEdit::field(int line, const describe::Input& column) const {
  if (line < 0 || line >= lines()) return nullptr;
  const auto at = std::ranges::find(place_.list->columns, &column);
  if (at == place_.list->columns.end()) return nullptr;
  return lines_[static_cast<std::size_t>(line)]
      .fields[static_cast<std::size_t>(at - place_.list->columns.begin())];
}

// Lines ------------------------------------------------------------------------------------------

void ListEdit::rebuild() {
  heads_.clear();
  lines_.clear();
  body_ = new QWidget;
  grid_ = new QGridLayout(body_);
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setVerticalSpacing(2);
  grid_->setHorizontalSpacing(8);
  for (std::size_t i = 0; i < place_.list->columns.size(); ++i) {
    auto* head = new QLabel(body_);
    head->setWordWrap(true);
    head->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    grid_->addWidget(head, kHeadLine, static_cast<int>(i));
    heads_.push_back(head);
  }
  setColumns();
  reword();
  scroll_->setWidget(body_);  // the one before is deleted by the scroll area
  body_->setAutoFillBackground(false);
  scroll_->viewport()->setAutoFillBackground(false);
  refresh();
}

void ListEdit::refresh() {
  const int wanted = static_cast<int>(document_.items(place_).size()) + 1;
  const int before = lines();
  while (lines() < wanted) addLine();
  while (lines() > wanted) removeLine();
  for (int line = 0; line < wanted; ++line) {
    lines_[static_cast<std::size_t>(line)].remove->setEnabled(line + 1 < wanted);
  }
  if (lines() == before) return;
  grid_->setRowStretch(before + 1, 0);
  grid_->setRowStretch(wanted + 1, 1);
  updateGeometry();
  Q_EMIT relined();
}

void ListEdit::addLine() {
  Line line;
  const int number = lines();
  for (const describe::Input* column : place_.list->columns) {
    QWidget* field = makeEntryEdit(document_, EntryPlace(place_, number, *column), body_);
    field->installEventFilter(this);
    grid_->addWidget(field, number + 1, static_cast<int>(line.fields.size()));
    field->show();
    line.fields.push_back(field);
  }
  line.remove = new QToolButton(body_);
  line.remove->setText(QStringLiteral("×"));
  line.remove->setAutoRaise(true);
  line.remove->setMaximumHeight(ink::rowHeight(fontMetrics()));
  line.remove->setFocusPolicy(Qt::NoFocus);
  line.remove->setToolTip(tr("Remove this line (Ctrl+Delete)"));
  line.remove->setAccessibleName(tr("Remove %1 %2")
                                     .arg(document_.taste().inTerms(fromCore(place_.list->item)))
                                     .arg(number + 1));
  connect(line.remove, &QToolButton::clicked, this, [this, number] { remove(number); });
  grid_->addWidget(line.remove, number + 1, static_cast<int>(line.fields.size()));
  line.remove->show();
  lines_.push_back(std::move(line));
}

/// The last one. Its field may be the one that hears of the change just now.
void ListEdit::removeLine() {
  const int last = lines() - 1;
  const Line& line = lines_.back();
  for (std::size_t i = 0; i < line.fields.size(); ++i) {
    if (line.fields[i]->hasFocus()) focusField(last - 1, static_cast<int>(i));
    line.fields[i]->hide();
    line.fields[i]->deleteLater();
  }
  line.remove->hide();
  line.remove->deleteLater();
  lines_.pop_back();
}

void ListEdit::reword() {
  const Taste& taste = document_.taste();
  for (std::size_t i = 0; i < heads_.size(); ++i) {
    const describe::Input& column = *place_.list->columns[i];
    const QString unit = taste.unit(column.kind);
    const QString label = taste.label(column);
    heads_[i]->setText(unit.isEmpty() ? label : label + QChar(u'\n') + unit);
    heads_[i]->setToolTip(tipFrom(taste.inTerms(fromCore(column.measure))));
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, ink::muted(palette()));
    heads_[i]->setPalette(quiet);
  }
}

void ListEdit::setColumns() {
  const int digit = fontMetrics().horizontalAdvance(u'0');
  for (std::size_t i = 0; i < place_.list->columns.size(); ++i) {
    const int digits = digitsOf(place_.list->columns[i]->kind);
    grid_->setColumnMinimumWidth(static_cast<int>(i), digits * digit);
    grid_->setColumnStretch(static_cast<int>(i), digits);
  }
}

void ListEdit::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) setColumns();
  if (event->type() == QEvent::PaletteChange) reword();
}

/// Of a row of the grid, as its words wrap in their columns.
int ListEdit::rowHeight(int row) const {
  int height = 0;
  for (int column = 0; column < grid_->columnCount(); ++column) {
    const QLayoutItem* item = grid_->itemAtPosition(row, column);
    if (item == nullptr) continue;
    const int width =
        std::max(grid_->cellRect(kHeadLine, column).width(), grid_->columnMinimumWidth(column));
    height = std::max(height, item->hasHeightForWidth() ? item->heightForWidth(width)
                                                        : item->sizeHint().height());
  }
  return height;
}

/// With the head, and with the bar below where the columns are wider than their place.
int ListEdit::heightOf(int lines) const {
  int height = rowHeight(kHeadLine);
  for (int line = 1; line <= lines; ++line) {
    height += grid_->verticalSpacing() + rowHeight(line);
  }
  const bool scrolls = width() < wholeWidth();
  return height + (scrolls ? scroll_->horizontalScrollBar()->sizeHint().height() : 0);
}

int ListEdit::wholeWidth() const {
  return body_->minimumSizeHint().width() + scroll_->verticalScrollBar()->sizeHint().width();
}

QSize ListEdit::sizeHint() const { return {wholeWidth(), heightOf(std::min(lines(), kMostLines))}; }

QSize ListEdit::minimumSizeHint() const {
  return {body_->minimumSizeHint().width() / 2, heightOf(std::min(lines(), kLeastLines))};
}

// Keys -------------------------------------------------------------------------------------------

bool ListEdit::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  for (int line = 0; line < lines(); ++line) {
    const auto& fields = lines_[static_cast<std::size_t>(line)].fields;
    const auto at = std::ranges::find(fields, watched);
    if (at != fields.end()) {
      return act(static_cast<QKeyEvent&>(*event), line, static_cast<int>(at - fields.begin()));
    }
  }
  return false;
}

bool ListEdit::act(const QKeyEvent& key, int line, int column) {
  const describe::Input& input = *place_.list->columns[static_cast<std::size_t>(column)];
  const bool choice = input.kind == units::Kind::Choice;
  const bool moves = key.modifiers() == (Qt::AltModifier | Qt::ShiftModifier);
  const bool removes =
      key.key() == Qt::Key_Delete && (choice || key.modifiers().testFlag(Qt::ControlModifier));
  if (removes) {
    remove(line);
  } else if (choice && key.matches(QKeySequence::Paste)) {
    document_.paste(EntryPlace(place_, line, input), QApplication::clipboard()->text());
  } else if (moves && key.key() == Qt::Key_Up) {
    move(line, column, -1);
  } else if (moves && key.key() == Qt::Key_Down) {
    move(line, column, 1);
  } else if (!choice && (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter)) {
    focusField(line + 1, column);
  } else {
    return false;
  }
  return true;
}

void ListEdit::focusField(int line, const describe::Input& column) {
  const auto at = std::ranges::find(place_.list->columns, &column);
  focusField(line, static_cast<int>(at - place_.list->columns.begin()));
}

void ListEdit::focusField(int line, int column) {
  if (line < 0 || line >= lines()) return;
  QWidget* field = lines_[static_cast<std::size_t>(line)].fields[static_cast<std::size_t>(column)];
  field->setFocus(Qt::OtherFocusReason);
  scroll_->ensureWidgetVisible(field);
}

void ListEdit::remove(int line) {
  document_.closeStep();
  document_.removeItem(place_, line);
}

void ListEdit::move(int line, int column, int by) {
  document_.closeStep();
  document_.moveItem(place_, line, line + by);
  if (line + by < lines() - 1) focusField(line + by, column);
}

}  // namespace strokewright::ui
