#include "ui/plots/rhythm_view.h"

#include <QComboBox>
#include <QDesktopServices>
#include <QEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "core/describe/refusal.h"
#include "core/describe/tabulated.h"
#include "core/firing/results.h"
#include "core/firing/sound.h"
#include "core/model/inputs.h"
#include "core/units/parse.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/document/whole_file.h"
#include "ui/plots/engines_shown.h"
#include "ui/plots/refresher.h"
#include "ui/plots/rhythm_scene.h"
#include "ui/plots/scene_view.h"
#include "ui/widgets/plain_field.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
namespace in = model::in;
using describe::Quantity;
using units::Kind;

RhythmView::RhythmView(Document& document, Taste& taste, std::function<int()> which,
                       QWidget* parent)
    : QWidget(parent),
      document_(document),
      taste_(taste),
      which_(std::move(which)),
      bars_(new SceneView(
          document, taste, tr("Orders in the rhythm of the firings"),
          [this] { return rhythmScene(document_, which_()); }, this)),
      engine_(new QComboBox(this)),
      speed_(new QLineEdit(this)),
      listen_(new QPushButton(tr("&Listen"), this)),
      save_(new QPushButton(tr("Save &sound as…"), this)),
      controls_(new QBoxLayout(QBoxLayout::LeftToRight)),
      problem_(new QLabel(this)),
      refresher_(new Refresher(document, taste, *this, [this] { refresh(); })) {
  engine_->setAccessibleName(tr("Engine to be heard"));
  engine_->setFocusPolicy(Qt::StrongFocus);
  engine_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  speed_->setAccessibleName(tr("Speed at which it is heard"));
  leaveUndoToDocument(*speed_);
  listen_->setToolTip(
      tr("Writes three seconds to a file of its own and opens it with the player of the desktop"));
  layOut();
  connect(speed_, &QLineEdit::textChanged, this, &RhythmView::judgeSpeed);
  connect(speed_, &QLineEdit::returnPressed, this, &RhythmView::listen);
  connect(listen_, &QPushButton::clicked, this, &RhythmView::listen);
  connect(save_, &QPushButton::clicked, this, &RhythmView::askWhere);
}

void RhythmView::layOut() {
  auto* heard = new QHBoxLayout;
  heard->addWidget(engine_);
  heard->addWidget(new QLabel(tr("at"), this));
  heard->addWidget(speed_);
  heard->addStretch(1);
  auto* sound = new QHBoxLayout;
  sound->addWidget(listen_);
  sound->addWidget(save_);
  sound->addStretch(1);
  controls_->setContentsMargins(0, 0, 0, 0);
  controls_->addLayout(heard);
  controls_->addLayout(sound, 1);
  problem_->setWordWrap(true);
  problem_->hide();
  auto* caution = new QLabel(
      tr("A plain pulse for each firing, the same from every cylinder: it lets the ear compare "
         "rhythms and is not the sound of the exhaust."),
      this);
  caution->setWordWrap(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(bars_, 1);
  column->addLayout(controls_);
  column->addWidget(problem_);
  column->addWidget(caution);
}

/// What is done with the sound stands below what is heard where both find no room in one line.
void RhythmView::breakControls() {
  const int heard = controls_->itemAt(0)->sizeHint().width();
  const int sound = controls_->itemAt(1)->sizeHint().width();
  const bool fits = heard + controls_->spacing() + sound <= width();
  const auto direction = fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
  if (direction == controls_->direction()) return;
  controls_->setDirection(direction);
  controls_->update();
}

/// As wide as the wider of the two lines.
QSize RhythmView::minimumSizeHint() const {
  int width = bars_->minimumSizeHint().width();
  for (int i = 0; i < controls_->count(); ++i) {
    width = std::max(width, controls_->itemAt(i)->minimumSize().width());
  }
  return {width, QWidget::minimumSizeHint().height()};
}

bool RhythmView::event(QEvent* event) {
  if (event->type() == QEvent::Resize || event->type() == QEvent::LayoutRequest) breakControls();
  return QWidget::event(event);
}

void RhythmView::refresh() {
  fillEngines();
  const int heard = engine();
  const describe::Evaluation& evaluation = document_.assessment().evaluation();
  const bool wanted = heard >= 0 && evaluation.inputStands(heard, in::wantedSpeed);
  const double usual = wanted ? evaluation.inputValue(heard, in::wantedSpeed)
                              : units::toSi(units::unitsOf(Kind::Speed).front(), 3000.0);
  const QString shown = taste_.shown(Kind::Speed, usual);
  const QString hint = wanted ? shown : tr("such as %1").arg(shown);
  speed_->setPlaceholderText(hint);
  speed_->setFixedWidth(speed_->fontMetrics().horizontalAdvance(hint + u"000"_s));
  judgeSpeed();
}

/// The subject and, where there is one beside it, the donor; who was chosen stays. Names are seen
/// whole unless they are very long.
void RhythmView::fillEngines() {
  constexpr int kLetters = 40;
  const QSignalBlocker quiet(engine_);
  const int chosen = engine_->currentIndex();
  engine_->clear();
  const int subject = which_();
  const int donor = document_.project().referenceDonor;
  if (subject >= 0) engine_->addItem(nameOf(document_.project(), subject), subject);
  if (donor >= 0 && donor != subject) engine_->addItem(nameOf(document_.project(), donor), donor);
  engine_->setCurrentIndex(chosen >= 0 && chosen < engine_->count() ? chosen : 0);
  engine_->setMinimumWidth(
      std::min(engine_->sizeHint().width(), kLetters * engine_->fontMetrics().averageCharWidth()));
}

int RhythmView::engine() const {
  return engine_->count() > 0 ? engine_->currentData().toInt() : -1;
}

/// [rad/s] as typed; nothing where that is no speed.
std::optional<double> RhythmView::typedSpeed() const {
  const units::Parsed read =
      units::parse(Kind::Speed, speed_->text().toStdString(), taste_.style().group[Kind::Speed]);
  if (read.values.size() != 1 || read.values.front() <= 0.0) return std::nullopt;
  return read.values.front();
}

/// What is wrong with the speed stands below it from when it is typed until it is mended.
void RhythmView::judgeSpeed() {
  const QString text = speed_->text().trimmed();
  sayProblem(text.isEmpty() || typedSpeed()
                 ? QString()
                 : tr("“%1” is no speed to listen at: write one, such as %2.").arg(text, suchAs()));
}

void RhythmView::sayProblem(const QString& problem) {
  problem_->setText(problem);
  problem_->setVisible(!problem.isEmpty());
}

QString RhythmView::suchAs() const {
  return taste_.shown(Kind::Speed, units::toSi(units::unitsOf(Kind::Speed).front(), 3000.0));
}

/// [rad/s] as typed, else the speed wanted; 0, and said, where there is neither.
double RhythmView::speed() {
  const QString text = speed_->text().trimmed();
  const describe::Evaluation& evaluation = document_.assessment().evaluation();
  if (text.isEmpty() && evaluation.inputStands(engine(), in::wantedSpeed)) {
    return evaluation.inputValue(engine(), in::wantedSpeed);
  }
  if (const std::optional<double> typed = typedSpeed()) return *typed;
  if (text.isEmpty()) {
    sayProblem(tr("No speed is wanted of this engine yet: write one, such as %1.").arg(suchAs()));
  }
  speed_->setFocus();
  return 0.0;
}

/// The file; empty, and said, where there is no rhythm.
QByteArray RhythmView::sound() {
  const int heard = engine();
  if (heard < 0) return {};
  const describe::Tabulated fires = document_.evaluation().tabulated(heard, out::firingTable);
  if (fires.state != describe::State::Value) {
    Q_EMIT said(tr("There is nothing to hear: %1.")
                    .arg(whyNot(document_.assessment(), taste_, fires.state, fires.notes)));
    return {};
  }
  const firing::Playing playing{.speed = speed()};
  if (playing.speed <= 0.0) return {};
  const firing::Firings firings = firing::firingsOf(fires.rows);
  try {
    return QByteArray::fromStdString(
        firing::wav(firing::soundOf(firings.order, firings.strokes, playing), playing.rate));
  } catch (const describe::Refusal& refusal) {
    sayProblem(taste_.sentence(describe::Sentence{
        refusal.sentence(),
        {Quantity{refusal.kind(), refusal.value()}, Quantity{refusal.kind(), refusal.limit()}}}));
    return {};
  }
}

void RhythmView::listen() {
  const QByteArray bytes = sound();
  if (bytes.isEmpty()) return;
  // Each time another file: a player may still hold the last one.
  const QString path = folder_.filePath(QStringLiteral("rhythm %1.wav").arg(++played_));
  const QString problem = writeWhole(path, bytes);
  if (!problem.isEmpty()) {
    Q_EMIT said(tr("The sound could not be written to be played: %1.").arg(problem));
    return;
  }
  const bool plays = QDesktopServices::openUrl(QUrl::fromLocalFile(path));
  Q_EMIT said(
      plays ? tr("The player of the desktop has three seconds of %1.").arg(engine_->currentText())
            : tr("This desktop has no player for WAV. Save the sound and open it with one."));
}

void RhythmView::askWhere() {
  if (sound().isEmpty()) return;  // said before anyone chooses a name
  const QString folder = document_.path().section(QLatin1Char('/'), 0, -2);
  const QString name = tr("%1 rhythm").arg(engine_->currentText()).replace(u'/', u'-');
  QString path = QFileDialog::getSaveFileName(
      this, tr("Save the sound"),
      (folder.isEmpty() ? QString() : folder + u'/') + name + QStringLiteral(".wav"),
      tr("Sound (*.wav)"));
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".wav");
  saveSound(path);
}

bool RhythmView::saveSound(const QString& path) {
  if (!document_.path().isEmpty() && QFileInfo(path) == QFileInfo(document_.path())) {
    Q_EMIT said(tr("%1 is the project itself: the sound wants another name.").arg(path));
    return false;
  }
  const QByteArray bytes = sound();
  if (bytes.isEmpty()) return false;
  const QString problem = writeWhole(path, bytes);
  Q_EMIT said(problem.isEmpty() ? tr("The sound is in %1.").arg(path)
                                : tr("%1 could not be written: %2.").arg(path, problem));
  return problem.isEmpty();
}

}  // namespace strokewright::ui
