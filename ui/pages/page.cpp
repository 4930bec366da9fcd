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
#include "ui/pages/why_place.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double kQuestionSize = 1.3;    ///< times the body
constexpr double kTablesShare = 0.57;    ///< of the width, at most
constexpr double kResultsBeside = 0.45;  ///< of the width, where there is no picture
constexpr double kResultsShare = 0.3;    ///< of the height, at most

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
  if (description_.picture != nullptr) {
    QWidget* picture = description_.picture(desk_, across_);
    whyPlace_ = new WhyPlace(desk_, picture, WhyPlace::Of::Picture, across_);
    across_->addWidget(whyPlace_);
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

  connect(&desk_.document, &Document::projectChanged, this, &Page::refresh);
  connect(&desk_.taste, &Taste::changed, this, &Page::refresh);
  connect(&desk_, &Desk::cylinderChanged, this, &Page::refresh);
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
  refresh();
  orderTabs();
}

/// Entries and results; without a picture they share the page side by side.
QWidget* Page::makeRightSide() {
  if (description_.entries.empty() && description_.results.empty()) {
    return nullptr;
  }
  entries_ = new Comparison(desk_, description_, Comparison::Of::Entries, across_);
  results_ = new Comparison(desk_, description_, Comparison::Of::Results, across_);
  connect(entries_, &Comparison::rebuilt, this, &Page::orderTabs);
  connect(results_, &Comparison::rebuilt, this, &Page::orderTabs);
  connect(entries_, &Comparison::rebuilt, this, &Page::roomForTables);
  if (description_.picture == nullptr) {
    across_->addWidget(entries_);
    whyPlace_ = new WhyPlace(desk_, results_, WhyPlace::Of::Tables, across_);
    return whyPlace_;
  }
  down_ = new QSplitter(Qt::Vertical, across_);
  down_->setChildrenCollapsible(false);
  down_->setHandleWidth(12);
  down_->addWidget(entries_);
  down_->addWidget(results_);
  return down_;
}

const Answer& Page::answer() const { return answerLine_->answer(); }

void Page::refresh() {
  answerLine_->setAnswer(description_.answer(desk_));
  if (description_.deed.possible != nullptr) {
    answerLine_->setDeedPossible(description_.deed.possible(desk_));
  }
}

bool Page::focusEntry(int engine, const describe::Input& input) {
  return entries_ != nullptr && entries_->focusEntry(engine, input);
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
    const int tables = down_ == nullptr ? static_cast<int>(kResultsBeside * room)
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
  } else if (down_ == nullptr && room - right < least) {
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
}

void Page::resetLayout() {
  QSettings().remove(u"layout/"_s + description_.key);
  restoreLayout();
}

QSize Page::minimumSizeHint() const { return {700, 480}; }

}  // namespace strokewright::ui
