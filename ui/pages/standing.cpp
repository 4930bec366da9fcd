#include "ui/pages/standing.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/pages/answering.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using describe::Weight;

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Standing", text); }

bool sameWords(const describe::Finding& a, const describe::Finding& b) {
  return a.weight == b.weight && a.key == b.key && a.cylinder == b.cylinder && a.says == b.says &&
         a.about == b.about;
}

}  // namespace

bool belongsTo(const PageDescription& page, const describe::Finding& finding) {
  return page.speaksOfAll || (!finding.about.empty() && page.asksFor(*finding.about.front()));
}

std::vector<SharedFinding> findingsOf(const Desk& desk, const PageDescription& page) {
  std::vector<SharedFinding> shared;
  for (const int engine : columnsOf(desk)) {
    for (const describe::Finding& finding : desk.document.assessment().findings(engine)) {
      if (!belongsTo(page, finding)) {
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
  if (objects > 0) {
    return {Standing::ObjectedTo, objects};
  }
  const bool decided = std::all_of(
      page.decides.begin(), page.decides.end(),
      [&desk](const describe::Result* result) { return known(desk, desk.subject(), *result); });
  return {decided ? Standing::Settled : Standing::Open, 0};
}

QString stateText(const PageState& state) {
  switch (state.standing) {
    case Standing::Settled:
      return tr("settled");
    case Standing::Open:
      return tr("open");
    case Standing::ObjectedTo:
      return tr("objected to · %1").arg(state.count);
    case Standing::Forbidden:
      return tr("forbidden · %1").arg(state.count);
  }
  return {};
}

LeftToDo leftToDo(const Desk& desk) {
  LeftToDo left;
  static const PageDescription everything{
      .key = {}, .name = {}, .question = {}, .speaksOfAll = true};
  for (const SharedFinding& shared : findingsOf(desk, everything)) {
    left.objections += shared.finding->weight != Weight::Remarks;
  }
  if (desk.subject() < 0) {
    return left;
  }
  const assess::Assessment& assessment = desk.document.assessment();
  describe::Reads missing;
  for (const describe::Result* result : assessment.evaluation().catalogue().results()) {
    const describe::Cell& cell = assessment(desk.subject(), *result);
    if (cell.state == describe::State::Waits) {
      missing |= cell.notes.missing;
    }
  }
  left.missing = static_cast<int>(missing.own.count() + missing.donor.count());
  return left;
}

QString leftText(const LeftToDo& left) {
  const QString objections = left.objections == 0   ? tr("no objections")
                             : left.objections == 1 ? tr("1 objection")
                                                    : tr("%1 objections").arg(left.objections);
  const QString missing = left.missing == 0   ? tr("nothing missing")
                          : left.missing == 1 ? tr("1 entry missing")
                                              : tr("%1 entries missing").arg(left.missing);
  return objections + u" · "_s + missing;
}

}  // namespace strokewright::ui
