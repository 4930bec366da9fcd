#pragma once
/// Tables as text for other programs: one writer for files, clipboard and command line.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/table.h"
#include "core/units/style.h"

namespace strokewright::describe {

/// A column on its way into a text.
struct HeadedColumn {
  std::string name;  ///< the unit is written behind it
  units::Kind kind = units::Kind::Ratio;
  int decimals = -1;  ///< in the reader's units; negative: the unit's default
  Cells cells = {};
};

/// The columns of one table.
std::vector<HeadedColumn> headed(const Rows& rows);

/// The rows of one table for one of several.
struct NamedRows {
  std::string name;  ///< of the engine
  const Rows* rows = nullptr;
};

/// One table of several engines side by side: the first column once, then the others of each under
/// its name, and how much the numbers of one are more than those of another.
/// @param named       not empty; filled from one table, with the same first column
/// @param difference  places in named: of what, and from what
std::vector<HeadedColumn> sideBySide(std::span<const NamedRows> named,
                                     std::optional<std::pair<std::size_t, std::size_t>> difference);

/// Comma-separated values in SI, with a point and as many digits as read back to the same number,
/// whatever the locale. The first record has names with units. A column that ends before others has
/// empty fields from there.
/// @source RFC 4180; UTF-8 without a byte order mark
std::string csv(std::span<const HeadedColumn> columns);

/// In the reader's units and with his decimal mark; where that is a comma, semicolons separate, as
/// spreadsheets expect there. Nothing groups digits, and a minus sign is a hyphen.
std::string csv(std::span<const HeadedColumn> columns, const units::Style& style);

/// The same for the clipboard: separated by tabs, lines end as text does.
std::string tabbed(std::span<const HeadedColumn> columns, const units::Style& style);

}  // namespace strokewright::describe
