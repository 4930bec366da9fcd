#include "ui/plots/plot_widget.h"

#include <QAccessible>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QFileDialog>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QMessageBox>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "ui/plots/plot_export.h"

namespace strokewright::ui {
namespace {

constexpr double kZoomStep = 1.25;
constexpr double kGrasp = 10.0;     // [px] how near a mark has to be pressed
constexpr double kClosest = 1e-4;   // of the fitted range: no nearer
constexpr double kFarthest = 20.0;  // of the fitted range: no farther

PlotRange zoomed(PlotRange range, double about, double factor) {
  return {about - (about - range.from) / factor, about + (range.to - about) / factor};
}

PlotRange moved(PlotRange range, double by) { return {range.from + by, range.to + by}; }

bool sensible(PlotRange range, const PlotAxis& axis) {
  const double share = (range.to - range.from) / (axis.to - axis.from);
  return share > kClosest && share < kFarthest;
}

}  // namespace

class PlotWidget::Parts {
 public:
  explicit Parts(PlotWidget* widget)
      : owner(widget), canvas(widget), nothing(new QLabel(tr("Nothing is drawn yet."), widget)) {
    nothing->setAlignment(Qt::AlignCenter);
    nothing->setWordWrap(true);
    nothing->setEnabled(false);  // a quiet word
  }

  int panels() const { return static_cast<int>(canvas.scene().panels.size()); }
  const PlotPanel& panel(int i) const { return canvas.scene().panels[static_cast<std::size_t>(i)]; }

  /// The panel at this height; the nearest one beside them.
  int panelAt(QPointF place) const {
    for (int i = 0; i + 1 < panels(); ++i) {
      if (place.y() < canvas.panelRect(i + 1).top()) return i;
    }
    return panels() - 1;
  }

  int markAt(QPointF place) const {
    const std::vector<PlotMark>& marks = canvas.scene().marks;
    for (std::size_t i = 0; i < marks.size(); ++i) {
      const QPointF off = canvas.toWidget(marks[i].panel, marks[i].at) - place;
      if (marks[i].draggable && std::hypot(off.x(), off.y()) < kGrasp) return static_cast<int>(i);
    }
    return -1;
  }

  void zoomX(double about, double factor) {
    const PlotRange range = zoomed(canvas.rangeX(), about, factor);
    if (sensible(range, panel(0).x)) canvas.setRangeX(range);
  }
  void zoomY(int at, double about, double factor) {
    const PlotRange range = zoomed(canvas.rangeY(at), about, factor);
    if (panel(at).y.names.empty() && sensible(range, panel(at).y)) canvas.setRangeY(at, range);
  }
  /// Inside both axes, over an axis that one alone.
  void zoomAt(QPointF place, double factor) {
    if (panels() == 0) return;
    const int at = panelAt(place);
    const QRectF room = canvas.panelRect(at);
    const QPointF about = canvas.fromWidget(at, place);
    if (place.x() >= room.left()) zoomX(about.x(), factor);
    if (place.y() <= room.bottom()) zoomY(at, about.y(), factor);
    isMoved = true;
  }

  void panBy(QPointF place, QPointF pixels) {
    if (panels() == 0) return;
    const int at = panelAt(place);
    const QPointF by = canvas.fromWidget(at, place) - canvas.fromWidget(at, place + pixels);
    canvas.setRangeX(moved(canvas.rangeX(), by.x()));
    if (panel(at).y.names.empty()) canvas.setRangeY(at, moved(canvas.rangeY(at), by.y()));
    isMoved = true;
  }

  void zoomTo(QRectF frame) {
    const int at = panelAt(frame.center());
    const QPointF low = canvas.fromWidget(at, frame.bottomLeft());
    const QPointF high = canvas.fromWidget(at, frame.topRight());
    const PlotRange x{low.x(), high.x()};
    const PlotRange y{low.y(), high.y()};
    if (sensible(x, panel(at).x) && sensible(y, panel(at).y)) {
      canvas.setRangeX(x);
      canvas.setRangeY(at, y);
      isMoved = true;
    }
  }

  bool sameAxes(const PlotScene& scene) const {
    return std::equal(scene.panels.begin(), scene.panels.end(), canvas.scene().panels.begin(),
                      canvas.scene().panels.end(), [](const PlotPanel& a, const PlotPanel& b) {
                        return a.x.title == b.x.title && a.y.title == b.y.title;
                      });
  }

  void askCursor(QPointF place) {
    if (panels() > 0) Q_EMIT owner->cursorAsked(canvas.fromWidget(panelAt(place), place));
  }

  void endDrag() {
    canvas.setBand(std::nullopt);
    doing = Doing::Nothing;
    mark = -1;
    owner->unsetCursor();
  }

  enum class Doing { Nothing, Pressed, Moving, Framing, Dragging };

  PlotWidget* owner;
  PlotCanvas canvas;
  QLabel* nothing;  ///< in the place of an empty picture
  std::optional<PlotCursor> cursor;
  bool follows = false;
  bool isMoved = false;  ///< zoomed or moved by the person
  bool held = false;     ///< the cursor stays where it is
  Doing doing = Doing::Nothing;
  int mark = -1;
  QPointF pressed;
  QPointF last;
};

PlotWidget::PlotWidget(QWidget* parent) : QWidget(parent), parts_(std::make_unique<Parts>(this)) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  parts_->canvas.setTheme(plotTheme(palette(), font()));
}

PlotWidget::~PlotWidget() = default;

void PlotWidget::setScene(PlotScene scene) {
  const bool keeps = parts_->isMoved && parts_->sameAxes(scene);
  const bool empty = scene.empty();
  parts_->canvas.setScene(std::move(scene));
  parts_->canvas.widget()->setVisible(!empty);
  parts_->nothing->setVisible(empty);
  setFocusPolicy(empty ? Qt::NoFocus : Qt::StrongFocus);
  if (!keeps) fit();
}

const PlotScene& PlotWidget::scene() const { return parts_->canvas.scene(); }

void PlotWidget::setCursor(const PlotCursor& cursor) {
  parts_->cursor = cursor;
  parts_->canvas.setCursor(cursor);
}

void PlotWidget::setFollowsPointer(bool follows) { parts_->follows = follows; }

void PlotWidget::fit() {
  parts_->canvas.fit();
  parts_->isMoved = false;
}

void PlotWidget::zoom(double factor) {
  if (parts_->panels() == 0) return;
  const QRectF room = parts_->canvas.panelRect(0);
  QPointF about = room.center();
  if (parts_->cursor) {
    const PlotCursor& cursor = *parts_->cursor;
    const QPointF at = toWidget(0, {cursor.x, cursor.y.value_or(0.0)});
    if (at.x() >= room.left() && at.x() <= room.right()) about.setX(at.x());
    if (cursor.y && room.contains(about.x(), at.y())) about.setY(at.y());
  }
  parts_->zoomX(fromWidget(0, about).x(), factor);
  if (parts_->panels() == 1) parts_->zoomY(0, fromWidget(0, about).y(), factor);
  parts_->isMoved = true;
}

QPointF PlotWidget::toWidget(int panel, QPointF at) const {
  return parts_->canvas.toWidget(panel, at);
}
QPointF PlotWidget::fromWidget(int panel, QPointF place) const {
  return parts_->canvas.fromWidget(panel, place);
}
PlotRange PlotWidget::visibleX() const { return parts_->canvas.rangeX(); }
PlotRange PlotWidget::visibleY(int panel) const { return parts_->canvas.rangeY(panel); }

void PlotWidget::copy() const {
  QGuiApplication::clipboard()->setMimeData(plotMimeData(scene(), size()).release());
}

void PlotWidget::saveAs() {
  const QString path = QFileDialog::getSaveFileName(
      this, tr("Save the plot"), QString(),
      tr("Picture (*.png);;Drawing (*.svg);;Page (*.pdf);;Numbers (*.csv)"));
  if (path.isEmpty()) return;
  const QString problem = savePlot(scene(), size(), path);
  if (!problem.isEmpty()) QMessageBox::warning(this, tr("Save the plot"), problem);
}

bool PlotWidget::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    auto* const key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Copy) || key->key() == Qt::Key_Home) {
      event->accept();
      return true;
    }
  }
  if (event->type() == QEvent::NativeGesture) {
    auto* const gesture = static_cast<QNativeGestureEvent*>(event);
    if (gesture->gestureType() == Qt::ZoomNativeGesture) {
      parts_->zoomAt(gesture->position(), 1.0 + gesture->value());
      return true;
    }
  }
  return QWidget::event(event);
}

void PlotWidget::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
    parts_->canvas.setTheme(plotTheme(palette(), font()));
  }
  QWidget::changeEvent(event);
}

void PlotWidget::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.addAction(tr("&Copy picture and data"), this, &PlotWidget::copy);
  menu.addAction(tr("&Save as…"), this, &PlotWidget::saveAs);
  menu.addSeparator();
  menu.addAction(tr("Show &all of it"), this, &PlotWidget::fit);
  menu.exec(event->globalPos());
}

void PlotWidget::keyPressEvent(QKeyEvent* event) {
  const int step = event->modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1;
  const auto stepped = [&](int x, int y) {
    parts_->held = true;
    Q_EMIT cursorStepped({x * step, y * step});
  };
  if (event->matches(QKeySequence::Copy)) return copy();
  switch (event->key()) {
    case Qt::Key_Left:
      return stepped(-1, 0);
    case Qt::Key_Right:
      return stepped(1, 0);
    case Qt::Key_Up:
      return stepped(0, 1);
    case Qt::Key_Down:
      return stepped(0, -1);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoom(kZoomStep);
    case Qt::Key_Minus:
      return zoom(1.0 / kZoomStep);
    case Qt::Key_Home:
      return fit();
    case Qt::Key_Return:
    case Qt::Key_Enter:
      Q_EMIT confirmed();
      return;
    case Qt::Key_Escape:
      break;
    default:
      return QWidget::keyPressEvent(event);
  }
  if (parts_->doing == Parts::Doing::Dragging) {
    Q_EMIT dragGivenUp(parts_->mark);
  } else if (parts_->doing == Parts::Doing::Nothing && !parts_->held) {
    return QWidget::keyPressEvent(event);
  }
  parts_->held = false;
  parts_->endDrag();
}

void PlotWidget::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || parts_->panels() == 0) {
    return QWidget::mousePressEvent(event);
  }
  parts_->pressed = parts_->last = event->position();
  parts_->mark = parts_->markAt(event->position());
  parts_->doing = Parts::Doing::Pressed;
}

void PlotWidget::mouseMoveEvent(QMouseEvent* event) {
  using Doing = Parts::Doing;
  const QPointF at = event->position();
  if (parts_->doing == Doing::Pressed &&
      (at - parts_->pressed).manhattanLength() >= QApplication::startDragDistance()) {
    const bool frame = event->modifiers().testFlag(Qt::ShiftModifier);
    parts_->doing = parts_->mark >= 0 ? Doing::Dragging : frame ? Doing::Framing : Doing::Moving;
    QWidget::setCursor(frame ? Qt::CrossCursor : Qt::ClosedHandCursor);
  }
  switch (parts_->doing) {
    case Doing::Nothing:
      if (parts_->follows && !parts_->held) parts_->askCursor(at);
      QWidget::setCursor(parts_->markAt(at) >= 0 ? Qt::OpenHandCursor : Qt::ArrowCursor);
      break;
    case Doing::Pressed:
      break;
    case Doing::Moving:
      parts_->panBy(parts_->pressed, at - parts_->last);
      break;
    case Doing::Framing:
      parts_->canvas.setBand(QRectF(parts_->pressed, at).normalized());
      break;
    case Doing::Dragging:
      Q_EMIT markDragged(parts_->mark, fromWidget(0, at));
      break;
  }
  parts_->last = at;
}

void PlotWidget::mouseReleaseEvent(QMouseEvent* event) {
  using Doing = Parts::Doing;
  if (event->button() != Qt::LeftButton) return QWidget::mouseReleaseEvent(event);
  const Doing done = parts_->doing;
  const int mark = parts_->mark;
  parts_->endDrag();
  if (done == Doing::Pressed) {
    parts_->held = true;
    parts_->askCursor(event->position());
  } else if (done == Doing::Framing) {
    parts_->zoomTo(QRectF(parts_->pressed, event->position()).normalized());
  } else if (done == Doing::Dragging) {
    Q_EMIT markDropped(mark);
  }
}

void PlotWidget::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) fit();
}

void PlotWidget::wheelEvent(QWheelEvent* event) {
  if (event->phase() != Qt::NoScrollPhase && !event->pixelDelta().isNull()) {
    parts_->panBy(event->position(), event->pixelDelta());
  } else if (event->angleDelta().y() != 0) {
    parts_->zoomAt(event->position(), std::pow(kZoomStep, event->angleDelta().y() / 120.0));
  }
  event->accept();
}

void PlotWidget::resizeEvent(QResizeEvent* event) {
  parts_->canvas.widget()->setGeometry(rect());
  parts_->nothing->setGeometry(rect());
  QWidget::resizeEvent(event);
}

void PlotWidget::focusInEvent(QFocusEvent* event) {
  parts_->canvas.setFocused(true);
  QWidget::focusInEvent(event);
}

void PlotWidget::focusOutEvent(QFocusEvent* event) {
  parts_->canvas.setFocused(false);
  QWidget::focusOutEvent(event);
}

}  // namespace strokewright::ui
