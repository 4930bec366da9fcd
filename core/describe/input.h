#pragma once
/// What a builder can enter, described once by what it is. No trade in this folder.
///
/// The editor, validation, tool tip, file key, command line, compare row and survey form are all
/// made from these descriptions. Which page shows an input is the page's own short list.

#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string_view>

#include "core/units/kind.h"

namespace strokewright::describe {

class Reader;

/// Whose error a ± is.
enum class Scope : std::uint8_t {
  Engine,  ///< a single thing of the whole engine
  Place,   ///< measured once: one error common to all cylinders
  Part,    ///< one piece in each cylinder: independent errors
};

/// One answer to a choice.
struct Choice {
  std::string_view key;    ///< in files and on the command line: "four_stroke"
  std::string_view label;  ///< on the screen: "four-stroke"
};

/// A closed interval, open at the lower end on request.
struct Limits {
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  bool leastExcluded = false;  ///< least itself is outside

  bool holds(double value) const {
    return value <= most && (leastExcluded ? value > least : value >= least);
  }
};

/// What stands while the entry is empty.
struct Default {
  std::optional<double> value;           ///< [SI] or
  double (*by)(Reader& read) = nullptr;  ///< [SI] from other inputs (by use, by cycle)
  std::string_view origin;               ///< "common practice", "published: …"

  bool exists() const { return value.has_value() || by != nullptr; }
};

struct Input {
  std::string_view key;     ///< file key and --set path, ending in the SI unit: "rod_length_m"
  std::string_view label;   ///< trade name
  std::string_view symbol;  ///< as in formulas, may be empty
  units::Kind kind = units::Kind::Length;
  std::span<const Choice> choices = {};  ///< of a Kind::Choice
  Scope scope = Scope::Engine;
  bool list = false;  ///< may be one number per cylinder
  /// Several readings are taken at places chosen so that their differences cancel in the mean.
  bool differencesCancel = false;
  double typical = 0.0;  ///< [SI] for the dry run that finds what is missing, and for hints
  Limits possible = {};  ///< outside: results that read it are refused
  Limits usual = {};     ///< outside: objected to; over five times the upper end: forbidden
  Default standing = {};
  double plusMinus = 0.0;  ///< [SI] what the usual instrument gives, a limit; 0: none
  std::string_view instrument = {};
  std::string_view measure = {};   ///< one line: how to measure it, or how it is decided
  std::string_view synonyms = {};  ///< other names in the trade, for search and tips
  const Input* instead = nullptr;  ///< either this or that one is needed

  mutable int number = -1;  ///< its place in the table of inputs, set by the table alone

  /// Within what is possible; whole where it counts; an answer where it is a choice.
  bool accepts(double value) const {
    if (!possible.holds(value)) return false;
    if (kind == units::Kind::Count) return value == std::floor(value);
    if (kind == units::Kind::Choice) {
      return value >= 0.0 && value < static_cast<double>(choices.size());
    }
    return true;
  }
};

}  // namespace strokewright::describe
