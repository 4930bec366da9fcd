#include <QSignalSpy>

#include "tests/ui/fixture.h"
#include "ui/widgets/entry_words.h"

namespace strokewright::ui {
namespace {

using units::Kind;

const QLocale kAmerican(QLocale::English, QLocale::UnitedStates);
const QLocale kBritish(QLocale::English, QLocale::UnitedKingdom);
const QLocale kGerman(QLocale::German, QLocale::Germany);

using TasteTest = FreshSettings;

TEST_F(TasteTest, FollowsTheLocaleUntilSomethingIsChosen) {
  EXPECT_EQ(Taste(kAmerican).style().group, units::UnitGroup::inchPound());
  EXPECT_EQ(Taste(kAmerican).terms(), Terms::American);
  EXPECT_EQ(Taste(kBritish).style().group, units::UnitGroup::metric());
  EXPECT_EQ(Taste(kBritish).terms(), Terms::British);
  EXPECT_EQ(Taste(kGerman).shown(Kind::Length, 0.0982), QStringLiteral("98,20\u00A0mm"));
  EXPECT_EQ(Taste(kBritish).shown(Kind::Length, 0.0982), QStringLiteral("98.20\u00A0mm"));
}

TEST_F(TasteTest, AUnitChosenForOneKindIsTheSameTheNextDay) {
  {
    Taste taste(kBritish);
    const QSignalSpy changed(&taste, &Taste::changed);
    taste.setUnit(Kind::FineLength, QStringLiteral("thou"));
    EXPECT_EQ(changed.count(), 1);
  }
  const Taste taste(kBritish);
  EXPECT_EQ(taste.unit(Kind::FineLength), QStringLiteral("thou"));
  EXPECT_EQ(taste.unit(Kind::Length), QStringLiteral("mm"));
}

TEST_F(TasteTest, EveryUnitOfEveryKindCanBeChosenAndComesBack) {
  for (std::size_t i = 0; i < units::kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    for (const units::Unit& unit : units::unitsOf(kind)) {
      Taste(kBritish).setUnit(kind, fromCore(unit.name));
      EXPECT_EQ(Taste(kBritish).style().unit(kind), unit.name);
    }
  }
}

TEST_F(TasteTest, AUnitOfAnotherKindChangesNothing) {
  Taste taste(kBritish);
  const QSignalSpy changed(&taste, &Taste::changed);
  taste.setUnit(Kind::Length, QStringLiteral("g"));
  EXPECT_EQ(changed.count(), 0);
  EXPECT_EQ(taste.unit(Kind::Length), QStringLiteral("mm"));
}

TEST_F(TasteTest, ADecimalCommaIsSpokenOfToWhoDoesNotUseIt) {
  for (const auto& [locale, spoken] : {std::pair(kBritish, true), std::pair(kGerman, false)}) {
    Taste taste(locale);
    Document document(taste);
    for (const char* text : {"1,2", "1,234"}) {
      document.type(1, in::headGasket, QString::fromLatin1(text));
      EXPECT_EQ(findingAbout(document, {1, in::headGasket}) != nullptr, spoken) << text;
    }
  }
}

TEST_F(TasteTest, ChangingUnitsChangesNothingInTheDocument) {
  Taste taste(kBritish);
  Document document(taste);
  document.type(1, in::bore, QStringLiteral("98,20"));
  const model::Project before = document.project();
  for (int i = 0; i < 100; ++i) {
    taste.setGroup(i % 2 == 0 ? units::UnitGroup::inchPound() : units::UnitGroup::metric());
  }
  EXPECT_EQ(document.project(), before);
  EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(TasteTest, AmericansReadTheirOwnTerms) {
  Taste taste(kBritish);
  EXPECT_EQ(taste.label(in::gudgeonPinDiameter), QStringLiteral("Gudgeon pin Ø"));
  taste.setTerms(Terms::American);
  EXPECT_EQ(taste.label(in::gudgeonPinDiameter), QStringLiteral("Wrist pin Ø"));
  EXPECT_EQ(Taste(kBritish).terms(), Terms::American);
}

TEST_F(TasteTest, TermsReplaceWholeWordsAndKeepTheirCapital) {
  Taste taste(kAmerican);
  EXPECT_EQ(taste.inTerms(QStringLiteral("Circlips hold the gudgeon pins.")),
            QStringLiteral("Retaining clips hold the wrist pins."));
  EXPECT_EQ(taste.inTerms(QStringLiteral("bushing, ambush")), QStringLiteral("bushing, ambush"));
  EXPECT_EQ(taste.inTerms(QStringLiteral("Rod length (centres)")),
            QStringLiteral("Rod length (centers)"));
}

TEST_F(TasteTest, TheOtherSystemIsSaidBesideTheOwn) {
  EXPECT_EQ(Taste(kBritish).inOtherSystem(Kind::Length, 0.0254), QStringLiteral("1.0000\u00A0in"));
  EXPECT_EQ(Taste(kAmerican).inOtherSystem(Kind::Length, 0.0254), QStringLiteral("25.40\u00A0mm"));
  EXPECT_EQ(Taste(kBritish).inOtherSystem(Kind::Angle, 1.0), QString());
}

TEST_F(TasteTest, RemembersTenFilesTheLatestFirst) {
  {
    Taste taste;
    for (int i = 0; i < 12; ++i) taste.noteFile(QString::number(i));
    taste.noteFile(QStringLiteral("5"));
    taste.forgetFile(QStringLiteral("4"));
  }
  EXPECT_EQ(Taste().recentFiles(),
            QStringList({QStringLiteral("5"), QStringLiteral("11"), QStringLiteral("10"),
                         QStringLiteral("9"), QStringLiteral("8"), QStringLiteral("7"),
                         QStringLiteral("6"), QStringLiteral("3"), QStringLiteral("2")}));
}

TEST_F(TasteTest, LabelsStandInSentencesWithASmallLetter) {
  EXPECT_EQ(inSentence(QStringLiteral("Bore")), QStringLiteral("bore"));
  EXPECT_EQ(inSentence(QStringLiteral("TDC angle")), QStringLiteral("TDC angle"));
}

}  // namespace
}  // namespace strokewright::ui
