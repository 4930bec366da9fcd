#include <array>
#include <string>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/results.h"
#include "core/running/running.h"

namespace strokewright::running {

namespace in = model::in;
using describe::Finding;
using describe::fine;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Result;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::Weight;
using units::Kind;

namespace {

/// A gap at one speed, and what is left of it at worst.
struct Left {
  double gap = 0.0;    ///< [m]
  double worst = 0.0;  ///< [m] less the whole ± and what an estimate leaves open
  double speed = 0.0;  ///< [rad/s]
};

/// [m] What a measured gap without a ± may be off by: it is not exact.
double usualOfMeasured(Reader& read) {
  if (!startsFromMeasured(read)) return 0.0;
  const describe::Entry& entry = *read.entry(in::measuredSquish);
  const std::size_t place = entry.values.size() > 1 ? static_cast<std::size_t>(read.cylinder()) : 0;
  const bool counted = describe::limitOf(in::measuredSquish, entry, place) > 0.0;
  return counted ? 0.0 : describe::limitOrUsual(in::measuredSquish, entry, place);
}

Left leftOf(Reader& read, const Result& gap, const Result& speed) {
  const double left = read(gap);
  return {.gap = left,
          .worst = left - read.worst(gap) - usualOfMeasured(read) - read(in::runningSquishEstimate),
          .speed = read(speed)};
}

/// At over-rev there is never more left than at the working speed: it is spoken of where it weighs
/// more.
const Rule runningGap{
    .key = "running_squish",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double least = read(in::runningSquishLeast);
      const Left working = leftOf(read, out::runningSquish, out::workingSpeed);
      const Left overRev = leftOf(read, out::overRevSquish, out::overRevSpeed);
      const bool fits = working.worst >= least;
      const bool onlyThenTouches = working.worst > 0.0 && overRev.worst <= 0.0;
      if (fits && overRev.worst >= least) return;
      const Left& left = fits || onlyThenTouches ? overRev : working;
      const bool touches = left.worst <= 0.0;
      const double estimate = read(in::runningSquishEstimate);
      speak.say(
          touches ? Weight::Forbids : Weight::Objects,
          {touches ? "Running, the squish gap closes to {1} at {2}, at worst to {3} where it is "
                     "estimated to within {4}: the piston can touch the head."
                   : "Running, the squish gap closes to {1} at {2}, at worst to {3} where it is "
                     "estimated to within {4}: under {5}.",
           {fine(left.gap), Quantity{Kind::Speed, left.speed}, fine(left.worst), fine(estimate),
            fine(least)}},
          {&in::spacer, &in::wantedSpeed});
    }};

/// What was said of how the gap is known, and what was entered.
const Rule measuredGap{
    .key = "measured_squish_unused",
    .source = "what is said and what is entered do not go together",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.known(out::runningSquish)) return;
      const bool measured = read.given(in::measuredSquish);
      if (knownByMeasuring(read) == measured) return;
      const double sum = read(out::squishGap);
      if (!measured) {
        speak.say(Weight::Remarks,
                  {"The squish gap is said to be measured, but no measured gap is entered: the "
                   "running gap starts from the {1} of the dimensions.",
                   {fine(sum)}},
                  {&in::measuredSquish, &in::squishKnownBy});
        return;
      }
      Finding& finding =
          speak.say(Weight::Remarks,
                    {"A squish gap of {1} was measured, but it is said to be known from the "
                     "dimensions: the running gap starts from their {2}.",
                     {fine(read(in::measuredSquish)), fine(sum)}},
                    {&in::squishKnownBy, &in::measuredSquish});
      for (const auto known : {model::SquishKnownBy::Solder, model::SquishKnownBy::DialGauge}) {
        finding.mends.push_back(takeAs(in::squishKnownBy, model::answer(known)));
      }
    }};

/// Mean expansion of cast iron near 100 °C [1/K].
/// @source as in Machinery's Handbook, from memory
constexpr double kIron = 11e-6;

const Rule materialAssumed{
    .key = "case_material_assumed",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.given(in::caseMaterial) || read.given(in::caseExpansion)) return;
      const double taken = read(in::caseExpansion);
      const double gap = read(out::runningSquish);
      const double height = read(out::deckHeight);
      const double warming = read(in::caseWarming);
      const double closes = growth({height, taken, warming}) - growth({height, kIron, warming});
      speak.say(Weight::Remarks,
                {"The running gap takes case and barrel for aluminium: {1} at {2}. Were they cast "
                 "iron, {3} would be left.",
                 {fine(gap), Quantity{Kind::Speed, read(out::workingSpeed)}, fine(gap - closes)}},
                {&in::caseMaterial, &in::caseExpansion});
    }};

/// A typed expansion that is that of another metal.
const Rule materialAgainstExpansion{
    .key = "case_material_against_expansion",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::caseMaterial) || !read.given(in::caseExpansion)) return;
      constexpr double kLightLeast = 18e-6;  // [1/K] of aluminium and magnesium alloys
      constexpr double kIronMost = 15e-6;    // [1/K]
      const double typed = read(in::caseExpansion);
      const auto material = read.choice<model::CaseMaterial>(in::caseMaterial);
      const bool iron = material == model::CaseMaterial::Iron;
      if (iron ? typed <= kIronMost : typed >= kLightLeast) return;
      const double own = in::caseExpansion.standing.by(read);
      const std::string_view name =
          in::caseMaterial.choices[static_cast<std::size_t>(material)].label;
      Finding& finding = speak.say(
          Weight::Objects,
          {"An expansion of {1} is not that of {2}, which is about {3}: one of the two is wrong.",
           {Quantity{Kind::Expansion, typed}, std::string(name), Quantity{Kind::Expansion, own}}},
          {&in::caseExpansion, &in::caseMaterial});
      finding.mends.push_back(takeAs(in::caseExpansion, own));
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&runningGap, &measuredGap, &materialAssumed,
                                        &materialAgainstExpansion};
  return kRules;
}

}  // namespace strokewright::running
