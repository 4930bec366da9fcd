#include <array>

#include "core/chamber/chamber.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"

namespace strokewright::cutting {

namespace in = model::in;
using describe::fine;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Sentence;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

const Rule headLand{
    .key = "head_land",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double left = read(out::headLandLeft);
      const double least = read(in::headLandLeast);
      if (left >= least) return;
      const double skim = read(out::headSkim);
      const Sentence thin{"{1} off the head leave {2} to the valve seat, under {3}.",
                          {fine(skim), fine(left), fine(least)}};
      const Sentence through{"{1} off the head cut into the valve seat, {2} from the face.",
                             {fine(skim), fine(read(in::headLand))}};
      const Sentence thinAsItIs{
          "The head has {1} from its face to the valve seat, under {2}: nothing should come off "
          "it.",
          {fine(left), fine(least)}};
      speak.say(left > 0.0 ? Weight::Objects : Weight::Forbids,
                left <= 0.0  ? through
                : skim > 0.0 ? thin
                             : thinAsItIs,
                {&in::wantedCompressionRatio, &in::headLand, &in::chamberFaceArea});
    }};

/// The band of the head comes down with the face.
const Rule squishAfterSkim{
    .key = "squish_after_skim",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double left = read(out::squishAfterSkim);
      const double least = read(in::squishLeast);
      const double worst = left - read.worst(out::squishAfterSkim);
      if (left == read(out::squishGap) || (left >= least && worst > 0.0)) return;
      speak
          .say(worst > 0.0 ? Weight::Objects : Weight::Forbids,
               {worst > 0.0
                    ? "{1} off the head bring its recessed band down too: a squish gap of {2} is "
                      "left, under {3}."
                    : "{1} off the head bring its recessed band down too: a squish gap of {2} is "
                      "left, at worst case {4}: the piston can touch the head.",
                {fine(read(out::headSkim)), fine(left), fine(least), fine(worst)}},
               {&in::wantedCompressionRatio, &in::headRecess, &in::squishLeast})
          .hint = {"A thicker gasket or spacer gives the gap back, and takes some of the ratio.",
                   {}};
    }};

const Rule crownThickness{
    .key = "crown_left",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double share = read(out::crownLeftShare);
      const double least = read(in::crownLeftShare);
      if (share >= least) return;
      const double left = read(out::crownLeft);
      const double cut = read(out::crownCut);
      const Sentence thin{"{1} off the crown leave {2}, {3} of the bore, under {4}.",
                          {fine(cut), fine(left), Quantity{Kind::Share, share, 1},
                           Quantity{Kind::Share, least, 1}}};
      const Sentence through{"{1} off the crown cut through it: it is {2} thick.",
                             {fine(cut), fine(read(in::crownThickness))}};
      const Sentence thinAsItIs{
          "The crown is {1} thick, {2} of the bore, under {3}: nothing should "
          "come off it.",
          {fine(left), Quantity{Kind::Share, share, 1}, Quantity{Kind::Share, least, 1}}};
      speak.say(left > 0.0 ? Weight::Objects : Weight::Forbids,
                left <= 0.0 ? through
                : cut > 0.0 ? thin
                            : thinAsItIs,
                {&in::wantedCompressionRatio, &in::crownThickness, &in::crownCutArea});
    }};

const Rule nothingOffTheHead{
    .key = "nothing_off_the_head",
    .source = "from ε = 1 + V_d / V_c",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double skim = read(out::headSkim);
      constexpr double kHalfStep = 0.005e-3;  // [m]
      if (skim > -kHalfStep) return;
      const double wanting = -read(out::volumeToTakeAway);
      speak.say(
          Weight::Remarks,
          {"For a ratio of {1} nothing comes off the head: {2} must be added, as {3} more of "
           "spacer would.",
           {Quantity{Kind::Ratio, read(in::wantedCompressionRatio)},
            Quantity{Kind::Volume, wanting, 2}, fine(wanting / chamber::boreArea(read(in::bore)))}},
          {&in::wantedCompressionRatio, &in::chamberFaceArea});
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&headLand, &squishAfterSkim, &crownThickness,
                                        &nothingOffTheHead};
  return kRules;
}

}  // namespace strokewright::cutting
