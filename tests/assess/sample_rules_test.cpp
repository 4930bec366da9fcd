#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <ostream>

#include "tests/assess/rules_fixture.h"

namespace strokewright::assess {
namespace {

using describe::Finding;
using testing::HasSubstr;
using testing::UnorderedElementsAreArray;

/// One thing a conversion must be told, and the numbers that decide it.
struct Told {
  const char* rule;
  std::vector<const char*> says = {};
  int cylinder = -1;
};

struct Row {
  const char* name;
  const char* sample;
  int engine;
  std::vector<Told> told;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class HealthySample : public testing::TestWithParam<Row> {};

TEST_P(HealthySample, IsToldWhatMattersAndNothingElse) {
  const Row& row = GetParam();
  const model::Project project = sample(row.sample);
  const Assessment assessment(project);
  std::vector<std::string> expected;
  for (const Told& told : row.told) expected.emplace_back(told.rule);
  EXPECT_THAT(rulesThatSpeak(assessment, row.engine), UnorderedElementsAreArray(expected));
  for (const Told& it : row.told) {
    const auto findings = assessment.findings(row.engine);
    const auto finding = std::find_if(findings.begin(), findings.end(), [&](const Finding& each) {
      return each.key == it.rule && each.cylinder == it.cylinder;
    });
    ASSERT_NE(finding, findings.end()) << it.rule;
    for (const char* number : it.says) EXPECT_THAT(told(*finding), HasSubstr(number));
  }
}

TEST_P(HealthySample, IsNotForbidden) {
  const model::Project project = sample(GetParam().sample);
  EXPECT_FALSE(Assessment(project).forbidden());
}

/// Judging an engine by itself must not need a donor.
TEST_P(HealthySample, SpeaksWithoutADonorToo) {
  model::Project project = sample(GetParam().sample);
  project.referenceDonor = -1;
  const Assessment assessment(project);
  EXPECT_FALSE(assessment.forbidden());
}

INSTANTIATE_TEST_SUITE_P(
    Conversions, HealthySample,
    testing::Values(
        Row{"Tansy617", "tansy-270", 0, {}},
        Row{"Tansy270",
            "tansy-270",
            1,
            {{"head_moves", {"1.50 mm lower", "3.00 mm slacker"}},
             {"lobes_move", {"cylinder 2", "45.0° later"}},
             {"skim", {"−1.35 mm", "127.85 mm"}},
             {"squish_range", {"0.90 mm", "0.75 mm at worst case", "0.80 mm"}},
             {"speed_over_ceiling", {"8500 rpm", "7842 rpm", "1.20 mm", "1.00 mm", "9092 rpm"}},
             {"skirt_out_of_liner", {"14.50 mm", "24.00 mm", "7.35 mm", "25.00 mm"}}}},
        Row{"Burdock636", "burdock-719", 0, {{"places_apart", {"0.17 mm", "0.15 mm"}}}},
        Row{"Burdock719",
            "burdock-719",
            1,
            {{"head_moves", {"0.98 · 0.90 · 0.81 mm higher"}},
             {"places_apart", {"cylinder 3", "0.17 mm", "cylinder 1"}},
             {"speed_over_ceiling", {"9500 rpm", "9142 rpm", "1.00 mm"}},
             {"rod_load", {"1.11", "1.00"}},
             {"squish_range", {"0.90 mm", "at worst case", "0.80 mm"}},
             {"plate_parting_cuts_holes", {"stud 3 (No. 6 on the drawing)", "stud 6"}},
             {"skirt_out_of_liner", {"12.00 mm", "21.00 mm", "5.55", "17.50 mm"}}}},
        Row{"BurdockShortRod",
            "burdock-719",
            2,
            {{"places_apart"},
             {"deck_spread", {"0.17 mm", "0.05 mm"}},
             {"squish_range", {"0.87 mm", "at worst case", "0.80 mm"}, 0},
             {"squish_range", {"0.95 mm", "at worst case", "0.80 mm"}, 1},
             {"compression_ratio_spread", {"0.26", "0.20"}},
             {"speed_over_ceiling", {"9133 rpm"}},
             {"skirt_out_of_liner", {"11.97 · 12.05 · 12.14 mm"}},
             {"wanted_not_met", {"0.87 · 0.95 · 1.04 mm", "0.03 · −0.05 · −0.14 mm", "no plate"}}}},
        Row{"Teasel116",
            "teasel-125",
            0,
            {{"proven_over_ceiling", {"12 000 rpm", "11 906 rpm", "common practice"}}}},
        Row{"Teasel125",
            "teasel-125",
            1,
            {{"head_moves", {"1.40 mm higher"}},
             {"class_leaves_no_rebore", {"124.82 ml", "0.18 ml", "± 0.05 ml", "125.98 ml"}},
             {"port_timing_against_donor",
              {"196.7°", "143.1°", "189.6°", "130.0°", "1.71 mm", "2.62 mm", "in the head"}}}},
        Row{"Culvert864", "culvert-1040", 0, {{"case_material_assumed"}}},
        Row{"Culvert1040",
            "culvert-1040",
            1,
            {{"case_material_assumed", {"0.95 mm", "0.66 mm"}},
             {"head_moves", {"0.12 mm higher", "0.24 mm more"}},
             {"gasket_over_squish", {"1.30 mm", "0.95 mm", "0.30 mm", "105.00 mm", "106.50 mm"}},
             {"bush_wall_solid_bronze", {"1.50 mm"}},
             {"wanted_not_met", {"0.95 mm", "1.00 mm", "−0.05 mm", "1.25 mm"}},
             {"skirt_out_of_liner", {"20.00 mm", "58.00 mm"}}}}),
    [](const auto& row) { return std::string(row.param.name); });

/// Every entry at its typical number: whole and consistent, but for a liner that ends early.
TEST(TheTypicalEngine, IsObjectedToForItsShortLinerAlone) {
  model::Project project;
  model::Engine& engine = project.engines.emplace_back();
  engine.part = model::Part::Target;
  for (const describe::Input* input : catalogue().inputs()) {
    // Of two alternatives the first is enough.
    if (input->key == "stroke_m" || input->key == "deck_height_m" ||
        input->key == "liner_length_m") {
      continue;
    }
    // No single number is an order, nor tells several cylinders apart.
    if (input->key == "firing_order" || input->key == "cylinder_number") continue;
    type(engine, input->key, describe::typedText(*input, input->typical));
  }
  const Assessment assessment(project);
  EXPECT_FALSE(assessment.forbidden());
  for (const Finding& finding : assessment.findings(0)) {
    if (finding.weight == describe::Weight::Remarks) continue;
    EXPECT_EQ(finding.key, "skirt_out_of_liner") << told(finding);
  }
}

TEST(AnEmptyEngine, IsNotSpokenOf) {
  model::Project project;
  project.engines.emplace_back();
  EXPECT_TRUE(Assessment(project).findings(0).empty());
}

}  // namespace
}  // namespace strokewright::assess
