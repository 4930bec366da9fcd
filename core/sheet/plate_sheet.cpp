#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/names.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/plate/taper.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;
using describe::Quantity;
using units::Kind;

namespace {

/// Nothing lies there, or something is to come off instead.
bool noPlate(const BenchWork& work, int cylinder) {
  return work.cell(out::spacerInStack, cylinder).value < plate::kTrue;
}

/// [m] what a plate is made to within: the ± it was entered with, else the one for all plates.
double madeToWithin(const BenchWork& work, int cylinder) {
  const double entered = work.given(in::spacer, cylinder) ? work.limit(in::spacer, cylinder) : 0.0;
  return entered > 0.0 ? entered : work.value(in::plateTolerance);
}

void say(BenchWork& work, std::string_view pattern, std::vector<describe::Argument> arguments) {
  work.sheet.notes.push_back(describe::word({pattern, std::move(arguments)}, work.style));
}

Quantity fineAsTyped(const BenchWork& work, double length) {
  return {Kind::FineLength, length, decimalsFor(work.style, Kind::FineLength, length)};
}

/// What a mill is set by, for the thicknesses hold at the cylinder axes alone.
void writeTaper(BenchWork& work) {
  const auto told = work.tabulated(out::taperedPlateEnds);
  if (!told.rows) {
    say(work, "These thicknesses lie on no straight line: one piece cannot have them all.", {});
    return;
  }
  const describe::Rows& ends = *told.rows;
  const auto number = [&](Eigen::Index end) {
    return Quantity{Kind::Count, ends["cylinder"].numbers[end]};
  };
  const auto thickness = [&](Eigen::Index end) {
    return Quantity{Kind::FineLength, ends["thickness_m"].numbers[end]};
  };
  const double slope = ends["slope"].numbers[0];
  constexpr double kStraightedge = 0.1;  // [m]
  constexpr int kDecimals = 3;
  say(work, "In one piece it is tapered: these thicknesses hold at the cylinder axes.", {});
  say(work, "Slope {1} in {2} ({3}), thinner towards the end at cylinder {4}.",
      {Quantity{Kind::FineLength, std::abs(slope) * kStraightedge, kDecimals},
       Quantity{Kind::Length, kStraightedge}, Quantity{Kind::Share, std::abs(slope), kDecimals},
       number(slope < 0.0 ? 1 : 0)});
  say(work, "At the end at cylinder {1} it is {2} thick, at the end at cylinder {3} {4}.",
      {number(0), thickness(0), number(1), thickness(1)});
  say(work, "Measure the seats again before it is cut, and mark which end is which.", {});
}

/// One thickness for all, or what each cylinder has.
void writeThicknesses(BenchWork& work, bool same) {
  for (int i = 0; i < (same ? 1 : work.cylinders()); ++i) {
    const double thickness = work.cell(out::spacerInStack, i).value;
    const Quantity number{Kind::Count, static_cast<double>(work.numberOf(i))};
    const Quantity thick = work.given(in::spacer, i)
                               ? fineAsTyped(work, std::abs(thickness))
                               : Quantity{Kind::FineLength, std::abs(thickness)};
    const Quantity within = fineAsTyped(work, madeToWithin(work, i));
    if (noPlate(work, i)) {
      say(work,
          thickness > -plate::kTrue ? "Cylinder {1}: no plate is counted with."
                                    : "Cylinder {1}: no plate, take {2} off.",
          {number, thick});
    } else if (same) {
      say(work, "Thickness {1} ± {2}.", {thick, within});
    } else {
      say(work, "Cylinder {1}: thickness {2} ± {3}.", {number, thick, within});
    }
  }
}

/// How sure the thickness itself is, however well the plate is made to it.
void writeHowSure(BenchWork& work) {
  double likely = 0.0;
  double worst = 0.0;
  for (int i = 0; i < work.cylinders(); ++i) {
    const describe::Cell& cell = work.cell(out::spacerToMake, i);
    if (cell.state != describe::State::Value) return;
    likely = std::max(likely, cell.likely);
    worst = std::max(worst, cell.worst);
  }
  if (worst < plate::kTrue) return;
  say(work,
      "The measurements leave what is to be made to within ± {1} likely, ± {2} at worst case.",
      {Quantity{Kind::FineLength, likely}, Quantity{Kind::FineLength, worst}});
}

bool inOnePiece(const BenchWork& work) {
  return work.value(in::platesInStack) == model::answer(model::PlatesInStack::OneForAll);
}

bool isDrawn(const BenchWork& work, int cylinder) {
  const std::string bore = plate::nameOfBore(work.numberOf(cylinder));
  return std::ranges::find(work.sheet.plate->holes, bore, &plate::Hole::name) !=
         work.sheet.plate->holes.end();
}

/// Of several banks one is drawn.
void sayWhatIsNotDrawn(BenchWork& work) {
  std::vector<int> others;
  for (int i = 0; i < work.cylinders(); ++i) {
    if (!noPlate(work, i) && !isDrawn(work, i)) others.push_back(work.numberOf(i));
  }
  if (others.empty()) return;
  int drawn = 0;
  while (!isDrawn(work, drawn)) ++drawn;
  say(work, "Drawn for the bank of cylinder {1}. Plates of other banks are not drawn: {2}.",
      {Quantity{Kind::Count, static_cast<double>(work.numberOf(drawn))},
       describe::cylindersInOne(others)});
}

void writeCorners(BenchWork& work) {
  const plate::Outline& plate = *work.sheet.plate;
  const std::vector<plate::Stretch> metal = plate.stretches();
  if (!plate.endsInGap(metal.front().from) || !plate.endsInGap(metal.back().to)) {
    say(work, "Corners R {1}, or as the seat (common practice).",
        {Quantity{Kind::Length, plate.corner()}});
  }
  if (!plate.gaps.empty()) {
    say(work, "The end of a plate beside a cylinder without one is square.", {});
  }
}

void writeThickness(BenchWork& work) {
  bool same = true;
  for (int i = 0; i < work.cylinders(); ++i) {
    const describe::Cell& cell = work.cell(out::spacerInStack, i);
    if (cell.state != describe::State::Value) {
      const Text text = work.numbers.text(work.engine, out::spacerInStack);
      work.sheet.notes.push_back("Thickness " + text.full + ".");
      return;
    }
    same = same && work.spacer(i) == work.spacer(0);
  }
  writeThicknesses(work, same);
  const plate::Outline& plate = *work.sheet.plate;
  sayWhatIsNotDrawn(work);
  const bool tapered = !same && inOnePiece(work) &&
                       std::ranges::count_if(plate.holes, &plate::Hole::isBore) == work.cylinders();
  if (!plate.partings.empty()) {
    say(work,
        "One plate for each cylinder, each of its own metal; they part at the dashed lines. A cut "
        "takes its width from both: leave metal for it and mill to the line (common practice).",
        {});
  } else if (tapered) {
    writeTaper(work);
  }
  if (plate.stretches().size() > 1) {
    say(work, "Plates that lie apart are separate pieces: nothing joins them.", {});
  }
  writeHowSure(work);
  say(work,
      tapered ? "Flat within {1}, parallel across the crankshaft within {2} (common practice)."
              : "Flat within {1}, parallel within {2} (common practice).",
      {Quantity{Kind::FineLength, plate::kFlatWithin},
       Quantity{Kind::FineLength, plate::kParallelWithin}});
  writeCorners(work);
}

void writeHoles(BenchWork& work, const describe::Rows& rows) {
  work.sheet.notes.push_back(
      "Holes by their numbers on the drawing; places from the axis of cylinder " +
      std::to_string(work.numberOf(0)) + ", across it minus on the thrust side.");
  Grid grid{"Holes", {}, {}};
  grid.columns = {"Hole", work.headed("Along", Kind::Length), work.headed("Across", Kind::Length),
                  work.headed("Ø", Kind::Length), work.headed("Wall", Kind::Length)};
  const std::size_t gaps = work.sheet.plate->gaps.size();  // the last rows, named by the drawing
  for (std::size_t i = 1; i + gaps < rows.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    const auto number = [&](std::string_view key) {
      const double length = rows[key].numbers[at];
      return std::isnan(length) ? std::string(kNothing) : work.number(Kind::Length, length);
    };
    const std::string& name = rows["feature"].words[i];
    const std::string& beside = rows["beside"].words[i];
    const bool cut =
        rows["wall_m"].numbers[at] < 0.0 && (beside == plate::kParting || beside == plate::kEnd);
    grid.rows.push_back({name.starts_with(plate::kParting) ? name : std::to_string(i) + "  " + name,
                         number("along_m"), number("across_m"), number("diameter_m"),
                         cut ? "cut" : number("wall_m")});
  }
  work.sheet.grids.push_back(std::move(grid));
}

/// Of one piece for unlike needs nobody has said yet whether it is flat or tapered.
std::string whyNoneIsChosen(const BenchWork& work) {
  if (!inOnePiece(work) || work.given(in::spacer)) return {};
  std::string needed;
  bool unlike = false;
  for (int i = 0; i < work.cylinders(); ++i) {
    const describe::Cell& cell = work.cell(out::spacerInStack, i);
    if (cell.state != describe::State::Value) return {};
    unlike = unlike || std::abs(cell.value - work.cell(out::spacerInStack).value) >= plate::kTrue;
    needed += (i > 0 ? " · " : "") + work.number(Kind::FineLength, cell.value);
  }
  if (!unlike) return {};
  return "No plate is chosen yet: the cylinders ask for " + needed + " " +
         std::string(work.style.unit(Kind::FineLength)) +
         ". Put one flat plate, a tapered one, or one for each cylinder into the stack first.";
}

/// Wherever the drawing goes without the page.
void writeWhatForbids(BenchWork& work) {
  const auto found = std::ranges::find(work.sheet.objections, "forbids", &Objection::word);
  if (found == work.sheet.objections.end()) return;
  work.sheet.notes.insert(work.sheet.notes.begin(),
                          std::string(kNotToBeCut) + ": " + found->sentence);
}

}  // namespace

void writePlate(BenchWork& work) {
  const auto told = work.tabulated(out::plateOutline);
  if (!told.rows) {
    work.sheet.whyNoDrawing = told.whyNot;
    return;
  }
  work.sheet.whyNoDrawing = whyNoneIsChosen(work);
  if (!work.sheet.whyNoDrawing.empty()) return;
  work.sheet.plate = plate::outlineFrom(*told.rows);
  writeThickness(work);
  writeHoles(work, *told.rows);
  writeWhatForbids(work);
}

}  // namespace strokewright::sheet
