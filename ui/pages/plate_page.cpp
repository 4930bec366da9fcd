#include <QCoreApplication>

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/plate/outline.h"
#include "core/plate/results.h"
#include "ui/document/taste.h"
#include "ui/drawings/plate_view.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("PlatePage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::flatSpacer);
  const int engine = desk.subject();
  if (said.number.isEmpty()) return said;
  said.sentence = tr("one flat plate under all barrels");
  if (known(desk, engine, out::squishWithFlat) && known(desk, engine, out::ratioWithFlat)) {
    said.further = tr("leaves squish gaps of %1 and ratios of %2")
                       .arg(figures(desk, engine, out::squishWithFlat),
                            figures(desk, engine, out::ratioWithFlat));
  }
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new PlateView(desk.document, desk.taste, parent);
}

}  // namespace

PageDescription platePage() {
  return {
      .key = QStringLiteral("plate"),
      .name = tr("Plate"),
      .question = tr("What does the plate look like?"),
      .entries = {{tr("Outline"), {&in::plateBore, &in::plateLength, &in::plateWidth}},
                  {tr("Where the cylinders stand"), {&in::cylinderPitch, &in::cylinderPosition}},
                  {{}, {&in::spacer}}},
      .results = {&out::spacerToMake, &out::flatSpacer, &out::squishWithFlat, &out::ratioWithFlat,
                  &out::taperedSpacer, &out::squishWithTaper, &out::ratioWithTaper},
      .decides = {&out::flatSpacer},
      .answer = &answer,
      .picture = &picture,
      .tables = {{.table = &out::platesCompared}},
      .lists = {&model::list::plateHoles}};
}

}  // namespace strokewright::ui
