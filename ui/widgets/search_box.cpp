#include "ui/widgets/search_box.h"

#include <QCompleter>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QWheelEvent>

#include "ui/widgets/plain_field.h"

namespace strokewright::ui {

SearchBox::SearchBox(const QString& name, QWidget* parent) : QComboBox(parent) {
  setEditable(true);
  setInsertPolicy(QComboBox::NoInsert);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMinimumContentsLength(16);
  setAccessibleName(name);
  lineEdit()->setAccessibleName(name);
  lineEdit()->setPlaceholderText(name);
  leaveUndoToDocument(*lineEdit());
  completer()->setFilterMode(Qt::MatchContains);
  completer()->setCompletionMode(QCompleter::PopupCompletion);
  completer()->setCaseSensitivity(Qt::CaseInsensitive);
  connect(this, &QComboBox::activated, this, [this](int row) {
    if (row == chosen_) return;
    chosen_ = row;
    inVain_.clear();
    Q_EMIT chosen(row);
  });
  connect(lineEdit(), &QLineEdit::editingFinished, this, &SearchBox::settle);
}

void SearchBox::offer(const QStringList& words, int current) {
  QStringList standing;
  for (int i = 0; i < count(); ++i) standing += itemText(i);
  chosen_ = current;
  const QSignalBlocker quiet(this);
  if (standing != words) {
    clear();
    addItems(words);
  }
  if (current < 0 && !inVain_.isEmpty()) {
    setCurrentIndex(-1);
    setEditText(inVain_);
    return;
  }
  inVain_.clear();
  if (currentIndex() != current || !lineEdit()->hasFocus()) setCurrentIndex(current);
}

/// A combo box hands keys to its line past the line's event filters.
bool SearchBox::event(QEvent* event) {
  if (!undoes(*event)) return QComboBox::event(event);
  event->ignore();
  return false;
}

void SearchBox::wheelEvent(QWheelEvent* event) { event->ignore(); }

int SearchBox::lastWith(const QString& part) const {
  for (int i = count() - 1; i >= 0; --i) {
    if (itemText(i).contains(part, Qt::CaseInsensitive)) return i;
  }
  return -1;
}

/// The one that is meant where only one holds what was typed.
void SearchBox::settle() {
  const QString typed = currentText().trimmed();
  if (typed == inVain_ && !typed.isEmpty()) return;
  if (typed.isEmpty()) {
    inVain_.clear();
    setCurrentIndex(chosen_);
    return;
  }
  int meant = findText(typed, Qt::MatchFixedString);
  if (meant < 0) {
    const int first = findText(typed, Qt::MatchContains);
    const int last = lastWith(typed);
    meant = first == last ? first : -1;
  }
  if (meant < 0) {
    chosen_ = -1;
    inVain_ = typed;
    setCurrentIndex(-1);
    setEditText(typed);
    Q_EMIT notFound(typed);
    return;
  }
  const bool another = meant != chosen_;
  inVain_.clear();
  chosen_ = meant;
  setCurrentIndex(chosen_);
  setEditText(itemText(chosen_));
  if (another) Q_EMIT chosen(meant);
}

}  // namespace strokewright::ui
