#include "ui/plots/rhythm_scene.h"

#include <QCoreApplication>
#include <cmath>
#include <utility>

#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("RhythmScene", text); }

PlotRegion barOf(double from, double width, double height, bool full) {
  return {.ink = full ? Ink::Blue : Ink::Text,
          .fill = full ? PlotRegion::Fill::Rising : PlotRegion::Fill::Open,
          .outline = full ? Qt::SolidLine : Qt::DashLine,
          .heavy = full,
          .least = {from, 0.0},
          .most = {from + width, height}};
}

}  // namespace

SceneShown rhythmScene(Document& document, int subject) {
  SceneShown shown;
  if (subject < 0) return shown;
  shown.scene.style = document.taste().style();
  shown.scene.panels = {{.x = {.title = tr("Order: pulses in a turn of the crank")},
                         .y = {.title = tr("Content"), .to = 1.05}}};
  // Few ticks: there is little height beside the tables.
  for (const double content : {0.0, 0.5, 1.0}) {
    shown.scene.panels[0].y.names.emplace_back(
        content, document.taste().number(units::Kind::Ratio, content, 1));
  }
  describe::Tabulated rhythm = document.evaluation().tabulated(subject, out::rhythm);
  if (rhythm.state != describe::State::Value || rhythm.rows.size() == 0) {
    shown.sentence =
        tr("The orders are not shown: %1.")
            .arg(whyNot(document.assessment(), document.taste(), rhythm.state, rhythm.notes));
    return shown;
  }
  const Eigen::ArrayXd& orders = rhythm.rows["order"].numbers;
  const Eigen::ArrayXd& own = rhythm.rows["content"].numbers;
  const Eigen::ArrayXd& donors = rhythm.rows["donors"].numbers;
  const double step = orders[0];
  const double width = 0.34 * step;
  bool compared = false;
  for (Eigen::Index i = 0; i < orders.size(); ++i) {
    const bool both = !std::isnan(donors[i]);
    compared = compared || both;
    // Beside each other about the order; the donor on the left, as in the columns of the entries.
    shown.scene.regions.push_back(
        barOf(orders[i] - (both ? 0.0 : 0.5 * width), width, own[i], true));
    if (both) shown.scene.regions.push_back(barOf(orders[i] - width, width, donors[i], false));
  }
  PlotAxis& along = shown.scene.panels[0].x;
  along.to = orders[orders.size() - 1] + step;
  const double every = along.to > 10.0 ? 2.0 : 1.0;
  for (double order = 0.0; order < along.to; order += every) {
    along.names.emplace_back(order, document.taste().number(units::Kind::Ratio, order, 0));
  }
  const QString name = nameOf(document.project(), subject);
  shown.scene.panels[0].y.title =
      compared ? tr("Content; full: %1 · dashed: %2")
                     .arg(name, nameOf(document.project(), document.project().referenceDonor))
               : tr("Content, %1").arg(name);
  shown.sentence = tr("1 where all pulses fall in step, 0 where they cancel.");
  keepTable(shown.scene, std::move(rhythm.rows));
  return shown;
}

}  // namespace strokewright::ui
