#include "ui/pages/drawing_pane.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSlider>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/section_view.h"
#include "ui/drawings/stack_view.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr int kBetween = 8;       ///< [px] stack and section
constexpr int kShortestName = 6;  ///< letters of an engine, where the row is full
constexpr int kFullTurn = 360;    ///< [°]
constexpr int kFineTurn = 1;      ///< [°] by an arrow key
constexpr int kCoarseTurn = 10;   ///< [°] by a page key

double radians(int degrees) {
  return units::toSi(*units::findUnit(units::Kind::Angle, "°"), degrees);
}

}  // namespace

DrawingPane::DrawingPane(Desk& desk, Shows shows, int degrees, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      engine_(new QComboBox(this)),
      cylinder_(new QComboBox(this)),
      cylinderLabel_(new QuietLabel(tr("cylinder"), this)),
      drawing_(new QComboBox(this)),
      section_(new SectionView(desk.document, desk.taste)),
      crank_(new QWidget(this)),
      slider_(new QSlider(Qt::Horizontal, crank_)),
      angle_(new QLabel(crank_)) {
  engine_->setAccessibleName(tr("Engine drawn"));
  engine_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  engine_->setMinimumContentsLength(kShortestName);
  cylinder_->setAccessibleName(tr("Cylinder drawn"));
  cylinderLabel_->setBuddy(cylinder_);
  drawing_->setAccessibleName(tr("Drawing shown"));
  drawing_->addItems({tr("stack"), tr("section")});
  drawing_->hide();
  section_->setAccessibleName(tr("Section of the cylinder"));

  auto* side = new QSplitter(Qt::Horizontal, this);
  side->setChildrenCollapsible(false);
  side->setHandleWidth(kBetween);
  side->addWidget(section_);
  if (shows == Shows::Clearances) {
    section_->showClearances();
  }
  if (shows == Shows::SectionAndStack) {
    addStack(*side);
  }

  slider_->setRange(0, kFullTurn);
  slider_->setSingleStep(kFineTurn);
  slider_->setPageStep(kCoarseTurn);
  slider_->setAccessibleName(tr("Crank angle"));
  auto* chooser = new QHBoxLayout;
  chooser->addWidget(engine_);
  chooser->addWidget(cylinderLabel_);
  chooser->addWidget(cylinder_);
  chooser->addWidget(drawing_);
  chooser->addStretch(1);
  auto* crank = new QHBoxLayout(crank_);
  crank->setContentsMargins(0, 0, 0, 0);
  crank->addWidget(new QuietLabel(tr("crank angle"), crank_));
  crank->addWidget(slider_, 1);
  crank->addWidget(angle_);
  angle_->setMinimumWidth(fontMetrics().horizontalAdvance(u"180° bottom"_s));

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addLayout(chooser);
  column->addWidget(side, 1);
  column->addWidget(crank_);

  connect(slider_, &QSlider::valueChanged, this, &DrawingPane::turn);
  connect(engine_, &QComboBox::currentIndexChanged, this, [this] {
    section_->setEngine(engine());
    if (stack_ != nullptr) {
      stack_->setEngine(engine());
    }
    fillCylinders();
  });
  connect(cylinder_, &QComboBox::activated, this, [this](int row) { desk_.showCylinder(row - 1); });
  connect(drawing_, &QComboBox::currentIndexChanged, this, &DrawingPane::arrange);
  connect(&desk_, &Desk::cylinderChanged, this, &DrawingPane::refresh);
  connect(&desk_.document, &Document::projectChanged, this, &DrawingPane::refresh);
  connect(&desk_.taste, &Taste::changed, this, [this] { turn(slider_->value()); });
  refresh();
  slider_->setValue(degrees);
  turn(degrees);
}

void DrawingPane::addStack(QSplitter& side) {
  stack_ = new StackView(desk_.document, desk_.taste);
  stack_->setAccessibleName(tr("The stack at the deck, enlarged"));
  side.insertWidget(0, stack_);
  side.setStretchFactor(0, 1);
  side.setStretchFactor(1, 1);
  connect(stack_, &StackView::inputPicked, this,
          [this](const describe::Input* input) { Q_EMIT desk_.entryAsked(engine(), input); });
  connect(stack_, &StackView::inputHovered, &desk_, &Desk::attention);
  connect(&desk_, &Desk::attention, stack_, &StackView::highlight);
}

QSize DrawingPane::minimumSizeHint() const {
  const QSize whole = QWidget::minimumSizeHint();
  return stack_ == nullptr ? whole : QSize(stack_->minimumSizeHint().width(), whole.height());
}

void DrawingPane::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  arrange();
}

void DrawingPane::arrange() {
  if (stack_ == nullptr) return;
  const bool both =
      width() >= stack_->minimumSizeHint().width() + kBetween + section_->minimumSizeHint().width();
  const bool section = drawing_->currentIndex() == drawing_->count() - 1;
  drawing_->setVisible(!both);
  stack_->setVisible(both || !section);
  section_->setVisible(both || section);
  crank_->setVisible(both || section);
}

int DrawingPane::engine() const {
  return engine_->currentIndex() < 0 ? desk_.subject() : engine_->currentData().toInt();
}

void DrawingPane::refresh() {
  fillEngines();
  fillCylinders();
}

/// Names may change at every keystroke; the list is made again only when they do.
void DrawingPane::fillEngines() {
  const std::vector<int> columns = columnsOf(desk_);
  bool same = engine_->count() == static_cast<int>(columns.size());
  for (int row = 0; same && row < engine_->count(); ++row) {
    const int shown = columns[static_cast<std::size_t>(row)];
    same = engine_->itemData(row).toInt() == shown &&
           engine_->itemText(row) == engineName(desk_, shown);
  }
  if (same) {
    return;
  }
  const int before = engine_->count() == 0 ? desk_.subject() : engine();
  {
    const QSignalBlocker quiet(engine_);
    engine_->clear();
    for (const int shown : columns) {
      engine_->addItem(engineName(desk_, shown), shown);
    }
    const int kept = engine_->findData(before);
    engine_->setCurrentIndex(kept >= 0 ? kept : engine_->findData(desk_.subject()));
  }
  section_->setEngine(engine());
  if (stack_ != nullptr) {
    stack_->setEngine(engine());
  }
}

namespace {
QStringList namesIn(const QComboBox& box) {
  QStringList names;
  for (int i = 0; i < box.count(); ++i) names += box.itemText(i);
  return names;
}
}  // namespace

void DrawingPane::fillCylinders() {
  const int engines = desk_.document.assessment().evaluation().engines();
  const int cylinders = engine() >= 0 && engine() < engines
                            ? desk_.document.assessment().evaluation().cylinders(engine())
                            : 1;
  QStringList names{tr("all")};
  for (int cylinder = 0; cylinder < cylinders; ++cylinder) {
    names += QString::number(
        engine() < 0 ? cylinder + 1
                     : model::numberOfCylinder(desk_.document.evaluation(), engine(), cylinder));
  }
  if (namesIn(*cylinder_) != names) {
    const QSignalBlocker quiet(cylinder_);
    cylinder_->clear();
    cylinder_->addItems(names);
  }
  cylinder_->setVisible(cylinders > 1);
  cylinderLabel_->setVisible(cylinders > 1);
  const int shown = desk_.cylinder() < cylinders ? desk_.cylinder() : -1;
  if (cylinder_->currentIndex() != shown + 1) {
    const QSignalBlocker quiet(cylinder_);
    cylinder_->setCurrentIndex(shown + 1);
  }
  section_->setCylinder(std::max(0, shown));
  if (stack_ != nullptr) {
    stack_->setCylinder(std::max(0, shown));
  }
}

void DrawingPane::turn(int degrees) {
  section_->setCrankAngle(radians(degrees));
  angle_->setText(degrees % kFullTurn == 0   ? tr("%1° top").arg(degrees)
                  : degrees * 2 == kFullTurn ? tr("%1° bottom").arg(degrees)
                                             : tr("%1°").arg(degrees));
}

}  // namespace strokewright::ui
