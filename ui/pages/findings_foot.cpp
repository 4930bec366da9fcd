#include "ui/pages/findings_foot.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/standing.h"
#include "ui/widgets/finding_line.h"

namespace strokewright::ui {

namespace {

constexpr int kLinesSeen = 3;
constexpr int kLinesSeenLow = 2;  ///< in a low window
constexpr int kNameDigits = 14;   ///< width of the engines' names in digits of the body font

}  // namespace

FindingsFoot::FindingsFoot(Desk& desk, const PageDescription& page, QWidget* parent)
    : QScrollArea(parent),
      desk_(desk),
      page_(page),
      nothing_(new QuietLabel(tr("Nothing speaks against this page."), this)),
      body_(new QWidget) {
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // the lines wrap
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("What speaks against it"));
  auto* list = new QVBoxLayout(body_);
  list->setContentsMargins(0, 0, 0, 0);
  list->setSpacing(4);
  nothing_->setWordWrap(true);
  list->addWidget(nothing_);
  list->addStretch(1);
  setWidget(body_);
  body_->setAutoFillBackground(false);
  viewport()->setAutoFillBackground(false);
  connect(&desk_.document, &Document::projectChanged, this, &FindingsFoot::refresh);
  refresh();
}

QSize FindingsFoot::sizeHint() const {
  return {0, (isLow(*this) ? kLinesSeenLow : kLinesSeen) * (fontMetrics().height() + 10)};
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
  list->insertWidget(list->count() - 1, line.row);
  lines_.push_back(line);
}

void FindingsFoot::refresh() {
  const std::vector<SharedFinding> now = findingsOf(desk_, page_);
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
  const auto refused = now.empty() ? refusalOf(desk_, page_) : std::nullopt;
  say(*nothing_, refused ? tr("Refused: %1").arg(desk_.taste.sentence(*refused))
                         : tr("Nothing speaks against this page."));
  nothing_->setVisible(now.empty());
  if (relinedNow) {
    Q_EMIT relined();
  }
}

}  // namespace strokewright::ui
