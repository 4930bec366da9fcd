#pragma once
/// Where an entry stands in a project.

#include "core/describe/list.h"

namespace strokewright::ui {

/// A list of an engine, or of the project.
struct ListPlace {
  const describe::List* list = nullptr;
  int engine = -1;  ///< -1: of the project

  bool operator==(const ListPlace&) const = default;
};

/// An input of an engine, or a column of one item of a list.
struct EntryPlace {
  EntryPlace(int ofEngine, const describe::Input& which) : engine(ofEngine), input(&which) {}
  /// @param which counted from 0; one behind the last is an item still to be begun.
  EntryPlace(const ListPlace& place, int which, const describe::Input& column)
      : engine(place.engine), input(&column), list(place.list), item(which) {}

  int engine;
  const describe::Input* input;
  const describe::List* list = nullptr;  ///< nullptr: an input of the engine
  int item = -1;

  ListPlace inList() const { return {list, engine}; }
  bool operator==(const EntryPlace&) const = default;
};

}  // namespace strokewright::ui
