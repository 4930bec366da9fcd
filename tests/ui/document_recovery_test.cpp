#include <QApplication>
#include <QElapsedTimer>
#include <QFileInfo>
#include <QProcess>
#include <QSignalSpy>
#include <QTest>
#include <csignal>

#include "tests/ui/fixture.h"

namespace strokewright::ui {
namespace {

constexpr int kPatience = 30000;  // [ms] for a second process on a busy machine

class Recovery : public WithDocument {
 protected:
  /// A program that types into the bore of the first engine and is killed without warning.
  void typeAndDie(const QString& file, const QString& text) {
    QProcess child;
    child.start(QApplication::applicationFilePath(),
                {QStringLiteral("--type-and-hang"), file, text});
    ASSERT_TRUE(child.waitForReadyRead(kPatience)) << child.readAllStandardError().toStdString();
    ASSERT_EQ(child.readAllStandardOutput(), "typed\n");
    EXPECT_TRUE(RecoveredWork::find().empty()) << "it is still alive";
    ::kill(static_cast<pid_t>(child.processId()), SIGKILL);
    child.waitForFinished(kPatience);
  }

  static QStringList files() {
    return QDir(RecoveryFile::folder()).entryList({QStringLiteral("*.recovery")}, QDir::Files);
  }

  bool waitForFile() {
    return QTest::qWaitFor([] { return !files().isEmpty(); }, kPatience);
  }
};

TEST_F(Recovery, WorkOfAKilledProgramThatWasNeverSavedComesBack) {
  typeAndDie(QStringLiteral("-"), QStringLiteral("98,20"));
  const std::vector<RecoveredWork> found = RecoveredWork::find();
  ASSERT_EQ(found.size(), 1u);
  ASSERT_TRUE(found[0].work);
  EXPECT_EQ(found[0].differingEntries, 1);
  EXPECT_EQ(found[0].shownName(), QStringLiteral("New conversion"));
  EXPECT_LT(found[0].time.secsTo(QDateTime::currentDateTime()), 60);

  document_.recover(found[0]);
  EXPECT_EQ(document_.entry(0, in::bore).text, "98,20");
  EXPECT_TRUE(document_.modified());
  EXPECT_TRUE(document_.path().isEmpty());
}

TEST_F(Recovery, WorkOnAFileComesBackBesideTheFileAsItWas) {
  const QString path = inFolder(QStringLiteral("burdock.strokewright"));
  ASSERT_TRUE(document_.saveAs(path));
  const QByteArray before = contentOf(path);
  typeAndDie(path, QStringLiteral("98.20"));
  EXPECT_EQ(contentOf(path), before);

  const std::vector<RecoveredWork> found = RecoveredWork::find();
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].shownName(), QStringLiteral("burdock.strokewright"));
  EXPECT_EQ(found[0].differingEntries, 1);
  EXPECT_FALSE(found[0].fileIsNewer);

  Document other(taste_);
  other.recover(found[0]);
  EXPECT_EQ(other.path(), path);
  EXPECT_TRUE(other.modified());
  EXPECT_FALSE(other.changedOnDisk());
  ASSERT_TRUE(other.save());
  EXPECT_FALSE(other.modified());
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Recovery, IsOfferedAlthoughTheFileIsNewerAndEvenDamaged) {
  const QString path = inFolder(QStringLiteral("burdock.strokewright"));
  ASSERT_TRUE(document_.saveAs(path));
  typeAndDie(path, QStringLiteral("98.20"));
  put(path, "damaged");
  const std::vector<RecoveredWork> found = RecoveredWork::find();
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].work);
  EXPECT_TRUE(found[0].fileIsNewer);
}

TEST_F(Recovery, IsOfItsFileHoweverThePathIsWritten) {
  const QString path = inFolder(QStringLiteral("burdock.strokewright"));
  ASSERT_TRUE(document_.saveAs(path));
  typeAndDie(path, QStringLiteral("98.20"));
  const std::vector<RecoveredWork> found = RecoveredWork::find();
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].isOf(path));
  EXPECT_TRUE(found[0].isOf(inFolder(QStringLiteral("./burdock.strokewright"))));
  EXPECT_FALSE(found[0].isOf(inFolder(QStringLiteral("other.strokewright"))));
}

TEST_F(Recovery, OfNoFileIsOfNone) {
  typeAndDie(QStringLiteral("-"), QStringLiteral("98"));
  EXPECT_FALSE(RecoveredWork::find().front().isOf(QString()));
}

TEST_F(Recovery, AFileThatAnotherProgramHasOpenIsSaidAndOpened) {
  const QString path = inFolder(QStringLiteral("burdock.strokewright"));
  ASSERT_TRUE(document_.saveAs(path));
  Document own(taste_);
  ASSERT_TRUE(own.open(path));
  EXPECT_TRUE(own.remarks().isEmpty()) << "this program has it open, not another one";
  document_.startNew();
  own.startNew();
  QProcess child;
  child.start(QApplication::applicationFilePath(),
              {QStringLiteral("--type-and-hang"), path, QStringLiteral("98.20")});
  ASSERT_TRUE(child.waitForReadyRead(kPatience)) << child.readAllStandardError().toStdString();
  Document other(taste_);
  ASSERT_TRUE(other.open(path));
  EXPECT_TRUE(other.remarks().join(u' ').contains(QStringLiteral("whoever saves last wins")));
  EXPECT_TRUE(other.save());
  ::kill(static_cast<pid_t>(child.processId()), SIGKILL);
  child.waitForFinished(kPatience);
}

TEST_F(Recovery, AFileWhoseProgramDiedOrClosedItIsNobodys) {
  const QString path = inFolder(QStringLiteral("burdock.strokewright"));
  ASSERT_TRUE(document_.saveAs(path));
  document_.startNew();
  typeAndDie(path, QStringLiteral("98.20"));
  {
    Document first(taste_);
    ASSERT_TRUE(first.open(path));
    EXPECT_TRUE(first.remarks().isEmpty()) << first.remarks().join(u' ').toStdString();
    ASSERT_TRUE(first.open(path)) << "once more, in the same window";
    EXPECT_TRUE(first.remarks().isEmpty());
  }
  Document second(taste_);
  ASSERT_TRUE(second.open(path));
  EXPECT_TRUE(second.remarks().isEmpty());
}

TEST_F(Recovery, SurvivesTwoCrashesInARow) {
  typeAndDie(QStringLiteral("-"), QStringLiteral("98"));
  auto second = std::make_unique<Document>(taste_);
  second->recover(RecoveredWork::find().front());
  ASSERT_EQ(files().size(), 1) << "the work was written anew before the old file went";
  EXPECT_TRUE(RecoveredWork::find().empty()) << "it belongs to a living program now";
}

TEST_F(Recovery, ATruncatedFileIsListedKeptAndBlocksNothing) {
  typeAndDie(QStringLiteral("-"), QStringLiteral("98"));
  const QString file = QDir(RecoveryFile::folder()).filePath(files().front());
  const QByteArray whole = contentOf(file);
  for (const qsizetype left : {qsizetype{0}, whole.size() / 2, whole.size() - 2}) {
    put(file, whole.left(left));
    const std::vector<RecoveredWork> found = RecoveredWork::find();
    ASSERT_EQ(found.size(), 1u);
    EXPECT_FALSE(found[0].work);
    EXPECT_FALSE(found[0].trouble.isEmpty());
    EXPECT_TRUE(QFileInfo::exists(file));
    document_.recover(found[0]);
    EXPECT_FALSE(document_.modified());
  }
}

TEST_F(Recovery, DiscardedWorkIsGone) {
  typeAndDie(QStringLiteral("-"), QStringLiteral("98"));
  RecoveredWork::find().front().discard();
  EXPECT_TRUE(RecoveredWork::find().empty());
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Recovery, TheFileIsThereASecondAfterTheFirstEditHoweverManyFollow) {
  QElapsedTimer clock;
  clock.start();
  int typed = 0;
  const bool written = QTest::qWaitFor(
      [&] {
        document_.type(kTarget, in::bore, QString::number(10 + ++typed));
        return !files().isEmpty();
      },
      kPatience);
  EXPECT_TRUE(written);
  EXPECT_LT(clock.elapsed(), 2000);
}

TEST_F(Recovery, SavingRemovesIt) {
  document_.type(kTarget, in::bore, QStringLiteral("98"));
  ASSERT_TRUE(waitForFile());
  ASSERT_TRUE(document_.saveAs(inFolder(QStringLiteral("a.strokewright"))));
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Recovery, UndoingEverythingRemovesIt) {
  document_.type(kTarget, in::bore, QStringLiteral("98"));
  ASSERT_TRUE(waitForFile());
  document_.undoStack().undo();
  EXPECT_TRUE(files().isEmpty());
}

TEST_F(Recovery, ACleanCloseRemovesIt) {
  {
    Document other(taste_);
    other.type(kTarget, in::bore, QStringLiteral("98"));
    ASSERT_TRUE(waitForFile());
  }
  EXPECT_TRUE(QDir(RecoveryFile::folder()).isEmpty(QDir::Files));
}

TEST_F(Recovery, AFolderThatCannotBeMadeIsSaid) {
  QDir().mkpath(QFileInfo(RecoveryFile::folder()).path());
  put(RecoveryFile::folder(), "in the way");
  QSignalSpy failed(&document_.recoveryFile(), &RecoveryFile::failed);
  document_.type(kTarget, in::bore, QStringLiteral("98"));
  EXPECT_TRUE(failed.wait(kPatience));
  EXPECT_TRUE(RecoveredWork::find().empty());
  QFile::remove(RecoveryFile::folder());
}

}  // namespace
}  // namespace strokewright::ui
