#include "ui/plots/limits_chart.h"

#include <QVBoxLayout>
#include <algorithm>

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
        owner(view),
        plot(new PlotWidget(&view)),
        readout(new PlotReadout(&view)) {
    auto* const column = new QVBoxLayout(&view);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(plot, 1);
    column->addWidget(readout);
    plot->setAccessibleName(tr("Limits on the revs"));
  }

  /// The bars have their room beside the names, or below them.
  LimitNames names() const {
    constexpr int kBarsLetters = 30;
    const QFontMetrics metrics = owner.fontMetrics();
    int widest = 0;
    for (const QString& name : limitNames()) {
      widest = std::max(widest, metrics.horizontalAdvance(name));
    }
    const bool beside = owner.width() > widest + kBarsLetters * metrics.averageCharWidth();
    return beside ? LimitNames::Beside : LimitNames::Above;
  }

  void resized() {
    if (names() != drawn) {
      refresh();
      plot->fit();
    }
    giveRoom();
  }

  /// The words, the plot's tip too, stay only below a plot whose names have the room.
  void giveRoom() {
    constexpr int kNamesBeside = 12;  // lines of text that a chart is read in
    constexpr int kNamesAbove = 17;
    readout->setVisible(
        readout->leaves(drawn == LimitNames::Above ? kNamesAbove : kNamesBeside, owner.size()));
  }

  void refresh() {
    drawn = names();
    plot->setScene(limitsScene(document.assessment(), taste, drawn));
    readout->setRemark(limitsSentence(document.assessment(), taste));
    plot->setAccessibleDescription(readout->text());
    plot->setToolTip(readout->text());
    giveRoom();
  }

  Document& document;
  Taste& taste;
  LimitsChart& owner;
  PlotWidget* plot;
  PlotReadout* readout;
  LimitNames drawn = LimitNames::Beside;
};

LimitsChart::LimitsChart(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<Parts>(document, taste, *this)) {
  Parts* const parts = parts_.get();
  new Refresher(document, taste, *this, [parts] { parts->refresh(); });
}

LimitsChart::~LimitsChart() = default;

QString LimitsChart::readout() const { return parts_->readout->text(); }

void LimitsChart::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  parts_->resized();
}

}  // namespace strokewright::ui
