#include "ui/widgets/result_label.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <utility>

#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/field_steps.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

using assess::Assessment;
using describe::Cell;
using describe::Result;
using describe::State;

constexpr QChar kNoBreakSpace(0x00A0);

double plusMinusOf(const Result& result, const Cell& cell) {
  return result.judged == describe::Judged::WorstCase ? cell.worst : cell.likely;
}

QString waitText(const Taste& taste, const std::vector<Assessment::Wait>& waits) {
  const Assessment::Wait& first = waits.front();
  const QString label = inSentence(taste.label(*first.input));
  const QString text =
      (first.donors ? QObject::tr("waits for the donor's %1") : QObject::tr("waits for %1"))
          .arg(label);
  return waits.size() == 1 ? text : QObject::tr("%1 and %2 more").arg(text).arg(waits.size() - 1);
}

bool allZero(const QString& number) {
  return std::ranges::none_of(number, [](QChar c) { return c.isDigit() && c != u'0'; });
}

/// With as many more decimals as it takes to be seen, two at most.
QString smallNumber(const Taste& taste, const Result& result, double si) {
  const int decimals =
      result.decimals < 0 ? units::unitsOf(result.kind).front().decimals : result.decimals;
  QString text;
  for (int more = 0; more <= 2; ++more) {
    text = taste.number(result.kind, si, decimals + more);
    if (!allZero(text)) break;
  }
  return text;
}

}  // namespace

QString plusMinusText(const Taste& taste, const Result& result, double si) {
  if (si <= 0.0) return {};
  const QString number = taste.number(result.kind, si, result.decimals);
  return allZero(number) ? QString() : QStringLiteral("± ") + number;
}

QString shareText(const Taste& taste, const Result& result, double si) {
  if (si <= 0.0) return {};
  const QString number = smallNumber(taste, result, si);
  return allZero(number) ? QString() : QStringLiteral("± ") + number;
}

ResultLabel::ResultLabel(Document& document, int engine, const Result& result, int cylinder,
                         QWidget* parent)
    : QAbstractButton(parent),
      document_(document),
      engine_(engine),
      result_(result),
      cylinder_(cylinder) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(ink::cellPolicy());
  connect(this, &QAbstractButton::clicked, this, &ResultLabel::ask);
  connect(&document, &Document::projectChanged, this, &ResultLabel::refresh);
  connect(&document.taste(), &Taste::changed, this, &ResultLabel::refresh);
  refresh();
}

void ResultLabel::setEngine(int engine) {
  engine_ = engine;
  refresh();
}

void ResultLabel::setComparedWith(int engine) {
  comparedWith_ = engine;
  refresh();
}

/// The cylinder that was asked for; of all, the first without a number, if there is one.
int ResultLabel::toldCylinder(int engine) const {
  const Assessment& told = document_.assessment();
  const int cylinders = told.evaluation().cylinders(engine);
  if (cylinder_ >= 0) return std::min(cylinder_, cylinders - 1);
  for (int cylinder = 0; cylinder < cylinders; ++cylinder) {
    if (told(engine, result_, cylinder).state != State::Value) return cylinder;
  }
  return 0;
}

const Cell& ResultLabel::cellOf(int engine) const {
  return document_.assessment()(engine, result_, toldCylinder(engine));
}

void ResultLabel::refresh() {
  const int engines = static_cast<int>(document_.project().engines.size());
  if (engine_ >= engines || comparedWith_ >= engines) return;
  Told told = comparedWith_ >= 0 ? tellDifference() : tellResult();
  if (told != told_) {
    const int height = heightForWidth(width());
    told_ = std::move(told);
    if (heightForWidth(width()) != height) updateGeometry();
    update();
  }
  const QString name =
      QStringLiteral("%1, %2: %3")
          .arg(document_.taste().label(result_), document_.engineName(engine_), shownText());
  if (name != accessibleName()) setAccessibleName(name);
}

ResultLabel::Told ResultLabel::tellResult() const {
  const Taste& taste = document_.taste();
  const Assessment& told = document_.assessment();
  const Cell& cell = cellOf(engine_);
  switch (cell.state) {
    case State::Waits:
      return {{}, {}, waitText(taste, told.waitsFor(engine_, result_, toldCylinder(engine_))), {}};
    case State::Refused:
      return {{}, {}, tr("refused"), taste.sentence(told.evaluation().refusal(cell))};
    case State::None:
      return {{}, {}, tr("does not apply"), taste.inTerms(fromCore(cell.notes.none))};
    case State::Value:
      break;
  }
  if (cylinder_ < 0 && !told.sameInAll(engine_, result_)) {
    const QString range = rangeText();
    if (!range.isEmpty()) return {{}, {}, range, {}};
  }
  if (result_.kind == units::Kind::Choice) return {{}, {}, taste.value(result_, cell.value), {}};
  return {taste.number(result_.kind, cell.value, result_.decimals),
          taste.value(result_, cell.value).replace(kNoBreakSpace, u' '),
          plusMinusText(taste, result_, plusMinusOf(result_, cell)),
          {}};
}

ResultLabel::Told ResultLabel::tellDifference() const {
  const Assessment& told = document_.assessment();
  const Cell& own = cellOf(engine_);
  const Cell& other = cellOf(comparedWith_);
  const bool numbers = own.state == State::Value && other.state == State::Value &&
                       result_.kind != units::Kind::Choice;
  const bool single = cylinder_ >= 0 ||
                      (told.sameInAll(engine_, result_) && told.sameInAll(comparedWith_, result_));
  if (!numbers || !single) return {{}, {}, QStringLiteral("–"), {}};
  const Taste& taste = document_.taste();
  const QString number =
      taste.difference(result_.kind, result_.step(other.value, own.value), result_.decimals);
  return {number, (number + u' ' + taste.unit(result_.kind)).trimmed(), {}, {}};
}

/// "0.86 to 1.03"; empty where both ends are shown alike.
QString ResultLabel::rangeText() const {
  const Assessment& told = document_.assessment();
  double least = told(engine_, result_, 0).value;
  double most = least;
  for (int cylinder = 1; cylinder < told.evaluation().cylinders(engine_); ++cylinder) {
    least = std::min(least, told(engine_, result_, cylinder).value);
    most = std::max(most, told(engine_, result_, cylinder).value);
  }
  const Taste& taste = document_.taste();
  const QString from = taste.number(result_.kind, least, result_.decimals);
  const QString to = taste.number(result_.kind, most, result_.decimals);
  return from == to ? QString() : tr("%1 to %2").arg(from, to);
}

QString ResultLabel::shownText() const {
  if (told_.number.isEmpty()) {
    return told_.reason.isEmpty() ? told_.after : tr("%1: %2").arg(told_.after, told_.reason);
  }
  return told_.after.isEmpty() ? told_.whole : told_.whole + u' ' + told_.after;
}

QString ResultLabel::tip() const {
  const Taste& taste = document_.taste();
  const Cell& cell = cellOf(engine_);
  QStringList lines{taste.label(result_) + QStringLiteral(": ") + shownText()};
  const QString worst = plusMinusText(taste, result_, cell.worst);
  if (cell.state == State::Value && !worst.isEmpty()) {
    const QString likely = plusMinusText(taste, result_, cell.likely);
    lines += likely.isEmpty() ? tr("%1 worst case").arg(worst)
                              : tr("%1 likely, %2 worst case").arg(likely, worst);
  }
  if (cell.state == State::Value && comparedWith_ < 0) {
    const QString other = taste.inOtherSystem(result_.kind, cell.value);
    if (!other.isEmpty()) lines += QStringLiteral("= ") + other;
  }
  return lines.join(QChar(u'\n'));
}

void ResultLabel::ask() {
  const auto waits = document_.assessment().waitsFor(engine_, result_, toldCylinder(engine_));
  if (cellOf(engine_).state == State::Waits && !waits.empty()) {
    const int donor = document_.project().referenceDonor;
    Q_EMIT entryAsked(waits.front().donors ? donor : engine_, waits.front().input);
  } else {
    Q_EMIT whyAsked(engine_, &result_, cylinder_);
  }
}

QSize ResultLabel::sizeHint() const {
  const QFontMetrics metrics = fontMetrics();
  return {metrics.horizontalAdvance(QStringLiteral("00\u202F000.000 ± 0.000")),
          ink::rowHeight(metrics)};
}

QSize ResultLabel::minimumSizeHint() const {
  return {fontMetrics().horizontalAdvance(QStringLiteral("00\u202F000.00")), sizeHint().height()};
}

int ResultLabel::heightForWidth(int width) const {
  const QFontMetrics metrics = fontMetrics();
  if (told_.number.isEmpty()) {
    return ink::rowHeight(metrics, ink::linesOf(metrics, told_.after, width));
  }
  const int needed = metrics.horizontalAdvance(told_.number + QChar(u' ') + told_.after);
  return ink::rowHeight(metrics, told_.after.isEmpty() || needed <= width ? 1 : 2);
}

bool ResultLabel::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QAbstractButton::event(event);
  QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), tipFrom(tip()), this);
  return true;
}

void ResultLabel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    click();
  } else if (isArrow(*event)) {
    event->ignore();
  } else {
    QAbstractButton::keyPressEvent(event);
  }
}

void ResultLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  if (told_.number.isEmpty()) {
    paintWords(painter);
  } else {
    paintNumber(painter);
  }
}

bool ResultLabel::pointedAt() const { return hasFocus() || underMouse(); }

void ResultLabel::paintWords(QPainter& painter) {
  if (pointedAt()) {
    QFont underlined = font();
    underlined.setUnderline(true);
    painter.setFont(underlined);
  }
  painter.setPen(pointedAt() ? ink::accent(palette()) : ink::muted(palette()));
  painter.drawText(rect(), Qt::AlignRight | Qt::AlignVCenter | Qt::TextWordWrap, told_.after);
}

/// In a narrow column the ± goes to a second line.
void ResultLabel::paintNumber(QPainter& painter) {
  const QFontMetrics metrics = fontMetrics();
  const bool stacked = heightForWidth(width()) > ink::rowHeight(metrics);
  const QString beside = stacked || told_.after.isEmpty() ? QString() : u' ' + told_.after;
  const int lines = (stacked ? 2 : 1) * metrics.height();
  QRect line(0, (height() - lines) / 2, width() - metrics.horizontalAdvance(beside),
             metrics.height());
  painter.setPen(ink::text(palette()));
  painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, told_.number);
  if (pointedAt()) {
    const int below = line.bottom() + 1 - metrics.descent() / 2;
    painter.setPen(QPen(ink::accent(palette()), std::max(1, metrics.lineWidth())));
    painter.drawLine(line.right() + 1 - metrics.horizontalAdvance(told_.number), below,
                     line.right(), below);
  }
  line.setRight(width() - 1);
  if (stacked) line.moveTop(line.bottom() + 1);
  painter.setPen(ink::muted(palette()));
  painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, told_.after);
}

}  // namespace strokewright::ui
