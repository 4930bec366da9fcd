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

namespace strokewright::plate {

namespace in = model::in;
using describe::fine;
using describe::kPractice;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
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
        for (auto other = std::next(hole); other != outline.holes.end(); ++other) {
          judgeWall(speak, wallBetween(*hole, *other), other->name, hole->name);
        }
      }
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&flatServes, &holesFit};
  return kRules;
}

}  // namespace strokewright::plate
