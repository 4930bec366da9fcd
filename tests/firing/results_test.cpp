#include "core/firing/results.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "core/describe/tabulated.h"
#include "core/firing/layouts.h"
#include "core/model/inputs.h"
#include "core/units/parse.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::firing {
namespace {

namespace in = model::in;
using assess::Assessment;
using assess::findingOf;
using assess::told;
using assess::type;
using describe::State;
using describe::Tabulated;
using testing::HasSubstr;
using units::Kind;

constexpr double kDegree = std::numbers::pi / 180.0;

/// An engine of which only the layout is known.
model::Project engineOf(const char* cylinders, const char* throws_, const char* axes = "",
                        const char* cycle = "four-stroke") {
  model::Project project;
  project.engines.emplace_back();
  model::Engine& engine = project.engines.back();
  engine.part = model::Part::Target;
  type(engine, "cylinder_count", cylinders);
  type(engine, "cycle", cycle);
  type(engine, "throw_ahead_rad", throws_);
  type(engine, "cylinder_axis_rad", axes);
  project.referenceDonor = -1;
  return project;
}

std::vector<double> degreesOf(const Assessment& assessment, const describe::Result& result,
                              int cylinders, int engine = 0) {
  std::vector<double> degrees;
  for (int i = 0; i < cylinders; ++i) {
    const describe::Cell& cell = assessment(engine, result, i);
    EXPECT_EQ(cell.state, State::Value) << result.key;
    degrees.push_back(std::round(cell.value / kDegree * 1000.0) / 1000.0);
  }
  return degrees;
}

/// A crank, and when its pistons are at the top.
struct TopRow {
  const char* name;
  const char* cylinders;
  const char* throws_;
  const char* axes;
  std::vector<double> tops;  // [degrees] after the first
  double largest;            // [degrees] interval of the most even order
};
void PrintTo(const TopRow& row, std::ostream* out) { *out << row.name; }

class Tops : public testing::TestWithParam<TopRow> {};

TEST_P(Tops, FollowFromThrowsAndAxes) {
  const TopRow& row = GetParam();
  const model::Project project = engineOf(row.cylinders, row.throws_, row.axes);
  const Assessment assessment(project);
  EXPECT_THAT(degreesOf(assessment, out::topAfterFirst, static_cast<int>(row.tops.size())),
              testing::Pointwise(testing::DoubleNear(0.001), row.tops));
  EXPECT_NEAR(assessment(0, out::largestFiringGap).value / kDegree, row.largest, 1e-6);
}

// Plane geometry, α = β − ψ; the five is the list that shows throws and tops are not one
// (0-144-216-288-72 against 0-216-144-72-288). Intervals: 720/n where they are even.
INSTANTIATE_TEST_SUITE_P(
    Cranks, Tops,
    testing::Values(
        TopRow{"Twin270", "2", "0; 270", "", {0, 90}, 450},
        TopRow{"Triple", "3", "0; 240; 120", "", {0, 120, 240}, 240},
        TopRow{"Vee75", "2", "0; 0", "0; 75", {0, 75}, 435},
        TopRow{"Vee75PinBehind", "2", "0; -30", "0; 75", {0, 105}, 465},
        TopRow{"Vee75PinAhead", "2", "0; 30", "0; 75", {0, 45}, 405},
        TopRow{"Five", "5", "0; 216; 144; 72; 288", "", {0, 144, 216, 288, 72}, 144},
        TopRow{"Six", "6", "0; 240; 120; 120; 240; 0", "", {0, 120, 240, 240, 120, 0}, 120},
        TopRow{"FlatFour", "4", "0; 180; 180; 0", "0; 180; 0; 180", {0, 0, 180, 180}, 180},
        TopRow{"V8CrossPlane",
               "8",
               "0; 0; 90; 90; 270; 270; 180; 180",
               "0; 90; 0; 90; 0; 90; 0; 90",
               {0, 90, 270, 0, 90, 180, 180, 270},
               90}),
    [](const auto& row) { return row.param.name; });

/// A conversion among the samples: [degrees] intervals of the target, and what its lobes move by.
struct SampleRow {
  const char* name;
  double largest;
  double least;
  std::vector<double> moved;
};
void PrintTo(const SampleRow& row, std::ostream* out) { *out << row.name; }

class FiringOfSample : public testing::TestWithParam<SampleRow> {};

TEST_P(FiringOfSample, IsThatOfTheWorkedConversion) {
  const SampleRow& row = GetParam();
  const model::Project project = assess::sample(row.name);
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::largestFiringGap).value / kDegree, row.largest, 1e-6);
  EXPECT_NEAR(assessment(1, out::leastFiringGap).value / kDegree, row.least, 1e-6);
  for (int i = 0; i < static_cast<int>(row.moved.size()); ++i) {
    const describe::Cell& cell = assessment(1, out::lobeMoved, i);
    ASSERT_EQ(cell.state, State::Value);
    EXPECT_NEAR(cell.value / kDegree, row.moved[static_cast<std::size_t>(i)], 1e-6);
  }
}

// Worked conversions of the project, computed independently: the twin re-thrown from 360° to 270°
// fires 450/270, its second lobe comes from 180° to 225° behind the first. 720/n, 360 where even.
INSTANTIATE_TEST_SUITE_P(Conversions, FiringOfSample,
                         testing::Values(SampleRow{"tansy-270", 450, 270, {0, -45}},
                                         SampleRow{"burdock-719", 240, 240, {0, 0, 0}},
                                         SampleRow{"teasel-125", 360, 360, {}},
                                         SampleRow{"culvert-1040", 720, 720, {0}}),
                         [](const auto& row) {
                           std::string name = row.param.name;
                           std::erase(name, '-');
                           return name;
                         });

TEST(Firing, WaitsForThrows) {
  const model::Project project = engineOf("3", "");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(0, out::largestFiringGap).state, State::Waits);
}

TEST(Firing, OfASingleNeedsNoThrow) {
  const model::Project project = engineOf("1", "");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::largestFiringGap).value, 720 * kDegree, 1e-9);
}

TEST(Firing, OfATwinIsTheSameWithItsOrderEntered) {
  model::Project project = engineOf("2", "0; 270 ± 0.5");
  type(project.engines[0], "firing_order", "1; 2");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::firesAfterFirst, 1).value, 450 * kDegree, 1e-9);
  EXPECT_NEAR(assessment(0, out::largestFiringGap).value, 450 * kDegree, 1e-9);
  type(project.engines[0], "firing_order", "2; 1");
  const Assessment other(project);
  EXPECT_NEAR(other(0, out::firesAfterFirst, 0).value, 270 * kDegree, 1e-9);
}

// By hand: the ± of one throw moves its own firing by as much, and pistons at the top together do
// not part by a turn.
TEST(Firing, IsAsSureAsItsThrow) {
  const model::Project project = engineOf("2", "0; 0 ± 0.5");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::firesAfterFirst, 1).value, 360 * kDegree, 1e-9);
  EXPECT_LT(assessment(0, out::topAfterFirst, 1).worst, 2.0 * kDegree);
  EXPECT_LT(assessment(0, out::lobeBehindFirst, 1).worst, 2.0 * kDegree);
  EXPECT_NEAR(assessment(0, out::firesAfterFirst, 1).worst, 1.0 * kDegree, 0.51 * kDegree);
}

TEST(Firing, GoesByTheNumbersOfTheWorkshop) {
  model::Project project = engineOf("4", "0; 180; 180; 0");
  type(project.engines[0], "cylinder_number", "4; 3; 2; 1");
  type(project.engines[0], "firing_order", "4; 2; 1; 3");
  Assessment assessment(project);
  const Tabulated table = assessment.evaluation().tabulated(0, out::firingTable);
  ASSERT_EQ(table.state, State::Value);
  EXPECT_EQ(table.rows["cylinder"].numbers[1], 2.0);
  EXPECT_NEAR(table.rows["at_rad"].numbers[1], 180 * kDegree, 1e-9);
}

/// An order that cannot be, and what is said of it.
struct WrongRow {
  const char* name;
  const char* order;
  const char* says;
};
void PrintTo(const WrongRow& row, std::ostream* out) { *out << row.name; }

class WrongOrder : public testing::TestWithParam<WrongRow> {};

TEST_P(WrongOrder, IsForbiddenOnceAndOfTheOrder) {
  model::Project project = engineOf("4", "0; 180; 180; 0");
  type(project.engines[0], "firing_order", GetParam().order);
  const Assessment assessment(project);
  int forbids = 0;
  for (const describe::Finding& finding : assessment.findings(0)) {
    if (finding.weight != describe::Weight::Forbids) continue;
    ++forbids;
    EXPECT_EQ(finding.about.front(), &in::firingOrder) << told(finding);
    EXPECT_THAT(told(finding), HasSubstr(GetParam().says));
  }
  EXPECT_EQ(forbids, 1);
  EXPECT_NE(assessment(0, out::largestFiringGap).state, State::Value);
}

INSTANTIATE_TEST_SUITE_P(
    Slips, WrongOrder,
    testing::Values(WrongRow{"Twice", "1; 3; 2; 3", "It leaves out 4 and names 3 more than once."},
                    WrongRow{"Unknown", "1; 3; 5; 2",
                             "It leaves out 4, and no cylinder goes by 5."},
                    WrongRow{"Both", "1; 1; 5; 2",
                             "It leaves out 3; 4, names 1 more than once, and no cylinder goes by "
                             "5."},
                    WrongRow{"Alone", "1", "It leaves out 2; 3; 4 and names 1 more than once."},
                    WrongRow{"Few", "1; 3; 4", "3 numbers for 4 cylinders"},
                    WrongRow{"Many", "1; 3; 4; 2; 2", "5 numbers for 4 cylinders"}),
    [](const auto& row) { return row.param.name; });

TEST(FiringOrder, ThatTheThrowsCannotDoIsForbiddenWithThoseTheyCan) {
  model::Project project = engineOf("3", "0; 240; 120", "", "two-stroke");
  type(project.engines[0], "firing_order", "1; 3; 2");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "firing_order_fits_the_throws");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_EQ(findingOf(assessment, 0, "refused"), nullptr) << "said once";
  ASSERT_FALSE(finding->mends.empty());
  const describe::Mend& other = finding->mends.back();
  EXPECT_EQ(other.entries.front().second, "1-2-3");
  type(project.engines[0], "firing_order", other.entries.front().second);
  const Assessment mended(project);
  EXPECT_EQ(findingOf(mended, 0, "firing_order_fits_the_throws"), nullptr);
}

// The V8 of the list has axes 0; 90; 1-8-4-3-6-5-7-2, published for such cranks, from memory, fits
// with the even bank on the other side.
TEST(FiringOrder, ThatFitsWithTheAxesTurnedRoundSaysSo) {
  model::Project project =
      engineOf("8", "0; 0; 90; 90; 270; 270; 180; 180", "0; 90; 0; 90; 0; 90; 0; 90");
  type(project.engines[0], "firing_order", "1-8-4-3-6-5-7-2");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "firing_order_fits_the_throws");
  ASSERT_NE(finding, nullptr);
  ASSERT_FALSE(finding->mends.empty());
  EXPECT_EQ(finding->mends.front().entries.front().first, &in::cylinderAxis);
  for (const auto& [input, text] : finding->mends.front().entries) {
    type(project.engines[0], input->key, text);
  }
  const Assessment mended(project);
  EXPECT_EQ(findingOf(mended, 0, "firing_order_fits_the_throws"), nullptr);
  EXPECT_NEAR(mended(0, out::largestFiringGap).value, 90 * kDegree, 1e-9);
}

TEST(FiringOrder, ThatFitsInTheOtherSenseOfRotationSaysSo) {
  model::Project project = engineOf("3", "0; 240; 120", "", "two-stroke");
  type(project.engines[0], "firing_order", "1; 3; 2");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "firing_order_fits_the_throws");
  ASSERT_NE(finding, nullptr);
  ASSERT_EQ(finding->mends.front().entries.front().first, &in::throwAhead);
  type(project.engines[0], "throw_ahead_rad", finding->mends.front().entries.front().second);
  EXPECT_EQ(findingOf(Assessment(project), 0, "firing_order_fits_the_throws"), nullptr);
}

/// An order typed as one writes it.
class OrderTyped : public testing::TestWithParam<const char*> {};

TEST_P(OrderTyped, IsReadAndStaysAsTyped) {
  model::Project project = engineOf("6", "0; 240; 120; 120; 240; 0");
  type(project.engines[0], "firing_order", GetParam());
  const describe::Entry& entry = project.engines[0][in::firingOrder];
  EXPECT_THAT(entry.values, testing::ElementsAre(1, 5, 3, 6, 2, 4));
  EXPECT_EQ(entry.text, GetParam());
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::largestFiringGap).value, 120 * kDegree, 1e-9);
  EXPECT_EQ(findingOf(assessment, 0, "read_as", "firing_order"), nullptr);
}

INSTANTIATE_TEST_SUITE_P(Marks, OrderTyped,
                         testing::Values("1-5-3-6-2-4", "1 5 3 6 2 4", "1,5,3,6,2,4",
                                         "1, 5, 3, 6, 2, 4", "1 – 5 – 3 – 6 – 2 – 4",
                                         "1; 5; 3; 6; 2; 4"));

TEST(OrderTyped, WithAMarkTooManyIsNotRead) {
  for (const char* text : {"1--3", "1-", "1-a", "-1", "1,,2", "1 | 2"}) {
    model::Project project = engineOf("2", "0; 180");
    type(project.engines[0], "firing_order", text);
    const auto& values = project.engines[0][in::firingOrder].values;
    EXPECT_LT(values.size(), 2U) << text;
  }
}

// By hand: a 270° twin fires at 90 or a turn later, at 450; both are 1-2.
TEST(Turns, TellOrdersOfTheSameCylindersApart) {
  model::Project project = engineOf("2", "0; 270");
  Assessment before(project);
  const Tabulated orders = before.evaluation().tabulated(0, out::firingOrders);
  ASSERT_EQ(orders.rows.size(), 2U);
  EXPECT_EQ(orders.rows["later"].words[0], "");
  EXPECT_EQ(orders.rows["in_use"].words[0], "in use");
  EXPECT_EQ(orders.rows["intervals"].words[1], "90-630");
  type(project.engines[0], "firing_order", "1; 2");
  type(project.engines[0], "fires_turn_later", orders.rows["later"].words[1]);
  Assessment taken(project);
  EXPECT_NEAR(taken(0, out::largestFiringGap).value, 630 * kDegree, 1e-9);
  EXPECT_EQ(taken(0, out::turnsLater, 1).value, 0.0);
  const Tabulated after = taken.evaluation().tabulated(0, out::firingOrders);
  EXPECT_EQ(after.rows["in_use"].words[0], "");
  EXPECT_EQ(after.rows["in_use"].words[1], "in use");
}

// Whatever row is taken, its intervals are those of the firings then.
TEST(Turns, MakeEveryRowOneThatCanBeEntered) {
  for (const char* cylinders : {"0; 240; 120", "0; 100; 250"}) {
    model::Project project = engineOf("3", cylinders);
    Assessment before(project);
    const Tabulated orders = before.evaluation().tabulated(0, out::firingOrders);
    for (std::size_t i = 0; i < orders.rows.size(); ++i) {
      type(project.engines[0], "firing_order", orders.rows["order"].words[i]);
      type(project.engines[0], "fires_turn_later", orders.rows["later"].words[i]);
      const Assessment taken(project);
      const auto row = static_cast<Eigen::Index>(i);
      EXPECT_NEAR(taken(0, out::largestFiringGap).value, orders.rows["largest_rad"].numbers[row],
                  1e-9);
      EXPECT_NEAR(taken(0, out::leastFiringGap).value, orders.rows["least_rad"].numbers[row], 1e-9);
    }
  }
}

TEST(Turns, ThatCannotBeAreForbidden) {
  struct Row {
    const char* cycle;
    const char* order;
    const char* later;
  };
  for (const Row& row : {Row{"four-stroke", "1; 2", "1; 0"}, Row{"two-stroke", "1; 2", "0; 1"},
                         Row{"four-stroke", "", "1"}, Row{"two-stroke", "", "0; 1"}}) {
    model::Project project = engineOf("2", "0; 180", "", row.cycle);
    type(project.engines[0], "firing_order", row.order);
    type(project.engines[0], "fires_turn_later", row.later);
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, 0, "turns_later_fit");
    ASSERT_NE(finding, nullptr) << row.later;
    EXPECT_EQ(findingOf(assessment, 0, "refused"), nullptr);
    type(project.engines[0], "fires_turn_later", finding->mends.front().entries.front().second);
    EXPECT_EQ(Assessment(project)(0, out::largestFiringGap).state, State::Value);
  }
}

TEST(CylinderNumbers, ThatAreNotEachAnothersAreForbidden) {
  for (const char* numbers : {"1; 1; 2", "5"}) {
    model::Project project = engineOf("3", "0; 240; 120");
    type(project.engines[0], "cylinder_number", numbers);
    type(project.engines[0], "firing_order", "1; 3; 2");
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, 0, "cylinder_numbers_differ");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->weight, describe::Weight::Forbids);
    EXPECT_EQ(finding->mends.front().entries.front().second, "1; 2; 3");
    EXPECT_EQ(findingOf(assessment, 0, "firing_order_names_each_once"), nullptr);
    EXPECT_EQ(findingOf(assessment, 0, "refused"), nullptr);
  }
}

/// A common crank in one of the cycles, its orders as they are told.
class OrdersOfLayout : public testing::TestWithParam<const char*> {};

// By the definition of an order of firing: those that fire together are joined by +, and nobody
// else is; intervals are never negative and fill the cycle; no row comes twice.
TEST_P(OrdersOfLayout, AreToldOnceWithThoseTogetherJoined) {
  const bool two = GetParam() == std::string("two-stroke");
  for (const Layout& layout : layouts()) {
    const model::Project project =
        engineOf(std::to_string(layout.cylinders).c_str(), std::string(layout.throws).c_str(),
                 std::string(layout.axes).c_str(), GetParam());
    Assessment assessment(project);
    const Tabulated orders = assessment.evaluation().tabulated(0, out::firingOrders);
    ASSERT_EQ(orders.state, State::Value) << layout.key;
    std::set<std::string> rows;
    for (std::size_t i = 0; i < orders.rows.size(); ++i) {
      const std::string& order = orders.rows["order"].words[i];
      const std::string& intervals = orders.rows["intervals"].words[i];
      EXPECT_TRUE(rows.insert(order + intervals + orders.rows["later"].words[i]).second)
          << layout.key << ": " << order;
      const double least = orders.rows["least_rad"].numbers[static_cast<Eigen::Index>(i)];
      const bool together = order.find('+') != std::string::npos;
      EXPECT_EQ(least == 0.0, together) << layout.key << ": " << order << " | " << intervals;
      EXPECT_GE(least, 0.0);
      double sum = 0.0;
      std::string marks;
      std::istringstream each(intervals);
      for (std::string interval; std::getline(each, interval, '-');) {
        sum += std::stod(interval);
        marks += interval == "0" ? '+' : '-';
      }
      EXPECT_NEAR(sum, two ? 360.0 : 720.0, 1e-9) << layout.key << ": " << intervals;
      std::string written;
      std::ranges::copy_if(order, std::back_inserter(written),
                           [](char letter) { return letter == '+' || letter == '-'; });
      EXPECT_EQ(written + '-', marks) << layout.key << ": " << order << " | " << intervals;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Cycles, OrdersOfLayout, testing::Values("two-stroke", "four-stroke"),
                         [](const auto& row) { return row.param[0] == 't' ? "Two" : "Four"; });

// By the definition of a rounded sum: the largest remainders take what is left; 720/7 each where
// all are alike.
TEST(Intervals, AreRoundedSoThatTheyAddUp) {
  const auto said = [](std::vector<double> degrees) {
    for (double& each : degrees) each *= kDegree;
    return inDegrees(degrees);
  };
  EXPECT_EQ(said({0.0, 14.77, 14.77, 330.46}), "0-14.8-14.8-330.4");
  EXPECT_EQ(said({119.96, 120.02, 120.02}), "120-120-120");
  EXPECT_EQ(said({100.04, 100.04, 159.92}), "100.1-100-159.9");
  EXPECT_EQ(said(std::vector<double>(7, 720.0 / 7.0)), "102.9-102.9-102.9-102.9-102.9-102.9-102.9");
}

// Common practice, no published source: a + in an order joins those that fire together.
TEST(FiringOrder, WithAPlusIsOfThoseThatFireTogether) {
  model::Project twin = engineOf("2", "0; 0");
  type(twin.engines[0], "firing_order", "1+2");
  EXPECT_EQ(Assessment(twin)(0, out::leastFiringGap).value, 0.0);
  type(twin.engines[0], "firing_order", "1-2");
  EXPECT_NEAR(Assessment(twin)(0, out::leastFiringGap).value, 360 * kDegree, 1e-9);
  for (const auto& [order, apart] :
       {std::pair{"1+2+3", "cylinders 1 and 2 are at their tops 120.0° apart"},
        std::pair{"1-3 + 2", "cylinders 3 and 2 are at their tops 120.0° apart"}}) {
    model::Project triple = engineOf("3", order[3] == '+' ? "0; 120; 240" : "0; 240; 120");
    type(triple.engines[0], "firing_order", order);
    const Assessment assessment(triple);
    const describe::Finding* finding = findingOf(assessment, 0, "firing_order_fits_the_throws");
    ASSERT_NE(finding, nullptr) << order;
    EXPECT_EQ(finding->weight, describe::Weight::Forbids);
    EXPECT_THAT(told(*finding), HasSubstr(apart));
    for (const describe::Mend& mend : finding->mends) {
      model::Project mended = triple;
      for (const auto& [input, text] : mend.entries) {
        type(mended.engines[0], input->key, text);
      }
      EXPECT_EQ(Assessment(mended)(0, out::largestFiringGap).state, State::Value);
    }
  }
  model::Project turned = engineOf("2", "0; 0");
  type(turned.engines[0], "firing_order", "1+2");
  type(turned.engines[0], "fires_turn_later", "0; 1");
  EXPECT_NE(findingOf(Assessment(turned), 0, "turns_later_fit"), nullptr);
}

// By the definition of an order of firing: two throws in line in one cylinder row of a two-stroke
// have no other turn to fire on.
TEST(FiringOrder, ThatLetsTwoFireTogetherIsToldAndWrittenSo) {
  model::Project twin = engineOf("2", "0; 0", "", "two-stroke");
  type(twin.engines[0], "firing_order", "1-2");
  const Assessment silent(twin);
  const describe::Finding* finding = findingOf(silent, 0, "fires_together");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("1+2"));
  ASSERT_EQ(finding->mends.size(), 1U);
  type(twin.engines[0], "firing_order", finding->mends.front().entries.front().second);
  const Assessment written(twin);
  EXPECT_EQ(findingOf(written, 0, "fires_together"), nullptr);
  EXPECT_EQ(written(0, out::leastFiringGap).value, 0.0);
  type(twin.engines[0], "cycle", "four-stroke");
  type(twin.engines[0], "firing_order", "1-2");
  EXPECT_EQ(findingOf(Assessment(twin), 0, "fires_together"), nullptr) << "a turn apart";
}

TEST(FiringOrder, ThatIsWrongOfAnyCrankIsForbiddenBeforeThereAreThrows) {
  for (const char* order : {"1-1-2", "1-2-4", "1-3-2-1"}) {
    model::Project project = engineOf("3", "");
    type(project.engines[0], "firing_order", order);
    EXPECT_NE(findingOf(Assessment(project), 0, "firing_order_names_each_once"), nullptr) << order;
  }
}

TEST(FiringOrder, ThatCannotBeReadIsToldItsForm) {
  model::Project project = engineOf("3", "0; 240; 120");
  type(project.engines[0], "firing_order", "a-b-c");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "not_a_number_yet");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("1-3-2"));
}

// The even V8 of the list with its axes the other way: by hand 6 and 7 are then at the top
// together.
TEST(FiringOrder, ThatFitsWithTheAxesTurnedRoundSaysWhichThenFireTogether) {
  model::Project project =
      engineOf("8", "0; 0; 90; 90; 270; 270; 180; 180", "0; -90; 0; -90; 0; -90; 0; -90");
  type(project.engines[0], "firing_order", "1-2-3-4-5-6-7-8");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "firing_order_fits_the_throws");
  ASSERT_NE(finding, nullptr);
  for (const describe::Mend& mend : finding->mends) {
    if (mend.entries.front().first == &in::firingOrder) continue;
    model::Project turned = project;
    for (const auto& [input, text] : mend.entries) type(turned.engines[0], input->key, text);
    const bool together = Assessment(turned)(0, out::leastFiringGap).value == 0.0;
    EXPECT_EQ(describe::word(mend.says, {}).find('+') != std::string::npos, together);
  }
}

// Common practice: one coil sparks in both where their pistons are at the top together.
TEST(Triggers, OfATwoStrokeShareACoilWhereTheyFireTogether) {
  const model::Project project = engineOf("2", "0; 0", "", "two-stroke");
  Assessment assessment(project);
  const Tabulated triggers = assessment.evaluation().tabulated(0, out::triggers);
  EXPECT_THAT(triggers.rows["shares"].words, testing::ElementsAre("2", "1"));
}

TEST(Radial, HasUsualAxes) {
  const model::Project project = engineOf("3", "0; 0; 0", "0; 120; 240");
  EXPECT_EQ(findingOf(Assessment(project), 0, "unusual", "cylinder_axis_rad"), nullptr);
}

TEST(Layout, OfPairsOnOnePinIsTheSameWhicheverBankIsTheFirst) {
  const auto named = [](const char* cylinders, const char* throws_, const char* axes) {
    const model::Project project = engineOf(cylinders, throws_, axes);
    const Assessment assessment(project);
    return std::string(layoutName(assessment.evaluation(), 0));
  };
  EXPECT_EQ(named("8", "0; 0; 90; 90; 270; 270; 180; 180", "0; -90; 0; -90; 0; -90; 0; -90"),
            "V8 90°, cross-plane");
  EXPECT_EQ(named("2", "0; 30", "0; -75"), "V-twin 75°, second pin 30° behind");
  EXPECT_EQ(named("2", "0; -30", "0; -75"), "V-twin 75°, second pin 30° ahead");
}

TEST(FiringOrders, OfEightCylindersAreAllThere) {
  const model::Project project = engineOf("8", "0; 180; 90; 270; 270; 90; 180; 0");
  Assessment assessment(project);
  EXPECT_EQ(assessment.evaluation().tabulated(0, out::firingOrders).rows.size(), 128U);
}

TEST(Angles, OfOneForAllCylindersAreAskedAbout) {
  model::Project project = engineOf("2", "0; 0", "75");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "one_axis_for_all");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  type(project.engines[0], "cylinder_axis_rad", finding->mends.front().entries.front().second);
  const Assessment mended(project);
  EXPECT_EQ(findingOf(mended, 0, "one_axis_for_all"), nullptr);
  EXPECT_NEAR(mended(0, out::topAfterFirst, 1).value, 75 * kDegree, 1e-9);
  const model::Project triple = engineOf("3", "120");
  const Assessment throws(triple);
  const describe::Finding* thrown = findingOf(throws, 0, "one_throw_for_all");
  ASSERT_NE(thrown, nullptr);
  EXPECT_THAT(told(*thrown), HasSubstr("Are 0.0 · 120.0 · 240.0° meant?"));
  EXPECT_EQ(findingOf(throws, 0, "all_pistons_together"), nullptr);
  for (const model::Project& meant : {engineOf("2", "0"), engineOf("1", "30")}) {
    const Assessment fine(meant);
    EXPECT_EQ(findingOf(fine, 0, "one_throw_for_all"), nullptr);
  }
}

TEST(CrankTops, HaveARowForEachCylinder) {
  model::Project project = engineOf("2", "0; 270", "0; 0");
  type(project.engines[0], "cylinder_number", "7; 5");
  Assessment assessment(project);
  const Tabulated tops = assessment.evaluation().tabulated(0, out::crankTops);
  ASSERT_EQ(tops.state, State::Value);
  EXPECT_EQ(tops.rows["cylinder"].numbers[1], 5.0);
  EXPECT_NEAR(tops.rows["top_rad"].numbers[1], 90 * kDegree, 1e-9);
  EXPECT_NEAR(tops.rows["fires_rad"].numbers[1], 450 * kDegree, 1e-9);
  EXPECT_NEAR(tops.rows["lobe_rad"].numbers[1], 135 * kDegree, 1e-9);
  // The throws stand where the order cannot be.
  type(project.engines[0], "firing_order", "1; 2");
  Assessment refused(project);
  const Tabulated still = refused.evaluation().tabulated(0, out::crankTops);
  ASSERT_EQ(still.state, State::Value);
  EXPECT_TRUE(std::isnan(still.rows["fires_rad"].numbers[1]));
}

TEST(Throws, AllTogetherAreAskedAbout) {
  const model::Project project = engineOf("4", "0; 0; 0; 0");
  const Assessment assessment(project);
  EXPECT_NE(findingOf(assessment, 0, "all_pistons_together"), nullptr);
}

// What turns backwards of the primary force of a pair, ½|1 + exp(−j(δ − 2V))|: one pin |cos V|, the
// wrong sense more (60°: 0.87 against 0.50; 45°: 1.00 against 0.71). Closed form, from memory: Den
// Hartog, Mechanical Vibrations, ch. 5.
struct OffsetRow {
  const char* name;
  const char* cylinders;
  const char* throws_;
  const char* axes;
  std::vector<const char*> says;  // none: silent
  const char* mended = "";
};
void PrintTo(const OffsetRow& row, std::ostream* out) { *out << row.name; }

class PinOffset : public testing::TestWithParam<OffsetRow> {};

TEST_P(PinOffset, OfTheWrongSenseIsObjectedTo) {
  const OffsetRow& row = GetParam();
  model::Project project = engineOf(row.cylinders, row.throws_, row.axes);
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "pin_offset_wrong_sense");
  if (row.says.empty()) {
    EXPECT_EQ(finding, nullptr);
    return;
  }
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
  for (const char* words : row.says) EXPECT_THAT(told(*finding), HasSubstr(words));
  ASSERT_EQ(finding->mends.size(), 1U);
  EXPECT_EQ(finding->mends.front().entries.front().second, row.mended);
  type(project.engines[0], "throw_ahead_rad", row.mended);
  const Assessment mended(project);
  EXPECT_EQ(findingOf(mended, 0, "pin_offset_wrong_sense"), nullptr);
}

INSTANTIATE_TEST_SUITE_P(
    Pairs, PinOffset,
    testing::Values(
        OffsetRow{
            "Vee60Ahead", "2", "0; 60", "0; 60", {"60.0°", "0.50", "0.87", "0.00"}, "0; −60 °"},
        OffsetRow{"Vee60Behind", "2", "0; -60", "0; 60", {}},
        OffsetRow{
            "Vee45Ahead", "2", "0; 90", "0; 45", {"90.0°", "0.71", "1.00", "0.00"}, "0; −90 °"},
        OffsetRow{"Vee75Ahead", "2", "0; 30", "0; 75", {"0.26", "0.50"}, "0; −30 °"},
        OffsetRow{
            "AgainstRotation", "2", "0; -60", "0; -60", {"behind", "0.50", "0.87"}, "0; 60 °"},
        OffsetRow{"OnePin", "2", "0; 0", "0; 60", {}},
        // Neither sense is better at 90°.
        OffsetRow{"Vee90", "6", "0; 30; 240; 270; 120; 150", "0; 90; 0; 90; 0; 90", {}},
        OffsetRow{"Six60",
                  "6",
                  "0; 60; 240; 300; 120; 180",
                  "0; 60; 0; 60; 0; 60",
                  {"0.50", "0.87"},
                  "0; −60; 240; 180; 120; 60 °"},
        OffsetRow{"BankAfterBank",
                  "6",
                  "0; 240; 120; 60; 300; 180",
                  "0; 0; 0; 60; 60; 60",
                  {"cylinder 4", "0.50", "0.87"},
                  "0; 240; 120; −60; 180; 60 °"},
        OffsetRow{"FlatFour", "4", "0; 180; 180; 0", "0; 180; 0; 180", {}},
        OffsetRow{"InLine", "4", "0; 180; 180; 0", "", {}}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(PinOffset, TurnedRoundTakesAnOrderAlongThatIsNotPossibleThen) {
  model::Project project = engineOf("6", "0; 60; 240; 300; 120; 180", "0; 60; 0; 60; 0; 60");
  type(project.engines[0], "cycle", "two-stroke");
  type(project.engines[0], "firing_order", "1; 2; 5; 6; 3; 4");
  const Assessment before(project);
  for (const auto& mend : findingOf(before, 0, "pin_offset_wrong_sense")->mends) {
    for (const auto& [input, text] : mend.entries) type(project.engines[0], input->key, text);
  }
  const Assessment after(project);
  EXPECT_EQ(findingOf(after, 0, "firing_order_fits_the_throws"), nullptr);
  EXPECT_EQ(findingOf(after, 0, "pin_offset_wrong_sense"), nullptr);
}

TEST(Rods, OfWhichThreeStandOnOnePinAreSaidNotToBeSlaves) {
  const model::Project radial = engineOf("3", "0; 0; 0", "0; 120; 240");
  const Assessment assessment(radial);
  const describe::Finding* finding = findingOf(assessment, 0, "rods_share_a_pin");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("3 rods stand on one throw"));
  const model::Project twelve = engineOf("12", "0; 0; 240; 240; 120; 120; 120; 120; 240; 240; 0; 0",
                                         "0; 60; 0; 60; 0; 60; 0; 60; 0; 60; 0; 60");
  const Assessment vee(twelve);
  EXPECT_EQ(findingOf(vee, 0, "rods_share_a_pin"), nullptr);
}

// By hand: one that fires 14° after the first has its lobe 7° behind, which is 353° ahead, and it
// does not jump by a turn under its ±, nor does the lobe of one that fires with the first.
TEST(Lobes, AreToldWithinATurn) {
  model::Project project = engineOf("3", "0; -14; 0 ± 0.5");
  type(project.engines[0], "firing_order", "1-2-3");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::lobeBehindFirst, 1).value, 353 * kDegree, 1e-9);
  for (int i = 0; i < 3; ++i) {
    EXPECT_GE(assessment(0, out::lobeBehindFirst, i).value, 0.0);
    EXPECT_LT(assessment(0, out::lobeBehindFirst, i).worst, 2.0 * kDegree);
  }
}

/// A donor and a target with other throws.
model::Project conversion(const char* cylinders, const char* donors, const char* throws_) {
  model::Project project = engineOf(cylinders, donors);
  project.engines.front().part = model::Part::Donor;
  project.engines.push_back(engineOf(cylinders, throws_).engines.front());
  project.referenceDonor = 0;
  return project;
}

// The twin re-thrown from 360° to 270°: its second lobe goes from 180° back to 225° back.
TEST(Lobes, MoveWithTheThrows) {
  const model::Project project = conversion("2", "0; 0", "0; 270");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(1, out::lobeBehindFirst, 1).value, 135 * kDegree, 1e-9);
  EXPECT_NEAR(assessment(1, out::lobeMoved, 1).value, -45 * kDegree, 1e-9);
  const describe::Finding* finding = findingOf(assessment, 1, "lobes_move");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("lobes of cylinder 2"));
  EXPECT_TRUE(finding->hint.pattern.empty());
  // With other banks the angle is one for a camshaft of each bank alone.
  model::Project vee = project;
  type(vee.engines[1], "cylinder_axis_rad", "0; 75");
  const Assessment banks(vee);
  EXPECT_THAT(told(*findingOf(banks, 1, "lobes_move")), HasSubstr("each bank’s own"));
}

TEST(Crank, InMirrorImageIsNoticed) {
  const model::Project mirrored = conversion("3", "0; 240; 120", "0; 120; 240");
  const Assessment assessment(mirrored);
  const describe::Finding* finding = findingOf(assessment, 1, "crank_is_mirrored");
  ASSERT_NE(finding, nullptr);
  ASSERT_EQ(finding->mends.size(), 1U);
  model::Project mended = mirrored;
  type(mended.engines[1], "throw_ahead_rad", finding->mends.front().entries.front().second);
  const Assessment after(mended);
  EXPECT_EQ(findingOf(after, 1, "crank_is_mirrored"), nullptr);
}

// The same triple, its cylinders entered from the other end with their own numbers: by hand, one
// that fires 1-2-3 fires 3-1-2 where 3 comes first. Nothing moves, nothing is mirrored.
TEST(Crank, IsComparedByTheNumbersOfTheWorkshop) {
  model::Project project = conversion("3", "0; 120; 240", "0; 240; 120");
  for (const auto& [engine, numbers] : {std::pair{0, "1; 2; 3"}, std::pair{1, "3; 2; 1"}}) {
    type(project.engines[static_cast<std::size_t>(engine)], "cylinder_number", numbers);
  }
  type(project.engines[1], "firing_order", "3; 1; 2");
  type(project.engines[0], "firing_order", "1; 2; 3");
  const Assessment assessment(project);
  EXPECT_EQ(findingOf(assessment, 1, "crank_is_mirrored"), nullptr);
  EXPECT_EQ(findingOf(assessment, 1, "lobes_move"), nullptr);
  for (const double moved : degreesOf(assessment, out::lobeMoved, 3, 1)) EXPECT_EQ(moved, 0.0);
  // Two throws changed over are a mirror image by number, and the mend goes by number too.
  type(project.engines[1], "throw_ahead_rad", "0; 120; 240");
  type(project.engines[1], "firing_order", "");
  const Assessment other(project);
  const describe::Finding* finding = findingOf(other, 1, "crank_is_mirrored");
  ASSERT_NE(finding, nullptr);
  type(project.engines[1], "throw_ahead_rad", finding->mends.front().entries.front().second);
  const Assessment mended(project);
  EXPECT_EQ(findingOf(mended, 1, "crank_is_mirrored"), nullptr);
}

TEST(Lobes, AreNotComparedWhereTheNumbersAreOthers) {
  model::Project project = conversion("3", "0; 120; 240", "0; 120; 240");
  type(project.engines[1], "cylinder_number", "4; 5; 6");
  EXPECT_EQ(Assessment(project)(1, out::lobeMoved, 1).state, State::None);
}

TEST(Lobes, WaitForTheDonorsNumberOfCylinders) {
  model::Project project = conversion("3", "0; 120; 240", "0; 120; 240");
  project.engines[0].entries.clear();
  const Assessment assessment(project);
  ASSERT_EQ(assessment(1, out::lobeMoved, 1).state, State::Waits);
  const auto waits = assessment.waitsFor(1, out::lobeMoved, 1);
  EXPECT_TRUE(std::ranges::any_of(
      waits, [](const auto& wait) { return wait.input == &in::cylinderCount && wait.donors; }));
}

// By hand: re-thrown from 360° to 270° the second fires 90° of crank, 45° of cam, later.
TEST(Lobes, AreSaidToComeEarlierOrLater) {
  const model::Project project = assess::sample("tansy-270");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 1, "lobes_move");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("cylinder 2 must come 45.0° later on it"));
}

TEST(Lobes, OfAVeeAreSaidToBeOfEachBank) {
  const model::Project vee = engineOf("2", "0; 0", "0; 75");
  const Assessment assessment(vee);
  const describe::Finding* finding = findingOf(assessment, 0, "lobes_are_of_each_bank");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("turned by 75.0° come as much further ahead"));
  const model::Project back = engineOf("2", "0; 0", "0; -75");
  const Assessment backwards(back);
  finding = findingOf(backwards, 0, "lobes_are_of_each_bank");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("turned back by 75.0° come as much further back"));
  const model::Project inLine = engineOf("2", "0; 270", "0; 0");
  EXPECT_EQ(findingOf(Assessment(inLine), 0, "lobes_are_of_each_bank"), nullptr);
}

TEST(Rotation, AgainstTheDonorsIsNoticedFromEitherEnd) {
  model::Project project = conversion("2", "0; 180", "0; 180");
  for (model::Engine& engine : project.engines) {
    type(engine, "viewed_from", "output_end");
    type(engine, "rotation", "clockwise");
  }
  type(project.engines[1], "rotation", "anticlockwise");
  const Assessment other(project);
  EXPECT_NE(findingOf(other, 1, "rotation_against_donor"), nullptr);
  type(project.engines[1], "viewed_from", "free_end");
  const Assessment same(project);
  EXPECT_EQ(findingOf(same, 1, "rotation_against_donor"), nullptr) << "said from the other end";
}

/// The project with a mend taken.
model::Project mended(model::Project project, const describe::Mend& mend) {
  for (const auto& [input, text] : mend.entries) type(project.engines[0], input->key, text);
  return project;
}

/// An engine with further entries.
model::Project engineWith(model::Project project,
                          const std::vector<std::pair<const char*, const char*>>& entries) {
  for (const auto& [key, text] : entries) type(project.engines[0], key, text);
  return project;
}

TEST(Rotation, AndEndAreAskedForWhereTheMirrorImageIsAnotherCrank) {
  for (const char* key : {"rotation_not_said", "viewed_end_not_said"}) {
    const model::Project triple = engineOf("3", "0; 240; 120");
    const Assessment assessment(triple);
    const describe::Finding* finding = findingOf(assessment, 0, key);
    ASSERT_NE(finding, nullptr) << key;
    EXPECT_EQ(finding->weight, describe::Weight::Objects);
    ASSERT_EQ(finding->mends.size(), 2U);
    for (const describe::Mend& mend : finding->mends) {
      const model::Project after = mended(triple, mend);
      EXPECT_EQ(findingOf(Assessment(after), 0, key), nullptr) << key;
    }
    const model::Project vee = engineOf("2", "0; 0", "0; 75");
    EXPECT_NE(findingOf(Assessment(vee), 0, key), nullptr);
    const model::Project four = engineOf("4", "0; 180; 180; 0");
    EXPECT_EQ(findingOf(Assessment(four), 0, key), nullptr) << "its own mirror image";
    const model::Project flat = engineOf("2", "0; 180", "0; 180");
    EXPECT_EQ(findingOf(Assessment(flat), 0, key), nullptr);
    const model::Project single = engineOf("1", "0");
    EXPECT_EQ(findingOf(Assessment(single), 0, key), nullptr);
    const model::Project none = engineOf("3", "");
    EXPECT_EQ(findingOf(Assessment(none), 0, key), nullptr);
  }
}

TEST(Rotation, IsSaidToBeAssumedWhereNobodySaidIt) {
  model::Project project = engineOf("3", "0; 240; 120");
  EXPECT_EQ(seenOf(Assessment(project).evaluation(), 0).words(),
            "seen from an end that nobody named, sense not given: clockwise assumed");
  project = engineWith(project, {{"viewed_from", "free_end"}, {"rotation", "anticlockwise"}});
  const Assessment assessment(project);
  EXPECT_EQ(seenOf(assessment.evaluation(), 0).words(),
            "seen from the free end, turns anticlockwise");
  EXPECT_EQ(seenOf(assessment.evaluation(), 0).wordsFromBehind(),
            "from the output end, where it turns clockwise");
}

TEST(Lobes, AreNotComparedWithACrankThatTurnsTheOtherWay) {
  model::Project project = conversion("3", "0; 120; 240", "0; 120; 240");
  for (model::Engine& engine : project.engines) type(engine, "viewed_from", "free_end");
  type(project.engines[0], "rotation", "clockwise");
  type(project.engines[1], "rotation", "clockwise");
  EXPECT_EQ(Assessment(project)(1, out::lobeMoved, 1).state, State::Value);
  type(project.engines[1], "rotation", "anticlockwise");
  EXPECT_EQ(Assessment(project)(1, out::lobeMoved, 1).state, State::None);
}

// By hand: 1-3-4-2 re-thrown so that 2, 3 and 4 fire at others than the donor's.
TEST(Lobes, ThatMoveAreAllNamed) {
  model::Project project = conversion("4", "0; 180; 180; 0", "0; 90; 270; 180");
  type(project.engines[0], "firing_order", "1-3-4-2");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 1, "lobes_move");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("the lobes of cylinders 2, 3 and 4 must move on it"));
  EXPECT_THAT(told(*finding), HasSubstr("most of all those of cylinder "));
}

TEST(Positions, OfOneBankDoNotFallOnOneAnother) {
  const auto found = [](const char* positions, const char* axes) {
    const model::Project project =
        engineWith(engineOf("4", "0; 180; 180; 0", axes),
                   {{"cylinder_position_m", positions}, {"bore_m", "68"}});
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, 0, "cylinders_at_one_place");
    return finding == nullptr ? std::string() : told(*finding);
  };
  EXPECT_THAT(found("0; 100; 100; 340", ""), HasSubstr("Cylinders 2 and 3 stand at one place"));
  EXPECT_THAT(found("0; 100; 160; 340", ""), HasSubstr("60.00 mm apart"));
  EXPECT_EQ(found("0; 100; 200; 340", ""), "");
  EXPECT_EQ(found("0; 0; 100; 100", "0; 90; 0; 90"), "") << "of two banks";
}

TEST(Positions, AreCountedFromTheFirstCylinderOn) {
  const auto offered = [](const char* positions) {
    const model::Project project =
        engineWith(engineOf("3", "0; 240; 120"), {{"cylinder_position_m", positions}});
    const Assessment assessment(project);
    const describe::Finding* finding = findingOf(assessment, 0, "positions_run_backwards");
    return finding == nullptr ? std::string() : finding->mends.front().entries.front().second;
  };
  EXPECT_EQ(offered("0; -84; -168"), "0; 84; 168 mm");
  EXPECT_EQ(offered("170; 86; 0"), "0; 84; 170 mm");
  EXPECT_EQ(offered("0; 84; 168"), "");
  EXPECT_EQ(offered("0; -20; 84"), "") << "one stands a little before it";
}

TEST(Throws, AreToBeCountedFromTheFirst) {
  const model::Project project = engineOf("3", "10; 240; 120");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "first_throw_not_zero");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  const model::Project after = mended(project, finding->mends.front());
  EXPECT_EQ(finding->mends.front().entries.front().second, "0; 230; 110 °");
  const Assessment counted(after);
  EXPECT_EQ(findingOf(counted, 0, "first_throw_not_zero"), nullptr);
  EXPECT_EQ(degreesOf(counted, out::topAfterFirst, 3), degreesOf(assessment, out::topAfterFirst, 3))
      << "nothing else moves";
}

// By hand: a radial three fires 1-3-2 every 240°, 1-2-3 at 120, 120 and 480°.
TEST(FiringOrders, ThatAreFarMoreEvenAreOffered) {
  model::Project project = engineOf("3", "0; 0; 0", "0; 120; 240");
  type(project.engines[0], "firing_order", "1-2-3");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "far_more_even_order");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("480.0°"));
  EXPECT_EQ(finding->mends.front().entries.front().second, "1-3-2");
  const model::Project after = mended(project, finding->mends.front());
  const Assessment even(after);
  EXPECT_EQ(findingOf(even, 0, "far_more_even_order"), nullptr);
  EXPECT_NEAR(even(0, out::largestFiringGap).value / kDegree, 240.0, 1e-6);
}

TEST(FiringOrders, WrittenWithoutAnythingBetweenAreTakenApart) {
  model::Project project = engineOf("8", "0; 90; 270; 180; 180; 270; 90; 0");
  type(project.engines[0], "firing_order", "15634278");
  const Assessment assessment(project);
  const describe::Finding* finding = findingOf(assessment, 0, "firing_order_names_each_once");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding) + describe::word(finding->hint, {}), HasSubstr("1-5-6-3-4-2-7-8"));
  ASSERT_FALSE(finding->mends.empty());
  EXPECT_EQ(finding->mends.front().entries.front().second, "1-5-6-3-4-2-7-8");
}

/// An engine, and how its cylinders part evenly.
struct CollectorRow {
  const char* name;
  const char* cylinders;
  const char* throws_;
  const char* axes;
  const char* order;
  double collectors;
  const char* groups;
  const char* intervals;
  double across = 0.0;
};
void PrintTo(const CollectorRow& row, std::ostream* out) { *out << row.name; }

class CollectorsOf : public testing::TestWithParam<CollectorRow> {};

TEST_P(CollectorsOf, AreThoseThatTheTradeJoins) {
  const CollectorRow& row = GetParam();
  model::Project project = engineOf(row.cylinders, row.throws_, row.axes);
  type(project.engines[0], "firing_order", row.order);
  Assessment assessment(project);
  const Tabulated table = assessment.evaluation().tabulated(0, out::collectors);
  ASSERT_EQ(table.state, State::Value);
  bool found = false;
  for (std::size_t i = 0; i < table.rows.size() && !found; ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    if (table.rows["collectors"].numbers[at] != row.collectors) continue;
    found = true;  // the first of that number is the most even one
    EXPECT_EQ(table.rows["cylinders"].words[i], row.groups);
    EXPECT_EQ(table.rows["intervals"].words[i], row.intervals);
    EXPECT_EQ(table.rows["across"].numbers[at], row.across);
  }
  EXPECT_TRUE(found);
}

// Common practice, no published source: a four's 4-2-1 joins 1+4 and 2+3, a six the front and the
// rear three, a cross-plane V8 (1, 3, 5, 7 one bank) pairs across its banks for even pulses.
INSTANTIATE_TEST_SUITE_P(
    Practice, CollectorsOf,
    testing::Values(
        CollectorRow{"Four", "4", "0; 180; 180; 0", "", "1; 3; 4; 2", 2, "1+4 · 2+3", "360-360"},
        CollectorRow{"FourInOne", "4", "0; 180; 180; 0", "", "1; 3; 4; 2", 1, "1+2+3+4",
                     "180-180-180-180"},
        CollectorRow{"Triple", "3", "0; 240; 120", "", "1; 3; 2", 1, "1+2+3", "240-240-240"},
        CollectorRow{"Twin270", "2", "0; 270", "", "1; 2", 1, "1+2", "450-270"},
        CollectorRow{"SixInTwo", "6", "0; 240; 120; 120; 240; 0", "", "1; 5; 3; 6; 2; 4", 2,
                     "1+2+3 · 4+5+6", "240-240-240"},
        CollectorRow{"SixInThree", "6", "0; 240; 120; 120; 240; 0", "", "1; 5; 3; 6; 2; 4", 3,
                     "1+6 · 2+5 · 3+4", "360-360"},
        CollectorRow{"CrossPlaneV8", "8", "0; 0; 90; 90; 270; 270; 180; 180",
                     "0; -90; 0; -90; 0; -90; 0; -90", "1; 8; 4; 3; 6; 5; 7; 2", 2,
                     "1+4+6+7 · 2+3+5+8", "180-180-180-180", 2}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(CollectorsOf, AVeeHaveTheBestOfItsBanksAmongThem) {
  model::Project project =
      engineOf("8", "0; 0; 90; 90; 270; 270; 180; 180", "0; -90; 0; -90; 0; -90; 0; -90");
  type(project.engines[0], "firing_order", "1; 8; 4; 3; 6; 5; 7; 2");
  Assessment assessment(project);
  const Tabulated table = assessment.evaluation().tabulated(0, out::collectors);
  bool banks = false;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const bool both = table.rows["cylinders"].words[i] == "1+3+5+7 · 2+4+6+8";
    banks = banks || both;
    if (!both) continue;
    EXPECT_NEAR(table.rows["least_rad"].numbers[static_cast<Eigen::Index>(i)], 90 * kDegree, 1e-9);
  }
  EXPECT_TRUE(banks);
}

// By hand. The four fires 1-3-4-2 at 0, 180, 360, 540; 1 and 4, 2 and 3 may share a coil.
TEST(Triggers, AreCountedFromTheTopOfTheFirstThrow) {
  model::Project project = engineOf("4", "0; 180; 180; 0");
  type(project.engines[0], "firing_order", "3; 4; 2; 1");
  Assessment assessment(project);
  const Tabulated table = assessment.evaluation().tabulated(0, out::triggers);
  ASSERT_EQ(table.state, State::Value);
  const double cylinders[] = {3, 4, 2, 1};
  const double crank[] = {180, 0, 180, 0};
  const double cam[] = {90, 180, 270, 0};
  const char* shares[] = {"2", "1", "3", "4"};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    EXPECT_EQ(table.rows["cylinder"].numbers[row], cylinders[i]);
    EXPECT_NEAR(table.rows["crank_rad"].numbers[row], crank[i] * kDegree, 1e-9);
    EXPECT_NEAR(table.rows["cam_rad"].numbers[row], cam[i] * kDegree, 1e-9);
    EXPECT_EQ(table.rows["shares"].words[i], shares[i]);
  }
}

TEST(Triggers, OfA270TwinShareNoCoil) {
  const model::Project project = engineOf("2", "0; 270");
  Assessment assessment(project);
  const Tabulated table = assessment.evaluation().tabulated(0, out::triggers);
  EXPECT_EQ(table.rows["shares"].words[0], "");
  EXPECT_NEAR(table.rows["crank_rad"].numbers[1], 90 * kDegree, 1e-9);
  EXPECT_NEAR(table.rows["cam_rad"].numbers[1], 225 * kDegree, 1e-9);
}

TEST(Rhythm, StandsBesideTheDonors) {
  const model::Project project = conversion("2", "0; 0", "0; 270");
  Assessment assessment(project);
  const Tabulated rhythm = assessment.evaluation().tabulated(1, out::rhythm);
  ASSERT_EQ(rhythm.state, State::Value);
  // By hand: |cos(q 225°)| and |cos(q 180°)| at q = ½.
  EXPECT_NEAR(rhythm.rows["content"].numbers[0], 0.3827, 0.0001);
  EXPECT_NEAR(rhythm.rows["donors"].numbers[0], 0.0, 1e-9);
}

// By hand: cos 450° is 0, 2 orders at 5500 rpm are 11 000 a minute; what arithmetic adds is not
// told.
TEST(Rhythm, IsToldWithoutDust) {
  model::Project project = engineOf("2", "0; 270");
  type(project.engines[0], "wanted_speed_rad_s", "5500");
  Assessment assessment(project);
  const Tabulated rhythm = assessment.evaluation().tabulated(0, out::rhythm);
  ASSERT_EQ(rhythm.state, State::Value);
  EXPECT_EQ(rhythm.rows["content"].numbers[3], 0.0);
  for (Eigen::Index i = 0; i < 16; ++i) {
    EXPECT_EQ(rhythm.rows["pulses_a_minute"].numbers[i], 2750.0 * static_cast<double>(i + 1));
  }
}

// Each can be typed, turns, and fires; those of an even order do.
TEST(CommonCranks, AreCranks) {
  for (const Layout& layout : layouts()) {
    const std::string cylinders = std::to_string(layout.cylinders);
    const model::Project project = engineOf(cylinders.c_str(), std::string(layout.throws).c_str(),
                                            std::string(layout.axes).c_str());
    const Assessment assessment(project);
    EXPECT_EQ(assessment(0, out::largestFiringGap).state, State::Value) << layout.name;
    EXPECT_EQ(findingOf(assessment, 0, "firing_order_fits_the_throws"), nullptr) << layout.name;
  }
}

/// The same crank looked at from its other end.
std::string mirrored(std::string_view typed) {
  std::string text;
  const auto read = units::parse(Kind::Angle, typed, units::UnitGroup::metric()[Kind::Angle]);
  for (const double angle : read.values) {
    text += (text.empty() ? "" : "; ") + std::to_string(-angle / kDegree);
  }
  return text;
}

TEST(CrankLayout, IsThatOfTheThrowsFromEitherEnd) {
  for (const Layout& layout : layouts()) {
    const std::string cylinders = std::to_string(layout.cylinders);
    for (const bool other : {false, true}) {
      const std::string throws = other ? mirrored(layout.throws) : std::string(layout.throws);
      const std::string axes = other ? mirrored(layout.axes) : std::string(layout.axes);
      const model::Project project = engineOf(cylinders.c_str(), throws.c_str(), axes.c_str());
      const Assessment assessment(project);
      EXPECT_EQ(layoutName(assessment.evaluation(), 0), layout.name) << throws;
    }
  }
}

TEST(CrankLayout, IsNoCommonOneWhereAThrowPointsElsewhere) {
  const model::Project project = engineOf("3", "0; 240; 122");
  const Assessment assessment(project);
  EXPECT_EQ(assessment(0, out::crankLayout).state, State::Value);
  EXPECT_EQ(out::crankLayout.choices.back().key, "another");
  EXPECT_EQ(assessment(0, out::crankLayout).value,
            static_cast<double>(out::crankLayout.choices.size() - 1));
  EXPECT_EQ(layoutName(assessment.evaluation(), 0), "");
}

TEST(CrankLayout, WaitsForThrowsAndKnowsASingleWithout) {
  const model::Project triple = engineOf("3", "");
  EXPECT_EQ(Assessment(triple)(0, out::crankLayout).state, State::Waits);
  const model::Project single = engineOf("1", "");
  const Assessment assessment(single);
  EXPECT_EQ(layoutName(assessment.evaluation(), 0), "single");
}

// By hand: a throw 1.3° ahead of the first comes to its top 1.3° before it, at 358.7°; its ± is
// that of the two throws, not a turn, and so is that of a throw beside the first.
TEST(Tops, AreCountedWithinATurnAndTheirErrorDoesNotJumpByOne) {
  const model::Project project = engineOf("3", "0; 1.3; 0 ± 0.5");
  const Assessment assessment(project);
  EXPECT_NEAR(assessment(0, out::topAfterFirst, 1).value / kDegree, 358.7, 1e-9);
  EXPECT_NEAR(assessment(0, out::topAfterFirst, 1).worst / kDegree, 1.0, 1e-9);
  EXPECT_NEAR(assessment(0, out::topAfterFirst, 2).value / kDegree, 0.0, 1e-9);
  EXPECT_NEAR(assessment(0, out::topAfterFirst, 2).worst / kDegree, 1.0, 1e-9);
  EXPECT_LT(assessment(0, out::largestFiringGap).worst / kDegree, 2.1);
  EXPECT_LT(assessment(0, out::lobeBehindFirst, 2).worst / kDegree, 0.6);
}

TEST(CommonCranks, AreThoseOfTheNumberOfCylinders) {
  const model::Project project = engineOf("3", "");
  Assessment assessment(project);
  const Tabulated cranks = assessment.evaluation().tabulated(0, out::commonCranks);
  ASSERT_EQ(cranks.state, State::Value);
  ASSERT_GT(cranks.rows.size(), 1U);
  EXPECT_EQ(cranks.rows["cylinders"].numbers.minCoeff(), 3.0);
  EXPECT_EQ(cranks.rows["cylinders"].numbers.maxCoeff(), 3.0);
}

// 1 fires at 0, 2 at 720° − ψ or a turn earlier: intervals of 400 and 320° ask for ψ = 320°, from
// 270° on. What is held still under a ± must not be held still while an entry is solved for.
TEST(FiringIntervals, AreSolvedForByAThrow) {
  const model::Project project = engineOf("2", "0; 270");
  Assessment assessment(project);
  const assess::Solution found = assess::solve(assessment.evaluation(), 0, out::largestFiringGap, 0,
                                               400.0 * kDegree, in::throwAhead, 1);
  ASSERT_TRUE(found.value);
  EXPECT_NEAR(found.reached, 400.0 * kDegree, 1e-6);
  const double turn = 360.0 * kDegree;
  EXPECT_NEAR(std::abs(std::remainder(*found.value, turn)), 40.0 * kDegree, 1e-5);
}

}  // namespace
}  // namespace strokewright::firing
