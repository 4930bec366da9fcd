#include <QCoreApplication>
#include <QStringList>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/running/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/running_scene.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("RunningPage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::runningSquish);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  QStringList words = {tr("left at %1").arg(figures(desk, engine, out::workingSpeed)),
                       tr("cold %1").arg(figures(desk, engine, out::squishGap))};
  if (known(desk, engine, out::overRevSquish)) {
    words += tr("%1 at over-rev").arg(figures(desk, engine, out::overRevSquish));
  }
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  auto* view = new SceneView(
      desk.document, desk.taste, tr("Squish gap against engine speed"),
      [&desk] { return runningScene(desk.document, desk.subject(), desk.cylinder()); }, parent);
  QObject::connect(&desk, &Desk::cylinderChanged, view, &SceneView::refresh);
  return view;
}

}  // namespace

PageDescription runningPage() {
  return {.key = QStringLiteral("running"),
          .name = tr("Running gap"),
          .question = tr("How close does it come when it runs?"),
          .entries = {{tr("Speeds and stack"),
                       {&in::wantedSpeed, &in::overRevShare, &in::spacer, &in::squishKnownBy,
                        &in::measuredSquish}},
                      {tr("Bearings"),
                       {&in::mainClearance, &in::bigEndClearance, &in::gudgeonPinClearance}},
                      {tr("Rod"), {&in::rodModulus, &in::rodLeastSection}},
                      {tr("Heat"),
                       {&in::caseWarming, &in::rodWarming, &in::crankWarming, &in::pistonWarming,
                        &in::caseMaterial, &in::caseExpansion, &in::rodExpansion,
                        &in::crankExpansion, &in::pistonExpansion}},
                      {tr("Limits behind the objections"),
                       {&in::runningSquishLeast, &in::runningSquishEstimate}}},
          .results = {&out::runningSquish, &out::squishGap, &out::rodStretch,
                      &out::clearanceTakenUp, &out::thermalOpening, &out::overRevSpeed,
                      &out::overRevSquish, &out::closingSpeed},
          .decides = {&out::runningSquish},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
