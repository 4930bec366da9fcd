#pragma once
/// What the compression tester shows when the engine is turned over on the starter.

namespace strokewright::cranking {

struct Compressed {
  double ambient = 0.0;   ///< [Pa] absolute
  double ratio = 0.0;     ///< from where the cylinder is closed, >= 1
  double exponent = 0.0;  ///< polytropic, 1.2 to 1.3
};

/// Pressure on the gauge, above that of the air [Pa]: p_a (ε^n − 1).
/// @source polytropic compression: Heywood ch. 2 and 5; the exponent for cranking is common
///         practice. An estimate: worn rings and a cold engine read below it.
double gaugePressure(const Compressed& charge);

}  // namespace strokewright::cranking
