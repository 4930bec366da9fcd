#include <algorithm>
#include <array>
#include <cmath>

#include "core/describe/common_practice.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"

namespace strokewright::masses {

namespace in = model::in;
using describe::Finding;
using describe::kPractice;
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

Quantity mass(double value) { return {Kind::Mass, value}; }

const Rule endsAgainstWhole{
    .key = "rod_ends_against_whole",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::rodMass)) return;
      const double whole = read(in::rodMass);
      const double ends = read(in::rodSmallEndMass) + read(in::rodBigEndMass);
      const double allowed = std::max(read(in::rodEndsDifference), 0.002 * whole);
      const double apart = std::abs(ends - whole);
      if (apart <= allowed * (1.0 + 1e-9)) return;
      Finding& finding = speak.say(
          Weight::Forbids,
          {"The rod's ends make {1} ({2} and {3}), the rod weighs {4}: {5} apart, where {6} is "
           "allowed. Weigh again, or look for a missing piece.",
           {mass(ends), mass(read(in::rodSmallEndMass)), mass(read(in::rodBigEndMass)), mass(whole),
            mass(apart), mass(allowed)}},
          {&in::rodSmallEndMass, &in::rodBigEndMass, &in::rodMass});
      if (read.given(in::bigEndCageMass) && std::abs(apart - read(in::bigEndCageMass)) <= allowed) {
        finding.hint = {"Just the cage: on one scale and not on the other?", {}};
      }
    }};

const Rule endsSwapped{
    .key = "rod_ends_swapped",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double small = read(in::rodSmallEndMass);
      const double big = read(in::rodBigEndMass);
      if (small <= big) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"The small end at {1} is heavier than the big end at {2}: swapped?",
                     {mass(small), mass(big)}},
                    {&in::rodSmallEndMass, &in::rodBigEndMass});
      finding.mends.push_back({{"Swap the two", {}},
                               {{&in::rodSmallEndMass, typedText(in::rodSmallEndMass, big)},
                                {&in::rodBigEndMass, typedText(in::rodBigEndMass, small)}}});
    }};

const Rule pistonDensity{
    .key = "piston_mass_for_its_bore",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double bore = read(in::bore);
      const double piston = read(in::pistonMass);
      if (!in::pistonMass.usual.holds(piston)) return;       // said of any bore
      const double density = piston / (bore * bore * bore);  // [kg/m3]
      if (density >= 300.0 && density <= 1800.0) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A piston of {1} does not fit a bore of {2}: kilograms, grams or ounces?",
                     {mass(piston), Quantity{Kind::Length, bore}}},
                    {&in::pistonMass, &in::bore});
      for (const double factor : {1000.0, 0.001, 28.349523125}) {
        const double meant = factor * density;
        if (meant >= 300.0 && meant <= 1800.0) {
          finding.mends.push_back(takeAs(in::pistonMass, factor * piston));
          return;
        }
      }
    }};

const Rule oneClip{
    .key = "one_circlip_weighed",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::circlipMass) || !read.donorGiven(in::circlipMass)) {
        return;
      }
      const double clips = read(in::circlipMass);
      const double donors = read.donor(in::circlipMass);
      if (clips <= 0.0 || std::abs(2.0 * clips - donors) > 0.1 * donors) return;
      speak
          .say(Weight::Objects,
               {"One clip or both? {1} is half the donor's {2}; both of a piston count.",
                {mass(clips), mass(donors)}},
               {&in::circlipMass})
          .mends.push_back(takeAs(in::circlipMass, 2.0 * clips));
    }};

const Rule balanceOutside{
    .key = "balance_factor_outside",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::balanceFactor)) return;
      const double factor = read(in::balanceFactor);
      if (factor >= 0.0 && factor <= 1.0) return;
      speak.say(Weight::Objects,
                {"A balance factor of {1} is outside 0 to 100 %: nothing wrong in the sum, but is "
                 "it meant?",
                 {Quantity{Kind::Share, factor}}},
                {&in::balanceFactor});
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&endsAgainstWhole, &endsSwapped, &pistonDensity, &oneClip,
                                        &balanceOutside};
  return kRules;
}

}  // namespace strokewright::masses
