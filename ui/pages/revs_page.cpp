#include <QCoreApplication>
#include <QScrollArea>
#include <QStringList>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/limit_lines.h"
#include "ui/plots/limits_chart.h"
#include "ui/widgets/pane_column.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

constexpr double kLinesShare = 0.5;  ///< of the height, at most
constexpr int kChartLines = 18;      ///< of text: a chart whose names stand clear
constexpr int kLinesLines = 9;       ///< of text

QString tr(const char* text) { return QCoreApplication::translate("RevsPage", text); }

constexpr std::array<const describe::Result*, 5> kLines = {
    &out::ceilingPistonSpeed, &out::ceilingRingFlutter, &out::ceilingRodTension,
    &out::ceilingBigEnd, &out::ceilingDonor};

/// Lines of the ceiling that may still lower it.
int linesNotKnown(const Desk& desk, int engine) {
  return static_cast<int>(std::ranges::count_if(kLines, [&](const describe::Result* line) {
    const describe::State state = desk.document.assessment()(engine, *line).state;
    return state == describe::State::Waits || state == describe::State::Refused;
  }));
}

/// @param open lines of the ceiling are not known yet
QString wantedWords(const Desk& desk, int engine, bool open) {
  const describe::Evaluation& evaluation = desk.document.assessment().evaluation();
  if (!evaluation.inputGiven(engine, in::wantedSpeed)) {
    return {};
  }
  const double wanted = evaluation.inputValue(engine, in::wantedSpeed);
  const QString words = wanted > desk.document.assessment()(engine, out::revCeiling).value
                            ? tr("%1 wanted: too fast")
                        : open ? tr("%1 wanted: not shown to be slow enough")
                               : tr("%1 wanted: below the ceiling");
  return words.arg(desk.taste.value(in::wantedSpeed, wanted));
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::revCeiling);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  const int open = linesNotKnown(desk, engine);
  if (open > 0) {
    said.number = tr("at most %1").arg(said.number);
  }
  QStringList words = {tr("stopped by %1").arg(figures(desk, engine, out::governs))};
  if (known(desk, engine, out::nextCeiling) && known(desk, engine, out::governsNext)) {
    words +=
        tr("next %1 at %2")
            .arg(figures(desk, engine, out::governsNext), figures(desk, engine, out::nextCeiling));
  }
  if (open > 0) {
    words.prepend(open == 1 ? tr("1 limit is not known yet")
                            : tr("%1 limits are not known yet").arg(open));
  }
  words += wantedWords(desk, engine, open > 0);
  said.sentence = joined(words);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  auto* sides = new PaneColumn(Qt::Vertical, kLinesShare, parent);
  sides->addPane(new LimitsChart(desk.document, desk.taste, sides), kChartLines);
  auto* below = new QWidget;
  auto* column = new QVBoxLayout(below);
  column->setContentsMargins(0, 8, 0, 0);
  column->addWidget(new LimitLines(desk, below));
  column->addWidget(new NextRevs(desk, below));
  column->addStretch(1);
  auto* scroll = new QScrollArea(sides);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setAccessibleName(tr("Limits and the next revs"));
  scroll->setWidgetResizable(true);
  scroll->setWidget(below);
  below->setAutoFillBackground(false);
  scroll->viewport()->setAutoFillBackground(false);
  sides->addPane(scroll, kLinesLines);
  sides->setNames({tr("Chart"), tr("Limits")});
  return sides;
}

}  // namespace

PageDescription revsPage() {
  return {
      .key = QStringLiteral("revs"),
      .name = tr("Revs"),
      .question = tr("How fast may it turn?"),
      .entries = {{tr("Speeds"), {&in::wantedSpeed, &in::provenSpeed, &in::overRevShare}},
                  {tr("Limits"),
                   {&in::meanPistonSpeedLimit, &in::ringFlutterConstant, &in::rodStressLimit,
                    &in::speedFactorLimit, &in::breathingLimit}},
                  {tr("What they act on"),
                   {&in::ringWidth, &in::rodLeastSection, &in::bigEndPinDiameter,
                    &in::bigEndEyeDiameter}},
                  {tr("Breathing"),
                   {&in::inletValveCount, &in::inletValveDiameter, &in::inletFlowCoefficient,
                    &in::soundSpeed}},
                  {tr("Limits behind the objections"), {&in::rodLoadRatioLimit}}},
      .results = {&out::revCeiling, &out::governs, &out::nextCeiling, &out::governsNext,
                  &out::ceilingPistonSpeed, &out::ceilingRingFlutter, &out::ceilingRodTension,
                  &out::ceilingBigEnd, &out::ceilingDonor, &out::overRevCeiling, &out::rodTension,
                  &out::rodStress, &out::provenAcceleration, &out::provenRodTension, &out::rods,
                  &out::rodLoadRatio, &out::breathingIndex, &out::breathingSpeed},
      .decides = {&out::revCeiling},
      .awaits = {kLines.begin(), kLines.end()},
      .answer = &answer,
      .picture = &picture};
}

}  // namespace strokewright::ui
