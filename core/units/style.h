#pragma once
/// From SI to what a person reads.

#include <string>
#include <string_view>

#include "core/units/unit_group.h"

namespace strokewright::units {

/// How one reader wants numbers: units per kind and the marks of his locale. A plain value.
struct Style {
  UnitGroup group = UnitGroup::metric();
  std::string decimalMark = ".";  ///< "." or ","
  std::string minus = "−";        ///< U+2212 for people, "-" for machines

  /// The number alone, in the unit of its kind, with fixed decimals. Up to four digits before the
  /// decimal mark stand together (9142); five and more are grouped in threes by a thin no-break
  /// space, U+202F (41 794). Such groups are for the eye only: parse() refuses them.
  /// @param decimals how many in the bench unit, at most 15; another unit shows as many more or
  ///                 fewer as its default does. Negative: the default of the unit.
  /// Never "-0.00": what rounds to zero is written without a sign.
  /// @pre si is finite.
  std::string number(Kind kind, double si, int decimals = -1) const;

  /// number() and the unit, separated by a no-break space; no unit for counts, ratios and choices.
  std::string text(Kind kind, double si, int decimals = -1) const;

  /// The number with as many decimals as it takes to read back the same SI value by parse(), at
  /// least those the unit shows by default; no grouping. What an editor is given. Where 15 digits
  /// are not enough, or the number is too large or small for them, its first 15 significant ones.
  std::string editable(Kind kind, double si) const;

  /// number() with an explicit sign: "+1.20", "−0.05"; "0" when it rounds to zero.
  std::string difference(Kind kind, double si, int decimals = -1) const;

  /// The unit's name, empty for counts, ratios and choices.
  std::string_view unit(Kind kind) const;

  bool operator==(const Style&) const = default;
};

/// Shortest text that reads back to the same double, with a point and no group separators,
/// whatever the locale. For files and machine-readable output.
/// @pre value is finite.
std::string exact(double value);

}  // namespace strokewright::units
