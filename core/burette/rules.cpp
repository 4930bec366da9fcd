#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "core/burette/results.h"
#include "core/chamber/chamber.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"
#include "core/survey/joint.h"

namespace strokewright::burette {

namespace in = model::in;
using describe::Finding;
using describe::Mend;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::typedText;
using describe::Weight;
using units::Kind;

namespace {

constexpr std::string_view kJoint =
    "two ways round close within their joint ±: JCGM 100:2008, 5.1.2";
constexpr double kRounding = 1e-12;  // [m3]

/// What the crown volume rests on, by the burette and as entered.
survey::Joint crownJoint(Reader& read) {
  const double area = chamber::boreArea(read(in::bore));
  std::vector<survey::Rests> ways = {{.on = &in::crownFill},
                                     {.on = &in::crownFillDepth, .worth = area}};
  survey::addPart(read, ways, in::crownVolume);
  return survey::jointOf(read, out::crownClosure, ways);
}

/// What the clearance volume rests on, by the burette and as computed. What the diameters add is
/// far less than a filling is good to.
survey::Joint clearanceJoint(Reader& read) {
  std::vector<survey::Rests> ways = {{.on = &in::wholeVolume}, {.on = &in::chamberVolume}};
  for (const describe::Input* part :
       {&in::plugHoleVolume, &in::crownVolume, &in::creviceVolume, &in::headGasketVolume}) {
    survey::addPart(read, ways, *part);
  }
  const double area = chamber::boreArea(read(in::bore));
  for (const survey::Rests& way : survey::deckRestsOn(read)) {
    ways.push_back({.on = way.on, .worth = way.worth * area});
  }
  if (!read.given(in::headGasketVolume) && read(in::headGasket) > 0.0) {
    survey::addPart(read, ways, in::headGasket, chamber::boreArea(read(in::headGasketBore)));
  }
  return survey::jointOf(read, out::clearanceClosure, ways);
}

Quantity volume(double value) { return {Kind::Volume, value, 2}; }

model::CrownSense senseOf(double taken) {
  return taken < 0.0 ? model::CrownSense::Adds : model::CrownSense::Takes;
}

std::string told(double taken) {
  return senseOf(taken) == model::CrownSense::Takes ? "takes" : "adds";
}

/// The burette's crown volumes typed into the entries, each cylinder its own where they differ.
Mend takeFromBurette(Reader& read) {
  std::string volumes;
  std::string senses;
  double limit = 0.0;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    const double taken = here(out::crownByBurette);
    const double hundredths = std::round(std::abs(taken) * 1e8) / 1e8;  // of a millilitre
    limit = std::max(limit, here.likely(out::crownByBurette));
    if (i > 0) {
      volumes += "; ";
      senses += "; ";
    }
    volumes += typedText(in::crownVolume, hundredths);
    senses += typedText(in::crownVolumeSense, model::answer(senseOf(taken)));
  }
  if (limit > 0.0) {
    volumes += " ± " + typedText(in::crownVolume, std::ceil(limit * 1e8) / 1e8);
  }
  return {.says = {"Take the crown volume from the burette", {}},
          .entries = {{&in::crownVolume, volumes}, {&in::crownVolumeSense, senses}},
          .computed = true};
}

/// The cylinder in which the burette is farthest from what was entered, beyond the likely ±; -1 for
/// none.
int farthestCrown(Reader& read) {
  int farthest = -1;
  double most = 0.0;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    const double apart = std::abs(here(out::crownClosure));
    if (apart <= crownJoint(here).likely + kRounding || apart <= most) continue;
    most = apart;
    farthest = i;
  }
  return farthest;
}

const Rule crown{
    .key = "crown_by_burette", .source = kJoint, .judge = [](Reader& read, Speaker& speak) {
      const int cylinder = farthestCrown(read);
      if (cylinder < 0) return;
      Reader here = read.at(cylinder);
      const double filled = here(out::crownByBurette);
      const double entered = crownAsEntered(here);
      const double likely = crownJoint(here).likely;
      Finding& finding = speak.say(
          Weight::Objects,
          {entered == 0.0
               ? "By the burette the crown {1} {2}; it is counted as flat. The filling is "
                 "good to ± {5}."
               : "By the burette the crown {1} {2}; as entered it {3} {4}. Their joint ± is {5}.",
           {told(filled), volume(std::abs(filled)), told(entered), volume(std::abs(entered)),
            volume(likely)}},
          {&in::crownVolume, &in::crownVolumeSense, &in::crownFill, &in::crownFillDepth,
           &in::bore});
      if (entered != 0.0 && std::abs(filled + entered) <= likely) {
        finding.hint = {"A dish taken for a dome, or a dome for a dish?", {}};
      }
      finding.mends.push_back(takeFromBurette(read));
    }};

/// The other sense of the crown closes what stands open.
void offerOtherSense(Reader& read, Finding& finding) {
  const double taken = crownAsEntered(read);
  const double flipped = read(out::clearanceClosure) - 2.0 * taken;
  const double likely = clearanceJoint(read).likely + kRounding;
  if (taken == 0.0 || std::abs(flipped) > likely) return;
  finding.hint = {
      "It would close were the crown's {1} the other way: a dish taken for a dome, or a dome for a "
      "dish?",
      {volume(std::abs(taken))}};
  finding.mends.push_back(takeAs(in::crownVolumeSense, model::answer(senseOf(-taken))));
}

const Rule closure{
    .key = "clearance_closure",
    .source = kJoint,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double apart = std::abs(read(out::clearanceClosure));
      const auto [likely, worst] = clearanceJoint(read);
      if (apart <= likely + kRounding) return;
      Finding& finding = speak.say(
          apart > worst + kRounding ? Weight::Forbids : Weight::Objects,
          {"The clearance volume is {1} by the burette and {2} as computed, {3} apart: ratios of "
           "{4} and {5}. Their joint ± is {6} likely, {7} at worst.",
           {volume(read(out::clearanceByBurette)), volume(read(out::clearanceVolume)),
            volume(apart), Quantity{Kind::Ratio, read(out::ratioByBurette)},
            Quantity{Kind::Ratio, read(out::compressionRatio)}, volume(likely), volume(worst)}},
          {&in::wholeVolume, &in::plugHoleVolume, &in::chamberVolume, &in::crownVolume, &in::bore});
      offerOtherSense(read, finding);
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&crown, &closure};
  return kRules;
}

}  // namespace strokewright::burette
