#include "ui/drawings/cylinder_view.h"

#include <QEvent>
#include <QPainter>

#include "ui/document/document.h"
#include "ui/document/taste.h"

namespace strokewright::ui {

namespace {

constexpr double kAboveFoot = 4.0;  ///< [px]

}  // namespace

CylinderView::CylinderView(Document& document, Taste& taste, QSize least, QSize liked,
                           QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste), least_(least), liked_(liked) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  connect(&document, &Document::projectChanged, this, &CylinderView::describe);
  connect(&taste, &Taste::changed, this, &CylinderView::describe);
}

void CylinderView::setCylinder(int cylinder) {
  if (cylinder == cylinder_) return;
  cylinder_ = cylinder;
  describe();
}

void CylinderView::setEngine(int engine) {
  if (engine == engine_) return;
  engine_ = engine;
  describe();
}

QSize CylinderView::sizeHint() const { return liked_ * fontMetrics().height(); }

QSize CylinderView::minimumSizeHint() const { return least_ * fontMetrics().height(); }

QRect CylinderView::footBox(const QString& text) const {
  return fontMetrics().boundingRect(rect(), Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap,
                                    text);
}

QRectF CylinderView::aboveFoot(const QRect& foot) const {
  return QRectF(rect()).adjusted(0.0, 0.0, 0.0, -(foot.height() + kAboveFoot));
}

CylinderOrWhyNot CylinderView::cylinderNow() const {
  return cylinderToDraw(document_.assessment(), taste_.style(), engine_, cylinder_);
}

void CylinderView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  const CylinderOrWhyNot it = cylinderNow();
  if (it.cylinder) {
    draw(draft, *it.cylinder);
  } else {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, it.whyNot);
  }
}

void CylinderView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

void CylinderView::describe() {
  update();
  const CylinderOrWhyNot it = cylinderNow();
  setAccessibleDescription(it.cylinder ? inWords(*it.cylinder) : it.whyNot);
}

}  // namespace strokewright::ui
