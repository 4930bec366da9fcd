#include "ui/widgets/table_view.h"

#include <QAbstractTableModel>
#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QItemSelectionModel>
#include <QKeyEvent>
#include <QLabel>
#include <QMetaMethod>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QRegularExpression>
#include <QResizeEvent>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>
#include <vector>

#include "core/describe/table_text.h"
#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"
#include "ui/widgets/text_widths.h"

namespace strokewright::ui {
namespace {

using describe::Cells;
using describe::Column;
using describe::Tabulated;

constexpr int kHeadLetters = 8;  ///< a head is broken at blanks before it gets longer
constexpr int kRowsAtFirst = 8;  ///< that a table asks room for
constexpr int kRowsAtLeast = 3;
constexpr int kMostLines = 4;  ///< about as many, in a row whose words wrap

std::size_t index(int i) { return static_cast<std::size_t>(i); }

double numberAt(const Cells& cells, int row) { return cells.numbers[row]; }

/// A name in short lines.
QString broken(const QString& name) {
  QStringList lines;
  for (const QString& word : name.split(u' ')) {
    const bool fits = !lines.isEmpty() && lines.back().size() + 1 + word.size() <= kHeadLetters;
    if (fits) {
      lines.back() += u' ' + word;
    } else {
      lines += word;
    }
  }
  return lines.join(u'\n');
}

/// Whether the cell of one row comes before that of another; a row without a number comes last.
bool before(const Cells& cells, bool words, int a, int b, Qt::SortOrder order) {
  if (words) {
    const int sign = cells.words[index(a)].compare(cells.words[index(b)]);
    return order == Qt::AscendingOrder ? sign < 0 : sign > 0;
  }
  const double one = numberAt(cells, a);
  const double other = numberAt(cells, b);
  if (std::isnan(one) || std::isnan(other)) return !std::isnan(one);
  return order == Qt::AscendingOrder ? one < other : one > other;
}

/// Half a number is read as another one: a column that is cut on the right is not shown. The first
/// is, where even that one has no room.
bool isCut(int left, int width, const QWidget& viewport) {
  return left > 0 && left + width > viewport.width();
}

/// Names and units over a thin rule, quietly.
class Heads final : public QHeaderView {
 public:
  explicit Heads(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {
    setSectionResizeMode(QHeaderView::Fixed);
    setHighlightSections(false);
    viewport()->setAutoFillBackground(false);
  }

 protected:
  void paintSection(QPainter* painter, const QRect& section, int column) const override {
    if (isCut(section.left(), section.width(), *viewport())) return;
    const auto of = [&](int role) { return model()->headerData(column, Qt::Horizontal, role); };
    QString text = of(Qt::DisplayRole).toString();
    if (isSortIndicatorShown() && sortIndicatorSection() == column) {
      text +=
          sortIndicatorOrder() == Qt::AscendingOrder ? QStringLiteral(" ▴") : QStringLiteral(" ▾");
    }
    const int margin = style()->pixelMetric(QStyle::PM_HeaderMargin, nullptr, this);
    painter->setPen(ink::muted(palette()));
    painter->drawText(section.adjusted(margin, 0, -margin, 0), of(Qt::TextAlignmentRole).toInt(),
                      text);
    painter->fillRect(section.left(), section.bottom(), section.width(), 1, ink::rule(palette()));
  }
};

}  // namespace

/// The rows as they are shown.
class TableModel final : public QAbstractTableModel {
 public:
  TableModel(const Taste& taste, const describe::Table& table, QObject* parent)
      : QAbstractTableModel(parent),
        taste_(taste),
        filled_{.rows = describe::Rows(table.columns)},
        tip_(fromCore(table.formula) + QStringLiteral("\n") + fromCore(table.source)) {}

  const Tabulated& filled() const { return filled_; }
  int filledRow(int shown) const { return order_[index(shown)]; }
  int shownRow(int filled) const {
    return static_cast<int>(std::ranges::find(order_, filled) - order_.begin());
  }

  void fill(Tabulated filled) {
    const bool sameSize = filled.rows.size() == filled_.rows.size();
    if (!sameSize) beginResetModel();
    filled_ = std::move(filled);
    putInOrder();
    if (!sameSize) endResetModel();
    if (sameSize) tellRows();
  }

  /// No row has anything there.
  bool blank(int column) const {
    const Cells& cells = filled_.rows.cells()[index(column)];
    return std::ranges::all_of(cells.words, &std::string::empty) && cells.numbers.isNaN().all();
  }

  /// Units or terms are others.
  void reword() {
    tellRows();
    Q_EMIT headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
  }

  /// @param column -1: the table's own order.
  void sort(int column, Qt::SortOrder order) override {
    sortedBy_ = column;
    sortOrder_ = order;
    putInOrder();
    tellRows();
  }
  void setSortable(bool sortable) { sortable_ = sortable; }
  int sortedBy() const { return sortedBy_; }
  Qt::SortOrder sortOrder() const { return sortOrder_; }

  int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(filled_.rows.size());
  }
  int columnCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(filled_.rows.columns().size());
  }

  QVariant data(const QModelIndex& at, int role) const override {
    if (role == Qt::DisplayRole) return text(at.column(), filledRow(at.row()));
    if (role == Qt::TextAlignmentRole) return alignment(at.column()).toInt();
    if (role == Qt::AccessibleTextRole) {
      const QString shown = text(at.column(), filledRow(at.row()));
      return shown.isEmpty() ? TableView::tr("nothing") : shown;
    }
    return {};
  }

  QVariant headerData(int section, Qt::Orientation orientation, int role) const override {
    if (orientation != Qt::Horizontal) return {};
    const Column& column = columnAt(section);
    switch (role) {
      case Qt::DisplayRole: {
        const QString unit = column.words ? QString() : taste_.unit(column.kind);
        const QString name = broken(taste_.inTerms(fromCore(column.name)));
        return unit.isEmpty() ? name : name + u'\n' + unit;
      }
      case Qt::TextAlignmentRole:
        return (Qt::AlignTop | (alignment(section) & Qt::AlignHorizontal_Mask)).toInt();
      case Qt::ToolTipRole: {
        const QString told = (fromCore(column.symbol) + u'\n' + tip_).trimmed();
        return tipFrom(sortable_ ? told + u'\n' +
                                       TableView::tr("A press sorts by this column, a third one "
                                                     "brings the table's own order back.")
                                 : told);
      }
      default:
        return {};
    }
  }

 private:
  using QAbstractTableModel::index;
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }

  const Column& columnAt(int column) const { return filled_.rows.columns()[index(column)]; }

  QString text(int column, int row) const {
    const Column& described = columnAt(column);
    const Cells& cells = filled_.rows.cells()[index(column)];
    if (described.words) return taste_.inTerms(fromCore(cells.words[index(row)]));
    const double number = numberAt(cells, row);
    return std::isnan(number) ? QString()
                              : taste_.number(described.kind, number, described.decimals);
  }

  /// All numbers of a column have as many decimals, so that their marks stand under each other.
  /// Words keep clear of the numbers beside them.
  Qt::Alignment alignment(int column) const {
    const Qt::Alignment words = column == 0 ? Qt::AlignLeft : Qt::AlignHCenter;
    return (columnAt(column).words ? words : Qt::AlignRight) | Qt::AlignVCenter;
  }

  void tellRows() {
    if (!order_.empty()) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  }

  void putInOrder() {
    order_.resize(filled_.rows.size());
    std::iota(order_.begin(), order_.end(), 0);
    if (sortedBy_ < 0) return;
    const Cells& cells = filled_.rows.cells()[index(sortedBy_)];
    std::ranges::stable_sort(order_, [&](int a, int b) {
      return before(cells, columnAt(sortedBy_).words, a, b, sortOrder_);
    });
  }

  const Taste& taste_;
  Tabulated filled_;
  QString tip_;
  std::vector<int> order_;
  bool sortable_ = false;
  int sortedBy_ = -1;
  Qt::SortOrder sortOrder_ = Qt::AscendingOrder;
};

TableView::TableView(Document& document, int engine, const describe::Table& table, QWidget* parent,
                     int cylinder)
    : QTableView(parent),
      document_(document),
      engine_(engine),
      table_(table),
      cylinder_(cylinder),
      model_(new TableModel(document.taste(), table, this)),
      message_(new QLabel(viewport())),
      sortHere_(new QAction(tr("&Sort by this column"), this)) {
  setHorizontalHeader(new Heads(this));
  setModel(model_);
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setTabKeyNavigation(false);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerItem);
  viewport()->setAutoFillBackground(false);
  verticalHeader()->hide();
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  message_->setWordWrap(true);
  message_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  connect(message_, &QLabel::linkActivated, this, [this] {
    const auto waits = document_.assessment().waitsFor(filled().notes);
    if (waits.empty()) return;
    const bool donors = waits.front().donors;
    Q_EMIT entryAsked(donors ? document_.project().referenceDonor : engine_, waits.front().input);
  });

  auto* copied = new QAction(tr("&Copy"), this);
  copied->setShortcut(QKeySequence::Copy);
  copied->setShortcutContext(Qt::WidgetShortcut);
  connect(copied, &QAction::triggered, this, &TableView::copy);
  connect(sortHere_, &QAction::triggered, this,
          [this] { sortBy(std::max(0, currentIndex().column())); });
  addAction(copied);
  setContextMenuPolicy(Qt::ActionsContextMenu);
  connect(horizontalHeader(), &QHeaderView::sectionClicked, this, &TableView::sortBy);
  connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &TableView::tellRow);
  connect(&document, &Document::projectChanged, this, &TableView::refreshWhenSeen);
  connect(&document.taste(), &Taste::changed, this, &TableView::reword);
  reword();
}

void TableView::setEngine(int engine) {
  if (engine == engine_) return;
  engine_ = engine;
  refreshWhenSeen();
}

void TableView::setCylinder(int cylinder) {
  if (cylinder == cylinder_) return;
  cylinder_ = cylinder;
  refreshWhenSeen();
}

void TableView::setSortable(bool sortable) {
  sortable_ = sortable;
  model_->setSortable(sortable);
  horizontalHeader()->setSectionsClickable(sortable);
  if (sortable) {
    addAction(sortHere_);
  } else {
    removeAction(sortHere_);
  }
}

void TableView::setWhenEmpty(const QString& text) {
  whenEmpty_ = text;
  sayMessage();
}

const Tabulated& TableView::filled() const { return model_->filled(); }

int TableView::currentRow() const {
  return currentIndex().isValid() ? model_->filledRow(currentIndex().row()) : -1;
}

// What stands in it ------------------------------------------------------------------------------

void TableView::refreshWhenSeen() {
  stale_ = true;
  if (isVisible()) refresh();
}

void TableView::refresh() {
  const describe::Evaluation& evaluation = document_.assessment().evaluation();
  if (engine_ < 0 || engine_ >= evaluation.engines()) return;
  stale_ = false;
  const int cylinder = std::min(cylinder_, evaluation.cylinders(engine_) - 1);
  const QStringList spokenOf = textsOf(currentIndex());
  model_->fill(document_.evaluation().tabulated(engine_, table_, cylinder));
  layOut();
  const bool heard = isSignalConnected(QMetaMethod::fromSignal(&TableView::rowChosen));
  if (heard && currentIndex().isValid() && textsOf(currentIndex()) != spokenOf) {
    selectionModel()->clear();  // what is spoken of elsewhere is no longer in that row
  }
  tellRow();
}

void TableView::tellRow() {
  if (currentRow() == toldRow_) return;
  toldRow_ = currentRow();
  Q_EMIT rowChosen(toldRow_);
}

void TableView::reword() {
  model_->reword();
  setAccessibleDescription(document_.taste().inTerms(fromCore(table_.formula)));
  verticalHeader()->setMinimumSectionSize(ink::rowHeight(fontMetrics()));
  layOut();
}

/// An edit may move no more than a few digits: then everything stays where it is.
void TableView::layOut() {
  for (int column = 0; column < model_->columnCount(); ++column) {
    setColumnHidden(column, model_->blank(column));
  }
  horizontalHeader()->setVisible(model_->rowCount() > 0);
  fitColumns();
  const QString name = document_.taste().inTerms(fromCore(table_.name));
  setAccessibleName(engine_ >= 0 && engine_ < document_.assessment().evaluation().engines()
                        ? name + QStringLiteral(", ") + document_.engineName(engine_)
                        : name);
  sayMessage();
  if (const QSize wanted = sizeHint(); wanted != wanted_) {
    wanted_ = wanted;
    updateGeometry();
  }
}

QStringList TableView::textsOf(const QModelIndex& row) const {
  QStringList texts;
  for (int column = 0; row.isValid() && column < model_->columnCount(); ++column) {
    texts += textAt(row.row(), column);
  }
  return texts;
}

double TableView::widthOf(const QString& text) const { return textWidthOf(text, font(), *this); }

/// [px] what the text of a cell keeps clear on both sides together.
int TableView::textMargins() const {
  return 2 * (style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, this) + 2);
}

QString TableView::textAt(int row, int column) const {
  return model()->index(row, column).data().toString();
}

/// [px] that breaks no word of the column.
int TableView::widestWord(int column) const {
  double widest = 0.0;
  for (int row = 0; row < model_->rowCount(); ++row) {
    for (const QString& word : textAt(row, column).split(u' ')) {
      widest = std::max(widest, widthOf(word));
    }
  }
  return std::max(horizontalHeader()->sectionSizeHint(column),
                  static_cast<int>(std::ceil(widest)) + textMargins());
}

// Qt lays every cell out to ask for its size. The same texts come again with every edit, and their
// widths are remembered.

int TableView::sizeHintForColumn(int column) const {
  double widest = 0.0;
  for (int row = 0; row < model_->rowCount(); ++row) {
    widest = std::max(widest, widthOf(textAt(row, column)));
  }
  return static_cast<int>(std::ceil(widest)) + textMargins();
}

int TableView::sizeHintForRow(int row) const {
  int lines = 1;
  for (int column = 0; column < model_->columnCount(); ++column) {
    if (!table_.columns[index(column)].words || isColumnHidden(column)) continue;
    const QString text = textAt(row, column);
    const int room = columnWidth(column) - textMargins() + 2;
    if (widthOf(text) < room) continue;
    lines = std::max(lines, ink::linesOf(fontMetrics(), text, room));
  }
  return ink::rowHeight(fontMetrics(), lines);
}

/// As wide as what is seen in them; where that is too wide for the table, words wrap.
void TableView::fitColumns() {
  std::vector<int> widths;
  for (int column = 0; column < model_->columnCount(); ++column) {
    widths.push_back(isColumnHidden(column) ? 0
                                            : std::max(horizontalHeader()->sectionSizeHint(column),
                                                       sizeHintForColumn(column)));
  }
  int over = std::accumulate(widths.begin(), widths.end(), 0) - viewport()->width();
  for (int column = 0; column < model_->columnCount() && over > 0; ++column) {
    if (!table_.columns[index(column)].words || isColumnHidden(column)) continue;
    int& width = widths[index(column)];
    const int least = std::max(widestWord(column), width / kMostLines);
    const int spare = std::clamp(width - least, 0, over);
    width -= spare;
    over -= spare;
  }
  for (int column = 0; column < model_->columnCount(); ++column) {
    if (!isColumnHidden(column)) setColumnWidth(column, widths[index(column)]);
  }
  fitRows();
}

void TableView::fitRows() {
  for (int row = 0; row < model_->rowCount(); ++row) setRowHeight(row, sizeHintForRow(row));
}

QString TableView::waitText() const {
  const auto waits = document_.assessment().waitsFor(filled().notes);
  if (waits.empty()) return {};
  const QString link = ink::link(palette(), QStringLiteral("entry"),
                                 inSentence(document_.taste().label(*waits.front().input)));
  const QString text =
      (waits.front().donors ? tr("waits for the donor's %1") : tr("waits for %1")).arg(link);
  return waits.size() == 1 ? text : tr("%1 and %2 more").arg(text).arg(waits.size() - 1);
}

void TableView::sayMessage() {
  const Taste& taste = document_.taste();
  const bool waits = filled().state == describe::State::Waits;
  QString text;
  switch (filled().state) {
    case describe::State::Waits:
      text = waitText();
      break;
    case describe::State::Refused:
      text = taste.sentence(document_.assessment().evaluation().refusal(filled().notes));
      break;
    case describe::State::None:
      text = taste.inTerms(fromCore(filled().notes.none));
      break;
    case describe::State::Value:
      if (filled().rows.size() == 0) text = whenEmpty_;
      break;
  }
  message_->setTextFormat(waits ? Qt::RichText : Qt::PlainText);
  message_->setTextInteractionFlags(
      waits ? Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard : Qt::NoTextInteraction);
  message_->setText(text);
  message_->setVisible(!text.isEmpty());
  if (text.isEmpty()) return;
  QPalette quiet = palette();
  quiet.setColor(QPalette::WindowText, ink::muted(palette()));
  message_->setPalette(quiet);
  placeMessage();
}

QString TableView::message() const {
  QString text = message_->text();
  if (message_->textFormat() == Qt::RichText) {
    static const QRegularExpression tag(QStringLiteral("<[^>]*>"));
    text.remove(tag);
  }
  return text;
}

void TableView::placeMessage() { message_->setGeometry(viewport()->rect().adjusted(4, 4, -4, 0)); }

void TableView::showEvent(QShowEvent* event) {
  if (stale_) refresh();
  QTableView::showEvent(event);
}

void TableView::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange) reword();
  if (event->type() == QEvent::PaletteChange) sayMessage();
}

void TableView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) fitColumns();
  placeMessage();
}

/// No further than the last row and the last column that are seen whole.
void TableView::paintEvent(QPaintEvent* event) {
  QRect whole(QPoint(0, 0), viewport()->size());
  int below = 0;
  for (int row = 0; row < model_->rowCount(); ++row) {
    const int bottom = rowViewportPosition(row) + rowHeight(row);
    if (bottom <= viewport()->height()) below = bottom;
  }
  if (below > 0) whole.setHeight(below);
  for (int column = 0; column < model_->columnCount(); ++column) {
    const int left = columnViewportPosition(column);
    if (isColumnHidden(column) || !isCut(left, columnWidth(column), *viewport())) continue;
    whole.setWidth(std::min(whole.width(), left));
  }
  QPaintEvent cut(event->region() & whole);
  QTableView::paintEvent(&cut);
}

QSize TableView::sizeHint() const {
  int rows = 0;
  for (int row = 0; row < std::min(model_->rowCount(), kRowsAtFirst); ++row) rows += rowHeight(row);
  return {horizontalHeader()->length() + verticalScrollBar()->sizeHint().width(),
          horizontalHeader()->sizeHint().height() +
              std::max(rows, kRowsAtLeast * ink::rowHeight(fontMetrics()))};
}

QSize TableView::minimumSizeHint() const {
  return {fontMetrics().averageCharWidth() * 3 * kHeadLetters,
          horizontalHeader()->sizeHint().height() + ink::rowHeight(fontMetrics())};
}

// Copy, sort, take -------------------------------------------------------------------------------

QString TableView::copiedText() const {
  std::vector<int> rows;
  for (int row = 0; row < model_->rowCount(); ++row) {
    if (!selectionModel()->hasSelection() || selectionModel()->isRowSelected(row)) {
      rows.push_back(model_->filledRow(row));
    }
  }
  std::vector<describe::HeadedColumn> columns = describe::headed(filled().rows);
  for (describe::HeadedColumn& column : columns) {
    Cells chosen;
    chosen.numbers.resize(column.cells.words.empty() ? static_cast<Eigen::Index>(rows.size()) : 0);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (!column.cells.words.empty()) {
        chosen.words.push_back(column.cells.words[index(rows[i])]);
      } else {
        chosen.numbers[static_cast<Eigen::Index>(i)] = numberAt(column.cells, rows[i]);
      }
    }
    column.cells = std::move(chosen);
  }
  return fromCore(describe::tabbed(columns, document_.taste().style()));
}

void TableView::copy() const { QApplication::clipboard()->setText(copiedText()); }

/// Up, down, and back to the table's own order.
void TableView::sortBy(int column) {
  if (!sortable_) return;
  const bool again = model_->sortedBy() == column;
  const bool back = again && model_->sortOrder() == Qt::DescendingOrder;
  const Qt::SortOrder order = again && !back ? Qt::DescendingOrder : Qt::AscendingOrder;
  horizontalHeader()->setSortIndicatorShown(!back);
  horizontalHeader()->setSortIndicator(column, order);
  const int row = currentRow();
  model_->sort(back ? -1 : column, order);
  fitRows();
  if (row >= 0) setCurrentIndex(model()->index(model_->shownRow(row), currentIndex().column()));
}

void TableView::mousePressEvent(QMouseEvent* event) {
  pressed_ = indexAt(event->position().toPoint());
  QTableView::mousePressEvent(event);
}

/// What was pressed first counts: what follows the selection may have moved the rows since.
void TableView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && pressed_.isValid()) {
    Q_EMIT rowTaken(model_->filledRow(pressed_.row()));
  } else {
    QTableView::mouseDoubleClickEvent(event);
  }
}

void TableView::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && currentRow() >= 0) {
    Q_EMIT rowTaken(currentRow());
  } else {
    QTableView::keyPressEvent(event);
  }
}

}  // namespace strokewright::ui
