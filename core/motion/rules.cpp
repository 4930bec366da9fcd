#include <array>
#include <cmath>

#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::motion {

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
using describe::typedText;
using describe::Weight;
using units::Kind;

namespace {

/// Equal within half a per cent: the same book figure.
bool sameFigure(double a, double b) { return std::abs(a - b) <= 0.005 * std::abs(b); }

const Rule rodRatioRange{
    .key = "rod_ratio",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ratio = read(out::rodRatio);
      const Quantity met{Kind::Ratio, ratio};
      if (ratio < read(in::rodRatioLimit)) {
        speak.say(Weight::Objects,
                  {"A rod ratio of {1}, rod angle {2}: below the limit of {3}; the side thrust is "
                   "high.",
                   {met, Quantity{Kind::Angle, read(out::largestRodAngle)},
                    Quantity{Kind::Ratio, read(in::rodRatioLimit)}}},
                  {&in::rodLength, &in::crankThrow});
      } else if (ratio < read(in::rodRatioLow)) {
        speak.say(Weight::Objects,
                  {"A rod ratio of {1} is a short rod: look hard at skirt, liner and side thrust.",
                   {met}},
                  {&in::rodLength, &in::crankThrow});
      }
    }};

const Rule overTheEyes{
    .key = "rod_over_the_eyes",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double ratio = read(out::rodRatio);
      if (ratio <= read(in::rodRatioHigh)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A rod ratio of {1} is unusual: was the length taken over the eyes? Between "
                     "centres it is half of each eye less.",
                     {Quantity{Kind::Ratio, ratio}}},
                    {&in::rodLength});
      if (!read.given(in::smallEndBore) || !read.given(in::bigEndEyeDiameter)) return;
      const double halves = (read(in::smallEndBore) + read(in::bigEndEyeDiameter)) / 2;
      finding.mends.push_back(takeComputed(in::rodLength, read(in::rodLength) - halves));
    }};

/// The donor's stroke is what would be its throw, beside this engine's: half of this stroke, which
/// was entered as a stroke; or about half, while the rods say that this stroke is one and that is
/// none.
bool donorsThrowForStroke(Reader& read) {
  if (read.isDonor() || !read.donorGiven(in::stroke) || read.donorGiven(in::crankThrow) ||
      !read.known(out::crankRadius)) {
    return false;
  }
  const double stroke = 2 * read(out::crankRadius);
  const double donors = read.donor(in::stroke);
  if (sameFigure(donors, stroke / 2) && !read.given(in::crankThrow)) return true;
  constexpr double kAboutHalf[] = {0.4, 0.6};  // no conversion changes a stroke by so much
  if (donors < kAboutHalf[0] * stroke || donors > kAboutHalf[1] * stroke) return false;
  return read.known(out::rodRatio) && read.donorKnown(out::rodRatio) &&
         read(out::rodRatio) >= read(in::rodRatioLimit) &&
         read.donor(out::rodRatio) > read(in::rodRatioHigh);
}

const Rule donorsThrow{
    .key = "donors_throw_for_stroke",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!donorsThrowForStroke(read)) return;
      const double stroke = 2 * read(out::crankRadius);
      const double donors = read.donor(in::stroke);
      speak.say(Weight::Objects,
                {sameFigure(donors, stroke / 2)
                     ? "The donor's stroke of {1} is half of the {2} here: was its throw entered?"
                     : "The donor's stroke of {1} is about half of the {2} here: was its throw "
                       "entered?",
                 {Quantity{Kind::Length, donors}, Quantity{Kind::Length, stroke}}},
                {&in::stroke});
    }};

const Rule halfOfTheDonors{
    .key = "throw_for_stroke",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.donorKnown(out::crankRadius) || !read.given(in::stroke)) return;
      const double stroke = read(in::stroke);
      const double donors = 2 * read.donor(out::crankRadius);
      if (!sameFigure(stroke, donors / 2)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A stroke of {1} is exactly half the donor's {2}: is it the throw?",
                     {Quantity{Kind::Length, stroke}, Quantity{Kind::Length, donors}}},
                    {&in::stroke});
      finding.mends.push_back(
          {{"Take {1} as the throw", {Quantity{Kind::Length, stroke}}},
           {{&in::crankThrow, typedText(in::crankThrow, stroke)}, {&in::stroke, ""}}});
    }};

const Rule strokeForThrow{
    .key = "stroke_for_throw",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::crankThrow)) return;
      const double entered = read(in::crankThrow);
      const Quantity met{Kind::Length, entered};
      const Quantity half{Kind::Length, entered / 2};
      if (!read.isDonor() && read.donorKnown(out::crankRadius) && !donorsThrowForStroke(read) &&
          sameFigure(entered, 2 * read.donor(out::crankRadius))) {
        speak
            .say(Weight::Forbids,
                 {"A throw of {1} is the donor's whole stroke: a fixture offset of that much ruins "
                  "the web. The throw is half the stroke, {2}.",
                  {met, half}},
                 {&in::crankThrow})
            .mends.push_back(takeAs(in::crankThrow, entered / 2));
        return;
      }
      if (!read.given(in::rodLength)) return;
      const double ratio = read(in::rodLength) / (2 * entered);
      const double ratioOfHalf = 2 * ratio;
      if (ratio >= 1.0 || ratioOfHalf < read(in::rodRatioLimit)) return;
      speak
          .say(Weight::Forbids,
               {"A throw of {1} makes the stroke {2} and the rod ratio {3}: is it the stroke? The "
                "throw is half of it, {4}.",
                {met, Quantity{Kind::Length, 2 * entered}, Quantity{Kind::Ratio, ratio}, half}},
               {&in::crankThrow})
          .mends.push_back(takeAs(in::crankThrow, entered / 2));
    }};

const Rule throwAgainstStroke{
    .key = "throw_against_stroke",
    .source = "definition: the throw is half the stroke",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::crankThrow) || !read.given(in::stroke)) return;
      const double half = read(in::stroke) / 2;
      if (std::abs(read(in::crankThrow) - half) <= 1e-6) return;
      Finding& finding = speak.say(
          Weight::Objects,
          {"Throw {1} and stroke {2} do not agree: half the stroke is {3}. The throw is "
           "used.",
           {Quantity{Kind::Length, read(in::crankThrow), 3},
            Quantity{Kind::Length, read(in::stroke), 3}, Quantity{Kind::Length, half, 3}}},
          {&in::crankThrow, &in::stroke});
      finding.mends.push_back({{"Leave the stroke out", {}}, {{&in::stroke, ""}}});
      finding.mends.push_back({{"Leave the throw out", {}}, {{&in::crankThrow, ""}}});
    }};

const Rule largeOffset{.key = "large_offset",
                       .source = kPractice,
                       .per = Per::Cylinder,
                       .judge = [](Reader& read, Speaker& speak) {
                         const double offset = std::abs(read(out::netOffset));
                         const double radius = read(out::crankRadius);
                         if (offset <= 0.3 * radius) return;
                         speak.say(
                             Weight::Objects,
                             {"A net offset of {1} on a throw of {2} is {3} of it: is that so?",
                              {Quantity{Kind::FineLength, offset}, Quantity{Kind::Length, radius},
                               Quantity{Kind::Share, offset / radius}}},
                             {&in::cylinderOffset, &in::pinOffset});
                       }};

/// An offset without its side forbids: top dead centre moves the other way.
void judgeSide(Reader& read, Speaker& speak, const describe::Input& offset,
               const describe::Input& side) {
  if (!read.given(offset) || read(offset) == 0.0 || read.given(side)) return;
  Finding& finding = speak.say(
      Weight::Forbids,
      {"The {1} of {2}: towards the thrust side or away from it? Top dead centre moves the other "
       "way.",
       {&offset, Quantity{Kind::FineLength, read(offset)}}},
      {&side, &offset});
  for (const model::Side answer : {model::Side::TowardsThrust, model::Side::AwayFromThrust}) {
    finding.mends.push_back(takeAs(side, static_cast<double>(answer)));
  }
}

const Rule cylinderOffsetSide{.key = "cylinder_offset_side",
                              .source = "plane geometry",
                              .per = Per::Cylinder,
                              .judge = [](Reader& read, Speaker& speak) {
                                judgeSide(read, speak, in::cylinderOffset, in::cylinderOffsetSide);
                              }};

const Rule pinOffsetSide{.key = "pin_offset_side",
                         .source = "plane geometry",
                         .per = Per::Cylinder,
                         .judge = [](Reader& read, Speaker& speak) {
                           judgeSide(read, speak, in::pinOffset, in::pinOffsetSide);
                         }};

/// The speed wanted is so far from the donor's that a nought slipped.
bool farFromDonors(Reader& read) {
  if (read.isDonor() || !read.given(in::wantedSpeed) || !read.donorGiven(in::provenSpeed)) {
    return false;
  }
  const double share = read(in::wantedSpeed) / read.donor(in::provenSpeed);
  return share > 1.5 || share < 0.5;
}

const Rule pistonSpeedRange{
    .key = "speed_out_of_reach",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (farFromDonors(read)) return;
      const double speed = read(out::meanPistonSpeed);
      const bool stationary =
          read.given(in::use) && read.choice<model::Use>(in::use) == model::Use::Stationary;
      const double least = stationary ? 1.5 : 3.0;
      const double most = stationary ? 12.0 : 30.0;
      if (speed >= least && speed <= most) return;
      speak.say(Weight::Objects,
                {"{1} is a mean piston speed of {2}, outside {3} to {4}: a nought too many, or one "
                 "missing?",
                 {Quantity{Kind::Speed, read(out::workingSpeed)}, Quantity{Kind::Velocity, speed},
                  Quantity{Kind::Velocity, least, 1}, Quantity{Kind::Velocity, most, 1}}},
                {read.given(in::wantedSpeed) ? &in::wantedSpeed : &in::provenSpeed});
    }};

const Rule noughtSlip{
    .key = "speed_against_donor", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!farFromDonors(read)) return;
      const double wanted = read(in::wantedSpeed);
      const double proven = read.donor(in::provenSpeed);
      Finding& finding =
          speak.say(Weight::Objects,
                    {"{1} wanted, where the donor held {2}: a nought too many, or one missing?",
                     {Quantity{Kind::Speed, wanted}, Quantity{Kind::Speed, proven}}},
                    {&in::wantedSpeed});
      if (read.known(out::meanPistonSpeed)) {
        finding.hint = {
            "{1} is a mean piston speed of {2}.",
            {Quantity{Kind::Speed, wanted}, Quantity{Kind::Velocity, read(out::meanPistonSpeed)}}};
      }
      for (const double factor : {10.0, 0.1}) {
        const double meant = wanted * factor;
        if (meant <= 1.5 * proven && meant >= 0.5 * proven) {
          finding.mends.push_back(takeAs(in::wantedSpeed, meant));
        }
      }
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&rodRatioRange,    &overTheEyes,        &donorsThrow,
                                        &halfOfTheDonors,  &strokeForThrow,     &throwAgainstStroke,
                                        &largeOffset,      &cylinderOffsetSide, &pinOffsetSide,
                                        &pistonSpeedRange, &noughtSlip};
  return kRules;
}

}  // namespace strokewright::motion
