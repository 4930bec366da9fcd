#include "ui/document/document.h"

#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <utility>

#include "core/model/entry_text.h"
#include "core/storage/project_text.h"
#include "ui/document/edit_project.h"
#include "ui/document/entry_text.h"
#include "ui/document/list_edits.h"
#include "ui/document/recovery_file.h"
#include "ui/document/taste.h"
#include "ui/document/whole_file.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Input;
using describe::Origin;
using model::Engine;
using model::Part;
using model::Project;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// What was typed, with what the entry before said of itself; its ± too, where the number still
/// comes from there and the text has none of its own.
Entry typedOver(const Entry& before, const Input& input, const QString& text,
                const units::UnitGroup& group) {
  Entry entry = model::entryFrom(input, text.toStdString(), group);
  const bool nothing = entry.empty();
  entry.note = before.note;
  if (nothing) return entry;
  entry.origin = before.origin == Origin::Computed ? Origin::NotSaid : before.origin;
  entry.instrument = before.instrument;
  entry.date = before.date;
  if (!entry.plusMinus && entry.known() && entry.origin == before.origin) {
    entry.plusMinus = before.plusMinus;
  }
  entry.oneSigma = before.oneSigma && entry.plusMinus.has_value();
  if (entry.carriesLimit()) entry.shape = before.shape;
  return entry;
}

/// The same for a number that the workbench found.
Entry computedOver(const Entry& before, const Input& input, const QString& text,
                   const units::UnitGroup& group) {
  Entry found = typedOver(before, input, text, group);
  if (!found.known()) return found;
  found.plusMinus = model::entryFrom(input, text.toStdString(), group).plusMinus;
  found.origin = Origin::Computed;
  found.instrument.clear();
  found.date.clear();
  return found;
}

/// The entry with a ± behind its text.
Entry withPlusMinus(const Entry& entry, const Input& input, double plusMinus,
                    const units::Style& style) {
  Entry with = entry;
  with.plusMinus = plusMinus;
  return typedOver(entry, input, entryText(input, with, style), style.group);
}

constexpr auto kNewTarget = "Target";

Project newProject() {
  Project project;
  project.engines = {Engine{.name = "Donor", .part = Part::Donor, .note = {}, .entries = {}},
                     Engine{.name = kNewTarget, .part = Part::Target, .note = {}, .entries = {}}};
  project.referenceDonor = 0;
  return project;
}

void remove(Project& project, int engine) {
  project.engines.erase(project.engines.begin() + engine);
  if (project.referenceDonor > engine)
    --project.referenceDonor;
  else if (project.referenceDonor == engine) {
    const auto donor = std::ranges::find(project.engines, Part::Donor, &Engine::part);
    project.referenceDonor =
        donor == project.engines.end() ? -1 : static_cast<int>(donor - project.engines.begin());
  }
}

/// What the builder called the project, or what it makes; empty where he called neither anything.
QString givenName(const Project& project) {
  if (!project.name.empty()) return fromCore(project.name).trimmed();
  const int target = project.target();
  if (target < 0 || project.engines[index(target)].name == kNewTarget) return {};
  return fromCore(project.engines[index(target)].name).trimmed();
}

QString baseName(const QString& path) { return QFileInfo(path).completeBaseName(); }

}  // namespace

Document::Document(Taste& taste, QObject* parent)
    : QObject(parent), taste_(taste), recovery_(std::make_unique<RecoveryFile>()) {
  replace(std::make_shared<const Project>(newProject()));
  connect(&undoStack_, &QUndoStack::indexChanged, this, &Document::keepRecovery);
  connect(&undoStack_, &QUndoStack::cleanChanged, this, [this] {
    keepRecovery();
    Q_EMIT fileChanged();
  });
}

Document::~Document() { undoStack_.disconnect(this); }

const Entry& Document::entry(const EntryPlace& place) const { return entryAt(*project_, place); }

const std::vector<describe::Entries>& Document::items(const ListPlace& place) const {
  return itemsOf(*project_, place);
}

QString Document::engineName(int engine) const {
  return fromCore(project_->engines[index(engine)].name);
}

QString Document::subject(const EntryPlace& place) const {
  const QString label = inSentence(taste_.label(*place.input));
  return place.list == nullptr ? tr("%1 of %2").arg(label, engineName(place.engine))
                               : tr("%1, %2").arg(subject(place.inList(), place.item), label);
}

QString Document::subject(const ListPlace& place) const {
  const QString name = taste_.inTerms(fromCore(place.list->name));
  return place.engine < 0 ? name : tr("%1 of %2").arg(name, engineName(place.engine));
}

QString Document::subject(const ListPlace& place, int item) const {
  return tr("%1: %2 %3")
      .arg(subject(place), taste_.inTerms(fromCore(place.list->item)))
      .arg(item + 1);
}

// The edit door ----------------------------------------------------------------------------------

void Document::edit(const QString& text, const Change& change, const QString& mergeKey) {
  auto after = std::make_shared<Project>(*project_);
  change(*after);
  if (*after == *project_) return;
  undoStack_.push(
      new EditProject(*this, project_, std::move(after), text, {mergeKey, stepNumber_}));
}

void Document::replace(std::shared_ptr<const Project> project) {
  const std::shared_ptr<const Project> before = std::exchange(project_, std::move(project));
  assessment_ = std::make_unique<assess::Assessment>(*project_);
  Q_EMIT projectChanged();
}

void Document::closeStep() { ++stepNumber_; }

const EditProject* Document::openStep(const QString& mergeKey) const {
  if (undoStack_.index() == 0) return nullptr;
  const auto* last = static_cast<const EditProject*>(undoStack_.command(undoStack_.index() - 1));
  return last->key() == StepKey{mergeKey, stepNumber_} ? last : nullptr;
}

void Document::undoOpenStep(const QString& mergeKey) {
  if (openStep(mergeKey) != nullptr) undoStack_.undo();
}

QString Document::mergeKey(const EntryPlace& place) {
  return QStringLiteral("%1/%2/%3/%4")
      .arg(place.engine)
      .arg(place.list == nullptr ? QString() : fromCore(place.list->key))
      .arg(place.item)
      .arg(fromCore(place.input->key));
}

void Document::type(const EntryPlace& place, const QString& text) {
  const QString key = mergeKey(place);
  const EditProject* open = openStep(key);
  const Project& before = open != nullptr ? open->before() : *project_;
  Entry entry = typedOver(entryAt(before, place), *place.input, text, taste_.style().group);
  edit(
      subject(place), [&](Project& project) { putEntry(project, place, std::move(entry)); }, key);
}

void Document::say(const EntryPlace& place, const Entry& from) {
  Entry said = entry(place);
  if (said.known() && !said.plusMinus && from.plusMinus) {
    said = withPlusMinus(said, *place.input, *from.plusMinus, taste_.style());
  }
  said.origin = from.origin;
  said.shape = from.shape;
  said.instrument = from.instrument;
  said.date = from.date;
  said.note = from.note;
  edit(tr("origin of %1").arg(subject(place)),
       [&](Project& project) { putEntry(project, place, said); });
}

void Document::putComputed(int engine, const Input& input, const QString& text) {
  Entry found = computedOver(entry(engine, input), input, text, taste_.style().group);
  edit(subject({engine, input}),
       [&](Project& project) { project.engines[index(engine)].set(input, std::move(found)); });
}

void Document::take(int engine, const describe::Mend& mend, const QString& what) {
  if (mend.entries.empty()) return;
  const QString step = what.isEmpty()
                           ? tr("mend of %1").arg(subject({engine, *mend.entries.front().first}))
                           : tr("%1 of %2").arg(what, engineName(engine));
  edit(step, [&](Project& project) {
    Engine& mended = project.engines[index(engine)];
    const auto over = mend.computed ? computedOver : typedOver;
    for (const auto& [input, text] : mend.entries) {
      mended.set(*input, over(mended[*input], *input, fromCore(text), taste_.style().group));
    }
  });
}

// Lists ------------------------------------------------------------------------------------------

void Document::paste(const EntryPlace& first, const QString& block) {
  const auto columns = first.list->columns.subspan(index(first.input->number));
  QStringList lines = block.split(u'\n');
  if (lines.back().trimmed().isEmpty()) lines.removeLast();
  edit(tr("%1: pasting").arg(subject(first.inList())), [&](Project& project) {
    EntryPlace place = first;
    for (const QString& line : lines) {
      const QStringList cells = line.split(u'\t');
      const auto count = std::min<qsizetype>(cells.size(), std::ssize(columns));
      for (qsizetype i = 0; i < count; ++i) {
        place.input = columns[static_cast<std::size_t>(i)];
        putEntry(project, place,
                 typedOver(entryAt(project, place), *place.input, cells[i].trimmed(),
                           taste_.style().group));
      }
      ++place.item;
    }
  });
}

void Document::removeItem(const ListPlace& place, int item) {
  if (item < 0 || item >= std::ssize(items(place))) return;
  edit(tr("removing %1").arg(subject(place, item)), [&](Project& project) {
    changeItems(project, place, [&](auto& items) { items.erase(items.begin() + item); });
  });
}

void Document::moveItem(const ListPlace& place, int from, int to) {
  const auto count = std::ssize(items(place));
  if (std::min(from, to) < 0 || std::max(from, to) >= count) return;
  edit(tr("moving %1").arg(subject(place, from)), [&](Project& project) {
    changeItems(project, place, [&](auto& items) {
      const auto moved = items.begin() + from;
      const auto there = items.begin() + to;
      if (from < to) {
        std::rotate(moved, moved + 1, there + 1);
      } else {
        std::rotate(there, moved, moved + 1);
      }
    });
  });
}

// Engines ----------------------------------------------------------------------------------------

QString Document::freeName(const QString& wanted) const {
  QString name = wanted;
  const auto taken = [&](const Engine& engine) { return fromCore(engine.name) == name; };
  for (int number = 2; std::ranges::any_of(project_->engines, taken); ++number) {
    name = QStringLiteral("%1 %2").arg(wanted).arg(number);
  }
  return name;
}

int Document::addEngine(Part part, int copyOf) {
  Engine engine;
  if (copyOf >= 0) engine = project_->engines[index(copyOf)];
  const QString plain = part == Part::Donor    ? tr("Donor")
                        : part == Part::Target ? tr("Target")
                                               : tr("Variant");
  const QString name = freeName(copyOf >= 0 ? fromCore(engine.name) : plain);
  engine.name = name.toStdString();
  engine.part = part;
  const int added = static_cast<int>(project_->engines.size());
  edit(tr("adding %1").arg(name), [&](Project& project) {
    project.engines.push_back(engine);
    if (part == Part::Donor && project.referenceDonor < 0) project.referenceDonor = added;
  });
  return added;
}

void Document::removeEngine(int engine) {
  edit(tr("removing %1").arg(engineName(engine)),
       [engine](Project& project) { remove(project, engine); });
}

void Document::renameEngine(int engine, const QString& name) {
  edit(
      tr("name of %1").arg(engineName(engine)),
      [&](Project& project) { project.engines[index(engine)].name = name.toStdString(); },
      QStringLiteral("%1/name").arg(engine));
}

// The file ---------------------------------------------------------------------------------------

QString Document::shownName() const {
  if (!path_.isEmpty()) return baseName(path_);
  if (!shownName_.isEmpty()) return shownName_;
  const QString given = givenName(*project_);
  return given.isEmpty() ? tr("New conversion") : given;
}

void Document::begin(Project project, const QString& path, const QString& shownName) {
  path_ = path;
  shownName_ = shownName;
  neverSaved_ = false;
  closeStep();
  undoStack_.clear();
  if (!recovery_->claim(path_)) {
    remarks_ += tr("Another Strokewright has this file open; whoever saves last wins.");
  }
  Q_EMIT begun();
  replace(std::make_shared<const Project>(std::move(project)));
  keepRecovery();
  Q_EMIT fileChanged();
}

void Document::startNew() {
  onDisk_ = {};
  error_.clear();
  remarks_.clear();
  begin(newProject(), {}, {});
}

std::optional<Project> Document::read(const QString& path, QByteArray& content) {
  error_.clear();
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    error_ = tr("“%1” cannot be opened: %2.").arg(path, file.errorString());
    return std::nullopt;
  }
  content = file.readAll();
  storage::Read read =
      storage::read({content.constData(), static_cast<std::size_t>(content.size())});
  QStringList said;
  for (const storage::Remark& remark : read.remarks) {
    said += taste_.sentence(remark.says);
  }
  if (read.project) {
    remarks_ = said;
  } else {
    error_ = tr("“%1” was not opened and is left as it is.\n%2").arg(path, said.join(QChar(u'\n')));
  }
  return std::move(read.project);
}

bool Document::open(const QString& path) {
  QByteArray content;
  std::optional<Project> project = read(path, content);
  if (!project) return false;
  onDisk_ = FileStamp::of(path, content);
  begin(std::move(*project), QFileInfo(path).absoluteFilePath(), {});
  taste_.noteFile(path_);
  return true;
}

bool Document::openCopy(const QString& path, const QString& shownName) {
  QByteArray content;
  std::optional<Project> project = read(path, content);
  if (!project) return false;
  onDisk_ = {};
  begin(std::move(*project), {}, shownName);
  return true;
}

void Document::recover(const RecoveredWork& recovered) {
  if (!recovered.work) return;
  const UnsavedWork& work = *recovered.work;
  error_.clear();
  remarks_.clear();
  onDisk_ = work.onDisk;
  begin(*work.project, work.path, work.shownName);
  neverSaved_ = true;
  keepRecovery();
  if (recovery_->write()) recovered.discard();
  Q_EMIT fileChanged();
}

bool Document::save() { return write(path_); }

bool Document::saveAs(const QString& path) {
  const QString absolute = QFileInfo(path).absoluteFilePath();
  if (!write(absolute)) return false;
  taste_.noteFile(absolute);
  return true;
}

bool Document::write(const QString& path) {
  error_.clear();
  remarks_.clear();
  keepBackup(path);
  const QByteArray content = QByteArray::fromStdString(storage::write(*project_));
  const QString trouble = writeWhole(path, content);
  if (!trouble.isEmpty()) {
    error_ = tr("“%1” was not saved: %2. What was there before is still there.").arg(path, trouble);
    return false;
  }
  if (path != path_) {
    path_ = path;
    recovery_->claim(path_);
  }
  onDisk_ = FileStamp::of(path, content);
  neverSaved_ = false;
  closeStep();
  undoStack_.setClean();
  keepRecovery();
  Q_EMIT fileChanged();
  return true;
}

void Document::keepBackup(const QString& path) {
  QFile before(path);
  if (!before.open(QIODevice::ReadOnly)) return;
  const QString trouble = writeWhole(path + QChar(u'~'), before.readAll());
  if (trouble.isEmpty()) return;
  remarks_ += tr("The previous save could not be kept as “%1~”: %2.").arg(path, trouble);
}

bool Document::changedOnDisk() const { return !path_.isEmpty() && onDisk_.changed(path_); }

void Document::keepRecovery() {
  if (modified()) {
    recovery_->keep({project_, path_, shownName(), onDisk_});
  } else {
    recovery_->discard();
  }
}

}  // namespace strokewright::ui
