#include "ui/plots/bore_stroke_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/chamber/results.h"
#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/tradeoff/map.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::Result;
using describe::State;
using units::Kind;
namespace in = model::in;

constexpr int kCurvePoints = 161;
constexpr double kBeyond = 1.0;  // widths of the window that curves and areas go on beyond it

QString tr(const char* text) { return QCoreApplication::translate("BoreStrokeMap", text); }

/// The target's own evaluation with the deck driven by the squish gap and the spacer left open.
model::Project opened(const model::Project& project) {
  model::Project open = project;
  model::Engine& target = open.engines[static_cast<std::size_t>(open.target())];
  target.set(in::spacer, {});
  if (target[in::wantedSquish].known()) {
    describe::Entry driver;
    driver.values = {model::answer(model::StackDriver::SquishGap)};
    target.set(in::stackDriver, driver);
  }
  return open;
}

std::vector<describe::Subject> subjectsOf(const model::Project& project) {
  std::vector<describe::Subject> subjects;
  for (const model::Engine& engine : project.engines) {
    subjects.push_back({&engine.entries, engine.part == model::Part::Donor});
  }
  return subjects;
}

/// A step of 1, 2 or 5 that cuts a span into about so many parts.
double roundStep(double span, double parts) {
  const double raw = span / parts;
  const double decade = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double digit : {1.0, 2.0, 5.0}) {
    if (digit * decade >= raw) return digit * decade;
  }
  return 10.0 * decade;
}

struct Plane {
  const units::Style& style;
  MapWindow window;

  QPointF shown(const Pair& pair) const {
    return {toShown(style, Kind::Length, pair.bore), toShown(style, Kind::Length, pair.stroke)};
  }
};

/// Stroke against bore for one displacement, a little beyond the window.
PlotCurve displacementCurve(const Plane& plane, const tradeoff::Held& held, double displacement) {
  const double first = std::max(plane.window.least.bore - kBeyond * plane.window.width(),
                                0.1 * plane.window.least.bore);
  const Eigen::ArrayXd bores = Eigen::ArrayXd::LinSpaced(
      kCurvePoints, first, plane.window.most.bore + kBeyond * plane.window.width());
  const Eigen::ArrayXd strokes = tradeoff::strokesForDisplacement(bores, displacement, held);
  PlotCurve curve;
  for (Eigen::Index i = 0; i < bores.size(); ++i) {
    if (strokes[i] <= 0.0) continue;
    const QPointF at = plane.shown({bores[i], strokes[i]});
    curve.x.push_back(at.x());
    curve.y.push_back(at.y());
  }
  return curve;
}

void addDisplacements(PlotScene& scene, const Plane& plane, Trial& trial,
                      const assess::Assessment& assessment, const Taste& taste) {
  const describe::Cell least = trial.at(plane.window.least, out::displacement);
  const describe::Cell most = trial.at(plane.window.most, out::displacement);
  if (least.state != State::Value || most.state != State::Value) return;
  const describe::Evaluation& evaluation = assessment.evaluation();
  const int target = trial.target();
  tradeoff::Held held;
  held.cylinderCount = evaluation.inputValue(target, in::cylinderCount);
  held.rodLength = evaluation.inputValue(target, in::rodLength);
  held.offset = assessment(target, out::netOffset).value;

  const bool hasLimit = evaluation.inputGiven(target, in::classLimit);
  const double limit = evaluation.inputValue(target, in::classLimit);
  const double limitShown = toShown(plane.style, Kind::Volume, limit);
  if (hasLimit) {
    PlotCurve curve = displacementCurve(plane, held, limit);
    const bool whole = std::abs(limitShown - std::round(limitShown)) < 1e-6;
    curve.label = tr("class %1").arg(taste.shown(Kind::Volume, limit, whole ? 0 : -1));
    curve.ink = Ink::Vermilion;
    curve.heavy = true;
    scene.curves.push_back(std::move(curve));
  }
  const double from = toShown(plane.style, Kind::Volume, least.value);
  const double to = toShown(plane.style, Kind::Volume, most.value);
  const double step = roundStep(to - from, 9.0);
  for (double level = std::ceil(from / step) * step; level < to; level += step) {
    if (hasLimit && std::abs(level - limitShown) < 1e-6 * step) continue;
    const double si = fromShown(plane.style, Kind::Volume, level);
    PlotCurve curve = displacementCurve(plane, held, si);
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    curve.label = taste.shown(Kind::Volume, si, decimals);
    curve.ink = Ink::Blue;
    scene.curves.push_back(std::move(curve));
  }
}

void addRegions(PlotScene& scene, const Plane& plane, const std::vector<NoGo>& all) {
  const double left = plane.window.least.bore - kBeyond * plane.window.width();
  const double right = plane.window.most.bore + kBeyond * plane.window.width();
  const double top = plane.window.most.stroke + kBeyond * plane.window.height();
  bool rising = true;
  for (const NoGo& one : all) {
    const double foot = one.aboveStroke.value_or(plane.window.least.stroke - plane.window.height());
    if (foot >= top) continue;
    PlotRegion region;
    region.label = one.says;
    region.ink = Ink::Faint;
    region.fill = rising ? PlotRegion::Fill::Rising : PlotRegion::Fill::Falling;
    region.outline = Qt::DashLine;
    region.least = plane.shown({left, foot});
    region.most = plane.shown({right, top});
    scene.regions.push_back(std::move(region));
    rising = !rising;
  }
}

void addEngine(PlotScene& scene, const Plane& plane, const assess::Assessment& assessment,
               int engine) {
  const std::optional<Pair> pair = pairOf(assessment, engine);
  if (!pair) return;
  const model::Project& project = assessment.project();
  const bool target = engine == project.target();
  const describe::Entry& bore = project.engines[static_cast<std::size_t>(engine)][in::bore];
  scene.marks.push_back(
      {.at = plane.shown(*pair),
       .plusMinus = plane.shown({bore.limit(), 2.0 * assessment(engine, out::crankRadius).worst}),
       .label = nameOf(project, engine),
       .ink = target ? Ink::Accent : Ink::Text,
       .shape = shapeOf(project, engine),
       .draggable = target});
}

/// The target last, on top of the others.
void addEngines(PlotScene& scene, const Plane& plane, const assess::Assessment& assessment) {
  const int target = assessment.project().target();
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    if (engine != target) addEngine(scene, plane, assessment, engine);
  }
  addEngine(scene, plane, assessment, target);
}

/// Every curve as two columns, and the engines as three.
PlotTable tableOf(const PlotScene& scene) {
  PlotTable table;
  const PlotPanel& panel = scene.panels.front();
  PlotTable::Column names{.heading = tr("Engine")};
  PlotTable::Column bores{.heading = panel.x.title};
  PlotTable::Column strokes{.heading = panel.y.title};
  for (const PlotMark& mark : scene.marks) {
    names.words.push_back(mark.label);
    bores.numbers.push_back(mark.at.x());
    strokes.numbers.push_back(mark.at.y());
  }
  table.columns = {names, bores, strokes};
  for (const PlotCurve& curve : scene.curves) {
    const QString of = curve.label + QStringLiteral(": ");
    table.columns.push_back({.heading = of + panel.x.title, .numbers = curve.x});
    table.columns.push_back({.heading = of + panel.y.title, .numbers = curve.y});
  }
  return table;
}

}  // namespace

Trial::Trial(const assess::Assessment& assessment)
    : project_(opened(assessment.project())),
      evaluation_(assess::catalogue(), subjectsOf(project_), project_.referenceDonor),
      target_(project_.target()),
      here_(pairOf(assessment, target_)) {
  const model::Engine& target = project_.engines[static_cast<std::size_t>(target_)];
  throwGiven_ = target[in::crankThrow].known();
  strokeGiven_ = target[in::stroke].known();
  squishIsHeld_ = target[in::wantedSquish].known();
  const describe::Evaluation& now = assessment.evaluation();
  gasketOverBore_ = now.inputValue(target_, in::headGasketBore) - now.inputValue(target_, in::bore);
  evaluation_.run();
}

void Trial::put(const Pair& pair) {
  evaluation_.put(target_, in::bore, -1, pair.bore);
  if (throwGiven_) evaluation_.put(target_, in::crankThrow, -1, 0.5 * pair.stroke);
  if (strokeGiven_ || !throwGiven_) evaluation_.put(target_, in::stroke, -1, pair.stroke);
  if (evaluation_.inputGiven(target_, in::headGasketBore)) {
    evaluation_.put(target_, in::headGasketBore, -1, pair.bore + gasketOverBore_);
  }
}

const describe::Cell& Trial::at(const Pair& pair, const Result& result) {
  put(pair);
  return evaluation_.fresh(target_, result);
}

std::optional<double> Trial::strokeFor(const Result& result, double wanted) {
  if (here_) put(*here_);
  const double strokes = throwGiven_ ? 2.0 : 1.0;
  const std::optional<double> found = assess::solve(evaluation_, target_, result, 0, wanted,
                                                    throwGiven_ ? in::crankThrow : in::stroke, -1)
                                          .value;
  return found ? std::optional(strokes * *found) : std::nullopt;
}

std::optional<Pair> pairOf(const assess::Assessment& assessment, int engine) {
  const describe::Evaluation& evaluation = assessment.evaluation();
  const describe::Cell& radius = assessment(engine, out::crankRadius);
  if (!evaluation.inputGiven(engine, in::bore) || !evaluation.inputStands(engine, in::bore) ||
      radius.state != State::Value) {
    return std::nullopt;
  }
  return Pair{evaluation.inputValue(engine, in::bore), 2.0 * radius.value};
}

bool MapWindow::holds(const Pair& pair) const {
  return pair.bore > least.bore && pair.bore < most.bore && pair.stroke > least.stroke &&
         pair.stroke < most.stroke;
}

MapWindow windowFor(const assess::Assessment& assessment) {
  std::vector<Pair> pairs;
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    if (const auto pair = pairOf(assessment, engine)) pairs.push_back(*pair);
  }
  if (pairs.empty()) pairs.push_back({in::bore.typical, in::stroke.typical});
  const auto [leastBore, mostBore] = std::minmax_element(
      pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) { return a.bore < b.bore; });
  const auto [leastStroke, mostStroke] = std::minmax_element(
      pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) { return a.stroke < b.stroke; });
  constexpr double kAround = 0.15;
  return {.least = {(1.0 - kAround) * leastBore->bore, (1.0 - kAround) * leastStroke->stroke},
          .most = {(1.0 + kAround) * mostBore->bore, (1.0 + kAround) * mostStroke->stroke}};
}

std::vector<NoGo> noGos(Trial& trial, const assess::Assessment& assessment, const Taste& taste) {
  std::vector<NoGo> all;
  const int target = trial.target();
  const describe::Evaluation& evaluation = assessment.evaluation();
  const std::array lines{&out::ceilingPistonSpeed, &out::ceilingRingFlutter,
                         &out::ceilingRodTension, &out::ceilingBigEnd, &out::ceilingDonor};
  const describe::Cell& wanted = assessment(target, out::workingSpeed);
  if (wanted.state == State::Value) {
    for (const Result* line : lines) {
      const describe::Cell& ceiling = assessment(target, *line);
      if (ceiling.state != State::Value) continue;
      const std::optional<double> stroke = trial.strokeFor(*line, wanted.value);
      if (!stroke && ceiling.value >= wanted.value) continue;
      const auto name = out::governs.choices[static_cast<std::size_t>(
          std::find(lines.begin(), lines.end(), line) - lines.begin())];
      all.push_back(
          {tr("%1 says no at %2").arg(fromCore(name.label), taste.shown(Kind::Speed, wanted.value)),
           stroke});
    }
  }
  const double least = evaluation.inputValue(target, in::rodRatioLow);
  if (const auto stroke = trial.strokeFor(out::rodRatio, least);
      stroke && evaluation.inputGiven(target, in::rodLength)) {
    all.push_back({tr("rod ratio below %1").arg(taste.shown(Kind::Ratio, least, 2)), stroke});
  }
  return all;
}

PlotScene boreStrokeScene(Trial& trial, const assess::Assessment& assessment, const Taste& taste,
                          const MapWindow& window) {
  PlotScene scene;
  scene.style = taste.style();
  const Plane plane{scene.style, window};
  const QPointF least = plane.shown(window.least);
  const QPointF most = plane.shown(window.most);
  scene.panels = {
      {.x = {.title = titled(tr("Bore"), taste, Kind::Length), .from = least.x(), .to = most.x()},
       .y = {
           .title = titled(tr("Stroke"), taste, Kind::Length), .from = least.y(), .to = most.y()}}};
  addRegions(scene, plane, noGos(trial, assessment, taste));
  addDisplacements(scene, plane, trial, assessment, taste);
  addEngines(scene, plane, assessment);
  scene.table = tableOf;
  return scene;
}

}  // namespace strokewright::ui
