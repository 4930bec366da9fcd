#pragma once
/// The open project: the one edit door, undo, the file, the recovery file, and the assessment made
/// again at every change.

#include <QObject>
#include <QString>
#include <QStringList>
#include <QUndoStack>
#include <functional>
#include <memory>
#include <optional>

#include "core/assess/assess.h"
#include "core/model/engine.h"
#include "ui/document/entry_place.h"
#include "ui/document/file_stamp.h"

namespace strokewright::ui {

class EditProject;
class RecoveryFile;
class Taste;
struct RecoveredWork;

class Document final : public QObject {
  Q_OBJECT

 public:
  /// A new project. The taste says in which unit a bare number is typed; it must outlive this.
  explicit Document(Taste& taste, QObject* parent = nullptr);
  /// A clean close: the recovery file goes. Ask about unsaved work before.
  ~Document() override;

  Taste& taste() const { return taste_; }
  const model::Project& project() const { return *project_; }
  const assess::Assessment& assessment() const { return *assessment_; }
  /// For questions that need trials (solve, sweep, contributors); leaves the cells as they are.
  describe::Evaluation& evaluation() { return assessment_->evaluation(); }

  /// The entry of an engine; an empty one where nothing was entered.
  const describe::Entry& entry(int engine, const describe::Input& input) const {
    return entry({engine, input});
  }
  /// The same wherever it stands.
  const describe::Entry& entry(const EntryPlace& place) const;
  const std::vector<describe::Entries>& items(const ListPlace& place) const;
  QString engineName(int engine) const;

  using Change = std::function<void(model::Project&)>;

  /// The only door. An edit that changes nothing leaves no step.
  /// @param text      what the builder did, as he would say it: "bore of Burdock 719".
  /// @param mergeKey  steps with the same key that follow each other become one; empty: never.
  void edit(const QString& text, const Change& change, const QString& mergeKey = {});
  /// Ends merging: the next step with the same key is a step of its own (focus left the field).
  void closeStep();
  /// Takes back the open step of this key, if there is one (Escape in a field).
  void undoOpenStep(const QString& mergeKey);

  /// Text typed into an entry; the one way every field uses. Text that makes no sense is kept.
  /// Origin, instrument, date, note, ± and its shape stay: a text with a ± of its own brings that,
  /// over a number that was computed none stays, and without a text the note alone does.
  void type(int engine, const describe::Input& input, const QString& text) {
    type({engine, input}, text);
  }
  /// In a list, typing behind its last item begins one more.
  void type(const EntryPlace& place, const QString& text);
  /// The key by which the keystrokes of one field merge.
  static QString mergeKey(const EntryPlace& place);
  static QString mergeKey(int engine, const describe::Input& input) {
    return mergeKey({engine, input});
  }
  /// Where an entry comes from: origin, shape, instrument, date and note of `from` are taken, and a
  /// ± that it has where the entry has none. As one step.
  void say(const EntryPlace& place, const describe::Entry& from);
  void say(int engine, const describe::Input& input, const describe::Entry& from) {
    say({engine, input}, from);
  }
  /// A number that the workbench found: like type(), but of origin computed, as a step of its own.
  void putComputed(int engine, const describe::Input& input, const QString& text);
  /// Puts a finding's mend in, as one step; a number it worked out becomes of origin computed.
  void take(int engine, const describe::Mend& mend) { take(engine, mend, QString()); }
  /// The same for entries that belong together, "stack" of the engine.
  void take(int engine, const describe::Mend& mend, const QString& what);

  /// A block of a spreadsheet, cells separated by tabs, as if typed from this place to the right
  /// and down; what is beyond the last column is left out. As one step.
  void paste(const EntryPlace& first, const QString& block);
  void removeItem(const ListPlace& place, int item);        ///< Undoable.
  void moveItem(const ListPlace& place, int from, int to);  ///< Undoable.
  /// As undo names it: "bore of Burdock 719", "Shelf: part 2, thickness".
  QString subject(const EntryPlace& place) const;

  int addEngine(model::Part part, int copyOf);  ///< copyOf -1: empty. Undoable. Returns its index.
  void removeEngine(int engine);                ///< Undoable.
  void renameEngine(int engine, const QString& name);  ///< Undoable, keystrokes merge.

  QUndoStack& undoStack() { return undoStack_; }

  // File
  /// One empty donor and one empty target.
  void startNew();
  /// @returns false with a sentence in error(); the open project stays.
  bool open(const QString& path);
  /// Opens a copy without a name (samples).
  bool openCopy(const QString& path, const QString& shownName);
  /// Goes on with work that a crash left; it counts as unsaved.
  void recover(const RecoveredWork& recovered);
  /// @returns false with a sentence in error(); the file on disk is as it was. A file that somebody
  /// else changed is overwritten: ask changedOnDisk() before. What was there becomes the backup
  /// "NAME.strokewright~".
  bool save();
  bool saveAs(const QString& path);
  QString path() const { return path_; }
  QString shownName() const;
  bool modified() const { return !undoStack_.isClean() || neverSaved_; }
  QString error() const { return error_; }
  const QStringList& remarks() const { return remarks_; }  ///< of the last open or save
  /// The file on disk is not the one that was opened or last saved.
  bool changedOnDisk() const;
  const RecoveryFile& recoveryFile() const { return *recovery_; }

 Q_SIGNALS:
  /// Another project opens, before projectChanged(): what a view remembers of the last one is void.
  void begun();
  void projectChanged();  ///< the project and the assessment are new
  void fileChanged();     ///< path or modified mark

 private:
  friend class EditProject;
  void replace(std::shared_ptr<const model::Project> project);
  void begin(model::Project project, const QString& path, const QString& shownName);
  std::optional<model::Project> read(const QString& path, QByteArray& content);
  bool write(const QString& path);
  void keepBackup(const QString& path);
  const EditProject* openStep(const QString& mergeKey) const;
  void keepRecovery();
  QString subject(const ListPlace& place) const;
  QString subject(const ListPlace& place, int item) const;
  QString freeName(const QString& wanted) const;

  Taste& taste_;
  std::shared_ptr<const model::Project> project_;
  std::unique_ptr<assess::Assessment> assessment_;
  QUndoStack undoStack_;
  std::unique_ptr<RecoveryFile> recovery_;
  int stepNumber_ = 0;
  QString path_;
  QString shownName_;
  FileStamp onDisk_;
  QString error_;
  QStringList remarks_;
  bool neverSaved_ = false;
};

}  // namespace strokewright::ui
