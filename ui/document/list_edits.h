#pragma once
/// What edits do to the lists of a project, and to its entries wherever they stand.

#include <functional>
#include <vector>

#include "core/model/engine.h"
#include "ui/document/entry_place.h"

namespace strokewright::ui {

/// What is kept in a list; nothing where the list or its engine is not there.
const std::vector<describe::Entries>& itemsOf(const model::Project& project,
                                              const ListPlace& place);

/// The entry; an empty one where nothing was entered.
const describe::Entry& entryAt(const model::Project& project, const EntryPlace& place);

/// Puts an entry; an empty one clears. One behind the last item begins a new one.
void putEntry(model::Project& project, const EntryPlace& place, describe::Entry entry);

/// Changes the items of a list. Empty ones at its end are not kept, nor a list without items.
void changeItems(model::Project& project, const ListPlace& place,
                 const std::function<void(std::vector<describe::Entries>&)>& change);

}  // namespace strokewright::ui
