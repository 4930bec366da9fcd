#pragma once
/// The gap of a stack and its compression ratio, moved by the same independent errors.

#include <vector>

#include "core/spread/distribution.h"

namespace strokewright::spread {

/// One independent error, and how far it moves each number when it is at its limit.
struct Source {
  describe::Shape shape = describe::Shape::Normal;
  double gap = 0.0;        ///< [m] either sign, as the others
  double swept = 0.0;      ///< [m3]
  double clearance = 0.0;  ///< [m3]
};

/// The three numbers with all errors zero, and the errors.
struct Stack {
  double gap = 0.0;        ///< [m]
  double swept = 0.0;      ///< [m3] of one cylinder
  double clearance = 0.0;  ///< [m3] above the piston at the top
  std::vector<Source> sources;
};

/// Distribution of the gap [m].
/// @throws describe::Refusal as SumSpread
SumSpread gapSpread(const Stack& stack);

/// Distribution of the compression ratio 1 + swept/clearance. It stays below x where
/// swept − (x − 1)·clearance stays below zero, and that is a sum of the same errors: exact for
/// volumes that move linearly.
/// @source definition of the compression ratio, Heywood ch. 2
/// @valid as SumSpread
class RatioSpread final : public Spread {
 public:
  /// @throws describe::Refusal where a volume is not finite or may reach zero
  explicit RatioSpread(Stack stack);

  double low() const override { return low_; }
  double high() const override { return high_; }
  double chanceBelow(double ratio) const override;

 private:
  Stack stack_;
  double low_;
  double high_;
};

}  // namespace strokewright::spread
