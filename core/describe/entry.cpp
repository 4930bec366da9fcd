#include "core/describe/entry.h"

#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numbers>

#include "core/units/parse.h"

namespace strokewright::describe {
namespace {

struct OriginName {
  Origin origin;
  std::string_view key;
  std::string_view label;
};

constexpr std::array kOrigins = {
    OriginName{Origin::NotSaid, "", "not said"},
    OriginName{Origin::Measured, "measured", "measured"},
    OriginName{Origin::MakersBook, "makers_book", "maker's book"},
    OriginName{Origin::Catalogue, "catalogue", "catalogue"},
    OriginName{Origin::Assumed, "assumed", "assumed"},
    OriginName{Origin::Computed, "computed", "computed"},
};

constexpr std::array<std::string_view, 3> kShapes = {"normal", "rectangular", "triangular"};

const OriginName& nameOf(Origin origin) { return kOrigins[static_cast<std::size_t>(origin)]; }

}  // namespace

std::string_view originKey(Origin origin) { return nameOf(origin).key; }

std::string_view originLabel(Origin origin) { return nameOf(origin).label; }

std::optional<Origin> originOf(std::string_view key) {
  for (const OriginName& name : kOrigins) {
    if (name.key == key) return name.origin;
  }
  return std::nullopt;
}

std::string_view shapeKey(Shape shape) { return kShapes[static_cast<std::size_t>(shape)]; }

std::optional<Shape> shapeOf(std::string_view key) {
  for (std::size_t i = 0; i < kShapes.size(); ++i) {
    if (kShapes[i] == key) return static_cast<Shape>(i);
  }
  return std::nullopt;
}

double scatterOfMean(std::span<const double> readings) {
  if (readings.size() < 2) return 0.0;
  const auto n = static_cast<double>(readings.size());
  const double mean = units::meanOf(readings);
  double squares = 0.0;
  for (const double reading : readings) squares += (reading - mean) * (reading - mean);
  const double ofOne = std::sqrt(squares / (n - 1.0));
  const boost::math::students_t student(n - 1.0);
  return boost::math::quantile(student, 0.975) * ofOne / std::sqrt(n);
}

double Entry::instrumentLimit() const {
  if (!plusMinus) return 0.0;
  constexpr std::array kSigmas = {2.0, std::numbers::sqrt3,
                                  std::numbers::sqrt2 * std::numbers::sqrt3};  // of Shape
  return (oneSigma ? kSigmas[static_cast<std::size_t>(shape)] : 1.0) * *plusMinus;
}

double Entry::limit(std::size_t place) const {
  if (place >= readings.size()) return instrumentLimit();
  return std::hypot(instrumentLimit(), scatterOfMean(readings[place]));
}

double limitOf(const Input& input, const Entry& entry, std::size_t place) {
  if (!input.differencesCancel) return entry.limit(place);
  const bool several = place < entry.readings.size() && entry.readings[place].size() > 1;
  return several && !entry.plusMinus ? input.plusMinus : entry.instrumentLimit();
}

double limitOrUsual(const Input& input, const Entry& entry, std::size_t place) {
  const double limit = limitOf(input, entry, place);
  return limit > 0.0 ? limit : input.plusMinus;
}

}  // namespace strokewright::describe
