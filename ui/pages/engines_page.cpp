#include <QCoreApplication>

#include "core/chamber/results.h"
#include "core/firing/layouts.h"
#include "core/masses/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("EnginesPage", text); }

QString classWords(const Desk& desk, int engine) {
  if (!known(desk, engine, out::classMargin)) {
    return {};
  }
  const double margin = desk.document.assessment()(engine, out::classMargin).value;
  const double limit = desk.document.assessment().evaluation().inputValue(engine, in::classLimit);
  const QString words = margin < 0.0 ? tr("over the class limit of %1: margin %2")
                                     : tr("inside the class limit of %1: margin %2");
  return words.arg(desk.taste.value(in::classLimit, limit),
                   figures(desk, engine, out::classMargin));
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::displacement);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  const QString margin = classWords(desk, engine);
  said.sentence = margin.isEmpty()
                      ? tr("displacement of %1").arg(desk.document.engineName(engine))
                      : tr("displacement of %1, %2").arg(desk.document.engineName(engine), margin);
  return said;
}

}  // namespace

PageDescription enginesPage() {
  return {.key = QStringLiteral("engines"),
          .name = tr("Engines"),
          .question = tr("What is it, and what should it become?"),
          .entries = {{tr("Layout and purpose"),
                       {&in::cylinderCount, &in::cycle, &in::ignition, &in::use, &in::classLimit,
                        &in::wantedSpeed, &in::provenSpeed}},
                      {tr("Bore, throw, rod, piston"),
                       {&in::bore, &in::crankThrow, &in::stroke, &in::rodLength,
                        &in::compressionHeight, &in::cylinderOffset, &in::cylinderOffsetSide,
                        &in::pinOffset, &in::pinOffsetSide}},
                      {tr("Fits"),
                       {&in::gudgeonPinDiameter, &in::smallEndBore, &in::smallEndKind,
                        &in::bigEndPinDiameter, &in::bigEndEyeDiameter, &in::bigEndWidth}},
                      {tr("Masses"),
                       {&in::pistonMass, &in::ringSetMass, &in::gudgeonPinMass, &in::circlipMass,
                        &in::smallEndBearingMass, &in::rodSmallEndMass, &in::rodBigEndMass,
                        &in::rodMass, &in::bigEndCageMass, &in::crankpinMass, &in::balanceFactor}},
                      {tr("Limits behind the objections"), {&in::rodEndsDifference}}},
          .results = {&out::crankLayout, &out::displacement, &out::classMargin, &out::sweptVolume,
                      &out::boreStrokeRatio, &out::crankRadius, &out::trueStroke, &out::rodRatio,
                      &out::largestRodAngle, &out::netOffset, &out::reciprocatingMass,
                      &out::rotatingMass, &out::bobWeight, &out::staticMoment},
          .decides = {&out::displacement},
          .namesEngines = true,
          .answer = &answer};
}

}  // namespace strokewright::ui
