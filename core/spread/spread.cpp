#include "core/spread/spread.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <cstdint>

#include "core/describe/refusal.h"

namespace strokewright::spread {

double Spread::quantile(double chance) const {
  if (!(chance > 0.0 && chance < 1.0)) {
    throw describe::Refusal("No value belongs to a chance of {1}: it must lie between 0 and {2}.",
                            units::Kind::Share, chance, 1.0);
  }
  const double width = high() - low();
  if (!(width > 0.0)) return low();
  const auto excess = [&](double x) { return chanceBelow(x) - chance; };
  const auto closeEnough = [&](double a, double b) { return b - a <= 1e-9 * width; };
  std::uintmax_t steps = 100;
  const auto [a, b] = boost::math::tools::toms748_solve(excess, low(), high(), -chance,
                                                        1.0 - chance, closeEnough, steps);
  return a + (b - a) / 2.0;
}

std::vector<double> Spread::histogram(const Bins& bins) const {
  std::vector<double> chances;
  double below = chanceBelow(bins.edge(0));
  for (int bin = 1; bin <= bins.count; ++bin) {
    const double next = chanceBelow(bins.edge(bin));
    chances.push_back(next - below);
    below = next;
  }
  return chances;
}

}  // namespace strokewright::spread
