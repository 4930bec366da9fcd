#include "ui/pages/limit_lines.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "core/limits/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/plots/engines_shown.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/result_label.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

namespace in = model::in;

constexpr int kMoreRevs = 500;    ///< [rpm]
constexpr int kSpeedDigits = 9;   ///< width of a column of speeds in digits
constexpr int kWordsDigits = 46;  ///< what the words and numbers before them take
constexpr int kFirstSpeed = 3;    ///< column

/// Where the number of a limit comes from, its default's origin included.
QString originOf(const Desk& desk, int engine, const describe::Input& input) {
  const describe::Entry& entry = desk.document.entry(engine, input);
  const QString said = originText(entry);
  if (!said.isEmpty()) {
    return said;
  }
  return entry.known() ? LimitLines::tr("entered") : fromCore(input.standing.origin);
}

bool stands(const Desk& desk, int engine, const describe::Input& input) {
  return engine >= 0 && desk.document.assessment().evaluation().inputStands(engine, input);
}

QString numberOf(const Desk& desk, int engine, const describe::Input& input) {
  const describe::Evaluation& evaluation = desk.document.assessment().evaluation();
  if (stands(desk, engine, input)) {
    return desk.taste.value(input, evaluation.inputValue(engine, input));
  }
  const bool given = engine >= 0 && evaluation.inputGiven(engine, input);
  return given ? LimitLines::tr("not possible") : LimitLines::tr("not entered");
}

}  // namespace

LimitLines::LimitLines(Desk& desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  connect(&desk_.document, &Document::projectChanged, this, &LimitLines::refresh);
  connect(&desk_.taste, &Taste::changed, this, &LimitLines::refresh);
  rebuild();
  refresh();
}

std::vector<int> LimitLines::enginesWithRoom() const {
  std::vector<int> engines = {desk_.donor(), desk_.subject()};
  const model::Project& project = desk_.document.project();
  const int digits = width() / fontMetrics().horizontalAdvance(u'0');
  for (int i = 0; i < static_cast<int>(project.engines.size()); ++i) {
    const bool variant = project.engines[static_cast<std::size_t>(i)].part == model::Part::Variant;
    const int taken = kWordsDigits + kSpeedDigits * static_cast<int>(engines.size() + 1);
    if (variant && i != desk_.subject() && digits >= taken) engines.push_back(i);
  }
  return engines;
}

void LimitLines::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  refresh();
}

void LimitLines::rebuild() {
  engines_ = enginesWithRoom();
  lines_.clear();
  heads_.clear();
  qDeleteAll(findChildren<QWidget*>(Qt::FindDirectChildrenOnly));
  delete layout();
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(4);
  int column = 0;
  for (const QString& head :
       {tr("stopped by"), tr("limit"), tr("from"), tr("donor, rpm"), tr("target, rpm")}) {
    const bool speed = column >= kFirstSpeed;
    grid->addWidget(new QuietLabel(head, this), 0, column, speed ? Qt::AlignRight : Qt::AlignLeft);
    ++column;
  }
  for (; column < kFirstSpeed + static_cast<int>(engines_.size()); ++column) {
    heads_.push_back(new QuietLabel({}, this));
    heads_.back()->setWordWrap(true);
    heads_.back()->setAlignment(Qt::AlignRight);
    grid->addWidget(heads_.back(), 0, column);
  }
  addLine(*grid,
          {tr("mean piston speed"), &in::meanPistonSpeedLimit, false, &out::ceilingPistonSpeed});
  addLine(*grid, {tr("ring flutter"), &in::ringFlutterConstant, false, &out::ceilingRingFlutter});
  addLine(*grid, {tr("rod tension"), &in::rodStressLimit, false, &out::ceilingRodTension});
  addLine(*grid, {tr("big-end speed factor"), &in::speedFactorLimit, false, &out::ceilingBigEnd});
  addLine(*grid, {tr("donor's proven acceleration"), &in::provenSpeed, true, &out::ceilingDonor});
  addLine(*grid,
          {tr("breathing (power, not safety)"), &in::breathingLimit, false, &out::breathingSpeed});
  const int digit = fontMetrics().horizontalAdvance(u'0');
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(2, 1);
  for (int i = kFirstSpeed; i < column; ++i) grid->setColumnMinimumWidth(i, kSpeedDigits * digit);
}

void LimitLines::addLine(QGridLayout& grid, Line line) {
  const int row = grid.rowCount();
  auto* name = new QLabel(line.name, this);
  name->setWordWrap(true);
  line.number = new LinkButton({}, this);
  line.origin = new QuietLabel({}, this);
  line.origin->setWordWrap(true);
  grid.addWidget(name, row, 0);
  grid.addWidget(line.number, row, 1);
  grid.addWidget(line.origin, row, 2);
  for (std::size_t i = 0; i < engines_.size(); ++i) {
    addSpeed(grid, kFirstSpeed + static_cast<int>(i), engines_[i], *line.ceiling);
  }
  connect(line.number, &LinkButton::clicked, this, [this, line] {
    Q_EMIT desk_.entryAsked(line.donors ? engines_[0] : engines_[1], line.limit);
  });
  lines_.push_back(line);
}

void LimitLines::addSpeed(QGridLayout& grid, int column, int engine,
                          const describe::Result& ceiling) {
  if (engine < 0) {
    return;
  }
  auto* speed = new ResultLabel(desk_.document, engine, ceiling, -1, this);
  connect(speed, &ResultLabel::whyAsked, &desk_, &Desk::whyAsked);
  connect(speed, &ResultLabel::entryAsked, &desk_, &Desk::entryAsked);
  grid.addWidget(speed, grid.rowCount() - 1, column);
}

void LimitLines::refresh() {
  if (engines_ != enginesWithRoom()) {
    rebuild();
  }
  for (std::size_t i = 0; i < heads_.size(); ++i) {
    say(*heads_[i], tr("%1, rpm").arg(nameOf(desk_.document.project(), engines_[i + 2])));
  }
  for (const Line& line : lines_) {
    const int engine = line.donors ? engines_[0] : engines_[1];
    const QString number = numberOf(desk_, engine, *line.limit);
    if (line.number->text() != number) {
      line.number->setText(number);
      line.number->setAccessibleName(desk_.taste.label(*line.limit) + u": "_s + number);
      line.number->updateGeometry();
    }
    line.number->setEnabled(engine >= 0);
    QStringList from = otherLimits(line, number);
    if (stands(desk_, engine, *line.limit)) from.prepend(originOf(desk_, engine, *line.limit));
    say(*line.origin, from.join(u"; "_s));
  }
}

/// What the speeds of the other engines come from, where it is another limit.
/// @param number the one that the line names
QStringList LimitLines::otherLimits(const Line& line, const QString& number) const {
  QStringList others;
  for (std::size_t i = 0; i < engines_.size() && !line.donors; ++i) {
    const QString own = numberOf(desk_, engines_[i], *line.limit);
    if (engines_[i] < 0 || own == number) continue;
    const QString whose = i == 0 ? tr("donor") : nameOf(desk_.document.project(), engines_[i]);
    others += tr("%1: %2").arg(whose, own);
    if (stands(desk_, engines_[i], *line.limit)) {
      others.back() += u", "_s + originOf(desk_, engines_[i], *line.limit);
    }
  }
  return others;
}

NextRevs::NextRevs(Desk& desk, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      heading_(new QuietLabel(tr("what would buy the next %1 rpm").arg(kMoreRevs), this)),
      text_(new QLabel(this)) {
  text_->setWordWrap(true);
  text_->setTextFormat(Qt::RichText);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 8, 0, 0);
  column->setSpacing(4);
  column->addWidget(heading_);
  column->addWidget(text_);
  later_.setSingleShot(true);
  connect(&later_, &QTimer::timeout, this, &NextRevs::refresh);
  const auto soon = [this] {
    if (isVisible()) {
      later_.start();
    }
  };
  connect(&desk_.document, &Document::projectChanged, this, soon);
  connect(&desk_.taste, &Taste::changed, this, soon);
}

QString NextRevs::shownText() const { return text_->text(); }

void NextRevs::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  later_.start();
}

void NextRevs::refresh() {
  const int engine = desk_.subject();
  if (!known(desk_, engine, out::revCeiling)) {
    say(*text_, tr("The rev ceiling is not known yet."));
    return;
  }
  const Taste& taste = desk_.taste;
  describe::Evaluation& evaluation = desk_.document.evaluation();
  const describe::Cell ceiling = evaluation.cell(engine, out::revCeiling);
  const double more = units::toSi(*units::findUnit(units::Kind::Speed, "rpm"), kMoreRevs);
  const QString wanted = taste.value(out::revCeiling, ceiling.value + more);
  QStringList alone;
  QStringList notEnough;
  for (const describe::Input* input : evaluation.catalogue().inputs()) {
    if (!ceiling.notes.read.own[static_cast<std::size_t>(input->number)] ||
        input->kind == units::Kind::Choice || input->kind == units::Kind::Count) {
      continue;
    }
    const assess::Solution found =
        assess::solve(evaluation, engine, out::revCeiling, 0, ceiling.value + more, *input, -1);
    const QString now = taste.value(*input, evaluation.inputValue(engine, *input));
    const QString label = taste.label(*input).toHtmlEscaped();
    // Where another limit takes over with a leap, no number gives what is wanted.
    const bool reached = taste.value(out::revCeiling, found.reached) == wanted;
    if (found.value && reached) {
      alone += tr("%1 <b>%2</b> instead of %3").arg(label, taste.value(*input, *found.value), now);
    } else if (found.reached > ceiling.value) {
      notEnough +=
          tr("%1 (at most %2)").arg(inSentence(label), taste.value(out::revCeiling, found.reached));
    }
  }
  QString said = alone.isEmpty() ? tr("No single entry does it.") : alone.join(u"<br>"_s);
  if (!notEnough.isEmpty()) {
    said += u"<br>"_s + tr("Not enough alone: %1").arg(notEnough.join(u", "_s));
  }
  say(*text_, said);
}

}  // namespace strokewright::ui
