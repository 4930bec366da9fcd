#include "ui/plots/likelihood_plot.h"

#include <QHBoxLayout>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <utility>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/tabulated.h"
#include "core/model/inputs.h"
#include "core/spread/in_full.h"
#include "core/spread/tables.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/likelihood_scene.h"
#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"
#include "ui/plots/sampling.h"
#include "ui/widgets/pane_column.h"

namespace strokewright::ui {
namespace {

using describe::State;
using units::Kind;

constexpr int kSamples = 1'000'000;
constexpr int kSamplesInFull = 16'384;
constexpr int kProgressSteps = 1000;

// How plots and words share the height.
constexpr int kPlotsLines = 20;      // of text: two that can be read
constexpr int kWordsLines = 9;       // of text
constexpr double kWordsShare = 0.4;  // of the height, at most

}  // namespace

class LikelihoodPlot::Parts {
 public:
  Parts(Document& openDocument, Taste& readersTaste, std::function<CylinderShown()> asked,
        LikelihoodPlot& view)
      : document(openDocument),
        taste(readersTaste),
        which(std::move(asked)),
        owner(view),
        gap(new PlotWidget(&view)),
        ratio(new PlotWidget(&view)),
        command(new QPushButton(&view)),
        progress(new QProgressBar(&view)),
        readout(new PlotReadout(&view)) {
    gap->setAccessibleName(tr("How likely each squish gap is"));
    ratio->setAccessibleName(tr("How likely each compression ratio is"));
    progress->setRange(0, kProgressSteps);
    progress->setTextVisible(false);
    progress->setAccessibleName(tr("Sampling done"));
    layOut(view);
    // Before the refresher: what it shows is to be known as old by then.
    connect(&document, &Document::projectChanged, &view, [this] { age(); });
    connect(&document, &Document::begun, &view, [this] { forget(); });
    refresher = new Refresher(document, taste, view, [this] { refresh(); });
    showWork();
  }

  void layOut(LikelihoodPlot& view) {
    auto* plots = new QWidget;
    auto* pair = new QVBoxLayout(plots);
    pair->setContentsMargins(0, 0, 0, 0);
    pair->setSpacing(4);
    pair->addWidget(gap, 1);
    pair->addWidget(ratio, 1);
    auto* row = new QHBoxLayout;
    row->addWidget(command);
    row->addWidget(progress, 1);
    row->addStretch(1);
    auto* words = new QWidget;
    words->setAutoFillBackground(false);
    below = new QVBoxLayout(words);
    below->setContentsMargins(0, 4, 0, 0);
    below->addLayout(row);
    below->addWidget(readout);
    below->addStretch(1);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidgetResizable(true);
    scroll->setWidget(words);
    scroll->viewport()->setAutoFillBackground(false);
    auto* sides = new PaneColumn(Qt::Vertical, kWordsShare, &view);
    sides->addPane(plots, kPlotsLines);
    sides->addPane(scroll, kWordsLines);
    sides->setNames({tr("Curves"), tr("In numbers")});
    auto* column = new QVBoxLayout(&view);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(sides);
  }

  bool possible() const {
    const auto known = [this](const describe::Result& result) {
      return document.assessment()(shown.engine, result, shown.cylinder).state == State::Value;
    };
    return shown.engine >= 0 && known(out::squishGap) && known(out::compressionRatio);
  }

  void sample() {
    if (work.running()) {
      work.cancel();
    } else if (possible()) {
      work.start(spread::stackOf(document.evaluation(), shown.engine, shown.cylinder), kSamples,
                 inFull());
    }
    showWork();
  }

  /// On a copy of the project: the document goes on.
  Sampling::InFull inFull() const {
    return [project = document.project(), at = shown](const spread::Run& run) {
      assess::Assessment assessment(project);
      spread::Run few = run;
      few.count = kSamplesInFull;
      return spread::sampleInFull(assessment.evaluation(), at.engine, at.cylinder, few);
    };
  }

  /// "0.853 to 0.947 mm"
  QString middleOf(const spread::Spread& spread, Kind kind, int decimals) const {
    return tr("%1 to %2")
        .arg(taste.number(kind, spread.quantile(0.025), decimals),
             taste.shown(kind, spread.quantile(0.975), decimals));
  }

  QString saidInFull() const {
    const spread::StackSamples& full = *samples->inFull;
    return tr("All computed anew %1 times: 95 in 100 gaps lie from %2, ratios from %3.")
        .arg(taste.number(Kind::Count, kSamplesInFull), middleOf(full.gap, Kind::FineLength, 3),
             middleOf(full.ratio, Kind::Ratio, 2));
  }

  void take(std::shared_ptr<const Sampled> found) {
    samples = std::move(found);
    old = false;
    refresher->changed();
    showWork();
    Q_EMIT owner.sampled();
  }

  /// What was sampled stays and says that it is older; what is under way is of no use any more.
  void age() {
    old = samples != nullptr;
    work.cancel();
  }

  void forget() {
    work.cancel();
    samples.reset();
    old = false;
  }

  void showWork() {
    command->setText(work.running() ? tr("Stop sampling") : tr("&Check by sampling"));
    command->setEnabled(work.running() || possible());
    progress->setValue(0);
    progress->setVisible(work.running());
  }

  void refresh() {
    if (const CylinderShown asked = which(); asked != shown) {
      forget();
      shown = asked;
    }
    const SampledShown beside{.samples = samples ? &samples->stack : nullptr, .old = old};
    gap->setScene(gapScene(document, shown, beside));
    ratio->setScene(ratioScene(document, shown, beside));
    if (shown.engine >= 0) sayChances();
    showWork();
  }

  void sayChances() {
    const describe::Tabulated chances =
        document.evaluation().tabulated(shown.engine, out::gapChances, shown.cylinder);
    const QString why = whyNot(document.assessment(), taste, chances.state, chances.notes);
    QStringList headings{
        tr("Chance that the squish gap of cylinder %1 is")
            .arg(model::numberOfCylinder(document.evaluation(), shown.engine, shown.cylinder)),
        tr("under"), tr("computed")};
    if (samples != nullptr)
      headings << (old ? tr("sampled, before the last change") : tr("sampled"));
    std::vector<QStringList> rows;
    for (std::size_t i = 0; i < chances.rows.size(); ++i) {
      const auto at = static_cast<Eigen::Index>(i);
      const double under = chances.rows["gap_m"].numbers[at];
      rows.push_back({taste.inTerms(fromCore(chances.rows["what"].words[i])),
                      taste.shown(Kind::FineLength, under),
                      taste.shown(Kind::Share, chances.rows["chance"].numbers[at], 3)});
      if (samples != nullptr) {
        rows.back() << taste.shown(Kind::Share, samples->stack.gap.chanceBelow(under), 3);
      }
    }
    readout->show(rows.empty() ? QStringList() : headings, rows);
    QString remark = why.isEmpty()
                         ? tr("Dashed lines: 2.5, 50 and 97.5 in 100 are below. Outline: sampled.")
                         : tr("No chances are known: %1.").arg(why);
    if (samples != nullptr && samples->inFull) remark += QLatin1Char(' ') + saidInFull();
    readout->setRemark(remark);
    gap->setAccessibleDescription(readout->text());
  }

  Document& document;
  Taste& taste;
  std::function<CylinderShown()> which;
  LikelihoodPlot& owner;
  PlotWidget* gap;
  PlotWidget* ratio;
  QPushButton* command;
  QProgressBar* progress;
  PlotReadout* readout;
  QVBoxLayout* below = nullptr;  ///< the words under the plots
  Refresher* refresher = nullptr;
  Sampling work;
  std::shared_ptr<const Sampled> samples;
  bool old = false;
  CylinderShown shown;
};

LikelihoodPlot::LikelihoodPlot(Document& document, Taste& taste,
                               std::function<CylinderShown()> which, QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<Parts>(document, taste, std::move(which), *this)) {
  Parts* const parts = parts_.get();
  connect(parts->command, &QPushButton::clicked, this, [parts] { parts->sample(); });
  connect(&parts->work, &Sampling::finished, this,
          [parts](const auto& samples) { parts->take(samples); });
  connect(&parts->work, &Sampling::cancelled, this, [parts] { parts->showWork(); });
  connect(&parts->work, &Sampling::progressed, this, [parts](double share) {
    parts->progress->setValue(static_cast<int>(share * kProgressSteps));
  });
}

LikelihoodPlot::~LikelihoodPlot() = default;

void LikelihoodPlot::refresh() { parts_->refresher->changed(); }
void LikelihoodPlot::addBelow(QWidget* widget) {
  parts_->below->insertWidget(parts_->below->count() - 1, widget);
}
void LikelihoodPlot::sample() { parts_->sample(); }
bool LikelihoodPlot::sampling() const { return parts_->work.running(); }
QString LikelihoodPlot::readout() const { return parts_->readout->text(); }

}  // namespace strokewright::ui
