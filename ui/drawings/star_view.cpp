#include "ui/drawings/star_view.h"

#include <QEvent>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/star_painter.h"
#include "ui/plots/engines_shown.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;

/// The star of an engine; no throw where too little is known.
Star starOf(const Document& document, int engine) {
  const describe::Evaluation& evaluation = document.assessment().evaluation();
  Star star;
  if (!evaluation.inputStands(engine, in::cylinderCount)) return star;
  const int n = evaluation.cylinders(engine);
  for (int i = 0; i < n; ++i) {
    if (n > 1 && !evaluation.inputStands(engine, in::throwAhead, i)) return {};
    star.throws.push_back(
        {.ahead = n > 1 ? evaluation.inputValue(engine, in::throwAhead, i) : 0.0,
         .axis = evaluation.inputValue(engine, in::cylinderAxis, i),
         .name = QString::number(evaluation.inputValue(engine, in::cylinderNumber, i), 'f', 0)});
  }
  const firing::Seen seen = firing::seenOf(evaluation, engine);
  star.clockwise = seen.clockwise;
  star.senseSaid = seen.rotationSaid;
  star.seenFrom = fromCore(seen.words());
  return star;
}

/// When the engine fires; none where it is not known.
FiringBar barOf(Document& document, const QString& mark, int engine) {
  FiringBar bar;
  bar.mark = mark;
  const describe::Tabulated told = document.evaluation().tabulated(engine, out::firingTable);
  if (told.state != describe::State::Value || told.rows.size() == 0) return bar;
  for (std::size_t i = 0; i < told.rows.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    bar.firings.push_back({.at = told.rows["at_rad"].numbers[at],
                           .name = QString::number(told.rows["cylinder"].numbers[at], 'f', 0)});
    bar.cycle += told.rows["then_rad"].numbers[at];
  }
  bar.name = nameOf(document.project(), engine);
  bar.line = lineOf(document.project(), engine);
  return bar;
}

}  // namespace

StarView::StarView(Document& document, Taste& taste, std::function<int()> which, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste), which_(std::move(which)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("The throws of the crank as a star, and when it fires"));
  connect(&document, &Document::projectChanged, this, qOverload<>(&QWidget::update));
  connect(&taste, &Taste::changed, this, qOverload<>(&QWidget::update));
}

QSize StarView::sizeHint() const { return QSize(32, 26) * fontMetrics().height(); }

QSize StarView::minimumSizeHint() const { return QSize(18, 14) * fontMetrics().height(); }

void StarView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const int engine = which_();
  Star star = engine < 0 ? Star{} : starOf(document_, engine);
  star.mark = fromCore(taste_.style().decimalMark);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  if (star.throws.empty()) {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("The star is drawn once every cylinder has its throw."));
    return;
  }
  std::vector<FiringBar> bars = {barOf(document_, star.mark, engine)};
  const int donor = document_.project().referenceDonor;
  if (donor >= 0 && donor != engine) bars.push_back(barOf(document_, star.mark, donor));
  std::erase_if(bars, [](const FiringBar& bar) { return bar.firings.empty(); });
  // The star takes a square on the left, when it fires the rest.
  const QRectF room = QRectF(rect()).adjusted(0.0, 4.0, 0.0, -2.0);
  const double side = bars.empty() ? room.width() : std::min(room.height(), 0.45 * room.width());
  constexpr double kRoomForAngles = 44.0;  // [mm] before they would lie over each other
  star.angles = side >= draft.mm(kRoomForAngles);
  paintStar(draft, {room.topLeft(), QSizeF(side, room.height())}, star);
  const double high = 4.8 * draft.textHeight() * static_cast<double>(bars.size());
  const double top = room.top() + std::max(0.0, (room.height() - high) / 2.0);
  paintFirings(draft, {QPointF(room.left() + side + 12.0, top), room.bottomRight()}, bars);
}

void StarView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

}  // namespace strokewright::ui
