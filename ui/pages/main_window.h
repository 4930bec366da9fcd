#pragma once
/// The window: the way through at the left, the page in the middle, the title block at the foot.

#include <QMainWindow>
#include <functional>
#include <vector>

#include "core/describe/input.h"
#include "core/describe/list.h"
#include "core/describe/result.h"
#include "core/units/kind.h"

class QMenu;
class QStackedWidget;

namespace strokewright::ui {

class Desk;
class Document;
class NoticeBar;
class Page;
class StartPage;
class Taste;
class TitleStrip;
class WayThrough;
struct PageDescription;
struct RecoveredWork;

/// Pages are made when they are first shown. The document and the taste must outlive it.
class MainWindow final : public QMainWindow {
  Q_OBJECT

 public:
  MainWindow(Document& document, Taste& taste, QWidget* parent = nullptr);
  ~MainWindow() override;

  /// Opens a project file, shows its pages, and offers what a crash left of it. Where it cannot be
  /// read a sentence says why above the first screen, and the open project stays. @returns whether
  /// it was opened.
  bool openFile(const QString& path);
  /// The first screen, and the offer of work that a crash left, if there is any.
  void showStart();
  /// The page of this key, or the first one.
  void showPage(const QString& key);
  Page* page() const;  ///< the page that is shown; nullptr on the first screen
  NoticeBar& notice() const { return *notice_; }

  QSize sizeHint() const override;

 protected:
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void makeMenus();
  void makeFileMenu();
  void makeEditMenu();
  void makeEnginesMenu();
  void makeUnitsMenu();
  void makeViewMenu();
  void makeHelpMenu();
  void fillRecentMenu(QMenu& menu);
  void fillEnginesMenu(QMenu& menu);
  void fillUnitsMenu(QMenu& menu);
  QMenu* addEngineMenu(QMenu& menu, const QString& title, void (MainWindow::*act)(int engine));
  void addUnitMenu(QMenu& menu, units::Kind kind);

  void startNew();
  void askForFile();
  void openSample(const QString& path, const QString& name);
  bool save();
  bool saveAs();
  bool maySetAside();  ///< asks about unsaved work; false: stay
  bool saveHere();
  bool saveOverOther();
  void closeProject();
  void offerRecovery();
  void offerRecoveryOf(const QString& path);
  void offer(const RecoveredWork& left, const QString& before, const std::function<void()>& next);
  void begin(const QString& pageKey);
  void takePaper();
  void retitle();

  void showRow(int row);
  void stepPage(int by);
  void stepArea(int by);
  void goToList(const describe::List* list, int item, const describe::Input* column);
  void goToEntry(int engine, const describe::Input* input);
  void explain(int engine, const describe::Result* result, int cylinder);
  void removeEngine(int engine);
  void duplicateEngine(int engine);
  void compareWith(int engine);
  void printSheet(void (MainWindow::*how)());
  void print();
  void savePdf();
  void scaleText(int percent);
  void restoreGeometryOnScreen();
  void keepLayout();
  void resetLayout();
  void howToRead();
  void about();

  Document& document_;
  Taste& taste_;
  Desk* desk_;
  WayThrough* way_;
  QWidget* side_;
  QStackedWidget* stack_;
  NoticeBar* notice_;
  NoticeBar* told_;  ///< of what was just done; goes with the next edit
  TitleStrip* strip_;
  StartPage* start_;
  std::vector<Page*> made_;  ///< by row; nullptr until first shown
  double bodySize_;          ///< [pt] of the desktop's font
  int textPercent_ = 100;
};

}  // namespace strokewright::ui
