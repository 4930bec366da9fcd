#pragma once
/// Random deviates by the block, in loops that the compiler turns into vectors.

#include <array>
#include <bit>
#include <cstdint>

#include "core/describe/entry.h"

/// Marks a hot loop: it is compiled once for every x86-64 processor and once for those with AVX2,
/// and the better one is chosen when the program starts. Neither fuses a product with a sum, so
/// both give the same numbers. The thread sanitizer cannot bear the choosing.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__SANITIZE_THREAD__)
#define STROKEWRIGHT_HOT [[gnu::target_clones("avx2", "default")]]
#else
#define STROKEWRIGHT_HOT
#endif

namespace strokewright::spread {

/// Samples are made in blocks of this size.
inline constexpr int kBlockSize = 2048;
using Block = std::array<float, kBlockSize>;

/// Natural logarithm.
/// @param u > 0 and <= 1, not denormal
/// @valid relative error below 4e-7
/// @source own minimax polynomial over √½ … √2, the exponent apart
inline float logarithm(float u) {
  constexpr std::uint32_t kRootOfHalf = 0x3f3504f3;  // √½ as bits
  const auto bits = std::bit_cast<std::uint32_t>(u);
  const std::int32_t exponent = static_cast<std::int32_t>(bits - kRootOfHalf) >> 23;
  const float f = std::bit_cast<float>(bits - (static_cast<std::uint32_t>(exponent) << 23)) - 1.0F;
  float p = 0.08959812F;
  p = p * f - 0.1448215F;
  p = p * f + 0.14917397F;
  p = p * f - 0.16543745F;
  p = p * f + 0.19958416F;
  p = p * f - 0.25002944F;
  p = p * f + 0.3333416F;
  p = p * f - 0.4999998F;
  p = p * f + 1.0F;
  return static_cast<float>(exponent) * 0.6931472F + p * f;
}

struct Direction {
  float sine = 0.0F;
  float cosine = 0.0F;
};

/// Sine and cosine of an angle given in turns.
/// @param turns from −½ to ½
/// @valid error below 1e-6
/// @source own minimax polynomials of half the angle, and its double
inline Direction direction(float turns) {
  const float q = turns * turns;
  float sine = 0.07765941F;  // of half the angle
  sine = sine * q - 0.5982922F;
  sine = sine * q + 2.5500777F;
  sine = sine * q - 5.1677103F;
  sine = (sine * q + 3.1415927F) * turns;
  float cosine = 0.21969679F;
  cosine = cosine * q - 1.3318802F;
  cosine = cosine * q + 4.058412F;
  cosine = cosine * q - 4.934793F;
  cosine = cosine * q + 1.0F;
  return {.sine = 2.0F * sine * cosine, .cosine = 1.0F - 2.0F * sine * sine};
}

/// The random numbers of one block. Every block has a stream of its own, so that what is sampled
/// does not depend on who samples it.
/// @source xoshiro128+ (Blackman and Vigna 2018), a bundle of generators side by side, their states
///         from SplitMix64 (Steele, Lea and Flood 2014); normal deviates by Box and Muller (1958)
class Stream {
 public:
  Stream(std::uint64_t seed, std::uint64_t block);

  /// Fills a block with errors of one source: 1 is its limit. Normal ones stay within 3.3 limits.
  void fill(describe::Shape shape, Block& errors);

 private:
  static constexpr int kLanes = 32;
  using Lanes = std::array<std::uint32_t, kLanes>;
  using Words = std::array<std::uint32_t, kBlockSize>;

  void draw(Words& words);

  std::array<Lanes, 4> state_;
};

}  // namespace strokewright::spread
