#pragma once
/// The rhythm of the firings to be listened to: a plain pulse for each of them.

#include <span>
#include <string>
#include <vector>

#include "core/describe/table.h"
#include "core/firing/firing.h"

namespace strokewright::firing {

/// The firings of a cycle.
struct Firings {
  Order order;  ///< cylinders by the numbers they go by
  Strokes strokes = Strokes::Four;
};

/// As the table of firings has them, out::firingTable.
Firings firingsOf(const describe::Rows& rows);

/// What is played.
struct Playing {
  double speed = 0.0;    ///< [rad/s] > 0 of the crank, at most two samples for a pulse
  double seconds = 3.0;  ///< > 0, at most 60
  int rate = 44100;      ///< samples a second
};

/// [s] rise of a pulse; it then dies away as fast.
inline constexpr double kPulse = 1.2e-3;

/// The sound, −1 to 1 at its loudest: each firing gives the same pulse (t/τ)·exp(1 − t/τ), its mean
/// taken away, faded in and out over 20 ms. No pipe, no silencer and no room are in it: it lets the
/// ear compare rhythms, and nothing else.
/// @throws describe::Refusal for a speed or a length that is not within its limits
/// @source common practice for a pulse model, no published source
std::vector<float> soundOf(const Order& order, Strokes strokes, const Playing& playing);

/// [1] how strong the pulse is at a frequency [rad/s], against the lowest.
/// @source Fourier transform of t·exp(−t/τ)
double pulseAt(double frequency);

/// One channel of 16 bits as a file that every player reads.
/// @source RIFF WAVE, PCM format, as published
std::string wav(std::span<const float> samples, int rate);

}  // namespace strokewright::firing
