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
  CrankFigure figure;         ///< without a cylinder where there is nothing to draw
  QString whyNot = {};        ///< says why
  QString seenFrom = {};      ///< "seen from the output end"
  QString inFront = {};       ///< which cylinder stands in front, and why
  QStringList notGiven = {};  ///< names of entries that were assumed
};

/// Nobody says at which end a cylinder stands: the one of the lowest number is taken to stand at
/// the free end, so that it is in front seen from there and the last seen from the output end;
/// where no end is declared it is in front.
/// @source common practice of numbering from the free end, no published source
/// @param engine index into the project; -1: none
Crank crankToDraw(const assess::Assessment& assessment, const units::Style& style, int engine);

}  // namespace strokewright::ui
