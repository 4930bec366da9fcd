#include "ui/plots/limits_chart.h"

#include <QVBoxLayout>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/limits_scene.h"
#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"

namespace strokewright::ui {

class LimitsChart::Parts {
 public:
  Parts(Document& openDocument, Taste& readersTaste, LimitsChart& view)
      : document(openDocument),
        taste(readersTaste),
        plot(new PlotWidget(&view)),
        readout(new PlotReadout(&view)) {
    auto* const column = new QVBoxLayout(&view);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(plot, 1);
    column->addWidget(readout);
    plot->setAccessibleName(tr("Limits on the revs"));
  }

  void refresh() {
    plot->setScene(limitsScene(document.assessment(), taste));
    readout->setRemark(limitsSentence(document.assessment(), taste));
    plot->setAccessibleDescription(readout->text());
  }

  Document& document;
  Taste& taste;
  PlotWidget* plot;
  PlotReadout* readout;
};

LimitsChart::LimitsChart(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<Parts>(document, taste, *this)) {
  Parts* const parts = parts_.get();
  new Refresher(document, taste, *this, [parts] { parts->refresh(); });
}

LimitsChart::~LimitsChart() = default;

QString LimitsChart::readout() const { return parts_->readout->text(); }

}  // namespace strokewright::ui
