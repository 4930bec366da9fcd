#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/spread/distribution.h"
#include "core/spread/tables.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/measure_first.h"
#include "ui/plots/likelihood_plot.h"
#include "ui/widgets/table_view.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("LikelihoodPage", text); }

/// The cylinder shown, else the one whose gap is the least.
int cylinderOf(const Desk& desk, int engine) {
  const assess::Assessment& assessment = desk.document.assessment();
  const int count = assessment.evaluation().cylinders(engine);
  if (desk.cylinder() >= 0 && desk.cylinder() < count) {
    return desk.cylinder();
  }
  int least = 0;
  for (int i = 1; i < count; ++i) {
    if (assessment(engine, out::squishGap, i).value <
        assessment(engine, out::squishGap, least).value) {
      least = i;
    }
  }
  return least;
}

/// "1.2 % that it is under the least of 0.80 mm".
QString chanceWords(const Desk& desk, int engine) {
  const int cylinder = cylinderOf(desk, engine);
  const describe::Tabulated chances =
      desk.document.evaluation().tabulated(engine, out::gapChances, cylinder);
  if (chances.state != describe::State::Value || chances.rows.size() < 2) {
    return {};
  }
  constexpr Eigen::Index kUnderLeast = 1;
  return tr("%1 that it is under %2")
      .arg(desk.taste.shown(Kind::Share, chances.rows["chance"].numbers[kUnderLeast]),
           desk.taste.shown(Kind::FineLength, chances.rows["gap_m"].numbers[kUnderLeast]));
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::squishGap);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  said.sentence = joined({tr("squish gap"), chanceWords(desk, engine)});
  said.further.clear();
  if (known(desk, engine, out::compressionRatio)) {
    said.further = tr("compression ratio %1 %2")
                       .arg(figures(desk, engine, out::compressionRatio),
                            plusMinus(desk, engine, out::compressionRatio).replace(u'\n', u' '));
  }
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  const auto which = [&desk] {
    const int engine = desk.subject();
    return CylinderShown{engine, engine < 0 ? 0 : cylinderOf(desk, engine)};
  };
  auto* plot = new LikelihoodPlot(desk.document, desk.taste, which, parent);
  auto* first = new MeasureFirst(desk, which, plot);
  plot->addBelow(first);
  auto* chances =
      new TableView(desk.document, which().engine, out::likelihood, plot, which().cylinder);
  plot->addBelow(chances);
  const auto follow = [chances, which] {
    chances->setEngine(which().engine);
    chances->setCylinder(which().cylinder);
  };
  QObject::connect(&desk.document, &Document::projectChanged, chances, follow);
  QObject::connect(&desk, &Desk::cylinderChanged, chances, follow);
  QObject::connect(chances, &TableView::entryAsked, &desk, &Desk::entryAsked);
  QObject::connect(&desk, &Desk::cylinderChanged, plot, &LikelihoodPlot::refresh);
  QObject::connect(&desk, &Desk::cylinderChanged, first, &MeasureFirst::changed);
  return plot;
}

}  // namespace

PageDescription likelihoodPage() {
  return {.key = QStringLiteral("likelihood"),
          .name = tr("How sure"),
          .question = tr("How sure is the gap, and the ratio?"),
          .entries = {{tr("What they are computed from"),
                       {&in::seatHeight, &in::barrelHeight, &in::deckHeight, &in::spacer,
                        &in::baseGasket, &in::headGasket, &in::headRecess, &in::linerProud,
                        &in::crownRise, &in::crankThrow, &in::stroke, &in::rodLength,
                        &in::compressionHeight, &in::bore, &in::chamberVolume, &in::crownVolume,
                        &in::creviceVolume}},
                      {tr("What they are held against"),
                       {&in::squishLeast, &in::wantedSquish, &in::squishMost,
                        &in::wantedCompressionRatio}}},
          .results = {&out::squishGap, &out::compressionRatio},
          .decides = {&out::squishGap, &out::compressionRatio},
          .answer = &answer,
          .picture = &picture};
}

}  // namespace strokewright::ui
