#include <QApplication>
#include <QTest>
#include <QToolButton>

#include "core/choice/tables.h"
#include "core/model/lists.h"
#include "tests/ui/fixture.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/main_window.h"
#include "ui/pages/page.h"
#include "ui/pages/standing.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/finding_line.h"
#include "ui/widgets/list_edit.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {
namespace {

using namespace Qt::StringLiterals;

class ChoicePage : public WithDocument {
 protected:
  void SetUp() override {
    ASSERT_TRUE(document_.openCopy(sample(u"burdock-719"_s), u"burdock-719"_s));
    window_.resize(1366, 700);
    window_.show();
    window_.showPage(u"choice"_s);
    QApplication::processEvents();
  }

  const Answer& answer() { return window_.page()->answer(); }
  TableView& table(const describe::Table& described) {
    for (TableView* view : window_.page()->findChildren<TableView*>()) {
      if (&view->table() == &described) return *view;
    }
    throw std::logic_error("no such table on the page");
  }
  LinkButton* put() {
    for (LinkButton* key : window_.page()->findChildren<LinkButton*>()) {
      if (key->text().contains(u"into the target"_s) || key->text().contains(u"in the target"_s)) {
        return key;
      }
    }
    return nullptr;
  }
  const describe::Entry& entry(const describe::Input& input) {
    return document_.entry(kTarget, input);
  }
  void type(const describe::Input& input, const QString& text) {
    document_.type(kTarget, input, text);
    document_.closeStep();
  }

  MainWindow window_{document_, taste_};
};

TEST_F(ChoicePage, SaysTheBestStackInWords) {
  EXPECT_TRUE(answer().number.endsWith(u"mm"_s)) << answer().number.toStdString();
  for (const QString& word : {u"plate"_s, u"base gasket"_s, u"head gasket"_s, u"ratio"_s}) {
    EXPECT_TRUE(answer().sentence.contains(word)) << answer().sentence.toStdString();
  }
}

TEST_F(ChoicePage, PutsTheBestStackInAsOneStepAndUndoTakesItOut) {
  const model::Project before = document_.project();
  ASSERT_NE(put(), nullptr);
  ASSERT_TRUE(put()->isEnabled());
  put()->click();
  EXPECT_EQ(document_.undoStack().count(), 1);
  EXPECT_EQ(document_.undoStack().undoText(), u"stack of "_s + document_.engineName(kTarget));
  EXPECT_EQ(entry(in::spacer).origin, describe::Origin::Computed);
  EXPECT_FALSE(put()->isEnabled()) << "it is there already";
  document_.undoStack().undo();
  EXPECT_EQ(document_.project(), before);
  EXPECT_TRUE(put()->isEnabled());
}

TEST_F(ChoicePage, ThePlusMinusOfThePartsComesAlong) {
  put()->click();
  EXPECT_DOUBLE_EQ(entry(in::spacer).limit(), 0.01e-3);
  EXPECT_DOUBLE_EQ(entry(in::headGasket).limit(), 0.03e-3);
}

TEST_F(ChoicePage, EnterOnARowPutsThatStackIn) {
  TableView& stacks = table(out::stackChoices);
  ASSERT_GT(stacks.model()->rowCount(), 1);
  stacks.setFocus();
  stacks.setCurrentIndex(stacks.model()->index(1, 0));
  QTest::keyClick(&stacks, Qt::Key_Return);
  const auto& rows = stacks.filled().rows;
  EXPECT_DOUBLE_EQ(entry(in::headGasket).values.front(), rows["head_gasket_m"].numbers[1]);
  EXPECT_EQ(document_.undoStack().count(), 1);
}

TEST_F(ChoicePage, TheKeyAndTheAnswerSpeakOfTheSelectedPlace) {
  EXPECT_EQ(put()->text(), u"put place 1 into the target"_s);
  const QString best = answer().sentence;
  TableView& stacks = table(out::stackChoices);
  const auto& places = stacks.filled().rows["place"].numbers;
  int row = 0;
  while (row < places.size() && places[row] != 2.0) ++row;
  ASSERT_LT(row, places.size());
  stacks.setCurrentIndex(stacks.model()->index(row, 0));
  EXPECT_EQ(put()->text(), u"put place 2 into the target"_s);
  EXPECT_NE(answer().sentence, best);
  EXPECT_TRUE(answer().sentence.contains(u"place 2"_s)) << answer().sentence.toStdString();
  const double gasket = stacks.filled().rows["head_gasket_m"].numbers[row];
  put()->click();
  EXPECT_DOUBLE_EQ(entry(in::headGasket).values.front(), gasket);
  EXPECT_EQ(put()->text(), u"place 2 is in the target"_s);
  EXPECT_FALSE(put()->isEnabled());
}

// Its place may be another stack's by then.
TEST_F(ChoicePage, TheBestIsSpokenOfAgainOnceTheSelectedPlaceHoldsAnotherStack) {
  TableView& stacks = table(out::stackChoices);
  stacks.setCurrentIndex(stacks.model()->index(stacks.model()->rowCount() - 1, 0));
  EXPECT_NE(put()->text(), u"put place 1 into the target"_s);
  document_.type(kTarget, in::wantedSquish, u"1.1"_s);
  EXPECT_EQ(put()->text(), u"put place 1 into the target"_s);
  EXPECT_EQ(stacks.currentRow(), -1);
}

TEST_F(ChoicePage, ADoubleClickTakesTheRowThatWasPressed) {
  TableView& stacks = table(out::stackChoices);
  const QPoint second = stacks.visualRect(stacks.model()->index(3, 2)).center();
  QTest::mouseClick(stacks.viewport(), Qt::LeftButton, {}, second);
  QApplication::processEvents();  // the answer may be a line shorter now
  QTest::mouseDClick(stacks.viewport(), Qt::LeftButton, {}, second);
  EXPECT_EQ(document_.undoStack().count(), 1);
  EXPECT_FALSE(put()->isEnabled());
}

TEST_F(ChoicePage, IsNotNeededWhileTheShelfIsEmpty) {
  const Desk desk(document_, taste_);
  EXPECT_NE(stateOf(desk, choicePage()).standing, Standing::NotNeeded);
  document_.edit(u"empty"_s, [](model::Project& project) { project.lists.clear(); });
  EXPECT_EQ(stateOf(desk, choicePage()).standing, Standing::NotNeeded);
}

TEST_F(ChoicePage, IsOpenWhileNoStackFits) {
  const Desk desk(document_, taste_);
  EXPECT_EQ(stateOf(desk, choicePage()).standing, Standing::Settled);
  document_.type(kTarget, in::ratioLeast, u"20"_s);
  ASSERT_EQ(table(out::stackChoices).model()->rowCount(), 0);
  EXPECT_EQ(stateOf(desk, choicePage()).standing, Standing::Open);
}

TEST_F(ChoicePage, SaysThatTheShelfIsEmpty) {
  document_.edit(u"empty"_s, [](model::Project& project) { project.lists.clear(); });
  EXPECT_EQ(answer().sentence, u"The shelf is empty: enter gaskets and plates."_s);
  EXPECT_FALSE(put()->isEnabled());
}

TEST_F(ChoicePage, SaysThatNoneFitsAndWhatKeepsThemOut) {
  type(in::squishLeast, u"9 mm"_s);
  type(in::squishMost, u"9.1 mm"_s);
  EXPECT_EQ(answer().sentence, u"No stack from the shelf fits."_s);
  EXPECT_TRUE(answer().further.startsWith(u"Gap under the least"_s))
      << answer().further.toStdString();
  EXPECT_EQ(table(out::stackChoices).message(), u"no stack fits"_s);
  EXPECT_FALSE(put()->isEnabled());
}

TEST_F(ChoicePage, SaysWhatItWaitsFor) {
  type(in::bore, {});
  EXPECT_EQ(answer().unlocks, &in::bore);
  EXPECT_TRUE(table(out::stackChoices).message().startsWith(u"waits for bore"_s));
}

TEST_F(ChoicePage, TheShelfIsWrittenOnBesideIt) {
  auto* shelf = window_.page()->findChild<ListEdit*>();
  ASSERT_NE(shelf, nullptr);
  EXPECT_EQ(shelf->place(), (ListPlace{&model::list::shelf}));
  EXPECT_EQ(shelf->lines(), 12);
  const double considered = table(out::stacksLost).filled().rows["stacks"].numbers.sum();
  document_.removeItem(shelf->place(), 0);
  EXPECT_EQ(shelf->lines(), 11);
  EXPECT_LT(table(out::stacksLost).filled().rows["stacks"].numbers.sum(), considered);
}

TEST_F(ChoicePage, AWrongLineIsToldAtTheFootMarkedAndLedTo) {
  const EntryPlace place({&model::list::shelf}, 1, model::list::partQuantity);
  document_.type(place, u"1.5"_s);
  QApplication::processEvents();
  const describe::Finding* finding = findingAbout(document_, place);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_EQ(findingAbout(document_, {{&model::list::shelf}, 2, model::list::partQuantity}),
            nullptr);
  EXPECT_TRUE(entryTip(document_, place).contains(u"1.5 cannot be"_s))
      << entryTip(document_, place).toStdString();
  const Desk desk(document_, taste_);
  EXPECT_EQ(stateOf(desk, choicePage()).standing, Standing::Forbidden);

  FindingLine* line = nullptr;
  for (FindingLine* each : window_.page()->findChildren<FindingLine*>()) {
    if (each->finding().list == &model::list::shelf) line = each;
  }
  ASSERT_NE(line, nullptr) << "it stands at the foot of the page";
  line->findChild<QToolButton*>()->click();
  EXPECT_EQ(QApplication::focusWidget(),
            window_.page()->findChild<ListEdit*>()->field(1, model::list::partQuantity));
}

TEST_F(ChoicePage, TakesTheUnitsOfTheReader) {
  taste_.setUnit(units::Kind::FineLength, u"thou"_s);
  EXPECT_TRUE(answer().number.endsWith(u"thou"_s)) << answer().number.toStdString();
}

}  // namespace
}  // namespace strokewright::ui
