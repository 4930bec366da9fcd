#include <array>

#include "core/describe/common_practice.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/results.h"

namespace strokewright::running {

namespace in = model::in;
using describe::fine;
using describe::kPractice;
using describe::Per;
using describe::Quantity;
using describe::Reader;
using describe::Result;
using describe::Rule;
using describe::Sentence;
using describe::Speaker;
using describe::Weight;
using units::Kind;

namespace {

/// One message for a gap at one speed: what it closes to, and at worst.
/// @returns whether it spoke
bool judgeGap(Reader& read, Speaker& speak, const Result& gap, double speed) {
  const double left = read(gap);
  const double worst = left - read.worst(gap);
  const double least = read(in::runningSquishLeast);
  if (worst >= least) return false;
  const bool touches = worst <= 0.0;
  const Quantity rpm{Kind::Speed, speed};
  speak.say(touches ? Weight::Forbids : Weight::Objects,
            touches ? Sentence{"Running, the squish gap closes to {1} at {2}, at worst to {3}: the "
                               "piston can touch the head.",
                               {fine(left), rpm, fine(worst)}}
                    : Sentence{"Running, the squish gap closes to {1} at {2}, at worst to {3}, "
                               "under {4}.",
                               {fine(left), rpm, fine(worst), fine(least)}},
            {&in::spacer, &in::wantedSpeed});
  return true;
}

const Rule runningGap{.key = "running_squish",
                      .source = kPractice,
                      .per = Per::Cylinder,
                      .judge = [](Reader& read, Speaker& speak) {
                        if (judgeGap(read, speak, out::runningSquish, read(out::workingSpeed))) {
                          return;
                        }
                        judgeGap(read, speak, out::overRevSquish, read(out::overRevSpeed));
                      }};

}  // namespace

std::span<const Rule* const> rules() {
  static constexpr std::array kRules = {&runningGap};
  return kRules;
}

}  // namespace strokewright::running
