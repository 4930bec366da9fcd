#include <algorithm>
#include <array>
#include <cmath>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::deck {

namespace in = model::in;
using describe::Entry;
using describe::Finding;
using describe::Input;
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
constexpr std::string_view kStack = "plane geometry: a sum of lengths";

Quantity fine(double value) { return {Kind::FineLength, value}; }

std::vector<const Input*> stackEntries() {
  return {&in::headGasket, &in::spacer, &in::compressionHeight, &in::seatHeight, &in::deckHeight};
}

/// Compression ignition calls the gap by another name.
std::string gapName(Reader& read) {
  return read.choice<model::Ignition>(in::ignition) == model::Ignition::Compression
             ? "bumping clearance"
             : "squish gap";
}

const Rule squishCloses{.key = "squish_closes",
                        .source = kStack,
                        .per = Per::Cylinder,
                        .judge = [](Reader& read, Speaker& speak) {
                          const double gap = read(out::squishGap);
                          const double least = gap - read.worst(out::squishGap);
                          if (least > 0.0) return;
                          speak.say(
                              Weight::Forbids,
                              {"The {1} is {2}, at worst case {3}: the piston can touch the head.",
                               {gapName(read), fine(gap), fine(least)}},
                              stackEntries());
                        }};

const Rule squishRange{
    .key = "squish_range",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double gap = read(out::squishGap);
      if (gap - read.worst(out::squishGap) <= 0.0) return;
      const double least = read(in::squishLeast);
      const double most = read(in::squishMost);
      if (gap < least) {
        speak.say(Weight::Objects,
                  {"A {1} of {2} cold is less than {3}: hot and at over-rev it closes further.",
                   {gapName(read), fine(gap), fine(least)}},
                  stackEntries());
      } else if (gap > most) {
        speak.say(Weight::Objects,
                  {"A {1} of {2} is more than {3}: the band does little and knocks.",
                   {gapName(read), fine(gap), fine(most)}},
                  stackEntries());
      }
    }};

const Rule wantedNotMet{
    .key = "wanted_not_met",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::spacer)) return;
      const double toMake = read(out::spacerToMake);
      const double entered = read(in::spacer);
      constexpr double kHalfStep = 0.0051e-3;  // the result is put into the entry by 0.01 mm
      if (std::abs(toMake - entered) <= kHalfStep) return;
      speak.say(Weight::Remarks,
                {"What is wanted of the deck asks for a spacer of {1}; {2} is entered.",
                 {fine(toMake), fine(entered)}},
                {&in::spacer, &in::wantedSquish});
    }};

const Rule spacerSign{
    .key = "spacer_sign",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::spacer)) return;
      const double entered = read(in::spacer);
      const double toMake = read(out::spacerToMake);
      if (entered <= 0.0 || toMake >= 0.0 || std::abs(entered + toMake) > 0.05 * entered) return;
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
      if (spacer > 0.0 && spacer < least) {
        speak.say(
            Weight::Objects,
            {"A spacer of {1} is a shim or a thicker gasket, not a plate: plates begin at {2}.",
             {fine(spacer), fine(least)}},
            {&in::spacer});
      } else if (spacer > most) {
        speak.say(Weight::Objects,
                  {"A spacer of {1}, over {2}: think of a longer barrel or rod; spigot, studs and "
                   "cam drive change with it.",
                   {fine(spacer), fine(most)}},
                  {&in::spacer});
      }
    }};

const Rule skim{
    .key = "skim",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double spacer = read(out::spacerInStack);
      if (spacer >= 0.0) return;
      const motion::SliderCrank crank = motion::mechanism(read);
      const double top = motion::topPinHeight(crank) - spacer;
      const double rod = std::hypot(top, crank.offset) - crank.crankRadius;
      speak.say(Weight::Remarks,
                {"The spacer is {1}: take {2} off the barrel foot or the deck, or fit a rod of {3} "
                 "and no plate.",
                 {fine(spacer), fine(-spacer), Quantity{Kind::Length, rod}}},
                {&in::spacer, &in::rodLength});
    }};

const Rule gasketOverSquish{
    .key = "gasket_over_squish",
    .source = kStack,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::wantedSquish)) return;
      const double gasket = read(in::headGasket);
      const double wanted = read(in::wantedSquish);
      if (gasket <= wanted) return;
      speak.say(Weight::Objects,
                {"The head gasket of {1} is thicker than the {2} wanted: the crown must stand {3} "
                 "proud of the deck. Check that it enters the gasket's bore.",
                 {fine(gasket), fine(wanted), fine(gasket - wanted)}},
                {&in::headGasket, &in::wantedSquish});
    }};

const Rule wantedSquishSlip{.key = "wanted_squish_in_inches",
                            .source = kPractice,
                            .judge = [](Reader& read, Speaker& speak) {
                              if (!read.given(in::wantedSquish)) return;
                              const double wanted = read(in::wantedSquish);
                              if (wanted > 0.1e-3) return;
                              Finding& finding = speak.say(
                                  Weight::Objects,
                                  {"A squish gap of {1} leaves nothing. Inches? That makes {2}.",
                                   {Quantity{Kind::FineLength, wanted, 3}, fine(25.4 * wanted)}},
                                  {&in::wantedSquish});
                              finding.mends.push_back(takeAs(in::wantedSquish, 25.4 * wanted));
                            }};

void judgeThin(Reader& read, Speaker& speak, const Input& gasket, double least) {
  if (!read.given(gasket)) return;
  const double thickness = read(gasket);
  if (thickness <= 0.0 || thickness >= least) return;
  speak.say(Weight::Objects,
            {"A {1} of {2} is thinner than any gasket: nought means that none is fitted.",
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
      double joint = read.entry(in::deckHeight)->limit();
      for (const Input* part : {&in::seatHeight, &in::baseGasket, &in::secondBaseGasket,
                                &in::thirdBaseGasket, &in::barrelHeight}) {
        stack += read(*part);
        joint += read.entry(*part)->limit();
      }
      const double apart = stack - read(in::deckHeight);
      if (std::abs(apart) <= joint + 1e-9) return;
      Finding& finding = speak.say(
          Weight::Forbids,
          {"Two ways to the deck differ by {1}, more than their joint ± of {2}: {3} by the stack, "
           "{4} direct. The stack is used.",
           {fine(std::abs(apart)), fine(joint), Quantity{Kind::Length, stack},
            Quantity{Kind::Length, read(in::deckHeight)}}},
          {&in::seatHeight, &in::deckHeight});
      if (apart < -5e-3) {
        finding.hint = {"Half a mandrel left out, or a spacer counted in the direct height?", {}};
      }
    }};

/// Readings of one place at several cylinders should not wander.
const Rule seatsApart{
    .key = "places_apart", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      const double most = read(in::seatSpread);
      for (const Input* place : {&in::seatHeight, &in::barrelHeight, &in::deckHeight}) {
        const Entry& entry = *read.entry(*place);
        if (entry.values.size() < 2) continue;
        const auto [least, largest] = std::minmax_element(entry.values.begin(), entry.values.end());
        const double apart = *largest - *least;
        if (apart <= most + 1e-9) continue;
        const auto number = [&](auto i) {
          return Quantity{Kind::Count, static_cast<double>(i - entry.values.begin() + 1)};
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
      const double spread = read(out::deckClearanceSpread);
      const double most = read(in::deckSpread);
      if (spread <= most + 1e-9) return;
      speak.say(Weight::Objects,
                {"The deck clearance differs by {1} between cylinders, over {2}.",
                 {fine(spread), fine(most)}},
                {&in::spacer, &in::seatHeight});
    }};

const Rule proudTwice{
    .key = "liner_protrusion_counted",
    .source = kPractice,
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

const Rule linerFlush{.key = "liner_protrusion_small",
                      .source = kPractice,
                      .per = Per::Cylinder,
                      .judge = [](Reader& read, Speaker& speak) {
                        if (!read.given(in::linerProud)) return;
                        const double proud = read(in::linerProud);
                        if (proud <= 0.0 || proud >= 0.03e-3) return;
                        speak.say(
                            Weight::Objects,
                            {"A wet liner only {1} proud may not seal: 0.03 to 0.10 mm is usual.",
                             {Quantity{Kind::FineLength, proud, 3}}},
                            {&in::linerProud});
                      }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {
      &squishCloses, &squishRange,      &wantedNotMet,     &spacerSign, &spacerThickness,
      &skim,         &gasketOverSquish, &wantedSquishSlip, &thinGasket, &twoRoutes,
      &seatsApart,   &deckSpread,       &proudTwice,       &linerFlush};
  return kRules;
}

}  // namespace strokewright::deck
