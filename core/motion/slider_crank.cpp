#include "core/motion/slider_crank.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/describe/refusal.h"

namespace strokewright::motion {
namespace {

using describe::Refusal;
using units::Kind;

// The pin height is y = q' + w, with q = r sin θ - e across and w = √(L² - q²) along the bore, both
// from gudgeon pin to crankpin. Differentiating w² + q² = L² again and again gives each next w.
struct Derivatives {
  double velocity;      // y'
  double acceleration;  // y''
  double jerk;          // y'''
  double snap;          // y''''
};

Derivatives derivatives(const SliderCrank& m, double crankAngle) {
  const double s = m.crankRadius * std::sin(crankAngle);
  const double c = m.crankRadius * std::cos(crankAngle);
  const double q = s - m.offset;
  const double w = std::sqrt(m.rodLength * m.rodLength - q * q);
  const double w1 = -q * c / w;
  const double w2 = -(c * c - q * s + w1 * w1) / w;
  const double w3 = -(-3.0 * c * s - q * c + 3.0 * w1 * w2) / w;
  const double w4 = -(3.0 * s * s - 4.0 * c * c + q * s + 3.0 * w2 * w2 + 4.0 * w1 * w3) / w;
  return {.velocity = -s + w1, .acceleration = -c + w2, .jerk = s + w3, .snap = c + w4};
}

// Newton's method, halving the bracket where it would leave it. The value rises from below zero at
// low to above zero at high. The first step shorter than a hundredth of a microradian is the last:
// it has doubled the digits that are right.
template <typename ValueAndSlope>
double rootInBracket(ValueAndSlope function, double guess, double low, double high) {
  constexpr int kMostSteps = 60;
  double at = guess;
  for (int step = 0; step < kMostSteps; ++step) {
    const auto [value, slope] = function(at);
    (value < 0.0 ? low : high) = at;
    double next = at - value / slope;
    if (!(next >= low && next <= high)) next = (low + high) / 2.0;
    const double moved = std::abs(next - at);
    at = next;
    if (moved < 1e-8) break;
  }
  return at;
}

}  // namespace

bool canTurn(const SliderCrank& m) {
  return m.crankRadius > 0.0 && m.rodLength > m.crankRadius + std::abs(m.offset);
}

void check(const SliderCrank& m) {
  if (canTurn(m)) return;
  if (!(m.crankRadius > 0.0)) {
    throw Refusal("A throw of {1} cannot be: it must be more than {2}.", Kind::Length,
                  m.crankRadius, 0.0);
  }
  throw Refusal("A rod of {1} cannot turn: it needs more than {2}, throw and offset together.",
                Kind::Length, m.rodLength, m.crankRadius + std::abs(m.offset));
}

double pinHeight(const SliderCrank& m, double crankAngle) {
  check(m);
  const double q = m.crankRadius * std::sin(crankAngle) - m.offset;
  return m.crankRadius * std::cos(crankAngle) + std::sqrt(m.rodLength * m.rodLength - q * q);
}

double pinVelocity(const SliderCrank& m, double crankAngle) {
  check(m);
  return derivatives(m, crankAngle).velocity;
}

double pinAcceleration(const SliderCrank& m, double crankAngle) {
  check(m);
  return derivatives(m, crankAngle).acceleration;
}

double topDeadCentreAngle(const SliderCrank& m) {
  check(m);
  return std::asin(m.offset / (m.rodLength + m.crankRadius));
}

double bottomDeadCentreAngle(const SliderCrank& m) {
  check(m);
  return std::numbers::pi + std::asin(m.offset / (m.rodLength - m.crankRadius));
}

double topPinHeight(const SliderCrank& m) {
  check(m);
  const double straight = m.rodLength + m.crankRadius;
  return std::sqrt((straight - m.offset) * (straight + m.offset));
}

double bottomPinHeight(const SliderCrank& m) {
  check(m);
  const double folded = m.rodLength - m.crankRadius;
  return std::sqrt((folded - m.offset) * (folded + m.offset));
}

double trueStroke(const SliderCrank& m) {
  return 4.0 * m.crankRadius * m.rodLength / (topPinHeight(m) + bottomPinHeight(m));
}

double longestStroke(double rodLength, double offset) {
  return 2.0 * std::sqrt(rodLength * std::max(rodLength - std::abs(offset), 0.0));
}

double crankRadiusForStroke(double trueStroke, double rodLength, double offset) {
  if (!(trueStroke > 0.0)) {
    throw Refusal("A stroke of {1} cannot be: it must be more than {2}.", Kind::Length, trueStroke,
                  0.0);
  }
  const double most = longestStroke(rodLength, offset);
  if (!(trueStroke < most)) {
    throw Refusal("A stroke of {1} cannot be: with this rod it stays below {2}.", Kind::Length,
                  trueStroke, most);
  }
  const double stroke2 = trueStroke * trueStroke;
  const double rod2 = 4.0 * rodLength * rodLength;
  return trueStroke / 2.0 * std::sqrt((rod2 - 4.0 * offset * offset - stroke2) / (rod2 - stroke2));
}

double rodAngle(const SliderCrank& m, double crankAngle) {
  check(m);
  return std::asin((m.crankRadius * std::sin(crankAngle) - m.offset) / m.rodLength);
}

double largestRodAngle(const SliderCrank& m) {
  check(m);
  return std::asin((m.crankRadius + std::abs(m.offset)) / m.rodLength);
}

double travel(const SliderCrank& m, double crankAngle) {
  return topPinHeight(m) - pinHeight(m, crankAngle);
}

double crankAngleOfTravel(const SliderCrank& m, double travel) {
  const double stroke = trueStroke(m);
  if (!(travel >= 0.0)) {
    throw Refusal("A travel of {1} from top dead centre cannot be: it starts at {2}.", Kind::Length,
                  travel, 0.0);
  }
  if (travel > stroke) {
    throw Refusal("A travel of {1} from top dead centre cannot be: the stroke is {2}.",
                  Kind::Length, travel, stroke);
  }
  const double r = m.crankRadius;
  const double l = m.rodLength;
  const double height = topPinHeight(m) - travel;
  const double toPin = std::hypot(m.offset, height);
  // How far the triangle's sides are from lying in one line, at the top and at the bottom.
  const double fromTop = travel * (topPinHeight(m) + height) / (l + r + toPin);
  const double fromBottom = (stroke - travel) * (height + bottomPinHeight(m)) / (toPin + l - r);
  const double atCrank = 2.0 * std::atan2(std::sqrt((toPin + l - r) * fromTop),
                                          std::sqrt((l + r + toPin) * fromBottom));
  return std::atan2(m.offset, height) + atCrank;
}

Peak peakDownwardSpeed(const SliderCrank& m) {
  check(m);
  const double lean = (m.crankRadius - m.offset) / m.rodLength;  // of the rod, a quarter turn on
  const double guess = std::numbers::pi / 2.0 - lean + 4.0 / 3.0 * lean * lean * lean;  // a series
  Derivatives last{};  // the last step no longer changes a value that is stationary there
  const double angle = rootInBracket(
      [&](double crankAngle) {
        last = derivatives(m, crankAngle);
        return std::make_pair(last.acceleration, last.jerk);
      },
      guess, topDeadCentreAngle(m), bottomDeadCentreAngle(m));
  return {.crankAngle = angle, .magnitude = -last.velocity};
}

Peak peakDownwardAcceleration(const SliderCrank& m) {
  check(m);
  if (m.offset == 0.0) {
    return {.crankAngle = 0.0, .magnitude = m.crankRadius * (1.0 + m.crankRadius / m.rodLength)};
  }
  const double reach = 2.0 * std::abs(topDeadCentreAngle(m));
  Derivatives last{};
  const double angle = rootInBracket(
      [&](double crankAngle) {
        last = derivatives(m, crankAngle);
        return std::make_pair(last.jerk, last.snap);
      },
      0.0, -reach, reach);
  return {.crankAngle = angle, .magnitude = -last.acceleration};
}

double meanSpeed(const PistonRun& run) { return run.speed * run.trueStroke / std::numbers::pi; }

Pose pose(const SliderCrank& m, double crankAngle) {
  return {.crankpin = {.x = m.crankRadius * std::sin(crankAngle),
                       .y = m.crankRadius * std::cos(crankAngle)},
          .gudgeonPin = {.x = m.offset, .y = pinHeight(m, crankAngle)},
          .rodAngle = rodAngle(m, crankAngle)};
}

}  // namespace strokewright::motion
