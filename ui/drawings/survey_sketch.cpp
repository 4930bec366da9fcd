#include "ui/drawings/survey_sketch.h"

#include <algorithm>

namespace strokewright::ui {
namespace {

// Shares of the area's height, from above; the rest is for the words under the views.
constexpr double kDeck = 0.16;
constexpr double kSeat = 0.42;
constexpr double kAxis = 0.74;
constexpr double kSump = 0.88;

// All in millimetres.
constexpr double kBalloon = 2.1;  // radius
constexpr double kWall = 3.0;     // of the case
constexpr double kMandrel = 3.2;  // radius
constexpr double kMostPitch = 34.0;
constexpr double kViewGap = 8.0;
constexpr double kPointRadius = 0.7;

class SketchPainter {
 public:
  SketchPainter(Drafting& draft, const QRectF& area, int cylinders, const SurveyNumbers& numbers)
      : draft_(draft), area_(area), cylinders_(cylinders), numbers_(numbers) {}

  void paint() {
    const double gap = mm(kViewGap);
    const double narrow = 0.21 * area_.width();
    const QRectF above(area_.right() - narrow, area_.top(), narrow, area_.height());
    QRectF along = area_;
    along.setRight(above.left() - gap);
    if (numbers_.across > 0) {
      paintAcross(above.translated(-narrow - gap, 0.0));
      along.setRight(along.right() - narrow - gap);
    }
    paintAlong(along);
    paintFromAbove(above);
  }

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }
  double level(double share) const { return area_.top() + share * area_.height(); }

  void caption(const QRectF& view, const char* words) {
    draft_.text(QPointF(view.center().x(), area_.bottom()), Qt::AlignHCenter | Qt::AlignBottom,
                QLatin1String(words), false, draft_.ink().faint);
  }

  void balloon(QPointF centre, int number) {
    if (number == 0) return;
    draft_.circle(centre, mm(kBalloon), draft_.narrow(), draft_.ink().paper);
    draft_.text(centre, Qt::AlignHCenter, QString::number(number), true);
  }

  /// A dimension with a balloon instead of a number.
  void measured(QPointF from, QPointF to, double offset, int number) {
    if (number == 0) return;
    const QRectF box = draft_.dimension({.from = from, .to = to, .offset = offset, .text = {}});
    const bool level = from.y() == to.y();
    const QPointF middle = (from + to) / 2.0;
    balloon(level ? QPointF(middle.x(), box.center().y()) : QPointF(box.center().x(), middle.y()),
            number);
  }

  // ---- Along the crankshaft

  void paintAlong(const QRectF& view) {
    const double room = view.width() - mm(4.0 * kBalloon + 6.0);
    pitch_ = std::min(room / cylinders_, mm(kMostPitch));
    left_ = view.center().x() - pitch_ * cylinders_ / 2.0;
    const double right = left_ + pitch_ * cylinders_;
    paintBarrels();
    paintCase(right);
    const double axis = level(kAxis);
    draft_.line(QPointF(left_ - mm(6.0), axis), QPointF(right + mm(6.0), axis), draft_.centre());
    for (int i = 0; i < cylinders_; ++i) measureUpwards(centreOf(i));
    if (cylinders_ > 1) {
      measured(QPointF(centreOf(0), level(kDeck)), QPointF(centreOf(1), level(kDeck)), mm(4.0),
               numbers_.pitch);
    }
    const double above = level(kDeck);
    measured(QPointF(barrelEdge(0, -1.0), level(kSeat)), QPointF(barrelEdge(0, -1.0), above),
             mm(5.0), numbers_.barrel);
    balloon(QPointF(right + mm(kBalloon + 1.0), axis - mm(kMandrel + kBalloon + 1.0)),
            numbers_.mainBores);
    caption(view, "along the crankshaft, mandrel in the main bores");
  }

  double centreOf(int cylinder) const { return left_ + (cylinder + 0.5) * pitch_; }
  double barrelEdge(int cylinder, double side) const {
    return centreOf(cylinder) + side * 0.36 * pitch_;
  }

  void paintBarrels() {
    for (int i = 0; i < cylinders_; ++i) {
      const QRectF barrel(QPointF(barrelEdge(i, -1.0), level(kDeck)),
                          QPointF(barrelEdge(i, 1.0), level(kSeat)));
      draft_.rectangle(barrel, i == 0 ? draft_.wide() : draft_.assumed());
      draft_.line(QPointF(centreOf(i), level(kDeck) - mm(2.0)),
                  QPointF(centreOf(i), level(kSump) + mm(1.0)), draft_.centre());
    }
  }

  void paintCase(double right) {
    const double seat = level(kSeat);
    const double axis = level(kAxis);
    const double wall = std::min(mm(kWall), 0.2 * pitch_);
    draft_.line(QPointF(left_ - wall / 2.0, seat), QPointF(right + wall / 2.0, seat),
                draft_.heavy());
    for (int i = 0; i <= cylinders_; ++i) {
      const double x = left_ + i * pitch_;
      const QRectF web(x - wall / 2.0, seat, wall, level(kSump) - seat);
      const QRectF bore(x - wall / 2.0, axis - mm(kMandrel), wall, mm(2.0 * kMandrel));
      QPainterPath metal;
      metal.addRect(web);
      QPainterPath hole;
      hole.addRect(bore);
      metal = metal.subtracted(hole);
      draft_.hatch(metal, 1.4);
      draft_.outline(metal, draft_.wide());
    }
    for (const double side : {-1.0, 1.0}) {
      const double y = axis + side * mm(kMandrel - 0.4);
      draft_.line(QPointF(left_ - mm(4.0), y), QPointF(right + mm(4.0), y), draft_.wide());
    }
  }

  /// From the crank axis to the seat, or at once to the deck.
  void measureUpwards(double x) {
    const double beside = x + 0.2 * pitch_;
    const double upTo = level(numbers_.direct > 0 ? kDeck : kSeat);
    draft_.dimension(
        {.from = QPointF(beside, level(kAxis)), .to = QPointF(beside, upTo), .text = {}});
    balloon(QPointF(beside, (upTo + level(kAxis) - mm(kMandrel)) / 2.0),
            std::max(numbers_.seat, numbers_.direct));
  }

  // ---- Across it

  void paintAcross(const QRectF& view) {
    const double middle = view.center().x();
    const double half = 0.30 * view.width();
    const double seat = level(kSeat);
    const double tilt = mm(1.2);  // drawn so that it is seen
    const QPointF thrust(middle - half, seat - tilt / 2.0);
    const QPointF other(middle + half, seat + tilt / 2.0);
    draft_.line(thrust, other, draft_.heavy());
    const QPolygonF below({thrust, other, QPointF(middle + half, level(kSump)),
                           QPointF(middle - half, level(kSump))});
    draft_.painter().setPen(draft_.assumed());
    draft_.painter().setBrush(Qt::NoBrush);
    draft_.painter().drawPolyline(QPolygonF({below[1], below[2], below[3], below[0]}));
    draft_.circle(QPointF(middle, level(kAxis)), mm(kMandrel), draft_.wide());
    draft_.cross(QPointF(middle, level(kAxis)), mm(kMandrel + 3.0));
    for (const QPointF& end : {thrust, other}) {
      const double x = end.x() + (end.x() < middle ? mm(2.0) : -mm(2.0));
      draft_.dimension({.from = QPointF(x, level(kAxis)), .to = QPointF(x, end.y()), .text = {}});
    }
    balloon(QPointF(middle - half + mm(2.0), (seat + level(kAxis)) / 2.0), numbers_.across);
    balloon(QPointF(middle + half - mm(2.0), (seat + level(kAxis)) / 2.0), numbers_.across);
    const double read = mm(2.0);
    measured(QPointF(middle - half + read, seat - tilt), QPointF(middle + half - read, seat - tilt),
             mm(6.0), numbers_.width);
    draft_.text(QPointF(middle - half, seat - tilt - mm(12.0)), Qt::AlignLeft,
                QStringLiteral("thrust side"), false, draft_.ink().faint);
    caption(view, "across the crankshaft");
  }

  // ---- The deck from above

  void paintFromAbove(const QRectF& view) {
    const QPointF centre(view.center().x(), (level(kDeck) + level(kSump)) / 2.0);
    const double radius = std::min(0.36 * view.width(), 0.32 * view.height());
    draft_.circle(centre, radius * 1.14, draft_.wide());
    draft_.circle(centre, radius, draft_.wide(), draft_.ink().fill);
    draft_.line(centre - QPointF(radius * 1.4, 0.0), centre + QPointF(radius * 1.4, 0.0),
                draft_.centre());
    draft_.line(centre - QPointF(0.0, radius * 1.3), centre + QPointF(0.0, radius * 1.3),
                draft_.centre());
    for (const QPointF& direction :
         {QPointF(-1.0, 0.0), QPointF(0.0, -1.0), QPointF(1.0, 0.0), QPointF(0.0, 1.0)}) {
      draft_.circle(centre + direction * radius * 0.72, mm(kPointRadius), draft_.wide(),
                    draft_.ink().line);
    }
    balloon(centre + QPointF(0.36, -0.36) * radius, numbers_.deck);
    balloon(centre + QPointF(0.82, 0.82) * radius, numbers_.liner);
    draft_.text(centre + QPointF(0.0, -radius * 1.3 - mm(0.5)), Qt::AlignHCenter | Qt::AlignBottom,
                QStringLiteral("pin axis level"), false, draft_.ink().faint);
    caption(view, "deck from above");
  }

  Drafting& draft_;
  const QRectF area_;
  int cylinders_;
  const SurveyNumbers& numbers_;
  double pitch_ = 0.0;  ///< [device units] drawn
  double left_ = 0.0;   ///< of the case
};

}  // namespace

void paintSurveySketch(Drafting& draft, const QRectF& area, int cylinders,
                       const SurveyNumbers& numbers) {
  SketchPainter(draft, area, cylinders, numbers).paint();
}

}  // namespace strokewright::ui
