#include "core/sheet/sheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <ostream>
#include <regex>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/wording.h"
#include "core/limits/results.h"
#include "core/masses/results.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/sheet/bench.h"
#include "core/sheet/engine_terms.h"
#include "core/sheet/kind.h"
#include "core/sheet/objections.h"
#include "core/storage/project_text.h"

namespace strokewright::sheet {
namespace {

namespace in = model::in;

model::Project sample(const std::string& name) {
  std::ifstream file(STROKEWRIGHT_SOURCE_DIR "/samples/" + name + ".strokewright");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  return storage::read(text).project.value();
}

void type(model::Engine& engine, const describe::Input& input, std::string_view text) {
  engine.set(input, model::entryFrom(input, text, units::UnitGroup::metric()));
}

Sheet sheetFor(const model::Project& project, const units::Style& style = {},
               const SheetOptions& options = {}) {
  const assess::Assessment assessment(project);
  return sheetOf(assessment, style, options);
}

const Row& rowOf(const Sheet& sheet, std::string_view label) {
  for (const Group& group : sheet.groups) {
    const auto row = std::ranges::find(group.rows, label, &Row::label);
    if (row != group.rows.end()) return *row;
  }
  throw std::out_of_range("no row " + std::string(label));
}

std::vector<std::string> fullTexts(const Row& row) {
  std::vector<std::string> texts;
  for (const Text& text : row.texts) texts.push_back(text.full);
  return texts;
}

/// Every word of the sheet but names.
std::vector<std::string> wordsOf(const Sheet& sheet) {
  std::vector<std::string> words{sheet.restsOn, sheet.restsFurtherOn, sheet.checkBar};
  for (const Group& group : sheet.groups) {
    for (const Row& row : group.rows) {
      words.insert(words.end(), {row.label, row.difference});
      for (const Text& text : row.texts) words.insert(words.end(), {text.full, text.brief});
    }
  }
  for (const Objection& objection : sheet.objections) words.push_back(objection.sentence);
  for (const Measured& measured : sheet.asBuilt) {
    for (const Box& box : measured.boxes) words.push_back(box.drawn);
  }
  for (const Box& box : sheet.closing) words.push_back(box.drawn);
  return words;
}

// ---- The numbers are those of the assessment

struct SampleRow {
  const char* name;
  friend void PrintTo(const SampleRow& row, std::ostream* out) { *out << row.name; }
};

class SheetOfSample : public testing::TestWithParam<SampleRow> {
 protected:
  /// One cell as it should read, made without the sheet.
  std::string expected(int engine, const describe::Result& result) const {
    const int count =
        result.per == describe::Per::Engine ? 1 : assessment_.evaluation().cylinders(engine);
    std::vector<std::string> texts;
    for (int i = 0; i < count; ++i) {
      const describe::Cell& cell = assessment_(engine, result, i);
      texts.push_back(cell.state == describe::State::Value
                          ? style_.number(result.kind, cell.value, result.decimals)
                          : "–");
    }
    std::string text = texts.front();
    if (std::ranges::count(texts, text) == std::ssize(texts)) return text;
    for (std::size_t i = 1; i < texts.size(); ++i) text += " · " + texts[i];
    return text;
  }

  model::Project project_ = sample(GetParam().name);
  assess::Assessment assessment_{project_};
  units::Style style_;
  Sheet sheet_ = sheetOf(assessment_, style_, {.date = "2026-11-24", .programVersion = "9.9"});
};

TEST_P(SheetOfSample, SaysEveryResultAsItWasAssessed) {
  const std::pair<std::string_view, const describe::Result*> rows[] = {
      {"Displacement", &out::displacement},
      {"Protrusion without spacer", &out::protrusionWithoutSpacer},
      {"Deck clearance", &out::deckClearance},
      {"Clearance volume", &out::clearanceVolume},
      {"Compression ratio", &out::compressionRatio},
      {"without crevice", &out::compressionRatioWithoutCrevice},
      {"Mean piston speed", &out::meanPistonSpeed},
      {"Peak piston speed, downwards", &out::peakPistonSpeed},
      {"Peak acceleration", &out::peakAcceleration},
      {"Rev ceiling", &out::revCeiling},
      {"next limit", &out::nextCeiling},
      {"Static moment per throw", &out::staticMoment},
  };
  for (const auto& [label, result] : rows) {
    const Row& row = rowOf(sheet_, label);
    for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
      EXPECT_EQ(row.texts[i].full, expected(sheet_.columns[i].engine, *result)) << label;
    }
  }
}

TEST_P(SheetOfSample, ShowsTheLargestToleranceOfAllCylinders) {
  const Row* above = nullptr;
  for (const Group& group : sheet_.groups) {
    for (const Row& row : group.rows) {
      if (row.label == "± likely / worst case" && above->label == "Compression ratio") {
        double worst = 0.0;
        for (int i = 0; i < assessment_.evaluation().cylinders(sheet_.engine); ++i) {
          worst = std::max(worst, assessment_(sheet_.engine, out::compressionRatio, i).worst);
        }
        const std::string text = row.texts[1].full;
        EXPECT_EQ(text.substr(text.find(" / ") + 3), style_.number(units::Kind::Ratio, worst));
      }
      above = &row;
    }
  }
}

TEST_P(SheetOfSample, ComparesDonorAndTargetInColumns) {
  ASSERT_GE(sheet_.columns.size(), 2u);
  EXPECT_EQ(sheet_.columns[0].engine, project_.referenceDonor);
  EXPECT_EQ(sheet_.columns[1].engine, project_.target());
  EXPECT_TRUE(sheet_.differences);
  const double by = assessment_(project_.target(), out::meanPistonSpeed).value -
                    assessment_(project_.referenceDonor, out::meanPistonSpeed).value;
  EXPECT_EQ(rowOf(sheet_, "Mean piston speed").difference,
            style_.difference(units::Kind::Velocity, by));
}

TEST_P(SheetOfSample, ListsEveryFindingOfTheTarget) {
  const SheetOptions british;
  const EngineTerms terms(assessment_.evaluation(), sheet_.engine, british);
  for (const describe::Finding& finding : assessment_.findings(sheet_.engine)) {
    if (finding.key == "read_as") continue;  // of the text, not of the engine
    std::string sentence = describe::word(finding.says, style_);
    terms.say(sentence);
    EXPECT_TRUE(std::ranges::any_of(sheet_.objections, [&](const Objection& it) {
      return it.word == weightWord(finding.weight) &&
             it.sentence.find(sentence) != std::string::npos;
    })) << sentence;
  }
}

TEST_P(SheetOfSample, HasNoDecimalPointInGerman) {
  units::Style german;
  german.decimalMark = ",";
  const std::regex point("[0-9]\\.[0-9]");
  for (const std::string& words : wordsOf(sheetOf(assessment_, german, {}))) {
    EXPECT_FALSE(std::regex_search(words, point)) << words;
  }
}

TEST_P(SheetOfSample, SaysInTheTitleBlockWhatItIs) {
  EXPECT_EQ(sheet_.titleBlock.project, project_.name);
  EXPECT_EQ(sheet_.titleBlock.units, "mm · ml · g");
  EXPECT_EQ(sheet_.titleBlock.date, "2026-11-24");
  EXPECT_EQ(sheet_.titleBlock.sheet, "1 of 1");
  EXPECT_EQ(sheet_.titleBlock.program, "Strokewright 9.9");
}

INSTANTIATE_TEST_SUITE_P(Samples, SheetOfSample,
                         testing::Values(SampleRow{"burdock-719"}, SampleRow{"culvert-1040"},
                                         SampleRow{"tansy-270"}, SampleRow{"teasel-125"}),
                         [](const auto& row) {
                           std::string name = row.param.name;
                           std::erase(name, '-');
                           return name;
                         });

// ---- How it is said

// ---- Throws and firing

TEST(ThrowsOnTheSheet, StandBesideTheDonors) {
  // Worked conversion of the project, computed independently: 360/360 becomes 450/270.
  const Sheet sheet = sheetFor(sample("tansy-270"));
  ASSERT_EQ(sheet.stars.size(), 2u);
  EXPECT_EQ(sheet.stars[0].heading, "target");
  EXPECT_EQ(sheet.stars[0].firing,
            "fires 1-2, 450\u00A0·\u00A0270°; 1 to 2: throws ahead by 0\u00A0·\u00A0270°; "
            "tops 0\u00A0·\u00A090°");
  EXPECT_EQ(sheet.stars[0].caption, "Throws seen from the output end, turns anticlockwise");
  EXPECT_FALSE(sheet.stars[0].clockwise);
  EXPECT_EQ(sheet.stars[1].heading, "donor");
  EXPECT_EQ(sheet.stars[1].firing,
            "fires 1-2, 360° each; 1 to 2: throws ahead by 0\u00A0·\u00A00°; tops "
            "0\u00A0·\u00A00°");
}

TEST(ThrowsOnTheSheet, OfACrankLikeTheDonorsAreDrawnOnce) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  ASSERT_EQ(sheet.stars.size(), 1u);
  EXPECT_EQ(sheet.stars[0].heading, "donor, target");
  EXPECT_EQ(sheet.stars[0].firing.substr(0, 23), "fires 1-3-2, 240° each");
}

TEST(ThrowsOnTheSheet, OfASingleAreNotSpokenOf) {
  EXPECT_TRUE(sheetFor(sample("teasel-125")).stars.empty());
}

TEST(ThrowsOnTheSheet, AreNotSpokenOfBeforeTheyAreEntered) {
  model::Project project = sample("burdock-719");
  for (model::Engine& engine : project.engines) type(engine, in::throwAhead, "");
  const Sheet sheet = sheetFor(project);
  EXPECT_TRUE(sheet.stars.empty());
  EXPECT_EQ(sheet.waitsFor.find("hrow ahead"), std::string::npos);
}

TEST(ThrowsOnTheSheet, SaySoWhereNobodySaidTheEndOrTheSense) {
  model::Project project = sample("burdock-719");
  for (model::Engine& engine : project.engines) {
    type(engine, in::viewedFrom, "");
    type(engine, in::rotation, "");
  }
  EXPECT_EQ(sheetFor(project).stars[0].caption,
            "Throws seen from an end that nobody named, sense not given: clockwise assumed");
}

TEST(ThrowsOnTheSheet, SayWhatTheFiringWaitsFor) {
  model::Project project = sample("burdock-719");
  type(project.engines[1], in::cycle, "");
  const std::string firing = sheetFor(project).stars[0].firing;
  EXPECT_NE(firing.find("fires waits for"), std::string::npos) << firing;
}

TEST(Sheet, ListsWhatDiffersBetweenCylindersAndSaysOnceWhatIsEqual) {
  // Worked conversion of the project, computed independently.
  const Sheet sheet = sheetFor(sample("burdock-719"));
  const Row& spacer = rowOf(sheet, "for a squish gap of 0.90 it would be");
  EXPECT_EQ(spacer.texts[1], (Text{"1.03 · 0.95 · 0.86", "0.86 … 1.03", true}));
  EXPECT_EQ(spacer.emphasis, Emphasis::Subordinate);
  EXPECT_EQ(rowOf(sheet, "Squish gap, cold").texts[1], (Text{"0.90", ""}));
  EXPECT_EQ(rowOf(sheet, "worst case, from … to").texts[1].full, "0.73 … 1.07");
  EXPECT_EQ(rowOf(sheet, "stopped by").texts[1].full, "ring flutter");
}

TEST(Sheet, PutsTheDecidedSpacerFirstAndTheOneToMakeInItsSteadWhileThereIsNone) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
  type(target, in::spacer, "1.00; 0.90; 0.795 ± 0.005");
  const Sheet decided = sheetFor(project);
  const Row& spacer = rowOf(decided, "Spacer");
  EXPECT_EQ(spacer.emphasis, Emphasis::Strong);
  EXPECT_EQ(spacer.texts[1], (Text{"1.000 · 0.900 · 0.795", "0.795 … 1.000", true}));
  EXPECT_EQ(rowOf(decided, "± as entered").texts[1].full, "0.005");
  EXPECT_EQ(rowOf(decided, "for a squish gap of 0.90 it would be").emphasis, Emphasis::Subordinate);
  EXPECT_EQ(decided.asBuilt[0].boxes[2].drawn, "0.795");
  type(target, in::spacer, "");
  const Sheet open = sheetFor(project);
  EXPECT_EQ(rowOf(open, "Spacer to make").emphasis, Emphasis::Strong);
  EXPECT_THROW(rowOf(open, "Spacer"), std::out_of_range);
}

TEST(Sheet, PrintsWhatIsClampedAsItWasTypedWithItsTolerance) {
  model::Project project = sample("culvert-1040");
  model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
  type(target, in::headGasket, "1.300 ± 0.02");
  const Text gasket = rowOf(sheetFor(project), "Head gasket, compressed").texts[1];
  EXPECT_EQ(gasket, (Text{"1.300", "", false, "1.300 ± 0.02"}));
  units::Style inches;
  inches.group = units::UnitGroup::inchPound();
  EXPECT_EQ(rowOf(sheetFor(project, inches), "Head gasket, compressed").texts[1].full, "51.2");
  type(target, in::headGasket, "1.3");
  EXPECT_EQ(rowOf(sheetFor(project), "Head gasket, compressed").texts[1], (Text{"1.30", ""}));
}

TEST(Sheet, GivesEachOfSeveralBaseGasketsItsToleranceInEveryColumn) {
  model::Project project = sample("tansy-270");
  type(project.engines[0], in::baseGasket, "0.40 ± 0.02");
  type(project.engines[1], in::secondBaseGasket, "0.20 ± 0.03");
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(rowOf(sheet, "Base gasket, compressed").texts[0].exact, "0.40 ± 0.02");
  EXPECT_EQ(rowOf(sheet, "Second base gasket, compressed").texts[1].exact, "0.20 ± 0.03");
}

TEST(Sheet, CallsANegativeSpacerASkimInItsBox) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
  type(target, in::spacer, "-1.35; 0.9; 0.8");
  const std::vector<Box> boxes = sheetFor(project).asBuilt[0].boxes;
  EXPECT_EQ(boxes[0], (Box{"1", "1.35", "skim"}));
  EXPECT_EQ(boxes[1], (Box{"2", "0.90", ""}));
}

TEST(Sheet, OfATwoStrokeSaysWhatIsKnownOfItsPorts) {
  const Sheet sheet = sheetFor(sample("teasel-125"));
  EXPECT_NO_THROW(rowOf(sheet, "Blowdown"));
  EXPECT_NO_THROW(rowOf(sheet, "Exhaust / transfer duration"));
  for (const Group& group : sheet.groups) {
    for (const Row& row : group.rows) EXPECT_FALSE(row.label.starts_with("Effective"));
  }
  EXPECT_THROW(rowOf(sheetFor(sample("burdock-719")), "Blowdown"), std::out_of_range);
}

TEST(Sheet, SaysThatTheCeilingMayBeLowerWhileOneOfItsLinesWaits) {
  model::Project project = sample("burdock-719");
  EXPECT_EQ(rowOf(sheetFor(project), "Rev ceiling").texts[1].full, "9142");
  model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
  type(target, in::rodLeastSection, "");
  EXPECT_EQ(rowOf(sheetFor(project), "Rev ceiling").texts[1].full, "at most 9142");
}

TEST(Sheet, GivesNoColumnToADonorOfWhichNothingIsKnown) {
  model::Project project = sample("burdock-719");
  project.engines[static_cast<std::size_t>(project.referenceDonor)].entries.clear();
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(sheet.columns.front().engine, project.target());
  EXPECT_FALSE(sheet.differences);
}

TEST(Sheet, LeavesTheZerosOffSizes) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  const Row& row = rowOf(sheet, "Bore × stroke");
  EXPECT_EQ(fullTexts(row), (std::vector<std::string>{"66 × 62", "68 × 66", "68 × 66"}));
  EXPECT_EQ(row.difference, "+2 × +4");
  EXPECT_EQ(rowOf(sheet, "Big end: pin / eye / width").texts[1].full, "26 / 34 / 15");
}

TEST(Sheet, GivesEachNumberARowOfItsOwnWhereItDiffersBetweenCylinders) {
  model::Project project = sample("burdock-719");
  type(project.engines[static_cast<std::size_t>(project.target())], in::bore, "68.0; 68.0; 68.25");
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(rowOf(sheet, "Bore").texts[1], (Text{"68 · 68 · 68.25", "68 … 68.25", true}));
  EXPECT_EQ(rowOf(sheet, "Stroke").texts[1].full, "66");
  EXPECT_THROW(rowOf(sheet, "Bore × stroke"), std::out_of_range);
}

TEST(Sheet, GivesEachNumberARowOfItsOwnWhereTogetherTheyAreTooLong) {
  units::Style style;
  style.group = units::UnitGroup::inchPound();
  const Sheet sheet = sheetFor(sample("burdock-719"), style);
  EXPECT_EQ(rowOf(sheet, "Big end: pin / eye").texts[1].full, "1.0236 / 1.3386");
  EXPECT_EQ(rowOf(sheet, "Big-end width").texts[1].full, "0.5906");
  EXPECT_EQ(rowOf(sheet, "Bore × stroke").texts[1].full, "2.6772 × 2.5984");
  EXPECT_EQ(rowOf(sheet, "Bore × stroke").difference, "");
}

TEST(Sheet, ShowsTheTrueStrokeOnlyWhereAnOffsetMakesItAnother) {
  EXPECT_THROW(rowOf(sheetFor(sample("burdock-719")), "True stroke"), std::out_of_range);
  EXPECT_EQ(rowOf(sheetFor(sample("tansy-270")), "True stroke").texts[0].full, "68.001");
}

TEST(Sheet, IntroducesTheEngineInOneLine) {
  EXPECT_EQ(sheetFor(sample("culvert-1040")).subtitle,
            "single, four-stroke, compression ignition · from Culvert 864 · stationary");
}

TEST(Sheet, CallsTheGapOfCompressionIgnitionBumpingClearance) {
  const Sheet sheet = sheetFor(sample("culvert-1040"));
  EXPECT_EQ(rowOf(sheet, "Bumping clearance, cold").texts[1].full, "1.00");
  EXPECT_EQ(sheet.asBuilt[1].what, "bumping clearance");
  EXPECT_NE(sheet.cautions.find("air shut-off"), std::string::npos);
}

TEST(Sheet, GivesASingleVariantAColumnWhereThatIsWanted) {
  const model::Project project = sample("burdock-719");
  EXPECT_EQ(sheetFor(project).columns.size(), 3u);
  const Sheet narrow = sheetFor(project, {}, {.variantColumn = false});
  EXPECT_EQ(narrow.columns.size(), 2u);
  EXPECT_EQ(narrow.besides, "short rod");
  EXPECT_NE(narrow.subtitle.find("also: short rod"), std::string::npos);
}

TEST(Sheet, NamesSeveralVariantsInsteadOfGivingThemColumns) {
  model::Project project = sample("burdock-719");
  project.engines.push_back(project.engines.back());
  project.engines.back().name = "long rod";
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(sheet.columns.size(), 2u);
  EXPECT_EQ(sheet.besides, "short rod, long rod");
}

TEST(Sheet, CountsWhatIsSaidOfAVariantAloneWhereItHasNoColumn) {
  const model::Project project = sample("burdock-719");
  EXPECT_TRUE(sheetFor(project).asides.empty());
  const Sheet narrow = sheetFor(project, {}, {.variantColumn = false});
  ASSERT_EQ(narrow.asides.size(), 1u);
  EXPECT_EQ(narrow.asides[0].engine, "short rod");
  const std::vector<Objection> all = sheetFor(project).objections;
  const auto more = static_cast<std::size_t>(std::ranges::count_if(
      all, [](const Objection& it) { return it.sentence.starts_with("short rod: "); }));
  ASSERT_GT(more, 0u);
  EXPECT_EQ(all.size() - more, narrow.objections.size());
  EXPECT_EQ(narrow.asides[0].count,
            countOf(objectionsOnlyOf(2, assess::Assessment(project), {}, {1, 0})));
}

TEST(Objections, StandOnTheBenchSheetsOfTheirEntriesAndWhatForbidsOnEveryOne) {
  const Objection forbids{"forbids", "", "revs"};
  const Objection refused{"refused", "", "motion"};
  const Objection ofRevs{"objects", "", "revs"};
  const Objection ofStack{"objects", "", "stack and gap"};
  const Objection ofFillings{"objects", "", "fillings"};
  const Objection remarks{"remarks", "", "stack and gap"};
  for (const SheetName& name : sheetNames()) {
    if (name.kind == SheetKind::Spec) continue;
    EXPECT_TRUE(standsOn(name.kind, forbids)) << name.key;
    EXPECT_TRUE(standsOn(name.kind, refused)) << name.key;
    EXPECT_FALSE(standsOn(name.kind, ofRevs)) << name.key;
    EXPECT_FALSE(standsOn(name.kind, remarks)) << name.key;
    const bool ofChain = name.kind != SheetKind::Burette && name.kind != SheetKind::Throws;
    EXPECT_EQ(standsOn(name.kind, ofStack), ofChain) << name.key;
    EXPECT_EQ(standsOn(name.kind, ofFillings), name.kind == SheetKind::Burette) << name.key;
  }
}

TEST(BenchSheets, HaveNoSymbolWithAnUnderscoreInTheirTables) {
  const model::Project project = sample("burdock-719");
  const assess::Assessment assessment(project);
  for (const SheetName& name : sheetNames()) {
    for (const Grid& grid : benchSheetOf(assessment, {}, {}, name.kind).grids) {
      EXPECT_EQ(grid.heading.find('_'), std::string::npos) << grid.heading;
      for (const std::string& it : grid.columns) EXPECT_EQ(it.find('_'), std::string::npos) << it;
    }
  }
}

TEST(Sheet, SaysWhatANumberWaitsFor) {
  model::Project project = sample("teasel-125");
  type(project.engines[static_cast<std::size_t>(project.target())], in::compressionHeight, "");
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(rowOf(sheet, "Squish gap, cold").texts[1],
            (Text{"waits for compression height", "waits"}));
  EXPECT_NE(sheet.waitsFor.find("compression height ("), std::string::npos);
}

TEST(Sheet, PutsADashForARefusalAndTheReasonAmongTheObjections) {
  model::Project project = sample("teasel-125");
  type(project.engines[static_cast<std::size_t>(project.target())], in::rodLength, "20");
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(rowOf(sheet, "Peak acceleration").texts[1].full, "–");
  ASSERT_FALSE(sheet.objections.empty());
  const std::string& heaviest = sheet.objections.front().word;
  EXPECT_TRUE(heaviest == "forbids" || heaviest == "refused") << heaviest;
}

TEST(Sheet, PutsTheHeaviestFirst) {
  model::Project project = sample("burdock-719");
  type(project.engines[static_cast<std::size_t>(project.target())], in::headGasketBore, "60");
  const Sheet sheet = sheetFor(project);
  const std::vector<std::string> order{"forbids", "refused", "objects", "remarks"};
  EXPECT_TRUE(std::ranges::is_sorted(sheet.objections, {}, [&](const Objection& it) {
    return std::ranges::find(order, it.word) - order.begin();
  }));
}

TEST(Sheet, PutsTheStackFirstAmongEqualsAndLeavesOutHowATextWasRead) {
  model::Project project = sample("burdock-719");
  model::Engine& target = project.engines[static_cast<std::size_t>(project.target())];
  type(target, in::rodLength, "4 5/8 in");
  const Sheet sheet = sheetFor(project);
  std::string word;
  bool others = false;
  for (const Objection& it : sheet.objections) {
    EXPECT_EQ(it.sentence.find("is read as"), std::string::npos) << it.sentence;
    EXPECT_FALSE(it.subject.empty()) << it.sentence;
    if (it.word != word) others = false;
    word = it.word;
    others = others || it.subject != "stack and gap";
    EXPECT_EQ(others, it.subject != "stack and gap") << it.sentence;
  }
}

TEST(Sheet, CountsWhatIsLeftOutByItsSubjects) {
  const std::vector<Objection> leftOut{{"objects", "", "revs"},
                                       {"remarks", "", "masses"},
                                       {"remarks", "", "motion"},
                                       {"remarks", "", "masses"}};
  EXPECT_EQ(countOf(leftOut), "1 objection on revs; 3 remarks on masses and motion");
  EXPECT_EQ(countOf({}), "");
}

TEST(Sheet, SaysOnceWhatIsTrueOfSeveralEngines) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  EXPECT_EQ(std::ranges::count_if(sheet.objections,
                                  [](const Objection& it) {
                                    return it.sentence.find("above that of cylinder 1") !=
                                           std::string::npos;
                                  }),
            1);
  EXPECT_TRUE(std::ranges::any_of(sheet.objections, [](const Objection& it) {
    return it.sentence.find("(Also Burdock 636, short rod.)") != std::string::npos;
  }));
}

TEST(Sheet, CutsLongNamesShortInsideSentences) {
  model::Project project = sample("burdock-719");
  std::string name;
  for (int i = 0; i < 100; ++i) name += "ü";  // two bytes each
  project.engines[0].name = name;
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(sheet.columns[0].name, name);
  EXPECT_NE(sheet.subtitle.find("from " + name.substr(0, 58) + "… · "), std::string::npos)
      << sheet.subtitle;
  EXPECT_EQ(sheet.objections.front().sentence.find(name), std::string::npos);
}

TEST(Sheet, SaysWhatIsAssumedWhatIsFromBooksAndWhatStandsByDefault) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  const std::string& text = sheet.restsOn;
  EXPECT_NE(text.find("Assumed or decided: "), std::string::npos) << text;
  EXPECT_NE(sheet.restsFurtherOn.find("donor's speed proven"), std::string::npos)
      << sheet.restsFurtherOn;
  EXPECT_NE(text.find("ring flutter constant 38.7"), std::string::npos) << text;
  EXPECT_EQ(text.find("rod length"), std::string::npos) << text;  // measured
}

TEST(Sheet, ShowsDefaultsWithTheDigitsTheyHave) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  EXPECT_NE(sheet.restsFurtherOn.find("gudgeon-pin clearance 0.015\u00A0mm"), std::string::npos)
      << sheet.restsFurtherOn;
}

TEST(Sheet, WaitsOnlyForWhatItShows) {
  model::Project project = sample("burdock-719");
  const std::string whole = sheetFor(project).waitsFor;
  EXPECT_EQ(whole.find("burette"), std::string::npos) << whole;
  EXPECT_EQ(whole.find("spacer plate"), std::string::npos) << whole;
  type(project.engines[1], in::rodLength, "");
  const std::string text = sheetFor(project).waitsFor;
  EXPECT_NE(text.find("rod length"), std::string::npos) << text;
}

TEST(Sheet, CountsTheNamesOfAVeryLongList) {
  model::Project project = sample("burdock-719");
  for (model::Engine& engine : project.engines) {
    for (auto& [input, entry] : engine.entries) entry.origin = describe::Origin::Assumed;
  }
  EXPECT_NE(sheetFor(project).restsOn.find(" more."), std::string::npos);
}

TEST(Sheet, HasABoxForEachCylinderWithWhatIsDrawn) {
  const Sheet sheet = sheetFor(sample("burdock-719"));
  ASSERT_EQ(sheet.asBuilt.size(), 2u);
  EXPECT_EQ(sheet.asBuilt[0].what, "spacer");
  EXPECT_EQ(sheet.asBuilt[0].boxes,
            (std::vector<Box>{{"1", "1.030"}, {"2", "0.950"}, {"3", "0.860"}}));
}

TEST(Sheet, LeavesAnEmptyNumberOutOfARowOfTwo) {
  const Sheet sheet = sheetFor(sample("culvert-1040"));  // no base gasket
  EXPECT_EQ(rowOf(sheet, "Head gasket, compressed").texts[1].full, "1.300");
  EXPECT_THROW(rowOf(sheet, "Base / head gasket, compressed"), std::out_of_range);
}

TEST(Sheet, AsksForTheDeckClearanceWhereThereIsNoPlate) {
  const Sheet sheet = sheetFor(sample("culvert-1040"));
  EXPECT_EQ(sheet.asBuilt[0].what, "deck clearance");
  EXPECT_EQ(sheet.asBuilt[0].boxes.front().drawn, "−0.30");
}

TEST(Sheet, OfAProjectWithoutEnginesIsEmptyButForItsTitleBlock) {
  model::Project project;
  project.name = "Nothing yet";
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(sheet.engine, -1);
  EXPECT_TRUE(sheet.groups.empty());
  EXPECT_EQ(sheet.titleBlock.project, "Nothing yet");
}

TEST(Sheet, OfAnEmptyTargetWaitsEverywhere) {
  model::Project project;
  project.engines.emplace_back().name = "New";
  const Sheet sheet = sheetFor(project);
  EXPECT_EQ(rowOf(sheet, "Compression ratio").texts[0].brief, "waits");
  EXPECT_FALSE(sheet.differences);
}

TEST(Sheet, OfADonorHasNothingToCompareWith) {
  const model::Project project = sample("teasel-125");
  const Sheet sheet = sheetFor(project, {}, {.engine = project.referenceDonor});
  EXPECT_EQ(sheet.columns.front().engine, project.referenceDonor);
  EXPECT_FALSE(sheet.differences);
}

TEST(Sheet, BearsTheNameOfTheFileWhereTheProjectHasNone) {
  model::Project project;
  EXPECT_EQ(sheetFor(project, {}, {.projectName = "winter job"}).titleBlock.project, "winter job");
  project.name = "Spring";
  EXPECT_EQ(sheetFor(project, {}, {.projectName = "winter job"}).titleBlock.project, "Spring");
}

TEST(Sheet, PassesItsWordsThroughTheReadersTermsButNotTheBuildersNames) {
  model::Project project = sample("burdock-719");
  project.engines[0].name = "Gudgeon";
  const Sheet sheet =
      sheetFor(project, {}, {.words = [](const std::string& text) { return "<" + text + ">"; }});
  for (const std::string& text :
       {rowOf(sheet, "<Compression ratio>").texts[0].full, sheet.objections[0].sentence,
        sheet.restsOn, sheet.restsFurtherOn, sheet.cautions, sheet.asBuilt[0].what}) {
    EXPECT_TRUE(text.starts_with("<") && text.ends_with(">")) << text;
  }
  EXPECT_EQ(sheet.columns[0].name, "Gudgeon");
  EXPECT_EQ(sheet.title, "Burdock 719");
}

TEST(Sheet, ShowsTheRodLoadOnlyOfRodsThatAreTheDonors) {
  const auto texts = [](const model::Project& project) {
    return fullTexts(rowOf(sheetFor(project), "Rod load against the proven"));
  };
  model::Project project = sample("burdock-719");  // the variant has a shorter rod
  EXPECT_EQ(texts(project), (std::vector<std::string>{"1.00", "1.11", "–"}));
  type(project.engines[1], in::rodSmallEndMass, "84.3");  // within half a per cent
  EXPECT_EQ(texts(project)[1], "1.11");
  type(project.engines[1], in::rodSmallEndMass, "85.0");
  EXPECT_THROW(texts(project), std::out_of_range);
  EXPECT_THROW(texts(sample("tansy-270")), std::out_of_range);
}

TEST(Names, HaveNoNumberInThemThatNeedsADecimalMark) {
  const std::regex decimal("[0-9][.,][0-9]");
  const describe::Catalogue& catalogue = assess::catalogue();
  for (const describe::Result* result : catalogue.results()) {
    for (const std::string_view text : {result->name, result->symbol}) {
      EXPECT_FALSE(std::regex_search(std::string(text), decimal)) << text;
    }
  }
  for (const describe::Input* input : catalogue.inputs()) {
    EXPECT_FALSE(std::regex_search(std::string(input->label), decimal)) << input->label;
  }
}

TEST(Sheet, FollowsTheReadersUnits) {
  units::Style style;
  style.group = units::UnitGroup::inchPound();
  const Sheet sheet = sheetFor(sample("teasel-125"), style);
  EXPECT_EQ(rowOf(sheet, "Squish gap, cold").unit, "thou");
  EXPECT_EQ(rowOf(sheet, "Squish gap, cold").texts[1].full, "37.4");
  EXPECT_EQ(sheet.titleBlock.units, "in · cu in · oz");
}

}  // namespace
}  // namespace strokewright::sheet
