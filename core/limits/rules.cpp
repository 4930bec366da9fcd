#include <array>
#include <utility>
#include <vector>

#include "core/describe/common_practice.h"
#include "core/limits/ceilings.h"
#include "core/limits/results.h"
#include "core/limits/rev_lines.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::limits {

namespace in = model::in;
using describe::Finding;
using describe::fine;
using describe::Input;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::Weight;
using units::Kind;

namespace {

Quantity speed(double value) { return {Kind::Speed, value}; }

/// The line that governs.
const RevLine& governing(Reader& read) {
  return kRevLines[static_cast<std::size_t>(read(out::governs))];
}

/// Of the cylinder that has the least of a ceiling.
Reader weakest(Reader& read, const describe::Result& ceiling) {
  int weakest = 0;
  for (int i = 1; i < read.cylinders(); ++i) {
    if (read.at(i)(ceiling) < read.at(weakest)(ceiling)) weakest = i;
  }
  return read.at(weakest);
}

std::string named(const RevLine& line) { return std::string(line.name.label); }

const Rule wantedOverCeiling{
    .key = "speed_over_ceiling",
    .source = "the line that governs names its own",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::wantedSpeed)) return;
      const double wanted = read(in::wantedSpeed);
      const double ceiling = read(out::revCeiling);
      if (wanted <= ceiling) return;
      const RevLine& line = governing(read);
      std::vector<const Input*> about = {&in::wantedSpeed};
      if (!line.donors) about.push_back(line.entry);
      if (line.entry != &in::ringWidth) {
        speak.say(
            Weight::Objects,
            {"{1} wanted; {2} stops it at {3}.", {speed(wanted), named(line), speed(ceiling)}},
            std::move(about));
        return;
      }
      Reader there = weakest(read, out::ceilingRingFlutter);
      Finding& finding =
          speak.say(Weight::Objects,
                    {"{1} wanted; {2} stops it at {4} with the {3} ring.",
                     {speed(wanted), named(line), fine(there(in::ringWidth)), speed(ceiling)}},
                    std::move(about));
      if (!read.isDonor() && there.donorGiven(in::ringWidth) &&
          there.donorKnown(out::ceilingRingFlutter)) {
        finding.hint = {
            "The donor's {1} ring gave {2}.",
            {fine(there.donor(in::ringWidth)), speed(there.donor(out::ceilingRingFlutter))}};
      }
    }};

const Rule provenOverCeiling{
    .key = "proven_over_ceiling", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.isDonor() || !read.given(in::provenSpeed)) return;
      const double proven = read(in::provenSpeed);
      const double ceiling = read(out::revCeiling);
      if (proven <= ceiling) return;
      speak.say(
          Weight::Remarks,
          {"It has held {1}, above its own line of {2} at {3}: that limit is common practice, "
           "this engine lived above it.",
           {speed(proven), named(governing(read)), speed(ceiling)}},
          {&in::provenSpeed});
    }};

/// A ceiling with a line missing is only as good as the lines it has.
const Rule lineMissing{
    .key = "limit_line_waits",
    .source = "each line names its own",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.known(out::revCeiling) || !read.known(out::trueStroke)) return;
      for (const RevLine& line : kRevLines) {
        if (read.knownInAll(*line.ceiling) || !read.applies(*line.ceiling)) continue;
        if (line.donors && read.donorGiven(*line.entry)) continue;  // the rest waits in the donor
        speak.say(Weight::Remarks,
                  {line.donors
                       ? "The donor's {2} is not known, so neither is the {1}: the rev ceiling may "
                         "be lower than it looks."
                       : "The {1} is not known: the rev ceiling may be lower than it looks.",
                   {line.ceiling, line.entry}},
                  {line.entry});
      }
    }};

const Rule rodLoad{
    .key = "rod_load",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || read(out::rods) != static_cast<double>(out::Rods::Donors)) return;
      const double ratio = read(out::rodLoadRatio);
      const double most = read(in::rodLoadRatioLimit);
      if (ratio <= most * (1.0 + 1e-9)) return;
      speak.say(Weight::Objects,
                {"The donor's rods would carry {1} of what they proved there, over {2}: a used rod "
                 "has spent life.",
                 {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, most}}},
                {&in::wantedSpeed, &in::rodLoadRatioLimit});
    }};

const Rule valveInBore{
    .key = "inlet_valve_in_bore",
    .source = "plane geometry",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::inletValveDiameter) || !read.given(in::bore)) return;
      if (read.given(in::cycle) && model::twoStroke(read)) return;  // kept, not used
      const double diameter = read(in::inletValveDiameter);
      const double bore = read(in::bore);
      if (diameter < bore) return;
      speak.say(Weight::Forbids,
                {kValveNotInBore, {Quantity{Kind::Length, diameter}, Quantity{Kind::Length, bore}}},
                {&in::inletValveDiameter, &in::bore});
    }};

const Rule valveArea{
    .key = "inlet_valve_area",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::inletValveCount) || !read.given(in::inletValveDiameter)) return;
      const double count = read(in::inletValveCount);
      const double diameter = read(in::inletValveDiameter);
      const double bore = read(in::bore);
      if (diameter >= bore) return;  // its own rule says so
      const double share = count * diameter * diameter / (bore * bore);
      constexpr double kLeast = 0.12;
      constexpr double kMost = 0.5;
      if (share >= kLeast && share <= kMost) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"The inlet valves take {1} of the bore area, outside {2} to {3}: are they "
                     "counted for one cylinder?",
                     {Quantity{Kind::Ratio, share}, Quantity{Kind::Ratio, kLeast},
                      Quantity{Kind::Ratio, kMost}}},
                    {&in::inletValveCount, &in::inletValveDiameter, &in::bore});
      if (read.donorGiven(in::inletValveCount) && read.donor(in::inletValveCount) < count) {
        finding.mends.push_back(takeAs(in::inletValveCount, read.donor(in::inletValveCount)));
      }
    }};

const Rule ringAgainstDonor{
    .key = "ring_radial_depth",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::ringWidth) || !read.donorGiven(in::ringWidth)) return;
      const double width = read(in::ringWidth);
      const double donors = read.donor(in::ringWidth);
      if (width <= 2.0 * donors) return;
      speak.say(Weight::Objects,
                {"A ring {1} wide against the donor's {2}: along the bore, not across?",
                 {fine(width), fine(donors)}},
                {&in::ringWidth});
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&wantedOverCeiling, &provenOverCeiling, &lineMissing,
                                        &rodLoad,           &valveInBore,       &valveArea,
                                        &ringAgainstDonor};
  return kRules;
}

}  // namespace strokewright::limits
