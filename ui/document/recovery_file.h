#pragma once
/// Work that outlives a crash: one file per running program, beside the user's data and never over
/// his project file.

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

#include "core/model/engine.h"
#include "ui/document/file_stamp.h"

namespace strokewright::ui {

/// What a recovery file holds besides when it was written.
struct UnsavedWork {
  std::shared_ptr<const model::Project> project;
  QString path;       ///< of the project file; empty when there is none
  QString shownName;  ///< what the window called it
  FileStamp onDisk;   ///< the project file as it was opened or last saved
};

/// The recovery file of this running program. It says that it lives by a lock that the system
/// frees when the program dies.
class RecoveryFile final : public QObject {
  Q_OBJECT

 public:
  explicit RecoveryFile(QObject* parent = nullptr);
  ~RecoveryFile() override;

  /// Written at most one second after the first change since it was last written.
  void keep(UnsavedWork work);
  /// Writes what is kept at once.
  /// @returns false when that was not possible.
  bool write();
  /// Says to other running programs that this one has the project file open, instead of the one
  /// before; an empty path: none. Never waits, and keeps nobody out.
  /// @returns false when another one has it open.
  bool claim(const QString& projectFile);

  /// There is nothing to lose: saved, undone, or closed on purpose.
  void discard();

  /// Where recovery files of all running programs lie; need not exist.
  static QString folder();

  QString path() const { return path_; }  ///< of the file; empty before the first write

 Q_SIGNALS:
  void written();
  void failed(const QString& sentence);  ///< work is not safe: the disk is full or read only

 private:
  bool begin();

  UnsavedWork work_;
  QTimer timer_;
  QString path_;
  std::unique_ptr<QLockFile> lock_;
  std::unique_ptr<QLockFile> claim_;
};

/// What a program that died left behind.
struct RecoveredWork {
  QString file;                     ///< the recovery file
  QDateTime time;                   ///< of its last write
  std::optional<UnsavedWork> work;  ///< nothing: cannot be read, see trouble
  QString trouble;                  ///< why it cannot be read, a sentence
  int differingEntries = 0;         ///< entries that are not as in the project file
  bool fileIsNewer = false;         ///< the project file was written after it

  QString shownName() const;  ///< file name of the project, or what it was called
  /// It is work on this project file, by whatever way its path is written.
  bool isOf(const QString& projectFile) const;
  /// Removes the recovery file.
  void discard() const;

  /// Recovery files whose programs are dead, the latest first. Never throws; a file that cannot
  /// be read is listed as such and stays.
  static std::vector<RecoveredWork> find();
};

/// Entries and texts in which two projects differ.
int countDifferences(const model::Project& a, const model::Project& b);

}  // namespace strokewright::ui
