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

/// "1.03; 0.95; 0.86 mm".
QString spacerText(const Desk& desk) {
  const assess::Assessment& assessment = desk.document.assessment();
  const int engine = desk.subject();
  units::Style millimetres = desk.taste.style();
  millimetres.group = units::UnitGroup::metric();
  const auto number = [&](int cylinder) {
    return fromCore(millimetres.number(
        units::Kind::FineLength, assessment(engine, out::spacerToMake, cylinder).value, kDecimals));
  };
  QStringList list;
  for (int cylinder = 0; cylinder < assessment.evaluation().cylinders(engine); ++cylinder) {
    list += number(cylinder);
  }
  if (list.count(list.front()) == list.size()) {
    list = {list.front()};
  }
  return list.join(QStringLiteral("; ")) + QStringLiteral(" mm");
}

}  // namespace

bool canPutSpacer(const Desk& desk) {
  const int engine = desk.subject();
  return known(desk, engine, out::spacerToMake) &&
         desk.document.entry(engine, model::in::spacer).text != spacerText(desk).toStdString();
}

void putSpacer(Desk& desk) {
  desk.document.putComputed(desk.subject(), model::in::spacer, spacerText(desk));
}

}  // namespace strokewright::ui
