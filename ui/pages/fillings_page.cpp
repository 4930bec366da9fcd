#include <QCoreApplication>
#include <QStringList>

#include "core/burette/results.h"
#include "core/compression/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/fillings_scene.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("FillingsPage", text); }

/// "computed 11.20".
QString beside(const Desk& desk, const QString& words, const describe::Result& result) {
  return known(desk, desk.subject(), result) ? words.arg(figures(desk, desk.subject(), result))
                                             : QString();
}

Answer answer(const Desk& desk) {
  const bool whole = known(desk, desk.subject(), out::ratioByBurette);
  const bool crown = known(desk, desk.subject(), out::crownByBurette);
  Answer said = answerBy(desk, whole || !crown ? out::ratioByBurette : out::crownByBurette);
  if (said.number.isEmpty()) {
    return said;
  }
  said.sentence =
      whole ? joined({tr("compression ratio by burette"),
                      beside(desk, tr("computed %1"), out::compressionRatio),
                      beside(desk, tr("clearance volume differs by %1"), out::clearanceClosure),
                      beside(desk, tr("crown by %1"), out::crownClosure)})
            : joined({tr("crown volume by burette"),
                      beside(desk, tr("differs from the one entered by %1"), out::crownClosure)});
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new SceneView(
      desk.document, desk.taste, tr("Volumes by burette and as computed"),
      [&desk] { return fillingsScene(desk.document, desk.subject()); }, parent);
}

}  // namespace

PageDescription fillingsPage() {
  return {.key = QStringLiteral("fillings"),
          .name = tr("Fillings"),
          .question = tr("What do the fillings say?"),
          .entries = {{tr("Filled above the piston"), {&in::crownFillDepth, &in::crownFill}},
                      {tr("Filled through the plug hole"), {&in::wholeVolume, &in::plugHoleVolume}},
                      {tr("What they are held against"),
                       {&in::chamberVolume, &in::crownVolume, &in::crownVolumeSense,
                        &in::creviceVolume, &in::bore}}},
          .results = {&out::ratioByBurette, &out::clearanceByBurette, &out::clearanceClosure,
                      &out::crownByBurette, &out::crownClosure, &out::clearanceVolume,
                      &out::compressionRatio},
          .decides = {&out::ratioByBurette},
          .checks = true,
          .answer = &answer,
          .picture = &picture,
          .tables = {{.table = &out::volumesFilled, .whenEmpty = tr("nothing is filled yet")}}};
}

}  // namespace strokewright::ui
