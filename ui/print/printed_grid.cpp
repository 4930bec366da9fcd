#include "ui/print/printed_grid.h"

#include <algorithm>

#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

// All in millimetres.
constexpr double kPitch = 4.0;
constexpr double kColumnGap = 2.4;
constexpr double kEnoughColumnGap = 3.4;  // before headings take what is left
constexpr double kMostColumnGap = 9.0;
constexpr double kHalvesGap = 8.0;
constexpr double kWidening = 1.0;
constexpr std::size_t kManyRows = 5;
constexpr qsizetype kMostHeadingLines = 2;

}  // namespace

PrintedGrid::PrintedGrid(Drafting& draft, const sheet::Grid& grid, double width)
    : draft_(draft), grid_(grid), width_(width) {
  measure();
}

QStringList PrintedGrid::wordsOf(std::size_t place) const {
  QStringList words = fromCore(grid_.columns[place]).split(QLatin1Char(' '));
  if (words.size() > 1 && words.last() == QStringLiteral("°")) {
    const QString unit = words.takeLast();
    words.last() += QLatin1Char(' ') + unit;
  }
  return words;
}

void PrintedGrid::measure() {
  for (std::size_t i = 0; i < grid_.columns.size(); ++i) {
    Column column;
    for (const auto& row : grid_.rows) {
      column.width = std::max(column.width, draft_.textWidth(fromCore(row[i])));
    }
    for (const QString& word : wordsOf(i)) {
      column.width = std::max(column.width, draft_.textWidth(word));
    }
    breakHeading(column, i);
    natural_ += column.width + (i > 0 ? draft_.mm(kColumnGap) : 0.0);
    columns_.push_back(std::move(column));
  }
  widenTallHeadings();
}

void PrintedGrid::breakHeading(Column& column, std::size_t place) {
  column.heading.clear();
  for (const QString& word : wordsOf(place)) {
    if (!column.heading.isEmpty()) {
      const QString longer = column.heading.last() + QLatin1Char(' ') + word;
      if (draft_.textWidth(longer) <= column.width) {
        column.heading.last() = longer;
        continue;
      }
    }
    column.heading.append(word);
  }
}

/// Headings of many lines take the room that is left beside columns that stand apart, as long as
/// there is some.
void PrintedGrid::widenTallHeadings() {
  const double step = draft_.mm(kWidening);
  const double apart = draft_.mm(kEnoughColumnGap - kColumnGap);
  const double room = width_ - apart * (static_cast<double>(columns_.size()) - 1.0);
  for (; natural_ + step <= room; natural_ += step) {
    const auto tallest = std::ranges::max_element(
        columns_, {}, [](const Column& column) { return column.heading.size(); });
    if (tallest == columns_.end() || tallest->heading.size() <= kMostHeadingLines) return;
    tallest->width += step;
    breakHeading(*tallest, static_cast<std::size_t>(tallest - columns_.begin()));
  }
}

double PrintedGrid::needs() const {
  return std::max(natural_, draft_.textWidth(fromCore(grid_.heading), true));
}

std::size_t PrintedGrid::halves(std::size_t rows) const {
  const bool roomForTwo = 2.0 * natural_ + draft_.mm(kHalvesGap) <= width_;
  return roomForTwo && rows > kManyRows ? 2 : 1;
}

std::size_t PrintedGrid::inOneHalf(std::size_t rows) const {
  return (rows + halves(rows) - 1) / halves(rows);
}

double PrintedGrid::pitch() const { return std::max(draft_.mm(kPitch), draft_.textHeight()); }

double PrintedGrid::headingHeight() const {
  qsizetype lines = 1;
  for (const Column& column : columns_) lines = std::max(lines, column.heading.size());
  return static_cast<double>(lines) * draft_.textHeight() + draft_.mm(0.8);
}

double PrintedGrid::height(std::size_t rows) const {
  const std::size_t lines = inOneHalf(rows) + (rows < grid_.rows.size() ? 1 : 0);
  return draft_.textHeight() + draft_.mm(1.0) + headingHeight() +
         static_cast<double>(lines) * pitch();
}

void PrintedGrid::paint(QPointF topLeft, std::size_t rows) {
  draft_.text(topLeft, Qt::AlignLeft | Qt::AlignTop, fromCore(grid_.heading), true);
  const std::size_t count = halves(rows);
  const double width = count == 1 ? width_ : (width_ - draft_.mm(kHalvesGap)) / 2.0;
  const std::size_t each = inOneHalf(rows);
  const double top = topLeft.y() + draft_.textHeight() + draft_.mm(1.0);
  for (std::size_t half = 0; half < count; ++half) {
    const double left = topLeft.x() + static_cast<double>(half) * (width + draft_.mm(kHalvesGap));
    paintHalf(QPointF(left, top), width, half * each, std::min(rows, (half + 1) * each));
  }
  if (rows < grid_.rows.size()) {
    const double y = top + headingHeight() + static_cast<double>(each) * pitch();
    draft_.text(QPointF(topLeft.x(), y), Qt::AlignLeft | Qt::AlignTop,
                QStringLiteral("and %1 more: see the window").arg(grid_.rows.size() - rows), false,
                draft_.ink().faint);
  }
}

void PrintedGrid::paintHalf(QPointF topLeft, double width, std::size_t from, std::size_t to) {
  const double spare = width - natural_;
  const double gaps = std::max<double>(1.0, static_cast<double>(columns_.size()) - 1.0);
  const double gap =
      draft_.mm(kColumnGap) + std::clamp(spare / gaps, 0.0, draft_.mm(kMostColumnGap - kColumnGap));
  double left = topLeft.x();
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const Column& column = columns_[i];
    double y = topLeft.y() + headingHeight() - draft_.mm(0.8) -
               static_cast<double>(column.heading.size()) * draft_.textHeight();
    for (const QString& line : column.heading) {
      paintCell(column, i, left, y, line, true);
      y += draft_.textHeight();
    }
    y = topLeft.y() + headingHeight();
    for (std::size_t row = from; row < to; ++row) {
      paintCell(column, i, left, y, fromCore(grid_.rows[row][i]), false);
      y += pitch();
    }
    left += column.width + gap;
  }
  const double rule = topLeft.y() + headingHeight() - draft_.mm(0.4);
  draft_.line(QPointF(topLeft.x(), rule), QPointF(left - gap, rule), draft_.narrow());
}

void PrintedGrid::paintCell(const Column& column, std::size_t place, double left, double y,
                            const QString& text, bool faint) {
  const QPointF at(place == 0 ? left : left + column.width, y);
  const Qt::Alignment side = place == 0 ? Qt::AlignLeft : Qt::AlignRight;
  draft_.text(at, side | Qt::AlignTop, text, false, faint ? draft_.ink().faint : QColor());
}

}  // namespace strokewright::ui
