#include "ui/pages/start_page.h"

#include <QCoreApplication>
#include <QEvent>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/document/taste.h"
#include "ui/pages/link_button.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double kQuestionSize = 2.2;  ///< times the body

}  // namespace

const std::vector<Sample>& samples() {
  const auto tr = [](const char* text) { return QCoreApplication::translate("StartPage", text); };
  static const std::vector<Sample> all = {
      {u":/samples/burdock-719.strokewright"_s, u"Burdock 719"_s,
       tr("triple with wet liners: longer throw, bigger bores, and seats that were never "
          "parallel")},
      {u":/samples/tansy-270.strokewright"_s, u"Tansy 270"_s,
       tr("parallel twin: longer throw, shorter rods, taller pistons")},
      {u":/samples/teasel-125.strokewright"_s, u"Teasel 125"_s,
       tr("two-stroke single, filled up to its class by the crank alone")},
      {u":/samples/culvert-1040.strokewright"_s, u"Culvert 1040"_s,
       tr("slow compression-ignition single, the gap set by the head gasket")}};
  return all;
}

StartPage::StartPage(Taste& taste, QWidget* parent)
    : QScrollArea(parent), taste_(taste), recent_(new QGridLayout) {
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setFocusPolicy(Qt::NoFocus);
  auto* body = new QWidget;
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(48, 32, 48, 24);
  column->setSpacing(8);

  question_ = new QLabel(tr("What shall it become?"), body);
  sizeQuestion();
  column->addWidget(question_);
  auto* says = new QuietLabel(
      tr("Enter what you measured on the donor and what you want of it. You see whether the parts "
         "fit, which spacer to make, what limits the revs, and take one page to the machine."),
      body);
  says->setWordWrap(true);
  column->addWidget(says);
  column->addSpacing(8);

  auto* keys = new QHBoxLayout;
  auto* fresh = new QPushButton(tr("Ne&w conversion"), body);
  fresh->setDefault(true);
  auto* open = new QPushButton(tr("&Open a file…"), body);
  keys->addWidget(fresh);
  keys->addWidget(open);
  keys->addStretch(1);
  column->addLayout(keys);
  open_ = open;
  connect(fresh, &QPushButton::clicked, this, &StartPage::newAsked);
  connect(open, &QPushButton::clicked, this, &StartPage::openAsked);
  setFocusProxy(fresh);

  column->addSpacing(16);
  column->addWidget(new QuietLabel(tr("opened last"), body));
  column->addLayout(recent_);
  column->addSpacing(16);
  addSamples(*column);
  column->addStretch(1);
  setWidget(body);
  body->setAutoFillBackground(false);
  viewport()->setAutoFillBackground(false);
  connect(&taste_, &Taste::recentFilesChanged, this, &StartPage::fillRecent);
  fillRecent();
}

void StartPage::sizeQuestion() {
  QFont large = font();
  large.setPointSizeF(font().pointSizeF() * kQuestionSize);
  large.setWeight(QFont::DemiBold);
  question_->setFont(large);
}

void StartPage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange && question_ != nullptr) {
    sizeQuestion();
  }
  QScrollArea::changeEvent(event);
}

void StartPage::fillRecent() {
  while (QLayoutItem* item = recent_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();
    delete item;
  }
  recent_->setHorizontalSpacing(16);
  recent_->setVerticalSpacing(0);
  recent_->setColumnStretch(2, 1);
  int row = 0;
  for (const QString& path : taste_.recentFiles()) {
    const QFileInfo file(path);
    auto* name = new LinkButton(file.completeBaseName(), widget());
    name->setToolTip(path);
    name->setEnabled(file.exists());
    connect(name, &LinkButton::clicked, this, [this, path] { Q_EMIT fileAsked(path); });
    recent_->addWidget(name, row, 0);
    recent_->addWidget(
        new QuietLabel(file.exists() ? file.absolutePath() : tr("%1 is gone").arg(path), widget()),
        row, 1);
    if (!file.exists()) {
      auto* forget = new LinkButton(tr("remove"), widget());
      forget->setAccessibleName(tr("Remove %1 from this list").arg(file.completeBaseName()));
      connect(forget, &LinkButton::clicked, this, [this, path] { taste_.forgetFile(path); });
      recent_->addWidget(forget, row, 2, Qt::AlignLeft);
    }
    ++row;
  }
  if (row == 0) {
    recent_->addWidget(new QLabel(tr("nothing yet"), widget()), 0, 0);
  }
  // Tab goes as the eye does: these were made after the samples.
  QWidget* before = open_;
  for (int i = 0; i < recent_->count(); ++i) {
    QWidget* widget = recent_->itemAt(i)->widget();
    if ((widget->focusPolicy() & Qt::TabFocus) != 0) {
      setTabOrder(before, widget);
      before = widget;
    }
  }
  setTabOrder(before, firstSample_);
}

void StartPage::addSamples(QVBoxLayout& column) {
  column.addWidget(new QuietLabel(tr("samples, opened as copies; the engines are invented"), this));
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(16);
  grid->setVerticalSpacing(0);
  grid->setColumnStretch(1, 1);
  int row = 0;
  for (const Sample& sample : samples()) {
    auto* name = new LinkButton(sample.name, this);
    connect(name, &LinkButton::clicked, this,
            [this, sample] { Q_EMIT sampleAsked(sample.path, sample.name); });
    if (firstSample_ == nullptr) {
      firstSample_ = name;
    }
    grid->addWidget(name, row, 0);
    grid->addWidget(new QLabel(sample.says, this), row++, 1);
  }
  column.addLayout(grid);
}

}  // namespace strokewright::ui
