#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QMenu>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>
#include <memory>
#include <optional>

#include "tests/ui/fixture.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/quantity_edit.h"

namespace strokewright::ui {
namespace {

using describe::Entry;

/// Two fields in a window, the one under test first.
class NumberField : public WithDocument {
 protected:
  void SetUp() override { build(); }

  void build() {
    window_ = std::make_unique<QWidget>();
    field_ = new QuantityEdit(document_, kTarget, in::bore, window_.get());
    other_ = new QuantityEdit(document_, kTarget, in::crankThrow, window_.get());
    field_->setGeometry(0, 0, 300, 30);
    other_->setGeometry(0, 40, 300, 30);
    window_->resize(300, 80);
    window_->show();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitFor([this] { return window_->isActiveWindow(); }));
    other_->setFocus();
  }

  void enter() { field_->setFocus(Qt::TabFocusReason); }
  void leave() { other_->setFocus(Qt::TabFocusReason); }
  void type(const QString& text) { QTest::keyClicks(field_, text); }
  void press(Qt::Key key) { QTest::keyClick(field_, key); }
  void typeBore(const QString& text) {
    document_.type(kTarget, in::bore, text);
    document_.closeStep();
  }
  int steps() { return document_.undoStack().count(); }

  std::unique_ptr<QWidget> window_;
  QuantityEdit* field_ = nullptr;
  QuantityEdit* other_ = nullptr;
};

TEST_F(NumberField, EachKeystrokeReachesTheDocumentAndAllAreOneStep) {
  enter();
  type(QStringLiteral("98"));
  EXPECT_EQ(bore().text, "98");
  type(QStringLiteral(".2"));
  EXPECT_EQ(bore().text, "98.2");
  leave();
  EXPECT_EQ(steps(), 1);
  enter();
  type(QStringLiteral("99"));
  EXPECT_EQ(steps(), 2);
}

TEST_F(NumberField, ShowsThePlusMinusThatStayedBehindTheNumberTypedAgain) {
  typeBore(QStringLiteral("98.20 ± 0.03"));
  enter();
  type(QStringLiteral("98.25"));
  EXPECT_EQ(field_->text(), QStringLiteral("98.25")) << "not under the hand";
  leave();
  EXPECT_EQ(field_->text(), QStringLiteral("98.25 ± 0.03"));
  enter();
  type(QStringLiteral("2 5/8 in"));
  leave();
  EXPECT_EQ(field_->text(), QStringLiteral("2 5/8 in ± 0.03 mm"));
  EXPECT_DOUBLE_EQ(*bore().plusMinus, 0.03e-3);
}

TEST_F(NumberField, AVisitWritesNothing) {
  typeBore(QStringLiteral("2 5/8 in"));
  const Entry before = bore();
  for (const bool inch : {true, false}) {
    taste_.setGroup(inch ? units::UnitGroup::inchPound() : units::UnitGroup::metric());
    for (int visit = 0; visit < 3; ++visit) {
      enter();
      press(Qt::Key_Return);
      leave();
    }
  }
  EXPECT_EQ(bore(), before);
  EXPECT_EQ(steps(), 1);
}

TEST_F(NumberField, TheWheelChangesNothingWithOrWithoutFocus) {
  typeBore(QStringLiteral("98.20"));
  for (const bool focused : {false, true}) {
    if (focused) enter();
    QWheelEvent wheel(QPointF(5, 5), field_->mapToGlobal(QPointF(5, 5)), {}, {0, 120}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(field_, &wheel);
    EXPECT_FALSE(wheel.isAccepted());
    EXPECT_EQ(field_->text(), QStringLiteral("98.20"));
  }
  EXPECT_EQ(steps(), 1);
}

TEST_F(NumberField, TheDecimalKeyOfTheKeypadIsADecimalMark) {
  enter();
  type(QStringLiteral("98"));
  QTest::keyClick(field_, Qt::Key_Period, Qt::KeypadModifier);
  type(QStringLiteral("2"));
  ASSERT_TRUE(bore().known());
  EXPECT_DOUBLE_EQ(bore().values.front(), 0.0982);
}

TEST_F(NumberField, EnteringSelectsAllSoThatTypingReplaces) {
  typeBore(QStringLiteral("2"));
  enter();
  EXPECT_EQ(field_->selectedText(), QStringLiteral("2"));
  type(QStringLiteral("34"));
  EXPECT_EQ(bore().text, "34");
  leave();
  QTest::mouseClick(field_, Qt::LeftButton);
  EXPECT_EQ(field_->selectedText(), QStringLiteral("34"));
}

TEST_F(NumberField, EnterEndsTheStep) {
  enter();
  type(QStringLiteral("98"));
  press(Qt::Key_Return);
  enter();
  type(QStringLiteral("99"));
  EXPECT_EQ(steps(), 2);
}

TEST_F(NumberField, EscapePutsBackWhatWasThereOnEntering) {
  typeBore(QStringLiteral("98.20"));
  enter();
  type(QStringLiteral("99.7"));
  press(Qt::Key_Escape);
  EXPECT_EQ(bore().text, "98.20");
  EXPECT_EQ(field_->text(), QStringLiteral("98.20"));
  press(Qt::Key_Escape);
  EXPECT_EQ(bore().text, "98.20") << "earlier steps are not taken back";
}

TEST_F(NumberField, UndoKeysGoToTheWindow) {
  for (const QKeySequence::StandardKey key : {QKeySequence::Undo, QKeySequence::Redo}) {
    const QKeyCombination keys = QKeySequence(key)[0];
    for (const bool touched : {false, true}) {
      enter();
      if (touched) type(QStringLiteral("98"));
      QKeyEvent shortcut(QEvent::ShortcutOverride, keys.key(), keys.keyboardModifiers());
      shortcut.ignore();
      QApplication::sendEvent(field_, &shortcut);
      EXPECT_FALSE(shortcut.isAccepted());
      const QString before = field_->text();
      QTest::keyClick(field_, keys.key(), keys.keyboardModifiers());
      EXPECT_EQ(field_->text(), before);
    }
  }
}

TEST_F(NumberField, UndoOfTheDocumentShowsInTheFieldWithFocus) {
  typeBore(QStringLiteral("98.20"));
  enter();
  type(QStringLiteral("99.7"));
  document_.undoStack().undo();
  EXPECT_EQ(field_->text(), QStringLiteral("98.20"));
  type(QStringLiteral("97"));
  EXPECT_EQ(bore().text, "97");
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "98.20");
}

TEST_F(NumberField, AltWithUpAndDownStepsByTheLastTypedDigit) {
  enter();
  type(QStringLiteral("98.20"));
  QTest::keyClick(field_, Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(bore().text, "98.21");
  QTest::keyClick(field_, Qt::Key_Down, Qt::AltModifier);
  QTest::keyClick(field_, Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(bore().text, "98.19");
  EXPECT_EQ(steps(), 1);
}

TEST_F(NumberField, UpDownAndEnterGoToTheNextNumberAndChangeNone) {
  typeBore(QStringLiteral("17"));
  document_.type(kTarget, in::crankThrow, QStringLiteral("33"));
  const int before = steps();
  enter();
  press(Qt::Key_Up);
  EXPECT_EQ(QApplication::focusWidget(), field_) << "there is none above";
  press(Qt::Key_Down);
  EXPECT_EQ(QApplication::focusWidget(), other_);
  EXPECT_EQ(other_->selectedText(), QStringLiteral("33"));
  QTest::keyClick(other_, Qt::Key_Up);
  EXPECT_EQ(QApplication::focusWidget(), field_);
  EXPECT_EQ(steps(), before);
  type(QStringLiteral("18"));
  press(Qt::Key_Return);
  EXPECT_EQ(QApplication::focusWidget(), other_);
  QTest::keyClick(other_, Qt::Key_Return);
  EXPECT_EQ(QApplication::focusWidget(), other_) << "the last one keeps it";
  EXPECT_EQ(bore().text, "18");
  EXPECT_EQ(steps(), before + 1);
}

TEST_F(NumberField, ItsRestingTextKeepsTwoUnits) {
  enter();
  type(QStringLiteral("11 cm ± 0.5 mm"));
  leave();
  EXPECT_EQ(field_->text(), QStringLiteral("11 cm ± 0.5 mm"));
}

TEST_F(NumberField, AFieldInAnotherColumnIsNotTheNext) {
  other_->move(400, 40);
  enter();
  press(Qt::Key_Down);
  EXPECT_EQ(QApplication::focusWidget(), field_);
}

TEST_F(NumberField, TextThatMakesNoSenseStaysAndIsMarked) {
  enter();
  type(QStringLiteral("1.000,5"));
  leave();
  EXPECT_EQ(field_->text(), QStringLiteral("1.000,5"));
  EXPECT_FALSE(bore().known());
  EXPECT_TRUE(field_->accessibleDescription().contains(QStringLiteral("two decimal marks")))
      << field_->accessibleDescription().toStdString();
}

TEST_F(NumberField, ABlockPastedFromATableHasARowForEachCylinder) {
  QApplication::clipboard()->setText(QStringLiteral("98,12\t98,20\n98,29\n"));
  enter();
  QTest::keySequence(field_, QKeySequence(QKeySequence::Paste));
  EXPECT_EQ(bore().text, "98,12 | 98,20; 98,29");
  EXPECT_EQ(bore().values.size(), 2u);
  EXPECT_EQ(bore().readings.front().size(), 2u);
}

TEST_F(NumberField, ShowsTheTextAsTypedWhileTheUnitIsTheSame) {
  typeBore(QStringLiteral("98.20 ± 0.03"));
  EXPECT_EQ(field_->text(), QStringLiteral("98.20 ± 0.03"));
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_TRUE(field_->text().startsWith(QStringLiteral("3.866")));
  EXPECT_TRUE(field_->text().contains(QStringLiteral(" ± 0.001")));
  taste_.setGroup(units::UnitGroup::metric());
  EXPECT_EQ(field_->text(), QStringLiteral("98.20 ± 0.03"));
}

TEST_F(NumberField, InAnotherUnitItShowsFewDigitsAndEditsAllOfThem) {
  typeBore(QStringLiteral("98.20 ± 0.03"));
  const Entry before = bore();
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_EQ(field_->text(), QStringLiteral("3.86614 ± 0.00118"));
  enter();
  type(field_->text());
  ASSERT_TRUE(bore().known());
  const double fifteenDigits = 1e-14;  // of what is edited, relative
  EXPECT_NEAR(bore().values.front() / before.values.front(), 1.0, fifteenDigits);
  EXPECT_NEAR(*bore().plusMinus / *before.plusMinus, 1.0, fifteenDigits);
}

TEST_F(NumberField, TheEchoSaysWhatAnotherUnitOrAFractionMeans) {
  typeBore(QStringLiteral("2 5/8 in"));
  EXPECT_EQ(entryEcho(document_, {kTarget, in::bore}), QStringLiteral("= 66.675\u00A0mm"));
  typeBore(QStringLiteral("66.68"));
  EXPECT_EQ(entryEcho(document_, {kTarget, in::bore}), QString());
}

TEST_F(NumberField, TheEchoSaysTheMeanOfReadingsAndTheStepOnAScale) {
  typeBore(QStringLiteral("66.00 | 66.02"));
  EXPECT_EQ(entryEcho(document_, {kTarget, in::bore}), QStringLiteral("= 66.01\u00A0mm"));
  const EntryPlace chamber(kTarget, in::chamberVolume);
  document_.type(chamber, QStringLiteral("0.2 to 18.9"));
  EXPECT_EQ(entryEcho(document_, chamber), QStringLiteral("= 18.7\u00A0ml"));
  EXPECT_TRUE(entryTip(document_, chamber).contains(QStringLiteral("a reading may be a step")));
  EXPECT_FALSE(entryTip(document_, {kTarget, in::bore}).contains(QStringLiteral("a step")));
}

TEST_F(NumberField, TheEchoStandsBehindTheTextAndNeverOverIt) {
  typeBore(QStringLiteral("66.00 | 66.02 | 66.01"));
  const QFontMetrics metrics = field_->fontMetrics();
  const int echo = metrics.horizontalAdvance(QStringLiteral("= 66.01 mm"));
  enter();
  EXPECT_GT(field_->textMargins().right(), echo) << "there is room";
  field_->resize(metrics.horizontalAdvance(field_->text()) + echo / 2, 30);
  QApplication::processEvents();
  EXPECT_LT(field_->textMargins().right(), echo);
}

TEST_F(NumberField, InInchesTheMillimetresAlwaysStandBehindIt) {
  taste_.setGroup(units::UnitGroup::inchPound());
  typeBore(QStringLiteral("2.600"));
  leave();
  const int echo = field_->fontMetrics().horizontalAdvance(QStringLiteral("= 66.04 mm"));
  EXPECT_GT(field_->textMargins().right(), echo);
  taste_.setGroup(units::UnitGroup::metric());
  EXPECT_LT(field_->textMargins().right(), echo);
}

TEST_F(NumberField, ItsNameSaysWhatOfWhichEngineAndInWhichUnit) {
  document_.renameEngine(kTarget, QStringLiteral("Burdock 719"));
  EXPECT_EQ(field_->accessibleName(), QStringLiteral("Bore, Burdock 719, mm"));
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_EQ(field_->accessibleName(), QStringLiteral("Bore, Burdock 719, in"));
}

TEST_F(NumberField, TellsOfNumbersThatNameCylindersNoTypicalOnes) {
  document_.type(kTarget, in::firingOrder, QString());
  const QString tip = entryTip(document_, {kTarget, in::firingOrder});
  EXPECT_TRUE(tip.contains(QStringLiteral("1-3-4-2"))) << tip.toStdString();
  for (const char* not_ : {"Typical", "readings", "|"}) {
    EXPECT_FALSE(tip.contains(QLatin1StringView(not_))) << tip.toStdString();
  }
  document_.type(kTarget, in::cylinderCount, QStringLiteral("3"));
  document_.type(kTarget, in::cylinderNumber, QString());
  EXPECT_TRUE(
      entryDefault(document_, {kTarget, in::cylinderNumber}).startsWith(QStringLiteral("1; 2; 3")));
}

TEST_F(NumberField, ItsTipTellsHowToMeasureAndWhatIsUsual) {
  typeBore(QStringLiteral("98.20"));
  const QString tip = entryTip(document_, {kTarget, in::bore});
  for (const char* part : {"gauge", "Typical: 76.00", "Usual: 30.00 to 160.00", "(3.8661"}) {
    EXPECT_TRUE(tip.contains(QString::fromLatin1(part))) << part << "\n" << tip.toStdString();
  }
}

TEST_F(NumberField, AnEmptyOneShowsItsDefault) {
  const QuantityEdit ratio(document_, kTarget, in::rodRatioLimit);
  EXPECT_TRUE(ratio.placeholderText().endsWith(QStringLiteral("(default)")));
  EXPECT_EQ(ratio.text(), QString());
  EXPECT_EQ(field_->placeholderText(), QString());
}

TEST_F(NumberField, FocusAndPointerTellWhatIsMeant) {
  const QSignalSpy told(field_, &QuantityEdit::attention);
  enter();
  leave();
  ASSERT_EQ(told.count(), 2);
  EXPECT_EQ(told[0][0].value<const describe::Input*>(), &in::bore);
  EXPECT_EQ(told[1][0].value<const describe::Input*>(), nullptr);
}

TEST_F(NumberField, AnotherEngineIsShownInTheSameField) {
  typeBore(QStringLiteral("98.20"));
  field_->setEngine(kDonor);
  EXPECT_EQ(field_->text(), QString());
  enter();
  type(QStringLiteral("76"));
  EXPECT_EQ(document_.entry(kDonor, in::bore).text, "76");
  EXPECT_EQ(bore().text, "98.20");
}

/// What the menu of the field offers, by path: "Type in/in".
class FieldMenu : public NumberField {
 protected:
  void choose(const QStringList& path) {
    QContextMenuEvent event(QContextMenuEvent::Keyboard, QPoint(5, 5), QPoint(5, 5));
    QApplication::sendEvent(field_, &event);
    auto* menu = field_->findChild<QMenu*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_NE(menu, nullptr);
    QList<QAction*> actions = menu->actions();
    for (const QString& step : path) {
      QAction* found = nullptr;
      for (QAction* action : actions) {
        if (action->text().remove(u'&').startsWith(step)) found = action;
      }
      ASSERT_NE(found, nullptr) << step.toStdString();
      if (found->menu() != nullptr) {
        actions = found->menu()->actions();
      } else {
        found->trigger();
      }
    }
    delete menu;
  }
};

TEST_F(FieldMenu, AnotherUnitForThisFieldRewritesItsTextWithTheUnit) {
  typeBore(QStringLiteral("66.675"));
  choose({QStringLiteral("Type in"), QStringLiteral("in")});
  EXPECT_EQ(bore().text, "2.6250 in");
  EXPECT_DOUBLE_EQ(bore().values.front(), 0.066675);
  EXPECT_EQ(steps(), 2);
}

TEST_F(FieldMenu, AnotherUnitForAnEmptyFieldWaitsForTheNumber) {
  enter();
  choose({QStringLiteral("Type in"), QStringLiteral("in")});
  EXPECT_EQ(steps(), 0);
  type(QStringLiteral("2.625"));
  ASSERT_TRUE(bore().known());
  EXPECT_EQ(bore().text, "2.625 in");
}

TEST_F(FieldMenu, MeasuredPutsInstrumentDateAndPlusMinus) {
  typeBore(QStringLiteral("98.20"));
  choose({QStringLiteral("Where from"), QStringLiteral("Measured with")});
  EXPECT_EQ(bore().origin, describe::Origin::Measured);
  EXPECT_EQ(bore().instrument, in::bore.instrument);
  EXPECT_EQ(bore().date.size(), 10u);
  EXPECT_EQ(bore().text, "98.20 ± 0.005");
  document_.undoStack().undo();
  EXPECT_EQ(bore().text, "98.20");
}

/// The key at the right edge of the field, while it shows.
const QAbstractButton* originKey(const QuantityEdit& field) {
  const auto* key = field.findChild<QAbstractButton*>();
  return key != nullptr && key->isVisible() ? key : nullptr;
}

TEST_F(NumberField, WithTheFocusItOffersToSayWhereTheNumberComesFrom) {
  field_->resize(200, field_->height());
  QTest::mouseMove(window_->windowHandle(), other_->geometry().center());
  enter();
  EXPECT_EQ(originKey(*field_), nullptr);
  type(QStringLiteral("98.20"));
  ASSERT_NE(originKey(*field_), nullptr);
  EXPECT_EQ(originKey(*field_)->text(), QStringLiteral("origin…"));
  EXPECT_EQ(originKey(*field_)->accessibleName(), QStringLiteral("Where it comes from: not said"));
  leave();
  EXPECT_EQ(originKey(*field_), nullptr);
}

TEST_F(NumberField, AltEnterOpensTheOrigins) {
  typeBore(QStringLiteral("98.20"));
  enter();
  QTest::keyClick(field_, Qt::Key_Return, Qt::AltModifier);
  auto* menu = field_->findChild<QMenu*>(QString(), Qt::FindDirectChildrenOnly);
  ASSERT_NE(menu, nullptr);
  menu->actions().front()->trigger();
  EXPECT_EQ(bore().origin, describe::Origin::Measured);
  delete menu;
}

TEST_F(NumberField, AListWrapsHoweverItsItemsAreParted) {
  const auto linesOf = [&](const describe::Input& input, const char* typed) {
    document_.type(kTarget, input, QString::fromUtf8(typed));
    QuantityEdit field(document_, kTarget, input);
    const int wide = field.fontMetrics().horizontalAdvance(field.text()) / 3;
    EXPECT_EQ(field.text(), QString::fromUtf8(typed)) << "stays as typed";
    return field.heightForWidth(wide + field.fontMetrics().horizontalAdvance(u'm'));
  };
  const int spaced = linesOf(in::throwAhead, "0; 240; 120; 120; 240; 0");
  EXPECT_GE(linesOf(in::throwAhead, "0;240;120;120;240;0"), spaced * 3 / 4);
  const int blanks = linesOf(in::firingOrder, "1; 5; 3; 6; 2; 4; 7; 8");
  for (const char* typed : {"1;5;3;6;2;4;7;8", "1-5-3-6-2-4-7-8", "1,5,3,6,2,4,7,8"}) {
    EXPECT_GE(linesOf(in::firingOrder, typed), blanks * 3 / 4) << typed;
  }
}

TEST_F(NumberField, AListThatIsTooLongForOneLineWraps) {
  typeBore(QStringLiteral("98.12; 98.20; 98.29"));
  const int wide = field_->fontMetrics().horizontalAdvance(field_->text()) * 2;
  EXPECT_GT(field_->heightForWidth(wide / 3), field_->heightForWidth(wide));
}

TEST_F(NumberField, AListIsReadWholeWhereOneStands) {
  const QString list = QStringLiteral("98.12; 98.20; 98.29; 98.38 ± 0.03");
  const int half = field_->fontMetrics().horizontalAdvance(list) / 2;
  const auto fit = [&] { field_->setGeometry(0, 0, half, field_->heightForWidth(half)); };
  enter();
  fit();
  const int one = field_->height();
  type(list);
  fit();
  EXPECT_GT(field_->height(), 2 * one - 10) << "it grows while one types";
  EXPECT_EQ(field_->text(), list);
  // A click on the last line comes to the end of the text, on the first not.
  const auto clickAt = [&](int y) {
    QTest::mouseClick(field_, Qt::LeftButton, {}, {half / 2, y});
    return field_->cursorPosition();
  };
  EXPECT_LT(clickAt(4), 14);
  EXPECT_GT(clickAt(field_->height() - 5), 20);
  QTest::mouseDClick(field_, Qt::LeftButton, {}, {4, 8});
  EXPECT_EQ(field_->selectionStart(), 0);
  EXPECT_TRUE(field_->selectedText().startsWith(QStringLiteral("98")));
  QTest::mousePress(field_, Qt::LeftButton, {}, {2, 8});
  QMouseEvent along(QEvent::MouseMove, QPointF(half / 2, field_->height() - 5),
                    field_->mapToGlobal(QPointF(half / 2, field_->height() - 5)), Qt::NoButton,
                    Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(field_, &along);
  EXPECT_GT(field_->selectedText().size(), 20);
  QTest::mouseRelease(field_, Qt::LeftButton, {}, {half / 2, field_->height() - 5});
  // What is selected is painted so, on the second line too.
  const QImage seen = field_->grab().toImage();
  const QColor chosen = field_->palette().color(QPalette::Highlight);
  EXPECT_EQ(seen.pixelColor(2, field_->height() - 10), chosen);
  press(Qt::Key_Delete);
  EXPECT_LT(field_->text().size(), list.size() - 20);
}

TEST_F(NumberField, ABlankPartsTheMarkFromTheOrigin) {
  typeBore(QStringLiteral("9820"));
  Entry entry = bore();
  entry.origin = describe::Origin::Measured;
  document_.say(field_->place(), entry);
  leave();
  const QFontMetrics metrics = field_->fontMetrics();
  const QString beside = QStringLiteral("! objects m");
  EXPECT_GE(field_->textMargins().right(), metrics.horizontalAdvance(beside));
}

TEST_F(FieldMenu, AnotherOriginKeepsTheNumber) {
  typeBore(QStringLiteral("98.20"));
  choose({QStringLiteral("Where from"), QStringLiteral("maker's book")});
  EXPECT_EQ(bore().origin, describe::Origin::MakersBook);
  EXPECT_EQ(bore().text, "98.20");
}

/// Every locale, every way of writing, character by character.
struct Typed {
  const char* text;
  std::optional<double> millimetres;  ///< nothing: refused, the text stays
  friend void PrintTo(const Typed& typed, std::ostream* out) { *out << typed.text; }
};

struct InLocale {
  const char* name;
  friend void PrintTo(const InLocale& locale, std::ostream* out) { *out << locale.name; }
};

class TypedInLocale : public FreshSettings,
                      public testing::WithParamInterface<std::tuple<InLocale, Typed>> {};

TEST_P(TypedInLocale, MeansTheSame) {
  const auto& [where, typed] = GetParam();
  const QLocale locale(QString::fromLatin1(where.name));
  Taste taste(locale);
  taste.setGroup(units::UnitGroup::metric());
  Document document(taste);
  QuantityEdit field(document, 1, in::bore);
  field.setLocale(locale);
  QTest::keyClicks(&field, QString::fromUtf8(typed.text));
  const Entry& bore = document.entry(1, in::bore);
  ASSERT_EQ(bore.known(), typed.millimetres.has_value());
  if (typed.millimetres) {
    EXPECT_DOUBLE_EQ(bore.values.front(), *typed.millimetres / 1000.0);
  } else {
    EXPECT_EQ(bore.text, typed.text);
  }
}

INSTANTIATE_TEST_SUITE_P(
    EveryWay, TypedInLocale,
    testing::Combine(testing::Values(InLocale{"en_US"}, InLocale{"de_DE"}, InLocale{"fr_FR"},
                                     InLocale{"pt_BR"}, InLocale{"ru_RU"}, InLocale{"de_CH"},
                                     InLocale{"C"}),
                     testing::Values(Typed{"12.7", 12.7}, Typed{"12,7", 12.7}, Typed{".5", 0.5},
                                     Typed{",5", 0.5}, Typed{"0.040", 0.04}, Typed{"0,040", 0.04},
                                     Typed{"1.234", 1.234}, Typed{"1,234", 1.234},
                                     Typed{"1.000,5", std::nullopt}, Typed{"1,000.5", std::nullopt},
                                     Typed{" 12.7 ", 12.7}, Typed{"12.7e0", 12.7},
                                     Typed{"0,5 in", 12.7}, Typed{"500 thou", 12.7},
                                     Typed{"2 5/8 in", 66.675}, Typed{"66.0 mm", 66.0})),
    [](const auto& row) {
      return std::string(std::get<0>(row.param).name) + "_" + std::to_string(row.index);
    });

TEST_F(NumberField, ShowsAMinusAsResultsDoAndKeepsWhatWasTyped) {
  document_.type(kTarget, in::spacer, QStringLiteral("-1.350; 0.2 ± 0.01"));
  const QuantityEdit field(document_, kTarget, in::spacer);
  EXPECT_EQ(field.text(), QStringLiteral("−1.350; 0.2 ± 0.01"));
  EXPECT_EQ(document_.entry(kTarget, in::spacer).text, "-1.350; 0.2 ± 0.01");
  document_.type(kTarget, in::cylinderAxis, QStringLiteral("2-5/8"));
  const QuantityEdit fraction(document_, kTarget, in::cylinderAxis);
  EXPECT_EQ(fraction.text(), QStringLiteral("2-5/8"));
}

/// The mark on the screen is the reader's, whatever was typed.
TEST_F(NumberField, ShowsOneDecimalMarkInTheWholeWindow) {
  Taste german{QLocale(QLocale::German, QLocale::Germany)};
  Document document(german);
  document.type(1, in::bore, QStringLiteral("98.20 ± 0.03"));
  const QuantityEdit field(document, 1, in::bore);
  EXPECT_EQ(field.text(), QStringLiteral("98,20 ± 0,03"));
  EXPECT_EQ(document.entry(1, in::bore).text, "98.20 ± 0.03");
}

}  // namespace
}  // namespace strokewright::ui
