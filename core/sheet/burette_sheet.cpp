#include <cmath>

#include "core/burette/results.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;
using describe::Rows;

namespace {

constexpr int kFillings = 3;

/// Start is the tare: what the burette read before.
Asked fill(const BenchWork& work, const describe::Input& input) {
  Asked asked = work.ask(input, kFillings);
  asked.columns = {"start", "end", "filled"};
  return asked;
}

bool twoStroke(const BenchWork& work) {
  return work.stands(in::cycle) && work.value(in::cycle) == model::answer(model::Cycle::TwoStroke);
}

/// A row of the table as it is printed; a number that is not there is a dash.
std::vector<std::string> printed(const BenchWork& work, const Rows& rows, std::size_t row) {
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < rows.columns().size(); ++i) {
    const describe::Column& column = rows.columns()[i];
    const describe::Cells& cells = rows.cells()[i];
    if (column.words) {
      texts.push_back(cells.words[row]);
      continue;
    }
    const double number = cells.numbers[static_cast<Eigen::Index>(row)];
    texts.push_back(std::isnan(number) ? std::string(kNothing)
                                       : work.number(column.kind, number, column.decimals));
  }
  return texts;
}

void writeEntered(BenchWork& work) {
  const auto told = work.tabulated(out::volumesFilled);
  if (!told.rows || told.rows->size() == 0) return;
  Grid grid{"Entered so far", {}, {}};
  for (const describe::Column& column : told.rows->columns()) {
    grid.columns.push_back(work.headed(column));
  }
  for (std::size_t row = 0; row < told.rows->size(); ++row) {
    grid.rows.push_back(printed(work, *told.rows, row));
  }
  work.sheet.grids.push_back(std::move(grid));
}

}  // namespace

void writeBurette(BenchWork& work) {
  std::vector<Asked>& asked = work.sheet.asked;
  asked.push_back(fill(work, in::chamberVolume));
  asked.push_back(work.ask(in::crownFillDepth, 1));
  asked.push_back(fill(work, in::crownFill));
  asked.push_back(fill(work, in::wholeVolume));
  asked.push_back(fill(work, in::plugHoleVolume));
  if (twoStroke(work)) asked.push_back(fill(work, in::crankcaseVolume));
  work.sheet.notes = {
      "Start is the tare: what the burette reads before the filling, end what it reads after it; "
      "filled is the difference. Fill afresh each time; a filling that stands apart is repeated, "
      "not averaged away."};
  writeEntered(work);
}

}  // namespace strokewright::sheet
