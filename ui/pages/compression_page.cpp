#include <QCoreApplication>
#include <QStringList>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/cranking/results.h"
#include "core/cutting/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/drawing_pane.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("CompressionPage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::compressionRatio);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  QStringList words = {tr("clearance volume %1").arg(figures(desk, engine, out::clearanceVolume))};
  if (known(desk, engine, out::effectiveCompressionRatio)) {
    words += tr("effective, from inlet closing, %1")
                 .arg(figures(desk, engine, out::effectiveCompressionRatio));
  }
  if (known(desk, engine, out::squishGap)) {
    words += tr("squish gap %1").arg(figures(desk, engine, out::squishGap));
  }
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new DrawingPane(desk, DrawingPane::Shows::Section, 0, parent);
}

}  // namespace

PageDescription compressionPage() {
  return {
      .key = QStringLiteral("compression"),
      .name = tr("Compression"),
      .question = tr("How hard does it squeeze?"),
      .entries = {{tr("Volumes"),
                   {&in::chamberVolume, &in::crownVolume, &in::crownVolumeSense, &in::creviceVolume,
                    &in::headGasket, &in::headGasketBore, &in::headGasketVolume,
                    &in::headGasketTaper, &in::bore, &in::spacer}},
                  {tr("Inlet closing"), {&in::inletClosing, &in::inletClosingLift}},
                  {tr("Wanted"), {&in::stackDriver, &in::wantedCompressionRatio}},
                  {tr("What can be cut"),
                   {&in::chamberFaceArea, &in::headLand, &in::crownCutArea, &in::crownThickness}},
                  {tr("Cranking"),
                   {&in::ambientPressure, &in::crankingExponent, &in::crankingPressureRead}},
                  {tr("Limits behind the objections"),
                   {&in::ratioSpread, &in::ratioLeast, &in::ratioMost, &in::headLandLeast,
                    &in::crownLeftShare}}},
      .results = {&out::compressionRatio,
                  &out::compressionRatioWithoutCrevice,
                  &out::effectiveCompressionRatio,
                  &out::clearanceVolume,
                  &out::sweptVolume,
                  &out::volumesBesideDeck,
                  &out::volumesBesideStack,
                  &out::gasketVolume,
                  &out::deckVolume,
                  &out::ratioPerTenth,
                  &out::inletClosingTravel,
                  &out::ratioSpread,
                  &out::crankingPressure,
                  &out::wantedClearanceVolume,
                  &out::volumeToTakeAway,
                  &out::headSkim,
                  &out::headLandLeft,
                  &out::squishAfterSkim,
                  &out::crownCut,
                  &out::crownLeft,
                  &out::crownLeftShare},
      .decides = {&out::compressionRatio},
      .answer = &answer,
      .picture = &picture,
      .tables = {{.table = &out::volumeAndRatio}}};
}

}  // namespace strokewright::ui
