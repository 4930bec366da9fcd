#pragma once
/// Which unit a person thinks in, kind by kind.

#include <array>
#include <string_view>

#include "core/units/kind.h"

namespace strokewright::units {

/// A map from kind to unit that may be changed entry by entry. A plain value.
class UnitGroup {
 public:
  /// mm, ml, g, mm², °, rpm, m/s, m/s², kN, MPa, g·mm.
  static UnitGroup metric();
  /// in, thou, cu in, oz, sq in, °, rpm, ft/min, ft/s², lbf, ksi, oz·in.
  static UnitGroup inchPound();

  /// The unit of this kind, one of unitsOf(kind).
  const Unit& operator[](Kind kind) const { return *units_[static_cast<std::size_t>(kind)]; }

  /// @returns false, and changes nothing, when the kind has no unit of that name or alias.
  bool choose(Kind kind, std::string_view unitName);

  bool operator==(const UnitGroup&) const = default;

 private:
  UnitGroup() = default;

  std::array<const Unit*, kKindCount> units_{};
};

}  // namespace strokewright::units
