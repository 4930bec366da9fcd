#include <QCoreApplication>
#include <QStringList>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/plate/results.h"
#include "core/survey/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/survey_scene.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("SurveyPage", text); }

/// How the seats lie, and what one flat plate would leave.
QString seatsAndPlate(const Desk& desk, int engine) {
  QStringList words;
  if (known(desk, engine, out::seatRisePerPitch)) {
    words += tr("seats rise %1 per pitch").arg(figures(desk, engine, out::seatRisePerPitch));
  }
  if (known(desk, engine, out::squishWithFlat)) {
    words +=
        tr("squish gap over one flat plate %1").arg(figures(desk, engine, out::squishWithFlat));
  }
  return joined(words);
}

QString betweenTheWays(const Desk& desk, int engine) {
  return tr("between deck height by the stack, %1, and by crown and dial gauge, %2")
      .arg(figures(desk, engine, out::deckHeight), figures(desk, engine, out::heightByCrown));
}

/// While the subject waits, how the two ways agree on the donor.
Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::deckClosure);
  const int engine = desk.subject();
  if (!said.number.isEmpty()) {
    said.sentence = betweenTheWays(desk, engine);
    said.further = seatsAndPlate(desk, engine);
  } else if (const int donor = desk.donor(); known(desk, donor, out::deckClosure)) {
    said.number = figures(desk, donor, out::deckClosure);
    said.plusMinus = plusMinus(desk, donor, out::deckClosure);
    said.further = said.sentence;
    said.sentence = tr("on the donor, %1").arg(betweenTheWays(desk, donor));
  }
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new SceneView(
      desk.document, desk.taste, tr("Barrel seats and plates"),
      [&desk] { return surveyScene(desk.document, desk.subject()); }, parent);
}

}  // namespace

PageDescription surveyPage() {
  return {
      .key = QStringLiteral("survey"),
      .name = tr("Survey"),
      .question = tr("Do the two ways to the deck agree, and how do the seats lie?"),
      .entries = {{tr("What stands on the case"),
                   {&in::seatHeight, &in::barrelHeight, &in::deckHeight, &in::baseGasket,
                    &in::secondBaseGasket, &in::thirdBaseGasket, &in::spacer,
                    &in::caseMeasuredWarmer, &in::caseMaterial}},
                  {tr("By crown and dial gauge"),
                   {&in::measuredDeckClearance, &in::measuredSquish}},
                  {tr("Where the cylinders stand"),
                   {&in::cylinderPitch, &in::cylinderPosition, &in::seatAcross,
                    &in::seatAcrossWidth}},
                  {tr("Limits behind the objections"), {&in::seatSlopeMost}}},
      .results = {&out::deckClosure, &out::squishClosure, &out::heightByCrown, &out::deckHeight,
                  &out::cylinderPosition, &out::seatLevel, &out::seatOffPlane, &out::seatSlopeAlong,
                  &out::seatSlopeAcross, &out::seatRisePerPitch, &out::flatSpacer,
                  &out::squishWithFlat, &out::ratioWithFlat, &out::taperAtFirst, &out::taperAlong,
                  &out::taperedSpacer, &out::squishWithTaper, &out::ratioWithTaper},
      .decides = {&out::deckClosure},
      .checks = true,
      .answer = &answer,
      .picture = &picture,
      .tables = {{.table = &out::seats, .tab = tr("Seats")},
                 {.table = &out::readings,
                  .whenEmpty = tr("nothing is measured yet"),
                  .tab = tr("Readings")}}};
}

}  // namespace strokewright::ui
