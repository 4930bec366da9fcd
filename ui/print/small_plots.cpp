#include "ui/print/small_plots.h"

#include <QPolygonF>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "core/chamber/results.h"
#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "core/motion/curve.h"
#include "core/motion/results.h"
#include "core/tradeoff/map.h"
#include "ui/document/taste.h"
#include "ui/plots/bore_stroke_scene.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/motion_scene.h"

namespace strokewright::ui {
namespace {

using describe::State;
using units::Kind;
namespace in = model::in;

constexpr double kTick = 0.9;     // [mm]
constexpr double kKeyLine = 6.0;  // [mm] with the gap to its text
constexpr double kDot = 0.9;      // [mm] radius of an engine's point
constexpr int kSteps = 180;       // of a turn; half a millimetre of paper

/// A step of 1, 2 or 5 that cuts a span into about so many parts.
double roundStep(double span, double parts) {
  const double raw = span / parts;
  const double decade = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double digit : {1.0, 2.0, 5.0}) {
    if (digit * decade >= raw) return digit * decade;
  }
  return 10.0 * decade;
}

struct Range {
  double least = 0.0;
  double most = 1.0;
  double span() const { return most - least; }
};

/// A frame with ticks inside, numbers outside, and a heading above.
class Axes {
 public:
  Axes(Drafting& draft, const QRectF& area, const units::Style& style, const QString& heading,
       Range across, Range up, double numbers)
      : draft_(draft), style_(style), across_(across), up_(up) {
    const double line = draft.textHeight();
    frame_ = area.adjusted(draft.mm(numbers), line + draft.mm(0.8), -draft.mm(1.0), -line);
    draft.text(area.topLeft(), Qt::AlignLeft | Qt::AlignTop, heading, false, draft.ink().faint);
  }

  const QRectF& frame() const { return frame_; }
  QPointF at(double x, double y) const {
    return {frame_.left() + (x - across_.least) / across_.span() * frame_.width(),
            frame_.bottom() - (y - up_.least) / up_.span() * frame_.height()};
  }

  void paintFrame() { draft_.rectangle(frame_, draft_.narrow()); }

  void tickAcross(double value, const QString& text) {
    const QPointF foot(at(value, up_.least).x(), frame_.bottom());
    draft_.line(foot, foot - QPointF(0.0, draft_.mm(kTick)), draft_.narrow());
    draft_.text(foot + QPointF(0.0, draft_.mm(0.2)), Qt::AlignHCenter | Qt::AlignTop, text);
  }
  void tickUp(double value, const QString& text) {
    const QPointF foot(frame_.left(), at(across_.least, value).y());
    draft_.line(foot, foot + QPointF(draft_.mm(kTick), 0.0), draft_.narrow());
    draft_.text(foot - QPointF(draft_.mm(0.7), 0.0), Qt::AlignRight, text);
  }
  void ticksAcross(double step) {
    forEachStep(across_, step, [&](double value) { tickAcross(value, number(value, step)); });
  }
  void ticksUp(double step) {
    forEachStep(up_, step, [&](double value) {
      // Not where the numbers of the other axis stand.
      const double above = frame_.bottom() - at(across_.least, value).y();
      if (above > 0.6 * draft_.textHeight()) tickUp(value, number(value, step));
    });
  }
  QString number(double value, double step) const {
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    return fromCore(style_.number(Kind::Ratio, value, decimals));
  }

  void curve(const QPolygonF& points, const QPen& pen) {
    QPainter& painter = draft_.painter();
    painter.save();
    painter.setClipRect(frame_, Qt::IntersectClip);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(points);
    painter.restore();
  }

 private:
  template <typename Visit>
  static void forEachStep(Range range, double step, Visit visit) {
    const double first = std::ceil(range.least / step - 1e-9);
    const double last = std::floor(range.most / step + 1e-9);
    for (double i = first; i <= last; i += 1.0) visit(i * step);
  }

  Drafting& draft_;
  const units::Style& style_;
  Range across_;
  Range up_;
  QRectF frame_;
};

QPen penOf(Drafting& draft, const model::Project& project, int engine) {
  QPen pen = draft.wide();
  pen.setStyle(lineOf(project, engine));
  if (pen.style() != Qt::SolidLine) pen.setWidthF(pen.widthF() * 0.8);
  return pen;
}

bool onSheet(const sheet::Sheet& sheet, int engine) {
  return std::ranges::find(sheet.columns, engine, &sheet::Column::engine) != sheet.columns.end();
}

std::vector<Mover> moversOnSheet(const assess::Assessment& assessment, const sheet::Sheet& sheet) {
  std::vector<Mover> movers = moversOf(assessment);
  std::erase_if(movers, [&](const Mover& mover) { return !onSheet(sheet, mover.engine); });
  return movers;
}

void sayNothingToDraw(Drafting& draft, const QRectF& area, const QString& heading) {
  draft.text(area.topLeft(), Qt::AlignLeft | Qt::AlignTop, heading, false, draft.ink().faint);
  draft.text(area.center(), Qt::AlignHCenter, QStringLiteral("waits for entries"), false,
             draft.ink().faint);
}

/// Which line is whose, inside the frame where the curves leave room.
void paintKey(Drafting& draft, const assess::Assessment& assessment,
              const std::vector<Mover>& movers, const units::Style& style, const QRectF& frame) {
  std::vector<QString> texts;
  double width = 0.0;
  for (const Mover& mover : movers) {
    const auto& engine = assessment.project().engines[static_cast<std::size_t>(mover.engine)];
    texts.push_back(fromCore(model::partKey(engine.part)) + QLatin1Char(' ') +
                    fromCore(style.number(Kind::Speed, mover.speed)));
    width = std::max(width, draft.mm(kKeyLine) + draft.textWidth(texts.back()));
  }
  QPointF at(frame.center().x() - width / 2.0, frame.top() + 0.5 * draft.textHeight());
  for (std::size_t i = 0; i < movers.size(); ++i) {
    at += QPointF(0.0, draft.textHeight());
    draft.line(at, at + QPointF(draft.mm(kKeyLine - 1.0), 0.0),
               penOf(draft, assessment.project(), movers[i].engine));
    const QPointF words = at + QPointF(draft.mm(kKeyLine), 0.0);
    const double half = draft.textHeight() / 2.0;
    draft.painter().fillRect(
        QRectF(words - QPointF(0.0, half), QSizeF(draft.textWidth(texts[i]), 2.0 * half)),
        draft.ink().paper);
    draft.text(words, Qt::AlignLeft, texts[i]);
  }
}

// ---- Bore against stroke

class BoreStrokePlot {
 public:
  BoreStrokePlot(Drafting& draft, const QRectF& area, const assess::Assessment& assessment,
                 const units::Style& style, const sheet::Sheet& sheet, const QString& heading)
      : draft_(draft),
        assessment_(assessment),
        style_(style),
        sheet_(sheet),
        window_(windowFor(assessment)),
        axes_(draft, area, style, heading, {shown(window_.least.bore), shown(window_.most.bore)},
              {shown(window_.least.stroke), shown(window_.most.stroke)}, 7.5) {
    const describe::Evaluation& evaluation = assessment.evaluation();
    held_.cylinderCount = evaluation.inputValue(sheet.engine, in::cylinderCount);
    held_.rodLength = evaluation.inputValue(sheet.engine, in::rodLength);
    held_.offset = assessment(sheet.engine, out::netOffset).value;
    held_.speed = assessment(sheet.engine, out::workingSpeed).value;
  }

  void paint() {
    axes_.paintFrame();
    const double step = roundStep(shown(window_.most.bore) - shown(window_.least.bore), 5.0);
    axes_.ticksAcross(step);
    axes_.ticksUp(roundStep(shown(window_.most.stroke) - shown(window_.least.stroke), 5.0));
    // Words come after all lines, so that none strikes them.
    paintDisplacements();
    paintPistonSpeed();
    labelDisplacements();
    for (const sheet::Column& column : sheet_.columns) {
      if (column.engine != sheet_.engine) paintEngine(column);
    }
    paintEngine(*std::ranges::find(sheet_.columns, sheet_.engine, &sheet::Column::engine));
  }

 private:
  double shown(double length) const { return toShown(style_, Kind::Length, length); }

  QPolygonF lineOfDisplacement(double displacement) const {
    const Eigen::ArrayXd bores =
        Eigen::ArrayXd::LinSpaced(60, window_.least.bore, window_.most.bore);
    const Eigen::ArrayXd strokes = tradeoff::strokesForDisplacement(bores, displacement, held_);
    QPolygonF points;
    for (Eigen::Index i = 0; i < bores.size(); ++i) {
      if (strokes[i] > 0.0) points.append(axes_.at(shown(bores[i]), shown(strokes[i])));
    }
    return points;
  }

  double displacementAt(const Pair& pair) const {
    return std::numbers::pi / 4.0 * pair.bore * pair.bore * pair.stroke * held_.cylinderCount;
  }

  /// A line of equal displacement, and what it is called.
  struct Level {
    QPolygonF line;
    QString text;
    bool ofClass = false;
  };

  std::vector<Level> levels() const {
    std::vector<Level> levels;
    if (const auto limit = classLimit()) {
      levels.push_back(
          {lineOfDisplacement(*limit), fromCore(style_.number(Kind::Volume, *limit, 0)), true});
    }
    const double from = toShown(style_, Kind::Volume, displacementAt(window_.least));
    const double to = toShown(style_, Kind::Volume, displacementAt(window_.most));
    const double step = roundStep(to - from, 9.0);
    const double limit = toShown(style_, Kind::Volume, classLimit().value_or(0.0));
    for (double level = std::ceil(from / step) * step; level < to; level += step) {
      if (std::abs(level - limit) < 1e-6 * step) continue;
      levels.push_back(
          {lineOfDisplacement(fromShown(style_, Kind::Volume, level)), axes_.number(level, step)});
    }
    return levels;
  }

  void paintDisplacements() {
    for (const Level& level : levels()) {
      axes_.curve(level.line, level.ofClass ? draft_.heavy() : draft_.narrow());
    }
  }

  void labelDisplacements() {
    for (const Level& level : levels()) label(level.line, level.text, level.ofClass);
  }

  std::optional<double> classLimit() const {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!evaluation.inputStands(sheet_.engine, in::classLimit)) return std::nullopt;
    return evaluation.inputValue(sheet_.engine, in::classLimit);
  }

  /// Where the curve comes into the frame from above, or leaves it at the right.
  void label(const QPolygonF& line, const QString& text, bool bold = false) {
    const QRectF& frame = axes_.frame();
    const double high = frame.top() + draft_.textHeight() / 2.0 + draft_.mm(0.4);
    const double right = frame.right() - draft_.textWidth(text, bold) / 2.0 - draft_.mm(1.2);
    for (qsizetype i = 1; i < line.size(); ++i) {
      const bool down = line[i - 1].y() < high && line[i].y() >= high;
      const bool across = line[i - 1].x() < right && line[i].x() >= right && line[i].y() >= high;
      if (!down && !across) continue;
      const bool inside = line[i].x() > frame.left() + draft_.textWidth(text, bold) / 2.0 &&
                          line[i].x() <= right + draft_.mm(1.0) &&
                          line[i].y() < frame.bottom() - draft_.mm(2.0);
      if (inside) {
        labelAt(down ? QPointF(line[i].x(), high) : QPointF(right, line[i].y()), text, bold);
      }
      return;
    }
  }

  /// Only where no other label stands.
  void labelAt(QPointF centre, const QString& text, bool bold) {
    const double width = draft_.textWidth(text, bold) + draft_.mm(2.0);
    const QRectF box(centre.x() - width / 2.0, centre.y() - draft_.textHeight() / 2.0, width,
                     draft_.textHeight());
    if (std::ranges::any_of(labels_, [&](const QRectF& it) { return it.intersects(box); })) return;
    labels_.push_back(box);
    draft_.label(centre, text, bold);
  }

  void paintPistonSpeed() {
    const describe::Evaluation& evaluation = assessment_.evaluation();
    if (!evaluation.inputStands(sheet_.engine, in::meanPistonSpeedLimit)) return;
    if (assessment_(sheet_.engine, out::workingSpeed).state != State::Value) return;
    const double limit = evaluation.inputValue(sheet_.engine, in::meanPistonSpeedLimit);
    const double stroke = tradeoff::strokeForPistonSpeed(limit, held_);
    if (stroke <= window_.least.stroke || stroke >= window_.most.stroke) return;
    const QPointF left = axes_.at(shown(window_.least.bore), shown(stroke));
    const QPointF right = axes_.at(shown(window_.most.bore), shown(stroke));
    draft_.line(left, right, draft_.centre());
    const QString text = fromCore(style_.text(Kind::Velocity, limit, 0));
    const QPointF place = left + QPointF(draft_.mm(1.2), -draft_.mm(0.4));
    const QRectF box(place - QPointF(0.0, draft_.textHeight()),
                     QSizeF(draft_.textWidth(text), draft_.textHeight()));
    draft_.painter().fillRect(box, draft_.ink().paper);
    labels_.push_back(draft_.text(place, Qt::AlignLeft | Qt::AlignBottom, text));
  }

  void paintEngine(const sheet::Column& column) {
    const std::optional<Pair> pair = pairOf(assessment_, column.engine);
    if (!pair || !window_.holds(*pair)) return;
    const QPointF at = axes_.at(shown(pair->bore), shown(pair->stroke));
    const bool own = column.engine == sheet_.engine;
    if (own || !coversAnother(column.engine, *pair)) nameEngine(at, fromCore(column.heading), own);
    draft_.circle(at, draft_.mm(kDot), draft_.wide(), own ? draft_.ink().line : draft_.ink().paper);
  }

  /// Left of its point, which is painted after it.
  void nameEngine(QPointF at, const QString& text, bool own) {
    const QPointF place = at - QPointF(draft_.mm(kDot + 0.8), 0.0);
    const QSizeF size(draft_.textWidth(text, own), draft_.textHeight());
    QRectF box(place - QPointF(size.width(), size.height() / 2.0), size);
    box.setRight(at.x());
    draft_.painter().fillRect(box, draft_.ink().paper);
    draft_.text(place, Qt::AlignRight, text, own);
  }

  /// The same bore and stroke as the engine of the sheet: one name is enough.
  bool coversAnother(int engine, const Pair& pair) const {
    const std::optional<Pair> own = pairOf(assessment_, sheet_.engine);
    return engine != sheet_.engine && own && own->bore == pair.bore && own->stroke == pair.stroke;
  }

  Drafting& draft_;
  const assess::Assessment& assessment_;
  const units::Style& style_;
  const sheet::Sheet& sheet_;
  MapWindow window_;
  Axes axes_;
  tradeoff::Held held_;
  std::vector<QRectF> labels_;  ///< where words stand already
};

}  // namespace

void paintAccelerationPlot(Drafting& draft, const QRectF& area,
                           const assess::Assessment& assessment, const units::Style& style,
                           const sheet::Sheet& sheet) {
  static const motion::CrankAngles angles(1, kSteps);
  const units::Unit& shown = style.group[Kind::Acceleration];
  const std::vector<Mover> movers = moversOnSheet(assessment, sheet);
  const QString title = QStringLiteral("Acceleration downwards, %1").arg(fromCore(shown.name));
  if (movers.empty()) return sayNothingToDraw(draft, area, title);

  std::vector<Eigen::ArrayXd> curves;
  Range up{0.0, 0.0};
  for (const Mover& mover : movers) {
    motion::MotionCurves motion;
    motion::fillCurves(mover.mechanism, mover.speed, angles, motion);
    curves.push_back(-motion.acceleration * shown.divide / shown.multiply);
    up.least = std::min(up.least, curves.back().minCoeff());
    up.most = std::max(up.most, curves.back().maxCoeff());
  }
  const double step = roundStep(up.span(), 4.0);
  const double margin = 0.06 * up.span();
  up = {up.least - margin, up.most + margin};
  const double numbers =
      (draft.textWidth(fromCore(style.number(Kind::Ratio, -std::floor(up.most / step) * step, 0))) /
       draft.mm(1.0)) +
      1.2;
  Axes axes(draft, area, style, title, {0.0, 360.0}, up, numbers);
  axes.paintFrame();
  axes.ticksUp(step);
  for (int angle = 0; angle <= 360; angle += 90) {
    axes.tickAcross(angle, QString::number(angle) + QChar(0x00B0));
  }
  draft.line(axes.at(0.0, 0.0), axes.at(360.0, 0.0), draft.narrow());
  for (std::size_t i = 0; i < movers.size(); ++i) {
    QPolygonF points;
    for (Eigen::Index j = 0; j < angles.size(); ++j) {
      points.append(axes.at(360.0 * static_cast<double>(j) / kSteps, curves[i][j]));
    }
    axes.curve(points, penOf(draft, assessment.project(), movers[i].engine));
  }
  paintKey(draft, assessment, movers, style, axes.frame());
}

void paintBoreStrokePlot(Drafting& draft, const QRectF& area, const assess::Assessment& assessment,
                         const units::Style& style, const sheet::Sheet& sheet) {
  const QString unit = fromCore(style.unit(Kind::Length));
  const QString heading = QStringLiteral("Stroke over bore, %1; curves: %2")
                              .arg(unit, fromCore(style.unit(Kind::Volume)));
  const bool known = sheet.engine >= 0 &&
                     assessment.evaluation().inputStands(sheet.engine, in::cylinderCount) &&
                     pairOf(assessment, sheet.engine).has_value() &&
                     assessment(sheet.engine, out::netOffset).state == State::Value;
  if (!known) return sayNothingToDraw(draft, area, heading);
  BoreStrokePlot(draft, area, assessment, style, sheet, heading).paint();
}

}  // namespace strokewright::ui
