#include "core/describe/entry.h"

#include <array>

namespace strokewright::describe {
namespace {

struct OriginName {
  Origin origin;
  std::string_view key;
  std::string_view label;
};

constexpr std::array kOrigins = {
    OriginName{Origin::NotSaid, "", "not said"},
    OriginName{Origin::Measured, "measured", "measured"},
    OriginName{Origin::MakersBook, "makers_book", "maker's book"},
    OriginName{Origin::Catalogue, "catalogue", "catalogue"},
    OriginName{Origin::Assumed, "assumed", "assumed"},
    OriginName{Origin::Computed, "computed", "computed"},
};

const OriginName& nameOf(Origin origin) { return kOrigins[static_cast<std::size_t>(origin)]; }

}  // namespace

std::string_view originKey(Origin origin) { return nameOf(origin).key; }

std::string_view originLabel(Origin origin) { return nameOf(origin).label; }

std::optional<Origin> originOf(std::string_view key) {
  for (const OriginName& name : kOrigins) {
    if (name.key == key) return name.origin;
  }
  return std::nullopt;
}

}  // namespace strokewright::describe
