// The crank in space: true angles, rods that keep their length, and what mouse and keys do to it.

#include "ui/drawings/crank_figure.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QMouseEvent>
#include <QPushButton>
#include <QSlider>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "tests/ui/fixture.h"
#include "tests/ui/painted.h"
#include "ui/drawings/crank.h"
#include "ui/drawings/crank_view.h"

namespace strokewright::ui {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;
constexpr double kThrow = 33e-3;
constexpr double kRod = 118e-3;

FigureCylinder cylinder(double ahead, double axis, double along, double offset = 0.0) {
  return {.ahead = ahead * kDegree,
          .axis = axis * kDegree,
          .along = along,
          .mechanism = {.crankRadius = kThrow, .rodLength = kRod, .offset = offset},
          .bore = 68e-3,
          .compressionHeight = 27e-3,
          .skirt = 20e-3,
          .crankpin = 30e-3,
          .gudgeonPin = 16e-3,
          .rodWidth = 16e-3,
          .name = QStringLiteral("1"),
          .lobe = {}};
}

bool isDark(const QImage& image, int x, int y) { return qGray(image.pixel(x, y)) < 128; }

// Common practice, no published source: the first throw up, the second ahead by three quarters of a
// turn points to the left where the crank turns clockwise, to the right where it does not.
TEST(CrankFigure, PointsTheThrowsWhereTheyAreAhead) {
  CrankFigure twin{.cylinders = {cylinder(0.0, 0.0, 0.0), cylinder(270.0, 0.0, 90e-3)}};
  EXPECT_NEAR(crankpinOf(twin, 0, 0.0).y, kThrow, 1e-12);
  EXPECT_NEAR(crankpinOf(twin, 1, 0.0).x, -kThrow, 1e-12);
  EXPECT_NEAR(crankpinOf(twin, 1, 0.0).z, -90e-3, 1e-12);
  EXPECT_NEAR(crankpinOf(twin, 0, kTurn / 4.0).x, kThrow, 1e-12) << "a quarter of a turn later";
  twin.clockwise = false;
  EXPECT_NEAR(crankpinOf(twin, 1, 0.0).x, kThrow, 1e-12);
}

// Plane geometry: a rod keeps its length, a gudgeon pin its line, whatever the axes and offsets.
TEST(CrankFigure, KeepsRodsAndLines) {
  for (const double offset : {0.0, 4e-3}) {
    for (const bool clockwise : {true, false}) {
      const CrankFigure v{
          .cylinders = {cylinder(0.0, 0.0, 0.0, offset), cylinder(-30.0, 75.0, 20e-3, offset)},
          .clockwise = clockwise};
      for (std::size_t i = 0; i < 2; ++i) {
        const double axis = v.cylinders[i].axis;
        for (double angle = 0.0; angle < 2.0 * kTurn; angle += 0.1) {
          const InSpace pin = crankpinOf(v, i, angle);
          const InSpace gudgeon = gudgeonPinOf(v, i, angle);
          EXPECT_NEAR(std::hypot(pin.x - gudgeon.x, pin.y - gudgeon.y), kRod, 1e-12);
          EXPECT_NEAR(std::hypot(pin.x, pin.y), kThrow, 1e-12);
          const double seen = clockwise ? gudgeon.x : -gudgeon.x;
          EXPECT_NEAR(seen * std::cos(axis) - gudgeon.y * std::sin(axis), offset, 1e-12);
        }
      }
    }
  }
}

// α = β − ψ: a 75° V with its second pin behind by 30° comes to its second top 105° after the
// first, with the pin ahead by 30° 45° after it. Heywood's geometry; the sense by common practice.
TEST(CrankFigure, ComesToItsTopsWhenThrowAndAxisMeet) {
  for (const double ahead : {-30.0, 30.0}) {
    const CrankFigure v{.cylinders = {cylinder(0.0, 0.0, 0.0), cylinder(ahead, 75.0, 0.0)}};
    const double top = (75.0 - ahead) * kDegree;
    const auto height = [&](double angle) {
      const InSpace at = gudgeonPinOf(v, 1, angle);
      return at.x * std::sin(75.0 * kDegree) + at.y * std::cos(75.0 * kDegree);
    };
    EXPECT_NEAR(height(top), kThrow + kRod, 1e-12);
    EXPECT_LT(height(top + 0.05), height(top));
    EXPECT_LT(height(top - 0.05), height(top));
  }
}

QImage painted(const CrankFigure& figure, const Viewpoint& viewpoint, double angle) {
  return ui::painted(300, [&](Drafting& draft, const QRectF& room) {
    paintCrank(draft, room, figure, viewpoint, angle);
  });
}

TEST(CrankFigure, StaysInItsRoomAtEveryAngle) {
  CrankFigure four;
  for (int i = 0; i < 4; ++i) {
    FigureCylinder one = cylinder(i == 1 || i == 2 ? 180.0 : 0.0, 0.0, 80e-3 * i);
    one.lobe = kTurn * i / 4.0;
    four.cylinders.push_back(one);
  }
  four.camshaft = QStringLiteral("assumed");
  for (const Viewpoint& viewpoint : {Viewpoint::fromTheEnd(), Viewpoint::isometric()}) {
    for (const double angle : {0.0, 1.0, 2.5, 4.0, 6.0}) {
      const QImage image = painted(four, viewpoint, angle);
      bool drawn = false;
      for (int i = 0; i < 300; ++i) {
        for (const QPoint at : {QPoint(i, 0), QPoint(i, 299), QPoint(0, i), QPoint(299, i)}) {
          EXPECT_EQ(image.pixelColor(at), QColor(Qt::white));
        }
        drawn = drawn || qGray(image.pixel(150, i)) < 128 || qGray(image.pixel(i, 150)) < 128;
      }
      EXPECT_TRUE(drawn);
    }
  }
  EXPECT_NE(painted(four, Viewpoint::isometric(), 0.0), painted(four, Viewpoint::isometric(), 0.5));
}

// Plane geometry: the walls of a piston stand before the small end whatever the angle, seen from
// the end its outline is all that is seen of it.
TEST(CrankFigure, HidesWhatOfTheRodStandsInThePiston) {
  const CrankFigure one{.cylinders = {cylinder(0.0, 0.0, 0.0)}};
  for (const double angle : {0.0, 0.7, 1.6, 2.8, 3.6, 5.0}) {
    const QImage image = painted(one, Viewpoint::fromTheEnd(), angle);
    // Crown and lower edge of the skirt are the highest two lines that go right across.
    std::vector<int> across;
    for (int y = 0; y < image.height(); ++y) {
      int dark = 0;
      for (int x = 0; x < image.width(); ++x) dark += isDark(image, x, y) ? 1 : 0;
      const bool begins = across.empty() || y > across.back() + 3;
      if (dark > 50 && begins) across.push_back(y);
    }
    ASSERT_GE(across.size(), 2u) << angle;
    int left = 0;
    const int middle = (across[0] + across[1]) / 2;
    while (left < image.width() && !isDark(image, left, middle)) ++left;
    int right = image.width() - 1;
    while (right > left && !isDark(image, right, middle)) --right;
    ASSERT_GT(right - left, 40);
    for (int y = across[0] + 4; y < across[1] - 4; ++y) {
      for (int x = left + 4; x < right - 4; ++x) {
        ASSERT_FALSE(isDark(image, x, y)) << angle << ": " << x << ", " << y;
      }
    }
  }
}

TEST(CrankFigure, IsAsLargeAsItsRoomAllows) {
  CrankFigure twelve;
  for (int i = 0; i < 12; ++i) {
    const double ahead[] = {0.0, 240.0, 120.0, 120.0, 240.0, 0.0};
    FigureCylinder one = cylinder(ahead[i / 2], i % 2 == 0 ? 0.0 : 60.0, 75e-3 * (i / 2));
    one.along += i % 2 == 0 ? 0.0 : 18e-3;
    one.lobe = kTurn * i / 12.0;
    twelve.cylinders.push_back(one);
  }
  for (const QString& camshaft : {QString(), QStringLiteral("assumed")}) {
    twelve.camshaft = camshaft;
    for (const Viewpoint& viewpoint : {Viewpoint::fromTheEnd(), Viewpoint::isometric()}) {
      const QImage image = painted(twelve, viewpoint, 0.0);
      int least = image.width();
      int most = 0;
      int highest = image.height();
      int lowest = 0;
      for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
          if (image.pixelColor(x, y) == QColor(Qt::white)) continue;
          least = std::min(least, x);
          most = std::max(most, x);
          highest = std::min(highest, y);
          lowest = std::max(lowest, y);
        }
      }
      EXPECT_GT(std::max(most - least, lowest - highest), 0.9 * image.width());
    }
  }
}

class CrankOnScreen : public WithDocument {
 protected:
  CrankPane pane_{document_, taste_, [] { return -1; }};
  CrankView* view_ = pane_.findChild<CrankView*>();
  QSlider* slider_ = pane_.findChild<QSlider*>();
};

TEST_F(CrankOnScreen, TurnsByKeysAndSlider) {
  QTest::keyClick(view_, Qt::Key_PageDown);
  EXPECT_EQ(slider_->value(), 10);
  EXPECT_NEAR(view_->crankAngle(), 10.0 * kDegree, 1e-12);
  QTest::keyClick(view_, Qt::Key_PageUp);
  QTest::keyClick(view_, Qt::Key_PageUp);
  EXPECT_EQ(slider_->value(), 710) << "back over the top, two turns are one cycle";
}

// The arrow lies below the crank of a cylinder that stands up, its tip in the sense of rotation: of
// a crank that turns clockwise to the left.
TEST(CrankFigure, CarriesAnArrowInItsSenseOfRotation) {
  const auto ink = [](bool clockwise, bool said) {
    constexpr int kSide = 400;
    const CrankFigure figure{
        .cylinders = {cylinder(0.0, 0.0, 0.0)}, .clockwise = clockwise, .senseSaid = said};
    const QImage image = ui::painted(kSide, [&](Drafting& draft, const QRectF& room) {
      paintCrank(draft, room, figure, Viewpoint::fromTheEnd(), 0.0);
    });
    std::pair<int, int> sides;
    for (int y = kSide * 3 / 4; y < kSide; ++y) {
      for (int x = 0; x < kSide; ++x) {
        if (!isDark(image, x, y)) continue;
        ++(x < kSide / 2 ? sides.first : sides.second);
      }
    }
    return sides;
  };
  EXPECT_GT(ink(true, true).first, ink(true, true).second + 10) << "filled where it points";
  EXPECT_GT(ink(false, true).second, ink(false, true).first + 10);
  EXPECT_LT(ink(true, false).first, ink(true, true).first) << "assumed, it is no full line";
}

TEST_F(CrankOnScreen, IsWalkedRound) {
  EXPECT_EQ(view_->viewpoint(), Viewpoint::isometric());
  QTest::keyClick(view_, Qt::Key_End);
  EXPECT_EQ(view_->viewpoint(), Viewpoint::fromTheEnd());
  QTest::keyClick(view_, Qt::Key_Right);
  EXPECT_NEAR(view_->viewpoint().turned, 5.0 * kDegree, 1e-12);
  QTest::keyClick(view_, Qt::Key_Home);
  const double before = view_->viewpoint().turned;
  QTest::mousePress(view_, Qt::LeftButton, {}, {50, 50});
  QMouseEvent move(QEvent::MouseMove, QPointF(60, 50), QPointF(60, 50), Qt::NoButton,
                   Qt::LeftButton, {});
  QCoreApplication::sendEvent(view_, &move);
  EXPECT_NEAR(view_->viewpoint().turned, before + 4.0 * kDegree, 1e-12);
}

TEST_F(CrankOnScreen, SaysWhyNothingIsDrawn) {
  EXPECT_EQ(view_->accessibleDescription(), QStringLiteral("There is no engine yet."));
}

TEST_F(CrankOnScreen, BeginsAnotherProjectAtRestAndAtNoAngle) {
  auto* turning = pane_.findChild<QPushButton*>(QStringLiteral("turn"));
  ASSERT_NE(turning, nullptr);
  slider_->setValue(130);
  turning->setChecked(true);
  view_->lookFrom(Viewpoint::fromTheEnd());
  document_.startNew();
  EXPECT_EQ(slider_->value(), 0);
  EXPECT_EQ(view_->crankAngle(), 0.0);
  EXPECT_FALSE(turning->isChecked());
  EXPECT_EQ(view_->viewpoint(), Viewpoint::isometric());
}

TEST_F(CrankOnScreen, IsNotDrawnWhileNothingIsKnown) {
  const auto crank = [&] { return crankToDraw(document_.assessment(), taste_.style(), kTarget); };
  EXPECT_TRUE(crank().figure.cylinders.empty());
  EXPECT_TRUE(crank().whyNot.contains(QStringLiteral("number of cylinders")));
  document_.type(kTarget, in::bore, QStringLiteral("68"));
  EXPECT_EQ(crank().figure.cylinders.size(), 1u);
  document_.type(kTarget, in::bore, {});
  document_.type(kTarget, in::cylinderCount, QStringLiteral("1"));
  EXPECT_EQ(crank().figure.cylinders.size(), 1u) << "in common proportions";
}

class CrankOfASample : public WithDocument {
 protected:
  CrankOfASample() { EXPECT_TRUE(document_.open(sample(QStringLiteral("burdock-719")))); }
  Crank crank() { return crankToDraw(document_.assessment(), taste_.style(), kTarget); }
  /// [mm] behind the one in front
  std::vector<int> places() {
    std::vector<int> all;
    for (const FigureCylinder& one : crank().figure.cylinders) {
      all.push_back(static_cast<int>(std::lround(1e3 * one.along)));
    }
    return all;
  }
  void type(const describe::Input& input, const char* text) {
    document_.type(kTarget, input, QString::fromUtf8(text));
  }
};

// Common practice of numbering from the free end, no published source.
TEST_F(CrankOfASample, HasTheLowestNumberAtTheFreeEnd) {
  type(in::cylinderPitch, "84");
  type(in::viewedFrom, "free end");
  EXPECT_EQ(places(), (std::vector{0, 84, 168}));
  EXPECT_TRUE(inFront(crank()).contains(QStringLiteral("Cylinder 1 ")));
  EXPECT_TRUE(inFront(crank()).endsWith(QStringLiteral("in front")));
  type(in::viewedFrom, "output end");
  EXPECT_EQ(places(), (std::vector{168, 84, 0}));
  EXPECT_TRUE(inFront(crank()).endsWith(QStringLiteral("farthest away")));
  type(in::cylinderNumber, "3; 2; 1");
  EXPECT_EQ(places().front(), 0);
  type(in::viewedFrom, "free end");
  EXPECT_EQ(places().back(), 0);
  type(in::viewedFrom, "");
  EXPECT_EQ(places().back(), 0) << "the lowest number in front";
}

TEST_F(CrankOfASample, HasTheFirstCylinderWhereItIsSaidToStand) {
  type(in::cylinderPitch, "");
  type(in::cylinderPosition, "0; 84; 170");
  type(in::viewedFrom, "free end");
  type(in::firstStandsAt, "output end");
  EXPECT_EQ(places(), (std::vector{170, 86, 0}));
  EXPECT_TRUE(inFront(crank()).startsWith(QStringLiteral("Cylinder 3 stands at the free end")));
  type(in::viewedFrom, "output end");
  EXPECT_EQ(places(), (std::vector{0, 84, 170}));
  EXPECT_TRUE(inFront(crank()).endsWith(QStringLiteral("farthest away")));
  EXPECT_TRUE(inFront(crank(), true).endsWith(QStringLiteral("in front")));
  type(in::firstStandsAt, "free end");
  EXPECT_EQ(places(), (std::vector{170, 86, 0}));
  type(in::cylinderPosition, "0; -84; -170");
  EXPECT_EQ(places(), (std::vector{0, 84, 170})) << "the sign counts";
}

TEST_F(CrankOfASample, NamesTheCylinderThatIsDrawnAtTheFreeEnd) {
  type(in::cylinderCount, "4");
  type(in::throwAhead, "0; 180; 180; 0");
  type(in::firingOrder, "");
  type(in::cylinderNumber, "2-1-4-3");
  type(in::viewedFrom, "free end");
  const Crank drawn = crank();
  ASSERT_EQ(drawn.figure.cylinders.size(), 4U);
  EXPECT_EQ(drawn.figure.cylinders.front().along, 0.0);
  EXPECT_TRUE(inFront(drawn).startsWith(QStringLiteral("Cylinder 2 ")))
      << inFront(drawn).toStdString();
}

TEST_F(CrankOfASample, SaysWhichWayItTurnsFromEitherEnd) {
  type(in::viewedFrom, "free end");
  type(in::rotation, "clockwise");
  CrankView view(document_, taste_, [] { return kTarget; });
  EXPECT_TRUE(
      view.seenInWords().contains(QStringLiteral("seen from the free end, turns clockwise")));
  view.lookFrom({.turned = 150.0 * kDegree, .tilted = 0.0});
  EXPECT_TRUE(view.seenInWords().contains(
      QStringLiteral("now seen from the output end, where it turns anticlockwise")));
  EXPECT_TRUE(view.seenInWords().endsWith(QStringLiteral("farthest away")));
  type(in::rotation, "");
  view.lookFrom(Viewpoint::fromTheEnd());
  EXPECT_TRUE(view.seenInWords().contains(QStringLiteral("sense not given")));
}

TEST_F(CrankOfASample, NamesWhatOfItNobodyEntered) {
  EXPECT_TRUE(crank().notGiven.contains(QStringLiteral("half width of rod shank")));
  EXPECT_FALSE(crank().notGiven.contains(QStringLiteral("bore")));
  type(in::bore, "");
  EXPECT_TRUE(crank().notGiven.contains(QStringLiteral("bore")));
}

// A camshaft at half the speed of the crank: over two turns each lobe points away from its cylinder
// once, at a top of it, a turn later towards it; and they do so in the firing order.
TEST_F(CrankOfASample, HasLobesThatFollowTheFiringOrder) {
  struct Engine {
    const char* count;
    const char* throws;
    const char* axes;
    const char* order;
  };
  for (const Engine& engine :
       {Engine{"3", "0; 240; 120", "0", "1; 3; 2"}, Engine{"3", "0; 240; 120", "0", "2; 3; 1"},
        Engine{"2", "0; 270", "0", "2; 1"}, Engine{"2", "0; -30", "0; 75", "2; 1"},
        Engine{"4", "0; 0; 180; 180", "0; 90; 0; 90", "1; 3; 4; 2"}}) {
    type(in::cylinderCount, engine.count);
    type(in::throwAhead, engine.throws);
    type(in::cylinderAxis, engine.axes);
    type(in::firingOrder, engine.order);
    const CrankFigure figure = crank().figure;
    ASSERT_FALSE(figure.camshaft.isEmpty()) << engine.order;
    std::vector<std::pair<double, QString>> fires;
    for (const FigureCylinder& one : figure.cylinders) {
      for (const double turn : {0.0, kTurn}) {
        const double top = std::remainder(topOf(one), kTurn) + kTurn + turn;
        const double nose = std::abs(std::remainder(noseOf(one, top), kTurn));
        if (nose < 1e-6) {
          fires.emplace_back(std::fmod(top, 2.0 * kTurn), one.name);
        } else {
          EXPECT_NEAR(nose, 0.5 * kTurn, 1e-6) << engine.order;
        }
      }
    }
    ASSERT_EQ(fires.size(), figure.cylinders.size()) << engine.order;
    std::ranges::sort(fires);
    const QStringList order = QString::fromLatin1(engine.order).split(QStringLiteral("; "));
    const auto first = std::ranges::find(fires, order.front(), &std::pair<double, QString>::second);
    std::ranges::rotate(fires, first);
    QStringList found;
    for (const auto& [at, name] : fires) found += name;
    EXPECT_EQ(found, order);
  }
}

TEST_F(CrankOfASample, SaysThatTheCamshaftIsPutWhereNobodySaidItIs) {
  EXPECT_EQ(crank().figure.camshaft, QStringLiteral("camshaft (place assumed)"));
  type(in::cylinderAxis, "0; 60; 0");
  EXPECT_EQ(crank().figure.camshaft, QStringLiteral("camshaft of each bank (place assumed)"));
  document_.type(kTarget, in::cycle, QStringLiteral("two-stroke"));
  EXPECT_TRUE(crank().figure.camshaft.isEmpty());
}

// The top of the first stands where the sheet draws it: at its greatest height.
TEST(CrankFigure, FindsTheTopOfTheFirst) {
  const CrankFigure one{.cylinders = {cylinder(0.0, 0.0, 0.0, 6e-3)}};
  const double top = firstTop(one);
  EXPECT_GT(top, 0.0);
  EXPECT_GT(gudgeonPinOf(one, 0, top).y, gudgeonPinOf(one, 0, top - 0.02).y);
  EXPECT_GT(gudgeonPinOf(one, 0, top).y, gudgeonPinOf(one, 0, top + 0.02).y);
}

TEST_F(CrankOfASample, IsToldInWordsThatFollowWhatIsSeen) {
  CrankPane pane(document_, taste_, [] { return kTarget; });
  auto* view = pane.findChild<CrankView*>();
  const auto says = [&](const char* words) {
    return view->accessibleDescription().contains(QString::fromUtf8(words));
  };
  EXPECT_TRUE(says("3 cylinders in line, throws ahead of the first: 1 by 0"))
      << view->accessibleDescription().toStdString();
  EXPECT_TRUE(says("at an angle, seen from the free end, turns clockwise"))
      << view->accessibleDescription().toStdString();
  EXPECT_TRUE(says("Turned by 0"));
  QTest::keyClick(view, Qt::Key_PageDown);
  EXPECT_TRUE(says("Turned by 10"));
  QTest::keyClick(view, Qt::Key_End);
  EXPECT_FALSE(says("at an angle"));
  QTest::keyClick(view, Qt::Key_Right);
  EXPECT_TRUE(says("walked round by 5"));
  type(in::cylinderAxis, "0; 0; 75");
  EXPECT_TRUE(says("with its axis at 75")) << view->accessibleDescription().toStdString();
  type(in::throwAhead, "");
  EXPECT_TRUE(says("once every cylinder has its throw"));
}

}  // namespace
}  // namespace strokewright::ui
