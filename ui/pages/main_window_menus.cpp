#include <QActionGroup>
#include <QApplication>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QStackedWidget>
#include <QUndoStack>

#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page.h"
#include "ui/pages/start_page.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using units::Kind;

namespace {

constexpr int kTextStep = 10;  ///< [%]
constexpr int kDigits = 9;     ///< pages by Ctrl, and as many more by Alt

/// A letter of an engine's name is no access key.
QString plain(QString name) { return name.replace(u'&', u"&&"_s); }

}  // namespace

void MainWindow::makeMenus() {
  makeFileMenu();
  makeEditMenu();
  makeEnginesMenu();
  makeUnitsMenu();
  makeViewMenu();
  makeHelpMenu();
}

void MainWindow::makeFileMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&File"));
  menu->addAction(tr("&New conversion"), QKeySequence::New, this, &MainWindow::startNew);
  menu->addAction(tr("&Open…"), QKeySequence::Open, this, &MainWindow::askForFile);
  QMenu* recent = menu->addMenu(tr("Open &recent"));
  connect(recent, &QMenu::aboutToShow, this, [this, recent] { fillRecentMenu(*recent); });
  QMenu* sampleMenu = menu->addMenu(tr("Sa&mples"));
  for (const Sample& sample : samples()) {
    sampleMenu->addAction(sample.name + u" – "_s + sample.says, this,
                          [this, sample] { openSample(sample.path, sample.name); });
  }
  menu->addSeparator();
  menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
  menu->addAction(tr("Save &as…"), QKeySequence(tr("Ctrl+Shift+S")), this, &MainWindow::saveAs);
  menu->addSeparator();
  menu->addAction(tr("&Print sheet…"), QKeySequence::Print, this,
                  [this] { printSheet(&MainWindow::print); });
  menu->addAction(tr("Pre&view…"), this, [this] { showPage(pages().back().key); });
  menu->addAction(tr("&Export PDF…"), QKeySequence(tr("Ctrl+Shift+E")), this,
                  [this] { printSheet(&MainWindow::savePdf); });
  menu->addSeparator();
  menu->addAction(tr("&Close"), QKeySequence::Close, this, &MainWindow::closeProject);
  menu->addAction(tr("&Quit"), QKeySequence::Quit, this, &MainWindow::close);
}

void MainWindow::fillRecentMenu(QMenu& menu) {
  menu.clear();
  for (const QString& path : taste_.recentFiles()) {
    QAction* action = menu.addAction(plain(path), this, [this, path] {
      if (maySetAside()) {
        openFile(path);
      }
    });
    action->setEnabled(QFileInfo::exists(path));
  }
  if (menu.isEmpty()) {
    menu.addAction(tr("nothing yet"))->setEnabled(false);
    return;
  }
  menu.addSeparator();
  menu.addAction(tr("Remove what is gone"), this, [this] {
    for (const QString& path : taste_.recentFiles()) {
      if (!QFileInfo::exists(path)) {
        taste_.forgetFile(path);
      }
    }
  });
}

void MainWindow::makeEditMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Edit"));
  QAction* undo = document_.undoStack().createUndoAction(this, tr("&Undo"));
  undo->setShortcut(QKeySequence::Undo);
  QAction* redo = document_.undoStack().createRedoAction(this, tr("&Redo"));
  redo->setShortcut(QKeySequence::Redo);
  menu->addAction(undo);
  menu->addAction(redo);
}

void MainWindow::makeEnginesMenu() {
  QMenu* menu = menuBar()->addMenu(tr("E&ngines"));
  connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillEnginesMenu(*menu); });
}

void MainWindow::fillEnginesMenu(QMenu& menu) {
  menu.clear();
  menu.addAction(tr("Add &donor"), this, [this] { document_.addEngine(model::Part::Donor, -1); });
  menu.addAction(tr("Add &target"), this, [this] { document_.addEngine(model::Part::Target, -1); });
  menu.addAction(tr("Add &variant of the target"), this, [this] {
    document_.addEngine(model::Part::Variant, document_.project().target());
  });
  menu.addSeparator();
  addEngineMenu(menu, tr("D&uplicate"), &MainWindow::duplicateEngine);
  addEngineMenu(menu, tr("&Remove"), &MainWindow::removeEngine);
  QMenu* donors = menu.addMenu(tr("&Compare with donor"));
  QMenu* cylinders = menu.addMenu(tr("C&ylinder shown"));
  menu.addSeparator();
  for (const int engine : columnsOf(*desk_)) {
    if (document_.project().engines[static_cast<std::size_t>(engine)].part == model::Part::Donor) {
      QAction* donor = donors->addAction(plain(engineName(*desk_, engine)), this,
                                         [this, engine] { compareWith(engine); });
      donor->setCheckable(true);
      donor->setChecked(engine == document_.project().referenceDonor);
    }
  }
  donors->setEnabled(!donors->isEmpty());
  const describe::Evaluation& evaluation = document_.assessment().evaluation();
  const int subject = desk_->subject();
  const auto nameOf = [&](int cylinder) {
    if (cylinder < 0) return tr("&All");
    return tr("Cylinder &%1").arg(model::numberOfCylinder(evaluation, subject, cylinder));
  };
  const int count = subject < 0 ? 0 : evaluation.cylinders(subject);
  for (int cylinder = -1; cylinder < count; ++cylinder) {
    QAction* shown = cylinders->addAction(nameOf(cylinder), this,
                                          [this, cylinder] { desk_->showCylinder(cylinder); });
    shown->setCheckable(true);
    shown->setChecked(cylinder == desk_->cylinder());
  }
}

QMenu* MainWindow::addEngineMenu(QMenu& menu, const QString& title,
                                 void (MainWindow::*act)(int engine)) {
  QMenu* engines = menu.addMenu(title);
  for (const int engine : columnsOf(*desk_)) {
    engines->addAction(plain(engineName(*desk_, engine)), this,
                       [this, engine, act] { (this->*act)(engine); });
  }
  engines->setEnabled(!engines->isEmpty());
  return engines;
}

void MainWindow::makeUnitsMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Units"));
  connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillUnitsMenu(*menu); });
}

void MainWindow::fillUnitsMenu(QMenu& menu) {
  menu.clear();
  menu.addAction(tr("All &metric"), this, [this] { taste_.setGroup(units::UnitGroup::metric()); });
  menu.addAction(tr("All &inch-pound"), this,
                 [this] { taste_.setGroup(units::UnitGroup::inchPound()); });
  menu.addSeparator();
  for (std::size_t kind = 0; kind < units::kKindCount; ++kind) {
    addUnitMenu(menu, static_cast<Kind>(kind));
  }
  menu.addSeparator();
  auto* terms = new QActionGroup(&menu);
  for (const auto& [choice, words] :
       {std::pair{Terms::British, tr("&British terms (gudgeon pin)")},
        std::pair{Terms::American, tr("&American terms (wrist pin)")}}) {
    QAction* action =
        menu.addAction(words, this, [this, choice = choice] { taste_.setTerms(choice); });
    action->setCheckable(true);
    action->setChecked(choice == taste_.terms());
    terms->addAction(action);
  }
}

/// A kind with one unit offers no choice.
void MainWindow::addUnitMenu(QMenu& menu, Kind kind) {
  if (units::unitsOf(kind).size() < 2) {
    return;
  }
  QString name = fromCore(units::kindName(kind));
  name[0] = name[0].toUpper();
  QMenu* choices = menu.addMenu(name + u'\t' + taste_.unit(kind));
  auto* group = new QActionGroup(choices);
  for (const units::Unit& unit : units::unitsOf(kind)) {
    const QString words = fromCore(unit.name);
    QAction* action =
        choices->addAction(words, this, [this, kind, words] { taste_.setUnit(kind, words); });
    action->setCheckable(true);
    action->setChecked(words == taste_.unit(kind));
    group->addAction(action);
  }
}

void MainWindow::makeViewMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&View"));
  int number = 1;
  for (const PageDescription& page : pages()) {
    QAction* go =
        menu->addAction(page.name + u" – "_s + page.question, this, [this, key = page.key] {
          showPage(key);
          this->page()->focusFirst();
        });
    const auto fits = [this, go] { go->setEnabled(this->page() != nullptr); };
    connect(stack_, &QStackedWidget::currentChanged, go, fits);
    fits();
    const bool control = number <= kDigits;
    go->setShortcut(QKeySequence(
        (control ? u"Ctrl+%1"_s : u"Alt+%1"_s).arg(control ? number : number - kDigits)));
    ++number;
  }
  menu->addSeparator();
  menu->addAction(tr("&Next page"), QKeySequence(tr("Ctrl+Tab")), this, [this] { stepPage(1); });
  menu->addAction(tr("&Previous page"), QKeySequence(tr("Ctrl+Shift+Tab")), this,
                  [this] { stepPage(-1); });
  menu->addAction(tr("Next &area of the page"), QKeySequence(tr("F6")), this,
                  [this] { stepArea(1); });
  menu->addAction(tr("P&revious area of the page"), QKeySequence(tr("Shift+F6")), this,
                  [this] { stepArea(-1); });
  menu->addAction(tr("&Why this answer"), QKeySequence(tr("Ctrl+I")), this, [this] {
    if (page() != nullptr) {
      page()->explainAnswer();
    }
  });
  menu->addSeparator();
  menu->addAction(tr("Text &larger"), QKeySequence::ZoomIn, this,
                  [this] { scaleText(textPercent_ + kTextStep); });
  menu->addAction(tr("Text &smaller"), QKeySequence::ZoomOut, this,
                  [this] { scaleText(textPercent_ - kTextStep); });
  menu->addAction(tr("&Reset layout"), this, &MainWindow::resetLayout);
}

void MainWindow::makeHelpMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Help"));
  menu->addAction(tr("&How to read a page"), QKeySequence::HelpContents, this,
                  &MainWindow::howToRead);
  menu->addAction(tr("&About Strokewright"), this, &MainWindow::about);
}

void MainWindow::howToRead() {
  QMessageBox::information(
      this, tr("How to read a page"),
      tr("<p>Every page is a <b>question</b>. The large number below it is the answer, with its ± "
         "and what governs it.</p>"
         "<p>On the left the drawing or plot, to scale, from your numbers. On the right <b>what it "
         "rests on</b>: what you enter, donor beside target, each on a line to write on. Below "
         "that <b>what follows from it</b>: results, which have no line.</p>"
         "<p>Type numbers as you would write them: 66.0, 0,5 mm, 2 5/8 in, 40 thou, 98.20 ± 0.03; "
         "one for each cylinder as 98.12; 98.20; 98.29. What you do not know stays empty, and the "
         "answer says what waits for it. Ctrl+Z takes back anything.</p>"
         "<p>The letter behind a number says where it comes from: m measured, b maker's book, "
         "c catalogue, a assumed, = computed. Press it, or Alt+Enter in the field, to say so and "
         "to "
         "give the number its ±.</p>"
         "<p>Press a result to see its formula with your numbers in it, its source and what its "
         "± is made of. At the foot stands what speaks against the page: <b>forbids</b> (cannot "
         "exist, or must not leave for the bench), <b>objects</b> (may leave with a reason) or "
         "<b>remarks</b>.</p>"
         "<p>Up and Down go to the field above and below, Enter to the one below; Alt+Up and "
         "Alt+Down step the last digit of a number, and Alt+Down opens a list of answers. In a "
         "list Ctrl+Delete removes the line. In a table that says so, Enter or a double click "
         "takes the row.</p>"
         "<p>F6 goes from area to area of a page: answer, entries, lists, results, drawing and "
         "what speaks against it. Ctrl+Tab goes to the next page, Ctrl+1 to Ctrl+9 to each of the "
         "first nine and Alt+1 to Alt+9 to the others.</p>"));
}

void MainWindow::about() {
  QMessageBox::about(
      this, tr("About Strokewright"),
      tr("<h3>Strokewright %1</h3><p>A workbench for engine conversions: geometry, stack, limits "
         "and the sheet at the machine.</p>"
         "<p>Numbers, not permission: verify with your own instruments. Spinning and pressed parts "
         "can kill; the scrutineer, local codes and licensed practice decide.</p>"
         "<p>Free software under the GNU General Public License, version 3 or later. It comes "
         "without any warranty.</p>")
          .arg(QApplication::applicationVersion()));
}

}  // namespace strokewright::ui
