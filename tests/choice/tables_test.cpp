#include "core/choice/tables.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::choice {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using bench::mm;
using describe::State;
using describe::Tabulated;
namespace list = model::list;

constexpr int kTarget = 1;

void put(describe::Entries& item, const describe::Input& column, std::string_view text) {
  item[&column] = model::entryFrom(column, text, units::UnitGroup::metric());
}

void addPart(model::Project& project, std::string_view role, std::string_view thickness,
             std::string_view bore = "") {
  model::projectLists();
  describe::Entries item;
  put(item, list::partRole, role);
  put(item, list::partThickness, thickness);
  if (!bore.empty()) put(item, list::partBore, bore);
  project.lists[&list::shelf].push_back(item);
}

/// The stationary single with its three head gaskets on the shelf and nothing else.
class ShelfOfTheSingle : public testing::Test {
 protected:
  ShelfOfTheSingle() : project_(sample("culvert-1040")) {
    project_.lists.clear();
    for (const char* thickness : {"1.20 ± 0.03", "1.30 ± 0.03", "1.40 ± 0.03"}) {
      addPart(project_, "head gasket", thickness, "106.5");
    }
    type(project_.engines[kTarget], "wanted_squish_m", "0.95");
    type(project_.engines[kTarget], "squish_least_m", "0.85");
  }
  model::Project project_;
};

// The conversion's own figures: 0.90, 1.00 and 1.10 with ratios 17.55, 17.32 and 17.09.
TEST_F(ShelfOfTheSingle, RanksItsGasketsByNearness) {
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.state, State::Value);
  ASSERT_EQ(told.rows.size(), 3U);
  const auto& gaps = told.rows["squish_m"].numbers;
  const auto& ratios = told.rows["ratio"].numbers;
  EXPECT_NEAR(gaps[2], 1.10 * mm, 1e-9) << "the farthest from 0.95";
  EXPECT_NEAR(ratios[2], 17.09, 0.005);
  for (int i = 0; i < 2; ++i) {
    EXPECT_NEAR(ratios[i], gaps[i] < 0.95 * mm ? 17.55 : 17.32, 0.005);
  }
}

TEST_F(ShelfOfTheSingle, SaysWhyTheOthersLost) {
  type(project_.engines[kTarget], "squish_least_m", "0.95");
  Assessment assessment(project_);
  const Tabulated told = assessment.evaluation().tabulated(kTarget, out::stacksLost);
  ASSERT_EQ(told.rows.size(), 1U);
  EXPECT_EQ(told.rows["why"].words[0], "gap under the least");
  EXPECT_EQ(told.rows["stacks"].numbers[0], 1.0);
}

TEST_F(ShelfOfTheSingle, PutsAStackIntoTheEntriesAsText) {
  Assessment assessment(project_);
  describe::Evaluation& evaluation = assessment.evaluation();
  const Tabulated told = evaluation.tabulated(kTarget, out::stackChoices);
  ASSERT_EQ(told.state, State::Value);
  Question question{.shelf = {{.role = Role::HeadGasket, .thickness = 1.3 * mm, .bore = 106.5 * mm},
                              {.role = Role::Plate, .thickness = 0.95 * mm},
                              {.role = Role::Plate, .thickness = 1.05 * mm}},
                    .cylinders = {},
                    .wants = {}};
  Stack stack;
  for (const int plate : {1, 2}) {
    stack.cylinders.push_back({.set = {.plate = plate, .headGasket = 0}});
  }
  bool spacerSaid = false;
  for (const auto& [input, text] : entriesOf(question, stack)) {
    if (input == &model::in::spacer) {
      spacerSaid = true;
      EXPECT_EQ(model::entryFrom(*input, text, units::UnitGroup::metric()).values,
                (std::vector{0.95e-3, 1.05e-3}))
          << text;
    }
    if (input == &model::in::headGasket) {
      EXPECT_EQ(model::entryFrom(*input, text, units::UnitGroup::metric()).values,
                std::vector{1.3e-3});
    }
  }
  EXPECT_TRUE(spacerSaid);
}

TEST_F(ShelfOfTheSingle, PassesOverWhatIsNotAPartYet) {
  addPart(project_, "head gasket", "tbc", "106.5");
  addPart(project_, "head gasket", "1.35");
  Assessment assessment(project_);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::stackChoices).rows.size(), 3U);
}

TEST(AnEmptyShelf, IsRefusedInWords) {
  model::Project project = sample("culvert-1040");
  project.lists.clear();
  Assessment assessment(project);
  EXPECT_EQ(assessment.evaluation().tabulated(kTarget, out::stackChoices).state, State::Refused);
}

}  // namespace
}  // namespace strokewright::choice
