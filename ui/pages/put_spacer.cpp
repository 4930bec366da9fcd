#include "ui/pages/put_spacer.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <numeric>

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

namespace in = model::in;

constexpr int kDecimals = 2;           ///< of a millimetre: those of deck::kPlateStep
constexpr double kNoPlate = 0.005e-3;  ///< [m] what is thinner is none

QString tr(const char* text) { return QCoreApplication::translate("PutSpacer", text); }

/// "take 1.35 mm off", "a head gasket of 1.15 mm would meet it"; empty where it is a plate.
/// @param thickness [m] that the sum asks for in this cylinder
QString insteadOfPlate(const Desk& desk, int cylinder, double thickness) {
  const describe::Evaluation& evaluation = desk.document.evaluation();
  const auto value = [&](const describe::Input& input) {
    return evaluation.inputValue(desk.subject(), input, cylinder);
  };
  const auto fine = [&](double length) {
    return desk.taste.shown(units::Kind::FineLength, length);
  };
  if (std::abs(thickness) < kNoPlate) return tr("no plate");
  const bool thin = std::abs(thickness) < value(in::spacerLeast);
  const bool leftOut =
      evaluation.inputGiven(desk.subject(), in::spacer, cylinder) && value(in::spacer) == 0.0;
  if (thickness > 0.0 && !(thin && leftOut)) return {};
  const double gasket = value(in::headGasket) + thickness;
  const bool ofTheGap =
      value(in::stackDriver) == static_cast<double>(model::StackDriver::SquishGap);
  if (thin && ofTheGap && gasket > 0.0) {
    return tr("a head gasket of %1 would meet it").arg(fine(gasket));
  }
  return thickness < 0.0 ? tr("take %1 off").arg(fine(-thickness))
                         : tr("a shim of %1, or a gasket thicker by it").arg(fine(thickness));
}

/// Counted from 0; where a result is one for the engine, the first.
std::vector<int> cylindersShown(const Desk& desk, const describe::Result& result) {
  const assess::Assessment& assessment = desk.document.assessment();
  const int cylinders = assessment.evaluation().cylinders(desk.subject());
  if (assessment.sameInAll(desk.subject(), result)) return {0};
  if (desk.cylinder() >= 0 && desk.cylinder() < cylinders) return {desk.cylinder()};
  std::vector<int> all(static_cast<std::size_t>(cylinders));
  std::iota(all.begin(), all.end(), 0);
  return all;
}

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
  return desk.document.evaluation().inputValue(desk.subject(), in::plateTolerance);
}

}  // namespace

std::vector<double> thicknessesShown(const Desk& desk, const describe::Result& result) {
  std::vector<double> thicknesses;
  for (const int cylinder : cylindersShown(desk, result)) {
    thicknesses.push_back(desk.document.assessment()(desk.subject(), result, cylinder).value);
  }
  return thicknesses;
}

bool sayWherePlatesAreNone(Answer& said, const Desk& desk, const describe::Result& result) {
  const std::vector<int> cylinders = cylindersShown(desk, result);
  QStringList numbers;
  QStringList words;
  for (const int cylinder : cylinders) {
    const double thickness = desk.document.assessment()(desk.subject(), result, cylinder).value;
    const QString instead = insteadOfPlate(desk, cylinder, thickness);
    if (instead.isEmpty()) {
      numbers += desk.taste.number(result.kind, thickness, result.decimals);
      continue;
    }
    numbers += QStringLiteral("–");
    const int number =
        model::numberOfCylinder(desk.document.evaluation(), desk.subject(), cylinder);
    words += cylinders.size() == 1 ? instead : tr("cylinder %1: %2").arg(number).arg(instead);
  }
  if (words.isEmpty()) return false;
  said.plusMinus.clear();
  if (words.size() == numbers.size()) {
    said.number = tr("none");
    said.sentence = joined(words);
    said.further.clear();
    return true;
  }
  said.number = numbers.join(QStringLiteral(" · ")) + u'\u00A0' + desk.taste.unit(result.kind);
  said.further = joined({joined(words), said.further});
  return false;
}

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
  return tr("rounded to %1")
      .arg(fromCore(inMillimetres(desk.taste).text(units::Kind::FineLength, deck::kPlateStep)));
}

bool canPutSpacer(const Desk& desk) {
  const int engine = desk.subject();
  if (!known(desk, engine, out::spacerToMake)) {
    return false;
  }
  const std::vector<double> spacers = spacersToMake(desk);
  for (std::size_t i = 0; i < spacers.size(); ++i) {
    if (!insteadOfPlate(desk, static_cast<int>(i), spacers[i]).isEmpty()) return false;
  }
  const describe::Entry& entry = desk.document.entry(engine, in::spacer);
  return !entry.known() ||
         spacerText(desk.taste, entry.values, 0.0) != spacerText(desk.taste, spacers, 0.0);
}

void putSpacer(Desk& desk) {
  desk.document.putComputed(desk.subject(), in::spacer, spacerText(desk, spacersToMake(desk)));
}

}  // namespace strokewright::ui
