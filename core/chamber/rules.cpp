#include <array>
#include <cmath>

#include "core/chamber/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::chamber {

namespace in = model::in;
using describe::Finding;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::Weight;
using units::Kind;

namespace {

constexpr std::string_view kPractice = "common practice, no published source";

const Rule boreAgainstStroke{
    .key = "bore_against_stroke",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ratio = read(out::boreStrokeRatio);
      if (ratio >= 0.5 && ratio <= 2.0) return;
      speak.say(Weight::Objects,
                {"Bore over stroke is {1}, outside 0.5 to 2: throw taken for stroke, or stroke for "
                 "throw?",
                 {Quantity{Kind::Ratio, ratio}}},
                {&in::crankThrow, &in::stroke, &in::bore});
    }};

const Rule gasketOverBore{
    .key = "gasket_bore",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
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

const Rule overTheClass{
    .key = "class_limit",
    .source = "the class rule; its text decides",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::classLimit)) return;
      const double margin = read(out::classMargin);
      const double worst = read.worst(out::classMargin);
      const Quantity limit{Kind::Volume, read(in::classLimit)};
      if (margin < 0.0) {
        speak.say(Weight::Objects,
                  {"{1} is {2} over the class limit of {3}.",
                   {Quantity{Kind::Volume, read(out::displacement)},
                    Quantity{Kind::Volume, -margin}, limit}},
                  {&in::classLimit, &in::bore, &in::crankThrow, &in::stroke});
      } else if (margin < worst) {
        speak.say(Weight::Objects,
                  {"{1} may be over the class limit of {2}: the margin of {3} is less than its "
                   "worst case ± of {4}.",
                   {Quantity{Kind::Volume, read(out::displacement)}, limit,
                    Quantity{Kind::Volume, margin}, Quantity{Kind::Volume, worst}}},
                  {&in::classLimit, &in::bore, &in::crankThrow, &in::stroke});
      }
    }};

const Rule classOfAnotherSize{
    .key = "class_limit_far_off", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::classLimit)) return;
      const double limit = read(in::classLimit);
      const double displacement = read(out::displacement);
      if (limit >= displacement / 2 && limit <= 2 * displacement) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A class limit of {1} against a displacement of {2}: is that so?",
                     {Quantity{Kind::Volume, limit}, Quantity{Kind::Volume, displacement}}},
                    {&in::classLimit});
      const double litres = 1000.0 * limit;
      if (litres >= displacement / 2 && litres <= 2 * displacement) {
        finding.hint = {"Litres?", {}};
        finding.mends.push_back(takeAs(in::classLimit, litres));
      }
    }};

const Rule crownWithoutSense{
    .key = "crown_without_sense",
    .source = "plane geometry",
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
  static constexpr std::array kRules = {&boreAgainstStroke, &gasketOverBore, &overTheClass,
                                        &classOfAnotherSize, &crownWithoutSense};
  return kRules;
}

}  // namespace strokewright::chamber
