// The sheet of the throws: its numbers are those of results and tables, and it says what is
// missing.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "core/sheet/bench.h"
#include "tests/assess/rules_fixture.h"

namespace strokewright::sheet {
namespace {

using assess::Assessment;
using assess::sample;
using assess::type;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

namespace in = model::in;

/// As the sheet of an engine with a spark has it.
constexpr std::string_view kTriggers = "When to ignite, from the top of the first throw";

struct CrankRow {
  const char* name;
  const char* cylinders;
  const char* throws_;
  const char* axes;
  const char* order;
  const char* fires;  ///< the sentence on the sheet
  friend void PrintTo(const CrankRow& row, std::ostream* out) { *out << row.name; }
};

model::Project projectOf(const CrankRow& row) {
  model::Project project = sample("burdock-719");
  model::Engine& engine = project.engines[1];
  type(engine, "cylinder_count", row.cylinders);
  type(engine, "throw_ahead_rad", row.throws_);
  type(engine, "cylinder_axis_rad", row.axes);
  type(engine, "firing_order", row.order);
  return project;
}

BenchSheet throwsOf(const model::Project& project, const units::Style& style = {}) {
  const Assessment assessment(project);
  return benchSheetOf(assessment, style, {}, SheetKind::Throws);
}

const Grid& gridOf(const BenchSheet& sheet, std::string_view heading) {
  const auto found = std::ranges::find(sheet.grids, heading, &Grid::heading);
  EXPECT_NE(found, sheet.grids.end()) << heading;
  return *found;
}

class ThrowsSheetOf : public testing::TestWithParam<CrankRow> {};

TEST_P(ThrowsSheetOf, HasTheNumbersOfTheResults) {
  const model::Project project = projectOf(GetParam());
  const Assessment assessment(project);
  const units::Style style;
  const BenchSheet sheet = throwsOf(project);
  const Grid& tops = gridOf(sheet, "Throws and top dead centres");
  ASSERT_EQ(tops.rows.size(), static_cast<std::size_t>(assessment.evaluation().cylinders(1)));
  for (std::size_t i = 0; i < tops.rows.size(); ++i) {
    const auto cylinder = static_cast<int>(i);
    const auto& number = assessment.evaluation();
    EXPECT_EQ(tops.rows[i][0], std::to_string(cylinder + 1));
    EXPECT_THAT(tops.rows[i][1],
                StartsWith(style.number(units::Kind::Angle,
                                        number.inputValue(1, in::throwAhead, cylinder))));
    EXPECT_THAT(tops.rows[i][2],
                StartsWith(style.number(units::Kind::Angle,
                                        number.inputValue(1, in::cylinderAxis, cylinder))));
    EXPECT_THAT(tops.rows[i][3],
                StartsWith(style.number(units::Kind::Angle,
                                        assessment(1, out::topAfterFirst, cylinder).value, 1)));
  }
}

TEST_P(ThrowsSheetOf, HasTheNumbersOfTheTables) {
  const model::Project project = projectOf(GetParam());
  Assessment assessment(project);
  const units::Style style;
  const BenchSheet sheet = throwsOf(project);
  for (const describe::Table* table : {&out::firingTable, &out::triggers, &out::collectors}) {
    const describe::Tabulated told = assessment.evaluation().tabulated(1, *table);
    ASSERT_EQ(told.state, describe::State::Value);
    const Grid& grid = gridOf(sheet, table == &out::triggers ? kTriggers : table->name);
    ASSERT_EQ(grid.rows.size(), told.rows.size());
    std::size_t at = 0;
    for (const describe::Column& column : table->columns) {
      const auto& cells = told.rows[column.key];
      const bool silent =
          column.words
              ? std::ranges::all_of(cells.words, &std::string::empty)
              : std::ranges::all_of(cells.numbers, [](double it) { return std::isnan(it); });
      // Those of twelve find no room.
      if (silent || (column.key == "intervals" && grid.rows.size() > 12)) continue;
      EXPECT_THAT(grid.columns[at], StartsWith(std::string(column.name)));
      for (std::size_t row = 0; row < grid.rows.size(); ++row) {
        const std::string text =
            column.words ? cells.words[row]
                         : style.number(column.kind, cells.numbers[static_cast<Eigen::Index>(row)],
                                        column.decimals);
        EXPECT_EQ(grid.rows[row][at], text) << table->key << ' ' << column.key;
      }
      ++at;
    }
    EXPECT_EQ(at, grid.columns.size());
  }
}

TEST_P(ThrowsSheetOf, SaysOrderIntervalsAndEvenness) {
  EXPECT_THAT(throwsOf(projectOf(GetParam())).notes, Contains(GetParam().fires));
}

// Orders and intervals from plane geometry; 1-5-3-6-2-4 and 1-8-4-3-6-5-7-2 are the usual ones of
// their cranks, from memory.
INSTANTIATE_TEST_SUITE_P(
    Cranks, ThrowsSheetOf,
    testing::Values(
        CrankRow{"Triple", "3", "0; 240; 120", "", "1; 3; 2", "Fires 1-3-2, 240° each: evenly."},
        CrankRow{
            "Twin270", "2", "0; 270", "", "1; 2",
            "Fires 1-2, 450\u00A0·\u00A0270°: unevenly, largest interval 450.0°, least 270.0°."},
        CrankRow{"Vee75PinBehind", "2", "0; -30", "0; 75", "",
                 "Fires 1-2, 465\u00A0·\u00A0255°, the most even order while none is entered: "
                 "unevenly, largest interval 465.0°, least 255.0°."},
        CrankRow{"Six", "6", "0; 240; 120; 120; 240; 0", "", "1; 5; 3; 6; 2; 4",
                 "Fires 1-5-3-6-2-4, 120° each: evenly."},
        CrankRow{"V8CrossPlane", "8", "0; 0; 90; 90; 270; 270; 180; 180",
                 "0; -90; 0; -90; 0; -90; 0; -90", "1; 8; 4; 3; 6; 5; 7; 2",
                 "Fires 1-8-4-3-6-5-7-2, 90° each: evenly."},
        CrankRow{"V12", "12", "0; 240; 120; 120; 240; 0; 0; 240; 120; 120; 240; 0",
                 "0; 0; 0; 0; 0; 0; 60; 60; 60; 60; 60; 60",
                 "1; 7; 5; 11; 3; 9; 6; 12; 2; 8; 4; 10",
                 "Fires 1-7-5-11-3-9-6-12-2-8-4-10, 60° each: evenly."}),
    [](const auto& row) { return row.param.name; });

TEST(ThrowsSheet, SaysWhatIsMissingInsteadOfAnEmptyFigure) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "throw_ahead_rad", "");
  const BenchSheet sheet = throwsOf(project);
  EXPECT_EQ(sheet.whyNoDrawing, "Not entered yet: throw angle ahead of the first.");
  EXPECT_FALSE(sheet.star.has_value());
  EXPECT_TRUE(sheet.grids.empty());
  ASSERT_FALSE(sheet.asked.empty());
  EXPECT_EQ(sheet.asked.front().label, "Throw angle ahead of the first");
}

TEST(ThrowsSheet, KeepsTheThrowsWhereTheOrderCannotBe) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], "firing_order", "1; 2; 2");
  const BenchSheet sheet = throwsOf(project);
  EXPECT_TRUE(sheet.whyNoDrawing.empty());
  ASSERT_EQ(sheet.grids.size(), 1U);
  EXPECT_THAT(sheet.notes,
              Contains(StartsWith("When it fires is not known. The firing order must")));
  ASSERT_FALSE(sheet.objections.empty());
  EXPECT_EQ(sheet.objections.front().word, "forbids");
}

TEST(ThrowsSheet, SaysFromWhichEndAndWhichWayRound) {
  model::Project project = sample("tansy-270");
  EXPECT_EQ(throwsOf(project).notes.front(), "Seen from the output end it turns anticlockwise.");
  type(project.engines[1], "rotation", "");
  EXPECT_THAT(throwsOf(project).notes.front(), HasSubstr("nobody said which way it turns"));
  type(project.engines[1], "viewed_from", "");
  EXPECT_THAT(throwsOf(project).notes.front(), HasSubstr("Nobody said from which end"));
  type(project.engines[1], "rotation", "clockwise");
  EXPECT_THAT(throwsOf(project).notes.front(), HasSubstr("an end that nobody named"));
}

TEST(ThrowsSheet, ListsWhatTouchesTheThrowsAndCountsTheRest) {
  const model::Project project = sample("tansy-270");
  const Assessment assessment(project);
  const Sheet spec = sheetOf(assessment, {}, {.variantColumn = false});
  const BenchSheet sheet = throwsOf(project);
  ASSERT_FALSE(sheet.objections.empty());
  EXPECT_THAT(sheet.objections.front().sentence, HasSubstr("camshaft does not fit this crank"));
  for (const Objection& it : sheet.objections) EXPECT_EQ(it.subject, "firing order");
  EXPECT_EQ(sheet.objections.size() + sheet.leftOut.size(), spec.objections.size());
}

TEST(ThrowsSheet, OfASingleTwoStrokeHasNoStarNoLobesAndNoCollectors) {
  const BenchSheet sheet = throwsOf(sample("teasel-125"));
  EXPECT_FALSE(sheet.star.has_value());
  EXPECT_THAT(sheet.notes, Contains("Fires every 360.0°."));
  ASSERT_EQ(sheet.grids.size(), 3U);
  for (const Grid& grid : sheet.grids) {
    for (const std::string& column : grid.columns) {
      EXPECT_THAT(column, testing::Not(HasSubstr("Lobe"))) << grid.heading;
    }
  }
}

TEST(ThrowsSheet, OfCompressionIgnitionSpeaksOfInjectionAndOfNoCoil) {
  model::Project project = projectOf({"", "4", "0; 180; 180; 0", "", "", ""});
  type(project.engines[1], "ignition", "compression");
  const BenchSheet sheet = throwsOf(project);
  const Grid& marks = gridOf(sheet, "When injection starts, from the top of the first throw");
  EXPECT_THAT(marks.columns, Not(Contains(HasSubstr("coil"))));
  EXPECT_THAT(sheet.notes, Contains(HasSubstr("Marks for the start of injection")));
  EXPECT_THAT(sheet.notes, Not(Contains(HasSubstr("ignite"))));
  EXPECT_THAT(sheet.cautions, HasSubstr("glow plugs or injectors out"));
}

TEST(ThrowsSheet, HasTheReadersDecimalMarkInWordsToo) {
  const CrankRow row{"", "2", "0; -22.5", "0; 75", "", ""};
  const BenchSheet sheet = throwsOf(projectOf(row), {.decimalMark = ","});
  EXPECT_EQ(gridOf(sheet, out::collectors.name).rows.front()[2], "457,5-262,5");
}

TEST(ThrowsSheet, SaysOfAVeeForWhichCamshaftItsLobesAre) {
  const CrankRow vee{"", "2", "0; 0", "0; 75", "", ""};
  EXPECT_THAT(throwsOf(projectOf(vee)).notes,
              Contains(HasSubstr("Lobes are for a camshaft of each bank")));
  const CrankRow twin{"", "2", "0; 270", "", "", ""};
  EXPECT_THAT(throwsOf(projectOf(twin)).notes,
              testing::Not(Contains(HasSubstr("Lobes are for a camshaft of each bank"))));
}

// α = β − ψ: a throw ahead by 1.3° comes to its top 358.7° after the first.
TEST(ThrowsSheet, ReadsATopJustBeforeTheFirstWithinATurn) {
  const auto top = [](const char* throws_) {
    const CrankRow row{"", "2", throws_, "", "", ""};
    return gridOf(throwsOf(projectOf(row)), "Throws and top dead centres").rows[1][3];
  };
  EXPECT_THAT(top("0; 1.3"), StartsWith("358.7"));
  EXPECT_THAT(top("0; 0.06"), StartsWith("359.9"));
  EXPECT_THAT(top("0; 0.04"), StartsWith("0.0"));
  EXPECT_THAT(top("0; -0.04"), StartsWith("0.0"));
  const CrankRow row{"", "2", "0; 0.04", "", "", ""};
  EXPECT_EQ(gridOf(throwsOf(projectOf(row)), kTriggers).rows[1][1], "0.0");
}

TEST(ThrowsSheet, WarnsOfWhatSpinsAndWhatIsPressed) {
  const BenchSheet sheet = throwsOf(sample("burdock-719"));
  for (const char* word : {"Rotating", "pressed", "never run above"}) {
    EXPECT_THAT(sheet.cautions, HasSubstr(word));
  }
}

}  // namespace
}  // namespace strokewright::sheet
