#include "ui/pages/put_spacer.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "core/deck/results.h"
#include "core/deck/stack.h"
#include "core/model/inputs.h"
#include "core/units/style.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

namespace {

constexpr int kDecimals = 2;  ///< of a millimetre: those of deck::kPlateStep

units::Style inMillimetres(const Taste& taste) {
  units::Style style = taste.style();
  style.group = units::UnitGroup::metric();
  return style;
}

/// "1.03; 0.95; 0.86 ± 0.01 mm", one number where all are equal.
/// @param spacers [m] never empty.
/// @param within [m] what it is made to; 0: not said
QString spacerText(const Taste& taste, const std::vector<double>& spacers, double within) {
  const units::Style millimetres = inMillimetres(taste);
  QStringList list;
  for (const double spacer : spacers) {
    list += fromCore(
        millimetres.number(units::Kind::FineLength, deck::spacerAsMade(spacer), kDecimals));
  }
  if (list.count(list.front()) == list.size()) {
    list = {list.front()};
  }
  QString text = list.join(QStringLiteral("; "));
  if (within > 0.0) {
    text += QStringLiteral(" ± ") + fromCore(millimetres.editable(units::Kind::FineLength, within));
  }
  return text + QStringLiteral(" mm");
}

double plateTolerance(const Desk& desk) {
  return desk.document.evaluation().inputValue(desk.subject(), model::in::plateTolerance);
}

}  // namespace

QString spacerText(const Desk& desk, const std::vector<double>& spacers) {
  return spacerText(desk.taste, spacers, plateTolerance(desk));
}

std::vector<double> spacersToMake(const Desk& desk) {
  const assess::Assessment& assessment = desk.document.assessment();
  std::vector<double> spacers;
  for (int cylinder = 0; cylinder < assessment.evaluation().cylinders(desk.subject()); ++cylinder) {
    spacers.push_back(assessment(desk.subject(), out::spacerToMake, cylinder).value);
  }
  return spacers;
}

QString roundedOff(const Desk& desk, const std::vector<double>& spacers) {
  constexpr double kShown = 1e-7;  // [m] less is in no number that is shown
  const auto whole = [](double spacer) {
    return std::abs(deck::spacerAsMade(spacer) - spacer) < kShown;
  };
  if (std::ranges::all_of(spacers, whole)) return {};
  return QCoreApplication::translate("PutSpacer", "rounded to %1")
      .arg(fromCore(inMillimetres(desk.taste).text(units::Kind::FineLength, deck::kPlateStep)));
}

bool canPutSpacer(const Desk& desk) {
  const int engine = desk.subject();
  if (!known(desk, engine, out::spacerToMake)) {
    return false;
  }
  const describe::Entry& entry = desk.document.entry(engine, model::in::spacer);
  return !entry.known() || spacerText(desk.taste, entry.values, 0.0) !=
                               spacerText(desk.taste, spacersToMake(desk), 0.0);
}

void putSpacer(Desk& desk) {
  desk.document.putComputed(desk.subject(), model::in::spacer,
                            spacerText(desk, spacersToMake(desk)));
}

}  // namespace strokewright::ui
