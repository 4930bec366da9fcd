#include "ui/pages/put_spacer.h"

#include <QStringList>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/units/style.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

namespace {

constexpr int kDecimals = 2;  ///< of a millimetre: what a lathe can be asked for

/// "1.03; 0.95; 0.86 mm", one number where all are equal.
/// @param spacers [m] never empty.
QString spacerText(const Taste& taste, const std::vector<double>& spacers) {
  units::Style millimetres = taste.style();
  millimetres.group = units::UnitGroup::metric();
  QStringList list;
  for (const double spacer : spacers) {
    list += fromCore(millimetres.number(units::Kind::FineLength, spacer, kDecimals));
  }
  if (list.count(list.front()) == list.size()) {
    list = {list.front()};
  }
  return list.join(QStringLiteral("; ")) + QStringLiteral(" mm");
}

/// [m] what is to be made, for each cylinder of the subject.
std::vector<double> spacersToMake(const Desk& desk) {
  const assess::Assessment& assessment = desk.document.assessment();
  std::vector<double> spacers;
  for (int cylinder = 0; cylinder < assessment.evaluation().cylinders(desk.subject()); ++cylinder) {
    spacers.push_back(assessment(desk.subject(), out::spacerToMake, cylinder).value);
  }
  return spacers;
}

}  // namespace

bool canPutSpacer(const Desk& desk) {
  const int engine = desk.subject();
  if (!known(desk, engine, out::spacerToMake)) {
    return false;
  }
  const describe::Entry& entry = desk.document.entry(engine, model::in::spacer);
  return !entry.known() ||
         spacerText(desk.taste, entry.values) != spacerText(desk.taste, spacersToMake(desk));
}

void putSpacer(Desk& desk) {
  desk.document.putComputed(desk.subject(), model::in::spacer,
                            spacerText(desk.taste, spacersToMake(desk)));
}

}  // namespace strokewright::ui
