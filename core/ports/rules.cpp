#include <array>
#include <cmath>
#include <numbers>
#include <string>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/ports/results.h"

namespace strokewright::ports {

namespace in = model::in;
using describe::Finding;
using describe::fine;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::typedText;
using describe::Weight;
using units::Kind;

namespace {

Quantity degrees(double angle) { return {Kind::Angle, angle, 1}; }
Quantity length(double value) { return {Kind::Length, value}; }

void judgeOpen(Reader& read, Speaker& speak, const Port& port) {
  if (!read.known(*port.travel)) return;
  const double travel = read(*port.travel);
  if (travel > 0.0) return;
  speak
      .say(Weight::Forbids,
           {"The {1} port is open at top dead centre: its top, {2} below the barrel face, is {3} "
            "above the crown.",
            {std::string(port.name), length(read(*port.top)), length(-travel)}},
           {port.top})
      .hint = {"Is it measured from the barrel face, or from the crown at top dead centre?", {}};
}

void judgeShut(Reader& read, Speaker& speak, const Port& port) {
  if (!read.known(*port.travel)) return;
  const double travel = read(*port.travel);
  const double stroke = read(out::trueStroke);
  if (travel < stroke) return;
  speak
      .say(Weight::Forbids,
           {"The {1} port never opens: its top is {2} below the crown at top dead centre, the "
            "stroke is {3}.",
            {std::string(port.name), length(travel), length(stroke)}},
           {port.top})
      .hint = {"Is it the top of the port, measured from the barrel face?", {}};
}

const Rule openAtTop{.key = "port_open_at_top",
                     .source = "plane geometry",
                     .per = Per::Cylinder,
                     .judge = [](Reader& read, Speaker& speak) {
                       judgeOpen(read, speak, kExhaust);
                       judgeOpen(read, speak, kTransfer);
                     }};

const Rule neverOpens{.key = "port_never_opens",
                      .source = "plane geometry",
                      .per = Per::Cylinder,
                      .judge = [](Reader& read, Speaker& speak) {
                        judgeShut(read, speak, kExhaust);
                        judgeShut(read, speak, kTransfer);
                      }};

const Rule transferFirst{
    .key = "transfer_opens_first",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ahead = -read(out::blowdown);
      if (ahead <= 0.0) return;
      const double exhaust = read(in::exhaustPortTop);
      const double transfer = read(in::transferPortTop);
      Finding& finding = speak.say(
          Weight::Objects,
          {"The transfer ports open {1} before the exhaust: are the two heights exchanged?",
           {degrees(ahead)}},
          {&in::exhaustPortTop, &in::transferPortTop});
      finding.mends.push_back({{"Exchange them", {}},
                               {{&in::exhaustPortTop, typedText(in::exhaustPortTop, transfer)},
                                {&in::transferPortTop, typedText(in::transferPortTop, exhaust)}}});
    }};

/// How far a duration may be from the donor's before it is worth a word.
constexpr double kWorthAWord = 5.0 * std::numbers::pi / 180.0;

const Rule againstDonor{
    .key = "port_timing_against_donor",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.hasDonor()) return;
      const double exhaust = read(out::exhaustDuration);
      const double transfer = read(out::transferDuration);
      const double exhaustLower = read(out::exhaustPortLowering);
      const double transferLower = read(out::transferPortLowering);
      const double donorsExhaust = read.donor(out::exhaustDuration);
      const double donorsTransfer = read.donor(out::transferDuration);
      if (std::abs(exhaust - donorsExhaust) <= kWorthAWord &&
          std::abs(transfer - donorsTransfer) <= kWorthAWord) {
        return;
      }
      Finding& finding = speak.say(
          Weight::Remarks,
          {"The exhaust is open for {1} and the transfers for {2}, on the donor {3} and {4}: the "
           "donor's angles need the port tops {5} and {6} lower.",
           {degrees(exhaust), degrees(transfer), degrees(donorsExhaust), degrees(donorsTransfer),
            fine(exhaustLower), fine(transferLower)}},
          {&in::exhaustPortTop, &in::transferPortTop, &in::spacer});
      if (exhaust <= donorsExhaust || read(out::spacerInStack) <= 0.0) return;
      finding.hint = {
          "A spacer lifts the ports. The same gap made up in the head leaves them where they are.",
          {}};
    }};

/// What practice gives with so many decimals covers what rounds to it.
struct Range {
  double least = 0.0;
  double most = 0.0;
  double half = 0.0;  ///< of the last digit it is given with

  bool holds(double value) const { return value >= least - half && value <= most + half; }
};

const Rule primaryRange{
    .key = "primary_compression_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;  // it is as it is
      constexpr Range kUsual{1.30, 1.45, 0.005};
      const double ratio = read(out::primaryCompressionRatio);
      if (kUsual.holds(ratio)) return;
      speak
          .say(Weight::Objects,
               {"A primary compression ratio of {1} is outside {2} to {3}: is that so?",
                {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, kUsual.least},
                 Quantity{Kind::Ratio, kUsual.most}}},
               {&in::crankcaseVolume})
          .hint = {"Was the crankcase filled with the piston at bottom dead centre?", {}};
    }};

const Rule blowdownRange{
    .key = "blowdown_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;  // it is as it is
      constexpr double kDegree = std::numbers::pi / 180.0;
      constexpr Range kUsual{26.0 * kDegree, 34.0 * kDegree, 0.5 * kDegree};  // touring to sport
      const double blowdown = read(out::blowdown);
      if (blowdown <= 0.0 || kUsual.holds(blowdown)) return;
      speak
          .say(Weight::Objects,
               {"A blowdown of {1} is outside {2} to {3}: is that so?",
                {degrees(blowdown), Quantity{Kind::Angle, kUsual.least, 0},
                 Quantity{Kind::Angle, kUsual.most, 0}}},
               {&in::exhaustPortTop, &in::transferPortTop})
          .hint = {"Are both port tops measured from the barrel face, to their highest edge?", {}};
    }};

const Rule trappedRange{
    .key = "trapped_compression_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;  // it is as it is
      if (read.choice<model::Ignition>(in::ignition) != model::Ignition::Spark) return;
      constexpr Range kUsual{7.0, 8.0, 0.05};
      const double ratio = read(out::trappedCompressionRatio);
      if (kUsual.holds(ratio)) return;
      const bool high = ratio > kUsual.most;
      speak
          .say(Weight::Objects,
               {"A trapped compression ratio of {1} is outside {2} to {3}: is that so?",
                {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, kUsual.least, 0},
                 Quantity{Kind::Ratio, kUsual.most, 0}}},
               {&in::exhaustPortTop, &in::chamberVolume})
          .hint = {high ? "A pipe that pushes charge back makes more of it still: it can knock."
                        : "The exhaust port shuts late, or the chamber is large.",
                   {}};
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&openAtTop,    &neverOpens,   &transferFirst,
                                        &againstDonor, &primaryRange, &blowdownRange,
                                        &trappedRange};
  return kRules;
}

}  // namespace strokewright::ports
