#pragma once
/// How a page stands: its state in the way through, and the findings that belong to it.

#include <optional>

#include "core/describe/evaluation.h"
#include "core/describe/finding.h"
#include "ui/pages/page_description.h"

namespace strokewright::ui {

enum class Standing { Settled, NotNeeded, Open, ObjectedTo, Forbidden };

struct PageState {
  Standing standing = Standing::Open;
  int count = 0;  ///< of what objects or forbids
  bool operator==(const PageState&) const = default;
};

/// A finding belongs to the pages that ask for the entry it names first; what does not forbid
/// alone to those of them that ask for a second one of those it names, where any does.
bool belongsTo(const PageDescription& page, const describe::Finding& finding);

/// What speaks of an entry of the page and belongs elsewhere.
struct Elsewhere {
  std::size_t count = 0;
  std::vector<const PageDescription*> pages = {};  ///< one for each, none twice
  bool operator==(const Elsewhere&) const = default;
};
Elsewhere elsewhere(const Desk& desk, const PageDescription& page);

/// Why what decides the page is refused for the subject; nothing where none is.
std::optional<describe::RefusedBecause> refusalOf(const Desk& desk, const PageDescription& page);

/// Forbidden or objected to by what belongs to the page, forbidden where what decides it is
/// refused; not needed where nothing of it applies; else open while for the subject something
/// that decides it is not known, something it awaits waits, or, where it speaks of the whole
/// project, an entry is missing; else settled.
PageState stateOf(const Desk& desk, const PageDescription& page);

/// "settled", "objected to · 2".
QString stateText(const PageState& state);

/// What several engines have in common is said once.
struct SharedFinding {
  const describe::Finding* finding;  ///< of the first of them
  std::vector<int> engines;
};

/// What belongs to the page and what refuses its answer, the heaviest first, in the order of the
/// engines' columns.
/// The assessment owns the findings: good until the next edit.
std::vector<SharedFinding> findingsOf(const Desk& desk, const PageDescription& page);

/// An entry that what decides a page waits for, for the subject.
struct MissingEntry {
  const describe::Input* input;
  int engine;  ///< the subject, or the donor
};
std::vector<MissingEntry> missingEntries(const Desk& desk);

/// What is left to do in the whole project.
struct LeftToDo {
  int objections = 0;  ///< and what is forbidden
  int ofVariants = 0;  ///< of them those of neither subject nor donor
  std::vector<MissingEntry> missing;
};
LeftToDo leftToDo(const Desk& desk);

/// "2 objections · 3 entries missing".
QString leftText(const LeftToDo& left);

}  // namespace strokewright::ui
