#include <QCoreApplication>

#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/motion_plot.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("MotionPage", text); }

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
