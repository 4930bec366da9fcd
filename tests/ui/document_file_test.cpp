#include <sys/resource.h>
#include <unistd.h>

#include <QJsonDocument>
#include <QJsonObject>
#include <QSignalSpy>
#include <csignal>

#include "core/storage/project_text.h"
#include "tests/ui/fixture.h"

namespace strokewright::ui {
namespace {

class ProjectFile : public WithDocument {
 protected:
  void typeBore(const QString& text) {
    document_.type(kTarget, in::bore, text);
    document_.closeStep();
  }

  QString path_ = inFolder(QStringLiteral("burdock.strokewright"));
};

/// No file grows beyond so many bytes while this lives, as if the disk were full.
class FullDisk {
 public:
  explicit FullDisk(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &before_);
    rlimit limit = before_;
    limit.rlim_cur = bytes;
    setrlimit(RLIMIT_FSIZE, &limit);
  }
  ~FullDisk() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  bool enforced(const QString& probe) const {
    QFile file(probe);
    return !file.open(QIODevice::WriteOnly | QIODevice::Unbuffered) ||
           file.write(QByteArray(4096, 'x')) < 4096;
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

 private:
  void (*handler_)(int);
  rlimit before_{};
};

/// Nothing can be written into the folder while this lives, not even by root, who becomes somebody
/// else for that time.
class ClosedFolder {
 public:
  explicit ClosedFolder(const QString& path) : folder_(path), open_(folder_.permissions()) {
    folder_.setPermissions(QFile::ReadOwner | QFile::ExeOwner);
    EXPECT_EQ(seteuid(user_ == 0 ? kNobody : user_), 0);
  }
  ~ClosedFolder() {
    EXPECT_EQ(seteuid(user_), 0);
    folder_.setPermissions(open_);
  }
  ClosedFolder(const ClosedFolder&) = delete;
  ClosedFolder& operator=(const ClosedFolder&) = delete;

 private:
  static constexpr uid_t kNobody = 65534;

  uid_t user_ = geteuid();
  QFile folder_;
  QFile::Permissions open_;
};

TEST_F(ProjectFile, OpensWhatWasSaved) {
  typeBore(QStringLiteral("98.20 ± 0.03"));
  ASSERT_TRUE(document_.saveAs(path_));
  Document other(taste_);
  ASSERT_TRUE(other.open(path_));
  EXPECT_EQ(other.project(), document_.project());
  EXPECT_EQ(other.shownName(), QStringLiteral("burdock"));
  EXPECT_FALSE(other.modified());
}

TEST_F(ProjectFile, SavingEndsNoUndoAndMovesTheModifiedMark) {
  typeBore(QStringLiteral("98"));
  const QSignalSpy told(&document_, &Document::fileChanged);
  ASSERT_TRUE(document_.saveAs(path_));
  EXPECT_FALSE(document_.modified());
  EXPECT_GE(told.count(), 1);
  EXPECT_TRUE(document_.undoStack().canUndo());
  document_.undoStack().undo();
  EXPECT_TRUE(document_.modified());
  document_.undoStack().redo();
  EXPECT_FALSE(document_.modified());
}

TEST_F(ProjectFile, TypingOnAfterASaveIsAStepOfItsOwn) {
  document_.type(kTarget, in::bore, QStringLiteral("98"));
  ASSERT_TRUE(document_.saveAs(path_));
  document_.type(kTarget, in::bore, QStringLiteral("98.2"));
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "98");
  EXPECT_FALSE(document_.modified());
}

TEST_F(ProjectFile, StaysTheFileOfTheProjectHoweverOftenItIsSaved) {
  ASSERT_TRUE(document_.saveAs(path_));
  for (const auto* text : {u"98", u"99"}) {
    typeBore(QString::fromUtf16(text));
    ASSERT_TRUE(document_.save());
    EXPECT_EQ(document_.path(), path_);
    EXPECT_EQ(document_.shownName(), QStringLiteral("burdock"));
    EXPECT_FALSE(document_.changedOnDisk());
  }
  Document other(taste_);
  ASSERT_TRUE(other.open(path_));
  EXPECT_EQ(other.project(), document_.project());
}

TEST_F(ProjectFile, KeepsThePreviousSaveAsBackup) {
  typeBore(QStringLiteral("98"));
  ASSERT_TRUE(document_.saveAs(path_));
  const QByteArray first = contentOf(path_);
  typeBore(QStringLiteral("99"));
  ASSERT_TRUE(document_.save());
  EXPECT_EQ(contentOf(path_ + u'~'), first);
  EXPECT_NE(contentOf(path_), first);
  EXPECT_TRUE(document_.remarks().isEmpty());
}

TEST_F(ProjectFile, ABackupThatCannotBeKeptIsSaidAndTheSaveGoesOn) {
  ASSERT_TRUE(document_.saveAs(path_));
  ASSERT_TRUE(QDir().mkpath(path_ + u'~'));
  typeBore(QStringLiteral("99"));
  EXPECT_TRUE(document_.save());
  EXPECT_EQ(document_.remarks().size(), 1);
}

TEST_F(ProjectFile, AFullDiskLeavesTheOldFileAndTheWorkUnsaved) {
  typeBore(QStringLiteral("98"));
  ASSERT_TRUE(document_.saveAs(path_));
  const QByteArray before = contentOf(path_);
  typeBore(QStringLiteral("99"));
  {
    const FullDisk full(64);
    if (!full.enforced(inFolder(QStringLiteral("probe"))))
      GTEST_SKIP() << "limits do not hold here";
    EXPECT_FALSE(document_.save());
  }
  EXPECT_FALSE(document_.error().isEmpty());
  EXPECT_TRUE(document_.modified());
  EXPECT_EQ(contentOf(path_), before);
  EXPECT_TRUE(document_.save());
}

TEST_F(ProjectFile, AFolderThatIsNotThereIsSaidInASentence) {
  typeBore(QStringLiteral("98"));
  EXPECT_FALSE(document_.saveAs(inFolder(QStringLiteral("gone/burdock.strokewright"))));
  EXPECT_TRUE(document_.error().contains(QStringLiteral("was not saved")));
  EXPECT_TRUE(document_.path().isEmpty());
  EXPECT_TRUE(document_.modified());
}

TEST_F(ProjectFile, AFolderThatIsClosedKeepsTheOldFile) {
  ASSERT_TRUE(document_.saveAs(path_));
  const QByteArray before = contentOf(path_);
  typeBore(QStringLiteral("98"));
  {
    const ClosedFolder closed(folder_.path());
    EXPECT_FALSE(document_.save());
  }
  EXPECT_FALSE(document_.error().isEmpty());
  EXPECT_TRUE(document_.modified());
  EXPECT_EQ(contentOf(path_), before);
}

TEST_F(ProjectFile, ANewerFileIsRefusedAndLeftAsItIs) {
  ASSERT_TRUE(document_.saveAs(path_));
  QJsonObject all = QJsonDocument::fromJson(contentOf(path_)).object();
  all[QStringLiteral("version")] = storage::kFileVersion + 1;
  put(path_, QJsonDocument(all).toJson());
  const QByteArray newer = contentOf(path_);

  Document other(taste_);
  other.type(kTarget, in::bore, QStringLiteral("98"));
  const model::Project before = other.project();
  EXPECT_FALSE(other.open(path_));
  EXPECT_TRUE(other.error().contains(QString::number(storage::kFileVersion + 1)))
      << other.error().toStdString();
  EXPECT_EQ(other.project(), before);
  EXPECT_TRUE(other.modified());
  EXPECT_EQ(contentOf(path_), newer);
}

TEST_F(ProjectFile, ADamagedFileIsRefusedWithThePlace) {
  put(path_, "{\n  \"format\": \"strokewright project\",\n  \"version\": ");
  EXPECT_FALSE(document_.open(path_));
  EXPECT_TRUE(document_.error().contains(QStringLiteral("3"))) << document_.error().toStdString();
}

TEST_F(ProjectFile, AFileThatIsNotThereIsSaidInASentence) {
  EXPECT_FALSE(document_.open(path_));
  EXPECT_TRUE(document_.error().contains(QStringLiteral("cannot be opened")));
}

TEST_F(ProjectFile, ACopyHasNoPathAndNothingToLose) {
  ASSERT_TRUE(
      document_.openCopy(sample(QStringLiteral("burdock-719")), QStringLiteral("Burdock 719")))
      << document_.error().toStdString();
  EXPECT_TRUE(document_.path().isEmpty());
  EXPECT_EQ(document_.shownName(), QStringLiteral("Burdock 719"));
  EXPECT_FALSE(document_.modified());
}

TEST_F(ProjectFile, NoticesThatSomebodyElseWroteTheFile) {
  ASSERT_TRUE(document_.saveAs(path_));
  EXPECT_FALSE(document_.changedOnDisk());
  put(path_, contentOf(path_));
  EXPECT_FALSE(document_.changedOnDisk()) << "the content is the same";
  put(path_, contentOf(path_) + '\n');
  EXPECT_TRUE(document_.changedOnDisk());
  ASSERT_TRUE(document_.save());
  EXPECT_FALSE(document_.changedOnDisk());
}

TEST_F(ProjectFile, IsTheSameInEveryLocale) {
  typeBore(QStringLiteral("98,2"));
  ASSERT_TRUE(document_.saveAs(path_));
  Taste german{QLocale(QLocale::German, QLocale::Germany)};
  Document other(german);
  other.type(kTarget, in::bore, QStringLiteral("98,2"));
  const QString path = inFolder(QStringLiteral("german.strokewright"));
  ASSERT_TRUE(other.saveAs(path));
  EXPECT_EQ(contentOf(path), contentOf(path_));
}

TEST_F(ProjectFile, OpenedAndSavedFilesAreTheRecentOnes) {
  ASSERT_TRUE(document_.saveAs(path_));
  EXPECT_EQ(taste_.recentFiles(), QStringList(path_));
}

TEST_F(ProjectFile, IsCalledAfterTheTargetUntilItIsSaved) {
  EXPECT_EQ(document_.shownName(), QStringLiteral("New conversion"));
  document_.renameEngine(kTarget, QStringLiteral("Burdock 719"));
  EXPECT_EQ(document_.shownName(), QStringLiteral("Burdock 719"));
  document_.edit(QStringLiteral("name"), [](model::Project& project) { project.name = "Hill"; });
  EXPECT_EQ(document_.shownName(), QStringLiteral("Hill"));
  ASSERT_TRUE(document_.saveAs(inFolder(QStringLiteral("saved.strokewright"))));
  EXPECT_EQ(document_.shownName(), QStringLiteral("saved"));
}

TEST_F(ProjectFile, StartingNewForgetsPathAndSteps) {
  typeBore(QStringLiteral("98"));
  ASSERT_TRUE(document_.saveAs(path_));
  document_.startNew();
  EXPECT_TRUE(document_.path().isEmpty());
  EXPECT_FALSE(document_.undoStack().canUndo());
  EXPECT_FALSE(document_.modified());
  EXPECT_FALSE(document_.changedOnDisk());
}

}  // namespace
}  // namespace strokewright::ui
