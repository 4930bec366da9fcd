#include "ui/drawings/section_view.h"

#include <QEvent>
#include <QPainter>
#include <cmath>

#include "core/motion/slider_crank.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/section_painter.h"

namespace strokewright::ui {

SectionView::SectionView(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("Section of the cylinder"));
  connect(&document, &Document::projectChanged, this, &SectionView::describe);
  connect(&taste, &Taste::changed, this, &SectionView::describe);
  describe();
}

void SectionView::setCrankAngle(double angle) {
  if (angle == crankAngle_) return;
  crankAngle_ = angle;
  describe();
}

void SectionView::setCylinder(int cylinder) {
  if (cylinder == cylinder_) return;
  cylinder_ = cylinder;
  describe();
}

void SectionView::setEngine(int engine) {
  if (engine == engine_) return;
  engine_ = engine;
  describe();
}

QSize SectionView::sizeHint() const {
  return {fontMetrics().height() * 20, fontMetrics().height() * 28};
}

QSize SectionView::minimumSizeHint() const {
  return {fontMetrics().height() * 14, fontMetrics().height() * 16};
}

void SectionView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  const CylinderOrWhyNot it =
      cylinderToDraw(document_.assessment(), taste_.style(), engine_, cylinder_);
  if (!it.cylinder) {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, it.whyNot);
    return;
  }
  const QString note = taste_.inTerms(notFromNumbers(*it.cylinder));
  painter.setPen(draft.ink().faint);
  QRect noteBox =
      painter.boundingRect(rect(), Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap, note);
  painter.drawText(noteBox, Qt::AlignLeft | Qt::TextWordWrap, note);
  const QRectF area = QRectF(rect()).adjusted(0.0, 0.0, 0.0, -noteBox.height());
  paintSection(draft, area, *it.cylinder, taste_.style(), {.crankAngle = crankAngle_});
}

void SectionView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

void SectionView::describe() {
  update();
  const CylinderOrWhyNot it =
      cylinderToDraw(document_.assessment(), taste_.style(), engine_, cylinder_);
  if (!it.cylinder) {
    setAccessibleDescription(it.whyNot);
    return;
  }
  const Cylinder& cylinder = *it.cylinder;
  const double crown =
      motion::pose(cylinder.mechanism, crankAngle_).gudgeonPin.y + cylinder.compressionHeight.value;
  const auto length = [&](double value) { return taste_.shown(units::Kind::Length, value); };
  setAccessibleDescription(
      tr("Bore %1, throw %2, rod %3, compression height %4, deck height %5. At a crank angle of %6 "
         "the crown stands %7 %8 the deck. %9")
          .arg(length(cylinder.bore), length(cylinder.throwRadius), length(cylinder.rodLength),
               length(cylinder.compressionHeight), length(cylinder.deckHeight),
               taste_.shown(units::Kind::Angle, crankAngle_),
               taste_.shown(units::Kind::FineLength, std::abs(cylinder.deckHeight - crown)),
               crown > cylinder.deckHeight ? tr("above") : tr("below"), notFromNumbers(cylinder)));
}

}  // namespace strokewright::ui
