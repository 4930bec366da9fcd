#include "core/motion/curve.h"

#include <cmath>
#include <numbers>

// One plain loop over arrays, compiled twice: for every x86-64 machine and for those with AVX2,
// which are the most of them and twice as fast with it; the program takes its own when it starts.
// Without fused multiply-add both give the same bits. Sanitizers cannot start such a program.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define STROKEWRIGHT_VECTOR_CLONES __attribute__((target_clones("avx2", "default")))
#else
#define STROKEWRIGHT_VECTOR_CLONES
#endif

namespace strokewright::motion {
namespace {

struct Loop {
  double crankRadius;
  double rod2;  // rod length squared
  double offset;
  double top;  // pin height at top dead centre
  double speed;
  double speed2;
};

// One square root and one division a point; no branches, no calls: it becomes vectors.
STROKEWRIGHT_VECTOR_CLONES
void fill(const Loop& given, Eigen::Index size, const double* __restrict sine,
          const double* __restrict cosine, double* __restrict travel, double* __restrict velocity,
          double* __restrict acceleration) {
  const Loop m = given;  // a copy, which the arrays cannot alias
  for (Eigen::Index i = 0; i < size; ++i) {
    const double s = m.crankRadius * sine[i];
    const double c = m.crankRadius * cosine[i];
    const double q = s - m.offset;
    const double w2 = m.rod2 - q * q;
    const double inverse = 1.0 / std::sqrt(w2);
    const double slope = q * c * inverse;  // minus w'
    travel[i] = m.top - c - w2 * inverse;
    velocity[i] = m.speed * (-s - slope);
    acceleration[i] = m.speed2 * (-c - (c * c - q * s + slope * slope) * inverse);
  }
}

}  // namespace

CrankAngles::CrankAngles(int turns, int stepsPerTurn)
    : radians_(Eigen::ArrayXd::LinSpaced(Eigen::Index{turns} * stepsPerTurn + 1, 0.0,
                                         2.0 * std::numbers::pi * turns)),
      sines_(radians_.sin()),
      cosines_(radians_.cos()) {}

void fillCurves(const SliderCrank& mechanism, double speed, const CrankAngles& angles,
                MotionCurves& curves) {
  const Loop loop{.crankRadius = mechanism.crankRadius,
                  .rod2 = mechanism.rodLength * mechanism.rodLength,
                  .offset = mechanism.offset,
                  .top = topPinHeight(mechanism),
                  .speed = speed,
                  .speed2 = speed * speed};
  curves.travel.resize(angles.size());
  curves.velocity.resize(angles.size());
  curves.acceleration.resize(angles.size());
  fill(loop, angles.size(), angles.sines().data(), angles.cosines().data(), curves.travel.data(),
       curves.velocity.data(), curves.acceleration.data());
}

}  // namespace strokewright::motion
