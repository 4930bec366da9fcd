#include "ui/widgets/pane_column.h"

#include <QEvent>
#include <QSplitter>
#include <QTabBar>
#include <QVBoxLayout>
#include <algorithm>
#include <numeric>
#include <utility>

namespace strokewright::ui {

namespace {

constexpr int kHandle = 12;  ///< [px]

}  // namespace

PaneColumn::PaneColumn(Qt::Orientation along, double share, QWidget* parent)
    : QWidget(parent),
      share_(share),
      tabs_(new QTabBar(this)),
      splitter_(new QSplitter(along, this)) {
  tabs_->setDocumentMode(true);
  tabs_->setDrawBase(false);
  tabs_->setExpanding(false);
  tabs_->setAccessibleName(tr("Parts of the page"));
  tabs_->hide();
  splitter_->setChildrenCollapsible(false);
  splitter_->setHandleWidth(kHandle);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(tabs_);
  column->addWidget(splitter_, 1);
  connect(tabs_, &QTabBar::currentChanged, this, &PaneColumn::showPanes);
  connect(splitter_, &QSplitter::splitterMoved, this, [this] { parted_ = splitter_->saveState(); });
}

void PaneColumn::addPane(QWidget* pane, Least least) {
  panes_.push_back({.widget = pane, .least = std::move(least)});
  splitter_->addWidget(pane);
  splitter_->setStretchFactor(0, 1);
  tabs_->addTab({});
}

void PaneColumn::addPane(QWidget* pane, int lines) {
  addPane(pane, [this, lines] { return lines * fontMetrics().height(); });
}

std::vector<QWidget*> PaneColumn::panes() const {
  std::vector<QWidget*> panes;
  panes.reserve(panes_.size());
  for (const Pane& pane : panes_) panes.push_back(pane.widget);
  return panes;
}

void PaneColumn::setNames(const QStringList& names, const QStringList& words) {
  names_ = names;
  words_ = words.isEmpty() ? names : words;
  namesWidth_ = 0;
  for (int i = 0; i < count() && i < names.size(); ++i) {
    tabs_->setTabToolTip(i, names[i]);
    tabs_->setAccessibleTabName(i, names[i]);
  }
  nameTabs();
}

void PaneColumn::nameTabs() {
  const auto put = [this](const QStringList& texts) {
    for (int i = 0; i < count() && i < texts.size(); ++i) {
      if (tabs_->tabText(i) != texts[i]) tabs_->setTabText(i, texts[i]);
    }
  };
  if (namesWidth_ == 0) {
    put(names_);
    namesWidth_ = tabs_->sizeHint().width();
  }
  put(namesWidth_ > width() ? words_ : names_);
}

int PaneColumn::along(const QSize& size) const {
  return splitter_->orientation() == Qt::Vertical ? size.height() : size.width();
}

void PaneColumn::bringUp(const QWidget& inside) {
  for (int i = 0; i < count(); ++i) {
    const QWidget* pane = panes_[static_cast<std::size_t>(i)].widget;
    if (pane == &inside || pane->isAncestorOf(&inside)) {
      tabs_->setCurrentIndex(i);
    }
  }
}

void PaneColumn::fit() {
  std::vector<int> least;
  for (const Pane& pane : panes_) {
    least.push_back(std::max(0, pane.least()));
  }
  const int needed = std::accumulate(least.begin(), least.end(), (count() - 1) * kHandle);
  const bool fold = count() > 1 && along(size()) < needed;
  const bool other = fold != folded_;
  folded_ = fold;
  setLeast(fold ? std::vector<int>(panes_.size()) : least);
  if (fold) nameTabs();
  if (other) {
    tabs_->setVisible(fold);
    showPanes();
    if (!fold) {
      restoreState(parted_);
    }
  }
  if (!shared_ && !fold && isVisible()) {
    shareOut();
  }
}

void PaneColumn::setLeast(const std::vector<int>& least) {
  for (std::size_t i = 0; i < panes_.size(); ++i) {
    if (splitter_->orientation() == Qt::Vertical) {
      panes_[i].widget->setMinimumHeight(least[i]);
    } else {
      panes_[i].widget->setMinimumWidth(least[i]);
    }
  }
}

void PaneColumn::showPanes() {
  for (int i = 0; i < count(); ++i) {
    panes_[static_cast<std::size_t>(i)].widget->setVisible(!folded_ || i == tabs_->currentIndex());
  }
}

/// What comes first has the rest of what the others like to have, of a share of the whole. Who
/// likes to have less than the others leaves it to them.
void PaneColumn::shareOut() {
  shared_ = true;
  const int whole = along(splitter_->size()) - (count() - 1) * kHandle;
  std::vector<std::pair<int, int>> liked;  // and by whom
  for (int i = 1; i < count(); ++i) liked.emplace_back(along(splitter_->widget(i)->sizeHint()), i);
  std::ranges::sort(liked);
  QList<int> sizes(count(), whole);
  int left = static_cast<int>(share_ * whole);
  int waiting = static_cast<int>(liked.size());
  for (const auto& [likes, pane] : liked) {
    const int given = std::min(likes, left / waiting--);
    left -= given;
    sizes[pane] = std::max(given, along(splitter_->widget(pane)->minimumSize()));
    sizes.front() -= sizes[pane];
  }
  splitter_->setSizes(sizes);
}

QByteArray PaneColumn::saveState() const { return parted_; }

void PaneColumn::restoreState(const QByteArray& state) {
  parted_ = state;
  if (!folded_ && !splitter_->restoreState(state)) {
    shareOut();
  }
}

QSize PaneColumn::minimumSizeHint() const {
  QSize least;
  for (const Pane& pane : panes_) {
    least = least.expandedTo(pane.widget->minimumSizeHint());
  }
  return least;
}

void PaneColumn::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fit();
}

/// What stands in the panes has been filled by now.
void PaneColumn::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  fit();
}

void PaneColumn::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) {
    namesWidth_ = 0;
    fit();
  }
}

}  // namespace strokewright::ui
