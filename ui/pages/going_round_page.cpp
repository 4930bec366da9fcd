#include <QCoreApplication>
#include <QStringList>

#include "core/clearance/results.h"
#include "core/model/inputs.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/drawing_pane.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

constexpr int kBottomDeadCentre = 180;  ///< [°] of the throw

QString tr(const char* text) { return QCoreApplication::translate("GoingRoundPage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::skirtToWeb);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  QStringList words = {tr("between skirt and web at bottom dead centre")};
  if (known(desk, engine, out::skirtOut)) {
    words += tr("the skirt leaves the liner by %1").arg(figures(desk, engine, out::skirtOut));
  }
  if (known(desk, engine, out::rodToLiner)) {
    words += tr("rod to liner %1").arg(figures(desk, engine, out::rodToLiner));
  }
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new DrawingPane(desk, DrawingPane::Shows::Clearances, kBottomDeadCentre, parent);
}

}  // namespace

PageDescription goingRoundPage() {
  return {.key = QStringLiteral("going_round"),
          .name = tr("Going round"),
          .question = tr("Does it go round?"),
          .entries = {{{},
                       {&in::skirtLength, &in::counterweightRadius, &in::linerLength,
                        &in::linerBottomHeight, &in::rodHalfWidth, &in::gudgeonPinDiameter,
                        &in::smallEndBore, &in::smallEndKind}},
                      {tr("Limits behind the objections"),
                       {&in::skirtWebObjects, &in::skirtWebForbids, &in::skirtOutShare,
                        &in::rodLinerLeast, &in::bushWallLeast}}},
          .results = {&out::skirtToWeb, &out::skirtOut, &out::pinAboveLiner, &out::rodToLiner,
                      &out::bushWall},
          .decides = {&out::skirtToWeb, &out::skirtOut},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
