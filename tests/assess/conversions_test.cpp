// Worked conversions of the project, computed independently: by other means than this program,
// exact motion, six digits. Each result must round to what is printed.
#include <gtest/gtest.h>

#include <array>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <iterator>
#include <ostream>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/assess/assess.h"
#include "core/chamber/results.h"
#include "core/clearance/results.h"
#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/deck/results.h"
#include "core/limits/results.h"
#include "core/masses/results.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/ports/results.h"
#include "core/running/results.h"
#include "core/storage/project_text.h"
#include "core/units/unit_group.h"

namespace strokewright::assess {
namespace {

namespace in = model::in;
using describe::Cell;
using describe::Input;
using describe::Result;
using describe::State;
using model::Engine;
using model::Project;

// Places in the samples.
constexpr int kDonor = 0;
constexpr int kTarget = 1;

Project sample(std::string_view name) {
  const auto path = std::filesystem::path(STROKEWRIGHT_SOURCE_DIR) / "samples" /
                    (std::string(name) + ".strokewright");
  std::ifstream file(path, std::ios::binary);
  return storage::read(std::string{std::istreambuf_iterator<char>(file), {}}).project.value();
}

/// What of a result is compared.
enum class Shown { Value, Likely, Worst };

constexpr std::string_view kNone = "none";  ///< the result means nothing for this engine

/// What should be printed of a result, in bench units or as the key of a choice; where the
/// cylinders differ, a text for each, parted by semicolons.
struct Expected {
  const Result* result;
  Shown shown;
  std::string_view printed;
};

double numberOf(std::string_view printed) {
  double number = 0.0;
  std::from_chars(printed.data(), printed.data() + printed.size(), number);
  return number;
}

/// Half of the last printed digit, and a thousandth of it for a tie.
double halfDigit(std::string_view printed) {
  const auto point = printed.find('.');
  const auto decimals = point == std::string_view::npos ? 0 : printed.size() - point - 1;
  return 0.501 * std::pow(10.0, -static_cast<double>(decimals));
}

std::vector<std::string_view> perCylinder(std::string_view printed) {
  std::vector<std::string_view> texts;
  for (std::size_t end = printed.find(';'); end != std::string_view::npos;
       end = printed.find(';')) {
    texts.push_back(printed.substr(0, end));
    printed.remove_prefix(printed.find_first_not_of("; ", end));
  }
  texts.push_back(printed);
  return texts;
}

void expectCell(const Cell& cell, const Expected& expected, std::string_view printed) {
  if (printed == kNone) {
    EXPECT_EQ(cell.state, State::None);
    return;
  }
  ASSERT_EQ(cell.state, State::Value);
  if (expected.result->kind == units::Kind::Choice) {
    EXPECT_EQ(expected.result->choices[static_cast<std::size_t>(cell.value)].key, printed);
    return;
  }
  const double si = expected.shown == Shown::Likely  ? cell.likely
                    : expected.shown == Shown::Worst ? cell.worst
                                                     : cell.value;
  const units::Unit& unit = units::UnitGroup::metric()[expected.result->kind];
  EXPECT_NEAR(units::fromSi(unit, si), numberOf(printed), halfDigit(printed));
}

void expectPrinted(const Assessment& assessment, int engine, const Expected& expected) {
  const bool once = expected.result->per == describe::Per::Engine;
  const int cylinders = once ? 1 : assessment.evaluation().cylinders(engine);
  const auto texts = perCylinder(expected.printed);
  ASSERT_TRUE(texts.size() == 1 || std::ssize(texts) == cylinders) << expected.printed;
  for (int i = 0; i < cylinders; ++i) {
    SCOPED_TRACE(std::string(expected.result->key) + " of engine " + std::to_string(engine) +
                 ", cylinder " + std::to_string(i + 1));
    const std::string_view text = texts.size() == 1 ? texts[0] : texts[static_cast<std::size_t>(i)];
    expectCell(assessment(engine, *expected.result, i), expected, text);
  }
}

std::string nameOf(const Result& result, Shown shown) {
  constexpr std::array kParts = {"", "_likely", "_worst"};
  return std::string(result.key) + kParts[static_cast<std::size_t>(shown)];
}

// The samples as they are

/// One line of a table, with a column for each engine.
struct Row {
  const Result* result;
  Shown shown;
  std::array<std::string_view, 3> printed;  ///< donor, target, variant
};

constexpr Row kTansy[] = {
    {&out::displacement, Shown::Value, {"616.963", "671.396"}},
    {&out::displacement, Shown::Likely, {"0.18146", "0.18146"}},
    {&out::displacement, Shown::Worst, {"0.18146", "0.18146"}},
    {&out::classMargin, Shown::Value, {kNone, "28.6040"}},
    {&out::trueStroke, Shown::Value, {"68.0005", "74.0000"}},
    {&out::boreStrokeRatio, Shown::Value, {"1.11765", "1.02703"}},
    {&out::rodRatio, Shown::Value, {"1.95588", "1.70946"}},
    {&out::obliquity, Shown::Value, {"0.255639", "0.292490"}},
    {&out::largestRodAngle, Shown::Value, {"15.0344", "17.0071"}},
    {&out::crownHeight, Shown::Value, {"195.399", "194.000"}},
    {&out::protrusionWithoutSpacer, Shown::Value, {"-0.200749", "-1.60000"}},
    {&out::spacerToMake, Shown::Value, {kNone, "-1.35000"}},
    {&out::spacerToMake, Shown::Likely, {kNone, "0.054772"}},
    {&out::spacerToMake, Shown::Worst, {kNone, "0.14000"}},
    {&out::deckClearance, Shown::Value, {"0.200749", "0.250000"}},
    {&out::deckClearance, Shown::Likely, {"0.050990", "0.051962"}},
    {&out::deckClearance, Shown::Worst, {"0.12000", "0.13000"}},
    {&out::squishGap, Shown::Value, {"1.00075", "0.900000"}},
    {&out::squishGap, Shown::Likely, {"0.054772", "0.055678"}},
    {&out::squishGap, Shown::Worst, {"0.14000", "0.15000"}},
    {&out::gasketVolume, Shown::Value, {"3.77384", "3.06624"}},
    {&out::deckVolume, Shown::Value, {"0.910688", "1.13411"}},
    {&out::clearanceVolume, Shown::Value, {"34.4645", "34.3004"}},
    {&out::compressionRatio, Shown::Value, {"9.95070", "10.7870"}},
    {&out::compressionRatio, Shown::Likely, {"0.11423", "0.12613"}},
    {&out::compressionRatio, Shown::Worst, {"0.29838", "0.34051"}},
    {&out::compressionRatioWithoutCrevice, Shown::Value, {"10.0240", "10.8734"}},
    {&out::effectiveCompressionRatio, Shown::Value, {"8.25844", "9.00953"}},
    {&out::inletClosingTravel, Shown::Value, {"55.1440", "60.5603"}},
    {&out::workingSpeed, Shown::Value, {"8500.0", "8500.0"}},
    {&out::meanPistonSpeed, Shown::Value, {"19.2668", "20.9667"}},
    {&out::peakPistonSpeed, Shown::Value, {"31.2705", "34.3228"}},
    {&out::peakPistonSpeedAngle, Shown::Value, {"76.2782", "74.8459"}},
    {&out::peakAcceleration, Shown::Value, {"33825.3", "37890.0"}},
    {&out::reciprocatingMass, Shown::Value, {"365.000", "398.000"}},
    {&out::rotatingMass, Shown::Value, {"263.000", "290.000"}},
    {&out::bobWeight, Shown::Value, {"452.800", "489.000"}},
    {&out::staticMoment, Shown::Value, {"22365.2", "26973.0"}},
    {&out::rodTension, Shown::Value, {"12.3462", "15.0802"}},
    {&out::rodStress, Shown::Value, {"114.317", "125.668"}},
    {&out::rodLoadRatio, Shown::Value, {"1.00000", "1.22144"}},
    {&out::skirtToWeb, Shown::Value, {"6.99874", "4.50000"}},
    {&out::skirtOut, Shown::Value, {"7.35126", "14.5000"}},
    {&out::pinAboveLiner, Shown::Value, {"17.6487", "9.50000"}},
    {&out::ceilingPistonSpeed, Shown::Value, {"9705.81", "8918.92"}},
    {&out::ceilingRingFlutter, Shown::Value, {"9091.88", "7841.91"}},
    {&out::ceilingRodTension, Shown::Value, {"10056.0", "9591.05"}},
    {&out::ceilingBigEnd, Shown::Value, {"11666.7", "10937.5"}},
    {&out::ceilingDonor, Shown::Value, {kNone, "8031.15"}},
    {&out::breathingIndex, Shown::Value, {"0.479509", "0.521814"}},
    {&out::breathingSpeed, Shown::Value, {"10635.9", "9773.59"}},
    {&out::governs, Shown::Value, {"ring_flutter", "ring_flutter"}},
    {&out::revCeiling, Shown::Value, {"9092", "7842"}},
    {&out::runningSquish, Shown::Value, {"0.9228", "0.8133"}},
    {&out::overRevSquish, Shown::Value, {"0.9073", "0.7971"}},
    {&out::crankingPressure, Shown::Value, {"13.172", "14.803"}},
};

constexpr Row kBurdock[] = {
    {&out::displacement, Shown::Value, {"636.342", "719.073", "719.073"}},
    {&out::displacement, Shown::Likely, {"0.20527", "0.21790", "0.21790"}},
    {&out::displacement, Shown::Worst, {"0.20527", "0.21790", "0.21790"}},
    {&out::classMargin, Shown::Value, {kNone, "30.9271", "30.9271"}},
    {&out::trueStroke, Shown::Value, {"62.0000", "66.0000", "66.0000"}},
    {&out::boreStrokeRatio, Shown::Value, {"1.06452", "1.03030", "1.03030"}},
    {&out::rodRatio, Shown::Value, {"1.90323", "1.78788", "1.77273"}},
    {&out::obliquity, Shown::Value, {"0.262712", "0.279661", "0.282051"}},
    {&out::largestRodAngle, Shown::Value, {"15.2310", "16.2400", "16.3827"}},
    {&out::crownHeight, Shown::Value, {"177.400", "178.500", "177.500"}},
    {&out::protrusionWithoutSpacer,
     Shown::Value,
     {"-0.220000; -0.300000; -0.390000", "0.880000; 0.800000; 0.710000",
      "-0.120000; -0.200000; -0.290000"}},
    {&out::spacerToMake,
     Shown::Value,
     {kNone, "1.03000; 0.950000; 0.860000", "0.0300000; -0.0500000; -0.140000"}},
    {&out::spacerToMake, Shown::Likely, {kNone, "0.063246", "0.063246"}},
    {&out::spacerToMake, Shown::Worst, {kNone, "0.16000", "0.16000"}},
    {&out::deckClearance,
     Shown::Value,
     {"0.220000; 0.300000; 0.390000", "0.150000", "0.120000; 0.200000; 0.290000"}},
    {&out::deckClearance, Shown::Likely, {"0.055678", "0.056569", "0.055678"}},
    {&out::deckClearance, Shown::Worst, {"0.13000", "0.14000", "0.13000"}},
    {&out::squishGap,
     Shown::Value,
     {"1.02000; 1.10000; 1.19000", "0.900000", "0.870000; 0.950000; 1.04000"}},
    {&out::squishGap, Shown::Likely, {"0.063246", "0.064031", "0.063246"}},
    {&out::squishGap, Shown::Worst, {"0.16000", "0.17000", "0.16000"}},
    {&out::gasketVolume, Shown::Value, {"2.86278", "2.84525", "2.84525"}},
    {&out::deckVolume,
     Shown::Value,
     {"0.752663; 1.02636; 1.33427", "0.544752", "0.435802; 0.726336; 1.05319"}},
    {&out::clearanceVolume,
     Shown::Value,
     {"23.3154; 23.5891; 23.8970", "23.4900", "23.3811; 23.6716; 23.9984"}},
    {&out::compressionRatio,
     Shown::Value,
     {"10.0976; 9.99202; 9.87616", "11.2040", "11.2515; 11.1257; 10.9878"}},
    {&out::compressionRatio,
     Shown::Likely,
     {"0.16482; 0.16102; 0.15690", "0.18723", "0.18830; 0.18371; 0.17874"}},
    {&out::compressionRatio,
     Shown::Worst,
     {"0.41349; 0.40398; 0.39368", "0.49062", "0.47927; 0.46761; 0.45500"}},
    {&out::compressionRatioWithoutCrevice,
     Shown::Value,
     {"10.1763; 10.0689; 9.95108", "11.2916", "11.3400; 11.2120; 11.0717"}},
    {&out::effectiveCompressionRatio,
     Shown::Value,
     {"8.50810; 8.42099; 8.32537", "9.45207", "9.49584; 9.39157; 9.27728"}},
    {&out::inletClosingTravel, Shown::Value, {"51.1677", "54.6687", "54.6969"}},
    {&out::workingSpeed, Shown::Value, {"9600.0", "9500.0", "9500.0"}},
    {&out::meanPistonSpeed, Shown::Value, {"19.8400", "20.9000", "20.9000"}},
    {&out::peakPistonSpeed, Shown::Value, {"32.2265", "34.0959", "34.1175"}},
    {&out::peakPistonSpeedAngle, Shown::Value, {"76.1455", "75.3974", "75.2937"}},
    {&out::peakAcceleration, Shown::Value, {"39560.9", "41793.9", "41872.0"}},
    {&out::reciprocatingMass, Shown::Value, {"297.000", "312.000", "308.000"}},
    {&out::rotatingMass, Shown::Value, {"238.000", "238.000", "230.000"}},
    {&out::bobWeight, Shown::Value, {"386.500", "394.000", "384.000"}},
    {&out::staticMoment, Shown::Value, {"17871.5", "19272.0", "18942.0"}},
    {&out::rodTension, Shown::Value, {"11.7496", "13.0397", "12.8966"}},
    {&out::rodStress, Shown::Value, {"117.496", "130.397", "134.339"}},
    {&out::rodLoadRatio, Shown::Value, {"1.00000", "1.10980", "1.09762"}},
    {&out::skirtToWeb, Shown::Value, {"6.50000", "4.00000", "3.00000"}},
    {&out::skirtOut,
     Shown::Value,
     {"5.47000; 5.55000; 5.64000", "12.0000", "11.9700; 12.0500; 12.1400"}},
    {&out::pinAboveLiner,
     Shown::Value,
     {"12.0300; 11.9500; 11.8600", "9.00000", "9.03000; 8.95000; 8.86000"}},
    {&out::ceilingPistonSpeed, Shown::Value, {"10645.2", "10000.0", "10000.0"}},
    {&out::ceilingRingFlutter, Shown::Value, {"10615.7", "9141.60", "9133.08"}},
    {&out::ceilingRodTension, Shown::Value, {"11202.6", "10523.2", "10367.7"}},
    {&out::ceilingBigEnd, Shown::Value, {"11666.7", "11666.7", "11666.7"}},
    {&out::ceilingDonor, Shown::Value, {kNone, "9242.72", "9234.10"}},
    {&out::breathingIndex, Shown::Value, {"0.509590", "0.569843", "0.569843"}},
    {&out::breathingSpeed, Shown::Value, {"11303.2", "10002.8", "10002.8"}},
    {&out::governs, Shown::Value, {"ring_flutter", "ring_flutter", "ring_flutter"}},
    {&out::revCeiling, Shown::Value, {"10616", "9142", "9133"}},
    {&out::runningSquish,
     Shown::Value,
     {"0.9396; 1.0197; 1.1099", "0.8154", "0.7833; 0.8634; 0.9536"}},
    {&out::overRevSquish,
     Shown::Value,
     {"0.9255; 1.0056; 1.0957", "0.7997", "0.7673; 0.8474; 0.9376"}},
    {&out::crankingPressure,
     Shown::Value,
     {"13.710; 13.522; 13.316", "15.780", "15.877; 15.645; 15.392"}},
};

constexpr Row kTeasel[] = {
    {&out::displacement, Shown::Value, {"115.885", "124.817"}},
    {&out::displacement, Shown::Likely, {"0.045804", "0.045804"}},
    {&out::displacement, Shown::Worst, {"0.045804", "0.045804"}},
    {&out::classMargin, Shown::Value, {kNone, "0.182953"}},
    {&out::trueStroke, Shown::Value, {"50.6000", "54.5000"}},
    {&out::boreStrokeRatio, Shown::Value, {"1.06719", "0.990826"}},
    {&out::rodRatio, Shown::Value, {"2.17391", "2.01835"}},
    {&out::obliquity, Shown::Value, {"0.230000", "0.247727"}},
    {&out::largestRodAngle, Shown::Value, {"13.2971", "14.3431"}},
    {&out::crownHeight, Shown::Value, {"165.300", "167.250"}},
    {&out::protrusionWithoutSpacer, Shown::Value, {"-1.50000", "0.450000"}},
    {&out::spacerToMake, Shown::Value, {kNone, "1.40000"}},
    {&out::spacerToMake, Shown::Likely, {kNone, "0.069282"}},
    {&out::spacerToMake, Shown::Worst, {kNone, "0.16000"}},
    {&out::deckClearance, Shown::Value, {"1.50000", "0.950000"}},
    {&out::deckClearance, Shown::Likely, {"0.068557", "0.069282"}},
    {&out::deckClearance, Shown::Worst, {"0.15000", "0.16000"}},
    {&out::squishGap, Shown::Value, {"1.50000", "0.950000"}},
    {&out::squishGap, Shown::Likely, {"0.069282", "0.070000"}},
    {&out::squishGap, Shown::Worst, {"0.16000", "0.17000"}},
    {&out::gasketVolume, Shown::Value, {"0.00000", "0.00000"}},
    {&out::deckVolume, Shown::Value, {"3.43533", "2.17571"}},
    {&out::clearanceVolume, Shown::Value, {"11.0353", "9.77571"}},
    {&out::compressionRatio, Shown::Value, {"11.5013", "13.7681"}},
    {&out::compressionRatio, Shown::Likely, {"0.37532", "0.51601"}},
    {&out::compressionRatio, Shown::Worst, {"0.82895", "1.1668"}},
    {&out::compressionRatioWithoutCrevice, Shown::Value, {"11.5973", "13.9000"}},
    {&out::effectiveCompressionRatio, Shown::Value, {kNone, kNone}},
    {&out::inletClosingTravel, Shown::Value, {kNone, kNone}},
    {&out::workingSpeed, Shown::Value, {"12000.0", "11000.0"}},
    {&out::meanPistonSpeed, Shown::Value, {"20.2400", "19.9833"}},
    {&out::peakPistonSpeed, Shown::Value, {"32.6251", "32.3417"}},
    {&out::peakPistonSpeedAngle, Shown::Value, {"77.6509", "76.8251"}},
    {&out::peakAcceleration, Shown::Value, {"49141.2", "45115.8"}},
    {&out::reciprocatingMass, Shown::Value, {"221.000", "221.000"}},
    {&out::rotatingMass, Shown::Value, {"115.000", "115.000"}},
    {&out::bobWeight, Shown::Value, {"225.500", "229.920"}},
    {&out::staticMoment, Shown::Value, {"9500.15", "10352.8"}},
    {&out::rodTension, Shown::Value, {"10.8602", "9.97059"}},
    {&out::rodStress, Shown::Value, {"127.767", "117.301"}},
    {&out::rodLoadRatio, Shown::Value, {"1.00000", "0.918086"}},
    {&out::skirtToWeb, Shown::Value, {"8.70000", "6.75000"}},
    {&out::skirtOut, Shown::Value, {"4.90000", "8.25000"}},
    {&out::pinAboveLiner, Shown::Value, {"24.1000", "20.7500"}},
    {&out::ceilingPistonSpeed, Shown::Value, {"13043.5", "12110.1"}},
    {&out::ceilingRingFlutter, Shown::Value, {"11906.1", "11390.4"}},
    {&out::ceilingRodTension, Shown::Value, {"13428.6", "12847.0"}},
    {&out::ceilingBigEnd, Shown::Value, {"14000.0", "14000.0"}},
    {&out::ceilingDonor, Shown::Value, {kNone, "11480.2"}},
    {&out::breathingIndex, Shown::Value, {kNone, kNone}},
    {&out::breathingSpeed, Shown::Value, {kNone, kNone}},
    {&out::governs, Shown::Value, {"ring_flutter", "ring_flutter"}},
    {&out::exhaustDuration, Shown::Value, {"189.649", "196.692"}},
    {&out::transferDuration, Shown::Value, {"130.048", "143.121"}},
    {&out::blowdown, Shown::Value, {"29.8007", "26.7855"}},
    {&out::trappedCompressionRatio, Shown::Value, {"6.41667", "7.24347"}},
    {&out::primaryCompressionRatio, Shown::Value, {"1.29563", "1.31841"}},
    {&out::exhaustPortLowering, Shown::Value, {kNone, "1.71219"}},
    {&out::transferPortLowering, Shown::Value, {kNone, "2.61542"}},
    {&out::revCeiling, Shown::Value, {"11906", "11390"}},
    {&out::runningSquish, Shown::Value, {"1.4096", "0.8657"}},
    {&out::overRevSquish, Shown::Value, {"1.3953", "0.8525"}},
    {&out::crankingPressure, Shown::Value, {"9.335", "11.027"}},
};

constexpr Row kCulvert[] = {
    {&out::displacement, Shown::Value, {"863.938", "1039.08"}},
    {&out::displacement, Shown::Likely, {"0.15708", "0.17318"}},
    {&out::displacement, Shown::Worst, {"0.15708", "0.17318"}},
    {&out::classMargin, Shown::Value, {kNone, kNone}},
    {&out::trueStroke, Shown::Value, {"110.000", "120.000"}},
    {&out::boreStrokeRatio, Shown::Value, {"0.909091", "0.875000"}},
    {&out::rodRatio, Shown::Value, {"2.00000", "1.83333"}},
    {&out::obliquity, Shown::Value, {"0.250000", "0.272727"}},
    {&out::largestRodAngle, Shown::Value, {"14.4775", "15.8266"}},
    {&out::crownHeight, Shown::Value, {"344.900", "345.000"}},
    {&out::protrusionWithoutSpacer, Shown::Value, {"0.220000", "0.300000"}},
    {&out::spacerToMake, Shown::Value, {kNone, "-0.0500000"}},
    {&out::deckClearance, Shown::Value, {"-0.220000", "-0.300000"}},
    {&out::deckClearance, Shown::Likely, {"0.046904", "0.046904"}},
    {&out::deckClearance, Shown::Worst, {"0.10000", "0.10000"}},
    {&out::squishGap, Shown::Value, {"0.980000", "1.00000"}},
    {&out::squishGap, Shown::Likely, {"0.055678", "0.055678"}},
    {&out::squishGap, Shown::Worst, {"0.13000", "0.13000"}},
    {&out::gasketVolume, Shown::Value, {"9.70964", "11.5806"}},
    {&out::deckVolume, Shown::Value, {"-1.72788", "-2.59770"}},
    {&out::clearanceVolume, Shown::Value, {"54.0818", "63.6829"}},
    {&out::compressionRatio, Shown::Value, {"16.9747", "17.3165"}},
    {&out::compressionRatio, Shown::Likely, {"0.16872", "0.15550"}},
    {&out::compressionRatio, Shown::Worst, {"0.45429", "0.42116"}},
    {&out::compressionRatioWithoutCrevice, Shown::Value, {"17.3992", "17.7101"}},
    {&out::effectiveCompressionRatio, Shown::Value, {"15.6621", "16.0117"}},
    {&out::inletClosingTravel, Shown::Value, {"100.962", "110.404"}},
    {&out::workingSpeed, Shown::Value, {"2650.0", "1800.0"}},
    {&out::meanPistonSpeed, Shown::Value, {"9.71667", "7.20000"}},
    {&out::peakPistonSpeed, Shown::Value, {"15.7343", "11.7248"}},
    {&out::peakPistonSpeedAngle, Shown::Value, {"76.7210", "75.7008"}},
    {&out::peakAcceleration, Shown::Value, {"5294.46", "2713.24"}},
    {&out::reciprocatingMass, Shown::Value, {"3076.00", "3283.00"}},
    {&out::rotatingMass, Shown::Value, {"2170.00", "2170.00"}},
    {&out::bobWeight, Shown::Value, {"3708.00", "3811.50"}},
    {&out::staticMoment, Shown::Value, {"319440", "354690"}},
    {&out::rodTension, Shown::Value, {"16.2858", "8.90758"}},
    {&out::rodStress, Shown::Value, {"33.9287", "18.5575"}},
    {&out::rodLoadRatio, Shown::Value, {"1.00000", "0.546955"}},
    {&out::skirtToWeb, Shown::Value, {"5.00000", "7.00000"}},
    {&out::skirtOut, Shown::Value, {"19.0000", "20.0000"}},
    {&out::pinAboveLiner, Shown::Value, {"43.0000", "38.0000"}},
    {&out::ceilingPistonSpeed, Shown::Value, {"2727.27", "2500.00"}},
    {&out::ceilingRingFlutter, Shown::Value, {"4531.28", "4299.46"}},
    {&out::ceilingRodTension, Shown::Value, {"5754.70", "5285.34"}},
    {&out::ceilingBigEnd, Shown::Value, {"5147.06", "5147.06"}},
    {&out::ceilingDonor, Shown::Value, {kNone, "2514.43"}},
    {&out::breathingIndex, Shown::Value, {"0.415647", "0.339562"}},
    {&out::breathingSpeed, Shown::Value, {"3825.36", "3180.57"}},
    {&out::governs, Shown::Value, {"mean_piston_speed", "mean_piston_speed"}},
    {&out::revCeiling, Shown::Value, {"2727", "2500"}},
    {&out::runningSquish, Shown::Value, {"0.9034", "0.9537"}},
    {&out::overRevSquish, Shown::Value, {"0.8958", "0.9496"}},
    {&out::crankingPressure, Shown::Value, {"30.557", "31.440"}},
};

struct Conversion {
  const char* sample;
  const Row* row;
  friend void PrintTo(const Conversion& param, std::ostream* out) {
    *out << param.sample << ' ' << nameOf(*param.row->result, param.row->shown);
  }
};

std::vector<Conversion> conversions(const char* sample, std::span<const Row> rows) {
  std::vector<Conversion> all;
  for (const Row& row : rows) all.push_back({sample, &row});
  return all;
}

class WorkedConversion : public testing::TestWithParam<Conversion> {};

TEST_P(WorkedConversion, AgreesInEveryPrintedDigit) {
  const Row& row = *GetParam().row;
  const Project project = sample(GetParam().sample);
  const Assessment assessment(project);
  for (std::size_t engine = 0; engine < project.engines.size(); ++engine) {
    expectPrinted(assessment, static_cast<int>(engine),
                  {row.result, row.shown, row.printed[engine]});
  }
}

constexpr auto kRowName = [](const auto& row) {
  return nameOf(*row.param.row->result, row.param.row->shown);
};
INSTANTIATE_TEST_SUITE_P(Tansy270, WorkedConversion,
                         testing::ValuesIn(conversions("tansy-270", kTansy)), kRowName);
INSTANTIATE_TEST_SUITE_P(Burdock719, WorkedConversion,
                         testing::ValuesIn(conversions("burdock-719", kBurdock)), kRowName);
INSTANTIATE_TEST_SUITE_P(Teasel125, WorkedConversion,
                         testing::ValuesIn(conversions("teasel-125", kTeasel)), kRowName);
INSTANTIATE_TEST_SUITE_P(Culvert1040, WorkedConversion,
                         testing::ValuesIn(conversions("culvert-1040", kCulvert)), kRowName);

// The same engines with something changed, or with digits fewer

struct Changed {
  const char* name;
  const char* sample;
  int engine;
  std::vector<std::pair<const Input*, const char*>> typed;  ///< an empty text clears the entry
  std::vector<Expected> expected;
  friend void PrintTo(const Changed& param, std::ostream* out) { *out << param.name; }
};

void type(Engine& engine, const Input& input, std::string_view text) {
  engine.set(input, model::entryFrom(input, text, units::UnitGroup::metric()));
}

class ChangedConversion : public testing::TestWithParam<Changed> {};

TEST_P(ChangedConversion, AgreesInEveryPrintedDigit) {
  Project project = sample(GetParam().sample);
  for (const auto& [input, text] : GetParam().typed) {
    type(project.engines[static_cast<std::size_t>(GetParam().engine)], *input, text);
  }
  const Assessment assessment(project);
  for (const Expected& expected : GetParam().expected) {
    expectPrinted(assessment, GetParam().engine, expected);
  }
}

constexpr auto kChangedName = [](const auto& row) { return std::string(row.param.name); };

INSTANTIATE_TEST_SUITE_P(InShort, ChangedConversion,
                         testing::Values(Changed{"Tansy270",
                                                 "tansy-270",
                                                 kTarget,
                                                 {},
                                                 {{&out::displacement, Shown::Value, "671.40"},
                                                  {&out::compressionRatio, Shown::Value, "10.787"},
                                                  {&out::spacerToMake, Shown::Value, "-1.350"},
                                                  {&out::squishGap, Shown::Value, "0.900"},
                                                  {&out::meanPistonSpeed, Shown::Value, "20.97"},
                                                  {&out::peakAcceleration, Shown::Value, "37890"},
                                                  {&out::reciprocatingMass, Shown::Value, "398.0"},
                                                  {&out::bobWeight, Shown::Value, "489.0"}}},
                                         Changed{"Burdock719",
                                                 "burdock-719",
                                                 kTarget,
                                                 {},
                                                 {{&out::displacement, Shown::Value, "719.07"},
                                                  {&out::compressionRatio, Shown::Value, "11.204"},
                                                  {&out::spacerToMake, Shown::Value,
                                                   "1.030; 0.950; 0.860"},
                                                  {&out::squishGap, Shown::Value, "0.900"},
                                                  {&out::meanPistonSpeed, Shown::Value, "20.90"},
                                                  {&out::peakAcceleration, Shown::Value, "41794"},
                                                  {&out::reciprocatingMass, Shown::Value, "312.0"},
                                                  {&out::bobWeight, Shown::Value, "394.0"}}},
                                         Changed{"Teasel125",
                                                 "teasel-125",
                                                 kTarget,
                                                 {},
                                                 {{&out::displacement, Shown::Value, "124.82"},
                                                  {&out::compressionRatio, Shown::Value, "13.768"},
                                                  {&out::spacerToMake, Shown::Value, "1.400"},
                                                  {&out::squishGap, Shown::Value, "0.950"},
                                                  {&out::meanPistonSpeed, Shown::Value, "19.98"},
                                                  {&out::peakAcceleration, Shown::Value, "45116"},
                                                  {&out::reciprocatingMass, Shown::Value, "221.0"},
                                                  {&out::bobWeight, Shown::Value, "229.9"}}},
                                         Changed{"Culvert1040",
                                                 "culvert-1040",
                                                 kTarget,
                                                 {},
                                                 {{&out::displacement, Shown::Value, "1039.08"},
                                                  {&out::compressionRatio, Shown::Value, "17.316"},
                                                  {&out::squishGap, Shown::Value, "1.000"},
                                                  {&out::meanPistonSpeed, Shown::Value, "7.20"},
                                                  {&out::peakAcceleration, Shown::Value, "2713"},
                                                  {&out::reciprocatingMass, Shown::Value, "3283.0"},
                                                  {&out::bobWeight, Shown::Value, "3811.5"}}}),
                         kChangedName);

INSTANTIATE_TEST_SUITE_P(
    Tansy270, ChangedConversion,
    testing::Values(Changed{"TheDonorsPinOffsetTurnsTheDeadCentre",
                            "tansy-270",
                            kDonor,
                            {},
                            {{&out::netOffset, Shown::Value, "-0.500000"},
                             {&out::topDeadCentreAngle, Shown::Value, "-0.171545"},
                             {&out::bottomDeadCentreAngle, Shown::Value, "179.710626"},
                             {&out::peakAccelerationAngle, Shown::Value, "-0.087793"}}},
                    Changed{"TheDonorWithItsOffsetLeftOut",
                            "tansy-270",
                            kDonor,
                            {{&in::pinOffset, "0"}},
                            {{&out::topDeadCentreAngle, Shown::Value, "0.000000"},
                             {&out::bottomDeadCentreAngle, Shown::Value, "180.000000"},
                             {&out::squishGap, Shown::Value, "1.00000"},
                             {&out::compressionRatio, Shown::Value, "9.95151"},
                             {&out::peakAcceleration, Shown::Value, "33825.1"}}},
                    Changed{"TheDonorWithItsOffsetOnTheOtherSide",
                            "tansy-270",
                            kDonor,
                            {{&in::pinOffsetSide, "away from thrust side"}},
                            {{&out::topDeadCentreAngle, Shown::Value, "0.171545"},
                             {&out::bottomDeadCentreAngle, Shown::Value, "180.289374"},
                             {&out::peakAccelerationAngle, Shown::Value, "0.087793"},
                             {&out::trueStroke, Shown::Value, "68.0005"},
                             {&out::squishGap, Shown::Value, "1.00075"},
                             {&out::compressionRatio, Shown::Value, "9.95070"},
                             {&out::peakAcceleration, Shown::Value, "33825.3"}}},
                    Changed{"TheDonorWithTheLengthOfItsLiner",
                            "tansy-270",
                            kDonor,
                            {{&in::linerBottomHeight, ""}, {&in::linerLength, "114.25"}},
                            {{&out::skirtOut, Shown::Value, "7.35126"},
                             {&out::pinAboveLiner, Shown::Value, "17.6487"}}},
                    Changed{"WithTheLengthOfItsLiner",
                            "tansy-270",
                            kTarget,
                            {{&in::linerBottomHeight, ""}, {&in::linerLength, "114.25"}},
                            {{&out::skirtOut, Shown::Value, "14.5000"},
                             {&out::pinAboveLiner, Shown::Value, "9.50000"}}},
                    Changed{"MadeForACompressionRatio",
                            "tansy-270",
                            kTarget,
                            {{&in::stackDriver, "compression ratio"},
                             {&in::wantedCompressionRatio, "10.5"},
                             {&in::spacer, ""}},
                            {{&out::spacerToMake, Shown::Value, "-1.12157"},
                             {&out::squishGap, Shown::Value, "1.12843"},
                             {&out::compressionRatio, Shown::Value, "10.5000"}}},
                    Changed{"WithALongerRodInsteadOfTheSkim",
                            "tansy-270",
                            kTarget,
                            {{&in::rodLength, "127.85"}},
                            {{&out::spacerToMake, Shown::Value, "0.00000"}}}),
    kChangedName);

INSTANTIATE_TEST_SUITE_P(
    Burdock719, ChangedConversion,
    testing::Values(Changed{"OnOneFlatPlate",
                            "burdock-719",
                            kTarget,
                            {{&in::spacer, "0.950 ± 0.01"}},
                            {{&out::squishGap, Shown::Value, "0.820000; 0.900000; 0.990000"},
                             {&out::compressionRatio, Shown::Value, "11.3317; 11.2040; 11.0639"},
                             {&out::ratioSpread, Shown::Value, "0.268"}}},
                    Changed{
                        "MadeForADeckClearance",
                        "burdock-719",
                        kTarget,
                        {{&in::stackDriver, "deck clearance"}, {&in::wantedDeckClearance, "0.150"}},
                        {{&out::spacerToMake, Shown::Value, "1.03000; 0.950000; 0.860000"},
                         {&out::spacerToMake, Shown::Likely, "0.055678"},
                         {&out::spacerToMake, Shown::Worst, "0.13000"}}},
                    Changed{"MadeForACompressionRatio",
                            "burdock-719",
                            kTarget,
                            {{&in::stackDriver, "compression ratio"},
                             {&in::wantedCompressionRatio, "11.0"},
                             {&in::spacer, ""}},
                            {{&out::spacerToMake, Shown::Value, "1.16192; 1.08192; 0.991920"},
                             {&out::spacerToMake, Shown::Likely, "0.11825"},
                             {&out::spacerToMake, Shown::Worst, "0.30102"},
                             {&out::squishGap, Shown::Value, "1.03192"}}},
                    Changed{"WithTheLengthOfItsLiners",
                            "burdock-719",
                            kTarget,
                            {{&in::linerBottomHeight, ""}, {&in::linerLength, "102.65"}},
                            {{&out::skirtOut, Shown::Value, "12.0000"},
                             {&out::pinAboveLiner, Shown::Value, "9.00000"}}},
                    Changed{"TheShortRodWithTheLengthOfItsLiners",
                            "burdock-719",
                            2,
                            {{&in::linerBottomHeight, ""}, {&in::linerLength, "102.65"}},
                            {{&out::skirtOut, Shown::Value, "11.9700; 12.0500; 12.1400"},
                             {&out::pinAboveLiner, Shown::Value, "9.03000; 8.95000; 8.86000"}}},
                    Changed{"TheShortRodWithoutAPlateSpreadsTheRatio",
                            "burdock-719",
                            2,
                            {},
                            {{&out::ratioSpread, Shown::Value, "0.264"}}},
                    Changed{"WithANarrowerRing",
                            "burdock-719",
                            kTarget,
                            {{&in::ringWidth, "0.8"}},
                            {{&out::ceilingRingFlutter, Shown::Value, "10221"},
                             {&out::ceilingPistonSpeed, Shown::Value, "10000"},
                             {&out::governs, Shown::Value, "donors_proven_acceleration"}}}),
    kChangedName);

INSTANTIATE_TEST_SUITE_P(
    Teasel125, ChangedConversion,
    testing::Values(
        Changed{"RunsOnNeedles",
                "teasel-125",
                kTarget,
                {},
                {{&out::bushWall, Shown::Value, "2.00000"},
                 {&out::classMargin, Shown::Value, "0.183"},
                 {&out::classMargin, Shown::Likely, "0.046"}}},
        Changed{"WithTheGapMadeUpInTheHead",
                "teasel-125",
                kTarget,
                {{&in::spacer, "0"}, {&in::headRecess, "1.40"}, {&in::chamberVolume, "12.6063094"}},
                {{&out::deckClearance, Shown::Value, "-0.450000"},
                 {&out::squishGap, Shown::Value, "0.950000"},
                 {&out::compressionRatio, Shown::Value, "13.7681"},
                 {&out::exhaustDuration, Shown::Value, "190.938"},
                 {&out::transferDuration, Shown::Value, "136.245"},
                 {&out::blowdown, Shown::Value, "27.3462"},
                 {&out::trappedCompressionRatio, Shown::Value, "7.57146"},
                 {&out::primaryCompressionRatio, Shown::Value, "1.31841"},
                 {&out::exhaustPortLowering, Shown::Value, "0.312188"},
                 {&out::transferPortLowering, Shown::Value, "1.21542"}}}),
    kChangedName);

INSTANTIATE_TEST_SUITE_P(
    Culvert1040, ChangedConversion,
    testing::Values(Changed{"HasItsBushAndItsGap",
                            "culvert-1040",
                            kTarget,
                            {},
                            {{&out::bushWall, Shown::Value, "1.50000"},
                             {&out::deckHeight, Shown::Value, "344.700"},
                             {&out::squishGap, Shown::Worst, "0.13000"}}},
                    Changed{"WithTheThinGasket",
                            "culvert-1040",
                            kTarget,
                            {{&in::headGasket, "1.20 ± 0.03"}},
                            {{&out::squishGap, Shown::Value, "0.900000"},
                             {&out::squishGap, Shown::Worst, "0.13000"},
                             {&out::compressionRatio, Shown::Value, "17.5480"}}},
                    Changed{"WithTheThickGasket",
                            "culvert-1040",
                            kTarget,
                            {{&in::headGasket, "1.40 ± 0.03"}},
                            {{&out::squishGap, Shown::Value, "1.10000"},
                             {&out::compressionRatio, Shown::Value, "17.0914"}}},
                    Changed{"WithItsLinerForgotten",
                            "culvert-1040",
                            kTarget,
                            {{&in::linerProud, ""}},
                            {{&out::squishGap, Shown::Value, "0.920000"},
                             {&out::compressionRatio, Shown::Value, "17.4959"}}},
                    Changed{"WithItsLinerCountedTwice",
                            "culvert-1040",
                            kTarget,
                            {{&in::deckHeight, "344.70 ± 0.03"}},
                            {{&out::squishGap, Shown::Value, "1.08000"},
                             {&out::compressionRatio, Shown::Value, "17.1409"}}},
                    Changed{"WithTheErrorOfAPlateThatIsNotThere",
                            "culvert-1040",
                            kTarget,
                            {{&in::spacer, "0 ± 0.01"}},
                            {{&out::squishGap, Shown::Likely, "0.0566"},
                             {&out::squishGap, Shown::Worst, "0.140"}}}),
    kChangedName);

// Sums to know by heart

Project single(Engine engine) {
  Project project;
  project.engines.push_back(std::move(engine));
  return project;
}

TEST(TheSumsToKnowByHeart, APistonFourProudOnTwoGasketsNeedsThreeAndAHalf) {
  Engine engine;
  for (const auto& [input, text] : std::initializer_list<std::pair<const Input*, const char*>>{
           {&in::cylinderCount, "1"},
           {&in::crankThrow, "30"},
           {&in::rodLength, "120"},
           {&in::compressionHeight, "34"},
           {&in::seatHeight, "100"},
           {&in::barrelHeight, "80"},
           {&in::baseGasket, "0.25"},
           {&in::secondBaseGasket, "0.25"},
           {&in::stackDriver, "deck clearance"},
           {&in::wantedDeckClearance, "0"}}) {
    type(engine, *input, text);
  }
  const Project project = single(engine);
  expectPrinted(Assessment(project), 0, {&out::spacerToMake, Shown::Value, "3.50000"});
}

TEST(TheSumsToKnowByHeart, SixOfFiftyByThirtyTwo) {
  Engine engine;
  type(engine, in::cylinderCount, "6");
  type(engine, in::bore, "50");
  type(engine, in::stroke, "32");
  type(engine, in::rodLength, "60");
  const Project project = single(engine);
  expectPrinted(Assessment(project), 0, {&out::displacement, Shown::Value, "376.991"});
}

TEST(TheSumsToKnowByHeart, TheTypicalEngine) {
  Engine engine;
  for (const Input* input : model::inputs()) {
    if (input == &in::headGasketVolume) continue;  // it would stand for the gasket's bore
    describe::Entry entry;
    entry.values = {input->typical};
    engine.set(*input, entry);
  }
  const Project project = single(engine);
  const Assessment assessment(project);
  for (const Expected& expected : {Expected{&out::displacement, Shown::Value, "653.250"},
                                   Expected{&out::deckHeight, Shown::Value, "197.200"},
                                   Expected{&out::crownHeight, Shown::Value, "197.000"},
                                   Expected{&out::spacerToMake, Shown::Value, "0.800000"},
                                   Expected{&out::squishGap, Shown::Value, "1.00000"},
                                   Expected{&out::compressionRatio, Shown::Value, "10.0777"},
                                   Expected{&out::ceilingRingFlutter, Shown::Value, "7998.39"},
                                   Expected{&out::meanPistonSpeed, Shown::Value, "18.000000000"}}) {
    expectPrinted(assessment, 0, expected);
  }
}

}  // namespace
}  // namespace strokewright::assess
