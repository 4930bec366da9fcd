#pragma once
/// What a builder entered: the number, its ±, where it came from, and the text as typed.

#include <map>
#include <optional>
#include <span>
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

/// Key of a shape in files ("rectangular"), and back.
std::string_view shapeKey(Shape shape);
std::optional<Shape> shapeOf(std::string_view key);

/// [SI] half the interval that holds the true mean 95 times in 100; 0 for fewer than two readings.
/// @source Student's t over n − 1 degrees of freedom: JCGM 100:2008, 4.2.3 and G.3
double scatterOfMean(std::span<const double> readings);

struct Entry {
  std::vector<double> values;  ///< [SI] none: not known; one: every cylinder; else one each
  /// [SI] of each value, at least one, where a value is the mean of several; empty where each was
  /// read once.
  std::vector<std::vector<double>> readings;
  std::optional<double> plusMinus;  ///< [SI] of the instrument, as typed
  bool oneSigma = false;            ///< plusMinus is one sigma (half a limit), not a limit
  Shape shape = Shape::Normal;
  Origin origin = Origin::NotSaid;
  std::string instrument;
  std::string date;  ///< ISO 8601 day, or empty
  std::string note;
  std::string text;  ///< as typed, ± and unit included
  std::string unit;  ///< name of the unit a bare number in the text is in

  bool known() const { return !values.empty(); }
  /// [SI] the ± of one of the values as a limit, 0 when there is none: that of the instrument,
  /// which errs in every reading alike, and the scatter of the mean, as the root of their squares:
  /// never less than either of them.
  /// @source JCGM 100:2008, 4.2.3 and 5.1.2
  double limit(std::size_t place = 0) const;
  /// [SI] the ± of the instrument as a limit; 0 when there is none. One sigma is half of it, or as
  /// much of it as the shape has.
  /// @source JCGM 100:2008, 4.3.7 and 4.3.9
  double instrumentLimit() const;
  /// Some value carries a ±.
  bool carriesLimit() const { return instrumentLimit() > 0.0 || !readings.empty(); }
  /// Nothing was entered at all.
  bool empty() const { return *this == Entry{}; }

  bool operator==(const Entry&) const = default;
};

/// Numbers of this kind have a ±; counts and choices have none.
constexpr bool carriesTolerance(units::Kind kind) {
  return kind != units::Kind::Choice && kind != units::Kind::Count;
}

/// [SI] Entry::limit() of an entry of this input: readings whose differences cancel have no
/// scatter.
double limitOf(const Input& input, const Entry& entry, std::size_t place = 0);

/// [SI] limitOf(), or what the usual instrument gives where the entry carries no ±: no number that
/// was entered without one is exact.
double limitOrUsual(const Input& input, const Entry& entry, std::size_t place = 0);

/// Page order.
struct ByNumber {
  bool operator()(const Input* a, const Input* b) const { return a->number < b->number; }
};

/// What was entered for one engine. The inputs must have been numbered by their table.
using Entries = std::map<const Input*, Entry, ByNumber>;

}  // namespace strokewright::describe
