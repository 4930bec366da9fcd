// Coverage-guided search for a text that breaks a promise of parse(). The first byte picks the
// kind, the second the unit of a bare number, the rest is the text.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/units/parse.h"
#include "tests/units/parse_invariants.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  namespace units = strokewright::units;
  if (size < 2) return 0;
  const auto kind = static_cast<units::Kind>(data[0] % units::kKindCount);
  const auto choice = units::unitsOf(kind);
  const std::string text(data + 2, data + size);
  const units::Parsed parsed = units::parse(kind, text, choice[data[1] % choice.size()]);
  if (!units::brokenPromise(parsed).empty()) std::abort();
  return 0;
}
