#include "ui/pages/standing.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using describe::Weight;

bool belongsTo(const PageDescription& page, const describe::Finding& finding) {
  return page.speaksOfAll || (!finding.about.empty() && page.asksFor(*finding.about.front()));
}

PageState stateOf(const Desk& desk, const PageDescription& page) {
  const assess::Assessment& assessment = desk.document.assessment();
  int forbids = 0;
  int objects = 0;
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    for (const describe::Finding& finding : assessment.findings(engine)) {
      if (belongsTo(page, finding)) {
        forbids += finding.weight == Weight::Forbids;
        objects += finding.weight == Weight::Objects;
      }
    }
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
  const auto tr = [](const char* text) {
    return QCoreApplication::translate("Standing", text);
  };
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
  const assess::Assessment& assessment = desk.document.assessment();
  const describe::Evaluation& evaluation = assessment.evaluation();
  LeftToDo left;
  describe::Reads missing;
  for (int engine = 0; engine < evaluation.engines(); ++engine) {
    for (const describe::Finding& finding : assessment.findings(engine)) {
      left.objections += finding.weight != Weight::Remarks;
    }
    for (const describe::Result* result : evaluation.catalogue().results()) {
      const describe::Cell& cell = assessment(engine, *result);
      if (engine == desk.subject() && cell.state == describe::State::Waits) {
        missing |= cell.notes.missing;
      }
    }
  }
  left.missing = static_cast<int>(missing.own.count() + missing.donor.count());
  return left;
}

}  // namespace strokewright::ui
