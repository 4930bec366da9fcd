#pragma once
/// From what a person typed to SI. Independent of any locale: a point and a comma both mean the
/// decimal mark, group separators are not read, the unit may follow the number and wins.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/unit_group.h"

namespace strokewright::units {

/// Why a text is not a number.
enum class Problem : std::uint8_t {
  None,
  Empty,        ///< nothing typed
  Placeholder,  ///< "?", "tbc", "tba", "tbd", "-", "–", "—", "n/a", "nan", "inf": not known yet
  NotANumber,   ///< anything else that cannot be read
  TwoDecimalMarks,   ///< "1.000,5", "1,000.5", "1.2.3"
  Grouped,           ///< "41 794", "10'000"
  Gap,               ///< nothing where a number belongs: "1;;2", "98.1 |", "± 0.03"
  Range,             ///< "0.6 to 1.2", of anything but a volume
  PlusMinusInside,   ///< "98 ± 1 ± 2", "1 ± 2; 3": a ± that does not stand behind all numbers
  UnknownUnit,       ///< a unit no kind knows
  OpenUnit,          ///< a number whose unit is left open: the 2 of "1 in; 2; 30 mm"
  WrongKind,         ///< a number with a unit of another kind: "12 g" for a length
  ZeroDivisor,       ///< "3/0"
  ImproperFraction,  ///< "2 13/8"
  TooLarge,          ///< beyond what a double holds, or more than 40 digits in one number
};

/// What was worth saying although the text was read.
enum class Heed : std::uint8_t {
  Comma,        ///< the decimal mark was a comma
  ThreeDigits,  ///< "1,200": taken as a decimal, might be meant as a thousand; see parse()
  Fraction,     ///< "2 5/8", "13/16"
  OtherUnit,    ///< the typed unit is not the one the field shows
  Step,         ///< "0.2 to 18.9": the step from one mark of a scale to another
  Mean,         ///< "98.12 | 98.13": the mean of several readings
};

struct Parsed {
  std::vector<double> values;  ///< [SI] empty exactly when problem is not None
  /// [SI] of each value, where one of them is the mean of several readings; else empty.
  std::vector<std::vector<double>> readings;
  std::optional<double> plusMinus;  ///< [SI] from "98.20 ± 0.03", "98.20 +- 0.03 mm", "+/-"
  Problem problem = Problem::None;
  std::string culprit;      ///< the piece of text that could not be read
  std::vector<Heed> heeds;  ///< each at most once, in the order of the enum; none with a problem
};

/// Reads one number, or a list of them separated by ';', with an optional ± that holds for all.
/// Each may be several readings separated by '|', of which it is the mean; a reading of a volume
/// may be the step between two marks of a burette: "0.2 to 18.9".
///
/// Accepted numbers: 66.0, 0,5, .5, ,5, +3, -1.35, −1.35 (U+2212), 12.7e0, 2 5/8, 2-5/8, 13/16.
/// A fraction behind a whole number must be proper; 13/8 alone may be improper.
///
/// Accepted after a number: blanks (also no-break), then a unit as findUnit() knows it.
/// - Numbers without a unit take the one unit that is written in their list or reading, else the
///   bare unit ("98.12; 98.20 ± 0.03 mm").
/// - Where a list has two units, each of its numbers must carry its own; so must the numbers where
///   the ± alone has a unit that is not the bare one ("0.65 ± 20 µm" in mm).
/// - A ± without a unit has the unit of the last number.
///
/// Heed::ThreeDigits is raised for a comma with exactly three digits behind it and one to three
/// before it, the first of them not 0: "1,200" and "126,500", but not "0,040" or "1234,500". A
/// point never raises it, because sizes with three decimals (126.500) are everyday.
///
/// @param bare the unit a number without a unit is in, one of unitsOf(kind).
/// @returns    never throws, never NaN or infinite; values and plusMinus may have any sign.
Parsed parse(Kind kind, std::string_view text, const Unit& bare);

/// Of at least one; a single one is itself to the last digit.
double meanOf(std::span<const double> readings);

}  // namespace strokewright::units
