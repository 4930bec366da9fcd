#include "ui/pages/link_button.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOptionFocusRect>

#include "ui/widgets/field_steps.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

LinkButton::LinkButton(const QString& text, QWidget* parent) : QToolButton(parent) {
  setText(text);
  setAccessibleName(text);
  setAutoRaise(true);
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize LinkButton::sizeHint() const {
  QFont heavier = font();
  heavier.setBold(true);
  const QFontMetrics metrics(heavier);
  return {metrics.horizontalAdvance(text()) + 8, metrics.height() + 4};
}

void LinkButton::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    click();
  } else if (isArrow(*event)) {
    event->ignore();
  } else {
    QToolButton::keyPressEvent(event);
  }
}

void LinkButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  QFont heavier = font();
  heavier.setBold(true);
  heavier.setUnderline(underMouse() && isEnabled());
  painter.setFont(heavier);
  painter.setPen(isEnabled() ? ink::accent(palette()) : ink::muted(palette()));
  painter.drawText(rect(), Qt::AlignCenter, text());
  if (hasFocus()) {
    QStyleOptionFocusRect focus;
    focus.initFrom(this);
    style()->drawPrimitive(QStyle::PE_FrameFocusRect, &focus, &painter, this);
  }
}

QuietLabel::QuietLabel(const QString& text, QWidget* parent) : QLabel(text, parent) { takeInk(); }

void QuietLabel::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange && !taking_) {
    takeInk();
  }
  QLabel::changeEvent(event);
}

void QuietLabel::takeInk() {
  taking_ = true;
  QPalette quiet;
  quiet.setColor(QPalette::WindowText,
                 ink::muted(parentWidget() != nullptr ? parentWidget()->palette() : palette()));
  setPalette(quiet);
  taking_ = false;
}

Rule::Rule(QWidget* parent) : QWidget(parent) {
  setFixedHeight(1);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void Rule::paintEvent(QPaintEvent*) { QPainter(this).fillRect(rect(), ink::rule(palette())); }

bool isLow(const QWidget& inside) {
  constexpr int kFewLines = 40;
  return inside.window()->height() < kFewLines * inside.window()->fontMetrics().height();
}

void say(QLabel& label, const QString& text) {
  if (label.text() != text) {
    label.setText(text);
  }
}

}  // namespace strokewright::ui
