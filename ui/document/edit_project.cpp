#include "ui/document/edit_project.h"

#include <utility>

#include "ui/document/document.h"

namespace strokewright::ui {

EditProject::EditProject(Document& document, std::shared_ptr<const model::Project> before,
                         std::shared_ptr<const model::Project> after, const QString& text,
                         StepKey key)
    : QUndoCommand(text),
      document_(document),
      before_(std::move(before)),
      after_(std::move(after)),
      key_(std::move(key)) {}

void EditProject::undo() {
  document_.closeStep();
  document_.replace(before_);
}

void EditProject::redo() { document_.replace(after_); }

bool EditProject::mergeWith(const QUndoCommand* later) {
  const auto& step = static_cast<const EditProject&>(*later);
  if (key_.key.isEmpty() || step.key_ != key_) return false;
  after_ = step.after_;
  setObsolete(*after_ == *before_);
  return true;
}

}  // namespace strokewright::ui
