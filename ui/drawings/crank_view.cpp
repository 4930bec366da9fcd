#include "ui/drawings/crank_view.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QSlider>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/caption.h"

namespace strokewright::ui {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;
constexpr double kWalk = 5.0 * kDegree;
constexpr double kDrag = 0.4 * kDegree;  // a pixel
constexpr int kFrame = 16;               // [ms]
constexpr int kAFrame = 2;               // [°] of crank: about twenty turns a minute
constexpr int kCoarse = 10;              // [°] by a page key

QString angle(const Taste& taste, double radians) {
  return taste.shown(units::Kind::Angle, radians);
}

/// "3 cylinders in line" or of several axes, with the throw of each.
QString layoutInWords(const Taste& taste, const std::vector<FigureCylinder>& cylinders) {
  if (cylinders.size() == 1) return CrankView::tr("1 cylinder.");
  const bool inLine = std::ranges::all_of(
      cylinders, [&](const FigureCylinder& one) { return one.axis == cylinders.front().axis; });
  QStringList each;
  for (const FigureCylinder& one : cylinders) {
    each += inLine ? CrankView::tr("%1 by %2").arg(one.name, angle(taste, one.ahead))
                   : CrankView::tr("%1 by %2 with its axis at %3")
                         .arg(one.name, angle(taste, one.ahead), angle(taste, one.axis));
  }
  return (inLine ? CrankView::tr("%1 cylinders in line, throws ahead of the first: %2.")
                 : CrankView::tr("%1 cylinders, throws ahead of the first: %2."))
      .arg(QString::number(cylinders.size()), each.join(QStringLiteral(", ")));
}

/// One looks from the end that was not declared.
bool isBehind(const Viewpoint& viewpoint) { return std::abs(viewpoint.turned) > 0.25 * kTurn; }

QString viewInWords(const Taste& taste, const Crank& crank, const Viewpoint& viewpoint) {
  if (viewpoint == Viewpoint::fromTheEnd()) return crank.seenFrom;
  if (viewpoint == Viewpoint::isometric())
    return CrankView::tr("at an angle, %1").arg(crank.seenFrom);
  const bool behind = isBehind(viewpoint);
  return (behind ? CrankView::tr("walked round by %2 and up by %3, now seen %1")
                 : CrankView::tr("%1; walked round by %2 and up by %3"))
      .arg(behind ? crank.seenBehind : crank.seenFrom, angle(taste, viewpoint.turned),
           angle(taste, viewpoint.tilted));
}

QString inWords(const Taste& taste, const Crank& crank, const Viewpoint& viewpoint,
                double crankAngle) {
  QString text = CrankView::tr("%1 Turned by %2, %3.")
                     .arg(layoutInWords(taste, crank.figure.cylinders), angle(taste, crankAngle),
                          viewInWords(taste, crank, viewpoint));
  if (!crank.atFreeEnd.isEmpty()) {
    text += CrankView::tr(" %1.").arg(inFront(crank, isBehind(viewpoint)));
  }
  if (!crank.figure.camshaft.isEmpty()) {
    text += CrankView::tr(" Over the pistons: %1.").arg(crank.figure.camshaft);
  }
  return text;
}

}  // namespace

CrankView::CrankView(Document& document, Taste& taste, std::function<int()> which, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste), which_(std::move(which)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("The crank in space, turning"));
  setToolTip(
      tr("Drag or use the arrow keys to walk round it; Page Up and Page Down turn the crank; Home "
         "looks at an angle, End from the declared end."));
  connect(&document, &Document::projectChanged, this, &CrankView::read);
  connect(&taste, &Taste::changed, this, &CrankView::read);
  read();
}

void CrankView::read() {
  engine_ = which_();
  crank_ = crankToDraw(document_.assessment(), taste_.style(), engine_);
  describe();
}

void CrankView::describe() {
  update();
  setAccessibleDescription(crank_.figure.cylinders.empty()
                               ? crank_.whyNot
                               : inWords(taste_, crank_, viewpoint_, crankAngle_));
}

QString CrankView::seenInWords() const {
  const QString seen = viewInWords(taste_, crank_, viewpoint_);
  if (crank_.atFreeEnd.isEmpty()) return seen;
  return tr("%1 · %2").arg(seen, inSentence(inFront(crank_, isBehind(viewpoint_))));
}

void CrankView::setCrankAngle(double angle) {
  crankAngle_ = angle;
  describe();
}

void CrankView::lookFrom(const Viewpoint& viewpoint) {
  viewpoint_ = viewpoint;
  describe();
}

QSize CrankView::sizeHint() const { return QSize(32, 26) * fontMetrics().height(); }

QSize CrankView::minimumSizeHint() const { return QSize(16, 10) * fontMetrics().height(); }

void CrankView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  if (which_() != engine_) read();
  if (crank_.figure.cylinders.empty()) {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, crank_.whyNot);
    return;
  }
  // Which end it is stands below it, as below the star.
  const QString said = seenInWords();
  constexpr double kUsualLines = 2.2;  // so that the figure keeps its size while it is walked round
  const double words =
      std::max(captionHeight(draft, said, width()), kUsualLines * draft.textHeight());
  paintCrank(draft, QRectF(rect()).adjusted(0.0, 0.0, 0.0, -words), crank_.figure, viewpoint_,
             crankAngle_);
  paintCaption(draft, QRectF(rect()).adjusted(0.0, height() - words, 0.0, 0.0), said);
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 1.0));
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  }
}

void CrankView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) update();
  QWidget::changeEvent(event);
}

void CrankView::mousePressEvent(QMouseEvent* event) { grasped_ = event->position(); }

void CrankView::mouseMoveEvent(QMouseEvent* event) {
  if (!event->buttons().testFlag(Qt::LeftButton)) return;
  const QPointF moved = event->position() - grasped_;
  grasped_ = event->position();
  walk(kDrag * moved.x(), kDrag * moved.y());
}

void CrankView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Left:
      walk(-kWalk, 0.0);
      break;
    case Qt::Key_Right:
      walk(kWalk, 0.0);
      break;
    case Qt::Key_Up:
      walk(0.0, -kWalk);
      break;
    case Qt::Key_Down:
      walk(0.0, kWalk);
      break;
    case Qt::Key_Home:
      lookFrom(Viewpoint::isometric());
      break;
    case Qt::Key_End:
      lookFrom(Viewpoint::fromTheEnd());
      break;
    case Qt::Key_PageUp:
      Q_EMIT turnAsked(-kCoarse);
      break;
    case Qt::Key_PageDown:
      Q_EMIT turnAsked(kCoarse);
      break;
    default:
      QWidget::keyPressEvent(event);
  }
}

void CrankView::walk(double right, double up) {
  lookFrom({.turned = std::remainder(viewpoint_.turned + right, kTurn),
            .tilted = std::clamp(viewpoint_.tilted + up, -0.25 * kTurn, 0.25 * kTurn)});
}

CrankPane::CrankPane(Document& document, Taste& taste, std::function<int()> which, QWidget* parent)
    : QWidget(parent) {
  auto* view = new CrankView(document, taste, std::move(which), this);
  auto* atAnAngle = new QPushButton(tr("At an angle"), this);
  auto* fromEnd = new QPushButton(tr("From the end"), this);
  auto* turning = new QPushButton(tr("Turn"), this);
  turning->setObjectName(QStringLiteral("turn"));
  turning->setCheckable(true);
  turning->setToolTip(tr("Turns the crank until it is pressed again."));
  auto* slider = new QSlider(Qt::Horizontal, this);
  slider->setRange(0, 720);
  slider->setPageStep(kCoarse);
  slider->setAccessibleName(tr("Crank angle of the figure"));
  auto* angle = new QLabel(this);
  angle->setMinimumWidth(fontMetrics().horizontalAdvance(QStringLiteral("720°")));
  auto* timer = new QTimer(this);
  timer->setInterval(kFrame);

  auto* row = new QHBoxLayout;
  row->addWidget(atAnAngle);
  row->addWidget(fromEnd);
  row->addWidget(turning);
  row->addWidget(slider, 1);
  row->addWidget(angle);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(view, 1);
  column->addLayout(row);

  const auto turnBy = [slider](int degrees) {
    slider->setValue((slider->value() + degrees + slider->maximum()) % slider->maximum());
  };
  connect(slider, &QSlider::valueChanged, view, [view, angle](int degrees) {
    view->setCrankAngle(degrees * kDegree);
    angle->setText(QString::number(degrees) + QChar(u'°'));
  });
  connect(view, &CrankView::turnAsked, slider, turnBy);
  connect(timer, &QTimer::timeout, slider, [view, turnBy] {
    if (view->isVisible()) turnBy(kAFrame);
  });
  connect(turning, &QPushButton::toggled, timer, [timer](bool on) {
    if (on) {
      timer->start();
    } else {
      timer->stop();
    }
  });
  connect(atAnAngle, &QPushButton::clicked, view,
          [view] { view->lookFrom(Viewpoint::isometric()); });
  connect(fromEnd, &QPushButton::clicked, view,
          [view] { view->lookFrom(Viewpoint::fromTheEnd()); });
  connect(&document, &Document::begun, this, [view, slider, turning] {
    turning->setChecked(false);
    slider->setValue(0);
    view->lookFrom(Viewpoint::isometric());
  });
  angle->setText(QStringLiteral("0°"));
}

}  // namespace strokewright::ui
