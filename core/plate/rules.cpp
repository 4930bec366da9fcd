#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <string>
#include <vector>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/describe/names.h"
#include "core/model/inputs.h"
#include "core/plate/outline.h"
#include "core/plate/results.h"
#include "core/plate/taper.h"

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

/// What was entered is one thickness for all: whether it is the right one has its own rule.
bool flatIsEntered(Reader& read) {
  return read.given(in::spacer) && read.most(out::spacerInStack) == read.least(out::spacerInStack);
}

/// Unlike seats, yet one flat plate would do.
const Rule flatServes{
    .key = "one_flat_plate_serves", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (read.cylinders() == 1 || flatIsEntered(read)) return;
      const double apart = read.most(out::spacerToMake) - read.least(out::spacerToMake);
      if (apart < 0.005e-3 || apart > read(in::deckSpread)) return;
      const double low = read.least(out::squishWithFlat);
      const double high = read.most(out::squishWithFlat);
      const double ratios = read.most(out::ratioWithFlat) - read.least(out::ratioWithFlat);
      if (ratios > read(in::ratioSpread)) return;
      speak.say(Weight::Remarks,
                {"One flat plate of {1} serves all cylinders: squish gaps from {2} to {3}, ratios "
                 "within {4}.",
                 {fine(deck::spacerAsMade(read(out::flatSpacer))), fine(low), fine(high),
                  Quantity{Kind::Ratio, ratios}}},
                {&in::spacer});
    }};

/// A plate that is yet to be made, judged as the stack is once it lies in it.
void judgeAtWorst(Reader& read, Speaker& speak, const describe::Result& squish,
                  std::string_view pattern) {
  const double gap = read(squish);
  const double atWorst = squishAtWorst(read, gap);
  const double least = read(in::squishLeastAtWorst);
  if (atWorst >= least) return;
  speak.say(Weight::Objects, {pattern, {fine(gap), fine(atWorst), fine(least)}},
            {&in::platesInStack, &in::plateTolerance, &in::squishLeastAtWorst});
}

/// While no spacer is entered the stack is counted with what each cylinder needs, so that its own
/// rules do not see what one plate for all leaves, nor what a plate is made to within.
const Rule closesAtWorst{
    .key = "plate_closes_at_worst",
    .source = "plane geometry: a sum of lengths, every ± against the gap",
    .per = describe::Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || read.given(in::spacer)) return;
      if (read(out::squishGap) - read.worst(out::squishGap) <= 0.0) return;  // its own rule
      if (read.choice<model::PlatesInStack>(in::platesInStack) ==
          model::PlatesInStack::OneForEach) {
        judgeAtWorst(read, speak, out::squishGap,
                     "Over a plate of its own the gap is {1}, with every ± against it, the "
                     "plate's too, {2}: under {3}.");
        return;
      }
      judgeAtWorst(read, speak, out::squishWithFlat,
                   "Over one flat plate the gap is {1}, with every ± against it, the plate's too, "
                   "{2}: under {3}.");
      if (!read.known(out::squishWithTaper)) return;
      judgeAtWorst(read, speak, out::squishWithTaper,
                   "Over the tapered plate the gap is {1}, with every ± against it, the plate's "
                   "too, {2}: under {3}.");
    }};

/// The spigot stands in the plate's bore, and the bore of the cylinder in the spigot.
const Rule boreOverhangs{
    .key = "plate_bore_overhangs",
    .source = "plane geometry",
    .per = describe::Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::plateBore) || !read.given(in::bore)) return;
      const double plate = read(in::plateBore);
      const double bore = read(in::bore);
      if (plate >= bore) return;
      Finding& finding =
          speak.say(Weight::Forbids,
                    {"A plate bore of {1} overhangs a bore of {2} by {3} all round: the piston "
                     "meets the plate.",
                     {Quantity{Kind::Length, plate}, Quantity{Kind::Length, bore},
                      fine((bore - plate) / 2.0)}},
                    {&in::plateBore, &in::bore});
      constexpr double kMostSpigot = 1.4;  // of the bore
      if (2.0 * plate < bore || 2.0 * plate > kMostSpigot * bore) return;
      finding.hint = {"A radius? Twice it is {1}.", {Quantity{Kind::Length, 2.0 * plate}}};
      finding.mends.push_back(takeAs(in::plateBore, 2.0 * plate));
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

/// As a builder finds it: bores have their names on the drawing, the other holes a number.
std::string nameOf(const Outline& outline, const Hole& hole) {
  if (hole.isBore) return hole.name;
  const auto number = &hole - outline.holes.data() + 1;
  return hole.name + " (No. " + std::to_string(number) + " on the drawing)";
}

/// An end of a plate runs through a hole that may be cut.
bool isHalved(const Outline& outline, const Hole& hole) {
  return hole.mayPart && std::min(wallToParting(outline, hole), wallToGap(outline, hole)) < 0.0;
}

/// Holes that are left in pieces where one plate ends, be it that the next begins or not.
const Rule partingCutsHoles{
    .key = "plate_parting_cuts_holes",
    .source = "plane geometry; drilling practice: common practice, no published source",
    .judge = [](Reader& read, Speaker& speak) {
      const Outline outline = outlineAsEntered(read);
      if (!read.complete()) return;
      std::vector<std::string> halved;
      std::vector<std::string> open;
      for (const Hole& hole : outline.holes) {
        if (!isHalved(outline, hole)) continue;
        (wallToGap(outline, hole) < 0.0 ? open : halved).push_back(nameOf(outline, hole));
      }
      const auto object = [&](const std::vector<std::string>& names, std::string_view one,
                              std::string_view several, std::string_view hint) {
        if (names.empty()) return;
        speak
            .say(Weight::Objects, {names.size() == 1 ? one : several, {describe::inOne(names)}},
                 {&in::platesInStack, &in::plateBore})
            .hint = {hint, {}};
      };
      object(halved,
             "Spacer plate: {1} is halved by the parting, each of two plates has a part of it.",
             "Spacer plate: {1} are halved by the parting, each of two plates has a part of them.",
             "Drill them with the plates clamped edge to edge: a drill runs off half a hole.");
      object(open,
             "Spacer plate: {1} is cut by the end of a plate, the cylinder beside it has none.",
             "Spacer plate: {1} are cut by the end of a plate, the cylinder beside it has none.",
             "Drill them with scrap as thick clamped to the end: a drill runs off half a hole.");
    }};

/// The length of the one plate that a builder makes, where that over all cylinders is meant.
const Rule lengthIsOfAll{
    .key = "plate_length_is_of_all",
    .source = "plane geometry",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.choice<model::PlatesInStack>(in::platesInStack) !=
          model::PlatesInStack::OneForEach) {
        return;
      }
      const double length = read(in::plateLength);
      const double bore = read(in::plateBore);
      const double over = lengthOverBores(read);
      if (!read.complete() || over <= bore + Outline::kSame || length >= over) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"Spacer plates of {1} over all cylinders: their bores alone take {2}.",
                     {Quantity{Kind::Length, length}, Quantity{Kind::Length, over}}},
                    {&in::plateLength, &in::platesInStack});
      if (length < bore) {
        finding.hint = {"The length is meant over all cylinders, from end to end.", {}};
        return;
      }
      const double ofAll = over - bore + length;
      finding.hint = {
          "The length of one plate? It is meant over all cylinders, from end to end: {1}.",
          {Quantity{Kind::Length, ofAll}}};
      finding.mends.push_back(takeComputed(in::plateLength, ofAll));
    }};

/// A hole over a bore or off the plate; a wall that will not last.
const Rule holesFit{
    .key = "plate_holes_fit",
    .source = "plane geometry; walls from 3 mm are common practice, no published source",
    .judge = [](Reader& read, Speaker& speak) {
      const Outline outline = outlineAsEntered(read);
      if (!read.complete()) return;
      for (auto hole = outline.holes.begin(); hole != outline.holes.end(); ++hole) {
        const std::string name = nameOf(outline, *hole);
        judgeWall(speak, wallToEdge(outline, *hole), name, "the edge");
        if (!isHalved(outline, *hole)) {
          judgeWall(speak, wallToParting(outline, *hole), name, "the next plate");
          judgeWall(speak, wallToGap(outline, *hole), name, "the end of its plate");
        }
        for (auto other = std::next(hole); other != outline.holes.end(); ++other) {
          judgeWall(speak, wallBetween(*hole, *other), nameOf(outline, *other), name);
        }
      }
    }};

/// [m] Of a plate in one piece, at its ends where they are known, else at the cylinders.
double thinnestOf(Reader& read, const survey::SeatLine& line) {
  double thinnest = read.least(out::spacerInStack);
  for (const describe::Input* size : {&in::plateLength, &in::plateWidth, &in::plateBore}) {
    if (!read.stands(*size)) return thinnest;
  }
  const Outline outline = outlineAsEntered(read);
  return std::min({thinnest, line.at(outline.left()), line.at(outline.right())});
}

/// One piece of metal is flat or tapered; what lies on no straight line is neither.
const Rule onePiece{
    .key = "one_plate_of_several_thicknesses",
    .source = "plane geometry",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || read.cylinders() == 1 || model::severalBanks(read)) return;
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
      if (const auto line = taperInStack(read)) {
        const double thinnest = thinnestOf(read, *line);
        if (thinnest < kTrue) {
          speak.say(Weight::Forbids,
                    {"A plate tapered from end to end, {1} at the cylinder axes, comes to {2} at "
                     "its thin end: it cannot be made.",
                     {thicknesses, fine(thinnest)}},
                    {&in::platesInStack, &in::spacer});
          return;
        }
        speak.say(Weight::Remarks,
                  {"The plate is tapered: {1} at the cylinder axes. Measure the seats again before "
                   "it is cut, and mark which end is which.",
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
      finding.mends.push_back(takeComputed(in::spacer, deck::spacerAsMade(read(out::flatSpacer))));
    }};

/// What comes off instead: of a height that was taken direct nobody said what stands in it, and the
/// ports of a two-stroke are in the barrel.
std::string_view whatToSkim(Reader& read) {
  if (!read.given(in::seatHeight)) return "the deck";
  const bool ports = read.given(in::cycle) && model::twoStroke(read);
  return ports ? "the barrel foot" : "the barrel foot or the deck";
}

/// A gasket that could be thinner by as much; nullptr: none can.
const describe::Input* thinnerGasket(Reader& read, double by) {
  constexpr double kThinnestBase = 0.1e-3;  // [m]
  constexpr double kThinnestHead = 0.2e-3;  // [m]
  if (read.given(in::seatHeight) && read.given(in::baseGasket) &&
      read(in::baseGasket) - by >= kThinnestBase) {
    return &in::baseGasket;
  }
  const bool ofTheDeck = read.choice<model::StackDriver>(in::stackDriver) ==
                         model::StackDriver::DeckClearance;  // which the head gasket does not move
  if (!ofTheDeck && read.given(in::headGasket) && read(in::headGasket) - by >= kThinnestHead) {
    return &in::headGasket;
  }
  return nullptr;
}

/// A plate that is cut can be ground thinner, but not to less than nothing.
const Rule plateIsCut{
    .key = "plate_is_cut",
    .source =
        "plane geometry: a sum of lengths; gaskets from 0.1 and 0.2 mm are common practice, "
        "no published source",
    .per = describe::Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!deck::cutInVain(read)) return;
      const double off = -read(out::spacerToMake);
      Finding& finding =
          speak.say(Weight::Forbids,
                    {"The plate is cut and measures {1}, but the sum asks for {2}: no plate is "
                     "thinner than nothing.",
                     {fine(read(in::spacer)), fine(-off)}},
                    {&in::spacer});
      const std::string place(whatToSkim(read));
      const describe::Input* gasket = thinnerGasket(read, off);
      if (gasket == nullptr) {
        finding.hint = {"Leave it out and take {1} off {2}.", {fine(off), place}};
      } else {
        finding.hint = {gasket == &in::baseGasket
                            ? "Leave it out and take {1} off {2}, or fit a base gasket of {3} "
                              "instead of {4}."
                            : "Leave it out and take {1} off {2}, or fit a head gasket of {3} "
                              "instead of {4}.",
                        {fine(off), place, fine(read(*gasket) - off), fine(read(*gasket))}};
        finding.mends.push_back(deck::withoutSpacer(gasket == &in::baseGasket
                                                        ? "Take a base gasket of {1} and no plate"
                                                        : "Take a head gasket of {1} and no plate",
                                                    *gasket, read(*gasket) - off));
      }
      finding.mends.push_back(takeAs(in::spacer, 0.0));
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&flatServes, &closesAtWorst,   &onePiece,
                                        &plateIsCut, &boreOverhangs,   &lengthIsOfAll,
                                        &holesFit,   &partingCutsHoles};
  return kRules;
}

}  // namespace strokewright::plate
