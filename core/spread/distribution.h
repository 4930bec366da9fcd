#pragma once
/// The distribution of a sum of independent errors, without sampling.

#include <vector>

#include "core/describe/entry.h"
#include "core/spread/spread.h"

namespace strokewright::spread {

/// One independent error as it moves a sum.
struct Share {
  describe::Shape shape = describe::Shape::Normal;
  double atLimit = 0.0;  ///< [unit of the sum] move when the error is at its limit, either sign
};

/// A middle value moved by any number of independent errors, from none upwards. The largest
/// rectangular error is taken into account in closed form, all others as a cosine series over an
/// interval they cannot leave; normal errors alone need neither.
/// @source characteristic functions of the normal and of the rectangular law, a triangular error
///         being two rectangular ones of half its limit (JCGM 100:2008 4.3.7, 4.3.9); a cosine
///         series over a finite interval (Fang and Oosterlee 2008)
/// @valid chances to 1e-7. A rectangular error below a thousandth of the standard deviation counts
///        as a normal one of its standard deviation, which changes less than that.
class SumSpread final : public Spread {
 public:
  /// @param middle [unit of the sum] with all errors zero
  /// @throws describe::Refusal for a middle or a share that is not finite
  SumSpread(double middle, const std::vector<Share>& shares);

  double mean() const { return middle_; }
  double standardDeviation() const { return standardDeviation_; }
  double low() const override { return middle_ - halfWidth(); }
  double high() const override { return middle_ + halfWidth(); }
  double chanceBelow(double x) const override;

  /// [1 / unit of the sum] infinite at the middle where there are no errors.
  double density(double x) const;

 private:
  double halfWidth() const { return largest_ + rest_; }
  double restBelow(double x) const;
  double restIntegral(double x) const;

  double middle_;
  double standardDeviation_;
  double largest_ = 0.0;       // half width of the largest rectangular error; 0: all are normal
  double rest_ = 0.0;          // half width of the interval that holds the sum of all others
  std::vector<double> terms_;  // of the others, at k = 1, 2, …: characteristic function / (kπ)²
  double termsAtEnd_ = 0.0;    // Σ terms · cos kπ
};

}  // namespace strokewright::spread
