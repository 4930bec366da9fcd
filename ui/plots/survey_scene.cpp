#include "ui/plots/survey_scene.h"

#include <QCoreApplication>
#include <QStringList>
#include <utility>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/plate/results.h"
#include "core/survey/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;
using describe::Result;
using describe::State;
using units::Kind;

constexpr int kSeats = 0;
constexpr int kPlates = 1;
constexpr int kDecimals = 3;

QString tr(const char* text) { return QCoreApplication::translate("SurveyScene", text); }

class Survey {
 public:
  Survey(Document& document, int engine)
      : document_(document), taste_(document.taste()), engine_(engine) {
    shown_.scene.style = taste_.style();
    shown_.scene.panels.resize(2);
    shown_.scene.panels[kSeats].y.title = titled(tr("Barrel seats"), taste_, Kind::Length);
    shown_.scene.panels[kPlates].y.title =
        titled(tr("Plate under the barrels"), taste_, Kind::FineLength);
    for (PlotPanel& panel : shown_.scene.panels) {
      panel.x.title = titled(tr("Along the crankshaft"), taste_, Kind::Length);
    }
  }

  SceneShown draw() {
    describe::Tabulated seats = document_.evaluation().tabulated(engine_, out::seats);
    if (seats.state == State::Value) {
      along_ = shownColumn(seats.rows, "position_m");
      if (along_.size() > 1) {
        drawAll(seats.rows);
      } else {
        sentences_ << tr(
            "One cylinder has one seat: nothing lies along the crankshaft to be drawn.");
      }
      keepTable(shown_.scene, std::move(seats.rows));
    } else {
      sentences_ << tr("The seats are not shown: %1.")
                        .arg(whyNot(document_.assessment(), taste_, seats.state, seats.notes));
    }
    shown_.sentence = sentences_.join(u' ');
    return std::move(shown_);
  }

 private:
  std::vector<double> shownColumn(const describe::Rows& rows, std::string_view key) const {
    std::vector<double> numbers;
    for (const double number : rows[key].numbers) {
      numbers.push_back(toShown(taste_.style(), Kind::Length, number));
    }
    return numbers;
  }

  /// @pre more than one cylinder
  void drawAll(const describe::Rows& rows) {
    fitLength();
    drawSeats(rows);
    drawPlates();
    fitHeights();
    shown_.exaggerated = tr("Heights are drawn %1 times as steep as they are.");
  }

  void drawSeats(const describe::Rows& rows) {
    const std::vector<double> heights = shownColumn(rows, "seat_height_m");
    const std::vector<double> plane = shownColumn(rows, "plane_m");
    const describe::Entry& entry = document_.entry(engine_, in::seatHeight);
    for (std::size_t i = 0; i < along_.size(); ++i) {
      const double off = rows["off_m"].numbers[static_cast<Eigen::Index>(i)];
      const double limit = toShown(taste_.style(), Kind::Length, entry.limit(i));
      addCurve(kSeats, lineBetween({along_[i], plane[i]}, {along_[i], heights[i]}, {},
                                   Ink::Vermilion, Qt::SolidLine));
      shown_.scene.marks.push_back(
          {.panel = kSeats,
           .at = {along_[i], heights[i]},
           .plusMinus = {0.0, limit},
           .label = along_.size() > 2
                        ? taste_.difference(Kind::FineLength, off, kDecimals)
                        : taste_.shown(Kind::Length,
                                       fromShown(taste_.style(), Kind::Length, heights[i])),
           .ink = Ink::Blue});
      heightsSeen_.add(heights[i] + limit);
      heightsSeen_.add(heights[i] - limit);
    }
    heightsSeen_.add(plane);
    addCurve(kSeats, {.ink = Ink::Text, .heavy = true, .x = along_, .y = plane});
    sayRise();
  }

  void sayRise() {
    const describe::Cell& rise = document_.assessment()(engine_, out::seatRisePerPitch);
    if (rise.state != State::Value) return;
    sentences_
        << (along_.size() > 2
                ? tr("The line through the seats rises by %1 per cylinder pitch; the numbers "
                     "beside the seats are how far each stands above it.")
                : tr("The line through the seats rises by %1 per cylinder pitch; the numbers "
                     "beside the seats are their heights."))
               .arg(taste_.shown(Kind::FineLength, rise.value, kDecimals));
  }

  /// One for each cylinder, as marks; what would be one plate, as lines.
  void drawPlates() {
    addPlate(out::flatSpacer, tr("flat"), Ink::Text, Qt::SolidLine);
    addPlate(out::taperedSpacer, tr("tapered"), Ink::Green, Qt::DashLine);
    for (std::size_t i = 0; i < along_.size(); ++i) {
      const describe::Cell& cell = cellOf(out::spacerToMake, i);
      if (cell.state != State::Value) {
        sentences_ << tr("The plates wait: the spacer to make %1.")
                          .arg(whyNot(document_.assessment(), taste_, engine_, out::spacerToMake,
                                      static_cast<int>(i)));
        return;
      }
      const double thickness = toShown(taste_.style(), Kind::FineLength, cell.value);
      shown_.scene.marks.push_back({.panel = kPlates,
                                    .at = {along_[i], thickness},
                                    .label = taste_.value(out::spacerToMake, cell.value),
                                    .ink = Ink::Blue,
                                    .shape = PlotMark::Shape::Ring});
      thicknesses_.add(thickness);
    }
  }

  const describe::Cell& cellOf(const Result& result, std::size_t cylinder) const {
    return document_.assessment()(engine_, result, static_cast<int>(cylinder));
  }

  /// Both are straight, so their ends say all; drawn from edge to edge, named in the margin.
  void addPlate(const Result& plate, const QString& name, Ink ink, Qt::PenStyle line) {
    const std::size_t last = along_.size() - 1;
    const describe::Cell& first = cellOf(plate, 0);
    const describe::Cell& end = cellOf(plate, last);
    if (first.state != State::Value || end.state != State::Value) return;
    const double from = toShown(taste_.style(), Kind::FineLength, first.value);
    const double to = toShown(taste_.style(), Kind::FineLength, end.value);
    const double length = along_[last] - along_[0];
    const double slope = length > 0.0 ? (to - from) / length : 0.0;
    const PlotAxis& x = shown_.scene.panels[kPlates].x;
    PlotCurve curve = lineBetween({x.from, from + slope * (x.from - along_[0])},
                                  {x.to, from + slope * (x.to - along_[0])}, name, ink, line);
    curve.heavy = true;
    thicknesses_.add({from, to});
    addCurve(kPlates, std::move(curve));
  }

  void addCurve(int panel, PlotCurve curve) {
    curve.panel = panel;
    shown_.scene.curves.push_back(std::move(curve));
  }

  void fitLength() {
    constexpr double kBeside = 0.2;  // of the length, where there is no barrel
    Extent length;
    length.add(along_);
    for (PlotPanel& panel : shown_.scene.panels) length.showOn(panel.x, kBeside, kBeside);
  }

  void fitHeights() {
    heightsSeen_.showOn(shown_.scene.panels[kSeats].y, 0.15, 0.35);
    thicknesses_.showOn(shown_.scene.panels[kPlates].y, 0.3, 0.5);
  }

  Document& document_;
  const Taste& taste_;
  int engine_;
  SceneShown shown_;
  QStringList sentences_;
  std::vector<double> along_;  // [shown] of each cylinder
  Extent heightsSeen_;
  Extent thicknesses_;
};

}  // namespace

SceneShown surveyScene(Document& document, int engine) {
  return engine < 0 ? SceneShown{} : Survey(document, engine).draw();
}

}  // namespace strokewright::ui
