#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using testing::HasSubstr;
using testing::Not;

Ran solved(const std::string& want, const std::string& by, std::vector<std::string> more = {}) {
  std::vector<std::string> call = {"solve", sample("burdock-719"), "--want", want, "--by", by};
  call.insert(call.end(), more.begin(), more.end());
  return ran(call);
}

TEST(Solve, SaysWhatTheEntryWouldHaveToBe) {
  const Ran it = solved("compression_ratio=10.5", "chamber_volume_m3");
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("Burdock 719 · target"));
  EXPECT_THAT(it.out, HasSubstr("instead of 18.70\u00a0ml"));
  EXPECT_THAT(it.out, HasSubstr("the compression ratio is 10.50 instead of 11.20."));
}

TEST(Solve, FindsANumberThatDoesIt) {
  const std::string out = solved("compression_ratio=10.5", "chamber_volume_m3").out;
  const std::size_t from = out.find("With ") + 5;
  const std::string volume = out.substr(from, out.find(" instead") - from);
  const nlohmann::json written = nlohmann::json::parse(
      ran({"results", sample("burdock-719"), "--json", "--set", "chamber_volume_m3=" + volume})
          .out);
  const double ratio = written["engines"][1]["results"]["compression_ratio"]["value"][0];
  EXPECT_NEAR(ratio, 10.5, 0.005);  // the volume is said to 0.01 ml
}

TEST(Solve, AnswersForEachCylinderWhereTheyDiffer) {
  const Ran it = solved("squish_gap_m=1.0", "spacer_m");
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("Cylinder 1: With 1.13\u00a0mm"));
  EXPECT_THAT(it.out, HasSubstr("Cylinder 2: With 1.05\u00a0mm"));
  EXPECT_THAT(it.out, HasSubstr("Cylinder 3: With 0.96\u00a0mm"));
}

TEST(Solve, FillsAnEntryThatIsEmpty) {
  const Ran it = solved("displacement_m3=720", "bore_m", {"--set", "bore_m="});
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("With 68.04\u00a0mm for the bore, the displacement is 720.00"));
}

TEST(Solve, ActsOnTheNamedEngine) {
  EXPECT_THAT(solved("displacement_m3=640", "bore_m", {"--engine", "Burdock 636"}).out,
              HasSubstr("Burdock 636 · donor"));
}

TEST(Solve, SaysTheNearestWhereNothingDoesIt) {
  const Ran it = solved("displacement_m3=-5", "bore_m");
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("Nothing within the limits of the bore makes the displacement"));
  EXPECT_THAT(it.out, HasSubstr("the nearest is 0.50\u00a0mm"));
}

TEST(Solve, SaysHowFarItLookedWhereTheEntryHasNoLimit) {
  const Ran it = solved("true_stroke_m=60", "cylinder_offset_m",
                        {"--set", "cylinder_offset_side=towards_thrust_side"});
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("Nothing from 0.00\u00a0mm to 300.00\u00a0mm for the cylinder "
                                "offset makes the true stroke 60.000\u00a0mm"));
}

TEST(Solve, SaysWhatEveryOtherValueOfTheEntryWaitsFor) {
  const Ran it = solved("true_stroke_m=67", "cylinder_offset_m");
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("With any other cylinder offset the true stroke has no value: "
                                "waits for: cylinder_offset_side"));
  const Ran said = solved("true_stroke_m=67", "cylinder_offset_m",
                          {"--set", "cylinder_offset_side=towards_thrust_side"});
  EXPECT_EQ(said.status, 0);
  EXPECT_THAT(said.out, HasSubstr("the true stroke is 67.000"));
}

TEST(Solve, SaysWhereTheResultDoesNotDependOnTheEntry) {
  const Ran it = solved("squish_gap_m=0.9", "piston_mass_kg");
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("does not depend on the piston mass"));
}

TEST(Solve, SaysThatTheSpacerFollowsWhileNoneIsEntered) {
  const Ran it = solved("deck_clearance_m=0.25", "wanted_squish_m", {"--set", "spacer_m="});
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("No spacer is entered: the one to make follows, to 1.13\u00a0mm"));
  EXPECT_THAT(solved("squish_gap_m=0.9", "rod_length_m").out, Not(HasSubstr("No spacer")));
}

TEST(Solve, SaysWhereItIsAsWantedAlready) {
  const Ran it = solved("squish_gap_m=0.9", "head_gasket_m", {"--set", "spacer_m="});
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("is 0.90\u00a0mm already, with 0.75\u00a0mm for the head gasket"));
}

TEST(Solve, SaysWhereTheResultStandsStill) {
  const Ran it = solved("squish_gap_m=0.8", "rod_length_m", {"--set", "spacer_m="});
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("The squish gap stays at 0.90\u00a0mm, whatever the rod length"));
  EXPECT_THAT(it.out, HasSubstr("takes up what it changes"));
}

TEST(Solve, SaysWhatTheAnswerWouldHaveSaidAgainstIt) {
  const Ran it = solved("compression_ratio=13.5", "spacer_m", {"--engine", "Burdock 719"});
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("forbids then"));
  EXPECT_THAT(it.out, HasSubstr("The squish gap is"));
  const nlohmann::json answers = nlohmann::json::parse(
      solved("compression_ratio=13.5", "spacer_m", {"--json"}).out)["answers"];
  for (std::size_t i = 0; i < answers.size(); ++i) {
    bool touches = false;
    for (const nlohmann::json& finding : answers[i]["then"]) {
      EXPECT_TRUE(!finding.contains("cylinder") || finding["cylinder"] == i + 1);
      touches = touches || finding["weight"] == "forbids";
    }
    EXPECT_TRUE(touches) << i;
  }
}

TEST(Solve, RepeatsNothingThatIsSaidAlready) {
  const std::string out = solved("displacement_m3=719", "bore_m").out;
  EXPECT_THAT(out, HasSubstr("the displacement is 719.00"));
  EXPECT_THAT(out, Not(HasSubstr("9500")));  // the speed wanted is over the ceiling now as well
}

TEST(Solve, TellsMachinesTheSame) {
  const Ran it =
      solved("deck_clearance_m=0.25", "wanted_squish_m", {"--json", "--set", "spacer_m="});
  const nlohmann::json written = nlohmann::json::parse(it.out);
  EXPECT_EQ(written["result"], "deck_clearance_m");
  EXPECT_EQ(written["by_unit"], "m");
  EXPECT_NEAR(written["answers"][0]["value"].get<double>(), 1e-3, 1e-12);
  EXPECT_NEAR(written["answers"][0]["reached"].get<double>(), 0.25e-3, 1e-12);
  EXPECT_THAT(written["answers"][0]["follows"].get<std::string>(), HasSubstr("No spacer"));
  EXPECT_FALSE(written["answers"][0].contains("cylinder"));
}

TEST(Solve, TellsMachinesOfEachCylinder) {
  const nlohmann::json written =
      nlohmann::json::parse(solved("squish_gap_m=0.9", "spacer_m", {"--json"}).out);
  ASSERT_EQ(written["answers"].size(), 3U);
  EXPECT_EQ(written["answers"][2]["cylinder"], 3);
  EXPECT_FALSE(written["answers"][2].contains("follows"));
}

TEST(Solve, TellsMachinesNothingWhereNothingWasFound) {
  const Ran it = solved("squish_gap_m=0.9", "base_gasket_m", {"--json", "--set", "head_gasket_m="});
  EXPECT_EQ(it.status, 1);
  const nlohmann::json answer = nlohmann::json::parse(it.out)["answers"][0];
  EXPECT_TRUE(answer["value"].is_null());
  EXPECT_TRUE(answer["reached"].is_null());
}

TEST(Solve, SaysWhatTheResultWaitsFor) {
  const Ran it = solved("squish_gap_m=0.9", "base_gasket_m", {"--set", "head_gasket_m="});
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("waits for: head_gasket_m"));
}

}  // namespace
}  // namespace strokewright::app
