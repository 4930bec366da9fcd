#include "ui/widgets/plain_field.h"

#include <QKeyEvent>
#include <QLineEdit>

namespace strokewright::ui {

bool undoes(const QEvent& event) {
  if (event.type() != QEvent::ShortcutOverride && event.type() != QEvent::KeyPress) return false;
  const auto& key = static_cast<const QKeyEvent&>(event);
  return key.matches(QKeySequence::Undo) || key.matches(QKeySequence::Redo);
}

namespace {

class PassesUndoOn final : public QObject {
 public:
  using QObject::QObject;

  bool eventFilter(QObject*, QEvent* event) override {
    if (!undoes(*event)) return false;
    event->ignore();
    return true;
  }
};

}  // namespace

void leaveUndoToDocument(QLineEdit& field) { field.installEventFilter(new PassesUndoOn(&field)); }

}  // namespace strokewright::ui
