#include "core/spread/monte_carlo.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <cmath>
#include <exception>
#include <limits>
#include <thread>

#include "core/describe/refusal.h"
#include "core/spread/deviates.h"

namespace strokewright::spread {
namespace {

constexpr std::size_t kFineBins = 4096;
using Counts = std::vector<std::uint32_t>;

std::size_t blocksOf(const Run& run) {
  if (run.count < 1) {
    throw describe::Refusal("From {1} samples nothing can be told: there must be at least {2}.",
                            units::Kind::Count, run.count, 1.0);
  }
  return (static_cast<std::size_t>(run.count) + kBlockSize - 1) / kBlockSize;
}

std::size_t threadsOf(const Run& run) {
  if (run.threads > 0) return static_cast<std::size_t>(run.threads);
  return std::max(1U, std::thread::hardware_concurrency());
}

/// Asks the run now and then whether to go on.
class Supervisor {
 public:
  explicit Supervisor(const Run& run) : run_(run) {}

  bool proceed(std::size_t done, std::size_t all) {
    const auto now = Clock::now();
    if (!run_.proceed || now < next_) return true;
    next_ = now + std::chrono::milliseconds(20);
    return run_.proceed(static_cast<double>(done) / static_cast<double>(all));
  }

 private:
  using Clock = std::chrono::steady_clock;
  const Run& run_;
  Clock::time_point next_ = Clock::now();
};

/// Does work(worker, block) for every block, in any order, each worker in a thread of its own and
/// worker 0 in this one. False where the run was stopped; throws what the work throws.
template <typename Work>
bool forEachBlock(const Run& run, const Work& work) {
  const std::size_t blocks = blocksOf(run);
  std::atomic<std::size_t> next = 0;
  std::atomic<bool> stopped = false;
  std::vector<std::exception_ptr> failures(threadsOf(run));
  Supervisor supervisor(run);
  const auto labour = [&](std::size_t worker) {
    try {
      for (std::size_t block = next++; block < blocks && !stopped; block = next++) {
        if (worker == 0 && !supervisor.proceed(block, blocks)) {
          stopped = true;
        } else {
          work(worker, block);
        }
      }
    } catch (...) {
      failures[worker] = std::current_exception();
      stopped = true;
    }
  };
  {
    std::vector<std::jthread> others;
    for (std::size_t worker = 1; worker < failures.size(); ++worker) {
      others.emplace_back(labour, worker);
    }
    labour(0);
  }
  for (const std::exception_ptr& failure : failures) {
    if (failure) std::rethrow_exception(failure);
  }
  return !stopped;
}

/// Sums over samples, as differences from a middle so that squares lose no digits.
struct Sums {
  double first = 0.0;
  double squares = 0.0;
};

/// What the samples of one number come to.
class Tally {
 public:
  Tally(const Spread& range, double middle, std::size_t workers, std::size_t blocks)
      : bins_{range.low(), range.high(), static_cast<int>(kFineBins)},
        middle_(middle),
        counts_(workers, Counts(kFineBins)),
        sums_(blocks) {}

  void add(std::size_t worker, std::size_t block, const Block& samples);

  SampledSpread spread() const {
    Counts all(kFineBins);
    for (const Counts& counts : counts_) {
      std::transform(all.begin(), all.end(), counts.begin(), all.begin(), std::plus<>());
    }
    Sums sums;
    for (const Sums& block : sums_) {  // in the order of the blocks: rounding is part of the result
      sums.first += block.first;
      sums.squares += block.squares;
    }
    const double count = static_cast<double>(sums_.size() * kBlockSize);
    const double shift = sums.first / count;
    const double variance = std::max(0.0, sums.squares / count - shift * shift);
    return {bins_, all, middle_ + shift, std::sqrt(variance)};
  }

 private:
  Bins bins_;
  double middle_;
  std::vector<Counts> counts_;  // one for each worker
  std::vector<Sums> sums_;      // one for each block
};

STROKEWRIGHT_HOT Sums sumsOf(const Block& samples, double middle) {
  constexpr std::size_t kLanes = 8;
  std::array<double, kLanes> first{};
  std::array<double, kLanes> squares{};
  for (std::size_t start = 0; start < samples.size(); start += kLanes) {
    for (std::size_t i = 0; i < kLanes; ++i) {
      const double x = static_cast<double>(samples[start + i]) - middle;
      first[i] += x;
      squares[i] += x * x;
    }
  }
  Sums sums;
  for (std::size_t i = 0; i < kLanes; ++i) {
    sums.first += first[i];
    sums.squares += squares[i];
  }
  return sums;
}

STROKEWRIGHT_HOT void findBins(const Block& samples, float low, float perUnit,
                               std::array<std::int32_t, kBlockSize>& places) {
  constexpr float kLast = kFineBins - 1;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const float place = (samples[i] - low) * perUnit;
    places[i] = static_cast<std::int32_t>(place < 0.0F ? 0.0F : place > kLast ? kLast : place);
  }
}

void Tally::add(std::size_t worker, std::size_t block, const Block& samples) {
  sums_[block] = sumsOf(samples, middle_);
  const double width = bins_.high - bins_.low;
  const double perUnit = width > 0.0 ? kFineBins / width : 0.0;
  std::array<std::int32_t, kBlockSize> places;
  findBins(samples, static_cast<float>(bins_.low), static_cast<float>(perUnit), places);
  Counts& counts = counts_[worker];
  for (const std::int32_t place : places) ++counts[static_cast<std::size_t>(place)];
}

STROKEWRIGHT_HOT void addErrors(const Block& errors, float share, Block& sum) {
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += share * errors[i];
}

STROKEWRIGHT_HOT void makeRatio(const Block& swept, const Block& clearance, Block& ratio) {
  for (std::size_t i = 0; i < ratio.size(); ++i) ratio[i] = 1.0F + swept[i] / clearance[i];
}

/// The part of a stack's number that one source moves.
void addShare(const Block& errors, double share, Block& sum) {
  if (share != 0.0) addErrors(errors, static_cast<float>(share), sum);
}

SampledSpread spreadOf(const std::vector<double>& samples) {
  const auto [least, most] = std::minmax_element(samples.begin(), samples.end());
  const Bins bins{*least, *most, static_cast<int>(kFineBins)};
  const double perUnit = bins.high > bins.low ? kFineBins / (bins.high - bins.low) : 0.0;
  Counts counts(kFineBins);
  Sums sums;
  for (const double sample : samples) {
    const auto place = static_cast<std::size_t>((sample - bins.low) * perUnit);
    ++counts[std::min(place, kFineBins - 1)];
    sums.first += sample - bins.low;
    sums.squares += (sample - bins.low) * (sample - bins.low);
  }
  const double count = static_cast<double>(samples.size());
  const double shift = sums.first / count;
  const double variance = std::max(0.0, sums.squares / count - shift * shift);
  return {bins, counts, bins.low + shift, std::sqrt(variance)};
}

void refuseUnlessFinite(double sample) {
  if (std::isfinite(sample)) return;
  throw describe::Refusal("A sample of {1} cannot be counted: {2} is the most it can be.",
                          units::Kind::Ratio, sample, std::numeric_limits<double>::max());
}

}  // namespace

SampledSpread::SampledSpread(const Bins& bins, const std::vector<std::uint32_t>& counts,
                             double mean, double standardDeviation)
    : bins_(bins), below_{0.0}, mean_(mean), standardDeviation_(standardDeviation) {
  std::uint64_t below = 0;
  for (const std::uint32_t count : counts) below_.push_back(static_cast<double>(below += count));
  for (double& chance : below_) chance /= static_cast<double>(below);
}

double SampledSpread::chanceBelow(double x) const {
  if (x <= bins_.low) return 0.0;
  if (x >= bins_.high) return 1.0;
  const double place = (x - bins_.low) / (bins_.high - bins_.low) * bins_.count;
  const std::size_t bin = std::min(static_cast<std::size_t>(place), below_.size() - 2);
  return std::lerp(below_[bin], below_[bin + 1], place - static_cast<double>(bin));
}

std::optional<StackSamples> sample(const Stack& stack, const Run& run) {
  const std::size_t workers = threadsOf(run);
  const std::size_t blocks = blocksOf(run);
  Tally gaps(gapSpread(stack), stack.gap, workers, blocks);
  Tally ratios(RatioSpread(stack), 1.0 + stack.swept / stack.clearance, workers, blocks);
  const bool finished = forEachBlock(run, [&](std::size_t worker, std::size_t block) {
    Stream stream(run.seed, block);
    Block errors, gap, swept, clearance;
    gap.fill(static_cast<float>(stack.gap));
    swept.fill(static_cast<float>(stack.swept));
    clearance.fill(static_cast<float>(stack.clearance));
    for (const Source& source : stack.sources) {
      stream.fill(source.shape, errors);
      addShare(errors, source.gap, gap);
      addShare(errors, source.swept, swept);
      addShare(errors, source.clearance, clearance);
    }
    gaps.add(worker, block, gap);
    makeRatio(swept, clearance, swept);
    ratios.add(worker, block, swept);
  });
  if (!finished) return std::nullopt;
  return StackSamples{.gap = gaps.spread(), .ratio = ratios.spread()};
}

std::optional<SampledSpread> sample(const std::vector<describe::Shape>& shapes,
                                    const std::function<double(std::span<const double>)>& function,
                                    const Run& run) {
  std::vector<double> samples(blocksOf(run) * kBlockSize);
  const bool finished = forEachBlock(run, [&](std::size_t, std::size_t block) {
    Stream stream(run.seed, block);
    std::vector<Block> errors(shapes.size());
    for (std::size_t i = 0; i < shapes.size(); ++i) stream.fill(shapes[i], errors[i]);
    std::vector<double> each(shapes.size());
    for (std::size_t s = 0; s < kBlockSize; ++s) {
      for (std::size_t i = 0; i < each.size(); ++i) each[i] = static_cast<double>(errors[i][s]);
      const double value = function(each);
      refuseUnlessFinite(value);
      samples[block * kBlockSize + s] = value;
    }
  });
  if (!finished) return std::nullopt;
  return spreadOf(samples);
}

}  // namespace strokewright::spread
