#include "ui/drawings/crank_figure.h"

#include <Eigen/Geometry>
#include <QLineF>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <utility>

namespace strokewright::ui {
namespace {

using Eigen::Vector3d;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kSameAngle = 0.05 * kTurn / 360.0;
constexpr int kAround = 36;  // corners of a circle

// What nobody gave, as shares of the bore.
constexpr double kWeb = 0.16;
constexpr double kJournal = 0.24;   // radius of the main journal
constexpr double kStub = 0.35;      // of a journal at either end
constexpr double kBeyond = 0.1;     // from there to the end of the axis
constexpr double kAcrossWeb = 1.5;  // of the radius of journal or pin
constexpr double kCam = 0.32;       // from the crown at its top to the camshaft over it
constexpr double kCamshaft = 0.07;  // its radius
constexpr double kCamRadius = 0.13;
constexpr double kCamLift = 0.12;
constexpr double kCamEnd = 0.25;   // beyond the last lobe
constexpr double kOverCam = 0.55;  // the axis over the crown at its top
constexpr double kOver = 0.2;      // likewise, without a camshaft
constexpr double kArrow = 0.12;    // the arrow of rotation, outside of what turns

/// What a body takes up along a direction.
struct Span {
  double least;
  double most;
};

/// How a body is drawn.
struct Looks {
  QPen outline;
  QColor fill;
  QBrush inside = Qt::NoBrush;  ///< of its edges: a hollow
};

/// A shape that hides what lies behind it.
struct Body {
  QPolygonF outline;
  QRectF box;
  std::vector<QPolygonF> edges;  ///< seen on it
  std::vector<Span> spans;       ///< along each direction that may part it from another
  double near = 0.0;             ///< to the eye, where nothing parts it
  Looks looks;
};

using Points = std::vector<Vector3d>;

void append(Points& to, const Points& more) { to.insert(to.end(), more.begin(), more.end()); }

bool sameAngle(double one, double other) {
  return std::abs(std::remainder(one - other, kTurn)) < kSameAngle;
}

Points circle(const Vector3d& centre, const Vector3d& normal, double radius) {
  const Vector3d one = normal.unitOrthogonal();
  const Vector3d other = normal.cross(one);
  Points points;
  points.reserve(kAround + 1);
  for (int i = 0; i <= kAround; ++i) {
    const double at = kTurn * i / kAround;
    points.emplace_back(centre + radius * (std::cos(at) * one + std::sin(at) * other));
  }
  return points;
}

/// The convex outline of points (Andrew's monotone chain).
QPolygonF hull(QList<QPointF> points) {
  std::ranges::sort(points, [](QPointF a, QPointF b) {
    return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y());
  });
  const auto turnsLeft = [](QPointF o, QPointF a, QPointF b) {
    return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x()) > 0.0;
  };
  QPolygonF outline;
  const auto walk = [&](auto from, auto to) {
    const qsizetype start = outline.size();
    for (auto point = from; point != to; ++point) {
      while (outline.size() >= start + 2 &&
             !turnsLeft(outline[outline.size() - 2], outline.back(), *point)) {
        outline.removeLast();
      }
      outline << *point;
    }
    outline.removeLast();
  };
  walk(points.begin(), points.end());
  walk(points.rbegin(), points.rend());
  if (!outline.isEmpty()) outline << outline.front();
  return outline;
}

/// What of a closed convex outline lies on the near side of a line: normal · point ≤ level.
QPolygonF cut(const QPolygonF& outline, QPointF normal, double level) {
  QPolygonF rest;
  const auto over = [&](QPointF point) { return QPointF::dotProduct(normal, point) - level; };
  for (qsizetype i = 0; i + 1 < outline.size(); ++i) {
    const QPointF from = outline[i];
    const QPointF to = outline[i + 1];
    if (over(from) <= 0.0) rest << from;
    if ((over(from) < 0.0 && over(to) > 0.0) || (over(from) > 0.0 && over(to) < 0.0)) {
      rest << from + over(from) / (over(from) - over(to)) * (to - from);
    }
  }
  if (!rest.isEmpty()) rest << rest.front();
  return rest;
}

/// What two outlines have in common, both of hull().
QPolygonF common(QPolygonF outline, const QPolygonF& other) {
  for (qsizetype i = 0; i + 1 < other.size(); ++i) {
    const QPointF side = other[i + 1] - other[i];
    const QPointF outwards(side.y(), -side.x());
    outline = cut(outline, outwards, QPointF::dotProduct(outwards, other[i]));
  }
  return outline;
}

class CrankPainter {
 public:
  CrankPainter(Drafting& draft, const QRectF& room, const CrankFigure& figure,
               const Viewpoint& viewpoint, double crankAngle)
      : draft_(draft),
        figure_(figure),
        look_((Eigen::AngleAxisd(viewpoint.tilted, Vector3d::UnitX()) *
               Eigen::AngleAxisd(viewpoint.turned, Vector3d::UnitY()))
                  .toRotationMatrix()),
        angle_(crankAngle) {
    for (const FigureCylinder& one : figure.cylinders) bore_ = std::max(bore_, one.bore);
    findBanks();
    place(room);
  }

  void paint() {
    addShaft();
    for (std::size_t i = 0; i < figure_.cylinders.size(); ++i) addRunning(i);
    if (hasCamshaft()) {
      for (const Bank& bank : banks_) addCamshaft(bank);
    }
    paintAxes();
    for (const Body* body : fromBehind()) {
      draft_.painter().setPen(body->looks.outline);
      draft_.painter().setBrush(body->looks.fill);
      draft_.painter().drawPolygon(body->outline);
      draft_.painter().setBrush(body->looks.inside);
      draft_.painter().setPen(draft_.narrow());
      for (const QPolygonF& edge : body->edges) draft_.painter().drawPolygon(edge);
    }
    paintRotation();
    for (const Word& name : names_) draft_.label(name.box.center(), name.text, true);
    paintCamshaftName();
  }

 private:
  // ---- In space [m]

  Vector3d pointing(double angle) const {
    return {(figure_.clockwise ? 1.0 : -1.0) * std::sin(angle), std::cos(angle), 0.0};
  }
  static Vector3d footOf(const FigureCylinder& one) { return {0.0, 0.0, -one.along}; }
  static double top(const FigureCylinder& one) {
    return motion::topPinHeight(one.mechanism) + one.compressionHeight;
  }
  double reach() const {
    double most = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      most = std::max(most, one.mechanism.crankRadius + kAcrossWeb * 0.5 * one.crankpin);
    }
    return most;
  }
  bool hasCamshaft() const { return !figure_.camshaft.isEmpty(); }
  double endOfAxis(const FigureCylinder& one) const {
    return top(one) + (hasCamshaft() ? kOverCam : kOver) * bore_;
  }

  /// Cylinders whose axes point one way.
  struct Bank {
    double axis = 0.0;
    double top = 0.0;
    std::vector<const FigureCylinder*> cylinders;
    double front = 0.0;  ///< z of the camshaft’s ends
    double back = 0.0;
  };
  Vector3d camshaft(const Bank& bank, double z) const {
    return (bank.top + kCam * bore_) * pointing(bank.axis) + Vector3d(0.0, 0.0, z);
  }

  void findBanks() {
    for (const FigureCylinder& one : figure_.cylinders) {
      auto bank = std::ranges::find_if(
          banks_, [&](const Bank& other) { return sameAngle(one.axis, other.axis); });
      if (bank == banks_.end()) {
        bank = banks_.insert(bank, {.axis = one.axis,
                                    .top = top(one),
                                    .cylinders = {},
                                    .front = -one.along,
                                    .back = -one.along});
      }
      bank->cylinders.push_back(&one);
      bank->top = std::max(bank->top, top(one));
      bank->front = std::max(bank->front, -one.along);
      bank->back = std::min(bank->back, -one.along);
    }
    for (Bank& bank : banks_) {
      bank.front += kCamEnd * bore_;
      bank.back -= kCamEnd * bore_;
    }
    // Planes across the shaft part what sits on it, planes across a bank its pistons from the
    // crank, planes between two banks their pistons.
    directions_.emplace_back(Vector3d::UnitZ());
    for (const Bank& one : banks_) directions_.push_back(pointing(one.axis));
    for (std::size_t i = 1; i < banks_.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        directions_.push_back(pointing(banks_[i].axis) - pointing(banks_[j].axis));
      }
    }
  }

  // ---- On the medium

  /// At the scale of 1, from the origin.
  QPointF flat(const Vector3d& point) const {
    const Vector3d turned = look_ * point;
    return {turned.x(), -turned.y()};
  }
  QPointF seen(const Vector3d& point) const { return origin_ + scale_ * flat(point); }
  QPolygonF seen(const Points& points) const {
    QPolygonF all;
    all.reserve(static_cast<qsizetype>(points.size()));
    for (const Vector3d& point : points) all << seen(point);
    return all;
  }
  double near(const Vector3d& point) const { return look_.row(2).dot(point); }

  /// What is ever drawn on: every crank angle finds room, so that the figure stands still.
  std::vector<QPointF> everywhere() const {
    const Vector3d along = Vector3d::UnitZ();
    Points points;
    for (const FigureCylinder& one : figure_.cylinders) {
      const Vector3d up = pointing(one.axis);
      const Vector3d foot = footOf(one);
      const double web = 0.5 * one.rodWidth + kWeb * bore_;
      append(points, circle(foot + top(one) * up, up, 0.5 * one.bore));
      points.emplace_back(foot + endOfAxis(one) * up);
      for (const double side : {-1.0, 1.0}) {
        append(points, circle(foot + side * web * along, along, reach()));
        append(points,
               circle(foot + side * (web + kStub * bore_) * along, along, kJournal * bore_));
      }
    }
    if (hasCamshaft()) {
      for (const Bank& bank : banks_) {
        for (const double z : {bank.front, bank.back}) {
          append(points, circle(camshaft(bank, z), along, (0.5 * kCamRadius + kCamLift) * bore_));
        }
      }
    }
    const Rotation arrow = rotation();
    append(points, arrow.arc);
    append(points, arrow.head);
    std::vector<QPointF> all;
    all.reserve(points.size());
    for (const Vector3d& point : points) all.push_back(flat(point));
    return all;
  }

  struct Word {
    QPointF at;   ///< where it begins
    QPointF out;  ///< away from the crank
    QString text;
    QRectF box;
    double axis = 0.0;  ///< [rad] of the bank it stands over
  };

  /// Largest that what is drawn and its words go into the room.
  void place(const QRectF& whole) {
    constexpr double kLess = 0.97;
    constexpr int kMostSteps = 24;
    const std::vector<QPointF> drawn = everywhere();
    const double margin = draft_.mm(1.0);
    const QRectF room = whole.adjusted(margin, margin, -margin, -margin);
    const auto box = QPolygonF(QList<QPointF>(drawn.begin(), drawn.end())).boundingRect();
    scale_ = std::max(1e-9, std::min(room.width() / box.width(), room.height() / box.height()));
    for (int i = 0; i < kMostSteps; ++i, scale_ *= kLess) {
      origin_ = {};
      layNames();
      QRectF all(scale_ * box.topLeft(), scale_ * box.size());
      for (const Word& name : names_) all |= name.box;
      origin_ = room.center() - all.center();
      for (Word& name : names_) name.box.translate(origin_);
      const bool fits = all.width() <= room.width() && all.height() <= room.height();
      if (fits && placeCamshaftName(room, drawn)) return;
    }
  }

  /// Into a corner that is free.
  bool placeCamshaftName(const QRectF& room, const std::vector<QPointF>& drawn) {
    if (!hasCamshaft()) return true;
    camshaft_ = {.at = {}, .out = {}, .text = figure_.camshaft, .box = {}};
    QRectF box({}, QSizeF(draft_.textWidth(camshaft_.text), draft_.textHeight()));
    for (const bool low : {false, true}) {
      for (const bool left : {false, true}) {
        left ? box.moveLeft(room.left()) : box.moveRight(room.right());
        low ? box.moveBottom(room.bottom()) : box.moveTop(room.top());
        const double clear = draft_.mm(0.5);
        const QRectF around = box.adjusted(-clear, -clear, clear, clear);
        const bool taken =
            std::ranges::any_of(names_,
                                [&](const Word& name) { return name.box.intersects(around); }) ||
            std::ranges::any_of(drawn,
                                [&](QPointF at) { return around.contains(origin_ + scale_ * at); });
        camshaft_.box = box;
        if (!taken) return true;
      }
    }
    return false;
  }

  /// With a line to the nearest place on a camshaft, not over a name.
  void paintCamshaftName() {
    if (!hasCamshaft()) return;
    constexpr int kPlaces = 8;
    constexpr int kLooked = 16;
    const QRectF& box = camshaft_.box;
    QLineF best;
    double least = std::numeric_limits<double>::infinity();
    for (const Bank& bank : banks_) {
      for (int i = 0; i <= kPlaces; ++i) {
        const double z = bank.front + (bank.back - bank.front) * i / kPlaces;
        const QPointF to = seen(camshaft(bank, z));
        const QPointF from(std::clamp(to.x(), box.left(), box.right()),
                           std::clamp(to.y(), box.top(), box.bottom()));
        const QLineF line(from, to);
        double cost = line.length();
        for (int at = 0; at <= kLooked; ++at) {
          const QPointF on = line.pointAt(static_cast<double>(at) / kLooked);
          for (const Word& name : names_) cost += name.box.contains(on) ? box.width() : 0.0;
        }
        if (cost >= least) continue;
        least = cost;
        best = line;
      }
    }
    draft_.line(best.p1(), best.p2(), draft_.narrow());
    draft_.text(box.topLeft(), Qt::AlignLeft | Qt::AlignTop, camshaft_.text, false,
                draft_.ink().faint);
  }

  /// At the ends of the axes. Cylinders of a bank that stand behind each other share a place; a
  /// name that would lie over another goes further out.
  void layNames() {
    names_.clear();
    for (const FigureCylinder& one : figure_.cylinders) {
      const QPointF at = seen(footOf(one) + endOfAxis(one) * pointing(one.axis));
      const auto found = std::ranges::find_if(names_, [&](const Word& name) {
        return sameAngle(name.axis, one.axis) &&
               (name.at - at).manhattanLength() < draft_.textHeight();
      });
      if (found == names_.end()) {
        const QPointF out = at - seen(footOf(one));
        names_.push_back(
            {at, out / std::max(1.0, std::hypot(out.x(), out.y())), one.name, QRectF(), one.axis});
      } else {
        found->text += QStringLiteral(", ") + one.name;
      }
    }
    const double step = 0.25 * draft_.textHeight();
    constexpr int kMostSteps = 16;
    for (auto name = names_.begin(); name != names_.end(); ++name) {
      const QSizeF size(draft_.textWidth(name->text, true) + draft_.mm(1.6), draft_.textHeight());
      const double away = 0.5 * std::min(size.width() / std::max(1e-9, std::abs(name->out.x())),
                                         size.height() / std::max(1e-9, std::abs(name->out.y())));
      name->box = QRectF({}, size);
      name->box.moveCenter(name->at + std::min(away, 0.5 * size.width()) * name->out);
      const auto lies = [&](const Word& other) { return other.box.intersects(name->box); };
      for (int i = 0; i < kMostSteps && std::any_of(names_.begin(), name, lies); ++i) {
        name->box.translate(step * name->out);
      }
    }
  }

  void add(const Points& all, std::vector<QPolygonF> edges, double howNear, const Looks& looks) {
    Body body{.outline = {},
              .box = {},
              .edges = std::move(edges),
              .spans = {},
              .near = howNear,
              .looks = looks};
    for (const Vector3d& direction : directions_) {
      Span span{direction.dot(all.front()), direction.dot(all.front())};
      for (const Vector3d& point : all) {
        const double at = direction.dot(point);
        span.least = std::min(span.least, at);
        span.most = std::max(span.most, at);
      }
      body.spans.push_back(span);
    }
    body.outline = hull(seen(all));
    body.box = body.outline.boundingRect();
    bodies_.push_back(std::move(body));
  }

  enum class Hides { None, First, Other };

  /// Which of two hides the other: a plane that parts them tells, else what is nearer.
  Hides hides(const Body& one, const Body& other) const {
    if (!one.box.intersects(other.box)) return Hides::None;
    const double touch = 1e-6 * bore_;
    for (std::size_t i = 0; i < directions_.size(); ++i) {
      const bool below = one.spans[i].most <= other.spans[i].least + touch;
      const bool above = other.spans[i].most <= one.spans[i].least + touch;
      if (!below && !above) continue;
      const double facing = near(directions_[i]);
      if (std::abs(facing) < 1e-9) return Hides::None;
      return below == (facing > 0.0) ? Hides::Other : Hides::First;
    }
    return one.near > other.near ? Hides::First : Hides::Other;
  }

  /// What hides comes after what is hidden; where they go round in a circle, by how near they are.
  std::vector<const Body*> fromBehind() const {
    const std::size_t count = bodies_.size();
    std::vector<std::vector<std::size_t>> hiddenBy(count);
    std::vector<int> waits(count, 0);
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Hides which = hides(bodies_[i], bodies_[j]);
        if (which == Hides::None) continue;
        const std::size_t front = which == Hides::First ? i : j;
        hiddenBy[which == Hides::First ? j : i].push_back(front);
        ++waits[front];
      }
    }
    std::vector<std::size_t> left(count);
    std::iota(left.begin(), left.end(), std::size_t{0});
    std::vector<const Body*> order;
    while (!left.empty()) {
      const auto next = std::ranges::min_element(left, {}, [&](std::size_t i) {
        return std::pair(std::min(waits[i], 1), bodies_[i].near);
      });
      const std::size_t body = *next;
      left.erase(next);
      for (const std::size_t front : hiddenBy[body]) --waits[front];
      order.push_back(&bodies_[body]);
    }
    return order;
  }

  Looks metal() const { return {draft_.wide(), draft_.ink().fill}; }
  Looks light() const { return {draft_.wide(), draft_.ink().paper}; }
  Looks assumed() const { return {draft_.assumed(), draft_.ink().paper}; }

  void addTube(const Vector3d& from, const Vector3d& to, double radius, const Looks& looks,
               double howNear) {
    const Vector3d normal = (to - from).normalized();
    Points all = circle(from, normal, radius);
    const Points other = circle(to, normal, radius);
    const QPolygonF end = seen(near(from) > near(to) ? all : other);
    append(all, other);
    add(all, {end}, howNear, looks);
  }

  /// A face across the shaft.
  struct Face {
    QPolygonF outline;  ///< x and y
    double z = 0.0;     ///< of its middle
  };
  static Face about(const Vector3d& a, double radiusA, const Vector3d& b, double radiusB) {
    QList<QPointF> points;
    for (const auto& [centre, radius] : {std::pair(a, radiusA), std::pair(b, radiusB)}) {
      for (const Vector3d& point : circle(centre, Vector3d::UnitZ(), radius)) {
        points.emplace_back(point.x(), point.y());
      }
    }
    return {.outline = hull(std::move(points)), .z = a.z()};
  }

  /// A plate across the shaft, with the hole that is seen in it: web, rod, lobe.
  void addPlate(const Face& face, double thick, const Looks& looks,
                const std::optional<std::pair<Vector3d, double>>& hole = {}) {
    Points all;
    std::vector<QPolygonF> edges;
    const bool frontSeen = near(Vector3d::UnitZ()) >= 0.0;
    for (const double side : {-0.5, 0.5}) {
      const double shift = side * thick;
      Points points;
      for (const QPointF at : face.outline) points.emplace_back(at.x(), at.y(), face.z + shift);
      if ((side > 0.0) == frontSeen) {
        edges.push_back(seen(points));
        if (hole) {
          edges.push_back(seen(
              circle(hole->first + Vector3d(0.0, 0.0, shift), Vector3d::UnitZ(), hole->second)));
        }
      }
      append(all, points);
    }
    const QPointF middle = face.outline.boundingRect().center();
    add(all, std::move(edges), near({middle.x(), middle.y(), face.z}), looks);
  }

  /// Rods on one pin.
  struct Pin {
    Vector3d centre;
    double radius = 0.0;
    double from = 0.0;  ///< z of its webs' inner faces
    double to = 0.0;
  };

  Vector3d pinOf(const FigureCylinder& one) const {
    return one.mechanism.crankRadius * pointing(angle_ + one.ahead);
  }

  std::vector<Pin> pins() const {
    std::vector<const FigureCylinder*> order;
    for (const FigureCylinder& one : figure_.cylinders) order.push_back(&one);
    std::ranges::stable_sort(order, {}, &FigureCylinder::along);
    std::vector<Pin> found;
    const FigureCylinder* before = nullptr;
    for (const FigureCylinder* one : order) {
      const double half = 0.5 * one->rodWidth;
      const bool shares = before != nullptr && sameAngle(one->ahead, before->ahead) &&
                          one->along - before->along < 0.75 * bore_;
      if (shares) {
        found.back().to = std::min(found.back().to, -one->along - half);
      } else {
        found.push_back({.centre = pinOf(*one),
                         .radius = 0.5 * one->crankpin,
                         .from = -one->along + half,
                         .to = -one->along - half});
      }
      before = one;
    }
    return found;
  }

  void addShaft() {
    const std::vector<Pin> all = pins();
    const double journal = kJournal * bore_;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Pin& pin = all[i];
      const double next = i + 1 < all.size() ? all[i + 1].from : pin.to - 1.6 * kWeb * bore_;
      const double before = i > 0 ? all[i - 1].to : pin.from + 1.6 * kWeb * bore_;
      // Webs are as thick as there is room for.
      const double thickBefore = std::min(kWeb * bore_, std::max(0.0, 0.45 * (before - pin.from)));
      const double thickNext = std::min(kWeb * bore_, std::max(0.0, 0.45 * (pin.to - next)));
      const auto web = [&](double z, double thick) {
        const Vector3d at(0.0, 0.0, z);
        addPlate(about(at, kAcrossWeb * journal, pin.centre + at, kAcrossWeb * pin.radius), thick,
                 metal(), std::pair(Vector3d(pin.centre + at), pin.radius));
      };
      web(pin.from + 0.5 * thickBefore, thickBefore);
      web(pin.to - 0.5 * thickNext, thickNext);
      addTube(pin.centre + Vector3d(0.0, 0.0, pin.from), pin.centre + Vector3d(0.0, 0.0, pin.to),
              pin.radius, metal(), kBehind);
      if (i == 0) {
        const double z = pin.from + thickBefore;
        addTube({0.0, 0.0, z + kStub * bore_}, {0.0, 0.0, z}, journal, metal(), kBehind);
      }
      const double end = pin.to - thickNext;
      const double until =
          i + 1 < all.size() ? next + std::min(kWeb * bore_, std::max(0.0, 0.45 * (pin.to - next)))
                             : end - kStub * bore_;
      if (end - until > 1e-4 * bore_) {
        addTube({0.0, 0.0, end}, {0.0, 0.0, until}, journal, metal(), kBehind);
      }
    }
  }

  void addRunning(std::size_t i) {
    const FigureCylinder& one = figure_.cylinders[i];
    const auto toVector = [](const InSpace& at) { return Vector3d(at.x, at.y, at.z); };
    const Vector3d pin = toVector(crankpinOf(figure_, i, angle_));
    const Vector3d gudgeon = toVector(gudgeonPinOf(figure_, i, angle_));
    const Vector3d up = pointing(one.axis);
    const Vector3d skirt = gudgeon - one.skirt * up;
    const Face whole = about(pin, 0.68 * one.crankpin, gudgeon, 0.75 * one.gudgeonPin);
    const Face outside = {.outline = cut(whole.outline, {up.x(), up.y()}, up.dot(skirt)),
                          .z = whole.z};
    const double thick = 0.8 * one.rodWidth;
    const std::pair hole(pin, 0.5 * one.crankpin);
    const bool open = near(up) < 0.0;
    if (!outside.outline.isEmpty()) {
      addPlate(outside, thick, light(), hole);
      if (open) showInside(whole, thick, hole, circle(skirt, up, 0.5 * one.bore));
    }
    Looks looks = light();
    if (open) looks.inside = draft_.ink().fill;
    addTube(skirt, gudgeon + one.compressionHeight * up, 0.5 * one.bore, looks, near(gudgeon));
  }

  /// The rod added last ends where it enters its piston, which hides the rest; what of that is seen
  /// through the open end is shown.
  void showInside(const Face& whole, double thick, const std::pair<Vector3d, double>& hole,
                  const Points& openEnd) {
    Body outside = std::move(bodies_.back());
    bodies_.pop_back();
    addPlate(whole, thick, light(), hole);
    Body& rod = bodies_.back();
    const QPolygonF window = hull(QList<QPointF>(outside.outline + seen(openEnd)));
    rod.outline = common(rod.outline, window);
    for (QPolygonF& edge : rod.edges) edge = common(edge, window);
    rod.box = rod.outline.boundingRect();
    rod.spans = std::move(outside.spans);
  }

  void addCamshaft(const Bank& bank) {
    addTube(camshaft(bank, bank.front), camshaft(bank, bank.back), kCamshaft * bore_, assumed(),
            kBehind);
    for (const FigureCylinder* one : bank.cylinders) {
      const Vector3d here = camshaft(bank, -one->along);
      const Vector3d nose = here + kCamLift * bore_ * pointing(bank.axis + noseOf(*one, angle_));
      addPlate(about(here, kCamRadius * bore_, nose, 0.5 * kCamRadius * bore_), 0.2 * bore_,
               assumed());
    }
  }

  void paintAxes() {
    double last = 0.0;
    double web = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      last = std::max(last, one.along);
      web = std::max(web, 0.5 * one.rodWidth + kWeb * bore_);
      const Vector3d foot = footOf(one);
      draft_.line(seen(foot), seen(foot + endOfAxis(one) * pointing(one.axis)), draft_.centre());
    }
    const double beyond = web + (kStub + kBeyond) * bore_;
    draft_.line(seen(Vector3d(0.0, 0.0, beyond)), seen(Vector3d(0.0, 0.0, -last - beyond)),
                draft_.centre());
  }

  /// Of the arrow of rotation: before the end that faces the eye, where the cylinders leave most
  /// room.
  struct Rotation {
    Points arc;
    Points head;  ///< its tip first
  };
  Rotation rotation() const {
    constexpr double kHalf = kTurn / 10.0;
    constexpr double kTip = 0.3;  // of the half
    constexpr int kSteps = 16;
    const Vector3d end(0.0, 0.0, nearEnd());
    const double middle = middleOfGap();
    const double radius = reach() + kArrow * bore_;
    const double tip = middle + kHalf;
    const double from = middle - kHalf;
    const double until = tip - kTip * kHalf;
    Rotation arrow;
    for (int i = 0; i <= kSteps; ++i) {
      arrow.arc.emplace_back(radius * pointing(from + (until - from) * i / kSteps) + end);
    }
    arrow.head = {radius * pointing(tip) + end,
                  (radius + 0.5 * kArrow * bore_) * pointing(until) + end,
                  (radius - 0.5 * kArrow * bore_) * pointing(until) + end};
    return arrow;
  }

  void paintRotation() {
    const Rotation arrow = rotation();
    draft_.painter().setPen(draft_.given(figure_.senseSaid));
    draft_.painter().drawPolyline(seen(arrow.arc));
    draft_.painter().setPen(draft_.narrow());
    draft_.painter().setBrush(figure_.senseSaid ? draft_.ink().line : draft_.ink().paper);
    draft_.painter().drawPolygon(seen(arrow.head));
  }

  /// [rad] The middle of the widest gap between the axes.
  double middleOfGap() const {
    std::vector<double> angles;
    for (const Bank& bank : banks_)
      angles.push_back(bank.axis - kTurn * std::floor(bank.axis / kTurn));
    std::ranges::sort(angles);
    double begin = angles.back() - kTurn;
    double end = angles.front();
    for (std::size_t i = 1; i < angles.size(); ++i) {
      if (angles[i] - angles[i - 1] <= end - begin) continue;
      begin = angles[i - 1];
      end = angles[i];
    }
    return 0.5 * (begin + end);
  }

  /// z before the end of the shaft that faces the eye.
  double nearEnd() const {
    double last = 0.0;
    double web = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      last = std::max(last, one.along);
      web = std::max(web, 0.5 * one.rodWidth + kWeb * bore_);
    }
    const double beyond = web + 0.5 * kStub * bore_;
    return near(Vector3d::UnitZ()) >= 0.0 ? beyond : -last - beyond;
  }

  /// Of a shaft: behind what sits on it.
  static constexpr double kBehind = std::numeric_limits<double>::lowest();

  Drafting& draft_;
  const CrankFigure& figure_;
  Eigen::Matrix3d look_;
  double angle_;
  double bore_ = 0.0;
  double scale_ = 1.0;
  QPointF origin_;
  std::vector<Bank> banks_;
  Points directions_;
  std::vector<Word> names_;
  Word camshaft_;
  std::vector<Body> bodies_;
};

/// A point of the mechanism in the plane of its cylinder, in space.
InSpace placed(const CrankFigure& figure, const FigureCylinder& one, const motion::Point& at) {
  const double x = at.x * std::cos(one.axis) + at.y * std::sin(one.axis);
  const double y = at.y * std::cos(one.axis) - at.x * std::sin(one.axis);
  return {.x = figure.clockwise ? x : -x, .y = y, .z = -one.along};
}

motion::Pose poseOf(const FigureCylinder& one, double crankAngle) {
  return motion::pose(one.mechanism, crankAngle + one.ahead - one.axis);
}

}  // namespace

Viewpoint Viewpoint::isometric() {
  return {.turned = kTurn / 8.0, .tilted = std::atan(1.0 / std::numbers::sqrt2)};
}

void paintCrank(Drafting& draft, const QRectF& room, const CrankFigure& figure,
                const Viewpoint& viewpoint, double crankAngle) {
  if (figure.cylinders.empty()) return;
  CrankPainter(draft, room, figure, viewpoint, crankAngle).paint();
}

double topOf(const FigureCylinder& cylinder) {
  return cylinder.axis - cylinder.ahead + motion::topDeadCentreAngle(cylinder.mechanism);
}

double firstTop(const CrankFigure& figure) { return topOf(figure.cylinders.front()); }

double noseOf(const FigureCylinder& cylinder, double crankAngle) {
  return cylinder.lobe.value() + 0.5 * crankAngle;
}

InSpace gudgeonPinOf(const CrankFigure& figure, std::size_t cylinder, double crankAngle) {
  const FigureCylinder& one = figure.cylinders[cylinder];
  return placed(figure, one, poseOf(one, crankAngle).gudgeonPin);
}

InSpace crankpinOf(const CrankFigure& figure, std::size_t cylinder, double crankAngle) {
  const FigureCylinder& one = figure.cylinders[cylinder];
  return placed(figure, one, poseOf(one, crankAngle).crankpin);
}

}  // namespace strokewright::ui
