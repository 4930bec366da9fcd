#include "core/deck/results.h"

#include <array>

#include "core/chamber/chamber.h"
#include "core/chamber/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"

namespace strokewright::deck {

namespace in = model::in;
using describe::Judged;
using describe::Per;
using describe::Reader;
using units::Kind;

namespace {

constexpr std::string_view kStack = "plane geometry: a sum of lengths, each with sensitivity ±1";
constexpr std::string_view kRigid =
    "cold, clamped, metal parts; soft gaskets only where the thickness was measured at full torque";

/// The deck clearance that gives what is wanted of the deck.
double wantedClearance(Reader& read) {
  switch (read.choice<model::StackDriver>(in::stackDriver)) {
    case model::StackDriver::DeckClearance:
      return read(in::wantedDeckClearance);
    case model::StackDriver::CompressionRatio:
      return chamber::deckClearanceForVolume(
          {.bore = read(in::bore),
           .clearanceVolume =
               chamber::clearanceForRatio({.sweptVolume = read(out::sweptVolume),
                                           .compressionRatio = read(in::wantedCompressionRatio)}),
           .otherVolumes = read(out::volumesBesideDeck)});
    case model::StackDriver::SquishGap:
      break;
  }
  return deckClearanceForSquish(read(in::wantedSquish), headOf(read));
}

}  // namespace

Head headOf(Reader& read) {
  return {.gasket = read(in::headGasket) - 0.5 * read(in::headGasketTaper),
          .recess = read(in::headRecess),
          .crownRise = read(in::crownRise)};
}

}  // namespace strokewright::deck

namespace strokewright::out {

namespace in = model::in;
using describe::Judged;
using describe::Per;
using describe::Reader;
using units::Kind;

const Result heightWithoutSpacer{
    .key = "height_without_spacer_m",
    .name = "Deck height without spacer",
    .symbol = "H − t_sp",
    .kind = Kind::Length,
    .formula =
        "H − t_sp = H_case + t_bg + t_bg2 + t_bg3 + H_barrel; or H_0; or H_case + t_bg + t_bg2 + "
        "t_bg3 + H_barrel + h_l; or H_0 + h_l; h_l where the height was taken to the block face",
    .source = deck::kStack,
    .valid = deck::kRigid,
    .value = [](Reader& read) {
      const double stack = read.either(in::seatHeight, in::deckHeight)
                               ? deck::stackHeight({.seatHeight = read(in::seatHeight),
                                                    .baseGaskets = read(in::baseGasket) +
                                                                   read(in::secondBaseGasket) +
                                                                   read(in::thirdBaseGasket),
                                                    .barrelHeight = read(in::barrelHeight)})
                               : read(in::deckHeight);
      const bool toBlock =
          read.choice<model::HeightTakenTo>(in::heightTakenTo) == model::HeightTakenTo::BlockFace;
      return deck::deckHeight({.heightWithoutSpacer = stack,
                               .linerProtrusion = toBlock ? read(in::linerProud) : 0.0,
                               .spacer = 0.0});
    }};

const Result bareGap{.key = "bare_gap_m",
                     .name = "Gap with nothing laid in",
                     .symbol = "s_0",
                     .kind = Kind::FineLength,
                     .judged = Judged::WorstCase,
                     .formula =
                         "s_0 = H_case + H_barrel − H_p + h_rec − h_rise, or from H_0 less the "
                         "base gaskets entered; minus: "
                         "the crown stands above the squish face",
                     .source = deck::kStack,
                     .valid = "no spacer, no base gasket, no head gasket",
                     .value = [](Reader& read) {
                       const auto entered = [&](const model::in::Input& gasket) {
                         return read.given(gasket) ? read(gasket) : 0.0;
                       };
                       const double height = read.either(in::seatHeight, in::deckHeight)
                                                 ? read(in::seatHeight) + read(in::barrelHeight)
                                                 : read(in::deckHeight) - entered(in::baseGasket) -
                                                       entered(in::secondBaseGasket) -
                                                       entered(in::thirdBaseGasket);
                       const bool toBlock = read.choice<model::HeightTakenTo>(in::heightTakenTo) ==
                                            model::HeightTakenTo::BlockFace;
                       return height + (toBlock ? read(in::linerProud) : 0.0) - read(crownHeight) +
                              read(in::headRecess) - read(in::crownRise);
                     }};

const Result crownHeight{
    .key = "crown_height_m",
    .name = "Crown height at top dead centre",
    .symbol = "H_p",
    .kind = Kind::Length,
    .formula = "H_p = √((L + r)² − e²) + CH",
    .source = "plane geometry",
    .valid = deck::kRigid,
    .value = [](Reader& read) {
      return deck::crownHeight({.topPinHeight = motion::topPinHeight(motion::mechanism(read)),
                                .compressionHeight = read(in::compressionHeight)});
    }};

const Result protrusionWithoutSpacer{
    .key = "protrusion_without_spacer_m",
    .name = "Protrusion without spacer",
    .symbol = "p_0",
    .kind = Kind::FineLength,
    .formula = "p_0 = H_p − (H − t_sp); minus: the crown stays below the deck",
    .source = deck::kStack,
    .valid = deck::kRigid,
    .value = [](Reader& read) {
      return deck::protrusion(
          {.deckHeight = read(heightWithoutSpacer), .crownHeight = read(crownHeight)});
    }};

const Result spacerToMake{
    .key = "spacer_to_make_m",
    .name = "Spacer to make",
    .symbol = "t_sp",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula =
        "t_sp = δ_w + p_0; or s_w − t_g + Δt_g/2 − h_rec + h_rise + p_0; or "
        "(V_d / (ε_w − 1) − V_b) / (π/4 · B²) + p_0; minus: take that much off instead",
    .source = deck::kStack,
    .valid = deck::kRigid,
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("nothing is made for a donor");
      return deck::spacerToMake({.wantedDeckClearance = deck::wantedClearance(read),
                                 .deckClearanceWithoutSpacer = -read(protrusionWithoutSpacer)});
    }};

const Result spacerInStack{
    .key = "spacer_in_stack_m",
    .name = "Spacer counted with",
    .symbol = "t_sp",
    .kind = Kind::FineLength,
    .formula =
        "the spacer entered; while none is entered, the spacer to make, held still for the ±",
    .source = "definition",
    .valid = deck::kRigid,
    .value = [](Reader& read) {
      return read.given(in::spacer) || read.isDonor() ? read(in::spacer) : read.held(spacerToMake);
    }};

const Result deckHeight{.key = "deck_height_in_stack_m",
                        .name = "Deck height",
                        .symbol = "H",
                        .kind = Kind::Length,
                        .formula = "H = deck height without spacer + t_sp",
                        .source = deck::kStack,
                        .valid = deck::kRigid,
                        .value = [](Reader& read) {
                          return deck::deckHeight({.heightWithoutSpacer = read(heightWithoutSpacer),
                                                   .linerProtrusion = 0.0,
                                                   .spacer = read(spacerInStack)});
                        }};

const Result deckClearance{.key = "deck_clearance_m",
                           .name = "Deck clearance",
                           .symbol = "δ",
                           .kind = Kind::FineLength,
                           .judged = Judged::WorstCase,
                           .formula = "δ = H − H_p; plus: the crown stays below the deck",
                           .source = deck::kStack,
                           .valid = deck::kRigid,
                           .value = [](Reader& read) {
                             return deck::deckClearance({.deckHeight = read(deckHeight),
                                                         .crownHeight = read(crownHeight)});
                           }};

const Result deckClearanceSpread{.key = "deck_clearance_spread_m",
                                 .name = "Difference of deck clearance between cylinders",
                                 .symbol = "Δδ",
                                 .kind = Kind::FineLength,
                                 .per = Per::Engine,
                                 .apart = true,
                                 .formula = "Δδ = δ_most − δ_least",
                                 .source = "definition",
                                 .valid = deck::kRigid,
                                 .value = [](Reader& read) {
                                   if (read(in::cylinderCount) == 1.0)
                                     return read.none("one cylinder");
                                   return read.most(deckClearance) - read.least(deckClearance);
                                 }};

const Result squishGap{
    .key = "squish_gap_m",
    .name = "Squish gap",
    .symbol = "s",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula = "s = δ + t_g − Δt_g/2 + h_rec − h_rise",
    .source = deck::kStack,
    .valid = "cold, clamped, metal parts; running it closes further (rod stretch, bearings, heat)",
    .value = [](Reader& read) { return deck::squishGap(read(deckClearance), deck::headOf(read)); }};

const Result squishWithSpacerToMake{
    .key = "squish_gap_with_spacer_to_make_m",
    .name = "Squish gap with the spacer to make",
    .symbol = "s",
    .kind = Kind::FineLength,
    .judged = Judged::WorstCase,
    .formula = "s = t_sp − p_0 + t_g − Δt_g/2 + h_rec − h_rise; t_sp the spacer to make",
    .source = deck::kStack,
    .valid = "cold, as the squish gap; the plate cut to the spacer to make",
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("nothing is made for a donor");
      return deck::squishGap(read.held(spacerToMake) - read(protrusionWithoutSpacer),
                             deck::headOf(read));
    }};

const Result headMoved{
    .key = "head_moved_m",
    .name = "Head higher than on the donor by",
    .symbol = "Δh",
    .kind = Kind::FineLength,
    .formula = "Δh = (H + t_g) − (H_donor + t_g,donor); minus: lower",
    .source = deck::kStack,
    .valid = "on the donor's cases; what runs from crank or case to the head goes with it",
    .value = [](Reader& read) {
      if (read.isDonor()) return read.none("it is compared with the donor");
      if (!read.hasDonor()) return read.none("there is no donor to compare with");
      return read(deckHeight) + read(in::headGasket) -
             (read.donor(deckHeight) + read.donor(in::headGasket));
    }};

}  // namespace strokewright::out

namespace strokewright::deck {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {
      &out::heightWithoutSpacer,    &out::crownHeight,         &out::protrusionWithoutSpacer,
      &out::spacerToMake,           &out::spacerInStack,       &out::deckHeight,
      &out::deckClearance,          &out::deckClearanceSpread, &out::squishGap,
      &out::squishWithSpacerToMake, &out::headMoved,           &out::bareGap};
  return kResults;
}

}  // namespace strokewright::deck
