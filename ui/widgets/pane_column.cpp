#include "ui/widgets/pane_column.h"

#include <QEvent>
#include <QSplitter>
#include <QTabBar>
#include <QVBoxLayout>
#include <algorithm>
#include <numeric>

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

void PaneColumn::setNames(const QStringList& names) {
  for (int i = 0; i < count() && i < names.size(); ++i) {
    tabs_->setTabText(i, names[i]);
    tabs_->setTabToolTip(i, names[i]);
  }
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
  if (other) {
    tabs_->setVisible(fold);
    showPanes();
    if (!fold) {
      restoreState(parted_);
    }
  }
  if (!shared_ && !fold) {
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

/// What comes first has the rest of what the others like to have, of a share of the whole.
void PaneColumn::shareOut() {
  shared_ = true;
  if (count() < 2) {
    return;
  }
  const int whole = along(splitter_->size()) - (count() - 1) * kHandle;
  const int most = static_cast<int>(share_ * whole) / (count() - 1);
  QList<int> sizes{whole};
  for (int i = 1; i < count(); ++i) {
    const QWidget& pane = *panes_[static_cast<std::size_t>(i)].widget;
    sizes += std::max(std::min(along(pane.sizeHint()), most), along(pane.minimumSize()));
    sizes.front() -= sizes.back();
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

void PaneColumn::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) {
    fit();
  }
}

}  // namespace strokewright::ui
