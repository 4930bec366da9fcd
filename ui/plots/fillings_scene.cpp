#include "ui/plots/fillings_scene.h"

#include <QCoreApplication>
#include <QStringList>
#include <utility>

#include "core/burette/results.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

using describe::Cell;
using describe::Result;
using describe::State;
using units::Kind;

constexpr double kApart = 0.12;  // of a cylinder: the two ways stand beside each other

QString tr(const char* text) { return QCoreApplication::translate("FillingsScene", text); }

class Fillings {
 public:
  Fillings(Document& document, int engine)
      : document_(document), taste_(document.taste()), engine_(engine) {
    shown_.scene.style = taste_.style();
    shown_.scene.panels.resize(2);
    readSenses();
    title(0, crownTitle());
    title(1, tr("Clearance volume"));
  }

  SceneShown draw() {
    bool any = false;
    for (int i = 0; i < document_.evaluation().cylinders(engine_); ++i) {
      any = addPair(0, i, out::crownByBurette, out::crownClosure) || any;
      any = addPair(1, i, out::clearanceByBurette, out::clearanceClosure) || any;
    }
    for (int panel = 0; panel < 2; ++panel) fit(panel);
    shown_.sentence = any ? tr("Square: as entered or computed. Round: by the burette. They agree "
                               "where the bars, "
                               "the likely ±, reach each other.")
                          : waits();
    describe::Tabulated filled = document_.evaluation().tabulated(engine_, out::volumesFilled);
    if (filled.state == State::Value) keepTable(shown_.scene, std::move(filled.rows));
    return std::move(shown_);
  }

 private:
  /// As the builder entered them: which way the crown's volume counts in every cylinder.
  void readSenses() {
    const describe::Evaluation& evaluation = document_.evaluation();
    const auto everywhere = [&](model::CrownSense sense) {
      bool all = true;
      for (int i = 0; i < evaluation.cylinders(engine_); ++i) {
        all =
            all && evaluation.inputGiven(engine_, model::in::crownVolumeSense, i) &&
            evaluation.inputValue(engine_, model::in::crownVolumeSense, i) == model::answer(sense);
      }
      return all;
    };
    adds_ = everywhere(model::CrownSense::Adds);
    takes_ = everywhere(model::CrownSense::Takes);
  }

  QString crownTitle() const {
    return adds_    ? tr("Crown volume, adds (dish)")
           : takes_ ? tr("Crown volume, takes (dome)")
                    : tr("Crown volume, + takes (dome), − adds (dish)");
  }

  void title(int panel, const QString& name) {
    PlotPanel& it = shown_.scene.panels[static_cast<std::size_t>(panel)];
    const int cylinders = document_.evaluation().cylinders(engine_);
    it.x = {.title = tr("Cylinder"), .from = 0.5, .to = cylinders + 0.5};
    for (int i = 0; i < cylinders; ++i) {
      const int number = model::numberOfCylinder(document_.evaluation(), engine_, i);
      it.x.names.emplace_back(i + 1, QString::number(number));
    }
    it.y.title = titled(name, taste_, Kind::Volume);
  }

  const Cell& cell(const Result& result, int cylinder) const {
    return document_.assessment()(engine_, result, cylinder);
  }

  /// The other way is what the closure was taken from.
  bool addPair(int panel, int cylinder, const Result& byBurette, const Result& closure) {
    const Cell& filled = cell(byBurette, cylinder);
    const Cell& apart = cell(closure, cylinder);
    if (filled.state != State::Value) return false;
    add(panel, cylinder + 1 + kApart, filled.value, filled.likely, PlotMark::Shape::Disc);
    if (apart.state != State::Value) return true;
    const bool clearance = &byBurette == &out::clearanceByBurette;
    const double computed = filled.value - apart.value;
    const double likely = clearance ? cell(out::clearanceVolume, cylinder).likely
                                    : document_.entry(engine_, model::in::crownVolume)
                                          .limit(static_cast<std::size_t>(cylinder));
    add(panel, cylinder + 1 - kApart, computed, likely, PlotMark::Shape::Square);
    return true;
  }

  /// @param computed [m3] a crown's that adds is less than nought
  void add(int panel, double place, double computed, double likely, PlotMark::Shape shape) {
    const double volume = panel == 0 && adds_ ? -computed : computed;
    const double at = toShown(taste_.style(), Kind::Volume, volume);
    const double half = toShown(taste_.style(), Kind::Volume, likely);
    shown_.scene.marks.push_back({.panel = panel,
                                  .at = {place, at},
                                  .plusMinus = {0.0, half},
                                  .label = taste_.number(Kind::Volume, volume),
                                  .ink = shape == PlotMark::Shape::Disc ? Ink::Blue : Ink::Text,
                                  .shape = shape});
    volumes_[panel].add(at - half);
    volumes_[panel].add(at + half);
  }

  void fit(int panel) {
    volumes_[panel].showOn(shown_.scene.panels[static_cast<std::size_t>(panel)].y, 0.25, 0.4);
  }

  QString waits() const {
    QStringList sentences;
    for (const Result* result : {&out::crownByBurette, &out::clearanceByBurette}) {
      sentences << tr("%1 %2.").arg(taste_.label(*result),
                                    whyNot(document_.assessment(), taste_, engine_, *result));
    }
    return sentences.join(u' ');
  }

  Document& document_;
  const Taste& taste_;
  int engine_;
  SceneShown shown_;
  bool adds_ = false;   // every crown
  bool takes_ = false;  // every crown
  Extent volumes_[2];   // [shown]
};

}  // namespace

SceneShown fillingsScene(Document& document, int engine) {
  return engine < 0 ? SceneShown{} : Fillings(document, engine).draw();
}

}  // namespace strokewright::ui
