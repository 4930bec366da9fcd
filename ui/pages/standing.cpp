#include "ui/pages/standing.h"

#include <QCoreApplication>
#include <algorithm>
#include <functional>

#include "core/assess/entry_rules.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using describe::Weight;

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Standing", text); }

bool waits(const Desk& desk, const describe::Result& result) {
  const assess::Assessment& assessment = desk.document.assessment();
  for (int i = 0; i < assessment.evaluation().cylinders(desk.subject()); ++i) {
    if (assessment(desk.subject(), result, i).state == describe::State::Waits) {
      return true;
    }
  }
  return false;
}

/// Nothing that the page speaks of is still to come.
bool decided(const Desk& desk, const PageDescription& page) {
  const auto isKnown = [&desk](const describe::Result* result) {
    return known(desk, desk.subject(), *result);
  };
  const auto isWaiting = [&desk](const describe::Result* result) { return waits(desk, *result); };
  return desk.subject() >= 0 && std::ranges::all_of(page.decides, isKnown) &&
         std::ranges::none_of(page.awaits, isWaiting) &&
         !(page.open != nullptr && page.open(desk)) &&
         !(page.speaksOfAll && !missingEntries(desk).empty());
}

/// What decides the page, or what it awaits where nothing does.
const std::vector<const describe::Result*>& deciding(const PageDescription& page) {
  return page.decides.empty() ? page.awaits : page.decides;
}

bool needed(const Desk& desk, const PageDescription& page) {
  if (page.needed != nullptr) {
    return page.needed(desk);
  }
  const auto none = [&desk](const describe::Result* result) {
    return desk.document.assessment()(desk.subject(), *result).state == describe::State::None;
  };
  const auto& results = deciding(page);
  return desk.subject() < 0 || results.empty() || !std::ranges::all_of(results, none);
}

/// The finding says why the result is refused.
bool refuses(const Desk& desk, const describe::RefusedBecause& because, int engine,
             const describe::Finding& finding) {
  if (finding.weight != Weight::Forbids) {
    return false;
  }
  if (because.input == nullptr) {
    return finding.says.pattern == because.sentence;
  }
  return engine == (because.donors ? desk.donor() : desk.subject()) && !finding.about.empty() &&
         finding.about.front() == because.input;
}

/// The page asks for the entry or the list that the finding names first.
bool asksForFirst(const PageDescription& page, const describe::Finding& finding) {
  if (finding.list != nullptr) {
    return std::ranges::find(page.lists, finding.list) != page.lists.end();
  }
  return !finding.about.empty() && page.asksFor(*finding.about.front());
}

/// How many of the entries that the finding names the page asks for, where it asks for the first.
std::ptrdiff_t asked(const PageDescription& page, const describe::Finding& finding) {
  return !asksForFirst(page, finding)
             ? 0
             : std::ranges::count_if(finding.about, [&page](const describe::Input* input) {
                 return page.asksFor(*input);
               });
}

/// The first page that asks for most of them.
const PageDescription& homeOf(const describe::Finding& finding) {
  return *std::ranges::max_element(
      pages(), {}, [&finding](const PageDescription& page) { return asked(page, finding); });
}

bool sameWords(const describe::Finding& a, const describe::Finding& b) {
  return a.weight == b.weight && a.key == b.key && a.cylinder == b.cylinder && a.says == b.says &&
         a.about == b.about && a.list == b.list && a.item == b.item;
}

/// Those for which it holds, each once, the heaviest first.
std::vector<SharedFinding> sharedWhere(
    const Desk& desk, const std::function<bool(const describe::Finding&, int engine)>& holds) {
  std::vector<SharedFinding> shared;
  for (const int engine : columnsOf(desk)) {
    for (const describe::Finding& finding : desk.document.assessment().findings(engine)) {
      if (!holds(finding, engine) || assess::goesWithoutSaying(finding, desk.taste.style())) {
        continue;
      }
      const auto said = std::find_if(shared.begin(), shared.end(), [&finding](const auto& other) {
        return sameWords(*other.finding, finding);
      });
      if (said == shared.end()) {
        shared.push_back({&finding, {engine}});
      } else if (said->engines.back() != engine) {
        said->engines.push_back(engine);
      }
    }
  }
  std::stable_sort(shared.begin(), shared.end(), [](const auto& a, const auto& b) {
    return a.finding->weight > b.finding->weight;
  });
  return shared;
}

}  // namespace

bool belongsTo(const PageDescription& page, const describe::Finding& finding) {
  if (page.speaksOfAll) {
    return true;
  }
  constexpr std::ptrdiff_t kEnough = 2;
  const bool everywhere = finding.list != nullptr || finding.weight == Weight::Forbids;
  return asksForFirst(page, finding) &&
         (everywhere || asked(page, finding) >= std::min(kEnough, asked(homeOf(finding), finding)));
}

std::optional<describe::RefusedBecause> refusalOf(const Desk& desk, const PageDescription& page) {
  if (desk.subject() < 0) {
    return std::nullopt;
  }
  const assess::Assessment& assessment = desk.document.assessment();
  for (const describe::Result* result : deciding(page)) {
    for (int i = 0; i < assessment.evaluation().cylinders(desk.subject()); ++i) {
      const describe::Cell& cell = assessment(desk.subject(), *result, i);
      if (cell.state == describe::State::Refused) {
        return assessment.evaluation().refusal(cell);
      }
    }
  }
  return std::nullopt;
}

std::vector<SharedFinding> findingsOf(const Desk& desk, const PageDescription& page) {
  const std::optional<describe::RefusedBecause> refused = refusalOf(desk, page);
  return sharedWhere(desk, [&](const describe::Finding& finding, int engine) {
    return belongsTo(page, finding) || (refused && refuses(desk, *refused, engine, finding));
  });
}

Elsewhere elsewhere(const Desk& desk, const PageDescription& page) {
  Elsewhere others;
  const std::vector<SharedFinding> found =
      sharedWhere(desk, [&page](const describe::Finding& finding, int) {
        return asksForFirst(page, finding) && !belongsTo(page, finding);
      });
  for (const SharedFinding& other : found) {
    const PageDescription* home = &homeOf(*other.finding);
    ++others.count;
    if (std::ranges::find(others.pages, home) == others.pages.end()) {
      others.pages.push_back(home);
    }
  }
  return others;
}

PageState stateOf(const Desk& desk, const PageDescription& page) {
  int forbids = 0;
  int objects = 0;
  for (const SharedFinding& shared : findingsOf(desk, page)) {
    forbids += shared.finding->weight == Weight::Forbids;
    objects += shared.finding->weight == Weight::Objects;
  }
  if (forbids > 0) {
    return {Standing::Forbidden, forbids};
  }
  if (refusalOf(desk, page)) {
    return {Standing::Forbidden, 1};
  }
  if (objects > 0) {
    return {Standing::ObjectedTo, objects};
  }
  if (!needed(desk, page)) {
    return {Standing::NotNeeded, 0};
  }
  return {decided(desk, page) ? Standing::Settled : Standing::Open, 0};
}

QString stateText(const PageState& state) {
  switch (state.standing) {
    case Standing::Settled:
      return tr("settled");
    case Standing::NotNeeded:
      return tr("not needed");
    case Standing::Open:
      return tr("open");
    case Standing::ObjectedTo:
      return tr("objected to · %1").arg(state.count);
    case Standing::Forbidden:
      return tr("forbidden · %1").arg(state.count);
  }
  return {};
}

std::vector<MissingEntry> missingEntries(const Desk& desk) {
  if (desk.subject() < 0) {
    return {};
  }
  const assess::Assessment& assessment = desk.document.assessment();
  describe::Reads reads;
  for (const PageDescription& page : pages()) {
    if (page.checks) {
      continue;
    }
    for (const auto* results : {&page.decides, &page.awaits}) {
      for (const describe::Result* result : *results) {
        reads |= assessment(desk.subject(), *result).notes.missing;
      }
    }
  }
  std::vector<MissingEntry> missing;
  for (const describe::Input* input : assessment.evaluation().catalogue().inputs()) {
    const auto number = static_cast<std::size_t>(input->number);
    if (reads.own[number]) {
      missing.push_back({input, desk.subject()});
    }
    if (reads.donor[number]) {
      missing.push_back({input, desk.donor()});
    }
  }
  return missing;
}

LeftToDo leftToDo(const Desk& desk) {
  LeftToDo left;
  static const PageDescription everything{
      .key = {}, .name = {}, .question = {}, .speaksOfAll = true};
  for (const SharedFinding& shared : findingsOf(desk, everything)) {
    if (shared.finding->weight == Weight::Remarks) {
      continue;
    }
    ++left.objections;
    left.ofVariants += std::ranges::none_of(shared.engines, [&desk](int engine) {
      return engine == desk.subject() || engine == desk.donor();
    });
  }
  left.missing = missingEntries(desk);
  return left;
}

QString leftText(const LeftToDo& left) {
  const QString objections = left.objections == 0   ? tr("no objections")
                             : left.objections == 1 ? tr("1 objection")
                                                    : tr("%1 objections").arg(left.objections);
  const std::size_t entries = left.missing.size();
  const QString missing = entries == 0   ? tr("nothing needed is missing")
                          : entries == 1 ? tr("1 entry missing")
                                         : tr("%1 entries missing").arg(entries);
  return objections + u" · "_s + missing;
}

}  // namespace strokewright::ui
