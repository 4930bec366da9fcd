#include <array>
#include <cmath>

#include "core/clearance/results.h"
#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/limits/ceilings.h"
#include "core/model/inputs.h"

namespace strokewright::clearance {

namespace in = model::in;
using describe::Finding;
using describe::fine;
using describe::Input;
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

/// A pin held by the rod itself is shrunk or pressed in, a little larger than its hole.
double shrinkage(Reader& read) {
  constexpr double kMost = 0.05e-3;  // [m] on the diameter
  return read.choice<model::SmallEnd>(in::smallEndKind) == model::SmallEnd::PinInRod ? kMost : 0.0;
}

const Rule pinInSmallEnd{.key = "pin_in_small_end",
                         .source = "plane geometry; common practice for a pin shrunk in",
                         .per = Per::Cylinder,
                         .judge = [](Reader& read, Speaker& speak) {
                           if (-2.0 * read(out::bushWall) <= shrinkage(read) + 1e-9) return;
                           speak.say(Weight::Forbids,
                                     {"A gudgeon pin of {1} does not enter a small end of {2}.",
                                      {Quantity{Kind::Length, read(in::gudgeonPinDiameter)},
                                       Quantity{Kind::Length, read(in::smallEndBore)}}},
                                     {&in::gudgeonPinDiameter, &in::smallEndBore});
                         }};

constexpr double kSolidBronze = 1.5e-3;  // [m] least wall of a bush without a steel back

const Rule thinBush{
    .key = "bush_wall",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.choice<model::SmallEnd>(in::smallEndKind) != model::SmallEnd::Bush) return;
      const double wall = read(out::bushWall);
      const double least = read(in::bushWallLeast);
      if (wall < 0.0 || wall >= least) return;
      speak.say(
          Weight::Objects,
          {"A bush wall of {1} is under {2} (steel-backed; solid bronze needs {3}): it may spin.",
           {fine(wall), fine(least), fine(kSolidBronze)}},
          {&in::smallEndBore, &in::gudgeonPinDiameter});
    }};

const Rule bronzeFloor{
    .key = "bush_wall_solid_bronze",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;  // it has run so
      if (read.choice<model::SmallEnd>(in::smallEndKind) != model::SmallEnd::Bush) return;
      const double wall = read(out::bushWall);
      if (wall < read(in::bushWallLeast) || wall > kSolidBronze * (1.0 + 1e-9)) return;
      speak.say(Weight::Remarks,
                {"A bush wall of {1} is at the floor for solid bronze, {2}.",
                 {fine(wall), fine(kSolidBronze)}},
                {&in::smallEndBore, &in::gudgeonPinDiameter});
    }};

const Rule pinInEye{
    .key = "crankpin_in_eye",
    .source = "plane geometry",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double pin = read(in::bigEndPinDiameter);
      const double eye = read(in::bigEndEyeDiameter);
      if (pin < eye) return;
      Finding& finding = speak.say(
          Weight::Forbids,
          {limits::kPinNotInEye, {Quantity{Kind::Length, pin}, Quantity{Kind::Length, eye}}},
          {&in::bigEndPinDiameter, &in::bigEndEyeDiameter});
      if (pin > eye) {
        finding.mends.push_back(
            {{"Swap the two", {}},
             {{&in::bigEndPinDiameter, typedText(in::bigEndPinDiameter, eye)},
              {&in::bigEndEyeDiameter, typedText(in::bigEndEyeDiameter, pin)}}});
      }
    }};

/// A hole much wider than its pin leaves room for no usual bearing.
void judgeRoom(Reader& read, Speaker& speak, const Input& hole, const Input& pin, double most) {
  const double room = read(hole) - read(pin);
  if (room <= most * (1.0 + 1e-9)) return;
  speak.say(Weight::Objects,
            {"{1}: {2} is {3} over the pin of {4}, seldom more than {5}; is that so?",
             {&hole, Quantity{Kind::Length, read(hole)}, fine(room),
              Quantity{Kind::Length, read(pin)}, fine(most)}},
            {&hole, &pin});
}

const Rule smallEndRoom{.key = "small_end_room",
                        .source = kPractice,
                        .per = Per::Cylinder,
                        .judge = [](Reader& read, Speaker& speak) {
                          judgeRoom(read, speak, in::smallEndBore, in::gudgeonPinDiameter, 6e-3);
                        }};

const Rule bigEndRoom{.key = "big_end_room",
                      .source = kPractice,
                      .per = Per::Cylinder,
                      .judge = [](Reader& read, Speaker& speak) {
                        judgeRoom(read, speak, in::bigEndEyeDiameter, in::bigEndPinDiameter, 24e-3);
                      }};

void judgeShare(Reader& read, Speaker& speak, const Input& part, double least, double most) {
  const double share = read(part) / read(in::bore);
  if (share >= least && share <= most) return;
  speak.say(Weight::Objects,
            {"{1}: {2} is {3} of the bore, outside {4} to {5}; is that so?",
             {&part, Quantity{Kind::Length, read(part)}, Quantity{Kind::Ratio, share},
              Quantity{Kind::Ratio, least}, Quantity{Kind::Ratio, most}}},
            {&part, &in::bore});
}

const Rule compressionHeightShare{.key = "compression_height_share",
                                  .source = kPractice,
                                  .per = Per::Cylinder,
                                  .judge = [](Reader& read, Speaker& speak) {
                                    judgeShare(read, speak, in::compressionHeight, 0.28, 0.85);
                                  }};

const Rule gudgeonPinShare{.key = "gudgeon_pin_share",
                           .source = kPractice,
                           .per = Per::Cylinder,
                           .judge = [](Reader& read, Speaker& speak) {
                             judgeShare(read, speak, in::gudgeonPinDiameter, 0.18, 0.40);
                           }};

const Rule rodHalfWidthShare{.key = "rod_half_width_share",
                             .source = kPractice,
                             .per = Per::Cylinder,
                             .judge = [](Reader& read, Speaker& speak) {
                               judgeShare(read, speak, in::rodHalfWidth, 0.04, 0.30);
                             }};

/// The shank against the big end it grows out of: width times eye, or what stands for that where
/// the big end is not known, 0.15 of the square on the bore.
const Rule rodSectionShare{
    .key = "rod_section_share",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      constexpr double kLeast = 0.04;
      constexpr double kMost = 0.50;
      constexpr double kOfBore = 0.15;
      const double section = read(in::rodLeastSection);
      if (!in::rodLeastSection.usual.holds(section)) return;  // said already
      const bool bigEnd = read.given(in::bigEndWidth) && read.given(in::bigEndEyeDiameter);
      const double area = bigEnd ? read(in::bigEndWidth) * read(in::bigEndEyeDiameter)
                                 : kOfBore * read(in::bore) * read(in::bore);
      const auto fits = [&](double share) { return share >= kLeast && share <= kMost; };
      const double share = section / area;
      if (fits(share)) return;
      const double scale = bigEnd ? 1.0 : kOfBore;
      Finding& finding = speak.say(
          Weight::Objects,
          {bigEnd ? "{1}: {2} is {3} of big-end width times eye, outside {4} to {5}; is that so?"
                  : "{1}: {2} is {3} of the square on the bore, outside {4} to {5}; is that so?",
           {&in::rodLeastSection, Quantity{Kind::Area, section},
            Quantity{Kind::Ratio, scale * share, 3}, Quantity{Kind::Ratio, scale * kLeast, 3},
            Quantity{Kind::Ratio, scale * kMost, 3}}},
          {&in::rodLeastSection});
      if (bigEnd) {
        finding.about.insert(finding.about.end(), {&in::bigEndWidth, &in::bigEndEyeDiameter});
      } else {
        finding.about.push_back(&in::bore);
      }
      const double meant = share > kMost ? section / 10.0 : section * 10.0;
      if (!fits(meant / area) || read.entry(in::rodLeastSection)->values.size() > 1) return;
      finding.hint = {share > kMost ? "Ten times too large?" : "Ten times too small?", {}};
      finding.mends.push_back(takeAs(in::rodLeastSection, meant));
    }};

const Rule skirtMeetsWeb{
    .key = "skirt_to_web",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double gap = read(out::skirtToWeb);
      const double least = gap - read.worst(out::skirtToWeb);
      const double floor = read(in::skirtWebForbids);
      const double objects = read(in::skirtWebObjects);
      if (least >= objects) return;
      speak.say(least < floor ? Weight::Forbids : Weight::Objects,
                {"Skirt to web is {1} at bottom dead centre, at worst case {2}: where they overlap "
                 "along the crank, {3} is wanted, {4} is the floor.",
                 {fine(gap), fine(least), fine(objects), fine(floor)}},
                {&in::skirtLength, &in::counterweightRadius});
    }};

const Rule skirtLeavesLiner{
    .key = "skirt_out_of_liner",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double skirt = read(in::skirtLength);
      const double outside = read(out::skirtOut);
      const double share = read(in::skirtOutShare);
      if (outside <= share * skirt) return;
      Finding& finding =
          speak.say(Weight::Objects,
                    {"The skirt comes {1} out of the liner, of {2} below the pin: over {3} of it.",
                     {fine(outside), fine(skirt), Quantity{Kind::Share, share}}},
                    {&in::skirtLength, &in::linerBottomHeight, &in::linerLength});
      if (read.isDonor() || !read.donorKnown(out::skirtOut)) return;
      finding.hint = {"The donor's came {1} out, of {2}.",
                      {fine(read.donor(out::skirtOut)), fine(read.donor(in::skirtLength))}};
    }};

const Rule pinLeavesLiner{
    .key = "pin_out_of_liner",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double least = read(out::pinAboveLiner) - read.worst(out::pinAboveLiner);
      if (least > 0.0) return;
      speak.say(
          Weight::Forbids,
          {"The pin axis is {1} above the liner's lower edge, at worst case {2}: it must stay "
           "inside.",
           {fine(read(out::pinAboveLiner)), fine(least)}},
          {&in::linerBottomHeight, &in::linerLength});
    }};

const Rule rodMeetsLiner{
    .key = "rod_to_liner",
    .source = kPractice,
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      const double gap = read(out::rodToLiner);
      const double least = gap - read.worst(out::rodToLiner);
      const double wanted = read(in::rodLinerLeast);
      if (least >= wanted) return;
      speak.say(least <= 0.0 ? Weight::Forbids : Weight::Objects,
                {"The rod passes the liner's edge at {1}, at worst case {2}; {3} is wanted.",
                 {fine(gap), fine(least), fine(wanted)}},
                {&in::rodHalfWidth, &in::linerBottomHeight, &in::linerLength});
    }};

/// The liner's lower edge is measured with the spacer in: copied from the donor it is at the
/// donor's height, though the barrel has moved.
const Rule linerBottomCopied{
    .key = "liner_bottom_of_the_donor",
    .source = "plane geometry: a sum of lengths",
    .per = Per::Cylinder,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.given(in::linerBottomHeight)) return;
      if (!read.donorGiven(in::linerBottomHeight) || !read.donorKnown(out::spacerInStack)) return;
      constexpr double kSame = 0.005e-3;    // [m]
      constexpr double kReading = 0.05e-3;  // [m]
      const double height = read(in::linerBottomHeight);
      const double moved = read(out::spacerInStack) - read.donor(out::spacerInStack);
      if (std::abs(height - read.donor(in::linerBottomHeight)) > kSame) return;
      if (std::abs(moved) <= kReading) return;
      Finding& finding = speak.say(
          Weight::Objects,
          {"The liner's lower edge is entered at the donor's height, though the spacer differs by "
           "{1}: it moves with the barrel.",
           {fine(std::abs(moved))}},
          {&in::linerBottomHeight, &in::spacer});
      finding.hint = {"The liner's length instead of this height follows every spacer.", {}};
      if (read.entry(in::linerBottomHeight)->values.size() > 1) return;
      finding.mends.push_back(takeComputed(in::linerBottomHeight, height + moved));
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {
      &pinInSmallEnd,          &thinBush,        &bronzeFloor,
      &smallEndRoom,           &pinInEye,        &bigEndRoom,
      &compressionHeightShare, &gudgeonPinShare, &rodHalfWidthShare,
      &rodSectionShare,        &skirtMeetsWeb,   &skirtLeavesLiner,
      &pinLeavesLiner,         &rodMeetsLiner,   &linerBottomCopied};
  return kRules;
}

}  // namespace strokewright::clearance
