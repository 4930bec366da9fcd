#include "core/survey/readings.h"

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>
#include <vector>

#include "core/describe/entry.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"

namespace strokewright::survey {
namespace {

struct Critical {
  std::size_t n;
  double value;
  friend void PrintTo(const Critical& row, std::ostream* out) { *out << row.n; }
};

class GrubbsTest : public testing::TestWithParam<Critical> {};

TEST_P(GrubbsTest, HasThePublishedCriticalValue) {
  EXPECT_NEAR(grubbsCritical(GetParam().n, 0.05), GetParam().value, 0.0011);
}

// ISO 5725-2:1994, table 5, one outlying observation, 5 %; from memory.
INSTANTIATE_TEST_SUITE_P(Iso5725, GrubbsTest,
                         testing::Values(Critical{3, 1.155}, Critical{4, 1.481}, Critical{5, 1.715},
                                         Critical{6, 1.887}, Critical{7, 2.020}, Critical{8, 2.126},
                                         Critical{9, 2.215}, Critical{10, 2.290},
                                         Critical{15, 2.549}, Critical{20, 2.709}));

TEST(Readings, AreSpreadFromTheLeastToTheLargest) {
  EXPECT_DOUBLE_EQ(spreadOf(std::vector{3.0, 1.0, 2.5}), 2.0);
  EXPECT_EQ(spreadOf(std::vector{3.0}), 0.0);
}

/// The piston rocks, so the scatter over the crown is no ± of its middle; the dial gauge's is.
TEST(Readings, WhoseDifferencesCancelCarryTheUsualInstrumentsLimit) {
  namespace in = model::in;
  const auto limit = [](const char* text) {
    return describe::limitOf(
        in::measuredDeckClearance,
        model::entryFrom(in::measuredDeckClearance, text, units::UnitGroup::metric()));
  };
  EXPECT_EQ(limit("0.15 | 0.19 | 0.14 | 0.18"), in::measuredDeckClearance.plusMinus);
  EXPECT_DOUBLE_EQ(limit("0.15 | 0.19 | 0.14 | 0.18 ± 0.02"), 0.02e-3);
  EXPECT_EQ(limit("0.15"), 0.0) << "read once: nothing was said of it";
}

TEST(Readings, HaveAnOutlierWhereOneDoesNotBelong) {
  EXPECT_EQ(outlierOf(std::vector{18.7, 18.8, 18.7, 18.8, 19.9}, 0.2), 4U);
  EXPECT_EQ(outlierOf(std::vector{98.12, 97.12, 98.13, 98.11}, 0.03), 1U);
}

/// Readings in steps: where all but one are equal the test alone always finds that one.
TEST(Readings, HaveNoneThatIsNoFartherFromTheOthersThanTheInstrumentErrs) {
  EXPECT_EQ(outlierOf(std::vector{98.12, 98.12, 98.13}, 0.0), 2U);
  EXPECT_EQ(outlierOf(std::vector{98.12, 98.12, 98.13}, 0.03), std::nullopt);
  EXPECT_EQ(outlierOf(std::vector{0.20, 0.20, 0.20, 0.21}, 0.01), std::nullopt) << "one division";
  EXPECT_EQ(outlierOf(std::vector{0.20, 0.20, 0.20, 0.22}, 0.01), 3U);
}

TEST(Readings, HaveNoneWhereTheyBelongTogether) {
  EXPECT_EQ(outlierOf(std::vector{18.7, 18.8, 18.6, 18.75}, 0.0), std::nullopt);
  EXPECT_EQ(outlierOf(std::vector{18.7, 19.7}, 0.0), std::nullopt) << "two do not say which one";
  EXPECT_EQ(outlierOf(std::vector{18.7, 18.7, 18.7}, 0.0), std::nullopt);
}

struct Student {
  std::size_t n;
  double t;
  friend void PrintTo(const Student& row, std::ostream* out) { *out << row.n; }
};

class MeanOfReadings : public testing::TestWithParam<Student> {};

/// Half of n readings 1 above, half 1 below 10: their standard deviation is √(n/(n − 1)).
std::vector<double> upAndDown(std::size_t n) {
  std::vector<double> readings;
  for (std::size_t i = 0; i < n; ++i) readings.push_back(i % 2 == 0 ? 11.0 : 9.0);
  return readings;
}

TEST_P(MeanOfReadings, ScattersByStudentsFactor) {
  const auto n = static_cast<double>(GetParam().n);
  const double deviationOfMean = std::sqrt(n / (n - 1.0)) / std::sqrt(n);
  EXPECT_NEAR(describe::scatterOfMean(upAndDown(GetParam().n)) / deviationOfMean, GetParam().t,
              0.005);
}

// JCGM 100:2008, table G.2, 95 %, n − 1 degrees of freedom; from memory.
INSTANTIATE_TEST_SUITE_P(Jcgm100, MeanOfReadings,
                         testing::Values(Student{2, 12.71}, Student{4, 3.18}, Student{6, 2.57},
                                         Student{8, 2.36}, Student{10, 2.26}, Student{20, 2.09}));

TEST(LimitOfAnEntry, JoinsInstrumentAndScatterAsTheRootOfTheirSquares) {
  describe::Entry entry;
  entry.values = {10.0};
  entry.readings = {upAndDown(4)};
  entry.plusMinus = 0.5;
  const double scatter = describe::scatterOfMean(entry.readings[0]);
  EXPECT_DOUBLE_EQ(entry.limit(), std::hypot(0.5, scatter));
  entry.plusMinus.reset();
  EXPECT_DOUBLE_EQ(entry.limit(), scatter);
  EXPECT_TRUE(entry.carriesLimit());
  entry.readings.clear();
  EXPECT_EQ(entry.limit(), 0.0);
}

/// 24.0, 24.1 and 23.9: s = 0.1, and t = 4.303 of two degrees of freedom (JCGM 100:2008, table G.2;
/// from memory) makes their mean good to 4.303 · 0.1/√3 = 0.248.
TEST(LimitOfAnEntry, GrowsWithTheInstrumentsWithoutAJump) {
  describe::Entry entry;
  entry.values = {24.0};
  entry.readings = {{24.0, 24.1, 23.9}};
  double before = entry.limit();
  EXPECT_NEAR(before, 0.248, 0.001);
  for (double instrument = 0.0; instrument < 0.3; instrument += 0.0001) {
    entry.plusMinus = instrument;
    EXPECT_GE(entry.limit(), before) << instrument;
    EXPECT_LT(entry.limit(), before + 0.0002) << instrument;
    before = entry.limit();
  }
}

}  // namespace
}  // namespace strokewright::survey
