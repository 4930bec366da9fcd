#pragma once
/// Bore against stroke: what each pair would give, as maps and as lines, with the rest of the
/// engine held.

#include <Eigen/Core>

#include <limits>

namespace strokewright::tradeoff {

/// What stays as it is while bore and stroke change. The spacer is not held: it follows, so that
/// the wanted squish gap, and with it the deck clearance, stays.
struct Held {
  double cylinderCount = 0.0;
  double rodLength = 0.0;        ///< [m] between centres
  double offset = 0.0;           ///< [m] as motion::SliderCrank
  double evenVolume = 0.0;       ///< [m3] chamber, crown (minus for a dome) and crevice
  double gasketThickness = 0.0;  ///< [m] compressed
  double gasketOverBore = 0.0;   ///< [m] bore of the head gasket less the bore
  double deckClearance = 0.0;    ///< [m] that the wanted squish gap asks for
  double speed = 0.0;            ///< [rad/s] wanted
};

/// What must not be exceeded; infinite where it is not known.
struct Limits {
  static constexpr double kUnknown = std::numeric_limits<double>::infinity();

  double meanPistonSpeed = kUnknown;  ///< [m/s]
  double acceleration = kUnknown;     ///< [m/s2] least of what ring, rod and donor stand
  double shaftSpeed = kUnknown;       ///< [rad/s] of the big end
};

/// Four maps over the same grid: one row for each stroke, one column for each bore. Single
/// precision holds more digits than a map can show. Instead of NaN a cell is 0: in all four where
/// the rod cannot turn, in the ratio where nothing is left above the piston, in the ceiling where
/// no limit is known.
struct Maps {
  using Map = Eigen::Array<float, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

  Map displacement;  ///< [m3] all cylinders
  Map compressionRatio;
  Map meanPistonSpeed;  ///< [m/s] at the wanted speed
  Map ceiling;          ///< [rad/s] least speed at which a limit is met
};

/// Fills the maps. Those that already have the right size are written in place, so filling again
/// allocates nothing of theirs.
/// @param bores   [m] > 0
/// @param strokes [m] nominal, twice the throw, > 0
/// @source as chamber/chamber.h, motion/slider_crank.h, limits/ceilings.h, all exact
void fillMaps(const Eigen::ArrayXd& bores, const Eigen::ArrayXd& strokes, const Held& held,
              const Limits& limits, Maps& maps);

// Lines of one value on the map, each as the nominal stroke [m], twice the throw, that gives it;
// 0 where no stroke does with the rod held.

/// Nominal strokes [m] that give a displacement, one for each bore [m].
/// @param displacement [m3] > 0, all cylinders
/// @source S = 4 V/(n π B²), taken back to the throw where there is an offset
Eigen::ArrayXd strokesForDisplacement(const Eigen::ArrayXd& bores, double displacement,
                                      const Held& held);

/// Nominal stroke [m] with this mean piston speed [m/s] at the wanted speed.
/// @source Heywood ch. 2
double strokeForPistonSpeed(double meanPistonSpeed, const Held& held);

/// Nominal stroke [m] with this peak downward acceleration [m/s2] at the wanted speed.
/// @source root of motion::peakDownwardAcceleration()
double strokeForAcceleration(double acceleration, const Held& held);

/// Nominal stroke [m] with this ratio of rod to nominal stroke.
double strokeForRodRatio(double rodRatio, const Held& held);

}  // namespace strokewright::tradeoff
