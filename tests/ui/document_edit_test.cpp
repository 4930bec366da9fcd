#include <QSignalSpy>

#include "tests/ui/fixture.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Origin;

class EditDoor : public WithDocument {
 protected:
  void typeBore(const QString& text) { document_.type(kTarget, in::bore, text); }
  int steps() { return document_.undoStack().count(); }
};

TEST_F(EditDoor, BeginsWithOneDonorAndOneTargetAndNothingToUndo) {
  ASSERT_EQ(document_.project().engines.size(), 2u);
  EXPECT_EQ(document_.project().engines[0].part, model::Part::Donor);
  EXPECT_EQ(document_.project().engines[1].part, model::Part::Target);
  EXPECT_EQ(document_.project().referenceDonor, 0);
  EXPECT_EQ(steps(), 0);
  EXPECT_FALSE(document_.modified());
}

TEST_F(EditDoor, TypingPutsNumberAndTextAndTellsOnce) {
  const QSignalSpy changed(&document_, &Document::projectChanged);
  typeBore(QStringLiteral("98,20 ± 0,03"));
  ASSERT_TRUE(bore().known());
  EXPECT_DOUBLE_EQ(bore().values.front(), 0.0982);
  EXPECT_DOUBLE_EQ(bore().limit(), 0.00003);
  EXPECT_EQ(bore().text, "98,20 ± 0,03");
  EXPECT_EQ(bore().unit, "mm");
  EXPECT_EQ(changed.count(), 1);
  EXPECT_TRUE(document_.modified());
}

TEST_F(EditDoor, TheAssessmentIsOfTheNewProject) {
  typeBore(QStringLiteral("76"));
  EXPECT_EQ(&document_.assessment().project(), &document_.project());
}

TEST_F(EditDoor, TextThatMakesNoSenseIsKept) {
  typeBore(QStringLiteral("seventy"));
  EXPECT_FALSE(bore().known());
  EXPECT_EQ(bore().text, "seventy");
}

TEST_F(EditDoor, AnEditThatChangesNothingLeavesNoStep) {
  document_.edit(QStringLiteral("nothing"), [](model::Project&) {});
  EXPECT_EQ(steps(), 0);
  EXPECT_FALSE(document_.modified());
}

TEST_F(EditDoor, KeystrokesInOneFieldAreOneStep) {
  for (const char* text : {"9", "98", "98.", "98.2"}) typeBore(QString::fromLatin1(text));
  EXPECT_EQ(steps(), 1);
  document_.undoStack().undo();
  EXPECT_TRUE(bore().empty());
}

TEST_F(EditDoor, LeavingTheFieldEndsTheStep) {
  typeBore(QStringLiteral("98"));
  document_.closeStep();
  typeBore(QStringLiteral("99"));
  EXPECT_EQ(steps(), 2);
}

TEST_F(EditDoor, AnotherFieldIsAnotherStep) {
  typeBore(QStringLiteral("98"));
  document_.type(kTarget, in::crankThrow, QStringLiteral("36"));
  document_.type(kDonor, in::crankThrow, QStringLiteral("36"));
  EXPECT_EQ(steps(), 3);
}

TEST_F(EditDoor, TypingBackWhatWasThereLeavesNoStep) {
  typeBore(QStringLiteral("98"));
  document_.closeStep();
  typeBore(QStringLiteral("981"));
  typeBore(QStringLiteral("98"));
  EXPECT_EQ(steps(), 1);
}

TEST_F(EditDoor, TypingAfterUndoIsAStepOfItsOwn) {
  typeBore(QStringLiteral("98"));
  document_.closeStep();
  typeBore(QStringLiteral("99"));
  document_.undoStack().undo();
  typeBore(QStringLiteral("97"));
  EXPECT_EQ(steps(), 2);
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "98");
}

TEST_F(EditDoor, EscapeTakesBackTheOpenStepAlone) {
  typeBore(QStringLiteral("98"));
  document_.closeStep();
  document_.undoOpenStep(Document::mergeKey(kTarget, in::bore));
  EXPECT_EQ(bore().text, "98");
  typeBore(QStringLiteral("99"));
  document_.undoOpenStep(Document::mergeKey(kTarget, in::bore));
  EXPECT_EQ(bore().text, "98");
}

TEST_F(EditDoor, StepsAreNamedInTheWordsOfTheBuilder) {
  document_.renameEngine(kTarget, QStringLiteral("Burdock 719"));
  typeBore(QStringLiteral("98"));
  EXPECT_EQ(document_.undoStack().undoText(), QStringLiteral("bore of Burdock 719"));
}

TEST_F(EditDoor, TypingOverKeepsWhereTheNumberCameFrom) {
  typeBore(QStringLiteral("98 ± 0.02"));
  Entry from = bore();
  from.origin = Origin::Measured;
  from.instrument = "bore gauge";
  from.date = "2024-05-01";
  from.note = "cold";
  document_.say(kTarget, in::bore, from);
  for (const char* text : {"98", "", "9", "98.1"}) typeBore(QString::fromLatin1(text));
  EXPECT_EQ(bore().text, "98.1");
  EXPECT_EQ(bore().origin, Origin::Measured);
  EXPECT_EQ(bore().instrument, "bore gauge");
  EXPECT_EQ(bore().date, "2024-05-01");
  EXPECT_EQ(bore().note, "cold");
}

TEST_F(EditDoor, NumbersTypedAgainKeepThePlusMinusOfTheirInstrument) {
  const auto chamber = [&] { return document_.entry(kTarget, in::chamberVolume); };
  const auto type = [&](const char* text) {
    document_.type(kTarget, in::chamberVolume, QString::fromUtf8(text));
    document_.closeStep();
  };
  type("24.0");
  Entry from = chamber();
  from.origin = Origin::Measured;
  from.instrument = "burette";
  from.plusMinus = 0.2e-6;
  document_.say(kTarget, in::chamberVolume, from);
  document_.closeStep();
  const Entry said = chamber();
  const double sure = said.limit();
  type("24.1 | 24.0 | 23.9");
  EXPECT_EQ(chamber().text, "24.1 | 24.0 | 23.9") << "as typed";
  EXPECT_EQ(chamber().plusMinus, 0.2e-6);
  EXPECT_EQ(chamber().instrument, "burette");
  EXPECT_GE(chamber().limit(), sure) << "readings beside an instrument make nothing surer";
  document_.undoStack().undo();
  EXPECT_EQ(chamber(), said) << "in one step";
  type("24.1 ± 0.3");
  EXPECT_DOUBLE_EQ(*chamber().plusMinus, 0.3e-6);
  type("23.9");
  EXPECT_DOUBLE_EQ(*chamber().plusMinus, 0.3e-6) << "one that was typed stays alike";
  type("");
  type("23.9");
  EXPECT_EQ(chamber().plusMinus, std::nullopt) << "cleared in between";
}

TEST_F(EditDoor, ANumberTypedOverOneThatWasComputedHasNoneOfItsPlusMinus) {
  document_.putComputed(kTarget, in::spacer, QStringLiteral("0.95 ± 0.01 mm"));
  document_.type(kTarget, in::spacer, QStringLiteral("1.00"));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).plusMinus, std::nullopt);
  document_.putComputed(kTarget, in::spacer, QStringLiteral("0.95 ± 0.01 mm"));
  document_.putComputed(kTarget, in::spacer, QStringLiteral("0.96 mm"));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).plusMinus, std::nullopt);
}

TEST_F(EditDoor, ClearingLeavesTheNoteAlone) {
  typeBore(QStringLiteral("98"));
  Entry from;
  from.origin = Origin::Assumed;
  from.note = "ask the maker";
  document_.say(kTarget, in::bore, from);
  document_.closeStep();
  typeBore(QString());
  Entry left;
  left.note = "ask the maker";
  EXPECT_EQ(bore(), left);
}

TEST_F(EditDoor, SayingMeasuredPutsThePlusMinusIntoTheText) {
  typeBore(QStringLiteral("98.20"));
  Entry from = bore();
  from.origin = Origin::Measured;
  from.plusMinus = 0.000005;
  document_.say(kTarget, in::bore, from);
  EXPECT_EQ(bore().text, "98.20 ± 0.005");
  EXPECT_DOUBLE_EQ(bore().limit(), 0.000005);
}

TEST_F(EditDoor, ThePlusMinusOfATextWithAUnitSaysItsUnit) {
  typeBore(QStringLiteral("2 5/8 in"));
  Entry from = bore();
  from.plusMinus = 0.000005;
  document_.say(kTarget, in::bore, from);
  EXPECT_EQ(bore().text, "2 5/8 in ± 0.005 mm");
  EXPECT_DOUBLE_EQ(bore().limit(), 0.000005);
  EXPECT_DOUBLE_EQ(bore().values.front(), 2.625 * 0.0254);
}

TEST_F(EditDoor, WhatTheWorkbenchFoundIsOfOriginComputedUntilItIsTypedOver) {
  document_.putComputed(kTarget, in::spacer, QStringLiteral("0.95 mm"));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).origin, Origin::Computed);
  document_.type(kTarget, in::spacer, QStringLiteral("1.00"));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).origin, Origin::NotSaid);
}

TEST_F(EditDoor, AMendIsOneStep) {
  typeBore(QStringLiteral("3"));
  describe::Mend mend;
  mend.says = {"take as 76.2 mm", {}};
  mend.entries = {{&in::bore, "76.2 mm"}, {&in::crankThrow, ""}};
  document_.take(kTarget, mend);
  EXPECT_EQ(bore().text, "76.2 mm");
  EXPECT_EQ(document_.undoStack().undoText(), QStringLiteral("mend of bore of Target"));
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "3");
}

TEST_F(EditDoor, AMendThatWorksOutItsNumberIsOfOriginComputed) {
  typeBore(QStringLiteral("76 ± 0.01"));
  describe::Entry from;
  from.origin = Origin::Measured;
  from.instrument = "bore gauge";
  from.note = "cold";
  document_.say(kTarget, in::bore, from);
  describe::Mend mend = describe::takeAs(in::bore, 75.99e-3);
  document_.take(kTarget, mend);
  EXPECT_EQ(bore().origin, Origin::Measured) << "a slip put right";
  EXPECT_EQ(bore().instrument, "bore gauge");
  document_.undoStack().undo();
  mend.computed = true;
  document_.take(kTarget, mend);
  EXPECT_EQ(bore().origin, Origin::Computed);
  EXPECT_EQ(bore().instrument, "");
  EXPECT_EQ(bore().note, "cold");
}

TEST_F(EditDoor, AnEngineIsAddedAsACopyUnderANameOfItsOwn) {
  typeBore(QStringLiteral("98"));
  const int added = document_.addEngine(model::Part::Variant, kTarget);
  EXPECT_EQ(added, 2);
  EXPECT_EQ(document_.engineName(added), QStringLiteral("Target 2"));
  EXPECT_EQ(document_.entry(added, in::bore).text, "98");
  document_.undoStack().undo();
  EXPECT_EQ(document_.project().engines.size(), 2u);
  document_.undoStack().redo();
  EXPECT_EQ(document_.project().engines.size(), 3u);
}

TEST_F(EditDoor, TheReferenceDonorFollowsWhenEnginesGo) {
  const int second = document_.addEngine(model::Part::Donor, -1);
  document_.removeEngine(kDonor);
  EXPECT_EQ(document_.project().referenceDonor, second - 1);
  document_.removeEngine(second - 1);
  EXPECT_EQ(document_.project().referenceDonor, -1);
  document_.undoStack().undo();
  document_.undoStack().undo();
  EXPECT_EQ(document_.project().referenceDonor, kDonor);
  EXPECT_EQ(document_.project().engines.size(), 3u);
}

TEST_F(EditDoor, TheFirstDonorBecomesTheReference) {
  document_.removeEngine(kDonor);
  const int added = document_.addEngine(model::Part::Donor, -1);
  EXPECT_EQ(document_.project().referenceDonor, added);
}

TEST_F(EditDoor, RenamingMergesItsKeystrokes) {
  for (const char* name : {"B", "Bu", "Burdock"}) {
    document_.renameEngine(kTarget, QString::fromLatin1(name));
  }
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(document_.engineName(kTarget), QStringLiteral("Burdock"));
}

}  // namespace
}  // namespace strokewright::ui
