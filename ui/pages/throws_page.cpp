#include <QCoreApplication>
#include <QTabBar>
#include <QTabWidget>

#include "core/describe/tabulated.h"
#include "core/firing/layouts.h"
#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/crank_view.h"
#include "ui/drawings/star_view.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/page_description.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;
using describe::Tabulated;

QString tr(const char* text) { return QCoreApplication::translate("ThrowsPage", text); }

const std::string& wordsIn(const Tabulated& table, std::string_view column, int row) {
  return table.rows[column].words[static_cast<std::size_t>(row)];
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::largestFiringGap);
  if (said.number.isEmpty()) return said;
  const int engine = desk.subject();
  const bool entered = desk.document.evaluation().inputGiven(engine, in::firingOrder) ||
                       desk.document.evaluation().inputGiven(engine, in::firesLater);
  const Tabulated table = desk.document.evaluation().tabulated(engine, out::firingTable);
  const Eigen::ArrayXd& then = table.rows["then_rad"].numbers;
  QStringList cylinders;
  QString order;
  for (Eigen::Index i = 0; i < then.size(); ++i) {
    cylinders += QString::number(table.rows["cylinder"].numbers[i], 'f', 0);
    if (i > 0) order += then[i - 1] < firing::kSame ? u'+' : u'-';
    order += cylinders.back();
  }
  Eigen::Index most = 0;
  const bool even = then.maxCoeff(&most) - then.minCoeff() < firing::kSame;
  said.sentence = even ? tr("largest interval, firing %1").arg(order)
                       : tr("largest interval, from %1 to %2, firing %3")
                             .arg(cylinders[most], cylinders[(most + 1) % cylinders.size()], order);
  said.further = entered ? tr("least %1").arg(figures(desk, engine, out::leastFiringGap))
                         : tr("least %1 · the most even order, while none is entered")
                               .arg(figures(desk, engine, out::leastFiringGap));
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  const auto subject = [&desk] { return desk.subject(); };
  auto* pictures = new QTabWidget(parent);
  pictures->setDocumentMode(true);
  pictures->setAccessibleName(tr("What is drawn of the crank"));
  pictures->tabBar()->setAccessibleName(pictures->accessibleName());
  pictures->addTab(new StarView(desk.document, desk.taste, subject), tr("Star and firings"));
  pictures->addTab(new CrankPane(desk.document, desk.taste, subject), tr("Crank in space"));
  return pictures;
}

/// The crank on that row becomes that of the subject; an order of firing that it had goes, and the
/// workshop's numbers where there are other cylinders.
void putCrank(Desk& desk, const Tabulated& cranks, int row) {
  describe::Mend crank;
  const double count = cranks.rows["cylinders"].numbers[row];
  const auto given = [&](const describe::Input& input) {
    return !desk.document.entry(desk.subject(), input).empty();
  };
  QStringList gone;
  if (given(in::firingOrder) || given(in::firesLater)) gone += tr("firing order");
  crank.entries = {{&in::cylinderCount, std::to_string(static_cast<int>(count))},
                   {&in::throwAhead, wordsIn(cranks, "throws", row)},
                   {&in::cylinderAxis, wordsIn(cranks, "axes", row)},
                   {&in::firingOrder, {}},
                   {&in::firesLater, {}}};
  if (desk.document.assessment().evaluation().cylinders(desk.subject()) !=
      static_cast<int>(count)) {
    if (given(in::cylinderNumber)) gone += tr("workshop numbers");
    crank.entries.emplace_back(&in::cylinderNumber, std::string());
  }
  const QString cleared = gone.join(tr(" and "));
  const QString name = fromCore(wordsIn(cranks, "crank", row));
  desk.document.take(desk.subject(), crank,
                     gone.isEmpty() ? tr("crank") : tr("crank, clearing the %1,").arg(cleared));
  const QString engine = desk.document.engineName(desk.subject());
  Q_EMIT desk.said(
      gone.isEmpty()
          ? tr("%1 has the crank “%2”.").arg(engine, name)
          : tr("%1 has the crank “%2”; its %3 went with the old one.").arg(engine, name, cleared));
}

/// The order on that row, and on which turn where the order alone does not say it.
void putOrder(Desk& desk, const Tabulated& orders, int row) {
  describe::Mend order;
  order.entries = {{&in::firingOrder, wordsIn(orders, "order", row)},
                   {&in::firesLater, wordsIn(orders, "later", row)}};
  desk.document.take(desk.subject(), order, tr("firing order"));
}

}  // namespace

PageDescription throwsPage() {
  return {
      .key = QStringLiteral("throws"),
      .name = tr("Throws"),
      .question = tr("Which way do the throws point, and when does it fire?"),
      .entries = {{{}, {&in::cylinderCount, &in::cycle}},
                  {tr("Seen from where"), {&in::viewedFrom, &in::rotation, &in::firstStandsAt}},
                  {tr("Throws and axes"),
                   {&in::throwAhead, &in::cylinderAxis, &in::cylinderNumber}},
                  {{}, {&in::firingOrder, &in::firesLater, &in::wantedSpeed}}},
      .results = {&out::largestFiringGap, &out::leastFiringGap, &out::firingFrequency,
                  &out::topAfterFirst, &out::turnsLater, &out::firesAfterFirst,
                  &out::lobeBehindFirst, &out::lobeMoved},
      .decides = {&out::largestFiringGap},
      .answer = &answer,
      .picture = &picture,
      .tables = {{.table = &out::commonCranks, .take = &putCrank, .tab = tr("Cranks")},
                 {.table = &out::crankTops, .whenEmpty = tr("no throws yet"), .tab = tr("Tops")},
                 {.table = &out::firingOrders,
                  .whenEmpty = tr("no throws yet"),
                  .take = &putOrder,
                  .tab = tr("Orders")},
                 {.table = &out::collectors, .whenEmpty = tr("one cylinder")}}};
}

}  // namespace strokewright::ui
