#include "ui/plots/motion_scene.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <memory>
#include <numbers>
#include <numeric>
#include <optional>
#include <utility>

#include "core/describe/table_text.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::State;
using units::Kind;
namespace in = model::in;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr std::array kInks{Ink::Blue, Ink::Green, Ink::Vermilion};

QString tr(const char* text) { return QCoreApplication::translate("MotionPlot", text); }

/// A column in the units shown, for one turn after the other, which meet in one row.
/// @param perTurn [SI] what a turn adds
std::vector<double> shownColumn(const Eigen::ArrayXd& numbers, const units::Unit& unit, int turns,
                                double perTurn) {
  std::vector<double> shown;
  shown.reserve(static_cast<std::size_t>(numbers.size() * turns));
  for (int turn = 0; turn < turns; ++turn) {
    std::transform(numbers.begin() + (turn > 0 ? 1 : 0), numbers.end(), std::back_inserter(shown),
                   [&](double number) { return units::fromSi(unit, number + turn * perTurn); });
  }
  return shown;
}

void addPeak(PlotScene& scene, const assess::Assessment& assessment, const Taste& taste, int engine,
             int panel, const describe::Result& peak, const describe::Result& angle) {
  if (assessment(engine, peak).state != State::Value) return;
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
       .shape = shapeOf(assessment.project(), engine),
       .keepsClear = true});
}

/// The target's first: where there is little room its labels stand.
void addPeaks(PlotScene& scene, const assess::Assessment& assessment, const Taste& taste,
              const Motions& motions) {
  std::vector<int> engines(motions.size());
  std::iota(engines.begin(), engines.end(), 0);
  std::ranges::stable_partition(
      engines, [&](int engine) { return engine == assessment.project().target(); });
  for (const int engine : engines) {
    if (motions[static_cast<std::size_t>(engine)].state != State::Value) continue;
    addPeak(scene, assessment, taste, engine, 1, out::peakPistonSpeed, out::peakPistonSpeedAngle);
    addPeak(scene, assessment, taste, engine, 2, out::peakAcceleration, out::peakAccelerationAngle);
  }
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
    y.to = most + (peaks ? 0.6 : 0.06) * (most - least);
  }
}

void addCurves(PlotScene& scene, const model::Project& project, int engine,
               const describe::Rows& rows, int turns) {
  const std::vector<double> angles =
      shownColumn(rows.cells().front().numbers, scene.style.group[Kind::Angle], turns, kTurn);
  for (std::size_t i = 1; i < rows.columns().size(); ++i) {
    scene.curves.push_back(
        {.panel = static_cast<int>(i) - 1,
         .label = nameOf(project, engine),
         .ink = kInks[i - 1],
         .line = lineOf(project, engine),
         .x = angles,
         .y = shownColumn(rows.cells()[i].numbers, scene.style.group[rows.columns()[i].kind], turns,
                          0.0)});
  }
}

/// The data behind the scene; it outlives this assessment.
void addTable(PlotScene& scene, const model::Project& project,
              const std::shared_ptr<const Motions>& motions) {
  std::vector<describe::NamedRows> named;
  std::optional<std::size_t> donor;
  std::optional<std::size_t> target;
  for (std::size_t i = 0; i < motions->size(); ++i) {
    if ((*motions)[i].state != State::Value) continue;
    const int engine = static_cast<int>(i);
    if (engine == project.referenceDonor) donor = named.size();
    if (engine == project.target()) target = named.size();
    named.push_back({nameOf(project, engine).toStdString(), &(*motions)[i].rows});
  }
  if (named.empty()) return;
  std::optional<std::pair<std::size_t, std::size_t>> difference;
  if (donor && target && donor != target) difference = {*target, *donor};
  scene.table = [motions, named, difference](const PlotScene&) {
    return describe::sideBySide(named, difference);
  };
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

Motions motionsOf(describe::Evaluation& evaluation) {
  Motions motions;
  for (int engine = 0; engine < evaluation.engines(); ++engine) {
    motions.push_back(evaluation.tabulated(engine, out::pistonMotion));
  }
  return motions;
}

QString titleOf(const describe::Column& column, const Taste& taste) {
  return titled(taste.inTerms(fromCore(column.name)), taste, column.kind);
}

PlotScene motionScene(const assess::Assessment& assessment, const Taste& taste, Motions motions,
                      int turns) {
  PlotScene scene;
  scene.style = taste.style();
  const auto& columns = out::pistonMotion.columns;
  for (const describe::Column& column : columns.subspan(1)) {
    scene.panels.push_back({.x = {.title = titleOf(columns.front(), taste),
                                  .from = 0.0,
                                  .to = toShown(scene.style, Kind::Angle, kTurn * turns),
                                  .degrees = true},
                            .y = {.title = titleOf(column, taste)}});
  }
  for (std::size_t i = 0; i < motions.size(); ++i) {
    if (motions[i].state != State::Value) continue;
    const int engine = static_cast<int>(i);
    addCurves(scene, assessment.project(), engine, motions[i].rows, turns);
  }
  addPeaks(scene, assessment, taste, motions);
  fitPanels(scene);
  addTable(scene, assessment.project(), std::make_shared<const Motions>(std::move(motions)));
  return scene;
}

PlotScene withoutPanelsAbove(PlotScene scene, int panels) {
  const auto above = [panels](const auto& each) { return each.panel < panels; };
  scene.panels.erase(scene.panels.begin(), scene.panels.begin() + panels);
  std::erase_if(scene.curves, above);
  std::erase_if(scene.marks, above);
  for (PlotCurve& curve : scene.curves) curve.panel -= panels;
  for (PlotMark& mark : scene.marks) mark.panel -= panels;
  return scene;
}

QString leftOut(const assess::Assessment& assessment, const Taste& taste, const Motions& motions) {
  QStringList sentences;
  for (std::size_t i = 0; i < motions.size(); ++i) {
    const QString why = whyNot(assessment, taste, motions[i].state, motions[i].notes);
    if (why.isEmpty()) continue;
    sentences
        << tr("%1 is not shown: %2.").arg(nameOf(assessment.project(), static_cast<int>(i)), why);
  }
  return sentences.join(u' ');
}

}  // namespace strokewright::ui
