#include "core/cranking/results.h"

#include <array>

#include "core/compression/results.h"
#include "core/cranking/cranking.h"
#include "core/model/inputs.h"
#include "core/ports/results.h"

namespace strokewright::out {

namespace in = model::in;
using describe::Reader;
using units::Kind;

const Result crankingPressure{
    .key = "cranking_pressure_pa",
    .name = "Cranking pressure on the gauge",
    .symbol = "p_crank",
    .kind = Kind::Pressure,
    .decimals = 1,
    .formula = "p_crank = p_a · (ε^n − 1), with ε from inlet closing; a two-stroke: trapped",
    .source = "polytropic compression: Heywood ch. 2; the exponent is common practice",
    .valid =
        "an estimate, throttle open, fully closed as entered; worn rings and a cold engine "
        "read below it",
    .value = [](Reader& read) {
      const Result& ratio =
          model::twoStroke(read) ? trappedCompressionRatio : effectiveCompressionRatio;
      return cranking::gaugePressure({.ambient = read(in::ambientPressure),
                                      .ratio = read(ratio),
                                      .exponent = read(in::crankingExponent)});
    }};

}  // namespace strokewright::out

namespace strokewright::cranking {

std::span<const describe::Result* const> results() {
  static constexpr std::array kResults = {&out::crankingPressure};
  return kResults;
}

}  // namespace strokewright::cranking
