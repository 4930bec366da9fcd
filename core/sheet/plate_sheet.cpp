#include <cmath>

#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;
using describe::Quantity;
using units::Kind;

namespace {

/// What is to be made is a skim, or nothing at all.
bool noPlate(const BenchWork& work, int cylinder) {
  return work.cell(out::spacerInStack, cylinder).value <= 0.0;
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
  const auto say = [&](std::string_view pattern, std::vector<describe::Argument> arguments) {
    work.sheet.notes.push_back(describe::word({pattern, std::move(arguments)}, work.style));
  };
  for (int i = 0; i < (same ? 1 : work.cylinders()); ++i) {
    const double thickness = work.cell(out::spacerInStack, i).value;
    const Quantity thick{
        Kind::FineLength, std::abs(thickness),
        work.given(in::spacer, i) ? decimalsFor(work.style, Kind::FineLength, thickness) : -1};
    const Quantity number{Kind::Count, static_cast<double>(work.numberOf(i))};
    const Quantity within{Kind::FineLength, work.value(in::plateTolerance)};
    if (noPlate(work, i)) {
      say(thickness == 0.0 ? "Cylinder {1}: no plate is counted with."
                           : "Cylinder {1}: no plate, a skim of {2}.",
          {number, thick});
    } else if (same) {
      say("Thickness {1} ± {2}.", {thick, within});
    } else {
      say("Cylinder {1}: thickness {2} ± {3}.", {number, thick, within});
    }
  }
  const bool parted = !work.sheet.plate->partings.empty();
  const bool tapered = !same && !parted;
  if (parted) {
    say("One plate for each cylinder, each of its own metal; they part at the dashed lines.", {});
  } else if (tapered) {
    say("In one piece it is tapered from end to end along the crankshaft.", {});
  }
  say(tapered ? "Flat within {1}, parallel across the crankshaft within {2} (common practice)."
              : "Flat within {1}, parallel within {2} (common practice).",
      {Quantity{Kind::FineLength, plate::kFlatWithin},
       Quantity{Kind::FineLength, plate::kParallelWithin}});
}

void writeHoles(BenchWork& work, const describe::Rows& rows) {
  work.sheet.notes.push_back(
      "Holes by their numbers on the drawing; places from the axis of cylinder " +
      std::to_string(work.numberOf(0)) + ".");
  Grid grid{"Holes", {}, {}};
  grid.columns = {"Hole", work.headed("Along", Kind::Length), work.headed("Across", Kind::Length),
                  work.headed("Ø", Kind::Length), work.headed("Wall", Kind::Length)};
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (rows["feature"].words[i].starts_with("parting")) continue;
    const auto at = static_cast<Eigen::Index>(i);
    const auto number = [&](std::string_view key) {
      return work.number(Kind::Length, rows[key].numbers[at]);
    };
    grid.rows.push_back({std::to_string(i) + "  " + rows["feature"].words[i], number("along_m"),
                         number("across_m"), number("diameter_m"), number("wall_m")});
  }
  work.sheet.grids.push_back(std::move(grid));
}

}  // namespace

void writePlate(BenchWork& work) {
  const auto told = work.tabulated(out::plateOutline);
  if (!told.rows) {
    work.sheet.whyNoDrawing = told.whyNot;
    return;
  }
  work.sheet.plate = plate::outlineFrom(*told.rows);
  writeThickness(work);
  writeHoles(work, *told.rows);
}

}  // namespace strokewright::sheet
