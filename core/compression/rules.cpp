#include <array>
#include <cmath>
#include <numbers>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"

namespace strokewright::compression {

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

struct RatioRange {
  double least;
  double most;
  bool holds(double ratio) const { return ratio >= least && ratio <= most; }
};

RatioRange usualRatios(Reader& read) {
  return read.choice<model::Ignition>(in::ignition) == model::Ignition::Compression
             ? RatioRange{14.0, 23.0}
             : RatioRange{6.0, 20.0};
}

/// Within twofold of the donor's: no factor of ten slipped.
bool likeDonors(Reader& read, double chamber) {
  if (read.isDonor() || !read.donorGiven(in::chamberVolume)) return false;
  const double donors = read.donor(in::chamberVolume);
  return chamber < 2.0 * donors && donors < 2.0 * chamber;
}

const Rule ratioRange{
    .key = "compression_ratio_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ratio = read(out::compressionRatio);
      const RatioRange usual = usualRatios(read);
      if (usual.holds(ratio)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A compression ratio of {1} is outside {2} to {3}: check the volumes.",
                     {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, usual.least, 0},
                      Quantity{Kind::Ratio, usual.most, 0}}},
                    {&in::chamberVolume, &in::crownVolume, &in::bore});
      if (!read.given(in::chamberVolume)) return;
      const double chamber = read(in::chamberVolume);
      if (likeDonors(read, chamber)) return;
      const double others = read(out::clearanceVolume) - chamber;
      for (const double factor : {10.0, 0.1, 1000.0}) {
        const double clearance = others + factor * chamber;
        if (clearance <= 0.0 || !usual.holds(1.0 + read(out::sweptVolume) / clearance)) continue;
        finding.hint = {
            factor > 100.0 ? "A chamber of {1}: litres?" : "A chamber of {1}: a factor of ten?",
            {Quantity{Kind::Volume, chamber, chamber < 0.1e-6 ? 3 : -1}}};
        finding.mends.push_back(takeAs(in::chamberVolume, factor * chamber));
        return;
      }
    }};

const Rule wantedRatioRange{
    .key = "wanted_ratio_range", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::wantedCompressionRatio)) return;
      const double wanted = read(in::wantedCompressionRatio);
      const RatioRange usual = usualRatios(read);
      if (usual.holds(wanted)) return;
      speak.say(Weight::Objects,
                {"A compression ratio of {1} is wanted, outside {2} to {3}: is that so?",
                 {Quantity{Kind::Ratio, wanted}, Quantity{Kind::Ratio, usual.least, 0},
                  Quantity{Kind::Ratio, usual.most, 0}}},
                {&in::wantedCompressionRatio, &in::ignition});
    }};

/// Bowls of many millilitres belong to compression ignition.
const Rule sparkCrown{
    .key = "crown_volume_spark",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.choice<model::Ignition>(in::ignition) != model::Ignition::Spark) return;
      constexpr double kMost = 15e-6;  // [m3]
      const double crown = read(in::crownVolume);
      if (crown <= kMost * (1.0 + 1e-9)) return;
      speak.say(Weight::Objects,
                {"A crown volume of {1} is unusual with spark ignition, seldom more than {2}.",
                 {Quantity{Kind::Volume, crown}, Quantity{Kind::Volume, kMost}}},
                {&in::crownVolume, &in::ignition});
    }};

const Rule crownSense{
    .key = "crown_sense_against_donor",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::crownVolumeSense) ||
          !read.donorGiven(in::crownVolumeSense) || read(in::crownVolume) == 0.0) {
        return;
      }
      const auto sense = read.choice<model::CrownSense>(in::crownVolumeSense);
      if (static_cast<double>(sense) == read.donor(in::crownVolumeSense)) return;
      const bool takes = sense == model::CrownSense::Takes;
      const double flipped =
          read(out::clearanceVolume) + (takes ? 2.0 : -2.0) * read(in::crownVolume);
      if (flipped <= 0.0) return;
      Finding& finding = speak.say(
          Weight::Objects,
          {"The crown {1} volume where the donor's does the other. The ratio is {2}; the other way "
           "round it would be {3}.",
           {std::string(takes ? "takes" : "adds"),
            Quantity{Kind::Ratio, read(out::compressionRatio)},
            Quantity{Kind::Ratio, 1.0 + read(out::sweptVolume) / flipped}}},
          {&in::crownVolumeSense, &in::crownVolume});
      finding.mends.push_back(
          takeAs(in::crownVolumeSense,
                 static_cast<double>(takes ? model::CrownSense::Adds : model::CrownSense::Takes)));
    }};

const Rule closingBeforeBottom{
    .key = "inlet_closing_before_bottom",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::inletClosing)) return;
      const double closing = read(in::inletClosing);
      if (closing >= 0.0) return;
      // A mild cam read at a lift may close that much before; an angle from the other side may not.
      constexpr double kMostByLift = std::numbers::pi / 9.0;
      speak
          .say(-closing > kMostByLift ? Weight::Forbids : Weight::Objects,
               {"The inlet closes at {1}, before bottom dead centre: {2} after it?",
                {Quantity{Kind::Angle, closing, 0}, Quantity{Kind::Angle, -closing, 0}}},
               {&in::inletClosing})
          .mends.push_back(takeAs(in::inletClosing, -closing));
    }};

const Rule absoluteClosing{
    .key = "inlet_closing_from_top",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::inletClosing)) return;
      const double closing = read(in::inletClosing);
      const double after = closing - std::numbers::pi;
      if (after <= 0.0) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"{1} after bottom dead centre? {1} after top is {2} after bottom.",
                     {Quantity{Kind::Angle, closing, 0}, Quantity{Kind::Angle, after, 0}}},
                    {&in::inletClosing});
      finding.mends.push_back(takeAs(in::inletClosing, after));
    }};

const Rule closingWithoutLift{
    .key = "inlet_closing_without_lift",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::inletClosing) || read.given(in::inletClosingLift)) return;
      if (model::twoStroke(read)) return;
      speak.say(
          Weight::Objects,
          {"At which lift does the inlet close at {1}? At the seat and at {2} are some {3} "
           "apart.",
           {Quantity{Kind::Angle, read(in::inletClosing), 0}, Quantity{Kind::FineLength, 1e-3},
            Quantity{Kind::Angle, std::numbers::pi / 9.0, 0}}},
          {&in::inletClosingLift, &in::inletClosing});
    }};

const Rule twoStrokeValves{
    .key = "two_stroke_valves",
    .source = "definition",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!model::twoStroke(read)) return;
      for (const describe::Input* valve :
           {&in::inletClosing, &in::inletValveCount, &in::inletValveDiameter}) {
        if (!read.given(*valve)) continue;
        speak.say(Weight::Objects,
                  {"{1}: kept, not used; a two-stroke has no inlet valves.", {valve}}, {valve});
      }
    }};

const Rule spread{.key = "compression_ratio_spread",
                  .source = kPractice,
                  .judge = [](Reader& read, Speaker& speak) {
                    if (read.isDonor()) return;  // it is as it is
                    const double apart = read(out::ratioSpread);
                    const double most = read(in::ratioSpread);
                    if (apart <= most + 1e-9) return;
                    speak.say(Weight::Objects,
                              {"The compression ratio differs by {1} between cylinders, over {2}.",
                               {Quantity{Kind::Ratio, apart}, Quantity{Kind::Ratio, most}}},
                              {&in::spacer, &in::chamberVolume, &in::seatHeight});
                  }};

const Rule largeCrevice{
    .key = "large_crevice",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double crevice = read(in::creviceVolume);
      const double share = crevice / read(out::clearanceVolume);
      if (share <= 0.05 || !usualRatios(read).holds(read(out::compressionRatio))) return;
      speak.say(Weight::Objects,
                {"A crevice of {1} is {2} of the clearance volume: a tenth of it?",
                 {Quantity{Kind::Volume, crevice}, Quantity{Kind::Share, share}}},
                {&in::creviceVolume});
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {
      &wantedRatioRange, &ratioRange,         &sparkCrown,      &crownSense, &closingBeforeBottom,
      &absoluteClosing,  &closingWithoutLift, &twoStrokeValves, &spread,     &largeCrevice};
  return kRules;
}

}  // namespace strokewright::compression
