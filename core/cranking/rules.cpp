#include <algorithm>
#include <array>
#include <cmath>

#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"

namespace strokewright::cranking {

namespace in = model::in;
using describe::Finding;
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

constexpr double kSound = 0.75;    // of the estimate, a sound engine reads no less
constexpr double kApart = 0.10;    // of the highest, cylinders read no farther apart
constexpr double kStarter = 1.20;  // times the donor's, its starter turns it over

Quantity pressure(double value) { return {Kind::Pressure, value, 1}; }

/// [Pa] What reading and estimate may lie apart by themselves.
double joint(Reader& read) {
  const describe::Entry& entry = *read.entry(in::crankingPressureRead);
  const std::size_t place = entry.values.size() > 1 ? static_cast<std::size_t>(read.cylinder()) : 0;
  return std::hypot(read.likely(out::crankingPressure),
                    describe::limitOrUsual(in::crankingPressureRead, entry, place));
}

const Rule tooHigh{
    .key = "cranking_pressure_high",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double shown = read(in::crankingPressureRead);
      const double estimate = read(out::crankingPressure);
      if (shown <= estimate + joint(read)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A cranking pressure of {1} is more than the ratio gives: absolute or gauge? "
                     "The gauge would show {2} at most.",
                     {pressure(shown), pressure(estimate)}},
                    {&in::crankingPressureRead, &in::ambientPressure});
      const double gauge = shown - read(in::ambientPressure);
      if (gauge <= estimate + joint(read) && gauge >= kSound * estimate) {
        finding.mends.push_back(takeAs(in::crankingPressureRead, gauge));
      } else {
        finding.hint = {
            "Oil or carbon above the piston, or a chamber smaller than entered, reads high too.",
            {}};
      }
    }};

const Rule tooLow{
    .key = "cranking_pressure_low",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double shown = read(in::crankingPressureRead);
      const double estimate = read(out::crankingPressure);
      if (shown >= kSound * estimate) return;
      speak
          .say(Weight::Objects,
               {"A cranking pressure of {1} is under {2} of the {3} that the ratio gives.",
                {pressure(shown), Quantity{Kind::Share, kSound, 0}, pressure(estimate)}},
               {&in::crankingPressureRead})
          .hint = {"Test for leak-down: rings, valves or a gasket; was the throttle wide open?",
                   {}};
    }};

const Rule uneven{.key = "cranking_pressure_uneven",
                  .source = kPractice,
                  .judge = [](Reader& read, Speaker& speak) {
                    double least = read(in::crankingPressureRead);
                    double most = least;
                    for (int i = 1; i < read.cylinders(); ++i) {
                      const double shown = read.at(i)(in::crankingPressureRead);
                      least = std::min(least, shown);
                      most = std::max(most, shown);
                    }
                    if (most - least <= kApart * most) return;
                    speak
                        .say(Weight::Objects,
                             {"The cylinders read from {1} to {2}, more than {3} apart.",
                              {pressure(least), pressure(most), Quantity{Kind::Share, kApart, 0}}},
                             {&in::crankingPressureRead})
                        .hint = {"Test the low one for leak-down: rings, valves or a gasket.", {}};
                  }};

/// It is hard to turn over, and it strikes back.
const Rule kickBack{
    .key = "kick_back",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.known(out::compressionRatio)) return;
      const double ratio = read(out::compressionRatio);
      const bool overLimit = read.given(in::ratioMost) && ratio > read(in::ratioMost);
      const bool compares = !read.isDonor() && read.known(out::crankingPressure) &&
                            read.donorKnown(out::crankingPressure);
      const bool overDonor =
          compares && read(out::crankingPressure) > kStarter * read.donor(out::crankingPressure);
      if (!overLimit && !overDonor) return;
      Finding& finding =
          overDonor
              ? speak.say(Weight::Remarks,
                          {"Turned over it makes {1}, the donor {2}: it can kick back, and break "
                           "the starter or a leg.",
                           {pressure(read(out::crankingPressure)),
                            pressure(read.donor(out::crankingPressure))}},
                          {&in::chamberVolume, &in::crankingExponent})
              : speak.say(
                    Weight::Remarks,
                    {"A compression ratio of {1} is over the {2} accepted: it can kick back, "
                     "and break the starter or a leg.",
                     {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, read(in::ratioMost)}}},
                    {&in::ratioMost, &in::chamberVolume});
      finding.hint = {
          "See to a decompressor, to what starter and battery can do, and that ignition or "
          "injection "
          "comes late enough while it is turned over.",
          {}};
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&tooHigh, &tooLow, &uneven, &kickBack};
  return kRules;
}

}  // namespace strokewright::cranking
