#pragma once
/// The one undoable command of the program: the whole project before and after.

#include <QUndoCommand>
#include <memory>

#include "core/model/engine.h"

namespace strokewright::ui {

class Document;

/// What a step may merge with: the next step with the same key while the step is open.
struct StepKey {
  QString key;     ///< empty: never merges
  int number = 0;  ///< of the open step; another number: it was closed in between
  bool operator==(const StepKey&) const = default;
};

class EditProject final : public QUndoCommand {
 public:
  EditProject(Document& document, std::shared_ptr<const model::Project> before,
              std::shared_ptr<const model::Project> after, const QString& text, StepKey key);

  void undo() override;
  void redo() override;
  int id() const override { return 1; }
  /// Takes the later step in when both have the same key; obsolete when nothing changed in the end.
  bool mergeWith(const QUndoCommand* later) override;

  const StepKey& key() const { return key_; }
  const model::Project& before() const { return *before_; }

 private:
  Document& document_;
  std::shared_ptr<const model::Project> before_;
  std::shared_ptr<const model::Project> after_;
  StepKey key_;
};

}  // namespace strokewright::ui
