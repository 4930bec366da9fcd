#pragma once
/// How likely is each value: what every distribution answers, however it was found.

#include <vector>

namespace strokewright::spread {

/// Equal bins from low to high, for a histogram.
struct Bins {
  double low = 0.0;
  double high = 0.0;  ///< > low
  int count = 0;      ///< >= 1

  double edge(int bin) const { return low + (high - low) * bin / count; }
};

/// The distribution of one number.
class Spread {
 public:
  virtual ~Spread() = default;

  /// Between these lies all that can be or, where an error has no hard limits, all but less than
  /// one in a thousand million.
  virtual double low() const = 0;
  virtual double high() const = 0;

  /// Chance of a value below x, from 0 to 1.
  virtual double chanceBelow(double x) const = 0;

  /// The value below which the number stays with this chance.
  /// @param chance > 0 and < 1
  /// @throws describe::Refusal for any other chance
  double quantile(double chance) const;

  /// Chance of each bin. What lies outside the bins is in none of them.
  std::vector<double> histogram(const Bins& bins) const;

 protected:
  Spread() = default;
  Spread(const Spread&) = default;
  Spread(Spread&&) = default;
  Spread& operator=(const Spread&) = default;
  Spread& operator=(Spread&&) = default;
};

}  // namespace strokewright::spread
