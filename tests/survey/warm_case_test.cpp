#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/inputs.h"
#include "core/running/running.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::survey {
namespace {

namespace in = model::in;
using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::told;
using assess::type;
using testing::HasSubstr;

constexpr int kDonor = 0;

/// The triple's donor: seat 98.12, 98.20 and 98.29 and barrel 79.25, each with its ±.
class WarmCase : public testing::Test {
 protected:
  WarmCase() : project_(sample("burdock-719")) {
    for (const char* key : {"seat_height_m", "barrel_height_m"}) setOrigin(key, measured());
    type(donor(), "case_expansion_per_k", "");
    type(donor(), "case_material", "aluminium");
    type(donor(), "deck_height_m", "");
  }

  static describe::Origin measured() { return describe::Origin::Measured; }
  model::Engine& donor() { return project_.engines[kDonor]; }
  void setOrigin(std::string_view key, describe::Origin origin) {
    const describe::Input& input = *assess::catalogue().findInput(key);
    describe::Entry entry = donor()[input];
    entry.origin = origin;
    donor().set(input, entry);
  }
  const describe::Finding* said(const char* warmer) {
    type(donor(), "case_measured_warmer_k", warmer);
    assessment_.emplace(project_);
    return findingOf(*assessment_, kDonor, "case_measured_warm");
  }

  model::Project project_;
  std::optional<Assessment> assessment_;
};

// CRC Handbook of Chemistry and Physics, linear expansion of pure metals near 25 °C: aluminium
// 23.1e-6/K; from memory. Machinery's Handbook, linear expansion by 1 °F: cast iron 0.00000618 of
// the length; from memory. A micrometre over 100 mm and 10 K is what a case's own alloy leaves
// open.
TEST_F(WarmCase, GrowsAsTheHandbooksSay) {
  struct Row {
    const char* material;
    double byHandbook;  // [1/K]
  };
  for (const Row& row : {Row{"aluminium", 23.1e-6}, {"iron", 0.00000618 * 1.8}}) {
    SCOPED_TRACE(row.material);
    type(donor(), "case_material", row.material);
    const Assessment assessment(project_);
    const double expansion = assessment.evaluation().inputValue(kDonor, in::caseExpansion);
    EXPECT_NEAR(running::growth({0.1, expansion, 10.0}), row.byHandbook * 0.1 * 10.0, 1e-6);
  }
}

TEST_F(WarmCase, SaysNothingAtTheReferenceTemperatureNorWhereItIsNotFelt) {
  EXPECT_EQ(said(""), nullptr);
  EXPECT_EQ(said("0"), nullptr);
  EXPECT_EQ(said("1"), nullptr) << "0.004 mm";
  EXPECT_NE(said("3"), nullptr) << "0.012 mm";
}

// By hand: 177.37 mm of aluminium, 12 K: 23e-6 gives 0.04895, 11.5e-6 the half.
TEST_F(WarmCase, TellsWhatAColdAndAWarmInstrumentRead) {
  const describe::Finding* finding = said("12");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("measured 12 K warmer than 20 °C: its 177.37 mm read 0.049 "
                                        "mm too long to an instrument at 20 °C, 0.024 mm to one"));
  EXPECT_EQ(finding->weight, describe::Weight::Remarks) << "within 0.05";
  finding = said("-15");
  EXPECT_THAT(told(*finding), HasSubstr("15 K colder than 20 °C: its 177.37 mm read 0.061 mm too "
                                        "short to an instrument at 20 °C, 0.031 mm to one"));
  EXPECT_EQ(finding->weight, describe::Weight::Objects);
}

TEST_F(WarmCase, IsTakenTo20DegreesByEachMendInOneStep) {
  const std::vector<describe::Mend> mends = said("12")->mends;
  ASSERT_EQ(mends.size(), 2U);
  const double growth[] = {23e-6 * 12.0, 11.5e-6 * 12.0};
  for (std::size_t i = 0; i < mends.size(); ++i) {
    model::Project mended = project_;
    for (const auto& [input, text] : mends[i].entries) {
      type(mended.engines[kDonor], input->key, text);
    }
    const Assessment after(mended);
    EXPECT_EQ(mended.engines[kDonor][in::seatHeight].plusMinus, 0.03e-3);
    for (const auto* height : {&in::seatHeight, &in::barrelHeight}) {
      for (int cylinder = 0; cylinder < 3; ++cylinder) {
        const double before = assessment_->evaluation().inputValue(kDonor, *height, cylinder);
        EXPECT_NEAR(after.evaluation().inputValue(kDonor, *height, cylinder),
                    before * (1.0 - growth[i]), 0.5e-6);
      }
    }
    EXPECT_EQ(after.evaluation().inputValue(kDonor, in::caseMeasuredWarmer), 0.0);
    EXPECT_EQ(findingOf(after, kDonor, "case_measured_warm"), nullptr);
  }
}

TEST_F(WarmCase, TakesEachReadingByItself) {
  type(donor(), "seat_height_m", "98.12 | 98.14; 98.20; 98.29 ± 0.03", measured());
  const describe::Mend mend = said("10")->mends[0];
  EXPECT_EQ(mend.entries[0].second, "98.097 | 98.117; 98.177; 98.267 ± 0.03 mm");
}

TEST_F(WarmCase, LeavesHeightsThatNobodyMeasuredWarm) {
  setOrigin("barrel_height_m", describe::Origin::MakersBook);
  const describe::Finding* finding = said("12");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("its 98.12 mm read"));
  EXPECT_EQ(finding->mends[0].entries.size(), 2U) << "seats and the warming";
  setOrigin("seat_height_m", describe::Origin::MakersBook);
  EXPECT_EQ(said("12"), nullptr);
}

// Iron grows a little less than the steel of the instrument.
TEST_F(WarmCase, OfIronReadsTooShortToASteelInstrumentAsWarm) {
  type(donor(), "case_material", "iron");
  const describe::Finding* finding = said("40");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("−0.004 mm to one of steel"));
}

}  // namespace
}  // namespace strokewright::survey
