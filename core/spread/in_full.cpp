#include "core/spread/in_full.h"

#include <array>
#include <span>
#include <vector>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/refusal.h"

namespace strokewright::spread {
namespace {

using describe::Evaluation;
using describe::Move;
using describe::Result;

constexpr std::array<const Result*, 2> kNumbers = {&out::squishGap, &out::compressionRatio};

/// One engine whose entries are thrown.
class Bench {
 public:
  Bench(const Evaluation& evaluation, int engine, int cylinder)
      : evaluation_(evaluation),
        engine_(engine),
        cylinder_(cylinder),
        moves_(evaluation_.moves(engine, kNumbers, cylinder)) {
    for (const Move& move : moves_) middles_.push_back(middleOf(move));
  }

  std::vector<describe::Shape> shapes() const {
    std::vector<describe::Shape> shapes;
    for (const Move& move : moves_) shapes.push_back(move.shape);
    return shapes;
  }

  /// @param errors of each entry, 1 being its limit
  double valueWith(std::span<const double> errors, const Result& result) {
    for (std::size_t i = 0; i < moves_.size(); ++i) {
      const Move& move = moves_[i];
      evaluation_.put(engineOf(move), *move.input, move.cylinder,
                      middles_[i] + errors[i] * move.limit);
    }
    const describe::Cell& cell = evaluation_.fresh(engine_, result, cylinder_);
    if (cell.state == describe::State::Value) return cell.value;
    throw describe::Refusal("A sample breaks a limit: {1} is not to be had.", result.kind,
                            cell.value, 0.0);
  }

 private:
  int engineOf(const Move& move) const {
    return move.donors ? evaluation_.referenceDonor() : engine_;
  }
  double middleOf(const Move& move) const {
    return evaluation_.inputValue(engineOf(move), *move.input,
                                  move.cylinder < 0 ? 0 : move.cylinder);
  }

  Evaluation evaluation_;
  int engine_;
  int cylinder_;
  std::vector<Move> moves_;
  std::vector<double> middles_;
};

}  // namespace

std::optional<StackSamples> sampleInFull(const Evaluation& evaluation, int engine, int cylinder,
                                         const Run& run) {
  Bench bench(evaluation, engine, cylinder);
  Run alone = run;
  alone.threads = 1;  // one bench
  const auto sampled = [&](const Result& result) {
    return sample(
        bench.shapes(),
        [&](std::span<const double> errors) { return bench.valueWith(errors, result); }, alone);
  };
  auto gap = sampled(out::squishGap);
  if (!gap) return std::nullopt;
  auto ratio = sampled(out::compressionRatio);
  if (!ratio) return std::nullopt;
  return StackSamples{.gap = std::move(*gap), .ratio = std::move(*ratio)};
}

}  // namespace strokewright::spread
