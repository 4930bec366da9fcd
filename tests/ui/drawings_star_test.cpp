#include <gtest/gtest.h>

#include <QImage>
#include <cmath>
#include <numbers>
#include <utility>

#include "tests/ui/painted.h"
#include "ui/drawings/star_painter.h"

namespace strokewright::ui {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr int kSize = 400;

QImage painted(const Star& star) {
  return ui::painted(kSize,
                     [&](Drafting& draft, const QRectF& room) { paintStar(draft, room, star); });
}

/// Something is drawn about half-way out from the middle in a direction: right and down are plus.
bool isDrawn(const QImage& image, int right, int down) {
  constexpr int kOut = 60;
  constexpr int kAbout = 3;
  for (int dx = -kAbout; dx <= kAbout; ++dx) {
    for (int dy = -kAbout; dy <= kAbout; ++dy) {
      const QPoint at(kSize / 2 + right * kOut + dx, kSize / 2 + down * kOut + dy);
      if (qGray(image.pixel(at)) < 128) return true;
    }
  }
  return false;
}

/// A twin whose second throw is ahead by a quarter of a turn and whose cylinders stand apart by
/// half.
Star twin(bool clockwise) {
  return {.throws = {{.ahead = 0.0, .name = QStringLiteral("1")},
                     {.ahead = kTurn / 4.0, .name = QStringLiteral("2")}},
          .clockwise = clockwise,
          .seenFrom = {}};
}

// Common practice, no published source: the first throw up, the others on in the sense of rotation.
TEST(Star, TurnsTheWayTheCrankDoes) {
  const QImage clockwise = painted(twin(true));
  EXPECT_TRUE(isDrawn(clockwise, 0, -1)) << "the first throw points up";
  EXPECT_TRUE(isDrawn(clockwise, 1, 0));
  EXPECT_FALSE(isDrawn(clockwise, -1, 0));
  const QImage anticlockwise = painted(twin(false));
  EXPECT_TRUE(isDrawn(anticlockwise, 0, -1));
  EXPECT_TRUE(isDrawn(anticlockwise, -1, 0));
  EXPECT_FALSE(isDrawn(anticlockwise, 1, 0));
}

TEST(Star, DrawsASenseThatNobodySaidAsAssumed) {
  const auto ink = [](bool said) {
    Star star = twin(true);
    star.senseSaid = said;
    const QImage image = painted(star);
    int dark = 0;
    for (int x = 0; x < kSize; ++x) {
      for (int y = 0; y < kSize; ++y) dark += qGray(image.pixel(x, y)) < 128 ? 1 : 0;
    }
    return dark;
  };
  EXPECT_LT(ink(false), ink(true) - 20);
}

/// A crank of this many cylinders, this many of which share each throw.
Star sharing(int cylinders, int each) {
  Star star;
  for (int i = 0; i < cylinders; ++i) {
    star.throws.push_back(
        {.ahead = kTurn * (i / each) * each / cylinders, .name = QString::number(i + 1)});
  }
  return star;
}

Star withoutNames(const Star& star, int each) {
  Star bare{.throws = {}, .clockwise = star.clockwise, .angles = star.angles};
  for (std::size_t i = 0; i < star.throws.size(); i += static_cast<std::size_t>(each)) {
    bare.throws.push_back({.ahead = star.throws[i].ahead, .name = {}});
  }
  return bare;
}

/// With so much room at its sides that names do not make it smaller.
constexpr int kLarge = 2 * kSize;
QImage paintedWide(const Star& star) {
  return ui::painted(kLarge, [&](Drafting& draft, const QRectF& room) {
    paintStar(draft, room.adjusted(0.0, 0.1 * kLarge, 0.0, -0.1 * kLarge), star);
  });
}

TEST(Star, KeepsItsArrowAwayFromTheNames) {
  for (const auto& [cylinders, each] :
       {std::pair{9, 3}, std::pair{12, 2}, std::pair{8, 2}, std::pair{6, 1}, std::pair{1, 1}}) {
    for (const bool clockwise : {true, false}) {
      Star star = sharing(cylinders, each);
      star.clockwise = clockwise;
      const QImage full = paintedWide(star);
      const QImage bare = paintedWide(withoutNames(star, each));
      int ink = 0;
      for (int x = 3; x < kLarge - 3; ++x) {
        for (int y = 3; y < kLarge - 3; ++y) {
          const bool outside = std::hypot(x - kSize, y - kSize) > 0.72 * kSize;
          if (!outside || qGray(full.pixel(x, y)) > 128 || qGray(bare.pixel(x, y)) < 128) continue;
          ++ink;
          for (const QPoint by :
               {QPoint(0, 0), QPoint(3, 0), QPoint(-3, 0), QPoint(0, 3), QPoint(0, -3)}) {
            ASSERT_GT(qGray(bare.pixel(QPoint(x, y) + by)), 128)
                << cylinders << " cylinders, at " << x << ", " << y;
          }
        }
      }
      EXPECT_GT(ink, 10);
    }
  }
}

TEST(Star, KeepsListsOfNamesApartInALittleRoom) {
  constexpr int kLittle = 150;
  constexpr int kMiddle = kLittle / 2;
  const QImage image = ui::painted(
      kLittle, [](Drafting& draft, const QRectF& room) { paintStar(draft, room, sharing(12, 4)); });
  // Below the hub, between the two lists, there is nothing but the circle, which is grey.
  for (int x = kMiddle - 6; x <= kMiddle + 6; ++x) {
    for (int y = kMiddle + 10; y < kLittle; ++y) EXPECT_GT(qGray(image.pixel(x, y)), 60);
  }
}

TEST(Star, KeepsLongNamesInItsRoom) {
  constexpr int kNarrow = 200;
  const QImage image = ui::painted(
      kNarrow, [](Drafting& draft, const QRectF& room) { paintStar(draft, room, sharing(12, 4)); });
  for (int i = 0; i < kNarrow; ++i) {
    for (const QPoint at : {QPoint(0, i), QPoint(kNarrow - 1, i)}) {
      EXPECT_EQ(image.pixelColor(at), QColor(Qt::white));
    }
  }
}

}  // namespace
}  // namespace strokewright::ui
