/// The motion plot: every engine is there, and what it reads is what the core says.

#include <QCheckBox>
#include <QClipboard>
#include <QGuiApplication>
#include <QLineEdit>
#include <QMouseEvent>
#include <QTest>
#include <algorithm>
#include <numbers>

#include "core/motion/results.h"
#include "core/motion/slider_crank.h"
#include "tests/ui/fixture.h"
#include "ui/plots/motion_plot.h"
#include "ui/plots/motion_scene.h"
#include "ui/plots/plot_widget.h"

namespace strokewright::ui {
namespace {

using units::Kind;

constexpr double kDegree = std::numbers::pi / 180.0;

class MotionView : public WithDocument {
 protected:
  MotionView() {
    EXPECT_TRUE(document_.open(sample(QStringLiteral("burdock-719"))));
    view_.resize(1200, 700);
    view_.show();
  }
  PlotWidget& plot() { return *view_.findChild<PlotWidget*>(); }

  MotionPlot view_{document_, taste_};
};

TEST_F(MotionView, ShowsThreeCurvesOfEachEngineEachInItsOwnLine) {
  const PlotScene& scene = plot().scene();
  ASSERT_EQ(scene.panels.size(), 3u);
  ASSERT_EQ(scene.curves.size(), 9u);
  for (int engine = 0; engine < 3; ++engine) {
    const QString name = nameOf(document_.project(), engine);
    const auto of = [&](const PlotCurve& curve) { return curve.label == name; };
    EXPECT_EQ(std::count_if(scene.curves.begin(), scene.curves.end(), of), 3) << name.toStdString();
  }
  EXPECT_EQ(scene.curves[0].line, Qt::DashLine);   // donor
  EXPECT_EQ(scene.curves[3].line, Qt::SolidLine);  // target
  EXPECT_EQ(scene.curves[6].line, Qt::DotLine);    // variant
}

TEST_F(MotionView, WhereItIsLowTheUpperPanelsAreLeftOut) {
  const PlotWidget& plot = *view_.findChild<PlotWidget*>();
  const QString lowest = plot.scene().panels.back().y.title;
  ASSERT_EQ(plot.scene().panels.size(), 3u);
  view_.resize(900, 330);
  QApplication::processEvents();
  const PlotScene& low = plot.scene();
  ASSERT_LT(low.panels.size(), 3u);
  EXPECT_EQ(low.panels.back().y.title, lowest);
  for (const PlotCurve& curve : low.curves) EXPECT_LT(curve.panel, std::ssize(low.panels));
  for (const PlotMark& mark : low.marks) EXPECT_GE(mark.panel, 0);
  view_.resize(1200, 700);
  QApplication::processEvents();
  EXPECT_EQ(plot.scene().panels.size(), 3u);
}

TEST_F(MotionView, ArrowKeysStepTheCursorAndTheStripReadsTheModel) {
  view_.setCursor(0.0);
  for (int i = 0; i < 7; ++i) QTest::keyClick(&plot(), Qt::Key_Right, Qt::ShiftModifier);
  QTest::keyClick(&plot(), Qt::Key_Left);
  EXPECT_NEAR(view_.cursor(), 34.5 * kDegree, 1e-12);

  for (const Mover& mover : moversOf(document_.assessment())) {
    const double v = -motion::pinVelocity(mover.mechanism, view_.cursor()) * mover.speed;
    const QString row =
        nameOf(document_.project(), mover.engine) + QStringLiteral(", ") +
        taste_.shown(Kind::Speed, mover.speed) + u'\t' +
        taste_.number(Kind::Length, motion::travel(mover.mechanism, view_.cursor())) + u'\t' +
        taste_.number(Kind::Velocity, v);
    EXPECT_TRUE(view_.readout().contains(row)) << row.toStdString();
  }
}

TEST_F(MotionView, SaysTheDifferenceBetweenDonorAndTarget) {
  view_.setCursor(std::numbers::pi);
  const double difference = pointOf(moversOf(document_.assessment())[1], view_.cursor()).travel -
                            pointOf(moversOf(document_.assessment())[0], view_.cursor()).travel;
  EXPECT_NEAR(difference, 4e-3, 1e-9);
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("difference, at unlike speeds\t+4.00")))
      << view_.readout().toStdString();
}

TEST_F(MotionView, OfEqualSpeedsTheDifferenceIsJustThat) {
  document_.type(kDonor, in::wantedSpeed, QStringLiteral("9500"));
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("difference\t")));
  EXPECT_FALSE(view_.readout().contains(QStringLiteral("unlike")));
}

TEST_F(MotionView, TheTargetsPeaksAreLabelledFirst) {
  for (const PlotMark& mark : plot().scene().marks) EXPECT_TRUE(mark.keepsClear);
  EXPECT_TRUE(plot().scene().marks.front().label.startsWith(QStringLiteral("Burdock 719")));
}

TEST_F(MotionView, TheAngleCanBeTyped) {
  auto* const field = view_.findChild<QLineEdit*>();
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, QStringLiteral("74,5"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_NEAR(view_.cursor(), 74.5 * kDegree, 1e-12);
}

TEST_F(MotionView, PeaksStandWhereTheAssessmentHasThem) {
  const assess::Assessment& assessment = document_.assessment();
  const auto peak = std::find_if(
      plot().scene().marks.begin(), plot().scene().marks.end(), [&](const PlotMark& mark) {
        return mark.panel == 1 && mark.label.startsWith(QStringLiteral("Burdock 719"));
      });
  ASSERT_NE(peak, plot().scene().marks.end());
  EXPECT_NEAR(peak->at.x() * kDegree, assessment(kTarget, out::peakPistonSpeedAngle).value, 1e-12);
  EXPECT_NEAR(peak->at.y(), assessment(kTarget, out::peakPistonSpeed).value, 1e-12);
}

TEST_F(MotionView, AnEngineThatWaitsIsLeftOutAndNamed) {
  document_.type(kTarget, in::rodLength, QString());
  EXPECT_EQ(plot().scene().curves.size(), 6u);
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("Burdock 719 is not shown")));
  EXPECT_TRUE(view_.readout().contains(QStringLiteral("rod length")));
}

TEST_F(MotionView, FollowsAnEditOnlyWhileItCanBeSeen) {
  view_.hide();
  document_.type(kTarget, in::crankThrow, QStringLiteral("34"));
  const double before = plot().scene().curves[3].y[360];
  view_.show();
  EXPECT_NEAR(before, 66.0, 1e-9);
  EXPECT_NEAR(plot().scene().curves[3].y[360], 68.0, 1e-9);
}

TEST_F(MotionView, AxesFollowTheUnitsChosen) {
  taste_.setGroup(units::UnitGroup::inchPound());
  EXPECT_TRUE(plot().scene().panels[0].y.title.endsWith(QStringLiteral(", in")));
  EXPECT_NEAR(plot().scene().curves[3].y[360], 66.0 / 25.4, 1e-12);
}

TEST_F(MotionView, FollowsThePointerUntilAClickHoldsIt) {
  const auto placeOf = [&](double degrees) {
    return plot().toWidget(0, {degrees, 30.0}).toPoint();
  };
  const auto hover = [&](double degrees) {
    const QPointF place = placeOf(degrees);
    QMouseEvent move(QEvent::MouseMove, place, plot().mapToGlobal(place), Qt::NoButton, {}, {});
    QCoreApplication::sendEvent(&plot(), &move);
  };
  hover(60.0);
  EXPECT_NEAR(view_.cursor(), 60.0 * kDegree, 0.5 * kDegree);
  QTest::mouseClick(&plot(), Qt::LeftButton, {}, placeOf(120.0));
  hover(200.0);
  EXPECT_NEAR(view_.cursor(), 120.0 * kDegree, 0.5 * kDegree);
  QTest::keyClick(&plot(), Qt::Key_Escape);
  hover(200.0);
  EXPECT_NEAR(view_.cursor(), 200.0 * kDegree, 0.5 * kDegree);
}

TEST_F(MotionView, TwoTurnsShowTwiceTheAngle) {
  view_.findChild<QCheckBox*>()->setChecked(true);
  EXPECT_EQ(plot().visibleX().to, 720.0);
  const PlotCurve& curve = plot().scene().curves.front();
  ASSERT_EQ(curve.x.size(), 1441u);
  EXPECT_TRUE(std::is_sorted(curve.x.begin(), curve.x.end()));
  EXPECT_NEAR(curve.x.back(), 720.0, 1e-9);
  EXPECT_EQ(curve.y[1000], curve.y[280]);
  view_.setCursor(500.0 * kDegree);
  EXPECT_NEAR(view_.cursor(), 500.0 * kDegree, 1e-12);
}

TEST_F(MotionView, CopiesTheTablesOfAllEnginesAndTheDifferenceOfTargetAndDonor) {
  plot().copy();
  const QStringList lines = QGuiApplication::clipboard()->text().split(u'\n');
  ASSERT_EQ(lines.size(), 1 + 721 + 1) << "the last line ends too";
  const QStringList names = lines.front().split(u'\t');
  ASSERT_EQ(names.size(), 1 + 3 * 3 + 3);
  EXPECT_EQ(names[0], QStringLiteral("Crank angle (°)"));
  EXPECT_EQ(names[4], QStringLiteral("Burdock 719: Down from top dead centre (mm)"));
  EXPECT_EQ(names[10], QStringLiteral("Difference: Down from top dead centre (mm)"));
  const QStringList half = lines[361].split(u'\t');
  EXPECT_EQ(half[0], QStringLiteral("180.0"));
  EXPECT_EQ(half[4], QStringLiteral("66.0000"));
  EXPECT_EQ(half[10], QStringLiteral("4.0000"));
}

TEST_F(MotionView, HasNothingToCopyWhileNoEngineIsKnown) {
  for (int engine = 0; engine < 3; ++engine) {
    document_.type(engine, in::rodLength, QString());
  }
  plot().copy();
  EXPECT_EQ(QGuiApplication::clipboard()->text().trimmed(), QString());
  EXPECT_TRUE(plot().scene().curves.empty());
}

TEST_F(MotionView, HasANameAndSaysTheCursorToAScreenReader) {
  view_.setCursor(kDegree * 90.0);
  EXPECT_FALSE(plot().accessibleName().isEmpty());
  EXPECT_TRUE(plot().accessibleDescription().contains(QStringLiteral("At 90")));
  EXPECT_TRUE(plot().accessibleDescription().contains(QStringLiteral("34.10")))
      << "the largest speed of the target";
}

}  // namespace
}  // namespace strokewright::ui
