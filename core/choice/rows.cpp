#include "core/choice/rows.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace strokewright::choice {

Bounds::Bounds(const Limits& limits, std::span<const Bare> cylinders, const Piece& headGasket,
               Nm thickest)
    : under(thickest) {
  for (const Bare& cylinder : cylinders) {
    const Nm squish = cylinder.squish + headGasket.thickness;
    close = std::max(close, limits.squishLeast - squish);
    atWorst =
        std::max(atWorst, limits.leastAtWorst - squish + cylinder.worst + headGasket.plusMinus);
    wide = std::min(wide, limits.squishMost - squish);
    const auto ratio = [&](Nm x) { return cylinder.ratio(x, headGasket.volume); };
    const auto tooHigh = [&](Nm x) { return ratio(x) > limits.ratioMost; };
    const auto highEnough = [&](Nm x) { return ratio(x) >= limits.ratioLeast; };
    over = std::max(over, firstNot(tooHigh, thickest));
    under = std::min(under, firstNot(highEnough, thickest) - 1);
  }
}

SortedPieces::SortedPieces(std::vector<Piece> pieces) : pieces_(std::move(pieces)) {
  std::ranges::sort(pieces_, [](const Piece& one, const Piece& other) {
    return std::tie(one.thickness, one.plusMinus, one.count, one.parts) <
           std::tie(other.thickness, other.plusMinus, other.count, other.parts);
  });
  for (const Piece& piece : pieces_) {
    const bool asBefore = size() > 0 && piece.thickness == thicknesses_.back();
    runStarts_.push_back(asBefore ? runStarts_.back() : size());
    thicknesses_.push_back(piece.thickness);
  }
  greatestPlusMinus_ = std::ranges::max(pieces_, {}, &Piece::plusMinus).plusMinus;
  fewestParts_ = std::ranges::min(pieces_, {}, &Piece::count).count;
}

Row RowFinder::find(const Piece& beside, const Bounds& bounds, Tally& tally) {
  const auto firstNotUnder = [&](Nm limit, Finger& finger) {
    return finger.moveTo(limit - beside.thickness, *pieces_);
  };
  const int all = pieces_->size();
  const int close = firstNotUnder(bounds.close, close_);
  const int sure =
      firstNotUnder(bounds.atWorst + beside.plusMinus + pieces_->greatestPlusMinus(), sure_);
  const int wide = firstNotUnder(bounds.wide + 1, wide_);
  const int first = std::max(close, firstNotUnder(bounds.over, over_));
  const int last = std::min(wide, firstNotUnder(bounds.under + 1, under_));

  const auto safe = [&](int from, int to) {
    int count = std::max(0, to - std::max(from, sure));
    for (int i = from; i < std::min(to, sure); ++i) {
      if (bounds.safeAtWorst(beside, pieces_->at(i))) ++count;
    }
    return count;
  };
  const int notAtWorst = safe(close, all);
  const int notWide = safe(close, wide);
  const int notOver = safe(first, wide);
  const int within = safe(first, last);
  tally.considered += all;
  tally.lostTo(Reason::TooClose) += close;
  tally.lostTo(Reason::TooCloseAtWorst) += all - close - notAtWorst;
  tally.lostTo(Reason::TooWide) += notAtWorst - notWide;
  tally.lostTo(Reason::RatioOver) += notWide - notOver;
  tally.lostTo(Reason::RatioUnder) += notOver - within;
  return {.first = first, .last = last, .sure = sure, .within = within};
}

}  // namespace strokewright::choice
