#include "ui/pages/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QStackedWidget>
#include <QStandardPaths>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/recovery_file.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/notice_bar.h"
#include "ui/pages/page.h"
#include "ui/pages/paper_palette.h"
#include "ui/pages/start_page.h"
#include "ui/pages/title_strip.h"
#include "ui/pages/way_through.h"
#include "ui/print/sheet_preview.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

const QString kSuffix = u".strokewright"_s;
const QString kGeometryKey = u"window/geometry"_s;
const QString kPageKey = u"window/page"_s;
const QString kFolderKey = u"window/folder"_s;
const QString kTextKey = u"window/text_percent"_s;

QString fileFilter() { return MainWindow::tr("Strokewright projects (*%1)").arg(kSuffix); }

/// Where the last file was, as long as it is there; else where a person keeps documents.
QString lastFolder() {
  const QString last = QSettings().value(kFolderKey).toString();
  if (!last.isEmpty() && QFileInfo(last).isDir()) {
    return last;
  }
  const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  return QFileInfo(documents).isDir() ? documents : QDir::homePath();
}

void rememberFolder(const QString& path) {
  QSettings().setValue(kFolderKey, QFileInfo(path).absolutePath());
}

/// How much of what was left is nowhere else.
QString unsavedWords(const RecoveredWork& left) {
  if (left.work->path.isEmpty()) {
    return MainWindow::tr("It was never saved as a file.");
  }
  const QString words = left.differingEntries == 1
                            ? MainWindow::tr("One entry differs from the saved file.")
                            : MainWindow::tr("%1 entries differ from the saved file.");
  return left.differingEntries == 1 ? words : words.arg(left.differingEntries);
}

/// The first project file among what is dragged, or nothing.
QString projectIn(const QMimeData& dragged) {
  for (const QUrl& url : dragged.urls()) {
    if (url.isLocalFile() && url.toLocalFile().endsWith(kSuffix, Qt::CaseInsensitive)) {
      return url.toLocalFile();
    }
  }
  return {};
}

}  // namespace

MainWindow::MainWindow(Document& document, Taste& taste, QWidget* parent)
    : QMainWindow(parent),
      document_(document),
      taste_(taste),
      desk_(new Desk(document, taste, this)),
      way_(new WayThrough(*desk_)),
      side_(new QWidget),
      stack_(new QStackedWidget),
      notice_(new NoticeBar),
      told_(new NoticeBar(stack_)),
      strip_(new TitleStrip(*desk_)),
      start_(new StartPage(taste)),
      made_(pages().size(), nullptr),
      bodySize_(QApplication::font().pointSizeF()) {
  side_->setAutoFillBackground(true);
  side_->setBackgroundRole(QPalette::AlternateBase);
  auto* left = new QVBoxLayout(side_);
  left->setContentsMargins(0, 16, 0, 4);
  left->setSpacing(8);
  left->addWidget(way_, 1);
  left->addWidget(new EngineKey(*desk_));
  side_->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);

  stack_->addWidget(start_);
  auto* right = new QVBoxLayout;
  right->setSpacing(0);
  right->addWidget(notice_);
  right->addWidget(stack_, 1);
  right->addWidget(strip_);
  auto* center = new QWidget;
  auto* across = new QHBoxLayout(center);
  across->setContentsMargins(0, 0, 0, 0);
  across->setSpacing(0);
  across->addWidget(side_);
  across->addLayout(right, 1);
  setCentralWidget(center);
  setAcceptDrops(true);

  connect(way_, &QListWidget::currentRowChanged, this, &MainWindow::showRow);
  connect(start_, &StartPage::newAsked, this, &MainWindow::startNew);
  connect(start_, &StartPage::openAsked, this, &MainWindow::askForFile);
  connect(start_, &StartPage::fileAsked, this, [this](const QString& path) {
    if (maySetAside()) {
      openFile(path);
    }
  });
  connect(start_, &StartPage::sampleAsked, this, &MainWindow::openSample);
  connect(desk_, &Desk::entryAsked, this, &MainWindow::goToEntry);
  connect(desk_, &Desk::listAsked, this, &MainWindow::goToList);
  connect(desk_, &Desk::pageAsked, this, &MainWindow::showPage);
  connect(desk_, &Desk::whyAsked, this, &MainWindow::explain);
  connect(desk_, &Desk::said, this, [this](const QString& words) {
    told_->tell(words);
    told_->lieAtTheFoot();
  });
  connect(&document_, &Document::projectChanged, told_, &QWidget::hide);
  connect(stack_, &QStackedWidget::currentChanged, told_, &QWidget::hide);
  connect(&document_, &Document::fileChanged, this, &MainWindow::retitle);
  connect(&document_, &Document::projectChanged, this, &MainWindow::retitle);

  makeMenus();
  takePaper();
  scaleText(QSettings().value(kTextKey, textPercent_).toInt());
  restoreGeometryOnScreen();
  side_->hide();
  strip_->hide();
  retitle();
}

MainWindow::~MainWindow() = default;

/// A laptop's width where the screen has it, and never more than the screen has.
QSize MainWindow::sizeHint() const {
  return QSize(1366, 700).boundedTo(screen()->availableGeometry().size());
}

// Pages ------------------------------------------------------------------------------------------

void MainWindow::showStart() {
  stack_->setCurrentWidget(start_);
  side_->hide();
  strip_->hide();
  start_->setFocus();
  offerRecovery();
}

void MainWindow::showPage(const QString& key) {
  const auto& all = pages();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&key](const PageDescription& page) { return page.key == key; });
  const int row = found == all.end() ? 0 : static_cast<int>(found - all.begin());
  side_->show();
  strip_->show();
  if (way_->currentRow() == row) {
    showRow(row);
  } else {
    way_->setCurrentRow(row);
  }
}

Page* MainWindow::page() const { return qobject_cast<Page*>(stack_->currentWidget()); }

void MainWindow::showRow(int row) {
  if (row < 0) {
    return;
  }
  const auto place = static_cast<std::size_t>(row);
  if (made_[place] == nullptr) {
    made_[place] = new Page(*desk_, pages()[place], stack_);
    stack_->addWidget(made_[place]);
  }
  stack_->setCurrentWidget(made_[place]);
  QSettings().setValue(kPageKey, pages()[place].key);
}

void MainWindow::stepPage(int by) {
  if (page() == nullptr) {
    return;
  }
  const int count = way_->count();
  way_->setCurrentRow((way_->currentRow() + by + count) % count);
  page()->focusFirst();
}

/// The focus goes to the next area that can take it; where a notice stands, that comes first.
void MainWindow::stepArea(int by) {
  if (page() == nullptr) {
    return;
  }
  std::vector<QWidget*> areas = page()->areas();
  areas.insert(areas.begin(), notice_);
  const QWidget* here = QApplication::focusWidget();
  const auto count = static_cast<int>(areas.size());
  const auto own = std::ranges::find_if(
      areas, [&](const QWidget* area) { return here != nullptr && area->isAncestorOf(here); });
  int at = own == areas.end() ? (by > 0 ? -1 : 0) : static_cast<int>(own - areas.begin());
  for (int tried = 0; tried < count; ++tried) {
    at = (at + by + count) % count;
    QWidget* area = areas[static_cast<std::size_t>(at)];
    if (area == notice_ ? focusInside(*area) : page()->focusArea(*area)) {
      return;
    }
  }
}

void MainWindow::goToEntry(int engine, const describe::Input* input) {
  if (input == nullptr) {
    return;
  }
  if (page() != nullptr && page()->focusEntry(engine, *input)) {
    return;
  }
  for (const PageDescription& description : pages()) {
    if (description.asksFor(*input)) {
      showPage(description.key);
      page()->focusEntry(engine, *input);
      return;
    }
  }
}

void MainWindow::goToList(const describe::List* list, int item, const describe::Input* column) {
  if (list == nullptr || (page() != nullptr && page()->focusList(*list, item, column))) {
    return;
  }
  for (const PageDescription& description : pages()) {
    if (std::ranges::find(description.lists, list) != description.lists.end()) {
      showPage(description.key);
      page()->focusList(*list, item, column);
      return;
    }
  }
}

void MainWindow::explain(int engine, const describe::Result* result, int cylinder) {
  if (result != nullptr && page() != nullptr) {
    page()->explain(engine, *result, cylinder);
  }
}

// Files ------------------------------------------------------------------------------------------

void MainWindow::begin(const QString& pageKey) {
  notice_->hide();
  desk_->showCylinder(-1);
  showPage(pageKey);
  page()->focusFirst();
}

void MainWindow::startNew() {
  if (maySetAside()) {
    document_.startNew();
    begin(pages().front().key);
  }
}

bool MainWindow::openFile(const QString& path) {
  if (!document_.open(path)) {
    notice_->tell(document_.error());
    return false;
  }
  rememberFolder(path);
  begin(QSettings().value(kPageKey).toString());
  if (!document_.remarks().isEmpty()) {
    notice_->tell(document_.remarks().join(u'\n'));
  }
  offerRecoveryOf(document_.path());
  return true;
}

void MainWindow::askForFile() {
  if (!maySetAside()) {
    return;
  }
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Open a conversion"), lastFolder(), fileFilter());
  if (!path.isEmpty()) {
    openFile(path);
  }
}

void MainWindow::openSample(const QString& path, const QString& name) {
  if (!maySetAside()) {
    return;
  }
  if (document_.openCopy(path, name)) {
    begin(pages().front().key);
  } else {
    notice_->tell(document_.error());
  }
}

bool MainWindow::save() {
  if (document_.path().isEmpty()) {
    return saveAs();
  }
  if (document_.changedOnDisk()) {
    return saveOverOther();
  }
  return saveHere();
}

bool MainWindow::saveHere() {
  const bool saved = document_.save();
  if (!saved) {
    notice_->tell(document_.error());
  }
  return saved;
}

bool MainWindow::saveAs() {
  const QString proposed =
      lastFolder() + u'/' + document_.shownName().replace(u'/', u'-') + kSuffix;
  QFileDialog dialog(this, tr("Save the conversion"), {}, fileFilter());
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(kSuffix.mid(1));  // before it asks about what is there
  dialog.selectFile(document_.path().isEmpty() ? proposed : document_.path());
  if (dialog.exec() != QDialog::Accepted) {
    return false;
  }
  const QString path = dialog.selectedFiles().constFirst();
  if (!document_.saveAs(path)) {
    notice_->tell(document_.error());
    return false;
  }
  rememberFolder(path);
  return true;
}

/// What another program wrote there is not lost unasked.
bool MainWindow::saveOverOther() {
  QMessageBox box(QMessageBox::Warning, tr("Changed on disk"),
                  tr("%1 was changed by another program since it was opened.")
                      .arg(QFileInfo(document_.path()).fileName()),
                  QMessageBox::Cancel, this);
  box.button(QMessageBox::Cancel)->setText(tr("&Cancel"));
  box.setDefaultButton(QMessageBox::Cancel);
  const QAbstractButton* elsewhere = box.addButton(tr("Save &as…"), QMessageBox::AcceptRole);
  const QAbstractButton* overwrite =
      box.addButton(tr("&Overwrite it"), QMessageBox::DestructiveRole);
  box.exec();
  if (box.clickedButton() == elsewhere) {
    return saveAs();
  }
  return box.clickedButton() == overwrite && saveHere();
}

bool MainWindow::maySetAside() {
  if (!document_.modified()) {
    return true;
  }
  QMessageBox box(QMessageBox::Question, tr("Unsaved work"),
                  tr("Save the changes in %1?").arg(document_.shownName()),
                  QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
  for (const auto& [button, text] :
       {std::pair{QMessageBox::Save, tr("&Save")}, std::pair{QMessageBox::Discard, tr("&Discard")},
        std::pair{QMessageBox::Cancel, tr("&Cancel")}}) {
    box.button(button)->setText(text);
  }
  box.setDefaultButton(QMessageBox::Save);
  box.setEscapeButton(QMessageBox::Cancel);
  switch (box.exec()) {
    case QMessageBox::Save:
      return save();
    case QMessageBox::Discard:
      return true;
    default:
      return false;
  }
}

void MainWindow::closeProject() {
  if (maySetAside()) {
    document_.startNew();
    notice_->hide();  // it spoke of the project that was closed
    showStart();
  }
}

void MainWindow::offerRecovery() {
  const std::vector<RecoveredWork> found = RecoveredWork::find();
  if (!found.empty()) {
    offer(found.front(), {}, [this] { offerRecovery(); });
  }
}

/// Of one file alone, behind what its opening had to say.
void MainWindow::offerRecoveryOf(const QString& path) {
  for (const RecoveredWork& left : RecoveredWork::find()) {
    if (left.isOf(path)) {
      const QStringList remarks = document_.remarks();
      offer(left, remarks.isEmpty() ? QString() : remarks.join(u'\n') + u'\n',
            [this, path] { offerRecoveryOf(path); });
      return;
    }
  }
}

/// @param before what the notice says first
/// @param next offers the next one when this one is discarded
void MainWindow::offer(const RecoveredWork& left, const QString& before,
                       const std::function<void()>& next) {
  const QString time = taste_.locale().toString(left.time.toLocalTime(), u"yyyy-MM-dd HH:mm"_s);
  const NoticeBar::Key discard{tr("discard"), [left, next] {
                                 left.discard();
                                 next();
                               }};
  const NoticeBar::Key keep{tr("keep for later"), {}};
  if (!left.work) {
    notice_->tell(
        before + tr("Work of %1 was left behind but cannot be read. %2").arg(time, left.trouble),
        {discard, keep});
    return;
  }
  QString sentence =
      before +
      tr("The program ended without saving %1. What was entered until %2 is still there.")
          .arg(left.shownName(), time) +
      u' ' + unsavedWords(left);
  if (left.fileIsNewer) {
    sentence += u' ' + tr("The file was written after that.");
  }
  const NoticeBar::Key recover{tr("recover"), [this, left] {
                                 if (maySetAside()) {
                                   document_.recover(left);
                                   begin(QSettings().value(kPageKey).toString());
                                 }
                               }};
  notice_->tell(sentence, {recover, discard, keep});
}

// Engines ----------------------------------------------------------------------------------------

void MainWindow::removeEngine(int engine) { document_.removeEngine(engine); }

void MainWindow::duplicateEngine(int engine) {
  const model::Part part = document_.project().engines[static_cast<std::size_t>(engine)].part;
  document_.addEngine(part, engine);
}

void MainWindow::compareWith(int engine) {
  document_.edit(tr("donor compared with"),
                 [engine](model::Project& project) { project.referenceDonor = engine; });
}

// Paper ------------------------------------------------------------------------------------------

void MainWindow::printSheet(void (MainWindow::*how)()) {
  showPage(pages().back().key);
  (this->*how)();
}

void MainWindow::print() { page()->findChild<SheetPreview*>()->print(); }

void MainWindow::savePdf() { page()->findChild<SheetPreview*>()->savePdf(); }

// Window -----------------------------------------------------------------------------------------

void MainWindow::retitle() {
  setWindowTitle(tr("%1[*] – Strokewright").arg(document_.shownName()));
  setWindowModified(document_.modified());
}

void MainWindow::takePaper() { setPalette(paperPalette(QApplication::palette())); }

void MainWindow::scaleText(int percent) {
  textPercent_ = std::clamp(percent, 80, 200);
  QFont body = QApplication::font();
  body.setPointSizeF(bodySize_ * textPercent_ / 100.0);
  if (body != QApplication::font()) {
    QApplication::setFont(body);
  }
  QSettings().setValue(kTextKey, textPercent_);
}

bool MainWindow::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationPaletteChange) {
    takePaper();
  }
  return QMainWindow::event(event);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  strip_->setLow(isLow(*this));
  QMainWindow::resizeEvent(event);
  told_->lieAtTheFoot();
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!maySetAside()) {
    event->ignore();
    return;
  }
  keepLayout();
  event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!projectIn(*event->mimeData()).isEmpty()) {
    event->acceptProposedAction();
  }
}

void MainWindow::dropEvent(QDropEvent* event) {
  const QString path = projectIn(*event->mimeData());
  if (!path.isEmpty()) {
    event->acceptProposedAction();
    if (maySetAside()) {
      openFile(path);
    }
  }
}

void MainWindow::restoreGeometryOnScreen() {
  resize(sizeHint());
  restoreGeometry(QSettings().value(kGeometryKey).toByteArray());
  const auto screens = QApplication::screens();
  const bool seen = std::any_of(screens.begin(), screens.end(), [this](const QScreen* screen) {
    const QRect shared = screen->availableGeometry() & frameGeometry();
    return shared.width() > 100 && shared.height() > 100;
  });
  if (!seen) {
    move(QApplication::primaryScreen()->availableGeometry().topLeft());
  }
}

void MainWindow::keepLayout() {
  QSettings().setValue(kGeometryKey, saveGeometry());
  for (const Page* made : made_) {
    if (made != nullptr) {
      made->keepLayout();
    }
  }
}

void MainWindow::resetLayout() {
  QSettings().remove(kGeometryKey);
  scaleText(100);
  showNormal();
  resize(sizeHint());
  for (Page* made : made_) {
    if (made != nullptr) {
      made->resetLayout();
    }
  }
}

}  // namespace strokewright::ui
