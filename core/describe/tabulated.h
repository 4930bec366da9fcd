#pragma once
/// A table, filled for one engine.

#include "core/describe/evaluation.h"
#include "core/describe/table.h"

namespace strokewright::describe {

/// What Evaluation::tabulated() gives.
struct Tabulated {
  Rows rows;  ///< none but in State::Value
  State state = State::Waits;
  Frame notes = {};  ///< what was read, what it waits for, why it is refused or means nothing
};

}  // namespace strokewright::describe
