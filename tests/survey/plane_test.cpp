#include "core/survey/plane.h"

#include <gtest/gtest.h>

#include <ostream>
#include <stdexcept>
#include <vector>

namespace strokewright::survey {
namespace {

struct Fitted {
  std::vector<SeatPoint> points;
  double level;
  double slopeAlong;
  double slopeAcross;
  friend void PrintTo(const Fitted& row, std::ostream* out) { *out << row.points.size(); }
};

class PlaneOfSeats : public testing::TestWithParam<Fitted> {};

TEST_P(PlaneOfSeats, IsThatOfAnotherLeastSquaresSolver) {
  const Fitted& row = GetParam();
  const SeatPlane plane = fitPlane(row.points);
  EXPECT_NEAR(plane.level, row.level, 1e-13);
  EXPECT_NEAR(plane.slopeAlong, row.slopeAlong, 1e-11);
  EXPECT_NEAR(plane.slopeAcross, row.slopeAcross, 1e-11);
}

TEST_P(PlaneOfSeats, LeavesDistancesThatSumToNothing) {
  double sum = 0.0;
  double turning = 0.0;
  const SeatPlane plane = fitPlane(GetParam().points);
  for (std::size_t i = 0; i < plane.off.size(); ++i) {
    sum += plane.off[i];
    turning += plane.off[i] * GetParam().points[i].along;
  }
  EXPECT_NEAR(sum, 0.0, 1e-15);
  EXPECT_NEAR(turning, 0.0, 1e-15);
}

/// numpy.linalg.lstsq of NumPy 1.24, and one point alone.
const std::vector<Fitted> kFitted = {
#include "tests/survey/plane_points.inc"
    {{{0.0, 0.0, 0.1}}, 0.1, 0.0, 0.0}};

INSTANTIATE_TEST_SUITE_P(NumPy, PlaneOfSeats, testing::ValuesIn(kFitted));

// Closed form: the slope through three points at equal pitches is (h3 − h1)/2a.
TEST(SeatPlane, OfATripleRisesByHalfTheDifferenceOfTheEnds) {
  const SeatPlane plane = fitPlane(std::vector<SeatPoint>{
      {0.0, 0.0, 98.12e-3}, {84e-3, 0.0, 98.20e-3}, {168e-3, 0.0, 98.29e-3}});
  EXPECT_NEAR(plane.slopeAlong * 84e-3, 0.085e-3, 1e-12);
  EXPECT_NEAR(plane.farthest(), 0.01e-3 / 3.0, 1e-12);
}

TEST(SeatPlane, DoesNotInventASlopeAcross) {
  const SeatPlane plane =
      fitPlane(std::vector<SeatPoint>{{0.0, 0.0, 0.1}, {0.1, 0.0, 0.1001}, {0.2, 0.0, 0.1001}});
  EXPECT_EQ(plane.slopeAcross, 0.0);
}

TEST(SeatPlane, NeedsAPoint) { EXPECT_THROW(fitPlane({}), std::invalid_argument); }

}  // namespace
}  // namespace strokewright::survey
