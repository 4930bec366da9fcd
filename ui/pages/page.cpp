#include "ui/pages/page.h"

#include <QEvent>
#include <QLabel>
#include <QSettings>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answer_line.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/findings_foot.h"
#include "ui/pages/link_button.h"
#include "ui/pages/table_pane.h"
#include "ui/pages/why_place.h"
#include "ui/widgets/list_edit.h"
#include "ui/widgets/pane_column.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double kQuestionSize = 1.3;      ///< times the body
constexpr double kTablesShare = 0.57;      ///< of the width, at most, once they compare
constexpr double kResultsBeside = 0.45;    ///< of the width, where there is no picture
constexpr double kResultsShare = 0.3;      ///< of the height, at most
constexpr double kListsShare = 0.6;        ///< of the height, at most, with the results
constexpr double kTablesBelowShare = 0.5;  ///< of the height, at most, below a picture

// What a pane is of use with, in lines of text.
constexpr int kPictureLines = 14;
constexpr int kTableLines = 10;
constexpr int kEntriesLines = 16;
constexpr int kListLines = 6;
constexpr int kResultsLines = 8;

constexpr int kPictureDigits = 34;  ///< of width that a picture is of use with

QString layoutKey(const PageDescription& page, const QString& part) {
  return u"layout/"_s + page.key + u'/' + part;
}

}  // namespace

bool focusInside(const QWidget& area) {
  for (QWidget* widget : area.findChildren<QWidget*>()) {
    if ((widget->focusPolicy() & Qt::TabFocus) != 0 && widget->isVisible() && widget->isEnabled()) {
      widget->setFocus(Qt::TabFocusReason);
      return true;
    }
  }
  return false;
}

Page::Page(Desk& desk, const PageDescription& description, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      description_(description),
      question_(new QuietLabel(description.question, this)),
      answerLine_(new AnswerLine(description.deed.says, this)),
      across_(new QSplitter(Qt::Horizontal, this)),
      rest_(new QWidget(this)) {
  across_->setChildrenCollapsible(false);
  connect(across_, &QSplitter::splitterMoved, this, [this] { parted_ = true; });
  across_->setHandleWidth(16);
  makeLeftSide();
  makeRightSide();
  across_->setStretchFactor(0, 1);  // the tables keep their width
  auto* foot = new FindingsFoot(desk_, description_, this);
  foot_ = foot;

  auto* column = new QVBoxLayout(this);
  column->addWidget(question_);
  column->addWidget(answerLine_);
  column->addWidget(new Rule(this));
  column->addWidget(across_, 1);
  column->addWidget(rest_, 1);
  column->addWidget(new Rule(this));
  column->addWidget(foot);

  connect(&desk_.document, &Document::projectChanged, this, &Page::refreshWhenSeen);
  connect(&desk_.taste, &Taste::changed, this, &Page::refreshWhenSeen);
  connect(&desk_.taste, &Taste::changed, this, &Page::namePanes);
  connect(&desk_, &Desk::cylinderChanged, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::whatIfAsked, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::stackChosen, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::sheetChosen, this, &Page::refreshWhenSeen);
  connect(foot, &FindingsFoot::relined, this, &Page::orderTabs);
  connect(answerLine_, &AnswerLine::whyAsked, this, &Page::explainAnswer);
  connect(answerLine_, &AnswerLine::entryAsked, this,
          [this] { Q_EMIT desk_.entryAsked(answer().unlocksOf, answer().unlocks); });
  connect(answerLine_, &AnswerLine::deedAsked, this, [this] { description_.deed.act(desk_); });
  namePanes();
  setMargins();
  sizeQuestion();
  orderTabs();
}

/// Entries and results have the whole page.
bool Page::besideEachOther() const {
  return description_.picture == nullptr && description_.tables.empty();
}

/// The picture with the tables below it, or the tables alone.
void Page::makeLeftSide() {
  if (besideEachOther()) {
    return;
  }
  left_ = new PaneColumn(Qt::Vertical, kTablesBelowShare, across_);
  if (description_.picture != nullptr) {
    QWidget* picture = description_.picture(desk_, left_);
    whyPlace_ = new WhyPlace(desk_, picture, WhyPlace::Of::Picture, left_);
    left_->addPane(whyPlace_, kPictureLines);
  }
  for (const TableOnPage& table : description_.tables) {
    QWidget* pane = makeTablePane(desk_, table, left_);
    left_->addPane(pane, [pane] {
      return std::min(kTableLines * pane->fontMetrics().height(), pane->sizeHint().height());
    });
  }
  if (whyPlace_ == nullptr) {
    whyPlace_ = new WhyPlace(desk_, left_, WhyPlace::Of::Tables, across_);
    across_->addWidget(whyPlace_);
  } else {
    across_->addWidget(left_);
  }
}

/// @param lines of text that it is of use with, where the panes stand above each other.
void Page::addRight(QWidget* pane, int lines) {
  if (besideEachOther()) {
    right_->addPane(pane, [this] { return tablesWidth(&Comparison::leastWidth); });
  } else {
    right_->addPane(pane, lines);
  }
}

/// Entries and results; with nothing on the left they share the page side by side.
void Page::makeRightSide() {
  if (description_.entries.empty() && description_.results.empty()) {
    return;
  }
  right_ = besideEachOther()
               ? new PaneColumn(Qt::Horizontal, kResultsBeside, across_)
               : new PaneColumn(Qt::Vertical,
                                description_.lists.empty() ? kResultsShare : kListsShare, across_);
  across_->addWidget(right_);
  entries_ = new Comparison(desk_, description_, Comparison::Of::Entries, right_);
  connect(entries_, &Comparison::rebuilt, this, &Page::orderTabs);
  connect(entries_, &Comparison::rebuilt, this, &Page::roomForTables);
  addRight(entries_, kEntriesLines);
  for (const describe::List* list : description_.lists) {
    QWidget* pane = makeListPane(desk_, *list, right_);
    connect(pane->findChild<ListEdit*>(), &ListEdit::relined, this, &Page::orderTabs);
    connect(pane->findChild<ListEdit*>(), &ListEdit::relined, right_, &PaneColumn::fit);
    right_->addPane(pane, [this, pane] {
      return std::max(kListLines * fontMetrics().height(),
                      pane->layout()->minimumHeightForWidth(right_->width()));
    });
  }
  if (description_.results.empty()) {
    return;
  }
  results_ = new Comparison(desk_, description_, Comparison::Of::Results, right_);
  connect(results_, &Comparison::rebuilt, this, &Page::orderTabs);
  QWidget* results = results_;
  if (besideEachOther()) {
    whyPlace_ = new WhyPlace(desk_, results_, WhyPlace::Of::Tables, right_);
    results = whyPlace_;
  }
  addRight(results, kResultsLines);
}

void Page::namePanes() {
  const auto named = [this](std::string_view name) { return desk_.taste.inTerms(fromCore(name)); };
  if (left_ != nullptr) {
    QStringList names;
    if (description_.picture != nullptr) {
      names += tr("Picture");
    }
    QStringList words = names;
    for (const TableOnPage& table : description_.tables) {
      names += named(table.table->name);
      words += table.tab.isEmpty() ? names.back() : table.tab;
    }
    left_->setNames(names, words);
  }
  if (right_ != nullptr) {
    QStringList names{tr("Entries")};
    for (const describe::List* list : description_.lists) {
      names += named(list->name);
    }
    names += tr("Results");
    right_->setNames(names);
  }
}

const Answer& Page::answer() const { return answerLine_->answer(); }

/// A page that is not seen works out nothing; it does when it is shown.
void Page::refreshWhenSeen() {
  if (isVisible()) {
    refresh();
  }
}

void Page::refresh() {
  answerLine_->setAnswer(description_.answer(desk_));
  if (description_.deed.possible != nullptr) {
    const Deed& deed = description_.deed;
    answerLine_->setDeed(deed.saysNow != nullptr ? deed.saysNow(desk_) : deed.says,
                         deed.possible(desk_) ? QString() : whyNoDeed());
  }
  across_->setVisible(!idle());
  rest_->setVisible(idle());
}

QString Page::whyNoDeed() const {
  if (answer().number.isEmpty()) {
    return tr("there is no answer yet");
  }
  const QString& why = description_.deed.whyNot;
  return why.isEmpty() ? tr("already so") : why;
}

bool Page::idle() const {
  const describe::Evaluation& evaluation = desk_.document.assessment().evaluation();
  const auto meansNothing = [&](const describe::Result* result) {
    for (int engine = 0; engine < evaluation.engines(); ++engine) {
      if (desk_.document.assessment()(engine, *result).state != describe::State::None) {
        return false;
      }
    }
    return evaluation.engines() > 0;
  };
  return description_.idles && std::ranges::all_of(description_.results, meansNothing);
}

/// Where panes are folded, the one that this widget stands in is seen.
void Page::bringUp(const QWidget& inside) {
  for (PaneColumn* column : {left_, right_}) {
    if (column != nullptr) {
      column->bringUp(inside);
    }
  }
}

bool Page::focusEntry(int engine, const describe::Input& input) {
  if (entries_ == nullptr || !description_.asksFor(input) || idle()) {
    return false;
  }
  bringUp(*entries_);
  return entries_->focusEntry(engine, input);
}

bool Page::focusList(const describe::List& list, int item, const describe::Input* column) {
  for (ListEdit* edit : findChildren<ListEdit*>()) {
    if (edit->place().list == &list) {
      bringUp(*edit);
      edit->focusField(item, column != nullptr ? *column : *list.columns.front());
      return true;
    }
  }
  return false;
}

void Page::explainAnswer() {
  if (desk_.subject() >= 0 && answer().result != nullptr) {
    Q_EMIT desk_.whyAsked(desk_.subject(), answer().result, desk_.cylinder());
  }
}

void Page::explain(int engine, const describe::Result& result, int cylinder) {
  if (whyPlace_ != nullptr) {
    bringUp(*whyPlace_);
    whyPlace_->explain(engine, result, cylinder);
  }
}

void Page::focusFirst() {
  if (entries_ != nullptr) {
    bringUp(*entries_);
    entries_->focusFirst();
    return;
  }
  focusInside(*across_);
}

bool Page::focusArea(const QWidget& area) {
  bringUp(area);
  return focusInside(area);
}

std::vector<QWidget*> Page::areas() const {
  std::vector<QWidget*> areas{answerLine_};
  for (const PaneColumn* column : {right_, left_}) {
    if (column == nullptr) continue;
    const std::vector<QWidget*> panes = column->panes();
    areas.insert(areas.end(), panes.begin(), panes.end());
  }
  if (right_ == nullptr && left_ == nullptr) areas.push_back(across_);
  areas.push_back(foot_);
  return areas;
}

/// Tab follows the reading order: the order in which the widgets stand in their parents.
void Page::orderTabs() {
  QWidget* before = nullptr;
  for (QWidget* widget : findChildren<QWidget*>()) {
    if (widget->window() == window() && (widget->focusPolicy() & Qt::TabFocus) != 0) {
      if (before != nullptr) {
        setTabOrder(before, widget);
      }
      before = widget;
    }
  }
}

void Page::sizeQuestion() {
  QFont larger = font();
  larger.setPointSizeF(font().pointSizeF() * kQuestionSize);
  if (question_->font() != larger) {
    question_->setFont(larger);
  }
}

/// A low window has its lines for what is worked on.
void Page::setMargins() {
  const bool low = isLow(*this);
  layout()->setContentsMargins(low ? 12 : 24, low ? 4 : 12, low ? 12 : 24, low ? 2 : 8);
  layout()->setSpacing(low ? 4 : 8);
  foot_->updateGeometry();
}

void Page::resizeEvent(QResizeEvent* event) {
  setMargins();
  QWidget::resizeEvent(event);
}

void Page::showEvent(QShowEvent* event) {
  refresh();
  QWidget::showEvent(event);
  if (!laidOut_) {
    laidOut_ = true;
    layout()->activate();
    restoreLayout();
  }
}

void Page::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) {
    sizeQuestion();
  }
  QWidget::changeEvent(event);
}

void Page::restoreLayout() {
  const QSettings settings;
  const auto kept = [&settings, this](const QString& part) {
    return settings.value(layoutKey(description_, part)).toByteArray();
  };
  // The tables as wide as they like, the picture the rest; the entries come before the results.
  if (!across_->restoreState(kept(u"across"_s)) && entries_ != nullptr && !besideEachOther()) {
    const int room = across_->width() - across_->handleWidth();
    const int beside = room - kPictureDigits * fontMetrics().horizontalAdvance(u'0');
    const int most = std::max(static_cast<int>(kTablesShare * room),
                              std::min(tablesWidth(&Comparison::easyWidth), beside));
    const int tables = std::min(entries_->sizeHint().width(), most);
    across_->setSizes({room - tables, tables});
  }
  roomForTables();
  if (left_ != nullptr) {
    left_->restoreState(kept(u"left"_s));
  }
  if (right_ != nullptr) {
    right_->restoreState(kept(u"right"_s));
  }
}

/// [px] The wider of entries and results.
/// @param wide how wide one has to be
int Page::tablesWidth(int (Comparison::*wide)() const) const {
  const int results = results_ == nullptr ? 0 : (results_->*wide)();
  return std::max((entries_->*wide)(), results);
}

/// More engines than when the widths were chosen: what is beside a table gives way, as far as it
/// can.
void Page::roomForTables() {
  if (!laidOut_ || entries_ == nullptr) {
    return;
  }
  if (besideEachOther()) {
    right_->fit();
    return;
  }
  const int least = tablesWidth(&Comparison::leastWidth);
  const int room = across_->width() - across_->handleWidth();
  if (across_->sizes().back() < least) {
    across_->setSizes({room - least, least});
  }
}

void Page::keepLayout() const {
  if (!laidOut_) {
    return;
  }
  QSettings settings;
  if (parted_) {
    settings.setValue(layoutKey(description_, u"across"_s), across_->saveState());
  }
  if (left_ != nullptr) {
    settings.setValue(layoutKey(description_, u"left"_s), left_->saveState());
  }
  if (right_ != nullptr) {
    settings.setValue(layoutKey(description_, u"right"_s), right_->saveState());
  }
}

void Page::resetLayout() {
  QSettings().remove(u"layout/"_s + description_.key);
  parted_ = false;
  restoreLayout();
}

QSize Page::minimumSizeHint() const { return {560, 18 * fontMetrics().height()}; }

}  // namespace strokewright::ui
