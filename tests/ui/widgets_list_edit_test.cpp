#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QTest>
#include <QToolButton>
#include <memory>

#include "core/model/lists.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/list_edit.h"

namespace strokewright::ui {
namespace {

namespace list = model::list;
using describe::Input;

class ShelfOnScreen : public WithDocument {
 protected:
  void SetUp() override {
    edit_.resize(600, 300);
    edit_.show();
    edit_.activateWindow();
    ASSERT_TRUE(QTest::qWaitFor([this] { return edit_.isActiveWindow(); }));
  }

  QWidget* field(int line, const Input& column = list::partThickness) {
    return edit_.field(line, column);
  }
  void enter(int line, const Input& column = list::partThickness) {
    field(line, column)->setFocus(Qt::TabFocusReason);
  }
  void type(const QString& text) { QTest::keyClicks(QApplication::focusWidget(), text); }
  void press(Qt::Key key, Qt::KeyboardModifiers with = {}) {
    QTest::keyClick(QApplication::focusWidget(), key, with);
  }
  QString shown(int line, const Input& column = list::partThickness) {
    const auto* edit = qobject_cast<QLineEdit*>(field(line, column));
    return edit == nullptr ? QString() : edit->text();
  }
  std::size_t items() { return document_.items(shelf_).size(); }
  void fill(std::initializer_list<const char*> thicknesses) {
    for (const char* text : thicknesses) {
      document_.type(EntryPlace(shelf_, static_cast<int>(items()), list::partThickness),
                     QString::fromUtf8(text));
      document_.closeStep();
    }
  }

  const ListPlace shelf_{&list::shelf};
  ListEdit edit_{document_, shelf_};
};

TEST_F(ShelfOnScreen, TheEmptyLastLineBeginsAnItem) {
  EXPECT_EQ(edit_.lines(), 1);
  enter(0);
  type(QStringLiteral("0.95 ± 0.01"));
  EXPECT_EQ(items(), 1u);
  EXPECT_EQ(edit_.lines(), 2);
  EXPECT_EQ(shown(0), QStringLiteral("0.95 ± 0.01"));
  EXPECT_EQ(QApplication::focusWidget(), field(0));
  EXPECT_EQ(document_.undoStack().count(), 1);
}

TEST_F(ShelfOnScreen, EnterGoesDownTheColumn) {
  enter(0);
  for (const char* text : {"0.80", "0.85", "0.90"}) {
    type(QString::fromLatin1(text));
    press(Qt::Key_Return);
  }
  EXPECT_EQ(items(), 3u);
  EXPECT_EQ(QApplication::focusWidget(), field(3));
  EXPECT_EQ(document_.undoStack().count(), 3);
}

TEST_F(ShelfOnScreen, AWholePartIsEnteredByKeyboard) {
  enter(0, list::partRole);
  press(Qt::Key_P);  // plate
  press(Qt::Key_Tab);
  type(QStringLiteral("0,95"));
  press(Qt::Key_Tab);
  press(Qt::Key_Tab);
  type(QStringLiteral("2"));
  ASSERT_EQ(items(), 1u);
  const describe::Entries& part = document_.items(shelf_).front();
  EXPECT_EQ(part.at(&list::partRole).values, std::vector<double>{1.0});
  EXPECT_DOUBLE_EQ(part.at(&list::partThickness).values.front(), 0.95e-3);
  EXPECT_EQ(part.at(&list::partQuantity).values, std::vector<double>{2.0});
}

TEST_F(ShelfOnScreen, NonsenseStaysWithItsMessage) {
  enter(0);
  type(QStringLiteral("thick"));
  press(Qt::Key_Return);
  EXPECT_EQ(shown(0), QStringLiteral("thick"));
  const EntryPlace place(shelf_, 0, list::partThickness);
  const QString tip = entryTip(document_, place);
  EXPECT_TRUE(tip.contains(QStringLiteral("“thick” cannot be read"))) << tip.toStdString();
  document_.type(place, QStringLiteral("-1"));
  EXPECT_TRUE(entryTip(document_, place).contains(QStringLiteral("cannot be")));
}

TEST_F(ShelfOnScreen, RemovesALineByKeyAndBringsItBack) {
  fill({"1", "2", "3"});
  EXPECT_EQ(edit_.lines(), 4);
  enter(1, list::partRole);
  press(Qt::Key_Delete);
  EXPECT_EQ(edit_.lines(), 3);
  EXPECT_EQ(shown(1), QStringLiteral("3"));
  document_.undoStack().undo();
  EXPECT_EQ(shown(1), QStringLiteral("2"));
  enter(0);
  press(Qt::Key_Delete, Qt::ControlModifier);
  EXPECT_EQ(items(), 2u);
  EXPECT_EQ(shown(0), QStringLiteral("2"));
}

TEST_F(ShelfOnScreen, RemovesALineByItsKey) {
  fill({"1", "2"});
  edit_.findChildren<QToolButton*>().front()->click();
  EXPECT_EQ(shown(0), QStringLiteral("2"));
  EXPECT_FALSE(edit_.findChildren<QToolButton*>()[1]->isEnabled());
}

TEST_F(ShelfOnScreen, MovesALineAndGoesWithIt) {
  fill({"1", "2"});
  enter(0);
  press(Qt::Key_Down, Qt::AltModifier | Qt::ShiftModifier);
  EXPECT_EQ(shown(0), QStringLiteral("2"));
  EXPECT_EQ(QApplication::focusWidget(), field(1));
  press(Qt::Key_Up, Qt::AltModifier | Qt::ShiftModifier);
  EXPECT_EQ(shown(0), QStringLiteral("1"));
}

TEST_F(ShelfOnScreen, TakesABlockFromASpreadsheet) {
  QApplication::clipboard()->setText(QStringLiteral("plate\t0.90\nhead gasket\t0.75\t69.5\n"));
  enter(0, list::partRole);
  press(Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(items(), 2u);
  EXPECT_EQ(edit_.lines(), 3);
  EXPECT_EQ(shown(0), QStringLiteral("0.90"));
  EXPECT_EQ(shown(1, list::partBore), QStringLiteral("69.5"));
  QApplication::clipboard()->setText(QStringLiteral("1.1\n1.2\n1.3\n"));
  enter(1);
  press(Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(shown(0), QStringLiteral("0.90"));
  EXPECT_EQ(shown(1), QStringLiteral("1.1"));
  EXPECT_EQ(shown(3), QStringLiteral("1.3"));
  document_.undoStack().undo();
  EXPECT_EQ(items(), 2u);
  EXPECT_EQ(shown(1), QStringLiteral("0.75"));
}

TEST_F(ShelfOnScreen, KeepsTheFocusWhenUndoTakesItsLine) {
  enter(0);
  type(QStringLiteral("1"));
  press(Qt::Key_Return);
  type(QStringLiteral("2"));
  press(Qt::Key_Return);
  EXPECT_EQ(QApplication::focusWidget(), field(2));
  document_.undoStack().undo();
  EXPECT_EQ(edit_.lines(), 2);
  EXPECT_EQ(QApplication::focusWidget(), field(1));
}

TEST_F(ShelfOnScreen, NamesEveryFieldForThoseWhoCannotSeeIt) {
  fill({"1"});
  EXPECT_EQ(field(0)->accessibleName(), QStringLiteral("Thickness, compressed, part 1, mm"));
  EXPECT_EQ(field(1, list::partRole)->accessibleName(), QStringLiteral("Part, part 2"));
}

TEST_F(ShelfOnScreen, ShowsTheListOfAnotherEngine) {
  ListEdit holes(document_, {&list::plateHoles, kDonor});
  document_.type(EntryPlace({&list::plateHoles, kTarget}, 0, list::holeDiameter),
                 QStringLiteral("9"));
  EXPECT_EQ(holes.lines(), 1);
  holes.setEngine(kTarget);
  EXPECT_EQ(holes.lines(), 2);
}

}  // namespace
}  // namespace strokewright::ui
