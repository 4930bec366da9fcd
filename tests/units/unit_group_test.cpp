#include "core/units/unit_group.h"

#include <gtest/gtest.h>

namespace strokewright::units {
namespace {

TEST(UnitGroup, MetricIsTheBenchUnitOfEachKind) {
  const UnitGroup group = UnitGroup::metric();
  for (std::size_t i = 0; i < kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    EXPECT_EQ(&group[kind], &unitsOf(kind).front()) << kindName(kind);
  }
}

TEST(UnitGroup, InchPoundKeepsWhatTheTradeDoesNotConvert) {
  const UnitGroup group = UnitGroup::inchPound();
  EXPECT_EQ(group[Kind::Length].name, "in");
  EXPECT_EQ(group[Kind::FineLength].name, "thou");
  EXPECT_EQ(group[Kind::Volume].name, "cu in");
  EXPECT_EQ(group[Kind::Mass].name, "oz");
  EXPECT_EQ(group[Kind::Area].name, "sq in");
  EXPECT_EQ(group[Kind::Angle].name, "°");
  EXPECT_EQ(group[Kind::Speed].name, "rpm");
  EXPECT_EQ(group[Kind::Velocity].name, "ft/min");
  EXPECT_EQ(group[Kind::Acceleration].name, "ft/s²");
  EXPECT_EQ(group[Kind::Force].name, "lbf");
  EXPECT_EQ(group[Kind::Stress].name, "ksi");
  EXPECT_EQ(group[Kind::StaticMoment].name, "oz·in");
  EXPECT_EQ(group[Kind::RingConstant].name, "m²/s²");
  EXPECT_EQ(group[Kind::SpeedFactor].name, "mm·rpm");
  EXPECT_EQ(group[Kind::Share].name, "%");
}

TEST(UnitGroup, OneEntryChangesAloneAndComparesByChoice) {
  UnitGroup group = UnitGroup::metric();
  EXPECT_TRUE(group.choose(Kind::FineLength, "thou"));
  EXPECT_EQ(group[Kind::FineLength].name, "thou");
  EXPECT_EQ(group[Kind::Length].name, "mm");
  EXPECT_NE(group, UnitGroup::metric());
  EXPECT_TRUE(group.choose(Kind::FineLength, "mm"));
  EXPECT_EQ(group, UnitGroup::metric());
}

TEST(UnitGroup, AUnitOfAnotherKindChangesNothing) {
  UnitGroup group = UnitGroup::metric();
  EXPECT_FALSE(group.choose(Kind::Length, "kg"));
  EXPECT_FALSE(group.choose(Kind::Count, "mm"));
  EXPECT_EQ(group, UnitGroup::metric());
}

}  // namespace
}  // namespace strokewright::units
