#include <gtest/gtest.h>

#include <QComboBox>
#include <QSignalSpy>
#include <QTest>
#include <numbers>

#include "core/deck/results.h"
#include "tests/ui/fixture.h"
#include "tests/ui/painted.h"
#include "ui/drawings/section_painter.h"
#include "ui/drawings/section_view.h"
#include "ui/drawings/stack_painter.h"
#include "ui/drawings/stack_view.h"
#include "ui/pages/desk.h"
#include "ui/pages/drawing_pane.h"

namespace strokewright::ui {
namespace {

class Drawings : public WithDocument {
 protected:
  void SetUp() override { ASSERT_TRUE(document_.open(sample(QStringLiteral("burdock-719")))); }

  int target() const { return document_.project().target(); }
  Cylinder cylinder(int number = 0) const {
    return cylinderToDraw(document_.assessment(), units::Style(), -1, number).cylinder.value();
  }

  static QPalette darkPalette() {
    QPalette palette;
    palette.setColor(QPalette::Window, QColor(0x20, 0x20, 0x20));
    palette.setColor(QPalette::WindowText, QColor(0xf0, 0xf0, 0xf0));
    return palette;
  }

  /// Where the view emits that it was clicked on this entry's dimension; searched point by point.
  static QPoint placeOf(StackView& view, const describe::Input& input) {
    QSignalSpy picked(&view, &StackView::inputPicked);
    for (int y = 2; y < view.height(); y += 4) {
      for (int x = 2; x < view.width(); x += 8) {
        picked.clear();
        QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(x, y));
        if (!picked.isEmpty() && picked.front().front().value<const describe::Input*>() == &input) {
          return {x, y};
        }
      }
    }
    return {-1, -1};
  }
};

// ---- What is read

TEST_F(Drawings, ReadTheBuildersNumbers) {
  const Cylinder it = cylinder();
  EXPECT_NEAR(it.bore, 0.068, 1e-12);
  EXPECT_TRUE(it.bore.given);
  EXPECT_NEAR(it.throwRadius, 0.033, 1e-12);
  EXPECT_NEAR(it.deckHeight, 0.17865, 1e-9);
  EXPECT_NEAR(it.squishGap.value(), 0.0009, 1e-9);
}

TEST_F(Drawings, ReadTheNumbersOfTheCylinderAskedFor) {
  EXPECT_NEAR(cylinder(0).spacer, 0.00103, 1e-12);
  EXPECT_NEAR(cylinder(2).spacer, 0.00086, 1e-12);
  EXPECT_NEAR(cylinder(99).spacer, 0.00086, 1e-12);  // the last
}

TEST_F(Drawings, AssumeWhatIsMissingInProportionAndNameIt) {
  document_.type(target(), in::skirtLength, {});
  const Cylinder it = cylinder();
  EXPECT_FALSE(it.skirt.given);
  EXPECT_NEAR(it.skirt, in::skirtLength.typical * 68.0 / 76.0, 1e-9);
  EXPECT_TRUE(it.notGiven.contains(QStringLiteral("skirt below pin")));
  EXPECT_TRUE(notFromNumbers(it).contains(QStringLiteral("skirt below pin")));
}

TEST_F(Drawings, TakeTheSpacerToMakeWhereNoneIsEntered) {
  document_.type(target(), in::spacer, {});
  const Cylinder it = cylinder(1);
  EXPECT_TRUE(it.spacerToMake);
  EXPECT_NEAR(it.spacer, 0.00095, 1e-9);
}

TEST_F(Drawings, SayWhyACrankThatCannotTurnIsNotDrawn) {
  document_.type(target(), in::rodLength, QStringLiteral("30"));
  const CylinderOrWhyNot it = cylinderToDraw(document_.assessment(), units::Style(), -1, 0);
  EXPECT_FALSE(it.cylinder);
  EXPECT_TRUE(it.whyNot.contains(QStringLiteral("30.00"))) << it.whyNot.toStdString();
}

TEST_F(Drawings, SayThatThereIsNoEngineYet) {
  const model::Project empty;
  const assess::Assessment assessment(empty);
  EXPECT_EQ(cylinderToDraw(assessment, units::Style(), -1, 0).whyNot,
            QStringLiteral("There is no engine yet."));
}

// ---- How it is drawn

TEST_F(Drawings, AreReducedAsDrawingsAre) {
  QImage paper(1000, 1300, QImage::Format_RGB32);
  QPainter painter(&paper);
  Drafting draft(painter, Medium::screen(paper, QFont(), QPalette()));
  const QRectF area(0.0, 0.0, draft.mm(66.0), draft.mm(95.0));
  EXPECT_DOUBLE_EQ(standardReduction(draft, area, cylinder(), units::Style()), 3.0);
  const SectionDrawn drawn = paintSection(draft, area, cylinder(), units::Style(),
                                          {.crankAngle = 0.0, .standardScale = true});
  EXPECT_DOUBLE_EQ(drawn.reduction, 3.0);
  EXPECT_TRUE(drawn.atTop);
}

TEST_F(Drawings, KeepTheirNumbersClearOfTheLines) {
  painted(400, [](Drafting& draft, const QRectF& /*area*/) {
    const QString text = QStringLiteral("27.50");
    const QPointF low(200.0, 210.0);
    const QPointF high(200.0, 200.0);
    const double room = draft.roomAlong(text);
    EXPECT_GT(room, draft.textWidth(text) + draft.mm(1.0));
    const QRectF beyond =
        draft.dimension({.from = low, .to = high, .text = text, .reading = Reading::Beyond});
    EXPECT_NEAR(beyond.top(), high.y() - 0.5 * (room + draft.textWidth(text)), 0.1);
    const QRectF beside = draft.dimension(
        {.from = low, .to = high, .offset = 8.0, .text = text, .reading = Reading::Level});
    EXPECT_NEAR(beside.left(), low.x() - 8.0 - draft.mm(kToText) - draft.textWidth(text), 0.1);
  });
}

TEST_F(Drawings, DimensionWhatTheSkirtKeepsAtTheBottomWhereThatIsAsked) {
  const auto drawn = [&](double crankAngle, bool asked, double toWeb) {
    Cylinder it = cylinder();
    EXPECT_NEAR(it.skirtToWeb.value_or(0.0), 0.004, 1e-9);
    EXPECT_NEAR(it.skirtOut.value_or(0.0), 0.012, 1e-9);
    it.skirtToWeb = toWeb;
    return painted(500, [&](Drafting& draft, const QRectF& area) {
      paintSection(draft, area, it, units::Style(),
                   {.crankAngle = crankAngle, .clearances = asked});
    });
  };
  constexpr double kBottom = std::numbers::pi;
  EXPECT_NE(drawn(kBottom, true, 0.004), drawn(kBottom, true, 0.006));
  EXPECT_EQ(drawn(kBottom, false, 0.004), drawn(kBottom, false, 0.006));
  EXPECT_EQ(drawn(kBottom / 2.0, true, 0.004), drawn(kBottom / 2.0, true, 0.006));
}

TEST_F(Drawings, AreChosenWhereThereIsNoRoomForBoth) {
  Desk desk(document_, taste_);
  QWidget page;
  DrawingPane pane(desk, DrawingPane::Shows::SectionAndStack, 0, &page);
  auto* stack = pane.findChild<StackView*>();
  auto* section = pane.findChild<SectionView*>();
  QComboBox* choice = nullptr;
  for (QComboBox* box : pane.findChildren<QComboBox*>()) {
    if (box->accessibleName() == QStringLiteral("Drawing shown")) choice = box;
  }
  ASSERT_NE(choice, nullptr);
  pane.resize(stack->minimumSizeHint().width(), 400);
  page.show();
  EXPECT_TRUE(stack->isVisible() && !section->isVisible() && choice->isVisible());
  choice->setCurrentIndex(1);
  EXPECT_TRUE(!stack->isVisible() && section->isVisible() && choice->isVisible());
  pane.resize(2 * (stack->minimumSizeHint().width() + section->minimumSizeHint().width()), 400);
  EXPECT_TRUE(stack->isVisible() && section->isVisible() && !choice->isVisible());
}

TEST_F(Drawings, FitWhateverIsTyped) {
  const char* const absurd[] = {"0.5", "5000", "68"};
  for (const describe::Input* input : {&in::bore, &in::compressionHeight, &in::skirtLength,
                                       &in::chamberVolume, &in::headGasket, &in::spacer}) {
    for (const char* text : absurd) {
      document_.type(target(), *input, QLatin1StringView(text));
      SectionView section(document_, taste_);
      section.resize(400, 500);
      section.grab();
      StackView stack(document_, taste_);
      stack.resize(400, 300);
      stack.grab();
    }
    document_.undoStack().undo();
  }
}

TEST_F(Drawings, EnlargeTheThinLayersAllAlike) {
  QImage paper(560, 460, QImage::Format_RGB32);
  QPainter painter(&paper);
  Drafting draft(painter, Medium::screen(paper, QFont(), QPalette()));
  const StackDrawn drawn =
      paintStack(draft, QRectF(0, 0, 560, 440), cylinder(), units::Style(), {});
  EXPECT_GE(drawn.enlargement, 8.0);
  std::vector<const describe::Input*> marked;
  for (const StackMark& mark : drawn.marks) marked.push_back(mark.input);
  for (const describe::Input* input :
       {&in::headGasket, &in::barrelHeight, &in::baseGasket, &in::spacer, &in::seatHeight,
        &in::wantedSquish, &in::compressionHeight}) {
    EXPECT_NE(std::ranges::find(marked, input), marked.end()) << input->label;
  }
}

TEST_F(Drawings, LeaveToTheCaptionWhereTheCrownStandsWhenThePistonHasNoRoom) {
  QImage paper(560, 460, QImage::Format_RGB32);
  QPainter painter(&paper);
  Drafting draft(painter, Medium::screen(paper, QFont(), QPalette()));
  const units::Style style;
  EXPECT_TRUE(hasRoomForCrown(draft, QRectF(0, 0, 560, 440), cylinder(), style));
  EXPECT_FALSE(hasRoomForCrown(draft, QRectF(0, 0, 230, 440), cylinder(), style)) << "too narrow";
  EXPECT_FALSE(hasRoomForCrown(draft, QRectF(0, 0, 560, 120), cylinder(), style)) << "too low";
  const QString crown = crownInWords(cylinder(), style);
  EXPECT_EQ(crown, QStringLiteral("0.15 below deck"));
  EXPECT_TRUE(
      stackCaption(8.0, cylinder(), style, crown).endsWith(QStringLiteral("; crown ") + crown));
  EXPECT_FALSE(stackCaption(8.0, cylinder(), style, {}).contains(QStringLiteral("crown")));
}

TEST_F(Drawings, TurnWithTheCrank) {
  SectionView view(document_, taste_);
  view.resize(400, 500);
  const QImage top = view.grab().toImage();
  view.setCrankAngle(std::numbers::pi / 2.0);
  EXPECT_NE(view.grab().toImage(), top);
  view.setCrankAngle(0.0);
  EXPECT_EQ(view.grab().toImage(), top);
}

TEST_F(Drawings, FollowTheProjectTheEngineAndTheCylinder) {
  StackView view(document_, taste_);
  view.resize(500, 400);
  const QImage first = view.grab().toImage();
  view.setCylinder(2);
  const QImage third = view.grab().toImage();
  EXPECT_NE(third, first);
  view.setEngine(document_.project().referenceDonor);
  EXPECT_NE(view.grab().toImage(), third);
  view.setEngine(-1);
  document_.type(target(), in::headGasket, QStringLiteral("1.5"));
  EXPECT_NE(view.grab().toImage(), third);
}

TEST_F(Drawings, FollowThePalette) {
  for (QWidget* view : {static_cast<QWidget*>(new SectionView(document_, taste_)),
                        static_cast<QWidget*>(new StackView(document_, taste_))}) {
    view->resize(400, 500);
    view->setPalette(darkPalette());
    const QImage image = view->grab().toImage();
    int light = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) light += image.pixelColor(x, y).lightness() > 180;
    }
    EXPECT_LT(image.pixelColor(1, image.height() / 2).lightness(), 80);
    EXPECT_GT(light, 1000);
    delete view;
  }
}

TEST_F(Drawings, LeadFromADimensionToItsEntry) {
  StackView view(document_, taste_);
  view.resize(560, 460);
  view.grab();
  for (const describe::Input* input : {&in::spacer, &in::headGasket, &in::wantedSquish}) {
    EXPECT_NE(placeOf(view, *input), QPoint(-1, -1)) << input->label;
  }
}

TEST_F(Drawings, PointAtTheEntryUnderThePointer) {
  StackView view(document_, taste_);
  view.resize(560, 460);
  view.grab();
  const QPoint place = placeOf(view, in::spacer);
  view.show();
  QSignalSpy hovered(&view, &StackView::inputHovered);
  QTest::mouseMove(&view, {1, 1});
  QTest::mouseMove(&view, place);
  ASSERT_FALSE(hovered.isEmpty());
  EXPECT_EQ(hovered.back().front().value<const describe::Input*>(), &in::spacer);
}

TEST_F(Drawings, ShowTheEntryThatIsPointedAtWithoutSayingSo) {
  StackView view(document_, taste_);
  view.resize(560, 460);
  QSignalSpy picked(&view, &StackView::inputPicked);
  const QImage before = view.grab().toImage();
  view.highlight(&in::barrelHeight);
  EXPECT_NE(view.grab().toImage(), before);
  view.highlight(nullptr);
  EXPECT_EQ(view.grab().toImage(), before);
  EXPECT_TRUE(picked.isEmpty());
}

// ---- Read aloud

TEST_F(Drawings, SayTheirNumbersToWhoCannotSeeThem) {
  const SectionView section(document_, taste_);
  EXPECT_TRUE(section.accessibleDescription().contains(QStringLiteral("Bore 68.00\u00A0mm")))
      << section.accessibleDescription().toStdString();
  EXPECT_TRUE(section.accessibleDescription().contains(
      QStringLiteral("the crown stands 0.15\u00A0mm below the deck")))
      << section.accessibleDescription().toStdString();
  const StackView stack(document_, taste_);
  EXPECT_TRUE(stack.accessibleDescription().contains(QStringLiteral("squish gap 0.90\u00A0mm")));
  EXPECT_TRUE(stack.accessibleDescription().contains(QStringLiteral("spacer 1.03\u00A0mm")));
}

TEST_F(Drawings, SayAboveForACrownThatStandsProud) {
  ASSERT_TRUE(document_.open(sample(QStringLiteral("culvert-1040"))));
  const SectionView section(document_, taste_);
  EXPECT_TRUE(section.accessibleDescription().contains(
      QStringLiteral("the crown stands 0.30\u00A0mm above the deck")))
      << section.accessibleDescription().toStdString();
}

}  // namespace
}  // namespace strokewright::ui
