/// Panes that fold: seen together while there is room, one at a time where there is not.

#include <QApplication>
#include <QSplitter>
#include <QTabBar>
#include <QTextEdit>

#include "tests/ui/fixture.h"
#include "ui/widgets/pane_column.h"

namespace strokewright::ui {
namespace {

class Folding : public ::testing::Test {
 protected:
  void SetUp() override {
    for (QTextEdit* pane : {first_, second_}) {
      column_.addPane(pane, 10);
    }
    column_.setNames({QStringLiteral("One"), QStringLiteral("Two")});
    setLines(30);
    window_.show();
    QApplication::processEvents();
  }

  void setLines(int lines) {
    column_.resize(300, lines * column_.fontMetrics().height());
    QApplication::processEvents();
  }

  QList<int> sizes() const { return column_.findChild<QSplitter*>()->sizes(); }

  QWidget window_;
  PaneColumn column_{Qt::Vertical, 0.4, &window_};
  QTextEdit* first_ = new QTextEdit(&column_);
  QTextEdit* second_ = new QTextEdit(&column_);
};

TEST_F(Folding, ShowsBothWhileBothHaveTheirLines) {
  EXPECT_FALSE(column_.folded());
  EXPECT_TRUE(first_->isVisible());
  EXPECT_TRUE(second_->isVisible());
  EXPECT_FALSE(column_.findChild<QTabBar*>()->isVisible());
  EXPECT_GE(sizes().back(), 10 * column_.fontMetrics().height());
  EXPECT_GT(sizes().front(), sizes().back());
}

TEST_F(Folding, ShowsOneUnderTabsWhereTheyHaveNot) {
  setLines(18);
  EXPECT_TRUE(column_.folded());
  auto* tabs = column_.findChild<QTabBar*>();
  ASSERT_TRUE(tabs->isVisible());
  EXPECT_EQ(tabs->tabText(1), QStringLiteral("Two"));
  EXPECT_TRUE(first_->isVisible());
  EXPECT_FALSE(second_->isVisible());
  tabs->setCurrentIndex(1);
  QApplication::processEvents();
  EXPECT_FALSE(first_->isVisible());
  EXPECT_TRUE(second_->isVisible());
  EXPECT_GT(second_->height(), 10 * column_.fontMetrics().height());
}

TEST_F(Folding, BringsUpThePaneThatIsAskedFor) {
  setLines(18);
  column_.bringUp(*second_->viewport());
  EXPECT_TRUE(second_->isVisible());
  EXPECT_FALSE(first_->isVisible());
}

TEST_F(Folding, ComesBackAsItWasParted) {
  auto* splitter = column_.findChild<QSplitter*>();
  const int line = column_.fontMetrics().height();
  splitter->setSizes({11 * line, splitter->height() - 11 * line});
  QApplication::processEvents();
  Q_EMIT splitter->splitterMoved(11 * line, 1);  // as the mouse does
  const QList<int> parted = sizes();
  const QByteArray kept = column_.saveState();
  setLines(18);
  EXPECT_EQ(column_.saveState(), kept);
  setLines(30);
  EXPECT_FALSE(column_.folded());
  EXPECT_TRUE(first_->isVisible());
  EXPECT_TRUE(second_->isVisible());
  EXPECT_EQ(sizes(), parted);
}

TEST_F(Folding, KeepsNothingThatNobodyParted) {
  EXPECT_TRUE(column_.saveState().isEmpty());
  setLines(18);
  setLines(30);
  EXPECT_TRUE(column_.saveState().isEmpty());
}

TEST_F(Folding, AStateThatCannotBeReadIsSharedOutAnew) {
  const QList<int> first = sizes();
  auto* splitter = column_.findChild<QSplitter*>();
  splitter->setSizes({splitter->height() / 4, splitter->height()});
  column_.restoreState("nothing");
  EXPECT_EQ(sizes(), first);
}

}  // namespace
}  // namespace strokewright::ui
