#include "core/sheet/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <ostream>
#include <string>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::sheet {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;

BenchSheet sheetFor(const model::Project& project, SheetKind kind,
                    const SheetOptions& options = {}) {
  const Assessment assessment(project);
  return benchSheetOf(assessment, {}, options, kind);
}

const Asked& askedOf(const BenchSheet& sheet, std::string_view label) {
  return *std::ranges::find(sheet.asked, label, &Asked::label);
}

double sumOf(const std::vector<Link>& links) {
  return std::accumulate(links.begin(), links.end(), 0.0,
                         [](double sum, const Link& link) { return sum + link.value; });
}

TEST(SheetKinds, AreFoundByTheirKeys) {
  for (const SheetName& name : sheetNames()) {
    EXPECT_EQ(sheetKindOf(name.key), name.kind);
    EXPECT_EQ(nameOf(name.kind), name.name);
  }
  EXPECT_EQ(sheetKindOf("Survey"), std::nullopt);
}

TEST(SurveySheet, AsksAsTheInputsAreDescribedAndPrintsWhatIsEntered) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Survey);
  const Asked& seat = sheet.asked.front();
  EXPECT_EQ(seat.label, "Crank axis to barrel seat");
  EXPECT_EQ(seat.unit, "mm");
  EXPECT_EQ(seat.instrument, "height gauge on mandrel, ± 0.03 mm");
  EXPECT_EQ(seat.places, (std::vector<Box>{{"1", "98.12"}, {"2", "98.20"}, {"3", "98.29"}}));
  EXPECT_EQ(askedOf(sheet, "Deck clearance, measured").readings, 4);
  EXPECT_EQ(askedOf(sheet, "Deck clearance, measured").places[0].drawn, "0.15");
  EXPECT_EQ(askedOf(sheet, "Main housing bores").places.size(), 4U);
}

TEST(SurveySheet, AsksForAsManyReadingsAsItsWordsDo) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Survey);
  const Asked& barrel = askedOf(sheet, "Barrel seat to deck");
  EXPECT_THAT(barrel.how, HasSubstr("at four places"));
  EXPECT_EQ(barrel.readings, 4);
  const Asked& bores = askedOf(sheet, "Main housing bores");
  EXPECT_THAT(bores.how, HasSubstr("at two depths, in two directions"));
  EXPECT_EQ(bores.readings, 4);
}

TEST(SurveySheet, AsksForADeckThatIsMeasuredDirectInsteadOfSeatAndBarrel) {
  const BenchSheet sheet = sheetFor(sample("culvert-1040"), SheetKind::Survey);
  EXPECT_EQ(sheet.asked.front().label, "Deck height, direct");
  EXPECT_EQ(sheet.asked.front().places.front().drawn, "344.62");
  for (const Asked& asked : sheet.asked) EXPECT_THAT(asked.label, Not(HasSubstr("barrel seat")));
}

TEST(SurveySheet, OfASingleAsksForNoPitch) {
  const BenchSheet sheet = sheetFor(sample("teasel-125"), SheetKind::Survey);
  EXPECT_EQ(std::ranges::find(sheet.asked, "Cylinder pitch", &Asked::label), sheet.asked.end());
  EXPECT_EQ(sheet.asked.front().places.front().label, "");
}

TEST(BuretteSheet, HasStartEndAndFilledForEachFilling) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Burette);
  const Asked& chamber = sheet.asked.front();
  EXPECT_EQ(chamber.columns, (std::vector<std::string>{"start", "end", "filled"}));
  EXPECT_EQ(chamber.readings, 3);
  EXPECT_EQ(chamber.places.size(), 3U);
  EXPECT_NE(sheet.cautions.find("does not burn"), std::string::npos);
}

TEST(BuretteSheet, AsksForTheCrankcaseOfATwoStrokeAlone) {
  constexpr std::string_view kCrankcase = "Crankcase volume at bottom dead centre";
  const auto asks = [&](const char* name) {
    const BenchSheet sheet = sheetFor(sample(name), SheetKind::Burette);
    return std::ranges::find(sheet.asked, kCrankcase, &Asked::label) != sheet.asked.end();
  };
  EXPECT_TRUE(asks("teasel-125"));
  EXPECT_FALSE(asks("burdock-719"));
}

TEST(BuretteSheet, DoesNotSayHowReadingsAreTyped) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Burette);
  for (const Asked& asked : sheet.asked) EXPECT_THAT(asked.how, Not(HasSubstr("|"))) << asked.label;
  EXPECT_THAT(askedOf(sheet, "Whole volume through the plug hole").how,
              EndsWith("filled to the top thread."));
}

TEST(BuretteSheet, SpeaksOfPortsOrInjectorsWhereThereAreNoValvesOrPlugs) {
  const auto words = [](const char* name) {
    const BenchSheet sheet = sheetFor(sample(name), SheetKind::Burette);
    std::string all = sheet.cautions;
    for (const Asked& asked : sheet.asked) all += asked.label + asked.how;
    return all;
  };
  EXPECT_THAT(words("teasel-125"), Not(HasSubstr("valve")));
  EXPECT_THAT(words("teasel-125"), HasSubstr("ports covered"));
  EXPECT_THAT(words("culvert-1040"), Not(HasSubstr("plug")));
  EXPECT_THAT(words("culvert-1040"), HasSubstr("injector hole uppermost"));
  EXPECT_THAT(sheetFor(sample("culvert-1040"), SheetKind::Stack).cautions,
              HasSubstr(". Glow plugs or injectors out before turning"));
  const BenchSheet survey = sheetFor(sample("teasel-125"), SheetKind::Survey);
  EXPECT_THAT(survey.cautions, AllOf(Not(HasSubstr("valve")), HasSubstr("asbestos")));
}

TEST(BuretteSheet, ShowsNoNumberAsNoughtThatIsNot) {
  const BenchSheet sheet = sheetFor(sample("teasel-125"), SheetKind::Burette);
  const std::vector<std::string>& crankcase = sheet.grids.front().rows.back();
  // V_d / V² · ±, by hand: 0.12482 · 2e-3 / 0.392² = 0.00162; of a tenth of a ml 0.0000812.
  EXPECT_EQ(crankcase[6], "0.002");
  EXPECT_EQ(crankcase[7], "0.0001");
}

TEST(BuretteSheet, PrintsMeanAndSpreadOfWhatIsEntered) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "chamber_volume_m3", "18.6 | 18.7 | 18.8 ± 0.2");
  const BenchSheet sheet = sheetFor(project, SheetKind::Burette);
  ASSERT_EQ(sheet.grids.size(), 1U);
  ASSERT_GE(sheet.grids[0].rows.size(), 1U);
  const std::vector<std::string>& row = sheet.grids[0].rows[0];
  EXPECT_EQ(row[2], "3");
  EXPECT_EQ(row[3], "18.70");
  EXPECT_EQ(row[4], "0.20");
}

struct SampleRow {
  const char* name;
  int target;
  friend void PrintTo(const SampleRow& row, std::ostream* out) { *out << row.name; }
};

class StackSheetOf : public testing::TestWithParam<SampleRow> {};

TEST_P(StackSheetOf, ClosesItsChainInTheSquishGap) {
  model::Project project = sample(GetParam().name);
  const auto target = static_cast<std::size_t>(project.target());
  for (const auto& [key, text] :
       {std::pair{"head_gasket_taper_m", "0.20"}, std::pair{"head_recess_m", "0.15"},
        std::pair{"crown_rise_m", "0.10"}, std::pair{"second_base_gasket_m", "0.25"}}) {
    type(project.engines[target], key, text);
  }
  const Assessment assessment(project);
  const BenchSheet sheet = benchSheetOf(assessment, {}, {}, SheetKind::Stack);
  ASSERT_TRUE(sheet.chain.has_value());
  EXPECT_NEAR(sumOf(sheet.chain->ofCase) - sumOf(sheet.chain->ofCrank), sheet.chain->gap.value,
              1e-12);
  double least = 1.0;
  for (int i = 0; i < assessment.evaluation().cylinders(sheet.engine); ++i) {
    least = std::min(least, assessment(sheet.engine, out::squishGap, i).value);
  }
  EXPECT_DOUBLE_EQ(sheet.chain->gap.value, least);
}

TEST_P(StackSheetOf, HasTheNumbersOfTheAssessmentCylinderByCylinder) {
  const model::Project project = sample(GetParam().name);
  const Assessment assessment(project);
  const BenchSheet sheet = benchSheetOf(assessment, {}, {}, SheetKind::Stack);
  const units::Style style;
  const Grid& grid = sheet.grids.front();
  for (std::size_t i = 0; i < grid.rows.size(); ++i) {
    const auto cylinder = static_cast<int>(i);
    const describe::Cell& ratio = assessment(sheet.engine, out::compressionRatio, cylinder);
    EXPECT_EQ(grid.rows[i].back(), style.number(units::Kind::Ratio, ratio.value) + " ± " +
                                       style.number(units::Kind::Ratio, ratio.likely));
    EXPECT_EQ(grid.rows[i][4],
              style.number(units::Kind::FineLength,
                           assessment(sheet.engine, out::deckClearance, cylinder).value));
  }
}

INSTANTIATE_TEST_SUITE_P(Samples, StackSheetOf,
                         testing::Values(SampleRow{"burdock-719", 1}, SampleRow{"culvert-1040", 1},
                                         SampleRow{"tansy-270", 1}, SampleRow{"teasel-125", 1}),
                         [](const auto& row) {
                           std::string name = row.param.name;
                           std::erase(name, '-');
                           return name;
                         });

TEST(StackSheet, NamesTheUnitOfEachLinkWhereLengthsAndThicknessesAreReadInTwo) {
  const model::Project project = sample("burdock-719");
  const Assessment assessment(project);
  units::Style inches;
  inches.group = units::UnitGroup::inchPound();
  const BenchSheet sheet = benchSheetOf(assessment, inches, {}, SheetKind::Stack);
  ASSERT_TRUE(sheet.chain.has_value());
  std::vector<Link> links = sheet.chain->ofCase;
  links.insert(links.end(), sheet.chain->ofCrank.begin(), sheet.chain->ofCrank.end());
  links.push_back(sheet.chain->gap);
  for (const Link& link : links) {
    const bool inInches = std::abs(link.value) > 0.02;
    EXPECT_TRUE(link.text.ends_with(inInches ? "\u00A0in" : "\u00A0thou")) << link.text;
  }
  EXPECT_FALSE(sheetFor(project, SheetKind::Stack).chain->gap.text.ends_with("mm"));
}

TEST(StackSheet, ShowsAThirdDecimalWhereItIsNotNought) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "spacer_m", "0.795; 0.9; 0.90");
  const BenchSheet sheet = sheetFor(project, SheetKind::Stack);
  const auto column =
      static_cast<std::size_t>(std::ranges::find(sheet.grids[0].columns, "Counted with, mm") -
                               sheet.grids[0].columns.begin());
  EXPECT_EQ(sheet.grids[0].rows[0][column], "0.795");
}

TEST(StackSheet, CallsWhatIsTakenOffASkim) {
  const BenchSheet sheet = sheetFor(sample("tansy-270"), SheetKind::Stack);
  const auto skim = std::ranges::find(sheet.chain->ofCase, "skim", &Link::name);
  ASSERT_NE(skim, sheet.chain->ofCase.end());
  EXPECT_EQ(skim->text, "1.350 ± 0.01");
  EXPECT_LT(skim->value, 0.0);
}

TEST(StackSheet, ShowsAPlateAsItIsMade) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Stack);
  const auto plates = std::ranges::find_if(
      sheet.grids, [](const Grid& it) { return it.heading.starts_with("Plates compared"); });
  ASSERT_NE(plates, sheet.grids.end());
  EXPECT_EQ(plates->columns[1], "flat: t, mm");
  EXPECT_EQ(plates->rows[0][1], "0.95") << "of 0.945";
}

TEST(StackSheet, SaysWhatTheGapWaitsFor) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "rod_length_m", "");
  const BenchSheet sheet = sheetFor(project, SheetKind::Stack);
  EXPECT_FALSE(sheet.chain.has_value());
  EXPECT_NE(sheet.whyNoDrawing.find("waits for rod length"), std::string::npos)
      << sheet.whyNoDrawing;
}

const Grid* gridHeaded(const BenchSheet& sheet, std::string_view heading) {
  const auto grid = std::ranges::find_if(
      sheet.grids, [&](const Grid& it) { return it.heading.starts_with(heading); });
  return grid == sheet.grids.end() ? nullptr : &*grid;
}

// The shelf of the single holds 1.30, 1.20 and 1.40 for a gap wanted of 0.95; 1.30 leaves 1.00.
TEST(StackSheet, CarriesTheBestStacksFromTheShelfAsTheTableHasThem) {
  const BenchSheet sheet = sheetFor(sample("culvert-1040"), SheetKind::Stack);
  const Grid* best = gridHeaded(sheet, "The best stacks from the shelf");
  ASSERT_NE(best, nullptr);
  EXPECT_THAT(best->columns, testing::ElementsAre("Place", "Head gasket, mm",
                                                  "Bumping clearance, mm", "at worst, mm", "Ratio"))
      << "no column for parts that are nowhere";
  ASSERT_EQ(best->rows.size(), 3U);
  EXPECT_THAT(best->rows[0], testing::ElementsAre("1", "1.30", "1.00", "0.87", "17.32"));
  EXPECT_THAT(best->rows[1], testing::ElementsAre("2", "1.20", "0.90", "0.77", "17.55"));
  EXPECT_EQ(gridHeaded(sheet, "The nearest"), nullptr) << "none lost";
}

TEST(StackSheet, NamesUnlikeCylindersAndSaysHowManyStacksThereAre) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Stack);
  const Grid* best = gridHeaded(sheet, "The first 4 of the 20 best stacks from the shelf");
  ASSERT_NE(best, nullptr);
  EXPECT_THAT(best->rows[0], testing::ElementsAre("1", "1 · 2 · 3", "1.00 · 0.90 · 0.80", "0.40",
                                                  "0.65", "0.89 … 0.92", "0.72", "11.18 … 11.23"));
}

TEST(StackSheet, SaysWhyTheNearestStacksLost) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Stack);
  const Grid* lost = gridHeaded(sheet, "The first 4 of the 10 nearest stacks that lost");
  ASSERT_NE(lost, nullptr);
  EXPECT_THAT(lost->rows[0],
              testing::ElementsAre("gaps too far apart", "0.07\u00A0mm / 0.05\u00A0mm", "1 · 2 · 3",
                                   "0.95 · 0.90 · 0.85", "0.40", "0.65", "0.87 … 0.94"));
}

TEST(StackSheet, WithoutAShelfHasNoChoiceAndWithTooManyCylindersSaysWhereItIs) {
  model::Project project = sample("culvert-1040");
  type(project.engines[1], "cylinder_count", "8");
  EXPECT_EQ(gridHeaded(sheetFor(project, SheetKind::Stack), "The best stacks"), nullptr);
  EXPECT_THAT(sheetFor(project, SheetKind::Stack).notes,
              testing::Contains("What can be laid from the shelf: see the window."));
  project.lists.clear();
  EXPECT_THAT(sheetFor(project, SheetKind::Stack).notes,
              testing::Not(testing::Contains(testing::HasSubstr("from the shelf"))));
}

TEST(StackSheet, SaysWhereNoStackFromTheShelfServes) {
  model::Project project = sample("culvert-1040");
  type(project.engines[1], "squish_most_m", "0.7");
  type(project.engines[1], "squish_least_m", "0.5");
  const BenchSheet sheet = sheetFor(project, SheetKind::Stack);
  EXPECT_THAT(sheet.notes, testing::Contains("No stack from the shelf keeps within the limits."));
  EXPECT_THAT(sheet.notes,
              testing::Contains(testing::StartsWith("Choice from the shelf. Gap over the most: ")));
  const Grid* lost = gridHeaded(sheet, "The nearest stacks that lost");
  ASSERT_NE(lost, nullptr);
  EXPECT_EQ(lost->rows[0][0], "gap over the most");
  EXPECT_EQ(lost->rows[0][1], "1.00\u00A0mm / 0.70\u00A0mm");
}

TEST(PlateSheet, SaysWhatItWaitsFor) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "plate_bore_m", "");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  EXPECT_FALSE(sheet.plate.has_value());
  EXPECT_NE(sheet.whyNoDrawing.find("bore of the spacer plate"), std::string::npos);
}

TEST(PlateSheet, SaysHowThickAndHowTrueItIsToBe) {
  model::Project project = sample("burdock-719");
  for (const auto& [key, text] : {std::pair{"cylinder_pitch_m", "84"},
                                  {"plate_bore_m", "72"},
                                  {"plate_length_m", "280"},
                                  {"plate_width_m", "110"}}) {
    type(project.engines[1], key, text);
  }
  const BenchSheet unlike = sheetFor(project, SheetKind::Plate);
  ASSERT_TRUE(unlike.plate.has_value());
  ASSERT_EQ(unlike.notes.size(), 8U);
  EXPECT_EQ(unlike.notes[2], "Cylinder 3: thickness 0.86\u00A0mm ± 0.01\u00A0mm.");
  EXPECT_THAT(unlike.notes[3], testing::HasSubstr("A cut takes its width from both"));
  EXPECT_EQ(unlike.notes[4],
            "The measurements leave what is to be made to within ± 0.06\u00A0mm likely, ± "
            "0.16\u00A0mm at worst case.");
  EXPECT_THAT(unlike.plate->partings, testing::ElementsAre(testing::DoubleNear(0.042, 1e-9),
                                                           testing::DoubleNear(0.126, 1e-9)));
  type(project.engines[1], "plates_in_stack", "one for all");
  const BenchSheet onePiece = sheetFor(project, SheetKind::Plate);
  EXPECT_TRUE(onePiece.plate->partings.empty());
  EXPECT_THAT(unlike.notes[5], testing::HasSubstr(", parallel within 0.02"));
  EXPECT_EQ(unlike.notes[6], "Corners R 5.00\u00A0mm, or as the seat (common practice).");
  type(project.engines[1], "plate_tolerance_m", "0.02");
  type(project.engines[1], "spacer_m", "0.95");
  EXPECT_EQ(sheetFor(project, SheetKind::Plate).notes.front(),
            "Thickness 0.95\u00A0mm ± 0.02\u00A0mm.");
  type(project.engines[1], "plate_tolerance_m", "");
  EXPECT_EQ(sheetFor(project, SheetKind::Plate).notes.front(),
            "Thickness 0.95\u00A0mm ± 0.01\u00A0mm.");
  type(project.engines[1], "spacer_m", "0.95 ± 0.005");
  EXPECT_EQ(sheetFor(project, SheetKind::Plate).notes.front(),
            "Thickness 0.95\u00A0mm ± 0.005\u00A0mm.")
      << "as entered";
}

TEST(PlateSheet, NamesTheCylinderThatHasNoPlateAndDrawsNone) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "plates_in_stack", "one for each");
  type(project.engines[1], "spacer_m", "1.03; 0; 0.86");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  ASSERT_TRUE(sheet.plate.has_value());
  EXPECT_EQ(sheet.plate->stretches().size(), 2U);
  EXPECT_THAT(sheet.notes, testing::Contains("Cylinder 2: no plate is counted with."));
  EXPECT_THAT(sheet.notes, testing::Not(testing::Contains(HasSubstr("dashed lines"))));
  EXPECT_THAT(sheet.notes, testing::Not(testing::Contains(HasSubstr("tapered"))));
  EXPECT_THAT(sheet.notes, testing::Contains(HasSubstr("apart are separate pieces")));
  EXPECT_THAT(sheet.notes, testing::Contains(HasSubstr("Corners R 5.00")));
  EXPECT_THAT(sheet.notes, testing::Contains(HasSubstr("without one is square")));
  const Grid* holes = gridHeaded(sheet, "Holes");
  ASSERT_NE(holes, nullptr);
  EXPECT_EQ(holes->rows[1][0], "2  bore 3");
  EXPECT_EQ(holes->rows[4].back(), "cut") << "stud 3 at 42 mm";
  for (const std::vector<std::string>& row : holes->rows) {
    EXPECT_THAT(row[0], testing::Not(HasSubstr("no plate")));
  }
}

TEST(PlateSheet, OfAPlateBetweenTwoWithoutHasNoRoundCorner) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "spacer_m", "0; 0.95; 0");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  EXPECT_THAT(sheet.notes, testing::Not(testing::Contains(HasSubstr("Corners R"))));
  EXPECT_THAT(sheet.notes, testing::Not(testing::Contains(HasSubstr("separate pieces"))));
}

TEST(PlateSheet, OfAVSaysWhichPlatesAreNotDrawn) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "cylinder_axis_rad", "0; 90; 0");
  const auto notes = [&](const char* spacers) {
    type(project.engines[1], "spacer_m", spacers);
    return sheetFor(project, SheetKind::Plate).notes;
  };
  EXPECT_THAT(notes("1.03; 0.95; 0.86"),
              testing::Contains("Drawn for the bank of cylinder 1. Plates of other banks are not "
                                "drawn: cylinder 2."));
  EXPECT_THAT(notes("1.03; 0; 0.86"), testing::Not(testing::Contains(HasSubstr("bank"))));
  const auto second = notes("-0.2; 0.95; 0");
  EXPECT_THAT(second, testing::Contains("Cylinder 1: no plate, take 0.20\u00A0mm off."));
  EXPECT_THAT(second, testing::Not(testing::Contains(HasSubstr("bank"))));
}

TEST(PlateSheet, OfUnlikeNeedsThatNobodyChoseAPlateForHasNone) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "spacer_m", "");
  type(project.engines[1], "plates_in_stack", "one for all");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  EXPECT_FALSE(sheet.plate.has_value());
  EXPECT_THAT(sheet.whyNoDrawing, HasSubstr("No plate is chosen yet: the cylinders ask for 1.03"));
}

TEST(PlateSheet, OfMetalThatIsToComeOffHasNoPlate) {
  const BenchSheet skim = sheetFor(sample("tansy-270"), SheetKind::Plate);
  EXPECT_FALSE(skim.plate.has_value());
  EXPECT_EQ(skim.whyNoDrawing,
            "No plate is to be made: take 1.35\u00A0mm off the metal instead, or as much off the "
            "gaskets.");
  const BenchSheet none = sheetFor(sample("culvert-1040"), SheetKind::Plate);
  EXPECT_FALSE(none.plate.has_value());
  EXPECT_THAT(none.whyNoDrawing, testing::StartsWith("No plate is to be made"));
}

// By hand: 1.03, 0.95 and 0.87 at 0, 84 and 168 mm fall by 0.08 in 84, so by 0.095 in 100; the
// plate of 270 mm ends 51 mm beyond the outer axes.
TEST(PlateSheet, OfATaperedPlateSaysWhatAMillIsSetBy) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "plates_in_stack", "one for all");
  type(project.engines[1], "spacer_m", "1.03; 0.95; 0.87");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  ASSERT_TRUE(sheet.plate.has_value());
  EXPECT_TRUE(sheet.plate->partings.empty());
  for (const char* said :
       {"In one piece it is tapered: these thicknesses hold at the cylinder axes.",
        "Slope 0.095\u00A0mm in 100.00\u00A0mm (0.095\u00A0%), thinner towards the end at cylinder "
        "3.",
        "At the end at cylinder 1 it is 1.08\u00A0mm thick, at the end at cylinder 3 "
        "0.82\u00A0mm.",
        "Measure the seats again before it is cut, and mark which end is which."}) {
    EXPECT_THAT(sheet.notes, testing::Contains(said));
  }
  EXPECT_THAT(sheet.notes, testing::Contains(testing::HasSubstr("parallel across the crankshaft")))
      << "nothing that does not hold";
  type(project.engines[1], "spacer_m", "1.03; 0.87; 0.95");
  EXPECT_THAT(sheetFor(project, SheetKind::Plate).notes,
              testing::Contains(testing::HasSubstr("on no straight line")));
}

TEST(PlateSheet, SaysWhereThePlatesPartAndWhichHolesThatCuts) {
  const Grid* holes = nullptr;
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Plate);
  holes = gridHeaded(sheet, "Holes");
  ASSERT_NE(holes, nullptr);
  EXPECT_EQ(holes->rows[5].back(), "cut") << "stud 3 at 42 mm";
  EXPECT_EQ(holes->rows.back()[0], "parting 2");
  EXPECT_EQ(holes->rows.back()[1], "126.00");
}

TEST(PlateSheet, ThatIsForbiddenSaysSoBesideTheDrawing) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "plate_bore_m", "60");
  const BenchSheet sheet = sheetFor(project, SheetKind::Plate);
  EXPECT_THAT(sheet.notes.front(), testing::StartsWith("NOT TO BE CUT: A plate bore of 60.00"));
}

TEST(BenchSheets, CountRemarksAndListWhatObjects) {
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Stack);
  EXPECT_FALSE(sheet.leftOut.empty());
  ASSERT_FALSE(sheet.objections.empty());
  for (const Objection& it : sheet.objections) EXPECT_NE(it.word, "remarks");
}

TEST(BenchSheets, OfAProjectWithoutEnginesSayItInstead) {
  for (const SheetName& name : sheetNames()) {
    if (name.kind == SheetKind::Spec) continue;
    const BenchSheet sheet = sheetFor(model::Project{}, name.kind);
    EXPECT_EQ(sheet.whyNoDrawing, "There is no engine yet.");
  }
}

TEST(BenchSheets, SpeakTheReadersTerms) {
  const SheetOptions shouting{.words = [](const std::string& text) { return text + "!"; }};
  const BenchSheet sheet = sheetFor(sample("burdock-719"), SheetKind::Survey, shouting);
  EXPECT_TRUE(sheet.asked.front().label.ends_with("!"));
}

}  // namespace
}  // namespace strokewright::sheet
