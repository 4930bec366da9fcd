#include "ui/drawings/drafting.h"

#include <QFontMetricsF>
#include <QLineF>
#include <QPaintDevice>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr double kArrowLength = 2.2;  // [mm], with an opening of 15°
constexpr double kArrowHalfWidth = 0.29;
constexpr double kTextGap = 0.7;                // [mm] between text and line
constexpr double kShift = 0.4;                  // [mm] of a text, that is hardly seen
constexpr double kBeyond = kToText - kTextGap;  // [mm] extension lines run past the dimension line

QColor mixed(const QColor& a, const QColor& b, double share) {
  const auto mix = [&](int from, int to) {
    return static_cast<int>(std::lround(from + (to - from) * share));
  };
  return QColor(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue()));
}

}  // namespace

double millimetresOn(const QPaintDevice& device) {
  return device.logicalDpiY() / kMillimetresPerInch;
}

DrawingInk DrawingInk::onPaper() {
  return {.line = Qt::black,
          .faint = QColor(0x50, 0x50, 0x50),
          .hatch = QColor(0x70, 0x70, 0x70),
          .paper = Qt::white,
          .fill = QColor(0xee, 0xee, 0xee),
          .accent = Qt::black};
}

DrawingInk DrawingInk::of(const QPalette& palette) {
  const QColor line = palette.color(QPalette::WindowText);
  const QColor paper = palette.color(QPalette::Window);
  return {.line = line,
          .faint = mixed(line, paper, 0.35),
          .hatch = mixed(line, paper, 0.55),
          .paper = paper,
          .fill = mixed(paper, line, 0.06),
          .accent = ui::ink::accent(palette)};
}

Medium Medium::screen(const QPaintDevice& device, const QFont& font, const QPalette& palette) {
  const double millimetre = millimetresOn(device);
  const double points =
      font.pointSizeF() > 0.0 ? font.pointSizeF() : font.pixelSize() * 72.0 / device.logicalDpiY();
  return {.millimetre = millimetre,
          .narrow = 1.0 / millimetre,
          .points = std::max(points, 9.0),
          .font = font,
          .ink = DrawingInk::of(palette)};
}

Drafting::Drafting(QPainter& painter, Medium medium)
    : painter_(painter), medium_(std::move(medium)) {
  painter_.setFont(font());
}

QPen Drafting::wide() const {
  return QPen(ink().line, mm(2.0 * medium_.narrow), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen Drafting::heavy() const {
  return QPen(ink().line, mm(3.5 * medium_.narrow), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen Drafting::narrow() const {
  return QPen(ink().faint, mm(medium_.narrow), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

QPen Drafting::centre() const {
  QPen pen = narrow();
  pen.setDashPattern({16.0, 3.0, 1.0, 3.0});
  return pen;
}

QPen Drafting::parting() const {
  QPen pen = wide();
  pen.setDashPattern({4.0, 2.0});
  return pen;
}

QPen Drafting::assumed() const {
  QPen pen = narrow();
  pen.setDashPattern({10.0, 2.5, 1.0, 2.5, 1.0, 2.5});
  return pen;
}

void Drafting::hatch(const QPainterPath& area, double spacing, bool falling) {
  const QRectF box = area.boundingRect();
  if (box.isEmpty()) return;
  painter_.save();
  painter_.setClipPath(area, Qt::IntersectClip);
  painter_.setPen(QPen(ink().hatch, mm(medium_.narrow), Qt::SolidLine, Qt::FlatCap));
  const double step = mm(spacing) * std::sqrt(2.0);
  // Lines stand on a common grid, so that the two halves of a part are hatched alike.
  const double height = box.height();
  QVector<QLineF> lines;
  for (double x = std::floor((box.left() - height) / step) * step; x < box.right(); x += step) {
    const double shift = std::fmod(falling ? -box.top() : box.bottom(), step);
    const QPointF foot(x + shift, falling ? box.top() : box.bottom());
    lines.append(QLineF(foot, foot + QPointF(height, falling ? height : -height)));
  }
  painter_.drawLines(lines);
  painter_.restore();
}

void Drafting::hatch(const QRectF& area, double spacing, bool falling) {
  QPainterPath path;
  path.addRect(area);
  hatch(path, spacing, falling);
}

void Drafting::line(QPointF from, QPointF to, const QPen& pen) {
  painter_.setPen(pen);
  painter_.drawLine(from, to);
}

void Drafting::outline(const QPainterPath& path, const QPen& pen) {
  painter_.strokePath(path, pen);
}

void Drafting::rectangle(const QRectF& rectangle, const QPen& pen) {
  painter_.setPen(pen);
  painter_.setBrush(Qt::NoBrush);
  painter_.drawRect(rectangle);
}

void Drafting::circle(QPointF centre, double radius, const QPen& pen, const QBrush& brush) {
  painter_.setPen(pen);
  painter_.setBrush(brush);
  painter_.drawEllipse(centre, radius, radius);
}

void Drafting::cross(QPointF centre, double reach) {
  line(centre - QPointF(reach, 0.0), centre + QPointF(reach, 0.0), this->centre());
  line(centre - QPointF(0.0, reach), centre + QPointF(0.0, reach), this->centre());
}

QFont Drafting::font(bool bold) const { return font(medium_.points, bold); }

QFont Drafting::font(double points, bool bold) const {
  QFont font = medium_.font;
  font.setPointSizeF(points);
  font.setBold(bold);
  return font;
}

double Drafting::textWidth(const QString& text, bool bold) const {
  return QFontMetricsF(font(bold), painter_.device()).horizontalAdvance(text);
}

double Drafting::textHeight() const { return QFontMetricsF(font(), painter_.device()).height(); }

QRectF Drafting::text(QPointF at, Qt::Alignment alignment, const QString& text, bool bold,
                      const QColor& colour) {
  const QFontMetricsF metrics(font(bold), painter_.device());
  QRectF box(at, QSizeF(metrics.horizontalAdvance(text), metrics.height()));
  if (alignment & Qt::AlignRight) box.translate(-box.width(), 0.0);
  if (alignment & Qt::AlignHCenter) box.translate(-box.width() / 2.0, 0.0);
  if (alignment & Qt::AlignBottom) {
    box.translate(0.0, -box.height());
  } else if (!(alignment & Qt::AlignTop)) {
    box.translate(0.0, -box.height() / 2.0);
  }
  painter_.setFont(font(bold));
  painter_.setPen(colour.isValid() ? colour : ink().line);
  painter_.drawText(QPointF(box.left(), box.top() + metrics.ascent()), text);
  return box;
}

QRectF Drafting::label(QPointF centre, const QString& text, bool bold) {
  const double width = textWidth(text, bold) + mm(1.6);
  const double height = textHeight();
  const QRectF box(centre.x() - width / 2.0, centre.y() - height / 2.0, width, height);
  painter_.fillRect(box, ink().paper);
  this->text(centre, Qt::AlignHCenter, text, bold);
  return box;
}

void Drafting::arrow(QPointF tip, QPointF direction, const QColor& colour) {
  const QPointF across(-direction.y(), direction.x());
  const QPointF foot = tip - direction * mm(kArrowLength);
  const QPointF side = across * mm(kArrowHalfWidth);
  painter_.setPen(Qt::NoPen);
  painter_.setBrush(colour);
  painter_.drawPolygon(QPolygonF({tip, foot + side, foot - side}));
}

QRectF Drafting::dimension(const Dimension& it) {
  const QLineF measured(it.from, it.to);
  const double length = measured.length();
  // Without a length the direction is downwards, so that a gap closed to nothing is still shown.
  const QPointF along = length > 0.0 ? (it.to - it.from) / length : QPointF(0.0, 1.0);
  const QPointF left(along.y(), -along.x());
  const QPointF from = it.from + left * it.offset;
  const QPointF to = it.to + left * it.offset;
  const QColor colour = it.colour.isValid() ? it.colour : ink().faint;
  QPen pen = narrow();
  pen.setColor(colour);

  const QPointF beyond = left * (it.offset < 0.0 ? -mm(kBeyond) : mm(kBeyond));
  if (it.offset != 0.0) {
    line(it.from, from + beyond, pen);
    line(it.to, to + beyond, pen);
  }
  const bool roomy = length > mm(2.2 * kArrowLength);
  const QPointF tail = along * mm(2.0 * kArrowLength);
  const double over = it.reading == Reading::Beyond ? roomAlong(it.text, it.bold) : 0.0;
  const QPointF end = to + along * over;
  line(roomy ? from : from - tail, roomy || over > mm(2.0 * kArrowLength) ? end : to + tail, pen);
  arrow(from, roomy ? -along : along, colour);
  arrow(to, roomy ? along : -along, colour);

  const QPointF middle = (from + to) / 2.0;
  const QRectF box = QRectF(from, to).normalized().adjusted(-mm(1.5), -mm(1.0), mm(1.5), mm(1.0));
  switch (it.reading) {
    case Reading::Along:
      return box | textAlong(middle, along, it);
    case Reading::Beyond:
      return box | textAlong((to + end) / 2.0, along, it);
    case Reading::Level:
      break;
  }
  return box | textBeside(middle, left, it);
}

double Drafting::roomAlong(const QString& text, bool bold) const {
  return textWidth(text, bold) + mm(2.0 * kTextGap);
}

QRectF Drafting::textAlong(QPointF middle, QPointF direction, const Dimension& it) {
  double angle = std::atan2(direction.y(), direction.x()) * 180.0 / std::numbers::pi;
  if (angle > 89.0) angle -= 180.0;  // read from below or from the right
  if (angle <= -91.0) angle += 180.0;
  const QFontMetricsF metrics(font(it.bold), painter_.device());
  const double width = metrics.horizontalAdvance(it.text);
  painter_.save();
  painter_.translate(middle);
  painter_.rotate(angle);
  painter_.setFont(font(it.bold));
  painter_.setPen(it.colour.isValid() ? it.colour : ink().line);
  painter_.drawText(QPointF(-width / 2.0, -metrics.descent() - mm(kTextGap) * 0.4), it.text);
  painter_.restore();
  QTransform turn;
  turn.translate(middle.x(), middle.y());
  turn.rotate(angle);
  return turn.mapRect(QRectF(-width / 2.0, -metrics.height(), width, metrics.height()));
}

QRectF Drafting::textBeside(QPointF middle, QPointF side, const Dimension& it) {
  const bool toTheLeft = side.x() * (it.offset < 0.0 ? -1.0 : 1.0) < 0.0;
  const QColor colour = it.colour.isValid() ? it.colour : ink().line;
  const QPointF at = middle + QPointF(toTheLeft ? -mm(kToText) : mm(kToText), it.textShift);
  if (std::abs(it.textShift) > mm(kShift)) {
    QPen pen = narrow();
    pen.setColor(it.colour.isValid() ? it.colour : ink().faint);
    line(middle, at - QPointF(toTheLeft ? -mm(0.3) : mm(0.3), 0.0), pen);
  }
  return text(at, toTheLeft ? Qt::AlignRight : Qt::AlignLeft, it.text, it.bold, colour);
}

QRectF Drafting::leader(QPointF tip, QPointF end, const QString& words, bool bold) {
  const QLineF run(end, tip);
  if (run.length() <= 0.0) return {};
  const bool toTheLeft = end.x() < tip.x();
  line(end, tip, narrow());
  arrow(tip, (tip - end) / run.length(), ink().faint);
  const QPointF at = end + QPointF(toTheLeft ? -mm(kTextGap) : mm(kTextGap), 0.0);
  return text(at, toTheLeft ? Qt::AlignRight : Qt::AlignLeft, words, bold);
}

}  // namespace strokewright::ui
