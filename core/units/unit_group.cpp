#include "core/units/unit_group.h"

namespace strokewright::units {

UnitGroup UnitGroup::metric() {
  UnitGroup group;
  for (std::size_t i = 0; i < kKindCount; ++i) {
    group.units_[i] = &unitsOf(static_cast<Kind>(i)).front();
  }
  return group;
}

UnitGroup UnitGroup::inchPound() {
  UnitGroup group = metric();
  group.choose(Kind::Length, "in");
  group.choose(Kind::FineLength, "thou");
  group.choose(Kind::Volume, "cu in");
  group.choose(Kind::Mass, "oz");
  group.choose(Kind::Area, "sq in");
  group.choose(Kind::Velocity, "ft/min");
  group.choose(Kind::Acceleration, "ft/s²");
  group.choose(Kind::Force, "lbf");
  group.choose(Kind::Stress, "ksi");
  group.choose(Kind::Pressure, "psi");
  group.choose(Kind::Warming, "°F");
  group.choose(Kind::Expansion, "µin/in·°F");
  group.choose(Kind::StaticMoment, "oz·in");
  return group;
}

bool UnitGroup::choose(Kind kind, std::string_view unitName) {
  const Unit* unit = findUnit(kind, unitName);
  if (unit == nullptr) return false;
  units_[static_cast<std::size_t>(kind)] = unit;
  return true;
}

}  // namespace strokewright::units
