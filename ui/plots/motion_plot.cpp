#include "ui/plots/motion_plot.h"

#include <QCheckBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/model/inputs.h"
#include "core/motion/results.h"
#include "core/units/parse.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/plots/motion_scene.h"
#include "ui/plots/plot_readout.h"
#include "ui/plots/plot_widget.h"
#include "ui/plots/refresher.h"
#include "ui/widgets/pane_column.h"
#include "ui/widgets/plain_field.h"

namespace strokewright::ui {
namespace {

using units::Kind;

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kStepsPerTurn = 720.0;  // arrow keys go by half a degree
constexpr int kCurvesLines = 15;         // of text: panels that can be read
constexpr int kPanels = 3;               // travel, speed, acceleration
constexpr int kAxisLines = 3;            // of text, under the lowest panel
constexpr int kPanelLines = 7;           // of text, with the panel's title
constexpr double kReadoutShare = 0.5;    // of the height, at most

}  // namespace

class MotionPlot::Parts {
 public:
  Parts(Document& openDocument, Taste& readersTaste, MotionPlot& view)
      : document(openDocument),
        taste(readersTaste),
        owner(view),
        plot(new PlotWidget(&view)),
        typed(new QLineEdit(&view)),
        twoTurns(new QCheckBox(tr("&Two turns"), &view)),
        readout(new PlotReadout(&view)),
        panes(new PaneColumn(Qt::Vertical, kReadoutShare, &view)) {
    auto* const name = new QLabel(tr("Crank &angle"), &view);
    name->setBuddy(typed);
    typed->setAccessibleName(tr("Crank angle of the cursor"));
    leaveUndoToDocument(*typed);
    typed->setMaximumWidth(typed->fontMetrics().averageCharWidth() * 14);
    auto* const row = new QHBoxLayout;
    row->setSpacing(8);
    row->addWidget(name);
    row->addWidget(typed);
    row->addStretch(1);
    row->addWidget(twoTurns);
    auto* const column = new QVBoxLayout(&view);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addLayout(row);
    column->addWidget(panes, 1);
    panes->addPane(plot, kCurvesLines);
    panes->addPane(readout, [this] { return readout->heightForWidth(panes->width()); });
    panes->setNames({tr("Curves"), tr("At the cursor")});
    plot->setAccessibleName(tr("Motion of the piston"));
    plot->setFollowsPointer(true);
    plot->installEventFilter(&view);
  }

  /// Panels that find no room, from the top: the travel is the one best known.
  int panelsLeftOut() const {
    const int lines = plot->height() / plot->fontMetrics().height() - kAxisLines;
    return kPanels - std::clamp(lines / kPanelLines, 1, kPanels);
  }

  void resized() {
    if (plot->isVisible() && panelsLeftOut() != leftOutAbove) refresh();
  }

  int turns() const { return twoTurns->isChecked() ? 2 : 1; }

  void refresh() {
    movers = moversOf(document.assessment());
    Motions motions = motionsOf(document.evaluation());
    readout->setRemark(leftOut(document.assessment(), taste, motions));
    leftOutAbove = panelsLeftOut();
    plot->setScene(withoutPanelsAbove(
        motionScene(document.assessment(), taste, std::move(motions), turns()), leftOutAbove));
    showCursor();
    panes->fit();
  }

  /// @param angle [rad]
  void moveTo(double angle) {
    const double span = kTurn * turns();
    const double wrapped = std::fmod(angle, span);
    at = wrapped < 0.0 ? wrapped + span : wrapped;
    showCursor();
    Q_EMIT owner.cursorMoved(at);
  }

  void step(QPoint steps) {
    const double one = kTurn / kStepsPerTurn;
    moveTo((std::round(at / one) + steps.x() + steps.y()) * one);
  }

  void takeTyped() {
    const units::Parsed read =
        units::parse(Kind::Angle, typed->text().toStdString(), taste.style().group[Kind::Angle]);
    if (read.values.size() == 1) moveTo(read.values.front());
    showCursor();
  }

  QString shown(Kind kind, double si) const {
    return taste.number(kind, si, kind == Kind::Acceleration ? 0 : -1);
  }

  QStringList rowOf(const QString& name, const MotionPoint& point) const {
    return {name, shown(Kind::Length, point.travel), shown(Kind::Velocity, point.velocity),
            shown(Kind::Acceleration, point.acceleration)};
  }

  void showCursor() {
    const units::Style& style = taste.style();
    PlotCursor cursor{.x = toShown(style, Kind::Angle, at)};
    std::vector<QStringList> rows;
    for (const Mover& mover : movers) {
      const MotionPoint point = pointOf(mover, at);
      rows.push_back(rowOf(tr("%1, %2").arg(nameOf(document.project(), mover.engine),
                                            taste.shown(Kind::Speed, mover.speed)),
                           point));
      const std::array places{toShown(style, Kind::Length, point.travel),
                              toShown(style, Kind::Velocity, point.velocity),
                              toShown(style, Kind::Acceleration, point.acceleration)};
      for (int panel = leftOutAbove; panel < kPanels; ++panel) {
        cursor.dots.emplace_back(panel - leftOutAbove,
                                 QPointF(cursor.x, places[static_cast<std::size_t>(panel)]));
      }
    }
    addDifference(rows);
    QStringList headings{tr("At %1").arg(taste.shown(Kind::Angle, at))};
    for (const describe::Column& column : out::pistonMotion.columns.subspan(1)) {
      headings << ui::titleOf(column, taste);
    }
    readout->show(headings, rows);
    if (!movers.empty()) plot->setCursor(cursor);
    if (!typed->hasFocus() || !typed->isModified()) typed->setText(taste.shown(Kind::Angle, at));
    plot->setAccessibleDescription(description());
  }

  /// The strip and the peaks, for those who cannot see the curves.
  QString description() const {
    QStringList lines{readout->text()};
    for (const PlotMark& mark : plot->scene().marks) {
      lines << titleOf(mark.panel) + QStringLiteral(": ") + mark.label;
    }
    return lines.join(u'\n');
  }
  const QString& titleOf(int panel) const {
    return plot->scene().panels[static_cast<std::size_t>(panel)].y.title;
  }

  void addDifference(std::vector<QStringList>& rows) const {
    const Mover* const donor = moverOf(document.project().referenceDonor);
    const Mover* const target = moverOf(document.project().target());
    if (donor == nullptr || target == nullptr) return;
    const MotionPoint was = pointOf(*donor, at);
    const MotionPoint is = pointOf(*target, at);
    const bool alike =
        taste.shown(Kind::Speed, donor->speed) == taste.shown(Kind::Speed, target->speed);
    rows.push_back({alike ? tr("difference") : tr("difference, at unlike speeds"),
                    taste.difference(Kind::Length, is.travel - was.travel),
                    taste.difference(Kind::Velocity, is.velocity - was.velocity),
                    taste.difference(Kind::Acceleration, is.acceleration - was.acceleration, 0)});
  }

  const Mover* moverOf(int engine) const {
    const auto found = std::find_if(movers.begin(), movers.end(),
                                    [&](const Mover& mover) { return mover.engine == engine; });
    return found == movers.end() ? nullptr : &*found;
  }

  Document& document;
  Taste& taste;
  MotionPlot& owner;
  PlotWidget* plot;
  QLineEdit* typed;
  QCheckBox* twoTurns;
  PlotReadout* readout;
  PaneColumn* panes;
  std::vector<Mover> movers;
  double at = 0.0;       // [rad]
  int leftOutAbove = 0;  // panels
};

MotionPlot::MotionPlot(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent), parts_(std::make_unique<Parts>(document, taste, *this)) {
  Parts* const parts = parts_.get();
  new Refresher(document, taste, *this, [parts] { parts->refresh(); });
  connect(parts->plot, &PlotWidget::cursorAsked, this, [parts](QPointF at) {
    parts->moveTo(fromShown(parts->taste.style(), Kind::Angle, at.x()));
  });
  connect(parts->plot, &PlotWidget::cursorStepped, this,
          [parts](QPoint steps) { parts->step(steps); });
  connect(parts->typed, &QLineEdit::returnPressed, this, [parts] {
    parts->typed->setModified(false);
    parts->takeTyped();
  });
  connect(parts->typed, &QLineEdit::editingFinished, this, [parts] { parts->takeTyped(); });
  connect(parts->twoTurns, &QCheckBox::toggled, this, [parts] {
    parts->refresh();
    parts->plot->fit();
  });
}

MotionPlot::~MotionPlot() = default;

bool MotionPlot::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Resize) parts_->resized();
  return QWidget::eventFilter(watched, event);
}

double MotionPlot::cursor() const { return parts_->at; }
void MotionPlot::setCursor(double angle) { parts_->moveTo(angle); }
QString MotionPlot::readout() const { return parts_->readout->text(); }

}  // namespace strokewright::ui
