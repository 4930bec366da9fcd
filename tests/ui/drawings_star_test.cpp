#include <gtest/gtest.h>

#include <QImage>
#include <numbers>

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

}  // namespace
}  // namespace strokewright::ui
