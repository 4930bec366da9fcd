#include <algorithm>
#include <array>
#include <cmath>

#include "core/deck/results.h"
#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/plate/results.h"

namespace strokewright::plate {

namespace in = model::in;
using describe::fine;
using describe::kPractice;
using describe::Per;
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

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&flatServes};
  return kRules;
}

}  // namespace strokewright::plate
