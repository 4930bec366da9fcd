#include "ui/pages/notice_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <algorithm>

#include "ui/pages/link_button.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

NoticeBar::NoticeBar(QWidget* parent)
    : QWidget(parent), sentence_(new QLabel(this)), keys_(new QHBoxLayout) {
  sentence_->setWordWrap(true);
  sentence_->setTextFormat(Qt::PlainText);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(24, 8, 24, 8);
  row->setSpacing(16);
  row->addWidget(sentence_, 1);
  row->addLayout(keys_);
  hide();
}

void NoticeBar::tell(const QString& sentence, std::vector<Key> keys) {
  say(*sentence_, sentence);
  while (QLayoutItem* item = keys_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();
    delete item;
  }
  if (keys.empty()) {
    keys.push_back({tr("understood"), {}});
  }
  for (const Key& key : keys) {
    auto* button = new LinkButton(key.says, this);
    connect(button, &LinkButton::clicked, this, [this, act = key.act] {
      hide();
      if (act) {
        act();
      }
    });
    keys_->addWidget(button);
  }
  show();
}

QString NoticeBar::shownText() const { return isVisible() ? sentence_->text() : QString(); }

void NoticeBar::lieAtTheFoot() {
  const QSize room = parentWidget()->size();
  const int high = std::max(layout()->heightForWidth(room.width()), minimumSizeHint().height());
  setGeometry(0, room.height() - high, room.width(), high);
  raise();
}

void NoticeBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette().color(QPalette::AlternateBase));
  painter.fillRect(0, 0, 4, height(), ink::accent(palette()));
  painter.fillRect(0, height() - 1, width(), 1, ink::rule(palette()));
}

}  // namespace strokewright::ui
