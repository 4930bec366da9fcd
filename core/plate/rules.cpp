#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <string>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/plate/outline.h"
#include "core/plate/results.h"
#include "core/survey/plane.h"
#include "core/survey/results.h"

namespace strokewright::plate {

namespace in = model::in;
using describe::Finding;
using describe::fine;
using describe::kPractice;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::takeAs;
using describe::takeComputed;
using describe::Weight;
using units::Kind;

namespace {

/// Unlike seats, yet one flat plate would do.
const Rule flatServes{
    .key = "one_flat_plate_serves", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (read.cylinders() == 1) return;
      const double apart = read.most(out::spacerToMake) - read.least(out::spacerToMake);
      if (apart < 0.005e-3 || apart > read(in::deckSpread)) return;
      const double low = read.least(out::squishWithFlat);
      const double high = read.most(out::squishWithFlat);
      const double ratios = read.most(out::ratioWithFlat) - read.least(out::ratioWithFlat);
      if (ratios > read(in::ratioSpread)) return;
      speak.say(
          Weight::Remarks,
          {"One flat plate of {1} serves all cylinders: squish gaps from {2} to {3}, ratios "
           "within {4}.",
           {fine(read(out::flatSpacer)), fine(low), fine(high), Quantity{Kind::Ratio, ratios}}},
          {&in::spacer});
    }};

constexpr double kThinWall = 3e-3;  // [m] a slip of the pen is likelier than a thinner one

/// Speaks where two edges leave little or nothing between them.
void judgeWall(Speaker& speak, double wall, const std::string& one, const std::string& other) {
  const std::vector<const describe::Input*> about = {&in::plateBore, &in::plateLength,
                                                     &in::plateWidth};
  const Quantity metal{Kind::Length, std::abs(wall)};
  if (wall < 0.0) {
    speak.say(Weight::Forbids, {"Spacer plate: {1} runs {2} into {3}.", {one, metal, other}},
              about);
  } else if (wall < kThinWall) {
    speak.say(Weight::Objects,
              {"Spacer plate: {1} leaves a wall of {2} to {3}. Are place and diameter right?",
               {one, metal, other}},
              about);
  }
}

/// A hole over a bore or off the plate; a wall that will not last.
const Rule holesFit{
    .key = "plate_holes_fit",
    .source = "plane geometry; walls from 3 mm are common practice, no published source",
    .judge = [](Reader& read, Speaker& speak) {
      const Outline outline = outlineAsEntered(read);
      if (!read.complete()) return;
      for (auto hole = outline.holes.begin(); hole != outline.holes.end(); ++hole) {
        judgeWall(speak, wallToEdge(outline, *hole), hole->name, "the edge");
        judgeWall(speak, wallToParting(outline, *hole), hole->name, "the next plate");
        for (auto other = std::next(hole); other != outline.holes.end(); ++other) {
          judgeWall(speak, wallBetween(*hole, *other), other->name, hole->name);
        }
      }
    }};

constexpr double kTrue = 0.005e-3;  // [m] what is no difference on a plate

/// The thicknesses in the stack lie on a straight line along the crankshaft.
bool isTapered(Reader& read) {
  std::vector<survey::SeatPoint> points;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader here = read.at(i);
    points.push_back({.along = here(out::cylinderPosition), .height = here(out::spacerInStack)});
  }
  const auto line = survey::fitPlane(points);
  return std::ranges::all_of(points, [&](const survey::SeatPoint& point) {
    return std::abs(point.height - line.at(point.along)) <= 2.0 * kTrue;
  });
}

/// One piece of metal is flat or tapered; what lies on no straight line is neither.
const Rule onePiece{
    .key = "one_plate_of_several_thicknesses",
    .source = "plane geometry",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || read.cylinders() == 1) return;
      if (read.choice<model::PlatesInStack>(in::platesInStack) ==
          model::PlatesInStack::OneForEach) {
        return;
      }
      std::vector<Quantity> thicknesses;
      thicknesses.reserve(static_cast<std::size_t>(read.cylinders()));
      for (int i = 0; i < read.cylinders(); ++i) {
        thicknesses.push_back(fine(read.at(i)(out::spacerInStack)));
      }
      if (read.most(out::spacerInStack) - read.least(out::spacerInStack) < kTrue) return;
      if (isTapered(read)) {
        speak.say(Weight::Remarks,
                  {"The plate is tapered: {1} at the cylinders. Measure the seats again before it "
                   "is cut, and mark which end is which.",
                   {thicknesses}},
                  {&in::platesInStack, &in::spacer});
        return;
      }
      Finding& finding = speak.say(
          Weight::Objects,
          {"One plate lies under all cylinders, yet it is to be {1} thick.", {thicknesses}},
          {&in::platesInStack, &in::spacer});
      finding.hint = {
          "These lie on no straight line: take one thickness, a taper, or a plate for each "
          "cylinder.",
          {}};
      finding.mends.push_back(
          takeAs(in::platesInStack, model::answer(model::PlatesInStack::OneForEach)));
      finding.mends.push_back(takeComputed(in::spacer, read(out::flatSpacer)));
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&flatServes, &onePiece, &holesFit};
  return kRules;
}

}  // namespace strokewright::plate
