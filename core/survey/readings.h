#pragma once
/// Several readings of one thing: how far they lie apart, and whether one of them stands out.

#include <cstddef>
#include <optional>
#include <span>

namespace strokewright::survey {

/// [1] Largest minus smallest of at least one reading, in the unit of the readings.
double spreadOf(std::span<const double> readings);

/// The reading that does not belong with the others, tested both ways at 5 %.
/// @param instrument what each may be off by [unit of the readings] ≥ 0: no farther from the mean
/// of
///                   the others, none stands out; scales are read in steps, and equal readings tell
///                   of no scatter
/// @returns its place; nothing for fewer than three readings, or where they belong together
/// @source Grubbs' test for one outlier, ISO 5725-2:1994, 7.3.4, with the critical value from
///         Student's t
std::optional<std::size_t> outlierOf(std::span<const double> readings, double instrument);

/// Critical value of Grubbs' test for n ≥ 3 readings, both sides together, at a level.
double grubbsCritical(std::size_t n, double level);

}  // namespace strokewright::survey
