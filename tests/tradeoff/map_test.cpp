#include "core/tradeoff/map.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/chamber/chamber.h"
#include "core/limits/ceilings.h"
#include "core/motion/slider_crank.h"
#include "tests/bench_units.h"

namespace strokewright::tradeoff {
namespace {

using namespace bench;

const Eigen::ArrayXd kBores = Eigen::ArrayXd::LinSpaced(13, 60 * mm, 90 * mm);
const Eigen::ArrayXd kStrokes = Eigen::ArrayXd::LinSpaced(11, 50 * mm, 300 * mm);
constexpr double kFloat = 2e-7;  // a float and one operation on it

Held twin(double offset) {
  return {.cylinderCount = 2,
          .rodLength = 126.5 * mm,
          .offset = offset,
          .evenVolume = 30.1 * ml,
          .gasketThickness = 0.65 * mm,
          .gasketOverBore = 1.5 * mm,
          .deckClearance = 0.25 * mm,
          .speed = 8500 * rpm};
}

TEST(Maps, HoldWhatThePlainFunctionsSayInEveryCell) {
  const Limits limits{.meanPistonSpeed = 22.0, .acceleration = 32250.0, .shaftSpeed = 9000 * rpm};
  for (const double offset : {0.0, 4 * mm}) {
    const Held held = twin(offset);
    Maps maps;
    fillMaps(kBores, kStrokes, held, limits, maps);
    ASSERT_EQ(maps.ceiling.rows(), kStrokes.size());
    ASSERT_EQ(maps.ceiling.cols(), kBores.size());
    for (Eigen::Index row = 0; row < kStrokes.size(); ++row) {
      const motion::SliderCrank mechanism{
          .crankRadius = kStrokes[row] / 2, .rodLength = held.rodLength, .offset = offset};
      if (mechanism.rodLength <= mechanism.crankRadius + offset) continue;
      const double stroke = motion::trueStroke(mechanism);
      const double lowest =
          std::min({9000 * rpm, limits::pistonSpeedCeiling({stroke, 22.0}),
                    limits::accelerationCeiling(
                        {32250.0, motion::peakDownwardAcceleration(mechanism).magnitude})});
      for (Eigen::Index column = 0; column < kBores.size(); ++column) {
        const double bore = kBores[column];
        const double swept = chamber::sweptVolume({bore, stroke});
        const double clearance =
            chamber::clearanceVolume({.chamber = held.evenVolume,
                                      .gasket = chamber::gasketVolume({bore + 1.5 * mm, 0.65 * mm}),
                                      .deck = chamber::deckVolume({bore, 0.25 * mm})});
        EXPECT_TRUE(close(double{maps.displacement(row, column)}, 2 * swept, kFloat));
        EXPECT_TRUE(close(double{maps.compressionRatio(row, column)},
                          chamber::compressionRatio({swept, clearance}), kFloat));
        EXPECT_TRUE(close(double{maps.meanPistonSpeed(row, column)},
                          motion::meanSpeed({stroke, held.speed}), kFloat));
        EXPECT_TRUE(close(double{maps.ceiling(row, column)}, lowest, kFloat));
      }
    }
  }
}

TEST(Maps, AreZeroWhereTheRodCannotTurn) {
  Maps maps;
  fillMaps(kBores, kStrokes, twin(4 * mm), {.meanPistonSpeed = 22.0}, maps);
  ASSERT_LT(126.5 * mm, kStrokes[9] / 2 + 4 * mm);
  for (const Maps::Map& map :
       {maps.displacement, maps.compressionRatio, maps.meanPistonSpeed, maps.ceiling}) {
    EXPECT_TRUE((map.bottomRows(2) == 0.0F).all());
    EXPECT_TRUE((map.topRows(7) > 0.0F).all());
  }
}

TEST(Maps, HaveNoRatioWhereNothingIsLeftAboveThePiston) {
  Held held = twin(0.0);
  held.deckClearance = -20 * mm;
  Maps maps;
  fillMaps(kBores, kStrokes, held, {}, maps);
  EXPECT_TRUE((maps.compressionRatio == 0.0F).all());
  EXPECT_TRUE((maps.displacement.topRows(7) > 0.0F).all());
}

TEST(Maps, HaveNoCeilingWhereNoLimitIsKnown) {
  Maps maps;
  fillMaps(kBores, kStrokes, twin(0.0), {}, maps);
  EXPECT_TRUE((maps.ceiling == 0.0F).all());
}

TEST(Lines, MeetTheirValueOnTheExactMotion) {
  for (const double offset : {0.0, 4 * mm, -20 * mm}) {
    const Held held = twin(offset);
    const auto mechanismOf = [&](double stroke) {
      return motion::SliderCrank{
          .crankRadius = stroke / 2, .rodLength = held.rodLength, .offset = offset};
    };
    const Eigen::ArrayXd strokes = strokesForDisplacement(kBores, 671 * ml, held);
    for (Eigen::Index i = 0; i < kBores.size(); ++i) {
      const double travel = motion::trueStroke(mechanismOf(strokes[i]));
      EXPECT_TRUE(close(2 * chamber::sweptVolume({kBores[i], travel}), 671 * ml, 1e-13));
    }
    const double bySpeed = motion::trueStroke(mechanismOf(strokeForPistonSpeed(20.0, held)));
    EXPECT_TRUE(close(motion::meanSpeed({bySpeed, held.speed}), 20.0, 1e-13));
    const motion::Peak peak =
        motion::peakDownwardAcceleration(mechanismOf(strokeForAcceleration(32250.0, held)));
    EXPECT_TRUE(close(peak.magnitude * held.speed * held.speed, 32250.0, 1e-13));
    EXPECT_DOUBLE_EQ(strokeForRodRatio(1.6, held), 126.5 * mm / 1.6);
  }
}

TEST(Lines, AreZeroWhereTheRodCannotTurn) {
  const Held held = twin(4 * mm);
  EXPECT_TRUE((strokesForDisplacement(kBores, 9000 * ml, held) == 0.0).all());
  EXPECT_EQ(strokeForPistonSpeed(200.0, held), 0.0);
  EXPECT_EQ(strokeForAcceleration(1e6, held), 0.0);
  EXPECT_EQ(strokeForRodRatio(0.5, held), 0.0);
}

}  // namespace
}  // namespace strokewright::tradeoff
