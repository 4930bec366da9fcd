#include "core/spread/distribution.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/describe/refusal.h"

namespace strokewright::spread {
namespace {

using describe::Shape;
using std::numbers::pi;

// Beyond this many standard deviations lies less than 1e-10 of a normal law, and of any sum of
// symmetric rectangular and normal errors too: their tails are no heavier.
constexpr double kNeverBeyond = 7.0;
constexpr int kMostTerms = 1000;
constexpr double kSmallestTerm = 1e-9;

// What the shares come to: one normal error, and rectangular ones of ± a half width.
struct Errors {
  double normalVariance = 0.0;
  std::vector<double> halfWidths;  // of rectangular errors

  explicit Errors(const std::vector<Share>& shares) {
    halfWidths.reserve(2 * shares.size());
    for (const Share& share : shares) {
      const double limit = std::abs(share.atLimit);
      switch (share.shape) {
        case Shape::Normal:
          normalVariance += limit * limit / 4.0;
          break;
        case Shape::Rectangular:
          halfWidths.push_back(limit);
          break;
        case Shape::Triangular:
          halfWidths.insert(halfWidths.end(), 2, limit / 2.0);
          break;
      }
    }
  }

  double variance() const {
    double sum = normalVariance;
    for (const double a : halfWidths) sum += a * a / 3.0;
    return sum;
  }

  void countSmallOnesAsNormal() {
    const double small = 1e-3 * std::sqrt(variance());
    std::erase_if(halfWidths, [&](double a) {
      if (a > small) return false;
      normalVariance += a * a / 3.0;
      return true;
    });
  }

  double takeLargest() {
    const auto largest = std::max_element(halfWidths.begin(), halfWidths.end());
    if (largest == halfWidths.end()) return 0.0;
    const double a = *largest;
    halfWidths.erase(largest);
    return a;
  }

  // Half width of an interval that the sum does not leave.
  double reach() const {
    double worst = kNeverBeyond * std::sqrt(normalVariance);
    for (const double a : halfWidths) worst += a;
    return std::min(worst, kNeverBeyond * std::sqrt(variance()));
  }

  // Not exceeded by the characteristic function of the rectangular errors at t or beyond.
  double rectangularBound(double t) const {
    double bound = 1.0;
    for (const double a : halfWidths) bound /= std::max(1.0, a * t);
    return bound;
  }
};

// Sines and cosines of the multiples of an angle, one after the other.
class Multiples {
 public:
  struct Point {
    double cosine;
    double sine;
  };

  explicit Multiples(double angle) : step_{std::cos(angle), std::sin(angle)} {}

  Point next() {
    now_ = {now_.cosine * step_.cosine - now_.sine * step_.sine,
            now_.sine * step_.cosine + now_.cosine * step_.sine};
    return now_;
  }

 private:
  Point step_;
  Point now_{1.0, 0.0};
};

// The characteristic function of a rectangular error: sin u/u at each multiple u of the step.
void multiplyBySines(std::vector<double>& terms, double step) {
  Multiples angle(step);
  double u = 0.0;
  for (double& term : terms) term *= angle.next().sine / (u += step);
}

void refuseUnlessFinite(double value) {
  if (std::isfinite(value)) return;
  throw describe::Refusal("A sum with {1} in it has no distribution: {2} is the most it can hold.",
                          units::Kind::Ratio, value, std::numeric_limits<double>::max());
}

}  // namespace

SumSpread::SumSpread(double middle, const std::vector<Share>& shares) : middle_(middle) {
  refuseUnlessFinite(middle);
  for (const Share& share : shares) refuseUnlessFinite(share.atLimit);
  Errors errors(shares);
  standardDeviation_ = std::sqrt(errors.variance());
  errors.countSmallOnesAsNormal();
  largest_ = errors.takeLargest();
  rest_ = errors.reach();
  if (largest_ == 0.0 || rest_ == 0.0) return;

  for (int k = 1; k <= kMostTerms; ++k) {
    const double t = k * pi / rest_;
    const double normal = std::exp(-errors.normalVariance * t * t / 2.0);
    terms_.push_back(normal / (k * pi * k * pi));
    if (normal * errors.rectangularBound(t) * rest_ < kSmallestTerm * largest_ * k) break;
  }
  for (const double a : errors.halfWidths) multiplyBySines(terms_, a * pi / rest_);
  double sign = 1.0;
  for (const double term : terms_) termsAtEnd_ += (sign = -sign) * term;
}

// Chance that the sum of all errors but the largest stays below x.
double SumSpread::restBelow(double x) const {
  if (x <= -rest_) return 0.0;
  if (x >= rest_) return 1.0;
  Multiples angle(pi * x / rest_);
  double sum = 0.0;
  double k = 0.0;
  for (const double term : terms_) sum += term * ++k * pi * angle.next().sine;
  return 0.5 + x / (2.0 * rest_) + sum;
}

// ∫ restBelow from -∞ to x.
double SumSpread::restIntegral(double x) const {
  if (x <= -rest_) return 0.0;
  if (x >= rest_) return x;
  Multiples angle(pi * x / rest_);
  double sum = 0.0;
  for (const double term : terms_) sum += term * angle.next().cosine;
  return (x + rest_) * (x + rest_) / (4.0 * rest_) - rest_ * (sum - termsAtEnd_);
}

double SumSpread::chanceBelow(double x) const {
  const double offset = x - middle_;
  if (offset <= -halfWidth()) return 0.0;
  if (offset >= halfWidth()) return 1.0;
  if (largest_ == 0.0) {
    return std::erfc(-offset / (standardDeviation_ * std::numbers::sqrt2)) / 2.0;
  }
  const double chance =
      (restIntegral(offset + largest_) - restIntegral(offset - largest_)) / (2.0 * largest_);
  return std::clamp(chance, 0.0, 1.0);
}

double SumSpread::density(double x) const {
  const double offset = x - middle_;
  if (standardDeviation_ == 0.0) {
    return offset == 0.0 ? std::numeric_limits<double>::infinity() : 0.0;
  }
  if (largest_ == 0.0) {
    const double z = offset / standardDeviation_;
    return std::exp(-z * z / 2.0) / (standardDeviation_ * std::sqrt(2.0 * pi));
  }
  return std::max(0.0,
                  (restBelow(offset + largest_) - restBelow(offset - largest_)) / (2.0 * largest_));
}

}  // namespace strokewright::spread
