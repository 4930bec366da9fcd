#include "core/spread/stack.h"

#include <utility>

#include "core/describe/refusal.h"

namespace strokewright::spread {
namespace {

SumSpread sumOf(double middle, const Stack& stack, double Source::*share) {
  std::vector<Share> shares;
  shares.reserve(stack.sources.size());
  for (const Source& source : stack.sources) shares.push_back({source.shape, source.*share});
  return {middle, shares};
}

void refuseUnlessPositive(const SumSpread& volume) {
  if (volume.low() > 0.0) return;
  throw describe::Refusal(
      "A volume that may come down to {1} leaves the compression ratio open: it must exceed {2}.",
      units::Kind::Volume, volume.low(), 0.0);
}

}  // namespace

SumSpread gapSpread(const Stack& stack) { return sumOf(stack.gap, stack, &Source::gap); }

RatioSpread::RatioSpread(Stack stack) : stack_(std::move(stack)) {
  const SumSpread swept = sumOf(stack_.swept, stack_, &Source::swept);
  const SumSpread clearance = sumOf(stack_.clearance, stack_, &Source::clearance);
  refuseUnlessPositive(swept);
  refuseUnlessPositive(clearance);
  low_ = 1.0 + swept.low() / clearance.high();
  high_ = 1.0 + swept.high() / clearance.low();
}

double RatioSpread::chanceBelow(double ratio) const {
  std::vector<Share> shares;
  shares.reserve(stack_.sources.size());
  for (const Source& source : stack_.sources) {
    shares.push_back({source.shape, source.swept - (ratio - 1.0) * source.clearance});
  }
  return SumSpread(stack_.swept - (ratio - 1.0) * stack_.clearance, shares).chanceBelow(0.0);
}

}  // namespace strokewright::spread
