#include "ui/drawings/plate_view.h"

#include <QEvent>
#include <QPainter>
#include <algorithm>

#include "core/describe/tabulated.h"
#include "core/plate/outline.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/plate_painter.h"

namespace strokewright::ui {

PlateView::PlateView(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("The spacer plate"));
  connect(&document, &Document::projectChanged, this, qOverload<>(&QWidget::update));
  connect(&taste, &Taste::changed, this, qOverload<>(&QWidget::update));
}

QSize PlateView::sizeHint() const { return QSize(32, 18) * fontMetrics().height(); }

QSize PlateView::minimumSizeHint() const { return QSize(18, 10) * fontMetrics().height(); }

void PlateView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Medium medium = Medium::screen(*this, font(), palette());
  const int engine = document_.project().target();
  const describe::Tabulated plate =
      engine < 0 ? describe::Tabulated{.rows = describe::Rows({})}
                 : document_.evaluation().tabulated(engine, out::plateOutline);
  if (plate.state != describe::State::Value) {
    painter.setPen(medium.ink.faint);
    const QString whyNot =
        plate.state == describe::State::Refused
            ? taste_.sentence(document_.evaluation().refusal(plate.notes))
        : plate.state == describe::State::None
            ? fromCore(plate.notes.none)
            : tr("The plate is drawn once its bore, length and width are entered, and where the "
                 "cylinders stand.");
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, whyNot);
    return;
  }
  const plate::Outline outline = plate::outlineFrom(plate.rows);
  const QSizeF room = plateRoom(outline, PlateLies::Level);  // [mm]
  const double figures =
      4.0 * fontMetrics().height();  // beside the drawing, of a size of their own
  const double scale = std::max(
      1e-3, std::min((width() - figures) / room.width(), (height() - figures) / room.height()));
  medium.narrow *= medium.millimetre / scale;
  medium.millimetre = scale;
  Drafting draft(painter, medium);
  const QMarginsF around = plateMargins(PlateLies::Level);
  const QPointF middle =
      QRectF(rect()).center() +
      scale / 2.0 * QPointF(around.left() - around.right(), around.top() - around.bottom());
  paintPlate(draft, middle, outline, PlateLies::Level, taste_.style());
}

void PlateView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

}  // namespace strokewright::ui
