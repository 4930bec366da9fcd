/// What people type wrong, row by row: the sentence, its weight, what it offers, and what becomes
/// of the results. The limits behind the rows are common practice, no published source.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <optional>
#include <ostream>

#include "tests/assess/rules_fixture.h"
#include "tests/bench_units.h"

namespace strokewright::assess {
namespace {

using bench::deg;
using bench::g;
using bench::inch;
using bench::ml;
using bench::mm;
using bench::mm2;
using bench::rpm;
using describe::Finding;
using describe::Mend;
using describe::Origin;
using describe::State;
using describe::Weight;
using testing::HasSubstr;

struct Typed {
  const char* key;
  const char* text;
  Origin origin = Origin::NotSaid;
};

/// What an entry holds once the offer is taken.
struct Holds {
  const char* key;
  std::vector<double> values;  // [SI] none: cleared
};

struct Stands {
  const char* result;
  State state;
};

struct Row {
  const char* name;
  const char* sample;
  std::vector<Typed> typed;
  Weight weight;
  const char* rule;
  const char* about;
  std::vector<const char*> says;
  std::vector<Holds> offers = {};   // of the first mend; none: nothing is offered
  std::vector<Stands> stands = {};  // results afterwards, as the slip was left
  int engine = 1;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }
};

class SlipOfThePen : public testing::TestWithParam<Row> {
 protected:
  SlipOfThePen() : project_(sample(GetParam().sample)) {
    for (const Typed& typed : GetParam().typed) type(engine(), typed.key, typed.text, typed.origin);
  }

  model::Engine& engine() { return project_.engines[static_cast<std::size_t>(GetParam().engine)]; }
  const Finding* found(const Assessment& assessment) const {
    return findingOf(assessment, GetParam().engine, GetParam().rule, GetParam().about);
  }

  model::Project project_;
};

TEST_P(SlipOfThePen, IsSaidWithItsNumbers) {
  const Row& row = GetParam();
  const Assessment assessment(project_);
  const Finding* finding = found(assessment);
  ASSERT_NE(finding, nullptr) << testing::PrintToString(rulesThatSpeak(assessment, row.engine));
  EXPECT_EQ(finding->weight, row.weight);
  EXPECT_FALSE(finding->source.empty());
  for (const char* number : row.says) EXPECT_THAT(told(*finding), HasSubstr(number));
}

/// Also in inches, with a decimal comma: nothing of a template is left over.
TEST_P(SlipOfThePen, IsSaidInWholeSentences) {
  units::Style inches;
  inches.group = units::UnitGroup::inchPound();
  inches.decimalMark = ",";
  const Assessment assessment(project_);
  for (const Finding& finding : assessment.findings(GetParam().engine)) {
    for (const describe::Sentence* sentence : {&finding.says, &finding.hint}) {
      const std::string text = describe::word(*sentence, inches);
      EXPECT_EQ(text.find_first_of("{}!"), std::string::npos) << text;
      EXPECT_TRUE(text.empty() || text.ends_with('.') || text.ends_with('?')) << text;
    }
    EXPECT_FALSE(finding.about.empty()) << finding.key;
  }
}

TEST_P(SlipOfThePen, StaysAsTyped) {
  for (const Typed& typed : GetParam().typed) {
    const describe::Input& input = *catalogue().findInput(typed.key);
    if (input.kind == units::Kind::Choice && engine()[input].known()) continue;
    EXPECT_EQ(engine()[input].text, typed.text);
  }
}

TEST_P(SlipOfThePen, LeavesTheResultsAsTheyShouldBe) {
  const Assessment assessment(project_);
  for (const Stands& stands : GetParam().stands) {
    const describe::Result& result = *catalogue().findResult(stands.result);
    EXPECT_EQ(assessment(GetParam().engine, result).state, stands.state) << stands.result;
  }
}

TEST_P(SlipOfThePen, IsMendedByWhatItOffers) {
  const Row& row = GetParam();
  std::optional<Mend> mend;
  {
    const Assessment assessment(project_);
    const Finding* finding = found(assessment);
    ASSERT_NE(finding, nullptr);
    ASSERT_EQ(finding->mends.empty(), row.offers.empty());
    if (!finding->mends.empty()) mend = finding->mends.front();
  }
  if (!mend) return;
  for (const auto& [input, text] : mend->entries) type(engine(), input->key, text);
  EXPECT_EQ(found(Assessment(project_)), nullptr) << "still said";
  for (const Holds& holds : row.offers) {
    const std::vector<double>& values = engine()[*catalogue().findInput(holds.key)].values;
    ASSERT_EQ(values.size(), holds.values.size()) << holds.key;
    for (std::size_t i = 0; i < values.size(); ++i) {
      EXPECT_NEAR(values[i], holds.values[i], 1e-9 * std::abs(holds.values[i])) << holds.key;
    }
  }
}

constexpr const char* kTansy = "tansy-270";
constexpr const char* kBurdock = "burdock-719";
constexpr const char* kTeasel = "teasel-125";
constexpr const char* kCulvert = "culvert-1040";

std::string nameOf(const testing::TestParamInfo<Row>& row) { return row.param.name; }

INSTANTIATE_TEST_SUITE_P(
    BoreThrowAndRod, SlipOfThePen,
    testing::Values(Row{.name = "BoreInInches",
                        .sample = kTansy,
                        .typed = {{"bore_m", "2.992"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "bore_m",
                        .says = {"2.992 mm", "Inches", "75.997 mm", "76.000 mm", "donor"},
                        .offers = {{"bore_m", {2.992 * inch}}},
                        .stands = {{"displacement_m3", State::Value}}},
                    Row{.name = "BoreOfThreeInches",
                        .sample = kTansy,
                        .typed = {{"bore_m", "3.0"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "bore_m",
                        .says = {"3.00 mm", "Inches", "76.20 mm", "76.00 mm"},
                        .offers = {{"bore_m", {76.2 * mm}}}},
                    Row{.name = "BoreInCentimetres",
                        .sample = kTansy,
                        .typed = {{"bore_m", "7.6"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "bore_m",
                        .says = {"7.60 mm", "Centimetres", "76.00 mm"},
                        .offers = {{"bore_m", {76 * mm}}}},
                    Row{.name = "OneBoreOfThreeInCentimetres",
                        .sample = kBurdock,
                        .typed = {{"bore_m", "68.0; 6.8; 68.0"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "bore_m",
                        .says = {"6.80 mm", "Centimetres", "68.00 mm"},
                        .offers = {{"bore_m", {68 * mm, 68 * mm, 68 * mm}}}},
                    Row{.name = "BoreInMetres",
                        .sample = kTansy,
                        .typed = {{"bore_m", "0.076"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "bore_m",
                        .says = {"0.076 mm", "cannot be", "Metres", "76.00 mm"},
                        .offers = {{"bore_m", {76 * mm}}},
                        .stands = {{"displacement_m3", State::Refused},
                                   {"squish_gap_m", State::Value},
                                   {"compression_ratio", State::Refused}}},
                    Row{.name = "NegativeBore",
                        .sample = kTansy,
                        .typed = {{"bore_m", "-76"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "bore_m",
                        .says = {"−76.00 mm", "cannot be"},
                        .stands = {{"displacement_m3", State::Refused}}},
                    Row{.name = "NegativeStroke",
                        .sample = kTansy,
                        .typed = {{"throw_m", ""}, {"stroke_m", "-74"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "stroke_m",
                        .says = {"−74.00 mm", "cannot be"},
                        .stands = {{"true_stroke_m", State::Refused}}},
                    Row{.name = "NegativeRod",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "-126.5"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "rod_length_m",
                        .says = {"−126.50 mm", "cannot be"},
                        .stands = {{"rod_ratio", State::Refused}}},
                    Row{.name = "StrokeWithTheWrongUnit",
                        .sample = kTansy,
                        .typed = {{"throw_m", ""}, {"stroke_m", "66 in"}},
                        .weight = Weight::Forbids,
                        .rule = "unusual",
                        .about = "stroke_m",
                        .says = {"1676.40 mm", "Millimetres", "66.00 mm"},
                        .offers = {{"stroke_m", {66 * mm}}}},
                    Row{.name = "ThrowTypedAsStroke",
                        .sample = kTansy,
                        .typed = {{"throw_m", ""}, {"stroke_m", "34"}},
                        .weight = Weight::Objects,
                        .rule = "throw_for_stroke",
                        .about = "stroke_m",
                        .says = {"34.00 mm", "half the donor's", "68.00 mm", "throw"},
                        .offers = {{"throw_m", {34 * mm}}, {"stroke_m", {}}}},
                    Row{.name = "DonorsStrokeTypedAsThrow",
                        .sample = kTansy,
                        .typed = {{"throw_m", "68"}},
                        .weight = Weight::Forbids,
                        .rule = "stroke_for_throw",
                        .about = "throw_m",
                        .says = {"68.00 mm", "ruins the web", "34.00 mm"},
                        .offers = {{"throw_m", {34 * mm}}}},
                    Row{.name = "StrokeTypedAsThrow",
                        .sample = kBurdock,
                        .typed = {{"throw_m", "66"}},
                        .weight = Weight::Forbids,
                        .rule = "stroke_for_throw",
                        .about = "throw_m",
                        .says = {"66.00 mm", "132.00 mm", "0.89", "33.00 mm"},
                        .offers = {{"throw_m", {33 * mm}}}},
                    Row{.name = "ThrowAndStrokeThatDoNotAgree",
                        .sample = kTansy,
                        .typed = {{"stroke_m", "75"}},
                        .weight = Weight::Objects,
                        .rule = "throw_against_stroke",
                        .about = "throw_m",
                        .says = {"37.000 mm", "75.000 mm", "37.500 mm"},
                        .offers = {{"throw_m", {37 * mm}}, {"stroke_m", {}}}},
                    Row{.name = "RodTooShortToTurn",
                        .sample = kTansy,
                        .typed = {{"throw_m", "40"}, {"rod_length_m", "38"}},
                        .weight = Weight::Forbids,
                        .rule = "refused",
                        .about = "throw_m",
                        .says = {"38.00 mm", "cannot turn", "40.00 mm", "offset"},
                        .stands = {{"squish_gap_m", State::Refused},
                                   {"mean_piston_speed_m_s", State::Refused},
                                   {"bob_weight_kg", State::Value}}},
                    Row{.name = "OffsetThatLeavesNoBottomDeadCentre",
                        .sample = kTansy,
                        .typed = {{"cylinder_offset_m", "90"},
                                  {"cylinder_offset_side", "away_from_thrust_side"}},
                        .weight = Weight::Forbids,
                        .rule = "refused",
                        .about = "throw_m",
                        .says = {"126.50 mm", "cannot turn", "127.00 mm"},
                        .stands = {{"true_stroke_m", State::Refused}}},
                    Row{.name = "RodRatioBelowTheLimit",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "90.3"}},
                        .weight = Weight::Objects,
                        .rule = "rod_ratio",
                        .about = "rod_length_m",
                        .says = {"1.22", "24.2°", "1.30"},
                        .stands = {{"rod_ratio", State::Value}}},
                    Row{.name = "ShortRod",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "104"}},
                        .weight = Weight::Objects,
                        .rule = "rod_ratio",
                        .about = "rod_length_m",
                        .says = {"1.41", "skirt"}},
                    Row{.name = "RodOverTheEyesByItsRatio",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "214.6"}},
                        .weight = Weight::Objects,
                        .rule = "rod_over_the_eyes",
                        .about = "rod_length_m",
                        .says = {"2.90", "over the eyes"},
                        .offers = {{"rod_length_m", {187.6 * mm}}}},
                    Row{.name = "RodOverTheEyesByTheProudCrown",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "153.5"}},
                        .weight = Weight::Objects,
                        .rule = "crown_proud_by_the_eyes",
                        .about = "rod_length_m",
                        .says = {"2.07", "25.40 mm", "half of each eye"},
                        .offers = {{"rod_length_m", {126.5 * mm}}}},
                    Row{.name = "CompressionHeightToThePinsEdge",
                        .sample = kTansy,
                        .typed = {{"compression_height_m", "21.5"}},
                        .weight = Weight::Objects,
                        .rule = "crown_low_by_half_the_pin",
                        .about = "compression_height_m",
                        .says = {"9.00 mm lower", "18.00 mm", "edge"},
                        .offers = {{"compression_height_m", {30.5 * mm}}}},
                    Row{.name = "CompressionHeightToTheDome",
                        .sample = kTansy,
                        .typed = {{"compression_height_m", "33.5"}},
                        .weight = Weight::Forbids,
                        .rule = "squish_closes",
                        .about = "head_gasket_m",
                        .says = {"−2.10 mm", "top of the dome", "squish band", "crown volume"}},
                    Row{.name = "LargeOffset",
                        .sample = kTeasel,
                        .typed = {{"cylinder_offset_m", "13"},
                                  {"cylinder_offset_side", "away_from_thrust_side"}},
                        .weight = Weight::Objects,
                        .rule = "large_offset",
                        .about = "cylinder_offset_m",
                        .says = {"13.00 mm", "27.25 mm", "47.7 %"}},
                    Row{.name = "PinOffsetWithASign",
                        .sample = kTansy,
                        .typed = {{"pin_offset_m", "-0.5"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "pin_offset_m",
                        .says = {"−0.50 mm", "The side says the sign",
                                 "0.50 mm towards the thrust side"},
                        .offers = {{"pin_offset_m", {0.5 * mm}}, {"pin_offset_side", {0.0}}},
                        .stands = {{"true_stroke_m", State::Refused}}},
                    Row{.name = "PinOffsetWithoutItsSide",
                        .sample = kTansy,
                        .typed = {{"pin_offset_m", "0.5"}},
                        .weight = Weight::Forbids,
                        .rule = "pin_offset_side",
                        .about = "pin_offset_side",
                        .says = {"0.50 mm", "Top dead centre moves the other way"},
                        .offers = {{"pin_offset_side", {0.0}}},
                        .stands = {{"true_stroke_m", State::Waits}}},
                    Row{.name = "CylinderOffsetWithoutItsSide",
                        .sample = kTansy,
                        .typed = {{"cylinder_offset_m", "4"}},
                        .weight = Weight::Forbids,
                        .rule = "cylinder_offset_side",
                        .about = "cylinder_offset_side",
                        .says = {"4.00 mm", "Top dead centre moves the other way"},
                        .offers = {{"cylinder_offset_side", {0.0}}},
                        .stands = {{"true_stroke_m", State::Waits}}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    DeckAndStack, SlipOfThePen,
    testing::Values(
        Row{.name = "HalfTheMandrelLeftOut",
            .sample = kTansy,
            .typed = {{"seat_height_m", "107.7"}, {"deck_height_m", "195.6"}},
            .weight = Weight::Forbids,
            .rule = "two_routes_to_the_deck",
            .about = "seat_height_m",
            .says = {"12.50 mm", "25.00 mm mandrel"},
            .offers = {{"seat_height_m", {120.2 * mm}}}},
        Row{.name = "TwoWaysToTheDeckApart",
            .sample = kTansy,
            .typed = {{"deck_height_m", "195.2 ± 0.03"}},
            .weight = Weight::Forbids,
            .rule = "two_routes_to_the_deck",
            .about = "seat_height_m",
            .says = {"differ by 0.40 mm", "± of 0.10 mm", "195.60 mm", "195.20 mm"},
            .stands = {{"squish_gap_m", State::Value}}},
        Row{.name = "SpacerInTheDirectHeight",
            .sample = kTansy,
            .typed = {{"deck_height_m", "194.25"}},
            .weight = Weight::Forbids,
            .rule = "two_routes_to_the_deck",
            .about = "seat_height_m",
            .says = {"1.35 mm", "counts twice"},
            .offers = {{"deck_height_m", {195.6 * mm}}}},
        Row{.name = "SpacerInTheOnlyHeight",
            .sample = kTeasel,
            .typed = {{"seat_height_m", ""}, {"barrel_height_m", ""}, {"deck_height_m", "168.2"}},
            .weight = Weight::Objects,
            .rule = "spacer_counted_twice",
            .about = "deck_height_m",
            .says = {"168.20 mm", "1.40 mm", "counts twice"},
            .offers = {{"deck_height_m", {166.8 * mm}}}},
        Row{.name = "ProtrusionAddedTwice",
            .sample = kBurdock,
            .typed = {{"height_taken_to", "block_face"}},
            .weight = Weight::Objects,
            .rule = "height_taken_to_against_donor",
            .about = "height_taken_to",
            .says = {"0.04 mm", "added to a height that has it", "which face"},
            .offers = {{"height_taken_to", {0.0}}}},
        Row{.name = "ProtrusionLeftOut",
            .sample = kCulvert,
            .typed = {{"height_taken_to", "barrel_or_liner_top"}},
            .weight = Weight::Objects,
            .rule = "height_taken_to_against_donor",
            .about = "height_taken_to",
            .says = {"0.08 mm", "left out"},
            .offers = {{"height_taken_to", {1.0}}}},
        Row{.name = "ProtrusionWithoutItsFace",
            .sample = kBurdock,
            .typed = {{"height_taken_to", ""}},
            .weight = Weight::Remarks,
            .rule = "liner_protrusion_counted",
            .about = "height_taken_to",
            .says = {"0.04 mm", "not added"},
            .offers = {{"height_taken_to", {0.0}}}},
        Row{.name = "SkimWithoutItsMinus",
            .sample = kTansy,
            .typed = {{"spacer_m", "1.35"}},
            .weight = Weight::Objects,
            .rule = "spacer_sign",
            .about = "spacer_m",
            .says = {"A plate raises the block", "1.35 mm off", "Minus?"},
            .offers = {{"spacer_m", {-1.35 * mm}}}},
        Row{.name = "SpacerInThou",
            .sample = kBurdock,
            .typed = {{"spacer_m", "37.4"}},
            .weight = Weight::Objects,
            .rule = "spacer_thickness",
            .about = "spacer_m",
            .says = {"37.40 mm", "Thousandths of an inch", "0.95 mm"},
            .offers = {{"spacer_m", {37.4e-3 * inch}}}},
        Row{.name = "NegativeSpacer",
            .sample = kTansy,
            .typed = {{"spacer_m", "-1.35"}},
            .weight = Weight::Remarks,
            .rule = "skim",
            .about = "spacer_m",
            .says = {"−1.35 mm", "barrel foot", "deck", "127.85 mm"},
            .offers = {{"rod_length_m", {127.85 * mm}}, {"spacer_m", {0.0}}}},
        Row{.name = "SpacerTooThinToBeAPlate",
            .sample = kTansy,
            .typed = {{"spacer_m", "0.15"}},
            .weight = Weight::Objects,
            .rule = "spacer_thickness",
            .about = "spacer_m",
            .says = {"0.15 mm", "not a plate", "0.80 mm", "0.40 mm instead of 0.25 mm"},
            .offers = {{"base_gasket_m", {0.40 * mm}}, {"spacer_m", {0.0}}}},
        Row{.name = "SpacerTooThick",
            .sample = kBurdock,
            .typed = {{"spacer_m", "14 mm"}},
            .weight = Weight::Objects,
            .rule = "spacer_thickness",
            .about = "spacer_m",
            .says = {"14.00 mm", "12.00 mm", "spigot", "studs", "cam drive"},
            .offers = {{"spacer_m", {1.4 * mm}}}},
        Row{.name = "BaseGasketFromThePacket",
            .sample = kTeasel,
            .typed = {{"base_gasket_m", "0.50", Origin::Catalogue}},
            .weight = Weight::Objects,
            .rule = "gasket_from_the_packet",
            .about = "base_gasket_m",
            .says = {"0.50 mm", "packet", "0.425 mm", "solder"}},
        Row{.name = "HeadGasketFromThePacket",
            .sample = kTansy,
            .typed = {{"head_gasket_m", "0.80", Origin::Catalogue}},
            .weight = Weight::Objects,
            .rule = "gasket_from_the_packet",
            .about = "head_gasket_m",
            .says = {"0.80 mm", "packet", "0.68 mm", "solder"}},
        Row{.name = "HeadGasketInMicrometres",
            .sample = kTansy,
            .typed = {{"head_gasket_m", "650"}},
            .weight = Weight::Forbids,
            .rule = "impossible",
            .about = "head_gasket_m",
            .says = {"650.00 mm", "cannot be", "Micrometres", "0.65 mm"},
            .offers = {{"head_gasket_m", {0.65 * mm}}},
            .stands = {{"squish_gap_m", State::Refused},
                       {"spacer_to_make_m", State::Refused},
                       {"deck_clearance_m", State::Value}}},
        Row{.name = "HeadGasketWithAComma",
            .sample = kTansy,
            .typed = {{"head_gasket_m", "1,200"}},
            .weight = Weight::Remarks,
            .rule = "thousand_or_decimal",
            .about = "head_gasket_m",
            .says = {"“1,200”", "1.20 mm", "1200.00 mm"},
            .stands = {{"squish_gap_m", State::Value}}},
        Row{.name = "HeadGasketThickerThanTheSquish",
            .sample = kTansy,
            .typed = {{"head_gasket_m", "1.6"}, {"wanted_squish_m", "1.0"}, {"spacer_m", ""}},
            .weight = Weight::Objects,
            .rule = "gasket_over_squish",
            .about = "head_gasket_m",
            .says = {"1.60 mm", "1.00 mm", "0.60 mm proud", "77.50 mm"}},
        Row{.name = "GasketBoreAsARadius",
            .sample = kTansy,
            .typed = {{"head_gasket_bore_m", "38.75"}},
            .weight = Weight::Forbids,
            .rule = "gasket_bore",
            .about = "head_gasket_bore_m",
            .says = {"38.75 mm", "radius", "77.50 mm"},
            .offers = {{"head_gasket_bore_m", {77.5 * mm}}}},
        Row{.name = "GasketOverhangsTheBore",
            .sample = kBurdock,
            .typed = {{"bore_m", "66"}, {"head_gasket_bore_m", "65.0"}},
            .weight = Weight::Forbids,
            .rule = "gasket_bore",
            .about = "head_gasket_bore_m",
            .says = {"65.00 mm", "66.00 mm", "0.50 mm all round"}},
        Row{.name = "GasketLeavesTheBoreOpen",
            .sample = kTansy,
            .typed = {{"head_gasket_bore_m", "82"}},
            .weight = Weight::Objects,
            .rule = "gasket_bore",
            .about = "head_gasket_bore_m",
            .says = {"82.00 mm", "3.00 mm all round"}},
        Row{.name = "SquishWantedInInches",
            .sample = kTansy,
            .typed = {{"wanted_squish_m", "0.035"}},
            .weight = Weight::Objects,
            .rule = "unusual",
            .about = "wanted_squish_m",
            .says = {"0.035 mm", "Inches", "0.889 mm"},
            .offers = {{"wanted_squish_m", {0.035 * inch}}}},
        Row{.name = "SquishClosesAtWorstCase",
            .sample = kTansy,
            .typed = {{"spacer_m", "-2.12 ± 0.01"}},
            .weight = Weight::Forbids,
            .rule = "squish_closes",
            .about = "head_gasket_m",
            .says = {"0.13 mm", "−0.02 mm", "can touch the head"},
            .stands = {{"squish_gap_m", State::Value}}},
        Row{.name = "SquishTight",
            .sample = kTansy,
            .typed = {{"spacer_m", "-1.65 ± 0.01"}},
            .weight = Weight::Objects,
            .rule = "squish_range",
            .about = "head_gasket_m",
            .says = {"0.60 mm", "0.45 mm at worst case", "0.80 mm"}},
        Row{.name = "SquishTightAtWorstCase",
            .sample = kTansy,
            .typed = {{"spacer_m", "-1.35 ± 0.01"}},
            .weight = Weight::Remarks,
            .rule = "squish_range",
            .about = "head_gasket_m",
            .says = {"0.90 mm", "0.75 mm at worst case", "under 0.80 mm", "wire"}},
        Row{.name = "SeatsApart",
            .sample = kBurdock,
            .typed = {{"seat_height_m", "98.12; 98.20; 98.29"}},
            .weight = Weight::Objects,
            .rule = "places_apart",
            .about = "seat_height_m",
            .says = {"cylinder 3", "0.17 mm", "0.15 mm", "Measure again"}},
        Row{.name = "BaseGasketThinnerThanAny",
            .sample = kTansy,
            .typed = {{"base_gasket_m", "0.05"}},
            .weight = Weight::Objects,
            .rule = "thin_gasket",
            .about = "base_gasket_m",
            .says = {"0.05 mm", "none is fitted"}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Volumes, SlipOfThePen,
    testing::Values(Row{.name = "ChamberATenth",
                        .sample = kTansy,
                        .typed = {{"chamber_volume_m3", "3.1"}},
                        .weight = Weight::Objects,
                        .rule = "compression_ratio_range",
                        .about = "chamber_volume_m3",
                        .says = {"53.", "3.10 ml", "factor of ten"},
                        .offers = {{"chamber_volume_m3", {31 * ml}}},
                        .stands = {{"compression_ratio", State::Value}}},
                    Row{.name = "ChamberTenTimes",
                        .sample = kTansy,
                        .typed = {{"chamber_volume_m3", "310"}},
                        .weight = Weight::Objects,
                        .rule = "compression_ratio_range",
                        .about = "chamber_volume_m3",
                        .says = {"2.07", "310.00 ml", "factor of ten"},
                        .offers = {{"chamber_volume_m3", {31 * ml}}}},
                    Row{.name = "ChamberInLitres",
                        .sample = kTansy,
                        .typed = {{"chamber_volume_m3", "0.031"}},
                        .weight = Weight::Objects,
                        .rule = "compression_ratio_range",
                        .about = "chamber_volume_m3",
                        .says = {"0.031 ml", "litres"},
                        .offers = {{"chamber_volume_m3", {31 * ml}}}},
                    Row{.name = "RatioTooHigh",
                        .sample = kCulvert,
                        .typed = {{"crown_volume_m3", "20"}},
                        .weight = Weight::Objects,
                        .rule = "compression_ratio_range",
                        .about = "chamber_volume_m3",
                        .says = {"31.8", "14 to 23", "check the volumes"}},
                    Row{.name = "DishTypedAsDome",
                        .sample = kBurdock,
                        .typed = {{"crown_volume_sense", "takes"}},
                        .weight = Weight::Objects,
                        .rule = "crown_sense_against_donor",
                        .about = "crown_volume_sense",
                        .says = {"takes", "12.37", "11.20"},
                        .offers = {{"crown_volume_sense", {1.0}}}},
                    Row{.name = "CrownWithoutItsSense",
                        .sample = kBurdock,
                        .typed = {{"crown_volume_sense", ""}},
                        .weight = Weight::Forbids,
                        .rule = "crown_without_sense",
                        .about = "crown_volume_sense",
                        .says = {"1.20 ml", "dome", "dish"},
                        .offers = {{"crown_volume_sense", {0.0}}},
                        .stands = {{"compression_ratio", State::Waits}}},
                    Row{.name = "InletClosingFromTop",
                        .sample = kTansy,
                        .typed = {{"inlet_closing_rad", "238"}},
                        .weight = Weight::Objects,
                        .rule = "inlet_closing_from_top",
                        .about = "inlet_closing_rad",
                        .says = {"238° after bottom", "58° after bottom"},
                        .offers = {{"inlet_closing_rad", {58 * deg}}}},
                    // The effective ratio cannot exceed the full one: the travel is at most the
                    // stroke. A closing before bottom dead centre is what would be meant.
                    Row{.name = "InletClosingBeforeBottom",
                        .sample = kTansy,
                        .typed = {{"inlet_closing_rad", "-58"}},
                        .weight = Weight::Forbids,
                        .rule = "inlet_closing_before_bottom",
                        .about = "inlet_closing_rad",
                        .says = {"−58°", "before bottom", "58° after"},
                        .offers = {{"inlet_closing_rad", {58 * deg}}}},
                    Row{.name = "InletClosingOfAMildCamAtALift",
                        .sample = kTansy,
                        .typed = {{"inlet_closing_rad", "-10"}, {"inlet_closing_lift_m", "1.0"}},
                        .weight = Weight::Objects,
                        .rule = "inlet_closing_before_bottom",
                        .about = "inlet_closing_rad",
                        .says = {"−10°", "before bottom"},
                        .offers = {{"inlet_closing_rad", {10 * deg}}}},
                    Row{.name = "InletClosingWithoutLift",
                        .sample = kTansy,
                        .typed = {{"inlet_closing_lift_m", ""}},
                        .weight = Weight::Objects,
                        .rule = "inlet_closing_without_lift",
                        .about = "inlet_closing_lift_m",
                        .says = {"58°", "1.00 mm", "20°"}},
                    Row{.name = "ValvesOnATwoStroke",
                        .sample = kTeasel,
                        .typed = {{"inlet_valve_count", "2"}},
                        .weight = Weight::Objects,
                        .rule = "two_stroke_valves",
                        .about = "inlet_valve_count",
                        .says = {"kept, not used", "two-stroke"},
                        .stands = {{"breathing_index", State::None}}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    FitsAndMasses, SlipOfThePen,
    testing::Values(
        Row{.name = "PistonInKilograms",
            .sample = kTansy,
            .typed = {{"piston_mass_kg", "0.215"}},
            .weight = Weight::Objects,
            .rule = "unusual",
            .about = "piston_mass_kg",
            .says = {"0.215 g", "Kilograms", "215.0 g", "205.0 g"},
            .offers = {{"piston_mass_kg", {215 * g}}},
            .stands = {{"reciprocating_mass_kg", State::Value}}},
        Row{.name = "PistonOfManyKilograms",
            .sample = kTansy,
            .typed = {{"piston_mass_kg", "215 kg"}},
            .weight = Weight::Forbids,
            .rule = "unusual",
            .about = "piston_mass_kg",
            .says = {"215 000.0 g", "Grams", "215.0 g"},
            .offers = {{"piston_mass_kg", {215 * g}}}},
        Row{.name = "PistonInOunces",
            .sample = kTansy,
            .typed = {{"piston_mass_kg", "7.58"}},
            .weight = Weight::Objects,
            .rule = "unusual",
            .about = "piston_mass_kg",
            .says = {"7.58 g", "Ounces", "214.9 g"},
            .offers = {{"piston_mass_kg", {7.58 * 28.349523125 * g}}}},
        Row{.name = "PistonForAnotherBore",
            .sample = kTansy,
            .typed = {{"piston_mass_kg", "1200"}},
            .weight = Weight::Objects,
            .rule = "piston_mass_for_its_bore",
            .about = "piston_mass_kg",
            .says = {"1200.0 g", "76.00 mm"}},
        Row{.name = "CageOnOneScaleOnly",
            .sample = kBurdock,
            .typed = {{"rod_mass_kg", "322"}},
            .weight = Weight::Forbids,
            .rule = "rod_ends_against_whole",
            .about = "rod_small_end_mass_kg",
            .says = {"298.0 g", "322.0 g", "24.0 g apart", "the cage", "84.0 g", "214.0 g"}},
        Row{.name = "RodEndsAgainstTheWhole",
            .sample = kTansy,
            .typed = {{"rod_mass_kg", "385"}},
            .weight = Weight::Forbids,
            .rule = "rod_ends_against_whole",
            .about = "rod_small_end_mass_kg",
            .says = {"365.0 g", "385.0 g", "20.0 g apart", "105.0 g", "260.0 g"}},
        Row{.name = "RodEndsSwapped",
            .sample = kTansy,
            .typed = {{"rod_small_end_mass_kg", "260"}, {"rod_big_end_mass_kg", "105"}},
            .weight = Weight::Objects,
            .rule = "rod_ends_swapped",
            .about = "rod_small_end_mass_kg",
            .says = {"260.0 g", "105.0 g", "swapped"},
            .offers = {{"rod_small_end_mass_kg", {105 * g}}, {"rod_big_end_mass_kg", {260 * g}}}},
        Row{.name = "OneCirclip",
            .sample = kTansy,
            .typed = {{"circlip_mass_kg", "1"}},
            .weight = Weight::Objects,
            .rule = "one_circlip_weighed",
            .about = "circlip_mass_kg",
            .says = {"One clip or both", "1.0 g", "2.0 g"},
            .offers = {{"circlip_mass_kg", {2 * g}}}},
        Row{.name = "BalanceFactorAsAFraction",
            .sample = kTansy,
            .typed = {{"balance_factor", "0.5"}},
            .weight = Weight::Objects,
            .rule = "unusual",
            .about = "balance_factor",
            .says = {"0.5 %", "fraction", "50.0 %"},
            .offers = {{"balance_factor", {0.5}}}},
        Row{.name = "BalanceFactorOverAll",
            .sample = kTansy,
            .typed = {{"balance_factor", "120"}},
            .weight = Weight::Objects,
            .rule = "balance_factor_outside",
            .about = "balance_factor",
            .says = {"120.0 %", "0 to 100 %", "nothing wrong in the sum"},
            .stands = {{"bob_weight_kg", State::Value}}},
        Row{.name = "BalanceFactorBelowNought",
            .sample = kTansy,
            .typed = {{"balance_factor", "-5"}},
            .weight = Weight::Objects,
            .rule = "balance_factor_outside",
            .about = "balance_factor",
            .says = {"−5.0 %"}},
        Row{.name = "GudgeonPinLargerThanItsEye",
            .sample = kTansy,
            .typed = {{"gudgeon_pin_diameter_m", "20.0"}},
            .weight = Weight::Forbids,
            .rule = "pin_in_small_end",
            .about = "gudgeon_pin_diameter_m",
            .says = {"20.00 mm", "18.00 mm"}},
        Row{.name = "ThinBush",
            .sample = kCulvert,
            .typed = {{"small_end_bore_m", "36.2"}},
            .weight = Weight::Objects,
            .rule = "bush_wall",
            .about = "small_end_bore_m",
            .says = {"0.60 mm", "1.00 mm"}},
        Row{.name = "CrankpinAndEyeSwapped",
            .sample = kTansy,
            .typed = {{"big_end_pin_diameter_m", "36"}, {"big_end_eye_diameter_m", "28"}},
            .weight = Weight::Forbids,
            .rule = "crankpin_in_eye",
            .about = "big_end_pin_diameter_m",
            .says = {"36.00 mm", "28.00 mm", "swapped"},
            .offers = {{"big_end_pin_diameter_m", {28 * mm}},
                       {"big_end_eye_diameter_m", {36 * mm}}},
            .stands = {{"ceiling_big_end_rad_s", State::Refused},
                       {"rev_ceiling_rad_s", State::Refused},
                       {"ceiling_ring_flutter_rad_s", State::Value}}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    LimitsAndSpeeds, SlipOfThePen,
    testing::Values(Row{.name = "RingTenTimes",
                        .sample = kTansy,
                        .typed = {{"ring_width_m", "12"}},
                        .weight = Weight::Objects,
                        .rule = "ring_radial_depth",
                        .about = "ring_width_m",
                        .says = {"12.00 mm", "tenth", "1.20 mm"},
                        .offers = {{"ring_width_m", {1.2 * mm}}}},
                    Row{.name = "RingOfFifteen",
                        .sample = kTansy,
                        .typed = {{"ring_width_m", "15"}},
                        .weight = Weight::Objects,
                        .rule = "ring_radial_depth",
                        .about = "ring_width_m",
                        .says = {"15.00 mm", "1.50 mm"},
                        .offers = {{"ring_width_m", {1.5 * mm}}}},
                    Row{.name = "RingInInches",
                        .sample = kTansy,
                        .typed = {{"ring_width_m", "0.047"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "ring_width_m",
                        .says = {"0.047 mm", "Inches", "1.19"},
                        .offers = {{"ring_width_m", {0.047 * inch}}}},
                    Row{.name = "RingRadialDepth",
                        .sample = kBurdock,
                        .typed = {{"ring_width_m", "3.0"}},
                        .weight = Weight::Objects,
                        .rule = "ring_radial_depth",
                        .about = "ring_width_m",
                        .says = {"3.00 mm", "0.80 mm", "along the bore, not across"}},
                    Row{.name = "RodSectionInSquareCentimetres",
                        .sample = kTansy,
                        .typed = {{"rod_least_section_m2", "1.2"}},
                        .weight = Weight::Objects,
                        .rule = "unusual",
                        .about = "rod_least_section_m2",
                        .says = {"1.2 mm²", "Square centimetres", "120.0 mm²"},
                        .offers = {{"rod_least_section_m2", {120 * mm2}}}},
                    Row{.name = "ValvesOfTheWholeEngine",
                        .sample = kTansy,
                        .typed = {{"inlet_valve_count", "4"}},
                        .weight = Weight::Objects,
                        .rule = "inlet_valve_area",
                        .about = "inlet_valve_count",
                        .says = {"0.67", "one cylinder"},
                        .offers = {{"inlet_valve_count", {2.0}}}},
                    Row{.name = "ValveAsWideAsTheBore",
                        .sample = kCulvert,
                        .typed = {{"inlet_valve_diameter_m", "105"}},
                        .weight = Weight::Forbids,
                        .rule = "inlet_valve_in_bore",
                        .about = "inlet_valve_diameter_m",
                        .says = {"105.00 mm", "bore of 105.00 mm"},
                        .stands = {{"breathing_index", State::Refused},
                                   {"breathing_speed_rad_s", State::Refused},
                                   {"rev_ceiling_rad_s", State::Value}}},
                    Row{.name = "ValveWiderThanTheBoreBeforeASpeedIsWanted",
                        .sample = kTansy,
                        .typed = {{"inlet_valve_diameter_m", "80"}, {"wanted_speed_rad_s", ""}},
                        .weight = Weight::Forbids,
                        .rule = "inlet_valve_in_bore",
                        .about = "inlet_valve_diameter_m",
                        .says = {"80.00 mm", "bore of 76.00 mm"},
                        .stands = {{"breathing_index", State::Waits}}},
                    Row{.name = "RingOfTheCylinderThatGoverns",
                        .sample = kBurdock,
                        .typed = {{"ring_width_m", "1.0; 1.2; 1.0"}},
                        .weight = Weight::Objects,
                        .rule = "speed_over_ceiling",
                        .about = "wanted_speed_rad_s",
                        .says = {"9500 rpm", "8345 rpm with the 1.20 mm ring", "donor's 0.80 mm",
                                 "10 616 rpm"}},
                    Row{.name = "DonorsThrowTypedAsItsStroke",
                        .sample = kCulvert,
                        .typed = {{"throw_m", ""}, {"stroke_m", "220"}},
                        .weight = Weight::Objects,
                        .rule = "donors_throw_for_stroke",
                        .about = "stroke_m",
                        .says = {"donor's stroke of 110.00 mm", "half of the 220.00 mm", "throw"}},
                    Row{.name = "DeckSpreadWhileTheUseIsNotSaid",
                        .sample = kBurdock,
                        .typed = {{"use", ""}},
                        .weight = Weight::Objects,
                        .rule = "deck_spread",
                        .about = "spacer_m",
                        .says = {"0.17 mm", "0.10 mm"},
                        .engine = 2},
                    Row{.name = "SquishWhileTheCycleIsNotSaid",
                        .sample = kTeasel,
                        .typed = {{"cycle", ""}, {"spacer_m", "1.2"}},
                        .weight = Weight::Objects,
                        .rule = "squish_range",
                        .about = "head_gasket_m",
                        .says = {"0.75 mm", "0.80 mm"}},
                    Row{.name = "SpeedWithoutANought",
                        .sample = kTansy,
                        .typed = {{"wanted_speed_rad_s", "850"}},
                        .weight = Weight::Objects,
                        .rule = "speed_against_donor",
                        .about = "wanted_speed_rad_s",
                        .says = {"850 rpm", "2.10 m/s", "8500 rpm"},
                        .offers = {{"wanted_speed_rad_s", {8500 * rpm}}}},
                    Row{.name = "SpeedWithANoughtTooMany",
                        .sample = kTansy,
                        .typed = {{"wanted_speed_rad_s", "85000"}},
                        .weight = Weight::Objects,
                        .rule = "speed_against_donor",
                        .about = "wanted_speed_rad_s",
                        .says = {"85 000 rpm", "8500 rpm"},
                        .offers = {{"wanted_speed_rad_s", {8500 * rpm}}}},
                    Row{.name = "SpeedOfTheDonorWithANoughtTooMany",
                        .sample = kTansy,
                        .typed = {{"proven_speed_rad_s", "85000"}},
                        .weight = Weight::Objects,
                        .rule = "speed_out_of_reach",
                        .about = "proven_speed_rad_s",
                        .says = {"85 000 rpm", "192.67 m/s", "30.0 m/s", "8500 rpm"},
                        .offers = {{"proven_speed_rad_s", {8500 * rpm}}},
                        .engine = 0},
                    Row{.name = "SpeedAboveTheLineThatGoverns",
                        .sample = kTansy,
                        .typed = {{"wanted_speed_rad_s", "8500"}},
                        .weight = Weight::Objects,
                        .rule = "speed_over_ceiling",
                        .about = "wanted_speed_rad_s",
                        .says = {"8500 rpm", "ring flutter", "7842 rpm", "1.20 mm"}},
                    Row{.name = "ClassInLitres",
                        .sample = kTansy,
                        .typed = {{"class_limit_m3", "0.7"}},
                        .weight = Weight::Objects,
                        .rule = "class_limit_far_off",
                        .about = "class_limit_m3",
                        .says = {"0.70 ml", "671.40 ml", "Litres"},
                        .offers = {{"class_limit_m3", {700 * ml}}}},
                    Row{.name = "ClassPerhapsExceeded",
                        .sample = kTansy,
                        .typed = {{"class_limit_m3", "671.5"}},
                        .weight = Weight::Objects,
                        .rule = "class_limit",
                        .about = "class_limit_m3",
                        .says = {"671.40 ml", "may be over", "671.50 ml", "0.10 ml", "0.18 ml"},
                        .offers = {{"bore_m", {75.99 * mm}}}},
                    Row{.name = "ClassExceeded",
                        .sample = kTansy,
                        .typed = {{"class_limit_m3", "650"}},
                        .weight = Weight::Objects,
                        .rule = "class_limit",
                        .about = "class_limit_m3",
                        .says = {"671.40 ml", "21.40 ml over", "650.00 ml"}},
                    Row{.name = "ClassExceededByALittle",
                        .sample = kTansy,
                        .typed = {{"class_limit_m3", "665"}},
                        .weight = Weight::Objects,
                        .rule = "class_limit",
                        .about = "class_limit_m3",
                        .says = {"671.40 ml", "6.40 ml over", "665.00 ml"},
                        .offers = {{"bore_m", {75.62 * mm}}}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    AnyEntry, SlipOfThePen,
    testing::Values(Row{.name = "NoCylinders",
                        .sample = kTansy,
                        .typed = {{"cylinder_count", "0"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "cylinder_count",
                        .says = {"0 cannot be", "whole number from 1 to 12"},
                        .stands = {{"displacement_m3", State::Refused}}},
                    Row{.name = "HalfACylinder",
                        .sample = kTansy,
                        .typed = {{"cylinder_count", "2.5"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "cylinder_count",
                        .says = {"2.5 cannot be", "whole number from 1 to 12"},
                        .stands = {{"displacement_m3", State::Refused}}},
                    Row{.name = "FortyCylinders",
                        .sample = kTansy,
                        .typed = {{"cylinder_count", "40"}},
                        .weight = Weight::Forbids,
                        .rule = "impossible",
                        .about = "cylinder_count",
                        .says = {"40 cannot be", "whole number from 1 to 12"}},
                    Row{.name = "QuestionMark",
                        .sample = kTansy,
                        .typed = {{"head_gasket_m", "?"}},
                        .weight = Weight::Remarks,
                        .rule = "not_a_number_yet",
                        .about = "head_gasket_m",
                        .says = {"“?”", "not a number yet", "unknown"},
                        .stands = {{"squish_gap_m", State::Waits},
                                   {"deck_clearance_m", State::Value}}},
                    Row{.name = "ToBeConfirmed",
                        .sample = kTansy,
                        .typed = {{"piston_mass_kg", "tbc"}},
                        .weight = Weight::Remarks,
                        .rule = "not_a_number_yet",
                        .about = "piston_mass_kg",
                        .says = {"“tbc”", "not a number yet"},
                        .stands = {{"bob_weight_kg", State::Waits}}},
                    Row{.name = "Dash",
                        .sample = kTansy,
                        .typed = {{"bore_m", "–"}},
                        .weight = Weight::Remarks,
                        .rule = "not_a_number_yet",
                        .about = "bore_m",
                        .says = {"“–”", "not a number yet"},
                        .stands = {{"displacement_m3", State::Waits}}},
                    Row{.name = "NotANumberOfTheMachine",
                        .sample = kTansy,
                        .typed = {{"bore_m", "nan"}},
                        .weight = Weight::Remarks,
                        .rule = "not_a_number_yet",
                        .about = "bore_m",
                        .says = {"“nan”", "not a number yet"},
                        .stands = {{"displacement_m3", State::Waits}}},
                    Row{.name = "Words",
                        .sample = kTansy,
                        .typed = {{"bore_m", "one twenty"}},
                        .weight = Weight::Objects,
                        .rule = "not_a_number_yet",
                        .about = "bore_m",
                        .says = {"“one twenty”", "cannot be read"},
                        .stands = {{"displacement_m3", State::Waits}}},
                    Row{.name = "UnitOfAnotherKind",
                        .sample = kTansy,
                        .typed = {{"bore_m", "76 g"}},
                        .weight = Weight::Objects,
                        .rule = "not_a_number_yet",
                        .about = "bore_m",
                        .says = {"“76 g”", "“g”", "something else"}},
                    Row{.name = "DecimalComma",
                        .sample = kTeasel,
                        .typed = {{"bore_m", "54,5"}},
                        .weight = Weight::Remarks,
                        .rule = "read_as",
                        .about = "bore_m",
                        .says = {"“54,5”", "54.50 mm", "comma"}},
                    Row{.name = "ThousandOrDecimal",
                        .sample = kTansy,
                        .typed = {{"class_limit_m3", "1,200"}},
                        .weight = Weight::Objects,
                        .rule = "thousand_or_decimal",
                        .about = "class_limit_m3",
                        .says = {"“1,200”", "1.20 ml", "1200.00 ml"},
                        .offers = {{"class_limit_m3", {1200 * ml}}}},
                    Row{.name = "FractionOfAnInch",
                        .sample = kBurdock,
                        .typed = {{"bore_m", "2 5/8 in"}},
                        .weight = Weight::Remarks,
                        .rule = "read_as",
                        .about = "bore_m",
                        .says = {"“2 5/8 in”", "66.675 mm"}},
                    Row{.name = "FractionWithAHyphen",
                        .sample = kBurdock,
                        .typed = {{"bore_m", "2-5/8 in"}},
                        .weight = Weight::Remarks,
                        .rule = "read_as",
                        .about = "bore_m",
                        .says = {"66.675 mm"}},
                    Row{.name = "FractionAlone",
                        .sample = kBurdock,
                        .typed = {{"big_end_width_m", "13/16 in"}},
                        .weight = Weight::Remarks,
                        .rule = "read_as",
                        .about = "big_end_width_m",
                        .says = {"20.6375 mm"}},
                    Row{.name = "PastedWithItsUnit",
                        .sample = kCulvert,
                        .typed = {{"piston_mass_kg", "1.65kg"}},
                        .weight = Weight::Remarks,
                        .rule = "read_as",
                        .about = "piston_mass_kg",
                        .says = {"“1.65kg”", "1650.0 g"}},
                    Row{.name = "ToleranceOfNought",
                        .sample = kTansy,
                        .typed = {{"rod_length_m", "126.5 ± 0", Origin::Measured}},
                        .weight = Weight::Objects,
                        .rule = "tolerance_of_nought",
                        .about = "rod_length_m",
                        .says = {"no instrument is perfect", "0.020 mm", "height gauge"},
                        .offers = {{"rod_length_m", {126.5 * mm}}}},
                    Row{.name = "ToleranceInMicrometres",
                        .sample = kTansy,
                        .typed = {{"head_gasket_m", "0.65 ± 20"}},
                        .weight = Weight::Objects,
                        .rule = "tolerance_over_value",
                        .about = "head_gasket_m",
                        .says = {"20.00 mm", "0.65 mm", "Micrometres", "0.02 mm"},
                        .offers = {{"head_gasket_m", {0.65 * mm}}}},
                    Row{.name = "ToleranceLargerThanTheGap",
                        .sample = kBurdock,
                        .typed = {{"liner_proud_m", "0.10 ± 0.15"}},
                        .weight = Weight::Objects,
                        .rule = "tolerance_over_value",
                        .about = "liner_proud_m",
                        .says = {"0.15 mm", "0.10 mm"}},
                    Row{.name = "ListTooShort",
                        .sample = kBurdock,
                        .typed = {{"seat_height_m", "98.12; 98.20"}},
                        .weight = Weight::Forbids,
                        .rule = "list_length",
                        .about = "seat_height_m",
                        .says = {"2 numbers for 3 cylinders"}},
                    Row{.name = "ListTooLong",
                        .sample = kBurdock,
                        .typed = {{"seat_height_m", "98.12; 98.20; 98.29; 98.30"}},
                        .weight = Weight::Objects,
                        .rule = "list_length",
                        .about = "seat_height_m",
                        .says = {"4 numbers for 3 cylinders", "first 3 are used"}},
                    Row{.name = "ReadingsInTheWrongDirection",
                        .sample = kBurdock,
                        .typed = {{"seat_height_m",
                                   "98.12 | 98.20 | 98.29; 98.14 | 98.20 | 98.27; 98.13 | 98.20 | "
                                   "98.28; 98.13 | 98.20 | 98.28"}},
                        .weight = Weight::Forbids,
                        .rule = "list_length",
                        .about = "seat_height_m",
                        .says = {"4 numbers for 3 cylinders", "rows and columns swapped"},
                        .offers = {{"seat_height_m", {98.13 * mm, 98.20 * mm, 98.28 * mm}}}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    BetweenEntries, SlipOfThePen,
    testing::Values(
        Row{.name = "LinerBottomOfTheDonor",
            .sample = kTeasel,
            .typed = {{"liner_bottom_height_m", "60.60"}},
            .weight = Weight::Objects,
            .rule = "liner_bottom_of_the_donor",
            .about = "liner_bottom_height_m",
            .says = {"differs by 1.40 mm", "moves with the barrel", "length"},
            .offers = {{"liner_bottom_height_m", {62.0 * mm}}}},
        Row{.name = "LinerBottomsOfTheDonor",
            .sample = kBurdock,
            .typed = {{"spacer_m", "1.0"}},
            .weight = Weight::Objects,
            .rule = "liner_bottom_of_the_donor",
            .about = "liner_bottom_height_m",
            .says = {"differs by 1.00 mm"},
            .engine = 2},
        Row{.name = "RecessAsksForAProudCrown",
            .sample = kTansy,
            .typed = {{"head_recess_m", "0.3"}},
            .weight = Weight::Objects,
            .rule = "gasket_over_squish",
            .about = "head_gasket_m",
            .says = {"0.65 mm", "recess of 0.30 mm", "gap of 0.90 mm", "0.05 mm proud"}},
        Row{.name = "TwoWaysTooFarApartForAMandrel",
            .sample = kTansy,
            .typed = {{"seat_height_m", "90.2"}, {"deck_height_m", "195.6"}},
            .weight = Weight::Forbids,
            .rule = "two_routes_to_the_deck",
            .about = "seat_height_m",
            .says = {"differ by 30.00 mm"}},
        Row{.name = "LinerHardlyProud",
            .sample = kBurdock,
            .typed = {{"liner_proud_m", "0.02"}},
            .weight = Weight::Objects,
            .rule = "liner_protrusion_small",
            .about = "liner_proud_m",
            .says = {"0.020 mm", "0.03 mm to 0.10 mm"}},
        Row{.name = "BoreFarOverItsStroke",
            .sample = kTansy,
            .typed = {{"throw_m", "18.5"}},
            .weight = Weight::Objects,
            .rule = "bore_against_stroke",
            .about = "throw_m",
            .says = {"2.05", "0.5 to 2"}},
        Row{.name = "CompressionHeightSmallForItsBore",
            .sample = kTansy,
            .typed = {{"compression_height_m", "20"}},
            .weight = Weight::Objects,
            .rule = "compression_height_share",
            .about = "compression_height_m",
            .says = {"20.00 mm", "0.26", "0.28 to 0.85"}},
        Row{.name = "GudgeonPinThinForItsBore",
            .sample = kTansy,
            .typed = {{"gudgeon_pin_diameter_m", "13"}, {"small_end_bore_m", "13"}},
            .weight = Weight::Objects,
            .rule = "gudgeon_pin_share",
            .about = "gudgeon_pin_diameter_m",
            .says = {"13.00 mm", "0.17", "0.18 to 0.40"}},
        Row{.name = "PinTooLargeToShrinkIn",
            .sample = kTansy,
            .typed = {{"gudgeon_pin_diameter_m", "18.06"}},
            .weight = Weight::Forbids,
            .rule = "pin_in_small_end",
            .about = "gudgeon_pin_diameter_m",
            .says = {"18.06 mm", "18.00 mm"}},
        Row{.name = "PinLargerThanItsBush",
            .sample = kTansy,
            .typed = {{"gudgeon_pin_diameter_m", "18.03"}, {"small_end_kind", "bush"}},
            .weight = Weight::Forbids,
            .rule = "pin_in_small_end",
            .about = "gudgeon_pin_diameter_m",
            .says = {"18.03 mm", "18.00 mm"}},
        Row{.name = "SmallEndWideForItsPin",
            .sample = kTansy,
            .typed = {{"small_end_bore_m", "25"}},
            .weight = Weight::Objects,
            .rule = "small_end_room",
            .about = "small_end_bore_m",
            .says = {"25.00 mm", "7.00 mm over the pin of 18.00 mm", "6.00 mm"}},
        Row{.name = "BigEndWideForItsPin",
            .sample = kTansy,
            .typed = {{"big_end_eye_diameter_m", "53"}},
            .weight = Weight::Objects,
            .rule = "big_end_room",
            .about = "big_end_eye_diameter_m",
            .says = {"53.00 mm", "25.00 mm over the pin of 28.00 mm", "24.00 mm"}},
        Row{.name = "SkirtNearTheWeb",
            .sample = kTansy,
            .typed = {{"counterweight_radius_m", "64.2"}},
            .weight = Weight::Objects,
            .rule = "skirt_to_web",
            .about = "skirt_length_m",
            .says = {"1.30 mm", "1.27 mm", "1.50 mm is wanted", "1.00 mm is the floor"}},
        Row{.name = "SkirtTooNearTheWeb",
            .sample = kTansy,
            .typed = {{"counterweight_radius_m", "64.8"}},
            .weight = Weight::Forbids,
            .rule = "skirt_to_web",
            .about = "skirt_length_m",
            .says = {"0.70 mm", "0.67 mm"}},
        Row{.name = "PinBelowTheLiner",
            .sample = kTansy,
            .typed = {{"liner_bottom_height_m", "90"}},
            .weight = Weight::Forbids,
            .rule = "pin_out_of_liner",
            .about = "liner_bottom_height_m",
            .says = {"−0.50 mm", "must stay inside"}},
        Row{.name = "RodSectionTenTimesTooLarge",
            .sample = kTansy,
            .typed = {{"rod_least_section_m2", "1200"}},
            .weight = Weight::Objects,
            .rule = "rod_section_share",
            .about = "rod_least_section_m2",
            .says = {"1200.0 mm²", "1.961", "big-end width times eye", "0.040 to 0.500",
                     "Ten times too large?"},
            .offers = {{"rod_least_section_m2", {120 * mm2}}}},
        Row{.name = "RodSectionTenTimesTooSmall",
            .sample = kCulvert,
            .typed = {{"rod_least_section_m2", "48"}},
            .weight = Weight::Objects,
            .rule = "rod_section_share",
            .about = "rod_least_section_m2",
            .says = {"48.0 mm²", "0.014", "Ten times too small?"},
            .offers = {{"rod_least_section_m2", {480 * mm2}}}},
        Row{.name = "RodSectionBesideTheBoreAlone",
            .sample = kTansy,
            .typed = {{"rod_least_section_m2", "1200"}, {"big_end_width_m", ""}},
            .weight = Weight::Objects,
            .rule = "rod_section_share",
            .about = "rod_least_section_m2",
            .says = {"0.208 of the square on the bore", "0.006 to 0.075"},
            .offers = {{"rod_least_section_m2", {120 * mm2}}}},
        Row{.name = "RodHalfWidthTypedTenTimes",
            .sample = kTeasel,
            .typed = {{"rod_half_width_m", "40"}},
            .weight = Weight::Objects,
            .rule = "rod_half_width_share",
            .about = "rod_half_width_m",
            .says = {"40.00 mm", "0.74 of the bore"}},
        Row{.name = "RodNearTheLiner",
            .sample = kTansy,
            .typed = {{"rod_half_width_m", "20"}},
            .weight = Weight::Objects,
            .rule = "rod_to_liner",
            .about = "rod_half_width_m",
            .says = {"1.37 mm", "1.36 mm", "1.50 mm is wanted"}},
        Row{.name = "RodIntoTheLiner",
            .sample = kTansy,
            .typed = {{"rod_half_width_m", "22"}},
            .weight = Weight::Forbids,
            .rule = "rod_to_liner",
            .about = "rod_half_width_m",
            .says = {"−0.70 mm", "1.50 mm is wanted"}},
        Row{.name = "LargeCrevice",
            .sample = kTansy,
            .typed = {{"crevice_volume_m3", "2.9"}},
            .weight = Weight::Objects,
            .rule = "large_crevice",
            .about = "crevice_volume_m3",
            .says = {"2.90 ml", "tenth"}},
        Row{.name = "CrownOfADiesel",
            .sample = kTansy,
            .typed = {{"crown_volume_m3", "16"}},
            .weight = Weight::Objects,
            .rule = "crown_volume_spark",
            .about = "crown_volume_m3",
            .says = {"16.00 ml", "15.00 ml"}},
        Row{.name = "RatioWantedTooHighForSpark",
            .sample = kTansy,
            .typed = {{"wanted_compression_ratio", "21"}},
            .weight = Weight::Objects,
            .rule = "wanted_ratio_range",
            .about = "wanted_compression_ratio",
            .says = {"21.00", "6 to 20"}},
        Row{.name = "RatioWantedTooLowForCompressionIgnition",
            .sample = kCulvert,
            .typed = {{"wanted_compression_ratio", "12"}},
            .weight = Weight::Objects,
            .rule = "wanted_ratio_range",
            .about = "wanted_compression_ratio",
            .says = {"12.00", "14 to 23"}},
        Row{.name = "CeilingWithALineMissing",
            .sample = kTansy,
            .typed = {{"ring_width_m", ""}},
            .weight = Weight::Remarks,
            .rule = "limit_line_waits",
            .about = "ring_width_m",
            .says = {"ring flutter", "lower than it looks"}},
        Row{.name = "CeilingWithItsUseUnsaid",
            .sample = kTansy,
            .typed = {{"use", ""}, {"mean_piston_speed_limit_m_s", ""}},
            .weight = Weight::Remarks,
            .rule = "limit_line_waits",
            .about = "mean_piston_speed_limit_m_s",
            .says = {"mean piston speed", "lower than it looks"}},
        Row{.name = "SevenCylinders",
            .sample = kTansy,
            .typed = {{"cylinder_count", "7"}},
            .weight = Weight::Remarks,
            .rule = "rare_cylinder_count",
            .about = "cylinder_count",
            .says = {"7 cylinders are unusual"}},
        Row{.name = "PinOffsetsWithASign",
            .sample = kBurdock,
            .typed = {{"pin_offset_m", "-0.5; 0.4; -0.5"}},
            .weight = Weight::Forbids,
            .rule = "impossible",
            .about = "pin_offset_m",
            .says = {"−0.50 mm", "The side says the sign"}},
        Row{.name = "ThousandOrDecimalInAList",
            .sample = kBurdock,
            .typed = {{"bore_m", "68,000; 1,200; 68,000"}},
            .weight = Weight::Objects,
            .rule = "thousand_or_decimal",
            .about = "bore_m",
            .says = {"68.00 · 1.20 · 68.00 mm", "68 000.00 · 1200.00 · 68 000.00 mm"}}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    VolumesPortsAndCuts, SlipOfThePen,
    testing::Values(
        Row{.name = "DishTypedAsADome",
            .sample = kTeasel,
            .typed = {{"crown_fill_depth_m", "10 ± 0.01"}, {"crown_fill_m3", "24.8 ± 0.2"}},
            .weight = Weight::Objects,
            .rule = "crown_by_burette",
            .about = "crown_volume_m3",
            .says = {"adds 1.898 ml", "takes 1.900 ml", "A dish taken for a dome"},
            .offers = {{"crown_volume_m3", {1.9 * ml}}, {"crown_volume_sense", {1.0}}}},
        Row{.name = "WholeVolumeThatDoesNotClose",
            .sample = kTeasel,
            .typed = {{"whole_volume_m3", "13.0 ± 0.3"}, {"plug_hole_volume_m3", "1.2 ± 0.1"}},
            .weight = Weight::Forbids,
            .rule = "clearance_closure",
            .about = "whole_volume_m3",
            .says = {"11.80 ml", "9.78 ml", "2.02 ml", "11.58", "13.77"},
            .stands = {{"ratio_by_burette", State::Value}}},
        Row{.name = "ExhaustPortFromTheCrown",
            .sample = kTeasel,
            .typed = {{"exhaust_port_top_m", "-1.2"}},
            .weight = Weight::Forbids,
            .rule = "impossible",
            .about = "exhaust_port_top_m",
            .says = {"−1.20 mm"},
            .stands = {{"exhaust_duration_rad", State::Refused}}},
        Row{.name = "PortOpenAtTheTop",
            .sample = kTeasel,
            .typed = {{"exhaust_port_top_m", "0.5"}},
            .weight = Weight::Forbids,
            .rule = "port_open_at_top",
            .about = "exhaust_port_top_m",
            .says = {"0.50 mm", "0.45 mm above the crown", "barrel face"},
            .stands = {{"exhaust_duration_rad", State::None},
                       {"transfer_duration_rad", State::Value}}},
        Row{.name = "PortThatNeverOpens",
            .sample = kTeasel,
            .typed = {{"transfer_port_top_m", "57.95"}},
            .weight = Weight::Forbids,
            .rule = "port_never_opens",
            .about = "transfer_port_top_m",
            .says = {"57.00 mm", "54.50 mm", "never opens"},
            .stands = {{"transfer_duration_rad", State::None},
                       {"trapped_compression_ratio", State::Value}}},
        Row{.name = "PortsExchanged",
            .sample = kTeasel,
            .typed = {{"exhaust_port_top_m", "39.9"}, {"transfer_port_top_m", "27.6"}},
            .weight = Weight::Objects,
            .rule = "transfer_opens_first",
            .about = "exhaust_port_top_m",
            .says = {"26.8°", "exchanged"},
            .offers = {{"exhaust_port_top_m", {27.6 * mm}}, {"transfer_port_top_m", {39.9 * mm}}}},
        Row{.name = "CrankcaseNotFilledAtTheBottom",
            .sample = kTeasel,
            .typed = {{"crankcase_volume_m3", "150"}},
            .weight = Weight::Objects,
            .rule = "primary_compression_range",
            .about = "crankcase_volume_m3",
            .says = {"1.83", "1.30 to 1.45", "bottom dead centre"}},
        Row{.name = "SkimIntoTheSeat",
            .sample = kTansy,
            .typed = {{"wanted_compression_ratio", "11.5"},
                      {"chamber_face_area_m2", "3800"},
                      {"head_land_m", "2.5"}},
            .weight = Weight::Objects,
            .rule = "head_land",
            .about = "wanted_compression_ratio",
            .says = {"0.61 mm", "1.89 mm", "under 2.00 mm"}},
        Row{.name = "SkimForALowerRatio",
            .sample = kTansy,
            .typed = {{"wanted_compression_ratio", "10"}, {"chamber_face_area_m2", "3800"}},
            .weight = Weight::Remarks,
            .rule = "nothing_off_the_head",
            .about = "wanted_compression_ratio",
            .says = {"3.00 ml", "0.66 mm"}},
        Row{.name = "CrownCutTooThin",
            .sample = kTansy,
            .typed = {{"wanted_compression_ratio", "10"},
                      {"crown_cut_area_m2", "3000"},
                      {"crown_thickness_m", "5.5"}},
            .weight = Weight::Objects,
            .rule = "crown_left",
            .about = "wanted_compression_ratio",
            .says = {"1.00 mm", "4.50 mm", "5.9 %", "under 6.5 %"}}),
    nameOf);

/// Near to a slip, yet none.
struct Sound {
  const char* name;
  const char* sample;
  std::vector<Typed> typed;
  const char* rule;
  int engine = 1;
  friend void PrintTo(const Sound& row, std::ostream* out) { *out << row.name; }
};

class SoundEntry : public testing::TestWithParam<Sound> {};

TEST_P(SoundEntry, IsNotSpokenOf) {
  const Sound& row = GetParam();
  model::Project project = sample(row.sample);
  model::Engine& engine = project.engines[static_cast<std::size_t>(row.engine)];
  for (const Typed& typed : row.typed) type(engine, typed.key, typed.text, typed.origin);
  EXPECT_EQ(findingOf(Assessment(project), row.engine, row.rule), nullptr);
}

INSTANTIATE_TEST_SUITE_P(
    BetweenEntries, SoundEntry,
    testing::Values(
        Sound{"LinerBottomEnteredAgain", kTansy, {}, "liner_bottom_of_the_donor"},
        Sound{"LinerBottomOfTheDonorUnderTheSameSpacer",
              kBurdock,
              {},
              "liner_bottom_of_the_donor",
              2},
        Sound{"CrownRiseMakesUpForTheGasket",
              kTansy,
              {{"head_gasket_m", "1.2"}, {"crown_rise_m", "0.3"}},
              "gasket_over_squish"},
        Sound{"SquishHeldByItsPlusMinus",
              kTansy,
              {{"wanted_squish_m", "1.0"}, {"spacer_m", ""}},
              "squish_range"},
        Sound{"DonorsSquishTightAtWorstCase",
              kTansy,
              {{"head_gasket_m", "0.80 ± 0.30"}},
              "squish_range",
              0},
        Sound{"PinShrunkIn",
              kTansy,
              {{"gudgeon_pin_diameter_m", "18.04"}, {"small_end_kind", "pin_in_rod"}},
              "pin_in_small_end"},
        Sound{"PinShrunkInUnsaid",
              kTansy,
              {{"gudgeon_pin_diameter_m", "18.05"}, {"small_end_kind", ""}},
              "pin_in_small_end"},
        Sound{"RodOfATwin", kTansy, {}, "rod_section_share"},
        Sound{"RodOfADiesel", kCulvert, {}, "rod_section_share"},
        Sound{
            "RodOfADieselBesideItsBore", kCulvert, {{"big_end_width_m", ""}}, "rod_section_share"},
        Sound{"RodOfATwoStroke", kTeasel, {}, "rod_section_share"},
        Sound{"SlimRodShank", kTansy, {{"rod_half_width_m", "6"}}, "rod_half_width_share"},
        Sound{"NeedleCage", kTeasel, {}, "small_end_room"},
        Sound{"BowlOfADiesel", kCulvert, {}, "crown_volume_spark"},
        Sound{
            "RatioOfADiesel", kCulvert, {{"wanted_compression_ratio", "21"}}, "wanted_ratio_range"},
        Sound{"EightCylinders", kTansy, {{"cylinder_count", "8"}}, "rare_cylinder_count"}),
    [](const auto& row) { return std::string(row.param.name); });

/// Typed text has no sign behind its ±; a file may.
TEST(ATolerance, HasNoSign) {
  model::Project project = sample(kTansy);
  const describe::Input& rod = *catalogue().findInput("rod_length_m");
  describe::Entry entry = project.engines[1][rod];
  entry.plusMinus = -0.02 * mm;
  project.engines[1].set(rod, entry);
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "negative_tolerance", "rod_length_m");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, Weight::Forbids);
  EXPECT_THAT(told(*finding), HasSubstr("−0.020 mm"));
}

TEST(ACeiling, NamesTheDonorsSpeedProvenWhereThatIsMissing) {
  model::Project project = sample(kTansy);
  EXPECT_EQ(findingOf(Assessment(project), 1, "limit_line_waits"), nullptr);
  type(project.engines[0], "proven_speed_rad_s", "");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "limit_line_waits", "proven_speed_rad_s");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->weight, Weight::Remarks);
  EXPECT_THAT(told(*finding), HasSubstr("donor's speed proven is not known"));
  project.referenceDonor = -1;
  EXPECT_EQ(findingOf(Assessment(project), 1, "limit_line_waits"), nullptr);
}

TEST(ABlankEntry, IsWaitedForByEverythingThatReadsIt) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "bore_m", "");
  const Assessment assessment(project);
  EXPECT_GE(assessment.waiting(1, *catalogue().findInput("bore_m")), 8);
  EXPECT_EQ(assessment.waiting(1, *catalogue().findInput("throw_m")), 0);
  const auto waits = assessment.waitsFor(1, *catalogue().findResult("displacement_m3"));
  ASSERT_EQ(waits.size(), 1U);
  EXPECT_EQ(waits.front().input->key, "bore_m");
}

/// By hand: 38.7 m²/s² over 0.9 mm, over 31 mm times 1 + 31/118, its root: 10 009 rpm.
TEST(ACeiling, NamesTheDonorsRingOfTheSameCylinder) {
  model::Project project = sample(kBurdock);
  type(project.engines[1], "ring_width_m", "1.0; 1.2; 1.0");
  type(project.engines[0], "ring_width_m", "0.8; 0.9; 0.8");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "speed_over_ceiling");
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(told(*finding), HasSubstr("donor's 0.90 mm ring gave 10 009 rpm"));
}

/// A donor whose stroke of 68 mm is entered as 34 mm, beside a throw of 37 mm, and beside one that
/// it shares.
TEST(ADonorsThrow, TypedAsItsStrokeIsAskedForBesideTheTargetsThrow) {
  for (const auto& [typed, said] : {std::pair{"37", "34.00 mm is about half of the 74.00 mm"},
                                    std::pair{"34", "34.00 mm is half of the 68.00 mm"}}) {
    model::Project project = sample(kTansy);
    type(project.engines[0], "stroke_m", "34");
    type(project.engines[1], "throw_m", typed);
    const Assessment assessment(project);
    const Finding* finding = findingOf(assessment, 1, "donors_throw_for_stroke", "stroke_m");
    ASSERT_NE(finding, nullptr) << typed;
    EXPECT_EQ(finding->weight, Weight::Objects);
    EXPECT_THAT(told(*finding), HasSubstr(said));
    EXPECT_EQ(findingOf(assessment, 1, "stroke_for_throw"), nullptr);
  }
}

/// Without a rod to tell which of the two is wrong, the throw that would ruin the web stays the one
/// that is spoken of.
TEST(ADonorsThrow, IsNotAskedForWhereTheThrowHereMayBeTheStroke) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "throw_m", "68");
  type(project.engines[1], "rod_length_m", "");
  const Assessment assessment(project);
  EXPECT_EQ(findingOf(assessment, 1, "donors_throw_for_stroke"), nullptr);
  EXPECT_NE(findingOf(assessment, 1, "stroke_for_throw"), nullptr);
}

TEST(ARefusal, ThatARuleForbidsIsSaidOnce) {
  for (const auto& [key, text] :
       {std::pair{"inlet_valve_diameter_m", "80"}, std::pair{"big_end_pin_diameter_m", "40"}}) {
    model::Project project = sample(kTansy);
    type(project.engines[1], key, text);
    const Assessment assessment(project);
    EXPECT_EQ(findingOf(assessment, 1, "refused"), nullptr) << key;
    const auto findings = assessment.findings(1);
    EXPECT_EQ(std::count_if(findings.begin(), findings.end(),
                            [&](const Finding& finding) {
                              return finding.weight == Weight::Forbids &&
                                     finding.about.front()->key == key;
                            }),
              1)
        << key;
  }
}

TEST(AMend, KeepsThePlusMinusOfItsEntry) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "rod_length_m", "153.5 ± 0.02");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "crown_proud_by_the_eyes");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->mends.front().entries.front().second, "126.50 mm ± 0.02 mm");
}

TEST(AMend, ScalesThePlusMinusWithTheUnitThatWasMeant) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "bore_m", "2.992 ± 0.001");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "unusual", "bore_m");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->mends.front().entries.front().second, "2.9920 in ± 0.0010 in");
}

TEST(AMend, SaysWhetherItsNumberIsWorkedOut) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "rod_length_m", "153.5");
  type(project.engines[1], "bore_m", "2.992");
  const Assessment assessment(project);
  const Finding* eyes = findingOf(assessment, 1, "crown_proud_by_the_eyes");
  ASSERT_NE(eyes, nullptr);
  EXPECT_TRUE(eyes->mends.front().computed);
  const Finding* inches = findingOf(assessment, 1, "unusual", "bore_m");
  ASSERT_NE(inches, nullptr);
  EXPECT_FALSE(inches->mends.front().computed);
}

TEST(AMend, LeavesTheOtherCylindersAlone) {
  model::Project project = sample(kBurdock);
  type(project.engines[1], "throw_m", "33; 66; 33.1 ± 0.01");
  const Assessment assessment(project);
  const Finding* finding = findingOf(assessment, 1, "stroke_for_throw");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->cylinder, 1);
  EXPECT_EQ(finding->mends.front().entries.front().second,
            "33.00 mm; 33.00 mm; 33.10 mm ± 0.01 mm");
}

TEST(ASlip, IsNotRepeatedByAllThatFollowsFromIt) {
  model::Project project = sample(kTansy);
  type(project.engines[1], "bore_m", "2.992");
  type(project.engines[1], "wanted_speed_rad_s", "7000");
  EXPECT_THAT(rulesThatSpeak(Assessment(project), 1),
              testing::UnorderedElementsAre("unusual", "inlet_valve_in_bore", "skim", "head_moves",
                                            "skirt_out_of_liner", "squish_range", "lobes_move"));
}

TEST(ARefusal, IsSaidOnceThoughManyResultsRestOnIt) {
  model::Project project = sample(kBurdock);
  type(project.engines[1], "rod_length_m", "32");
  const auto keys = rulesThatSpeak(Assessment(project), 1);
  EXPECT_EQ(std::count(keys.begin(), keys.end(), "refused"), 1);
}

TEST(ARefusal, OfTheDonorIsSaidOfTheDonor) {
  model::Project project = sample(kTansy);
  type(project.engines[0], "rod_length_m", "33");
  const Assessment assessment(project);
  EXPECT_NE(findingOf(assessment, 0, "refused"), nullptr);
  EXPECT_EQ(findingOf(assessment, 1, "refused"), nullptr);
}

}  // namespace
}  // namespace strokewright::assess
