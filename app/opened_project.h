#pragma once
/// The project a command is about, with what the call enters into it.

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "app/arguments.h"
#include "core/describe/catalogue.h"
#include "core/model/engine.h"

namespace strokewright::app {

struct OpenedProject {
  model::Project project;
  std::optional<int> named;  ///< index of the engine of --engine

  /// Index of the engine that is acted on: the named one, else the target.
  /// @throws Unusable where there is neither.
  int engine() const;
};

/// Reads the file, finds the engine of --engine and enters every --set into engine().
/// What was noted while reading is written to err.
/// @throws Unusable with every place that is wrong.
OpenedProject openProject(const Arguments& arguments, std::ostream& err);

/// The path a name in UTF-8 stands for.
std::filesystem::path pathOf(const std::string& name);

/// Before anything is written to the path: neither a project nor its backup is written over.
/// @throws Unusable where it has the name of one, or is the project itself by whatever name.
void spareProject(const Arguments& arguments, const std::string& path);

/// @throws Unusable with the nearest keys.
const describe::Input& inputOf(std::string_view key);
const describe::Result& resultOf(std::string_view key);
const describe::Table& tableOf(std::string_view key);

}  // namespace strokewright::app
