#include <QCoreApplication>

#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/motion_plot.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("MotionPage", text); }

/// The donor beside it, and what he would do at the same speed: faster for turning faster is none
/// of the stroke's doing.
QString atTheSameSpeed(const Desk& desk) {
  const int donor = desk.donor();
  const int engine = desk.subject();
  const QString speed = figures(desk, engine, out::workingSpeed);
  const bool apart = donor >= 0 && donor != engine && known(desk, donor, out::meanPistonSpeed);
  if (!apart || figures(desk, donor, out::workingSpeed) == speed) {
    return besideDonor(desk, out::meanPistonSpeed);
  }
  const assess::Assessment& assessment = desk.document.assessment();
  const QString his =
      tr("donor %1 at %2")
          .arg(figures(desk, donor, out::meanPistonSpeed), figures(desk, donor, out::workingSpeed));
  if (!assessment.sameInAll(donor, out::meanPistonSpeed) ||
      !assessment.sameInAll(engine, out::meanPistonSpeed)) {
    return his;
  }
  describe::Evaluation trial = assessment.evaluation();
  trial.put(donor, in::wantedSpeed, -1, assessment(engine, out::workingSpeed).value);
  const double then = trial.fresh(donor, out::meanPistonSpeed).value;
  const double now = assessment(engine, out::meanPistonSpeed).value;
  return tr("%1; at %2 it would be %3, difference %4")
      .arg(his, speed, desk.taste.value(out::meanPistonSpeed, then),
           desk.taste.difference(units::Kind::Velocity, now - then));
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::meanPistonSpeed);
  const int engine = desk.subject();
  if (said.number.isEmpty() || !known(desk, engine, out::peakAcceleration)) {
    return said;
  }
  said.sentence = tr("mean piston speed at %1: at most %2 at %3, and an acceleration of %4")
                      .arg(figures(desk, engine, out::workingSpeed),
                           figures(desk, engine, out::peakPistonSpeed),
                           figures(desk, engine, out::peakPistonSpeedAngle),
                           figures(desk, engine, out::peakAcceleration));
  said.further = atTheSameSpeed(desk);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new MotionPlot(desk.document, desk.taste, parent);
}

}  // namespace

PageDescription motionPage() {
  return {.key = QStringLiteral("motion"),
          .name = tr("Motion"),
          .question = tr("How does the piston move?"),
          .entries = {{{},
                       {&in::wantedSpeed, &in::provenSpeed, &in::crankThrow, &in::stroke,
                        &in::rodLength, &in::cylinderOffset, &in::cylinderOffsetSide,
                        &in::pinOffset, &in::pinOffsetSide}},
                      {tr("Limits behind the objections"),
                       {&in::rodRatioLimit, &in::rodRatioLow, &in::rodRatioHigh}}},
          .results = {&out::workingSpeed, &out::meanPistonSpeed, &out::peakPistonSpeed,
                      &out::peakPistonSpeedAngle, &out::peakAcceleration,
                      &out::peakAccelerationAngle, &out::peakAccelerationPerSpeed2,
                      &out::trueStroke, &out::rodRatio, &out::obliquity, &out::largestRodAngle,
                      &out::topDeadCentreAngle, &out::bottomDeadCentreAngle},
          .decides = {&out::meanPistonSpeed, &out::peakAcceleration},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
