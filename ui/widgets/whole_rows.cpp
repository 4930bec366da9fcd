#include "ui/widgets/whole_rows.h"

#include <QApplication>
#include <QEvent>
#include <QLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <algorithm>

namespace strokewright::ui {

Rows rowsIn(const QWidget& laidOut) {
  Rows all;
  for (int i = 0; i < laidOut.layout()->count(); ++i) {
    const QLayoutItem* item = laidOut.layout()->itemAt(i);
    const QRect at = item->geometry();
    if (!item->isEmpty() && at.height() > 0) all.emplace_back(at.top(), at.bottom());
  }
  std::ranges::sort(all);
  Rows rows;
  for (const auto& [top, bottom] : all) {
    if (!rows.empty() && top <= rows.back().second) {
      rows.back().second = std::max(rows.back().second, bottom);
    } else {
      rows.emplace_back(top, bottom);
    }
  }
  return rows;
}

WholeRows::WholeRows(QScrollArea& area) : QObject(&area), area_(area) {
  area.installEventFilter(this);
  area.viewport()->installEventFilter(this);
  connect(area.verticalScrollBar(), &QScrollBar::valueChanged, this, &WholeRows::scrolled);
}

/// The area hears when its content is laid out anew, the viewport when its content comes or moves.
bool WholeRows::eventFilter(QObject* watched, QEvent* event) {
  const bool newContent = watched == area_.viewport() && event->type() == QEvent::ChildAdded;
  if (newContent) {
    static_cast<QChildEvent*>(event)->child()->installEventFilter(this);
  } else if (event->type() == QEvent::Resize) {
    QMetaObject::invokeMethod(this, &WholeRows::keepFocusSeen, Qt::QueuedConnection);
  } else if (event->type() == QEvent::LayoutRequest) {
    QMetaObject::invokeMethod(this, &WholeRows::fit, Qt::QueuedConnection);
  }
  return false;
}

/// On to the next row in the direction of the step, however short the step, or to what is not seen
/// yet of one that is too high; while the bar is drawn along, the row that it has come to.
void WholeRows::scrolled(int to) {
  if (to == top_) return;  // it is where it was put
  QScrollBar& bar = *area_.verticalScrollBar();
  const bool down = to > top_ && !bar.isSliderDown();
  int snapped = to;
  if (area_.widget() != nullptr && to != bar.minimum() && to != bar.maximum()) {
    snapped = down ? bar.maximum() : bar.minimum();
    const int height = area_.viewport()->height();
    for (const auto& [top, bottom] : rowsIn(*area_.widget())) {
      const bool goesOn = top <= top_ && bottom >= top_ + height;  // too high: on to its end
      if (down && goesOn) snapped = std::min(top_ + height, bottom - height + 1);
      if (down && top >= to) snapped = std::min(snapped, top);
      if (!down && top <= to) snapped = top;
    }
  }
  top_ = snapped;
  if (snapped != to) bar.setValue(snapped);
  fit();
}

void WholeRows::keepFocusSeen() {
  QWidget* focus = QApplication::focusWidget();
  const QWidget* content = area_.widget();
  if (content != nullptr && focus != nullptr && content->isAncestorOf(focus)) {
    area_.ensureWidgetVisible(focus);
  }
  fit();
}

void WholeRows::fit() {
  QWidget* content = area_.widget();
  if (content == nullptr) return;
  const int first = -content->y();
  const int last = first + area_.viewport()->height() - 1;
  int from = content->height();
  int to = -1;
  bool cut = false;
  bool tooHigh = false;  // for the area: it is seen as far as it goes
  for (const auto& [top, bottom] : rowsIn(*content)) {
    if (bottom < first || top > last) continue;
    if (top >= first && bottom <= last) {
      from = std::min(from, top);
      to = bottom;
    } else {
      cut = true;
      tooHigh |= bottom - top > last - first;
    }
  }
  if (cut && !tooHigh && to >= from) {
    content->setMask(QRect(0, from, content->width(), to - from + 1));
  } else {
    content->clearMask();
  }
}

}  // namespace strokewright::ui
