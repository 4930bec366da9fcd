#include "ui/plots/bore_stroke_map.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/chamber/results.h"
#include "core/compression/results.h"
#include "core/firing/layouts.h"
#include "core/limits/results.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/bore_stroke_scene.h"
#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"
#include "ui/widgets/pane_column.h"

namespace strokewright::ui {
namespace {

using describe::Cell;
using describe::Entry;
using describe::Input;
using describe::Result;
using describe::State;
using units::Kind;
namespace in = model::in;

constexpr auto kDragKey = "bore and stroke on the map";
constexpr double kPerMetre = 1e4;      // steps of 0.1 mm
constexpr int kMapLines = 13;          // of text: a map that can be read
constexpr double kReadoutShare = 0.5;  // of the height, at most

double snapped(double metres) { return std::round(metres * kPerMetre) / kPerMetre; }

bool sameStep(double a, double b) { return std::abs(a - b) < 1e-9; }

/// The entry with another length in it, in millimetres. Its ± and note stay; that it was measured
/// does not.
Entry withLength(const Entry& before, const Input& input, double metres) {
  const units::Style plain;
  std::string text = plain.editable(Kind::Length, metres);
  if (before.plusMinus) text.append(" ± ").append(plain.editable(Kind::Length, *before.plusMinus));
  text.append(" mm");
  Entry entry = model::entryFrom(input, text, units::UnitGroup::metric());
  entry.oneSigma = before.oneSigma;
  entry.note = before.note;
  if (before.origin != describe::Origin::Measured) entry.origin = before.origin;
  return entry;
}

}  // namespace

class BoreStrokeMap::Parts {
 public:
  Parts(Document& openDocument, Taste& readersTaste, BoreStrokeMap& view)
      : document(openDocument),
        taste(readersTaste),
        panes(new PaneColumn(Qt::Vertical, kReadoutShare, &view)),
        plot(new PlotWidget(panes)),
        below(new QWidget(panes)),
        readout(new PlotReadout(below)),
        caption(new QLabel(below)),
        put(new QPushButton(tr("&Put into the target"), below)) {
    caption->setWordWrap(true);
    auto* const row = new QHBoxLayout;
    row->setSpacing(16);
    row->addWidget(caption, 1);
    row->addWidget(put, 0, Qt::AlignBottom);
    auto* const words = new QVBoxLayout(below);
    words->setContentsMargins(0, 0, 0, 0);
    words->setSpacing(4);
    words->addWidget(readout);
    words->addLayout(row);
    words->addStretch(1);
    panes->addPane(plot, kMapLines);
    panes->addPane(below, [this] { return below->heightForWidth(panes->width()); });
    panes->setNames({tr("Map"), tr("At the cross-hair")});
    auto* const column = new QVBoxLayout(&view);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(panes);
    plot->setAccessibleName(tr("Map of bore and stroke"));
  }

  /// Nothing of the project before stays: window, zoom, cross-hair.
  void begin() {
    window.reset();
    held = false;
    plot->fit();
  }

  void refresh() {
    const assess::Assessment& assessment = document.assessment();
    put->setToolTip(tr("Bore and stroke of the cross-hair, to the nearest %1 (Enter)")
                        .arg(taste.shown(Kind::Length, 1.0 / kPerMetre)));
    if (document.project().target() < 0) {
      trial.reset();
      plot->setScene({});
      readout->show({}, {});
      caption->setText(tr("The map needs a target."));
      put->setEnabled(false);
      return;
    }
    trial.emplace(assessment);
    if (!dragging) keepWindow(assessment);
    if (!held || dragging) cross = trial->here().value_or(centre());
    plot->setScene(boreStrokeScene(*trial, assessment, taste, *window));
    caption->setText(captionText());
    showCross();
    panes->fit();
  }

  /// The window moves only when an engine leaves it or would be lost in it.
  void keepWindow(const assess::Assessment& assessment) {
    const MapWindow wanted = windowFor(assessment);
    bool fits = window && wanted.width() > 0.5 * window->width() &&
                wanted.height() > 0.5 * window->height();
    for (int engine = 0; fits && engine < assessment.evaluation().engines(); ++engine) {
      const auto pair = pairOf(assessment, engine);
      fits = !pair || window->holds(*pair);
    }
    if (!fits) window = wanted;
  }

  Pair centre() const {
    return {snapped(0.5 * (window->least.bore + window->most.bore)),
            snapped(0.5 * (window->least.stroke + window->most.stroke))};
  }

  QString captionText() const {
    const model::Project& project = document.project();
    const describe::Evaluation& evaluation = document.assessment().evaluation();
    const QString why = whyNot(document.assessment(), taste, trial->target(), out::displacement);
    if (plot->scene().empty()) return tr("The target %1.").arg(why);
    const QString follows =
        trial->squishIsHeld()
            ? tr("The spacer follows the squish gap wanted, %1")
                  .arg(taste.shown(Kind::FineLength,
                                   evaluation.inputValue(trial->target(), in::wantedSquish)))
            : tr("The spacer follows what is wanted of the deck");
    const std::string_view layout = firing::layoutName(evaluation, trial->target());
    QString text =
        tr("Displacements of %1. %2, and the head gasket's bore the bore; chamber, masses, rod and "
           "compression height of %3 stay.")
            .arg(layout.empty() ? tr("%1 cylinders").arg(evaluation.cylinders(trial->target()))
                                : fromCore(layout),
                 follows, nameOf(project, trial->target()));
    if (evaluation.inputGiven(trial->target(), in::spacer) ||
        evaluation.inputGiven(trial->target(), in::headGasketBore)) {
      text +=
          tr(" What is put into the target is bore and stroke alone: spacer and head gasket stay "
             "as entered.");
    }
    if (document.assessment()(trial->target(), out::workingSpeed).state != State::Value) {
      text += tr(" Regions of the rev limits wait for the revs wanted.");
    }
    if (!why.isEmpty()) text += tr(" The target %1.").arg(why);
    return text;
  }

  QString shown(const Cell& cell, const Result& result) const {
    return cell.state == State::Value ? taste.value(result, cell.value) : QStringLiteral("–");
  }

  /// What would stop it first at the cross-hair.
  QString governsText() {
    const Cell governs = trial->at(cross, out::governs);
    if (governs.state != State::Value) return {};
    return tr("At the cross-hair it would be stopped by %1.")
        .arg(taste.value(out::governs, governs.value));
  }

  /// @param cellOf what a result comes to there
  template <typename CellOf>
  QStringList columnOf(const Pair& pair, const CellOf& cellOf) {
    QStringList column{taste.shown(Kind::Length, pair.bore),
                       taste.shown(Kind::Length, pair.stroke)};
    for (const Result* result :
         {&out::displacement, &out::compressionRatio, &out::meanPistonSpeed, &out::revCeiling}) {
      column << shown(cellOf(*result), *result);
    }
    return column;
  }

  void showCross() {
    if (!trial) return;
    put->setEnabled(canPut());
    if (plot->scene().empty()) {
      readout->show({}, {});
      readout->setRemark({});
      return;
    }
    // Beside each other, as the engines stand in the tables: there is less width than height.
    QStringList headings{tr("At"), tr("cross-hair")};
    std::vector<QStringList> rows{{tr("Bore")},  {tr("Stroke")},       {tr("Displacement")},
                                  {tr("Ratio")}, {tr("Piston speed")}, {tr("Rev ceiling")}};
    const auto add = [&rows](const QStringList& column) {
      for (std::size_t i = 0; i < rows.size(); ++i) rows[i] += column[static_cast<int>(i)];
    };
    add(columnOf(cross, [&](const Result& result) { return trial->at(cross, result); }));
    if (const auto here = trial->here()) {
      const int target = trial->target();  // as entered, its own spacer in
      headings += nameOf(document.project(), target);
      add(columnOf(*here,
                   [&](const Result& result) { return document.assessment()(target, result); }));
    }
    readout->show(headings, rows);
    readout->setRemark(governsText());
    const units::Style& style = taste.style();
    plot->setCursor({.x = toShown(style, Kind::Length, cross.bore),
                     .y = toShown(style, Kind::Length, cross.stroke)});
    plot->setAccessibleDescription(readout->text());
  }

  /// A person placed the cross-hair, and it is not where the target stands.
  bool canPut() const {
    if (!trial || !held) return false;
    const auto here = trial->here();
    return !here || !sameStep(here->bore, cross.bore) || !sameStep(here->stroke, cross.stroke);
  }

  void putIntoTarget() {
    if (canPut()) enter({snapped(cross.bore), snapped(cross.stroke)}, {});
  }

  Pair pairAt(QPointF shownAt) const {
    const units::Style& style = taste.style();
    return {snapped(fromShown(style, Kind::Length, shownAt.x())),
            snapped(fromShown(style, Kind::Length, shownAt.y()))};
  }

  void moveTo(const Pair& pair) {
    if (!trial) return;
    constexpr double kLeast = 1e-3;
    held = true;
    cross = {std::max(pair.bore, kLeast), std::max(pair.stroke, kLeast)};
    showCross();
  }

  /// Bore and stroke of the target, through the one door.
  void enter(const Pair& pair, const QString& mergeKey) {
    const int target = document.project().target();
    if (target < 0 || pair.bore <= 0.0 || pair.stroke <= 0.0) return;
    const auto here = pairOf(document.assessment(), target);
    const bool sameBore = here && sameStep(here->bore, pair.bore);
    const bool sameStroke = here && sameStep(here->stroke, pair.stroke);
    const auto change = [&](model::Project& project) {
      model::Engine& engine = project.engines[static_cast<std::size_t>(target)];
      const auto set = [&](const Input& input, double metres) {
        engine.set(input, withLength(engine[input], input, metres));
      };
      const bool byThrow = engine[in::crankThrow].known();
      if (!sameBore) set(in::bore, pair.bore);
      if (!sameStroke && byThrow) set(in::crankThrow, 0.5 * pair.stroke);
      if (!sameStroke && (!byThrow || engine[in::stroke].known())) set(in::stroke, pair.stroke);
    };
    document.edit(tr("bore and stroke of %1").arg(nameOf(document.project(), target)), change,
                  mergeKey);
  }

  void drag(QPointF shownAt) {
    if (!dragging) document.closeStep();
    dragging = true;
    enter(pairAt(shownAt), QLatin1String(kDragKey));
  }

  void drop() {
    dragging = false;
    document.closeStep();
    refresh();
  }

  void giveUp() {
    document.undoOpenStep(QLatin1String(kDragKey));
    drop();
  }

  Document& document;
  Taste& taste;
  PaneColumn* panes;
  PlotWidget* plot;
  QWidget* below;  // what the cross-hair reads
  PlotReadout* readout;
  QLabel* caption;
  QPushButton* put;
  std::optional<Trial> trial;
  std::optional<MapWindow> window;
  Pair cross;
  bool held = false;  // the cross-hair stays where the person put it
  bool dragging = false;
};

BoreStrokeMap::BoreStrokeMap(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<Parts>(document, taste, *this)) {
  Parts* const parts = parts_.get();
  new Refresher(document, taste, *this, [parts] { parts->refresh(); });
  connect(&document, &Document::begun, this, [parts] { parts->begin(); });
  connect(parts->plot, &PlotWidget::cursorAsked, this,
          [parts](QPointF at) { parts->moveTo(parts->pairAt(at)); });
  connect(parts->plot, &PlotWidget::cursorStepped, this, [parts](QPoint steps) {
    parts->moveTo({snapped(parts->cross.bore + steps.x() / kPerMetre),
                   snapped(parts->cross.stroke + steps.y() / kPerMetre)});
  });
  connect(parts->plot, &PlotWidget::confirmed, this, &BoreStrokeMap::putIntoTarget);
  connect(parts->put, &QPushButton::clicked, this, &BoreStrokeMap::putIntoTarget);
  connect(parts->plot, &PlotWidget::markDragged, this,
          [parts](int /*mark*/, QPointF at) { parts->drag(at); });
  connect(parts->plot, &PlotWidget::markDropped, this, [parts] { parts->drop(); });
  connect(parts->plot, &PlotWidget::dragGivenUp, this, [parts] { parts->giveUp(); });
}

BoreStrokeMap::~BoreStrokeMap() = default;

double BoreStrokeMap::bore() const { return parts_->cross.bore; }
double BoreStrokeMap::stroke() const { return parts_->cross.stroke; }
void BoreStrokeMap::setCrossHair(double bore, double stroke) { parts_->moveTo({bore, stroke}); }
QString BoreStrokeMap::readout() const { return parts_->readout->text(); }

void BoreStrokeMap::putIntoTarget() { parts_->putIntoTarget(); }

}  // namespace strokewright::ui
