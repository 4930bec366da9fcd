#include "ui/drawings/section_painter.h"

#include <QPolygonF>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/units/style.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using units::Kind;

// Outlines nobody gave, as shares of the bore.
constexpr double kSpigotWall = 0.07;
constexpr double kBarrelWall = 0.11;
constexpr double kFlange = 0.24;     // beyond the bore, also of head, spacer and gaskets
constexpr double kCrankcase = 0.32;  // beyond the bore
constexpr double kFlangeHeight = 0.11;
constexpr double kCrankcaseDepth = 0.26;
constexpr double kHeadHeight = 0.32;
constexpr double kChamberRadius = 0.40;
constexpr double kCrownShape = 0.36;  // radius of dome or dish
constexpr double kCrownThickness = 0.10;
constexpr double kSkirtThickness = 0.055;
constexpr double kTopLand = 0.06;
constexpr double kRingPitch = 0.065;
constexpr double kRingDepth = 0.042;
// The rod's eyes, as shares of their holes.
constexpr double kSmallEndOutside = 1.42;
constexpr double kBigEndOutside = 1.34;

constexpr double kDegrees = 180.0 / std::numbers::pi;  // in a radian

// Margins of the drawing [mm].
constexpr double kCallouts = 15.5;    // from the barrel to the dimension line, at least
constexpr double kToPlate = 2.5;      // from the plate to its words, sideways and upwards
constexpr double kToDimension = 4.5;  // from the widest part to the dimension line
constexpr double kDimension = 3.6;    // beyond that line: its text
constexpr double kEdge = 1.5;

constexpr std::array kReductions = {0.5, 1.0,  1.5,  2.0,  2.5,  3.0,  4.0,  5.0,  6.0, 7.5,
                                    8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0};

/// Height of a spherical cap from its volume and the radius of its base.
double capHeight(double volume, double radius) {
  double height = 0.0;
  for (int i = 0; i < 12; ++i) {
    height = 6.0 * volume / (std::numbers::pi * (3.0 * radius * radius + height * height));
  }
  return height;
}

class SectionPainter {
 public:
  SectionPainter(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                 const units::Style& style, const SectionOptions& options)
      : draft_(draft), area_(area), it_(cylinder), style_(style), options_(options) {
    pose_ = motion::pose(it_.mechanism, options.crankAngle);
    const auto stands = [&](double angle) {
      return std::abs(std::remainder(options.crankAngle - angle, 2.0 * std::numbers::pi)) < 1e-3;
    };
    const double top = motion::topDeadCentreAngle(it_.mechanism);
    drawn_.atTop = stands(top);
    // A throw that points straight down is not seen to stand beside an offset bottom dead centre.
    atBottom_ = stands(motion::bottomDeadCentreAngle(it_.mechanism)) || stands(std::numbers::pi);
    crownAtTop_ = motion::pose(it_.mechanism, top).gudgeonPin.y + it_.compressionHeight;
    place();
  }

  SectionDrawn paint() {
    paintCrank();
    paintCrankcase();
    paintLayers();
    paintBarrel();
    paintPiston();
    paintHead();
    paintRod();
    paintCentreLines();
    paintDimensions();
    return drawn_;
  }

  double reduction() const { return drawn_.reduction; }

 private:
  // ---- Where things are [m], crank axis at the origin, y up

  double outside(double share) const { return it_.bore * (0.5 + share); }
  double crown() const { return pose_.gudgeonPin.y + it_.compressionHeight; }
  double headFace() const { return it_.deckHeight + it_.headGasket; }
  double headTop() const { return headFace() + kHeadHeight * it_.bore; }
  double bigEndRadius() const { return 0.5 * kBigEndOutside * it_.bigEndEye; }
  double smallEndRadius() const { return 0.5 * kSmallEndOutside * it_.smallEnd; }
  double crankReach() const {
    return std::max<double>(it_.counterweight, it_.throwRadius + bigEndRadius());
  }
  double blockFace() const { return it_.deckHeight - it_.linerProud; }
  double gaskets() const { return it_.baseGaskets[0] + it_.baseGaskets[1] + it_.baseGaskets[2]; }
  double foot() const { return it_.seat + std::max<double>(it_.spacer, 0.0) + gaskets(); }

  /// Room from the crank axis to the edges [device units], dimensions included.
  double leftOf(double scale) const {
    return std::max((outside(kFlange) - it_.boreAxis) * scale + callouts_, reach_ * scale) +
           draft_.mm(kDimension + kEdge);
  }
  double rightOf(double scale, bool level) const {
    double numbers = level ? besideLine_ : 0.0;
    if (level && !rodCarries(scale)) {
      numbers = std::max(numbers, draft_.mm(kToText) + draft_.textWidth(length(it_.rodLength)));
    }
    return reach_ * scale + draft_.mm(kToDimension + kEdge) + numbers;
  }
  double above(double scale, bool level) const {
    const double number = std::max(crownAtTop_, it_.deckHeight) * scale + overLine_;
    const double line = it_.deckHeight * scale;  // on the left, where no number is level
    const double own = draft_.roomAlong(length(it_.deckHeight));
    const double deck = line > own ? line : line + own;
    return std::max({headTop() * scale, deck, level ? 0.0 : number});
  }
  double below(double scale, bool level) const {
    return level ? crankReach() * scale : std::max(crankReach() * scale, overLine_);
  }
  /// What words and numbers take: those beside the barrel, and the widest number on the right
  /// beside its dimension line or over its end.
  void measureWords() {
    callouts_ = draft_.mm(kCallouts);
    for (const QString& text : plateWords()) {
      callouts_ = std::max(
          callouts_, draft_.mm(kToPlate + kToText) + draft_.textWidth(text, !options_.clearances));
    }
    for (const QString& text : {length(it_.compressionHeight), length(2.0 * it_.throwRadius)}) {
      besideLine_ = std::max(besideLine_, draft_.mm(kToText) + draft_.textWidth(text));
      overLine_ = std::max(overLine_, draft_.roomAlong(text));
    }
    for (const Clearance& one : clearances()) {
      besideLine_ = std::max(besideLine_, draft_.mm(kToText) + draft_.textWidth(one.text, true));
    }
  }
  /// The rod's line carries its number: it lies between two others, with no end to draw out.
  bool rodCarries(double scale) const {
    return it_.rodLength * scale > draft_.roomAlong(length(it_.rodLength));
  }
  bool fits(double scale, bool level) const {
    return leftOf(scale) + rightOf(scale, level) <= area_.width() &&
           above(scale, level) + below(scale, level) + draft_.mm(2.0 * kEdge) <= area_.height();
  }

  /// Chooses scale and origin so that every crank angle finds room.
  void place() {
    reach_ = std::max(outside(kCrankcase) + std::abs(it_.boreAxis), crankReach());
    measureWords();
    const double withLevel = reductionWith(true);
    // Those of clearances are always level.
    const double withBeyond = clearances().empty() ? reductionWith(false) : withLevel;
    level_ = withLevel <= withBeyond;
    drawn_.reduction = std::min(withLevel, withBeyond);
    scale_ = draft_.mm(1000.0) / drawn_.reduction;
    const double spareWide = area_.width() - leftOf(scale_) - rightOf(scale_, level_);
    const double spareHigh = area_.height() - above(scale_, level_) - below(scale_, level_);
    origin_ = QPointF(area_.left() + leftOf(scale_) + spareWide / 2.0,
                      area_.top() + spareHigh / 2.0 + above(scale_, level_));
  }

  /// The least that finds room.
  /// @param level numbers too wide for their dimension lines stand beside them
  double reductionWith(bool level) const {
    const double perMetre = draft_.mm(1000.0);
    if (options_.standardScale) {
      const auto chosen = std::ranges::find_if(kReductions, [&](double reduction) {
        const double scale = perMetre / reduction;
        return (level || rodCarries(scale)) && fits(scale, level);
      });
      return chosen != kReductions.end() ? *chosen : kReductions.back();
    }
    double low = 1e-6 * perMetre;
    double high = 1e3 * perMetre;
    for (int i = 0; i < 60; ++i) {
      const double middle = std::sqrt(low * high);
      (fits(middle, level) ? low : high) = middle;
    }
    return perMetre / low;
  }

  QPointF at(double x, double y) const { return origin_ + QPointF(x, -y) * scale_; }
  QPointF at(motion::Point point) const { return at(point.x, point.y); }
  /// Of the barrel: measured from the bore's axis.
  QPointF beside(double x, double y) const { return at(it_.boreAxis + x, y); }
  /// A rectangle on one side of the bore, given from the bore's axis.
  QRectF box(int side, double inner, double outer, double low, double high) const {
    return QRectF(beside(side * inner, high), beside(side * outer, low)).normalized();
  }
  QPainterPath polygon(int side, std::initializer_list<std::pair<double, double>> corners) const {
    QPolygonF points;
    for (const auto& [x, y] : corners) points.append(beside(side * x, y));
    QPainterPath path;
    path.addPolygon(points);
    path.closeSubpath();
    return path;
  }

  // ---- Parts

  void paintCrank() {
    draft_.circle(at(0.0, 0.0), it_.counterweight * scale_, draft_.given(it_.counterweight.given),
                  draft_.ink().fill);
    draft_.circle(at(0.0, 0.0), it_.throwRadius * scale_, draft_.centre());
  }

  void paintCrankcase() {
    if (it_.direct) return;
    const double low = it_.seat - kCrankcaseDepth * it_.bore;
    for (const int side : {-1, 1}) {
      const QRectF part = box(side, outside(kSpigotWall), outside(kCrankcase), low, it_.seat);
      draft_.painter().fillRect(part, draft_.ink().paper);
      draft_.hatch(part, 2.2, true);
      draft_.rectangle(part, draft_.assumed());
      draft_.line(beside(side * outside(kSpigotWall), it_.seat),
                  beside(side * outside(kCrankcase), it_.seat), draft_.given(it_.seat.given));
    }
  }

  /// Spacer and base gaskets, from the seat upwards.
  void paintLayers() {
    if (it_.direct) return;
    for (const int side : {-1, 1}) {
      double y = it_.seat;
      if (it_.spacer > 0.0) {
        paintSpacer(box(side, outside(kSpigotWall), outside(kFlange), y, y + it_.spacer));
        y += it_.spacer;
      }
      for (const Measure& gasket : it_.baseGaskets) {
        paintGasket(box(side, outside(kSpigotWall), outside(kFlange), y, y + gasket));
        y += gasket;
      }
    }
  }

  void paintSpacer(const QRectF& plate) {
    const double least = draft_.heavy().widthF() * 2.5;
    if (plate.height() < least) {
      draft_.painter().fillRect(thickened(plate, draft_.heavy().widthF()), draft_.ink().line);
      return;
    }
    draft_.painter().fillRect(plate, draft_.ink().paper);
    draft_.hatch(plate, 0.8);
    draft_.rectangle(plate, draft_.heavy());
  }

  /// Thin sections are filled instead of hatched.
  void paintGasket(const QRectF& gasket) {
    if (gasket.height() <= 0.0) return;
    draft_.painter().fillRect(thickened(gasket, draft_.narrow().widthF()), draft_.ink().line);
  }
  static QRectF thickened(QRectF layer, double least) {
    const double missing = std::max(0.0, least - layer.height());
    return layer.adjusted(0.0, -missing / 2.0, 0.0, missing / 2.0);
  }

  void paintBarrel() {
    for (const int side : {-1, 1}) {
      const QPainterPath metal = it_.direct ? blockHalf(side) : barrelHalf(side);
      draft_.hatch(metal, 1.8);
      draft_.outline(metal, draft_.assumed());
      const double half = it_.bore / 2.0;
      draft_.line(beside(side * half, it_.linerBottom), beside(side * half, it_.deckHeight),
                  draft_.given(it_.bore.given));
      draft_.line(beside(side * half, it_.linerBottom),
                  beside(side * outside(kSpigotWall), it_.linerBottom),
                  draft_.given(it_.linerBottomGiven));
      draft_.line(beside(side * half, it_.deckHeight),
                  beside(side * outside(kFlange), it_.deckHeight), draft_.wide());
      if (it_.direct) continue;
      draft_.line(beside(side * outside(kSpigotWall), foot()),
                  beside(side * outside(kFlange), foot()), draft_.given(it_.barrel.given));
    }
  }

  QPainterPath barrelHalf(int side) const {
    const double flange = kFlangeHeight * it_.bore;
    const double inner = it_.bore / 2.0;
    const double low = std::min(it_.linerBottom, foot());
    return polygon(side, {{inner, low},
                          {outside(kSpigotWall), low},
                          {outside(kSpigotWall), foot()},
                          {outside(kFlange), foot()},
                          {outside(kFlange), foot() + flange},
                          {outside(kBarrelWall), foot() + flange},
                          {outside(kBarrelWall), it_.deckHeight - flange},
                          {outside(kFlange), it_.deckHeight - flange},
                          {outside(kFlange), it_.deckHeight},
                          {inner, it_.deckHeight}});
  }

  QPainterPath blockHalf(int side) const {
    const double inner = it_.bore / 2.0;
    const double length = it_.deckHeight - it_.linerBottom;
    const double shoulder = it_.linerBottom + 0.25 * length;
    return polygon(side, {{inner, it_.linerBottom},
                          {outside(kSpigotWall), it_.linerBottom},
                          {outside(kSpigotWall), shoulder},
                          {outside(kFlange), shoulder},
                          {outside(kFlange), blockFace()},
                          {outside(kSpigotWall), blockFace()},
                          {outside(kSpigotWall), it_.deckHeight},
                          {inner, it_.deckHeight}});
  }

  /// A cap of this volume on a level, from left to right; bulging up for a positive volume.
  void addCap(QPainterPath& path, double level, double radius, double volume) const {
    const double height = std::min(capHeight(std::abs(volume), radius), 0.9 * radius);
    const double sign = volume < 0.0 ? -1.0 : 1.0;
    constexpr int kSteps = 24;
    const double sphere = (radius * radius + height * height) / (2.0 * std::max(height, 1e-9));
    const double angle = std::asin(std::min(radius / sphere, 1.0));
    for (int i = 0; i <= kSteps; ++i) {
      const double turn = angle * (2.0 * i / kSteps - 1.0);
      const double rise = sphere * (std::cos(turn) - std::cos(angle));
      path.lineTo(beside(sphere * std::sin(turn), level + sign * rise));
    }
  }

  void paintPiston() {
    const double half = it_.bore * 0.496;
    const double low = pose_.gudgeonPin.y - it_.skirt;
    QPainterPath outer(beside(-half, low));
    outer.lineTo(beside(-half, crown()));
    if (it_.crownVolume != 0.0) addCap(outer, crown(), kCrownShape * it_.bore, it_.crownVolume);
    outer.lineTo(beside(half, crown()));
    outer.lineTo(beside(half, low));

    const QPainterPath inside = pistonInside(low);
    draft_.painter().fillPath(outer, draft_.ink().paper);
    QPainterPath metal = outer;  // a path inside another is a hole in it
    metal.closeSubpath();
    metal.addPath(inside);
    draft_.hatch(metal, 1.5, true);
    draft_.painter().fillPath(inside, draft_.ink().fill);
    draft_.outline(inside, draft_.assumed());
    draft_.outline(outer, draft_.given(it_.compressionHeight.given && it_.bore.given));
    draft_.line(beside(-half, low), beside(half, low), draft_.given(it_.skirt.given));
    paintRings();
  }

  QPainterPath pistonInside(double low) const {
    const double half = (0.496 - kSkirtThickness) * it_.bore;
    const double dish =
        it_.crownVolume < 0.0 ? capHeight(-it_.crownVolume, kCrownShape * it_.bore) : 0.0;
    const double high = std::max(crown() - dish - kCrownThickness * it_.bore,
                                 pose_.gudgeonPin.y + 0.55 * it_.gudgeonPin);
    const double corner = 0.12 * it_.bore;
    QPainterPath path(beside(-half, low));
    path.lineTo(beside(-half, high - corner));
    path.quadTo(beside(-half, high), beside(-half + corner, high));
    path.lineTo(beside(half - corner, high));
    path.quadTo(beside(half, high), beside(half, high - corner));
    path.lineTo(beside(half, low));
    path.closeSubpath();
    return path;
  }

  void paintRings() {
    const int rings = it_.twoStroke ? 2 : 3;
    for (const int side : {-1, 1}) {
      for (int i = 0; i < rings; ++i) {
        const double high = crown() - (kTopLand + i * kRingPitch) * it_.bore;
        const QRectF ring =
            box(side, (0.5 - kRingDepth) * it_.bore, 0.5 * it_.bore, high - it_.ringWidth, high);
        draft_.painter().fillRect(thickened(ring, draft_.narrow().widthF()), draft_.ink().line);
      }
    }
  }

  void paintHead() {
    const double edge = it_.headGasketBore / 2.0;
    for (const int side : {-1, 1}) {
      paintGasket(box(side, edge, outside(kFlange), it_.deckHeight, headFace()));
    }
    const double band = headFace() + it_.headRecess;
    const double half = outside(kFlange);
    QPainterPath metal(beside(-half, headTop()));
    metal.lineTo(beside(-half, headFace()));
    metal.lineTo(beside(-edge, headFace()));
    metal.lineTo(beside(-edge, band));
    if (it_.chamberVolume > 0.0) addCap(metal, band, kChamberRadius * it_.bore, it_.chamberVolume);
    metal.lineTo(beside(edge, band));
    metal.lineTo(beside(edge, headFace()));
    metal.lineTo(beside(half, headFace()));
    metal.lineTo(beside(half, headTop()));
    metal.closeSubpath();
    draft_.hatch(metal, 1.8, true);
    draft_.outline(metal, draft_.assumed());
    draft_.line(beside(-half, headFace()), beside(-edge, headFace()), draft_.wide());
    draft_.line(beside(edge, headFace()), beside(half, headFace()), draft_.wide());
  }

  void paintRod() {
    const QPointF small = at(pose_.gudgeonPin);
    const QPointF big = at(pose_.crankpin);
    const double length = std::hypot(big.x() - small.x(), big.y() - small.y());
    if (length <= 0.0) return;
    const double taper = it_.rodHalfWidth.given ? 0.0 : 0.15;
    const double upper = std::min(it_.rodHalfWidth * (1.0 - taper), 0.95 * smallEndRadius());
    const double lower = std::min(it_.rodHalfWidth * (1.0 + taper), 0.95 * bigEndRadius());
    QTransform turn;
    turn.translate(small.x(), small.y());
    turn.rotateRadians(std::atan2(big.y() - small.y(), big.x() - small.x()));
    const QPainterPath rod = turn.map(rodOutline(length, upper * scale_, lower * scale_));
    draft_.painter().fillPath(rod, draft_.ink().paper);
    draft_.outline(rod, draft_.assumed());
    if (it_.rodHalfWidth.given) {
      const double from = smallEndRadius() * scale_;
      const double to = length - bigEndRadius() * scale_;
      for (const double side : {-upper * scale_, upper * scale_}) {
        draft_.line(turn.map(QPointF(from, side)), turn.map(QPointF(to, side)), draft_.wide());
      }
    }
    paintPin(small, it_.smallEnd, it_.gudgeonPin);
    paintPin(big, it_.bigEndEye, it_.crankpin);
  }

  /// The rod lying down, small end at the origin, big end at a length to the right, with the half
  /// widths of its shank at both ends; all in device units.
  QPainterPath rodOutline(double length, double upper, double lower) const {
    const double small = smallEndRadius() * scale_;
    const double big = bigEndRadius() * scale_;
    const double smallAngle = std::asin(upper / small) * kDegrees;
    const double bigAngle = std::asin(lower / big) * kDegrees;
    QPainterPath path;
    path.arcMoveTo(QRectF(-small, -small, 2.0 * small, 2.0 * small), smallAngle);
    path.arcTo(QRectF(-small, -small, 2.0 * small, 2.0 * small), smallAngle,
               360.0 - 2.0 * smallAngle);
    path.arcTo(QRectF(length - big, -big, 2.0 * big, 2.0 * big), 180.0 + bigAngle,
               360.0 - 2.0 * bigAngle);
    path.closeSubpath();
    return path;
  }

  /// A hole and the pin in it, cut.
  void paintPin(QPointF centre, const Measure& hole, const Measure& pin) {
    draft_.circle(centre, hole / 2.0 * scale_, draft_.given(hole.given), draft_.ink().paper);
    QPainterPath cut;
    cut.addEllipse(centre, pin / 2.0 * scale_, pin / 2.0 * scale_);
    draft_.hatch(cut, 1.0);
    draft_.circle(centre, pin / 2.0 * scale_, draft_.given(pin.given));
  }

  void paintCentreLines() {
    const double reach = crankReach() + draft_.mm(1.5) / scale_;
    draft_.line(at(-reach, 0.0), at(reach, 0.0), draft_.centre());
    draft_.line(beside(0.0, -reach), beside(0.0, headTop() + draft_.mm(1.5) / scale_),
                draft_.centre());
    if (it_.boreAxis != 0.0) draft_.line(at(0.0, -reach), at(0.0, reach), draft_.centre());
    const double pin = 0.5 * it_.gudgeonPin * scale_ + draft_.mm(1.5);
    draft_.cross(at(pose_.gudgeonPin), pin);
    draft_.cross(at(pose_.crankpin), 0.5 * it_.crankpin * scale_ + draft_.mm(2.0));
    if (!drawn_.atTop) draft_.line(at(0.0, 0.0), at(pose_.crankpin), draft_.centre());
  }

  // ---- Dimensions

  QString length(double value, Kind kind = Kind::Length, int decimals = -1) const {
    return fromCore(style_.number(kind, value, decimals));
  }

  /// Of what was not given no number is shown: none is the builder's.
  QString length(const Measure& measure) const {
    return measure.given ? length(measure.value) : QStringLiteral("?");
  }
  /// Of a height in the stack: a number where the whole stack is known.
  QString height(double value) const {
    return it_.deckClearance ? length(value) : QStringLiteral("?");
  }

  /// A number that the line is too short for stands to its right where there is room, or else over
  /// its end where no other dimension begins.
  enum class End { Upper, Lower };

  void vertical(double x, double edgeLow, double low, double edgeHigh, double high,
                const QString& text, End end = End::Upper) {
    extend(x, edgeLow, low);
    extend(x, edgeHigh, high);
    const QPointF lower(x, at(0.0, std::min(low, high)).y());
    const QPointF upper(x, at(0.0, std::max(low, high)).y());
    const bool carried = std::abs(lower.y() - upper.y()) > draft_.roomAlong(text);
    const bool level = !carried && level_ && x > origin_.x();
    const bool upwards = end == End::Upper && !level;  // level text stands to the left of the way
    draft_.dimension({.from = upwards ? lower : upper,
                      .to = upwards ? upper : lower,
                      .text = text,
                      .reading = carried ? Reading::Along
                                 : level ? Reading::Level
                                         : Reading::Beyond});
  }

  /// From a part to the dimension line at x.
  void extend(double x, double edge, double level) {
    const double y = at(0.0, level).y();
    const double beyond = x < edge ? -draft_.mm(1.2) : draft_.mm(1.2);
    draft_.line(QPointF(edge, y), QPointF(x + beyond, y), draft_.narrow());
  }

  /// What the skirt keeps at bottom dead centre, between two edges [m] from bore and crank axis.
  struct Clearance {
    QPointF one;
    QPointF other;
    QString text;
  };

  /// Those that are known and asked for, from above.
  std::vector<Clearance> clearances() const {
    std::vector<Clearance> all;
    if (!options_.clearances) return all;
    const QPointF skirt(it_.bore / 2.0, pose_.gudgeonPin.y - it_.skirt);
    if (it_.skirtOut && *it_.skirtOut > 0.0) {
      all.push_back({QPointF(outside(kSpigotWall), it_.linerBottom), skirt,
                     length(*it_.skirtOut, Kind::FineLength)});
    }
    if (it_.skirtToWeb) {
      all.push_back({skirt, QPointF(smallEndRadius(), it_.counterweight),
                     length(*it_.skirtToWeb, Kind::FineLength)});
    }
    return all;
  }

  /// Their numbers stand beside the line, clear of each other.
  void paintClearances(double x) {
    double least = area_.top();
    for (const Clearance& it : clearances()) {
      for (const QPointF& edge : {it.one, it.other}) {
        extend(x, beside(edge.x(), 0.0).x() + draft_.mm(0.8), edge.y());
      }
      const double high = at(0.0, std::max(it.one.y(), it.other.y())).y();
      const double low = at(0.0, std::min(it.one.y(), it.other.y())).y();
      const double text = std::max((high + low) / 2.0, least);
      draft_.dimension({.from = QPointF(x, high),
                        .to = QPointF(x, low),
                        .text = it.text,
                        .reading = Reading::Level,
                        .bold = true,
                        .textShift = text - (high + low) / 2.0});
      least = text + draft_.textHeight();
    }
  }

  void paintDimensions() {
    const double barrel = beside(outside(kCrankcase), 0.0).x();
    const double right = std::max(barrel, at(reach_, 0.0).x()) + draft_.mm(kToDimension);
    const double shaft = at(crankReach(), 0.0).x() + draft_.mm(1.0);
    const double flange = beside(outside(kFlange), 0.0).x() + draft_.mm(0.8);
    if (drawn_.atTop) {
      const double throwTop = pose_.crankpin.y;
      const double pin = pose_.gudgeonPin.y;
      vertical(right, shaft + draft_.mm(1.5), 0.0, at(bigEndRadius(), 0.0).x() + draft_.mm(0.8),
               throwTop, length(it_.throwRadius), End::Lower);
      vertical(right, at(bigEndRadius(), 0.0).x() + draft_.mm(0.8), throwTop, flange, pin,
               length(it_.rodLength));
      vertical(right, flange, pin, flange, crown(), length(it_.compressionHeight));
    } else {
      const double below = it_.deckHeight - crown();
      vertical(right, flange, crown(), flange, it_.deckHeight, height(below));
      if (atBottom_) paintClearances(right);
    }
    const double left = beside(-outside(kFlange), 0.0).x() - callouts_;
    const double leftmost = std::min(left, at(-crankReach(), 0.0).x() - draft_.mm(3.0));
    vertical(leftmost, at(-crankReach(), 0.0).x() - draft_.mm(2.0), 0.0,
             beside(-outside(kFlange), 0.0).x() - draft_.mm(0.8), it_.deckHeight,
             height(it_.deckHeight));
    paintCallouts();
  }

  void paintCallouts() {
    const double end = beside(-outside(kFlange), 0.0).x();
    const double middle = (it_.linerBottom + it_.deckHeight) / 2.0 + 0.12 * it_.bore;
    QPointF wall = beside(-it_.bore / 2.0, middle);
    if (!plateWords().isEmpty()) {
      const QPointF foot = plateTip() - QPointF(draft_.mm(kToPlate), draft_.mm(kToPlate));
      sayPlate(foot);
      wall.setY(std::min(wall.y(), foot.y() - 1.2 * draft_.textHeight()));
    }
    draft_.leader(wall, QPointF(end, wall.y()), QStringLiteral("Ø\u202F") + length(it_.bore));
  }

  /// One below the other; none where there is no plate.
  QStringList plateWords() const {
    if (it_.direct || it_.spacer == 0.0) return {};
    return {it_.spacer > 0.0 ? QStringLiteral("spacer") : QStringLiteral("skim"),
            length(std::abs(it_.spacer.value))};
  }

  QPointF plateTip() const {
    return beside(-outside(kFlange), it_.seat + std::max<double>(it_.spacer, 0.0) / 2.0);
  }

  void sayPlate(QPointF foot) {
    const bool bold = !options_.clearances;  // then those are the answer
    const QStringList words = plateWords();
    draft_.leader(plateTip(), foot, words.front(), bold);
    draft_.text(foot + QPointF(-draft_.mm(0.7), draft_.textHeight()), Qt::AlignRight, words.back(),
                bold);
  }

  Drafting& draft_;
  const QRectF area_;
  const Cylinder& it_;
  const units::Style& style_;
  const SectionOptions& options_;
  motion::Pose pose_;
  double scale_ = 1.0;  ///< [device units per m]
  double reach_ = 0.0;  ///< [m] of the widest part from the crank axis
  QPointF origin_;      ///< the crank axis [device units]
  SectionDrawn drawn_;
  bool atBottom_ = false;
  bool level_ = false;       ///< numbers have room to the right of the dimension line
  double callouts_ = 0.0;    ///< [device units]
  double besideLine_ = 0.0;  ///< [device units]
  double overLine_ = 0.0;    ///< [device units]
  double crownAtTop_ = 0.0;  ///< [m] above the crank axis
};

}  // namespace

SectionDrawn paintSection(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                          const units::Style& style, const SectionOptions& options) {
  return SectionPainter(draft, area, cylinder, style, options).paint();
}

double standardReduction(Drafting& draft, const QRectF& area, const Cylinder& cylinder,
                         const units::Style& style) {
  return SectionPainter(draft, area, cylinder, style, {.standardScale = true}).reduction();
}

QString notFromNumbers(const Cylinder& cylinder) {
  QString text = QStringLiteral("Thin dash-dotted: not from your numbers");
  if (!cylinder.notGiven.isEmpty()) {
    text += QStringLiteral(". Not entered: ") + cylinder.notGiven.join(QStringLiteral(", "));
  }
  return text;
}

}  // namespace strokewright::ui
