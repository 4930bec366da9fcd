#include "core/spread/deviates.h"

#include <cmath>
#include <cstddef>

namespace strokewright::spread {
namespace {

using Words = std::array<std::uint32_t, kBlockSize>;

std::uint64_t mixed(std::uint64_t x) {
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9;
  x = (x ^ (x >> 27)) * 0x94d049bb133111eb;
  return x ^ (x >> 31);
}

// From -1 to 1.
float symmetric(std::uint32_t word) {
  return static_cast<float>(static_cast<std::int32_t>(word)) * 0x1p-31F;
}

// Above 0, to 1.
float positive(std::uint32_t word) {
  return (static_cast<float>(static_cast<std::int32_t>(word >> 1)) + 1.0F) * 0x1p-31F;
}

STROKEWRIGHT_HOT void makeRectangular(const Words& words, Block& errors) {
  for (std::size_t i = 0; i < errors.size(); ++i) errors[i] = symmetric(words[i]);
}

STROKEWRIGHT_HOT void makeTriangular(const Words& first, const Words& second, Block& errors) {
  for (std::size_t i = 0; i < errors.size(); ++i) {
    errors[i] = (symmetric(first[i]) + symmetric(second[i])) / 2.0F;
  }
}

STROKEWRIGHT_HOT void makeNormal(const Words& words, Block& errors) {
  constexpr std::size_t kHalf = kBlockSize / 2;
  for (std::size_t i = 0; i < kHalf; ++i) {
    const float radius = std::sqrt(-0.5F * logarithm(positive(words[i])));
    const Direction towards = direction(symmetric(words[i + kHalf]) / 2.0F);
    errors[i] = radius * towards.sine;
    errors[i + kHalf] = radius * towards.cosine;
  }
}

}  // namespace

Stream::Stream(std::uint64_t seed, std::uint64_t block) {
  constexpr std::uint64_t kStep = 0x9e3779b97f4a7c15;
  std::uint64_t counter = mixed(seed) + block * kStep * (2 * kLanes);
  for (std::size_t half = 0; half < 2; ++half) {
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
      const std::uint64_t word = mixed(counter += kStep);
      state_[2 * half][lane] = static_cast<std::uint32_t>(word);
      state_[2 * half + 1][lane] = static_cast<std::uint32_t>(word >> 32);
    }
  }
}

STROKEWRIGHT_HOT void Stream::draw(Words& words) {
  auto [s0, s1, s2, s3] = state_;
  for (std::size_t start = 0; start < words.size(); start += kLanes) {
    for (std::size_t i = 0; i < kLanes; ++i) {
      words[start + i] = s0[i] + s3[i];
      const std::uint32_t shifted = s1[i] << 9;
      s2[i] ^= s0[i];
      s3[i] ^= s1[i];
      s1[i] ^= s2[i];
      s0[i] ^= s3[i];
      s2[i] ^= shifted;
      s3[i] = (s3[i] << 11) | (s3[i] >> 21);
    }
  }
  state_ = {s0, s1, s2, s3};
}

void Stream::fill(describe::Shape shape, Block& errors) {
  Words words;
  draw(words);
  switch (shape) {
    case describe::Shape::Normal:
      makeNormal(words, errors);
      break;
    case describe::Shape::Rectangular:
      makeRectangular(words, errors);
      break;
    case describe::Shape::Triangular:
      Words others;
      draw(others);
      makeTriangular(words, others, errors);
      break;
  }
}

}  // namespace strokewright::spread
