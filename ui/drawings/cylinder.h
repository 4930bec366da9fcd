#pragma once
/// One cylinder as it is drawn: the builder's numbers, and assumed ones where he gave none.

#include <QString>
#include <QStringList>
#include <array>
#include <optional>
#include <vector>

#include "core/assess/assess.h"
#include "core/motion/slider_crank.h"
#include "core/units/style.h"

namespace strokewright::ui {

/// A length as it is drawn.
struct Measure {
  double value = 0.0;                      ///< [SI]
  bool given = false;                      ///< the builder's; otherwise assumed
  const describe::Input* input = nullptr;  ///< the entry behind it

  operator double() const { return value; }
};

struct Cylinder {
  int number = 1;  ///< it goes by
  motion::SliderCrank mechanism;
  double boreAxis = 0.0;  ///< [m] away from the thrust side
  bool twoStroke = false;
  bool compressionIgnition = false;

  Measure bore, throwRadius, rodLength, compressionHeight;
  Measure gudgeonPin, smallEnd, crankpin, bigEndEye;
  Measure skirt, counterweight, rodHalfWidth, ringWidth;

  bool direct = false;  ///< the deck height was measured direct: seat and barrel are not known
  Measure seat, barrel, directDeck;
  std::array<Measure, 3> baseGaskets;
  Measure spacer;             ///< as it is counted with
  bool spacerToMake = false;  ///< it is not entered yet: a result stands for it
  Measure linerProud;         ///< over the block face
  Measure headGasket, headGasketBore, headRecess, crownRise;
  double deckHeight = 0.0;   ///< [m] crank axis to deck, spacer in
  double linerBottom = 0.0;  ///< [m] above the crank axis
  bool linerBottomGiven = false;
  double chamberVolume = 0.0;               ///< [m3] in the head
  double crownVolume = 0.0;                 ///< [m3] positive: a dome, negative: a dish
  std::optional<double> deckClearance;      ///< [m] where there is a result
  std::optional<double> squishGap;          ///< [m] where there is a result
  std::optional<double> skirtToWeb;         ///< [m] where there is a result
  std::optional<double> skirtOut;           ///< [m] of the liner, where there is a result
  const describe::Input* wanted = nullptr;  ///< the figure the spacer is made for

  QStringList notGiven;  ///< names of entries that were assumed
};

/// Why there is nothing to draw, or the cylinder.
struct CylinderOrWhyNot {
  std::optional<Cylinder> cylinder;
  QString whyNot;
};

/// The engine to draw: this one, the target for -1, the first where there is no target, -1: none.
int engineToDraw(const model::Project& project, int engine);

/// What is missing or impossible is assumed in proportion to what is known, like the typical
/// engine of the inputs.
/// @param engine   index into the project, or -1
/// @param cylinder counted from 0; beyond the last: the last
CylinderOrWhyNot cylinderToDraw(const assess::Assessment& assessment, const units::Style& style,
                                int engine, int cylinder);

}  // namespace strokewright::ui
