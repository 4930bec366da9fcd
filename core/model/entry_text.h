#pragma once
/// The one path by which typed text becomes an entry: window, command line, files.

#include <string>
#include <string_view>

#include "core/describe/entry.h"
#include "core/describe/input.h"
#include "core/units/unit_group.h"

namespace strokewright::model {

/// Whole numbers for several cylinders may be parted as a firing order is written, by dashes, plus
/// signs, commas or blanks: the same with semicolons, "1;3;4;2". Any other text stays as it is.
std::string withSemicolons(const describe::Input& input, std::string_view text);

/// What was typed as an entry. A number, or a list of them where the input takes one, may carry a ±
/// (whose sign stays in the text alone) and a unit, which wins over the group. Each number may be
/// the mean of several readings ("98.12 | 98.13 | 98.11"). Impossible numbers are taken too.
///
/// Text that makes no sense for the input is kept and its values stay unknown. A choice is found by
/// key or label, whatever the case and whether blanks, hyphens or underscores part the words, or by
/// the first words of one that no other begins with ("chain" for a chain tunnel); it is whole in
/// its number, so its text is not kept. Blank text gives the empty entry.
///
/// @param units  the units bare numbers are in; its unit of the input's kind is noted in the entry.
/// @returns      an entry without origin, instrument, date and note; never throws.
describe::Entry entryFrom(const describe::Input& input, std::string_view text,
                          const units::UnitGroup& units);

}  // namespace strokewright::model
