#pragma once
/// Lists of like things that a builder keeps, each described once by the columns of its items.

#include <map>
#include <span>
#include <string_view>
#include <vector>

#include "core/describe/entry.h"

namespace strokewright::describe {

struct List {
  std::string_view key;                   ///< file key and path: "shelf"
  std::string_view name;                  ///< "Gaskets and plates at hand"
  std::string_view item;                  ///< one of them: "gasket or plate"
  std::span<const Input* const> columns;  ///< numbered in this order
  std::string_view about = {};            ///< one line: what belongs on it
};

struct ByKey {
  bool operator()(const List* a, const List* b) const { return a->key < b->key; }
};

/// What is kept, item by item; the entries of an item are those of the list's columns. A list
/// without items is not there.
using Lists = std::map<const List*, std::vector<Entries>, ByKey>;

/// [SI] what stands for a column: the first number entered, else its default; nothing where neither
/// is there, or what was entered is impossible.
std::optional<double> standingIn(const Entries& item, const Input& column);

}  // namespace strokewright::describe
