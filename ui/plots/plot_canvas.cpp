#include "ui/plots/plot_canvas.h"

// The library's header is written with Qt's short keywords, which the window does without.
#define signals Q_SIGNALS
#define slots Q_SLOTS
#define foreach Q_FOREACH
#include <qcustomplot.h>
#undef signals
#undef slots
#undef foreach

#include <QPicture>
#include <algorithm>
#include <array>
#include <cmath>

#include "ui/drawings/boxes.h"

namespace strokewright::ui {
namespace {

constexpr double kPad = 4.0;         // [px] around texts
constexpr double kLeader = 26.0;     // [px] from a line's end to its label
constexpr double kHatchStep = 12.0;  // [px] between hatch lines
constexpr double kMarkRadius = 4.5;  // [px]
constexpr double kLabelInset = 8.0;  // [px] of an area's label, and how far it is moved at a time
constexpr double kLabelRim = 1.0;    // [px] of bare words, half a heavy line
constexpr double kLabelGap = 3.0;    // [px] between it and the area's line

QString numberText(const units::Style& style, double number, int decimals) {
  return QString::fromStdString(style.number(units::Kind::Ratio, number, decimals));
}

/// Ticks at plain numbers, or at parts of a turn, worded in the style of the scene.
class Ticker final : public QCPAxisTicker {
 public:
  /// @param most ticks where there is room
  Ticker(const QCPAxis& drawn, const PlotAxis& axis, const units::Style& style, int most)
      : drawn_(drawn), axis_(axis), style_(style), most_(most) {}

 protected:
  double getTickStep(const QCPRange& range) override {
    step_ = spread(range);
    if (axis_.degrees && step_ > 5.0) {
      static constexpr std::array kParts{10.0, 15.0, 30.0, 45.0, 90.0, 180.0, 360.0};
      const auto* const part = std::lower_bound(kParts.begin(), kParts.end() - 1, step_ * 0.8);
      step_ = *part;
    }
    return step_;
  }
  int getSubTickCount(double step) override {
    return axis_.degrees ? 2 : QCPAxisTicker::getSubTickCount(step);
  }
  QString getTickLabel(double tick, const QLocale& /*locale*/, QChar /*format*/,
                       int /*precision*/) override {
    int decimals = 0;
    for (double scaled = step_; decimals < 6 && std::abs(scaled - std::round(scaled)) > 1e-6;
         scaled *= 10.0) {
      ++decimals;
    }
    return numberText(style_, tick, decimals);
  }

 private:
  /// The step at which no more figures stand side by side or above each other than have room, once
  /// that is known.
  double spread(const QCPRange& range) {
    const QFontMetricsF metrics(drawn_.tickLabelFont());
    const QRect room = drawn_.axisRect()->rect();
    setTickCount(most_);
    if (room.isEmpty()) return QCPAxisTicker::getTickStep(range);
    if (drawn_.orientation() == Qt::Horizontal) {
      const double widest = metrics.horizontalAdvance(numberText(style_, range.upper, 0));
      setTickCount(std::clamp(static_cast<int>(room.width() / (2.0 * widest)), 1, most_));
      return QCPAxisTicker::getTickStep(range);
    }
    const double least = kLineHeights * metrics.height() * range.size() / room.height();
    double step = QCPAxisTicker::getTickStep(range);
    for (int count = most_ - 1; count > 0 && step < least; --count) {
      setTickCount(count);
      step = QCPAxisTicker::getTickStep(range);
    }
    return step;
  }

  static constexpr double kLineHeights = 1.0;  // between figures, which have no descent
  const QCPAxis& drawn_;
  PlotAxis axis_;
  units::Style style_;
  int most_;
  double step_ = 1.0;
};

QSharedPointer<QCPAxisTicker> tickerFor(const QCPAxis& drawn, const PlotAxis& axis,
                                        const units::Style& style, int most) {
  if (axis.names.empty()) {
    return QSharedPointer<Ticker>::create(drawn, axis, style, most);
  }
  auto words = QSharedPointer<QCPAxisTickerText>::create();
  for (const auto& [at, name] : axis.names) {
    words->addTick(at, name);
  }
  return words;
}

/// The words in at most so many lines, as short as can be; "9500 rpm" with its hard space is one.
QString inLines(const QString& words, int lines) {
  const QStringList parts = words.split(u' ');
  const auto within = [&](qsizetype letters) {
    QStringList broken{parts.front()};
    for (const QString& part : parts.sliced(1)) {
      const bool fits = broken.back().size() + 1 + part.size() <= letters;
      if (fits) {
        broken.back() += u' ' + part;
      } else {
        broken << part;
      }
    }
    return broken;
  };
  qsizetype letters = words.size() / lines;
  while (within(letters).size() > lines) ++letters;
  return within(letters).join(u'\n');
}

/// Labels that keep out of each other's way, and off the marks.
class LabelPlaces {
 public:
  bool isFree(const QRectF& rect) const {
    return std::none_of(taken_.begin(), taken_.end(),
                        [&](const QRectF& other) { return other.intersects(rect); });
  }
  void take(const QRectF& rect) { taken_.push_back(rect); }
  void take(const QRectF& rect, const QString& words) {
    take(rect);
    labels_.push_back({words, rect});
  }
  const std::vector<PlotLabel>& labels() const { return labels_; }

 private:
  std::vector<QRectF> taken_;
  std::vector<PlotLabel> labels_;
};

struct Look {
  const PlotScene& scene;
  const PlotTheme& theme;
};

/// What all our own drawing has in common.
class Drawing : public QCPLayerable {
 public:
  Drawing(QCustomPlot* plot, const QString& layer, Look look)
      : QCPLayerable(plot, layer), look_(look) {}

 protected:
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override {
    painter->setAntialiasing(true);
  }
  QCPAxisRect* rect(int panel) const { return parentPlot()->axisRect(panel); }
  QPointF place(int panel, QPointF at) const {
    QCPAxisRect* const axes = rect(panel);
    return {axes->axis(QCPAxis::atBottom)->coordToPixel(at.x()),
            axes->axis(QCPAxis::atLeft)->coordToPixel(at.y())};
  }
  /// @param solid  nothing of what lies below shows through, as of a heavy line
  void write(QCPPainter& painter, const QRectF& where, const QString& text, Ink ink,
             bool solid = false) const {
    QColor ground = look_.theme.paper;
    if (!solid)
      ground.setAlpha(230);  // what lies below is to be guessed, never to strike the words
    painter.fillRect(where, ground);
    painter.setPen(look_.theme[ink]);
    painter.drawText(where, Qt::AlignCenter, text);
  }
  QRectF areaOf(const PlotRegion& region) const {
    return QRectF(place(region.panel, region.least), place(region.panel, region.most)).normalized();
  }
  QRectF boxOf(const QString& text) const {
    const QFontMetricsF metrics(look_.theme.font);
    double widest = 0.0;
    const QStringList lines = text.split(u'\n');
    for (const QString& line : lines) widest = std::max(widest, metrics.horizontalAdvance(line));
    return {0.0, 0.0, widest + 2.0 * kPad,
            metrics.height() + static_cast<double>(lines.size() - 1) * metrics.lineSpacing()};
  }

  Look look_;
};

/// The areas, below the curves.
class Regions final : public Drawing {
 public:
  using Drawing::Drawing;

 protected:
  void draw(QCPPainter* painter) override {
    for (const PlotRegion& region : look_.scene.regions) drawRegion(*painter, region);
  }

 private:
  void drawRegion(QCPPainter& painter, const PlotRegion& region) const {
    const QRectF room = rect(region.panel)->rect();
    const QRectF area = areaOf(region) & room.adjusted(-9, -9, 9, 9);
    const QRectF visible = area & room;
    if (visible.isEmpty()) return;
    const QColor& colour = look_.theme[region.ink];
    if (region.fill == PlotRegion::Fill::Solid) {
      painter.fillRect(visible, colour);
    } else if (region.fill != PlotRegion::Fill::Open) {
      painter.setPen(QPen(look_.theme.hatch, 0.0));
      hatch(painter, visible, region.fill == PlotRegion::Fill::Rising);
    }
    if (region.outline != Qt::NoPen) {
      painter.setPen(QPen(colour, region.heavy ? 2.0 : 0.0, region.outline));
      painter.setBrush(Qt::NoBrush);
      painter.setClipRect(room);
      painter.drawRect(area);
      painter.setClipping(false);
    }
  }

  /// Lines at 45° that start at multiples of the step, so that neighbouring areas join.
  static void hatch(QCPPainter& painter, const QRectF& area, bool rising) {
    const double low = rising ? area.left() + area.top() : area.left() - area.bottom();
    const double high = rising ? area.right() + area.bottom() : area.right() - area.top();
    for (double c = std::ceil(low / kHatchStep) * kHatchStep; c < high; c += kHatchStep) {
      if (rising) {  // x + y = c
        const double left = std::max(area.left(), c - area.bottom());
        const double right = std::min(area.right(), c - area.top());
        painter.drawLine(QPointF(left, c - left), QPointF(right, c - right));
      } else {  // x - y = c
        const double left = std::max(area.left(), c + area.top());
        const double right = std::min(area.right(), c + area.bottom());
        painter.drawLine(QPointF(left, left - c), QPointF(right, right - c));
      }
    }
  }
};

/// A curve of thin lines, which are drawn many times faster than thick ones; side by side they are
/// as thick as the screen needs.
template <typename Plottable>
class ThinLines final : public Plottable {
 public:
  using Plottable::Plottable;

 protected:
  void draw(QCPPainter* painter) override {
    const double ratio = this->parentPlot()->bufferDevicePixelRatio();
    if (painter->modes().testFlag(QCPPainter::pmVectorized) || ratio <= 1.0) {
      return Plottable::draw(painter);
    }
    const int passes = static_cast<int>(std::ceil(ratio));
    const double spread = (ratio - 1.0) / ratio;
    painter->translate(0.0, -0.5 * spread);
    for (int pass = 0; pass < passes; ++pass) {
      Plottable::draw(painter);
      painter->translate(0.0, spread / (passes - 1));
    }
    painter->translate(0.0, -0.5 * spread - spread / (passes - 1));
  }
};

/// Marks and every label, above the curves.
class Annotations final : public Drawing {
 public:
  using Drawing::Drawing;

 protected:
  void draw(QCPPainter* painter) override {
    painter->setFont(look_.theme.font);
    LabelPlaces places;
    drawTitles(*painter);
    for (const PlotMark& mark : look_.scene.marks) {
      drawMark(*painter, mark, places);
    }
    labelCurves(*painter, places, false);  // in the margin, where they can only stand as they do
    drawn_ = drawnCurves();
    std::vector<bool> named;
    for (const PlotMark& mark : look_.scene.marks) {
      const bool may = mark.after < 0 || named[static_cast<std::size_t>(mark.after)];
      named.push_back(may && labelMark(*painter, mark, places));
    }
    labelCurves(*painter, places, true);
    for (const PlotRegion& region : look_.scene.regions) {
      labelRegion(*painter, region, places);
    }
    labels_ = places.labels();
  }

 public:
  const std::vector<PlotLabel>& labels() const { return labels_; }

 private:
  /// Over the axis; a longer one begins farther left, and one too long for all of it is cut short.
  void drawTitles(QCPPainter& painter) const {
    const QFontMetricsF metrics(look_.theme.font);
    const double whole = parentPlot()->viewport().width();
    painter.setPen(look_.theme.text);
    int panel = 0;
    for (const PlotPanel& each : look_.scene.panels) {
      const QRect box = rect(panel++)->rect();
      const QString title = metrics.elidedText(each.y.title, Qt::ElideRight, whole);
      const double left = std::min(box.left() + 1.0, whole - metrics.horizontalAdvance(title));
      painter.drawText(QPointF(std::max(0.0, left), box.top() - 0.35 * metrics.height()), title);
    }
  }

  void drawMark(QCPPainter& painter, const PlotMark& mark, LabelPlaces& places) const {
    const QPointF at = place(mark.panel, mark.at);
    if (mark.shape == PlotMark::Shape::None || !rect(mark.panel)->rect().contains(at.toPoint())) {
      return;
    }
    const QColor colour = look_.theme[mark.ink];
    painter.setPen(QPen(colour, 0.0));
    const QPointF least = place(mark.panel, mark.at - mark.plusMinus);
    const QPointF most = place(mark.panel, mark.at + mark.plusMinus);
    if (mark.plusMinus.x() > 0.0) {
      painter.drawLine(QPointF(least.x(), at.y()), QPointF(most.x(), at.y()));
    }
    if (mark.plusMinus.y() > 0.0) {
      painter.drawLine(QPointF(at.x(), least.y()), QPointF(at.x(), most.y()));
    }
    const QRectF bars = QRectF(least, most).normalized();
    places.take(QRectF(bars.left(), at.y() - 0.5, bars.width(), 1.0));
    places.take(QRectF(at.x() - 0.5, bars.top(), 1.0, bars.height()));
    painter.setPen(QPen(colour, 1.5));
    painter.setBrush(mark.shape == PlotMark::Shape::Disc ? colour : look_.theme.paper);
    const double r = kMarkRadius;
    switch (mark.shape) {
      case PlotMark::Shape::Square:
        painter.drawRect(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
        break;
      case PlotMark::Shape::Diamond:
        painter.drawPolygon(QPolygonF({at + QPointF(0, -1.3 * r), at + QPointF(1.3 * r, 0),
                                       at + QPointF(0, 1.3 * r), at + QPointF(-1.3 * r, 0)}));
        break;
      default:
        painter.drawEllipse(at, r, r);
    }
    places.take(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
  }

  /// @return the label stands
  bool labelMark(QCPPainter& painter, const PlotMark& mark, LabelPlaces& places) const {
    const QRectF room = rect(mark.panel)->rect();
    if (mark.label.isEmpty() || !room.adjusted(-1, -1, 1, 1).contains(place(mark.panel, mark.at))) {
      return false;
    }
    return mark.shape == PlotMark::Shape::None ? labelEnd(painter, mark, room, places)
                                               : labelPoint(painter, mark, room, places);
  }

  /// Bare words belong to what ends there, a bar or a line: beside its end, never on a bar, first
  /// where they cover no other; a little higher or lower where others stand, or farther on where a
  /// line runs through them; left out where there is no room.
  bool labelEnd(QCPPainter& painter, const PlotMark& mark, const QRectF& room,
                LabelPlaces& places) const {
    const QPointF at = place(mark.panel, mark.at);
    const double widest = room.width() - 2.0;
    const QString words = boxOf(mark.label).width() <= widest
                              ? mark.label
                              : QFontMetricsF(look_.theme.font)
                                    .elidedText(mark.label, Qt::ElideRight, widest - 2.0 * kPad);
    const bool names = at.x() < room.left() + 1.0;  // its row, from the axis on
    QRectF box = boxOf(words);
    enum class Over { Nothing, Lines, Bars };
    const auto stands = [&](double left, double down, Over over) {
      box.moveTopLeft({left, at.y() - box.height() / 2 + down});
      box.moveTop(std::max(room.top(), std::min(box.top(), room.bottom() - box.height())));
      const QRectF within = box.adjusted(kLabelRim, 0.0, -kLabelRim, 0.0);  // the line is beside it
      const bool before = left < at.x();
      return room.contains(box) && places.isFree(within) &&
             !(before && coversArea(mark.panel, within)) &&
             !(over != Over::Bars && !names && coversBar(mark.panel, within)) &&
             !(over == Over::Nothing && coversCurve(mark.panel, within));
    };
    const auto somewhere = [&](double down, Over over) {
      std::vector<double> lefts{at.x(), at.x() - box.width()};
      const double farthest = !names && stands(at.x(), down, Over::Lines) ? box.width() : 0.0;
      for (double on = kLabelInset; on < farthest; on += kLabelInset) lefts.push_back(at.x() + on);
      return std::any_of(lefts.begin(), lefts.end(),
                         [&](double left) { return stands(left, down, over); });
    };
    for (const Over over : {Over::Nothing, Over::Lines, Over::Bars}) {
      for (const double share : {0.0, 0.25, -0.25, 0.5, -0.5}) {
        const bool steps = mark.after < 0 || share == 0.0;  // the others keep to their bars
        if (!steps || !somewhere(share * box.height(), over)) continue;
        places.take(box, mark.label);
        write(painter, box.adjusted(kLabelRim, 0.0, -kLabelRim, 0.0), words, Ink::Text, true);
        return true;
      }
    }
    return false;
  }

  /// Next to its mark and nearer to it than to any other, first where no curve is; away from it,
  /// led to it, where there is no room. One that keeps clear stays within the frame where it can.
  bool labelPoint(QCPPainter& painter, const PlotMark& mark, const QRectF& room,
                  LabelPlaces& places) const {
    const QPointF at = place(mark.panel, mark.at);
    const QRectF beyond = room.adjusted(0, 0, rightMargin(), 0);
    const double gap = kMarkRadius + 1.0;
    QString words;
    QRectF box;
    const auto stands = [&](QPointF corner, const QRectF& limits, bool clear) {
      box.moveTopLeft(corner);
      return limits.contains(box) && places.isFree(box) && !(clear && coversCurve(mark.panel, box));
    };
    const auto near = [&](const QRectF& limits, bool clear) {
      const double w = box.width();
      const double h = box.height();
      const std::array offsets{QPointF(gap, -h - gap),      QPointF(gap, -h / 2),
                               QPointF(gap, gap),           QPointF(-w - gap, -h / 2),
                               QPointF(-w - gap, -h - gap), QPointF(-w - gap, gap),
                               QPointF(-w / 2, -h - gap),   QPointF(-w / 2, gap),
                               QPointF(gap, -2 * h - gap),  QPointF(-w - gap, h + gap)};
      return std::any_of(offsets.begin(), offsets.end(), [&](QPointF offset) {
        return belongs(QRectF(at + offset, box.size()), mark) && stands(at + offset, limits, clear);
      });
    };
    const auto away = [&] {
      const std::vector<QPointF> corners =
          cornersAround(at + QPointF(gap, -box.height() / 2), box.size(), room);
      return std::any_of(corners.begin(), corners.end(),
                         [&](QPointF corner) { return stands(corner, room, true); });
    };
    const auto clearOfFrame = [&](int lines) {
      words = inLines(mark.label, lines);
      box = boxOf(words);
      return near(room, true) || away();
    };
    if (!mark.keepsClear || !(clearOfFrame(1) || clearOfFrame(2) || clearOfFrame(3))) {
      words = mark.label;
      box = boxOf(words);
      if (!near(beyond, true) && (mark.keepsClear || !(near(beyond, false) || away())))
        return false;
    }
    places.take(box, mark.label);
    if (!mark.keepsClear) leadTo(painter, box, at);  // those say whose they are
    write(painter, box, words, Ink::Text);
    return true;
  }

  /// No other mark is as near to the label as its own.
  bool belongs(const QRectF& box, const PlotMark& mark) const {
    const double own = distance(box, place(mark.panel, mark.at));
    return std::none_of(look_.scene.marks.begin(), look_.scene.marks.end(),
                        [&](const PlotMark& other) {
                          return &other != &mark && other.panel == mark.panel &&
                                 other.at != mark.at && other.shape != PlotMark::Shape::None &&
                                 distance(box, place(other.panel, other.at)) <= own;
                        });
  }

  /// To the mark of a label that does not touch it.
  void leadTo(QCPPainter& painter, const QRectF& box, QPointF at) const {
    const double far = distance(box, at);
    if (far < 2.0 * kMarkRadius + kPad) return;
    const QPointF from = nearestIn(box, at);
    painter.setPen(QPen(look_.theme.faint, 0.0));
    painter.drawLine(from, at + (from - at) * (kMarkRadius / far));
  }

  bool coversArea(int panel, const QRectF& box) const {
    return std::any_of(look_.scene.regions.begin(), look_.scene.regions.end(),
                       [&](const PlotRegion& region) { return covers(panel, box, region); });
  }
  bool coversBar(int panel, const QRectF& box) const {
    return std::any_of(
        look_.scene.regions.begin(), look_.scene.regions.end(), [&](const PlotRegion& region) {
          return region.fill == PlotRegion::Fill::Solid && covers(panel, box, region);
        });
  }
  bool covers(int panel, const QRectF& box, const PlotRegion& region) const {
    return region.panel == panel && areaOf(region).intersects(box);
  }

  /// Where a label of this size could stand in a panel, the nearest first.
  static std::vector<QPointF> cornersAround(QPointF from, QSizeF size, const QRectF& room) {
    std::vector<QPointF> corners;
    for (double y = room.top() + 1.0; y + size.height() < room.bottom(); y += 0.5 * size.height()) {
      for (double x = room.left() + 1.0; x + size.width() < room.right(); x += kLabelInset) {
        corners.emplace_back(x, y);
      }
    }
    std::ranges::sort(corners, {}, [&](QPointF corner) {
      const QPointF way = corner - from;
      return QPointF::dotProduct(way, way);
    });
    return corners;
  }

  /// Every curve as it lies on the paper.
  std::vector<QPolygonF> drawnCurves() const {
    std::vector<QPolygonF> drawn;
    for (const PlotCurve& curve : look_.scene.curves) {
      QPolygonF& line = drawn.emplace_back();
      for (std::size_t i = 0; i < curve.x.size(); ++i) {
        line << place(curve.panel, {curve.x[i], curve.y[i]});
      }
    }
    return drawn;
  }

  bool coversCurve(int panel, const QRectF& box) const {
    for (std::size_t i = 0; i < drawn_.size(); ++i) {
      const QPolygonF& line = drawn_[i];
      if (look_.scene.curves[i].panel != panel) continue;
      if (std::adjacent_find(line.begin(), line.end(), [&](QPointF from, QPointF to) {
            return runsThrough(from, to, box);
          }) != line.end()) {
        return true;
      }
    }
    return false;
  }

  /// A straight line has a part in the box.
  static bool runsThrough(QPointF from, QPointF to, const QRectF& box) {
    double first = 0.0;
    double last = 1.0;
    const auto within = [&](double start, double end, double least, double most) {
      if (start == end) return start >= least && start <= most;
      const auto [in, out] =
          std::minmax({(least - start) / (end - start), (most - start) / (end - start)});
      first = std::max(first, in);
      last = std::min(last, out);
      return first <= last;
    };
    return within(from.x(), to.x(), box.left(), box.right()) &&
           within(from.y(), to.y(), box.top(), box.bottom());
  }

  double rightMargin() const { return parentPlot()->axisRect(0)->margins().right(); }

  struct End {
    const PlotCurve* curve;
    QPointF at;
    QRectF box;
  };

  /// Where the curve leaves the panel for the last time, or ends in it.
  std::optional<QPointF> visibleEnd(const PlotCurve& curve) const {
    const QRectF room = QRectF(rect(curve.panel)->rect()).adjusted(-1, -1, 1, 1);
    QPointF outside;
    for (std::size_t i = curve.x.size(); i-- > 0;) {
      const QPointF at = place(curve.panel, {curve.x[i], curve.y[i]});
      if (room.contains(at)) return i + 1 == curve.x.size() ? at : at + leaving(at, outside, room);
      outside = at;
    }
    return std::nullopt;
  }

  /// The part of the way from a place inside to one outside that lies inside.
  static QPointF leaving(QPointF inside, QPointF outside, const QRectF& room) {
    const QPointF way = outside - inside;
    double share = 1.0;
    if (way.x() > 0.0) share = std::min(share, (room.right() - inside.x()) / way.x());
    if (way.x() < 0.0) share = std::min(share, (room.left() - inside.x()) / way.x());
    if (way.y() > 0.0) share = std::min(share, (room.bottom() - inside.y()) / way.y());
    if (way.y() < 0.0) share = std::min(share, (room.top() - inside.y()) / way.y());
    return share * way;
  }

  /// @param inside those that end within a panel, else those that leave it on the right
  void labelCurves(QCPPainter& painter, LabelPlaces& places, bool inside) const {
    for (int panel = 0; panel < static_cast<int>(look_.scene.panels.size()); ++panel) {
      std::vector<End> beside;
      for (const PlotCurve& curve : look_.scene.curves) {
        const auto at =
            curve.panel == panel && !curve.label.isEmpty() ? visibleEnd(curve) : std::nullopt;
        if (!at) {
          continue;
        }
        QRectF box = boxOf(curve.label);
        const bool leaves = at->x() > rect(panel)->right() - 6;
        if (leaves == inside) continue;
        if (leaves) {
          box.moveTopLeft({rect(panel)->right() + kLeader, at->y() - box.height() / 2});
          beside.push_back({&curve, *at, box});
        } else {
          labelInside(painter, curve, *at, box, places);
        }
      }
      labelBeside(painter, panel, beside, places);
    }
  }

  /// A curve that leaves at the foot or ends within: the label stands on it.
  void labelInside(QCPPainter& painter, const PlotCurve& curve, QPointF at, QRectF box,
                   LabelPlaces& places) const {
    box.moveCenter(at);
    const QRectF room = QRectF(rect(curve.panel)->rect()).adjusted(2.0, 2.0, -2.0, -2.0);
    box.moveBottom(std::min(box.bottom(), room.bottom()));
    box.moveRight(std::min(box.right(), room.right()));
    box.moveLeft(std::max(box.left(), room.left()));
    if (places.isFree(box)) {
      places.take(box, curve.label);
      write(painter, box, curve.label, Ink::Text);
    }
  }

  /// Curves that leave on the right: labels in the margin, pushed apart, led to by the line itself.
  void labelBeside(QCPPainter& painter, int panel, std::vector<End>& ends,
                   LabelPlaces& places) const {
    std::sort(ends.begin(), ends.end(),
              [](const End& a, const End& b) { return a.at.y() < b.at.y(); });
    const QRectF room = rect(panel)->rect();
    double next = room.top() - 0.5 * QFontMetricsF(look_.theme.font).height();
    for (End& end : ends) {
      end.box.moveTop(std::max(end.box.top(), next));
      next = end.box.bottom();
    }
    double last = room.bottom() + 0.5 * QFontMetricsF(look_.theme.font).height();
    for (auto end = ends.rbegin(); end != ends.rend(); ++end) {
      end->box.moveBottom(std::min(end->box.bottom(), last));
      last = end->box.top();
    }
    for (const End& end : ends) {
      painter.setPen(
          QPen(look_.theme[end.curve->ink], end.curve->heavy ? 2.0 : 0.0, end.curve->line));
      const QPointF word(end.box.left() + 2.0, end.box.center().y());
      painter.drawLine(end.at, word);
      places.take(QRectF(end.at, word).normalized().adjusted(0.0, -1.0, 0.0, 1.0));
      places.take(end.box, end.curve->label);
      painter.setPen(look_.theme.text);
      painter.drawText(end.box, Qt::AlignCenter, end.curve->label);
    }
  }

  /// Within the area, in as few lines as have room; else beside it, led to it.
  void labelRegion(QCPPainter& painter, const PlotRegion& region, LabelPlaces& places) const {
    constexpr std::array kLines{1, 2, 3};
    const QRectF visible = areaOf(region) & QRectF(rect(region.panel)->rect());
    if (region.label.isEmpty() || visible.isEmpty()) return;
    const auto by = [&](auto way) {
      return std::any_of(kLines.begin(), kLines.end(), [&](int lines) {
        return (this->*way)(painter, region, inLines(region.label, lines), places);
      });
    };
    if (!by(&Annotations::labelWithin)) by(&Annotations::labelOutside);
  }

  /// Just above the line where the area begins; higher up, with a leader to it, where others are in
  /// the way.
  bool labelWithin(QCPPainter& painter, const PlotRegion& region, const QString& words,
                   LabelPlaces& places) const {
    const QRectF area = areaOf(region);
    const QRectF visible = area & QRectF(rect(region.panel)->rect());
    QRectF box = boxOf(words);
    const double lowest = visible.bottom() - kLabelGap - box.height();
    for (double top = lowest; top > visible.top(); top -= 0.5 * box.height()) {
      for (double left = visible.left() + kLabelInset; left + box.width() < visible.right();
           left += kLabelInset) {
        box.moveTopLeft({left, top});
        const QRectF leader(left - kLabelGap, box.center().y(), kLabelGap,
                            visible.bottom() - box.center().y());
        const bool led = top < lowest && area.bottom() == visible.bottom();
        if (!isClear(box, region, places) || (led && !places.isFree(leader))) continue;
        places.take(box, region.label);
        if (led) {
          places.take(leader);
          lead(painter, leader);
        }
        write(painter, box, words, Ink::Text);
        return true;
      }
    }
    return false;
  }

  /// As near as there is room to where the area begins; to its middle, where that is not seen.
  bool labelOutside(QCPPainter& painter, const PlotRegion& region, const QString& words,
                    LabelPlaces& places) const {
    const QRectF room = rect(region.panel)->rect();
    const QRectF area = areaOf(region);
    const QRectF visible = area & room;
    const QRectF own = visible.adjusted(0.0, -kLabelGap, 0.0, kLabelGap);
    const double y = area.bottom() == visible.bottom() ? visible.bottom() : visible.center().y();
    QRectF box = boxOf(words);
    for (const bool clear : {true, false}) {
      for (const double share : {0.5, 0.1, 0.9}) {
        const QPointF at(visible.left() + share * visible.width(), y);
        const QPointF nearest = at - QPointF(box.width() / 2, box.height() / 2);
        for (const QPointF& corner : cornersAround(nearest, box.size(), room)) {
          box.moveTopLeft(corner);
          const QPointF from = nearestIn(box, at);
          const QRectF leader = QRectF(from, at).normalized().adjusted(-0.5, 0.0, 0.5, 0.0);
          if (box.intersects(own) || !isClear(box, region, places) || !places.isFree(leader) ||
              (clear && coversCurve(region.panel, box))) {
            continue;
          }
          places.take(box, region.label);
          places.take(leader);
          painter.setPen(QPen(look_.theme.faint, 0.0));
          painter.drawLine(from, at);
          drawDot(painter, at);
          write(painter, box, words, Ink::Text);
          return true;
        }
      }
    }
    return false;
  }

  /// No label stands there, and the line of no other area runs through it.
  bool isClear(const QRectF& box, const PlotRegion& region, const LabelPlaces& places) const {
    const QRectF room = rect(region.panel)->rect();
    return room.contains(box) && places.isFree(box) &&
           std::none_of(look_.scene.regions.begin(), look_.scene.regions.end(),
                        [&](const PlotRegion& other) {
                          const double line = areaOf(other).bottom();
                          return &other != &region && line > box.top() && line < box.bottom() &&
                                 line < room.bottom();
                        });
  }

  std::vector<QPolygonF> drawn_;  ///< of each curve of the scene, while it is drawn
  std::vector<PlotLabel> labels_;

  /// From the label at the upper right to the line at the lower left.
  void lead(QCPPainter& painter, const QRectF& leader) const {
    painter.setPen(QPen(look_.theme.faint, 0.0));
    painter.drawPolyline(QPolygonF({leader.topRight(), leader.topLeft(), leader.bottomLeft()}));
    drawDot(painter, leader.bottomLeft());
  }
  void drawDot(QCPPainter& painter, QPointF at) const {
    painter.setBrush(look_.theme.faint);
    painter.drawEllipse(at, 1.5, 1.5);
  }
};

/// The cursor and the frame of Shift and drag: on the screen only, over the finished picture.
class CursorLines final : public Drawing {
 public:
  CursorLines(QCustomPlot* plot, const QString& layer, Look look, const Annotations& words)
      : Drawing(plot, layer, look), words_(words) {
    setVisible(false);  // to the library, which draws its layers on paper too
  }
  void draw(QCPPainter* painter) override {
    if (cursor) {
      drawCursor(*painter);
    }
    if (band) {
      painter->setPen(QPen(look_.theme.accent, 0.0, Qt::DashLine));
      painter->setBrush(Qt::NoBrush);
      painter->drawRect(*band);
    }
    if (focused) {
      painter->setPen(QPen(look_.theme.accent, 0.0));
      painter->setBrush(Qt::NoBrush);
      painter->drawRect(QRectF(parentPlot()->viewport()).adjusted(0.5, 0.5, -0.5, -0.5));
    }
  }

  std::optional<PlotCursor> cursor;
  std::optional<QRectF> band;
  bool focused = false;

 private:
  void drawCursor(QCPPainter& painter) const {
    QRegion clear(parentPlot()->viewport());
    for (const PlotLabel& label : words_.labels()) clear -= label.box.toAlignedRect();
    painter.setClipRegion(clear);
    painter.setPen(QPen(look_.theme.accent, 0.0));
    for (int panel = 0; panel < static_cast<int>(look_.scene.panels.size()); ++panel) {
      const QRectF room = rect(panel)->rect();
      const QPointF at = place(panel, {cursor->x, cursor->y.value_or(0.0)});
      if (at.x() >= room.left() && at.x() <= room.right()) {
        painter.drawLine(QPointF(at.x(), room.top()), QPointF(at.x(), room.bottom()));
      }
      if (cursor->y && at.y() >= room.top() && at.y() <= room.bottom()) {
        painter.drawLine(QPointF(room.left(), at.y()), QPointF(room.right(), at.y()));
      }
    }
    painter.setClipping(false);
    painter.setBrush(look_.theme.paper);
    for (const auto& [panel, dot] : cursor->dots) {
      const QPointF at = place(panel, dot);
      if (QRectF(rect(panel)->rect()).contains(at)) {
        painter.drawEllipse(at, 3.0, 3.0);
      }
    }
  }

  const Annotations& words_;  ///< through which no line is drawn
};

/// The library's plot with one opaque picture as its buffer, under which the library's own stack of
/// transparent ones takes several times as long. The cursor comes on top when that is shown.
class Sheet final : public QCustomPlot {
 public:
  Sheet(QWidget* parent, Look look) : QCustomPlot(parent), look_(look) {
    mReplotting = true;  // the library never gets to fill buffers of its own
    setFocusPolicy(Qt::NoFocus);
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_OpaquePaintEvent);
    plotLayout()->clear();
    plotLayout()->setRowSpacing(2);
    new Regions(this, QStringLiteral("main"), look);  // these belong to the plot
    words = new Annotations(this, QStringLiteral("legend"), look);
    lines = new CursorLines(this, QStringLiteral("overlay"), look, *words);
  }

  void drawSoon() {
    isDrawn_ = isLaidOut_ = false;
    update();
  }

  /// Axes know their places only after this.
  void layOut() {
    if (!isLaidOut_) updateLayout();
    isLaidOut_ = true;
  }

  /// For paper of this size: the figures of an axis depend on its length.
  void layOutOn(QSize paper) {
    setViewport(QRect(QPoint(), paper));
    updateLayout();
    isLaidOut_ = false;
  }

  Annotations* words;
  CursorLines* lines;

 protected:
  void resizeEvent(QResizeEvent* /*event*/) override {
    setViewport(rect());
    drawSoon();
  }

  void paintEvent(QPaintEvent* /*event*/) override {
    if (!isDrawn_ || picture_.devicePixelRatio() != devicePixelRatioF()) drawPicture();
    QCPPainter painter(this);
    painter.drawImage(QPointF(0.0, 0.0), picture_);
    painter.setAntialiasing(true);
    lines->draw(&painter);
  }

 private:
  void drawPicture() {
    const double ratio = devicePixelRatioF();
    setBufferDevicePixelRatio(ratio);
    const QSize pixels = (QSizeF(size()) * ratio).toSize();
    if (picture_.size() != pixels) picture_ = QImage(pixels, QImage::Format_RGB32);
    picture_.setDevicePixelRatio(ratio);
    picture_.fill(look_.theme.paper);
    layOut();  // the figures of an axis depend on its length
    QCPPainter painter(&picture_);
    draw(&painter);
    isDrawn_ = isLaidOut_ = true;
  }

  Look look_;
  QImage picture_;
  bool isDrawn_ = false;
  bool isLaidOut_ = false;
};

}  // namespace

class PlotCanvas::Parts {
 public:
  explicit Parts(QWidget* parent) : plot(parent, {scene, theme}), margins(&plot) {}

  void makePanels() {
    plot.clearPlottables();
    plot.plotLayout()->clear();
    for (std::size_t i = 0; i < scene.panels.size(); ++i) {
      auto* const rect = new QCPAxisRect(&plot);
      rect->setAutoMargins(QCP::msLeft | QCP::msBottom);
      rect->setMarginGroup(QCP::msLeft, &margins);
      plot.plotLayout()->addElement(static_cast<int>(i), 0, rect);
      for (QCPAxis* const each : rect->axes()) {
        each->setLayer(QStringLiteral("axes"));
        each->grid()->setLayer(QStringLiteral("grid"));
      }
      for (const auto side : {QCPAxis::atTop, QCPAxis::atRight}) {
        rect->axis(side)->setVisible(true);
        rect->axis(side)->setTicks(false);
        rect->axis(side)->setTickLabels(false);
      }
    }
  }

  void dress() {
    plot.setBackground(theme.paper);
    for (int i = 0; i < plot.axisRectCount(); ++i) {
      const bool lowest = i + 1 == plot.axisRectCount();
      const PlotPanel& panel = scene.panels[static_cast<std::size_t>(i)];
      QCPAxisRect* const rect = plot.axisRect(i);
      rect->setMargins(QMargins(0, titleHeight(panel), endRoom(), 0));
      for (QCPAxis* const axis : rect->axes()) {
        dressAxis(*axis);
      }
      QCPAxis& x = *rect->axis(QCPAxis::atBottom);
      x.setTickLabels(lowest);
      x.setLabel(lowest ? panel.x.title : QString());
      x.setTicker(tickerFor(x, panel.x, scene.style, 5));
      QCPAxis& y = *rect->axis(QCPAxis::atLeft);
      y.setTicker(tickerFor(y, panel.y, scene.style, scene.panels.size() > 1 ? 4 : 7));
      y.grid()->setVisible(panel.y.names.empty());
    }
  }

  void dressAxis(QCPAxis& axis) const {
    axis.setBasePen(QPen(theme.faint, 0.0));
    axis.setTickPen(QPen(theme.faint, 0.0));
    axis.setSubTickPen(QPen(theme.faint, 0.0));
    axis.setTickLabelColor(theme.text);
    axis.setLabelColor(theme.text);
    axis.setTickLabelFont(theme.font);
    axis.setLabelFont(theme.font);
    axis.setTickLabelPadding(4);
    axis.setLabelPadding(3);
    axis.grid()->setPen(QPen(theme.grid, 0.0));
    axis.grid()->setZeroLinePen(QPen(theme.faint, 0.0));
  }

  int titleHeight(const PlotPanel& panel) const {
    const double height = QFontMetricsF(theme.font).height();
    return static_cast<int>(std::ceil(panel.y.title.isEmpty() ? 0.6 * height : 1.6 * height));
  }

  /// Room on the right for the labels at the line ends.
  int endRoom() const {
    const QFontMetricsF metrics(theme.font);
    double widest = 0.0;
    for (const PlotCurve& curve : scene.curves) {
      widest = std::max(widest, metrics.horizontalAdvance(curve.label));
    }
    return widest > 0.0 ? static_cast<int>(std::ceil(widest + kLeader + 2.0 * kPad)) : 14;
  }

  void drawCurves() {
    plot.clearPlottables();
    for (const PlotCurve& curve : scene.curves) {
      QCPAxisRect* const rect = plot.axisRect(curve.panel);
      QCPAxis* const x = rect->axis(QCPAxis::atBottom);
      QCPAxis* const y = rect->axis(QCPAxis::atLeft);
      const QPen pen(theme[curve.ink], curve.heavy ? 2.0 : 0.0, curve.line);
      const QVector<double> xs(curve.x.begin(), curve.x.end());
      const QVector<double> ys(curve.y.begin(), curve.y.end());
      if (std::is_sorted(xs.begin(), xs.end())) {
        auto* const graph = new ThinLines<QCPGraph>(x, y);
        graph->setPen(pen);
        graph->setData(xs, ys, true);
      } else {
        auto* const line = new ThinLines<QCPCurve>(x, y);
        line->setPen(pen);
        line->setData(xs, ys);
      }
    }
  }

  QCPAxis* axis(int panel, QCPAxis::AxisType type) const {
    return plot.axisRect(panel)->axis(type);
  }

  PlotScene scene;
  PlotTheme theme;
  Sheet plot;
  QCPMarginGroup margins;
};

PlotCanvas::PlotCanvas(QWidget* parent) : parts_(std::make_unique<Parts>(parent)) {}
PlotCanvas::~PlotCanvas() = default;

QWidget* PlotCanvas::widget() const { return &parts_->plot; }

void PlotCanvas::setTheme(const PlotTheme& theme) {
  parts_->theme = theme;
  parts_->dress();
  parts_->drawCurves();
  drawSoon();
}

void PlotCanvas::setScene(PlotScene scene) {
  const bool samePanels = scene.panels.size() == parts_->scene.panels.size();
  parts_->scene = std::move(scene);
  if (!samePanels) {
    parts_->makePanels();
  }
  parts_->dress();
  parts_->drawCurves();
  drawSoon();
}

const PlotScene& PlotCanvas::scene() const { return parts_->scene; }

void PlotCanvas::setRangeX(PlotRange range) {
  for (QCPAxisRect* const rect : parts_->plot.axisRects()) {
    rect->axis(QCPAxis::atBottom)->setRange(range.from, range.to);
  }
  drawSoon();
}

void PlotCanvas::setRangeY(int panel, PlotRange range) {
  parts_->axis(panel, QCPAxis::atLeft)->setRange(range.from, range.to);
  drawSoon();
}

void PlotCanvas::fit() {
  const std::vector<PlotPanel>& panels = parts_->scene.panels;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    setRangeX({panels[0].x.from, panels[0].x.to});
    setRangeY(static_cast<int>(i), {panels[i].y.from, panels[i].y.to});
  }
}

PlotRange PlotCanvas::rangeX() const {
  const QCPRange range = parts_->axis(0, QCPAxis::atBottom)->range();
  return {range.lower, range.upper};
}

PlotRange PlotCanvas::rangeY(int panel) const {
  const QCPRange range = parts_->axis(panel, QCPAxis::atLeft)->range();
  return {range.lower, range.upper};
}

void PlotCanvas::setCursor(const std::optional<PlotCursor>& cursor) {
  parts_->plot.lines->cursor = cursor;
  parts_->plot.update();
}

void PlotCanvas::setBand(const std::optional<QRectF>& band) {
  parts_->plot.lines->band = band;
  parts_->plot.update();
}

void PlotCanvas::setFocused(bool focused) {
  parts_->plot.lines->focused = focused;
  parts_->plot.update();
}

QPointF PlotCanvas::toWidget(int panel, QPointF at) const {
  parts_->plot.layOut();
  return {parts_->axis(panel, QCPAxis::atBottom)->coordToPixel(at.x()),
          parts_->axis(panel, QCPAxis::atLeft)->coordToPixel(at.y())};
}

QPointF PlotCanvas::fromWidget(int panel, QPointF place) const {
  parts_->plot.layOut();
  return {parts_->axis(panel, QCPAxis::atBottom)->pixelToCoord(place.x()),
          parts_->axis(panel, QCPAxis::atLeft)->pixelToCoord(place.y())};
}

QRectF PlotCanvas::panelRect(int panel) const {
  parts_->plot.layOut();
  return parts_->plot.axisRect(panel)->rect();
}

const std::vector<PlotLabel>& PlotCanvas::labels() const { return parts_->plot.words->labels(); }

void PlotCanvas::drawSoon() { parts_->plot.drawSoon(); }

void PlotCanvas::paint(QPainter& painter, const QRectF& target, double pixel) {
  const QSize size = (target.size() / pixel).toSize();
  QPicture picture;
  QCPPainter vectors;
  parts_->plot.layOutOn(size);
  vectors.begin(&picture);
  vectors.setModes(QCPPainter::pmVectorized | QCPPainter::pmNoCaching | QCPPainter::pmNonCosmetic);
  parts_->plot.toPainter(&vectors, size.width(), size.height());
  vectors.end();
  // A picture grows by the resolution of what it is played on; that is undone here.
  const double grown = painter.device()->logicalDpiX() / static_cast<double>(picture.logicalDpiX());
  painter.save();
  painter.translate(target.topLeft());
  painter.scale(pixel / grown, pixel / grown);
  painter.drawPicture(QPointF(0.0, 0.0), picture);
  painter.restore();
}

void paintPlot(const PlotScene& scene, const PlotTheme& theme, QPainter& painter,
               const QRectF& target, double pixel) {
  if (scene.panels.empty()) return;
  PlotCanvas canvas(nullptr);
  canvas.setScene(scene);
  canvas.setTheme(theme);
  canvas.fit();
  canvas.paint(painter, target, pixel);
}

}  // namespace strokewright::ui
