#include "core/describe/tabulated.h"

#include <cmath>

#include "core/describe/reader.h"

namespace strokewright::describe {
namespace {

constexpr double kDust = 1e-12;  // relative

bool showsDust(units::Kind kind) {
  using units::Kind;
  return kind == Kind::Angle || kind == Kind::Speed || kind == Kind::Count || kind == Kind::Ratio;
}

/// What arithmetic leaves beside nought and beside whole numbers is not told: 6e-17 in a column of
/// ones, 10999.999999999998.
void clearDust(Rows& rows) {
  for (const Column& column : rows.columns()) {
    if (column.words || !showsDust(column.kind)) continue;
    Eigen::ArrayXd& numbers = rows[column.key].numbers;
    double size = 0.0;
    for (const double number : numbers) size = std::fmax(size, std::abs(number));  // absent: passed
    for (double& number : numbers) {
      const double whole = std::round(number);
      if (std::abs(number) <= kDust * size) {
        number = 0.0;
      } else if (std::abs(number - whole) <= kDust * std::abs(number)) {
        number = whole;
      }
    }
  }
}

}  // namespace

Tabulated Evaluation::tabulated(int engine, const Table& table, int cylinder) {
  Tabulated filled{.rows = Rows(table.columns)};
  Reader read(*this, engine, table.per == Per::Engine ? 0 : cylinder, &filled.notes);
  int leaf = -1;
  try {
    table.fill(read, filled.rows);
    filled.rows.checkEven();
    if (!filled.rows.finite()) leaf = keepRefusal({.sentence = kNotFinite});
    if (leaf < 0) clearDust(filled.rows);
  } catch (const Refusal& refusal) {
    leaf = keepRefusal(refusal);
  }
  filled.state = settled(filled.notes, leaf);
  if (filled.state != State::Value) filled.rows = Rows(table.columns);
  return filled;
}

}  // namespace strokewright::describe
