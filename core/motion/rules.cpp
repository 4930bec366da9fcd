#include "core/motion/results.h"

namespace strokewright::motion {

std::span<const describe::Rule* const> rules() { return {}; }

}  // namespace strokewright::motion
