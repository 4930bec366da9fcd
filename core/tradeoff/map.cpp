#include "core/tradeoff/map.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "core/chamber/chamber.h"
#include "core/limits/ceilings.h"
#include "core/motion/slider_crank.h"
#include "core/vector_clones.h"

namespace strokewright::tradeoff {
namespace {

using motion::SliderCrank;

// All that depends on the bore alone. The ratio is ratioBase + ratioPerStroke · true stroke.
struct Columns {
  using Values = Eigen::Array<float, 1, Eigen::Dynamic>;
  Values area;  // of all pistons [m2]
  Values ratioBase;
  Values ratioPerStroke;

  Columns(const Eigen::ArrayXd& bores, const Held& held)
      : area(bores.size()), ratioBase(bores.size()), ratioPerStroke(bores.size()) {
    for (Eigen::Index i = 0; i < bores.size(); ++i) {
      const double bore = bores[i];
      const double boreArea = chamber::boreArea(bore);
      const double clearance = held.evenVolume + boreArea * held.deckClearance +
                               chamber::gasketVolume({.gasketBore = bore + held.gasketOverBore,
                                                      .thickness = held.gasketThickness});
      const bool open = clearance > 0.0;
      area[i] = static_cast<float>(held.cylinderCount * boreArea);
      ratioBase[i] = open ? 1.0F : 0.0F;
      ratioPerStroke[i] = open ? static_cast<float>(boreArea / clearance) : 0.0F;
    }
  }
};

// All that depends on the stroke alone; zero where the rod cannot turn.
struct Row {
  float trueStroke = 0.0F;
  float ratioShare = 0.0F;  // 0 blanks the ratio
  float meanPistonSpeed = 0.0F;
  float ceiling = 0.0F;

  Row(double stroke, const Held& held, const Limits& limits) {
    const SliderCrank mechanism{
        .crankRadius = stroke / 2.0, .rodLength = held.rodLength, .offset = held.offset};
    if (!motion::canTurn(mechanism)) return;
    const double travel = motion::trueStroke(mechanism);
    trueStroke = static_cast<float>(travel);
    ratioShare = 1.0F;
    meanPistonSpeed =
        static_cast<float>(motion::meanSpeed({.trueStroke = travel, .speed = held.speed}));
    const double lowest =
        std::min({limits.shaftSpeed,
                  limits::pistonSpeedCeiling(
                      {.trueStroke = travel, .meanPistonSpeed = limits.meanPistonSpeed}),
                  limits::accelerationCeiling(
                      {.acceleration = limits.acceleration,
                       .peakPerSpeed2 = motion::peakDownwardAcceleration(mechanism).magnitude})});
    if (lowest < Limits::kUnknown) ceiling = static_cast<float>(lowest);
  }
};

// One map after the other: a row stays in the nearest cache until it is written.
STROKEWRIGHT_VECTOR_CLONES
void write(const Row& given, Eigen::Index size, const float* __restrict area,
           const float* __restrict ratioBase, const float* __restrict ratioPerStroke,
           float* __restrict displacement, float* __restrict compressionRatio,
           float* __restrict meanPistonSpeed, float* __restrict ceiling) {
  const Row row = given;  // a copy, which the arrays cannot alias
  for (Eigen::Index i = 0; i < size; ++i) displacement[i] = row.trueStroke * area[i];
  for (Eigen::Index i = 0; i < size; ++i) {
    compressionRatio[i] = row.ratioShare * ratioBase[i] + row.trueStroke * ratioPerStroke[i];
  }
  for (Eigen::Index i = 0; i < size; ++i) meanPistonSpeed[i] = row.meanPistonSpeed;
  for (Eigen::Index i = 0; i < size; ++i) ceiling[i] = row.ceiling;
}

double nominalStroke(double trueStroke, const Held& held) {
  if (!(trueStroke < motion::longestStroke(held.rodLength, held.offset))) return 0.0;
  return 2.0 * motion::crankRadiusForStroke(trueStroke, held.rodLength, held.offset);
}

}  // namespace

void fillMaps(const Eigen::ArrayXd& bores, const Eigen::ArrayXd& strokes, const Held& held,
              const Limits& limits, Maps& maps) {
  for (Maps::Map* map :
       {&maps.displacement, &maps.compressionRatio, &maps.meanPistonSpeed, &maps.ceiling}) {
    map->resize(strokes.size(), bores.size());
  }
  const Columns columns(bores, held);
  for (Eigen::Index i = 0; i < strokes.size(); ++i) {
    const Row row(strokes[i], held, limits);
    write(row, bores.size(), columns.area.data(), columns.ratioBase.data(),
          columns.ratioPerStroke.data(), &maps.displacement(i, 0), &maps.compressionRatio(i, 0),
          &maps.meanPistonSpeed(i, 0), &maps.ceiling(i, 0));
  }
}

Eigen::ArrayXd strokesForDisplacement(const Eigen::ArrayXd& bores, double displacement,
                                      const Held& held) {
  return bores.unaryExpr([&](double bore) {
    return nominalStroke(displacement / (held.cylinderCount * chamber::boreArea(bore)), held);
  });
}

double strokeForPistonSpeed(double meanPistonSpeed, const Held& held) {
  // The ceiling formula turned round: stroke and speed stand for each other in it.
  return nominalStroke(
      limits::pistonSpeedCeiling({.trueStroke = held.speed, .meanPistonSpeed = meanPistonSpeed}),
      held);
}

double strokeForAcceleration(double acceleration, const Held& held) {
  const double wanted = acceleration / (held.speed * held.speed);
  const auto excess = [&](double crankRadius) {
    return motion::peakDownwardAcceleration(
               {.crankRadius = crankRadius, .rodLength = held.rodLength, .offset = held.offset})
               .magnitude -
           wanted;
  };
  const double most = (held.rodLength - std::abs(held.offset)) * (1.0 - 1e-12);
  if (!(most > 0.0) || excess(most) < 0.0) return 0.0;
  std::uintmax_t steps = 60;
  const auto [low, high] = boost::math::tools::toms748_solve(
      excess, 0.0, most, -wanted, excess(most), boost::math::tools::eps_tolerance<double>(), steps);
  return low + high;
}

double strokeForRodRatio(double rodRatio, const Held& held) {
  const double stroke = held.rodLength / rodRatio;
  const SliderCrank mechanism{
      .crankRadius = stroke / 2.0, .rodLength = held.rodLength, .offset = held.offset};
  return motion::canTurn(mechanism) ? stroke : 0.0;
}

}  // namespace strokewright::tradeoff
