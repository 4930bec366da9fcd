#include <QCoreApplication>
#include <QStringList>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/spread/tables.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/measure_first.h"
#include "ui/pages/table_pane.h"
#include "ui/plots/likelihood_plot.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("LikelihoodPage", text); }

/// The cylinder shown, else the one whose gap is the likeliest to be too small.
CylinderShown shownOf(const Desk& desk) {
  const int engine = desk.subject();
  if (engine < 0) return {};
  const bool chosen =
      desk.cylinder() >= 0 && desk.cylinder() < desk.document.evaluation().cylinders(engine);
  return {engine, chosen ? desk.cylinder() : cylinderLikeliestTooClose(desk.document, engine)};
}

/// "1.2 %"; what would be no more than nought in these digits is said to be under the least of
/// them.
QString chanceText(const Taste& taste, double chance) {
  constexpr double kLeastSaid = 0.001;
  return chance > 0.0 && chance < kLeastSaid
             ? tr("under %1").arg(taste.shown(Kind::Share, kLeastSaid))
             : taste.shown(Kind::Share, chance);
}

/// "1.2 % that it is under the least of 0.80 mm in cylinder 2".
QString chanceWords(const Desk& desk) {
  const CylinderShown which = shownOf(desk);
  const auto chance = chanceUnderLeast(desk.document, which);
  if (!chance) return {};
  const describe::Evaluation& evaluation = desk.document.evaluation();
  const QString words =
      tr("%1 that it is under %2")
          .arg(chanceText(desk.taste, *chance),
               desk.taste.shown(Kind::FineLength,
                                evaluation.inputValue(which.engine, in::squishLeast)));
  if (evaluation.cylinders(which.engine) == 1) return words;
  return tr("%1 in cylinder %2")
      .arg(words)
      .arg(model::numberOfCylinder(evaluation, which.engine, which.cylinder));
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::squishGap);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  said.sentence = joined({tr("squish gap"), chanceWords(desk)});
  said.further.clear();
  if (known(desk, engine, out::compressionRatio)) {
    said.further = tr("compression ratio %1 %2")
                       .arg(figures(desk, engine, out::compressionRatio),
                            plusMinus(desk, engine, out::compressionRatio).replace(u'\n', u' '));
  }
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  const auto which = [&desk] { return shownOf(desk); };
  auto* plot = new LikelihoodPlot(desk.document, desk.taste, which, parent);
  auto* first = new MeasureFirst(desk, which, plot);
  plot->addBelow(first);
  plot->addBelow(
      makeTablePane(desk, {.table = &out::likelihood}, plot, [which] { return which().cylinder; }));
  QObject::connect(&desk, &Desk::cylinderChanged, plot, &LikelihoodPlot::refresh);
  QObject::connect(&desk, &Desk::cylinderChanged, first, &MeasureFirst::changed);
  return plot;
}

}  // namespace

PageDescription likelihoodPage() {
  return {.key = QStringLiteral("likelihood"),
          .name = tr("How sure"),
          .question = tr("How sure is the gap, and the ratio?"),
          .entries = {{tr("What they are computed from"),
                       {&in::seatHeight, &in::barrelHeight, &in::deckHeight, &in::spacer,
                        &in::baseGasket, &in::headGasket, &in::headRecess, &in::linerProud,
                        &in::crownRise, &in::crankThrow, &in::stroke, &in::rodLength,
                        &in::compressionHeight, &in::bore, &in::chamberVolume, &in::crownVolume,
                        &in::creviceVolume}},
                      {tr("What they are held against"),
                       {&in::squishLeast, &in::wantedSquish, &in::squishMost,
                        &in::wantedCompressionRatio}}},
          .results = {&out::squishGap, &out::compressionRatio},
          .decides = {&out::squishGap, &out::compressionRatio},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
