#pragma once
/// Travel, speed and acceleration of a piston over the crank angle, as arrays for plots and tables.

#include <Eigen/Core>

#include "core/motion/slider_crank.h"

namespace strokewright::motion {

/// Evenly spaced crank angles with their sines and cosines: made once, used for every cylinder and
/// every edit.
class CrankAngles {
 public:
  /// @param turns        full turns to cover, from 0; >= 1
  /// @param stepsPerTurn >= 1; there is one angle more than steps, both ends count
  CrankAngles(int turns, int stepsPerTurn);

  Eigen::Index size() const { return radians_.size(); }
  const Eigen::ArrayXd& radians() const { return radians_; }
  const Eigen::ArrayXd& sines() const { return sines_; }
  const Eigen::ArrayXd& cosines() const { return cosines_; }

 private:
  Eigen::ArrayXd radians_;
  Eigen::ArrayXd sines_;
  Eigen::ArrayXd cosines_;
};

/// One value for each crank angle.
struct MotionCurves {
  Eigen::ArrayXd travel;        ///< [m] down from top dead centre
  Eigen::ArrayXd velocity;      ///< [m/s] negative on the way down
  Eigen::ArrayXd acceleration;  ///< [m/s2] negative where the piston is pulled down
};

/// Fills the curves in one pass. Arrays that already have the right size are written in place, so
/// filling again allocates nothing.
/// @param speed [rad/s] of the shaft
/// @throws describe::Refusal as check()
/// @source as pinHeight(), pinVelocity(), pinAcceleration(), which it agrees with to rounding
void fillCurves(const SliderCrank& mechanism, double speed, const CrankAngles& angles,
                MotionCurves& curves);

}  // namespace strokewright::motion
