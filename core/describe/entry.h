#pragma once
/// What a builder entered: the number, its ±, where it came from, and the text as typed.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/input.h"

namespace strokewright::describe {

/// Where a number came from.
enum class Origin : std::uint8_t { NotSaid, Measured, MakersBook, Catalogue, Assumed, Computed };

/// Key of an origin in files ("makers_book"), and back; NotSaid is the empty key.
std::string_view originKey(Origin origin);
std::optional<Origin> originOf(std::string_view key);
/// As a person reads it: "maker's book".
std::string_view originLabel(Origin origin);

/// How errors lie within a ±.
enum class Shape : std::uint8_t {
  Normal,       ///< the limit is two standard deviations
  Rectangular,  ///< anywhere within the limits alike
  Triangular,   ///< straight from the middle down to nothing at the limits
};

struct Entry {
  std::vector<double> values;       ///< [SI] none: not known; one: every cylinder; else one each
  std::optional<double> plusMinus;  ///< [SI] as typed
  bool oneSigma = false;            ///< plusMinus is one sigma (half a limit), not a limit
  Origin origin = Origin::NotSaid;
  std::string instrument;
  std::string date;  ///< ISO 8601 day, or empty
  std::string note;
  std::string text;  ///< as typed, ± and unit included
  std::string unit;  ///< name of the unit a bare number in the text is in

  bool known() const { return !values.empty(); }
  /// [SI] the ± as a limit; 0 when there is none.
  double limit() const { return plusMinus ? (oneSigma ? 2.0 : 1.0) * *plusMinus : 0.0; }
  /// Nothing was entered at all.
  bool empty() const { return *this == Entry{}; }

  bool operator==(const Entry&) const = default;
};

/// Page order.
struct ByNumber {
  bool operator()(const Input* a, const Input* b) const { return a->number < b->number; }
};

/// What was entered for one engine. The inputs must have been numbered by their table.
using Entries = std::map<const Input*, Entry, ByNumber>;

}  // namespace strokewright::describe
