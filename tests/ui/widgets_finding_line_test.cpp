#include <QApplication>
#include <QLabel>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

#include "core/model/lists.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/finding_line.h"

namespace strokewright::ui {
namespace {

using describe::Finding;
using describe::Weight;

class FindingLineTest : public WithDocument {
 protected:
  Finding finding() const {
    Finding found;
    found.weight = Weight::Objects;
    found.key = "slip";
    found.source = "common practice";
    found.engine = kTarget;
    found.says = {"{1} {2} is 25 times smaller than usual.",
                  {&in::bore, describe::Quantity{units::Kind::Length, 0.003}}};
    found.about = {&in::bore};
    describe::Mend mend;
    mend.says = {"take as 76.2 mm", {}};
    mend.entries = {{&in::bore, "76.2 mm"}};
    found.mends = {mend};
    return found;
  }

  QString words() const {
    QStringList all;
    for (const QLabel* label : line_.findChildren<QLabel*>()) all += label->text();
    return all.join(QChar(u'|'));
  }
  QList<QToolButton*> buttons() const { return line_.findChildren<QToolButton*>(); }

  FindingLine line_{document_};
};

TEST_F(FindingLineTest, WritesOutWeightAndSentence) {
  line_.setFinding(finding());
  EXPECT_EQ(words(), QStringLiteral("! objects|Bore 3.00\u00A0mm is 25 times smaller than usual."));
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_TRUE(words().contains(QStringLiteral("0.1181\u00A0in")));
}

TEST_F(FindingLineTest, NamesTheCylinderInSentenceAndKey) {
  Finding found = finding();
  found.cylinder = 1;
  line_.setFinding(found);
  EXPECT_TRUE(words().contains(QStringLiteral("|Cylinder 2: Bore 3.00"))) << words().toStdString();
  EXPECT_EQ(buttons()[0]->text(), QStringLiteral("Cylinder 2: Take as 76.2 mm"));
}

TEST_F(FindingLineTest, OffersTheMendAsOneStep) {
  document_.type(kTarget, in::bore, QStringLiteral("3.0"));
  line_.setFinding(finding());
  ASSERT_EQ(buttons().size(), 2);
  EXPECT_EQ(buttons()[0]->text(), QStringLiteral("Take as 76.2 mm"));
  EXPECT_EQ(buttons()[0]->focusPolicy(), Qt::StrongFocus);
  buttons()[0]->click();
  EXPECT_EQ(bore().text, "76.2 mm");
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "3.0");
}

TEST_F(FindingLineTest, LeadsToTheEntry) {
  line_.setFinding(finding());
  QSignalSpy asked(&line_, &FindingLine::entryAsked);
  buttons()[1]->click();
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked[0][0].toInt(), kTarget);
  EXPECT_EQ(asked[0][1].value<const describe::Input*>(), &in::bore);
}

TEST_F(FindingLineTest, EnterActsLikeSpace) {
  line_.setFinding(finding());
  QSignalSpy asked(&line_, &FindingLine::entryAsked);
  QTest::keyClick(buttons()[1], Qt::Key_Return);
  QTest::keyClick(buttons()[1], Qt::Key_Space);
  EXPECT_EQ(asked.count(), 2);
}

TEST_F(FindingLineTest, WhatCanBeDoneGoesBelowTheSentenceWhereItIsNarrow) {
  line_.setFinding(finding());
  line_.resize(1200, 60);
  line_.show();
  QApplication::processEvents();
  const int beside = buttons()[1]->mapTo(&line_, QPoint()).y();
  line_.resize(buttons()[0]->width() + buttons()[1]->width() + 120, 120);
  QApplication::processEvents();
  EXPECT_GT(buttons()[1]->mapTo(&line_, QPoint()).y(), beside);
  EXPECT_LE(buttons()[1]->mapTo(&line_, QPoint()).x() + buttons()[1]->width(), line_.width());
  EXPECT_GE(buttons()[1]->width(), buttons()[1]->sizeHint().width()) << "the words are whole";
}

TEST_F(FindingLineTest, AHoleLeadsToTheListOfHoles) {
  Finding hole = finding();
  hole.key = "plate_holes_fit";
  hole.mends.clear();
  document_.type(EntryPlace({&model::list::plateHoles, kTarget}, 0, model::list::holeDiameter),
                 QStringLiteral("9"));
  line_.setFinding(hole);
  QSignalSpy asked(&line_, &FindingLine::listAsked);
  ASSERT_EQ(buttons().size(), 1);
  buttons()[0]->click();
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked[0][0].value<const describe::List*>(), &model::list::plateHoles);
}

TEST_F(FindingLineTest, KeepsItsButtonsWhileOnlyTheNumbersChange) {
  line_.setFinding(finding());
  const QList<QToolButton*> before = buttons();
  Finding other = finding();
  other.says.arguments[1] = describe::Quantity{units::Kind::Length, 0.004};
  line_.setFinding(other);
  EXPECT_EQ(buttons(), before);
  EXPECT_TRUE(words().contains(QStringLiteral("4.00")));
}

}  // namespace
}  // namespace strokewright::ui
