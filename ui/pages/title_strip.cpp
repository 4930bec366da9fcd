#include "ui/pages/title_strip.h"

#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

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

constexpr int kAsItNeeds = 0;  // share of a cell that is as wide as what it says; never cut

}  // namespace

TitleStrip::TitleStrip(Desk& desk, QWidget* parent)
    : QWidget(parent), desk_(desk), cells_(new QHBoxLayout(this)) {
  cells_->setContentsMargins(24, 4, 12, 4);
  cells_->setSpacing(24);
  project_ = addCell(tr("project"), 3);
  engine_ = addCell(tr("engine"), 3);
  units_ = addCell(tr("units"), kAsItNeeds);
  revision_ = addCell(tr("revision"), 1);
  saved_ = addCell(tr("saved"), kAsItNeeds);
  left_ = addCell(tr("open"), 4);
  connect(&desk_.document, &Document::projectChanged, this, &TitleStrip::refresh);
  connect(&desk_.document, &Document::fileChanged, this, &TitleStrip::refreshFile);
  connect(&desk_.taste, &Taste::changed, this, &TitleStrip::refresh);
  refresh();
  refreshFile();
}

QLabel* TitleStrip::addCell(const QString& caption, int share) {
  auto* cell = new QVBoxLayout;
  cell->setSpacing(0);
  captions_.push_back(new QuietLabel(caption, this));
  cell->addWidget(captions_.back());
  auto* value = new QLabel(this);
  value->setToolTip(caption);
  value->setSizePolicy(share == kAsItNeeds ? QSizePolicy::Preferred : QSizePolicy::Ignored,
                       QSizePolicy::Fixed);
  value->setTextFormat(Qt::PlainText);
  cell->addWidget(value);
  cells_->addLayout(cell, share);
  return value;
}

void TitleStrip::setCaptioned(bool captioned) {
  for (QWidget* caption : captions_) {
    caption->setVisible(captioned);
  }
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
  for (int i = 1; i < cells_->count(); ++i) {
    const int x = cells_->itemAt(i)->geometry().left() - cells_->spacing() / 2;
    painter.drawLine(x, 2, x, height());
  }
}

}  // namespace strokewright::ui
