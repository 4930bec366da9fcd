#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/deck/results.h"
#include "core/deck/stack.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/motion/results.h"

namespace strokewright::deck {

namespace in = model::in;
namespace list = model::list;
using describe::Entry;
using describe::Finding;
using describe::fine;
using describe::Input;
using describe::kPractice;
using describe::Mend;
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

constexpr double kRounding = 1e-9;  // [m] below any instrument
/// [m] What a plate may lack that is made to the nearest step is no fault of the gap.
constexpr double kRoundedOff = kPlateStep / 2.0 + kRounding;
constexpr std::string_view kStack = "plane geometry: a sum of lengths";

std::vector<const Input*> stackEntries() {
  return {&in::headGasket, &in::spacer, &in::compressionHeight, &in::seatHeight, &in::deckHeight};
}

/// Compression ignition calls the gap by another name.
std::string gapName(Reader& read) {
  return read.choice<model::Ignition>(in::ignition) == model::Ignition::Compression
             ? "bumping clearance"
             : "squish gap";
}

/// What is wanted of the deck.
const Input& wantedEntry(Reader& read) {
  switch (read.choice<model::StackDriver>(in::stackDriver)) {
    case model::StackDriver::DeckClearance:
      return in::wantedDeckClearance;
    case model::StackDriver::CompressionRatio:
      return in::wantedCompressionRatio;
    case model::StackDriver::SquishGap:
      break;
  }
  return in::wantedSquish;
}

/// [SI] what the stack gives of it.
double givenOf(Reader& read, const Input& wanted) {
  if (&wanted == &in::wantedSquish) return read(out::squishGap);
  if (&wanted == &in::wantedDeckClearance) return read(out::deckClearance);
  const double deck =
      chamber::deckVolume({.bore = read(in::bore), .deckClearance = read(out::deckClearance)});
  return chamber::compressionRatio({.sweptVolume = read(out::sweptVolume),
                                    .clearanceVolume = read(out::volumesBesideDeck) + deck});
}

/// Offers to want what the spacer entered gives, where that is usual and the same in all cylinders.
void offerWanted(Reader& read, Finding& finding, const Input& wanted) {
  // A ratio to the third decimal is worth less of the deck than a hundredth of a millimetre.
  const double scale = wanted.kind == Kind::Ratio ? 1e3 : 1e5;
  const double given = std::round(givenOf(read, wanted) * scale) / scale;
  if (!wanted.usual.holds(given)) return;
  for (int i = 0; i < read.cylinders(); ++i) {
    Reader there = read.at(i);
    if (std::abs(givenOf(there, wanted) - given) > 0.6 / scale) return;
  }
  finding.mends.push_back(takeComputed(wanted, given));
}

/// A plate of the wrong sign has its own rule.
bool signSlipped(double entered, double toMake) {
  return entered > 0.0 && toMake < 0.0 && std::abs(entered + toMake) <= 0.05 * entered;
}

/// The plate entered lies on the shelf, and none that does comes nearer to what is asked.
bool isTheNearestAtHand(Reader& read, double entered, double toMake) {
  bool there = false;
  for (const describe::Entries& part : read.items(list::shelf)) {
    const bool plate = standingIn(part, list::partRole) == model::answer(model::PartRole::Plate) &&
                       standingIn(part, list::partQuantity) != 0.0;
    const std::optional<double> thickness = standingIn(part, list::partThickness);
    if (!plate || !thickness) continue;
    there = there || std::abs(*thickness - entered) < kRounding;
    if (std::abs(*thickness - toMake) < std::abs(entered - toMake) - kRounding) return false;
  }
  return there;
}

/// What the stack gives is within the limits on what is wanted.
bool withinLimits(Reader& read, const Input& wanted) {
  const double gap = read(out::squishGap);
  if (gap < read(in::squishLeast) - kRoundedOff || gap > read(in::squishMost) + kRounding) {
    return false;
  }
  if (&wanted != &in::wantedCompressionRatio) return true;
  if (!read.given(in::ratioLeast) && !read.given(in::ratioMost)) return false;
  const double ratio = givenOf(read, wanted);
  return (!read.given(in::ratioLeast) || ratio >= read(in::ratioLeast)) &&
         (!read.given(in::ratioMost) || ratio <= read(in::ratioMost));
}

/// The cylinders that have the plate of this one under them.
std::vector<Reader> overThePlate(Reader& read) {
  const bool one =
      read.choice<model::PlatesInStack>(in::platesInStack) == model::PlatesInStack::OneForAll &&
      read(in::spacer) != 0.0;
  if (!one) return {read.at(read.cylinder())};
  std::vector<Reader> cylinders;
  cylinders.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) cylinders.push_back(read.at(i));
  return cylinders;
}

/// [m] How much thicker the plate would have to be: one that lies under several cylinders is right
/// in the middle of what they need, which leaves the least miss.
double missing(std::vector<Reader>& cylinders) {
  double least = HUGE_VAL;
  double most = -HUGE_VAL;
  for (Reader& there : cylinders) {
    const double missed = there(out::spacerToMake) - there(in::spacer);
    least = std::min(least, missed);
    most = std::max(most, missed);
  }
  return (least + most) / 2.0;
}

/// [m] The closest of some gaps, and at worst case.
struct Closest {
  double gap = HUGE_VAL;
  double atWorst = HUGE_VAL;
};

/// Over a plate that is thicker by this.
Closest closestOver(std::vector<Reader>& cylinders, double thicker) {
  Closest closest;
  for (Reader& there : cylinders) {
    const double gap = there(out::squishGap) + thicker;
    closest.gap = std::min(closest.gap, gap);
    closest.atWorst = std::min(closest.atWorst, gap - there.worst(out::squishWithSpacerToMake));
  }
  return closest;
}

/// One figure is wanted, another is made: whoever reads the wrong one cuts the wrong plate.
const Rule wantedNotMet{
    .key = "wanted_not_met",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::spacer)) return;
      const double entered = read(in::spacer);
      if (cutInVain(read)) return;  // its own rule says so
      std::vector<Reader> cylinders = overThePlate(read);
      const double missed = missing(cylinders);
      const double toMake = entered + missed;
      const double apart = std::abs(missed);
      if (apart <= 1.01 * deck::kPlateStep || signSlipped(entered, toMake)) return;
      const Input& wanted = wantedEntry(read);
      if (isTheNearestAtHand(read, entered, toMake) &&
          std::ranges::all_of(cylinders, [&](Reader& it) { return withinLimits(it, wanted); })) {
        return;
      }
      const bool noPlate = entered == 0.0 && std::abs(toMake) < read(in::spacerLeast);
      const bool beyond = apart > read(in::plateTolerance) + deck::kPlateStep + kRounding;
      // An unusual spacer is objected to by itself, with what it may have meant.
      const bool usual = in::spacer.usual.holds(entered);
      std::vector<const Input*> about = {&in::spacer, &wanted};
      if (!usual) std::ranges::reverse(about);
      Finding& finding =
          speak.say(beyond && !noPlate ? Weight::Objects : Weight::Remarks,
                    {"{1}: {2}, the stack gives {3}. That asks for a spacer of {4}, where {5} is "
                     "entered.",
                     {&wanted, Quantity{wanted.kind, read(wanted)},
                      Quantity{wanted.kind, givenOf(read, wanted)},
                      fine(deck::spacerAsMade(toMake)), fine(entered)}},
                    std::move(about));
      if (!usual) return;
      if (&wanted != &in::wantedSquish && read.known(out::squishGap)) {
        const Closest left = closestOver(cylinders, missed);
        if (left.atWorst <= 0.0 || left.gap < read(in::squishLeast) - kRoundedOff) {
          finding.hint = {
              "That spacer would leave a squish gap of {1}, {2} at worst case, where {3} is "
              "the least.",
              {fine(left.gap), fine(left.atWorst), fine(read(in::squishLeast))}};
          offerWanted(read, finding, wanted);
          return;
        }
      }
      if (!noPlate) {
        finding.mends.push_back(takeComputed(in::spacer, deck::spacerAsMade(toMake)));
        offerWanted(read, finding, wanted);
        return;
      }
      if (&wanted != &in::wantedSquish) return;
      const double gasket = read(in::headGasket) + toMake;
      if (gasket <= 0.0) return;
      finding.hint = {"That is no plate: a head gasket of {1} would meet it.", {fine(gasket)}};
    }};

const Rule squishCloses{
    .key = "squish_closes",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double gap = read(out::squishGap);
      const double least = gap - read.worst(out::squishGap);
      if (least > kRounding) return;
      Finding& finding =
          speak.say(Weight::Forbids,
                    {"The {1} is {2}, at worst case {3}: the piston can touch the head.",
                     {gapName(read), fine(gap), fine(least)}},
                    stackEntries());
      constexpr double kTallDome = 8e-3;  // [m]
      const bool dome =
          gap < 0.0 && gap > -kTallDome && read.given(in::crownVolumeSense) &&
          read.choice<model::CrownSense>(in::crownVolumeSense) == model::CrownSense::Takes;
      if (dome) {
        finding.hint = {
            "Was the compression height taken to the top of the dome? It goes to the "
            "squish band; the dome goes into the crown volume.",
            {}};
      }
    }};

/// What practice asks of the gap cold is meant of the gap itself: only the ± under it is remarked.
const Rule squishRange{
    .key = "squish_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double gap = read(out::squishGap);
      const double worst = gap - read.worst(out::squishGap);
      if (worst <= 0.0) return;  // its own rule says so
      const double least = read(in::squishLeast);
      const double most = read(in::squishMost);
      if (gap < least - kRoundedOff) {
        speak.say(Weight::Objects,
                  {"A {1} of {2} cold, {3} at worst case, is less than {4}: hot and at over-rev it "
                   "closes further.",
                   {gapName(read), fine(gap), fine(worst), fine(least)}},
                  stackEntries());
      } else if (gap > most + kRounding) {
        speak.say(Weight::Objects,
                  {"A {1} of {2} is more than {3}: it squeezes little; a spark engine may knock.",
                   {gapName(read), fine(gap), fine(most)}},
                  stackEntries());
      } else if (worst < least - kRounding && !read.isDonor()) {
        speak.say(Weight::Remarks,
                  {"The {1} is {2}, but {3} at worst case, under {4}: prove it with wire at the "
                   "trial assembly.",
                   {gapName(read), fine(gap), fine(worst), fine(least)}},
                  stackEntries());
      }
    }};

const Rule spacerSign{
    .key = "spacer_sign",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::spacer)) return;
      const double entered = read(in::spacer);
      const double toMake = read(out::spacerToMake);
      if (!signSlipped(entered, toMake) || cutInVain(read)) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"A plate raises the block; the sum asks for {1} off. Minus?", {fine(-toMake)}},
                    {&in::spacer});
      finding.mends.push_back(takeAs(in::spacer, -entered));
    }};

/// The spacer that counts: as entered, or to make while none is entered.
const Rule spacerThickness{
    .key = "spacer_thickness",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double spacer = read(out::spacerInStack);
      const double least = read(in::spacerLeast);
      const double most = read(in::spacerMost);
      if (spacer > kRounding && spacer < least - kRounding) {
        Finding& finding = speak.say(
            Weight::Objects,
            {"A spacer of {1} is a shim or a thicker gasket, not a plate: plates begin at {2}.",
             {fine(spacer), fine(least)}},
            {&in::spacer, &in::baseGasket});
        if (read.isDonor() || !read.given(in::baseGasket)) return;
        const double gasket = read(in::baseGasket);
        finding.hint = {"A base gasket of {1} instead of {2} does the same.",
                        {fine(gasket + spacer), fine(gasket)}};
        finding.mends.push_back(withoutSpacer("Take a base gasket of {1} and no plate",
                                              in::baseGasket, gasket + spacer));
      } else if (spacer > most + kRounding) {
        speak.say(Weight::Objects,
                  {"A spacer of {1}, over {2}: think of a longer barrel or rod; spigot, studs and "
                   "cam drive change with it.",
                   {fine(spacer), fine(most)}},
                  {&in::spacer});
      }
    }};

/// What comes off where. Of a height that was taken direct nobody said what stands in it; on a
/// two-stroke it matters which end is cut, since the ports are in the barrel.
std::string_view skimPattern(Reader& read) {
  if (!read.given(in::seatHeight)) {
    return "The spacer is {1}: take {2} off the deck, or fit a rod of {3} and no plate.";
  }
  if (read.given(in::cycle) && model::twoStroke(read)) {
    return "The spacer is {1}: take {2} off the barrel foot, as the ports are counted, or fit a "
           "rod of {3} and no plate.";
  }
  return "The spacer is {1}: take {2} off the barrel foot or the deck, or fit a rod of {3} and no "
         "plate.";
}

const Rule skim{
    .key = "skim",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double spacer = read(out::spacerInStack);
      if (spacer >= -kRounding) return;
      const motion::SliderCrank crank = motion::mechanism(read);
      const double top = motion::topPinHeight(crank) - spacer;
      const double rod = std::hypot(top, crank.offset) - crank.crankRadius;
      Finding& finding =
          speak.say(Weight::Remarks,
                    {skimPattern(read), {fine(spacer), fine(-spacer), Quantity{Kind::Length, rod}}},
                    {&in::spacer, &in::rodLength});
      if (read.given(in::cycle) && model::twoStroke(read)) {
        finding.hint = {
            "Off the deck the ports stay where they are and open as before; off the "
            "foot they come down with the barrel and open for less of the turn.",
            {}};
      }
      if (read.isDonor()) return;
      finding.mends.push_back(withoutSpacer("Fit a rod of {1} and no plate", in::rodLength, rod));
    }};

/// What a plate or a skim drags along on the donor's cases.
const Rule headMoves{
    .key = "head_moves",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      constexpr double kFelt = 0.05e-3;  // [m] less is within the gaskets' own spread
      const double moved = read(out::headMoved);
      if (std::abs(moved) < kFelt) return;
      const bool up = moved > 0.0;
      const bool ports = model::twoStroke(read);
      Finding& finding = speak.say(
          Weight::Remarks,
          {up ? "The head comes {1} higher than on the donor: the studs hold by that much less, "
                "and exhaust, inlet and head steady follow it."
              : "The head comes {1} lower than on the donor: the studs stand {1} further out, and "
                "exhaust, inlet and head steady follow it.",
           {fine(std::abs(moved))}},
          {&in::spacer, &in::baseGasket, &in::headGasket});
      if (ports) return;
      finding.hint = {
          up ? "A chain or belt to a camshaft in the head needs {1} more, its timing shifts "
               "(advanced where the tight run goes straight to the crank), push rods are short by "
               "{2}; set the timing anew and look at valve to piston."
             : "A chain or belt to a camshaft in the head hangs {1} slacker, its timing shifts "
               "(retarded where the tight run goes straight to the crank), push rods are long by "
               "{2}; set the timing anew and look at valve to piston.",
          {fine(2.0 * std::abs(moved)), fine(std::abs(moved))}};
    }};

/// The crown stands as far proud as it is wanted to.
bool standsSo(Reader& read, double proud) {
  return std::abs(read(out::deckClearance) + proud) <= kRoundedOff;
}

const Rule gasketOverSquish{
    .key = "gasket_over_squish",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::wantedSquish)) return;
      const double wanted = read(in::wantedSquish);
      const Head head = headOf(read);
      const double proud = -deckClearanceForSquish(wanted, head);
      if (proud <= kRounding) return;
      const bool known =
          read.known(out::deckClearance) && read.given(in::headGasketBore) && read.given(in::bore);
      // The plate that was entered has it so, and the gasket clears the piston.
      if (known && read.given(in::spacer) && standsSo(read, proud) &&
          read(in::headGasketBore) > read(in::bore)) {
        return;
      }
      Finding& finding = speak.say(
          Weight::Objects,
          {head.recess > 0.0
               ? "With a head gasket of {1} and a recess of {4}, a gap of {2} wants the crown {3} "
                 "proud of the deck, inside the gasket's bore."
               : "With a head gasket of {1}, a gap of {2} wants the crown {3} proud of the deck, "
                 "inside the gasket's bore.",
           {fine(head.gasket), fine(wanted), fine(proud), fine(head.recess)}},
          {&in::headGasket, &in::wantedSquish});
      if (!known || read(out::deckClearance) >= 0.0) return;
      const Quantity bore{Kind::Length, read(in::bore)};
      const Quantity gasket{Kind::Length, read(in::headGasketBore)};
      if (standsSo(read, proud)) {
        finding.hint = {"The bore is {1}, that of the gasket {2}.", {bore, gasket}};
      } else {
        finding.hint = {"It stands {1} proud; the bore is {2}, that of the gasket {3}.",
                        {fine(-read(out::deckClearance)), bore, gasket}};
      }
    }};

/// A rod taken over its eyes is too long by half of each.
const Rule rodOverTheEyes{
    .key = "crown_proud_by_the_eyes",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read(out::rodRatio) > read(in::rodRatioHigh)) return;  // its own rule says so
      if (!read.given(in::smallEndBore) || !read.given(in::bigEndEyeDiameter)) return;
      const double proud = read(out::protrusionWithoutSpacer);
      const double halves = (read(in::smallEndBore) + read(in::bigEndEyeDiameter)) / 2;
      if (std::abs(proud - halves) > 0.25 * halves) return;
      speak
          .say(
              Weight::Objects,
              {"Rod ratio {1}, the crown {2} proud without a spacer: was the rod measured over the "
               "eyes? Between centres it is half of each eye less.",
               {Quantity{Kind::Ratio, read(out::rodRatio)}, fine(proud)}},
              {&in::rodLength})
          .mends.push_back(takeComputed(in::rodLength, read(in::rodLength) - halves));
    }};

/// A compression height taken to the edge of the pin is too small by half of it.
const Rule pinEdge{
    .key = "crown_low_by_half_the_pin",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::spacer)) return;
      if (!read.given(in::compressionHeight) || !read.given(in::gudgeonPinDiameter)) return;
      const double low = read(in::spacer) - read(out::spacerToMake);
      const double pin = read(in::gudgeonPinDiameter);
      if (std::abs(low - pin / 2) > 0.5e-3) return;
      speak
          .say(Weight::Objects,
               {"The crown is {1} lower than planned, half the pin of {2}: was the compression "
                "height measured to the pin's edge?",
                {fine(low), Quantity{Kind::Length, pin}}},
               {&in::compressionHeight})
          .mends.push_back(
              takeComputed(in::compressionHeight, read(in::compressionHeight) + pin / 2));
    }};

/// Pistons, gaskets and heads change in a conversion; where the heights are the donor's, a deck
/// that is higher by just the spacer has it inside already.
const Rule spacerTwice{
    .key = "spacer_counted_twice",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::deckHeight) || !read.given(in::spacer)) return;
      if (read.given(in::seatHeight) || !read.donorKnown(out::heightWithoutSpacer)) return;
      const double spacer = read(in::spacer);
      const double height = read(in::deckHeight);
      const double higher = read(out::heightWithoutSpacer) - read.donor(out::heightWithoutSpacer);
      constexpr double kReading = 0.05e-3;  // [m]
      if (std::abs(spacer) <= kReading || std::abs(higher - spacer) > kReading) return;
      speak
          .say(Weight::Objects,
               {"The deck height of {1} is the donor's and the spacer of {2}: does it hold the "
                "spacer already? Then it counts twice.",
                {Quantity{Kind::Length, height}, fine(spacer)}},
               {&in::deckHeight, &in::spacer})
          .mends.push_back(takeComputed(in::deckHeight, height - spacer));
    }};

/// What a packet or a catalogue gives is not yet clamped.
const Rule packetGasket{
    .key = "gasket_from_the_packet",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      for (const Input* gasket :
           {&in::baseGasket, &in::secondBaseGasket, &in::thirdBaseGasket, &in::headGasket}) {
        if (!read.given(*gasket) || read(*gasket) <= 0.0) continue;
        if (read.entry(*gasket)->origin != describe::Origin::Catalogue) continue;
        constexpr double kFibreLeaves = 0.85;  // fibre gives up 10 to 20 % when clamped
        speak.say(Weight::Objects,
                  {"{1}: {2} is a packet figure; compressed it is less, {3} where it is fibre. "
                   "Measure with solder.",
                   {gasket, fine(read(*gasket)), fine(kFibreLeaves * read(*gasket))}},
                  {gasket});
      }
    }};

void judgeThin(Reader& read, Speaker& speak, const Input& gasket, double least) {
  if (!read.given(gasket)) return;
  const double thickness = read(gasket);
  if (thickness <= 0.0 || thickness >= least) return;
  speak.say(Weight::Objects,
            {"{1}: {2} is thinner than any gasket; nought means that none is fitted.",
             {&gasket, fine(thickness)}},
            {&gasket});
}

const Rule thinGasket{
    .key = "thin_gasket",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      for (const Input* gasket : {&in::baseGasket, &in::secondBaseGasket, &in::thirdBaseGasket}) {
        judgeThin(read, speak, *gasket, 0.1e-3);
      }
      judgeThin(read, speak, in::headGasket, 0.2e-3);
    }};

const Rule twoRoutes{
    .key = "two_routes_to_the_deck",
    .source = "both routes must close within their joint ±",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::seatHeight) || !read.given(in::barrelHeight) ||
          !read.given(in::deckHeight)) {
        return;
      }
      double stack = 0.0;
      double joint = limitOrUsual(in::deckHeight, *read.entry(in::deckHeight));
      for (const Input* part : {&in::seatHeight, &in::baseGasket, &in::secondBaseGasket,
                                &in::thirdBaseGasket, &in::barrelHeight}) {
        stack += read(*part);
        if (read.given(*part)) joint += limitOrUsual(*part, *read.entry(*part));
      }
      const double direct = read(in::deckHeight);
      const double apart = std::abs(stack - direct);
      if (apart <= joint + kRounding) return;
      Finding& finding = speak.say(
          Weight::Forbids,
          {"Two ways to the deck differ by {1}, more than their joint ± of {2}: {3} by the stack, "
           "{4} direct. The stack is used.",
           {fine(apart), fine(joint), Quantity{Kind::Length, stack},
            Quantity{Kind::Length, direct}}},
          {&in::seatHeight, &in::barrelHeight, &in::baseGasket, &in::deckHeight});
      const double spacer = read.given(in::spacer) ? read(in::spacer) : 0.0;
      constexpr double kLeastHalfMandrel = 5e-3;  // [m]
      constexpr double kMostHalfMandrel = 25e-3;  // [m]
      if (spacer != 0.0 && std::abs(direct - stack - spacer) <= joint + kRounding) {
        finding.hint = {"Does the direct height hold the spacer of {1}? Then it counts twice.",
                        {fine(spacer)}};
        finding.mends.push_back(takeComputed(in::deckHeight, direct - spacer));
      } else if (direct - stack >= kLeastHalfMandrel && direct - stack <= kMostHalfMandrel) {
        finding.hint = {"Half of a {1} mandrel left out of the seat?",
                        {Quantity{Kind::Length, 2 * apart}}};
        finding.mends.push_back(takeComputed(in::seatHeight, read(in::seatHeight) + apart));
      }
    }};

/// Readings of one place at several cylinders should not wander.
const Rule seatsApart{
    .key = "places_apart", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      const double most = read(in::seatSpread);
      for (const Input* place : {&in::seatHeight, &in::barrelHeight, &in::deckHeight}) {
        const Entry& entry = *read.entry(*place);
        const std::size_t count =
            std::min(entry.values.size(), static_cast<std::size_t>(read.cylinders()));
        if (count < 2) continue;
        const auto [least, largest] =
            std::ranges::minmax_element(std::span(entry.values).first(count));
        const double apart = *largest - *least;
        if (apart <= most + kRounding) continue;
        const auto number = [&](auto i) {
          Reader here = read.at(static_cast<int>(&*i - entry.values.data()));
          return Quantity{Kind::Count, static_cast<double>(model::numberOfCylinder(here))};
        };
        speak.say(Weight::Objects,
                  {"The {1} of cylinder {2} is {3} above that of cylinder {4}, over {5}: out of "
                   "parallel, or a bad reading? Measure again before anything is cut.",
                   {place, number(largest), fine(apart), number(least), fine(most)}},
                  {place});
      }
    }};

const Rule deckSpread{
    .key = "deck_spread", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;  // it is as it is
      const double spread = read(out::deckClearanceSpread);
      const double most = read(in::deckSpread);
      if (spread <= most + kRounding) return;
      speak.say(Weight::Objects,
                {"The deck clearance differs by {1} between cylinders, over {2}.",
                 {fine(spread), fine(most)}},
                {&in::spacer, &in::seatHeight});
    }};

const Rule proudTwice{
    .key = "liner_protrusion_counted",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::linerProud) || read(in::linerProud) == 0.0) return;
      if (read.given(in::heightTakenTo)) return;
      Finding& finding = speak.say(
          Weight::Remarks,
          {"The liner stands {1} proud; the height is held to be taken to the liner's top, so it "
           "is not added again.",
           {fine(read(in::linerProud))}},
          {&in::heightTakenTo, &in::linerProud});
      for (const model::HeightTakenTo face :
           {model::HeightTakenTo::LinerTop, model::HeightTakenTo::BlockFace}) {
        finding.mends.push_back(takeAs(in::heightTakenTo, static_cast<double>(face)));
      }
    }};

/// The liner's protrusion is added or not by the face the height was taken to: a height that is the
/// donor's was taken to the donor's face.
const Rule faceAgainstDonor{
    .key = "height_taken_to_against_donor",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::heightTakenTo) || !read.hasDonor()) return;
      if (!read.given(in::linerProud) || read(in::linerProud) == 0.0) return;
      const double face = read(in::heightTakenTo);
      const double donors = read.donor(in::heightTakenTo);
      if (face == donors) return;
      const Input& height = read.given(in::seatHeight) ? in::barrelHeight : in::deckHeight;
      if (!read.donorGiven(height) || read.donor(height) != read(height)) return;
      const bool added = face == model::answer(model::HeightTakenTo::BlockFace);
      speak
          .say(
              Weight::Objects,
              {added ? "The liner's {1} would be added to a height that has it in the donor: taken "
                       "to which face?"
                     : "The liner's {1} would be left out of a height that lacks it in the donor: "
                       "taken to which face?",
               {fine(read(in::linerProud))}},
              {&in::heightTakenTo, &in::linerProud})
          .mends.push_back(takeAs(in::heightTakenTo, donors));
    }};

const Rule linerFlush{.key = "liner_protrusion_small",
                      .source = kPractice,
                      .per = Per::Cylinder,
                      .judge = [](Reader& read, Speaker& speak) {
                        if (!read.given(in::linerProud)) return;
                        const double proud = read(in::linerProud);
                        if (proud <= 0.0 || proud >= 0.03e-3) return;
                        speak.say(
                            Weight::Objects,
                            {"A wet liner only {1} proud may not seal: {2} to {3} is usual.",
                             {Quantity{Kind::FineLength, proud, 3}, fine(0.03e-3), fine(0.10e-3)}},
                            {&in::linerProud});
                      }};

}  // namespace

bool cutInVain(Reader& read) {
  if (read.isDonor() || !read.given(in::spacer) || read(in::spacer) <= 0.0) return false;
  return read.entry(in::spacer)->origin == describe::Origin::Measured &&
         read(out::spacerToMake) < -read(in::plateTolerance);
}

Mend withoutSpacer(std::string_view pattern, const Input& part, double value) {
  const double length = std::round(value * 1e5) / 1e5;
  return {.says = {pattern, {Quantity{part.kind, length}}},
          .entries = {{&part, typedText(part, length)}, {&in::spacer, typedText(in::spacer, 0.0)}},
          .computed = true};
}

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {
      &wantedNotMet, &squishCloses, &squishRange,      &spacerSign,     &spacerThickness,
      &skim,         &headMoves,    &gasketOverSquish, &rodOverTheEyes, &pinEdge,
      &packetGasket, &thinGasket,   &twoRoutes,        &spacerTwice,    &seatsApart,
      &deckSpread,   &proudTwice,   &faceAgainstDonor, &linerFlush};
  return kRules;
}

}  // namespace strokewright::deck
