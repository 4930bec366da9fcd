/// The map of bore and stroke: what it reads agrees with the assessment, what it draws with the
/// core's own lines, and its one edit is one step.

#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QTest>
#include <algorithm>
#include <cmath>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/limits/results.h"
#include "core/motion/results.h"
#include "core/tradeoff/map.h"
#include "tests/ui/drawn_labels.h"
#include "tests/ui/fixture.h"
#include "ui/plots/bore_stroke_map.h"
#include "ui/plots/bore_stroke_scene.h"
#include "ui/plots/plot_widget.h"

namespace strokewright::ui {
namespace {

class MapView : public WithDocument {
 protected:
  MapView() { open(QStringLiteral("burdock-719")); }

  void open(const QString& name) {
    EXPECT_TRUE(document_.open(sample(name)));
    view_.resize(1200, 700);
    view_.show();
  }
  PlotWidget& plot() { return *view_.findChild<PlotWidget*>(); }
  const PlotMark& targetMark() {
    return *std::find_if(plot().scene().marks.begin(), plot().scene().marks.end(),
                         [](const PlotMark& mark) { return mark.draggable; });
  }
  const QPushButton& put() { return *view_.findChild<QPushButton*>(); }
  double boreNow() { return bore().values.front(); }
  double throwNow() { return document_.entry(kTarget, in::crankThrow).values.front(); }

  /// Drags the target's point by so many millimetres, in steps as a hand does.
  void drag(double bore, double stroke) {
    const QPointF from = targetMark().at;
    const auto placeAt = [&](double share) {
      return plot().toWidget(0, from + share * QPointF(bore, stroke)).toPoint();
    };
    std::vector<QPoint> way;
    for (int i = 1; i <= 8; ++i) way.push_back(placeAt(i / 8.0));
    QTest::mousePress(&plot(), Qt::LeftButton, {}, placeAt(0.0));
    for (const QPoint& place : way) moveTo(place);
  }
  void moveTo(QPoint place) {
    QMouseEvent move(QEvent::MouseMove, place, plot().mapToGlobal(QPointF(place)), Qt::NoButton,
                     Qt::LeftButton, {});
    QCoreApplication::sendEvent(&plot(), &move);
    last_ = place;
  }
  void drop() { QTest::mouseRelease(&plot(), Qt::LeftButton, {}, last_); }

  BoreStrokeMap view_{document_, taste_};
  QPoint last_;
};

TEST_F(MapView, ReadsAtTheTargetWhatTheAssessmentSays) {
  document_.type(kTarget, in::spacer, QString());  // so that the assessment lets it follow too
  Trial trial(document_.assessment());
  const assess::Assessment& assessment = document_.assessment();
  for (const describe::Result* result :
       {&out::displacement, &out::compressionRatio, &out::meanPistonSpeed, &out::revCeiling}) {
    const describe::Cell cell = trial.at(*trial.here(), *result);
    EXPECT_EQ(cell.state, describe::State::Value) << result->key;
    EXPECT_DOUBLE_EQ(cell.value, assessment(kTarget, *result).value) << result->key;
    EXPECT_TRUE(view_.readout().contains(taste_.value(*result, cell.value))) << result->key;
  }
}

TEST_F(MapView, ReadsElsewhereWhatTheTargetWouldGive) {
  view_.setCrossHair(0.070, 0.064);
  const QString read = view_.readout();
  document_.type(kTarget, in::spacer, QString());
  document_.type(kTarget, in::headGasketBore, QStringLiteral("71.5"));  // 1.5 over the bore, as was
  document_.type(kTarget, in::bore, QStringLiteral("70"));
  document_.type(kTarget, in::crankThrow, QStringLiteral("32"));
  for (const describe::Result* result :
       {&out::displacement, &out::compressionRatio, &out::meanPistonSpeed, &out::revCeiling}) {
    const double value = document_.assessment()(kTarget, *result).value;
    EXPECT_TRUE(read.contains(taste_.value(*result, value))) << result->key;
  }
}

TEST_F(MapView, RegionsBeginWhereTheCoreHasTheirLines) {
  const assess::Assessment& assessment = document_.assessment();
  tradeoff::Held held;
  held.cylinderCount = 3.0;
  held.rodLength = 0.118;
  held.speed = assessment(kTarget, out::workingSpeed).value;
  Trial trial(assessment);
  EXPECT_NEAR(*trial.strokeFor(out::ceilingPistonSpeed, held.speed),
              tradeoff::strokeForPistonSpeed(22.0, held), 1e-9);
  EXPECT_NEAR(*trial.strokeFor(out::rodRatio, 1.5), tradeoff::strokeForRodRatio(1.5, held), 1e-9);

  // A stroke just above the foot of each region has its ceiling below the revs wanted.
  const std::vector<NoGo> all = noGos(trial, assessment, taste_);
  ASSERT_GE(all.size(), 3u);
  EXPECT_TRUE(all.front().says.contains(QStringLiteral("mean piston speed")));
  const double foot = *all.front().aboveStroke;
  EXPECT_LT(trial.at({0.068, foot + 1e-5}, out::ceilingPistonSpeed).value, held.speed);
  EXPECT_GT(trial.at({0.068, foot - 1e-5}, out::ceilingPistonSpeed).value, held.speed);
}

TEST_F(MapView, EveryRegionIsNamedHoweverNarrowTheMap) {
  for (const char* name : {"burdock-719", "tansy-270"}) {
    open(QString::fromLatin1(name));
    for (const QSize size : {QSize(320, 340), QSize(450, 330), QSize(800, 500)}) {
      PlotCanvas canvas(nullptr);
      const std::vector<PlotLabel> labels = labelsOf(canvas, plot().scene(), size);
      for (const PlotRegion& region : plot().scene().regions) {
        if (region.least.y() > plot().scene().panels[0].y.to) continue;
        EXPECT_TRUE(std::ranges::any_of(
            labels, [&](const PlotLabel& label) { return label.words == region.label; }))
            << name << size.width() << region.label.toStdString();
      }
    }
  }
}

TEST_F(MapView, NoNameOfAnEngineStandsOnTheLeaderOfACurve) {
  open(QStringLiteral("culvert-1040"));
  PlotCanvas canvas(nullptr);
  const std::vector<PlotLabel> labels = labelsOf(canvas, plot().scene(), {300, 330});
  const QRectF room = canvas.panelRect(0);
  for (const PlotLabel& curve : labels) {
    if (curve.box.left() < room.right()) continue;
    for (const PlotLabel& label : labels) {
      const double y = curve.box.center().y();
      EXPECT_FALSE(label.box.right() > room.right() + 1.0 && label.box.left() < room.right() &&
                   label.box.top() < y && y < label.box.bottom())
          << label.words.toStdString();
    }
  }
}

TEST_F(MapView, CurvesOfEqualDisplacementHoldTheirDisplacement) {
  const PlotScene& scene = plot().scene();
  const auto limit = std::find_if(scene.curves.begin(), scene.curves.end(),
                                  [](const PlotCurve& curve) { return curve.heavy; });
  ASSERT_NE(limit, scene.curves.end());
  EXPECT_TRUE(limit->label.contains(QStringLiteral("750")));
  Trial trial(document_.assessment());
  for (std::size_t i = 60; i < 100; i += 13) {
    const Pair pair{limit->x[i] / 1000.0, limit->y[i] / 1000.0};
    EXPECT_NEAR(trial.at(pair, out::displacement).value, 750e-6, 1e-12);
  }
}

TEST_F(MapView, TheClassLimitIsNoSecondCurveOfEqualDisplacement) {
  open(QStringLiteral("tansy-270"));  // 700 ml, where a curve would come anyway
  const auto& curves = plot().scene().curves;
  EXPECT_EQ(
      std::count_if(curves.begin(), curves.end(),
                    [](const PlotCurve& it) { return it.label.contains(QStringLiteral("700")); }),
      1);
}

TEST_F(MapView, EveryEngineIsAPoint) {
  EXPECT_EQ(plot().scene().marks.size(), 3u);
  EXPECT_EQ(targetMark().at, QPointF(68.0, 66.0));
  EXPECT_NEAR(targetMark().plusMinus.y(), 2 * 0.01, 1e-9) << "the ± of the throw, twice";
}

TEST_F(MapView, DraggingTheTargetEditsItInOneStepOfTenths) {
  const int before = document_.undoStack().count();
  const PlotRange seen = plot().visibleX();
  drag(1.5, -2.0);
  drop();
  EXPECT_EQ(document_.undoStack().count(), before + 1);
  EXPECT_NEAR(boreNow(), 0.0695, 1.01e-4);
  EXPECT_NEAR(2.0 * throwNow(), 0.064, 1.01e-4);
  EXPECT_NEAR(boreNow() * 1e4, std::round(boreNow() * 1e4), 1e-6);
  EXPECT_NEAR(throwNow() * 2e4, std::round(throwNow() * 2e4), 1e-6);
  EXPECT_EQ(plot().visibleX(), seen) << "the map does not move under the hand";
  EXPECT_NEAR(document_.entry(kTarget, in::crankThrow).limit(), 1e-5, 1e-12) << "its ± stays";

  document_.undoStack().undo();
  EXPECT_DOUBLE_EQ(boreNow(), 0.068);
  EXPECT_DOUBLE_EQ(throwNow(), 0.033);
}

TEST_F(MapView, TwoDragsAreTwoSteps) {
  const int before = document_.undoStack().count();
  drag(1.0, 0.0);
  drop();
  drag(1.0, 0.0);
  drop();
  EXPECT_EQ(document_.undoStack().count(), before + 2);
}

TEST_F(MapView, EscapeGivesADragUp) {
  drag(1.0, 1.0);
  EXPECT_NE(boreNow(), 0.068);
  QTest::keyClick(&plot(), Qt::Key_Escape);
  drop();
  EXPECT_DOUBLE_EQ(boreNow(), 0.068);
  EXPECT_DOUBLE_EQ(throwNow(), 0.033);
}

TEST_F(MapView, ArrowsMoveTheCrossHairAndEnterPutsItIntoTheTarget) {
  const int before = document_.undoStack().count();
  for (int i = 0; i < 3; ++i) QTest::keyClick(&plot(), Qt::Key_Right);
  QTest::keyClick(&plot(), Qt::Key_Down, Qt::ShiftModifier);
  EXPECT_NEAR(view_.bore(), 0.0683, 1e-9);
  EXPECT_NEAR(view_.stroke(), 0.0650, 1e-9);
  QTest::keyClick(&plot(), Qt::Key_Return);
  EXPECT_DOUBLE_EQ(boreNow(), 0.0683);
  EXPECT_DOUBLE_EQ(throwNow(), 0.0325);
  EXPECT_EQ(bore().text, "68.30 mm");
  EXPECT_EQ(document_.undoStack().count(), before + 1);
}

TEST_F(MapView, AClickReads) {
  QTest::mouseClick(&plot(), Qt::LeftButton, {}, plot().toWidget(0, {64.0, 60.0}).toPoint());
  EXPECT_NEAR(view_.bore(), 0.064, 1.01e-4);
  EXPECT_NEAR(view_.stroke(), 0.060, 1.01e-4);
}

TEST_F(MapView, SaysWhatIsHeldAndWhatFollows) {
  QString said;
  for (const QLabel* label : view_.findChildren<QLabel*>()) said += label->text() + u'\n';
  EXPECT_TRUE(said.contains(QStringLiteral("The spacer follows the squish gap wanted, 0.90")));
  EXPECT_TRUE(said.contains(QStringLiteral("chamber, masses, rod and compression height")));
}

TEST_F(MapView, AnEmptyTargetStillHasAMapThatSaysWhatItWaitsFor) {
  document_.startNew();
  EXPECT_EQ(plot().scene().marks.size(), 0u);
  EXPECT_FALSE(put().isEnabled());
  QTest::keyClick(&plot(), Qt::Key_Return);
  EXPECT_FALSE(bore().known()) << "nobody placed the cross-hair";
  view_.setCrossHair(0.070, 0.060);
  EXPECT_TRUE(put().isEnabled());
  QTest::keyClick(&plot(), Qt::Key_Return);
  EXPECT_DOUBLE_EQ(boreNow(), 0.070) << "bore and stroke can be begun from the map";
  EXPECT_FALSE(put().isEnabled()) << "it stands there already";
}

TEST_F(MapView, NothingStaysOfTheProjectBefore) {
  view_.setCrossHair(0.064, 0.060);
  EXPECT_TRUE(put().isEnabled());
  plot().zoom(4.0);
  open(QStringLiteral("culvert-1040"));
  EXPECT_FALSE(put().isEnabled());
  EXPECT_NEAR(view_.bore(), 0.105, 1e-9);
  EXPECT_NEAR(view_.stroke(), 0.120, 1e-9);
  BoreStrokeMap fresh(document_, taste_);
  fresh.resize(view_.size());
  fresh.show();
  const auto* const anew = fresh.findChild<PlotWidget*>();
  EXPECT_EQ(plot().visibleX(), anew->visibleX());
  EXPECT_EQ(plot().visibleY(0), anew->visibleY(0));

  document_.startNew();
  EXPECT_FALSE(put().isEnabled());
  EXPECT_EQ(plot().visibleX(), anew->visibleX());
  EXPECT_LT(plot().visibleX().to, 100.0) << "the window of an empty project, not of the last one";
}

TEST_F(MapView, WithoutATargetItSaysSo) {
  document_.removeEngine(2);
  document_.removeEngine(1);
  QString said;
  for (const QLabel* label : view_.findChildren<QLabel*>()) said += label->text() + u'\n';
  EXPECT_TRUE(said.contains(QStringLiteral("needs a target")));
}

}  // namespace
}  // namespace strokewright::ui
