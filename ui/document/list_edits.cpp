#include "ui/document/list_edits.h"

#include <utility>

#include "core/model/lists.h"

namespace strokewright::ui {
namespace {

using describe::Entries;
using describe::Entry;
using model::Project;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

}  // namespace

const std::vector<Entries>& itemsOf(const Project& project, const ListPlace& place) {
  static const std::vector<Entries> nothing;
  if (place.engine >= std::ssize(project.engines)) return nothing;
  const describe::Lists& lists =
      place.engine < 0 ? project.lists : project.engines[index(place.engine)].lists;
  const auto found = lists.find(place.list);
  return found == lists.end() ? nothing : found->second;
}

const Entry& entryAt(const Project& project, const EntryPlace& place) {
  if (place.list == nullptr) return project.engines[index(place.engine)][*place.input];
  static const Entry nothing;
  const std::vector<Entries>& items = itemsOf(project, place.inList());
  if (place.item >= std::ssize(items)) return nothing;
  const Entries& item = items[index(place.item)];
  const auto found = item.find(place.input);
  return found == item.end() ? nothing : found->second;
}

void putEntry(Project& project, const EntryPlace& place, Entry entry) {
  if (place.list == nullptr) {
    project.engines[index(place.engine)].set(*place.input, std::move(entry));
    return;
  }
  changeItems(project, place.inList(), [&](std::vector<Entries>& items) {
    if (place.item >= std::ssize(items)) items.resize(index(place.item) + 1);
    Entries& item = items[index(place.item)];
    if (entry.empty()) {
      item.erase(place.input);
    } else {
      item.insert_or_assign(place.input, std::move(entry));
    }
  });
}

void changeItems(Project& project, const ListPlace& place,
                 const std::function<void(std::vector<Entries>&)>& change) {
  model::projectLists();  // the order of entries needs numbered columns
  model::engineLists();
  describe::Lists& lists =
      place.engine < 0 ? project.lists : project.engines[index(place.engine)].lists;
  std::vector<Entries>& items = lists[place.list];
  change(items);
  while (!items.empty() && items.back().empty()) items.pop_back();
  if (items.empty()) lists.erase(place.list);
}

}  // namespace strokewright::ui
