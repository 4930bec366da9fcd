#include "ui/drawings/plate_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

constexpr double kMillimetres = 1000.0;  // in a metre
constexpr double kForDimensions = 11.0;  // [mm] beside the edge, two lines of them
constexpr double kForWords = 6.5;        // [mm] beside the thrust side
constexpr double kForNothing = 1.0;      // [mm] beside the fourth side
constexpr double kToLine = 3.8;          // [mm] from the edge to the first dimension line
constexpr double kToNextLine = 7.8;      // [mm] from the edge to the second
constexpr double kBeyond = 2.5;          // [mm] centre lines run past a circle
constexpr double kForNumber = 1.6;       // [mm] paper beside a number

class PlatePainter {
 public:
  PlatePainter(Drafting& draft, QPointF middle, const plate::Outline& outline, PlateLies lies,
               const units::Style& style)
      : draft_(draft), middle_(middle), outline_(outline), lies_(lies), style_(style) {}

  void paint() {
    QPainterPath edge;
    edge.addRoundedRect(box(), scaled(outline_.corner), scaled(outline_.corner));
    draft_.outline(edge, draft_.wide());
    paintAxis();
    for (const double parting : outline_.partings) paintParting(parting);
    for (const plate::Hole& hole : outline_.holes) paintHole(hole);
    for (std::size_t i = 0; i < outline_.holes.size(); ++i) numberHole(outline_.holes[i], i + 1);
    dimensionOverall();
    dimensionAxis();
    nameCorner();
    nameThrustSide();
  }

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }
  double scaled(double metres) const { return mm(kMillimetres * metres); }
  bool upright() const { return lies_ == PlateLies::Upright; }

  /// Turned, never mirrored.
  QPointF at(double along, double across) const {
    const double z = scaled(along - outline_.along);
    const double x = scaled(across - outline_.across);
    return middle_ + (upright() ? QPointF(-x, -z) : QPointF(z, -x));
  }

  QRectF box() const {
    return QRectF(at(outline_.left(), outline_.lower()), at(outline_.right(), outline_.upper()))
        .normalized();
  }

  /// The line of the cylinder axes.
  void paintAxis() {
    draft_.line(at(outline_.left(), 0.0), at(outline_.right(), 0.0), draft_.centre());
  }

  /// With its place from the axis of the first cylinder, beside the edge and along the line.
  void paintParting(double along) {
    const QPointF end = at(along, outline_.upper());
    draft_.line(at(along, outline_.lower()), end, draft_.parting());
    QPainter& painter = draft_.painter();
    painter.save();
    painter.translate(end);
    if (upright()) painter.rotate(-90.0);
    const double past = std::max(mm(kToLine), draft_.textHeight());
    draft_.line({0.0, 0.0}, {0.0, -past}, draft_.narrow());
    draft_.text({mm(0.6), -mm(0.3)}, Qt::AlignLeft | Qt::AlignBottom, said(along));
    painter.restore();
  }

  void paintHole(const plate::Hole& hole) {
    const QPointF centre = at(hole.along, hole.across);
    const double radius = scaled(hole.diameter) / 2.0;
    const double reach = hole.diameter / 2.0 + kBeyond / kMillimetres;
    draft_.line(at(hole.along, hole.across - reach), at(hole.along, hole.across + reach),
                draft_.centre());
    if (hole.across != 0.0) {  // the others lie on the line of the cylinder axes
      draft_.line(at(hole.along - reach, hole.across), at(hole.along + reach, hole.across),
                  draft_.centre());
    }
    draft_.circle(centre, radius, draft_.wide());
  }

  /// On paper of its own, so that it reads over centre lines.
  void numberHole(const plate::Hole& hole, std::size_t number) {
    const QString text = QString::number(number);
    const double room =
        std::hypot(draft_.textWidth(text, true) + mm(kForNumber), draft_.textHeight()) / 2.0;
    const plate::Spot spot = plate::spotForNumber(outline_, hole, room / scaled(1.0));
    draft_.label(at(spot.along, spot.across), text, true);
  }

  void dimensionOverall() {
    const QRectF edge = box();
    const QString across = said(upright() ? outline_.width : outline_.length);
    const QString up = said(upright() ? outline_.length : outline_.width);
    draft_.dimension(
        {.from = edge.topLeft(), .to = edge.topRight(), .offset = toNextLine(), .text = across});
    draft_.dimension(
        {.from = edge.bottomLeft(), .to = edge.topLeft(), .offset = toNextLine(), .text = up});
  }

  /// From two edges to the axis of the first cylinder, which all places are counted from.
  void dimensionAxis() {
    const QRectF edge = box();
    const QPointF axis = at(0.0, 0.0);
    const double across = upright() ? outline_.upper() : -outline_.left();
    const double up = upright() ? -outline_.left() : -outline_.lower();
    if (across > 0.0) {
      draft_.dimension({.from = edge.topLeft(),
                        .to = {axis.x(), edge.top()},
                        .offset = toLine(),
                        .text = said(across)});
    }
    if (up > 0.0) {
      draft_.dimension({.from = edge.bottomLeft(),
                        .to = {edge.left(), axis.y()},
                        .offset = toLine(),
                        .text = said(up)});
    }
  }

  void nameCorner() {
    const double inwards = (1.0 - std::numbers::sqrt2 / 2.0) * scaled(outline_.corner);
    const double above = std::max(mm(3.0), 0.7 * draft_.textHeight());
    const QPointF arc = box().topRight() + QPointF(-inwards, inwards);
    draft_.leader(arc, box().topRight() + QPointF(-mm(6.0), -above),
                  QStringLiteral("R ") + said(outline_.corner));
  }

  /// To the first dimension line from the edge; on a small screen the text needs the room.
  double toLine() const { return std::max(mm(kToLine), 0.4 * draft_.textHeight()); }
  double toNextLine() const {
    return toLine() + std::max(mm(kToNextLine - kToLine), 1.15 * draft_.textHeight());
  }

  QString said(double length) const { return fromCore(style_.number(units::Kind::Length, length)); }

  void nameThrustSide() {
    const QRectF edge = box();
    const QString words = QStringLiteral("thrust side");
    QPainter& painter = draft_.painter();
    painter.save();
    if (upright()) {
      painter.translate(edge.right() + mm(2.0), edge.center().y());
      painter.rotate(90.0);
    } else {
      painter.translate(edge.center().x(), edge.bottom() + mm(2.0));
    }
    draft_.text(QPointF(0.0, upright() ? -mm(2.0) : 0.0), Qt::AlignHCenter | Qt::AlignTop, words,
                false, draft_.ink().faint);
    painter.restore();
  }

  Drafting& draft_;
  QPointF middle_;
  const plate::Outline& outline_;
  PlateLies lies_;
  const units::Style& style_;
};

}  // namespace

QMarginsF plateMargins(PlateLies lies) {
  const bool upright = lies == PlateLies::Upright;
  return {kForDimensions, kForDimensions, upright ? kForWords : kForNothing,
          upright ? kForNothing : kForWords};
}

QSizeF plateRoom(const plate::Outline& outline, PlateLies lies) {
  const QSizeF plate(kMillimetres * outline.length, kMillimetres * outline.width);
  return (lies == PlateLies::Upright ? plate.transposed() : plate).grownBy(plateMargins(lies));
}

void paintPlate(Drafting& draft, QPointF middle, const plate::Outline& outline, PlateLies lies,
                const units::Style& style) {
  PlatePainter(draft, middle, outline, lies, style).paint();
}

}  // namespace strokewright::ui
