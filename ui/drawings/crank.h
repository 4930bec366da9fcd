#pragma once
/// The crank of one engine as it is drawn: the builder's numbers, and assumed ones where he gave
/// none.

#include <QString>
#include <QStringList>

#include "core/assess/assess.h"
#include "core/units/style.h"
#include "ui/drawings/crank_figure.h"

namespace strokewright::ui {

struct Crank {
  CrankFigure figure;       ///< without a cylinder where there is nothing to draw
  QString whyNot = {};      ///< says why
  QString seenFrom = {};    ///< "seen from the output end, turns clockwise"
  QString seenBehind = {};  ///< what is said instead once one has walked round to the other end
  QString atFreeEnd = {};   ///< which cylinder stands there; empty: a single
  bool freeEndInFront = true;
  QStringList notGiven = {};  ///< names of entries that were assumed
};

/// "Cylinder 1 is taken to stand at the free end: in front"; empty of a single.
/// @param behind one has walked round to the other end
QString inFront(const Crank& crank, bool behind = false);

/// Positions rise away from the end at which the first cylinder is said to stand. While nobody says
/// it, the one of the lowest number is taken to stand at the free end. Where no end is declared to
/// look from, it is looked at from the free end.
/// @source common practice of numbering from the free end, no published source
/// @param engine index into the project; -1: none
Crank crankToDraw(const assess::Assessment& assessment, const units::Style& style, int engine);

}  // namespace strokewright::ui
