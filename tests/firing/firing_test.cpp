#include "core/firing/firing.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>
#include <ostream>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace strokewright::firing {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

std::vector<double> radians(const std::vector<double>& degrees) {
  std::vector<double> angles;
  for (const double degree : degrees) angles.push_back(degree * kDegree);
  return angles;
}

std::string said(const Order& order) {
  std::string text;
  for (const int cylinder : order.cylinders) {
    if (!text.empty()) text += "-";
    text += std::to_string(cylinder + 1);
  }
  return text;
}

std::vector<double> degreesBetween(const Order& order, Strokes strokes) {
  std::vector<double> degrees;
  for (const double interval : order.intervals(strokes)) {
    degrees.push_back(std::round(interval / kDegree * 1000.0) / 1000.0);
  }
  return degrees;
}

TEST(Top, OfAThrowThatIsAheadComesEarlier) {
  EXPECT_NEAR(topOf({.ahead = 270 * kDegree}), 90 * kDegree, 1e-12);
  EXPECT_NEAR(topOf({.ahead = 0.0, .axis = 75 * kDegree}), 75 * kDegree, 1e-12);
  EXPECT_NEAR(topOf({.ahead = 30 * kDegree, .axis = 20 * kDegree}), 350 * kDegree, 1e-12);
  EXPECT_NEAR(topOf({.offsetTop = 1.4 * kDegree}), 1.4 * kDegree, 1e-12);
}

/// Which orders of equal intervals a crank allows.
struct EvenRow {
  const char* name;
  std::vector<double> throws_;  // ahead [degrees]
  double interval;              // [degrees]
  std::vector<std::string> orders;
};
void PrintTo(const EvenRow& row, std::ostream* out) { *out << row.name; }

class EvenOrders : public testing::TestWithParam<EvenRow> {};

TEST_P(EvenOrders, AreAllThatTheTextbooksHave) {
  std::vector<double> tops;
  for (const double ahead : GetParam().throws_) tops.push_back(topOf({.ahead = ahead * kDegree}));
  std::vector<std::string> even;
  for (const Order& order : everyOrder(tops, Strokes::Four)) {
    if (!isEven(order, Strokes::Four)) continue;
    even.push_back(said(order));
    EXPECT_NEAR(order.largestGap(Strokes::Four), GetParam().interval * kDegree, 1e-9);
  }
  EXPECT_THAT(even, testing::UnorderedElementsAreArray(GetParam().orders));
}

// Intervals are 720/n (any engine text); orders: Heywood, Internal Combustion Engine Fundamentals,
// for the four (from memory), enumeration by hand for the others, of which 1-2-4-5-3 and
// 1-5-3-6-2-4 are the customary ones.
INSTANTIATE_TEST_SUITE_P(
    Cranks, EvenOrders,
    testing::Values(EvenRow{"Twin360", {0, 0}, 360, {"1-2"}},
                    EvenRow{"Triple", {0, 240, 120}, 240, {"1-3-2"}},
                    EvenRow{"TripleOtherHand", {0, 120, 240}, 240, {"1-2-3"}},
                    EvenRow{"FourFlatPlane", {0, 180, 180, 0}, 180, {"1-3-4-2", "1-2-4-3"}},
                    EvenRow{"Five", {0, 216, 144, 72, 288}, 144, {"1-2-4-5-3"}},
                    EvenRow{"Six",
                            {0, 240, 120, 120, 240, 0},
                            120,
                            {"1-5-3-6-2-4", "1-5-4-6-2-3", "1-2-3-6-5-4", "1-2-4-6-5-3"}}),
    [](const auto& row) { return row.param.name; });

/// A crank in line, and the order that it is given while none is entered.
struct FirstRow {
  const char* name;
  std::vector<double> tops;  // [degrees]
  const char* order;
};
void PrintTo(const FirstRow& row, std::ostream* out) { *out << row.name; }

class FirstOrder : public testing::TestWithParam<FirstRow> {};

TEST_P(FirstOrder, IsTheCustomaryOneOfTheMostEven) {
  const auto tops = radians(GetParam().tops);
  std::vector<double> places(tops.size());
  std::iota(places.begin(), places.end(), 0.0);
  const std::vector<double> axes(tops.size());
  const auto orders = everyOrder(tops, Strokes::Four, {places, axes});
  EXPECT_EQ(said(orders.front()), GetParam().order);
}

// Published firing orders of engines in line, from memory: 1-3-4-2, 1-2-4-5-3 and 1-5-3-6-2-4.
INSTANTIATE_TEST_SUITE_P(Cranks, FirstOrder,
                         testing::Values(FirstRow{"Four", {0, 180, 180, 0}, "1-3-4-2"},
                                         FirstRow{"Five", {0, 144, 216, 288, 72}, "1-2-4-5-3"},
                                         FirstRow{
                                             "Six", {0, 120, 240, 240, 120, 0}, "1-5-3-6-2-4"}),
                         [](const auto& row) { return row.param.name; });

TEST(Orders, OfA270TwinAreNotEven) {
  const auto orders = everyOrder(radians({0, 90}), Strokes::Four);
  ASSERT_EQ(orders.size(), 2U);
  // Common practice: fired a turn later than the nearest top, intervals 450 and 270.
  EXPECT_THAT(degreesBetween(orders[0], Strokes::Four), testing::ElementsAre(450, 270));
  EXPECT_THAT(degreesBetween(orders[1], Strokes::Four), testing::ElementsAre(90, 630));
}

TEST(Orders, OfATwoStrokeAreTheTopsThemselves) {
  const auto orders = everyOrder(radians({0, 180}), Strokes::Two);
  ASSERT_EQ(orders.size(), 1U);
  EXPECT_THAT(degreesBetween(orders[0], Strokes::Two), testing::ElementsAre(180, 180));
}

TEST(Orders, NeedCylinders) {
  EXPECT_THROW(everyOrder({}, Strokes::Four), std::invalid_argument);
  EXPECT_THROW(everyOrder(std::vector<double>(17), Strokes::Four), std::invalid_argument);
}

/// Each cylinder at the first of its two tops that is not before the one ahead of it.
bool canFire(const std::vector<int>& cylinders, const std::vector<double>& tops) {
  double last = 0.0;
  for (const int cylinder : cylinders) {
    double at = tops[static_cast<std::size_t>(cylinder)];
    if (at < last) at += 360 * kDegree;
    if (at < last) return false;
    last = at;
  }
  return true;
}

// Brute force the other way round: every permutation is asked whether it can be.
TEST(Orders, AreThoseThatCanBe) {
  std::mt19937 dice(7);
  std::uniform_int_distribution<int> degrees(0, 35);
  for (int round = 0; round < 20; ++round) {
    std::vector<double> tops = {0.0};
    std::set<int> taken = {0};
    while (tops.size() < 5) {
      const int ten = degrees(dice);
      if (taken.insert(ten).second) tops.push_back(10.0 * ten * kDegree);
    }
    std::set<std::string> enumerated;
    for (const Order& order : everyOrder(tops, Strokes::Four)) enumerated.insert(said(order));
    std::vector<int> cylinders = {0, 1, 2, 3, 4};
    std::set<std::string> possible;
    do {
      if (canFire(cylinders, tops)) possible.insert(said({cylinders, {}}));
    } while (std::next_permutation(cylinders.begin() + 1, cylinders.end()));
    EXPECT_EQ(possible, enumerated);
  }
}

TEST(OrderAs, RefusesWhatTheThrowsCannotDo) {
  const auto tops = radians({0, 180, 180, 0});
  const auto can = [&](std::vector<int> cylinders) {
    for (int& cylinder : cylinders) --cylinder;
    return orderAs(cylinders, tops, Strokes::Four).has_value();
  };
  EXPECT_TRUE(can({1, 3, 4, 2}));
  EXPECT_TRUE(can({1, 2, 4, 3}));
  EXPECT_FALSE(can({1, 3, 2, 3})) << "3 twice, 4 missing";
  EXPECT_FALSE(can({1, 3, 4}));
  EXPECT_FALSE(can({}));
  const auto triple = radians({0, 120, 240});
  EXPECT_FALSE(orderAs(std::vector{0, 2, 1}, triple, Strokes::Two).has_value());
  EXPECT_TRUE(orderAs(std::vector{0, 1, 2}, triple, Strokes::Two).has_value());
}

// Common practice: a 270° twin said to fire 1-2 fires at 450, not at 90.
TEST(OrderAs, IsTheMostEvenOfItsKind) {
  const auto order = orderAs(std::vector{0, 1}, radians({0, 90}), Strokes::Four);
  ASSERT_TRUE(order);
  EXPECT_THAT(degreesBetween(*order, Strokes::Four), testing::ElementsAre(450, 270));
}

TEST(OrderAt, IsTheOrderOfTheTurnsOrNone) {
  const auto at = radians({0, 90});
  const auto order = orderAt(std::vector{0, 1}, at);
  ASSERT_TRUE(order);
  EXPECT_THAT(degreesBetween(*order, Strokes::Four), testing::ElementsAre(90, 630));
  EXPECT_FALSE(orderAt(std::vector{1, 0}, at));
  EXPECT_TRUE(orderAt(std::vector{1, 0}, radians({0, 0}))) << "fired together, either is first";
}

// Definition: half the firing angle, backwards. The 270° twin's second lobe stands 225° back.
TEST(Lobe, StandsBackByHalfTheFiringAngle) {
  EXPECT_NEAR(lobeAngle(0.0), 0.0, 1e-12);
  EXPECT_NEAR(lobeAngle(450 * kDegree), (360 - 225) * kDegree, 1e-12);
  EXPECT_NEAR(lobeAngle(360 * kDegree), 180 * kDegree, 1e-12);
}

TEST(Neighbours, AreCountedInTheirBank) {
  const std::vector<double> places = {0.0, 0.1, 0.2, 0.3};
  const std::vector<double> inLine(4, 0.0);
  EXPECT_EQ(neighboursInSequence({{0, 2, 3, 1}, {}}, {places, inLine}), 2) << "3-4 and 2-1";
  EXPECT_EQ(neighboursInSequence({{0, 1, 2, 3}, {}}, {places, inLine}), 3);
  const std::vector<double> vee = {0.0, 1.0, 0.0, 1.0};
  EXPECT_EQ(neighboursInSequence({{0, 1, 2, 3}, {}}, {places, vee}), 0);
}

/// Events [degrees] and the content of the orders ½, 1, 1½, 2.
struct ContentRow {
  const char* name;
  std::vector<double> at;
  std::vector<double> contents;
};
void PrintTo(const ContentRow& row, std::ostream* out) { *out << row.name; }

class OrderContent : public testing::TestWithParam<ContentRow> {};

// By hand: for two pulses at 0 and α it is |cos(q α/2)|, for n pulses the sum of n pointers; the
// values to two digits were summed in NumPy.
TEST_P(OrderContent, IsTheSumOfPointers) {
  const Order order{.cylinders = {}, .at = radians(GetParam().at)};
  for (std::size_t i = 0; i < GetParam().contents.size(); ++i) {
    const double q = 0.5 * static_cast<double>(i + 1);
    EXPECT_NEAR(content(order, q), GetParam().contents[i], 0.005) << q;
  }
}

INSTANTIATE_TEST_SUITE_P(Rhythms, OrderContent,
                         testing::Values(ContentRow{"Twin360", {0, 360}, {0, 1, 0, 1}},
                                         ContentRow{"Twin180", {0, 180}, {0.71, 0, 0.71, 1}},
                                         ContentRow{"Twin270", {0, 450}, {0.38, 0.71, 0.92, 0}},
                                         ContentRow{"Vee45", {0, 405}, {0.20, 0.92, 0.56, 0.71}},
                                         ContentRow{"Vee60", {0, 420}, {0.26, 0.87, 0.71, 0.50}},
                                         ContentRow{"Vee75", {0, 435}, {0.32, 0.79, 0.83, 0.26}},
                                         ContentRow{"FourCrossPlane",
                                                    {0, 270, 450, 540},
                                                    {0.27, 0, 0.65, 0, 0.65, 0, 0.27, 1}}),
                         [](const auto& row) { return row.param.name; });

// Rounding to a tenth, by its definition.
TEST(AnglesAsRead, LieWithinTheWholeAndNeverReadAsIt) {
  const double degree = std::numbers::pi / 180.0;
  const auto read = [&](double angle, double whole) {
    return asRead(angle * degree, whole * degree) / degree;
  };
  EXPECT_NEAR(read(-1.3, 360.0), 358.7, 1e-9);
  EXPECT_NEAR(read(359.94, 360.0), 359.94, 1e-9);
  EXPECT_EQ(read(359.96, 360.0), 0.0);
  EXPECT_EQ(read(-0.04, 360.0), 0.0);
  EXPECT_NEAR(read(0.04, 360.0), 0.04, 1e-9);
  EXPECT_EQ(read(719.96, 720.0), 0.0);
  EXPECT_NEAR(read(359.96, 720.0), 359.96, 1e-9);
}

}  // namespace
}  // namespace strokewright::firing
