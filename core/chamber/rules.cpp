#include <array>
#include <cmath>

#include "core/chamber/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::chamber {

namespace in = model::in;
using describe::Finding;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::takeComputed;
using describe::Weight;
using units::Kind;

namespace {

const Rule boreAgainstStroke{
    .key = "bore_against_stroke",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ratio = read(out::boreStrokeRatio);
      constexpr double kLeast = 0.5;
      constexpr double kMost = 2.0;
      if (ratio >= kLeast && ratio <= kMost) return;
      speak.say(
          Weight::Objects,
          {"Bore over stroke is {1}, outside {2} to {3}: throw taken for stroke, or stroke for "
           "throw?",
           {Quantity{Kind::Ratio, ratio}, Quantity{Kind::Ratio, kLeast, 1},
            Quantity{Kind::Ratio, kMost, 0}}},
          {&in::crankThrow, &in::stroke, &in::bore});
    }};

const Rule gasketOverBore{
    .key = "gasket_bore",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!headGasketThere(read)) return;
      const double bore = read(in::bore);
      const double gasket = read(in::headGasketBore);
      const Quantity hole{Kind::Length, gasket};
      if (gasket < bore) {
        Finding& finding = speak.say(
            Weight::Forbids,
            {"A gasket bore of {1} overhangs a bore of {2} by {3} all round.",
             {hole, Quantity{Kind::Length, bore}, Quantity{Kind::FineLength, (bore - gasket) / 2}}},
            {&in::headGasketBore, &in::bore});
        if (2 * gasket >= bore && 2 * gasket <= 1.06 * bore) {
          finding.hint = {"A radius? Twice it is {1}.", {Quantity{Kind::Length, 2 * gasket}}};
          finding.mends.push_back(takeAs(in::headGasketBore, 2 * gasket));
        }
      } else if (gasket > 1.06 * bore) {
        speak.say(Weight::Objects,
                  {"A gasket bore of {1} leaves {2} all round open to the fire: is that so?",
                   {hole, Quantity{Kind::FineLength, (gasket - bore) / 2}}},
                  {&in::headGasketBore, &in::bore});
      }
    }};

/// A class limit under half or over twice the displacement is a slip, not a class.
bool ofAnotherSize(double limit, double displacement) {
  return limit < displacement / 2 || limit > 2 * displacement;
}

/// The largest bore that stays inside the class at worst case, by 0.01 mm; a bore much smaller is
/// another engine, not a mend.
void offerBore(Reader& read, Finding& finding, double limit, double worst) {
  if (read.entry(in::bore)->values.size() != 1) return;
  const double bore = read(in::bore);
  const double most = bore * std::sqrt(limit / (read(out::displacement) + worst));
  constexpr double kMend = 0.5e-3;  // [m]
  if (bore - most <= kMend) {
    finding.mends.push_back(takeComputed(in::bore, std::floor(most * 1e5) / 1e5));
  }
}

const Rule overTheClass{
    .key = "class_limit",
    .source = "the class rule; its text decides",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::classLimit)) return;
      const double limit = read(in::classLimit);
      const double displacement = read(out::displacement);
      const double margin = read(out::classMargin);
      const double worst = read.worst(out::classMargin);
      if (margin >= worst || ofAnotherSize(limit, displacement)) return;
      const Quantity size{Kind::Volume, displacement};
      const describe::Sentence says =
          margin < 0.0 ? describe::Sentence{"{1} is {2} over the class limit of {3}.",
                                            {size, Quantity{Kind::Volume, -margin},
                                             Quantity{Kind::Volume, limit}}}
                       : describe::Sentence{
                             "{1} may be over the class limit of {2}: the margin of {3} is "
                             "less than its worst case ± of {4}.",
                             {size, Quantity{Kind::Volume, limit}, Quantity{Kind::Volume, margin},
                              Quantity{Kind::Volume, worst}}};
      Finding& finding = speak.say(Weight::Objects, says,
                                   {&in::classLimit, &in::bore, &in::crankThrow, &in::stroke});
      offerBore(read, finding, limit, worst);
    }};

const Rule reboreOut{
    .key = "class_leaves_no_rebore",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::classLimit)) return;
      constexpr double kStep = 0.25e-3;  // [m] on the bore: the smallest usual oversize
      const double limit = read(in::classLimit);
      const double margin = read(out::classMargin);
      const double worst = read.worst(out::classMargin);
      if (margin < worst) return;
      const double growth = 1.0 + kStep / read(in::bore);
      const double rebored = read(out::displacement) * growth * growth;
      if (rebored + worst <= limit) return;
      speak.say(Weight::Remarks,
                {"{1} is inside the class limit of {2} by {3} (± {4}), but leaves no rebore: {5} "
                 "on the bore makes {6}.",
                 {Quantity{Kind::Volume, read(out::displacement)}, Quantity{Kind::Volume, limit},
                  Quantity{Kind::Volume, margin}, Quantity{Kind::Volume, worst},
                  Quantity{Kind::FineLength, kStep}, Quantity{Kind::Volume, rebored}}},
                {&in::classLimit, &in::bore});
    }};

const Rule classOfAnotherSize{
    .key = "class_limit_far_off", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::classLimit)) return;
      const double limit = read(in::classLimit);
      const double displacement = read(out::displacement);
      if (!ofAnotherSize(limit, displacement)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A class limit of {1} against a displacement of {2}: is that so?",
                     {Quantity{Kind::Volume, limit}, Quantity{Kind::Volume, displacement}}},
                    {&in::classLimit, &in::bore, &in::crankThrow, &in::stroke});
      const double litres = 1000.0 * limit;
      if (ofAnotherSize(litres, displacement)) return;
      finding.hint = {"Litres?", {}};
      finding.mends.push_back(takeAs(in::classLimit, litres));
    }};

const Rule crownWithoutSense{
    .key = "crown_without_sense",
    .source = "plane geometry",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::crownVolume) || read(in::crownVolume) == 0.0 ||
          read.given(in::crownVolumeSense)) {
        return;
      }
      Finding& finding =
          speak.say(Weight::Forbids,
                    {"The crown's {1}: does it take volume (a dome) or add it (a dish)?",
                     {Quantity{Kind::Volume, read(in::crownVolume)}}},
                    {&in::crownVolumeSense, &in::crownVolume});
      for (const model::CrownSense sense : {model::CrownSense::Takes, model::CrownSense::Adds}) {
        finding.mends.push_back(takeAs(in::crownVolumeSense, static_cast<double>(sense)));
      }
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&boreAgainstStroke,  &gasketOverBore,
                                        &overTheClass,       &reboreOut,
                                        &classOfAnotherSize, &crownWithoutSense};
  return kRules;
}

}  // namespace strokewright::chamber
