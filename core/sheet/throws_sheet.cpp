#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/describe/wording.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"
#include "core/sheet/words.h"

namespace strokewright::sheet {

namespace in = model::in;
using units::Kind;

namespace {

/// A single needs no throw to be said.
bool throwsKnown(const BenchWork& work) {
  if (!work.stands(in::cylinderCount)) return false;
  if (work.cylinders() == 1) return true;
  for (int i = 0; i < work.cylinders(); ++i) {
    if (!work.stands(in::throwAhead, i)) return false;
  }
  return true;
}

void say(BenchWork& work, std::string_view pattern, std::vector<describe::Argument> arguments) {
  work.sheet.notes.push_back(describe::word({pattern, std::move(arguments)}, work.style));
}

/// From which end it is looked at, and which way round it turns.
void saySeen(BenchWork& work) {
  const firing::Seen seen = firing::seenOf(work.evaluation(), work.engine);
  const std::string end(seen.end);
  const std::string turns = seen.clockwise ? "clockwise" : "anticlockwise";
  if (end.empty() && !seen.rotationSaid) {
    say(work, "Nobody said from which end it is seen, nor which way it turns: drawn clockwise.",
        {});
  } else if (end.empty()) {
    say(work, "It turns {1}, seen from an end that nobody named.", {turns});
  } else if (!seen.rotationSaid) {
    say(work, "Seen from the {1}; nobody said which way it turns: drawn clockwise.", {end});
  } else {
    say(work, "Seen from the {1} it turns {2}.", {end, turns});
  }
}

void sayFirings(BenchWork& work, const std::string& whyNot) {
  const auto& largest = work.cell(out::largestFiringGap);
  if (!whyNot.empty() || largest.state != describe::State::Value) {
    work.sheet.notes.push_back("When it fires is not known. " + whyNot);
    return;
  }
  const auto angle = [&](const describe::Result& gap) {
    return describe::Quantity{gap.kind, work.cell(gap).value, gap.decimals};
  };
  if (!work.sheet.star) {
    say(work, "Fires every {1}.", {angle(out::largestFiringGap)});
    return;
  }
  const bool even = work.number(out::largestFiringGap, 0) == work.number(out::leastFiringGap, 0);
  const std::string order =
      work.sheet.star->order + (work.given(in::firingOrder) || work.given(in::firesLater)
                                    ? ""
                                    : ", the most even order while none is entered");
  if (even) {
    say(work, "Fires {1}: evenly.", {order});
  } else {
    say(work, "Fires {1}: unevenly, largest interval {2}, least {3}.",
        {order, angle(out::largestFiringGap), angle(out::leastFiringGap)});
  }
}

void sayCounted(BenchWork& work, bool camshaft) {
  work.sheet.notes.emplace_back(
      camshaft ? "Angles are counted in the sense of rotation: throws and tops from the first "
                 "throw, firings and lobes from the cylinder that fires first. Marks to ignite "
                 "stand at top dead centre: each is earlier by the advance, at half speed by half "
                 "of it."
               : "Angles are counted in the sense of rotation: throws and tops from the first "
                 "throw, firings from the cylinder that fires first. Marks to ignite stand at top "
                 "dead centre: each is earlier by the advance.");
}

/// [rad] by which a bank is turned from the first, the furthest one; 0 in line.
double bankTurned(const BenchWork& work) {
  const auto axis = [&](int i) {
    return work.evaluation().inputValue(work.engine, in::cylinderAxis, i);
  };
  double most = 0.0;
  for (int i = 1; i < work.cylinders(); ++i) {
    const double turned = std::remainder(axis(i) - axis(0), 2.0 * std::numbers::pi);
    if (std::abs(turned) > std::abs(most) + 1e-9) most = turned;
  }
  return most;
}

/// Somebody could grind a camshaft from this.
void sayBanks(BenchWork& work) {
  const double turned = bankTurned(work);
  if (turned == 0.0) return;
  say(work,
      turned > 0.0 ? "Lobes are for a camshaft of each bank. One camshaft in the case, followers "
                     "turned with the bank: lobes {1} further ahead, or back where it turns "
                     "against the crank."
                   : "Lobes are for a camshaft of each bank. One camshaft in the case, followers "
                     "turned with the bank: lobes {1} further back, or ahead where it turns "
                     "against the crank.",
      {describe::Quantity{Kind::Angle, std::abs(turned), 1}});
}

std::string topWithLikely(const BenchWork& work, int cylinder) {
  const describe::Result& top = out::topAfterFirst;
  const describe::Cell& cell = work.cell(top, cylinder);
  if (cell.state != describe::State::Value) return std::string(kNothing);
  const double angle = firing::asRead(cell.value, 2.0 * std::numbers::pi);
  std::string text = work.number(top.kind, angle, top.decimals);
  if (cell.likely <= 0.0) return text;
  return text + " ± " + work.number(top.kind, cell.likely, top.decimals);
}

void writeTops(BenchWork& work) {
  Grid grid{"Throws and top dead centres", {}, {}};
  grid.columns = {"Cylinder", work.headed("Throw ahead", Kind::Angle),
                  work.headed("Axis turned", Kind::Angle),
                  work.headed("Top after first", Kind::Angle)};
  const bool moved = work.numbers.isValue(work.engine, out::lobeMoved);
  if (moved) grid.columns.push_back(work.headed("Lobe against donor’s", Kind::Angle));
  for (int i = 0; i < work.cylinders(); ++i) {
    std::vector<std::string> row = {work.number(in::cylinderNumber, i),
                                    work.entered(in::throwAhead, i),
                                    work.entered(in::cylinderAxis, i), topWithLikely(work, i)};
    if (moved) row.push_back(work.number(out::lobeMoved, i));
    grid.rows.push_back(std::move(row));
  }
  work.sheet.grids.push_back(std::move(grid));
}

/// Without columns that say nothing in any row.
Grid spoken(Grid grid) {
  for (std::size_t i = grid.columns.size(); i-- > 0;) {
    const bool silent = std::ranges::all_of(
        grid.rows, [&](const auto& row) { return row[i].empty() || row[i] == kNothing; });
    if (!silent) continue;
    const auto at = static_cast<std::ptrdiff_t>(i);
    grid.columns.erase(grid.columns.begin() + at);
    for (auto& row : grid.rows) row.erase(row.begin() + at);
  }
  return grid;
}

/// Of many cylinders the intervals in each collector would not find room on the page; the largest
/// and the least of them stand beside.
void writeCollectors(BenchWork& work) {
  constexpr std::size_t kMostLetters = 78;
  const auto told = work.tabulated(out::collectors);
  if (!told.rows || told.rows->size() == 0) return;
  Grid grid = spoken(work.grid(out::collectors.name, *told.rows));
  constexpr std::size_t kCylinders = 1;
  constexpr std::size_t kIntervals = 2;
  std::size_t most = 0;
  for (const auto& row : grid.rows) {
    most = std::max(most, length(row[kCylinders]) + length(row[kIntervals]));
  }
  if (most > kMostLetters) {
    grid.columns.erase(grid.columns.begin() + kIntervals);
    for (auto& row : grid.rows) row.erase(row.begin() + kIntervals);
  }
  work.sheet.grids.push_back(std::move(grid));
}

/// @returns why there is none
std::string writeTable(BenchWork& work, const describe::Table& table, bool beside = false) {
  const auto told = work.tabulated(table);
  if (!told.rows || told.rows->size() == 0) return told.whyNot;
  work.sheet.grids.push_back(spoken(work.grid(table.name, *told.rows)));
  work.sheet.grids.back().beside = beside;
  return {};
}

}  // namespace

void writeThrows(BenchWork& work) {
  saySeen(work);
  if (!throwsKnown(work)) {
    work.sheet.star.reset();
    work.sheet.whyNoDrawing = work.tabulated(out::firingTable).whyNot;
    constexpr int kReadings = 3;
    work.sheet.asked = {work.ask(in::throwAhead, kReadings), work.ask(in::cylinderAxis, 1)};
    return;
  }
  writeTops(work);
  const std::string whyNot = writeTable(work, out::firingTable);
  sayFirings(work, whyNot);
  if (!whyNot.empty()) return;
  const bool camshaft = work.numbers.isValue(work.engine, out::lobeBehindFirst);
  sayCounted(work, camshaft);
  if (camshaft) sayBanks(work);
  writeTable(work, out::triggers, true);
  writeCollectors(work);
}

}  // namespace strokewright::sheet
