#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QLabel>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>

#include "core/describe/reader.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {
namespace {

using describe::Column;
using describe::Table;

int filledTimes = 0;

constexpr Column kColumns[] = {
    {.key = "part", .name = "Part in the stack", .words = true},
    {.key = "thickness_m", .name = "Thickness", .kind = units::Kind::FineLength}};

const Table parts{.key = "parts",
                  .name = "Parts",
                  .per = describe::Per::Engine,
                  .columns = kColumns,
                  .formula = "t",
                  .source = "plane geometry",
                  .fill = [](describe::Reader& read, describe::Rows& rows) {
                    ++filledTimes;
                    const double bore = read(in::bore);
                    rows.add({"plate", 0.95e-3});
                    rows.add({"none", describe::kAbsent});
                    rows.add({"gasket", bore / 100.0});
                  }};

const Table nothing{.key = "nothing",
                    .name = "Nothing",
                    .per = describe::Per::Engine,
                    .columns = kColumns,
                    .fill = [](describe::Reader&, describe::Rows&) {}};

class TableOnScreen : public WithDocument {
 protected:
  void SetUp() override {
    filledTimes = 0;
    typeBore(QStringLiteral("75 mm"));
    view_ = new TableView(document_, kTarget, parts, &window_);
    view_->setGeometry(0, 0, 300, 200);
    window_.resize(300, 200);
  }

  void show() {
    window_.show();
    QApplication::processEvents();
  }
  void typeBore(const QString& text) { document_.type(kTarget, in::bore, text); }
  QString shown(int row, int column) {
    return view_->model()->index(row, column).data().toString();
  }
  QString head(int column) { return view_->model()->headerData(column, Qt::Horizontal).toString(); }

  QWidget window_;
  TableView* view_ = nullptr;
};

TEST_F(TableOnScreen, HasNameAndUnitOnceAndNothingWhereARowHasNoNumber) {
  show();
  EXPECT_EQ(head(0), QStringLiteral("Part in\nthe\nstack"));
  EXPECT_EQ(head(1), QStringLiteral("Thickness\nmm"));
  EXPECT_EQ(shown(0, 1), QStringLiteral("0.95"));
  EXPECT_EQ(shown(1, 1), QString());
  EXPECT_EQ(view_->message(), QString());
}

// Half of "17.32" is read as 17.3.
TEST_F(TableOnScreen, ShowsNoColumnInPart) {
  show();
  const auto writing = [&](int from) {
    const QImage image = view_->viewport()->grab().toImage();
    int dark = 0;
    for (int x = from; x < image.width(); ++x) {
      for (int y = 0; y < view_->rowHeight(0); ++y) dark += qGray(image.pixel(x, y)) < 128;
    }
    return dark;
  };
  const int second = view_->columnViewportPosition(1);
  EXPECT_GT(writing(second), 0);
  view_->resize(second + view_->columnWidth(1) - 4 + view_->width() - view_->viewport()->width(),
                200);
  QApplication::processEvents();
  ASSERT_GT(view_->horizontalScrollBar()->maximum(), 0);
  EXPECT_EQ(writing(view_->columnViewportPosition(1)), 0);
  view_->horizontalScrollBar()->setValue(view_->horizontalScrollBar()->maximum());
  QApplication::processEvents();
  EXPECT_GT(writing(view_->columnViewportPosition(1)), 0) << "seen when scrolled to";
}

TEST_F(TableOnScreen, FollowsTheUnitsOfTheReader) {
  show();
  taste_.setUnit(units::Kind::FineLength, QStringLiteral("thou"));
  EXPECT_EQ(head(1), QStringLiteral("Thickness\nthou"));
  EXPECT_EQ(shown(0, 1), taste_.number(units::Kind::FineLength, 0.95e-3));
}

const Table blanks{.key = "blanks",
                   .name = "Blanks",
                   .per = describe::Per::Engine,
                   .columns = kColumns,
                   .fill = [](describe::Reader&, describe::Rows& rows) {
                     rows.add({"none", describe::kAbsent});
                   }};

TEST_F(TableOnScreen, AColumnThatNoRowHasIsNotShown) {
  TableView view(document_, kTarget, blanks);
  view.show();
  EXPECT_FALSE(view.isColumnHidden(0));
  EXPECT_TRUE(view.isColumnHidden(1));
  EXPECT_EQ(view.copiedText(), QStringLiteral("Part in the stack\tThickness (mm)\nnone\t\n"));
}

TEST_F(TableOnScreen, IsFilledOnlyWhileItIsSeen) {
  typeBore(QStringLiteral("76 mm"));
  EXPECT_EQ(filledTimes, 0);
  show();
  EXPECT_EQ(filledTimes, 1);
  typeBore(QStringLiteral("77 mm"));
  EXPECT_EQ(filledTimes, 2);
  EXPECT_EQ(shown(2, 1), QStringLiteral("0.77"));
  view_->hide();
  typeBore(QStringLiteral("78 mm"));
  EXPECT_EQ(filledTimes, 2);
  view_->show();
  EXPECT_EQ(shown(2, 1), QStringLiteral("0.78"));
}

TEST_F(TableOnScreen, SaysWhatItWaitsForAndLeadsThere) {
  typeBore({});
  show();
  EXPECT_EQ(view_->model()->rowCount(), 0);
  EXPECT_EQ(view_->message(), QStringLiteral("waits for bore"));
  QSignalSpy asked(view_, &TableView::entryAsked);
  Q_EMIT view_->findChild<QLabel*>()->linkActivated(QStringLiteral("entry"));
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked.front().at(0).toInt(), kTarget);
  EXPECT_EQ(asked.front().at(1).value<const describe::Input*>(), &in::bore);
}

TEST_F(TableOnScreen, SaysWhyItIsRefused) {
  typeBore(QStringLiteral("-3 mm"));
  show();
  EXPECT_EQ(view_->model()->rowCount(), 0);
  EXPECT_FALSE(view_->message().isEmpty());
}

TEST_F(TableOnScreen, SaysThatThereIsNoRow) {
  TableView empty(document_, kTarget, nothing);
  empty.setWhenEmpty(QStringLiteral("no stack fits"));
  empty.show();
  EXPECT_EQ(empty.message(), QStringLiteral("no stack fits"));
  EXPECT_TRUE(empty.horizontalHeader()->isHidden());
  EXPECT_EQ(empty.horizontalScrollBar()->maximum(), 0);
}

TEST_F(TableOnScreen, TheCursorStaysOnItsRowWhenTheRowsAreSorted) {
  show();
  view_->setSortable(true);
  view_->setCurrentIndex(view_->model()->index(0, 0));
  QHeaderView* heads = view_->horizontalHeader();
  const QPoint at(heads->sectionViewportPosition(1) + 5, 5);
  QTest::mouseClick(heads->viewport(), Qt::LeftButton, {}, at);
  EXPECT_EQ(view_->currentRow(), 0);
  EXPECT_NE(view_->currentIndex().row(), 0);
}

TEST_F(TableOnScreen, CopiesTheSelectedRowsOrAllForASpreadsheet) {
  show();
  view_->setFocus();
  EXPECT_EQ(view_->copiedText(),
            QStringLiteral("Part in the stack\tThickness (mm)\nplate\t0.95\nnone\t\n"
                           "gasket\t0.75\n"));
  view_->selectRow(2);
  for (QAction* action : view_->actions()) {
    if (action->shortcut() == QKeySequence(QKeySequence::Copy)) action->trigger();
  }
  EXPECT_EQ(QApplication::clipboard()->text(),
            QStringLiteral("Part in the stack\tThickness (mm)\ngasket\t0.75\n"));
}

TEST_F(TableOnScreen, SortsByAHeadAndComesBackToItsOwnOrder) {
  show();
  view_->setSortable(true);
  const auto press = [&] {
    QHeaderView* heads = view_->horizontalHeader();
    const QPoint at(heads->sectionViewportPosition(1) + 5, 5);
    QTest::mouseClick(heads->viewport(), Qt::LeftButton, {}, at);
  };
  const auto order = [&] { return shown(0, 0) + u' ' + shown(1, 0) + u' ' + shown(2, 0); };
  press();
  EXPECT_EQ(order(), QStringLiteral("gasket plate none"));
  press();
  EXPECT_EQ(order(), QStringLiteral("plate gasket none"));
  press();
  EXPECT_EQ(order(), QStringLiteral("plate none gasket"));
}

TEST_F(TableOnScreen, TakesTheRowOfTheCursorAsTheTableFilledIt) {
  show();
  view_->setSortable(true);
  view_->sortByColumn(1, Qt::AscendingOrder);
  QSignalSpy taken(view_, &TableView::rowTaken);
  view_->setCurrentIndex(view_->model()->index(0, 0));
  QTest::keyClick(view_, Qt::Key_Return);
  ASSERT_EQ(taken.count(), 1);
  EXPECT_EQ(taken.front().front().toInt(), 2);
}

TEST_F(TableOnScreen, SpeaksItsNameToThoseWhoCannotSeeIt) {
  show();
  EXPECT_EQ(view_->accessibleName(), QStringLiteral("Parts, Target"));
}

}  // namespace
}  // namespace strokewright::ui
