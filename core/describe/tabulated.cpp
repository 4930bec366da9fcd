#include "core/describe/tabulated.h"

namespace strokewright::describe {

Tabulated Evaluation::tabulated(int engine, const Table& table, int cylinder) {
  Tabulated filled{.rows = Rows(table.columns)};
  Reader read(*this, engine, table.per == Per::Engine ? 0 : cylinder, &filled.notes);
  int leaf = -1;
  try {
    table.fill(read, filled.rows);
    filled.rows.checkEven();
    if (!filled.rows.finite()) leaf = keepRefusal({.sentence = kNotFinite});
  } catch (const Refusal& refusal) {
    leaf = keepRefusal(refusal);
  }
  filled.state = settled(filled.notes, leaf);
  if (filled.state != State::Value) filled.rows = Rows(table.columns);
  return filled;
}

}  // namespace strokewright::describe
