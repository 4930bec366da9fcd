#include "core/describe/refusal.h"

#include <string>

#include "core/units/style.h"

namespace strokewright::describe {
namespace {

/// The exact numbers, in SI, for whoever catches it as a plain std::domain_error.
std::string exactly(std::string_view sentence, units::Kind kind, double value, double limit) {
  const std::string unit(units::siName(kind));
  return std::string(sentence) + " [{1} = " + units::exact(value) + ' ' + unit +
         ", {2} = " + units::exact(limit) + ' ' + unit + ']';
}

}  // namespace

Refusal::Refusal(std::string_view sentence, units::Kind kind, double value, double limit)
    : std::domain_error(exactly(sentence, kind, value, limit)),
      sentence_(sentence),
      kind_(kind),
      value_(value),
      limit_(limit) {}

}  // namespace strokewright::describe
