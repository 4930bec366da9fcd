#include "ui/pages/comparison.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QRegularExpression>
#include <QResizeEvent>
#include <QScrollArea>
#include <QScrollBar>
#include <algorithm>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/difference_label.h"
#include "ui/pages/link_button.h"
#include "ui/pages/project_text.h"
#include "ui/widgets/choice_edit.h"
#include "ui/widgets/entry_edit.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/quantity_edit.h"
#include "ui/widgets/result_label.h"
#include "ui/widgets/whole_rows.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

enum Column { kLabel, kUnit, kFirstEngine };

// Widths in digits of the body font.
constexpr int kLabelDigits = 22;
constexpr int kLeastLabelDigits = 12;
constexpr int kEngineDigits = 18;         ///< three heights to two decimals
constexpr int kCrowdedEngineDigits = 15;  ///< with more than two engines
constexpr int kLeastEngineDigits = 9;
constexpr int kDifferenceDigits = 8;
constexpr int kBetweenColumns = 8;  ///< [px]
constexpr int kBehind = 4;          ///< [px] the last column, clear of the bar

/// How a row's number is called in formulas, and how it is got: for the label's tip.
QString rowTip(std::string_view symbol, std::string_view how) {
  QStringList lines{fromCore(symbol), fromCore(how)};
  lines.removeAll(QString());
  return lines.join(u'\n');
}

const model::Engine& engineAt(const Desk& desk, int engine) {
  return desk.document.project().engines[static_cast<std::size_t>(engine)];
}

}  // namespace

std::vector<int> columnsOf(const Desk& desk) {
  const auto& engines = desk.document.project().engines;
  std::vector<int> columns(engines.size());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    columns[i] = static_cast<int>(i);
  }
  std::stable_sort(columns.begin(), columns.end(), [&desk](int a, int b) {
    return engineAt(desk, a).part < engineAt(desk, b).part;
  });
  return columns;
}

QString partText(const Desk& desk, int engine) {
  switch (engineAt(desk, engine).part) {
    case model::Part::Donor:
      return Comparison::tr("donor");
    case model::Part::Target:
      return Comparison::tr("target");
    case model::Part::Variant:
      return Comparison::tr("variant");
  }
  return {};
}

QString engineName(const Desk& desk, int engine) {
  const QString name = fromCore(engineAt(desk, engine).name);
  return name.isEmpty() ? partText(desk, engine) : name;
}

Comparison::Comparison(Desk& desk, const PageDescription& page, Of of, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      page_(page),
      of_(of),
      head_(new QWidget(this)),
      scroll_(new QScrollArea(this)) {
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setFocusPolicy(Qt::NoFocus);
  new WholeRows(*scroll_);
  connect(scroll_->horizontalScrollBar(), &QScrollBar::valueChanged, this, &Comparison::alignHeads);
  connect(&desk_.document, &Document::projectChanged, this, &Comparison::rebuildIfNeeded);
  connect(&desk_, &Desk::cylinderChanged, this, &Comparison::rebuildIfNeeded);
  connect(&desk_.taste, &Taste::changed, this, &Comparison::reword);
  connect(&desk_, &Desk::attention, this, &Comparison::pointAt);
  rebuild();
}

void Comparison::rebuildIfNeeded() {
  const std::vector<int> columns = columnsOf(desk_);
  std::vector<int> parts;
  for (const int engine : columns) {
    parts.push_back(static_cast<int>(engineAt(desk_, engine).part));
  }
  if (columns != columns_ || parts != parts_ || comparedWith_ != desk_.donor() ||
      cylinder_ != desk_.cylinder()) {
    rebuild();
    return;
  }
  for (std::size_t i = 0; i < heads_.size(); ++i) {
    say(*heads_[i], engineName(desk_, columns_[i]));
  }
  refreshDifferences();
}

void Comparison::rebuild() {
  columns_ = columnsOf(desk_);
  parts_.clear();
  for (const int engine : columns_) {
    parts_.push_back(static_cast<int>(engineAt(desk_, engine).part));
  }
  comparedWith_ = desk_.donor();
  cylinder_ = desk_.cylinder();
  rows_.clear();
  heads_.clear();
  line_ = 0;
  addHeads();

  body_ = new QWidget;
  grid_ = new QGridLayout(body_);
  grid_->setContentsMargins(0, 0, kBehind, 0);
  grid_->setVerticalSpacing(2);
  if (of_ == Of::Entries) {
    if (page_.namesEngines) {
      addNames();
    }
    for (const EntryGroup& group : page_.entries) {
      addGroup(group);
    }
    addOriginKey();
  } else {
    for (const describe::Result* result : page_.results) {
      addResult(*result);
    }
  }
  grid_->setRowStretch(line_, 1);
  reword();
  fitDifferences();
  scroll_->setWidget(body_);  // the one before is deleted by the scroll area
  body_->setAutoFillBackground(false);
  scroll_->viewport()->setAutoFillBackground(false);
  body_->installEventFilter(this);
  alignHeads();
  Q_EMIT rebuilt();
}

void Comparison::setColumns(QGridLayout& grid) const {
  const int digit = fontMetrics().horizontalAdvance(u'0');
  grid.setHorizontalSpacing(kBetweenColumns);
  grid.setColumnMinimumWidth(kLabel, kLeastLabelDigits * digit);
  grid.setColumnMinimumWidth(kUnit, unitWidth());
  grid.setColumnStretch(kLabel, kLabelDigits);
  const int engines = static_cast<int>(columns_.size());
  for (int i = 0; i < engines; ++i) {
    grid.setColumnMinimumWidth(kFirstEngine + i, kLeastEngineDigits * digit);
    grid.setColumnStretch(kFirstEngine + i, kCrowdedEngineDigits);
  }
  grid.setColumnMinimumWidth(kFirstEngine + engines, differs_ ? kDifferenceDigits * digit : 0);
}

/// Of a whole table, the bar at its side included.
int Comparison::widthOf(int labelDigits, int engineDigits, int differenceDigits) const {
  const int engines = static_cast<int>(columns_.size());
  const int digits = labelDigits + engines * engineDigits + differenceDigits;
  return digits * fontMetrics().horizontalAdvance(u'0') + unitWidth() +
         (engines + 2) * kBetweenColumns + kBehind +
         scroll_->verticalScrollBar()->sizeHint().width();
}

bool Comparison::compares() const { return comparedWith_ >= 0 && comparedWith_ != desk_.subject(); }

/// [px] of those in the answers to be chosen, beside the arrow.
int Comparison::widestWord() const {
  const QFontMetrics metrics = fontMetrics();
  const auto room = [&metrics](const QString& word) {
    return metrics.horizontalAdvance(word) + 3 * metrics.averageCharWidth();
  };
  static const QRegularExpression breaks(u"[ -]"_s);
  int widest = 0;
  for (const EntryGroup& group : page_.entries) {
    for (const describe::Input* input : group.inputs) {
      for (const describe::Choice& choice : input->choices) {
        for (const QString& word : desk_.taste.inTerms(fromCore(choice.label)).split(breaks)) {
          widest = std::max(widest, room(word));
        }
      }
    }
  }
  return widest;
}

/// [px] of the column of differences.
int Comparison::differenceWidth() const {
  return kDifferenceDigits * fontMetrics().horizontalAdvance(u'0') + kBetweenColumns;
}

void Comparison::fitDifferences() {
  differs_ = compares() && width() >= leastWidth() + differenceWidth();
  for (const Row& row : rows_) {
    if (row.difference != nullptr) {
      row.difference->setVisible(differs_);
    }
  }
  if (differenceHead_ != nullptr) {
    differenceHead_->setVisible(differs_);
  }
  say(*caption_, captionText());
  caption_->setToolTip(compares() && !differs_
                           ? tr("There is no room for the differences: widen this side.")
                           : QString());
  setColumns(*grid_);
  setColumns(*static_cast<QGridLayout*>(head_->layout()));
}

/// The widest unit of either list of the page, so that both have the same columns.
int Comparison::unitWidth() const {
  int width = 0;
  const auto take = [&](units::Kind kind) {
    width = std::max(width, fontMetrics().horizontalAdvance(desk_.taste.unit(kind)));
  };
  for (const EntryGroup& group : page_.entries) {
    for (const describe::Input* input : group.inputs) {
      take(input->kind);
    }
  }
  for (const describe::Result* result : page_.results) {
    take(result->kind);
  }
  return width;
}

/// What the list is, and where the differences are when there is no room for them.
QString Comparison::captionText() const {
  const bool hidden = compares() && !differs_;
  if (of_ == Of::Results) {
    return tr("what follows from it\ngaps: ± worst case");
  }
  return hidden ? tr("what it rests on\ndifferences hidden") : tr("what it rests on");
}

void Comparison::addHeads() {
  delete head_;
  head_ = new QWidget(this);
  auto* grid = new QGridLayout(head_);
  grid->setContentsMargins(0, 0, kBehind, 0);
  grid->setVerticalSpacing(0);
  const bool entries = of_ == Of::Entries;
  caption_ = new QuietLabel(captionText(), head_);
  caption_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  grid->addWidget(caption_, 0, kLabel, entries ? 2 : 1, kFirstEngine, Qt::AlignTop);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const int column = kFirstEngine + static_cast<int>(i);
    grid->addWidget(new QuietLabel(partText(desk_, columns_[i]), head_), 0, column, Qt::AlignRight);
    if (entries) {
      auto* name = new QLabel(engineName(desk_, columns_[i]), head_);
      name->setWordWrap(true);
      name->setToolTip(originKey());
      name->setAlignment(Qt::AlignRight);
      name->setSizePolicy(ink::cellPolicy());
      grid->addWidget(name, 1, column);
      heads_.push_back(name);
    }
  }
  differenceHead_ = nullptr;
  if (compares()) {
    differenceHead_ = new QuietLabel(tr("difference"), head_);
    grid->addWidget(differenceHead_, 0, kFirstEngine + static_cast<int>(columns_.size()),
                    Qt::AlignRight);
  }
  head_->show();
}

void Comparison::addCaption(const QString& text) {
  auto* caption = new QuietLabel(text, body_);
  caption->setContentsMargins(0, line_ == 0 ? 0 : 8, 0, 0);
  grid_->addWidget(caption, line_++, kLabel, 1, -1);
}

/// What the letters in the fields mean, once, below them.
void Comparison::addOriginKey() {
  auto* key = new QuietLabel(originKey(), body_);
  key->setContentsMargins(0, 8, 0, 0);
  key->setWordWrap(true);
  grid_->addWidget(key, line_++, kLabel, 1, -1);
}

void Comparison::addNames() {
  struct Line {
    QString label;
    std::string model::Engine::*place;
    QString step;
  };
  const Line lines[] = {{tr("Name"), &model::Engine::name, tr("name of %1")},
                        {tr("Note"), &model::Engine::note, tr("note of %1")}};
  for (const Line& line : lines) {
    grid_->addWidget(new QLabel(line.label, body_), line_, kLabel);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const QString part = partText(desk_, columns_[i]);
      auto* field =
          new ProjectText(desk_.document, line.label + u", "_s + part, line.step.arg(part),
                          {.ofEngine = line.place, .engine = columns_[i]}, body_);
      field->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
      grid_->addWidget(field, line_, kFirstEngine + static_cast<int>(i));
    }
    ++line_;
  }
}

void Comparison::addGroup(const EntryGroup& group) {
  if (!group.title.isEmpty()) {
    addCaption(group.title);
  }
  for (const describe::Input* input : group.inputs) {
    addEntry(*input);
  }
}

void Comparison::addLabels(Row& row, const QString& tip) {
  row.label = new QLabel(body_);
  row.label->setWordWrap(true);
  row.label->setToolTip(tip);
  grid_->addWidget(row.label, line_, kLabel);
  row.unit = new QuietLabel({}, body_);
  row.unit->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  grid_->addWidget(row.unit, line_, kUnit);
}

void Comparison::addEntry(const describe::Input& input) {
  Row row;
  row.input = &input;
  addLabels(row, rowTip(input.symbol, input.measure));
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    QWidget* field = makeEntryEdit(desk_.document, columns_[i], input, body_);
    if (auto* quantity = qobject_cast<QuantityEdit*>(field)) {
      connect(quantity, &QuantityEdit::attention, &desk_, &Desk::attention);
    } else if (auto* choice = qobject_cast<ChoiceEdit*>(field)) {
      connect(choice, &ChoiceEdit::attention, &desk_, &Desk::attention);
    }
    grid_->addWidget(field, line_, kFirstEngine + static_cast<int>(i));
    if (columns_[i] == desk_.subject()) {
      row.label->setBuddy(field);
    }
    row.fields.push_back(field);
  }
  if (compares()) {
    row.difference = new DifferenceLabel(desk_, input, desk_.subject(), comparedWith_, body_);
    grid_->addWidget(row.difference, line_, kFirstEngine + static_cast<int>(columns_.size()));
  }
  rows_.push_back(row);
  ++line_;
}

void Comparison::addResult(const describe::Result& result) {
  Row row;
  row.result = &result;
  addLabels(row, rowTip(result.symbol, result.formula));
  const bool decides =
      std::find(page_.decides.begin(), page_.decides.end(), &result) != page_.decides.end();
  const auto put = [&](ResultLabel* label, int column) {
    connect(label, &ResultLabel::whyAsked, &desk_, &Desk::whyAsked);
    connect(label, &ResultLabel::entryAsked, &desk_, &Desk::entryAsked);
    grid_->addWidget(label, line_, column);
    row.fields.push_back(label);
  };
  QFont heavier = font();
  heavier.setBold(decides);
  row.label->setFont(heavier);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    auto* label = new ResultLabel(desk_.document, columns_[i], result, cylinder_, body_);
    label->setFont(heavier);
    put(label, kFirstEngine + static_cast<int>(i));
  }
  if (compares() && result.kind != units::Kind::Choice) {
    auto* label = new ResultLabel(desk_.document, desk_.subject(), result, cylinder_, body_);
    label->setComparedWith(comparedWith_);
    label->setObjectName(u"difference"_s);
    put(label, kFirstEngine + static_cast<int>(columns_.size()));
    row.difference = label;
  }
  rows_.push_back(row);
  ++line_;
}

void Comparison::reword() {
  const Taste& taste = desk_.taste;
  for (const Row& row : rows_) {
    const bool entry = row.input != nullptr;
    say(*row.label, entry ? taste.label(*row.input) : taste.label(*row.result));
    say(*row.unit, taste.unit(entry ? row.input->kind : row.result->kind));
  }
  refreshDifferences();
  for (QWidget* part : {head_, body_}) {
    static_cast<QGridLayout*>(part->layout())->setColumnMinimumWidth(kUnit, unitWidth());
  }
}

void Comparison::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange && body_ != nullptr) {
    rebuild();
  }
  QWidget::changeEvent(event);
}

void Comparison::refreshDifferences() {
  for (const Row& row : rows_) {
    if (auto* difference = qobject_cast<DifferenceLabel*>(row.difference)) {
      difference->refresh();
    }
  }
}

void Comparison::alignHeads() {
  if (body_ == nullptr) {
    return;
  }
  const int height = head_->hasHeightForWidth() ? head_->heightForWidth(body_->width())
                                                : head_->sizeHint().height();
  head_->setGeometry(-scroll_->horizontalScrollBar()->value(), 0, body_->width(), height);
  scroll_->setGeometry(0, height + 4, width(), this->height() - height - 4);
}

QSize Comparison::sizeHint() const {
  const int engineDigits = columns_.size() > 2 ? kCrowdedEngineDigits : kEngineDigits;
  return {widthOf(kLabelDigits, engineDigits, kDifferenceDigits),
          head_->sizeHint().height() + 8 + body_->sizeHint().height()};
}

/// As its words let it.
int Comparison::leastWidth() const {
  const int laidOut = grid_->minimumSize().width() - (differs_ ? differenceWidth() : 0) +
                      scroll_->verticalScrollBar()->sizeHint().width();
  return std::max(widthOf(kLeastLabelDigits, kLeastEngineDigits, 0), laidOut);
}

int Comparison::easyWidth() const {
  const int least = kLeastEngineDigits * fontMetrics().horizontalAdvance(u'0');
  const int words = std::max(0, widestWord() - least) * static_cast<int>(columns_.size());
  return leastWidth() + words + (compares() ? differenceWidth() : 0);
}

QSize Comparison::minimumSizeHint() const {
  return {fontMetrics().horizontalAdvance(u'0') * 36,
          head_->sizeHint().height() + 4 * fontMetrics().height()};
}

void Comparison::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fitDifferences();
  alignHeads();
}

bool Comparison::eventFilter(QObject* watched, QEvent* event) {
  if (watched == body_ && event->type() == QEvent::Resize) {
    alignHeads();
  }
  return QWidget::eventFilter(watched, event);
}

void Comparison::pointAt(const describe::Input* input) {
  if (input == pointedAt_) {
    return;
  }
  pointedAt_ = input;
  for (const Row& row : rows_) {
    if (row.input != nullptr) {
      row.label->setForegroundRole(row.input == input ? QPalette::Link : QPalette::NoRole);
    }
  }
}

bool Comparison::focusEntry(int engine, const describe::Input& input) {
  for (const Row& row : rows_) {
    for (std::size_t i = 0; row.input == &input && i < row.fields.size(); ++i) {
      if (columns_[i] == engine) {
        row.fields[i]->setFocus(Qt::OtherFocusReason);
        scroll_->ensureWidgetVisible(row.fields[i]);
        return true;
      }
    }
  }
  return false;
}

void Comparison::focusFirst() {
  for (QWidget* widget : body_->findChildren<QWidget*>()) {
    if ((widget->focusPolicy() & Qt::TabFocus) != 0) {
      widget->setFocus(Qt::OtherFocusReason);
      scroll_->ensureWidgetVisible(widget);
      return;
    }
  }
}

}  // namespace strokewright::ui
