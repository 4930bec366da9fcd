#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "core/describe/common_practice.h"
#include "core/describe/evaluation.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"

namespace strokewright::firing {

namespace in = model::in;
using describe::Finding;
using describe::Input;
using describe::kPractice;
using describe::Mend;
using describe::Quantity;
using describe::Reader;
using describe::Rule;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

constexpr std::string_view kEnumerated = "enumeration";
constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kDegree = kTurn / 360.0;

Quantity angle(double radians) { return {Kind::Angle, radians, 1}; }
Quantity number(int count) { return {Kind::Count, static_cast<double>(count)}; }

/// The order typed into the entry.
Mend fireAs(const Order& order, const Crank& crank) {
  std::string text;
  for (const int cylinder : order.cylinders) {
    if (!text.empty()) text += "; ";
    text += std::to_string(crank.numbers[static_cast<std::size_t>(cylinder)]);
  }
  return {.says = {"Fire {1}", {words(order, crank)}},
          .entries = {{&in::firingOrder, std::move(text)}}};
}

/// The first few of those that can be, the most even first.
void offerOrders(Finding& finding, const Crank& crank) {
  constexpr std::size_t kOffered = 4;
  const auto orders = everyOrder(crank.tops, crank.strokes);
  for (std::size_t i = 0; i < std::min(kOffered, orders.size()); ++i) {
    finding.mends.push_back(fireAs(orders[i], crank));
  }
}

std::vector<int> numbersNamed(Reader& read) {
  std::vector<int> named;
  named.reserve(static_cast<std::size_t>(read.cylinders()));
  for (int i = 0; i < read.cylinders(); ++i) {
    named.push_back(static_cast<int>(read.at(i)(in::firingOrder)));
  }
  return named;
}

const Rule everyCylinderOnce{
    .key = "firing_order_names_each_once",
    .source = "definition",
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firingOrder)) return;
      const Crank crank = crankOf(read);
      const std::vector<int> named = numbersNamed(read);
      for (const int cylinder : crank.numbers) {
        const auto times = std::ranges::count(named, cylinder);
        if (times == 1) continue;
        Finding& finding = speak.say(
            Weight::Forbids,
            times == 0 ? describe::Sentence{"The firing order leaves out cylinder {1}.",
                                            {number(cylinder)}}
                       : describe::Sentence{"The firing order names cylinder {1} {2} times.",
                                            {number(cylinder), number(static_cast<int>(times))}},
            {&in::firingOrder});
        offerOrders(finding, crank);
        return;
      }
    }};

const Rule orderCanBe{
    .key = "firing_order_fits_the_throws",
    .source = kEnumerated,
    .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::firingOrder)) return;
      const Crank crank = crankOf(read);
      const std::vector<int> named = numbersNamed(read);
      std::vector<int> cylinders;
      for (const int one : named) {
        const auto found = std::ranges::find(crank.numbers, one);
        if (found == crank.numbers.end() || std::ranges::count(named, one) != 1) return;
        cylinders.push_back(static_cast<int>(found - crank.numbers.begin()));
      }
      if (orderAs(cylinders, crank.tops, crank.strokes)) return;
      // The longest beginning that can be shows the one that cannot.
      const double first = crank.tops[static_cast<std::size_t>(cylinders.front())];
      double last = 0.0;
      for (const int cylinder : cylinders) {
        const double top =
            std::fmod(crank.tops[static_cast<std::size_t>(cylinder)] - first + kTurn, kTurn);
        const bool four = crank.strokes == Strokes::Four;
        const double at = top < last - 1e-6 ? top + kTurn : top;
        if (at < last - 1e-6 || (!four && at >= kTurn)) {
          Finding& finding = speak.say(
              Weight::Forbids,
              {four ? "Cylinder {1} is at its top {2} and {3} after the first to fire; it cannot "
                      "fire after {4}."
                    : "Cylinder {1} is at its top {2} after the first to fire; it cannot fire "
                      "after {4}.",
               {number(crank.numbers[static_cast<std::size_t>(cylinder)]), angle(top),
                angle(top + kTurn), angle(last)}},
              {&in::firingOrder, &in::throwAhead});
          finding.hint = {
              "Is this a list of top dead centres instead of throws? A throw that is "
              "ahead comes earlier.",
              {}};
          offerOrders(finding, crank);
          return;
        }
        last = at;
      }
    }};

const Rule allTogether{
    .key = "all_pistons_together", .source = kPractice, .judge = [](Reader& read, Speaker& speak) {
      if (!read.given(in::throwAhead)) return;
      const Crank crank = crankOf(read);
      if (crank.tops.size() < 3) return;
      const bool together = std::ranges::all_of(crank.tops, [&](double top) {
        return std::abs(std::remainder(top - crank.tops.front(), kTurn)) < 0.1 * kDegree;
      });
      if (!together) return;
      speak.say(Weight::Objects,
                {"All {1} pistons are at their tops together: are the throws entered?",
                 {number(static_cast<int>(crank.tops.size()))}},
                {&in::throwAhead});
    }};

const Rule axisOfAV{.key = "cylinder_axis_small",
                    .source = kPractice,
                    .per = describe::Per::Cylinder,
                    .judge = [](Reader& read, Speaker& speak) {
                      if (!read.given(in::cylinderAxis)) return;
                      const double axis = std::abs(read(in::cylinderAxis));
                      if (axis == 0.0 || axis > 2.0 * kDegree) return;
                      speak.say(
                          Weight::Objects,
                          {"A cylinder axis turned by {1}: is it meant as a share of something?",
                           {Quantity{Kind::Angle, axis, 2}}},
                          {&in::cylinderAxis});
                    }};

const Rule rotationTurned{
    .key = "rotation_against_donor",
    .source = kPractice,
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.hasDonor()) return;
      for (const Input* input : {&in::rotation, &in::viewedFrom}) {
        if (!read.given(*input) || !read.donorGiven(*input)) return;
      }
      const bool otherEnd = read(in::viewedFrom) != read.donor(in::viewedFrom);
      const bool otherWay = read(in::rotation) != read.donor(in::rotation);
      if (otherEnd == otherWay) return;  // the same, said from the other end
      speak.say(Weight::Objects,
                {"It turns the other way round than the donor: throws copied from there are a "
                 "mirror image, and starter, oil pump and cams want the donor’s sense.",
                 {}},
                {&in::rotation, &in::viewedFrom});
    }};

const Rule mirrored{
    .key = "crank_is_mirrored",
    .source = "plane geometry: the throws of a mirrored crank are ahead by the negative angles",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor() || !read.donorGiven(in::throwAhead) || !read.given(in::throwAhead)) return;
      if (read(in::cylinderCount) != read.donor(in::cylinderCount)) return;
      bool same = true;
      bool mirror = true;
      std::string turned;
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        const double own = here(in::throwAhead);
        const double donors = here.donor(in::throwAhead);
        same = same && std::abs(std::remainder(own - donors, kTurn)) < 0.5 * kDegree;
        mirror = mirror && std::abs(std::remainder(own + donors, kTurn)) < 0.5 * kDegree;
        if (!turned.empty()) turned += "; ";
        turned += describe::typedText(in::throwAhead, donors);
      }
      if (same || !mirror) return;
      Finding& finding = speak.say(
          Weight::Objects,
          {"The throws are those of the donor in mirror image: were they taken from the other end "
           "of the crank? Cams and ignition of the donor do not fit such a crank.",
           {}},
          {&in::throwAhead, &in::viewedFrom, &in::rotation});
      finding.mends.push_back({.says = {"Take the donor’s throws", {}},
                               .entries = {{&in::throwAhead, std::move(turned)}}});
    }};

const Rule camshaftToMake{
    .key = "lobes_move",
    .source = "the camshaft turns at half the speed of the crank",
    .judge = [](Reader& read, Speaker& speak) {
      if (read.isDonor()) return;
      double most = 0.0;
      int cylinder = -1;
      for (int i = 0; i < read.cylinders(); ++i) {
        Reader here = read.at(i);
        if (!here.known(out::lobeMoved)) return;
        const double moved = here(out::lobeMoved);
        if (std::abs(moved) > std::abs(most)) {
          most = moved;
          cylinder = static_cast<int>(here(in::cylinderNumber));
        }
      }
      if (std::abs(most) < 0.5 * kDegree) return;
      speak.say(
          Weight::Objects,
          {"The donor’s camshaft does not fit this crank: the lobes of cylinder {1} must move "
           "by {2} on it, and ignition and trigger with them.",
           {number(cylinder), angle(most)}},
          {&in::throwAhead, &in::firingOrder});
    }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&everyCylinderOnce, &orderCanBe, &allTogether,   &axisOfAV,
                                        &rotationTurned,    &mirrored,   &camshaftToMake};
  return kRules;
}

}  // namespace strokewright::firing
