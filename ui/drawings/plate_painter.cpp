#include "ui/drawings/plate_painter.h"

#include <QLineF>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

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
      : draft_(draft),
        middle_(middle),
        outline_(outline),
        made_{outline.stretches().front().from, outline.stretches().back().to},
        lies_(lies),
        style_(style) {}

  void paint() {
    for (const plate::Stretch& metal : outline_.stretches()) paintMetal(metal);
    paintAxis();
    for (const double parting : outline_.partings) paintParting(parting);
    for (const plate::Gap& gap : outline_.gaps) nameGap(gap);
    for (const plate::Hole& hole : outline_.holes) paintHole(hole);
    for (std::size_t i = 0; i < outline_.holes.size(); ++i) numberHole(i);
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

  QRectF boxOf(const plate::Stretch& metal) const {
    return QRectF(at(metal.from, outline_.lower()), at(metal.to, outline_.upper())).normalized();
  }
  QRectF box() const { return boxOf(made_); }

  /// At an end that is a gap's the corners are square, and its place is said.
  void paintMetal(const plate::Stretch& metal) {
    QPainterPath edge;
    edge.addRoundedRect(boxOf({outline_.left(), outline_.right()}), scaled(outline_.corner),
                        scaled(outline_.corner));
    if (!outline_.gaps.empty()) {
      QPainterPath here;
      here.addRect(boxOf(metal));
      edge = edge.intersected(here);
      edge.closeSubpath();
    }
    draft_.outline(edge, draft_.wide());
    for (const double end : {metal.from, metal.to}) {
      if (outline_.endsInGap(end)) sayPlace(end);
    }
  }

  void nameGap(const plate::Gap& gap) {
    written_.push_back(
        draft_.label(at((gap.from + gap.to) / 2.0, outline_.across), fromCore(gap.name)));
  }

  /// The line of the cylinder axes.
  void paintAxis() {
    draft_.line(at(outline_.left(), 0.0), at(outline_.right(), 0.0), draft_.centre());
  }

  void paintParting(double along) {
    draft_.line(at(along, outline_.lower()), at(along, outline_.upper()), draft_.parting());
    sayPlace(along);
  }

  /// From the axis of the first cylinder, beside the edge and along the line.
  void sayPlace(double along) {
    const QPointF end = at(along, outline_.upper());
    QPainter& painter = draft_.painter();
    painter.save();
    painter.translate(end);
    if (upright()) painter.rotate(-90.0);
    const double past = std::max(mm(kToLine), draft_.textHeight());
    draft_.line({0.0, 0.0}, {0.0, -past}, draft_.narrow());
    const QRectF place =
        draft_.text({mm(0.6), -mm(0.3)}, Qt::AlignLeft | Qt::AlignBottom, said(along));
    painter.restore();
    if (!upright()) aboveEdge_.push_back(place.translated(end));
    cuts_.push_back(upright() ? end.y() : end.x());
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

  /// On paper of its own, so that it reads over centre lines. Where the drawing is so small that
  /// the usual place lies over something, at the next one that does not; further from the hole than
  /// beside it, a line leads there.
  void numberHole(std::size_t i) {
    const plate::Hole& hole = outline_.holes[i];
    const QString number = QString::number(i + 1);
    const QString name = fromCore(hole.name);
    const bool misleads = hole.isBore && name != QStringLiteral("bore ") + number;
    const QString text = misleads ? number + QChar(u' ') + name : number;
    const QSizeF size(draft_.textWidth(text, true) + mm(kForNumber), draft_.textHeight());
    const double room = std::hypot(size.width(), size.height()) / 2.0;
    const plate::Spot usual = plate::spotForNumber(outline_, hole, room / scaled(1.0));
    QRectF box({}, size);
    box.moveCenter(at(usual.along, usual.across));
    const QPointF centre = at(hole.along, hole.across);
    double least = liesOver(box);
    QLineF leader;
    if (least > 0.0 && !hole.isBore) {
      constexpr int kRings = 8;
      constexpr int kAround = 16;
      const QPointF inwards = middle_ - centre;
      const double first = std::atan2(inwards.y(), inwards.x());
      for (int place = 0; place < kRings * kAround && least > 0.0; ++place) {
        const int ring = place / kAround;
        const int turn = place % kAround;  // to either side in turn, away from the edge first
        const double angle =
            first + (turn % 2 == 0 ? 1 : -1) * ((turn + 1) / 2) * 2.0 * std::numbers::pi / kAround;
        const QPointF way(std::cos(angle), std::sin(angle));
        const double itself =
            0.5 * (size.width() * std::abs(way.x()) + size.height() * std::abs(way.y()));
        const double radius = 0.5 * scaled(hole.diameter) + mm(draft_.medium().narrow);
        QRectF tried({}, size);
        tried.moveCenter(centre + (radius + itself + 0.4 * ring * size.height()) * way);
        const QLineF led = ring == 0 ? QLineF() : QLineF(centre + radius * way, tried.center());
        const double over = liesOver(tried, led) + (ring == 0 ? besideAnother(tried, i) : 0.0);
        if (over >= least) continue;
        least = over;
        box = tried;
        leader = led;
      }
    }
    if (!leader.isNull()) draft_.line(leader.p1(), leader.p2(), draft_.narrow());
    draft_.label(box.center(), text, true);
    written_.push_back(box);
  }

  /// How much of what stands there a number would lie over, its leader with it; 0: nothing.
  double liesOver(const QRectF& box, const QLineF& leader = {}) const {
    constexpr double kSmall = 0.1;  // a line that others go on from
    double over = this->box().contains(box) ? 0.0 : 1.0;
    QPainterPath led(leader.p1());
    led.lineTo(leader.p2());
    const double clear = leader.isNull() ? 0.0 : 0.3 * box.height();  // numbers read as one else
    for (const QRectF& other : written_) {
      const QRectF around = other.adjusted(-clear, 0.0, clear, 0.0);
      if (around.intersects(box) || (!leader.isNull() && led.intersects(other))) over += 1.0;
    }
    for (const plate::Hole& hole : outline_.holes) {
      const QPointF centre = at(hole.along, hole.across);
      const double radius = scaled(hole.diameter) / 2.0;
      if (nearest(box, centre) <= radius && furthest(box, centre) >= radius) over += 1.0;
    }
    for (const double cut : cuts_) over += isMet(box, cut, !upright()) ? 1.0 : 0.0;
    const QPointF axis = at(0.0, 0.0);
    const bool onAxis = isMet(box, upright() ? axis.x() : axis.y(), upright());
    return over + (onAxis ? kSmall : 0.0);
  }

  /// By a line there, upright or level.
  static bool isMet(const QRectF& box, double place, bool isUpright) {
    return isUpright ? box.left() <= place && place <= box.right()
                     : box.top() <= place && place <= box.bottom();
  }

  /// Without a leader, so near to another hole that it may be taken for that one's.
  double besideAnother(const QRectF& box, std::size_t own) const {
    for (std::size_t i = 0; i < outline_.holes.size(); ++i) {
      const plate::Hole& hole = outline_.holes[i];
      if (i == own || hole.isBore) continue;
      const double away = nearest(box, at(hole.along, hole.across)) - 0.5 * scaled(hole.diameter);
      if (away < 0.4 * draft_.textHeight()) return 0.5;
    }
    return 0.0;
  }

  static double nearest(const QRectF& box, QPointF to) {
    return std::hypot(std::max({box.left() - to.x(), 0.0, to.x() - box.right()}),
                      std::max({box.top() - to.y(), 0.0, to.y() - box.bottom()}));
  }
  static double furthest(const QRectF& box, QPointF from) {
    return std::hypot(std::max(from.x() - box.left(), box.right() - from.x()),
                      std::max(from.y() - box.top(), box.bottom() - from.y()));
  }

  void dimensionOverall() {
    const QRectF edge = box();
    const double length = made_.to - made_.from;
    const QString across = said(upright() ? outline_.width : length);
    const QString up = said(upright() ? length : outline_.width);
    draft_.dimension(
        {.from = edge.topLeft(), .to = edge.topRight(), .offset = toNextLine(), .text = across});
    draft_.dimension(
        {.from = edge.bottomLeft(), .to = edge.topLeft(), .offset = toNextLine(), .text = up});
  }

  /// From two edges to the axis of the first cylinder, which all places are counted from.
  void dimensionAxis() {
    const QRectF edge = box();
    const QPointF axis = at(0.0, 0.0);
    const double across = upright() ? outline_.upper() : -made_.from;
    const double up = upright() ? -made_.from : -outline_.lower();
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
    if (outline_.endsInGap(made_.to)) return;
    const double inwards = (1.0 - std::numbers::sqrt2 / 2.0) * scaled(outline_.corner);
    const double above = std::max(mm(3.0), 0.7 * draft_.textHeight());
    const QString text = QStringLiteral("R ") + said(outline_.corner);
    const double left = box().right() - mm(7.0) - draft_.textWidth(text);
    const bool taken =
        std::ranges::any_of(aboveEdge_, [&](const QRectF& other) { return other.right() > left; });
    const double down = taken ? -1.0 : 1.0;  // at the corner below
    const QPointF corner = taken ? box().bottomRight() : box().topRight();
    draft_.leader(corner + QPointF(-inwards, down * inwards),
                  corner + QPointF(-mm(6.0), -down * above), text);
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
  plate::Stretch made_;  ///< from the first plate to the last
  PlateLies lies_;
  const units::Style& style_;
  std::vector<QRectF> written_;    ///< on the plate
  std::vector<QRectF> aboveEdge_;  ///< places of partings, beside the dimensions
  std::vector<double> cuts_;       ///< [device units] along the crankshaft
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
