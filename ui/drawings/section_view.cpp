#include "ui/drawings/section_view.h"

#include <QPainter>
#include <cmath>

#include "core/motion/slider_crank.h"
#include "ui/document/taste.h"
#include "ui/drawings/section_painter.h"

namespace strokewright::ui {

SectionView::SectionView(Document& document, Taste& taste, QWidget* parent)
    : CylinderView(document, taste, {12, 16}, {20, 28}, parent) {
  setAccessibleName(tr("Section of the cylinder"));
  describe();
}

void SectionView::setCrankAngle(double angle) {
  if (angle == crankAngle_) return;
  crankAngle_ = angle;
  describe();
}

void SectionView::showClearances() {
  clearances_ = true;
  update();
}

void SectionView::draw(Drafting& draft, const Cylinder& cylinder) {
  const QString note =
      tr("Section of cylinder %1. %2.")
          .arg(QString::number(cylinder.number), taste().inTerms(notFromNumbers(cylinder)));
  const QRect foot = footBox(note);
  draft.painter().setPen(draft.ink().faint);
  draft.painter().drawText(foot, Qt::AlignLeft | Qt::TextWordWrap, note);
  paintSection(draft, aboveFoot(foot), cylinder, taste().style(),
               {.crankAngle = crankAngle_, .clearances = clearances_});
}

QString SectionView::inWords(const Cylinder& cylinder) const {
  const double crown =
      motion::pose(cylinder.mechanism, crankAngle_).gudgeonPin.y + cylinder.compressionHeight.value;
  const auto length = [&](double value) { return taste().shown(units::Kind::Length, value); };
  return tr("Bore %1, throw %2, rod %3, compression height %4, deck height %5. At a crank angle of "
            "%6 "
            "the crown stands %7 %8 the deck. %9")
      .arg(length(cylinder.bore), length(cylinder.throwRadius), length(cylinder.rodLength),
           length(cylinder.compressionHeight), length(cylinder.deckHeight),
           taste().shown(units::Kind::Angle, crankAngle_),
           taste().shown(units::Kind::FineLength, std::abs(cylinder.deckHeight - crown)),
           crown > cylinder.deckHeight ? tr("above") : tr("below"), notFromNumbers(cylinder));
}

}  // namespace strokewright::ui
