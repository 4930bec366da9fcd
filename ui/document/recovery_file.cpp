#include "ui/document/recovery_file.h"

#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStandardPaths>
#include <QUuid>
#include <algorithm>
#include <utility>

#include "core/model/lists.h"
#include "core/storage/project_text.h"
#include "ui/document/list_edits.h"
#include "ui/document/whole_file.h"

namespace strokewright::ui {
namespace {

using describe::Entries;
using model::Engine;
using model::Project;

constexpr int kDelay = 1000;  // [ms] no more work than this is lost
constexpr QLatin1StringView kSuffix(".recovery");

QString lockOf(const QString& file) {
  return file.chopped(kSuffix.size()) + QStringLiteral(".lock");
}

/// A lock that only a living program holds: it goes stale by death, never by age.
std::unique_ptr<QLockFile> makeLock(const QString& path) {
  auto lock = std::make_unique<QLockFile>(path);
  lock->setStaleLockTime(0);
  return lock;
}

QByteArray textOf(const UnsavedWork& work) {
  const QJsonObject disk{
      {QStringLiteral("size"), work.onDisk.size},
      {QStringLiteral("modified"), work.onDisk.modified.toString(Qt::ISODateWithMs)},
      {QStringLiteral("sha256"), QString::fromLatin1(work.onDisk.hash.toHex())}};
  const QJsonObject all{
      {QStringLiteral("written"), QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs)},
      {QStringLiteral("path"), work.path},
      {QStringLiteral("name"), work.shownName},
      {QStringLiteral("on_disk"), disk},
      {QStringLiteral("project"), QString::fromStdString(storage::write(*work.project))}};
  return QJsonDocument(all).toJson();
}

FileStamp stampFrom(const QJsonObject& disk) {
  return {static_cast<qint64>(disk[QStringLiteral("size")].toDouble(-1)),
          QDateTime::fromString(disk[QStringLiteral("modified")].toString(), Qt::ISODateWithMs),
          QByteArray::fromHex(disk[QStringLiteral("sha256")].toString().toLatin1())};
}

QByteArray contentOf(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

std::optional<Project> projectFrom(const QByteArray& text) {
  return storage::read({text.constData(), static_cast<std::size_t>(text.size())}).project;
}

int differingEntries(const Entries& a, const Entries& b) {
  const auto missingIn = [](const Entries& others) {
    return [&others](const auto& entry) { return !others.contains(entry.first); };
  };
  const auto changed = [&b](const auto& entry) {
    const auto other = b.find(entry.first);
    return other == b.end() || other->second != entry.second;
  };
  return static_cast<int>(std::ranges::count_if(a, changed) +
                          std::ranges::count_if(b, missingIn(a)));
}

/// Of these lists, item by item.
int differingItems(std::span<const describe::List* const> lists, const Project& a, const Project& b,
                   int engine) {
  int count = 0;
  for (const describe::List* list : lists) {
    const std::vector<Entries>& some = itemsOf(a, {list, engine});
    const std::vector<Entries>& others = itemsOf(b, {list, engine});
    for (std::size_t i = 0; i < std::max(some.size(), others.size()); ++i) {
      count += differingEntries(i < some.size() ? some[i] : Entries(),
                                i < others.size() ? others[i] : Entries());
    }
  }
  return count;
}

RecoveredWork unreadable(RecoveredWork found) {
  found.trouble = QObject::tr("The recovery file “%1” is damaged and cannot be read. It is kept.")
                      .arg(found.file);
  return found;
}

RecoveredWork readRecovery(const QString& file) {
  RecoveredWork found;
  found.file = file;
  found.time = QFileInfo(file).lastModified();
  const QJsonObject all = QJsonDocument::fromJson(contentOf(file)).object();
  std::optional<Project> project = projectFrom(all[QStringLiteral("project")].toString().toUtf8());
  if (!project) return unreadable(std::move(found));

  UnsavedWork work{std::make_shared<const Project>(std::move(*project)),
                   all[QStringLiteral("path")].toString(), all[QStringLiteral("name")].toString(),
                   stampFrom(all[QStringLiteral("on_disk")].toObject())};
  const std::optional<Project> saved = projectFrom(contentOf(work.path));
  found.differingEntries = countDifferences(*work.project, saved.value_or(Project()));
  found.fileIsNewer = work.onDisk.changed(work.path);
  found.work = std::move(work);
  return found;
}

}  // namespace

RecoveryFile::RecoveryFile(QObject* parent) : QObject(parent) {
  timer_.setSingleShot(true);
  timer_.setInterval(kDelay);
  connect(&timer_, &QTimer::timeout, this, &RecoveryFile::write);
}

RecoveryFile::~RecoveryFile() { discard(); }

QString RecoveryFile::folder() {
  return QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) +
         QStringLiteral("/recovery");
}

void RecoveryFile::keep(UnsavedWork work) {
  work_ = std::move(work);
  if (!timer_.isActive()) timer_.start();
}

bool RecoveryFile::begin() {
  if (lock_) return true;
  const QDir folder(RecoveryFile::folder());
  if (!folder.mkpath(QStringLiteral("."))) return false;
  const QString name = QUuid::createUuid().toString(QUuid::WithoutBraces) + kSuffix;
  std::unique_ptr<QLockFile> lock = makeLock(lockOf(folder.filePath(name)));
  if (!lock->tryLock()) return false;
  lock_ = std::move(lock);
  path_ = folder.filePath(name);
  return true;
}

bool RecoveryFile::write() {
  timer_.stop();
  if (!begin()) {
    Q_EMIT failed(tr("No recovery file can be written in “%1”.").arg(folder()));
    return false;
  }
  const QString trouble = writeWhole(path_, textOf(work_));
  if (!trouble.isEmpty()) {
    Q_EMIT failed(tr("The recovery file was not written: %1.").arg(trouble));
    return false;
  }
  Q_EMIT written();
  return true;
}

bool RecoveryFile::claim(const QString& projectFile) {
  claim_.reset();
  if (projectFile.isEmpty()) return true;
  const QDir folder(RecoveryFile::folder());
  if (!folder.mkpath(QStringLiteral("."))) return true;  // nobody can say anything there
  const QByteArray name = QCryptographicHash::hash(
      QFileInfo(projectFile).canonicalFilePath().toUtf8(), QCryptographicHash::Sha256);
  claim_ = makeLock(folder.filePath(QString::fromLatin1(name.toHex()) + QStringLiteral(".open")));
  if (claim_->tryLock(0) || claim_->error() != QLockFile::LockFailedError) return true;
  qint64 holder = 0;
  QString host;
  QString program;
  return !claim_->getLockInfo(&holder, &host, &program) ||
         holder == QCoreApplication::applicationPid();
}

void RecoveryFile::discard() {
  timer_.stop();
  work_ = {};
  if (!path_.isEmpty()) QFile::remove(path_);
}

QString RecoveredWork::shownName() const {
  if (!work) return QFileInfo(file).fileName();
  return work->path.isEmpty() ? work->shownName : QFileInfo(work->path).fileName();
}

bool RecoveredWork::isOf(const QString& projectFile) const {
  return work && !work->path.isEmpty() && QFileInfo(work->path) == QFileInfo(projectFile);
}

void RecoveredWork::discard() const { QFile::remove(file); }

std::vector<RecoveredWork> RecoveredWork::find() {
  std::vector<RecoveredWork> all;
  const QDir folder(RecoveryFile::folder());
  for (const QString& name : folder.entryList({QStringLiteral("*") + kSuffix}, QDir::Files)) {
    const QString file = folder.filePath(name);
    if (makeLock(lockOf(file))->tryLock(0)) all.push_back(readRecovery(file));
  }
  std::ranges::sort(all, std::greater(), &RecoveredWork::time);
  return all;
}

int countDifferences(const Project& a, const Project& b) {
  int count = int{a.name != b.name} + int{a.note != b.note} + int{a.drawnFor != b.drawnFor} +
              int{a.revision != b.revision} + differingItems(model::projectLists(), a, b, -1);
  for (std::size_t i = 0; i < std::max(a.engines.size(), b.engines.size()); ++i) {
    const Engine* one = i < a.engines.size() ? &a.engines[i] : nullptr;
    const Engine* other = i < b.engines.size() ? &b.engines[i] : nullptr;
    count += differingEntries(one != nullptr ? one->entries : Entries(),
                              other != nullptr ? other->entries : Entries());
    count += differingItems(model::engineLists(), a, b, static_cast<int>(i));
    if (one == nullptr || other == nullptr) continue;
    count += int{one->name != other->name} + int{one->part != other->part} +
             int{one->note != other->note};
  }
  return count;
}

}  // namespace strokewright::ui
