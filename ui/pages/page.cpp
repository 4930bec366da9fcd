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

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double kQuestionSize = 1.3;      ///< times the body
constexpr double kTablesShare = 0.57;      ///< of the width, at most
constexpr double kResultsBeside = 0.45;    ///< of the width, where there is no picture
constexpr double kResultsShare = 0.3;      ///< of the height, at most
constexpr double kListsShare = 0.5;        ///< of the height, at most
constexpr double kTablesBelowShare = 0.6;  ///< of the height, at most, below a picture

QString layoutKey(const PageDescription& page, const QString& part) {
  return u"layout/"_s + page.key + u'/' + part;
}

}  // namespace

Page::Page(Desk& desk, const PageDescription& description, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      description_(description),
      question_(new QuietLabel(description.question, this)),
      answerLine_(new AnswerLine(description.deed.says, this)),
      across_(new QSplitter(Qt::Horizontal, this)) {
  across_->setChildrenCollapsible(false);
  across_->setHandleWidth(16);
  if (QWidget* left = makeLeftSide()) {
    across_->addWidget(left);
  }
  if (QWidget* right = makeRightSide()) {
    across_->addWidget(right);
  }
  across_->setStretchFactor(0, 1);  // the tables keep their width
  auto* foot = new FindingsFoot(desk_, description_, this);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 12, 24, 8);
  column->setSpacing(8);
  column->addWidget(question_);
  column->addWidget(answerLine_);
  column->addWidget(new Rule(this));
  column->addWidget(across_, 1);
  column->addWidget(new Rule(this));
  column->addWidget(foot);

  connect(&desk_.document, &Document::projectChanged, this, &Page::refreshWhenSeen);
  connect(&desk_.taste, &Taste::changed, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::cylinderChanged, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::whatIfAsked, this, &Page::refreshWhenSeen);
  connect(&desk_, &Desk::stackChosen, this, &Page::refreshWhenSeen);
  connect(foot, &FindingsFoot::relined, this, &Page::orderTabs);
  connect(answerLine_, &AnswerLine::whyAsked, this, [this] {
    if (desk_.subject() >= 0) {
      Q_EMIT desk_.whyAsked(desk_.subject(), answer().result, desk_.cylinder());
    }
  });
  connect(answerLine_, &AnswerLine::entryAsked, this,
          [this] { Q_EMIT desk_.entryAsked(answer().unlocksOf, answer().unlocks); });
  connect(answerLine_, &AnswerLine::deedAsked, this, [this] { description_.deed.act(desk_); });
  sizeQuestion();
  orderTabs();
}

/// The picture with the tables below it, or the tables alone.
QWidget* Page::makeLeftSide() {
  if (description_.picture != nullptr) {
    QWidget* picture = description_.picture(desk_, across_);
    whyPlace_ = new WhyPlace(desk_, picture, WhyPlace::Of::Picture, across_);
  }
  if (description_.tables.empty()) {
    return whyPlace_;
  }
  auto* column = new QSplitter(Qt::Vertical, across_);
  column->setChildrenCollapsible(false);
  column->setHandleWidth(12);
  if (whyPlace_ != nullptr) {
    column->addWidget(whyPlace_);
  }
  for (const TableOnPage& table : description_.tables) {
    column->addWidget(makeTablePane(desk_, table, column));
  }
  column->setStretchFactor(0, 1);
  if (whyPlace_ == nullptr) {
    whyPlace_ = new WhyPlace(desk_, column, WhyPlace::Of::Tables, across_);
    return whyPlace_;
  }
  pictured_ = column;
  return column;
}

QWidget* Page::withLists(QWidget* entries) {
  if (description_.lists.empty()) {
    return entries;
  }
  entered_ = new QSplitter(Qt::Vertical, across_);
  entered_->setChildrenCollapsible(false);
  entered_->setHandleWidth(12);
  entered_->addWidget(entries);
  for (const describe::List* list : description_.lists) {
    QWidget* pane = makeListPane(desk_, *list, entered_);
    connect(pane->findChild<ListEdit*>(), &ListEdit::relined, this, &Page::orderTabs);
    entered_->addWidget(pane);
  }
  return entered_;
}

/// Entries and results have the whole page.
bool Page::besideEachOther() const {
  return description_.picture == nullptr && description_.tables.empty();
}

/// Entries and results; with nothing on the left they share the page side by side.
QWidget* Page::makeRightSide() {
  if (description_.entries.empty() && description_.results.empty()) {
    return nullptr;
  }
  entries_ = new Comparison(desk_, description_, Comparison::Of::Entries, across_);
  connect(entries_, &Comparison::rebuilt, this, &Page::orderTabs);
  connect(entries_, &Comparison::rebuilt, this, &Page::roomForTables);
  QWidget* entered = withLists(entries_);
  if (description_.results.empty()) {
    return entered;
  }
  results_ = new Comparison(desk_, description_, Comparison::Of::Results, across_);
  connect(results_, &Comparison::rebuilt, this, &Page::orderTabs);
  if (besideEachOther()) {
    across_->addWidget(entered);
    whyPlace_ = new WhyPlace(desk_, results_, WhyPlace::Of::Tables, across_);
    return whyPlace_;
  }
  down_ = new QSplitter(Qt::Vertical, across_);
  down_->setChildrenCollapsible(false);
  down_->setHandleWidth(12);
  down_->addWidget(entered);
  down_->addWidget(results_);
  return down_;
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
                         deed.possible(desk_));
  }
}

bool Page::focusEntry(int engine, const describe::Input& input) {
  return entries_ != nullptr && entries_->focusEntry(engine, input);
}

bool Page::focusList(const describe::List& list) {
  for (ListEdit* edit : findChildren<ListEdit*>()) {
    if (edit->place().list == &list) {
      edit->focusFirst();
      return true;
    }
  }
  return false;
}

void Page::explain(int engine, const describe::Result& result, int cylinder) {
  if (whyPlace_ != nullptr) {
    whyPlace_->explain(engine, result, cylinder);
  }
}

void Page::focusFirst() {
  if (entries_ != nullptr) {
    entries_->focusFirst();
  } else {
    across_->setFocus();
  }
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
  const auto restored = [&](QSplitter* splitter, const QString& part) {
    return splitter->restoreState(settings.value(layoutKey(description_, part)).toByteArray());
  };
  // The tables as wide as they like, the picture the rest; the entries come before the results.
  if (!restored(across_, u"across"_s) && entries_ != nullptr) {
    const int room = across_->width() - across_->handleWidth();
    const int tables = besideEachOther() ? static_cast<int>(kResultsBeside * room)
                                         : std::min(entries_->sizeHint().width(),
                                                    static_cast<int>(kTablesShare * room));
    across_->setSizes({room - tables, tables});
  }
  roomForTables();
  if (down_ != nullptr && !restored(down_, u"down"_s)) {
    const int most = static_cast<int>(kResultsShare * across_->height());
    const int results = std::min(results_->sizeHint().height(), most);
    down_->setSizes({across_->height() - results, results});
  }
  // What comes first has the rest of what the others like to have, of a share of the whole.
  const auto shareOut = [](QSplitter* splitter, double share) {
    const int most = static_cast<int>(share * splitter->height());
    QList<int> sizes{splitter->height()};
    for (int i = 1; i < splitter->count(); ++i) {
      sizes += std::min(splitter->widget(i)->sizeHint().height(), most / (splitter->count() - 1));
      sizes.front() -= sizes.back();
    }
    splitter->setSizes(sizes);
  };
  if (entered_ != nullptr && !restored(entered_, u"entered"_s)) shareOut(entered_, kListsShare);
  if (pictured_ != nullptr && !restored(pictured_, u"pictured"_s)) {
    shareOut(pictured_, kTablesBelowShare);
  }
}

/// More engines than when the widths were chosen: what is beside a table gives way, as far as it
/// can.
void Page::roomForTables() {
  if (!laidOut_ || entries_ == nullptr) {
    return;
  }
  const int least = entries_->leastWidth();  // of both tables
  const int room = across_->width() - across_->handleWidth();
  const int right = across_->sizes().back();
  if (right < least) {
    across_->setSizes({room - least, least});
  } else if (besideEachOther() && room - right < least) {
    across_->setSizes({least, room - least});
  }
}

void Page::keepLayout() const {
  if (!laidOut_) {
    return;
  }
  QSettings settings;
  settings.setValue(layoutKey(description_, u"across"_s), across_->saveState());
  if (down_ != nullptr) {
    settings.setValue(layoutKey(description_, u"down"_s), down_->saveState());
  }
  if (entered_ != nullptr) {
    settings.setValue(layoutKey(description_, u"entered"_s), entered_->saveState());
  }
  if (pictured_ != nullptr) {
    settings.setValue(layoutKey(description_, u"pictured"_s), pictured_->saveState());
  }
}

void Page::resetLayout() {
  QSettings().remove(u"layout/"_s + description_.key);
  restoreLayout();
}

QSize Page::minimumSizeHint() const { return {700, 480}; }

}  // namespace strokewright::ui
