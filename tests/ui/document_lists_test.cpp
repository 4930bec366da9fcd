#include <QTest>

#include "core/model/lists.h"
#include "core/storage/project_text.h"
#include "tests/ui/fixture.h"

namespace strokewright::ui {
namespace {

namespace list = model::list;
using describe::Entry;
using describe::Input;

class ListEdits : public WithDocument {
 protected:
  const ListPlace shelf_{&list::shelf};
  const ListPlace holes_{&list::plateHoles, kTarget};

  EntryPlace at(int item, const Input& column) { return {shelf_, item, column}; }
  void type(int item, const Input& column, const char* text) {
    document_.type(at(item, column), QString::fromUtf8(text));
  }
  void typeThickness(int item, const char* text) {
    type(item, list::partThickness, text);
    document_.closeStep();
  }
  const Entry& thickness(int item) { return document_.entry(at(item, list::partThickness)); }
  int items() { return static_cast<int>(document_.items(shelf_).size()); }
  int steps() { return document_.undoStack().count(); }
  QString undoText() { return document_.undoStack().undoText(); }
};

TEST_F(ListEdits, TypingBehindTheLastItemBeginsOne) {
  EXPECT_EQ(items(), 0);
  type(0, list::partThickness, "0");
  type(0, list::partThickness, "0.95 ± 0.01");
  EXPECT_EQ(items(), 1);
  ASSERT_TRUE(thickness(0).known());
  EXPECT_DOUBLE_EQ(thickness(0).values.front(), 0.95e-3);
  EXPECT_DOUBLE_EQ(thickness(0).limit(), 0.01e-3);
  EXPECT_EQ(steps(), 1);
  document_.undoStack().undo();
  EXPECT_TRUE(document_.project().lists.empty());
}

TEST_F(ListEdits, ANumberIsReadInTheUnitsOfTheReader) {
  taste_.setUnit(units::Kind::FineLength, QStringLiteral("thou"));
  typeThickness(0, "40");
  EXPECT_DOUBLE_EQ(thickness(0).values.front(), 1.016e-3);
}

TEST_F(ListEdits, AChoiceIsReadByKeyAndByName) {
  type(0, list::partRole, "head gasket");
  EXPECT_EQ(document_.entry(at(0, list::partRole)).values, std::vector<double>{2.0});
}

TEST_F(ListEdits, NonsenseIsKept) {
  typeThickness(0, "thick");
  EXPECT_FALSE(thickness(0).known());
  EXPECT_EQ(thickness(0).text, "thick");
}

TEST_F(ListEdits, AnItemInTheMiddleStaysWhileItIsEmptyAndOneAtTheEndGoes) {
  typeThickness(0, "0.9");
  typeThickness(1, "1.0");
  typeThickness(0, "");
  EXPECT_EQ(items(), 2);
  typeThickness(1, "");
  EXPECT_EQ(items(), 0);
  EXPECT_TRUE(document_.project().lists.empty());
}

TEST_F(ListEdits, StepsAreNamedInTheWordsOfTheBuilder) {
  typeThickness(0, "0.9");
  typeThickness(1, "1.0");
  EXPECT_EQ(undoText(), QStringLiteral("Shelf: part 2, thickness, compressed"));
  document_.moveItem(shelf_, 0, 1);
  EXPECT_EQ(undoText(), QStringLiteral("moving Shelf: part 1"));
  document_.removeItem(shelf_, 0);
  EXPECT_EQ(undoText(), QStringLiteral("removing Shelf: part 1"));
  document_.paste(at(0, list::partThickness), QStringLiteral("2"));
  EXPECT_EQ(undoText(), QStringLiteral("Shelf: pasting"));
  document_.type(EntryPlace(holes_, 0, list::holeDiameter), QStringLiteral("9"));
  EXPECT_EQ(undoText(), QStringLiteral("Holes of the spacer plate of Target: hole 1, diameter"));
}

TEST_F(ListEdits, RemovesAndMovesWithUndo) {
  for (const char* text : {"1", "2", "3"}) typeThickness(items(), text);
  document_.moveItem(shelf_, 0, 2);
  EXPECT_EQ(thickness(0).text, "2");
  EXPECT_EQ(thickness(2).text, "1");
  document_.moveItem(shelf_, 2, 0);
  EXPECT_EQ(thickness(0).text, "1");
  document_.removeItem(shelf_, 1);
  EXPECT_EQ(items(), 2);
  EXPECT_EQ(thickness(1).text, "3");
  document_.undoStack().undo();
  EXPECT_EQ(items(), 3);
  EXPECT_EQ(thickness(1).text, "2");
}

TEST_F(ListEdits, WhatIsNotThereIsNeitherRemovedNorMoved) {
  typeThickness(0, "1");
  document_.removeItem(shelf_, 1);
  document_.moveItem(shelf_, 0, 1);
  document_.moveItem(shelf_, -1, 0);
  EXPECT_EQ(steps(), 1);
}

TEST_F(ListEdits, ABlockFillsCellsAndAddsItemsAsOneStep) {
  typeThickness(0, "5");
  document_.paste(at(0, list::partRole),
                  QStringLiteral("plate\t0,95 ± 0,01\r\nhead gasket\t0.75\t69.5\t2\tspare\r\n"));
  EXPECT_EQ(items(), 2);
  EXPECT_DOUBLE_EQ(thickness(0).values.front(), 0.95e-3);
  EXPECT_DOUBLE_EQ(document_.entry(at(1, list::partBore)).values.front(), 69.5e-3);
  EXPECT_DOUBLE_EQ(document_.entry(at(1, list::partQuantity)).values.front(), 2.0);
  EXPECT_EQ(steps(), 2);
  document_.undoStack().undo();
  EXPECT_EQ(items(), 1);
  EXPECT_EQ(thickness(0).text, "5");
}

TEST_F(ListEdits, ABlockBeginsAtItsFirstCell) {
  document_.paste(at(0, list::partThickness), QStringLiteral("0.75\t69.5\n0.65\t69.5\n"));
  EXPECT_FALSE(document_.entry(at(0, list::partRole)).known());
  EXPECT_DOUBLE_EQ(thickness(1).values.front(), 0.65e-3);
}

TEST_F(ListEdits, WhereANumberComesFromStaysWhenItIsTypedOver) {
  typeThickness(0, "0.9");
  Entry from = thickness(0);
  from.origin = describe::Origin::Measured;
  from.instrument = "micrometer";
  document_.say(at(0, list::partThickness), from);
  typeThickness(0, "0.95");
  EXPECT_EQ(thickness(0).instrument, "micrometer");
}

TEST_F(ListEdits, AreSavedAndRead) {
  type(0, list::partRole, "plate");
  typeThickness(0, "0.95 ± 0.01");
  document_.type(EntryPlace(holes_, 0, list::holeDiameter), QStringLiteral("9"));
  const model::Project before = document_.project();
  ASSERT_TRUE(document_.saveAs(inFolder(QStringLiteral("a.strokewright"))));
  document_.startNew();
  EXPECT_EQ(items(), 0);
  ASSERT_TRUE(document_.open(inFolder(QStringLiteral("a.strokewright"))));
  EXPECT_EQ(document_.project(), before);
}

TEST_F(ListEdits, AreFoundAfterACrash) {
  typeThickness(0, "0.95");
  document_.type(EntryPlace(holes_, 0, list::holeDiameter), QStringLiteral("9"));
  const storage::Read read = storage::read(storage::write(document_.project()));
  ASSERT_TRUE(read.project);
  EXPECT_EQ(*read.project, document_.project());
  model::Project empty;
  empty.engines = document_.project().engines;
  empty.engines[kTarget].lists.clear();
  EXPECT_EQ(countDifferences(document_.project(), empty), 2);
  EXPECT_EQ(countDifferences(empty, document_.project()), 2);
}

}  // namespace
}  // namespace strokewright::ui
