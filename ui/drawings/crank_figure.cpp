#include "ui/drawings/crank_figure.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace strokewright::ui {
namespace {

using Eigen::Vector3d;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kSameAngle = 0.05 * kTurn / 360.0;
constexpr int kAround = 28;  // corners of a circle

// What nobody gave, as shares of the bore.
constexpr double kWeb = 0.16;
constexpr double kJournal = 0.24;   // radius of the main journal
constexpr double kAcrossWeb = 1.5;  // of the radius of journal or pin
constexpr double kCamRadius = 0.13;
constexpr double kCamLift = 0.12;
constexpr double kAxis = 0.5;     // over the crown at its top
constexpr double kName = 0.7;     // likewise
constexpr double kToName = 0.85;  // room for it
constexpr double kToCam = 0.55;   // from what turns to the camshaft beside it

/// A shape that hides what lies behind it.
struct Body {
  QPolygonF outline;
  std::vector<QPolygonF> edges;  ///< seen on it
  double near = 0.0;
  QColor fill;
};

/// The convex outline of points (Andrew's monotone chain).
QPolygonF hull(std::vector<QPointF> points) {
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
    place(room);
  }

  void paint() {
    addShaft();
    for (std::size_t i = 0; i < figure_.cylinders.size(); ++i) addRunning(i);
    addCamshaft();
    std::ranges::sort(bodies_, {}, &Body::near);
    paintAxes();
    for (const Body& body : bodies_) {
      draft_.painter().setPen(draft_.wide());
      draft_.painter().setBrush(body.fill);
      draft_.painter().drawPolygon(body.outline);
      draft_.painter().setBrush(Qt::NoBrush);
      draft_.painter().setPen(draft_.narrow());
      for (const QPolygonF& edge : body.edges) draft_.painter().drawPolyline(edge);
    }
    paintNames();
  }

 private:
  // ---- In space [m]

  Vector3d pointing(double angle) const {
    return {(figure_.clockwise ? 1.0 : -1.0) * std::sin(angle), std::cos(angle), 0.0};
  }
  double top(const FigureCylinder& one) const {
    return motion::topPinHeight(one.mechanism) + one.compressionHeight;
  }
  double reach() const {
    double most = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      most = std::max(most, one.mechanism.crankRadius + kAcrossWeb * 0.5 * one.crankpin);
    }
    return most;
  }
  bool hasCamshaft() const {
    return std::ranges::all_of(figure_.cylinders,
                               [](const FigureCylinder& one) { return one.lobe.has_value(); });
  }
  /// Clear of everything that moves: beside a row of cylinders, below those that stand apart.
  Vector3d camshaft() const {
    const double away = reach() + (kToCam + 0.5) * bore_;
    const bool inLine = std::ranges::all_of(figure_.cylinders, [&](const FigureCylinder& one) {
      return one.axis == figure_.cylinders.front().axis;
    });
    return inLine ? Vector3d(away, 0.5 * reach(), 0.0) : Vector3d(0.0, -away, 0.0);
  }

  // ---- On the medium

  QPointF seen(const Vector3d& point) const {
    const Vector3d turned = look_ * point;
    return origin_ + scale_ * QPointF(turned.x(), -turned.y());
  }
  double near(const Vector3d& point) const { return (look_ * point).z(); }

  /// Every crank angle finds room, so that the figure stands still while it turns.
  void place(const QRectF& room) {
    std::vector<QPointF> corners;
    const auto take = [&](const Vector3d& point) { corners.push_back(seen(point)); };
    for (const FigureCylinder& one : figure_.cylinders) {
      const Vector3d up = pointing(one.axis);
      const Vector3d across(up.y(), -up.x(), 0.0);
      const Vector3d here(0.0, 0.0, -one.along);
      for (const double side : {-0.5, 0.5}) {
        take(here + (top(one) + kToName * bore_) * up + side * one.bore * across);
        for (const Vector3d& away : {up, across}) take(here + 2.0 * side * reach() * away);
        take(here + Vector3d(0.0, 0.0, 2.0 * side * 0.75 * bore_));
      }
      if (hasCamshaft()) take(here + camshaft() + (kCamRadius + kCamLift) * bore_ * up);
    }
    QRectF box(corners.front(), corners.front());
    for (const QPointF& corner : corners) {
      box.setLeft(std::min(box.left(), corner.x()));
      box.setRight(std::max(box.right(), corner.x()));
      box.setTop(std::min(box.top(), corner.y()));
      box.setBottom(std::max(box.bottom(), corner.y()));
    }
    const double margin = draft_.mm(3.0);
    const QRectF inner = room.adjusted(margin, margin, -margin, -margin);
    scale_ = std::max(1e-9, std::min(inner.width() / box.width(), inner.height() / box.height()));
    origin_ = inner.center() - scale_ * box.center();
  }

  std::vector<QPointF> circle(const Vector3d& centre, const Vector3d& normal, double radius) const {
    const Vector3d one = normal.unitOrthogonal();
    const Vector3d other = normal.cross(one);
    std::vector<QPointF> points;
    points.reserve(kAround + 1);
    for (int i = 0; i <= kAround; ++i) {
      const double at = kTurn * i / kAround;
      points.push_back(seen(centre + radius * (std::cos(at) * one + std::sin(at) * other)));
    }
    return points;
  }

  static QPolygonF closed(const std::vector<QPointF>& points) {
    return QPolygonF(QList<QPointF>(points.begin(), points.end()));
  }

  void add(std::vector<QPointF> all, std::vector<QPolygonF> edges, double howNear, QColor fill) {
    bodies_.push_back({.outline = hull(std::move(all)),
                       .edges = std::move(edges),
                       .near = howNear,
                       .fill = std::move(fill)});
  }

  void addTube(const Vector3d& from, const Vector3d& to, double radius, const QColor& fill) {
    const Vector3d normal = (to - from).normalized();
    std::vector<QPointF> one = circle(from, normal, radius);
    const std::vector<QPointF> other = circle(to, normal, radius);
    const QPolygonF end = closed(near(from) > near(to) ? one : other);
    one.insert(one.end(), other.begin(), other.end());
    add(std::move(one), {end}, near((from + to) / 2.0), fill);
  }

  /// A plate across the shaft about two circles: web, rod, lobe.
  void addPlate(const Vector3d& a, double radiusA, const Vector3d& b, double radiusB, double thick,
                const std::vector<std::pair<Vector3d, double>>& holes, const QColor& fill) {
    const Vector3d along = Vector3d::UnitZ();
    std::vector<QPointF> all;
    std::vector<QPolygonF> edges;
    const bool frontSeen = near(along) >= 0.0;
    for (const double side : {-0.5, 0.5}) {
      const Vector3d shift = side * thick * along;
      std::vector<QPointF> face = circle(a + shift, along, radiusA);
      const std::vector<QPointF> other = circle(b + shift, along, radiusB);
      face.insert(face.end(), other.begin(), other.end());
      if ((side > 0.0) == frontSeen) {
        edges.push_back(hull(face));
        for (const auto& [centre, radius] : holes) {
          edges.push_back(closed(circle(centre + shift, along, radius)));
        }
      }
      all.insert(all.end(), face.begin(), face.end());
    }
    add(std::move(all), std::move(edges), near((a + b) / 2.0), fill);
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
      const bool shares =
          before != nullptr &&
          std::abs(std::remainder(one->ahead - before->ahead, kTurn)) < kSameAngle &&
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
    const QColor metal = draft_.ink().fill;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Pin& pin = all[i];
      const double next = i + 1 < all.size() ? all[i + 1].from : pin.to - 1.6 * kWeb * bore_;
      const double before = i > 0 ? all[i - 1].to : pin.from + 1.6 * kWeb * bore_;
      // Webs are as thick as there is room for.
      const double thickBefore = std::min(kWeb * bore_, std::max(0.0, 0.45 * (before - pin.from)));
      const double thickNext = std::min(kWeb * bore_, std::max(0.0, 0.45 * (pin.to - next)));
      const auto web = [&](double z, double thick) {
        const Vector3d at(0.0, 0.0, z);
        addPlate(at, kAcrossWeb * journal, pin.centre + at, kAcrossWeb * pin.radius, thick,
                 {{pin.centre + at, pin.radius}}, metal);
      };
      web(pin.from + 0.5 * thickBefore, thickBefore);
      web(pin.to - 0.5 * thickNext, thickNext);
      addTube(pin.centre + Vector3d(0.0, 0.0, pin.from), pin.centre + Vector3d(0.0, 0.0, pin.to),
              pin.radius, metal);
      if (i == 0) {
        const double z = pin.from + thickBefore;
        addTube({0.0, 0.0, z + 0.5 * bore_}, {0.0, 0.0, z}, journal, metal);
      }
      const double end = pin.to - thickNext;
      const double until =
          i + 1 < all.size() ? next + std::min(kWeb * bore_, std::max(0.0, 0.45 * (pin.to - next)))
                             : end - 0.5 * bore_;
      if (end - until > 1e-4 * bore_) {
        addTube({0.0, 0.0, end}, {0.0, 0.0, until}, journal, metal);
      }
    }
  }

  void addRunning(std::size_t i) {
    const FigureCylinder& one = figure_.cylinders[i];
    const auto toVector = [](const InSpace& at) { return Vector3d(at.x, at.y, at.z); };
    const Vector3d pin = toVector(crankpinOf(figure_, i, angle_));
    const Vector3d gudgeon = toVector(gudgeonPinOf(figure_, i, angle_));
    const Vector3d up = pointing(one.axis);
    addPlate(pin, 0.68 * one.crankpin, gudgeon, 0.75 * one.gudgeonPin, 0.8 * one.rodWidth,
             {{pin, 0.5 * one.crankpin}, {gudgeon, 0.5 * one.gudgeonPin}}, draft_.ink().paper);
    addTube(gudgeon - one.skirt * up, gudgeon + one.compressionHeight * up, 0.5 * one.bore,
            draft_.ink().paper);
  }

  void addCamshaft() {
    if (!hasCamshaft()) return;
    const Vector3d at = camshaft();
    double last = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      last = std::max(last, one.along);
      const Vector3d here = at + Vector3d(0.0, 0.0, -one.along);
      const Vector3d nose = here + kCamLift * bore_ * pointing(0.5 * angle_ + *one.lobe);
      addPlate(here, kCamRadius * bore_, nose, 0.5 * kCamRadius * bore_, 0.2 * bore_, {},
               draft_.ink().fill);
    }
    draft_.line(seen(at + Vector3d(0.0, 0.0, 0.4 * bore_)),
                seen(at + Vector3d(0.0, 0.0, -last - 0.4 * bore_)), draft_.centre());
  }

  void paintAxes() {
    double last = 0.0;
    for (const FigureCylinder& one : figure_.cylinders) {
      last = std::max(last, one.along);
      const Vector3d here(0.0, 0.0, -one.along);
      draft_.line(seen(here), seen(here + (top(one) + kAxis * bore_) * pointing(one.axis)),
                  draft_.centre());
    }
    draft_.line(seen({0.0, 0.0, 0.75 * bore_}), seen({0.0, 0.0, -last - 0.75 * bore_}),
                draft_.centre());
  }

  /// Cylinders that stand behind each other share a place for their names; one that would lie over
  /// another goes further out.
  void paintNames() {
    struct Name {
      QPointF at;
      QPointF out;  ///< along the axis
      QString text;
    };
    std::vector<Name> names;
    for (const FigureCylinder& one : figure_.cylinders) {
      const Vector3d up = pointing(one.axis);
      const Vector3d foot(0.0, 0.0, -one.along);
      const QPointF at = seen(foot + (top(one) + kName * bore_) * up);
      const auto found = std::ranges::find_if(names, [&](const Name& name) {
        return (name.at - at).manhattanLength() < draft_.textHeight();
      });
      if (found == names.end()) {
        const QPointF out = at - seen(foot);
        names.push_back({at, out / std::max(1.0, std::hypot(out.x(), out.y())), one.name});
      } else {
        found->text += QStringLiteral(", ") + one.name;
      }
    }
    const double step = 0.25 * draft_.textHeight();
    constexpr int kMostSteps = 16;
    std::vector<QRectF> taken;
    for (const Name& name : names) {
      const double width = draft_.textWidth(name.text, true);
      QRectF box({}, QSizeF(width, draft_.textHeight()));
      box.moveCenter(name.at);
      const auto lies = [&](const QRectF& other) { return other.intersects(box); };
      for (int i = 0; i < kMostSteps && std::ranges::any_of(taken, lies); ++i) {
        box.translate(step * name.out);
      }
      taken.push_back(box);
      draft_.label(box.center(), name.text, true);
    }
  }

  Drafting& draft_;
  const CrankFigure& figure_;
  Eigen::Matrix3d look_;
  double angle_;
  double bore_ = 0.0;
  double scale_ = 1.0;
  QPointF origin_;
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

double firstTop(const CrankFigure& figure) {
  const FigureCylinder& one = figure.cylinders.front();
  return one.axis - one.ahead + motion::topDeadCentreAngle(one.mechanism);
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
