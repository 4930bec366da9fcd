#include "ui/widgets/field_steps.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QScrollArea>

#include "ui/widgets/choice_edit.h"

namespace strokewright::ui {

bool goesUpOrDown(const QKeyEvent& event) {
  return event.modifiers() == Qt::NoModifier &&
         (event.key() == Qt::Key_Up || event.key() == Qt::Key_Down);
}

bool isArrow(const QKeyEvent& event) {
  return event.key() == Qt::Key_Up || event.key() == Qt::Key_Down || event.key() == Qt::Key_Left ||
         event.key() == Qt::Key_Right;
}

QWidget* fieldBeside(const QWidget& field, bool above) {
  QWidget* nearest = nullptr;
  if (field.parentWidget() == nullptr) return nearest;
  const int middle = field.geometry().center().x();
  for (QWidget* other :
       field.parentWidget()->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
    const bool isField =
        qobject_cast<QLineEdit*>(other) != nullptr || qobject_cast<ChoiceEdit*>(other) != nullptr;
    const QRect there = other->geometry();
    const bool column = there.left() <= middle && middle <= there.right();
    const bool beyond =
        above ? there.bottom() <= field.y() : there.top() >= field.geometry().bottom();
    if (!isField || !column || !beyond || !other->isVisible() || !other->isEnabled()) continue;
    if (nearest == nullptr || (above ? there.top() > nearest->y() : there.top() < nearest->y())) {
      nearest = other;
    }
  }
  return nearest;
}

bool goToField(QWidget* field) {
  if (field == nullptr) return false;
  field->setFocus(Qt::TabFocusReason);
  for (QWidget* around = field->parentWidget(); around != nullptr;
       around = around->parentWidget()) {
    if (auto* scroll = qobject_cast<QScrollArea*>(around)) {
      scroll->ensureWidgetVisible(field);
      break;
    }
  }
  return true;
}

}  // namespace strokewright::ui
