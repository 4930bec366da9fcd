#include "ui/plots/scene_view.h"

#include <QLocale>
#include <QStringList>
#include <QVBoxLayout>
#include <cmath>
#include <utility>

#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"

namespace strokewright::ui {
namespace {

/// 687 as 690: more would say more than a picture can.
double twoDigits(double number) {
  if (!(number > 0.0)) return 0.0;
  const double step = std::pow(10.0, std::floor(std::log10(number)) - 1.0);
  return std::round(number / step) * step;
}

}  // namespace

SceneView::SceneView(Document& document, Taste& taste, const QString& name,
                     std::function<SceneShown()> look, QWidget* parent)
    : QWidget(parent),
      look_(std::move(look)),
      plot_(new PlotWidget(this)),
      readout_(new PlotReadout(this)),
      refresher_(new Refresher(document, taste, *this, [this] { showScene(); })) {
  plot_->setAccessibleName(name);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(plot_, 1);
  column->addWidget(readout_);
  column->addStretch();
}

void SceneView::refresh() { refresher_->changed(); }

const PlotScene& SceneView::scene() const { return plot_->scene(); }

QString SceneView::sentence() const { return plot_->accessibleDescription(); }

void SceneView::showScene() {
  SceneShown shown = look_();
  sentence_ = shown.sentence;
  exaggerated_ = shown.exaggerated;
  plot_->setScene(std::move(shown.scene));
  sayWords();
}

void SceneView::sayWords() {
  QStringList words{sentence_};
  if (!exaggerated_.isEmpty()) {
    const QPointF unit = plot_->toWidget(0, {1.0, 1.0}) - plot_->toWidget(0, {0.0, 0.0});
    const double times = std::round(twoDigits(std::abs(unit.y() / unit.x())));
    if (times > 1.0) words += exaggerated_.arg(QLocale::c().toString(times, 'f', 0));
  }
  words.removeAll(QString());
  readout_->setRemark(words.join(u' '));
  plot_->setAccessibleDescription(words.join(u' '));
  plot_->setToolTip(words.join(u' '));
  giveRoom();
}

/// The words stay only below a plot that can be read, and alone where nothing is drawn.
void SceneView::giveRoom() {
  constexpr int kLeastLines = 12;
  plot_->setVisible(!plot_->scene().empty() || sentence_.isEmpty());
  readout_->setVisible(plot_->isHidden() || readout_->leaves(kLeastLines, size()));
}

QSize SceneView::minimumSizeHint() const { return plot_->minimumSizeHint(); }

void SceneView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  sayWords();
}

}  // namespace strokewright::ui
