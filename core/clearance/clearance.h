#pragma once
/// Does it go round? Gaps between piston, rod, web and liner, cold and still.

#include "core/motion/slider_crank.h"

namespace strokewright::clearance {

struct SmallEnd {
  double bore = 0.0;         ///< [m] of the rod's own hole, bush out
  double pinDiameter = 0.0;  ///< [m]
};

/// Wall left for a bush between gudgeon pin and rod [m]; negative where the pin is the larger.
double bushWall(const SmallEnd& smallEnd);

/// Piston at bottom dead centre and what is near it, heights above the crank axis.
struct BottomEnd {
  double bottomPinHeight = 0.0;  ///< [m] as motion::bottomPinHeight()
  double skirtLength = 0.0;      ///< [m] pin axis to the lowest edge of the skirt
};

/// Skirt to web at bottom dead centre [m]; negative: they meet, where they overlap along the crank.
/// @param counterweightRadius [m] crank axis to the outermost edge of web or counterweight
double skirtToWeb(const BottomEnd& piston, double counterweightRadius);

/// How far the skirt comes out of the liner at bottom dead centre [m]; negative: it stays in.
/// @param linerBottomHeight [m] crank axis to the lower edge of the liner
double skirtOutOfLiner(const BottomEnd& piston, double linerBottomHeight);

/// Pin axis above the lower edge of the liner at bottom dead centre [m]; negative: it comes out.
double pinAboveLinerBottom(const BottomEnd& piston, double linerBottomHeight);

/// Height of the liner's lower edge above the crank axis [m], from the deck height [m] and the
/// length of the liner [m].
double linerBottomHeight(double deckHeight, double linerLength);

struct Liner {
  double bore = 0.0;            ///< [m]
  double bottomHeight = 0.0;    ///< [m] crank axis to lower edge
  double cylinderOffset = 0.0;  ///< [m] liner axis from the crank axis, + away from thrust side
  double rodHalfWidth = 0.0;    ///< [m] half the width of the shank where it passes the edge
};

/// A smallest gap and where in the turn it is met.
struct Nearest {
  double crankAngle = 0.0;  ///< [rad] from 0 to 2π
  double gap = 0.0;         ///< [m] negative: they meet
};

/// Rod shank to the lower edge of the liner [m], the smaller of both sides over the whole turn. The
/// shank is taken as of even width and long enough to reach the edge.
/// @throws describe::Refusal as motion::check()
/// @source plane geometry, both sides measured from the liner axis
Nearest rodToLiner(const motion::SliderCrank& mechanism, const Liner& liner);

}  // namespace strokewright::clearance
