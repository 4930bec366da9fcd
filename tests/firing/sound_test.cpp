#include "core/firing/sound.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <cstdint>
#include <numbers>
#include <vector>

#include "core/describe/refusal.h"

namespace strokewright::firing {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

/// How strong one frequency [Hz] is in the middle of the samples.
double strength(const std::vector<double>& samples, double frequency, int rate) {
  std::complex<double> sum;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    sum += samples[i] * std::polar(1.0, -kTurn * frequency * static_cast<double>(i) / rate);
  }
  return std::abs(sum) / static_cast<double>(samples.size());
}

/// The samples of a file of one channel and 16 bits, read by the published layout.
std::vector<double> read(const std::string& bytes) {
  const auto number = [&](std::size_t at, int count) {
    std::uint32_t value = 0;
    for (int i = 0; i < count; ++i) {
      value |= static_cast<std::uint32_t>(
                   static_cast<unsigned char>(bytes[at + static_cast<std::size_t>(i)]))
               << (8 * i);
    }
    return value;
  };
  EXPECT_EQ(bytes.substr(0, 4), "RIFF");
  EXPECT_EQ(number(4, 4), bytes.size() - 8);
  EXPECT_EQ(bytes.substr(8, 8), "WAVEfmt ");
  EXPECT_EQ(number(24, 4), 44100U);
  EXPECT_EQ(bytes.substr(36, 4), "data");
  EXPECT_EQ(number(40, 4), bytes.size() - 44);
  std::vector<double> samples;
  for (std::size_t at = 44; at < bytes.size(); at += 2) {
    samples.push_back(static_cast<double>(static_cast<std::int16_t>(number(at, 2))) / 32767.0);
  }
  return samples;
}

// A 270° twin at 3000 rpm: 50 turns a second, a cycle 40 ms long. The orders stand to each other as
// their contents, weighed by the spectrum of the pulse: by an independent Fourier sum.
TEST(Sound, HasTheOrdersOfTheTable) {
  const Order twin{.cylinders = {0, 1}, .at = {0.0, 450.0 / 360.0 * kTurn}};
  const Playing playing{.speed = 50.0 * kTurn, .seconds = 2.04};
  const std::vector<double> all = read(wav(soundOf(twin, Strokes::Four, playing), playing.rate));
  ASSERT_EQ(all.size(), static_cast<std::size_t>(2.04 * 44100));
  const auto from = all.begin() + 882;  // after the fade; 50 whole cycles
  const std::vector<double> samples(from, from + 2 * 44100);
  const double half = strength(samples, 25.0, playing.rate) / pulseAt(25.0 * kTurn);
  for (const double q : {0.5, 1.0, 1.5, 2.0, 2.5, 3.0}) {
    const double told = strength(samples, q * 50.0, playing.rate) / pulseAt(q * 50.0 * kTurn);
    EXPECT_NEAR(told / half * content(twin, 0.5), content(twin, q), 0.005) << q;
  }
  EXPECT_LT(strength(samples, 30.0, playing.rate), 1e-4) << "between the orders there is nothing";
}

TEST(Sound, StaysWithinItsLimits) {
  const Order single{.cylinders = {0}, .at = {0.0}};
  for (const float sample : soundOf(single, Strokes::Two, {.speed = 600.0, .seconds = 0.5})) {
    ASSERT_LE(std::abs(sample), 1.0F);
  }
  EXPECT_THROW(soundOf(single, Strokes::Two, {.speed = 0.0}), describe::Refusal);
  EXPECT_THROW(soundOf(single, Strokes::Two, {.speed = 22051.0 * kTurn}), describe::Refusal)
      << "two samples for a pulse at 22050 turns a second";
  EXPECT_THROW(soundOf(single, Strokes::Two, {.speed = 100.0, .seconds = 61.0}), describe::Refusal);
}

}  // namespace
}  // namespace strokewright::firing
