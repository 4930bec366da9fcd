#pragma once
/// The described tables of this room: how likely each squish gap and each compression ratio is.

#include <span>

#include "core/describe/table.h"
#include "core/spread/stack.h"

namespace strokewright::describe {
class Evaluation;
}

namespace strokewright::out {

using describe::Table;

extern const Table likelihood, gapHistogram, ratioHistogram, gapChances;

}  // namespace strokewright::out

namespace strokewright::spread {

std::span<const describe::Table* const> tables();

/// Gap and volumes of this cylinder with every independent error in them.
Stack stackOf(describe::Reader& read);

/// The same of a cylinder whose squish gap and compression ratio have values.
/// @pre evaluation.run() has been called.
Stack stackOf(describe::Evaluation& evaluation, int engine, int cylinder);

}  // namespace strokewright::spread
