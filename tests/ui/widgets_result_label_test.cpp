#include <QSignalSpy>
#include <QTest>

#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "tests/ui/fixture.h"
#include "ui/widgets/result_label.h"

namespace strokewright::ui {
namespace {

class ResultInARow : public WithDocument {
 protected:
  /// Two bores and throws that differ between donor and target.
  void typeEngines() {
    for (const int engine : {kDonor, kTarget}) {
      document_.type(engine, in::cylinderCount, QStringLiteral("2"));
      document_.type(engine, in::crankThrow, QStringLiteral("36"));
      document_.type(engine, in::rodLength, QStringLiteral("130"));
    }
    document_.type(kDonor, in::bore, QStringLiteral("70"));
    document_.type(kTarget, in::bore, QStringLiteral("76.00 ± 0.10"));
  }

  ResultLabel swept_{document_, kTarget, out::sweptVolume};
};

TEST_F(ResultInARow, SaysWhatItWaitsFor) {
  EXPECT_TRUE(swept_.shownText().startsWith(QStringLiteral("waits for bore")))
      << swept_.shownText().toStdString();
}

TEST_F(ResultInARow, PressedWhileItWaitsItLeadsToTheFirstMissingEntry) {
  QSignalSpy asked(&swept_, &ResultLabel::entryAsked);
  QTest::keyClick(&swept_, Qt::Key_Return);
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked[0][0].toInt(), kTarget);
  EXPECT_EQ(asked[0][1].value<const describe::Input*>(), &in::bore);
}

// 76.00 mm bore and 72 mm stroke: π/4 · 7.6² · 7.2 = 326.63 ml (plane geometry), and 0.10 mm of
// bore are 2 · 0.10 / 76 of it, 0.86 ml.
TEST_F(ResultInARow, ShowsTheNumberAndItsPlusMinus) {
  typeEngines();
  EXPECT_EQ(swept_.shownText(), QStringLiteral("326.63 ml ± 0.86"));
  EXPECT_EQ(swept_.accessibleName(),
            QStringLiteral("Swept volume of one cylinder, Target: 326.63 ml ± 0.86"));
}

TEST_F(ResultInARow, FollowsTheUnitsOfTheReader) {
  typeEngines();
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_EQ(swept_.shownText(), QStringLiteral("19.932 cu in ± 0.052"));
}

TEST_F(ResultInARow, PressedItAsksForItsWorking) {
  typeEngines();
  QSignalSpy asked(&swept_, &ResultLabel::whyAsked);
  QTest::keyClick(&swept_, Qt::Key_Space);
  QTest::keyClick(&swept_, Qt::Key_Return);
  QTest::mouseClick(&swept_, Qt::LeftButton);
  ASSERT_EQ(asked.count(), 3);
  EXPECT_EQ(asked[0][1].value<const describe::Result*>(), &out::sweptVolume);
}

// 36 mm throw, 70 mm bore: 277.09 ml; the target has 326.63 ml (plane geometry).
TEST_F(ResultInARow, ComparedItShowsTheDifferenceWithItsSign) {
  typeEngines();
  swept_.setComparedWith(kDonor);
  EXPECT_EQ(swept_.shownText(), QStringLiteral("+49.54 ml"));
}

TEST_F(ResultInARow, ComparedWithNothingItShowsADash) {
  swept_.setComparedWith(kDonor);
  EXPECT_EQ(swept_.shownText(), QStringLiteral("–"));
}

TEST_F(ResultInARow, UnlikeCylindersShowTheirRange) {
  typeEngines();
  document_.type(kTarget, in::bore, QStringLiteral("76; 77"));
  EXPECT_EQ(swept_.shownText(), QStringLiteral("326.63 to 335.28"));
  const ResultLabel second(document_, kTarget, out::sweptVolume, 1);
  EXPECT_EQ(second.shownText(), QStringLiteral("335.28 ml"));
}

TEST_F(ResultInARow, ARefusedResultGivesTheReason) {
  typeEngines();
  document_.type(kTarget, in::bore, QStringLiteral("-76"));
  EXPECT_TRUE(swept_.shownText().startsWith(QStringLiteral("refused: ")))
      << swept_.shownText().toStdString();
}

TEST_F(ResultInARow, APlusMinusBelowTheLastDigitShownIsNotShown) {
  EXPECT_EQ(plusMinusText(taste_, out::sweptVolume, 0.0), QString());
  EXPECT_EQ(plusMinusText(taste_, out::sweptVolume, 4e-9), QString());
  EXPECT_EQ(plusMinusText(taste_, out::sweptVolume, 1e-8), QStringLiteral("± 0.01"));
  EXPECT_EQ(shareText(taste_, out::sweptVolume, 4e-9), QStringLiteral("± 0.004"));
  EXPECT_EQ(shareText(taste_, out::sweptVolume, 1e-12), QString());
}

TEST_F(ResultInARow, CylindersShownAlikeAreNoRange) {
  typeEngines();
  document_.type(kTarget, in::bore, QStringLiteral("76; 76.0001"));
  EXPECT_EQ(swept_.shownText(), QStringLiteral("326.63 ml"));
}

}  // namespace
}  // namespace strokewright::ui
