#include "core/model/engine.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/model/inputs.h"

namespace strokewright::model {
namespace {

constexpr std::array<std::string_view, 3> kPartKeys = {"donor", "target", "variant"};

}  // namespace

std::string_view partKey(Part part) { return kPartKeys[static_cast<std::size_t>(part)]; }

std::optional<Part> partOf(std::string_view key) {
  const auto found = std::find(kPartKeys.begin(), kPartKeys.end(), key);
  if (found == kPartKeys.end()) return std::nullopt;
  return static_cast<Part>(found - kPartKeys.begin());
}

const describe::Entry& Engine::operator[](const describe::Input& input) const {
  static const describe::Entry nothing;
  inputs();  // the order of entries needs numbered inputs
  const auto found = entries.find(&input);
  return found == entries.end() ? nothing : found->second;
}

void Engine::set(const describe::Input& input, describe::Entry entry) {
  inputs();
  if (entry.empty()) {
    entries.erase(&input);
  } else {
    entries.insert_or_assign(&input, std::move(entry));
  }
}

int Project::target() const {
  const auto found = std::find_if(engines.begin(), engines.end(),
                                  [](const Engine& engine) { return engine.part == Part::Target; });
  return found == engines.end() ? -1 : static_cast<int>(found - engines.begin());
}

}  // namespace strokewright::model
