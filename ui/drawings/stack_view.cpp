#include "ui/drawings/stack_view.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "ui/document/taste.h"

namespace strokewright::ui {

namespace {

constexpr double kLongEnlargement = 12.5;  ///< one with a long caption

}  // namespace

StackView::StackView(Document& document, Taste& taste, QWidget* parent)
    : CylinderView(document, taste, {22, 14}, {32, 22}, parent) {
  setMouseTracking(true);
  setAccessibleName(tr("The stack, enlarged"));
  describe();
}

void StackView::highlight(const describe::Input* input) {
  if (input == highlighted_) return;
  highlighted_ = input;
  update();
}

void StackView::paintEvent(QPaintEvent* event) {
  marks_.clear();
  CylinderView::paintEvent(event);
}

void StackView::draw(Drafting& draft, const Cylinder& it) {
  const units::Style& style = taste().style();
  QString crown;
  const auto caption = [&](double enlargement) {
    return stackCaption(enlargement, it, style, crown);
  };
  QRect foot = footBox(caption(kLongEnlargement));
  if (!hasRoomForCrown(draft, aboveFoot(foot), it, style)) {
    crown = crownInWords(it, style);
    foot = footBox(caption(kLongEnlargement));
  }
  StackDrawn drawn = paintStack(draft, aboveFoot(foot), it, style,
                                {.highlighted = hovered_ != nullptr ? hovered_ : highlighted_});
  marks_ = std::move(drawn.marks);
  draft.painter().setPen(draft.ink().faint);
  draft.painter().drawText(foot, Qt::AlignLeft | Qt::TextWordWrap, caption(drawn.enlargement));
}

QString StackView::inWords(const Cylinder& it) const { return stackInWords(it, taste().style()); }

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

}  // namespace strokewright::ui
