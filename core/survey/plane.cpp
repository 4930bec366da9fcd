#include "core/survey/plane.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace strokewright::survey {

double SeatPlane::farthest() const {
  double most = 0.0;
  for (const double each : off) most = std::max(most, std::abs(each));
  return most;
}

SeatLine fitLine(std::span<const SeatPoint> points) {
  if (points.empty()) throw std::invalid_argument("a line needs a point");
  const auto n = static_cast<double>(points.size());
  double middle = 0.0;
  double level = 0.0;
  for (const SeatPoint& point : points) {
    middle += point.along / n;
    level += point.height / n;
  }
  double apart = 0.0;
  double rise = 0.0;
  for (const SeatPoint& point : points) {
    apart += (point.along - middle) * (point.along - middle);
    rise += (point.along - middle) * (point.height - level);
  }
  const double slope = apart > 0.0 ? rise / apart : 0.0;
  return {.level = level - slope * middle, .slope = slope};
}

SeatPlane fitPlane(std::span<const SeatPoint> points) {
  if (points.empty()) throw std::invalid_argument("a plane needs a point");
  if (std::ranges::all_of(points, [](const SeatPoint& point) { return point.across == 0.0; })) {
    const SeatLine line = fitLine(points);
    SeatPlane plane{.level = line.level, .slopeAlong = line.slope, .off = {}};
    for (const SeatPoint& point : points) plane.off.push_back(point.height - line.at(point.along));
    return plane;
  }
  const auto n = static_cast<Eigen::Index>(points.size());
  Eigen::MatrixX2d places(n, 2);
  Eigen::VectorXd heights(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const SeatPoint& point = points[static_cast<std::size_t>(i)];
    places.row(i) << point.along, point.across;
    heights[i] = point.height;
  }
  // About the middle of the points, where level and slopes do not depend on each other.
  const Eigen::RowVector2d middle = places.colwise().mean();
  places.rowwise() -= middle;
  const double level = heights.mean();
  const Eigen::VectorXd above = heights.array() - level;
  const Eigen::Vector2d slopes =
      Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixX2d>(places).solve(above);
  const Eigen::VectorXd off = above - places * slopes;
  return {.level = level - middle.dot(slopes),
          .slopeAlong = slopes[0],
          .slopeAcross = slopes[1],
          .off = {off.begin(), off.end()}};
}

}  // namespace strokewright::survey
