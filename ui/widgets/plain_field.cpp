#include "ui/widgets/plain_field.h"

#include <QKeyEvent>
#include <QLineEdit>

namespace strokewright::ui {

namespace {

class PassesUndoOn final : public QObject {
 public:
  using QObject::QObject;

  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) {
      return false;
    }
    const auto& key = static_cast<const QKeyEvent&>(*event);
    if (!key.matches(QKeySequence::Undo) && !key.matches(QKeySequence::Redo)) return false;
    event->ignore();
    return true;
  }
};

}  // namespace

void leaveUndoToDocument(QLineEdit& field) { field.installEventFilter(new PassesUndoOn(&field)); }

}  // namespace strokewright::ui
