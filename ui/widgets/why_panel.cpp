#include "ui/widgets/why_panel.h"

#include <QAbstractButton>
#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QTextBrowser>
#include <QToolButton>
#include <QUrl>
#include <QVBoxLayout>

#include "ui/document/taste.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/why_text.h"

namespace strokewright::ui {
namespace {

QToolButton* flatButton(const QString& text, QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setAutoRaise(true);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setText(text);
  return button;
}

}  // namespace

WhyPanel::WhyPanel(Document& document, QWidget* parent)
    : QFrame(parent),
      document_(document),
      text_(new QTextBrowser(this)),
      back_(flatButton(tr("Back"), this)) {
  setFrameShape(QFrame::NoFrame);
  text_->setFrameShape(QFrame::NoFrame);
  QPalette clear;
  clear.setColor(QPalette::Base, Qt::transparent);
  text_->setPalette(clear);
  text_->setOpenLinks(false);
  text_->setAccessibleName(tr("How the number was worked out"));
  auto* close = flatButton(tr("Close"), this);
  auto* top = new QHBoxLayout;
  top->addWidget(back_);
  top->addStretch();
  top->addWidget(close);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->addLayout(top);
  all->addWidget(text_);
  connect(back_, &QToolButton::clicked, this, &WhyPanel::goBack);
  connect(close, &QToolButton::clicked, this, &WhyPanel::closePanel);
  connect(text_, &QTextBrowser::anchorClicked, this, &WhyPanel::follow);
  connect(&document, &Document::begun, this, &WhyPanel::closePanel);
  connect(&document, &Document::projectChanged, this, &WhyPanel::refresh);
  connect(&document.taste(), &Taste::changed, this, &WhyPanel::refresh);
}

void WhyPanel::explain(int engine, const describe::Result& result, int cylinder) {
  questions_ = {{engine, &result, cylinder}};
  show();
  refresh();
  text_->setFocus();
}

QString WhyPanel::plainText() const { return text_->toPlainText(); }

QSize WhyPanel::sizeHint() const {
  const QFontMetrics metrics = fontMetrics();
  return {48 * metrics.averageCharWidth(), 24 * metrics.lineSpacing()};
}

void WhyPanel::refresh() {
  if (!isVisible() || questions_.empty()) return;
  const Question& asked = questions_.back();
  if (asked.engine >= static_cast<int>(document_.project().engines.size())) {
    closePanel();
    return;
  }
  text_->document()->setDefaultStyleSheet(
      QStringLiteral("a { color: %1; }").arg(ink::accent(palette()).name()));
  text_->setHtml(whyText(document_, asked.engine, *asked.result, asked.cylinder));
  back_->setEnabled(questions_.size() > 1);
}

void WhyPanel::follow(const QUrl& link) {
  const QStringList parts = link.path().split(QChar(u'@'));
  const std::string key = parts.value(0).toStdString();
  const int engine = parts.value(1).toInt();
  const describe::Catalogue& catalogue = document_.evaluation().catalogue();
  if (link.scheme() == QStringLiteral("input")) {
    Q_EMIT entryAsked(engine, catalogue.findInput(key));
  } else {
    questions_.push_back({engine, catalogue.findResult(key), parts.value(2).toInt()});
    refresh();
  }
}

void WhyPanel::goBack() {
  questions_.pop_back();
  refresh();
  text_->setFocus();
}

void WhyPanel::closePanel() {
  questions_.clear();
  hide();
  Q_EMIT closed();
}

/// Enter presses a button too, as Space does by itself.
void WhyPanel::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  auto* button = qobject_cast<QAbstractButton*>(focusWidget());
  if (event->key() == Qt::Key_Escape) {
    closePanel();
  } else if (enter && button != nullptr) {
    button->click();
  } else {
    QFrame::keyPressEvent(event);
  }
}

void WhyPanel::showEvent(QShowEvent* event) {
  QFrame::showEvent(event);
  refresh();
}

void WhyPanel::changeEvent(QEvent* event) {
  QFrame::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

}  // namespace strokewright::ui
