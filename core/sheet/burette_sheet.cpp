#include "core/burette/results.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/sheet/bench_writers.h"

namespace strokewright::sheet {

namespace in = model::in;

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

void writeEntered(BenchWork& work) {
  const auto told = work.tabulated(out::volumesFilled);
  if (!told.rows || told.rows->size() == 0) return;
  work.sheet.grids.push_back(work.grid("Entered so far", *told.rows));
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
