#include "ui/plots/sweep_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/assess/assess.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/limits/results.h"
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
using describe::Input;
using describe::Limits;
using describe::Result;

constexpr int kPoints = 121;

QString tr(const char* text) { return QCoreApplication::translate("SweepScene", text); }

/// Entries that are limits of this result.
std::vector<const Input*> limitsOf(const Result& result) {
  struct Bounded {
    const Result* result;
    std::vector<const Input*> limits;
  };
  static const std::array<Bounded, 11> kBounded = {{
      {&out::squishGap, {&in::squishLeast, &in::squishMost}},
      {&out::spacerToMake, {&in::spacerLeast, &in::spacerMost}},
      {&out::spacerInStack, {&in::spacerLeast, &in::spacerMost}},
      {&out::compressionRatio, {&in::ratioLeast, &in::ratioMost}},
      {&out::runningSquish, {&in::runningSquishLeast}},
      {&out::overRevSquish, {&in::runningSquishLeast}},
      {&out::meanPistonSpeed, {&in::meanPistonSpeedLimit}},
      {&out::bushWall, {&in::bushWallLeast}},
      {&out::skirtToWeb, {&in::skirtWebObjects, &in::skirtWebForbids}},
      {&out::rodToLiner, {&in::rodLinerLeast}},
      {&out::headLandLeft, {&in::headLandLeast}},
  }};
  const auto found = std::ranges::find(kBounded, &result, &Bounded::result);
  return found == kBounded.end() ? std::vector<const Input*>() : found->limits;
}

class Sweep {
 public:
  Sweep(Document& document, const Swept& swept)
      : document_(document), taste_(document.taste()), swept_(swept) {
    scene_.style = taste_.style();
    scene_.panels = {
        {.x = {.title = titled(taste_.label(*swept.input), taste_, swept.input->kind)},
         .y = {.title = titled(taste_.label(*swept.result), taste_, swept.result->kind)}}};
  }

  PlotScene draw() {
    chooseRange();
    addCurve();
    addPoints();
    results_.showOn(scene_.panels[0].y, 0.12, 0.2);
    addLevels();
    addUnusual();
    return std::move(scene_);
  }

 private:
  double x(double value) const { return toShown(taste_.style(), swept_.input->kind, value); }
  double y(double value) const { return toShown(taste_.style(), swept_.result->kind, value); }

  double now() const { return swept_.now; }

  void chooseRange() {
    constexpr double kAround = 0.1;     // of where it stands
    constexpr double kOfTypical = 0.5;  // where it stands near nought
    constexpr double kPastFound = 1.4;  // times the way to what was found
    const double to = swept_.found.value_or(now());
    double reach = std::max(kAround * std::abs(now()), kPastFound * std::abs(to - now()));
    if (std::abs(now()) < std::abs(swept_.input->typical)) {
      reach = std::max(reach, kOfTypical * std::abs(swept_.input->typical));
    }
    if (!(reach > 0.0)) reach = std::max(10.0 * swept_.input->plusMinus, 1e-9);
    from_ = std::max(now() - reach, swept_.input->possible.least);
    to_ = std::min(now() + reach, swept_.input->possible.most);
    scene_.panels[0].x.from = x(from_);
    scene_.panels[0].x.to = x(to_);
  }

  void addCurve() {
    std::vector<double> at;
    for (int i = 0; i < kPoints; ++i) at.push_back(from_ + (to_ - from_) * i / (kPoints - 1));
    PlotCurve curve{.ink = Ink::Blue, .heavy = true};
    for (const assess::SweepPoint& point :
         assess::sweep(document_.evaluation(), swept_.engine, *swept_.result, swept_.cylinder,
                       *swept_.input, swept_.inputCylinder, at)) {
      curve.x.push_back(x(point.input));
      curve.y.push_back(y(point.result));
    }
    results_.add(curve.y);
    PlotTable table;
    table.columns = {{.heading = scene_.panels[0].x.title, .numbers = curve.x},
                     {.heading = scene_.panels[0].y.title, .numbers = curve.y}};
    scene_.table = [table](const PlotScene&) { return table; };
    scene_.curves.push_back(std::move(curve));
  }

  void addPoints() {
    const describe::Cell& cell =
        document_.assessment()(swept_.engine, *swept_.result, swept_.cylinder);
    if (cell.state == describe::State::Value) {
      addPoint(now(), cell.value, tr("now %1").arg(taste_.value(*swept_.input, now())),
               PlotMark::Shape::Ring);
    }
    if (swept_.wanted) results_.add(y(*swept_.wanted));
    if (!swept_.found || !swept_.wanted) return;
    // What reads alike is one and the same: it has been taken.
    const QString found = taste_.value(*swept_.input, *swept_.found);
    if (found != taste_.value(*swept_.input, now())) {
      addPoint(*swept_.found, *swept_.wanted, found, PlotMark::Shape::Disc);
    }
  }

  void addPoint(double input, double result, const QString& label, PlotMark::Shape shape) {
    results_.add(y(result));
    scene_.marks.push_back(
        {.at = {x(input), y(result)}, .label = label, .ink = Ink::Blue, .shape = shape});
  }

  /// What is wanted, and the limits of the result that are in sight.
  void addLevels() {
    if (swept_.wanted) {
      addLevel(*swept_.wanted, tr("wanted %1").arg(taste_.value(*swept_.result, *swept_.wanted)),
               Ink::Accent, Qt::DashLine);
    }
    for (const Input* limit : limitsOf(*swept_.result)) {
      const double value =
          document_.evaluation().inputValue(swept_.engine, *limit, swept_.cylinder);
      addLevel(value, tr("limit %1").arg(taste_.value(*limit, value)), Ink::Vermilion,
               Qt::SolidLine);
    }
  }

  void addLevel(double value, const QString& label, Ink ink, Qt::PenStyle line) {
    const PlotAxis& axis = scene_.panels[0].y;
    if (y(value) < axis.from || y(value) > axis.to) return;
    scene_.curves.push_back(
        lineBetween({x(from_), y(value)}, {x(to_), y(value)}, label, ink, line));
  }

  void addUnusual() {
    const Limits& usual = swept_.input->usual;
    if (usual.least > from_) addArea(from_, std::min(usual.least, to_));
    if (usual.most < to_) addArea(std::max(usual.most, from_), to_);
  }

  void addArea(double from, double to) {
    const PlotAxis& axis = scene_.panels[0].y;
    scene_.regions.push_back({.label = tr("unusual"),
                              .outline = Qt::DashLine,
                              .least = {x(from), axis.from},
                              .most = {x(to), axis.to}});
  }

  Document& document_;
  const Taste& taste_;
  const Swept& swept_;
  PlotScene scene_;
  Extent results_;     // [shown]
  double from_ = 0.0;  // [SI] of the entry
  double to_ = 1.0;    // [SI]
};

}  // namespace

PlotScene sweepScene(Document& document, const Swept& swept) {
  return swept.engine < 0 ? PlotScene{} : Sweep(document, swept).draw();
}

}  // namespace strokewright::ui
