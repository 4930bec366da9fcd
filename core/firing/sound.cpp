#include "core/firing/sound.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <string_view>

#include "core/describe/refusal.h"

namespace strokewright::firing {
namespace {

constexpr double kMostSeconds = 60.0;
constexpr double kFade = 0.02;        // [s]
constexpr double kPulseLasts = 14.0;  // of its rise: a ten-thousandth is left

void check(const Playing& playing, const Order& order, Strokes strokes) {
  if (!(playing.speed > 0.0) || !std::isfinite(playing.speed)) {
    throw describe::Refusal("A crank at {1} makes no sound: it must turn faster than {2}.",
                            units::Kind::Speed, playing.speed, 0.0);
  }
  // Two samples for a pulse at least: faster ones could not be told apart.
  const double fastest =
      0.5 * playing.rate * cycleOf(strokes) / static_cast<double>(order.at.size());
  if (playing.speed > fastest) {
    throw describe::Refusal("A crank at {1} is too fast to be heard: at most {2}.",
                            units::Kind::Speed, playing.speed, fastest);
  }
  if (!(playing.seconds > 0.0 && playing.seconds <= kMostSeconds)) {
    throw describe::Refusal("{1} seconds are not played: more than none, and at most {2}.",
                            units::Kind::Ratio, playing.seconds, kMostSeconds);
  }
}

/// Adds one pulse that begins at a time [s].
void addPulse(double begins, int rate, std::vector<double>& samples) {
  const double ends = begins + kPulseLasts * kPulse;
  if (ends < 0.0) return;
  const auto first = static_cast<std::size_t>(std::max(0.0, std::ceil(begins * rate)));
  const auto last = static_cast<std::size_t>(ends * rate);
  for (std::size_t i = first; i <= last && i < samples.size(); ++i) {
    const double t = (static_cast<double>(i) / rate - begins) / kPulse;
    samples[i] += t * std::exp(1.0 - t);
  }
}

void append(std::string& bytes, std::uint32_t value, int count) {
  for (int i = 0; i < count; ++i) bytes += static_cast<char>(value >> (8 * i) & 0xFFU);
}

}  // namespace

Firings firingsOf(const describe::Rows& rows) {
  Firings firings;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto row = static_cast<Eigen::Index>(i);
    firings.order.cylinders.push_back(static_cast<int>(rows["cylinder"].numbers[row]));
    firings.order.at.push_back(rows["at_rad"].numbers[row]);
  }
  const bool four = rows["then_rad"].numbers.sum() > 1.5 * cycleOf(Strokes::Two);
  firings.strokes = four ? Strokes::Four : Strokes::Two;
  return firings;
}

std::vector<float> soundOf(const Order& order, Strokes strokes, const Playing& playing) {
  check(playing, order, strokes);
  const auto count = static_cast<std::size_t>(playing.seconds * playing.rate);
  std::vector<double> samples(count);
  const double cycle = cycleOf(strokes) / playing.speed;  // [s]
  for (double begins = -cycle; begins < playing.seconds; begins += cycle) {
    for (const double at : order.at) addPulse(begins + at / playing.speed, playing.rate, samples);
  }
  // The mean of one pulse is e τ: what is the same all the time is not heard.
  const double mean = std::numbers::e * kPulse * static_cast<double>(order.at.size()) / cycle;
  double loudest = 1e-9;
  for (double& sample : samples) {
    sample -= mean;
    loudest = std::max(loudest, std::abs(sample));
  }
  std::vector<float> sound(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double edge = static_cast<double>(std::min(i, count - 1 - i)) / playing.rate;
    sound[i] = static_cast<float>(samples[i] / loudest * std::min(1.0, edge / kFade));
  }
  return sound;
}

double pulseAt(double frequency) { return 1.0 / (1.0 + std::pow(frequency * kPulse, 2.0)); }

std::string wav(std::span<const float> samples, int rate) {
  constexpr std::uint32_t kBytesEach = 2;
  const auto size = static_cast<std::uint32_t>(samples.size()) * kBytesEach;
  std::string bytes = "RIFF";
  append(bytes, 36 + size, 4);
  bytes += "WAVEfmt ";
  append(bytes, 16, 4);  // length of the format
  append(bytes, 1, 2);   // PCM
  append(bytes, 1, 2);   // channels
  append(bytes, static_cast<std::uint32_t>(rate), 4);
  append(bytes, static_cast<std::uint32_t>(rate) * kBytesEach, 4);
  append(bytes, kBytesEach, 2);
  append(bytes, 8 * kBytesEach, 2);
  bytes += "data";
  append(bytes, size, 4);
  for (const float sample : samples) {
    const long level = std::lround(std::clamp(sample, -1.0F, 1.0F) * 32767.0F);
    append(bytes, static_cast<std::uint32_t>(static_cast<std::int32_t>(level)), 2);
  }
  return bytes;
}

}  // namespace strokewright::firing
