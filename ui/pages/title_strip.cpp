#include "ui/pages/title_strip.h"

#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QList>
#include <QPainter>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/pages/standing.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using units::Kind;

namespace {

constexpr int kAsItNeeds = 0;     // share of a cell that is as wide as what it says; never cut
constexpr int kLeastDigits = 16;  // of what may be cut, where it is as long
constexpr int kBefore = 24;       // [px]
constexpr int kBehind = 12;       // [px]
constexpr int kBetween = 24;      // [px] two cells
constexpr int kBetweenLow = 14;   // [px]

/// The cells, as they stand, in the order in which they go.
enum Part { kProject, kEngine, kUnits, kRevision, kSaved, kLeft };
constexpr Part kGoing[] = {kSaved, kRevision, kEngine, kUnits, kProject};

}  // namespace

TitleStrip::TitleStrip(Desk& desk, QWidget* parent)
    : QWidget(parent), desk_(desk), cells_(new QHBoxLayout(this)) {
  cells_->setContentsMargins(kBefore, 4, kBehind, 4);
  cells_->setSpacing(kBetween);
  project_ = addCell(tr("project"), 3);
  engine_ = addCell(tr("engine"), 3);
  units_ = addCell(tr("units"), kAsItNeeds);
  revision_ = addCell(tr("revision"), 1);
  saved_ = addCell(tr("saved"), kAsItNeeds);
  left_ = addCell(tr("open"), kAsItNeeds);
  connect(&desk_.document, &Document::projectChanged, this, &TitleStrip::refresh);
  connect(&desk_.document, &Document::fileChanged, this, &TitleStrip::refreshFile);
  connect(&desk_.taste, &Taste::changed, this, &TitleStrip::refresh);
  refresh();
  refreshFile();
}

QLabel* TitleStrip::addCell(const QString& caption, int share) {
  auto* whole = new QWidget(this);
  auto* cell = new QBoxLayout(QBoxLayout::TopToBottom, whole);
  cell->setContentsMargins(0, 0, 0, 0);
  cell->setSpacing(0);
  auto* said = new QuietLabel(caption, whole);
  cell->addWidget(said);
  auto* value = new QLabel(whole);
  value->setToolTip(caption);
  value->setSizePolicy(share == kAsItNeeds ? QSizePolicy::Preferred : QSizePolicy::Ignored,
                       QSizePolicy::Fixed);
  value->setTextFormat(Qt::PlainText);
  cell->addWidget(value, 1);
  cells_->addWidget(whole, share);
  parts_.push_back({.whole = whole, .parts = cell, .caption = said, .value = value});
  return value;
}

int TitleStrip::leastWidth(const Cell& cell) const {
  const int value = cell.value->minimumWidth();
  const int caption = cell.caption->sizeHint().width();
  const bool beside = cell.parts->direction() == QBoxLayout::LeftToRight;
  return (beside ? caption + cell.parts->spacing() + value : std::max(value, caption)) +
         cells_->spacing();
}

/// As many cells as there is room for, what is left to do first. A project named as the engine is,
/// and no revision, tell nothing.
void TitleStrip::fit() {
  QList<Part> going;
  if (project_->text() == engine_->text()) going << kProject;
  if (desk_.document.project().revision.empty()) going << kRevision;
  for (const Part part : kGoing) {
    if (!going.contains(part)) going << part;
  }
  int needed = kBefore + kBehind;
  for (const Cell& cell : parts_) {
    const bool mayBeCut = cell.value->sizePolicy().horizontalPolicy() == QSizePolicy::Ignored;
    const int most = kLeastDigits * fontMetrics().horizontalAdvance(u'0');
    const int whole = cell.value->sizeHint().width();
    cell.value->setMinimumWidth(mayBeCut ? std::min(whole, most) : whole);
    needed += leastWidth(cell);
  }
  for (const Part part : going) {
    const Cell& cell = parts_[part];
    cell.whole->setVisible(needed <= width());
    if (needed > width()) needed -= leastWidth(cell);
  }
  update();
}

void TitleStrip::resizeEvent(QResizeEvent* event) {
  fit();
  QWidget::resizeEvent(event);
}

QSize TitleStrip::minimumSizeHint() const {
  return {leastWidth(parts_[kLeft]) + kBefore + kBehind, sizeHint().height()};
}

void TitleStrip::setLow(bool low) {
  for (const Cell& cell : parts_) {
    cell.parts->setDirection(low ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    cell.parts->setSpacing(low ? fontMetrics().horizontalAdvance(u' ') : 0);
    cell.parts->update();
  }
  cells_->setSpacing(low ? kBetweenLow : kBetween);
  fit();
}

void TitleStrip::refresh() {
  const model::Project& project = desk_.document.project();
  const Taste& taste = desk_.taste;
  say(*project_, project.name.empty() ? desk_.document.shownName() : fromCore(project.name));
  say(*engine_, desk_.subject() < 0 ? QString() : engineName(desk_, desk_.subject()));
  say(*units_, taste.unit(Kind::Length) + u" · "_s + taste.unit(Kind::Volume) + u" · "_s +
                   taste.unit(Kind::Mass));
  say(*revision_, project.revision.empty() ? u"–"_s : fromCore(project.revision));
  say(*left_, leftText(leftToDo(desk_)));
  fit();
}

void TitleStrip::refreshFile() {
  const QString path = desk_.document.path();
  const QString time = path.isEmpty() ? tr("never")
                                      : desk_.taste.locale().toString(
                                            QFileInfo(path).lastModified(), u"yyyy-MM-dd HH:mm"_s);
  say(*saved_,
      desk_.document.modified() && !path.isEmpty() ? tr("%1, changed since").arg(time) : time);
  refresh();
}

/// The lines between cells move with them.
bool TitleStrip::event(QEvent* event) {
  if (event->type() == QEvent::LayoutRequest) update();
  return QWidget::event(event);
}

void TitleStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(0, 0, width(), 2, ink::text(palette()));
  painter.setPen(ink::rule(palette()));
  for (const Cell& cell : parts_) {
    const int x = cell.whole->x() - cells_->spacing() / 2;
    if (cell.whole->isVisible() && cell.whole->x() > kBefore) {
      painter.drawLine(x, 2, x, height());
    }
  }
}

}  // namespace strokewright::ui
