#include "ui/drawings/star_painter.h"

#include <QStringList>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "ui/drawings/caption.h"

namespace strokewright::ui {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;
constexpr double kSame = 0.05 * kDegree;

/// [mm] around the pins of the star.
struct Around {
  double names;
  double rotation;
  double all;
};
constexpr Around kAround = {4.5, 7.5, 9.5};
constexpr Around kCloser = {2.7, 4.9, 6.6};

/// Where an angle points: up at 0, on in the sense of rotation.
QPointF pointing(double angle, bool clockwise) {
  const double sense = clockwise ? 1.0 : -1.0;
  return {sense * std::sin(angle), -std::cos(angle)};
}

/// From 0 to a turn.
double within(double angle) { return angle - kTurn * std::floor(angle / kTurn); }

QString degrees(double angle, const QString& mark) {
  const double rounded = std::round(angle / kDegree * 10.0) / 10.0;
  return QString::number(rounded, 'f', rounded == std::round(rounded) ? 0 : 1)
      .replace(QChar(u'.'), mark)
      .replace(QChar(u'-'), QChar(u'−'));
}

/// Those that point one way, with the names of all.
struct Ray {
  double angle;
  QStringList names;
};

template <typename AngleOf>
std::vector<Ray> raysOf(const Star& star, AngleOf angleOf, double closer = kSame) {
  std::vector<Ray> rays;
  for (const StarThrow& one : star.throws) {
    const auto found = std::ranges::find_if(rays, [&](const Ray& ray) {
      return std::abs(std::remainder(ray.angle - angleOf(one), kTurn)) < closer;
    });
    if (found != rays.end()) {
      found->names += one.name;
    } else {
      rays.push_back({angleOf(one), {one.name}});
    }
  }
  return rays;
}

/// What stands outside of a pin.
struct Names {
  QRectF box;
  QStringList lines;
};

/// So many to a line.
QStringList inLines(const QStringList& names, int most) {
  QStringList lines;
  for (int i = 0; i < names.size(); i += most) {
    lines += names.mid(i, most).join(QStringLiteral(", "));
    if (i + most < names.size()) lines.back() += QChar(u',');
  }
  return lines;
}

/// Names at the pins, outside of them; those of pins that stand closer than a line share a place.
/// @param most in a line
std::vector<Names> namesOf(const Drafting& draft, const Star& star, QPointF centre, double radius,
                           int most) {
  std::vector<Names> all;
  const auto ahead = [](const StarThrow& one) { return one.ahead; };
  const double height = draft.textHeight();
  for (const Ray& ray : raysOf(star, ahead, 1.2 * height / radius)) {
    const QPointF way = pointing(ray.angle, star.clockwise);
    const QStringList lines = inLines(ray.names, most);
    QSizeF size(0.0, height * static_cast<double>(lines.size()));
    for (const QString& line : lines) {
      size.setWidth(std::max(size.width(), draft.textWidth(line, true)));
    }
    // A list goes on to the outside, not over its pin.
    const QSizeF more = size - QSizeF(draft.textWidth(ray.names.front(), true), height);
    QRectF box({}, size);
    box.moveCenter(centre + radius * way +
                   0.5 * QPointF(more.width() * way.x(), more.height() * way.y()));
    all.push_back({box, lines});
  }
  return all;
}

bool findRoom(const QRectF& room, const std::vector<Names>& all) {
  return std::ranges::all_of(all, [&](const Names& one) { return room.contains(one.box); });
}

bool standApart(const std::vector<Names>& all, double clear) {
  for (auto one = all.begin(); one != all.end(); ++one) {
    const QRectF around = one->box.adjusted(-clear, 0.0, clear, 0.0);
    if (std::any_of(all.begin(), one,
                    [&](const Names& other) { return other.box.intersects(around); })) {
      return false;
    }
  }
  return true;
}

/// The part of a circle between two throws where there is most room, the first where all are alike:
/// an arc that begins beside a throw and has its tip in the sense of rotation, clear of the names.
void paintRotation(Drafting& draft, const Star& star, QPointF centre, double radius,
                   const std::vector<QRectF>& names) {
  constexpr double kMost = 110.0 * kDegree;  // of the part that is used
  constexpr double kFree = 0.23;             // of it, at either end
  std::vector<double> angles;
  for (const Ray& ray : raysOf(star, [](const StarThrow& one) { return one.ahead; })) {
    angles.push_back(within(ray.angle));
  }
  std::ranges::sort(angles);
  double begin = angles.front();
  double room = 0.0;
  for (std::size_t i = 0; i < angles.size(); ++i) {
    const double next = i + 1 < angles.size() ? angles[i + 1] : angles.front() + kTurn;
    if (next - angles[i] < room + kSame) continue;
    begin = angles[i];
    room = next - begin;
  }
  room = std::min(room, kMost);
  const double length = draft.mm(2.6);
  double from = begin + kFree * room;
  double tip = begin + (1.0 - kFree) * room;
  const double least = 0.4 * (tip - from);
  const auto isOverAName = [&](double angle) {
    const QPointF at = centre + radius * pointing(angle, star.clockwise);
    return std::ranges::any_of(names, [&](const QRectF& name) { return name.contains(at); });
  };
  while (isOverAName(from) && tip - from > least) from += kDegree;
  while (isOverAName(tip) && tip - from > least) tip -= kDegree;
  const double end = tip - length / radius;
  QPolygonF arc;
  constexpr int kSteps = 24;
  for (int i = 0; i <= kSteps; ++i) {
    arc << centre + radius * pointing(from + (end - from) * i / kSteps, star.clockwise);
  }
  draft.painter().setPen(draft.given(star.senseSaid));
  draft.painter().setBrush(Qt::NoBrush);
  draft.painter().drawPolyline(arc);
  const QPointF side = pointing(end, star.clockwise) * length / 3.0;
  QPainterPath head;
  head.moveTo(centre + radius * pointing(tip, star.clockwise));
  head.lineTo(arc.back() + side);
  head.lineTo(arc.back() - side);
  head.closeSubpath();
  if (star.senseSaid) {
    draft.painter().fillPath(head, draft.ink().line);
  } else {
    draft.outline(head, draft.narrow());
  }
}

/// On its throw, as it is entered, where it lies over no other throw, no pin and none that is
/// written; nowhere where there is no such place.
/// @param throwsOut from the centre to the pins
/// @param pin radius
void writeAngle(Drafting& draft, const QString& angle, QPointF centre, QPointF throwOut,
                const std::vector<QPointF>& throwsOut, double pin, std::vector<QRectF>& written) {
  constexpr double kWidest = 0.74;                     // of the throw
  constexpr double kPlaces[] = {0.55, 0.7, 0.4, 0.8};  // on it
  const QSizeF size(draft.textWidth(angle), draft.textHeight());
  const auto isOnAnother = [&](const QRectF& box) {
    return std::ranges::any_of(throwsOut, [&](QPointF other) {
      QPainterPath line(centre);
      line.lineTo(centre + other);
      const QPointF corner(pin, pin);
      return (other != throwOut && line.intersects(box)) ||
             QRectF(centre + other - corner, centre + other + corner).intersects(box);
    });
  };
  if (size.width() > kWidest * std::hypot(throwOut.x(), throwOut.y())) return;
  for (const double place : kPlaces) {
    QRectF box({}, size);
    box.moveCenter(centre + place * throwOut);
    if (isOnAnother(box) ||
        std::ranges::any_of(written, [&](const QRectF& other) { return other.intersects(box); })) {
      continue;
    }
    draft.label(box.center(), angle);
    written.push_back(box);
    return;
  }
}

}  // namespace

void paintStar(Drafting& draft, const QRectF& room, const Star& star) {
  const Around& around = star.angles ? kAround : kCloser;
  const double words =
      star.seenFrom.isEmpty() ? 0.0 : captionHeight(draft, star.seenFrom, room.width());
  const double half = std::min(room.width(), room.height() - words) / 2.0;
  const QPointF centre(room.center().x(), room.top() + (room.height() - words) / 2.0);
  const double least = draft.mm(4.0);
  const double widest = std::max(least, 0.92 * (half - draft.mm(around.all)));
  const auto pinOf = [&](double radius) { return std::max(draft.mm(1.2), radius * 0.09); };
  const auto namesAt = [&](double radius, int most) {
    return namesOf(draft, star, centre, radius + pinOf(radius) + draft.mm(around.names), most);
  };
  const double clear = draft.mm(1.2);
  const double edge = draft.mm(0.5);
  const QRectF inner = room.adjusted(edge, 0.0, -edge, -words);
  // A list is broken before it makes the star much smaller or lies over another.
  constexpr double kMuchSmaller = 0.75;
  double radius = 0.0;
  bool apart = false;
  int most = 0;
  for (const int inALine : {static_cast<int>(star.throws.size()), 2, 1}) {
    if (apart && radius >= kMuchSmaller * widest) break;
    double found = widest;
    while (found > least && !findRoom(inner, namesAt(found, inALine))) found -= edge;
    const bool areApart = standApart(namesAt(found, inALine), clear);
    if (std::pair(areApart, found) > std::pair(apart, radius)) {
      radius = found;
      apart = areApart;
      most = inALine;
    }
  }
  const double pin = pinOf(radius);
  for (const Ray& axis : raysOf(star, [](const StarThrow& one) { return one.axis; })) {
    draft.line(centre, centre + 1.12 * radius * pointing(axis.angle, star.clockwise),
               draft.centre());
  }
  draft.circle(centre, radius, draft.narrow());
  const std::vector<Ray> rays = raysOf(star, [](const StarThrow& one) { return one.ahead; });
  std::vector<QPointF> throwsOut;
  for (const Ray& ray : rays) {
    const QPointF way = pointing(ray.angle, star.clockwise);
    draft.line(centre, centre + (radius - pin) * way, draft.wide());
    draft.circle(centre + radius * way, pin, draft.wide(), draft.ink().fill);
    throwsOut.push_back(radius * way);
  }
  std::vector<QRectF> angles;
  for (std::size_t i = 0; i < rays.size(); ++i) {
    if (!star.angles || std::abs(rays[i].angle) <= kSame) continue;
    writeAngle(draft, degrees(rays[i].angle, star.mark) + QChar(u'°'), centre, throwsOut[i],
               throwsOut, pin, angles);
  }
  std::vector<QRectF> over;
  for (Names& one : namesAt(radius, most)) {
    const double aside = 0.5 * std::max(0.0, inner.width() - one.box.width());
    const double middle = std::clamp(one.box.center().x(), centre.x() - aside, centre.x() + aside);
    QPointF at(middle, one.box.top());
    for (const QString& line : one.lines) {
      at.setY(draft.text(at, Qt::AlignHCenter | Qt::AlignTop, line, true).bottom());
    }
    one.box.moveCenter({middle, one.box.center().y()});
    over.push_back(one.box.adjusted(-clear, -clear, clear, clear));
  }
  draft.circle(centre, pin * 1.3, draft.wide(), draft.ink().fill);
  paintRotation(draft, star, centre, radius + pin + draft.mm(around.rotation), over);
  if (!star.seenFrom.isEmpty()) {
    paintCaption(draft, room.adjusted(0.0, room.height() - words, 0.0, 0.0), star.seenFrom);
  }
}

namespace {

/// Those that fire at one moment, by their names: "1+6"; empty: they are named with the one before.
QString namesAt(const FiringBar& bar, std::size_t firing) {
  const double at = bar.firings[firing].at;
  if (firing > 0 && at - bar.firings[firing - 1].at < kSame) return {};
  QString names = bar.firings[firing].name;
  for (std::size_t j = firing + 1; j < bar.firings.size() && bar.firings[j].at - at < kSame; ++j) {
    names += QChar(u'+') + bar.firings[j].name;
  }
  return names;
}

/// Side by side on one line the names would run into each other: every other one is raised then.
bool crowded(Drafting& draft, const FiringBar& bar, double scale) {
  double right = -HUGE_VAL;
  for (std::size_t k = 0; k < bar.firings.size(); ++k) {
    const QString names = namesAt(bar, k);
    if (names.isEmpty()) continue;
    const double half = 0.5 * draft.textWidth(names);
    if (bar.firings[k].at * scale - half < right + draft.mm(0.6)) return true;
    right = bar.firings[k].at * scale + half;
  }
  return false;
}

}  // namespace

void paintFirings(Drafting& draft, const QRectF& room, const std::vector<FiringBar>& bars) {
  if (bars.empty()) return;
  double longest = 0.0;
  for (const FiringBar& bar : bars) longest = std::max(longest, bar.cycle);
  const double line = draft.textHeight();
  const double left = room.left() + draft.mm(4.0);
  const double scale = (room.width() - draft.mm(8.0)) / longest;
  const bool raised =
      std::ranges::any_of(bars, [&](const FiringBar& bar) { return crowded(draft, bar, scale); });
  const double head = raised ? 3.5 : 2.5;  // lines of text above the bar
  const double each =
      std::min(room.height() / static_cast<double>(bars.size()), (head + 2.1) * line);
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const FiringBar& bar = bars[i];
    const double top = room.top() + each * static_cast<double>(i);
    const double y = top + head * line;
    int named = 0;
    QPen pen = i == 0 ? draft.wide() : draft.narrow();
    pen.setStyle(bar.line);
    draft.text({room.left(), top}, Qt::AlignLeft | Qt::AlignTop, bar.name, false,
               draft.ink().faint);
    draft.line({left, y}, {left + bar.cycle * scale, y}, pen);
    for (std::size_t k = 0; k < bar.firings.size(); ++k) {
      const double at = bar.firings[k].at;
      const double x = left + at * scale;
      draft.line({x, y - 0.5 * line}, {x, y + 0.5 * line}, draft.wide());
      if (const QString names = namesAt(bar, k); !names.isEmpty()) {
        const double up = raised && named++ % 2 == 1 ? 1.5 * line : 0.6 * line;
        draft.text({x, y - up}, Qt::AlignHCenter | Qt::AlignBottom, names, true);
      }
      const double next = k + 1 < bar.firings.size() ? bar.firings[k + 1].at : bar.cycle;
      const QString interval = degrees(next - at, bar.mark);
      if (next - at > kSame && (next - at) * scale > draft.textWidth(interval) + draft.mm(0.8)) {
        draft.text({x + 0.5 * (next - at) * scale, y + 0.3 * line}, Qt::AlignHCenter | Qt::AlignTop,
                   interval, false, draft.ink().faint);
      }
    }
    const double end = left + bar.cycle * scale;
    draft.line({end, y - 0.25 * line}, {end, y + 0.25 * line}, draft.narrow());
  }
}

}  // namespace strokewright::ui
