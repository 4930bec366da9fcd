#include <QCoreApplication>
#include <QStringList>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/bore_stroke_map.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("BoreStrokePage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::displacement);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  const double bore = desk.document.assessment().evaluation().inputValue(engine, in::bore);
  QStringList words = {
      tr("displacement with a bore of %1 and a true stroke of %2")
          .arg(desk.taste.value(in::bore, bore), figures(desk, engine, out::trueStroke))};
  if (known(desk, engine, out::classMargin)) {
    words += tr("class margin %1").arg(figures(desk, engine, out::classMargin));
  }
  if (known(desk, engine, out::revCeiling)) {
    words += tr("rev ceiling %1").arg(figures(desk, engine, out::revCeiling));
  }
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new BoreStrokeMap(desk.document, desk.taste, parent);
}

}  // namespace

PageDescription boreStrokePage() {
  return {.key = QStringLiteral("bore_stroke"),
          .name = tr("Bore × stroke"),
          .question = tr("Which bore, which stroke?"),
          .entries = {{{},
                       {&in::bore, &in::crankThrow, &in::stroke, &in::cylinderCount,
                        &in::classLimit, &in::wantedSpeed, &in::meanPistonSpeedLimit}}},
          .results = {&out::displacement, &out::classMargin, &out::boreStrokeRatio,
                      &out::meanPistonSpeed, &out::peakAcceleration, &out::rodRatio,
                      &out::compressionRatio, &out::revCeiling},
          .decides = {&out::displacement, &out::meanPistonSpeed},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
