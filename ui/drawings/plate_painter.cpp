#include "ui/drawings/plate_painter.h"

#include <QLineF>
#include <QStringList>
#include <QTransform>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "ui/document/taste.h"
#include "ui/drawings/boxes.h"

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
    dimensionOverall();
    dimensionAxis();
    for (const plate::Gap& gap : outline_.gaps) nameGap(gap);
    for (const plate::Hole& hole : outline_.holes) paintHole(hole);
    for (std::size_t i = 0; i < outline_.holes.size(); ++i) numberHole(i);
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
    const double corner = scaled(outline_.corner());
    edge.addRoundedRect(boxOf({outline_.left(), outline_.right()}), corner, corner);
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

  /// Within the gap, where it is narrow broken or turned; beside the edge where that is too wide.
  void nameGap(const plate::Gap& gap) {
    const QString name = fromCore(gap.name);
    const qsizetype colon = name.indexOf(QLatin1Char(':')) + 1;
    const QStringList broken = {name.left(colon), name.mid(colon).trimmed()};
    for (const double angle : {0.0, -90.0}) {
      for (const QStringList& lines : {QStringList(name), broken}) {
        const auto box = placeIn(boxOf({gap.from, gap.to}), sizeOf(lines, angle != 0.0));
        if (!box) continue;
        draft_.painter().fillRect(*box, draft_.ink().paper);
        write(*box, lines, angle);
        return;
      }
    }
    writeBeside((gap.from + gap.to) / 2.0, name, draft_.ink().line);
  }

  /// The place nearest to the middle of the room that lies over nothing.
  std::optional<QRectF> placeIn(const QRectF& room, QSizeF size) const {
    constexpr int kSteps = 12;
    const QSizeF slack = room.size() - size;
    if (slack.width() < 0.0 || slack.height() < 0.0) return std::nullopt;
    std::optional<QRectF> best;
    double least = HUGE_VAL;
    for (int i = 0; i <= kSteps; ++i) {
      for (int j = 0; j <= kSteps; ++j) {
        const QRectF tried(room.topLeft() + QPointF(slack.width() * i, slack.height() * j) / kSteps,
                           size);
        const double away = QLineF(tried.center(), room.center()).length();
        if (away >= least || !isClearOfMetal(tried)) continue;
        least = away;
        best = tried;
      }
    }
    return best;
  }

  /// Of the ends of plates, of holes with their centre lines, and of dimensions.
  bool isClearOfMetal(const QRectF& box) const {
    const auto meets = [&](const QRectF& other) { return other.intersects(box); };
    return std::ranges::none_of(dimensions_, meets) && std::ranges::none_of(written_, meets) &&
           std::ranges::none_of(cuts_, [&](double cut) { return isMet(box, cut, !upright()); }) &&
           std::ranges::none_of(outline_.holes, [&](const plate::Hole& hole) {
             const double reach = scaled(hole.diameter) / 2.0 + mm(kBeyond);
             return distance(box, at(hole.along, hole.across)) < reach;
           });
  }

  QSizeF sizeOf(const QStringList& lines, bool turned) const {
    double width = 0.0;
    for (const QString& line : lines) width = std::max(width, draft_.textWidth(line));
    const QSizeF size(width + mm(kForNumber),
                      draft_.textHeight() * static_cast<double>(lines.size()));
    return turned ? size.transposed() : size;
  }

  /// Lines about the middle of the box, turned by an angle [degrees].
  void write(const QRectF& box, const QStringList& lines, double angle, const QColor& colour = {}) {
    QPainter& painter = draft_.painter();
    painter.save();
    painter.translate(box.center());
    painter.rotate(angle);
    double y = -0.5 * draft_.textHeight() * static_cast<double>(lines.size());
    for (const QString& line : lines) {
      draft_.text({0.0, y}, Qt::AlignHCenter | Qt::AlignTop, line, false, colour);
      y += draft_.textHeight();
    }
    painter.restore();
    written_.push_back(box);
  }

  /// Beside the edge at the thrust side, no further along than the plate.
  QRectF boxBeside(double along, const QString& words) const {
    const QPointF edge = at(along, outline_.lower());
    const QRectF all = boxOf({outline_.left(), outline_.right()});
    const double away = mm(2.0) + draft_.textHeight() / 2.0;
    QRectF box({}, sizeOf({words}, upright()));
    box.moveCenter(edge + (upright() ? QPointF(away, 0.0) : QPointF(0.0, away)));
    if (upright()) {
      box.moveTop(std::max(std::min(box.top(), all.bottom() - box.height()), all.top()));
    } else {
      box.moveLeft(std::max(std::min(box.left(), all.right() - box.width()), all.left()));
    }
    return box;
  }

  void writeBeside(double along, const QString& words, const QColor& colour) {
    write(boxBeside(along, words), {words}, upright() ? 90.0 : 0.0, colour);
  }

  /// The line of the cylinder axes.
  void paintAxis() {
    for (const plate::Stretch& metal : outline_.stretches()) {
      draft_.line(at(metal.from, 0.0), at(metal.to, 0.0), draft_.centre());
    }
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
    QTransform there = QTransform::fromTranslate(end.x(), end.y());
    if (upright()) there.rotate(-90.0);
    written_.push_back(there.mapRect(place));
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
      if (distance(box, centre) <= radius && furthest(box, centre) >= radius) over += 1.0;
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
      const double away = distance(box, at(hole.along, hole.across)) - 0.5 * scaled(hole.diameter);
      if (away < 0.4 * draft_.textHeight()) return 0.5;
    }
    return 0.0;
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
    dimension(edge.topLeft(), edge.topRight(), toNextLine(), across);
    dimension(edge.bottomLeft(), edge.topLeft(), toNextLine(), up);
  }

  /// It takes all from the edge to its line.
  void dimension(QPointF from, QPointF to, double offset, const QString& text) {
    const QRectF drawn = draft_.dimension({.from = from, .to = to, .offset = offset, .text = text});
    dimensions_.push_back(drawn.united(QRectF(from, to).normalized()));
  }

  /// From two edges to the axis of the first cylinder, which all places are counted from.
  void dimensionAxis() {
    const QRectF edge = box();
    const QPointF axis = at(0.0, 0.0);
    const double across = upright() ? outline_.upper() : -made_.from;
    const double up = upright() ? -made_.from : -outline_.lower();
    if (across > 0.0) {
      dimension(edge.topLeft(), {axis.x(), edge.top()}, toLine(), said(across));
    }
    if (up > 0.0) dimension(edge.bottomLeft(), {edge.left(), axis.y()}, toLine(), said(up));
    if (made_.from > 0.0 && !outline_.endsInGap(made_.from)) sayPlace(made_.from);
  }

  /// At the first that is rounded and has nothing beside it, else at the last that is rounded.
  void nameCorner() {
    struct Corner {
      QPointF at;
      QPointF out;  ///< to the right, downwards
      double end;   ///< along the crankshaft
    };
    const QRectF edge = box();
    const Corner corners[] = {
        {edge.topRight(), {1.0, -1.0}, made_.to},
        {edge.bottomRight(), {1.0, 1.0}, upright() ? made_.from : made_.to},
        {edge.bottomLeft(), {-1.0, 1.0}, made_.from},
    };
    const double inwards = (1.0 - std::numbers::sqrt2 / 2.0) * scaled(outline_.corner());
    const double beyond = std::max(mm(3.0), 0.7 * draft_.textHeight());
    const QString text = QStringLiteral("R ") + said(outline_.corner());
    QLineF leader;
    for (const Corner& corner : corners) {
      if (outline_.endsInGap(corner.end)) continue;
      leader = QLineF(corner.at - inwards * corner.out,
                      corner.at + QPointF(-mm(6.0) * corner.out.x(), beyond * corner.out.y()));
      QRectF takes({}, QSizeF(mm(6.0) + sizeOf({text}, false).width(), draft_.textHeight()));
      takes.moveCenter({corner.at.x() - 0.5 * takes.width() * corner.out.x(), leader.y2()});
      const auto meets = [&](const QRectF& other) { return other.intersects(takes); };
      if (std::ranges::none_of(written_, meets)) break;
    }
    if (!leader.isNull()) written_.push_back(draft_.leader(leader.p1(), leader.p2(), text));
  }

  /// To the first dimension line from the edge; on a small screen the text needs the room.
  double toLine() const { return std::max(mm(kToLine), 0.4 * draft_.textHeight()); }
  double toNextLine() const {
    return toLine() + std::max(mm(kToNextLine - kToLine), 1.15 * draft_.textHeight());
  }

  QString said(double length) const { return fromCore(style_.number(units::Kind::Length, length)); }

  /// In the middle, or where nothing else stands.
  void nameThrustSide() {
    const QString words = QStringLiteral("thrust side");
    double along = 0.0;
    for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8}) {
      along = std::lerp(made_.from, made_.to, share);
      const QRectF taken = boxBeside(along, words);
      const auto meets = [&](const QRectF& other) { return other.intersects(taken); };
      if (std::ranges::none_of(written_, meets)) break;
    }
    writeBeside(along, words, draft_.ink().faint);
  }

  Drafting& draft_;
  QPointF middle_;
  const plate::Outline& outline_;
  plate::Stretch made_;  ///< from the first plate to the last
  PlateLies lies_;
  const units::Style& style_;
  std::vector<QRectF> written_;     ///< but for dimensions
  std::vector<QRectF> dimensions_;  ///< each with what lies between its line and the plate
  std::vector<double> cuts_;        ///< [device units] along the crankshaft
};

}  // namespace

QMarginsF plateMargins(PlateLies lies) {
  const bool upright = lies == PlateLies::Upright;
  return {kForDimensions, kForDimensions, upright ? kForWords : kForNothing, kForWords};
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
