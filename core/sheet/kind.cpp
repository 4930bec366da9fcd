#include "core/sheet/kind.h"

#include <algorithm>
#include <array>

namespace strokewright::sheet {

std::span<const SheetName> sheetNames() {
  static constexpr std::array<SheetName, 6> kNames = {{
      {SheetKind::Spec, "spec", "Spec sheet"},
      {SheetKind::Survey, "survey", "Survey sheet"},
      {SheetKind::Burette, "burette", "Burette sheet"},
      {SheetKind::Stack, "stack", "Stack sheet"},
      {SheetKind::Plate, "plate", "Spacer plate 1 : 1"},
      {SheetKind::Throws, "throws", "Throws sheet"},
  }};
  return kNames;
}

std::string_view nameOf(SheetKind kind) {
  return std::ranges::find(sheetNames(), kind, &SheetName::kind)->name;
}

std::optional<SheetKind> sheetKindOf(std::string_view key) {
  const auto found = std::ranges::find(sheetNames(), key, &SheetName::key);
  if (found == sheetNames().end()) return std::nullopt;
  return found->kind;
}

}  // namespace strokewright::sheet
