#include <QAbstractItemView>
#include <QApplication>
#include <QTest>
#include <QWheelEvent>

#include "tests/ui/fixture.h"
#include "ui/widgets/choice_edit.h"
#include "ui/widgets/entry_edit.h"
#include "ui/widgets/quantity_edit.h"

namespace strokewright::ui {
namespace {

class ChoiceField : public WithDocument {
 protected:
  const describe::Entry& cycle() const { return document_.entry(kTarget, in::cycle); }

  void wheel(QWidget& field) {
    QWheelEvent event(QPointF(5, 5), field.mapToGlobal(QPointF(5, 5)), {}, {0, -120}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&field, &event);
  }

  ChoiceEdit field_{document_, kTarget, in::cycle};
};

TEST_F(ChoiceField, BeginsWithNothingChosen) {
  EXPECT_EQ(field_.currentIndex(), 0);
  EXPECT_EQ(field_.currentText(), QStringLiteral("–"));
  EXPECT_EQ(field_.count(), static_cast<int>(in::cycle.choices.size()) + 1);
}

TEST_F(ChoiceField, ChoosingByKeyboardIsOneUndoableStep) {
  QTest::keyClick(&field_, Qt::Key_Down);
  EXPECT_FALSE(cycle().known()) << "up and down go to another field";
  QTest::keyClick(&field_, Qt::Key_T);
  ASSERT_TRUE(cycle().known());
  EXPECT_EQ(cycle().values.front(), 1.0);
  EXPECT_EQ(document_.undoStack().count(), 1);
  document_.undoStack().undo();
  EXPECT_EQ(field_.currentIndex(), 0);
}

TEST_F(ChoiceField, ABlankBelongsToAnAnswerThatIsBeingTyped) {
  ChoiceEdit smallEnd(document_, kTarget, in::smallEndKind);
  QTest::keyClicks(&smallEnd, QStringLiteral("pin in"));
  EXPECT_FALSE(smallEnd.view()->isVisible());
  EXPECT_EQ(smallEnd.currentText(), QStringLiteral("pin in the rod"));
  EXPECT_TRUE(document_.entry(kTarget, in::smallEndKind).known());
  QTest::qWait(QApplication::keyboardInputInterval() + 50);
  smallEnd.show();
  QTest::keyClick(&smallEnd, Qt::Key_Space);
  EXPECT_TRUE(smallEnd.view()->isVisible());
}

TEST_F(ChoiceField, TheFirstItemClears) {
  document_.type(kTarget, in::cycle, QStringLiteral("two_stroke"));
  EXPECT_EQ(field_.currentIndex(), 2);
  QTest::keyClick(&field_, Qt::Key_Home);
  EXPECT_TRUE(cycle().empty());
}

TEST_F(ChoiceField, TheWheelIsIgnoredWithoutFocus) {
  wheel(field_);
  EXPECT_TRUE(cycle().empty());
}

TEST_F(ChoiceField, ShowsTheDefaultBesideNothing) {
  const ChoiceEdit ignition(document_, kTarget, in::ignition);
  EXPECT_EQ(ignition.currentText(), QStringLiteral("– spark (default)"));
}

TEST_F(ChoiceField, ShowsATextThatIsNoneOfTheChoices) {
  document_.type(kTarget, in::cycle, QStringLiteral("six-stroke"));
  EXPECT_EQ(field_.currentText(), QStringLiteral("six-stroke"));
  EXPECT_EQ(cycle().text, "six-stroke");
  document_.undoStack().undo();
  EXPECT_EQ(field_.currentText(), QStringLiteral("–"));
}

TEST_F(ChoiceField, ItsNameSaysWhatOfWhichEngine) {
  EXPECT_EQ(field_.accessibleName(), QStringLiteral("Cycle, Target"));
}

TEST_F(ChoiceField, EachInputGetsTheRightField) {
  QWidget parent;
  QWidget* choice = makeEntryEdit(document_, kTarget, in::cycle, &parent);
  QWidget* number = makeEntryEdit(document_, kDonor, in::bore, &parent);
  EXPECT_NE(qobject_cast<ChoiceEdit*>(choice), nullptr);
  EXPECT_NE(qobject_cast<QuantityEdit*>(number), nullptr);
  EXPECT_EQ(inputOf(choice), &in::cycle);
  EXPECT_EQ(inputOf(number), &in::bore);
  EXPECT_EQ(engineOf(number), kDonor);
  EXPECT_EQ(inputOf(&parent), nullptr);
}

}  // namespace
}  // namespace strokewright::ui
