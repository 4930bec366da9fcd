#include <array>
#include <utility>

#include "core/describe/table.h"
#include "core/motion/curve.h"
#include "core/motion/results.h"

namespace strokewright::out {
namespace {

using describe::Column;
using describe::Rows;
using units::Kind;

constexpr int kStepsPerTurn = 720;

constexpr std::array kMotionColumns = {
    Column{.key = "crank_angle_rad", .name = "Crank angle", .symbol = "θ", .kind = Kind::Angle},
    Column{.key = "travel_m",
           .name = "Down from top dead centre",
           .symbol = "s",
           .kind = Kind::Length,
           .decimals = 4},
    Column{.key = "speed_m_s",
           .name = "Speed downwards",
           .symbol = "v",
           .kind = Kind::Velocity,
           .decimals = 4},
    Column{.key = "acceleration_m_s2",
           .name = "Acceleration downwards",
           .symbol = "a",
           .kind = Kind::Acceleration,
           .decimals = 2},
};

}  // namespace

const Table pistonMotion{
    .key = "piston_motion",
    .name = "Motion of the piston over one turn, every half degree",
    .columns = kMotionColumns,
    .formula = "y = r cos θ + √(L² − (r sin θ − e)²); s = y_TDC − y, v = −ω dy/dθ, a = −ω² d²y/dθ²",
    .source = "plane geometry; without offset Heywood ch. 2",
    .valid =
        "any rod longer than throw and offset together, at a steady working speed; θ from the "
        "throw on the cylinder axis",
    .fill = [](describe::Reader& read, Rows& rows) {
      static const motion::CrankAngles angles(1, kStepsPerTurn);
      motion::MotionCurves curves;
      motion::fillCurves(motion::mechanism(read), read(workingSpeed), angles, curves);
      rows["crank_angle_rad"].numbers = angles.radians();
      rows["travel_m"].numbers = std::move(curves.travel);
      rows["speed_m_s"].numbers = -curves.velocity;
      rows["acceleration_m_s2"].numbers = -curves.acceleration;
    }};

}  // namespace strokewright::out

namespace strokewright::motion {

std::span<const describe::Table* const> tables() {
  static constexpr std::array kTables = {&out::pistonMotion};
  return kTables;
}

}  // namespace strokewright::motion
