#include "core/survey/readings.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

#include "core/units/parse.h"

namespace strokewright::survey {

double spreadOf(std::span<const double> readings) {
  const auto [least, most] = std::minmax_element(readings.begin(), readings.end());
  return *most - *least;
}

double grubbsCritical(std::size_t n, double level) {
  const auto count = static_cast<double>(n);
  const boost::math::students_t student(count - 2.0);
  const double t = boost::math::quantile(student, 1.0 - level / (2.0 * count));
  return (count - 1.0) / std::sqrt(count) * std::sqrt(t * t / (count - 2.0 + t * t));
}

std::optional<std::size_t> outlierOf(std::span<const double> readings, double instrument) {
  constexpr double kLevel = 0.05;
  constexpr double kRounding = 1e-6;
  if (readings.size() < 3) return std::nullopt;
  const double mean = units::meanOf(readings);
  double squares = 0.0;
  std::size_t farthest = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    squares += (readings[i] - mean) * (readings[i] - mean);
    if (std::abs(readings[i] - mean) > std::abs(readings[farthest] - mean)) farthest = i;
  }
  const double deviation = std::sqrt(squares / static_cast<double>(readings.size() - 1));
  if (!(deviation > 0.0)) return std::nullopt;
  const double away = std::abs(readings[farthest] - mean);
  if (away / deviation <= grubbsCritical(readings.size(), kLevel)) return std::nullopt;
  const auto n = static_cast<double>(readings.size());
  const double fromOthers = away * n / (n - 1.0);
  if (fromOthers <= instrument * (1.0 + kRounding)) return std::nullopt;
  return farthest;
}

}  // namespace strokewright::survey
