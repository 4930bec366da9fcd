#include "ui/plots/refresher.h"

#include <QEvent>
#include <QWidget>

#include "ui/document/document.h"
#include "ui/document/taste.h"

namespace strokewright::ui {

Refresher::Refresher(Document& document, Taste& taste, QWidget& view, std::function<void()> refresh)
    : QObject(&view), view_(view), refresh_(std::move(refresh)) {
  connect(&document, &Document::projectChanged, this, &Refresher::changed);
  connect(&taste, &Taste::changed, this, &Refresher::changed);
  view.installEventFilter(this);
}

void Refresher::changed() {
  stale_ = true;
  if (view_.isVisible()) {
    stale_ = false;
    refresh_();
  }
}

bool Refresher::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Show && stale_) {
    stale_ = false;
    refresh_();
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace strokewright::ui
