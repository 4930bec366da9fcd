#pragma once
/// Which sheets leave the printer.

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace strokewright::sheet {

enum class SheetKind : std::uint8_t { Spec, Survey, Burette, Stack, Plate, Throws };

struct SheetName {
  SheetKind kind;
  std::string_view key;   ///< on the command line: "survey"
  std::string_view name;  ///< "Survey sheet"
};

/// All of them, in the order in which a job needs them after the first, the spec sheet.
std::span<const SheetName> sheetNames();

std::string_view nameOf(SheetKind kind);
std::optional<SheetKind> sheetKindOf(std::string_view key);

}  // namespace strokewright::sheet
