#include "core/plate/outline.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>

#include "core/describe/refusal.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/plate/dxf.h"
#include "core/plate/results.h"
#include "core/plate/taper.h"
#include "core/survey/results.h"
#include "core/units/style.h"
#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::plate {
namespace {

using assess::Assessment;
using assess::findingOf;
using assess::sample;
using assess::type;
using bench::mm;

constexpr int kTarget = 1;

Hole bore(double along) { return {"bore", along, 0.0, 72.0 * mm, true}; }
Hole stud(double along, double across) { return {"stud", along, across, 10.0 * mm}; }

TEST(PlateOutline, LiesAboutTheMiddleOfTheBores) {
  const Outline outline = outlineAround({bore(0.0), bore(84.0 * mm)}, 180.0 * mm, 100.0 * mm);
  EXPECT_DOUBLE_EQ(outline.along, 42.0 * mm);
  EXPECT_DOUBLE_EQ(outline.across, 0.0);
  EXPECT_DOUBLE_EQ(outline.left(), -48.0 * mm);
  EXPECT_DOUBLE_EQ(outline.upper(), 50.0 * mm);
  EXPECT_DOUBLE_EQ(outline.corner(), kCorner);
}

TEST(PlateOutline, MovesWhereAHoleWouldRunOut) {
  const Outline outline = outlineAround({bore(0.0), stud(0.0, 60.0 * mm)}, 100.0 * mm, 110.0 * mm);
  EXPECT_DOUBLE_EQ(outline.along, 0.0);
  EXPECT_NEAR(outline.across, (65.0 - 36.0) / 2.0 * mm, 1e-12);
}

TEST(PlateOutline, OfANarrowPlateHasSmallerCorners) {
  EXPECT_DOUBLE_EQ(outlineAround({bore(0.0)}, 100.0 * mm, 12.0 * mm).corner(), 3.0 * mm);
}

TEST(PlateOutline, WithoutASizeIsRefused) {
  EXPECT_THROW(outlineAround({bore(0.0)}, 0.0, 0.1), describe::Refusal);
}

// A triangle of sides 3, 4 and 5.
TEST(PlateOutline, MeasuresWallsFromEdgeToEdge) {
  EXPECT_NEAR(wallBetween(stud(0.0, 0.0), stud(30.0 * mm, 40.0 * mm)), 40.0 * mm, 1e-12);
  const Outline outline =
      outlineAround({bore(0.0), stud(-42.0 * mm, -42.0 * mm)}, 100.0 * mm, 100.0 * mm);
  EXPECT_NEAR(wallToEdge(outline, outline.holes[1]), 3.0 * mm, 1e-12);
  const Wall least = leastWall(outline, outline.holes[1]);
  EXPECT_EQ(least.beside, "edge");
  EXPECT_NEAR(least.thickness, 3.0 * mm, 1e-12);
}

/// The triple with its plate entered.
class PlateOfTheTriple : public testing::Test {
 protected:
  PlateOfTheTriple() : project_(sample("burdock-719")) {
    target().lists.clear();
    type(target(), "plates_in_stack", "one for all");
    type(target(), "cylinder_pitch_m", "84");
    type(target(), "plate_bore_m", "72");
    type(target(), "plate_length_m", "280");
    type(target(), "plate_width_m", "110");
  }
  model::Engine& target() { return project_.engines[kTarget]; }
  void drill(std::string_view use, std::string_view along, std::string_view across) {
    describe::Entries& item = target().lists[&model::list::plateHoles].emplace_back();
    const auto put = [&](const describe::Input& column, std::string_view text) {
      item[&column] = model::entryFrom(column, text, units::UnitGroup::metric());
    };
    put(model::list::holeFor, use);
    put(model::list::holeAlong, along);
    put(model::list::holeAcross, across);
    put(model::list::holeDiameter, "10");
  }
  const describe::Finding* finding(Assessment& assessment) {
    return findingOf(assessment, kTarget, "plate_holes_fit");
  }

  model::Project project_;
};

TEST_F(PlateOfTheTriple, IsATableOfBoresAndHoles) {
  drill("stud", "42", "-45");
  drill("stud", "42", "45");
  drill("dowel", "-46", "0");
  Assessment assessment(project_);
  const auto told = assessment.evaluation().tabulated(kTarget, out::plateOutline);
  ASSERT_EQ(told.state, describe::State::Value);
  ASSERT_EQ(told.rows.size(), 7U);
  EXPECT_EQ(told.rows["feature"].words[3], "bore 3");
  EXPECT_EQ(told.rows["feature"].words[5], "stud 2");
  EXPECT_EQ(told.rows["feature"].words[6], "dowel 1");
  EXPECT_NEAR(told.rows["along_m"].numbers[3], 168.0 * mm, 1e-12);
  const Outline again = outlineFrom(told.rows);
  EXPECT_EQ(again.holes.size(), 6U);
  EXPECT_NEAR(again.left(), (84.0 - 140.0) * mm, 1e-12);
  EXPECT_TRUE(again.holes[2].isBore);
  EXPECT_FALSE(again.holes[3].isBore);
  EXPECT_EQ(finding(assessment), nullptr);
}

// By hand: 0.145 mm less from axis to axis, and the plate goes on 56 mm beyond the last one.
TEST_F(PlateOfTheTriple, IsForbiddenWhereItTapersToNothing) {
  type(target(), "spacer_m", "0.30; 0.155; 0.01");
  const Assessment assessment(project_);
  const describe::Finding* finding =
      findingOf(assessment, kTarget, "one_plate_of_several_thicknesses");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, describe::Weight::Forbids);
  EXPECT_THAT(assess::told(*finding), testing::HasSubstr("comes to −0.09 mm at its thin end"));
}

// By definition: two banks lie in two planes, and no plate lies under both.
TEST(PlateOfAV, IsThatOfTheFirstBank) {
  model::Project project = sample("tansy-270");
  model::Engine& target = project.engines[kTarget];
  for (const auto& [key, text] :
       {std::pair{"firing_order", ""}, std::pair{"throw_ahead_rad", "0; 0"},
        std::pair{"cylinder_axis_rad", "0; 90"}, std::pair{"cylinder_pitch_m", "24"},
        std::pair{"spacer_m", "1.2; 1.5"}, std::pair{"plate_bore_m", "80"},
        std::pair{"plate_length_m", "130"}, std::pair{"plate_width_m", "120"}}) {
    type(target, key, text);
  }
  Assessment assessment(project);
  const auto told = assessment.evaluation().tabulated(kTarget, out::plateOutline);
  ASSERT_EQ(told.state, describe::State::Value);
  EXPECT_EQ(told.rows.size(), 2U) << "the plate and one bore";
  for (const char* key :
       {"plate_holes_fit", "one_plate_of_several_thicknesses", "seats_out_of_parallel"}) {
    EXPECT_EQ(findingOf(assessment, kTarget, key), nullptr) << key;
  }
  EXPECT_EQ(assessment(kTarget, out::flatSpacer).state, describe::State::None);
  EXPECT_EQ(assessment(kTarget, out::taperAlong).state, describe::State::None);
  EXPECT_EQ(assessment(kTarget, out::seatSlopeAlong).state, describe::State::None);
}

// As above; cylinder 2, of the other bank, is the one that gets a plate.
TEST(PlateOfAV, IsThatOfTheFirstBankThatHasOne) {
  model::Project project = sample("tansy-270");
  for (const auto& [key, text] :
       {std::pair{"firing_order", ""}, std::pair{"throw_ahead_rad", "0; 0"},
        std::pair{"cylinder_axis_rad", "0; 90"}, std::pair{"cylinder_pitch_m", "24"},
        std::pair{"spacer_m", "-0.2; 1.5"}, std::pair{"plate_bore_m", "80"},
        std::pair{"plate_length_m", "130"}, std::pair{"plate_width_m", "120"}}) {
    type(project.engines[kTarget], key, text);
  }
  for (const char* pieces : {"one for all", "one for each"}) {
    type(project.engines[kTarget], "plates_in_stack", pieces);
    const Assessment assessment(project);
    const Outline outline = outlineFrom(
        describe::Evaluation(assessment.evaluation()).tabulated(kTarget, out::plateOutline).rows);
    ASSERT_EQ(outline.holes.size(), 1U) << pieces;
    EXPECT_EQ(outline.holes[0].name, "bore 2");
    EXPECT_NEAR(outline.along, 24.0 * mm, 1e-12) << "from the axis of cylinder 1";
  }
}

TEST_F(PlateOfTheTriple, WaitsForWhatIsNotEntered) {
  type(target(), "plate_width_m", "");
  Assessment assessment(project_);
  const auto told = assessment.evaluation().tabulated(kTarget, out::plateOutline);
  EXPECT_EQ(told.state, describe::State::Waits);
  ASSERT_EQ(assessment.waitsFor(told.notes).size(), 1U);
  EXPECT_EQ(assessment.waitsFor(told.notes)[0].input->key, "plate_width_m");
  EXPECT_EQ(finding(assessment), nullptr);
}

TEST_F(PlateOfTheTriple, IsForbiddenWithAHoleInABore) {
  drill("stud", "0", "38");
  Assessment assessment(project_);
  ASSERT_NE(finding(assessment), nullptr);
  EXPECT_EQ(finding(assessment)->weight, describe::Weight::Forbids);
  EXPECT_EQ(assess::told(*finding(assessment)),
            "Spacer plate: stud 1 (No. 4 on the drawing) runs 3.00 mm into bore 1. | ");
}

TEST_F(PlateOfTheTriple, IsForbiddenWithABoreUnderThatOfTheCylinder) {
  const auto said = [&](const char* bore) -> std::optional<describe::Finding> {
    type(target(), "plate_bore_m", bore);
    const Assessment assessment(project_);
    const describe::Finding* found = findingOf(assessment, kTarget, "plate_bore_overhangs");
    return found == nullptr ? std::nullopt : std::optional(*found);
  };
  const double bore = Assessment(project_).evaluation().inputValue(kTarget, model::in::bore);
  EXPECT_EQ(said(describe::typedText(model::in::plateBore, bore).c_str()), std::nullopt);
  const auto under = said(describe::typedText(model::in::plateBore, bore - 1.0 * mm).c_str());
  ASSERT_TRUE(under);
  EXPECT_EQ(under->weight, describe::Weight::Forbids);
  EXPECT_THAT(assess::told(*under), testing::HasSubstr("0.50 mm all round"));
  EXPECT_TRUE(under->mends.empty());
  const auto radius = said(describe::typedText(model::in::plateBore, 0.51 * bore).c_str());
  ASSERT_TRUE(radius);
  EXPECT_EQ(radius->mends.size(), 1U);
}

TEST_F(PlateOfTheTriple, IsForbiddenWithAHoleOffThePlate) {
  type(target(), "plate_width_m", "80");
  drill("stud", "42", "-45");
  drill("stud", "42", "45");
  Assessment assessment(project_);
  ASSERT_NE(finding(assessment), nullptr);
  EXPECT_EQ(finding(assessment)->weight, describe::Weight::Forbids);
  EXPECT_EQ(assess::told(*finding(assessment)),
            "Spacer plate: stud 1 (No. 4 on the drawing) runs 10.00 mm into the edge. | ");
}

TEST_F(PlateOfTheTriple, IsObjectedToWithAThinWall) {
  drill("stud", "0", "43");
  Assessment assessment(project_);
  ASSERT_NE(finding(assessment), nullptr);
  EXPECT_EQ(finding(assessment)->weight, describe::Weight::Objects);
  EXPECT_EQ(assess::told(*finding(assessment)),
            "Spacer plate: stud 1 (No. 4 on the drawing) leaves a wall of 2.00 mm to bore 1. Are "
            "place and diameter "
            "right? | ");
}

// Plane geometry: bores at 0, 84 and 168 mm part at 42 and 126 mm.
TEST_F(PlateOfTheTriple, PartsHalfWayBetweenTheBores) {
  type(target(), "plates_in_stack", "one for each");
  drill("stud", "42", "-45");
  Assessment assessment(project_);
  const auto told = assessment.evaluation().tabulated(kTarget, out::plateOutline);
  EXPECT_EQ(told.rows.size(), 7U);
  const Outline again = outlineFrom(told.rows);
  ASSERT_EQ(again.partings.size(), 2U);
  EXPECT_NEAR(again.partings[0], 42.0 * mm, 1e-12);
  EXPECT_NEAR(again.partings[1], 126.0 * mm, 1e-12);
  EXPECT_EQ(again.holes.size(), 4U);
  EXPECT_NEAR(leastWall(again, again.holes[0]).thickness, 6.0 * mm, 1e-12) << "bore to parting";
  EXPECT_NEAR(leastWall(again, again.holes[3]).thickness, -5.0 * mm, 1e-12) << "stud to parting";
  EXPECT_EQ(leastWall(again, again.holes[3]).beside, "parting");
  EXPECT_EQ(finding(assessment), nullptr) << "a stud may be halved";
  const describe::Finding* halved = findingOf(assessment, kTarget, "plate_parting_cuts_holes");
  ASSERT_NE(halved, nullptr);
  EXPECT_EQ(halved->weight, describe::Weight::Objects);
  EXPECT_THAT(assess::told(*halved), testing::HasSubstr("stud 1 (No. 4 on the drawing) is halved"));
}

// Plane geometry as above; the plate of 280 mm begins 56 mm before the first axis.
TEST_F(PlateOfTheTriple, OfACylinderThatNeedsNoneIsLeftOut) {
  type(target(), "plates_in_stack", "one for each");
  type(target(), "spacer_m", "1.03; 0; 0.86");
  drill("stud", "42", "-45");
  drill("oil", "84", "-45");
  const auto outline = [this] {
    Assessment assessment(project_);
    return outlineFrom(assessment.evaluation().tabulated(kTarget, out::plateOutline).rows);
  };
  const Outline outer = outline();
  std::vector<std::string> names;
  for (const Hole& hole : outer.holes) names.push_back(hole.name);
  EXPECT_THAT(names, testing::ElementsAre("bore 1", "bore 3", "stud 1"));
  EXPECT_TRUE(outer.partings.empty());
  ASSERT_EQ(outer.gaps.size(), 1U);
  EXPECT_EQ(outer.gaps[0].name, "cylinder 2: no plate");
  ASSERT_EQ(outer.stretches().size(), 2U);
  EXPECT_NEAR(outer.stretches()[0].from, -56.0 * mm, 1e-12);
  EXPECT_NEAR(outer.stretches()[0].to, 42.0 * mm, 1e-12);
  EXPECT_NEAR(outer.stretches()[1].from, 126.0 * mm, 1e-12);
  EXPECT_NEAR(leastWall(outer, outer.holes[0]).thickness, 6.0 * mm, 1e-12);
  EXPECT_EQ(leastWall(outer, outer.holes[0]).beside, "end");
  const std::string text = dxf(outer, {});
  EXPECT_NE(text.find("LINE\n8\nOUTLINE\n10\n42\n20\n-55\n11\n42\n21\n55\n"), std::string::npos)
      << text;
  EXPECT_NE(text.find("\n1\ncylinder 2: no plate\n"), std::string::npos);
  EXPECT_EQ(text.find("LINE\n8\nPARTINGS\n"), std::string::npos);
  const Assessment assessment(project_);
  const describe::Finding* cut = findingOf(assessment, kTarget, "plate_parting_cuts_holes");
  ASSERT_NE(cut, nullptr);
  EXPECT_THAT(assess::told(*cut),
              testing::HasSubstr("stud 1 (No. 3 on the drawing) is cut by the end of a plate, the "
                                 "cylinder beside it has none"));

  type(target(), "spacer_m", "0; 0.95; 0.86");
  const Outline last = outline();
  ASSERT_EQ(last.stretches().size(), 1U);
  EXPECT_NEAR(last.stretches()[0].from, 42.0 * mm, 1e-12);
  EXPECT_THAT(last.partings, testing::ElementsAre(testing::DoubleNear(126.0 * mm, 1e-12)));
}

// Plane geometry: plates of 84 mm about bores at 0, 84 and 168 mm take 2 · 84 + 84 mm.
TEST_F(PlateOfTheTriple, OfTheLengthOfOneIsNoLongerThanThat) {
  type(target(), "plates_in_stack", "one for each");
  drill("stud", "42", "-45");
  drill("oil", "150", "-45");
  struct Case {
    const char* length;
    const char* spacers;
    double from;  // [mm]
    double to;    // [mm]
    std::vector<std::string> holes;
  };
  for (const auto& [length, spacers, from, to, holes] :
       {Case{"84", "0; 0.95; 0", 42.0, 126.0, {"bore 2", "stud 1"}},
        Case{"83", "0; 0.95; 0", 42.5, 125.5, {"bore 2", "stud 1"}},
        Case{"85", "0; 0.95; 0", 42.0, 126.0, {"bore 2", "stud 1"}},
        Case{"60", "1.03; 0.95; 0", 54.0, 114.0, {"bore 1", "bore 2", "stud 1"}}}) {
    type(target(), "plate_length_m", length);
    type(target(), "spacer_m", spacers);
    Assessment assessment(project_);
    const Outline outline =
        outlineFrom(assessment.evaluation().tabulated(kTarget, out::plateOutline).rows);
    ASSERT_EQ(outline.stretches().size(), 1U) << length;
    EXPECT_NEAR(outline.stretches()[0].from, from * mm, 1e-12) << length;
    EXPECT_NEAR(outline.stretches()[0].to, to * mm, 1e-12) << length;
    EXPECT_TRUE(outline.partings.empty()) << length;
    for (const Gap& gap : outline.gaps) EXPECT_GT(gap.to, gap.from + Outline::kSame) << length;
    std::vector<std::string> names;
    for (const Hole& hole : outline.holes) names.push_back(hole.name);
    EXPECT_EQ(names, holes) << length;
    EXPECT_NE(dxf(outline, {}).find("\n1\n" + units::exact(from) + "\n"), std::string::npos)
        << "its end from the axis of cylinder 1, " << length;
    EXPECT_NE(findingOf(assessment, kTarget, "plate_length_is_of_all"), nullptr) << length;
  }
  type(target(), "plate_length_m", "84");
  const Assessment assessment(project_);
  const describe::Finding* ofOne = findingOf(assessment, kTarget, "plate_length_is_of_all");
  ASSERT_NE(ofOne, nullptr);
  EXPECT_THAT(assess::told(*ofOne),
              testing::HasSubstr("over all cylinders, from end to end: 252.00 mm"));
  ASSERT_EQ(ofOne->mends.size(), 1U);

  type(target(), "plate_length_m", "60");
  type(target(), "spacer_m", "1.03; 0; 0");
  Assessment nothing(project_);
  const auto told = nothing.evaluation().tabulated(kTarget, out::plateOutline);
  ASSERT_EQ(told.state, describe::State::Refused);
  EXPECT_DOUBLE_EQ(nothing.evaluation().refusal(told.notes).limit, (2.0 * 84.0 + 72.0) * mm);
}

// The first dimension lines are 6 and 14 mm from the edge at 42 mm.
TEST_F(PlateOfTheTriple, NamesACylinderWithoutAPlateClearOfItsDimensions) {
  type(target(), "plates_in_stack", "one for each");
  const auto drawn = [this](const char* spacers, const char* length) {
    type(target(), "spacer_m", spacers);
    type(target(), "plate_length_m", length);
    Assessment assessment(project_);
    return dxf(outlineFrom(assessment.evaluation().tabulated(kTarget, out::plateOutline).rows), {});
  };
  const std::string first = drawn("0; 0.95; 0.86", "280");
  EXPECT_NE(first.find("TEXT\n8\nTEXT\n10\n-14.75\n20\n0\n40\n3\n1\ncylinder 1: no plate\n"),
            std::string::npos)
      << first;
  EXPECT_NE(first.find("10\n225.5\n20\n55\n40\n3\n1\nR 5\n"), std::string::npos);
  const std::string last = drawn("1.03; 0.95; 0", "220");
  EXPECT_NE(last.find("\n1\ncylinder 3: no plate\n"), std::string::npos);
  EXPECT_NE(last.find("10\n-26\n20\n-59.5\n40\n3\n1\nR 5\n"), std::string::npos)
      << "at the end that is rounded";
  const std::string broken = drawn("0; 0.95; 0.86", "220");
  EXPECT_NE(broken.find("\n1\ncylinder 1:\n"), std::string::npos);
  EXPECT_NE(broken.find("\n1\nno plate\n"), std::string::npos);
  const std::string narrow = drawn("1.03; 0.95; 0", "120");
  EXPECT_NE(narrow.find("\n1\ncylinder 3: no plate\n72\n1\n11\n135\n21\n0\n73\n2\n50\n90\n"),
            std::string::npos)
      << narrow;
}

TEST_F(PlateOfTheTriple, IsObjectedToWithAThinWallToAParting) {
  type(target(), "plates_in_stack", "one for each");
  drill("stud", "48", "-45");
  Assessment assessment(project_);
  ASSERT_NE(finding(assessment), nullptr);
  EXPECT_THAT(assess::told(*finding(assessment)),
              testing::HasSubstr("a wall of 1.00 mm to the next plate"));
  EXPECT_EQ(findingOf(assessment, kTarget, "plate_parting_cuts_holes"), nullptr);
}

// By hand: 1.03, 0.95 and 0.87 at 0, 84 and 168 mm fall by 0.08 in 84; the plate of 280 mm ends
// 56 mm beyond the outer axes.
TEST_F(PlateOfTheTriple, ThatIsTaperedSaysHowThickItsEndsAre) {
  type(target(), "spacer_m", "1.03; 0.95; 0.87");
  Assessment assessment(project_);
  const auto told = assessment.evaluation().tabulated(kTarget, out::taperedPlateEnds);
  ASSERT_EQ(told.state, describe::State::Value);
  ASSERT_EQ(told.rows.size(), 2U);
  EXPECT_EQ(told.rows["cylinder"].numbers[0], 1.0);
  EXPECT_EQ(told.rows["cylinder"].numbers[1], 3.0);
  EXPECT_NEAR(told.rows["thickness_m"].numbers[0], (1.03 + 0.08 * 56.0 / 84.0) * mm, 1e-9);
  EXPECT_NEAR(told.rows["thickness_m"].numbers[1], (0.87 - 0.08 * 56.0 / 84.0) * mm, 1e-9);
  EXPECT_NEAR(told.rows["slope"].numbers[0], -0.08 / 84.0, 1e-9);
  for (const char* none : {"1.03; 0.87; 0.95", "0.95"}) {
    type(target(), "spacer_m", none);
    Assessment other(project_);
    EXPECT_EQ(other.evaluation().tabulated(kTarget, out::taperedPlateEnds).state,
              describe::State::None)
        << none;
  }
}

TEST_F(PlateOfTheTriple, IsNotDrawnWhereMetalIsToComeOff) {
  type(target(), "spacer_m", "-0.20");
  Assessment off(project_);
  const auto told = off.evaluation().tabulated(kTarget, out::plateOutline);
  ASSERT_EQ(told.state, describe::State::Refused);
  EXPECT_DOUBLE_EQ(off.evaluation().refusal(told.notes).value, 0.2 * mm);
  type(target(), "spacer_m", "0");
  Assessment none(project_);
  EXPECT_EQ(none.evaluation().tabulated(kTarget, out::plateOutline).state, describe::State::None);
  type(target(), "spacer_m", "-0.20; 0.10; 0.10");
  Assessment some(project_);
  EXPECT_EQ(some.evaluation().tabulated(kTarget, out::plateOutline).state, describe::State::Value);
}

// The number takes a circle of 3 mm, which a stud in a corner, a hole in the middle and one between
// two others leave room for.
TEST(PlateOutline, NumbersItsHolesOnTheMetal) {
  Outline outline = outlineAround({bore(0.0), bore(84.0 * mm), stud(-42.0 * mm, -42.0 * mm),
                                   stud(0.0, 47.0 * mm), stud(42.0 * mm, 42.0 * mm)},
                                  194.0 * mm, 110.0 * mm);
  outline.partings = {42.0 * mm};
  for (std::size_t i = 2; i < outline.holes.size(); ++i) {
    const Spot spot = spotForNumber(outline, outline.holes[i], 1.5 * mm);
    const Hole taken{"number", spot.along, spot.across, 3.0 * mm};
    EXPECT_GT(leastWall(outline, taken).thickness, 0.0) << i;
  }
}

TEST_F(PlateOfTheTriple, IsForbiddenWithAPassageOnAParting) {
  type(target(), "plates_in_stack", "one for each");
  drill("oil", "42", "-45");
  Assessment assessment(project_);
  ASSERT_NE(finding(assessment), nullptr);
  EXPECT_EQ(assess::told(*finding(assessment)),
            "Spacer plate: oil 1 (No. 4 on the drawing) runs 5.00 mm into the next plate. | ");
}

TEST_F(PlateOfTheTriple, InOnePieceIsOfOneThickness) {
  type(target(), "plates_in_stack", "one for all");
  type(target(), "spacer_m", "1.03; 0.95; 0.86");
  const Assessment unlike(project_);
  const describe::Finding* said = findingOf(unlike, kTarget, "one_plate_of_several_thicknesses");
  ASSERT_NE(said, nullptr);
  EXPECT_EQ(said->weight, describe::Weight::Remarks) << "1.03, 0.95 and 0.86 taper within 0.01";
  type(target(), "spacer_m", "1.03; 0.86; 0.95");
  const Assessment crooked(project_);
  said = findingOf(crooked, kTarget, "one_plate_of_several_thicknesses");
  ASSERT_NE(said, nullptr);
  EXPECT_EQ(said->weight, describe::Weight::Objects);
  EXPECT_EQ(said->mends.size(), 2U);
  type(target(), "plates_in_stack", "one for each");
  const Assessment each(project_);
  EXPECT_EQ(findingOf(each, kTarget, "one_plate_of_several_thicknesses"), nullptr);
}

TEST(PlateDrawing, HasABarToCheckItBy) {
  Outline outline = outlineAround({bore(0.0)}, 110.0 * mm, 80.0 * mm);
  outline.partings = {20.0 * mm};
  const std::string text = dxf(outline, {});
  EXPECT_NE(text.find("LINE\n8\nCHECK_BAR\n10\n-55\n20\n-50\n11\n45\n21\n-50\n"), std::string::npos)
      << text;
  EXPECT_NE(text.find("LINE\n8\nPARTINGS\n10\n20\n20\n-40\n11\n20\n21\n40\n"), std::string::npos)
      << text;
}

TEST(PlateDrawing, IsTiedToTheAxisOfTheFirstCylinder) {
  const std::string text =
      dxf(outlineAround({bore(0.0), bore(84.0 * mm)}, 194.0 * mm, 90.0 * mm), {});
  EXPECT_NE(text.find("LINE\n8\nDIMENSIONS\n10\n-55\n20\n51\n11\n0\n21\n51\n"), std::string::npos)
      << "from the edge to the axis along";
  EXPECT_NE(text.find("LINE\n8\nDIMENSIONS\n10\n-61\n20\n-45\n11\n-61\n21\n0\n"), std::string::npos)
      << "and across";
  for (const char* said : {"\n1\n194\n", "\n1\n90\n", "\n1\n55\n", "\n1\n45\n", "\n1\nR 5\n"}) {
    EXPECT_NE(text.find(said), std::string::npos) << said;
  }
}

TEST(PlateDrawing, SaysByItselfWhichHoleIsWhichAndWhere) {
  Outline outline = outlineAround({{"bore 3", 0.0, 0.0, 72.0 * mm, true},
                                   {"bore 2", 84.0 * mm, 0.0, 72.0 * mm, true},
                                   {"oil 1", 20.0 * mm, -42.5 * mm, 6.0 * mm}},
                                  194.0 * mm, 110.0 * mm);
  outline.partings = {42.0 * mm};
  const std::string text = dxf(outline, {});
  for (const char* said :
       {"\n1\n1 bore 3\n", "\n1\n2 bore 2\n", "\n1\n3\n", "\n1\nthrust side\n",
        "\n1\n3 oil 1: along 20, across -42.5, %%c 6\n", "\n1\nparting: along 42\n",
        "TEXT\n8\nDIMENSIONS\n10\n43.5\n20\n56.5\n40\n3\n1\n42\n"}) {
    EXPECT_NE(text.find(said), std::string::npos) << said;
  }
}

TEST(PlateDrawing, IsInMillimetresWithAPointAndInAscii) {
  const Outline outline = outlineAround({bore(0.0), stud(-42.5 * mm, 0.0)}, 110.0 * mm, 80.0 * mm);
  const std::vector<std::string> remarks{"Größe Ø 72\u00A0mm ± 0,01", "€"};
  const std::string text = dxf(outline, remarks);
  EXPECT_NE(text.find("$INSUNITS\n70\n4\n"), std::string::npos);
  EXPECT_NE(text.find("CIRCLE\n8\nBORES\n10\n0\n20\n0\n40\n36\n"), std::string::npos) << text;
  EXPECT_NE(text.find("CIRCLE\n8\nHOLES\n10\n-42.5\n20\n0\n40\n5\n"), std::string::npos) << text;
  EXPECT_NE(text.find("Gr\\U+00F6\\U+00DFe %%c 72 mm %%p 0,01\n"), std::string::npos);
  EXPECT_NE(text.find("\\U+20AC\n"), std::string::npos);
  for (const char letter : text) EXPECT_LT(static_cast<unsigned char>(letter), 0x80U);
}

}  // namespace
}  // namespace strokewright::plate
