#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <vector>

#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/page_description.h"
#include "ui/plots/rhythm_view.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;
using describe::Tabulated;
using units::Kind;

QString tr(const char* text) { return QCoreApplication::translate("RhythmPage", text); }

/// The low orders that make the rhythm are the first rows.
constexpr Eigen::Index kLow = 8;  // up to four, or up to eight, pulses a turn

/// Those of them that stand out, the strongest first: "2.0 with 1.00".
QStringList strongest(const Desk& desk, const Tabulated& rhythm) {
  constexpr double kHeard = 0.3;
  std::vector<Eigen::Index> rows;
  const Eigen::ArrayXd& contents = rhythm.rows["content"].numbers;
  for (Eigen::Index row = 0; row < std::min(kLow, contents.size()); ++row) {
    if (contents[row] > kHeard) rows.push_back(row);
  }
  std::ranges::stable_sort(
      rows, [&](Eigen::Index one, Eigen::Index other) { return contents[one] > contents[other]; });
  QStringList words;
  for (const Eigen::Index row : rows) {
    words += tr("%1 with %2")
                 .arg(desk.taste.number(Kind::Ratio, rhythm.rows["order"].numbers[row], 1),
                      desk.taste.number(Kind::Ratio, contents[row], 2));
    if (words.size() == 4) break;
  }
  return words;
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::firingFrequency);
  if (said.number.isEmpty()) return said;
  said.sentence = tr("firings a minute at the speed wanted");
  const Tabulated rhythm = desk.document.evaluation().tabulated(desk.subject(), out::rhythm);
  if (rhythm.state != describe::State::Value) return said;
  const Eigen::ArrayXd& orders = rhythm.rows["order"].numbers;
  const double last = orders[std::min(kLow, orders.size()) - 1];
  said.further = tr("strongest orders of the rhythm up to %1: %2")
                     .arg(desk.taste.number(Kind::Ratio, last, 1),
                          strongest(desk, rhythm).join(QStringLiteral(" · ")));
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  auto* view = new RhythmView(
      desk.document, desk.taste, [&desk] { return desk.subject(); }, parent);
  QObject::connect(view, &RhythmView::said, &desk, &Desk::said);
  return view;
}

}  // namespace

PageDescription rhythmPage() {
  return {.key = QStringLiteral("rhythm"),
          .name = tr("Rhythm"),
          .question = tr("In which rhythm does it fire?"),
          .entries = {{{}, {&in::firingOrder, &in::firesLater, &in::wantedSpeed, &in::cycle}}},
          .results = {&out::firingFrequency, &out::firesAfterFirst, &out::lobeBehindFirst,
                      &out::lobeMoved},
          .decides = {&out::firingFrequency, &out::largestFiringGap},
          .answer = &answer,
          .picture = &picture,
          .tables = {{.table = &out::firingTable, .tab = tr("Firings")},
                     {.table = &out::triggers, .tab = tr("Triggers")}}};
}

}  // namespace strokewright::ui
