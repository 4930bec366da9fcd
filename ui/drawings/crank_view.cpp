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

#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "core/survey/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/cylinder.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;
constexpr double kPitchOfBore = 1.25;  // of cylinders whose places nobody gave
constexpr double kWalk = 5.0 * kDegree;
constexpr double kDrag = 0.4 * kDegree;  // a pixel
constexpr int kFrame = 16;               // [ms]
constexpr int kAFrame = 2;               // [°] of crank: about twenty turns a minute
constexpr int kCoarse = 10;              // [°] by a page key

/// Where the cylinders stand that nobody placed: one behind the other, those of different banks
/// beside each other.
double assumedPlace(const CrankFigure& figure, const FigureCylinder& next) {
  const auto inBank = std::ranges::count_if(figure.cylinders, [&](const FigureCylinder& one) {
    return std::abs(one.axis - next.axis) < kDegree;
  });
  const bool sameBank =
      figure.cylinders.empty() || std::abs(figure.cylinders.front().axis - next.axis) < kDegree;
  return kPitchOfBore * next.bore * static_cast<double>(inBank) + (sameBank ? 0.0 : next.rodWidth);
}

bool standsEverywhere(const assess::Assessment& assessment, int engine,
                      const describe::Result& result) {
  const int n = assessment.evaluation().cylinders(engine);
  for (int i = 0; i < n; ++i) {
    if (assessment(engine, result, i).state != describe::State::Value) return false;
  }
  return true;
}

}  // namespace

CrankFigure crankFigureOf(const Document& document, const Taste& taste, int engine) {
  CrankFigure figure;
  if (engine < 0) return figure;
  const assess::Assessment& assessment = document.assessment();
  const describe::Evaluation& evaluation = assessment.evaluation();
  const int n = evaluation.cylinders(engine);
  const bool placed = standsEverywhere(assessment, engine, out::cylinderPosition);
  const bool phased = standsEverywhere(assessment, engine, out::lobeBehindFirst);
  for (int i = 0; i < n; ++i) {
    const CylinderOrWhyNot drawn = cylinderToDraw(assessment, taste.style(), engine, i);
    if (!drawn.cylinder || (n > 1 && !evaluation.inputStands(engine, in::throwAhead, i))) return {};
    const Cylinder& it = *drawn.cylinder;
    FigureCylinder one{
        .ahead = n > 1 ? evaluation.inputValue(engine, in::throwAhead, i) : 0.0,
        .axis = evaluation.inputValue(engine, in::cylinderAxis, i),
        .along = 0.0,
        .mechanism = it.mechanism,
        .bore = it.bore,
        .compressionHeight = it.compressionHeight,
        .skirt = it.skirt,
        .crankpin = it.crankpin,
        .gudgeonPin = it.gudgeonPin,
        .rodWidth = 2.0 * it.rodHalfWidth,
        .name = QString::number(evaluation.inputValue(engine, in::cylinderNumber, i), 'f', 0),
        .lobe = {}};
    one.along =
        placed ? assessment(engine, out::cylinderPosition, i).value : assumedPlace(figure, one);
    if (phased) one.lobe = assessment(engine, out::lobeBehindFirst, i).value;
    figure.cylinders.push_back(std::move(one));
  }
  figure.clockwise = firing::seenOf(evaluation, engine).clockwise;
  return figure;
}

CrankView::CrankView(Document& document, Taste& taste, std::function<int()> which, QWidget* parent)
    : QWidget(parent), document_(document), taste_(taste), which_(std::move(which)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("The crank in space, turning"));
  setToolTip(
      tr("Drag or use the arrow keys to walk round it; Page Up and Page Down turn the crank; Home "
         "looks at an angle, End from the declared end. The first cylinder stands in front."));
  connect(&document, &Document::projectChanged, this, qOverload<>(&QWidget::update));
  connect(&taste, &Taste::changed, this, qOverload<>(&QWidget::update));
}

void CrankView::setCrankAngle(double angle) {
  crankAngle_ = angle;
  update();
}

void CrankView::lookFrom(const Viewpoint& viewpoint) {
  viewpoint_ = viewpoint;
  update();
}

QSize CrankView::sizeHint() const { return QSize(32, 26) * fontMetrics().height(); }

QSize CrankView::minimumSizeHint() const { return QSize(16, 10) * fontMetrics().height(); }

void CrankView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drafting draft(painter, Medium::screen(*this, font(), palette()));
  const CrankFigure figure = crankFigureOf(document_, taste_, which_());
  if (figure.cylinders.empty()) {
    painter.setPen(draft.ink().faint);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("The crank is drawn once every cylinder has its throw."));
    return;
  }
  paintCrank(draft, rect(), figure, viewpoint_, crankAngle_);
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
  auto* slider = new QSlider(Qt::Horizontal, this);
  slider->setRange(0, 720);
  slider->setPageStep(kCoarse);
  slider->setAccessibleName(tr("Crank angle of the figure"));
  auto* angle = new QLabel(this);
  angle->setMinimumWidth(fontMetrics().horizontalAdvance(QStringLiteral("720°")));
  auto* turning = new QPushButton(tr("Turn"), this);
  turning->setCheckable(true);
  turning->setToolTip(tr("Turns the crank until it is pressed again."));
  auto* atAnAngle = new QPushButton(tr("At an angle"), this);
  auto* fromEnd = new QPushButton(tr("From the end"), this);
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
  angle->setText(QStringLiteral("0°"));
}

}  // namespace strokewright::ui
