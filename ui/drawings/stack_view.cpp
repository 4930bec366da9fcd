#include "ui/drawings/stack_view.h"

#include <QEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/stack_painter.h"

namespace strokewright::ui {

StackView::StackView(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setMouseTracking(true);
  setAccessibleName(tr("The stack, enlarged"));
  connect(&document, &Document::projectChanged, this, &StackView::describe);
  connect(&taste, &Taste::changed, this, &StackView::describe);
  describe();
}

void StackView::setCylinder(int cylinder) {
  if (cylinder == cylinder_) return;
  cylinder_ = cylinder;
  describe();
}

void StackView::setEngine(int engine) {
  if (engine == engine_) return;
  engine_ = engine;
  describe();
}

void StackView::highlight(const describe::Input* input) {
  if (input == highlighted_) return;
  highlighted_ = input;
  update();
}

QSize StackView::sizeHint() const {
  return {fontMetrics().height() * 32, fontMetrics().height() * 22};
}

QSize StackView::minimumSizeHint() const {
  return {fontMetrics().height() * 22, fontMetrics().height() * 14};
}

void StackView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  marks_.clear();
  const CylinderOrWhyNot it =
      cylinderToDraw(document_.assessment(), taste_.style(), engine_, cylinder_);
  if (!it.cylinder) {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, it.whyNot);
    return;
  }
  const QRectF area = QRectF(rect()).adjusted(0.0, 0.0, 0.0, -1.4 * draft.textHeight());
  StackDrawn drawn = paintStack(draft, area, *it.cylinder, taste_.style(),
                                {.highlighted = hovered_ != nullptr ? hovered_ : highlighted_});
  marks_ = std::move(drawn.marks);
  draft.text(QPointF(0.0, height()), Qt::AlignLeft | Qt::AlignBottom,
             stackCaption(drawn.enlargement, cylinder_, taste_.style()), false, draft.ink().faint);
}

void StackView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

void StackView::mouseMoveEvent(QMouseEvent* event) { hover(inputAt(event->position())); }

void StackView::mousePressEvent(QMouseEvent* event) {
  const describe::Input* input = inputAt(event->position());
  if (event->button() == Qt::LeftButton && input != nullptr) Q_EMIT inputPicked(input);
}

void StackView::leaveEvent(QEvent* /*event*/) { hover(nullptr); }

const describe::Input* StackView::inputAt(const QPointF& place) const {
  const auto mark =
      std::ranges::find_if(marks_, [&](const StackMark& it) { return it.area.contains(place); });
  return mark != marks_.end() ? mark->input : nullptr;
}

void StackView::hover(const describe::Input* input) {
  if (input == hovered_) return;
  hovered_ = input;
  setCursor(input != nullptr ? Qt::PointingHandCursor : Qt::ArrowCursor);
  update();
  Q_EMIT inputHovered(input);
}

void StackView::describe() {
  update();
  const CylinderOrWhyNot it =
      cylinderToDraw(document_.assessment(), taste_.style(), engine_, cylinder_);
  setAccessibleDescription(it.cylinder ? stackInWords(*it.cylinder, taste_.style()) : it.whyNot);
}

}  // namespace strokewright::ui
