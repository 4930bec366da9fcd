#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using testing::HasSubstr;

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
  const Ran it = solved("squish_gap_m=0.9", "spacer_m");
  EXPECT_EQ(it.status, 0);
  EXPECT_THAT(it.out, HasSubstr("Cylinder 1: With 1.03\u00a0mm"));
  EXPECT_THAT(it.out, HasSubstr("Cylinder 2: With 0.95\u00a0mm"));
  EXPECT_THAT(it.out, HasSubstr("Cylinder 3: With 0.86\u00a0mm"));
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

TEST(Solve, SaysWhereTheResultDoesNotDependOnTheEntry) {
  const Ran it = solved("squish_gap_m=0.9", "piston_mass_kg");
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("does not depend on the piston mass"));
}

TEST(Solve, SaysWhatTheResultWaitsFor) {
  const Ran it = solved("squish_gap_m=0.9", "base_gasket_m", {"--set", "head_gasket_m="});
  EXPECT_EQ(it.status, 1);
  EXPECT_THAT(it.out, HasSubstr("waits for: head_gasket_m"));
}

}  // namespace
}  // namespace strokewright::app
