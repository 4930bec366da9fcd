#include "ui/pages/what_if_view.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QShortcut>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/units/parse.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"
#include "ui/plots/sweep_scene.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/plain_field.h"
#include "ui/widgets/search_box.h"

namespace strokewright::ui {

using describe::Cell;
using describe::Result;
using describe::State;

namespace {

constexpr std::array<const Result*, 5> kMain = {&out::spacerInStack, &out::squishGap,
                                                &out::compressionRatio, &out::meanPistonSpeed,
                                                &out::revCeiling};

template <typename Described>
QStringList labelsOf(const Taste& taste, const std::vector<const Described*>& all) {
  QStringList labels;
  for (const Described* each : all) labels += taste.label(*each);
  return labels;
}

template <typename Described>
int placeIn(const std::vector<const Described*>& all, const Described* one) {
  const auto found = std::ranges::find(all, one);
  return found == all.end() ? -1 : static_cast<int>(found - all.begin());
}

}  // namespace

WhatIfView::WhatIfView(Desk& desk, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      result_(new SearchBox(tr("Result that should be different"), this)),
      cylinderLabel_(new QuietLabel(tr("in cylinder"), this)),
      cylinder_(new QComboBox(this)),
      wanted_(new QLineEdit(this)),
      unit_(new QLabel(this)),
      input_(new SearchBox(tr("Entry to be changed"), this)),
      plot_(new PlotWidget(this)),
      readout_(new PlotReadout(this)),
      then_(new QLabel(this)),
      refresher_(new Refresher(desk.document, desk.taste, *this, [this] { refresh(); })) {
  cylinder_->setAccessibleName(tr("Cylinder asked for"));
  cylinder_->setFocusPolicy(Qt::StrongFocus);
  wanted_->setAccessibleName(tr("What it should be"));
  wanted_->setPlaceholderText(tr("so much"));
  leaveUndoToDocument(*wanted_);
  wanted_->setMaximumWidth(wanted_->fontMetrics().averageCharWidth() * 14);
  plot_->setAccessibleName(tr("The result over the entry"));
  layOut();
  connect(&desk_, &Desk::whatIfAsked, this, [this] { refresher_->changed(); });
  connect(&desk_, &Desk::cylinderChanged, this, [this] { refresher_->changed(); });
  connect(result_, &SearchBox::chosen, this,
          [this](int row) { choose(results_[static_cast<std::size_t>(row)]); });
  connect(result_, &SearchBox::notFound, this, [this](const QString& typed) {
    WhatIf asked = desk_.whatIf();
    asked.resultTyped = typed;
    desk_.ask(asked);
  });
  connect(input_, &SearchBox::chosen, this, [this](int row) {
    WhatIf asked = desk_.whatIf();
    asked.input = inputs_[static_cast<std::size_t>(row)];
    asked.inputTyped.clear();
    desk_.ask(asked);
  });
  connect(input_, &SearchBox::notFound, this, [this](const QString& typed) {
    WhatIf asked = desk_.whatIf();
    asked.inputTyped = typed;
    desk_.ask(asked);
  });
  connect(cylinder_, &QComboBox::activated, &desk_, &Desk::showCylinder);
  connect(wanted_, &QLineEdit::textEdited, this, &WhatIfView::takeWanted);
  for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Enter}) {
    auto* take = new QShortcut(QKeySequence(Qt::CTRL | key), this);
    take->setContext(Qt::WidgetWithChildrenShortcut);
    connect(take, &QShortcut::activated, this, &WhatIfView::take);
  }
}

void WhatIfView::layOut() {
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  row->addWidget(result_, 3);
  row->addWidget(cylinderLabel_);
  row->addWidget(cylinder_);
  row->addWidget(new QuietLabel(tr("is to be"), this));
  row->addWidget(wanted_);
  row->addWidget(unit_);
  row->addWidget(new QuietLabel(tr("by changing"), this));
  row->addWidget(input_, 3);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  column->addLayout(row);
  column->addWidget(plot_, 1);
  column->addWidget(readout_);
  then_->setWordWrap(true);
  then_->setTextFormat(Qt::PlainText);
  then_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(then_);
}

QString WhatIfView::readout() const { return readout_->text(); }

QString WhatIfView::thenText() const { return then_->text(); }

/// What is still being typed counts first.
void WhatIfView::take() {
  result_->settle();
  input_->settle();
  takeWhatIf(desk_);
}

void WhatIfView::refresh() {
  const WhatIf& asked = desk_.whatIf();
  const WhatIfPlace place = placeOf(desk_);
  results_ = askable(desk_);
  inputs_ = movers(desk_);
  if (reaches(desk_) && placeIn(inputs_, asked.input) < 0) inputs_.push_back(asked.input);
  result_->offer(labelsOf(desk_.taste, results_),
                 asked.resultTyped.isEmpty() ? placeIn(results_, asked.result) : -1);
  input_->offer(labelsOf(desk_.taste, inputs_),
                asked.inputTyped.isEmpty() ? placeIn(inputs_, asked.input) : -1);
  offerCylinders(place);
  say(*unit_, desk_.taste.unit(asked.result->kind));
  if (!wanted_->hasFocus()) {
    wanted_->setText(asked.wanted
                         ? fromCore(desk_.taste.style().editable(asked.result->kind, *asked.wanted))
                         : asked.wantedTyped);
  }
  const std::optional<assess::Solution> found = solved(desk_);
  const bool drawn = reaches(desk_) && asked.resultTyped.isEmpty() && asked.inputTyped.isEmpty();
  plot_->setScene(
      sweepScene(desk_.document, {.engine = drawn ? place.engine : -1,
                                  .cylinder = place.cylinder,
                                  .result = asked.result,
                                  .input = asked.input,
                                  .inputCylinder = place.inputCylinder,
                                  .now = drawn ? *standsAt(desk_, place, *asked.input) : 0.0,
                                  .wanted = asked.wanted,
                                  .found = found ? found->value : std::nullopt}));
  sayBeforeAndAfter(found);
  sayThen();
  plot_->setAccessibleDescription(readout_->text());
}

/// Only where the cylinders can differ.
void WhatIfView::offerCylinders(const WhatIfPlace& place) {
  const int count = place.engine < 0 || desk_.whatIf().result->per == describe::Per::Engine
                        ? 1
                        : desk_.document.assessment().evaluation().cylinders(place.engine);
  const QSignalBlocker quiet(cylinder_);
  cylinder_->clear();
  for (int i = 0; i < count; ++i) {
    cylinder_->addItem(QString::number(
        place.engine < 0 ? i + 1
                         : model::numberOfCylinder(desk_.document.evaluation(), place.engine, i)));
  }
  cylinder_->setCurrentIndex(place.cylinder);
  cylinder_->setVisible(count > 1);
  cylinderLabel_->setVisible(count > 1);
}

void WhatIfView::takeWanted() {
  WhatIf asked = desk_.whatIf();
  const units::Parsed read = units::parse(asked.result->kind, wanted_->text().toStdString(),
                                          desk_.taste.style().group[asked.result->kind]);
  asked.wanted = read.values.size() == 1 ? std::optional(read.values.front()) : std::nullopt;
  asked.wantedTyped = asked.wanted ? QString() : wanted_->text().trimmed();
  desk_.ask(asked);
}

/// The entry stays, and where it does not reach this result that is said: no other is taken
/// unasked.
void WhatIfView::choose(const Result* result) {
  desk_.ask({.result = result,
             .wanted = {},
             .input = desk_.whatIf().input,
             .inputTyped = desk_.whatIf().inputTyped});
}

void WhatIfView::sayThen() {
  const std::vector<describe::Finding> said = saidThen(desk_);
  QStringList lines;
  for (const describe::Finding& finding : said) {
    const QString sentence = findingText(desk_.document, finding);
    lines += (finding.weight == describe::Weight::Forbids ? tr("✕ forbids then: %1")
                                                          : tr("! objects then: %1"))
                 .arg(sentence);
  }
  if (lines.isEmpty() && canTakeWhatIf(desk_)) {
    lines += tr("Nothing more objects then than does now.");
  }
  QPalette coloured;
  coloured.setColor(QPalette::WindowText, said.empty() ? ink::muted(palette())
                                          : said.front().weight == describe::Weight::Forbids
                                              ? ink::forbids(palette())
                                              : ink::objects(palette()));
  then_->setPalette(coloured);
  say(*then_, lines.join(QChar(u'\n')));
  then_->setVisible(!lines.isEmpty());
}

void WhatIfView::sayBeforeAndAfter(const std::optional<assess::Solution>& found) {
  const WhatIfPlace place = placeOf(desk_);
  if (place.engine < 0) return;
  std::vector<const Result*> told(kMain.begin(), kMain.end());
  if (placeIn(told, desk_.whatIf().result) < 0) told.insert(told.begin(), desk_.whatIf().result);
  describe::Evaluation then = desk_.document.evaluation();
  const bool changes = found && found->value;
  if (changes) {
    then.put(place.engine, *desk_.whatIf().input, place.inputCylinder, *found->value);
  }
  QStringList headings{
      tr("Cylinder %1")
          .arg(model::numberOfCylinder(desk_.document.evaluation(), place.engine, place.cylinder))};
  std::vector<QStringList> rows = {{tr("now")}};
  if (changes) rows.insert(rows.end(), {{tr("then")}, {tr("difference")}});
  for (const Result* result : told) {
    const int cylinder = result->per == describe::Per::Engine ? 0 : place.cylinder;
    headings += titled(desk_.taste.label(*result), desk_.taste, result->kind);
    const Cell before = desk_.document.assessment()(place.engine, *result, cylinder);
    const auto shown = [&](const Cell& cell) {
      return cell.state == State::Value
                 ? desk_.taste.number(result->kind, cell.value, result->decimals)
                 : QStringLiteral("–");
    };
    rows[0] += shown(before);
    if (!changes) continue;
    const Cell& after = then.fresh(place.engine, *result, cylinder);
    rows[1] += shown(after);
    rows[2] += before.state == State::Value && after.state == State::Value
                   ? desk_.taste.difference(result->kind, result->step(before.value, after.value),
                                            result->decimals)
                   : QStringLiteral("–");
  }
  readout_->show(headings, rows);
}

}  // namespace strokewright::ui
