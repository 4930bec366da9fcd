#pragma once
/// What the workbench tells, described once.

#include <cmath>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/describe/input.h"

namespace strokewright::describe {

/// Whether a result is one number for each cylinder or one for the engine.
enum class Per : std::uint8_t { Cylinder, Engine };

/// Which of the two ± decides: a gap that could close is judged on worst case.
enum class Judged : std::uint8_t { Likely, WorstCase };

struct Result {
  std::string_view key;          ///< ends in the SI unit: "squish_gap_m"
  std::string_view name;         ///< trade name
  std::string_view symbol = {};  ///< as in the formula
  units::Kind kind = units::Kind::Length;
  Per per = Per::Cylinder;
  Judged judged = Judged::Likely;
  std::span<const Choice> choices = {};  ///< of a Kind::Choice
  bool picks = false;  ///< is that of one cylinder or line: its ± is that of the one it picks
  /// Is a difference between the most and the least of the cylinders: two of them make its ±.
  bool apart = false;
  /// [SI] after which the number comes round, as an angle does; 0: it does not.
  double period = 0.0;
  int decimals = -1;  ///< shown; negative: the unit's default
  std::string_view formula = {};
  std::string_view source = {};
  std::string_view valid = {};
  double (*value)(Reader& read) = nullptr;  ///< [SI]

  /// [SI] from one of its values to another; the short way round where it comes round.
  double step(double from, double to) const {
    const double step = to - from;
    return 2.0 * std::abs(step) > period && period > 0.0 ? std::remainder(step, period) : step;
  }

  mutable int number = -1;  ///< its place in the table of results, set by the table alone
};

}  // namespace strokewright::describe
