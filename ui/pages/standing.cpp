#include "ui/pages/standing.h"

#include <QCoreApplication>
#include <algorithm>

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

bool sameWords(const describe::Finding& a, const describe::Finding& b) {
  return a.weight == b.weight && a.key == b.key && a.cylinder == b.cylinder && a.says == b.says &&
         a.about == b.about && a.list == b.list && a.item == b.item;
}

}  // namespace

bool belongsTo(const PageDescription& page, const describe::Finding& finding) {
  if (page.speaksOfAll) {
    return true;
  }
  if (finding.list != nullptr) {
    return std::ranges::find(page.lists, finding.list) != page.lists.end();
  }
  return !finding.about.empty() && page.asksFor(*finding.about.front());
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
  std::vector<SharedFinding> shared;
  const std::optional<describe::RefusedBecause> refused = refusalOf(desk, page);
  for (const int engine : columnsOf(desk)) {
    for (const describe::Finding& finding : desk.document.assessment().findings(engine)) {
      const bool ofPage =
          belongsTo(page, finding) || (refused && refuses(desk, *refused, engine, finding));
      if (!ofPage || assess::goesWithoutSaying(finding, desk.taste.style())) {
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
  const QString missing = entries == 0   ? tr("nothing missing")
                          : entries == 1 ? tr("1 entry missing")
                                         : tr("%1 entries missing").arg(entries);
  return objections + u" · "_s + missing;
}

}  // namespace strokewright::ui
