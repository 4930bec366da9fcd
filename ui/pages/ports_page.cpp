#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/model/inputs.h"
#include "core/ports/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/plots/ports_scene.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("PortsPage", text); }

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::exhaustDuration);
  if (said.number.isEmpty()) {
    if (said.unlocks == nullptr) {
      said.result = nullptr;  // of a four-stroke there is nothing to explain
    }
    return said;
  }
  QStringList words = {tr("exhaust")};
  const auto add = [&](const QString& word, const describe::Result& result) {
    if (known(desk, desk.subject(), result)) {
      words += word.arg(figures(desk, desk.subject(), result));
    }
  };
  add(tr("transfer %1"), out::transferDuration);
  add(tr("blowdown %1"), out::blowdown);
  add(tr("trapped compression ratio %1"), out::trappedCompressionRatio);
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  auto* view = new SceneView(
      desk.document, desk.taste, tr("When the ports are open"),
      [&desk] { return portsScene(desk.document, desk.subject(), std::max(desk.cylinder(), 0)); },
      parent);
  QObject::connect(&desk, &Desk::cylinderChanged, view, &SceneView::refresh);
  return view;
}

}  // namespace

PageDescription portsPage() {
  return {.key = QStringLiteral("ports"),
          .name = tr("Ports"),
          .question = tr("When do the ports open and shut?"),
          .entries = {{{}, {&in::exhaustPortTop, &in::transferPortTop, &in::crankcaseVolume}}},
          .results = {&out::exhaustDuration, &out::transferDuration, &out::blowdown,
                      &out::exhaustPortTravel, &out::transferPortTravel,
                      &out::trappedCompressionRatio, &out::primaryCompressionRatio,
                      &out::exhaustPortLowering, &out::transferPortLowering},
          .awaits = {&out::exhaustDuration, &out::transferDuration},
          .idles = true,
          .answer = &answer,
          .picture = &picture,
          .tables = {{.table = &out::portTiming}, {.table = &out::portHeights}}};
}

}  // namespace strokewright::ui
