/// The page of the throws: what its tables put into the entries.

#include <QAction>
#include <QApplication>
#include <QMenu>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>
#include <algorithm>

#include "core/describe/tabulated.h"
#include "core/firing/layouts.h"
#include "core/firing/results.h"
#include "tests/ui/fixture.h"
#include "ui/drawings/crank_view.h"
#include "ui/drawings/star_view.h"
#include "ui/pages/main_window.h"
#include "ui/pages/notice_bar.h"
#include "ui/pages/page.h"
#include "ui/widgets/choice_edit.h"
#include "ui/widgets/pane_column.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

class ThrowsPage : public WithDocument {
 protected:
  ThrowsPage() {
    EXPECT_TRUE(document_.openCopy(sample(u"burdock-719"_s), u"burdock"_s));
    window_.showPage(u"throws"_s);
    window_.resize(1366, 768);
    window_.show();
    QApplication::processEvents();
  }

  /// Seen, as behind its tab.
  TableView& table(const describe::Table& table) {
    const auto views = window_.page()->findChildren<TableView*>();
    TableView& view = **std::ranges::find_if(
        views, [&](const TableView* each) { return &each->table() == &table; });
    for (auto* column : window_.page()->findChildren<PaneColumn*>()) column->bringUp(view);
    QApplication::processEvents();
    return view;
  }
  static void doubleClick(TableView& view, int row) {
    view.scrollTo(view.model()->index(row, 0));
    const QPoint at = view.visualRect(view.model()->index(row, 0)).center();
    QTest::mouseClick(view.viewport(), Qt::LeftButton, {}, at);
    QTest::mouseDClick(view.viewport(), Qt::LeftButton, {}, at);
  }
  QString textOf(const describe::Input& input) const {
    return fromCore(document_.entry(kTarget, input).text);
  }

  MainWindow window_{document_, taste_};
};

TEST_F(ThrowsPage, DrawsNoThrowOfAnEngineWithoutANumberOfCylinders) {
  auto* star = window_.page()->findChild<StarView*>();
  const QImage drawn = star->grab().toImage();
  document_.type(kTarget, in::throwAhead, {});
  const QImage none = star->grab().toImage();
  EXPECT_NE(none, drawn);
  document_.type(kTarget, in::cylinderCount, {});
  EXPECT_EQ(star->grab().toImage(), none);
}

TEST_F(ThrowsPage, ADoubleClickPutsTheOrderIntoTheEntry) {
  TableView& orders = table(out::firingOrders);
  ASSERT_TRUE(orders.isVisible());
  const describe::Rows rows = orders.filled().rows;
  ASSERT_GT(rows.size(), 1u);
  const auto used = std::ranges::find(rows["in_use"].words, "in use");
  const auto other = used == rows["in_use"].words.begin() ? 1 : 0;
  const QString wanted = fromCore(rows["order"].words[static_cast<std::size_t>(other)]);
  doubleClick(orders, other);
  EXPECT_EQ(textOf(in::firingOrder).replace(u"; "_s, u"-"_s), wanted);
  EXPECT_EQ(orders.filled().rows["in_use"].words[static_cast<std::size_t>(other)], "in use");
  EXPECT_EQ(document_.undoStack().count(), 1);
  document_.undoStack().undo();
  EXPECT_EQ(textOf(in::firingOrder), u"1; 3; 2"_s);
}

TEST_F(ThrowsPage, ADoubleClickPutsACommonCrankIntoTheEntries) {
  TableView& cranks = table(out::commonCranks);
  ASSERT_TRUE(cranks.isVisible());
  const describe::Rows rows = cranks.filled().rows;
  const auto& names = rows["crank"].words;
  const auto found = std::ranges::find(names, "triple, middle one opposed (180°)");
  ASSERT_NE(found, names.end());
  doubleClick(cranks, static_cast<int>(found - names.begin()));
  EXPECT_EQ(textOf(in::throwAhead), u"0; 180; 0"_s);
  EXPECT_TRUE(textOf(in::firingOrder).isEmpty()) << "an order of other throws";
}

TEST_F(ThrowsPage, SaysWhatACrankOfTheListTakesAlong) {
  document_.type(kTarget, in::cylinderNumber, u"3-2-1"_s);
  document_.type(kTarget, in::cylinderCount, QString());
  TableView& cranks = table(out::commonCranks);
  const auto& names = cranks.filled().rows["crank"].words;
  const auto found = std::ranges::find(names, "twin, 270°");
  ASSERT_NE(found, names.end());
  doubleClick(cranks, static_cast<int>(found - names.begin()));
  EXPECT_EQ(textOf(in::throwAhead), u"0; 270"_s);
  EXPECT_TRUE(textOf(in::firingOrder).isEmpty());
  EXPECT_TRUE(document_.undoStack().undoText().contains(u"clearing the firing order"_s));
}

TEST_F(ThrowsPage, SaysWhatItPutThereWithoutMovingItUntilTheNextEdit) {
  TableView& cranks = table(out::commonCranks);
  const QPoint before = cranks.mapToGlobal(QPoint());
  doubleClick(cranks, 0);
  const auto bars = window_.findChildren<NoticeBar*>();
  const auto told = std::ranges::find_if(
      bars, [](const NoticeBar* bar) { return bar->shownText().contains(u"has the crank"_s); });
  ASSERT_NE(told, bars.end());
  QApplication::processEvents();
  EXPECT_EQ(cranks.mapToGlobal(QPoint()), before);
  document_.undoStack().undo();
  EXPECT_FALSE((*told)->isVisible());
}

TEST_F(ThrowsPage, HasAllItsTabsInSight) {
  const TableView& cranks = table(out::commonCranks);
  for (const auto* column : window_.page()->findChildren<PaneColumn*>()) {
    if (!column->isAncestorOf(&cranks)) continue;
    const auto* tabs = column->findChild<QTabBar*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_NE(tabs, nullptr);
    EXPECT_LE(tabs->tabRect(tabs->count() - 1).right(), tabs->width());
    EXPECT_GE(tabs->tabRect(0).left(), 0);
  }
}

TEST_F(ThrowsPage, ShortensItsTabsBeforeTheyNeedArrows) {
  const TableView& cranks = table(out::commonCranks);
  window_.resize(911, 512);  // a usual screen at 150 %
  QApplication::processEvents();
  for (const auto* column : window_.page()->findChildren<PaneColumn*>()) {
    if (!column->isAncestorOf(&cranks)) continue;
    const auto* tabs = column->findChild<QTabBar*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_TRUE(tabs->isVisible());
    EXPECT_LE(tabs->sizeHint().width(), column->width());
    EXPECT_EQ(tabs->tabText(1), u"Cranks"_s);
    EXPECT_EQ(tabs->tabToolTip(1), fromCore(out::commonCranks.name));
    EXPECT_EQ(tabs->accessibleTabName(1), fromCore(out::commonCranks.name));
  }
}

TEST_F(ThrowsPage, PartsALongAnswerRatherThanCuttingIt) {
  ChoiceEdit field(document_, kTarget, in::rotation);
  document_.type(kTarget, in::rotation, u"anticlockwise"_s);
  const QFontMetrics metrics = field.fontMetrics();
  const int narrow = metrics.horizontalAdvance(u"clockwise"_s) + 3 * metrics.averageCharWidth();
  const int wide = metrics.horizontalAdvance(u"! anticlockwise"_s) + 3 * metrics.averageCharWidth();
  EXPECT_GT(field.heightForWidth(narrow), field.heightForWidth(wide));
  EXPECT_EQ(field.currentText(), u"anticlockwise"_s);
}

TEST_F(ThrowsPage, NamesTheCylindersBetweenWhichTheLargestIntervalLies) {
  document_.type(kTarget, in::firingOrder, u"1-2-3"_s);
  EXPECT_TRUE(window_.page()->answer().sentence.contains(u"from 3 to 1"_s))
      << window_.page()->answer().sentence.toStdString();
}

TEST_F(ThrowsPage, LetsGoOfTheNumbersOfOtherCylinders) {
  document_.type(kTarget, in::cylinderNumber, u"3-2-1"_s);
  document_.type(kTarget, in::throwAhead, QString());
  TableView& cranks = table(out::commonCranks);
  const auto row = [&](std::string_view name) {
    const auto& names = cranks.filled().rows["crank"].words;
    return static_cast<int>(std::ranges::find(names, name) - names.begin());
  };
  doubleClick(cranks, row("triple, 120°"));
  EXPECT_EQ(textOf(in::cylinderNumber), u"3-2-1"_s) << "as many cylinders";
}

TEST_F(ThrowsPage, OffersCommonCranksRightBehindThePicture) {
  const TableView& cranks = table(out::commonCranks);
  const auto columns = window_.page()->findChildren<PaneColumn*>();
  const auto column = std::ranges::find_if(
      columns, [&](const PaneColumn* each) { return each->isAncestorOf(&cranks); });
  ASSERT_NE(column, columns.end());
  const auto* tabs = (*column)->findChild<QTabBar*>(QString(), Qt::FindDirectChildrenOnly);
  EXPECT_EQ(tabs->tabText(1), fromCore(out::commonCranks.name));
}

TEST_F(ThrowsPage, IsWalkedByTabFromTheFigureToWhatTurnsIt) {
  auto* view = window_.page()->findChild<CrankView*>();
  ASSERT_NE(view, nullptr);
  auto* tabs = window_.page()->findChild<QTabWidget*>();
  tabs->setCurrentIndex(1);
  QApplication::processEvents();
  ASSERT_TRUE(view->isVisible());
  window_.activateWindow();
  view->setFocus();
  QWidget* pane = view->parentWidget();
  QStringList reached;
  for (int i = 0; i < 4; ++i) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QWidget* now = QApplication::focusWidget();
    ASSERT_NE(now, nullptr);
    EXPECT_TRUE(pane->isAncestorOf(now)) << now->metaObject()->className();
    if (const auto* button = qobject_cast<QPushButton*>(now)) reached += button->text();
  }
  EXPECT_EQ(reached, (QStringList{u"At an angle"_s, u"From the end"_s, u"Turn"_s}));
}

TEST_F(ThrowsPage, SaysOfTheCrankInSpaceWhichEndIsSeen) {
  const auto* view = window_.page()->findChild<CrankView*>();
  ASSERT_NE(view, nullptr);
  EXPECT_TRUE(view->seenInWords().contains(u"seen from the"_s))
      << view->seenInWords().toStdString();
}

TEST_F(ThrowsPage, CylindersAreChosenByTheWorkshopsNumbers) {
  const auto offered = [&] {
    QStringList names;
    for (auto* menu : window_.findChildren<QMenu*>()) {
      if (menu->title() == u"E&ngines"_s) Q_EMIT menu->aboutToShow();
    }
    for (const auto* menu : window_.findChildren<QMenu*>()) {
      if (menu->title() != u"C&ylinder shown"_s) continue;
      names.clear();
      for (const QAction* action : menu->actions()) names += action->text().remove(u'&');
    }
    return names;
  };
  EXPECT_EQ(offered(), (QStringList{u"All"_s, u"Cylinder 1"_s, u"Cylinder 2"_s, u"Cylinder 3"_s}));
  document_.type(kTarget, in::cylinderNumber, u"3-2-1"_s);
  EXPECT_EQ(offered(), (QStringList{u"All"_s, u"Cylinder 3"_s, u"Cylinder 2"_s, u"Cylinder 1"_s}));
  document_.type(kTarget, in::cylinderNumber, u"7; 8"_s);
  EXPECT_EQ(offered().back(), u"Cylinder 3"_s) << "its place as entered";
}

}  // namespace
}  // namespace strokewright::ui
