#include "ui/plots/likelihood_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <utility>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/spread/tables.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/scene_kit.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;
using describe::Input;
using describe::Result;
using describe::Rows;
using describe::State;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("LikelihoodScene", text); }

/// What is drawn of one number.
struct Side {
  const Result& result;
  const describe::Table& histogram;
  std::string_view percentile;      ///< its column among the percentiles
  std::vector<const Input*> marks;  ///< wanted, and limits
  const Input* least;               ///< below it bars are hatched; nullptr: nowhere
};

class Chart {
 public:
  Chart(Document& document, CylinderShown which, const Side& side)
      : document_(document),
        taste_(document.taste()),
        engine_(which.engine),
        cylinder_(which.cylinder),
        side_(side) {
    scene_.style = taste_.style();
    scene_.panels = {{.x = {.title = titled(taste_.label(side.result), taste_, side.result.kind)},
                      .y = {.title = titled(tr("Chance"), taste_, Kind::Share)}}};
  }

  PlotScene draw(const spread::SampledSpread* sampled, bool old) {
    if (engine_ < 0) return std::move(scene_);
    describe::Tabulated bars =
        document_.evaluation().tabulated(engine_, side_.histogram, cylinder_);
    if (bars.state != State::Value || bars.rows.size() == 0) return std::move(scene_);
    addBars(bars.rows);
    if (sampled != nullptr) addSampled(*sampled, old);
    fit();
    addPercentiles();
    addMarks();
    keepTable(scene_, std::move(bars.rows));
    return std::move(scene_);
  }

 private:
  double shown(double value) const { return toShown(taste_.style(), side_.result.kind, value); }
  double chance(double share) const { return toShown(taste_.style(), Kind::Share, share); }

  void addBars(const Rows& rows) {
    const auto& from = rows.cells()[0].numbers;
    const auto& to = rows.cells()[1].numbers;
    const auto& chances = rows.cells()[2].numbers;
    bins_ = {.low = from[0], .high = to[to.size() - 1], .count = static_cast<int>(rows.size())};
    const double least = side_.least == nullptr
                             ? bins_.low
                             : document_.evaluation().inputValue(engine_, *side_.least, cylinder_);
    for (Eigen::Index i = 0; i < chances.size(); ++i) {
      const bool under = 0.5 * (from[i] + to[i]) < least;
      scene_.regions.push_back({.ink = under ? Ink::Vermilion : Ink::Blue,
                                .fill = under ? PlotRegion::Fill::Falling : PlotRegion::Fill::Solid,
                                .outline = under ? Qt::SolidLine : Qt::NoPen,
                                .least = {shown(from[i]), 0.0},
                                .most = {shown(to[i]), chance(chances[i])}});
      most_ = std::max(most_, chance(chances[i]));
    }
  }

  /// The outline of the same bins.
  void addSampled(const spread::SampledSpread& sampled, bool old) {
    PlotCurve outline{.ink = Ink::Text, .line = old ? Qt::DotLine : Qt::SolidLine};
    const std::vector<double> chances = sampled.histogram(bins_);
    for (std::size_t i = 0; i < chances.size(); ++i) {
      const double height = chance(chances[i]);
      most_ = std::max(most_, height);
      for (const int end : {0, 1}) {
        outline.x.push_back(shown(bins_.edge(static_cast<int>(i) + end)));
        outline.y.push_back(height);
      }
    }
    scene_.curves.push_back(std::move(outline));
  }

  void fit() {
    constexpr double kAbove = 0.9;  // of the highest bar, for the words
    PlotPanel& panel = scene_.panels[0];
    panel.y.to = (1.0 + kAbove) * most_;
    panel.y.names = {
        {0.0, QStringLiteral("0")},
        {most_, taste_.number(Kind::Share, fromShown(taste_.style(), Kind::Share, most_))}};
    panel.x.from = shown(bins_.low);
    panel.x.to = shown(bins_.high);
  }

  /// A line up to the words that name it.
  void addLine(double value, const QString& words, double top, Ink ink, Qt::PenStyle line) {
    scene_.curves.push_back(lineBetween({shown(value), 0.0}, {shown(value), top}, {}, ink, line));
    scene_.marks.push_back(
        {.at = {shown(value), top}, .label = words, .ink = ink, .shape = PlotMark::Shape::None});
  }

  /// Named beside the bars, which are low there.
  void addPercentiles() {
    constexpr double kHeight = 0.6;  // of the highest bar
    QStringList ends;
    const describe::Tabulated table =
        document_.evaluation().tabulated(engine_, out::likelihood, cylinder_);
    if (table.state != State::Value) return;
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      const auto at = static_cast<Eigen::Index>(i);
      const double below = table.rows["chance_below"].numbers[at];
      if (below != 0.025 && below != 0.5 && below != 0.975) continue;
      const double value = table.rows[side_.percentile].numbers[at];
      const bool middle = below == 0.5;  // of the bars anyway: its words would only crowd
      const QString number = taste_.number(side_.result.kind, value, decimals());
      addLine(value, middle ? QString() : number, (middle ? 1.0 : kHeight) * most_, Ink::Faint,
              Qt::DashLine);
      if (!middle) ends << number;
    }
    if (ends.size() != 2) return;
    QString& title = scene_.panels[0].y.title;
    title = tr("%1 · %2 from %3 to %4")
                .arg(title, taste_.shown(Kind::Share, 0.95, 0), ends.front(), ends.back());
  }

  int decimals() const { return side_.result.kind == Kind::FineLength ? 3 : 2; }

  /// Those within what can be, or just outside.
  void addMarks() {
    constexpr double kBeside = 0.3;  // of all that can be
    PlotAxis& x = scene_.panels[0].x;
    const double whole = bins_.high - bins_.low;
    for (const Input* input : side_.marks) {
      if (!document_.evaluation().inputStands(engine_, *input, cylinder_)) continue;
      const double value = document_.evaluation().inputValue(engine_, *input, cylinder_);
      if (value < bins_.low - kBeside * whole || value > bins_.high + kBeside * whole) continue;
      x.from = std::min(x.from, shown(value) - 0.02 * shown(whole));
      x.to = std::max(x.to, shown(value) + 0.02 * shown(whole));
      constexpr int kHeights = 2;  // above the bars
      const double to = scene_.panels[0].y.to;
      addLine(value, taste_.label(*input),
              to - (to - most_) * (lines_++ % kHeights + 0.5) / kHeights,
              input == side_.least ? Ink::Vermilion : Ink::Text, Qt::SolidLine);
    }
  }

  Document& document_;
  const Taste& taste_;
  int engine_;
  int cylinder_;
  const Side& side_;
  PlotScene scene_;
  spread::Bins bins_;
  double most_ = 0.0;  // [shown] highest chance
  int lines_ = 0;
};

}  // namespace

std::optional<double> chanceUnderLeast(Document& document, CylinderShown which) {
  const describe::Tabulated chances =
      document.evaluation().tabulated(which.engine, out::gapChances, which.cylinder);
  constexpr std::size_t kUnderLeast = 1;
  if (chances.state != State::Value || chances.rows.size() <= kUnderLeast) return std::nullopt;
  return chances.rows["chance"].numbers[kUnderLeast];
}

int cylinderLikeliestTooClose(Document& document, int engine) {
  int likeliest = 0;
  double most = -1.0;
  for (int i = 0; i < document.evaluation().cylinders(engine); ++i) {
    const auto gapOf = [&](int cylinder) {
      return document.assessment()(engine, out::squishGap, cylinder).value;
    };
    const double chance = chanceUnderLeast(document, {engine, i}).value_or(0.0);
    if (chance < most || (chance == most && gapOf(i) >= gapOf(likeliest))) continue;
    most = chance;
    likeliest = i;
  }
  return likeliest;
}

PlotScene gapScene(Document& document, CylinderShown which, const SampledShown& sampled) {
  static const Side side{.result = out::squishGap,
                         .histogram = out::gapHistogram,
                         .percentile = "gap_m",
                         .marks = {&in::squishLeast, &in::wantedSquish, &in::squishMost},
                         .least = &in::squishLeast};
  return Chart(document, which, side)
      .draw(sampled.samples == nullptr ? nullptr : &sampled.samples->gap, sampled.old);
}

PlotScene ratioScene(Document& document, CylinderShown which, const SampledShown& sampled) {
  static const Side side{.result = out::compressionRatio,
                         .histogram = out::ratioHistogram,
                         .percentile = "ratio",
                         .marks = {&in::wantedCompressionRatio, &in::ratioLeast, &in::ratioMost},
                         .least = nullptr};
  return Chart(document, which, side)
      .draw(sampled.samples == nullptr ? nullptr : &sampled.samples->ratio, sampled.old);
}

}  // namespace strokewright::ui
