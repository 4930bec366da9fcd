#pragma once
/// A project as a plain value: what was entered, nothing computed.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/entry.h"
#include "core/describe/input.h"
#include "core/describe/list.h"

namespace strokewright::model {

/// What an engine is in the project.
enum class Part : std::uint8_t { Donor, Target, Variant };
std::string_view partKey(Part part);  ///< "donor", "target", "variant"
std::optional<Part> partOf(std::string_view key);

struct Engine {
  std::string name;
  Part part = Part::Target;
  std::string note;
  describe::Entries entries;   ///< never an empty entry
  describe::Lists lists = {};  ///< never an empty list

  /// The entry; an empty one where nothing was entered.
  const describe::Entry& operator[](const describe::Input& input) const;
  /// Puts an entry; an empty one clears.
  void set(const describe::Input& input, describe::Entry entry);

  bool operator==(const Engine&) const = default;
};

struct Project {
  std::string name;
  std::string note;
  std::string drawnFor;  ///< title block
  std::string revision;  ///< title block
  std::vector<Engine> engines;
  describe::Lists lists = {};  ///< what serves all engines; never an empty list
  int referenceDonor = -1;     ///< index of the donor the others are compared with; -1: none

  /// Index of the first target, or -1.
  int target() const;

  bool operator==(const Project&) const = default;
};

}  // namespace strokewright::model
