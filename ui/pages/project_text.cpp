#include "ui/pages/project_text.h"

#include <QKeyEvent>
#include <QPainter>
#include <utility>

#include "ui/document/taste.h"
#include "ui/widgets/field_steps.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

const std::string* TextPlace::in(const model::Project& project) const {
  if (ofProject != nullptr) {
    return &(project.*ofProject);
  }
  const auto number = static_cast<std::size_t>(engine);
  return number < project.engines.size() ? &(project.engines[number].*ofEngine) : nullptr;
}

std::string* TextPlace::in(model::Project& project) const {
  return const_cast<std::string*>(in(std::as_const(project)));
}

ProjectText::ProjectText(Document& document, const QString& name, const QString& step,
                         TextPlace place, QWidget* parent)
    : QLineEdit(parent), document_(document), step_(step), place_(place) {
  setAccessibleName(name);
  setFrame(false);
  QPalette bare;
  bare.setColor(QPalette::Base, Qt::transparent);
  setPalette(bare);
  connect(this, &QLineEdit::textEdited, this, &ProjectText::type);
  connect(&document_, &Document::projectChanged, this, &ProjectText::refresh);
  refresh();
}

void ProjectText::refresh() {
  const std::string* now = place_.in(document_.project());
  const QString shown = now == nullptr ? QString() : fromCore(*now);
  if (shown != text()) {
    setText(shown);
    setCursorPosition(0);
  }
}

void ProjectText::type(const QString& text) {
  document_.edit(
      step_,
      [this, &text](model::Project& project) {
        if (std::string* there = place_.in(project)) {
          *there = text.toStdString();
        }
      },
      step_);
}

bool ProjectText::event(QEvent* event) {
  if (event->type() == QEvent::FocusIn) {
    const bool taken = QLineEdit::event(event);
    if (static_cast<QFocusEvent*>(event)->reason() != Qt::MouseFocusReason) {
      selectAll();  // typing at once replaces what stands there
    }
    return taken;
  }
  if (event->type() == QEvent::KeyPress) {
    const auto& key = static_cast<const QKeyEvent&>(*event);
    const bool enter = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
    if (enter || goesUpOrDown(key)) {
      const bool there = goToField(fieldBeside(*this, key.key() == Qt::Key_Up));
      if (enter && !there) focusNextChild();
      return true;
    }
  }
  if (event->type() == QEvent::ShortcutOverride) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QLineEdit::event(event);
}

void ProjectText::focusOutEvent(QFocusEvent* event) {
  document_.closeStep();
  QLineEdit::focusOutEvent(event);
}

void ProjectText::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  QPainter painter(this);
  painter.fillRect(0, height() - (hasFocus() ? 2 : 1), width(), hasFocus() ? 2 : 1,
                   hasFocus() ? ink::accent(palette()) : ink::rule(palette()));
}

}  // namespace strokewright::ui
