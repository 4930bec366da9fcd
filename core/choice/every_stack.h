#pragma once
/// The plain form of choose(): every stack is judged, one after the other.

#include "core/choice/choice.h"

namespace strokewright::choice {

/// As choose(), with every reason counted and nothing undecided; slow where cylinders may differ.
Answer chooseFromEveryStack(const Question& question);

}  // namespace strokewright::choice
