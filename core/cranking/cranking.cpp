#include "core/cranking/cranking.h"

#include <cmath>

namespace strokewright::cranking {

double gaugePressure(const Compressed& charge) {
  return charge.ambient * (std::pow(charge.ratio, charge.exponent) - 1.0);
}

}  // namespace strokewright::cranking
