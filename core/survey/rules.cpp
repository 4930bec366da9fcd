#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/survey/readings.h"
#include "core/survey/results.h"

namespace strokewright::survey {

namespace in = model::in;
using describe::Argument;
using describe::Entry;
using describe::Finding;
using describe::fine;
using describe::Input;
using describe::kPractice;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Sentence;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

Quantity count(std::size_t number) { return {Kind::Count, static_cast<double>(number)}; }

/// What was entered on the two ways to the deck and could be wrong: what was read at each cylinder,
/// or what is the same for all; the least certain first, those without a ± before all.
std::vector<const Input*> suspects(Reader& read, bool ofOneCylinder) {
  std::vector<const Input*> found;
  for (const Input* input :
       {&in::measuredDeckClearance, &in::seatHeight, &in::baseGasket, &in::barrelHeight,
        &in::deckHeight, &in::spacer, &in::linerProud, &in::crankThrow, &in::stroke, &in::rodLength,
        &in::compressionHeight}) {
    const Entry& entry = *read.entry(*input);
    if (entry.known() && (entry.values.size() > 1) == ofOneCylinder) found.push_back(input);
  }
  std::stable_sort(found.begin(), found.end(), [&](const Input* a, const Input* b) {
    const auto rank = [&](const Input* input) {
      const double limit = read.entry(*input)->limit();
      return limit > 0.0 ? limit : HUGE_VAL;
    };
    return rank(a) > rank(b);
  });
  if (found.size() > 3) found.resize(3);
  return found;
}

Sentence suspicion(const std::vector<const Input*>& inputs, bool ofOneCylinder) {
  const std::vector<Argument> arguments(inputs.begin(), inputs.end());
  static constexpr std::array<std::string_view, 4> kAll = {
      "", "The same in every cylinder, so look at what they share: {1}.",
      "The same in every cylinder, so look at what they share: {1}, {2}.",
      "The same in every cylinder, so look at what they share: {1}, {2}, {3}."};
  static constexpr std::array<std::string_view, 4> kOne = {
      "", "Not in every cylinder, so look at what was read there: {1}.",
      "Not in every cylinder, so look at what was read there: {1}, {2}.",
      "Not in every cylinder, so look at what was read there: {1}, {2}, {3}."};
  return {(ofOneCylinder ? kOne : kAll)[inputs.size()], arguments};
}

/// The farther apart, the heavier: beyond the likely ±, beyond all of it.
const Rule closure{
    .key = "deck_closure",
    .source = "two ways round close within their joint ±: JCGM 100:2008, 5.1.2",
    .judge = [](Reader& read, Speaker& speak) {
      int worstCylinder = -1;
      int beyond = 0;
      double farthest = 0.0;
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        const double apart = std::abs(here(out::deckClosure));
        if (apart <= here.likely(out::deckClosure) + 1e-9) continue;
        ++beyond;
        if (apart > farthest) {
          farthest = apart;
          worstCylinder = i;
        }
      }
      if (worstCylinder < 0) return;
      Reader here = read.at(worstCylinder);
      const bool forbids = farthest > here.worst(out::deckClosure) + 1e-9;
      Finding& finding =
          speak.say(forbids ? Weight::Forbids : Weight::Objects,
                    {"Two ways to the deck differ by {1} in cylinder {2}: {3} by what stands on "
                     "the case, {4} by crown and measured clearance. Their joint ± is {5} likely, "
                     "{6} at worst.",
                     {fine(farthest), count(static_cast<std::size_t>(worstCylinder) + 1),
                      Quantity{Kind::Length, here(out::deckHeight)},
                      Quantity{Kind::Length, here(out::heightByCrown)},
                      fine(here.likely(out::deckClosure)), fine(here.worst(out::deckClosure))}},
                    {&in::measuredDeckClearance, &in::seatHeight});
      const bool ofOne = beyond < read.cylinders();
      std::vector<const Input*> named = suspects(read, ofOne);
      if (!named.empty()) finding.hint = suspicion(named, ofOne);
    }};

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
        const auto found = outlierOf(series);
        if (!found) return;
        speak.say(Weight::Objects,
                  {"{1}: reading {2} of {3}, {4}, stands out from the others. Read it again, or "
                   "leave it out.",
                   {&input, count(*found + 1), count(series.size()),
                    Quantity{input.kind, series[*found], 3}}},
                  {&input});
      });
    }};

const Rule scatter{
    .key = "readings_scatter", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      constexpr double kTimes = 4.0;  // of the instrument's ±
      eachSeries(read, [&](const Input& input, const Entry& entry, std::size_t place) {
        const double limit = entry.plusMinus ? entry.instrumentLimit() : input.plusMinus;
        const double spread = spreadOf(entry.readings[place]);
        if (limit <= 0.0 || spread <= kTimes * limit) return;
        Finding& finding =
            speak.say(Weight::Objects,
                      {"{1}: the readings differ by {2}, while the instrument is good to ± {3}.",
                       {&input, Quantity{input.kind, spread, 3}, Quantity{input.kind, limit, 3}}},
                      {&input});
        if (&input == &in::measuredDeckClearance) {
          finding.hint = {"The piston rocks: read over the pin axis.", {}};
        }
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

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&closure, &outlier, &scatter, &slope};
  return kRules;
}

}  // namespace strokewright::survey
