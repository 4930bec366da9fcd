#include "ui/pages/findings_foot.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QResizeEvent>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>
#include <deque>

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
      elsewhere_(new LinkButton({}, this)),
      body_(new QWidget) {
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // the lines wrap
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("What speaks against it"));
  auto* list = new QVBoxLayout(body_);
  list->setContentsMargins(0, 0, 0, 0);
  list->setSpacing(kBetween);
  nothing_->setWordWrap(true);
  list->addWidget(nothing_);
  list->addWidget(elsewhere_);
  list->addStretch(1);
  new WholeRows(*this);
  setWidget(body_);
  body_->setAutoFillBackground(false);
  viewport()->setAutoFillBackground(false);
  connect(elsewhere_, &LinkButton::clicked, this, [this] {
    const Elsewhere others = elsewhere(desk_, page_);
    if (others.count > 0) Q_EMIT desk_.pageAsked(others.pages.front()->key);
  });
  connect(&desk_.document, &Document::projectChanged, this, &FindingsFoot::refresh);
  refresh();
}

/// As it wraps beside the bar.
int FindingsFoot::heightOf(const Line& line) const {
  return line.row->heightForWidth(width() - verticalScrollBar()->sizeHint().width());
}

/// Of the first line, and of as many more as there is room for.
QSize FindingsFoot::sizeHint() const {
  const int most = (isLow(*this) ? kLinesSeenLow : kLinesSeen) * (fontMetrics().height() + 10);
  std::vector<int> heights;
  for (std::size_t i = 0; i < shown_; ++i) heights.push_back(heightOf(lines_[i]));
  if (!nothing_->isHidden()) heights.push_back(nothing_->heightForWidth(width()));
  if (!elsewhere_->isHidden()) heights.push_back(elsewhere_->sizeHint().height());
  int height = heights.front();
  for (std::size_t i = 1; i < heights.size() && height + kBetween + heights[i] <= most; ++i) {
    height += kBetween + heights[i];
  }
  return {0, height};
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
    updateGeometry();
  }
  QScrollArea::changeEvent(event);
}

void FindingsFoot::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) updateGeometry();
}

/// A sentence may wrap otherwise.
bool FindingsFoot::eventFilter(QObject* watched, QEvent* event) {
  if (watched == body_ && event->type() == QEvent::LayoutRequest) updateGeometry();
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
  list->insertWidget(list->count() - 2, line.row);  // before what leads elsewhere
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
    updateGeometry();
    Q_EMIT relined();
  }
}

}  // namespace strokewright::ui
