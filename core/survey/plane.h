#pragma once
/// How the barrel seats lie: a plane through them by least squares.

#include <span>
#include <vector>

namespace strokewright::survey {

/// One reading of a seat.
struct SeatPoint {
  double along = 0.0;   ///< [m] along the crankshaft
  double across = 0.0;  ///< [m] across it, plus on the thrust side
  double height = 0.0;  ///< [m] above the crank axis
};

/// height = level + slopeAlong · along + slopeAcross · across
struct SeatPlane {
  double level = 0.0;        ///< [m]
  double slopeAlong = 0.0;   ///< [1] 0 where all points stand at one place along
  double slopeAcross = 0.0;  ///< [1] 0 where all points stand in one line along
  std::vector<double> off;   ///< [m] of each point above the plane

  double at(double along, double across = 0.0) const {
    return level + slopeAlong * along + slopeAcross * across;
  }
  double farthest() const;  ///< [m] largest distance of a point from it, either side
};

/// height = level + slope · along
struct SeatLine {
  double level = 0.0;  ///< [m]
  double slope = 0.0;  ///< [1] 0 where all points stand at one place along

  double at(double along) const { return level + slope * along; }
};

/// The line along the crankshaft whose squared distances, measured along the height, sum to the
/// least. How far a point lies across is not looked at.
/// @param points at least one, finite
/// @throws std::invalid_argument for none
/// @source linear least squares in closed form: Draper and Smith, Applied Regression Analysis, ch.
/// 1
SeatLine fitLine(std::span<const SeatPoint> points);

/// The plane whose squared distances, measured along the height, sum to the least. A slope that the
/// points do not fix is left at 0.
/// @param points at least one, finite
/// @throws std::invalid_argument for none
/// @source linear least squares: Draper and Smith, Applied Regression Analysis, ch. 1 and 4; solved
///         by a rank-revealing orthogonal decomposition, in closed form where none lies across
SeatPlane fitPlane(std::span<const SeatPoint> points);

}  // namespace strokewright::survey
