#pragma once
/// The crank in space: throws, webs, rods and pistons at their true angles, turning.
///
/// The eye looks from the declared end along the crankshaft, x to the right, y up along the axis of
/// the first cylinder, z towards the eye.

#include <QPolygonF>
#include <QString>
#include <optional>
#include <vector>

#include "core/motion/slider_crank.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

/// One cylinder with its throw. Angles [rad] in the sense of rotation, lengths [m].
struct FigureCylinder {
  double ahead = 0.0;  ///< of the first throw
  double axis = 0.0;   ///< from that of the first cylinder
  double along = 0.0;  ///< the crankshaft, from the cylinder that stands in front
  motion::SliderCrank mechanism;
  double bore = 0.0;
  double compressionHeight = 0.0;
  double skirt = 0.0;  ///< below the gudgeon pin
  double crankpin = 0.0;
  double gudgeonPin = 0.0;
  double rodWidth = 0.0;
  QString name;
  std::optional<double> lobe;  ///< see noseOf(), at crank angle 0
};

struct CrankFigure {
  std::vector<FigureCylinder> cylinders;  ///< as they are entered
  bool clockwise = true;                  ///< as seen
  bool senseSaid = true;                  ///< else the arrow is drawn as what is assumed
  QString camshaft = {};                  ///< what stands at the camshafts; empty: none is drawn
};

/// From where it is looked at [rad]: turned about the upright, then tilted towards the eye.
struct Viewpoint {
  double turned = 0.0;
  double tilted = 0.0;

  static Viewpoint fromTheEnd() { return {}; }
  /// All three axes equally short: ISO 5456-3.
  static Viewpoint isometric();
  bool operator==(const Viewpoint&) const = default;
};

/// As large as the room allows at every crank angle. What hides what is decided by planes between
/// the parts. Nobody enters where a camshaft lies: each bank has its own over its pistons, in the
/// line of what is assumed.
/// @param crankAngle [rad] turned since the first throw stood along its cylinder
void paintCrank(Drafting& draft, const QRectF& room, const CrankFigure& figure,
                const Viewpoint& viewpoint, double crankAngle);

/// [rad] turned until a cylinder stands at its top.
double topOf(const FigureCylinder& cylinder);
/// That of the first. @pre there is one
double firstTop(const CrankFigure& figure);

/// Which way the nose of its lobe points [rad]: in the sense of rotation from the axis of the
/// cylinder, away from the crank at 0. A camshaft turns as the crank at half its speed.
/// @pre it has a lobe
double noseOf(const FigureCylinder& cylinder, double crankAngle);

/// Where the gudgeon pin of a cylinder stands [m]: x, y, z as above.
struct InSpace {
  double x = 0.0;
  double y = 0.0;
  double z = 0.0;
};
InSpace gudgeonPinOf(const CrankFigure& figure, std::size_t cylinder, double crankAngle);
InSpace crankpinOf(const CrankFigure& figure, std::size_t cylinder, double crankAngle);

}  // namespace strokewright::ui
