#include "ui/pages/why_place.h"

#include <QBoxLayout>
#include <algorithm>

#include "ui/pages/desk.h"
#include "ui/widgets/why_panel.h"

namespace strokewright::ui {

namespace {

constexpr int kBetween = 16;        ///< [px]
constexpr int kPictureWidth = 300;  ///< [px] at least

}  // namespace

WhyPlace::WhyPlace(Desk& desk, QWidget* content, Of of, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      content_(content),
      of_(of),
      layout_(new QBoxLayout(of == Of::Tables ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight,
                             this)) {
  layout_->setContentsMargins(0, 0, 0, 0);
  layout_->setSpacing(kBetween);
  layout_->addWidget(content_, 1);
}

QSize WhyPlace::minimumSizeHint() const {
  const QSize least = QWidget::minimumSizeHint();
  return of_ == Of::Tables ? least : least.expandedTo({kPictureWidth, 0});
}

void WhyPlace::makePanel() {
  why_ = new WhyPanel(desk_.document, this);
  layout_->addWidget(why_, 1);
  connect(why_, &WhyPanel::entryAsked, &desk_, &Desk::entryAsked);
  connect(why_, &WhyPanel::closed, this, &WhyPlace::arrange);
}

void WhyPlace::explain(int engine, const describe::Result& result, int cylinder) {
  if (why_ == nullptr) {
    makePanel();
  }
  why_->show();
  arrange();
  why_->explain(engine, result, cylinder);
}

void WhyPlace::arrange() {
  const bool asked = why_ != nullptr && !why_->isHidden();
  if (!asked) {
    content_->show();
    return;
  }
  const QSize least = content_->minimumSizeHint();
  const QSize wanted = why_->sizeHint();
  content_->setVisible(of_ == Of::Tables
                           ? height() >= least.height() + kBetween + wanted.height() / 2
                           : width() >= least.width() + kBetween + wanted.width());
}

void WhyPlace::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  arrange();
}

}  // namespace strokewright::ui
