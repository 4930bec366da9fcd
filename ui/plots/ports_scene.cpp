#include "ui/plots/ports_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <numbers>
#include <utility>

#include "core/ports/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

using describe::State;
using describe::Tabulated;
using units::Kind;

constexpr double kTurn = 2.0 * std::numbers::pi;

QString tr(const char* text) { return QCoreApplication::translate("PortsScene", text); }

class Ports {
 public:
  Ports(Document& document, int cylinder)
      : document_(document), taste_(document.taste()), cylinder_(cylinder) {
    shown_.scene.style = taste_.style();
    shown_.scene.panels = {
        {.x = {.title = titled(tr("Crank angle after top dead centre"), taste_, Kind::Angle),
               .to = shown(kTurn),
               .degrees = true},
         .y = {.from = -2.6, .to = 0.0}}};
  }

  SceneShown draw(int subject) {
    Tabulated timing = timingOf(subject);
    if (timing.state != State::Value) {
      shown_.sentence =
          tr("The ports are not shown: %1.")
              .arg(whyNot(document_.assessment(), taste_, timing.state, timing.notes));
      return std::move(shown_);
    }
    addBars(timing.rows, true);
    const int donor = document_.project().referenceDonor;
    if (donor >= 0 && donor != subject) {
      const Tabulated donors = timingOf(donor);
      if (donors.state == State::Value) addBars(donors.rows, false);
      shown_.scene.panels[0].y.title =
          tr("full: %1 · dashed: %2")
              .arg(nameOf(document_.project(), subject), nameOf(document_.project(), donor));
    }
    keepTable(shown_.scene, std::move(timing.rows));
    return std::move(shown_);
  }

 private:
  Tabulated timingOf(int engine) const {
    const int last = document_.evaluation().cylinders(engine) - 1;
    return document_.evaluation().tabulated(engine, out::portTiming, std::min(cylinder_, last));
  }

  double shown(double angle) const { return toShown(taste_.style(), Kind::Angle, angle); }

  void addBars(const describe::Rows& rows, bool full) {
    double row = -0.7;
    for (std::size_t i = 0; i < rows.size(); ++i, row -= 1.2) {
      const auto at = static_cast<Eigen::Index>(i);
      const double opens = rows["opens_after_top_rad"].numbers[at];
      const double shuts = kTurn - rows["shuts_before_top_rad"].numbers[at];
      if (!(shuts > opens)) continue;
      if (full) {
        shown_.scene.panels[0].y.names.emplace_back(
            row, taste_.inTerms(fromCore(rows["port"].words[i])));
      }
      const double foot = full ? row : row - 0.36;
      const double height = full ? 0.36 : 0.26;
      shown_.scene.regions.push_back(
          {.ink = full ? Ink::Blue : Ink::Text,
           .fill = full ? PlotRegion::Fill::Rising : PlotRegion::Fill::Open,
           .outline = full ? Qt::SolidLine : Qt::DashLine,
           .heavy = full,
           .least = {shown(opens), foot},
           .most = {shown(shuts), foot + height}});
      shown_.scene.marks.push_back(
          {.at = {shown(shuts), foot + height / 2.0},
           .label = taste_.shown(Kind::Angle, rows["duration_rad"].numbers[at], 1),
           .shape = PlotMark::Shape::None});
    }
  }

  Document& document_;
  const Taste& taste_;
  int cylinder_;
  SceneShown shown_;
};

}  // namespace

SceneShown portsScene(Document& document, int subject, int cylinder) {
  return subject < 0 ? SceneShown{} : Ports(document, cylinder).draw(subject);
}

}  // namespace strokewright::ui
