#include "ui/plots/running_scene.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;
using describe::Cell;
using describe::Result;
using describe::State;
using units::Kind;

constexpr int kPoints = 41;            // of a curve
constexpr double kPastOverRev = 1.25;  // shown beyond the highest over-rev
constexpr double kNearClosing = 1.4;   // of the speed shown: the crown meets the head in sight

QString tr(const char* text) { return QCoreApplication::translate("RunningScene", text); }

class Running {
 public:
  Running(Document& document, int subject, int cylinder)
      : document_(document), taste_(document.taste()), subject_(subject), cylinder_(cylinder) {
    shown_.scene.style = taste_.style();
    shown_.scene.panels = {{.x = {.title = titled(tr("Engine speed"), taste_, Kind::Speed)},
                            .y = {.title = titled(tr("Squish gap"), taste_, Kind::FineLength)}}};
  }

  SceneShown draw() {
    findSpeed();
    for (int engine = 0; engine < document_.evaluation().engines(); ++engine) addCurve(engine);
    if (subject_ >= 0) {
      addLimits();
      addMark(out::workingSpeed, out::runningSquish, PlotMark::Shape::Disc);
      addMark(out::overRevSpeed, out::overRevSquish, PlotMark::Shape::Ring);
      sayParts();
    }
    gaps_.add(0.0);
    gaps_.showOn(shown_.scene.panels[0].y, 0.08, 0.15);
    addTouching();
    shown_.sentence = sentences_.join(u' ');
    return std::move(shown_);
  }

 private:
  int cylinderOf(int engine) const {
    return cylinder_ >= 0 && cylinder_ < document_.evaluation().cylinders(engine)
               ? cylinder_
               : cylinderRunningClosest(document_, engine);
  }

  const Cell& cell(int engine, const Result& result) const {
    return document_.assessment()(engine, result,
                                  result.per == describe::Per::Engine ? 0 : cylinderOf(engine));
  }

  double speedShown(double speed) const { return toShown(taste_.style(), Kind::Speed, speed); }
  double gapShown(double gap) const { return toShown(taste_.style(), Kind::FineLength, gap); }

  void findSpeed() {
    for (int engine = 0; engine < document_.evaluation().engines(); ++engine) {
      const Cell& overRev = cell(engine, out::overRevSpeed);
      if (overRev.state == State::Value) most_ = std::max(most_, kPastOverRev * overRev.value);
    }
    if (!(most_ > 0.0)) most_ = in::wantedSpeed.typical;
    for (int engine = 0; engine < document_.evaluation().engines(); ++engine) {
      const Cell& closing = cell(engine, out::closingSpeed);
      if (closing.state == State::Value && closing.value < kNearClosing * most_) {
        most_ = std::max(most_, 1.03 * closing.value);
      }
    }
    shown_.scene.panels[0].x.to = speedShown(most_);
  }

  void addCurve(int engine) {
    std::vector<double> speeds;
    for (int i = 0; i < kPoints; ++i) speeds.push_back(most_ * i / (kPoints - 1));
    const auto points = assess::sweep(document_.evaluation(), engine, out::runningSquish,
                                      cylinderOf(engine), in::wantedSpeed, -1, speeds);
    const QString name = nameOf(document_.project(), engine);
    if (points.empty()) {
      sentences_ << tr("%1 is not shown: %2.")
                        .arg(name, whyNot(document_.assessment(), taste_, engine,
                                          out::runningSquish, cylinderOf(engine)));
      return;
    }
    PlotCurve curve{.label = name,
                    .ink = Ink::Blue,
                    .line = lineOf(document_.project(), engine),
                    .heavy = engine == subject_};
    for (const assess::SweepPoint& point : points) {
      curve.x.push_back(speedShown(point.input));
      curve.y.push_back(gapShown(point.result));
    }
    gaps_.add(curve.y.front());
    gaps_.add(std::max(curve.y.back(), 0.0));
    addColumns(name, curve);
    shown_.scene.curves.push_back(std::move(curve));
  }

  void addColumns(const QString& name, const PlotCurve& curve) {
    if (table_.columns.empty()) {
      table_.columns.push_back(
          {.heading = shown_.scene.panels[0].x.title, .numbers = curve.x, .decimals = 0});
    }
    table_.columns.push_back(
        {.heading = titled(name, taste_, Kind::FineLength), .numbers = curve.y});
    shown_.scene.table = [table = table_](const PlotScene&) { return table; };
  }

  void addLimits() {
    const double least = document_.evaluation().inputValue(subject_, in::runningSquishLeast);
    addLevel(least, tr("least %1").arg(taste_.value(in::runningSquishLeast, least)), Ink::Vermilion,
             Qt::SolidLine);
    const Cell& cold = cell(subject_, out::squishGap);
    if (cold.state != State::Value) return;
    addLevel(cold.value, tr("cold %1").arg(taste_.value(out::squishGap, cold.value)), Ink::Faint,
             Qt::DotLine);
  }

  void addLevel(double gap, const QString& label, Ink ink, Qt::PenStyle line) {
    gaps_.add(gapShown(gap));
    shown_.scene.curves.push_back(
        lineBetween({0.0, gapShown(gap)}, {speedShown(most_), gapShown(gap)}, label, ink, line));
  }

  void addMark(const Result& speed, const Result& gap, PlotMark::Shape shape) {
    const Cell& at = cell(subject_, speed);
    const Cell& left = cell(subject_, gap);
    if (at.state != State::Value || left.state != State::Value) return;
    shown_.scene.marks.push_back({.at = {speedShown(at.value), gapShown(left.value)},
                                  .plusMinus = {0.0, gapShown(left.worst)},
                                  .label = taste_.value(gap, left.value),
                                  .ink = Ink::Blue,
                                  .shape = shape});
    gaps_.add(gapShown(left.value + left.worst));
    gaps_.add(gapShown(left.value - left.worst));
  }

  void addTouching() {
    const PlotAxis& y = shown_.scene.panels[0].y;
    shown_.scene.regions.push_back({.label = tr("the crown meets the head"),
                                    .ink = Ink::Vermilion,
                                    .fill = PlotRegion::Fill::Falling,
                                    .outline = Qt::SolidLine,
                                    .least = {0.0, y.from - (y.to - y.from)},
                                    .most = {speedShown(most_), 0.0}});
  }

  /// The sum behind the running gap, part by part.
  void sayParts() {
    const Cell& running = cell(subject_, out::runningSquish);
    if (running.state != State::Value) return;
    const auto fine = [this](double gap) { return taste_.difference(Kind::FineLength, gap, 3); };
    sentences_
        << tr("Cylinder %1: %2 cold, %3 by heat, %4 by bearing clearance, %5 by rod stretch: "
              "%6 running.")
               .arg(QString::number(model::numberOfCylinder(document_.evaluation(), subject_,
                                                            cylinderOf(subject_))),
                    taste_.value(out::squishGap, cell(subject_, out::squishGap).value),
                    fine(cell(subject_, out::thermalOpening).value),
                    fine(-cell(subject_, out::clearanceTakenUp).value),
                    fine(-cell(subject_, out::rodStretch).value),
                    taste_.value(out::runningSquish, running.value));
    const Cell& overRev = cell(subject_, out::overRevSquish);
    if (overRev.state == State::Value) {
      sentences_ << tr("The ring is the over-rev, %1.")
                        .arg(taste_.value(out::overRevSpeed,
                                          cell(subject_, out::overRevSpeed).value));
    }
    if (running.worst > 0.0) sentences_ << tr("Bars: ± worst case.");
    const Cell& closing = cell(subject_, out::closingSpeed);
    if (closing.state != State::Value) return;
    sentences_ << tr("The crown would meet the head at %1.")
                      .arg(taste_.value(out::closingSpeed, closing.value));
  }

  Document& document_;
  const Taste& taste_;
  int subject_;
  int cylinder_;
  SceneShown shown_;
  PlotTable table_;
  QStringList sentences_;
  Extent gaps_;        // [shown]
  double most_ = 0.0;  // [rad/s] speed shown
};

}  // namespace

int cylinderRunningClosest(const Document& document, int engine) {
  const assess::Assessment& assessment = document.assessment();
  int closest = 0;
  for (int i = 1; i < assessment.evaluation().cylinders(engine); ++i) {
    const Cell& cell = assessment(engine, out::runningSquish, i);
    if (cell.computed && cell.value < assessment(engine, out::runningSquish, closest).value) {
      closest = i;
    }
  }
  return closest;
}

SceneShown runningScene(Document& document, int subject, int cylinder) {
  return Running(document, subject, cylinder).draw();
}

}  // namespace strokewright::ui
