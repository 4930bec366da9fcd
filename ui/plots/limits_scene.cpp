#include "ui/plots/limits_scene.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <optional>

#include "core/limits/results.h"
#include "core/motion/results.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"

namespace strokewright::ui {
namespace {

using describe::Result;
using describe::State;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("LimitsChart", text); }

struct Line {
  const Result* ceiling;
  QString name;
  bool governs;  ///< may govern; breathing may not
};

std::vector<Line> lines() {
  const std::array may{&out::ceilingPistonSpeed, &out::ceilingRingFlutter, &out::ceilingRodTension,
                       &out::ceilingBigEnd, &out::ceilingDonor};
  std::vector<Line> all;
  for (std::size_t i = 0; i < may.size(); ++i) {
    all.push_back({may[i], fromCore(out::governs.choices[i].label), true});
  }
  all.push_back({&out::breathingSpeed, tr("breathing (power, not safety)"), false});
  return all;
}

/// [rad/s] the lowest over all cylinders.
std::optional<double> lowest(const assess::Assessment& assessment, int engine,
                             const Result& ceiling) {
  std::optional<double> least;
  for (int i = 0; i < assessment.evaluation().cylinders(engine); ++i) {
    const describe::Cell& cell = assessment(engine, ceiling, i);
    if (cell.state == State::Value) least = std::min(least.value_or(cell.value), cell.value);
  }
  return least;
}

class Chart {
 public:
  Chart(const assess::Assessment& assessment, const Taste& taste, LimitNames names)
      : assessment_(assessment), taste_(taste), above_(names == LimitNames::Above) {
    scene_.style = taste.style();
    scene_.panels.resize(1);
  }

  PlotScene draw() {
    const int target = assessment_.project().target();
    const std::vector<int> beside = besideTarget();
    const double more = kBeside * static_cast<double>(std::max<std::size_t>(beside.size(), 1) - 1);
    drawWanted(target);  // before the bars, whose numbers leave its name the room
    // Above the first row stands what is wanted; beside it, the more bars a row has, the lower is a
    // row of text.
    double row = above_ ? 1.0 + more - kHead - kName - kWanted : 0.3 * more - kWanted;
    std::vector<Row> rows;
    for (const Line& line : lines()) {
      row -= (line.governs ? 1.0 : 1.6) + more + (above_ ? kName : 0.0);
      scene_.panels[0].y.names.emplace_back(row, above_ ? QString() : line.name);
      rows.push_back({row, drawTarget(target, line, row)});
    }
    // After all of the target's, whose numbers come first where there is little room.
    for (std::size_t k = 0; k < beside.size(); ++k) {
      for (std::size_t i = 0; i < rows.size(); ++i) {
        drawBeside(beside[k], lines()[i], rows[i].middle - kBeside * static_cast<double>(k + 1),
                   rows[i].number);
      }
    }
    const double foot = row - (above_ ? 1.1 : 0.7) - more;
    for (PlotCurve& wanted : scene_.curves) wanted.y = {foot, 0.0};
    if (!(most_ > 0.0)) {  // the sentence says what all of it waits for
      scene_.regions.clear();
      scene_.marks.clear();
    }
    PlotAxis& x = scene_.panels[0].x;
    x.title = titled(tr("Shaft speed"), taste_, Kind::Speed);
    x.to = most_ > 0.0 ? (above_ ? 1.05 : 1.6) * most_ : 1.0;
    scene_.panels[0].y.title = key(target, beside);
    scene_.panels[0].y.from = foot;
    scene_.panels[0].y.to = 0.0;
    scene_.table = [rows = rows_](const PlotScene&) { return rows; };
    return std::move(scene_);
  }

 private:
  static constexpr double kBeside = 0.28;          // from one bar to the next, of a row
  static constexpr double kName = 1.5;             // a name above its bars, of a row
  static constexpr double kWanted = 0.75;          // more for what is wanted, of a row
  static constexpr double kHead = 0.42;            // above a row's middle: there its bars begin
  static constexpr std::size_t kMostVariants = 3;  // each in its own kind of line

  struct Row {
    double middle;
    int number;  ///< place of the mark with the target's; -1: it has none
  };

  /// The donor and the first variants, whose bars stand below the target's.
  std::vector<int> besideTarget() const {
    const model::Project& project = assessment_.project();
    std::vector<int> beside;
    if (project.referenceDonor >= 0 && project.referenceDonor != project.target()) {
      beside.push_back(project.referenceDonor);
    }
    const std::size_t most = beside.size() + kMostVariants;
    for (int i = 0; i < assessment_.evaluation().engines() && beside.size() < most; ++i) {
      const bool variant =
          project.engines[static_cast<std::size_t>(i)].part == model::Part::Variant;
      if (variant && i != project.target()) beside.push_back(i);
    }
    return beside;
  }

  static QString lineName(Qt::PenStyle line) {
    switch (line) {
      case Qt::DashLine:
        return tr("dashed");
      case Qt::DotLine:
        return tr("dotted");
      case Qt::DashDotLine:
        return tr("dash and dot");
      default:
        return tr("dash and two dots");
    }
  }

  /// Which bar is whose.
  QString key(int target, const std::vector<int>& beside) const {
    const model::Project& project = assessment_.project();
    QStringList parts;
    if (target >= 0) parts << tr("full: target");
    for (const int engine : beside) {
      const bool donor = engine == project.referenceDonor;
      parts << tr("%1: %2").arg(lineName(lineOf(project, engine)),
                                donor ? tr("donor") : nameOf(project, engine));
    }
    return parts.join(QStringLiteral(" · "));
  }

  /// Above its bars a name has the target's number with it, first: it is never cut short.
  void nameAbove(const Line& line, double row, const QString& number) {
    if (!above_) return;
    write({0.0, row + kHead + 0.5 * kName},
          number.isEmpty() ? line.name : tr("%1: %2").arg(number, line.name));
  }

  /// Why there is no bar, below its name.
  void sayWhyNot(int target, const Line& line, double row) {
    nameAbove(line, row, {});
    if (target < 0) return;
    write({0.0, above_ ? row + kHead - 0.5 * kName : row},
          whyNot(assessment_, taste_, target, *line.ceiling));
  }

  /// @return place of the mark with its number; -1: none
  int drawTarget(int target, const Line& line, double row) {
    const auto speed = target < 0 ? std::nullopt : lowest(assessment_, target, *line.ceiling);
    if (!speed) {
      sayWhyNot(target, line, row);
      return -1;
    }
    const bool first = line.governs && assessment_(target, out::revCeiling).value == *speed;
    drawBar(*speed, row + 0.02, 0.36,
            {.ink = line.governs ? (first ? Ink::Vermilion : Ink::Blue) : Ink::Faint,
             .fill = line.governs ? PlotRegion::Fill::Solid : PlotRegion::Fill::Rising,
             .outline = Qt::SolidLine,
             .heavy = first});
    // Above, where the room is narrow, the unit is left to the axis.
    const QString plain =
        above_ ? taste_.number(Kind::Speed, *speed) : taste_.shown(Kind::Speed, *speed);
    const QString text = first ? tr("%1, first").arg(plain) : plain;
    if (!above_) write({shown(*speed), row + 0.2}, text);
    nameAbove(line, row, text);
    note(target, line, *speed);
    return static_cast<int>(scene_.marks.size()) - 1;
  }

  /// @param number the target's, without which this one would be taken for it
  void drawBeside(int engine, const Line& line, double foot, int number) {
    const auto speed = lowest(assessment_, engine, *line.ceiling);
    if (!speed) return;
    drawBar(*speed, foot, 0.24,
            {.ink = Ink::Text,
             .fill = PlotRegion::Fill::Open,
             .outline = lineOf(assessment_.project(), engine)});
    if (!above_ && number >= 0) {
      write({shown(*speed), foot + 0.12}, taste_.shown(Kind::Speed, *speed));
      scene_.marks.back().after = number;
    }
    note(engine, line, *speed);
  }

  void drawBar(double speed, double foot, double height, PlotRegion bar) {
    const double end = shown(speed);
    bar.least = {0.0, foot};
    bar.most = {end, foot + height};
    scene_.regions.push_back(std::move(bar));
    most_ = std::max(most_, end);
  }

  void drawWanted(int target) {
    if (target < 0 || assessment_(target, out::workingSpeed).state != State::Value) return;
    const double wanted = assessment_(target, out::workingSpeed).value;
    PlotCurve line;
    line.heavy = true;
    line.x = {shown(wanted), shown(wanted)};
    scene_.curves.push_back(std::move(line));
    write({shown(wanted), 0.0}, tr("wanted %1").arg(taste_.shown(Kind::Speed, wanted)));
    most_ = std::max(most_, shown(wanted));
  }

  void write(QPointF at, const QString& text) {
    scene_.marks.push_back({.at = at, .label = text, .shape = PlotMark::Shape::None});
  }

  void note(int engine, const Line& line, double speed) {
    if (rows_.columns.empty()) {
      rows_.columns = {{.heading = tr("Engine")},
                       {.heading = tr("Limit")},
                       {.heading = titled(tr("Ceiling"), taste_, Kind::Speed), .decimals = 1}};
    }
    rows_.columns[0].words.push_back(nameOf(assessment_.project(), engine));
    rows_.columns[1].words.push_back(line.name);
    rows_.columns[2].numbers.push_back(shown(speed));
  }

  double shown(double speed) const { return toShown(taste_.style(), Kind::Speed, speed); }

  const assess::Assessment& assessment_;
  const Taste& taste_;
  bool above_;  ///< the names of the bars
  PlotScene scene_;
  PlotTable rows_;
  double most_ = 0.0;
};

}  // namespace

PlotScene limitsScene(const assess::Assessment& assessment, const Taste& taste, LimitNames names) {
  return Chart(assessment, taste, names).draw();
}

QStringList limitNames() {
  QStringList names;
  for (const Line& line : lines()) names << line.name;
  return names;
}

QString limitsSentence(const assess::Assessment& assessment, const Taste& taste) {
  const int target = assessment.project().target();
  if (target < 0) return tr("There is no target to judge.");
  const QString why = whyNot(assessment, taste, target, out::revCeiling);
  if (!why.isEmpty()) {
    const bool refused = assessment(target, out::revCeiling).state == State::Refused;
    return refused ? tr("There is no rev ceiling. %1").arg(why)
                   : tr("The rev ceiling %1.").arg(why);
  }
  const auto value = [&](const Result& result) {
    return taste.value(result, assessment(target, result).value);
  };
  QStringList sentences{
      tr("%1 stops at %2, by %3.")
          .arg(nameOf(assessment.project(), target), value(out::revCeiling), value(out::governs))};
  if (assessment(target, out::nextCeiling).state == State::Value) {
    sentences
        << tr("Next would be %1 at %2.").arg(value(out::governsNext), value(out::nextCeiling));
  }
  for (const Line& line : lines()) {
    const describe::Cell& cell = assessment(target, *line.ceiling);
    if (cell.state != State::Waits) continue;
    sentences << tr("Not counted: %1, which %2.")
                     .arg(line.name, whyNot(assessment, taste, target, *line.ceiling));
  }
  return sentences.join(u' ');
}

}  // namespace strokewright::ui
