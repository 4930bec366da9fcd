/// Whether the rods are the donor's, as far as the entries tell. That half a per cent is alike is
/// common practice, no published source; the numbers are worked out by hand.

#include <gtest/gtest.h>

#include <ostream>
#include <vector>

#include "core/limits/results.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::assess {
namespace {

using describe::State;

constexpr int kDonor = 0;
constexpr int kTarget = 1;

/// Both engines of the triple: 118 mm between centres, 84 g, 100 mm².
struct Row {
  const char* name;
  const char* key;
  const char* text;
  out::Rods rods;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class TheRods : public testing::TestWithParam<Row> {};

TEST_P(TheRods, AreThoseOfTheDonorOrOthers) {
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], GetParam().key, GetParam().text);
  const Assessment assessment(project);
  ASSERT_EQ(assessment(kTarget, out::rods).state, State::Value);
  EXPECT_EQ(assessment(kTarget, out::rods).value, static_cast<double>(GetParam().rods));
}

INSTANTIATE_TEST_SUITE_P(
    Of, TheRods,
    testing::Values(Row{"AsEntered", "rod_length_m", "118.000", out::Rods::Donors},
                    Row{"LengthJustAlike", "rod_length_m", "118.58", out::Rods::Donors},
                    Row{"LengthJustNot", "rod_length_m", "118.60", out::Rods::Others},
                    Row{"Shorter", "rod_length_m", "117.4", out::Rods::Others},
                    Row{"SmallEndJustAlike", "rod_small_end_mass_kg", "84.4", out::Rods::Donors},
                    Row{"SmallEndJustNot", "rod_small_end_mass_kg", "84.5", out::Rods::Others},
                    Row{"SectionJustAlike", "rod_least_section_m2", "99.6", out::Rods::Donors},
                    Row{"SectionJustNot", "rod_least_section_m2", "99.4", out::Rods::Others},
                    Row{"SectionNotKnown", "rod_least_section_m2", "", out::Rods::Donors}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(Rods, AreComparedInEveryCylinder) {
  model::Project project = sample("burdock-719");
  type(project.engines[kTarget], "rod_length_m", "118; 119; 118");
  const Assessment assessment(project);
  for (const auto& [cylinder, rods] :
       {std::pair{0, out::Rods::Donors}, std::pair{1, out::Rods::Others},
        std::pair{2, out::Rods::Donors}}) {
    EXPECT_EQ(assessment(kTarget, out::rods, cylinder).value, static_cast<double>(rods));
  }
}

TEST(Rods, OfTheDonorAreItsOwn) {
  const model::Project project = sample("burdock-719");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(kDonor, out::rods).value, static_cast<double>(out::Rods::Donors));
}

TEST(Rods, AreNotAskedForWithoutADonor) {
  model::Project project = sample("burdock-719");
  project.referenceDonor = -1;
  EXPECT_EQ(Assessment(project)(kTarget, out::rods).state, State::None);
}

}  // namespace
}  // namespace strokewright::assess
