#include <algorithm>
#include <cmath>
#include <utility>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/plate/results.h"
#include "core/running/results.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;
using describe::Input;
using describe::Result;
using describe::State;
using units::Kind;

namespace {

constexpr double kNoOffset = 1e-9;  // [m]

class ChainWriter {
 public:
  ChainWriter(const BenchWork& work, int cylinder) : work_(work), cylinder_(cylinder) {}

  Chain write() {
    addCase();
    addCrank();
    chain_.gap = link(std::string(out::squishGap.name), out::squishGap);
    chain_.caption = describe::word(
        {"Chain of dimensions of cylinder {1} at top dead centre, not to scale",
         {describe::Quantity{Kind::Count, static_cast<double>(work_.numberOf(cylinder_))}}},
        work_.style);
    return std::move(chain_);
  }

 private:
  static std::string lower(std::string_view name) { return describe::inSentence(name); }

  Link link(const Input& input) const {
    return {lower(input.label), work_.inItsUnit(input.kind, work_.entered(input, cylinder_)),
            work_.value(input, cylinder_)};
  }
  Link link(const std::string& name, const Result& result) const {
    const describe::Cell& cell = work_.cell(result, cylinder_);
    return {lower(name),
            work_.inItsUnit(result.kind, work_.withLimit(result.kind, cell.value, cell.worst)),
            cell.value};
  }

  /// What is not there is no link of the chain.
  void addWhereThere(std::vector<Link>& side, const Input& input) const {
    if (work_.stands(input, cylinder_) && work_.value(input, cylinder_) != 0.0)
      side.push_back(link(input));
  }

  /// A negative one is what is taken off.
  void addSpacer() {
    const double thick = work_.cell(out::spacerInStack, cylinder_).value;
    if (thick == 0.0) return;
    const bool entered = work_.stands(in::spacer, cylinder_);
    Link spacer =
        entered ? link(in::spacer) : link(std::string(out::spacerToMake.name), out::spacerToMake);
    if (thick < 0.0) {
      spacer.name = entered ? "skim" : "skim to take off";
      if (spacer.text.starts_with(work_.style.minus)) {
        spacer.text.erase(0, work_.style.minus.size());
      }
    }
    chain_.ofCase.push_back(std::move(spacer));
  }

  /// At its thin end a tapered gasket is half of the taper less than in the middle.
  void addGasketTaper() {
    const double half = work_.value(in::headGasketTaper, cylinder_) / 2.0;
    if (!work_.stands(in::headGasketTaper, cylinder_) || half == 0.0) return;
    chain_.ofCase.push_back(
        {"less half the taper of the head gasket",
         work_.inItsUnit(Kind::FineLength, work_.number(Kind::FineLength, half)), -half});
  }

  void addCase() {
    std::vector<Link>& side = chain_.ofCase;
    if (work_.measuredDirect(cylinder_)) {
      side.push_back(link(in::deckHeight));
      addSpacer();
    } else {
      side.push_back(link(in::seatHeight));
      addSpacer();
      for (const Input* gasket : {&in::baseGasket, &in::secondBaseGasket, &in::thirdBaseGasket}) {
        addWhereThere(side, *gasket);
      }
      side.push_back(link(in::barrelHeight));
    }
    if (work_.stands(in::heightTakenTo) &&
        work_.value(in::heightTakenTo) == model::answer(model::HeightTakenTo::BlockFace)) {
      addWhereThere(side, in::linerProud);
    }
    addWhereThere(side, in::headGasket);
    addGasketTaper();
    addWhereThere(side, in::headRecess);
  }

  void addCrank() {
    std::vector<Link>& side = chain_.ofCrank;
    side.push_back(throwLink());
    side.push_back(link(in::rodLength));
    const double lost = work_.cell(out::crownHeight, cylinder_).value - side[0].value -
                        side[1].value - work_.value(in::compressionHeight, cylinder_);
    if (std::abs(lost) > kNoOffset) {
      side.push_back({"lost by the offset",
                      work_.inItsUnit(Kind::FineLength, work_.number(Kind::FineLength, lost)),
                      lost});
    }
    side.push_back(link(in::compressionHeight));
    addWhereThere(side, in::crownRise);
  }

  Link throwLink() const {
    const double value = work_.cell(out::crankRadius, cylinder_).value;
    const std::string text =
        work_.stands(in::crankThrow, cylinder_)
            ? work_.entered(in::crankThrow, cylinder_)
            : work_.withLimit(Kind::Length, value, work_.limit(in::stroke, cylinder_) / 2.0);
    return {lower(in::crankThrow.label), work_.inItsUnit(Kind::Length, text), value};
  }

  const BenchWork& work_;
  int cylinder_;
  Chain chain_;
};

/// The cylinder whose gap is the closest.
int closest(const BenchWork& work) {
  int least = 0;
  for (int i = 1; i < work.cylinders(); ++i) {
    if (work.cell(out::squishGap, i).value < work.cell(out::squishGap, least).value) least = i;
  }
  return least;
}

bool gapIsKnown(const BenchWork& work) {
  for (int i = 0; i < work.cylinders(); ++i) {
    if (work.cell(out::squishGap, i).state != State::Value) return false;
  }
  return true;
}

void writeChain(BenchWork& work) {
  if (gapIsKnown(work)) {
    work.sheet.chain = ChainWriter(work, closest(work)).write();
    return;
  }
  const Text text = work.numbers.text(work.engine, out::squishGap);
  work.sheet.whyNoDrawing = "Squish gap " + text.full + ".";
}

/// A result and which of its ± stands behind it.
struct Shown {
  const Result* result;
  std::string_view heading;
  bool withLimit = false;
};

std::string shown(const BenchWork& work, const Shown& it, int cylinder) {
  const describe::Cell& cell = work.cell(*it.result, cylinder);
  if (it.result == &out::spacerInStack) return work.spacer(cylinder);
  if (!it.withLimit || cell.state != State::Value) return work.number(*it.result, cylinder);
  const bool worst = it.result->judged == describe::Judged::WorstCase;
  return work.withLimit(it.result->kind, cell.value, worst ? cell.worst : cell.likely);
}

void writeCylinders(BenchWork& work) {
  constexpr Shown kShown[] = {
      {&out::spacerToMake, "Spacer to make", true}, {&out::spacerInStack, "Counted with"},
      {&out::deckClearance, "Deck clearance"},      {&out::squishGap, "Squish gap", true},
      {&out::runningSquish, "Gap running", true},   {&out::overRevSquish, "Gap at over-rev", true},
      {&out::compressionRatio, "Ratio", true}};
  Grid grid{"Cylinder by cylinder; ± of gaps and spacer worst case, of the ratio likely",
            {"Cylinder", work.headed("Seat", Kind::Length)},
            {}};
  for (const Shown& it : kShown) grid.columns.push_back(work.headed(it.heading, it.result->kind));
  for (int i = 0; i < work.cylinders(); ++i) {
    auto& row = grid.rows.emplace_back();
    row = {std::to_string(work.numberOf(i)), work.number(in::seatHeight, i)};
    for (const Shown& it : kShown) row.push_back(shown(work, it, i));
  }
  work.sheet.grids.push_back(std::move(grid));
}

/// A row for each cylinder, and of each plate its thickness, the gap, the same at worst, and the
/// ratio.
void writePlates(BenchWork& work) {
  constexpr std::pair<std::string_view, std::string_view> kShown[] = {
      {"thickness_m", "t"}, {"squish_m", "s"}, {"squish_at_worst_m", "s at worst"}, {"ratio", "ε"}};
  const auto told = work.tabulated(out::platesCompared);
  if (!told.rows) return;
  const describe::Rows& rows = *told.rows;
  Grid grid{
      "Plates compared: thickness t, squish gap s, s at worst, and ratio ε with each", {}, {}};
  grid.columns = {"Cylinder"};
  grid.rows.resize(static_cast<std::size_t>(work.cylinders()));
  for (std::size_t i = 0; i < grid.rows.size(); ++i)
    grid.rows[i] = {std::to_string(work.numberOf(static_cast<int>(i)))};
  for (std::size_t row = 0; row < rows.size(); ++row) {
    const auto at = static_cast<Eigen::Index>(row);
    const auto cylinder = row % grid.rows.size();
    for (const auto& [key, said] : kShown) {
      const auto column = std::ranges::find(rows.columns(), key, &describe::Column::key);
      if (cylinder == 0) {
        grid.columns.push_back(
            work.headed(rows["plate"].words[row] + ": " + std::string(said), column->kind));
      }
      grid.rows[cylinder].push_back(
          work.number(column->kind, rows[key].numbers[at], column->decimals));
    }
  }
  work.sheet.grids.push_back(std::move(grid));
}

}  // namespace

void writeStack(BenchWork& work) {
  writeChain(work);
  writeCylinders(work);
  writePlates(work);
  writeChoice(work);
}

}  // namespace strokewright::sheet
