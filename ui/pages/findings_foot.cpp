#include "ui/pages/findings_foot.h"

#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/standing.h"
#include "ui/widgets/finding_line.h"

namespace strokewright::ui {

namespace {

constexpr int kLinesSeen = 4;

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
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("What speaks against it"));
  auto* list = new QVBoxLayout(body_);
  list->setContentsMargins(0, 0, 0, 0);
  list->setSpacing(4);
  list->addWidget(nothing_);
  list->addStretch(1);
  setWidget(body_);
  body_->setAutoFillBackground(false);
  viewport()->setAutoFillBackground(false);
  connect(&desk_.document, &Document::projectChanged, this, &FindingsFoot::refresh);
  refresh();
}

QSize FindingsFoot::sizeHint() const {
  return {0, kLinesSeen * (fontMetrics().height() + 4)};
}

void FindingsFoot::refresh() {
  std::vector<describe::Finding> now;
  const assess::Assessment& assessment = desk_.document.assessment();
  for (int engine = 0; engine < assessment.evaluation().engines(); ++engine) {
    for (const describe::Finding& finding : assessment.findings(engine)) {
      if (belongsTo(page_, finding)) {
        now.push_back(finding);
      }
    }
  }
  std::stable_sort(now.begin(), now.end(),
                   [](const auto& a, const auto& b) { return a.weight > b.weight; });
  if (now == shown_) {
    return;
  }
  shown_ = std::move(now);
  auto* list = static_cast<QVBoxLayout*>(body_->layout());
  while (lines_.size() < shown_.size()) {
    auto* line = new FindingLine(desk_.document, body_);
    connect(line, &FindingLine::entryAsked, &desk_, &Desk::entryAsked);
    list->insertWidget(list->count() - 1, line);
    lines_.push_back(line);
  }
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (i < shown_.size()) {
      lines_[i]->setFinding(shown_[i]);
    }
    lines_[i]->setVisible(i < shown_.size());
  }
  nothing_->setVisible(shown_.empty());
  Q_EMIT relined();
}

}  // namespace strokewright::ui
