#include "ui/plots/motion_scene.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <numbers>

#include "core/model/inputs.h"
#include "core/motion/curve.h"
#include "core/motion/results.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::State;
using motion::MotionCurves;
using units::Kind;
namespace in = model::in;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr int kStepsPerTurn = 720;
constexpr std::array kInks{Ink::Blue, Ink::Green, Ink::Vermilion};

QString tr(const char* text) { return QCoreApplication::translate("MotionPlot", text); }

std::array<QString, 3> titles(const Taste& taste) {
  return {titled(tr("Down from top dead centre"), taste, Kind::Length),
          titled(tr("Speed downwards"), taste, Kind::Velocity),
          titled(tr("Acceleration downwards"), taste, Kind::Acceleration)};
}

const motion::CrankAngles& anglesOf(int turns) {
  static const motion::CrankAngles one(1, kStepsPerTurn);
  static const motion::CrankAngles two(2, kStepsPerTurn);
  return turns == 1 ? one : two;
}

std::vector<double> shownArray(const Eigen::ArrayXd& values, const units::Unit& unit, double sign) {
  std::vector<double> shown(static_cast<std::size_t>(values.size()));
  std::transform(values.begin(), values.end(), shown.begin(),
                 [&](double value) { return units::fromSi(unit, sign * value); });
  return shown;
}

/// Travel, speed and acceleration in the units shown, downwards plus.
std::array<std::vector<double>, 3> shownCurves(const Mover& mover, const units::Style& style,
                                               int turns) {
  MotionCurves curves;
  motion::fillCurves(mover.mechanism, mover.speed, anglesOf(turns), curves);
  return {shownArray(curves.travel, style.group[Kind::Length], 1.0),
          shownArray(curves.velocity, style.group[Kind::Velocity], -1.0),
          shownArray(curves.acceleration, style.group[Kind::Acceleration], -1.0)};
}

void addPeak(PlotScene& scene, const assess::Assessment& assessment, const Taste& taste, int engine,
             int panel, const describe::Result& peak, const describe::Result& angle) {
  const units::Style& style = taste.style();
  const double at = std::fmod(assessment(engine, angle).value + kTurn, kTurn);
  const double value = assessment(engine, peak).value;
  scene.marks.push_back(
      {.panel = panel,
       .at = {toShown(style, Kind::Angle, at), toShown(style, peak.kind, value)},
       .label = tr("%1: %2 at %3")
                    .arg(nameOf(assessment.project(), engine), taste.value(peak, value),
                         taste.shown(Kind::Angle, at, 1)),
       .ink = kInks[static_cast<std::size_t>(panel)],
       .shape = shapeOf(assessment.project(), engine)});
}

/// Room for the curves, and above them for the labels of the peaks.
void fitPanels(PlotScene& scene) {
  for (int panel = 0; panel < 3; ++panel) {
    double least = 0.0;
    double most = 1.0;
    for (const PlotCurve& curve : scene.curves) {
      if (curve.panel != panel) continue;
      const auto [low, high] = std::minmax_element(curve.y.begin(), curve.y.end());
      least = std::min(least, *low);
      most = std::max(most, *high);
    }
    PlotAxis& y = scene.panels[static_cast<std::size_t>(panel)].y;
    const bool peaks = panel > 0;
    y.from = least < 0.0 ? least - 0.06 * (most - least) : 0.0;
    y.to = most + (peaks ? 0.4 : 0.06) * (most - least);
  }
}

PlotTable tableOf(const PlotScene& scene) {
  PlotTable table;
  for (const PlotCurve& curve : scene.curves) {
    const PlotPanel& panel = scene.panels[static_cast<std::size_t>(curve.panel)];
    if (table.columns.empty()) {
      table.columns.push_back({.heading = panel.x.title, .numbers = curve.x, .decimals = 1});
    }
    table.columns.push_back(
        {.heading = curve.label + QStringLiteral(": ") + panel.y.title, .numbers = curve.y});
  }
  return table;
}

}  // namespace

std::vector<Mover> moversOf(const assess::Assessment& assessment) {
  std::vector<Mover> movers;
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    if (assessment(engine, out::peakAcceleration).state != State::Value) continue;
    movers.push_back(
        {.engine = engine,
         .mechanism = {.crankRadius = assessment(engine, out::crankRadius).value,
                       .rodLength = assessment.evaluation().inputValue(engine, in::rodLength),
                       .offset = assessment(engine, out::netOffset).value},
         .speed = assessment(engine, out::workingSpeed).value});
  }
  return movers;
}

MotionPoint pointOf(const Mover& mover, double angle) {
  return {
      .travel = motion::travel(mover.mechanism, angle),
      .velocity = -motion::pinVelocity(mover.mechanism, angle) * mover.speed,
      .acceleration = -motion::pinAcceleration(mover.mechanism, angle) * mover.speed * mover.speed};
}

PlotScene motionScene(const assess::Assessment& assessment, const Taste& taste, int turns) {
  const units::Style& style = taste.style();
  PlotScene scene;
  scene.style = style;
  const QString angleTitle = titled(tr("Crank angle"), taste, Kind::Angle);
  for (const QString& title : titles(taste)) {
    scene.panels.push_back({.x = {.title = angleTitle,
                                  .from = 0.0,
                                  .to = toShown(style, Kind::Angle, kTurn * turns),
                                  .degrees = true},
                            .y = {.title = title}});
  }
  const std::vector<double> angles =
      shownArray(anglesOf(turns).radians(), style.group[Kind::Angle], 1.0);
  for (const Mover& mover : moversOf(assessment)) {
    auto curves = shownCurves(mover, style, turns);
    for (int panel = 0; panel < 3; ++panel) {
      scene.curves.push_back({.panel = panel,
                              .label = nameOf(assessment.project(), mover.engine),
                              .ink = kInks[static_cast<std::size_t>(panel)],
                              .line = lineOf(assessment.project(), mover.engine),
                              .x = angles,
                              .y = std::move(curves[static_cast<std::size_t>(panel)])});
    }
    addPeak(scene, assessment, taste, mover.engine, 1, out::peakPistonSpeed,
            out::peakPistonSpeedAngle);
    addPeak(scene, assessment, taste, mover.engine, 2, out::peakAcceleration,
            out::peakAccelerationAngle);
  }
  fitPanels(scene);
  scene.table = tableOf;
  return scene;
}

QString leftOut(const assess::Assessment& assessment, const Taste& taste) {
  QStringList sentences;
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    const QString why = whyNot(assessment, taste, engine, out::peakAcceleration);
    if (!why.isEmpty()) {
      sentences << tr("%1 is not shown: %2.").arg(nameOf(assessment.project(), engine), why);
    }
  }
  return sentences.join(u' ');
}

}  // namespace strokewright::ui
