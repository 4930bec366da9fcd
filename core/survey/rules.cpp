#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/running/running.h"
#include "core/survey/joint.h"
#include "core/survey/readings.h"
#include "core/survey/results.h"

namespace strokewright::survey {

namespace in = model::in;
using describe::Entry;
using describe::Finding;
using describe::fine;
using describe::Input;
using describe::kPractice;
using describe::Mend;
using describe::Quantity;
using describe::Reader;
using describe::Result;
using describe::Rule;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

Quantity count(std::size_t number) { return {Kind::Count, static_cast<double>(number)}; }

constexpr double kRounding = 1e-9;  // [m]

/// Two ways round, and where they lie farthest apart beyond what is likely.
struct Apart {
  double by = 0.0;  ///< [m] either side
  int cylinder = -1;
  Joint joint;  ///< there
  bool everywhere = true;
};

/// @param jointIn what the closure may be off in the cylinder of a reader
template <typename JointIn>
Apart farthestApart(Reader& read, const Result& closure, const JointIn& jointIn) {
  Apart farthest;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    const double by = std::abs(here(closure));
    const Joint joint = jointIn(here);
    if (by <= joint.likely + kRounding) {
      farthest.everywhere = false;
    } else if (by > farthest.by) {
      farthest.by = by;
      farthest.cylinder = i;
      farthest.joint = joint;
    }
  }
  return farthest;
}

Weight weightOf(const Apart& apart) {
  return apart.by > apart.joint.worst + kRounding ? Weight::Forbids : Weight::Objects;
}

/// The result's own ± counts what is entered; the joint one says where there is more in it.
std::string jointName(Reader& read, const Result& closure, const Joint& joint) {
  return joint.worst > read.worst(closure)
             ? "Their joint ±, with the usual one of the instrument where none is entered,"
             : "Their joint ±";
}

/// The farther apart, the heavier: beyond the likely ±, beyond all of it.
const Rule closure{
    .key = "deck_closure",
    .source = "two ways round close within their joint ±: JCGM 100:2008, 5.1.2",
    .judge = [](Reader& read, Speaker& speak) {
      const auto ways = [](Reader& here) {
        std::vector<Rests> all = deckRestsOn(here);
        all.insert(all.begin(), {.on = &in::measuredDeckClearance});
        return all;
      };
      const Apart apart = farthestApart(read, out::deckClosure, [&](Reader& here) {
        return jointOf(here, out::deckClosure, ways(here));
      });
      if (apart.cylinder < 0) return;
      Reader here = read.at(apart.cylinder);
      Finding& finding = speak.say(
          weightOf(apart),
          {read.cylinders() == 1
               ? "Two ways to the deck differ by {1}: {3} by what stands on the case, "
                 "{4} by crown and measured clearance. {7} is {5} likely, "
                 "{6} at worst."
               : "Two ways to the deck differ by {1} in cylinder {2}: {3} by what "
                 "stands on the case, {4} by crown and measured clearance. {7} is {5} "
                 "likely, {6} at worst.",
           {fine(apart.by), count(static_cast<std::size_t>(model::numberOfCylinder(here))),
            Quantity{Kind::Length, here(out::deckHeight)},
            Quantity{Kind::Length, here(out::heightByCrown)}, fine(apart.joint.likely),
            fine(apart.joint.worst), jointName(here, out::deckClosure, apart.joint)}},
          {&in::measuredDeckClearance, &in::seatHeight});
      finding.hint = suspicion(here, ways(here), !apart.everywhere);
    }};

/// What the squish gap rests on, measured and by the dimensions.
std::vector<Rests> squishRestsOn(Reader& read) {
  std::vector<Rests> ways = deckRestsOn(read);
  ways.insert(ways.begin(), {.on = &in::measuredSquish});
  for (const Input* part : {&in::headGasket, &in::headRecess, &in::crownRise}) {
    addPart(read, ways, *part);
  }
  addPart(read, ways, in::headGasketTaper, 0.5);
  return ways;
}

/// A dimension counts from the middle of the bearing play; parts that are pushed down or hang while
/// the gap is measured lie up to half of it off.
Joint squishJoint(Reader& read) {
  const double play = running::clearanceTakenUp({.main = read(in::mainClearance),
                                                 .bigEnd = read(in::bigEndClearance),
                                                 .gudgeonPin = read(in::gudgeonPinClearance)},
                                                false);
  const Joint joint = jointOf(read, out::squishClosure, squishRestsOn(read));
  return {.likely = joint.likely + play, .worst = joint.worst + play};
}

const Rule squishClosure{
    .key = "squish_closure",
    .source = "two ways round close within their joint ±: JCGM 100:2008, 5.1.2",
    .judge = [](Reader& read, Speaker& speak) {
      const Apart apart = farthestApart(read, out::squishClosure, squishJoint);
      if (apart.cylinder < 0) return;
      Reader here = read.at(apart.cylinder);
      Finding& finding = speak.say(
          weightOf(apart),
          {read.cylinders() == 1
               ? "The squish gap is {3} measured and {4} by the dimensions, {1} apart. Their joint "
                 "±, half of the bearing play in it, is {5} likely, {6} at worst."
               : "The squish gap of cylinder {2} is {3} measured and {4} by the dimensions, {1} "
                 "apart. Their joint ±, half of the bearing play in it, is {5} likely, {6} at "
                 "worst.",
           {fine(apart.by), count(static_cast<std::size_t>(model::numberOfCylinder(here))),
            fine(here(in::measuredSquish)), fine(here(out::squishGap)), fine(apart.joint.likely),
            fine(apart.joint.worst)}},
          {&in::measuredSquish, &in::headGasket});
      finding.hint = suspicion(here, squishRestsOn(here), !apart.everywhere);
    }};

/// How many times the ± of the instrument readings may lie apart whose differences are meant to
/// cancel.
constexpr double kTimes = 4.0;

/// [SI] What each reading may be off by.
double instrumentOf(const Input& input, const Entry& entry) {
  return entry.plusMinus ? entry.instrumentLimit() : input.plusMinus;
}

/// As findings count: -1 where one series stands for all, or there is no such cylinder.
int cylinderOf(const Reader& read, const Entry& entry, std::size_t place) {
  const auto cylinder = static_cast<int>(place);
  return entry.values.size() > 1 && cylinder < read.cylinders() ? cylinder : -1;
}

template <typename Judge>
void eachSeries(Reader& read, const Judge& judge) {
  for (const Input* input : model::inputs()) {
    const Entry& entry = *read.entry(*input);
    for (std::size_t i = 0; i < entry.readings.size(); ++i) judge(*input, entry, i);
  }
}

const Rule outlier{
    .key = "reading_stands_out",
    .source = "Grubbs’ test at 5 %, ISO 5725-2",
    .judge = [](Reader& read, Speaker& speak) {
      eachSeries(read, [&](const Input& input, const Entry& entry, std::size_t place) {
        const std::vector<double>& series = entry.readings[place];
        const double times = input.differencesCancel ? kTimes : 1.0;
        const auto found = outlierOf(series, times * instrumentOf(input, entry));
        if (!found) return;
        Finding& finding =
            speak.say(Weight::Objects,
                      {"{1}: reading {2} of {3}, {4}, stands out from the others. Read it again, "
                       "or leave it out.",
                       {&input, count(*found + 1), count(series.size()),
                        Quantity{input.kind, series[*found], 3}}},
                      {&input});
        finding.cylinder = cylinderOf(read, entry, place);
      });
    }};

const Rule scatter{
    .key = "readings_scatter", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      eachSeries(read, [&](const Input& input, const Entry& entry, std::size_t place) {
        const double limit = instrumentOf(input, entry);
        const double spread = spreadOf(entry.readings[place]);
        if (limit <= 0.0 || spread <= kTimes * limit) return;
        Finding& finding =
            speak.say(Weight::Objects,
                      {"{1}: the readings differ by {2}, while the instrument is good to ± {3}.",
                       {&input, Quantity{input.kind, spread, 3}, Quantity{input.kind, limit, 3}}},
                      {&input});
        finding.cylinder = cylinderOf(read, entry, place);
        if (input.differencesCancel) {
          finding.hint = {"The piston rocks: read over the pin axis.", {}};
        }
      });
    }};

/// Two readings say little of how they scatter; the third is the one that pays.
const Rule twoReadings{
    .key = "two_readings",
    .source = "Student’s t over n − 1 degrees of freedom: JCGM 100:2008, G.3",
    .judge = [](Reader& read, Speaker& speak) {
      eachSeries(read, [&](const Input& input, const Entry& entry, std::size_t place) {
        const std::vector<double>& series = entry.readings[place];
        if (series.size() != 2 || input.differencesCancel) return;
        const double limit = instrumentOf(input, entry);
        const double spread = spreadOf(series);
        if (describe::scatterOfMean(series) <= limit || (limit > 0.0 && spread > kTimes * limit)) {
          return;
        }
        const auto goodTo = [&](const std::vector<double>& readings) {
          return Quantity{input.kind,
                          std::hypot(entry.instrumentLimit(), describe::scatterOfMean(readings)),
                          3};
        };
        const double middle = 0.5 * (series[0] + series[1]);
        Finding& finding = speak.say(
            Weight::Remarks,
            {"{1}: the mean of two readings that differ by {2} is good to ± {3}. A third midway "
             "between them would make it ± {4}.",
             {&input, Quantity{input.kind, spread, 3}, goodTo(series),
              goodTo({series[0], series[1], middle})}},
            {&input});
        finding.cylinder = cylinderOf(read, entry, place);
      });
    }};

/// Seats that lie far apart are objected to by themselves.
bool saidOfPlaces(Reader& read) {
  double least = read(in::seatHeight);
  double largest = least;
  for (int i = 0; i < read.cylinders(); ++i) {
    const double height = read.at(i)(in::seatHeight);
    least = std::min(least, height);
    largest = std::max(largest, height);
  }
  return largest - least > read(in::seatSpread);
}

const Rule slope{
    .key = "seats_out_of_parallel", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      const double rise = read(out::seatSlopeAlong);
      const double most = read(in::seatSlopeMost);
      if (std::abs(rise) <= most || saidOfPlaces(read)) return;
      speak.say(Weight::Objects,
                {"The seats rise by {1} in 100 mm along the crankshaft, {2} per cylinder; over {3} "
                 "should be put right.",
                 {fine(rise * 0.1), fine(read(out::seatRisePerPitch)), fine(most * 0.1)}},
                {&in::seatHeight});
    }};

const Rule slopeAcross{
    .key = "seats_tilted_across", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      const double rise = read(out::seatSlopeAcross);
      const double most = read(in::seatSlopeMost);
      if (std::abs(rise) <= most) return;
      const bool single = read.cylinders() == 1;
      const bool towards = rise > 0.0;
      speak.say(Weight::Objects,
                {single ? towards ? "The seat rises by {1} in 100 mm towards the thrust side; over "
                                    "{2} should be put right."
                                  : "The seat falls by {1} in 100 mm towards the thrust side; over "
                                    "{2} should be put right."
                 : towards ? "The seats rise by {1} in 100 mm towards the thrust side; over {2} "
                             "should be put right."
                           : "The seats fall by {1} in 100 mm towards the thrust side; over {2} "
                             "should be put right.",
                 {fine(std::abs(rise) * 0.1), fine(most * 0.1)}},
                {&in::seatAcross, &in::seatAcrossWidth});
    }};

/// Heights that were taken on the case; those of a book are meant at 20 °C, computed ones say no
/// temperature.
std::vector<const Input*> heightsMeasured(Reader& read) {
  std::vector<const Input*> heights;
  for (const Input* height : {&in::seatHeight, &in::barrelHeight, &in::deckHeight}) {
    const Entry& entry = *read.entry(*height);
    const bool taken =
        entry.origin == describe::Origin::Measured || entry.origin == describe::Origin::NotSaid;
    if (entry.known() && taken) heights.push_back(height);
  }
  return heights;
}

/// The entry as it would have been read at 20 °C, to the micrometre: "98.097; 98.177 ± 0.03 mm",
/// each reading by itself.
std::string textAt20(const Input& height, const Entry& entry, double expansion, double warmer) {
  const auto bare = [&](double length) {
    const std::string text = describe::typedText(height, std::round(length * 1e6) / 1e6);
    return text.substr(0, text.find(' '));
  };
  std::string all;
  for (std::size_t i = 0; i < entry.values.size(); ++i) {
    const bool read = i < entry.readings.size() && !entry.readings[i].empty();
    std::string one;
    for (const double length : read ? entry.readings[i] : std::vector{entry.values[i]}) {
      if (!one.empty()) one += " | ";
      one += bare(length - running::growth({length, expansion, warmer}));
    }
    if (!all.empty()) all += "; ";
    all += one;
  }
  if (entry.plusMinus) all += " ± " + bare(*entry.plusMinus);
  return all + ' ' + std::string(units::Style{}.unit(height.kind));
}

/// @param more [1/K] what the case grows by more than the instrument
Mend takenTo20(Reader& read, std::string_view says, const std::vector<const Input*>& heights,
               double more) {
  Mend mend{.says = {says, {}}, .entries = {}, .computed = true};
  for (const Input* height : heights) {
    mend.entries.emplace_back(
        height, textAt20(*height, *read.entry(*height), more, read(in::caseMeasuredWarmer)));
  }
  mend.entries.emplace_back(&in::caseMeasuredWarmer,
                            describe::typedText(in::caseMeasuredWarmer, 0.0));
  return mend;
}

/// Steel of gauges and scales [1/K].
/// @source ISO 3650, steel gauge blocks: (11.5 ± 1.0) · 10⁻⁶/K; from memory
constexpr double kSteel = 11.5e-6;

/// A length is what it is at 20 °C. How far a warm case is off depends on whether the instrument
/// was as warm.
const Rule measuredWarm{
    .key = "case_measured_warm",
    .source = "ISO 1:2022, reference temperature 20 °C; linear expansion: Shigley ch. 3",
    .judge = [](Reader& read, Speaker& speak) {
      const double warmer = read(in::caseMeasuredWarmer);
      std::vector<const Input*> heights = heightsMeasured(read);
      if (warmer == 0.0 || heights.empty()) return;
      const bool byStack = read.either(in::seatHeight, in::deckHeight);
      double length = 0.0;
      double limit = 0.0;
      for (const Input* height : heights) {
        if (byStack == (height == &in::deckHeight)) continue;  // a way that is not used
        length += read(*height);
        limit += describe::limitOrUsual(*height, *read.entry(*height));
      }
      const double expansion = read(in::caseExpansion);
      const double byCold = running::growth({length, expansion, warmer});
      const double byWarm = running::growth({length, expansion - kSteel, warmer});
      const double off = std::max(std::abs(byCold), std::abs(byWarm));
      constexpr double kReading = 0.01e-3;  // [m] what a height gauge shows
      if (off < std::min(limit, kReading)) return;
      const double sign = warmer > 0.0 ? 1.0 : -1.0;
      Finding& finding = speak.say(
          off < limit ? Weight::Remarks : Weight::Objects,
          {warmer > 0.0
               ? "The case was measured {1} warmer than 20 °C: its {2} read {3} too long to an "
                 "instrument at 20 °C, {4} to one of steel as warm as the case. Their ± is {5}."
               : "The case was measured {1} colder than 20 °C: its {2} read {3} too short to an "
                 "instrument at 20 °C, {4} to one of steel as cold as the case. Their ± is {5}.",
           {Quantity{Kind::Warming, std::abs(warmer)}, Quantity{Kind::Length, length},
            Quantity{Kind::FineLength, sign * byCold, 3},
            Quantity{Kind::FineLength, sign * byWarm, 3}, fine(limit)}},
          {&in::caseMeasuredWarmer, &in::caseMaterial});
      finding.mends.push_back(
          takenTo20(read, "Heights to 20 °C, the instrument was at 20 °C", heights, expansion));
      finding.mends.push_back(takenTo20(read,
                                        "Heights to 20 °C, the instrument, of steel, was as warm",
                                        heights, expansion - kSteel));
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&closure,     &squishClosure, &outlier,     &scatter,
                                        &twoReadings, &slope,         &slopeAcross, &measuredWarm};
  return kRules;
}

}  // namespace strokewright::survey
