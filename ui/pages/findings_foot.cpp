#include "ui/pages/findings_foot.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QResizeEvent>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>
#include <deque>
#include <numeric>

#include "core/assess/entry_rules.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/standing.h"
#include "ui/widgets/finding_line.h"
#include "ui/widgets/whole_rows.h"

namespace strokewright::ui {

namespace {

constexpr int kLinesSeen = 3;
constexpr int kLinesSeenLow = 2;  ///< in a low window
constexpr int kNameDigits = 14;   ///< width of the engines' names in digits of the body font
constexpr int kBetween = 4;       ///< [px] two lines

/// How the commas of several entries are read is said once for the same engines; each field has its
/// own remark beside it.
/// @param together keeps what is said so.
void sayMarksOnce(std::vector<SharedFinding>& shared, std::deque<describe::Finding>& together) {
  for (std::size_t i = 0; i < shared.size(); ++i) {
    if (!assess::tellsTheMark(*shared[i].finding)) continue;
    std::vector<const describe::Finding*> alike{shared[i].finding};
    const auto others = std::stable_partition(
        shared.begin() + static_cast<std::ptrdiff_t>(i) + 1, shared.end(), [&](const auto& other) {
          return other.engines != shared[i].engines || !assess::tellsTheMark(*other.finding);
        });
    for (auto other = others; other != shared.end(); ++other) alike.push_back(other->finding);
    shared.erase(others, shared.end());
    if (alike.size() > 1) shared[i].finding = &together.emplace_back(assess::marksTold(alike));
  }
}

}  // namespace

FindingsFoot::FindingsFoot(Desk& desk, const PageDescription& page, QWidget* parent)
    : QScrollArea(parent),
      desk_(desk),
      page_(page),
      nothing_(new QuietLabel(tr("Nothing speaks against this page."), this)),
      beneath_(new QWidget(this)),
      more_(new LinkButton({}, beneath_)),
      elsewhere_(new LinkButton({}, beneath_)),
      body_(new QWidget) {
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // the lines wrap
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);    // too low for one; a link goes on
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("What speaks against it"));
  auto* list = new QVBoxLayout(body_);
  list->setContentsMargins(0, 0, 0, 0);
  list->setSpacing(kBetween);
  nothing_->setWordWrap(true);
  list->addWidget(nothing_);
  list->addStretch(1);
  auto* links = new QHBoxLayout(beneath_);
  links->setContentsMargins(0, 0, 0, 0);
  links->addWidget(more_);
  links->addWidget(elsewhere_);
  links->addStretch(1);
  new WholeRows(*this);
  setWidget(body_);
  body_->setAutoFillBackground(false);
  viewport()->setAutoFillBackground(false);
  connect(verticalScrollBar(), &QScrollBar::valueChanged, this, &FindingsFoot::sayMore);
  connect(more_, &LinkButton::clicked, this, &FindingsFoot::goOn);
  connect(elsewhere_, &LinkButton::clicked, this, [this] {
    const Elsewhere others = elsewhere(desk_, page_);
    if (others.count > 0) Q_EMIT desk_.pageAsked(others.pages.front()->key);
  });
  connect(&desk_.document, &Document::projectChanged, this, &FindingsFoot::refresh);
  refresh();
}

/// Of the lines, as they wrap. [px]
std::vector<int> FindingsFoot::heights() const {
  std::vector<int> heights;
  for (std::size_t i = 0; i < shown_; ++i) {
    heights.push_back(lines_[i].row->heightForWidth(width()));
  }
  if (!nothing_->isHidden()) heights.push_back(nothing_->heightForWidth(width()));
  return heights;
}

/// The first, and as many more as there is room for: all where the link to the rest would need what
/// the rest does.
FindingsFoot::Seen FindingsFoot::seen() const {
  const std::vector<int> all = heights();
  if (all.empty()) return {0, true};
  const int most = (isLow(*this) ? kLinesSeenLow : kLinesSeen) * (fontMetrics().height() + 10);
  const int link = elsewhere_->isHidden() ? kBetween + more_->sizeHint().height() : 0;
  const int gaps = kBetween * (static_cast<int>(all.size()) - 1);
  const int whole = std::accumulate(all.begin(), all.end(), gaps);
  if (all.size() == 1 || whole <= most + link) return {whole, true};
  int height = all.front();
  for (std::size_t i = 1; i < all.size() && height + kBetween + all[i] <= most; ++i) {
    height += kBetween + all[i];
  }
  return {height, false};
}

/// What stands beneath the lines takes, clear of them. [px]
int FindingsFoot::footHeight() const {
  const Seen lines = seen();
  if (lines.all && elsewhere_->isHidden()) return 0;
  return (lines.height > 0 ? kBetween : 0) + more_->sizeHint().height();
}

QSize FindingsFoot::sizeHint() const { return {0, seen().height + footHeight()}; }

void FindingsFoot::arrange() {
  more_->setVisible(!seen().all);
  const int foot = footHeight();
  beneath_->setVisible(foot > 0);
  setViewportMargins(0, 0, 0, foot);
  const int links = more_->sizeHint().height();
  beneath_->setGeometry(0, height() - links, width(), links);
  sayMore();
  updateGeometry();
}

/// "2 more below"; at the end how many are above.
void FindingsFoot::sayMore() {
  const int first = verticalScrollBar()->value();
  const int last = first + viewport()->height();
  int above = 0;
  int below = 0;
  int top = 0;
  for (const int height : heights()) {
    above += top < first;
    below += top + height > last;
    top += height + kBetween;
  }
  const QString words = below > 0 ? tr("%1 more below").arg(below) : tr("%1 more above").arg(above);
  if (words == more_->text()) return;
  more_->setText(words);
  more_->setAccessibleName(words);
  more_->updateGeometry();
}

/// To the next line, from the last to the first.
void FindingsFoot::goOn() {
  QScrollBar& bar = *verticalScrollBar();
  bar.triggerAction(bar.value() < bar.maximum() ? QScrollBar::SliderSingleStepAdd
                                                : QScrollBar::SliderToMinimum);
}

QString FindingsFoot::enginesText(const std::vector<int>& engines) const {
  if (engines.size() > 1 && engines.size() == desk_.document.project().engines.size()) {
    return tr("all engines");
  }
  QStringList names;
  for (const int engine : engines) {
    names += engineName(desk_, engine);
  }
  return names.join(QStringLiteral(", "));
}

int FindingsFoot::nameWidth() const { return kNameDigits * fontMetrics().horizontalAdvance(u'0'); }

void FindingsFoot::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) {
    for (const Line& line : lines_) {
      line.engines->setFixedWidth(nameWidth());
    }
    arrange();
  }
  QScrollArea::changeEvent(event);
}

void FindingsFoot::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  arrange();
}

/// A sentence may wrap otherwise.
bool FindingsFoot::eventFilter(QObject* watched, QEvent* event) {
  if (watched == body_ && event->type() == QEvent::LayoutRequest) arrange();
  return QScrollArea::eventFilter(watched, event);
}

void FindingsFoot::addLine() {
  Line line{.row = new QWidget(body_), .engines = nullptr, .finding = nullptr};
  line.engines = new QuietLabel({}, line.row);
  line.engines->setWordWrap(true);
  line.engines->setFixedWidth(nameWidth());
  line.finding = new FindingLine(desk_.document, line.row);
  auto* row = new QHBoxLayout(line.row);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(8);
  row->addWidget(line.engines, 0, Qt::AlignTop);
  row->addWidget(line.finding, 1);
  connect(line.finding, &FindingLine::entryAsked, &desk_, &Desk::entryAsked);
  connect(line.finding, &FindingLine::listAsked, &desk_, &Desk::listAsked);
  auto* list = static_cast<QVBoxLayout*>(body_->layout());
  list->insertWidget(list->count() - 1, line.row);  // before the stretch
  lines_.push_back(line);
}

/// "and 3 more elsewhere: Revs".
void FindingsFoot::sayElsewhere(bool behindOthers) {
  const Elsewhere others = elsewhere(desk_, page_);
  QStringList names;
  for (const PageDescription* page : others.pages) names += page->name;
  const QString words =
      (behindOthers ? tr("and %1 more elsewhere: %2") : tr("%1 told elsewhere: %2"))
          .arg(others.count)
          .arg(names.join(QStringLiteral(", ")));
  if (words != elsewhere_->text()) {
    elsewhere_->setText(words);
    elsewhere_->setAccessibleName(words);
    elsewhere_->updateGeometry();
  }
  elsewhere_->setVisible(others.count > 0);
}

void FindingsFoot::refresh() {
  std::deque<describe::Finding> together;
  std::vector<SharedFinding> now = findingsOf(desk_, page_);
  sayMarksOnce(now, together);
  bool relinedNow = now.size() != shown_;
  while (lines_.size() < now.size()) {
    addLine();
  }
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    const Line& line = lines_[i];
    line.row->setVisible(i < now.size());
    if (i < now.size()) {
      relinedNow |= line.finding->finding() != *now[i].finding;
      line.finding->setFinding(*now[i].finding);
      say(*line.engines, enginesText(now[i].engines));
    }
  }
  shown_ = now.size();
  const bool leadsElsewhere = !elsewhere_->isHidden();
  sayElsewhere(!now.empty());
  relinedNow |= leadsElsewhere == elsewhere_->isHidden();
  const auto refused = now.empty() ? refusalOf(desk_, page_) : std::nullopt;
  say(*nothing_, refused ? tr("Refused: %1").arg(desk_.taste.sentence(*refused))
                         : tr("Nothing speaks against this page."));
  nothing_->setVisible(now.empty() && (refused || elsewhere_->isHidden()));
  if (relinedNow) {
    arrange();
    Q_EMIT relined();
  }
}

}  // namespace strokewright::ui
